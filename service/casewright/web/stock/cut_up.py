"""Boards of the rack that were cut up for some jobs: no order buys that wood again."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from casewright.records.cut_wood import cut_up_for
from casewright.records.sessions import Fenced
from casewright.records.stock_lists import offcuts_of_all
from casewright.shop.stock import feet_of, label
from casewright.wood.movement import Cut

SAWN = tuple(each.value for each in Cut)


@dataclass(frozen=True, slots=True, kw_only=True)
class CutUp:
    """What was cut up for a line of an order.

    Attributes:
        feet: of the boards, less what came back as offcuts, and no more than the jobs need [bd ft]
        boards: their labels
        at: when the first of them was cut
    """

    feet: float
    boards: tuple[str, ...]
    at: datetime


def cut_up(db: Fenced, jobs: Iterable[str], shares: Mapping[str, Mapping[str, float]]) -> dict[str, CutUp]:
    """What was cut up of the rack for some jobs, by the line of the order that needs such wood.

    What came for an order of the same jobs is left out: there it counts as ordered. Two queries.

    Args:
        db: the session
        jobs: the ids of the jobs
        shares: how much of each line each job takes, by the line's key and the job's id [bd ft]

    Returns:
        By the line's key; lines of which nothing was cut up are left out.
    """
    cut = cut_up_for(db, tuple(jobs))
    if not cut:
        return {}
    back: dict[str, float] = {}
    for each in offcuts_of_all(db, [piece.id for piece, _ in cut]):
        back[each.from_id or ""] = back.get(each.from_id or "", 0.0) + feet_of(each)
    left = {(key, job): feet for key, held in shares.items() for job, feet in held.items()}
    found: dict[str, CutUp] = {}
    for piece, at in cut:
        job = piece.for_job or ""
        fit = [key for key, of in left if of == job and _fits(key, piece.material, piece.cut, piece.size)]
        key = min(fit, key=lambda one: not one.endswith(f"/{piece.grade}"), default="")
        feet = min(max(0.0, feet_of(piece) - back.get(piece.id, 0.0)), left.get((key, job), 0.0))
        if feet:
            left[key, job] -= feet
            before = found.get(key, CutUp(feet=0.0, boards=(), at=at))
            found[key] = CutUp(
                feet=before.feet + feet, boards=(*before.boards, label(piece)), at=min(before.at, at)
            )
    return found


def _fits(key: str, material: str, cut: str, size: str) -> bool:
    """Is it wood of that line? An offcut may not say how it was sawn."""
    # A class has a stroke in its name, so what stands round it is taken off first.
    return any(key.startswith(f"lumber/{material}/{sawn}/{size}/") for sawn in ([cut] if cut else SAWN))
