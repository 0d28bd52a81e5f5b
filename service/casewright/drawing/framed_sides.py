"""A framed case side as it is seen from inside: its stiles, rails and muntins around the panels."""

from casewright.drawing.canvas import Line
from casewright.drawing.view import View
from casewright.pieces.built.construct import Construction

FRAME = ("V1", "V2", "V3")
"""Stiles, rails and muntins of a side."""


def draw_framed_side(view: View, unit: Construction) -> None:
    """Draws the frame of the left side, beyond the plane of a section; its panels lie between its members.

    Args:
        view: the section
        unit: the unit, worked out

    Source: common practice of shop drawing.
    """
    frame = unit.case.plan.frame
    if frame is None:
        return
    middle = unit.spec.body.width / 2
    for part in unit.case.parts:
        if part.line not in FRAME or part.box.x > middle:
            continue
        box = part.box
        start, end = box.y, box.y + box.depth
        foot, top = box.z, box.z + box.height
        if part.line == "V2":  # without its tenons
            start, end = start + frame.tenon, end - frame.tenon
        if part.line == "V3":
            foot, top = foot + frame.stub, top - frame.stub
        view.rectangle(Line.SEEN, start, foot, end - start, top - foot, part.code)
