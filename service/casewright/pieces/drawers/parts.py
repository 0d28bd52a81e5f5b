"""The parts of each drawer: front, sides, back, bottom, and the muntin of a wide one."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.saying import say
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.bottom_plans import BottomPlan
from casewright.pieces.drawers.joints import DrawerJoints
from casewright.pieces.drawers.running import Run
from casewright.pieces.drawers.sizes import DrawerSizes
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, timber
from casewright.pieces.layout.pulls import Boring
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawer:
    """One drawer: its sizes, joints, bottom and pulls.

    Attributes:
        code: unit, row and position, such as `A-R5-1`
        sizes: what was worked out from its opening
        joints: front and back
        bottom: the bottom
        pulls: centre of each pull, from the left outside of the case [in]
        run: what it runs on and stops against
        boring: where its front is bored for the pulls
        slip: length of each slip; None without any [in]
    """

    code: str
    sizes: DrawerSizes
    joints: DrawerJoints
    bottom: BottomPlan
    pulls: tuple[float, ...]
    run: Run
    boring: Boring
    slip: float | None = None

    @property
    def travel(self) -> float:
        """How far it opens to its outstop [in]."""
        return self.run.travel


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """Where a drawer sits in the closed case: its left lower front corner [in]."""

    x: float
    z: float


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
    place = _Place(
        x=opening.left + (opening.width - drawer.sizes.width) / 2,
        z=base_height + opening.bottom + spec.drawers.clearances.bottom,
    )
    yield _front(spec, drawer, place)
    yield from _sides(spec, drawer, place)
    yield _back(spec, drawer, place)
    yield from _slips(spec, drawer, place)
    if drawer.bottom.muntin is not None:
        yield _muntin_part(spec, drawer, place)
    yield from _bottoms(spec, drawer, place)


def _front(spec: UnitSpec, drawer: Drawer, place: _Place) -> Part:
    sizes, row = drawer.sizes, drawer.sizes.opening.row_mark
    return Part(
        code=f"{drawer.code}-F",
        line=f"F{row}",
        name=f"Drawer front, row {row}",
        **timber(spec.woods.of("fronts")),
        thickness=sizes.front,
        width=sizes.height,
        length=sizes.width,
        face=FaceClass.SHOW,
        grain=Grain.ACROSS,
        use=PartUse.SEQUENCE if spec.matched_fronts else PartUse.CASE,
        ends=("half-blind dovetail, sockets",) * 2,
        grain_set="fronts" if spec.matched_fronts else "",
        box=Box(place.x, 0.0, place.z, sizes.width, sizes.front, sizes.height),
    )


def _sides(spec: UnitSpec, drawer: Drawer, place: _Place) -> Iterator[Part]:
    sizes, row = drawer.sizes, drawer.sizes.opening.row_mark
    rabbet = say(", rabbet {:fraction}", sizes.rabbet) if sizes.rabbet else ""
    pairs = (
        ("SL", sizes.left_side, place.x),
        ("SR", sizes.right_side, place.x + sizes.width - sizes.right_side),
    )
    for mark, thickness, x in pairs:
        yield Part(
            code=f"{drawer.code}-{mark}",
            line=f"S{row}",
            name=f"Drawer side, row {row}",
            **timber(spec.woods.drawers),
            thickness=thickness,
            width=sizes.height,
            length=sizes.side_length,
            face=FaceClass.DRAWER,
            grain=Grain.BACK,
            use=PartUse.DRAWER,
            ends=(say("half-blind dovetail, tails{}", rabbet), "through dovetail, tails"),
            box=Box(x, sizes.lap, place.z, thickness, sizes.side_length, sizes.height),
        )


def _back(spec: UnitSpec, drawer: Drawer, place: _Place) -> Part:
    sizes, row = drawer.sizes, drawer.sizes.opening.row_mark
    return Part(
        code=f"{drawer.code}-B",
        line=f"K{row}",
        name=f"Drawer back, row {row}",
        **timber(spec.woods.drawers),
        thickness=sizes.back,
        width=sizes.back_height,
        length=sizes.width,
        face=FaceClass.DRAWER,
        grain=Grain.ACROSS,
        use=PartUse.DRAWER,
        ends=("through dovetail, pins",) * 2,
        box=Box(
            place.x,
            sizes.length - sizes.back,
            place.z + sizes.back_foot,
            sizes.width,
            sizes.back,
            sizes.back_height,
        ),
    )


def _slips(spec: UnitSpec, drawer: Drawer, place: _Place) -> Iterator[Part]:
    """The slips, glued inside the sides; their upper part makes room for a back that stands over them."""
    sizes, slips = drawer.sizes, spec.drawers.groove.slips
    if slips is None:
        return
    right = place.x + sizes.width - sizes.right_side - slips.thickness
    for mark, x in (("XL", place.x + sizes.left_side), ("XR", right)):
        length = drawer.slip or 0.0
        yield Part(
            code=f"{drawer.code}-{mark}",
            line="X1",
            name="Slip",
            **timber(spec.woods.drawers),
            thickness=slips.thickness,
            width=spec.drawers.groove.slip_height,
            length=length,
            face=FaceClass.DRAWER,
            grain=Grain.BACK,
            use=PartUse.DRAWER,
            ends=("butt, against the front", "cut away under the back" if sizes.back_foot else "notched"),
            box=Box(x, sizes.front, place.z, slips.thickness, length, spec.drawers.groove.slip_height),
        )


def _muntin_part(spec: UnitSpec, drawer: Drawer, place: _Place) -> Part:
    sizes, muntin = drawer.sizes, spec.drawers.muntin
    length = drawer.bottom.muntin or 0.0
    return Part(
        code=f"{drawer.code}-M",
        line="M1",
        name="Drawer muntin",
        **timber(spec.woods.drawers),
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
            sizes.front - spec.drawers.groove.depth,
            place.z + spec.drawers.groove.height - (muntin.thickness - spec.drawers.groove.width) / 2,
            muntin.width,
            length,
            muntin.thickness,
        ),
    )


def _bottoms(spec: UnitSpec, drawer: Drawer, place: _Place) -> Iterator[Part]:
    sizes, plan, groove = drawer.sizes, drawer.bottom, spec.drawers.groove
    is_ply = isinstance(spec.drawers.bottom, PlyBottom)
    wood_of = {"wood": plan.material, "cut": Cut.FLAT} if is_ply else timber(spec.woods.of("bottoms"))
    clear = sizes.inside.between_slips
    half = (clear - spec.drawers.muntin.width) / 2 if plan.pieces > 1 else clear
    first = place.x + sizes.left_side + groove.slip + (half - plan.across) / 2
    for number in range(plan.pieces):
        yield Part(
            code=f"{drawer.code}-N" + (str(number + 1) if plan.pieces > 1 else ""),
            line="N#",
            name="Drawer bottom, half" if plan.pieces > 1 else "Drawer bottom",
            **wood_of,
            thickness=plan.thickness,
            width=plan.deep,
            length=plan.across,
            face=FaceClass.DRAWER,
            grain=Grain.ACROSS,
            use=PartUse.INSIDE,
            ends=("in the groove",) * 2,
            sheet=is_ply,
            box=Box(
                first + number * (half + spec.drawers.muntin.width),
                sizes.front - groove.depth,
                place.z + groove.height + groove.width - plan.thickness,
                plan.across,
                plan.deep,
                plan.thickness,
            ),
        )
