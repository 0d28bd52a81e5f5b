"""A layout as text: board by board what is cut from it and in which order, and how good the layout is."""

from collections import Counter

from casewright.cutting.plans.steps import set_ups, step_words, steps_of
from casewright.cutting.plans.values import BoardLayout, CutPlan, Laid, Left, LengthLayout, LotPlan, WayOut
from casewright.measure.lengths import from_ticks
from casewright.measure.units import Count
from casewright.papers.cutting_data import most_saved
from casewright.papers.writing import Writing, section, several, table, wrapped


def cutting_report(plan: CutPlan, writing: Writing) -> str:
    """A layout.

    Args:
        plan: the layout
        writing: how sizes and money are written

    Returns:
        The report.
    """
    title = plan.file.name or "Cutting"
    boards = sum(len(lot.boards) for lot in plan.lots)
    bars = sum(len(lot.lengths) for lot in plan.lots)
    counted = (several(boards, "board or sheet", "boards and sheets"), several(bars, "length"))
    what = " and ".join(words for words, number in zip(counted, (boards, bars), strict=True) if number)
    whole = "every part has a place" if plan.is_complete else "NOT every part has a place"
    head = (
        f"{title}\n{what or 'Nothing'} to cut; {whole}. Worked out in {plan.seconds:.1f} s. {writing.legend}"
    )
    return "\n\n".join([head, *(_lot(lot, writing) for lot in plan.lots)])


def _lot(lot: LotPlan, writing: Writing) -> str:
    return section(
        lot.name,
        wrapped(how_good(lot, writing)) if lot.boards or lot.lengths else "",
        _tried(lot, writing) if len(lot.tried) > 1 else "",
        _without_place(lot, writing),
        _ways_out(lot, writing) if lot.ways_out else "",
        *(_board(board, writing) for board in lot.boards),
        _lengths(lot, writing) if lot.lengths else "",
        _panels(lot, writing) if lot.glued else "",
    )


def how_good(lot: LotPlan, writing: Writing) -> str:
    """How much of the wood becomes parts, and how far the layout can be from the best possible.

    Args:
        lot: the layout of one wood
        writing: how money is written

    Returns:
        Two sentences.
    """
    used = f"{lot.share * 100:.1f} % of it becomes parts, {100 - lot.share * 100:.1f} % does not."
    counted = what_it_counts(lot, lot.cost, writing)
    if lot.proven:
        return f"{counted}. {used} Proven best: no layout costs less."
    if not lot.bound:
        return f"{counted}. {used} How far that is from the best possible is not known."
    least = what_it_counts(lot, lot.bound, writing)
    if not lot.bounds_all and not lot.above:
        return (
            f"{counted}. {used} Nothing could be saved: the parts that have a place cannot come from less "
            "wood as they lie."
        )
    of = "" if lot.bounds_all else " of the parts that have a place, as it is laid out,"
    return (
        f"{counted}. {used} No layout{of} could save more than {most_saved(lot.above * 100)} % of this: "
        f"none is below {least}."
    )


def what_it_counts(lot: LotPlan, amount: Count, writing: Writing) -> str:
    """An amount in the lot's own measure.

    Args:
        lot: the layout of one wood
        amount: the amount, in that measure [dimensionless]
        writing: how money is written

    Returns:
        Money, or square feet where no board has a cost, or feet of length.
    """
    if lot.measure == "money":
        return writing.money(amount)
    if lot.measure == "length":
        return f"{amount / 1200:.1f} ft"
    return f"{amount / 14400:.2f} sq ft"


def _tried(lot: LotPlan, writing: Writing) -> str:
    rows = [
        (
            each.name,
            what_it_counts(lot, each.cost, writing),
            f"{each.share * 100:.1f} %",
            each.cuts,
            each.set_ups,
            each.unplaced or "",
            "taken" if each.is_taken else "",
        )
        for each in lot.tried
    ]
    heads = ("first cut", "takes", "becomes parts", "cuts", "settings", "without a place", "")
    return table(heads, rows, right=(1, 2, 3, 4, 5))


def _without_place(lot: LotPlan, writing: Writing) -> str:
    lines = [
        *(f"NO PLACE for {each.count} × {each.code}: {writing.said(each.reason)}." for each in lot.unplaced),
        *(f"NOT where it was put: {each.code}: {writing.said(each.reason)}." for each in lot.misplaced),
        *(f"SET NOT KEPT: {each.name} ({each.way}): {each.reason}." for each in lot.broken),
        *(
            f"STAGES NOT KEPT: {board.name} takes {board.sawn.stages} stages of cuts, not {lot.stages}."
            for board in lot.boards
            if not lot.keeps_stages(board)
        ),
    ]
    return "\n".join(wrapped(line, 2) for line in lines)


