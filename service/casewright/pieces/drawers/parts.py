"""The parts of each drawer: front, sides, back, bottom, and the muntin of a wide one."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.families.bottom_groove import sizes as rules
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.drawer_spec import PlyBottom, SolidBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.joints import DrawerJoints
from casewright.pieces.drawers.sizes import PLY_PLAY, CannotBuild, DrawerSizes
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, timber
from casewright.stability.limits import house_limits
from casewright.stability.sag import bottom_sag, fill_pressure, sag_limit
from casewright.wood.movement import Cut
from casewright.wood.sheets import sheet
from casewright.wood.species import wood
from casewright.wood.waste import PartUse

BETWEEN_SIDES = 1.0
"""A drawer with less between its sides holds nothing and has no room for a bottom (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BottomPlan:
    """The bottom of one drawer.

    Attributes:
        pieces: one, or two with a muntin between them
        across: size of each piece from side to side [in]
        deep: size front to back [in]
        thickness: thickness [in]
        material: shop name of the wood, or the name of the sheet
        muntin: length of the muntin; None without one [in]
        span: clear width that each piece bridges [in]
        sag: how far it sags when the drawer is full; None where the wood's stiffness is not known [in]
        sag_allowed: how far it may [in]
        sag_without_muntin: how far it would sag in one piece; None where not known [in]
    """

    pieces: int
    across: float
    deep: float
    thickness: float
    material: str
    muntin: float | None
    span: float
    sag: float | None
    sag_allowed: float
    sag_without_muntin: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawer:
    """One drawer: its sizes, joints, bottom and pulls.

    Attributes:
        code: unit, row and position, such as `A-R5-1`
        sizes: what was worked out from its opening
        joints: front and back
        bottom: the bottom
        pulls: centre of each pull, from the left outside of the case [in]
        travel: how far it opens to its outstop [in]
    """

    code: str
    sizes: DrawerSizes
    joints: DrawerJoints
    bottom: BottomPlan
    pulls: tuple[float, ...]
    travel: float


def plan_bottom(spec: UnitSpec, sizes: DrawerSizes, ledger: Ledger) -> BottomPlan:
    """The bottom of one drawer, parted by a muntin where it is wide or would sag.

    Args:
        spec: what the maker chose
        sizes: the drawer
        ledger: keeps the working

    Returns:
        The plan of the bottom.

    Raises:
        CannotBuild: no bottom of any size fits

    Source: common practice; the sag is a beam formula.
    """
    _refuse_thick_sides(sizes)
    under, bottom, groove = ledger.under(sizes.code), spec.drawers.bottom, spec.drawers.groove
    thickness, elasticity, material = _material(spec)
    inside, limits = sizes.inside, house_limits()
    pressure = under.take(
        "bottom_pressure", fill_pressure, fill_height=inside.height, density=limits.fill_density
    )
    alone = _sag("sag_without_muntin", inside.width, thickness, elasticity, pressure, under)
    allowed_alone = sag_limit(span=inside.width, ratio=limits.sag_ratio)
    parted = _is_parted(spec, inside.width, alone, allowed_alone)
    muntin = spec.drawers.muntin
    span = (inside.width - muntin.width) / 2 if parted else inside.width
    play = PLY_PLAY if isinstance(bottom, PlyBottom) else spec.drawers.bottom_play
    if parted:
        across = under.take(
            "bottom_width",
            rules.half_bottom_width,
            inside=inside.width,
            muntin=muntin.width,
            groove_depth=groove.depth,
            play=play,
        )
    else:
        across = under.take(
            "bottom_width", rules.bottom_width, inside=inside.width, groove_depth=groove.depth, play=play
        )
    if across <= 0:
        raise CannotBuild(
            say(
                "drawer {}: {} between the sides leave no bottom beside a muntin {:bare} wide; use no muntin",
                sizes.code,
                inside.width,
                muntin.width,
            )
        )
    return BottomPlan(
        pieces=2 if parted else 1,
        across=across,
        deep=_deep(bottom, sizes, groove.depth, under),
        thickness=thickness,
        material=material,
        muntin=_muntin(sizes, groove.depth, under) if parted else None,
        span=span,
        sag=_sag("sag", span, thickness, elasticity, pressure, under) if parted else alone,
        sag_allowed=under.take("sag_allowed", sag_limit, span=span, ratio=limits.sag_ratio),
        sag_without_muntin=alone,
    )


def _refuse_thick_sides(sizes: DrawerSizes) -> None:
    """Refuses sides that leave nothing between them, which no muntin and no bottom could mend."""
    most = sizes.width - BETWEEN_SIDES
    if sizes.left_side + sizes.right_side <= most:
        return
    raise CannotBuild(
        say(
            "drawer {}: sides {} and {} thick leave too little between them in a drawer {} wide; "
            "together they may be {:down} thick at most",
            sizes.code,
            sizes.left_side,
            sizes.right_side,
            sizes.width,
            most,
        )
    )


def _material(spec: UnitSpec) -> tuple[float, float | None, str]:
    """Thickness, stiffness where it is known, and name of what the bottoms are made of."""
    bottom = spec.drawers.bottom
    if isinstance(bottom, PlyBottom):
        bought = sheet(bottom.sheet, bottom.nominal)
        return bought.thickness, None, str(bought)
    species = wood(spec.woods.of("bottoms").wood)
    return bottom.thickness, species.elasticity, species.name


def _sag(
    name: str, span: float, thickness: float, elasticity: float | None, pressure: float, under: Ledger
) -> float | None:
    if elasticity is None:
        return None
    return under.take(name, bottom_sag, pressure=pressure, span=span, modulus=elasticity, thickness=thickness)


def _is_parted(spec: UnitSpec, width: float, sag: float | None, allowed: float) -> bool:
    muntin = spec.drawers.muntin
    if muntin.use != "auto":
        return muntin.use == "always"
    return width > muntin.over or (sag is not None and sag > allowed)


def _deep(bottom: SolidBottom | PlyBottom, sizes: DrawerSizes, groove_depth: float, under: Ledger) -> float:
    if isinstance(bottom, PlyBottom) and bottom.hold == "four grooves":
        return under.take(
            "bottom_depth",
            rules.bottom_width,
            inside=sizes.inside.depth,
            groove_depth=groove_depth,
            play=PLY_PLAY,
        )
    return under.take(
        "bottom_depth",
        rules.bottom_length,
        length=sizes.length,
        front=sizes.front,
        groove_depth=groove_depth,
        over=bottom.over,
    )


def _muntin(sizes: DrawerSizes, groove_depth: float, under: Ledger) -> float:
    """The muntin's length: under a back that stands on the bottom, or into the groove of a lower one."""
    if sizes.back_foot == 0:
        inside = sizes.inside.depth
        return under.take(
            "muntin_length", rules.bottom_width, inside=inside, groove_depth=groove_depth, play=0.0
        )
    return under.take(
        "muntin_length",
        rules.muntin_length,
        length=sizes.length,
        front=sizes.front,
        groove_depth=groove_depth,
    )


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
    if drawer.bottom.muntin is not None:
        yield _muntin_part(spec, drawer, place)
    yield from _bottoms(spec, drawer, place)


def _front(spec: UnitSpec, drawer: Drawer, place: _Place) -> Part:
    sizes, row = drawer.sizes, drawer.sizes.opening.row
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
        use=PartUse.SEQUENCE if spec.sequence_fronts else PartUse.CASE,
        ends=("half-blind dovetail, sockets",) * 2,
        grain_set="fronts" if spec.sequence_fronts else "",
        box=Box(place.x, 0.0, place.z, sizes.width, sizes.front, sizes.height),
    )


def _sides(spec: UnitSpec, drawer: Drawer, place: _Place) -> Iterator[Part]:
    sizes, row = drawer.sizes, drawer.sizes.opening.row
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
    sizes, row = drawer.sizes, drawer.sizes.opening.row
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
    half = (sizes.inside.width - spec.drawers.muntin.width) / 2 if plan.pieces > 1 else sizes.inside.width
    first = place.x + sizes.left_side + (half - plan.across) / 2
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
