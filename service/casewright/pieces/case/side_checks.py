"""Checks of the sides and dividers that a case was given: has their wood room, and do the drawers run?"""

from collections.abc import Iterator

from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say, strung
from casewright.measure.units import Inches
from casewright.pieces.asked.running_spec import FullRunners
from casewright.pieces.case.base_checks import CROSS_GRAIN, HANDBOOK
from casewright.pieces.case.boards import growth, wood_behind
from casewright.pieces.case.dust import dust_depth, dust_held
from casewright.pieces.case.ends import is_housed
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.settled import SAME_SHEET, boards_of_sheet
from casewright.pieces.case.sides import FRAME, side_codes
from casewright.pieces.layout.season import across
from casewright.pieces.panels.checks import frame_checks
from casewright.pieces.rules import corner_rules as rules

GLUED = 3.0
"""How much of a board's front is glued in a housing in which it has to slide (common practice) [in]."""


def side_checks(case: CasePlan, ledger: Ledger) -> Iterator[Finding]:
    """The checks of sides, dividers and what lies across the grain between them.

    Args:
        case: what the case is worked out from
        ledger: keeps the working

    Yields:
        The findings, passes too; none for what is not there.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    thick = case.spec.case
    if case.frame:
        yield from frame_checks(case.frame, case.climate, ledger, FRAME, side_codes(case)[0])
        yield from _rails_in_the_stiles(case)
        yield _bottom(case, ledger)
    if len(case.face.rows) > 1 or case.face.is_nested:
        yield from _dividers(case, ledger)
    yield from _of_one_sheet(case)
    is_divided = thick.divider_kind != "none" and len(case.face.rows) > 1
    if thick.is_ply and thick.divider_end == "sliding dovetail" and is_divided:
        yield Finding(
            rule="dovetail in plywood",
            verdict=Verdict.CAUTION,
            message="The socket of a sliding dovetail in plywood breaks out between the plies.",
            remedy=say("Take a housing, {:fraction} deep.", thick.housing),
            about=case.code("D"),
        )


def _of_one_sheet(case: CasePlan) -> Iterator[Finding]:
    """Boards of a plywood case are as thick as its sheet: none can be sawn thicker or thinner from it."""
    thick, bought = case.spec.case, case.spec.case.ply.bought
    stands = any(row.uprights or row.partitions for row in case.face.all_rows)
    boards = boards_of_sheet(thick, stands)
    if not boards:
        return
    wrong = {name: size for name, size in boards.items() if abs(size - bought.thickness) > SAME_SHEET}
    asked = strung(" and ", (say("the {} {:bare}", name, size) for name, size in wrong.items()))
    yield Finding(
        rule="boards of the sheet",
        verdict=Verdict.STOP if wrong else Verdict.PASS,
        message=(
            say("{} measures {}, and {} was asked for.", str(bought), bought.thickness, asked)
            if wrong
            else say("Sides, top and bottom come from one sheet, {} thick.", thick.side)
        ),
        remedy=(
            say(
                "Leave out {}, or choose a sheet that measures as much; what yours measures goes into "
                "case.ply.measures.",
                " and ".join(f"case.{name}" for name in wrong),
            )
            if wrong
            else ""
        ),
        about=side_codes(case)[0],
        found=next(iter(wrong.values()), thick.side),
        needed=bought.thickness,
        source="the sheet table",
    )


def _rails_in_the_stiles(case: CasePlan) -> Iterator[Finding]:
    """Dividers are housed in the stiles only: a rail is no wider than what of the stile it meets."""
    thick, frames, back = case.spec.case, case.spec.frames, case.spec.back.thickness
    if len(case.face.rows) < 2 or thick.divider_kind in ("solid", "none"):
        return
    stile = thick.panelling.stile
    kinds = [("front", thick.rail_width, stile)]
    if thick.has_webs and case.spec.drawers.on_frames:
        kinds.append(("rear", frames.back_rail_width, stile - back))
    for which, rail, room in kinds:
        yield at_least(
            "rails in the stiles",
            room,
            rail,
            say(
                "The {} rails of the dividers are {} wide; {} of the {} stile takes them, beyond it lies the "
                "panel.",
                which,
                rail,
                room,
                which,
            ),
            say("Make the stiles {:up} wide or more, or the rails {:down}.", stile + rail - room, room),
            about=side_codes(case)[0],
            verdict=Verdict.CAUTION,
            source="geometry of the case",
        )


def _bottom(case: CasePlan, ledger: Ledger) -> Finding:
    """A solid bottom moves in depth between sides that keep theirs."""
    apart = _apart(case, ledger, "bottom")
    wide = case.face.opening_depth
    about = case.code("C-B")
    if is_housed(case) or wide <= CROSS_GRAIN:
        return Finding(
            rule="cross-grain fixing",
            verdict=Verdict.PASS,
            message=say(
                "The case bottom moves {:.3} apart from its framed sides: it is glued over the front "
                "{:fraction} and free behind, with {:up 16} left at the rear.",
                apart,
                min(GLUED, wide),
                growth(case),
            ),
            about=about,
            found=float(apart),
            source=HANDBOOK,
        )
    return Finding(
        rule="cross-grain fixing",
        verdict=Verdict.STOP,
        message=say(
            "The case bottom, {} across the grain, is fixed from front to back to framed sides; it moves "
            "{:.3} apart from them.",
            wide,
            apart,
        ),
        remedy=say(
            "Join the rails by tenons: the bottom then lies free in a housing. Fixed, it may be {} wide.",
            CROSS_GRAIN,
        ),
        about=about,
        found=float(wide),
        needed=CROSS_GRAIN,
        source=HANDBOOK,
    )


def _dividers(case: CasePlan, ledger: Ledger) -> Iterator[Finding]:
    thick, drawers = case.spec.case, case.spec.drawers
    if thick.divider_kind == "dust-frame" and drawers.on_frames:
        yield dust_held(case, dust_depth(case))
    elif thick.divider_kind == "solid" and not thick.is_ply:
        yield _solid_divider(case, ledger)
    elif thick.divider_kind == "rail" and drawers.on_frames and not isinstance(drawers.running, FullRunners):
        yield Finding(
            rule="something to run on",
            verdict=Verdict.STOP,
            message="Behind a front rail alone, drawers that stand on runners have nothing to run on.",
            remedy="Hang them at their sides or on slides, or choose a web frame or a solid divider.",
            about=case.code("D1"),
        )


def _solid_divider(case: CasePlan, ledger: Ledger) -> Finding:
    """Boards over the full depth move with solid sides, and apart from framed ones."""
    apart, free = _apart(case, ledger, "divider"), growth(case)
    message = say(
        "Dividers and sides move in depth together, {:.3} apart at the most: glue the front {:fraction} of "
        "each housing.",
        apart,
        GLUED,
    )
    if free:
        message = say(
            "The dividers move {:.3} apart from their framed sides: glue the front {:fraction} only; "
            "{:up 16} is left at the rear.",
            apart,
            GLUED,
            free,
        )
    return Finding(
        rule="cross-grain fixing",
        verdict=Verdict.PASS,
        message=message,
        about=case.code("D1"),
        found=float(apart),
        source=HANDBOOK,
    )


def _apart(case: CasePlan, ledger: Ledger, figure: str) -> Inches:
    """How far a board over the full depth and the sides move apart, whichever way is more [in]."""
    climate = case.climate
    return case.ledger.take(
        f"{figure}_apart",
        rules.moves_apart,
        board=case.face.opening_depth - case.spec.case.lipping,
        board_moves=across(wood_behind(case), ledger),
        side=case.moves.across,
        side_moves=case.moves.moves,
        change=max(climate.swelling, climate.drying),
    )
