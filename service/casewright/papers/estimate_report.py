"""An estimate as text: rough sizes, the lumber order, hours, price and date."""

from itertools import groupby

from casewright.papers.cautions import cautions_for, may_be_resawn
from casewright.papers.checks_report import checks_section
from casewright.papers.doors import doors_section
from casewright.papers.run_words import running_section
from casewright.papers.stand_report import stand_section
from casewright.papers.unit_report import (
    cut_list_section,
    in_order,
    joints_section,
    openings_section,
    unit_heading,
)
from casewright.papers.writing import Writing, section, several, table, wrapped
from casewright.papers.year_report import year_section
from casewright.pieces.built.construct import Construction
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.pieces.takeoff.rough import RoughLine
from casewright.pieces.takeoff.sequences import sequence_words, yard_size

WHY = (
    "Every figure can say where it comes from: --why F5, --why R5-1.height, --why P04, --why order.…, "
    "--why price.asked,\nor --why alone for the list."
)


def unit_report(unit: Construction, writing: Writing, *, checks: bool) -> str:
    """A unit without its price.

    Args:
        unit: the unit
        writing: how sizes and money are written
        checks: also list the checks that pass

    Returns:
        The report.
    """
    return "\n\n".join(
        (
            unit_heading(unit, writing),
            openings_section(unit, writing),
            running_section(unit, writing),
            *filter(None, (doors_section(unit, writing),)),
            cut_list_section(unit, writing),
            joints_section(unit, writing),
            year_section(unit, writing),
            stand_section(unit, writing),
            checks_section(unit.findings, writing, everything=checks),
            cautions_for(unit),
            WHY,
        )
    )


def estimate_report(held: Estimate, writing: Writing, *, checks: bool, shop_name: str) -> str:
    """The whole job: a unit, what it takes and what it costs.

    Args:
        held: the estimate
        writing: how sizes and money are written
        checks: also list the checks that pass
        shop_name: whose figures were used

    Returns:
        The report.
    """
    unit = held.unit
    return "\n\n".join(
        (
            unit_heading(unit, writing) + f"\nPrices, rates and history: {shop_name}.",
            openings_section(unit, writing),
            running_section(unit, writing),
            *filter(None, (doors_section(unit, writing),)),
            cut_list_section(unit, writing),
            rough_section(held, writing),
            joints_section(unit, writing),
            year_section(unit, writing),
            stand_section(unit, writing),
            checks_section(held.findings, writing, everything=checks),
            order_section(held, writing),
            goods_section(held),
            hours_section(held),
            price_section(held, writing),
            cautions_for(unit, may_be_resawn(held.takeoff)),
            WHY,
        )
    )


def rough_section(held: Estimate, writing: Writing) -> str:
    """The cut list of rough sizes, for all units together.

    Args:
        held: the estimate
        writing: how sizes are written

    Returns:
        A table for the parts and one for the feet.
    """
    order = {line.line: place for place, line in enumerate(in_order(held.unit.lines))}
    lines = sorted(held.takeoff.lines, key=lambda line: order[line.line])
    parts = table(
        ("Line", "Part", "Qty", "Class", "Rough wide × long", "Boards", "Bd ft", "Grade that holds it"),
        (_rough_row(line, writing) for line in lines),
        right=(2, 5, 6),
    )
    feet = table(
        ("Wood", "Class", "For", "Net bd ft", "Rough bd ft", "Waste", "Order bd ft", "Waste from"),
        (
            (
                group.wood,
                group.bought.name,
                group.use,
                f"{group.net:.2f}",
                f"{group.rough:.2f}",
                f"{group.waste.fraction:.0%}",
                f"{group.order:.2f}",
                f"{group.waste.row} ({group.waste.evidence.basis})",
            )
            for group in held.takeoff.groups
        ),
        right=(3, 4, 5, 6),
    )
    resaw = [
        f"{line.line}: two from one {line.resaw.bought.name} by resawing"
        for line in lines
        if line.resaw is not None and not line.is_matched
    ]
    matched = [
        f"{line.line}: {line.blanks} of {line.bought.name}, each sawn in two"
        for line in lines
        if line.is_matched
    ]
    notes = "Order = rough / (1 - waste). Waste is on rough size."
    if resaw:
        notes += "\nResawing saves wood: " + "; ".join(resaw) + "."
    if matched:
        notes += "\nMatched, and bought as one board for two: " + "; ".join(matched) + "."
    return section("Cut list, rough sizes", parts, feet, wrapped(notes, 4))


def _rough_row(line: RoughLine, writing: Writing) -> tuple[object, ...]:
    grade = line.grade.grade.name if line.grade.grade else "none: pick by hand"
    return (
        line.line,
        line.of.part.name,
        line.quantity,
        line.bought.name,
        writing.sizes(line.width, line.length),
        line.boards,
        f"{line.rough:.2f}",
        grade + (", wide" if line.grade.wide else ""),
    )


