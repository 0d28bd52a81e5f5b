"""A board's clear wood in rectangles, either way that it can be cut free of its defects."""

from collections.abc import Iterable, Iterator

from casewright.cutting.guillotine.problem import Rect, Stock
from casewright.measure.units import Count


def clear_across(stock: Stock) -> tuple[Rect, ...]:
    """The clear rectangles if the board is crosscut before and after its defects.

    Args:
        stock: the board and what may not be touched on it

    Returns:
        Full widths between defects, and what is clear beside each.

    Source: arithmetic; crosscutting out defects is common practice.
    """
    found = []
    spans = merged((each.x, each.x + each.length) for each in stock.forbidden)
    for start, end in between(spans, stock.length):
        found.append(Rect(x=start, y=0, length=end - start, width=stock.width))
    for start, end in spans:
        beside = merged(
            (each.y, each.y + each.width)
            for each in stock.forbidden
            if each.x < end and each.x + each.length > start
        )
        for low, high in between(beside, stock.width):
            found.append(Rect(x=start, y=low, length=min(end, stock.length) - start, width=high - low))
    return tuple(found)


def clear_along(stock: Stock) -> tuple[Rect, ...]:
    """The clear rectangles if the board is ripped beside its defects.

    Args:
        stock: the board and what may not be touched on it

    Returns:
        Full lengths beside defects, and what is clear before and after each.

    Source: arithmetic; ripping out defects is common practice.
    """
    lying = Stock(
        width=stock.length,
        length=stock.width,
        cost=stock.cost,
        forbidden=tuple(
            Rect(x=each.y, y=each.x, length=each.width, width=each.length) for each in stock.forbidden
        ),
    )
    return tuple(
        Rect(x=each.y, y=each.x, length=each.width, width=each.length) for each in clear_across(lying)
    )


def merged(spans: Iterable[tuple[Count, Count]]) -> list[tuple[Count, Count]]:
    """Stretches that overlap or touch, made one.

    Args:
        spans: from and to [1]

    Returns:
        Stretches apart from each other, the first first.
    """
    found: list[tuple[Count, Count]] = []
    for start, end in sorted(spans):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], end))
        else:
            found.append((max(start, 0), end))
    return found


def between(spans: Iterable[tuple[Count, Count]], size: Count) -> Iterator[tuple[Count, Count]]:
    """What lies before, between and after stretches that are apart.

    Args:
        spans: the stretches, the first first [1]
        size: how far it all reaches [1]

    Yields:
        From and to [1]
    """
    at = 0
    for start, end in spans:
        if start > at:
            yield at, min(start, size)
        at = max(at, end)
    if at < size:
        yield at, size
