"""What all units of a job take together: lumber, sheets, hardware and finish, each rounded up once."""

import math
from collections.abc import Iterator
from dataclasses import replace

from casewright.measure.ledger import Ledger
from casewright.measure.units import BoardFeet, Quarts
from casewright.pieces.asked.shop import Shop
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.costs.priced import FinishNeed, of_all_units
from casewright.pieces.layout.fitted import HardwareItem
from casewright.pieces.takeoff.lumber import OrderLine, order_figure, order_line
from casewright.pieces.takeoff.rough import FeetGroup
from casewright.pieces.takeoff.sequences import SequenceSet
from casewright.wood.finish import whole_quarts
from casewright.wood.movement import Cut
from casewright.wood.sheets import SheetsByArea, sheets_by_area


def job_order(units: tuple[Estimate, ...], shop: Shop, ledger: Ledger) -> tuple[OrderLine, ...]:
    """The lumber to order for a job: one line for each wood, cut and class.

    Feet of all units are added up before they are rounded to whole feet. Each group keeps the waste that it
    was reckoned with. Among several units, marks of the cut list are led by the unit's code.

    Args:
        units: the units, estimated alone
        shop: grades, kerfs and trims
        ledger: keeps the working

    Returns:
        The lines, in the order in which the units ask for them.

    Source: common practice: yards count whole feet, once a line.
    """
    several = len(units) > 1
    found: dict[tuple[str, Cut, str], list[tuple[str, OrderLine]]] = {}
    for held in units:
        code = held.unit.spec.code
        for line in held.order:
            found.setdefault((line.wood, line.cut, line.bought.name), []).append((code, line))
    return tuple(_merged(members, shop, ledger, several=several) for members in found.values())


def _merged(members: list[tuple[str, OrderLine]], shop: Shop, ledger: Ledger, *, several: bool) -> OrderLine:
    first = members[0][1]
    figure = order_figure(first.wood, first.bought, first.cut)
    for code, line in members:
        basis = f"the estimate of unit {code} by itself, figure {figure}.exact"
        ledger.given(f"{code}.{figure}.exact", float(line.exact), basis, BoardFeet)
    return order_line(
        tuple(_marked(group, code) if several else group for code, line in members for group in line.groups),
        tuple(found for code, line in members for found in _named(line, code, several=several)),
        shop,
        ledger,
        "figures " + " + ".join(f"{code}.{figure}.exact" for code, _ in members),
    )


def _marked(group: FeetGroup, code: str) -> FeetGroup:
    """The group with the unit's code before the mark of each line."""
    return replace(group, lines=tuple(replace(line, line=f"{code}-{line.line}") for line in group.lines))


def _named(line: OrderLine, code: str, *, several: bool) -> Iterator[SequenceSet]:
    for found in line.sequences:
        yield replace(found, name=f"{code}, {found.name}") if several else found


def job_sheets(units: tuple[Estimate, ...], shop: Shop, ledger: Ledger) -> tuple[SheetsByArea, ...]:
    """The sheets to buy for a job, by area: areas of one kind are added up before they are rounded up.

    Args:
        units: the units, estimated alone
        shop: its waste of sheets
        ledger: keeps the working

    Returns:
        One entry for each kind of sheet.

    Source: common practice.
    """
    found: dict[str, list[SheetsByArea]] = {}
    for held in units:
        for each in held.takeoff.sheets:
            found.setdefault(str(each.sheet), []).append(each)
    return tuple(
        sheets_by_area(
            (each.area for each in members),
            members[0].sheet,
            shop.sheet_waste(),
            ledger=ledger.under(f"sheets.{name}"),
        )
        for name, members in found.items()
    )


def job_hardware(units: tuple[Estimate, ...]) -> tuple[HardwareItem, ...]:
    """What a job needs by the piece, each item once.

    Args:
        units: the units, estimated alone

    Returns:
        The items with their counts for all units.

    Source: arithmetic.
    """
    found: dict[str, list[HardwareItem]] = {}
    for held in units:
        for item in of_all_units(held.unit.hardware, held.takeoff.count):
            found.setdefault(item.item, []).append(item)
    return tuple(
        replace(
            items[0],
            quantity=sum(item.quantity for item in items),
            spare=sum(item.spare for item in items),
            note="; ".join(dict.fromkeys(item.note for item in items)),
        )
        for items in found.values()
    )


def job_finishes(units: tuple[Estimate, ...], ledger: Ledger) -> tuple[FinishNeed, ...]:
    """The finish to buy for a job: quarts of one product are added up before they are rounded up.

    Args:
        units: the units, estimated alone
        ledger: keeps the working

    Returns:
        One entry for each product.

    Source: common practice.
    """
    found: dict[str, list[Estimate]] = {}
    for held in units:
        found.setdefault(held.finish.product, []).append(held)
    needs = []
    for product, members in found.items():
        marks = ", ".join(held.unit.spec.code for held in members)
        quarts = ledger.given(
            f"finish.{product}.quarts",
            math.fsum(held.finish.quarts for held in members),
            f"figure finish.quarts of {marks}, added up",
            Quarts,
        )
        needs.append(FinishNeed(product=product, quarts=quarts, buy=whole_quarts(quarts=quarts)))
    return tuple(needs)
