"""How far each piece of a unit is, as the core asks for it when a design changes."""

from collections.abc import Mapping
from dataclasses import replace
from itertools import groupby

from casewright.measure.units import Hours
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.rework import Rework, rework
from casewright.pieces.built.rework_stages import Reached
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.costs.rework_hours import standard_hours
from casewright.records.jobs import UnitRevision
from casewright.records.rework import seconds_of_drawers, standing_of_unit
from casewright.records.sessions import Fenced
from casewright.shop.units import followed, origins_of

SECONDS = 3600


def reached_by_unit(db: Fenced, revision: UnitRevision) -> Mapping[int, Reached]:
    """How far each piece of a unit is, with the hours that were written down for its drawers; two queries.

    Args:
        db: the session
        revision: the one whose codes the drawers are to be named by
    """
    unit_id = revision.unit_id
    codes = {origin: code for code, origin in origins_of(revision).items()}
    seconds = seconds_of_drawers(db, unit_id)
    found: dict[int, Reached] = {}
    for piece, rows in groupby(standing_of_unit(db, unit_id), key=lambda row: row.piece):
        members = list(rows)
        known = [(codes[row.origin], row) for row in members if row.origin in codes]
        logged: dict[str, Hours] = {
            code: seconds[row.drawer_id] / SECONDS for code, row in known if row.drawer_id in seconds
        }
        found[piece] = Reached(
            case=members[0].case_stage,
            drawers={code: row.stage for code, row in known},
            hours=logged,
        )
    return found


def with_standard(reached: Reached, held: Estimate | None) -> Reached:
    """The same with the standard hours of the finished stages wherever none were written down."""
    if held is None:
        return reached
    return replace(reached, hours={**standard_hours(held, reached), **reached.hours})


def reworked(
    db: Fenced, revision: UnitRevision, changed: UnitRevision, before: Estimate, after: Construction
) -> tuple[tuple[int, Rework], ...]:
    """What a change does to each piece of a unit that is being made, by the number of the piece.

    Args:
        db: the session
        revision: the one that is being made, whose codes the drawers have there
        changed: the one that it becomes
        before: the unit as it is being made
        after: the unit as it is to be
    """
    standing = dict(reached_by_unit(db, revision)) or {1: Reached()}
    follows = followed(revision, changed)
    return tuple(
        (piece, rework(before.unit, after, with_standard(each, before), follows))
        for piece, each in standing.items()
        if piece <= before.unit.spec.count
    )
