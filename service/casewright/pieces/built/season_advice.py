"""What else is set by the season in which a piece is built: in words, with numbers."""

from collections.abc import Iterator

from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.pieces.asked.door_spec import FramedLeaf
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.year_parts import SAME_MOVEMENT, has_runners, side_swells
from casewright.pieces.doors.hanging import Door
from casewright.pieces.layout.season import across, moisture_rise
from casewright.pieces.layout.year import Year
from casewright.pieces.panels.frame import LEAST_PLAY
from casewright.pieces.rules import door_rules, panel_rules
from casewright.wood.movement import movement


def fit_advice(unit: Construction, year: Year, ledger: Ledger) -> Iterator[Words]:
    """How to set what is not a drawer's height: bottoms, runners, back boards, the top, doors and panels.

    Args:
        unit: the unit
        year: the year at home
        ledger: keeps the working

    Yields:
        A sentence for each that the piece has.

    Source: common practice; movement by the Wood Handbook, FPL-GTR-282 (2021), chapter 13.
    """
    yield from _bottoms(unit, year, ledger)
    yield from _runners(unit, year, ledger)
    yield from _back_boards(unit, year, ledger)
    yield from _top(unit, year, ledger)
    told: set[tuple[float, ...]] = set()
    for door in unit.doors:
        size = (door.plan.width, door.plan.height, door.plan.room)
        if size not in told:
            told.add(size)
            yield from _door(unit, door, year, ledger)


def _bottoms(unit: Construction, year: Year, ledger: Ledger) -> Iterator[Words]:
    if isinstance(unit.spec.drawers.bottom, PlyBottom):
        return
    deep = max(drawer.bottom.deep for drawer in unit.drawers)
    moves = across(unit.spec.woods.of("bottoms"), ledger)
    yield say(
        "Bottoms: held at the front, the deepest still goes back {:.3} and forth {:.3} from where it lies at "
        "{:.1f} %; give the slot under the back room for both.",
        movement(size=deep, coefficient=moves, change=unit.climate.swelling),
        movement(size=deep, coefficient=moves, change=unit.climate.drying),
        year.now,
    )


def _runners(unit: Construction, year: Year, ledger: Ledger) -> Iterator[Words]:
    if not has_runners(unit):
        return
    depth, moves = unit.spec.body.depth, side_swells(unit, ledger)
    swing = moisture_rise(unit.climate.driest, unit.climate.wettest)
    yield say(
        "Runners: at {:.1f} % leave {:up} or more at their rear ends; {} is drawn. Put in at the wettest "
        "they would need {:up}.",
        year.now,
        movement(size=depth, coefficient=moves, change=unit.climate.drying),
        unit.case.slack,
        movement(size=depth, coefficient=moves, change=swing),
    )


def _back_boards(unit: Construction, year: Year, ledger: Ledger) -> Iterator[Words]:
    if not unit.case.back_board:
        return
    board, moves = unit.case.back_board, across(unit.spec.woods.of("back"), ledger)
    needs = movement(size=board, coefficient=moves, change=unit.climate.swelling)
    yield say(
        "Back boards: at {:.1f} % leave {:up} or more at each lap; {} is drawn. At the driest the same "
        "boards would need {:up}.",
        year.now,
        needs,
        unit.spec.back.gap,
        movement(
            size=board, coefficient=moves, change=moisture_rise(unit.climate.driest, unit.climate.wettest)
        ),
    )


def _top(unit: Construction, year: Year, ledger: Ledger) -> Iterator[Words]:
    if not unit.spec.top.over or any(part.line == "T1" and part.sheet for part in unit.parts):
        return
    depth, side = unit.spec.body.depth, 0.0 if unit.spec.legs else side_swells(unit, ledger)
    apart = abs(across(unit.spec.woods.of("top"), ledger) - side)
    if apart <= SAME_MOVEMENT:
        yield "Top: it moves as its sides do, and its fixings need no room for the season."
        return
    yield say(
        "Top: fixed at the front, its rear edge still goes {:.3} one way and {:.3} the other over what it is "
        "fixed to, from where it stands at {:.1f} %; set its fixings so that both have room.",
        movement(size=depth, coefficient=apart, change=unit.climate.swelling),
        movement(size=depth, coefficient=apart, change=unit.climate.drying),
        year.now,
    )


def _door(unit: Construction, door: Door, year: Year, ledger: Ledger) -> Iterator[Words]:
    """How wide to make its leaves and panels now, and in the other seasons."""
    plan, chosen = door.plan, unit.spec.doors
    code = plan.opening.code
    under = ledger.under(f"year.{code}.door.made")
    wettest = year.now + year.to_wettest
    if plan.is_inset and plan.moves:
        widths = []
        for month in (year.driest, year.wettest):
            shared = {
                "opening": plan.opening.width,
                "leaves": len(plan.leaves),
                "gap": chosen.gap,
                "meeting": chosen.meeting,
                "coefficient": plan.moves,
                "swelling": moisture_rise(year.at(month), wettest),
            }
            name = f"width_in_{month.lower()}"
            widths.append(
                under.take(name, door_rules.framed_leaf_width, **shared, stile=chosen.make.stile)
                if isinstance(chosen.make, FramedLeaf)
                else under.take(name, door_rules.slab_leaf_width, **shared)
            )
        yield say(
            "Doors of {}: at {:.1f} % make each leaf {} wide; made in {} it would be {}, in {} {}.",
            code,
            year.now,
            plan.width,
            year.driest.value,
            widths[0],
            year.wettest.value,
            widths[1],
        )
    frame = plan.frame
    if frame is not None and frame.moves and frame.asked.how.play is None:
        dry, wet = (
            under.take(
                f"panel_in_{month.lower()}",
                panel_rules.widest_panel,
                clear=frame.clear_width,
                groove=frame.asked.how.groove_depth,
                least=LEAST_PLAY,
                moves=frame.moves,
                swelling=moisture_rise(year.at(month), wettest),
            )
            for month in (year.driest, year.wettest)
        )
        yield say(
            "Their panels: at {:.1f} % cut them {} wide; cut in {} they would be {}, in {} {}.",
            year.now,
            frame.panel_width,
            year.driest.value,
            dry,
            year.wettest.value,
            wet,
        )
