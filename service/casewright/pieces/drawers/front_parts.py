"""The front of a drawer: the board that is seen, the box's own front behind it, and its beads."""

from collections.abc import Iterator

from casewright.measure.saying import Words, say
from casewright.pieces.asked.drawer_fronts import CockBeaded, Lipped
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer, Place
from casewright.pieces.drawers.end_words import END_OF_A_BOARD
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.rules import front_rules as rules
from casewright.wood.waste import PartUse


def front_parts(spec: UnitSpec, drawer: Drawer, place: Place) -> Iterator[Part]:
    """The front of a drawer, with the box's own front and the beads where it has them.

    Args:
        spec: what the maker chose
        drawer: the drawer
        place: where its box sits

    Returns:
        The parts.

    Source: common practice of drawer making.
    """
    yield _front(spec, drawer, place)
    if spec.drawers.has_box_front:
        yield _box_front(spec, drawer, place)
    if isinstance(spec.drawers.style, CockBeaded):
        yield from _beads(spec, spec.drawers.style, drawer, place)


def _front(spec: UnitSpec, drawer: Drawer, place: Place) -> Part:
    """The board that is seen; between the sides it is as long as its tongues reach."""
    sizes, row, face = drawer.sizes, drawer.sizes.opening.row_mark, drawer.sizes.face
    drawers = spec.drawers
    own = not drawers.has_box_front and sizes.front_length < sizes.width
    long = sizes.front_length if own else face.width
    covers = drawers.has_box_front or sizes.stand > 0
    chosen = spec.woods.of("fronts")
    return new_part(
        code=f"{drawer.code}-F",
        line=f"F{row}",
        name=f"Drawer front, row {row}",
        wood=chosen.wood,
        cut=chosen.cut,
        thickness=face.thickness,
        width=face.height,
        length=long,
        face=FaceClass.SHOW,
        grain=Grain.ACROSS,
        use=PartUse.SEQUENCE if spec.matched_fronts else PartUse.CASE,
        ends=(_front_end(spec, drawer),) * 2,
        grain_set="fronts" if spec.matched_fronts else "",
        box=Box(
            face.left + (face.width - long) / 2,
            0.0 - sizes.stand,
            place.base + face.bottom if covers else place.z + sizes.foot,
            long,
            face.thickness,
            face.height,
        ),
    )


def _front_end(spec: UnitSpec, drawer: Drawer) -> Words:
    drawers = spec.drawers
    if drawers.has_box_front:
        return "square; screwed to the box from inside"
    words: Words = END_OF_A_BOARD[drawer.joints.front_family]
    if isinstance(drawers.style, Lipped):
        return say("{}, inside a rabbet {:bare} × {:fraction}", words, drawers.style.lip, drawers.style.thick)
    return words


def _box_front(spec: UnitSpec, drawer: Drawer, place: Place) -> Part:
    sizes, row = drawer.sizes, drawer.sizes.opening.row_mark
    return new_part(
        code=f"{drawer.code}-BF",
        line=f"U{row}",
        name=f"Drawer box front, row {row}",
        wood=spec.woods.drawers.wood,
        cut=spec.woods.drawers.cut,
        thickness=sizes.front,
        width=sizes.front_height,
        length=sizes.front_length,
        face=FaceClass.DRAWER,
        grain=Grain.ACROSS,
        use=PartUse.DRAWER,
        ends=(END_OF_A_BOARD[drawer.joints.front_family],) * 2,
        box=Box(
            place.x + (sizes.width - sizes.front_length) / 2,
            place.y,
            place.z + sizes.foot,
            sizes.front_length,
            sizes.front,
            sizes.front_height,
        ),
    )


def _beads(spec: UnitSpec, style: CockBeaded, drawer: Drawer, place: Place) -> Iterator[Part]:
    """The strips of the bead: over the whole upper edge, and let into the face at ends and bottom."""
    sizes, face = drawer.sizes, drawer.sizes.face
    let_in = rules.bead_width(rabbet=bead_rabbet(style, drawer), projection=style.projection)
    over = rules.bead_width(rabbet=face.thickness, projection=style.projection)
    high, bead, before = sizes.height, style.bead, -style.projection
    right, top = face.left + face.width - bead, place.z + high - bead
    strips = (
        ("CT", "top", over, face.width, (face.left, top), (face.width, bead)),
        ("CB", "bottom", let_in, face.width, (face.left, place.z), (face.width, bead)),
        ("CL", "end", let_in, high, (face.left, place.z), (bead, high)),
        ("CR", "end", let_in, high, (right, place.z), (bead, high)),
    )
    chosen = spec.woods.of("fronts")
    for mark, where, width, length, (x, z), (wide, tall) in strips:
        yield new_part(
            code=f"{drawer.code}-{mark}",
            line="J#",
            name=f"Cock bead, {where}",
            wood=chosen.wood,
            cut=chosen.cut,
            thickness=bead,
            width=width,
            length=length,
            face=FaceClass.SHOW,
            grain=Grain.UPRIGHT if where == "end" else Grain.ACROSS,
            use=PartUse.CASE,
            ends=("mitred at the face",) * 2,
            box=Box(x, before, z, wide, width, tall),
        )


def bead_rabbet(style: CockBeaded, drawer: Drawer) -> float:
    """How far the bead is let in from the face at the ends and the bottom of a front.

    Args:
        style: the bead
        drawer: the drawer

    Returns:
        What was typed, or the lap, which its rabbet then does not cut into the sockets [in]

    Source: common practice of cock beading.
    """
    return drawer.sizes.lap if style.rabbet is None else style.rabbet