def order_section(held: Estimate, writing: Writing) -> str:
    """The lumber order.

    Args:
        held: the estimate
        writing: how sizes are written

    Returns:
        One paragraph a line, and what holds for all.
    """
    woods = [line.wood for line in held.order]
    lines = sorted(held.order, key=lambda line: (woods.index(line.wood), line.bought.rough))
    blocks = [_order_line(line, writing) for line in lines]
    blocks.append(
        "All: net tally, kiln-dried to 6 to 8 %; rough or hit-and-miss; call, do not substitute. Refused: "
        f"over 10 % moisture, shake, over {writing.size(1 / 32)} under thickness (common practice)."
    )
    return section("Lumber order", "\n".join(blocks[:-1]), wrapped(blocks[-1]))


def _order_line(line: OrderLine, writing: Writing) -> str:
    sawn = "" if line.cut == "flat" else f", {line.cut.sawn}"
    text = [
        f"{line.wood} {line.bought.name} {line.grade}{sawn}: {line.feet} bd ft ({line.exact:.2f}), boards at "
        f"least {_picked(line.longest, writing)} long"
    ]
    text += [
        f"    at least {several(need.quantity, 'board')} {_picked(need.width, writing)} wide × "
        f"{_picked(need.length, writing)} long, for {', '.join(need.lines)}"
        + (" (of the sequence below)" if need.matched else "")
        for need in line.needs
    ]
    text += [f"    in sequence: {sequence_words(found, writing.unit)}" for found in line.sequences]
    if line.grade_note:
        text.append(f"    {line.grade_note}")
    return "\n".join(wrapped(line, 8) for line in text)


def _picked(inches: float, writing: Writing) -> str:
    """A least size as a yard picks it."""
    return writing.size(yard_size(inches, writing.unit))


def goods_section(held: Estimate) -> str:
    """Sheets, hardware and finish.

    Args:
        held: the estimate

    Returns:
        A table.
    """
    count = held.takeoff.count
    rows = [
        (str(each.sheet), each.count, f"sheets; {each.note}, {each.exact:.2f} exactly")
        for each in held.takeoff.sheets
    ]
    rows += [
        (
            item.item,
            item.quantity * count,
            (f"and {item.spare * count} spare; " if item.spare else "") + item.note,
        )
        for item in held.unit.hardware
    ]
    rows.append((held.finish.product, held.finish.buy, f"quarts ({held.finish.quarts:.2f} with losses)"))
    return section("Sheets, hardware and finish", table(("Item", "Qty", ""), rows, right=(1,)))


def hours_section(held: Estimate) -> str:
    """Hours, operation by operation.

    Args:
        held: the estimate

    Returns:
        A table with its sum.
    """
    rows: list[tuple[object, ...]] = []
    for group, lines in groupby(held.labour, key=lambda line: line.group):
        members = list(lines)
        rows += [
            (
                line.code,
                line.name,
                f"{line.quantity:g}",
                f"{line.each:g}",
                line.method,
                f"{line.factor:g}",
                f"{line.minutes:,.0f}",
            )
            for line in members
        ]
        rows.append(
            ("", f"{group}, together", "", "", "", "", f"{sum(line.minutes for line in members):,.0f}")
        )
    hours = table(
        ("Op", "Operation", "Quantity", "Min each", "Method", "Factor", "Minutes"), rows, right=(2, 3, 5, 6)
    )
    factor = held.wood_factor
    allowance = held.hours * 60 / held.minutes - 1 if held.minutes else 0.0
    total = (
        f"{held.minutes:,.0f} min direct, with {allowance:.0%} allowance {held.hours:.2f} h. "
        f"Wood factor {factor.factor:g} on cutting ({factor.wood}; {factor.source})."
    )
    return section("Hours", hours, wrapped(total))


def price_section(held: Estimate, writing: Writing) -> str:
    """The price, its stages, and the date.

    Args:
        held: the estimate
        writing: how money is written

    Returns:
        Tables and the three numbers kept apart.
    """
    price, rate, risk, money = held.price, held.rate, held.risk, writing.money
    lines = [(line.label, line.working, money(line.amount)) for line in price.lines]
    lines += [
        ("before rounding", "", money(price.before_rounding)),
        ("asked", "rounded up", money(price.asked)),
        ("tax", "", money(price.tax)),
        ("total", "", money(price.total)),
    ]
    stages = table(
        ("Due", "Amount"), ((stage.trigger, money(stage.amount)) for stage in price.stages), right=(1,)
    )
    apart = (
        f"Cost {money(price.cost)} (median hours, no profit, no mark-up); least to accept "
        f"{money(price.lowest)} (P80 hours, no profit); asked {money(price.asked)}.\n"
        f"Rate {money(rate.rate)} an hour, of which {money(rate.cost)} is cost: {money(rate.yearly)} a year "
        f"over {rate.billable:,.0f} billable hours.\n"
        f"Hours of past jobs against their estimates: P50 {risk.p50:g}, P80 {risk.p80:g}, P90 {risk.p90:g} "
        f"({risk.basis})."
    )
    promise = held.promise
    date = (
        f"Ready in {promise.likely_weeks:.1f} weeks as likely as not ({promise.likely:%d %b %Y}); promise "
        f"{promise.promised_weeks:.1f} weeks ({promise.promised:%d %b %Y}): {promise.queue_weeks:g} weeks of "
        f"queue, {promise.wait_weeks:g} of waiting, {promise.bench_hours:g} bench hours a week."
    )
    return section(
        "Price",
        table(("Line", "Working", "Amount"), lines, right=(2,)),
        stages,
        wrapped(apart),
        wrapped(date),
    )
