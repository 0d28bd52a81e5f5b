"""Checks of the top: do its fixings give what it moves?"""

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.base_checks import HANDBOOK
from casewright.pieces.case.carcase import Carcase
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.rules.case_rules import top_slack
from casewright.wood.movement import movement

SPARE = 1 / 32
"""What fixings give beyond what the top needs, where nothing is said (common practice) [in]."""
HELD_AT_MOST = 1 / 16
"""So much boards may move apart that are dovetailed to each other (common practice) [in]."""
HOW: dict[str, str] = {
    "buttons": "buttons with {:up 16} of slack",
    "slots": "screws in slots that give {:up 16} towards the rear",
    "clips": "clips that give {:up 16} towards the rear",
}


THROUGH = "screws up through the case top, in slots that give {:up 16} towards the rear"
"""How a top is held over a case that has a board under it."""
ASK_RAILS: dict[str, str] = {
    "buttons": "Wooden buttons reach into grooves of the rails under a top",
    "clips": "Metal clips are let into the rails under a top",
}
"""Why a way to hold a top asks for rails, by the way."""


def top_fixing(spec: UnitSpec, case: Carcase, climate: Climate, ledger: Ledger) -> Finding:
    """A solid top over solid sides moves with them; over others, or where the woods differ, it needs slack.

    Args:
        spec: what the maker chose
        case: the carcase, and how far its sides move
        climate: the moisture contents between which the wood moves
        ledger: keeps the working

    Returns:
        The finding.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13.
    """
    top = spec.top
    if top.fixing == "none":
        return Finding(
            rule="top fixing",
            verdict=Verdict.PASS,
            message="There is no top of its own: fix the case through its upper rails.",
            about=spec.code,
        )
    if spec.has_case_top and top.fixing in ASK_RAILS:
        return Finding(
            rule="top fixing",
            verdict=Verdict.STOP,
            message=f"{ASK_RAILS[top.fixing]}; this case has a board there, and no rails.",
            remedy="Screw the top on from below: choose “slots”, or leave top.fixing out.",
            about=f"{spec.code}-T",
            source="common practice of plywood cases",
        )
    moves = across(spec.woods.of("top"), ledger)
    # Sides of plywood stay as deep as they are, and framed ones move by their stiles alone.
    across_grain = case.plan.moves.across
    side = case.plan.moves.moves * across_grain / spec.body.depth if across_grain else 0.0
    if across_grain == spec.body.depth:
        side = case.plan.moves.moves
    change = max(climate.swelling, climate.drying)
    depth = spec.body.depth if top.is_dovetailed else spec.top_depth
    apart = ledger.take(
        "case.top_slack", top_slack, depth=depth, moves=moves, other=side, change=climate.swelling
    )
    if top.is_dovetailed:
        widest = top_slack(depth=depth, moves=moves, other=side, change=change)
        return at_most(
            "top fixing",
            widest,
            HELD_AT_MOST,
            say("The top is dovetailed to the sides and moves {:.3} apart from them.", widest),
            "Make it of the wood and cut of the sides, or give the case a top that can slide.",
            about=f"{spec.code}-C-T",
            source=HANDBOOK,
        )
    slack = apart + SPARE if top.slack is None else top.slack
    grows = movement(size=depth, coefficient=moves, change=climate.swelling)
    return at_least(
        "top fixing",
        slack,
        apart,
        say(
            "The top grows {:.3} over the case when wettest and {:.3} apart from the "
            "sides: fix it at the front, {}.",
            grows,
            apart,
            say(THROUGH if spec.has_case_top else HOW[top.fixing], slack),
        ),
        say("Give its fixings {:up} of slack or more towards the rear, or it will split.", apart),
        about=f"{spec.code}-T",
        source=HANDBOOK,
    )


def top_on_legs(spec: UnitSpec, legs: LegsAndAprons, climate: Climate, ledger: Ledger) -> Finding:
    """A solid top moves over aprons that do not: held at the front, it slides at the back.

    Args:
        spec: what the maker chose
        legs: the legs and aprons under it
        climate: the moisture contents between which the wood moves
        ledger: keeps the working

    Returns:
        The finding.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13.
    """
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
