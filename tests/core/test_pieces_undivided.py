"""A case with nothing between its rows: drawers hang one right above the other, and fronts set them out."""

from itertools import pairwise

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.words.describe import describe
from units import built, chest

SLIDES = {"kind": "slides"}
UNDIVIDED = {"case.divider_kind": "none", "drawers.running": SLIDES}
OVERLAY = {"kind": "full overlay", "edge": "1/16", "gap": "1/8"}


def made(changes=None):
    """A chest of three drawers on slides, 24 wide and 16 deep, with nothing between its rows."""
    return built(chest({**UNDIVIDED, **(changes or {})}))


def said(unit, rule):
    return {found.verdict for found in unit.findings if found.rule == rule}


def test_a_row_more_takes_nothing_from_the_openings():
    body = {"width": 24, "depth": 16, "body_height": 20}
    three, four = (made({"body": body, "rows": [{}] * count}) for count in (3, 4))
    # Geometry: body - rail - bottom, and no divider.
    assert three.face.opening_total == four.face.opening_total == 20 - 2 * 3 / 4
    divided = built(chest({"body": body, "rows": [{}] * 4}))
    assert four.face.opening_total - divided.face.opening_total == 3 * 3 / 4


@pytest.mark.parametrize("style", [{"kind": "inset"}, OVERLAY])
@pytest.mark.parametrize("sides", ["solid", "framed", "plywood"])
def test_nothing_is_cut_for_between_the_rows(sides, style):
    unit = made({"case.sides": sides, "drawers.style": style})
    marks = {part.line for part in unit.parts}
    assert not marks & {"C3", "W1", "W2", "D1", "D2", "D3"}
    assert not [placed for placed in unit.case_joints if placed.key.startswith("dividers")]
    assert said(unit, "stack closes") == {Verdict.PASS}
    assert unit.face.divider_tops(unit.spec.frame.divider) == ()
    assert "Nothing lies between the rows" in " ".join(describe(unit))


@pytest.mark.parametrize("graduation", [{"rule": "equal"}, {"rule": "step", "step": 1}, {"rule": "step"}])
def test_fronts_over_the_whole_case_grow_by_the_rule(graduation):
    unit = made({"case.sides": "plywood", "drawers.style": OVERLAY, "graduation": graduation})
    heights = [drawer.sizes.face.height for drawer in unit.drawers]
    # Geometry: all fronts together are the face less two reveals and two gaps, down to 1/64.
    whole = int((unit.face.body_height - 2 / 16 - 2 / 8) * 64) / 64
    assert sum(heights) == pytest.approx(whole)
    step = 0 if graduation["rule"] == "equal" else graduation.get("step", 3 / 4)
    assert heights[1] - heights[0] == pytest.approx(step, abs=1 / 16)
    assert heights[2] - heights[1] == pytest.approx(step, abs=3 / 32)
    assert said(unit, "front covers its opening") == {Verdict.PASS}
    assert sum(row.height for row in unit.face.rows) == pytest.approx(unit.face.opening_total)


def test_a_locked_height_is_that_of_the_front():
    rows = [{"height": "5"}, {}, {}]
    unit = made({"case.sides": "plywood", "drawers.style": OVERLAY, "rows": rows})
    assert unit.drawers[0].sizes.face.height == 5


def test_columns_stand_between_partitions_with_rows_of_their_own():
    rows = [{"across": [{"rows": [{}, {}]}, {"rows": [{}, {}, {}]}]}]
    unit = made({"body.width": 40, "case.sides": "plywood", "drawers.style": OVERLAY, "rows": rows})
    assert len(unit.drawers) == 5
    for column in (1, 2):
        faces = [each.sizes.face for each in unit.drawers if each.code.startswith(f"A-R1-{column}-")]
        gaps = [upper.bottom - lower.top for upper, lower in pairwise(faces)]
        assert gaps == pytest.approx([1 / 8] * len(gaps))
        assert faces[0].top == pytest.approx(unit.face.body_height - 1 / 16)
        assert faces[-1].bottom == pytest.approx(1 / 16)
    assert said(unit, "front covers its opening") == {Verdict.PASS}


def test_drawers_that_stand_on_runners_want_something_to_run_on():
    with pytest.raises(CannotBuild, match="nothing to run on; hang them on slides or at their sides"):
        made({"drawers.running": {"kind": "runners"}})


@pytest.mark.parametrize(
    "rows", [[{"columns": 2}, {}], [{}, {"columns": 2}], [{}, {"holds": "open"}], [{"holds": "doors"}, {}]]
)
def test_what_stands_on_a_divider_is_refused_without_one(rows):
    with pytest.raises(CannotBuild, match=r"case\.divider_kind: row [12] .* choose rails"):
        made({"rows": rows})


def test_a_divider_that_was_typed_counts_for_nothing():
    assert made({"case.divider": "1/2"}).face.opening_total == made().face.opening_total
