"""Checks of the back: has it room to move, does it still cover, does it brace the case?"""

from collections.abc import Iterator

from casewright.joinery.families.edge.asked import EDGES
from casewright.joinery.families.edge.sizes import covered_then, gap_then
from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.base_checks import HANDBOOK
from casewright.pieces.case.carcase import Carcase
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.panels.checks import frame_checks
from casewright.wood.movement import movement

LEAST_SIDE = 1 / 8
"""What a groove leaves of a side at the least, if half of it is no more (common practice) [in]."""


def back_checks(spec: UnitSpec, case: Carcase, climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    """The checks of the back.

    Args:
        spec: what the maker chose
        case: the carcase
        climate: the moisture contents between which the wood moves
        ledger: keeps the working

    Returns:
        The findings, passes too.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    back = spec.back
    if back.is_boarded:
        yield from _boards(spec, case, climate, ledger)
    elif case.back_frame:
        yield from frame_checks(case.back_frame, climate, ledger.under("case"), "back", f"{spec.code}-K")
    elif back.kind == "grooved-ply":
        yield _groove(spec)
    elif back.kind == "none":
        yield _open(spec)


def _boards(spec: UnitSpec, case: Carcase, climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    """Boards have room to swell, and their laps or tongues still cover when they shrink."""
    board, back = case.back_board, spec.back
    moves = across(spec.woods.of("back"), ledger)
    swells = movement(size=board, coefficient=moves, change=climate.swelling)
    yield at_least(
        "back gaps",
        back.gap,
        swells,
        say("Each back board swells {:.3} into a gap of {}.", swells, back.gap),
        say("Make the gap {:up}, or use more and narrower boards.", swells),
        about=f"{spec.code}-K",
        source=HANDBOOK,
    )
    least = EDGES.cover_least.value
    if back.kind == "shiplap":
        covers = back.lap - back.gap
        message, remedy = "The laps cover {}.", say("Make the lap {:up} or more.", back.gap + least)
    else:
        dry = {"movement": moves, "change": -climate.drying}
        gap = gap_then(board=board, gap=back.gap, **dry)
        covers = covered_then(overlap=back.lap, gap=gap, **dry)
        message = "At the driest the tongues still reach {:.3} into their grooves."
        remedy = say("Make the tongue {:up} long or more.", back.lap + least - covers)
    yield at_least(
        "back laps",
        covers,
        least,
        say(message, covers),
        remedy,
        about=f"{spec.code}-K",
    )


def _groove(spec: UnitSpec) -> Finding:
    """What the groove of a plywood back leaves of the thinnest board that it runs in."""
    back, frame = spec.back, spec.frame
    board = min(frame.side, frame.upper, frame.lower)
    left, least = board - back.groove - back.play, max(LEAST_SIDE, board / 2)
    return at_least(
        "back groove",
        left,
        least,
        say("The groove of the back leaves {} of a board {:bare} thick.", left, board),
        say("Let the back reach {:down} into it, or less.", board - least - back.play),
        about=f"{spec.code}-K",
        verdict=Verdict.CAUTION,
    )


def _open(spec: UnitSpec) -> Finding:
    """Without a back nothing but the corners keeps a case from leaning over."""
    is_held = not spec.use.free_standing
    return Finding(
        rule="back braces",
        verdict=Verdict.PASS if is_held else Verdict.CAUTION,
        message="There is no back: the building it is fixed to keeps it square."
        if is_held
        else "There is no back: only the corners keep the case square and its drawers from jamming.",
        remedy="" if is_held else "Give it a back, or fix it to the building.",
        about=spec.code,
        source="common practice",
    )
