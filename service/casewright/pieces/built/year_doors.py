"""Doors, panels and overlay fronts through the year: gaps at free edges, and panels in their grooves."""

from collections.abc import Iterable, Iterator

from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.part_year import PartYear, sawn, taken
from casewright.pieces.doors.checks import LEAST_GAP
from casewright.pieces.doors.hanging import Door
from casewright.pieces.drawers.front_checks import GAP_LEAST, Fronts
from casewright.pieces.layout.season import across
from casewright.pieces.layout.year import Year
from casewright.pieces.panels.checks import LEAST_HELD
from casewright.pieces.panels.frame import PanelFrame
from casewright.pieces.rules import door_rules, panel_rules, season_rules


def doors_through(doors: Iterable[Door], year: Year, ledger: Ledger) -> Iterator[PartYear]:
    """The doors through the year, those alike together.

    Args:
        doors: the doors
        year: the year at home
        ledger: keeps the working

    Yields:
        The gap at their free edges, and their panels.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    groups: dict[tuple[float, ...], list[Door]] = {}
    for door in doors:
        plan = door.plan
        groups.setdefault((plan.width, plan.height, plan.room, len(plan.leaves)), []).append(door)
    for alike in groups.values():
        yield from _gap(alike, year, ledger)
        first, codes = alike[0], ", ".join(door.plan.opening.code for door in alike)
        if first.plan.frame is not None:
            name = f"year.{first.plan.opening.code}.door"
            yield from frame_through(f"Door of {codes}", first.plan.frame, year, ledger, name)


def _gap(alike: list[Door], year: Year, ledger: Ledger) -> Iterator[PartYear]:
    door, plan = alike[0], alike[0].plan
    under = ledger.under(f"year.{plan.opening.code}.door")
    is_free = not plan.is_inset and len(plan.leaves) == 1
    hinge_gaps = len(plan.leaves) * door.hinge_gap
    through = year.follow(
        taken(
            under,
            "gap",
            door_rules.free_gap,
            room=plan.room,
            hinge_gaps=hinge_gaps,
            leaves=len(plan.leaves),
            width=plan.width,
            moving=plan.moving,
            coefficient=plan.moves,
        )
    )
    yield PartYear(
        part=f"Door of {', '.join(each.plan.opening.code for each in alike)}",
        made_of=plan.made_of,
        what="gap between its leaves" if len(plan.leaves) == 2 else "gap at its free edge",
        through=through,
        limit=None if is_free else LEAST_GAP,
        note="It lies over its edges, so it only shifts: below nothing it has grown."
        if is_free
        else say("Hang it with {} at the hinges; all that it grows goes to the free edge.", door.hinge_gap),
    )


def frame_through(part: str, frame: PanelFrame, year: Year, ledger: Ledger, name: str) -> Iterator[PartYear]:
    """The panels of a frame through the year: their play in the grooves, and what is still held.

    Args:
        part: what the frame is, such as `Door of R2-1`
        frame: the frame
        year: the year at home
        ledger: keeps the working
        name: under which its figures are kept

    Yields:
        Play and hold; what plywood does is next to nothing, and said as such.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    under = ledger.under(name)
    made_of = str(frame.sheet) if frame.sheet else f"panel of {sawn(frame.asked.panel)}"
    sizes = {"panel": frame.panel_width, "moves": frame.moves}
    yield PartYear(
        part=part,
        made_of=made_of,
        what="play of the panel in each groove",
        through=year.follow(taken(under, "play", panel_rules.play_then, play=frame.play, **sizes)),
        limit=0.0,
        note="Do not glue it; a drop in the middle of each rail keeps it centred.",
    )
    yield PartYear(
        part=part,
        made_of=made_of,
        what="how far the panel reaches into each groove",
        through=year.follow(
            taken(
                under,
                "held",
                panel_rules.held_then,
                groove=frame.asked.how.groove_depth,
                play=frame.play,
                **sizes,
            )
        ),
        limit=LEAST_HELD,
        note="Finish the panel before it goes in: what the groove hides shows when it shrinks.",
    )


def fronts_through(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    """Fronts that stand before the case, through the year: the gap above each, those alike together.

    Args:
        unit: the unit
        year: the year at home
        ledger: keeps the working

    Yields:
        The gap to the front above; nothing for fronts within their openings.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    standing = [drawer for drawer in unit.drawers if drawer.sizes.stand > 0]
    if not standing:
        return
    moves, fronts = across(unit.spec.woods.of("fronts"), ledger), Fronts(standing)
    groups: dict[tuple[float, ...], list[str]] = {}
    for drawer in standing:
        above, own = fronts.above(drawer), drawer.sizes.face
        if above is not None:
            other = above.sizes.face
            key = (round(other.bottom - own.top, 6), own.height, other.height)
            groups.setdefault(key, []).append(drawer.sizes.code)
    for (gap, front, upper), codes in groups.items():
        yield PartYear(
            part=f"Front of {', '.join(codes)}",
            made_of=sawn(unit.spec.woods.of("fronts")),
            what="gap to the front above",
            through=year.follow(
                taken(
                    ledger.under(f"year.{codes[0]}.front"),
                    "gap",
                    season_rules.front_gap_then,
                    gap=gap,
                    front=front,
                    other=upper,
                    coefficient=moves,
                )
            ),
            limit=GAP_LEAST,
            note="Each is held in its middle: half of what both grow comes off the gap.",
        )
