"""What a case stands on: a plinth, bracket feet, turned feet, or a toe base."""

from collections.abc import Iterator
from math import pi
from string import ascii_uppercase
from typing import Any, NamedTuple

from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.shell_spec import BracketFeet, Plinth, ToeBase, TurnedFeet
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.rules import base_rules, case_rules
from casewright.wood.waste import PartUse

WIDE = 48.0
"""A case wider than this gets a fifth foot under its middle, left out (common practice) [in]."""
THICKEST = 1.75
"""What an 8/4 board gives planed; thicker squares are glued up from several (common practice) [in]."""
ROUND = pi / 4
"""What a turning leaves of its square at the most: the rest are shavings."""


class Ground(NamedTuple):
    """What of a case has a base under it: all of it, or one pedestal.

    Attributes:
        left: its left edge, from the outside of the left case side [in]
        width: how wide it is [in]
        mark: what the codes of its parts end with; nothing where there is but one
    """

    left: Inches
    width: Inches
    mark: str

    @property
    def under(self) -> str:
        """What the figures of its working end with."""
        return self.mark and f"_{self.mark}"


def grounds(spec: UnitSpec, face: Face) -> tuple[Ground, ...]:
    """What of a case has a base under it.

    Args:
        spec: what the maker chose
        face: the pedestals

    Returns:
        The case as a whole, or each pedestal beside a knee space, from the left.

    Source: geometry of the case.
    """
    if len(face.pedestals) == 1:
        only = face.pedestals[0]
        is_whole = only.left == 0.0 and only.right >= spec.body.width - TOLERANCE
        return (Ground(only.left, spec.body.width if is_whole else only.right - only.left, ""),)
    return tuple(
        Ground(each.left, each.right - each.left, str(number))
        for number, each in enumerate(face.pedestals, start=1)
    )


def base_parts(case: CasePlan) -> Iterator[Part]:
    """The parts of what a case stands on; none where it stands on the floor itself.

    Args:
        case: what the case is worked out from

    Returns:
        The parts.

    Source: common practice.
    """
    base = case.spec.stands_on
    for ground in grounds(case.spec, case.face) if base else ():
        if isinstance(base, Plinth):
            yield from _plinth(case, base, ground)
        elif isinstance(base, BracketFeet):
            yield from _bracket_feet(case, base, ground)
        elif isinstance(base, TurnedFeet):
            yield from _turned_feet(case, base, ground)
        elif isinstance(base, ToeBase):
            yield from _toe_base(case, base, ground)


def _show(wood: Timber) -> dict[str, Any]:
    return {**timber(wood), "face": FaceClass.EDGE, "use": PartUse.CASE}


def _hidden(wood: Timber) -> dict[str, Any]:
    return {**timber(wood), "face": FaceClass.INSIDE, "use": PartUse.INSIDE}


def _plinth(case: CasePlan, base: Plinth, ground: Ground) -> Iterator[Part]:
    body, woods, take, back = case.spec.body, case.spec.woods, case.ledger.take, base.setback
    size: dict[str, Any] = {"thickness": base.thickness, "width": base.height}
    across, on = ground.width, ground.under
    if back:
        across = take(
            f"plinth_front_length{on}", base_rules.set_back, whole=ground.width, setback=back, ends=2
        )
    mitred = base.corner == "mitred"
    yield new_part(
        code=case.code(f"B-F{ground.mark}"),
        line="B1",
        name="Plinth front",
        length=across,
        grain=Grain.ACROSS,
        ends=("mitre", "mitre") if mitred else ("butt, over the end of the return",) * 2,
        box=Box(ground.left + back, back, 0.0, across, base.thickness, base.height),
        **size,
        **_show(woods.case),
    )
    covered = 0.0 if mitred else base.thickness
    deep = body.depth
    if back or covered:
        deep = take(
            f"plinth_return_length{on}",
            base_rules.behind_the_front,
            depth=body.depth,
            setback=back,
            front=covered,
        )
    for mark, x in (
        ("L", ground.left + back),
        ("R", ground.left + ground.width - back - base.thickness),
    ):
        yield new_part(
            code=case.code(f"B-{mark}{ground.mark}"),
            line="B2",
            name="Plinth return",
            length=deep,
            grain=Grain.BACK,
            ends=("mitre" if mitred else "butt, behind the front", "butt, screwed to the rear rail"),
            box=Box(x, back + covered, 0.0, base.thickness, deep, base.height),
            **size,
            **_show(woods.case),
        )
    length = take(
        f"plinth_back_length{on}",
        case_rules.between,
        whole=across,
        one_end=base.thickness,
        other_end=base.thickness,
    )
    # Its rear face is flush with that of the case bottom, which it has to carry.
    rear = case.board_depth - base.thickness
    yield new_part(
        code=case.code(f"B-B{ground.mark}"),
        line="B3",
        name="Plinth back rail",
        length=length,
        grain=Grain.ACROSS,
        ends=("butt, between the returns",) * 2,
        box=Box(ground.left + back + base.thickness, rear, 0.0, length, base.thickness, base.height),
        **size,
        **_hidden(woods.inside),
    )


