"""Checks of the case: does it close, does it go through the door, does its wood have room to move?"""

from collections.abc import Iterator
from math import sqrt

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.back_checks import back_checks
from casewright.pieces.case.base_checks import HANDBOOK, base_checks
from casewright.pieces.case.carcase import Carcase
from casewright.pieces.case.face_checks import face_checks
from casewright.pieces.case.side_checks import side_checks
from casewright.pieces.case.top_checks import top_fixing, top_on_legs
from casewright.pieces.case.wall_checks import wall_checks
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.season import Climate
from casewright.wood.movement import is_extrapolated


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
        yield top_on_legs(spec, spec.legs, climate, ledger)
    else:
        if spec.on_frames and spec.case.has_webs:
            yield _slack(case)
        yield from side_checks(case.plan, ledger)
        yield from base_checks(spec, case)
        yield top_fixing(spec, case, climate, ledger)
        yield from back_checks(spec, case, climate, ledger)
        yield from wall_checks(spec, face)
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
