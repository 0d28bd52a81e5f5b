"""The layouts that the drawers of a unit could have: every count and every pin, as one family, and taken."""

import json
from collections.abc import Sequence
from dataclasses import replace
from enum import StrEnum
from typing import Any

from casewright.joinery.families.half_blind.joint import HalfBlindJoint, half_blind
from casewright.joinery.families.through.joint import ThroughJoint, through
from casewright.joinery.family import BoardEnd, Family, Row, SetOut, families
from casewright.measure.lengths import write_length
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.reading import read_as, write_unit
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.joints import back_end, front_end


class DrawerEnd(StrEnum):
    """Which end of a drawer's sides: into the front, half-blind, or at the back, through."""

    FRONT = "front"
    BACK = "back"

    @property
    def joint_name(self) -> str:
        """What its joint is called in a unit file."""
        return f"{self.value}_joint"

    @property
    def tails_name(self) -> str:
        """What a row's number of tails at this end is called in a unit file."""
        return f"{self.value}_tails"


def has_tails(drawers: Sequence[Drawer], end: DrawerEnd) -> bool:
    """Whether the sides of a unit's drawers end in tails there.

    Args:
        drawers: the unit's drawers
        end: which end of the sides

    Returns:
        Whether they are dovetailed.

    Source: common practice.
    """
    if not drawers:
        return False
    joints = drawers[0].joints
    return (joints.front_set_out if end is DrawerEnd.FRONT else joints.back_set_out) is not None


def set_out_of(drawers: Sequence[Drawer], end: DrawerEnd) -> SetOut:
    """How one of the two joints is set out through the unit.

    Args:
        drawers: the unit's drawers
        end: which end of the sides

    Returns:
        What every row shares.

    Raises:
        ValueError: another joint is cut there

    Source: common practice.
    """
    joints = drawers[0].joints
    found = joints.front_set_out if end is DrawerEnd.FRONT else joints.back_set_out
    if found is None:
        raise ValueError(f"The drawers have no dovetails at the {end.value}.")
    return found


def tail_end(drawer: Drawer, end: DrawerEnd) -> BoardEnd:
    """The end of a drawer's side on which the tails stand.

    Args:
        drawer: the drawer
        end: which end

    Returns:
        The end as it is now.

    Source: geometry of the joint.
    """
    return front_end(drawer.sizes) if end is DrawerEnd.FRONT else back_end(drawer.sizes)


def unit_families(
    spec: UnitSpec, drawers: Sequence[Drawer], end: DrawerEnd, pins: Sequence[Inches] | None = None
) -> tuple[Family, ...]:
    """Every width of the pin with all rows of a unit laid out by it, the best looking family first.

    A row of several drawers stands for all of them by the first from the left, as its number of tails does.

    Args:
        spec: what the maker chose
        drawers: the unit's drawers, row by row from the top
        end: which end of the sides
        pins: the widths of the pin to be tried; None for the present one and the usual ones [in]

    Returns:
        The families.

    Source: common practice; the weights are from memory.
    """
    first = [each for each in drawers if each.sizes.opening.is_first]
    rows = []
    for each in first:
        mark, joints = each.sizes.opening.row_mark, each.joints
        rows.append(
            Row(
                name=f"row {mark}",
                end=tail_end(each, end),
                drawn=joints.front_drawn if end is DrawerEnd.FRONT else joints.back_drawn,
                tails=getattr(row_of(spec.rows, mark), end.tails_name),
            )
        )
    return families(set_out_of(drawers, end), rows, pins)


def laid_out_with(drawer: Drawer, end: DrawerEnd, tails: Count, pin: Inches) -> HalfBlindJoint | ThroughJoint:
    """The joint of a drawer with another number of tails and another pin, all else as it is.

    Args:
        drawer: the drawer
        end: which end of its sides
        tails: the number of tails
        pin: pin between two tails, at the end of the tails [in]

    Returns:
        The joint with its checks.

    Raises:
        CannotBeLaidOut: no width is left for the tails
        ValueError: another joint is cut there

    Source: geometry of the joint.
    """
    joint = drawer.joints.front if end is DrawerEnd.FRONT else drawer.joints.back
    if isinstance(joint, HalfBlindJoint):
        return half_blind(replace(joint.given, tails=tails, pin=pin))
    if isinstance(joint, ThroughJoint):
        return through(replace(joint.given, tails=tails, pin=pin))
    raise ValueError(f"{drawer.code} has no dovetails at the {end.value}.")


def with_layout(
    spec: UnitSpec, row: str, end: DrawerEnd, tails: Count | None, pin: Inches | None
) -> UnitSpec:
    """The choices of a unit with a number of tails for one row and a width of the pin for all of them.

    Args:
        spec: what the maker chose
        row: the mark of the row, such as `5` or `2-1-3`
        end: which end of the sides
        tails: the number of tails; None to leave it to the looks
        pin: the pin of every row's joint at this end; None to leave it as usual [in]

    Returns:
        The choices, checked anew.

    Raises:
        CannotRead: a number is none that a unit can have

    Source: the schema of `UnitSpec`.
    """
    data: dict[str, Any] = json.loads(write_unit(spec))
    _put(_row_in(data, row), end.tails_name, tails)
    joint = data.setdefault("drawers", {}).setdefault(end.joint_name, {})
    _put(joint, "pin", None if pin is None else write_length(pin, spec.unit))
    # What is left empty is left out, so that a choice taken back leaves the file as it was before.
    for holder, name in ((data["drawers"], end.joint_name), (data, "drawers")):
        if not holder[name]:
            del holder[name]
    return read_as(UnitSpec, data)


def _row_in(data: dict[str, Any], mark: str) -> dict[str, Any]:
    """A row of a file by its mark: numbers from one, of rows and columns in turn."""
    row, *inner = (int(number) - 1 for number in mark.split("-"))
    found: dict[str, Any] = data["rows"][row]
    for column, below in zip(inner[::2], inner[1::2], strict=True):
        found = found["across"][column]["rows"][below]
    return found


def _put(holder: dict[str, Any], name: str, value: Any) -> None:
    if value is None:
        holder.pop(name, None)
    else:
        holder[name] = value
