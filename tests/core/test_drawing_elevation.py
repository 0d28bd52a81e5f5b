"""The front elevation: what the customer is shown, and what the bench reads off it."""

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_drawing_reader import Patch, Read, cases

from casewright.drawing.elevation import elevation
from casewright.measure.lengths import LengthUnit, parse_length
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from units import built, changed, chest, dresser, unit


@cache
def dresser_unit():
    """Worked dresser A."""
    return built(dresser())


def read(unit):
    """Its elevation, read back."""
    return Read(elevation(unit).svg())


@cache
def dresser_elevation():
    """The elevation of worked dresser A."""
    return read(dresser_unit())


def opening_of(unit, drawer):
    """Where an opening stands above the floor."""
    opening = drawer.sizes.opening
    return Patch(opening.left, unit.face.base_height + opening.bottom, opening.width, opening.height)


@pytest.mark.parametrize(
    ("lettered", "times"),
    [
        ("44-3/8", 2),  # overall height: in its own chain and as a height above the floor
        ("39-1/2", 1),  # body height; the body is as wide, which is lettered with its name
        ("7/8", 1),  # top
        ("4", 1),  # plinth
        ("5-1/2", 1),
        ("6-1/4", 1),
        ("7", 1),
        ("7-3/4", 1),
        ("8-1/2", 1),
        ("18-5/8", 2),  # the two openings of the first row
        ("38", 1),
        ("body 39-1/2", 1),
        ("overall 41", 1),
    ],
)
def test_the_worked_dresser_is_lettered_with_its_sizes(lettered, times):
    assert [words for words, _ in dresser_elevation().sizes].count(lettered) == times


# Heights above the floor: the plinth of 4 and the story stick of check J5: 3/4, 10, 18-1/2, 26-1/4, 33-1/4.
@pytest.mark.parametrize("height", ["0", "4-3/4", "14", "22-1/2", "30-1/4", "37-1/4"])
def test_openings_are_given_above_the_floor(height):
    assert (height, float(parse_length(height, least=0))) in dresser_elevation().sizes


@pytest.mark.parametrize(
    ("code", "width", "height"),
    [  # Worked dresser A: widths and heights of the drawers.
        ("A-R1-1-F", 18 + 9 / 16, 5 + 27 / 64),
        ("A-R1-2-F", 18 + 9 / 16, 5 + 27 / 64),
        ("A-R2-1-F", 37 + 15 / 16, 6 + 11 / 64),
        ("A-R5-1-F", 37 + 15 / 16, 8 + 13 / 32),
    ],
)
def test_fronts_are_drawn_to_size(code, width, height):
    front = dresser_elevation().rectangles[code]

    # Coordinates are written to a hundred-thousandth of an inch.
    assert (front.width, front.height) == pytest.approx((width, height), abs=1e-5)


@pytest.mark.parametrize(
    ("code", "expected"),
    [
        ("A-T", Patch(-0.75, 43.5, 41, 0.875)),
        ("A-C-SL", Patch(0, 4, 0.75, 39.5)),
        ("A-C-SR", Patch(38.75, 4, 0.75, 39.5)),
        ("A-C-RF", Patch(0.75, 42.75, 38, 0.75)),
        ("A-D4-RF", Patch(0.75, 13.25, 38, 0.75)),
        ("A-R1-U1", Patch(19.375, 37.25, 0.75, 5.5)),
        ("A-C-BL", Patch(0.75, 4, 38, 0.75)),
        ("A-B-F", Patch(0, 0, 39.5, 4)),
    ],
)
def test_the_case_is_drawn_without_what_lies_in_its_joints(code, expected):
    assert dresser_elevation().rectangles[code] == expected


def test_pulls_line_up_down_the_case():
    found = {float(pull.get("cx")) for pull in dresser_elevation().all("circle")}

    # The middles of the two openings of the first row: 3/4 + 18-5/8 / 2, and as far from the right.
    assert found == {10.0625, 29.4375}


def test_every_drawer_shows_its_code():
    assert {"R1-1", "R1-2", "R2-1", "R3-1", "R4-1", "R5-1"} <= set(dresser_elevation().words)


def test_the_text_alternative_has_the_figures_of_the_drawing():
    told = dresser_elevation().description

    assert "overall height 44-3/8;" in told
    assert "opening height of row 5 8-1/2;" in told
    assert "opening width of R1-2 18-5/8;" in told
    assert "from the floor: floor 0, row 5 4-3/4, row 4 14, row 3 22-1/2" in told