def _ways_out(lot: LotPlan, writing: Writing) -> str:
    rows = [
        (
            writing.said(each.words),
            f"{len(each.codes)} of {each.short}",
            taken_for(each, lot, writing) if each.boards else "no more wood",
        )
        for each in lot.ways_out
    ]
    return "Ways out, the least wood first:\n\n" + table(("way", "find a place", "takes"), rows)


def taken_for(way: WayOut, lot: LotPlan, writing: Writing) -> str:
    """How much wood a way out takes beyond the layout.

    Args:
        way: the way out
        lot: the layout of one wood
        writing: how money is written

    Returns:
        Feet, with what they cost where that is known.
    """
    unit = "ft" if lot.lengths or way.measure == "length" else "bd ft" if lot.thickness_class else "sq ft"
    cost = f", {writing.money(way.cost)}" if way.measure == "money" else ""
    return f"{way.feet:.1f} {unit}{cost}"


def _board(board: BoardLayout, writing: Writing) -> str:
    stock = board.ground.stock
    steps = steps_of(board)
    size = writing.sizes(from_ticks(board.ground.outer.length), from_ticks(board.ground.outer.width))
    where = f", {stock.place}" if stock.place else ""
    origin = " (offcut)" if stock.offcut else ""
    head = f"{board.name}{origin}, {size}{where}: {board.used * 100:.0f} % becomes parts"
    rows = [
        (
            each.label,
            writing.size(from_ticks(each.spot.x)),
            writing.size(from_ticks(each.spot.y)),
            writing.size(from_ticks(each.spot.length)),
            writing.size(from_ticks(each.spot.width)),
            _remarks(each),
        )
        for each in board.laid
    ]
    parts = table(("part", "from end", "from edge", "along", "across", ""), rows, right=(1, 2, 3, 4))
    order = "\n".join(
        wrapped(f"{step.number:>3}. {writing.said(step_words(step, board))}", 5) for step in steps
    )
    cuts = several(sum(step.count for step in steps), "cut")
    turns = f"{cuts}, {several(set_ups(steps), 'setting')} of the saw"
    return "\n\n".join([head, parts, f"{order}\n     {turns}", *_left(board.left, writing)])


def _remarks(laid: Laid) -> str:
    words = [
        f"set {laid.matched}" if laid.matched else "",
        "two from its thickness" if laid.second else "",
        "turned" if laid.turned else "",
        "put by hand" if laid.by_hand else "",
        "its first end first" if laid.ends_kept else "",
    ]
    return ", ".join(filter(None, words))


def _left(left: tuple[Left, ...], writing: Writing) -> list[str]:
    if not left:
        return []
    sizes = [
        (from_ticks(each.spot.width), from_ticks(each.spot.length), each.is_clear)
        if each.grain_across
        else (from_ticks(each.spot.length), from_ticks(each.spot.width), each.is_clear)
        for each in left
    ]
    words = [
        writing.sizes(length, width) + ("" if is_clear else " (not clear)")
        for length, width, is_clear in sizes
    ]
    return [wrapped(f"Left to keep: {'; '.join(words)}.", 2)]


def _panels(lot: LotPlan, writing: Writing) -> str:
    rows = [
        (
            f"{each.mark.code} no. {each.mark.number}",
            ", ".join(map(str, each.order)),
            ", ".join(writing.size(from_ticks(net)) for net in each.nets),
            writing.size(from_ticks(each.trimmed)),
            "" if each.is_clear else "A GLUE LINE LIES WHERE NONE MAY",
        )
        for each in lot.glued
    ]
    return table(("panel", "strips in order", "jointed to", "off its first edge", ""), rows, right=(3,))


def _lengths(lot: LotPlan, writing: Writing) -> str:
    """Lengths that are cut alike stand on one line."""
    found: Counter[tuple[str, int, tuple[tuple[str, int], ...], int, str]] = Counter()
    for bar in lot.lengths:
        found[_alike(bar)] += 1
    rows = [
        (
            count,
            code,
            writing.size(from_ticks(length)),
            _cut_to(parts, writing),
            writing.size(from_ticks(left)),
            place,
        )
        for (code, length, parts, left, place), count in found.items()
    ]
    return table(("", "stock", "length", "cut to", "left", "place"), rows, right=(0, 2, 4))


def _alike(bar: LengthLayout) -> tuple[str, int, tuple[tuple[str, int], ...], int, str]:
    parts = tuple((each.mark.code, each.length) for each in bar.laid)
    return bar.code, bar.length, parts, bar.left, bar.place


def _cut_to(parts: tuple[tuple[str, int], ...], writing: Writing) -> str:
    counted = Counter(parts)
    return ", ".join(
        f"{number} × {code} {writing.size(from_ticks(length))}" for (code, length), number in counted.items()
    )
