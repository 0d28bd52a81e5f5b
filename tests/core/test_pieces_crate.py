"""A bank of drawers in a crate: its strips close, cross where the openings say, and carry the drawers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.drawing.drawings import unit_drawings
from casewright.drawing.elevation import elevation
from casewright.drawing.section import section
from casewright.labour.drivers import Driver
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_unit, write_unit
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.takeoff.drivers import count_drivers
from casewright.pieces.words.describe import describe
from units import built, changed, estimated, unit

CLOSE = 1e-9
"""Sums of a few floats below 100 in [in]."""


def bank(changes=None):
    """The file of a bank of three rows of four, 36 x 9 x 17, hung on a cleat."""
    return changed(preset("wall-hung-bank").spec_json, changes or {})


@st.composite
def banks(draw):
    """Banks from 12 to 24 high, 24 to 48 wide, 6 to 10 deep, of two to four rows of three to six."""
    columns = draw(st.integers(3, 6))
    return bank(
        {
            "body": {
                "width": draw(st.integers(24 * 8, 48 * 8)) / 8,
                "depth": draw(st.integers(7 * 8, 10 * 8)) / 8,
                "body_height": draw(st.integers(14 * 8, 24 * 8)) / 8,
            },
            "rows": [{"columns": columns}] * draw(st.integers(2, 3)),
            "construction.strip": draw(st.sampled_from(["3/8", "1/2"])),
            "graduation": {"rule": "equal"},
        }
    )


def strips(made, line):
    return [part for part in made.parts if part.line == line]


@given(banks())
def test_strips_openings_and_boards_close_in_both_directions(data):
    made = built(data)

    face, case, strip = made.face, made.spec.case, made.spec.crate.strip
    rows = face.rows
    high = sum(row.height for row in rows) + (len(rows) - 1) * strip + made.spec.top.thickness + case.bottom
    assert high == pytest.approx(face.body_height, abs=CLOSE)
    for row in rows:
        wide = sum(opening.width for opening in row.openings) + len(row.uprights) * strip + 2 * case.side
        assert wide == pytest.approx(made.spec.body.width, abs=CLOSE)
    assert (len(strips(made, "G1")), len(strips(made, "G2"))) == (len(rows) - 1, len(rows[0].uprights))


@given(banks())
def test_every_opening_lies_between_strips_and_every_strip_reaches_its_housings(data):
    made = built(data)

    base, housing = made.face.base_height, made.spec.case.housing
    levels = [part.box for part in strips(made, "G1")]
    uprights = [part.box for part in strips(made, "G2")]
    for opening in made.face.openings:
        low, high = base + opening.bottom, base + opening.bottom + opening.height
        right = opening.left + opening.width
        assert not [box for box in levels if box.z < high - CLOSE and box.z + box.height > low + CLOSE]
        assert not [
            box for box in uprights if box.x < right - CLOSE and box.x + box.width > opening.left + CLOSE
        ]
    assert {box.x + housing for box in levels} == {made.spec.case.side}
    assert {round(box.z + housing - base, 9) for box in uprights} == {made.spec.case.bottom}


def test_strips_run_through_and_are_notched_where_the_others_stand():
    made = built(bank())

    # 36 less two sides of 3/4, and 1/4 into each; 17 less top and bottom of 3/4 likewise
    assert {part.length for part in strips(made, "G1")} == {35}
    assert {part.length for part in strips(made, "G2")} == {16}
    found = {setting.name: setting.value for setting in lap(made).settings}
    # four of (34-1/2 - 3 x 1/2) / 4 = 8-1/4: the first notch 1/4 and 8-1/4 from the end of a level strip
    assert [found[f"level_{number}"] for number in (1, 2, 3)] == [8.5, 17.25, 26.0]
    lowest = made.face.rows[-1]
    assert found["upright_1"] == pytest.approx(0.25 + lowest.height, abs=CLOSE)
    assert found["level_notch"] + found["upright_notch"] == pytest.approx(made.face.opening_depth, abs=CLOSE)


def lap(made, key="laps"):
    return next(placed.joint for placed in made.case_joints if placed.key == key)


def test_a_measured_strip_sets_the_width_of_the_notches_that_take_it():
    made = built(bank({"measured": {"parts": {"G-U2": {"thickness": "31/64"}}}}))

    placed = {joint.key: joint for joint in made.case_joints}
    # the one that measured less has laps of its own
    assert placed["laps_2"].cut_on("upright strip") == ("A-G-U2",)
    assert [lap(made, key).level_width for key in ("laps_1", "laps_2")] == [0.5, 31 / 64]
    assert {lap(made, key).upright_width for key in ("laps_1", "laps_2")} == {0.5}


def test_the_case_is_four_boards_dovetailed_through():
    made = built(bank())

    titles = {joint.key: joint.title for joint in made.case_joints}
    assert "through carcase dovetail" in titles["case_top"]
    assert "through carcase dovetail" in titles["bottom"]
    assert {part.line for part in made.parts}.isdisjoint({"C2", "C3", "C4", "C5", "C7", "W1", "W2", "W4"})


def test_what_the_notches_take_weighs_nothing():
    made = built(bank())

    depth, strip = made.face.opening_depth, 0.5
    crossings = len(strips(made, "G1")) * len(strips(made, "G2"))
    wood = sum(part.volume for part in (*strips(made, "G1"), *strips(made, "G2")))
    whole = sum(
        part.thickness * part.width * part.length for part in (*strips(made, "G1"), *strips(made, "G2"))
    )
    # at each crossing one strip's wood stands where two would
    assert whole - wood == pytest.approx(crossings * strip * strip * depth, abs=1e-6)


def test_every_crossing_is_counted_for_the_hours():
    held = estimated(bank())

    drivers = count_drivers(held.unit, held.takeoff)
    assert drivers[Driver.CROSS_LAPS] == 2 * 3
    assert drivers[Driver.HOUSED_ENDS] == 2 * (2 + 3)
    assert drivers[Driver.CLEATS] == 1


def test_it_is_drawn_and_described_as_a_crate():
    made = built(bank())

    # an upright strip is seen between the level ones that run before it
    assert elevation(made).body.count("A-G-U1") == 3
    assert "A-G-L1" in section(made).body
    assert "notched over each other where they cross" in " ".join(describe(made))
    assert "hangs on the wall" in " ".join(describe(made))


def test_its_file_reads_back_as_it_was_written():
    spec = unit(bank())

    assert read_unit(write_unit(spec)) == spec


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"rows": [{"columns": 4}, {"columns": 3}]}, r"rows\[2\].columns"),
        ({"rows": [{"widths": ["8", None]}, {"widths": ["9", None]}]}, r"rows\[2\].columns"),
        ({"rows": [{"holds": "open"}, {}]}, "rows"),
        ({"top": {"fixing": "buttons"}}, "top.fixing"),
        ({"case": {"sides": "framed", "rail_width": "4-1/2"}}, "case.rail_width"),
        ({"drawers.running": {"kind": "side-hung"}}, "drawers.running"),
    ],
)
def test_what_strips_that_run_through_cannot_be_is_refused(changes, field):
    with pytest.raises(CannotBuild, match=f"^{field}: "):
        built(bank(changes))


def test_fronts_before_a_crate_are_not_taken_for_its_strips():
    made = built(bank({"drawers.style": {"kind": "full overlay"}}))

    [lap] = [each for each in made.case_joints if each.key == "laps"]
    assert lap.places == 2 * 3
    assert (len(strips(made, "G1")), len(strips(made, "G2"))) == (2, 3)
    assert unit_drawings(built(bank({"drawers.style": {"kind": "full overlay"}, "rows": [{}, {}]})))


@pytest.mark.parametrize(
    ("sides", "said", "corner"),
    [
        ("plywood", "built of plywood 3/4 in thick; strips", "housing"),
        ("framed", "frames 3/4 in thick around panels", "frame-tenon"),
    ],
)
def test_a_crate_in_other_sides_has_its_strips_housed_there_with_room_to_grow(sides, said, corner):
    made, solid = built(bank({"case.sides": sides})), built(bank())

    assert not [each for each in made.findings if str(each.verdict) == "stop"]
    kinds = {joint.key: joint.kind for joint in made.case_joints}
    assert kinds["laps"] == "cross-lap"
    assert {kinds["strips_level"], kinds["strips_upright"]} == {"housing"}
    assert corner in kinds.values()
    grows = made.face.opening_depth - strips(made, "G1")[0].width
    assert 0 < grows <= 1 / 4, "a strip moves across its grain, and these sides do not"
    assert strips(solid, "G1")[0].width == solid.face.opening_depth
    assert said in " ".join(describe(made))
    reach = made.spec.case.housing
    assert {round(part.length - 2 * reach, 9) for part in strips(made, "G1")} == {
        round(made.face.clear_width, 9)
    }
    assert all(part.box.z + part.box.height <= made.face.body_height for part in strips(made, "G2"))
