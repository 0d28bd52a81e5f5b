"""Geometry of straight cuts for whoever checks a layout: nothing of it is taken from the program."""

import math
from collections.abc import Iterator, Sequence
from typing import Any

HAIR = 1e-7
"""Less than the smallest tick that sizes are kept in, 1/640 mm, by far [in]."""

Rectangle = tuple[float, float, float, float]
"""From the end, from the edge, along, across [in]."""


def rectangle(held: dict[str, Any]) -> Rectangle:
    return held["from_end_in"], held["from_edge_in"], held["length_in"], held["width_in"]


def overlap(one: Rectangle, other: Rectangle, apart: float = 0.0) -> bool:
    """Do two rectangles overlap, or lie nearer than they may?"""
    return all(
        one[axis] + one[axis + 2] + apart > other[axis] + HAIR
        and other[axis] + other[axis + 2] + apart > one[axis] + HAIR
        for axis in (0, 1)
    )


def _groups(spots: Sequence[Rectangle], axis: int, kerf: float) -> list[list[Rectangle]]:
    """What cuts across one axis part from each other."""
    found: list[list[Rectangle]] = []
    reach = -math.inf
    for spot in sorted(spots, key=lambda one: one[axis]):
        if spot[axis] >= reach + kerf - HAIR:
            found.append([])
        found[-1].append(spot)
        reach = max(reach, spot[axis] + spot[axis + 2])
    return found


def comes_apart(spots: Sequence[Rectangle], kerf: float) -> bool:
    """Do cuts from edge to edge take the rectangles apart?"""
    if len(spots) <= 1:
        return True
    for axis in (0, 1):
        groups = _groups(spots, axis, kerf)
        if len(groups) > 1:
            return all(comes_apart(group, kerf) for group in groups)
    return False


def takes_stages(spots: Sequence[Rectangle], axis: int, stages: int, kerf: float) -> bool:
    """Do so many stages of cuts do, the first across an axis, a last trimming cut being free?"""
    if len(spots) <= 1:
        return True
    return stages > 0 and all(
        takes_stages(group, 1 - axis, stages - 1, kerf) for group in _groups(spots, axis, kerf)
    )


def leaves_of(tree: dict[str, Any]) -> Iterator[dict[str, Any]]:
    if "pieces" not in tree:
        yield tree
    for piece in tree.get("pieces", []):
        yield from leaves_of(piece)


def tree_faults(tree: dict[str, Any], kerf: float) -> Iterator[str]:
    """What is wrong with the tree of cuts: each piece spans its whole, and a kerf lies between two."""
    pieces = tree.get("pieces", [])
    axis = 1 if tree.get("cut") == "rip" else 0
    whole = rectangle(tree)
    place = whole[axis]
    for number, piece in enumerate(pieces):
        spot = rectangle(piece)
        if abs(spot[1 - axis] - whole[1 - axis]) > HAIR or abs(spot[3 - axis] - whole[3 - axis]) > HAIR:
            yield "a cut does not go from edge to edge"
        if spot[axis] < place - HAIR or (number and spot[axis] < place + kerf - HAIR):
            yield "two pieces of a cut leave no kerf"
        place = spot[axis] + spot[axis + 2]
        yield from tree_faults(piece, kerf)
    if place > whole[axis] + whole[axis + 2] + HAIR:
        yield "a piece is larger than what it is cut from"
