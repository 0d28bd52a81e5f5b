"""A frame with panels: it closes, its panels keep their play at the wettest and stay in at the driest."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as some

from casewright.joinery.chisels import RACK
from casewright.measure.findings import Verdict
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.panel_spec import Panelling, SheetChoice
from casewright.pieces.layout.season import Climate
from casewright.pieces.panels.checks import frame_checks
from casewright.pieces.panels.frame import FrameAsked, frame_limits, plan_frame
from casewright.pieces.panels.joints import frame_tenons
from casewright.pieces.panels.parts import FramePlace, frame_parts

CLIMATE = Climate(now=8.5, driest=6.2, wettest=11.0, swelling=2.5, drying=2.3)
CHERRY = Timber(wood="cherry")
CHERRY_FLAT = 0.00248
"""Wood Handbook, FPL-GTR-190 (2010), table 13-5: black cherry, tangential."""


def frame(width=20.0, height=39.5, thickness=0.75, **how):
    asked = FrameAsked(
        width=width,
        height=height,
        thickness=thickness,
        how=Panelling(**how),
        timber=CHERRY,
        panel=CHERRY,
    )
    return plan_frame(asked, CLIMATE, Ledger(), "side")


def stands(planned, **place):
    return list(
        frame_parts(
            planned,
            FramePlace(
                **{
                    "code": "A-S",
                    "line": "J",
                    "name": "Side",
                    "x": 0,
                    "y": 0,
                    "z": 0,
                    "is_side": True,
                    **place,
                }
            ),
        )
    )


def findings(planned):
    return {found.rule: found for found in frame_checks(planned, CLIMATE, Ledger(), "side", "A-S")}


def test_a_side_by_hand():
    """Geometry, and the handbook's equation 13-2 for the panel: 20 wide, stiles 3, grooves 3/8."""
    planned = frame(tenon=1.25)
    assert planned.clear_width == 20 - 2 * 3
    # (14 + 3/4 - 1/16) / (1 + 0.00248 x 2.5) = 14.597, down to 1/64: 14-19/32
    assert planned.panel_width == 14 + 19 / 32
    assert planned.play == pytest.approx(5 / 64)
    assert planned.play >= planned.panel_width * CHERRY_FLAT * 2.5 / 2 + 1 / 32
    assert planned.panel_height == 39.5 - 6 + 3 / 4 - 2 / 32
    rails = [part for part in stands(planned) if part.line == "J2"]
    assert [part.length for part in rails] == [20 - 6 + 2.5] * 2
    held = findings(planned)["panel held"]
    assert held.verdict is Verdict.PASS
    assert held.found == pytest.approx(3 / 8 - 5 / 64 - 14.59375 * CHERRY_FLAT * 2.3 / 2)


def test_plywood_does_not_move_and_its_groove_is_as_wide_as_the_sheet():
    planned = frame(ply=SheetChoice(sheet="hardwood plywood", nominal="1/4"))
    assert planned.sheet is not None
    assert planned.groove == planned.panel_thickness == planned.sheet.thickness
    assert planned.panel_width == 14 + 3 / 4 - 2 / 32
    assert findings(planned)["panel held"].found == pytest.approx(3 / 8 - 1 / 32)
    assert [part.sheet for part in stands(planned) if part.line == "J4"] == [True]


def test_a_thin_frame_has_a_narrower_groove_so_that_its_tenons_keep_their_shoulders():
    """Common practice: 3/16 of shoulder on both sides of a tenon as thick as the groove is wide."""
    assert frame().groove == 1 / 4
    assert frame(thickness=0.5).groove == 1 / 2 - 2 * 3 / 16
    thin = frame(thickness=0.5, panel="3/8", stile="2-1/2")
    parts = {part.code: part for part in stands(thin)}
    made = frame_tenons(thin, ["A-S"], parts, RACK, Ledger(), "back", "case.joints", "back")
    assert not [found for found in made.findings if found.verdict is Verdict.STOP]


