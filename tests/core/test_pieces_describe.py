"""A piece in words that a customer understands: sizes, numbers and no word left unexplained."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import carcases
from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.presets import preset
from casewright.pieces.words.describe import describe
from casewright.pieces.words.wording import joined, plain_size, plural, several
from units import built, changed, chest, dresser


def words(data, shown=None) -> str:
    """All that is said of a piece."""
    return " ".join(describe(built(data), shown))


def test_the_worked_dresser_is_described_in_four_short_paragraphs():
    size, drawers, case, rest = describe(built(dresser()))

    assert size.startswith("Overall 41 in wide × 20-1/2 in deep × 44-3/8 in high")
    assert "The case, the top and the drawer fronts are solid cherry." in size
    assert "It has six drawers: two side by side at the top, then four across the full width." in drawers
    assert "They grow taller towards the floor: openings from 5-1/2 in to 8-1/2 in high." in drawers
    assert "Every drawer is dovetailed at all four corners" in drawers
    assert "has sides 1/2 in thick" in drawers
    assert "The top, 7/8 in thick, stands over the sides and the front by 3/4 in" in case
    assert "plinth (a closed base) 4 in high" in case
    assert rest.startswith(
        "There are ten pulls on the drawers. Finished on the outside with four coats of wiping varnish"
    )


def test_a_metric_customer_reads_whole_millimetres():
    size = describe(built(dresser()), LengthUnit.MILLIMETRE)[0]

    # 41, 20-1/2 and 44-3/8 in are 1041.4, 520.7 and 1127.1 mm
    assert size.startswith("Overall 1041 mm wide × 521 mm deep × 1127 mm high")


def test_a_metric_file_is_described_in_millimetres():
    said = words(chest({"unit": "mm", "body": {"width": "600", "depth": "400", "opening_total": "450"}}))

    # the top stands over by 3/4 in, which is 19.05 mm, at both sides and at the front
    assert "Overall 638 mm wide × 419 mm deep" in said
    assert " in wide" not in said


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ([{}], "It has one drawer. The drawer is dovetailed"),
        ([{"columns": 3}], "It has three drawers side by side."),
        ([{}, {}, {}], "It has three drawers, one above the other."),
        ([{"columns": 2}, {"columns": 2}, {"columns": 2}], "It has six drawers: three rows of two."),
        (
            [{"columns": 3}, {}],
            "four drawers: three side by side at the top, then one across the full width.",
        ),
        ([{}, {"columns": 2}], "three drawers: one across the full width at the top, then two side by side."),
        (
            [{"columns": 4}, {"columns": 4}, {}, {}, {"columns": 2}],
            "It has twelve drawers: two rows of four at the top, then two across the full width, "
            "then two side by side.",
        ),
    ],
)
def test_rows_and_columns_are_said_in_words(rows, said):
    data = chest({"rows": rows, "body": {"width": "36", "depth": "16", "opening_total": str(6 * len(rows))}})

    assert said in words(data)


def test_openings_that_are_alike_are_said_to_be():
    assert "All drawer openings are 6 in high." in words(chest({"graduation": {"rule": "equal"}}))


def test_a_plywood_case_is_not_said_to_be_solid():
    said = words(preset("built-in-bank").spec_json)

    assert "The edges and rails of the case and the drawer fronts are solid white oak." in said
    assert "high, measured without the pulls." in said  # it has no top of its own


def test_one_drawer_is_spoken_of_as_one():
    said = words(chest({"rows": [{}], "body": {"width": "20", "depth": "16", "opening_total": "6"}}))

    assert "the drawer front are solid cherry" in said
    assert "There is one pull on the drawer." in said
    assert "one after another" not in said
    assert "Every drawer" not in said


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"base": None}, "stands straight on the floor, without a base"),
        ({"top.overhang_sides": 0, "top.overhang_front": 0}, "is flush with the case"),
        ({"top.overhang_front": 0}, "stands over the sides by 3/4 in and is flush with the front"),
        ({"top.overhang_front": "1"}, "stands over the sides by 3/4 in and the front by 1 in"),
        ({"case.divider_end": "sliding dovetail"}, "slide into the sides with a dovetail"),
        ({"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}}, "a bottom of birch plywood held in"),
        ({"woods.drawers": {"wood": "white oak", "cut": "quarter"}}, "solid white oak (quartersawn, which"),
        ({"woods.case": "walnut", "woods.fronts": "cherry"}, "The drawer fronts are solid cherry."),
        ({"woods.case": "walnut", "woods.top": "cherry"}, "The top is solid cherry."),
        ({"pulls.item": "knob"}, "There are three knobs on the drawers."),
        ({"pulls.item": "Ring pull, brass"}, "There are three pulls (Ring pull, brass) on the drawers."),
        ({"count": 2}, "Of this piece two are made, all alike."),
        ({"finish": {"show_coats": 0, "inside_coats": 0}}, "The wood is left bare, without a finish."),
        ({"finish": {"show_coats": 0, "inside_coats": 1}}, "finished inside with one coat of wiping varnish"),
        ({"finish.inside_coats": 0}, "; the drawers are left bare inside."),
        ({"finish.product": "oil"}, "four coats of oil (an oil that soaks in"),
    ],
)
def test_what_was_chosen_is_said(changes, said):
    assert said in words(chest(changes))


@settings(max_examples=25)
@given(carcases(), st.sampled_from(list(LengthUnit)), st.integers(1, 3))
def test_every_case_can_be_described_in_whole_sentences(data, shown, count):
    paragraphs = describe(built(changed(data, {"count": count})), shown)

    assert len(paragraphs) == 4
    assert [text for text in paragraphs if not text.endswith(".") or not text[0].isupper()] == []
    said = " ".join(paragraphs)
    assert [flaw for flaw in ("≈", "  ", "None", "one drawers", "one rows", "..") if flaw in said] == []


@pytest.mark.parametrize(
    ("noun", "many"),
    [("drawer", "drawers"), ("brass", "brasses"), ("knob", "knobs"), ("tray", "trays"), ("berry", "berries")],
)
def test_nouns_are_put_in_the_plural(noun, many):
    assert plural(noun) == many


def test_numbers_agree_with_their_nouns():
    assert (several(1, "drawer"), several(2, "drawer"), several(13, "drawer")) == (
        "one drawer",
        "two drawers",
        "13 drawers",
    )


@pytest.mark.parametrize(
    ("members", "said"), [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")]
)
def test_a_list_is_joined_as_it_is_spoken(members, said):
    assert joined(members) == said


@pytest.mark.parametrize(
    ("inches", "shown", "said"),
    [
        (20.5, LengthUnit.INCH, "20-1/2"),
        (20.51, LengthUnit.INCH, "20-1/2"),
        (0.5, LengthUnit.MILLIMETRE, "13"),
        (1.0, LengthUnit.MILLIMETRE, "25"),
        (100 / 25.4, LengthUnit.MILLIMETRE, "100"),
    ],
)
def test_sizes_are_those_of_a_customers_tape(inches, shown, said):
    assert plain_size(inches, shown) == said