def test_a_shop_in_millimetres_reads_millimetres():
    found = read(built(chest({"unit": "mm", "body": {"width": 1000, "depth": 500, "overall_height": 1120}})))

    assert ("body 1000", pytest.approx(1000 / 25.4, abs=1e-5)) in found.sizes
    assert "1120" in found.words
    assert "millimetres" in found.description


def test_a_metric_shop_reads_millimetres_on_a_piece_that_was_drawn_in_inches():
    found = Read(elevation(dresser_unit(), LengthUnit.MILLIMETRE).svg())

    assert ("body 1003.3", 39.5) in found.sizes
    assert "millimetres" in found.description


def test_a_measured_opening_is_marked_and_drawn_as_measured():
    found = read(built(dresser({"measured.openings": {"R5-1": {"height": "8-15/32"}}})))

    assert "R5-1 measured" in found.words
    assert ("8-15/32", 8.46875) in found.sizes
    assert "R5-1 measured: height" in found.description


def test_alike_rows_too_low_for_their_sizes_are_lettered_once():
    rows = [{"height": "1-1/2"}] * 8
    found = read(built(chest({"rows": rows, "body": {"width": "60", "depth": "16", "opening_total": "12"}})))

    assert any(words.startswith("8 × ") or words.startswith("R1:") for words in found.words)
    assert found.clashes == []


def test_alike_columns_too_narrow_for_their_sizes_are_lettered_once():
    found = read(built(chest({"body.width": "72", "rows": [{"columns": 12}]})))

    # (72 - 1-1/2 - 11 · 3/4) / 12 = 5.1875
    assert ("12 × 5-3/16", 5.1875) in found.sizes


def test_narrow_columns_of_several_widths_are_lettered_upright():
    widths = ["4", "5", "4-1/2", "5-1/2", None, "4", "5", "4-1/2"]
    rows = [{"widths": widths}, {}]
    found = read(built(chest({"body.width": "60", "rows": rows, "frames.runner_width": "1-1/2"})))

    upright = {text.text for text in found.all("text") if text.get("transform")}
    level = {text.text for text in found.all("text") if not text.get("transform")}
    assert {"4-1/2", "5-1/2"} <= upright
    assert {"4", "5", "58-1/2"} <= level


def test_rows_that_are_parted_alike_share_one_chain():
    rows = [{"columns": 3}, {"columns": 3}, {"widths": ["6", None, "6"]}, {"columns": 3}, {}]
    found = read(built(chest({"body.width": "48", "rows": rows, "body.opening_total": "30"})))

    assert {"R1, R2, R4", "R3", "R5"} <= set(found.words)


def test_the_names_of_rows_keep_clear_of_the_sizes_beside_them():
    rows = [{"height": "3"}] * 12
    found = read(built(chest({"body": {"width": "30", "depth": "18", "opening_total": "36"}, "rows": rows})))

    assert "R1–R12" in found.words
    assert found.clashes == []


def test_without_a_base_the_case_stands_on_the_floor():
    found = read(built(chest({"base": None})))

    assert found.rectangles["A-C-SL"].y == 0


def test_what_hangs_on_a_wall_is_measured_from_its_underside():
    hung = elevation(built(preset("wall-hung-bank").spec_json)).svg()

    assert "from the underside: underside 0, row 3 3/4, row 2 6-5/8" in hung
    assert "floor" not in hung


@given(cases(), st.sampled_from([0, 0.75, 4]))
def test_any_case_can_be_drawn(data, overhang):
    case = built(changed(data, {"top.overhang_sides": overhang}))
    found = read(case)

    assert all(
        opening_of(case, drawer).holds(found.rectangles[f"{drawer.code}-F"]) for drawer in case.drawers
    )
    assert all(found.page.holds(Patch(*point, 0, 0)) for point in found.points)
    assert all(found.page.holds(patch) for _, patch in found.lettering)
    assert found.clashes == []


@given(cases(), st.sampled_from(LengthUnit))
def test_every_lettered_size_is_the_number_behind_it(data, shop_unit):
    chosen = unit(data).model_copy(update={"unit": shop_unit})
    found = read(construct(chosen, example_shop()))
    step = 1 / 64 if shop_unit is LengthUnit.INCH else 0.1 / 25.4

    # What is lettered is rounded to the nearest mark of the rule, so it is out by half a mark at most.
    assert all(abs(lettered(words, shop_unit) - inches) <= step / 2 + 1e-5 for words, inches in found.sizes)


def lettered(words, shop_unit):
    """The size at the end of lettered words, in inches."""
    size = words.split(" ")[-1].removeprefix("≈")
    return float(parse_length(f"{size} {shop_unit}", least=0))
