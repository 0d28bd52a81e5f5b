"""An order for several jobs at once: their papers joined line by line, and what one supplier gets of it."""

import math
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from casewright.measure.rounding import up_to
from casewright.papers.head import PaperHead
from casewright.papers.order import BoardsNeeded, FeetBehind, FinishLine, HardwareLine, LumberLine, OrderPaper
from casewright.pricing.prices import PriceKind

T = TypeVar("T")
M = TypeVar("M", BoardsNeeded, FeetBehind)


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderNeed:
    """One line of an order as it is bought.

    Attributes:
        kind: lumber, sheet, hardware, finish or consumable
        item: the wood, or the thing
        cut: how a wood is sawn
        size: thickness class or nominal thickness
        grade: the grade of a wood
        quantity: whole feet, sheets, pieces or quarts, or how much of something that is used up
        unit: what one of it is
    """

    kind: PriceKind
    item: str
    cut: str = ""
    size: str = ""
    grade: str = ""
    quantity: float
    unit: str

    @property
    def key(self) -> str:
        """By what a line is known among those of one order."""
        return "/".join((self.kind.value, self.item, self.cut, self.size, self.grade))


def needs_of(order: OrderPaper) -> tuple[OrderNeed, ...]:
    """The lines of an order, as they are bought.

    Args:
        order: the order, as it is kept

    Returns:
        Lumber, sheets, hardware with its spares, finish, and what is used up.
    """
    return (
        *(
            OrderNeed(
                kind=PriceKind.LUMBER,
                item=line.wood,
                cut=line.cut.value,
                size=line.bought,
                grade=line.grade.value,
                quantity=line.feet_bd_ft,
                unit="bd ft",
            )
            for line in order.lumber
        ),
        *(
            OrderNeed(
                kind=PriceKind.SHEET, item=line.kind, size=line.nominal, quantity=line.sheets, unit="sheet"
            )
            for line in order.sheets
        ),
        *(
            OrderNeed(
                kind=PriceKind.HARDWARE, item=line.item, quantity=line.quantity + line.spare, unit="each"
            )
            for line in order.hardware
        ),
        *(
            OrderNeed(kind=PriceKind.FINISH, item=line.product, quantity=line.quarts, unit="quart")
            for line in order.finishes
        ),
        *(
            OrderNeed(kind=PriceKind.CONSUMABLE, item=line.item, quantity=line.quantity, unit=line.unit)
            for line in order.consumables
        ),
    )


class RackLine(LumberLine):
    """A wood, cut and class, with what the rack gives of it."""

    rack: tuple[str, ...] = ()
    rack_bd_ft: float = 0.0


class SupplyOrderPaper(OrderPaper):
    """An order to one supplier for one job or several. No customer, and of prices those that were quoted."""

    lumber: tuple[RackLine, ...]
    with_sundries: bool = False
    """Whether the supplier's copy names what is used up at the bench, for it is bought there."""
    quoted: tuple[str, ...] = ()
    """The prices that were quoted, a sentence for each; shown to those who may see what things cost."""


def joined_order(head: PaperHead, orders: Sequence[tuple[str, OrderPaper]]) -> SupplyOrderPaper:
    """The orders of several jobs as one: feet are added up, and rounded to whole feet only then.

    Args:
        head: who, what and when
        orders: each job's order, with the job's number

    Returns:
        One order. Among several jobs, marks of the cut list are led by the job's number.
    """
    several = len(orders) > 1
    lumber = [(f"{number}: " if several else "", line) for number, order in orders for line in order.lumber]
    every = [order for _, order in orders]
    return SupplyOrderPaper(
        head=head,
        lumber=tuple(map(_lumber, _together(lumber, lambda each: _wood_key(each[1])))),
        sheets=tuple(
            lines[0].model_copy(update={"sheets": sum(each.sheets for each in lines)})
            for lines in _together(_all(every, "sheets"), lambda each: (each.kind, each.nominal))
        ),
        hardware=tuple(map(_hardware, _together(_all(every, "hardware"), lambda each: each.item))),
        finishes=tuple(map(_finish, _together(_all(every, "finishes"), lambda each: each.product))),
        consumables=tuple(
            lines[0].model_copy(update={"quantity": math.fsum(each.quantity for each in lines)})
            for lines in _together(_all(every, "consumables"), lambda each: each.item)
        ),
        cautions=tuple(dict.fromkeys(said for order in every for said in order.cautions)),
    )


