"""Where something is marked along a joint: tails, fingers or pins, each from the reference edge."""

from collections.abc import Iterator, Sequence

from casewright.joinery.layout import Tail
from casewright.pieces.asked.fields import Spec

CORNERS = ("Lower, at the end", "Upper, at the end", "Lower, baseline", "Upper, baseline")


class PositionRow(Spec):
    """One tail, finger or pin."""

    name: str
    at_in: tuple[float, ...]


class Positions(Spec):
    """One table of places along a joint; `what` heads its first column."""

    title: str
    what: str
    columns: tuple[str, ...]
    rows: tuple[PositionRow, ...]


def tail_tables(joint: object) -> list[tuple[str, tuple[Tail, ...]]]:
    """The tables of tails that a joint has, of whatever kind it is.

    Args:
        joint: a joint that has been worked out

    Returns:
        None; its own edge's; that and the side's where that is another edge.
    """
    layout = getattr(joint, "layout", None)
    tails = getattr(layout, "tails", ())
    tables: list[tuple[str, tuple[Tail, ...]]] = []
    if tails:
        edge = "front" if hasattr(layout, "edge_tail") else "bottom"
        tables.append((f"Positions from the {edge} edge", tails))
    side = getattr(joint, "side_tails", ())
    if side and getattr(joint, "lower_edge_offset", 0.0):
        tables.append(("Positions from the bottom edge of the side", side))
    return tables


def positions_of(joint: object) -> tuple[Positions, ...]:
    """Every table of places that a joint has, of whatever kind it is.

    Args:
        joint: a joint that has been worked out

    Returns:
        Tables of tails, of fingers or of pins; none for a joint that has one tenon or one groove.
    """
    return tuple(_tables(joint))


def tails_placed(title: str, tails: Sequence[Tail]) -> Positions:
    """A table of tails by their corners.

    Args:
        title: from which edge they are measured
        tails: from that edge on

    Returns:
        The table.
    """
    rows = [(tail.lower_end, tail.upper_end, tail.lower_base, tail.upper_base) for tail in tails]
    return _placed(title, "Tail", CORNERS, rows)


def _tables(joint: object) -> Iterator[Positions]:
    for title, tails in tail_tables(joint):
        yield tails_placed(title, tails)
    for title, fingers in getattr(joint, "spans", ()):
        yield _placed(title, "Finger", ("Lower", "Upper"), fingers)
    if places := getattr(joint, "places", ()):
        rows = [(place,) for place in places]
        yield _placed("Pins, from the bottom edge", "Pin", ("Middle",), rows)


def _placed(title: str, what: str, columns: tuple[str, ...], rows: Sequence[Sequence[float]]) -> Positions:
    return Positions(
        title=title,
        what=what,
        columns=columns,
        rows=tuple(
            PositionRow(name=str(number), at_in=tuple(map(float, row))) for number, row in enumerate(rows, 1)
        ),
    )
