"""The back of a case: what each kind takes of the depth, how large its parts are, what moves in it."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.words.describe import describe
from units import built, chest, estimated

PLY = 0.20472
"""What 1/4 in hardwood plywood measures, 5.2 mm, by the sheet table [in]."""


def backed(back, **changes):
    """The small chest, 24 x 16 with openings of 18 in all, with a back."""
    return built(chest({"back": back, **changes}))


def found(made, rule):
    return [finding for finding in made.findings if finding.rule == rule]


def of_back(made):
    """Line, quantity, thickness, width and length of the parts of a back."""
    return [
        (
            line.line,
            line.quantity,
            *(round(size, 6) for size in (line.part.thickness, line.part.width, line.part.length)),
        )
        for line in made.lines
        if line.line[0] == "P"
    ]


@pytest.mark.parametrize(
    ("back", "depth"),
    [
        ({}, 15.5),
        ({"kind": "tongued", "thickness": "3/4"}, 15.25),
        ({"kind": "panelled", "thickness": "3/4"}, 15.25),
        ({"kind": "rabbeted-ply"}, 16 - PLY),
        # and 1/2 of wood is left behind its grooves
        ({"kind": "grooved-ply"}, 16 - PLY - 0.5),
        ({"kind": "none"}, 16.0),
    ],
)
def test_the_opening_is_as_deep_as_the_back_leaves_it(back, depth):
    made = backed(back, **{"use": {"free_standing": False}})

    assert made.face.opening_depth == depth
    assert {drawer.sizes.opening.depth for drawer in made.drawers} == {depth}


def test_tongued_boards_cover_the_back_less_their_tongues():
    made = backed({"kind": "tongued", "lap": "5/16", "boards": 4})

    # 22-1/2 between the sides and 3/8 into each; a board covers itself less 5/16 of tongue, and 1/16 of gap
    (line,) = of_back(made)
    width = (23.25 + 3 * (0.3125 - 0.0625)) / 4
    assert line == ("P1", 4, 0.5, width, made.face.body_height)
    last = max(part.box.x + part.box.width for part in made.parts if part.line == "P1")
    assert last == pytest.approx(0.75 - 0.375 + 23.25, abs=1e-9)


def test_tongues_are_laid_out_a_third_of_the_board_thick_unless_said():
    titles = {joint.key: joint for joint in backed({"kind": "tongued", "thickness": "3/4"}).case_joints}

    assert titles["back"].title == "Back boards, tongue and groove"
    assert titles["back"].joint.given.tongue == 0.25


@pytest.mark.parametrize(
    ("tongue", "verdict"),
    # boards of 6 in poplar, flat 0.00289, lose 2.3 % x 6 x 0.00289 = 0.040: a gap of 1/16 opens to 0.102
    [("1/4", Verdict.PASS), ("7/32", Verdict.STOP)],
)
def test_a_tongue_still_reaches_an_eighth_into_its_groove_at_the_driest(tongue, verdict):
    air = {"season": {"shop": {"moisture": 8.5}, "driest": {"moisture": 6.2}, "wettest": {"moisture": 11.0}}}
    (finding,) = found(backed({"kind": "tongued", "lap": tongue, "boards": 4}, **air), "back laps")

    board = (23.25 + 3 * (of_inch(tongue) - 0.0625)) / 4
    dry = 0.00289 * 2.3
    assert finding.found == pytest.approx(of_inch(tongue) * (1 - dry) - (0.0625 + board * dry), abs=2e-4)
    assert finding.verdict == verdict


def of_inch(text):
    """A fraction as a float."""
    top, bottom = text.split("/")
    return int(top) / int(bottom)


def test_plywood_in_grooves_reaches_into_the_case_all_round():
    made = backed({"kind": "grooved-ply", "groove": "3/8"})

    # between sides of 3/4: 22-1/2; between rail and bottom of 3/4: the body less 1-1/2
    (line,) = of_back(made)
    assert line == ("P2", 1, PLY, 22.5 + 0.75, made.face.body_height - 1.5 + 0.75)
    (part,) = [part for part in made.parts if part.line == "P2"]
    assert (part.sheet, part.box.y, part.box.x, part.box.z) == (True, 15.5 - PLY, 0.375, 4 + 0.75 - 0.375)


def test_the_case_bottom_and_rail_go_on_behind_a_back_in_grooves():
    made = backed({"kind": "grooved-ply"})

    deep = {part.code: part.box.y + part.box.depth for part in made.parts}
    assert (deep["A-C-B"], deep["A-C-RB"]) == (16.0, 16.0)


def test_plywood_in_rabbets_covers_the_case_as_boards_do():
    (line,) = of_back(made := backed({"kind": "rabbeted-ply"}))

    assert line == ("P2", 1, PLY, 22.5 + 0.75, made.face.body_height)


def test_a_panelled_back_is_a_frame_in_the_rabbets_with_loose_panels():
    made = backed({"kind": "panelled", "panelling": {"muntins": 1}})

    lines = {line.line: line for line in made.lines}
    high = made.face.body_height
    assert lines["PF1"].part.length == high
    # 23-1/4 over the rabbets, less stiles of 2-1/2: the rails reach a tenon further at each end
    tenon = (lines["PF2"].part.length - (23.25 - 5)) / 2
    assert 0 < tenon < 2.5
    counts = [sum(part.line == mark for part in made.parts) for mark in ("PF1", "PF2", "PF3", "PF4")]
    assert counts == [2, 2, 1, 2]
    assert found(made, "panel play")[0].verdict == Verdict.PASS
    # nothing stands out behind the case
    assert max(part.box.y + part.box.depth for part in made.parts if part.line[0] == "P") <= 16.0
    assert "back" in {joint.key.split("_")[0] for joint in made.case_joints}


def test_a_case_without_a_back_is_cautioned_unless_the_building_holds_it():
    verdicts = [
        found(backed({"kind": "none"}, use={"free_standing": free}), "back braces")[0].verdict
        for free in (True, False)
    ]
    assert verdicts == [Verdict.CAUTION, Verdict.PASS]


@pytest.mark.parametrize("kind", ["shiplap", "tongued", "panelled", "rabbeted-ply", "grooved-ply", "none"])
def test_every_back_is_described_priced_and_timed(kind):
    held = estimated(chest({"back": {"kind": kind}}))

    assert any("back" in paragraph for paragraph in describe(held.unit))
    assert held.unpriced == ()


@pytest.mark.parametrize(
    ("back", "field"),
    [
        ({"kind": "grooved-ply", "groove": "3/4"}, "back.groove"),
        ({"kind": "grooved-ply", "behind": "6"}, "back.behind"),
        ({"kind": "tongued", "tongue": "1/2"}, "back.tongue"),
        ({"kind": "panelled", "panelling": {"stile": "12"}}, "back.panelling.stile"),
        ({"kind": "rabbeted-ply", "rabbet": "3/4"}, "back.rabbet"),
    ],
)
def test_a_back_that_leaves_no_wood_is_refused_with_what_would_do(back, field):
    with pytest.raises(CannotBuild, match=rf"{field}: .* or less"):
        backed(back)


@pytest.mark.parametrize(("width", "panels"), [(16, 1), (24, 2), (48, 3), (66, 4)])
def test_a_panelled_back_divides_itself_so_that_no_panel_is_wider_than_14_in(width, panels):
    made = built(chest({"body.width": width, "back.kind": "panelled"}))

    found = [part for part in made.case.parts if part.code.startswith("A-K-P")]
    uprights = [part for part in made.case.parts if part.code.startswith("A-K-M")]
    assert (len(found), len(uprights)) == (panels, panels - 1)
    assert made.case.back_frame.clear_width <= 14, "common practice"
    assert not [each for each in made.findings if str(each.verdict) == "stop" and each.about == "A-K"]


def test_muntins_that_are_given_are_kept():
    made = built(chest({"body.width": 48, "back": {"kind": "panelled", "panelling": {"muntins": 1}}}))

    assert made.case.back_frame.panels == 2
