"""The bottom of each drawer: its size, its muntin, its slips, and how far it sags."""

from dataclasses import dataclass

from casewright.joinery.families.bottom_groove import sizes as rules
from casewright.joinery.families.bottom_groove.asked import BOTTOMS
from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.saying import say
from casewright.measure.units import PoundsPerSquareInch
from casewright.pieces.asked.drawer_spec import PlyBottom, SolidBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.notch_floor import cut_out, floor_depth
from casewright.pieces.drawers.sizes import PLY_PLAY, CannotBuild, DrawerSizes
from casewright.pieces.layout.parts import CutOut
from casewright.pieces.rules import drawer_rules, front_rules
from casewright.pieces.rules.running_rules import spread_load
from casewright.stability.limits import house_limits
from casewright.stability.sag import bottom_sag, fill_pressure, sag_limit
from casewright.wood.species import wood

BETWEEN_SIDES = 1.0
"""A drawer with less between its sides holds nothing and has no room for a bottom (common practice) [in]."""

THIN_PLY = 0.3
"""Thicker plywood, such as 3/8 or 1/2, carries a wide drawer without a muntin (common practice) [in]."""


@quickly_made
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
        cut_out: what is sawn out around a notch; None without one
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
    cut_out: CutOut | None = None


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
    if spec.drawers.screwed_under:
        return _under_the_box(spec, sizes, ledger.under(sizes.code))
    under, bottom, groove = ledger.under(sizes.code), spec.drawers.bottom, spec.drawers.groove
    thickness, elasticity, material = _material(spec)
    inside, limits = sizes.inside, house_limits()
    clear = inside.between_slips
    pressure = pressure_on(spec, sizes, under)
    alone = _sag("sag_without_muntin", clear, thickness, elasticity, pressure, under)
    allowed_alone = sag_limit(span=clear, ratio=limits.sag_ratio)
    parted = sizes.notch is None and _is_parted(spec, clear, alone, allowed_alone)
    muntin = spec.drawers.muntin
    span = (clear - muntin.width) / 2 if parted else clear
    play = PLY_PLAY if isinstance(bottom, PlyBottom) else spec.drawers.bottom_play
    if parted:
        across = under.take(
            "bottom_width",
            rules.half_bottom_width,
            inside=clear,
            muntin=muntin.width,
            groove_depth=groove.side_depth,
            play=play,
        )
    else:
        across = under.take(
            "bottom_width", rules.bottom_width, inside=clear, groove_depth=groove.side_depth, play=play
        )
    if across <= 0:
        raise CannotBuild(
            say(
                "drawer {}: {} between the sides leave no bottom beside a muntin {:bare} wide; use no muntin",
                sizes.code,
                clear,
                muntin.width,
            )
        )
    return BottomPlan(
        pieces=2 if parted else 1,
        cut_out=cut_out(spec, sizes, across, under),
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


def pressure_on(spec: UnitSpec, sizes: DrawerSizes, under: Ledger) -> PoundsPerSquareInch:
    """What presses on a bottom: clothes up to the brim, or the load that was typed where that is more.

    Args:
        spec: what the maker chose
        sizes: the drawer
        under: keeps the working

    Returns:
        The pressure [psi]

    Source: common practice of drawers for clothes.
    """
    inside, load = sizes.inside, spec.drawers.load_lb
    density = house_limits().fill_density
    full = under.take("bottom_pressure", fill_pressure, fill_height=inside.height, density=density)
    if load is None:
        return full
    typed = under.take("load_pressure", spread_load, load=load, width=inside.width, depth=floor_depth(sizes))
    return max(full, typed)


def _under_the_box(spec: UnitSpec, sizes: DrawerSizes, under: Ledger) -> BottomPlan:
    """A bottom in one piece, screwed under front, sides and back."""
    thickness, elasticity, material = _material(spec)
    clear, limits = sizes.inside.width, house_limits()
    pressure = pressure_on(spec, sizes, under)
    sag = _sag("sag", clear, thickness, elasticity, pressure, under)
    return BottomPlan(
        pieces=1,
        cut_out=cut_out(spec, sizes, sizes.width, under),
        across=sizes.width,
        deep=under.take(
            "bottom_depth",
            front_rules.under_the_box,
            length=sizes.box_length,
            over=spec.drawers.bottom.over,
        ),
        thickness=thickness,
        material=material,
        muntin=None,
        span=clear,
        sag=sag,
        sag_allowed=under.take("sag_allowed", sag_limit, span=clear, ratio=limits.sag_ratio),
        sag_without_muntin=sag,
    )


def with_chosen_slips(spec: UnitSpec, ledger: Ledger) -> UnitSpec:
    """The choices with slips as high as their groove asks, where no height was typed.

    Args:
        spec: what the maker chose
        ledger: keeps the working

    Returns:
        The choices; the same where there is nothing to choose.

    Source: common practice of drawer making.
    """
    drawers, groove = spec.drawers, spec.drawers.groove
    if groove.slips is None or groove.slips.height is not None:
        return spec
    height = ledger.take(
        "drawers.groove.slips.height",
        drawer_rules.slip_height,
        groove_height=groove.height,
        groove_width=groove.width,
        above=BOTTOMS.slip_above.value,
    )
    slips = groove.slips.model_copy(update={"height": height})
    held = groove.model_copy(update={"slips": slips})
    return spec.model_copy(update={"drawers": drawers.model_copy(update={"groove": held})})


def plan_slip(spec: UnitSpec, sizes: DrawerSizes, ledger: Ledger) -> float | None:
    """The length of the slips of one drawer: up to the rear, or to a back that is grooved itself.

    Args:
        spec: what the maker chose
        sizes: the drawer
        ledger: keeps the working

    Returns:
        The length; None without slips [in]

    Source: common practice of drawer making.
    """
    if spec.drawers.groove.slips is None or spec.drawers.screwed_under:
        return None
    if sizes.back_foot == 0:
        return sizes.inside.depth
    return ledger.under(sizes.code).take(
        "slip_length", rules.slip_length, length=sizes.to_the_back, front=sizes.front
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
        bought = bottom.bought
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
    stiff = isinstance(spec.drawers.bottom, PlyBottom) and spec.drawers.bottom_thickness > THIN_PLY
    return (width > muntin.over and not stiff) or (sag is not None and sag > allowed)


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
        length=sizes.to_the_back,
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
        length=sizes.to_the_back,
        front=sizes.front,
        groove_depth=groove_depth,
    )
