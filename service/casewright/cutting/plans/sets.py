"""Whether parts that match are cut so that they do, seen from where they lie."""

from collections.abc import Iterable, Iterator, Sequence

from casewright.cutting.asked.parts_spec import GrainSet
from casewright.cutting.plans.blanks import Broken
from casewright.cutting.plans.values import BoardLayout, Laid
from casewright.measure.units import Ticks

Place = tuple[BoardLayout, Laid]


def broken_sets(
    asked: Iterable[GrainSet], boards: Sequence[BoardLayout], kerf: Ticks, reasons: Iterable[Broken]
) -> Iterator[Broken]:
    """The sets that the layout does not keep.

    Args:
        asked: every set of the lot
        boards: where everything lies
        kerf: what a cut takes [tick]
        reasons: why some of them were given up

    Returns:
        Each set that is not kept, with why.

    Source: common practice.
    """
    known = {each.name: each.reason for each in reasons}
    for each in asked:
        if not _is_kept(each, boards, kerf):
            reason = known.get(each.name, "its parts do not lie as they should")
            yield Broken(name=each.name, way=each.way, reason=reason)


def _is_kept(asked: GrainSet, boards: Sequence[BoardLayout], kerf: Ticks) -> bool:
    places: dict[str, list[Place]] = {}
    for board in boards:
        for laid in board.laid:
            for code in {laid.mark.code, laid.second.code if laid.second else laid.mark.code}:
                places.setdefault(code, []).append((board, laid))
    if glued := places.get(asked.name):
        return len(glued) == glued[0][1].strips
    if asked.way == "one tree":
        logs = {place[0].ground.log for row in asked.rows for code in row for place in places.get(code, [])}
        return len(logs) == 1 and "" not in logs
    if asked.way in ("book", "slip"):
        return all(_are_opened(first, second, places) for first, second in asked.rows)
    rows = [[code] for code in asked.rows[0]] if asked.way == "across" else [list(row) for row in asked.rows]
    return any(_lie_so(rows, start, places, kerf) for start in places.get(rows[0][0], []))


def _are_opened(first: str, second: str, places: dict[str, list[Place]]) -> bool:
    """Do two parts come from one thickness?"""
    pair = {first, second}
    return any(
        laid.second and {laid.mark.code, laid.second.code} == pair for _, laid in places.get(first, [])
    )


def _lie_so(rows: list[list[str]], start: Place, places: dict[str, list[Place]], kerf: Ticks) -> bool:
    """Does every row follow its first part, kerf by kerf, and every row the one before it?"""
    board, first = start
    across = board.ground.grain_across
    x0, y0 = (first.spot.y, first.spot.x) if across else (first.spot.x, first.spot.y)
    y = y0
    for row in rows:
        x, widest = x0, 0
        for code in row:
            found = _at(code, board, (y, x) if across else (x, y), places)
            if found is None:
                return False
            spot = found.spot.flipped() if across else found.spot
            x, widest = x + spot.length + kerf, max(widest, spot.width)
        y += widest + kerf
    return True


def _at(code: str, board: BoardLayout, at: tuple[int, int], places: dict[str, list[Place]]) -> Laid | None:
    for where, laid in places.get(code, []):
        is_there = (where.ground.stock.code, where.number) == (board.ground.stock.code, board.number)
        if is_there and (laid.spot.x, laid.spot.y) == at:
            return laid
    return None
