"""Width and depth over all say where they come from, and are what the piece measures."""

import pytest

from casewright.measure.working import explain
from casewright.pieces.built.asked_for import with_asked
from units import built, dresser


@pytest.mark.parametrize(
    ("changes", "width", "depth"),
    [
        # Worked dresser A: 39-1/2 + 2 x 3/4 = 41 wide; 19-3/4 + 3/4 = 20-1/2 deep.
        ({}, 41.0, 20.5),
        # Fronts of 3/4 before the case reach as far as an overhang of 3/4, and further than one of 1/4.
        ({"drawers": {"style": {"kind": "full overlay"}}, "top": {"overhang_front": "1/4"}}, 41.0, 20.5),
    ],
)
def test_width_and_depth_over_all_are_worked_out_from_case_top_and_fronts(changes, width, depth):
    unit = built(dresser(changes))

    assert "overall_width" not in unit.ledger
    for name, size in (("overall_width", width), ("overall_depth", depth)):
        asked = with_asked(unit, name)
        assert asked.ledger[name].value == pytest.approx(size, abs=1e-9)
        assert getattr(asked.spec, name) == pytest.approx(size, abs=1e-9)
    told = explain(with_asked(unit, "overall_width").ledger, "overall_width")
    assert [each.origin for each in told.inputs] == ["body.width", "top.overhang_sides"]
