"""The legs of a piece as they are seen from the front or from the side."""

from collections.abc import Iterator

from casewright.drawing.canvas import Point
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction


def leg_outlines(unit: Construction, across: Inches) -> Iterator[tuple[Point, ...]]:
    """The two legs of one view: square as high as the aprons, below them tapered inside where they are.

    Args:
        unit: the unit, on legs or not
        across: over both legs: the width of the body, or its depth [in]

    Yields:
        The corners of each leg, from its outside foot [in]; nothing for a carcase.

    Source: geometry; common practice of tapered legs.
    """
    legs, floor = unit.spec.legs, unit.face.base_height
    if legs is None:
        return
    foot, head = legs.at_the_floor, floor + unit.face.body_height
    for outside, inwards in ((0.0, 1), (across, -1)):
        inside = outside + inwards * legs.leg
        yield (
            (outside, 0.0),
            (outside + inwards * foot, 0.0),
            (inside, floor),
            (inside, head),
            (outside, head),
        )
