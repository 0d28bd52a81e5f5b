"""The sizes of each drawer, from the opening that it goes into and the seasons that it must pass."""

from casewright.joinery.lap import lap_left
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.drawer_spec import Drawers, PlyBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.run_sizes import box_height, box_length, box_width
from casewright.pieces.drawers.sizes import NOTHING, CannotBuild, DrawerMake, DrawerSizes, Gaps, Inside
from casewright.pieces.layout.openings import Opening
from casewright.pieces.layout.season import Climate
from casewright.pieces.rules import drawer_rules as rules

HEADROOM = 1 / 8
"""Under the obstruction above a drawer: CPSC guidance on the volume of clothing storage [in]."""


def drawer_sizes(
    spec: UnitSpec,
    opening: Opening,
    shared: DrawerMake,
    climate: Climate,
    side_shrinkage: float,
    ledger: Ledger,
) -> DrawerSizes:
    """The sizes of one drawer.

    Args:
        spec: what the maker chose
        opening: the hole it goes into, as designed or as measured
        shared: what all drawers of the unit share
        climate: the moisture contents between which the wood moves
        side_shrinkage: how much shallower the case gets when driest [in]
        ledger: keeps the working

    Returns:
        The sizes; measured thicknesses take the place of designed ones.

    Raises:
        CannotBuild: the opening is too small for a drawer of this make

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    under, drawers = ledger.under(opening.code), shared.drawers
    found = {
        mark: spec.measured.parts.get(f"{opening.code}-{mark}", NOTHING) for mark in ("F", "SL", "SR", "B")
    }
    front = found["F"].thickness or drawers.front
    left, right = found["SL"].thickness or drawers.side, found["SR"].thickness or drawers.side
    back = found["B"].thickness or shared.back
    height = _height(opening.height, shared, climate, under)
    width = box_width(opening, drawers, shared.slide, (left, right), under)
    length = box_length(opening, drawers, shared.slide, side_shrinkage, under)
    lap = (
        under.take("lap", lap_left, front=front, gauge_1=shared.gauge_1)
        if found["F"].thickness
        else shared.lap
    )
    if lap <= 0:
        raise CannotBuild(
            say(
                "measured.parts.{}-F: a front {} thick has no lap left before sockets "
                "{:bare} deep; make a thicker front, or change the lap of the whole batch",
                opening.code,
                front,
                shared.gauge_1,
            )
        )
    back_height, back_foot = _back(drawers, height, under)
    _check_room(opening, height, width, length, back_height, lap)
    return DrawerSizes(
        opening=opening,
        height=height,
        drawn_height=_height(opening.designed_height, shared, climate, UNKEPT),
        width=width,
        length=length,
        front=front,
        left_side=left,
        right_side=right,
        back=back,
        gauge_1=shared.gauge_1,
        lap=lap,
        rabbet=shared.rabbet,
        side_length=under.take("side_length", rules.side_length, length=length, lap=lap),
        back_height=back_height,
        back_foot=back_foot,
        inside=_inside(opening, drawers, width, length, (front, left, right, back), under),
        gaps=_gaps(opening, height, shared, climate, under),
    )


def _height(opening: float, shared: DrawerMake, climate: Climate, under: Ledger) -> float:
    clearances = shared.drawers.clearances
    height = under.take(
        "height",
        rules.drawer_height,
        opening=opening,
        bottom_gap=clearances.bottom,
        top_gap=clearances.top,
        coefficient=max(shared.front_moves, shared.side_moves),
        swelling=climate.swelling,
    )
    return box_height(opening, height, shared.slide, under)


def _gaps(opening: Opening, height: float, shared: DrawerMake, climate: Climate, under: Ledger) -> Gaps:
    def gap(name: str, coefficient: float, change: float) -> float:
        return under.take(
            f"gap_{name}",
            rules.gap_above,
            opening=opening.height,
            bottom_gap=shared.drawers.clearances.bottom,
            height=height,
            coefficient=coefficient,
            change=change,
        )

    wetter, drier = climate.wettest - climate.now, climate.driest - climate.now
    return Gaps(
        now=gap("now", shared.front_moves, 0.0),
        wettest_front=gap("wettest_front", shared.front_moves, wetter),
        wettest_side=gap("wettest_side", shared.side_moves, wetter),
        driest_front=gap("driest_front", shared.front_moves, drier),
        driest_side=gap("driest_side", shared.side_moves, drier),
    )


def _back(drawers: Drawers, height: float, under: Ledger) -> tuple[float, float]:
    """Height of the back, and how far its lower edge stands above that of the sides."""
    if isinstance(drawers.bottom, PlyBottom) and drawers.bottom.hold == "four grooves":
        return under.take("back_height", rules.full_back_height, height=height, drop=drawers.drop), 0.0
    groove = drawers.groove
    tall = under.take(
        "back_height",
        rules.back_height,
        height=height,
        groove_height=groove.height,
        groove_width=groove.width,
        drop=drawers.drop,
    )
    return tall, groove.height + groove.width


def _inside(
    opening: Opening,
    drawers: Drawers,
    width: float,
    length: float,
    thick: tuple[float, float, float, float],
    under: Ledger,
) -> Inside:
    front, left, right, back = thick
    groove = drawers.groove
    clear = under.take("inside_width", rules.width_inside, width=width, left_side=left, right_side=right)
    return Inside(
        width=clear,
        between_slips=clear
        if groove.slips is None
        else under.take("between_slips", rules.between_slips, inside=clear, slip=groove.slip),
        depth=under.take("inside_depth", rules.depth_inside, length=length, front=front, back=back),
        height=under.take(
            "inside_height",
            rules.height_inside,
            opening=opening.height,
            groove_height=groove.height,
            groove_width=groove.width,
            headroom=HEADROOM,
        ),
    )


def _check_room(
    opening: Opening, height: float, width: float, length: float, back_height: float, lap: float
) -> None:
    """Refuses a drawer that has no size left in some direction."""
    if back_height < 1 / 2:
        raise CannotBuild(
            say(
                "opening {} is {} high, too low for a drawer with its groove "
                "and back; make it at least {:up}, or lower the groove",
                opening.code,
                opening.height,
                opening.height - back_height + 1 / 2,
            )
        )
    if width < 2 or length < 2 or lap <= 0:
        raise CannotBuild(
            say(
                "opening {} is {} wide and {} deep, too "
                "small for a drawer of this make; make the case larger or the clearances smaller",
                opening.code,
                opening.width,
                opening.depth,
            )
        )
    if height <= 0:
        raise CannotBuild(f"opening {opening.code} is too low for any drawer; make it at least 2 in high")