def _bracket_feet(case: CasePlan, base: BracketFeet, ground: Ground) -> Iterator[Part]:
    """Two boards mitred at each front corner; at the rear a side board with a plain bracket behind it."""
    spec, thick, wide, high = case.spec, base.thickness, base.width, base.height
    size: dict[str, Any] = {"thickness": thick, "width": high}
    front, rear = spec.support_front, spec.support_rear
    left, right = ground.left, ground.left + ground.width
    for mark, x in (("FL", left), ("FR", right - wide)):
        yield new_part(
            code=case.code(f"B-{mark}{ground.mark}"),
            line="B1",
            name="Bracket foot, front",
            length=wide,
            grain=Grain.ACROSS,
            ends=("mitre", "sawn to the bracket"),
            box=Box(x, front, 0.0, wide, thick, high),
            **size,
            **_show(spec.woods.case),
        )
    for mark, x in (("L", left), ("R", right - thick)):
        for place, y, end in (("S", front, "mitre"), ("H", rear - wide, "butt, over the rear bracket")):
            yield new_part(
                code=case.code(f"B-{place}{mark}{ground.mark}"),
                line="B2",
                name="Bracket foot, side",
                length=wide,
                grain=Grain.BACK,
                ends=(end, "sawn to the bracket"),
                box=Box(x, y, 0.0, thick, wide, high),
                **size,
                **_show(spec.woods.case),
            )
    length = case.ledger.take(
        f"rear_bracket_length{ground.under}", case_rules.between, whole=wide, one_end=thick, other_end=0.0
    )
    for mark, x in (("L", left + thick), ("R", right - wide)):
        yield new_part(
            code=case.code(f"B-B{mark}{ground.mark}"),
            line="B3",
            name="Rear bracket, plain",
            length=length,
            grain=Grain.ACROSS,
            ends=("butt, glued and screwed to the side", "sawn at a slant"),
            box=Box(x, rear - thick, 0.0, length, thick, high),
            **size,
            **_hidden(spec.woods.inside),
        )


def foot_count(spec: UnitSpec, face: Face) -> Count:
    """How many turned feet a case stands on.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor

    Returns:
        As many as typed for each pedestal; left out, four, with a fifth under the middle of a wide one. None
        on any other base.

    Source: common practice.
    """
    base = spec.stands_on
    return sum(_feet(base, each) for each in grounds(spec, face)) if isinstance(base, TurnedFeet) else 0


def _feet(base: TurnedFeet, ground: Ground) -> Count:
    return base.number or (5 if ground.width > WIDE else 4)


def foot_places(base: TurnedFeet, ground: Ground, depth: Inches) -> tuple[tuple[Inches, Inches], ...]:
    """Where the turned feet stand.

    Args:
        base: the feet as they are asked for
        ground: what they stand under
        depth: depth of the case [in]

    Returns:
        The left and front corner of the square around each, from the left front corner of the case; those of
        the front first [in]

    Source: geometry: the squares lie flush with the sides of the case.
    """
    front, rear = base.setback - base.forward, depth - base.rear - base.diameter
    left, right = ground.left, ground.left + ground.width - base.diameter
    corners = ((left, front), (right, front), (left, rear), (right, rear))
    middle = (((left + right) / 2, (front + rear) / 2),)
    return corners + (middle if _feet(base, ground) > len(corners) else ())


