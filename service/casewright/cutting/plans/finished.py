"""A lot as it is handed out: each board with its parts, its cuts, and what is worth keeping of it."""

from collections import Counter
from collections.abc import Iterator, Sequence

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.filling import Lies
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.leftovers import kept, worth
from casewright.cutting.plans.sawing import Sawn, saw_up
from casewright.cutting.plans.steps import set_ups, steps_of
from casewright.cutting.plans.values import BoardLayout, Laid, Mark
from casewright.measure.units import Count, Number, Ticks


def boards_of(desk: Desk, file: CutFile) -> tuple[BoardLayout, ...]:
    """Every board that was begun, in the order of the stock.

    Args:
        desk: the lot, laid out
        file: what was asked

    Returns:
        The boards; parts that are alike are numbered in this order.

    Source: common practice.
    """
    order = {ground.stock.code: place for place, ground in enumerate(desk.lot.grounds)}
    numbers: Counter[tuple[str, int]] = Counter()
    boards = []
    for (code, number), lies in sorted(desk.begun.items(), key=lambda one: (order[one[0][0]], one[0][1])):
        if not lies:
            continue
        ground = desk.ground(code)
        inside = {
            each: tuple(_laid(each, ground, desk, numbers))
            for each in sorted(lies, key=lambda one: (one.spot.x, one.spot.y))
        }
        sawn = _opened(desk.sawn(ground, lies), inside, desk.kerf)
        boards.append(
            BoardLayout(
                ground=ground,
                number=number,
                laid=tuple(laid for held in inside.values() for laid in held),
                sawn=sawn,
                left=tuple(kept(ground, sawn, file.keep)),
                cost=desk.lot.costs[code],
            )
        )
    return tuple(boards)


def _laid(lies: Lies, ground: Ground, desk: Desk, numbers: Counter[tuple[str, int]]) -> Iterator[Laid]:
    """The parts of a blank, on the board."""

    def mark(code: str, strip: int, panel: int = 0) -> Mark:
        numbers[code, strip] += 1
        return Mark(code=code, number=panel or numbers[code, strip])

    parts = desk.lot.by_code
    for each in lies.blank.inside:
        spot = each.spot if lies.turned == ground.grain_across else each.spot.flipped()
        yield Laid(
            mark=mark(each.code, each.strip, each.panel),
            spot=spot.moved(lies.spot.x, lies.spot.y),
            second=mark(each.second, each.strip) if each.second else None,
            turned=lies.turned,
            strip=each.strip,
            strips=each.strips,
            matched=lies.blank.matched,
            by_hand=lies.by_hand,
            ends_kept=each.code in parts and parts[each.code].ends == "kept",
        )


def _opened(sawn: Sawn[Lies], inside: dict[Lies, tuple[Laid, ...]], kerf: Ticks) -> Sawn[Laid]:
    """The cuts of a board, those within its blanks too."""
    if sawn.held is not None:
        return saw_up(sawn.spot, [(laid.spot, laid) for laid in inside[sawn.held]], kerf)
    return Sawn(sawn.spot, sawn.way, tuple(_opened(piece, inside, kerf) for piece in sawn.pieces))


def parts_area(desk: Desk) -> Count:
    """The area of all parts that lie, in square ticks.

    Args:
        desk: the lot, laid out

    Returns:
        The area; matched parts without the cuts between them [dimensionless]

    Source: arithmetic.
    """
    return sum(each.spot.area for lies in desk.begun.values() for one in lies for each in one.blank.inside)


def sawing(boards: Sequence[BoardLayout]) -> tuple[Count, Count]:
    """How many cuts some boards take, and how often the saw is set for them.

    Args:
        boards: the boards of a lot

    Returns:
        Cuts and settings [dimensionless]

    Source: both are counted.
    """
    steps = [steps_of(board) for board in boards]
    return sum(step.count for each in steps for step in each), sum(map(set_ups, steps))


def worth_left(desk: Desk, file: CutFile) -> Number:
    """What is left over is worth.

    Args:
        desk: the lot, laid out
        file: what was asked

    Returns:
        The worth of what is kept [dimensionless]

    Source: this program's own.
    """
    left = 0.0
    for (code, _), lies in desk.begun.items():
        ground = desk.ground(code)
        sawn = desk.sawn(ground, lies)
        left += sum(worth(ground, each) for each in kept(ground, sawn, file.keep))
    return left
