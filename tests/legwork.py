"""Pieces on legs for hypothesis: files that a shop might make."""

from hypothesis import strategies as st

from carcases import seasons, sixteenths, timbers
from units import chest

ROWS = (
    {},
    {"columns": 2},
    {"holds": "open", "across": [{"shelves": 1}]},
    {"holds": "doors", "across": [{"leaves": 2}, {"holds": "open"}]},
    {"across": [{}, {"holds": "doors"}]},
)
"""What a row under the top one holds."""


@st.composite
def pieces_on_legs(draw):
    """The data of a unit file; every one of them can be built, if only with cautions."""
    rows = draw(st.integers(1, 3))
    rail = draw(st.sampled_from([0.625, 0.75, 0.875]))
    leg = draw(sixteenths(1.25, 2.5))
    apron = draw(st.sampled_from([0.625, 0.75, 0.875]))
    apron_height = rows * draw(sixteenths(3.5, 6)) + (rows + 1) * rail
    top, below = 0.75, draw(sixteenths(2, 20))
    slips = draw(st.sampled_from([None, {"thickness": "3/8", "height": "5/8", "depth": "3/16"}]))
    bottom = draw(
        st.sampled_from([{"kind": "solid"}, {"kind": "ply"}, {"kind": "ply", "hold": "under the back"}])
    )
    return {
        **chest(),
        "body": {
            "width": draw(sixteenths(12, 32)),
            "depth": draw(sixteenths(11, 24)),
            "overall_height": below + apron_height + top,
        },
        "construction": {
            "kind": "legs",
            "leg": leg,
            "tapered": draw(st.booleans()),
            "apron": apron,
            "apron_height": apron_height,
            "setback": draw(sixteenths(0, min(0.25, leg - apron))),
            "rail": rail,
            "fixing": draw(st.sampled_from(["buttons", "slots"])),
        },
        "top": {"thickness": top, "overhang_sides": draw(sixteenths(0, 1.5))},
        "rows": [{}, *(draw(st.sampled_from(ROWS)) for _ in range(rows - 1))],
        "graduation": {"rule": "equal"},
        "doors": {"hinge_length": "3/4", "make": {"kind": "slab", "held": "ply"}},
        "woods": {"case": draw(timbers()), "drawers": draw(timbers()), "inside": draw(timbers())},
        "season": draw(seasons()),
        "drawers": {"bottom": bottom, "groove": {"height": "1/4", "width": "1/4", "slips": slips}},
    }