def _turned_feet(case: CasePlan, base: TurnedFeet, ground: Ground) -> Iterator[Part]:
    spec, prefix = case.spec, f"B-{ground.mark}-" if ground.mark else "B-"
    through: Words = say("round tenon {:fraction}, {:fraction} long, wedged", base.tenon, base.block)
    length = case.ledger.take(
        "foot_length", base_rules.foot_length, height=base.height, block=base.block, tenon=base.block
    )
    layers = base.layers or case.ledger.take(
        "foot_layers", base_rules.layers, diameter=base.diameter, board=THICKEST
    )
    thick = case.ledger.take("foot_layer", base_rules.layer, diameter=base.diameter, layers=layers)
    for number, (x, y) in enumerate(foot_places(base, ground, spec.body.depth), start=1):
        for layer in range(layers):
            yield new_part(
                code=case.code(f"{prefix}{number}{ascii_uppercase[layer] if layers > 1 else ''}"),
                line="B1",
                name="Turned foot, square for the lathe" + (", one layer" if layers > 1 else ""),
                thickness=thick,
                width=base.diameter,
                length=length,
                grain=Grain.UPRIGHT,
                ends=("turned pad", through),
                solid=ROUND,
                box=Box(x, y + layer * thick, 0.0, base.diameter, thick, length),
                **{**_show(spec.woods.case), "use": PartUse.LEG},
            )
    for number, (x, y) in enumerate(foot_places(base, ground, spec.body.depth), start=1):
        yield new_part(
            code=case.code(f"{prefix}K{number}"),
            line="B2",
            name="Foot block",
            thickness=base.block,
            width=base.diameter,
            length=base.diameter,
            grain=Grain.ACROSS,
            box=Box(x, y, base.height - base.block, base.diameter, base.diameter, base.block),
            **_show(spec.woods.case),
        )


def _toe_base(case: CasePlan, base: ToeBase, ground: Ground) -> Iterator[Part]:
    """Front and rear run through; ends and cross members stand between them, below the sides of the case."""
    spec, take, wall, board = case.spec, case.ledger.take, base.wall, base.board
    made = (
        {**_hidden(spec.woods.inside), "wood": str(board), "sheet": True}
        if board
        else _hidden(spec.woods.inside)
    )
    high = take("toe_base_width", base_rules.levelled, height=base.height, levelling=base.levelling)
    long, front, on = ground.width, spec.support_front, ground.under
    prefix = f"B-{ground.mark}-" if ground.mark else "B-"
    size: dict[str, Any] = {"thickness": wall, "width": high}
    for mark, name, y in (("F", "front", front), ("B", "rear", spec.body.depth - wall)):
        yield new_part(
            code=case.code(f"B-{mark}{ground.mark}"),
            line="B1" if mark == "F" else "B2",
            name=f"Toe base, {name}",
            length=long,
            grain=Grain.ACROSS,
            ends=("butt, screwed to the ends",) * 2,
            box=Box(ground.left, y, base.levelling, long, wall, high),
            **size,
            **made,
        )
    deep = take(
        "toe_base_depth", base_rules.behind_the_front, depth=spec.body.depth, setback=front, front=0.0
    )
    length = take("toe_cross_length", case_rules.between, whole=deep, one_end=wall, other_end=wall)
    count = take(f"toe_bays{on}", base_rules.bays, length=long, board=wall, apart=base.apart)
    clear = take(f"toe_bay{on}", base_rules.bay, length=long, board=wall, bays=count)
    for number in range(count + 1):
        yield new_part(
            code=case.code(f"{prefix}{number + 1}"),
            line="B3",
            name="Toe base, end or cross member",
            length=length,
            grain=Grain.BACK,
            ends=("butt, between front and rear",) * 2,
            box=Box(ground.left + number * (clear + wall), front + wall, base.levelling, wall, length, high),
            **size,
            **made,
        )
    if base.facing:
        yield new_part(
            code=case.code(f"B-T{ground.mark}"),
            line="B4",
            name="Toe face, scribed to the floor",
            thickness=base.facing,
            width=base.height,
            length=long,
            grain=Grain.ACROSS,
            ends=("square", "square"),
            box=Box(ground.left, front - base.facing, 0.0, long, base.facing, base.height),
            **_show(spec.woods.case),
        )
