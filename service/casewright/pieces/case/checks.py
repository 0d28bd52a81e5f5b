"""Checks of the case: does it close, does it go through the door, does its wood have room to move?"""

from collections.abc import Iterator
from math import sqrt

from casewright.joinery.families.edge.asked import EDGES
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.base_checks import HANDBOOK, base_checks
from casewright.pieces.case.carcase import Carcase
from casewright.pieces.case.face_checks import face_checks
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.season import Climate, across
from casewright.wood.movement import is_extrapolated, movement


def case_checks(
    spec: UnitSpec, face: Face, climate: Climate, case: Carcase, ledger: Ledger
) -> Iterator[Finding]:
    """The checks of the case.

    Args:
        spec: what the maker chose
        face: heights, rows and openings
        climate: the moisture contents between which the wood moves
        case: the carcase
        ledger: keeps the working

    Returns:
        The findings, passes too.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    yield from face_checks(spec, face)
    if spec.legs:
        yield _top_on_legs(spec, spec.legs, climate, ledger)
    else:
        if spec.drawers.on_frames:
            yield _slack(case)
        yield from base_checks(spec, case)
        yield from _top(spec, climate, ledger)
        yield from _back(spec, case, climate, ledger)
    yield from _way_in(spec, face)
    yield _range(climate)
    yield from _reading(spec, climate)


def _slack(case: Carcase) -> Finding:
    """The gap behind a runner takes what the side shrinks."""
    return at_least(
        "runner slack",
        case.slack,
        case.side_shrinkage,
        say(
            "The gap at the rear of each runner is {}; the side shrinks {:.3}.",
            case.slack,
            case.side_shrinkage,
        ),
        say("Make the gap {:up}, or it will push the rear rail out.", case.side_shrinkage),
        source=HANDBOOK,
    )


def _top(spec: UnitSpec, climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    """A solid top over solid sides moves with them; where the woods differ, the difference needs slack."""
    top, side = across(spec.woods.of("top"), ledger), across(spec.woods.case, ledger)
    depth = spec.body.depth
    apart = abs(
        movement(size=depth, coefficient=top, change=climate.swelling)
        - movement(size=depth, coefficient=side, change=climate.swelling)
    )
    grows = movement(size=depth, coefficient=top, change=climate.swelling)
    yield Finding(
        rule="top fixing",
        verdict=Verdict.PASS,
        message=say(
            "The top grows {:.3} over the case when wettest and {:.3} apart from the "
            "sides: fix it at the front, buttons with {:up 16} of slack.",
            grows,
            apart,
            apart + 1 / 32,
        ),
        about=f"{spec.code}-T",
        found=float(apart),
        source=HANDBOOK,
    )


def _top_on_legs(spec: UnitSpec, legs: LegsAndAprons, climate: Climate, ledger: Ledger) -> Finding:
    """A solid top moves over aprons that do not: held at the front, it slides at the back."""
    moves = across(spec.woods.of("top"), ledger)
    grows, shrinks = (
        movement(size=spec.top_depth, coefficient=moves, change=change)
        for change in (climate.swelling, climate.drying)
    )
    return Finding(
        rule="top fixing",
        verdict=Verdict.PASS,
        message=say(
            "The top grows {:.3} when wettest and shrinks {:.3} when driest over aprons that do not: fix it "
            "at the front, with {} at the sides and the back that give {:up 16} each way.",
            grows,
            shrinks,
            "buttons" if legs.fixing == "buttons" else "slots in the kickers",
            max(grows, shrinks),
        ),
        about=f"{spec.code}-T",
        found=float(grows),
        source=HANDBOOK,
    )


def _back(spec: UnitSpec, case: Carcase, climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    """Shiplap boards have room to swell, and their laps still cover when they shrink."""
    board = case.back_board
    moves = across(spec.woods.of("back"), ledger)
    swells = movement(size=board, coefficient=moves, change=climate.swelling)
    yield at_least(
        "back gaps",
        spec.back.gap,
        swells,
        say("Each back board swells {:.3} into a gap of {}.", swells, spec.back.gap),
        say("Make the gap {:up}, or use more and narrower boards.", swells),
        about=f"{spec.code}-K",
        source=HANDBOOK,
    )
    covers = spec.back.lap - spec.back.gap
    yield at_least(
        "back laps",
        covers,
        EDGES.cover_least.value,
        say("The laps cover {}.", covers),
        say("Make the lap {:up} or more.", spec.back.gap + EDGES.cover_least.value),
        about=f"{spec.code}-K",
    )


def _way_in(spec: UnitSpec, face: Face) -> Iterator[Finding]:
    """The piece goes through the door, and round the corner behind it."""
    site = spec.site
    sizes = sorted(
        (
            spec.overall_width,
            spec.overall_depth,
            face.overall_height,
        )
    )
    if site.door_width is not None:
        small, large = sorted((site.door_width, site.door_height or 80.0))
        passes = sizes[0] <= small and sizes[1] <= large
        yield Finding(
            rule="door",
            verdict=Verdict.PASS if passes else Verdict.STOP,
            message=say(
                "Its least section is {:bare} × {}; the door is {:bare} × {:bare}.",
                sizes[0],
                sizes[1],
                small,
                large,
            ),
            remedy="" if passes else "Make the top or the base to knock down, or choose another way in.",
            found=sizes[0],
            needed=small,
        )
    if site.turn_width is not None:
        longest = 2 * (sqrt(2) * site.turn_width - sizes[0])
        yield at_most(
            "turn",
            sizes[1],
            longest,
            say(
                "Carried on end, {:bare} × {} turns a square corner of {} if it is no longer than {:down}.",
                sizes[1],
                sizes[0],
                site.turn_width,
                longest,
            ),
            "Make the top or the base to knock down, or measure another way in.",
            source="geometry: a rectangle round a square turn of even width",
        )


def _range(climate: Climate) -> Finding:
    """One coefficient serves between 6 and 14 % moisture."""
    outside = is_extrapolated(climate.driest, climate.wettest) or is_extrapolated(climate.now, climate.now)
    return Finding(
        rule="moisture range",
        verdict=Verdict.CAUTION if outside else Verdict.PASS,
        message=(
            f"The wood goes from {climate.driest:.1f} to {climate.wettest:.1f} % moisture and is worked at "
            f"{climate.now:.1f} %."
        ),
        remedy=(
            "The coefficients hold between 6 and 14 %; beyond, the gaps are a guess: leave a little more."
            if outside
            else ""
        ),
        found=float(climate.wettest),
        needed=14.0,
        source=HANDBOOK,
    )


def _reading(spec: UnitSpec, climate: Climate) -> Iterator[Finding]:
    """Where a month of fitting is given, somebody has measured the wood."""
    month = spec.season.fitted
    if month is None:
        return
    known = spec.season.has_reading
    yield Finding(
        rule="moisture when fitted",
        verdict=Verdict.PASS if known else Verdict.CAUTION,
        message=f"The drawers are fitted in {month.value}, with wood at {climate.now:.1f} %, "
        f"{'as measured in the shop' if known else 'which is what the home comes to then'}.",
        remedy="" if known else "Measure the wood before it is planed, and give what the meter shows.",
        found=float(climate.now),
    )
