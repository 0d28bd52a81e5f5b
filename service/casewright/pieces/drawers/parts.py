"""The parts of each drawer: front, sides, back, bottom, and the muntin of a wide one."""

from collections.abc import Iterator

from casewright.measure.saying import Words
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer, Place
from casewright.pieces.drawers.end_words import END_OF_A_BOARD, ends_of_a_side
from casewright.pieces.drawers.front_parts import front_parts
from casewright.pieces.drawers.notch_parts import cut_out_words, notch_parts
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse


def drawer_parts(spec: UnitSpec, drawer: Drawer, base_height: float) -> Iterator[Part]:
    """The parts of one drawer, where they sit when it is closed.

    Args:
        spec: what the maker chose
        drawer: the drawer
        base_height: height of the base, which is where the case begins [in]

    Returns:
        The parts.

    Source: common practice of drawer making.
    """
    opening = drawer.sizes.opening
    place = Place(
        x=opening.left + (opening.width - drawer.sizes.width) / 2,
        y=drawer.sizes.box_start,
        z=base_height + opening.bottom + drawer.run.foot,
        base=base_height,
    )
    yield from front_parts(spec, drawer, place)
    yield from _sides(spec, drawer, place)
    yield from notch_parts(spec, drawer, place) if drawer.sizes.notch else (_back(spec, drawer, place),)
    yield from _slips(spec, drawer, place)
    if drawer.bottom.muntin is not None:
        yield _muntin_part(spec, drawer, place)
    yield from _bottoms(spec, drawer, place)


def _sides(spec: UnitSpec, drawer: Drawer, place: Place) -> Iterator[Part]:
    sizes, row = drawer.sizes, drawer.sizes.opening.row_mark
    pairs = (
        ("SL", sizes.left_side, place.x),
        ("SR", sizes.right_side, place.x + sizes.width - sizes.right_side),
    )
    for mark, thickness, x in pairs:
        yield new_part(
            code=f"{drawer.code}-{mark}",
            line=f"S{row}",
            name=f"Drawer side, row {row}",
            wood=spec.woods.drawers.wood,
            cut=spec.woods.drawers.cut,
            thickness=thickness,
            width=sizes.side_height,
            length=sizes.side_length,
            face=FaceClass.DRAWER,
            grain=Grain.BACK,
            use=PartUse.DRAWER,
            ends=ends_of_a_side(drawer),
            box=Box(
                x,
                place.y + sizes.side_start,
                place.z + sizes.foot,
                thickness,
                sizes.side_length,
                sizes.side_height,
            ),
        )


def _back(spec: UnitSpec, drawer: Drawer, place: Place) -> Part:
    sizes, row = drawer.sizes, drawer.sizes.opening.row_mark
    return new_part(
        code=f"{drawer.code}-B",
        line=f"K{row}",
        name=f"Drawer back, row {row}",
        wood=spec.woods.drawers.wood,
        cut=spec.woods.drawers.cut,
        thickness=sizes.back,
        width=sizes.back_height,
        length=sizes.back_length,
        face=FaceClass.DRAWER,
        grain=Grain.ACROSS,
        use=PartUse.DRAWER,
        ends=(END_OF_A_BOARD[drawer.joints.back_family],) * 2,
        box=Box(
            place.x + (sizes.width - sizes.back_length) / 2,
            place.y + sizes.to_the_back - sizes.back,
            place.z + sizes.foot + sizes.back_foot,
            sizes.back_length,
            sizes.back,
            sizes.back_height,
        ),
    )


def _slips(spec: UnitSpec, drawer: Drawer, place: Place) -> Iterator[Part]:
    """The slips, glued inside the sides; their upper part makes room for a back that stands over them."""
    sizes, slips = drawer.sizes, spec.drawers.groove.slips
    if slips is None or drawer.slip is None:
        return
    right = place.x + sizes.width - sizes.right_side - slips.thickness
    for mark, x in (("XL", place.x + sizes.left_side), ("XR", right)):
        length = drawer.slip
        yield new_part(
            code=f"{drawer.code}-{mark}",
            line="X1",
            name="Slip",
            wood=spec.woods.drawers.wood,
            cut=spec.woods.drawers.cut,
            thickness=slips.thickness,
            width=spec.drawers.groove.slip_height,
            length=length,
            face=FaceClass.DRAWER,
            grain=Grain.BACK,
            use=PartUse.DRAWER,
            ends=("butt, against the front", "cut away under the back" if sizes.back_foot else "notched"),
            box=Box(
                x, place.y + sizes.front, place.z, slips.thickness, length, spec.drawers.groove.slip_height
            ),
        )


def _muntin_part(spec: UnitSpec, drawer: Drawer, place: Place) -> Part:
    sizes, muntin = drawer.sizes, spec.drawers.muntin
    length = drawer.bottom.muntin or 0.0
    return new_part(
        code=f"{drawer.code}-M",
        line="M1",
        name="Drawer muntin",
        wood=spec.woods.drawers.wood,
        cut=spec.woods.drawers.cut,
        thickness=muntin.thickness,
        width=muntin.width,
        length=length,
        face=FaceClass.DRAWER,
        grain=Grain.BACK,
        use=PartUse.DRAWER,
        ends=(
            "tongue in the front's groove",
            "screwed under the back" if sizes.back_foot else "tongue in the back's groove",
        ),
        box=Box(
            place.x + (sizes.width - muntin.width) / 2,
            place.y + sizes.front - spec.drawers.groove.depth,
            place.z + spec.drawers.groove.height - (muntin.thickness - spec.drawers.groove.width) / 2,
            muntin.width,
            length,
            muntin.thickness,
        ),
    )


def _bottoms(spec: UnitSpec, drawer: Drawer, place: Place) -> Iterator[Part]:
    sizes, plan, groove = drawer.sizes, drawer.bottom, spec.drawers.groove
    is_ply = isinstance(spec.drawers.bottom, PlyBottom)
    chosen = spec.woods.of("bottoms")
    clear = sizes.inside.between_slips
    half = (clear - spec.drawers.muntin.width) / 2 if plan.pieces > 1 else clear
    first = place.x + sizes.left_side + groove.slip + (half - plan.across) / 2
    depth, rise = place.y + sizes.front - groove.depth, groove.height + groove.width - plan.thickness
    held: Words = "in the groove"
    if spec.drawers.screwed_under:
        first, depth, rise, held = place.x, place.y, 0.0, "screwed under the sides"
    if plan.cut_out:
        held = cut_out_words(held, plan.cut_out)
    name = "Drawer bottom"
    name += ", half" if plan.pieces > 1 else ", notched" if plan.cut_out else ""
    for number in range(plan.pieces):
        yield new_part(
            code=f"{drawer.code}-N" + (str(number + 1) if plan.pieces > 1 else ""),
            line="N#",
            name=name,
            wood=plan.material if is_ply else chosen.wood,
            cut=Cut.FLAT if is_ply else chosen.cut,
            thickness=plan.thickness,
            width=plan.deep,
            length=plan.across,
            face=FaceClass.DRAWER,
            grain=Grain.ACROSS,
            use=PartUse.INSIDE,
            ends=(held, held),
            sheet=is_ply,
            cut_out=plan.cut_out,
            box=Box(
                first + number * (half + spec.drawers.muntin.width),
                depth,
                place.z + rise,
                plan.across,
                plan.deep,
                plan.thickness,
            ),
        )