def test_too_little_play_bursts_the_frame_and_too_shallow_a_groove_lets_the_panel_out():
    burst = findings(frame(play="1/32"))["panel play"]
    assert burst.verdict is Verdict.STOP
    assert findings(frame(play=burst.needed))["panel play"].verdict is Verdict.PASS
    loose = findings(frame(width=40, groove_depth="1/4"))["panel held"]
    assert loose.verdict is Verdict.STOP
    assert "muntin" in str(loose.remedy)
    assert findings(frame(width=40, groove_depth="1/4", muntins=3))["panel held"].verdict is Verdict.PASS


def test_a_panel_that_is_too_thick_or_too_thin_for_its_frame_is_named():
    assert "panel in its groove" not in findings(frame())
    assert findings(frame(panel="5/8"))["panel in its groove"].verdict is Verdict.CAUTION
    assert findings(frame(panel="3/16"))["panel in its groove"].verdict is Verdict.STOP


@given(
    width=some.floats(18, 60),
    height=some.floats(20, 80),
    stile=some.floats(1.5, 3),
    middle_rails=some.integers(0, 2),
    muntins=some.integers(0, 2),
    is_side=some.booleans(),
    shows_first=some.booleans(),
)
def test_any_frame_closes(width, height, stile, middle_rails, muntins, is_side, shows_first):
    planned = frame(width, height, stile=stile, middle_rails=middle_rails, muntins=muntins)
    assert all(
        value <= most for _, value, most, _ in frame_limits("x", planned.asked.how, width, height, 0.75)
    )
    parts = stands(planned, is_side=is_side, shows_first=shows_first)
    assert all(min(part.thickness, part.width, part.length) > 0 for part in parts)
    assert len([part for part in parts if part.line == "J4"]) == planned.panels
    stiles = [part for part in parts if part.line == "J1"]
    start, wide = ("y", "depth") if is_side else ("x", "width")
    edges = [getattr(part.box, start) for part in stiles]
    assert edges[1] + getattr(stiles[1].box, wide) - edges[0] == pytest.approx(width)
    # Down the frame: rails and fields between them make its height.
    rails = sorted((part for part in parts if part.line == "J2"), key=lambda part: part.box.z)
    assert rails[0].box.z == pytest.approx(0)
    assert rails[-1].box.z + rails[-1].width == pytest.approx(height)
    for below, above in pairwise(rails):
        assert above.box.z - below.box.z - below.width == pytest.approx(planned.clear_height)
    # Every panel lies within the thickness of the frame, and in the middle of its field.
    thick = "width" if is_side else "depth"
    flat = "x" if is_side else "y"
    for part in parts:
        low, deep = getattr(part.box, flat), getattr(part.box, thick)
        assert deep == part.thickness
        assert low >= -1e-9
        assert low + deep <= 0.75 + 1e-9
        assert part.box.height * getattr(part.box, wide) == pytest.approx(part.width * part.length)


@given(width=some.floats(14, 48), stile=some.floats(1.5, 4), play=some.none())
def test_a_panel_as_wide_as_it_may_be_never_bursts_its_frame(width, stile, play):
    planned = frame(width, stile=stile, play=play)
    wettest = planned.panel_width * (1 + CHERRY_FLAT * 2.5)
    assert wettest <= planned.clear_width + 2 * 3 / 8 - 2 / 32 + 1e-9
    assert findings(planned)["panel play"].verdict is Verdict.PASS


def test_its_tenons_are_worked_out_on_the_boards_that_they_are_cut_on():
    planned = frame(middle_rails=1, muntins=1, bottom_rail="4")
    parts = {part.code: part for part in stands(planned)}
    made = frame_tenons(planned, ["A-S"], parts, RACK, Ledger(), "sides", "case.joints", "side")
    assert [each.key for each in made.joints] == [
        "sides_top",
        "sides_bottom",
        "sides_middle",
        "sides_muntins",
    ]
    assert [each.places for each in made.joints] == [2, 2, 2, 4]
    assert not [found for found in made.findings if found.verdict is Verdict.STOP]
    top, _, middle, muntins = (each.joint for each in made.joints)
    assert top.rail_length == pytest.approx(20 - 6 + 2 * planned.tenon)
    # Two grooves are taken off a middle rail, and a muntin's stub is as long as the groove is deep.
    assert middle.width == 3 - 2 * 3 / 8
    assert muntins.given.is_stub
