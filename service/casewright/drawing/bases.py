"""What a case stands on, as it is seen from the front or from the side."""

from collections.abc import Iterator

from casewright.drawing.canvas import Point
from casewright.measure.units import Inches
from casewright.pieces.asked.shell_spec import BracketFeet, TurnedFeet
from casewright.pieces.built.construct import Construction
from casewright.pieces.case.bases import foot_places, grounds
from casewright.pieces.layout.parts import Part

LAYERS_BEHIND = "BCDEFGH"
"""The layers of a glued-up foot behind the first, by the letter that ends their code."""
FRONT_OF_BASE = ("B1", "B2", "B4")
BRACKET = ((0.45, 0.0), (0.55, 0.42), (1.0, 0.68))
"""Where a bracket is sawn, from its corner: shares of its width and its height (common practice) [1]."""
TURNING = ((1.0, 0.18), (1.0, 0.5), (0.55, 0.78), (0.85, 0.84), (0.85, 1.0))
"""How a turned foot is drawn above its pad: shares of its diameter and its height (common practice) [1]."""


def is_in_front(unit: Construction, part: Part) -> bool:
    """Whether a part of the base is seen from the front.

    Args:
        unit: the unit
        part: a part of its base

    Returns:
        False for a part that another one hides.

    Source: geometry: rear feet stand behind those of the front, sides of feet behind their fronts.
    """
    is_turned = isinstance(unit.spec.stands_on, TurnedFeet)
    if part.line not in FRONT_OF_BASE or (is_turned and part.code[-1] in LAYERS_BEHIND):
        return False
    near = part.box.y + (part.box.depth if is_turned else 0.0) <= unit.spec.body.depth / 2
    return near and (is_turned or part.line != "B2")


def foot_outline(unit: Construction, part: Part) -> tuple[Point, ...] | None:
    """The outline of a foot as it is seen from the front.

    Args:
        unit: the unit
        part: a part of its base

    Returns:
        The corners [in]; None for a part that is as square as its sizes say.

    Source: geometry; common practice of bracket and turned feet.
    """
    base, box = unit.spec.stands_on, part.box
    if part.line != "B1":
        return None
    if isinstance(base, BracketFeet):
        is_left = part.code.removeprefix(f"{unit.spec.code}-").startswith("B-FL")
        outside, inwards = (box.x, 1) if is_left else (box.x + box.width, -1)
        return _bracket(base, outside, inwards)
    return _turned(base, box.x) if isinstance(base, TurnedFeet) else None


def feet_from_the_side(unit: Construction) -> Iterator[tuple[Point, ...]]:
    """The feet of one side of a case, seen from there with the front at the left.

    Args:
        unit: the unit

    Yields:
        The corners of each foot [in]; nothing for a closed base or none.

    Source: geometry; common practice of bracket and turned feet.
    """
    spec = unit.spec
    base = spec.stands_on
    if isinstance(base, BracketFeet):
        yield _bracket(base, spec.support_front, 1)
        yield _bracket(base, spec.support_rear, -1)
    elif isinstance(base, TurnedFeet):
        first, *_ = grounds(spec, unit.face)
        for left, front in foot_places(base, first, spec.body.depth):
            if left == first.left:
                yield _turned(base, front)


def _bracket(base: BracketFeet, outside: Inches, inwards: int) -> tuple[Point, ...]:
    sawn = tuple((outside + inwards * base.width * wide, base.height * high) for wide, high in BRACKET)
    return (
        (outside, 0.0),
        *sawn,
        (outside + inwards * base.width, base.height),
        (outside, base.height),
    )


def _turned(base: TurnedFeet, left: Inches) -> tuple[Point, ...]:
    high, middle = base.height - base.block, left + base.diameter / 2
    half = [(base.on_floor / 2, 0.0), *((base.diameter * wide / 2, high * up) for wide, up in TURNING)]
    right = tuple((middle + reach, up) for reach, up in half)
    return (*right, *((middle - reach, up) for reach, up in reversed(half)))
