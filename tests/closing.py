"""Whether a joint closes: its boards cut open at many places and laid over each other, by shapely."""

from itertools import combinations, pairwise

from shapely import Polygon, box, unary_union

from casewright.joinery.solid import PLACE, Axis, Shape

NO_AREA = 1e-8
"""A ten-thousandth of an inch squared: far below a micrometre over any joint's length [sq in]."""
PARTS = (0.137, 0.5, 0.891)
"""Where between two faces a cut is laid: off the middle too, so that a slope is seen."""


def faults(shape: Shape) -> list[str]:
    """What does not close: boards that overlap, gaps in the block that they should fill, false boards."""
    return [said for axis in Axis for at in _places(shape, axis) for said in _faults_at(shape, axis, at)]


def _faults_at(shape: Shape, axis: Axis, at: float) -> list[str]:
    where = f"cut at {axis} = {at:.4f}"
    boards = {}
    said = []
    for board in shape.boards:
        pieces = [Polygon(outline) for outline in board.section(axis, at)]
        boards[board.name] = unary_union(pieces)
        twice = sum(piece.area for piece in pieces) - boards[board.name].area
        if abs(twice) > NO_AREA:
            said.append(f"{where}: pieces of the {board.name} overlap by {twice:.6f}")
    for one, other in combinations(boards, 2):
        shared = boards[one].intersection(boards[other]).area
        if shared > NO_AREA:
            said.append(f"{where}: {one} and {other} overlap by {shared:.6f}")
    low, high = shape.filled[PLACE[axis]]
    if low < at < high:
        (left, right), (bottom, top) = (shape.filled[PLACE[each]] for each in axis.plane)
        gap = box(left, bottom, right, top).difference(unary_union(list(boards.values()))).area
        if gap > NO_AREA:
            said.append(f"{where}: a gap of {gap:.6f}")
    return said


def _places(shape: Shape, axis: Axis) -> list[float]:
    """Cuts between any two faces of the joint along a direction."""
    faces = {
        corner[PLACE[axis]]
        for board in shape.boards
        for prism in board.prisms
        for face in prism.faces
        for corner in face
    }
    return [
        low + part * (high - low)
        for low, high in pairwise(sorted(faces))
        if high - low > 1e-6
        for part in PARTS
    ]
