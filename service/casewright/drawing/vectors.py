"""Reckoning with points and directions in the joint's room."""

import math

from casewright.joinery.solid import Vector
from casewright.measure.units import Number


def dot(one: Vector, other: Vector) -> Number:
    """The scalar product of two directions.

    Args:
        one: a direction
        other: another

    Returns:
        How far the two run the same way, times their lengths.

    Source: geometry.
    """
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def cross(one: Vector, other: Vector) -> Vector:
    """The direction square to two others.

    Args:
        one: a direction
        other: another

    Returns:
        Their vector product.

    Source: geometry.
    """
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


def minus(one: Vector, other: Vector) -> Vector:
    """The way from one point to another.

    Args:
        one: where it ends [in]
        other: where it begins [in]

    Returns:
        Along x, y and z [in]

    Source: geometry.
    """
    return one[0] - other[0], one[1] - other[1], one[2] - other[2]


def between(start: Vector, end: Vector, share: Number) -> Vector:
    """A point on the way from one to another.

    Args:
        start: where the way begins [in]
        end: where it ends [in]
        share: how far along it [dimensionless]

    Returns:
        The point [in]

    Source: geometry.
    """
    return (
        start[0] + share * (end[0] - start[0]),
        start[1] + share * (end[1] - start[1]),
        start[2] + share * (end[2] - start[2]),
    )


def unit(vector: Vector) -> Vector:
    """A direction of length 1.

    Args:
        vector: a direction, not zero

    Returns:
        The same direction.

    Source: geometry.
    """
    long = math.hypot(*vector)
    return vector[0] / long, vector[1] / long, vector[2] / long


def rounded(vector: Vector, digits: int = 6) -> Vector:
    """A point or direction by which alike ones are told.

    Args:
        vector: along x, y and z
        digits: how many are kept after the point

    Returns:
        The same, rounded.

    Source: arithmetic.
    """
    return round(vector[0], digits), round(vector[1], digits), round(vector[2], digits)
