"""The joints of a unit beside its drawers' dovetails: those of the case, and the bottoms in their grooves."""

from collections.abc import Iterator
from dataclasses import replace

from casewright.joinery.families.bottom_groove.asked import UNDER_THE_BACK, BottomGroove
from casewright.joinery.families.bottom_groove.joint import BottomJoint
from casewright.joinery.layout import CannotBeLaidOut
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.end_joints import drawer_ends
from casewright.pieces.drawers.bottoms import bottom_joint
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.notch_parts import notch_advice
from casewright.pieces.drawers.sizes import INNER_BACK, INNER_SIDES, SHORT_BACKS
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.parts import CutOut

GROOVED = (("side", ("SL", "SR")), ("slip", ("XL", "XR")), ("muntin", ("M",)))
BACKS = (("back", ("B", *SHORT_BACKS)), ("inner side", INNER_SIDES), ("inner back", (INNER_BACK,)))
"""Grooved where the bottom is held all round: the back, or the boards around a notch."""
HALVES = (("left half of the bottom", ("N1",)), ("right half of the bottom", ("N2",)))


def other_joints(unit: Construction) -> tuple[PlacedJoint, ...]:
    """Every joint of a unit but the usual dovetails of its drawers: of the case, other corners, then bottoms.

    Args:
        unit: the unit, worked out

    Returns:
        The joints, drawers with the same bottom together.

    Source: common practice; each joint names its own.
    """
    return (*unit.case_joints, *drawer_ends(unit), *_bottoms(unit))


def _bottoms(unit: Construction) -> Iterator[PlacedJoint]:
    if unit.spec.drawers.screwed_under:
        return
    alike: dict[tuple[BottomGroove, CutOut | None], list[tuple[Drawer, BottomJoint]]] = {}
    for drawer in unit.drawers:
        try:
            joint = bottom_joint(unit.spec, drawer, unit.climate, unit.ledger)
        except CannotBeLaidOut:
            continue  # a measured side that the groove cuts in two is stopped by the checks of its drawer
        alike.setdefault((replace(joint.given, mark=""), drawer.bottom.cut_out), []).append((drawer, joint))
    known = {part.code for part in unit.parts}
    for held in alike.values():
        first, joint = held[0]
        drawers = [drawer for drawer, _ in held]
        bottoms = HALVES if joint.pieces > 1 else (("bottom", ("N",)),)
        around = () if joint.given.grooves == UNDER_THE_BACK else BACKS
        # Slips carry the groove in place of the sides.
        grooved = [
            (board, marks) for board, marks in GROOVED if board != ("side" if joint.given.slip else "slip")
        ]
        boards = (("front", (first.sizes.joined,)), *grooved, *bottoms, *around)
        serves = ((board, _codes(drawers, marks, known)) for board, marks in boards)
        yield PlacedJoint(
            key=f"bottom_{first.sizes.code}",
            kind="bottom-groove",
            title=f"Drawer bottom in its grooves{_such_as(joint, first)}",
            places=len(drawers),
            serves=tuple((board, codes) for board, codes in serves if codes),
            joint=joint,
            working=f"{first.sizes.code}.bottom_joint",
            drawers=tuple(drawer.code for drawer in drawers),
            advice=(notch_advice(first.bottom.cut_out),) if first.bottom.cut_out else (),
        )


def _such_as(joint: BottomJoint, drawer: Drawer) -> str:
    if drawer.bottom.cut_out:
        return ", notched"
    return ", with a muntin" if joint.given.muntin else ""


def _codes(drawers: list[Drawer], marks: tuple[str, ...], known: set[str]) -> tuple[str, ...]:
    codes = (f"{drawer.code}-{mark}" for drawer in drawers for mark in marks)
    return tuple(code for code in codes if code in known)
