"""The sizes of each drawer, from the opening that it goes into and the seasons that it must pass."""

from dataclasses import dataclass

from casewright.joinery.defaults import USUAL, Usual, chosen_lap, chosen_rabbet
from casewright.joinery.gauges import first_gauge
from casewright.joinery.joint import Chosen
from casewright.joinery.lap import lap_left
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_spec import Drawers, PlyBottom
from casewright.pieces.asked.measured import MeasuredPart
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Opening
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.rules import drawer_rules as rules

SMALL = 12.0
"""An opening up to this wide (and deep) gets the clearances of small work (common practice) [in]."""
SMALL_SIDE_GAP, SIDE_GAP = 1 / 64, 1 / 32
SMALL_BACK_GAP, BACK_GAP = 1 / 8, 1 / 4
HEADROOM = 1 / 8
"""Under the obstruction above a drawer: CPSC guidance on the volume of clothing storage [in]."""
PLY_PLAY = 1 / 32
CHOSEN_GAP = "chosen by the size of the opening (common practice); type your own as drawers.clearances"


class CannotBuild(ValueError):
    """The choices leave a part no size; the message says which, and what would work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gaps:
    """The gap above a drawer, now and at the ends of the year [in]."""

    now: float
    wettest_front: float
    wettest_side: float
    driest_front: float
    driest_side: float

    @property
    def wettest(self) -> float:
        """The lesser of front and side when wettest: where it would bind first."""
        return min(self.wettest_front, self.wettest_side)

    @property
    def driest(self) -> float:
        """The greater of front and side when driest: what is seen in winter."""
        return max(self.driest_front, self.driest_side)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """What a drawer holds: clear width, depth and height [in]."""

    width: float
    depth: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerSizes:
    """One drawer, before its joints are set out.

    Attributes:
        opening: the hole it goes into
        height: height of front and sides as they are planed now [in]
        drawn_height: the same for the opening as it was drawn; decides the family of the tails [in]
        width: over the sides, which is the length of front and back [in]
        length: front to back [in]
        front: thickness of the front [in]
        left_side: thickness of the left side [in]
        right_side: thickness of the right side [in]
        back: thickness of the back [in]
        gauge_1: depth of the sockets, locked for the batch [in]
        lap: wood left in front of the tails [in]
        rabbet: depth of the registration rabbet [in]
        side_length: length of the sides [in]
        back_height: height of the back [in]
        back_foot: lower edge of the back above that of the sides [in]
        inside: what it holds
        gaps: the gap above it through the year
    """

    opening: Opening
    height: float
    drawn_height: float
    width: float
    length: float
    front: float
    left_side: float
    right_side: float
    back: float
    gauge_1: float
    lap: float
    rabbet: float
    side_length: float
    back_height: float
    back_foot: float
    inside: Inside
    gaps: Gaps

    @property
    def code(self) -> str:
        """Row and position, such as `R5-1`."""
        return self.opening.code


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerMake:
    """What every drawer of the unit shares: chosen where the maker left it out.

    Attributes:
        drawers: what the maker chose
        back: thickness of a back [in]
        lap: designed lap [in]
        rabbet: designed registration rabbet [in]
        gauge_1: depth of the sockets [in]
        front_moves: movement coefficient of a front in height [1 per % moisture]
        side_moves: movement coefficient of a side in height [1 per % moisture]
        chosen: what was left out, with the reason for each choice
    """

    drawers: Drawers
    back: float
    lap: float
    rabbet: float
    gauge_1: float
    front_moves: float
    side_moves: float
    chosen: tuple[Chosen, ...]


def shared_construction(spec: UnitSpec, ledger: Ledger, usual: Usual = USUAL) -> DrawerMake:
    """Fills in what the drawers of a unit share.

    Args:
        spec: what the maker chose
        ledger: keeps the working
        usual: the shop's habits

    Returns:
        The construction that all drawers share.

    Raises:
        CannotBuild: the lap leaves nothing of the front to cut sockets into

    Source: the defaults of the joinery, each with its own source.
    """
    drawers = spec.drawers
    chosen = []
    lap, rabbet = drawers.lap, drawers.rabbet
    if lap is None:
        chosen.append(chosen_lap(drawers.front, usual))
        lap = ledger.given("drawers.lap", chosen[-1].value, say("chosen: {}", chosen[-1].why))
    if rabbet is None:
        chosen.append(chosen_rabbet(drawers.side, usual))
        rabbet = ledger.given("drawers.rabbet", chosen[-1].value, say("chosen: {}", chosen[-1].why))
    if lap >= drawers.front:
        raise CannotBuild(
            say(
                "drawers.lap: a lap of {} leaves nothing of a front {:bare} thick; make it {:bare}",
                lap,
                drawers.front,
                chosen_lap(drawers.front, usual).value,
            )
        )
    if rabbet >= drawers.side:
        raise CannotBuild(
            say(
                "drawers.rabbet: a rabbet of {} leaves nothing of a side {:bare} thick; make it {:bare}",
                rabbet,
                drawers.side,
                chosen_rabbet(drawers.side, usual).value,
            )
        )
    return DrawerMake(
        drawers=drawers,
        back=drawers.side if drawers.back is None else drawers.back,
        lap=lap,
        rabbet=rabbet,
        gauge_1=ledger.take("drawers.gauge_1", first_gauge, front=drawers.front, lap=lap),
        front_moves=across(spec.woods.of("fronts"), ledger),
        side_moves=across(spec.woods.drawers, ledger),
        chosen=tuple(chosen),
    )


NOTHING = MeasuredPart()


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
    width = under.take(
        "width", rules.drawer_width, opening=opening.width, side_gap=_side_gap(opening, drawers, under)
    )
    length = under.take(
        "length",
        rules.drawer_length,
        depth=opening.depth,
        back_gap=_back_gap(opening, drawers, under),
        shrinkage=side_shrinkage,
    )
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


def _side_gap(opening: Opening, drawers: Drawers, under: Ledger) -> float:
    if drawers.clearances.side is not None:
        return drawers.clearances.side
    gap = SMALL_SIDE_GAP if opening.designed_width <= SMALL else SIDE_GAP
    return under.given("side_gap", gap, CHOSEN_GAP, Inches)


def _back_gap(opening: Opening, drawers: Drawers, under: Ledger) -> float:
    if drawers.clearances.back is not None:
        return drawers.clearances.back
    gap = SMALL_BACK_GAP if opening.designed_width <= SMALL and opening.designed_depth <= SMALL else BACK_GAP
    return under.given("back_gap", gap, CHOSEN_GAP, Inches)


def _height(opening: float, shared: DrawerMake, climate: Climate, under: Ledger) -> float:
    clearances = shared.drawers.clearances
    return under.take(
        "height",
        rules.drawer_height,
        opening=opening,
        bottom_gap=clearances.bottom,
        top_gap=clearances.top,
        coefficient=max(shared.front_moves, shared.side_moves),
        swelling=climate.swelling,
    )


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
    return Inside(
        width=under.take("inside_width", rules.width_inside, width=width, left_side=left, right_side=right),
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