def part_of_order(
    order: SupplyOrderPaper,
    quantities: Mapping[str, float],
    rack: Mapping[str, tuple[tuple[str, ...], float]] | None = None,
    **said: Any,
) -> SupplyOrderPaper:
    """What one supplier gets of an order.

    Args:
        order: the whole order
        quantities: how much of each line, by its key; lines that are not there are left out
        rack: the labels of what the rack gives of a line and the feet that it saves [bd ft], by line
        said: what else the paper says: supplier, needed_by, delivery, remarks, with_sundries

    Returns:
        The order to that supplier.
    """
    held = {need.key: (list_name, place) for list_name, place, need in _placed(order)}
    kept: dict[str, list[Any]] = {name: [] for name in LISTS}
    for key, quantity in quantities.items():
        name, place = held[key]
        line = getattr(order, name)[place]
        changes: dict[str, Any] = {COUNTED[name]: quantity if name == "consumables" else round(quantity)}
        if name == "hardware":
            changes = (
                {"quantity": round(quantity), "spare": 0} if quantity != line.quantity + line.spare else {}
            )
        if name == "lumber" and rack and key in rack:
            changes |= {"rack": rack[key][0], "rack_bd_ft": rack[key][1]}
        kept[name].append(line.model_copy(update=changes))
    return order.model_copy(update={name: tuple(lines) for name, lines in kept.items()} | said)


LISTS = ("lumber", "sheets", "hardware", "finishes", "consumables")
COUNTED = {
    "lumber": "feet_bd_ft",
    "sheets": "sheets",
    "hardware": "quantity",
    "finishes": "quarts",
    "consumables": "quantity",
}
"""The field of a line in each list that says how much is bought."""


def _placed(order: OrderPaper) -> Iterator[tuple[str, int, OrderNeed]]:
    needs = iter(needs_of(order))
    for name in LISTS:
        for place, _ in enumerate(getattr(order, name)):
            yield name, place, next(needs)


def _all(orders: Iterable[OrderPaper], name: str) -> list[Any]:
    return [line for order in orders for line in getattr(order, name)]


def _together(lines: Iterable[T], key: Callable[[T], Hashable]) -> list[list[T]]:
    """Lines of one key in one list, in the order in which they came."""
    found: dict[Hashable, list[T]] = {}
    for line in lines:
        found.setdefault(key(line), []).append(line)
    return list(found.values())


def _wood_key(line: LumberLine) -> tuple[str, ...]:
    return line.wood, line.cut, line.bought, line.grade, line.surfacing


def _lumber(lines: list[tuple[str, LumberLine]]) -> RackLine:
    first, plain = lines[0][1], [line for _, line in lines]
    exact = math.fsum(line.exact_bd_ft for line in plain)
    return RackLine(
        **first.model_dump(exclude={"exact_bd_ft", "feet_bd_ft", "needs", "sets", "behind", "grade_note"}),
        exact_bd_ft=exact,
        feet_bd_ft=round(up_to(exact, 1)),
        needs=tuple(_marked(each, mark) for mark, line in lines for each in line.needs),
        sets=tuple(
            each.model_copy(update={"name": f"{mark}{each.name}"})
            for mark, line in lines
            for each in line.sets
        ),
        behind=tuple(_marked(each, mark) for mark, line in lines for each in line.behind),
        grade_note="; ".join(f"{mark}{line.grade_note}" for mark, line in lines if line.grade_note),
    ).model_copy(
        update={
            "must_plane_to_in": max(line.must_plane_to_in for line in plain),
            "longest_in": max(line.longest_in for line in plain),
        }
    )


def _marked(each: M, mark: str) -> M:
    return each.model_copy(update={"lines": tuple(f"{mark}{line}" for line in each.lines)})


def _hardware(lines: list[HardwareLine]) -> HardwareLine:
    notes = tuple(dict.fromkeys(line.note for line in lines if line.note))
    return HardwareLine(
        item=lines[0].item,
        quantity=sum(line.quantity for line in lines),
        spare=sum(line.spare for line in lines),
        note="; ".join(notes),
    )


def _finish(lines: list[FinishLine]) -> FinishLine:
    exact = math.fsum(line.exact_quarts for line in lines)
    return FinishLine(product=lines[0].product, quarts=round(up_to(exact, 1)), exact_quarts=exact)
