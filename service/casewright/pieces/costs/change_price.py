"""What a change comes to once work has begun: the design's difference, what is lost, what is done again."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casewright.labour.operations import minutes_by
from casewright.labour.standards import with_allowance
from casewright.measure.money import as_decimal
from casewright.measure.shares import show_percent
from casewright.measure.units import BoardFeet, Cents, Count, Hours, Minutes, Number, Weeks
from casewright.pieces.asked.shop import Shop
from casewright.pieces.built.rework import Rework
from casewright.pieces.built.rework_fates import Fate
from casewright.pieces.built.rework_stages import Made
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.pieces.costs.priced import bought_as
from casewright.pricing.materials import line_amount
from casewright.pricing.price import PriceLine
from casewright.pricing.prices import NoPrice, PriceKind
from casewright.pricing.risk import factor_at
from casewright.pricing.rules import labour_amount, marked_up, tax_amount
from casewright.wood.movement import Cut

SIZED_AGAIN = "P05"
"""The operation that a part takes once more which is cut down: final size, ends shot."""
SET_UP_AGAIN: Hours = 0.5
"""Drawings, story stick and machines for a change, until somebody says otherwise (from memory) [h]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LostFeet:
    """Boards that went into parts which are no longer usable, as they were bought.

    Attributes:
        wood: the species
        cut: how it was sawn
        size: the class in which it was bought, such as `4/4`
        feet: with the waste of their kind [bd ft]
    """

    wood: str
    cut: Cut
    size: str
    feet: BoardFeet


@dataclass(frozen=True, slots=True, kw_only=True)
class LostWood:
    """Solid wood of parts that are no longer usable, by what it was bought as.

    Attributes:
        label: wood and class
        feet: as they were bought, waste among them [bd ft]
        price: of a board foot [cent]
        amount: what it cost [cent]
    """

    label: str
    feet: BoardFeet
    price: Cents
    amount: Cents


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangePrice:
    """What a change comes to.

    Attributes:
        lines: what adds up to it, each with its working; below zero for what is no longer needed
        computed: all lines [cent]
        asked: what is asked for it, before tax [cent]
        tax: on what is asked [cent]
        total: with tax [cent]
        hours: more work than before, what is lost and done again among it [h]
        lost: work in parts that are scrapped [h]
        again: work that neither design counts: cutting down, drawings and setting up once more [h]
        weeks: how much later the job is ready by it; below zero where sooner [week]
    """

    lines: tuple[PriceLine, ...]
    computed: Cents
    asked: Cents
    tax: Cents
    total: Cents
    hours: Hours
    lost: Hours
    again: Hours
    weeks: Weeks


def sized_again(parts: Count, minutes: Minutes, allowance: Number) -> Hours:
    """The hours of parts that are cut to other sizes once more.

    Rule: parts * minutes * (1 + allowance) / 60, to the nearest hundredth of an hour

    Args:
        parts: how many are cut down [dimensionless]
        minutes: the standard for final size and shot ends [min]
        allowance: for rest, sharpening and fetching, as a share of the minutes [dimensionless]

    Returns:
        The hours [h]

    Source: common practice: a part that is cut down is sized as often as a new one.
    """
    return with_allowance(parts * minutes, allowance)


def weeks_later(hours: Hours, factor: Number, bench_hours: Hours) -> Weeks:
    """How much later a job is ready by more work.

    Rule: hours * factor / bench_hours

    Args:
        hours: more work [h]
        factor: for the risk that it runs over, at the level of the promise [dimensionless]
        bench_hours: hours of a week that reach the bench [h]

    Returns:
        The weeks; below zero where there is less work [week]

    Source: common practice, as for the promise of the whole job.
    """
    return hours * factor / bench_hours if bench_hours else 0.0


def lost_wood(held: Estimate, found: Iterable[Rework], shop: Shop) -> tuple[LostWood, ...]:
    """The wood of parts that are scrapped, at what was paid for it.

    Args:
        held: the estimate of the unit as it is being made
        found: what the change does to each piece
        shop: its prices

    Returns:
        A line for each wood and class; wood without a price is left out, and so are sheets, whose rests
        serve again.

    Source: common practice: a part costs its rough size with the waste of its kind.
    """
    feet: dict[tuple[str, str], BoardFeet] = {}
    for lost in lost_feet(held, found):
        key = (lost.wood, bought_as(lost.size, lost.cut))
        feet[key] = feet.get(key, 0.0) + lost.feet
    return tuple(_priced_wood(feet, shop))


def lost_feet(held: Estimate, found: Iterable[Rework]) -> tuple[LostFeet, ...]:
    """The boards that went into parts which are scrapped, as they were bought.

    Args:
        held: the estimate of the unit as it is being made
        found: what the change does to each piece

    Returns:
        A line for each wood, way of sawing and class; sheets are left out, for their rests serve again.

    Source: common practice: a part costs its rough size with the waste of its kind.
    """
    codes = [each.code for one in found for each in one.of(Fate.SCRAPPED)]
    lines = {part.code: part.line for part in held.unit.parts}
    feet: dict[tuple[str, Cut, str], BoardFeet] = {}
    for group in held.takeoff.groups:
        for rough in group.lines:
            count = sum(1 for code in codes if lines.get(code) == rough.line)
            if count and group.rough:
                key = (group.wood, group.cut, group.bought.name)
                each = rough.rough / rough.quantity * group.order / group.rough
                feet[key] = feet.get(key, 0.0) + count * each
    return tuple(
        LostFeet(wood=wood, cut=cut, size=size, feet=each) for (wood, cut, size), each in feet.items()
    )


def _priced_wood(feet: dict[tuple[str, str], BoardFeet], shop: Shop) -> Iterator[LostWood]:
    for (wood, size), exact in feet.items():
        try:
            price = shop.prices.find(PriceKind.LUMBER, wood, size).price
        except NoPrice:
            continue  # the estimates say so already
        taken = round(exact, 2)
        yield LostWood(label=f"{wood} {size}", feet=taken, price=price, amount=line_amount(price, taken))


def price_change(
    before: JobEstimate,
    after: JobEstimate,
    code: str,
    found: tuple[Rework, ...],
    shop: Shop,
    *,
    set_up: Hours = SET_UP_AGAIN,
    asked: Cents | None = None,
) -> ChangePrice:
    """What a change of one unit comes to.

    Args:
        before: the job as it was agreed
        after: the job with the unit changed
        code: the mark of the unit
        found: what the change does to each of its pieces
        shop: the figures that the job is priced by
        set_up: drawings, story stick and machines once more [h]
        asked: what is asked in place of what it comes to; None for just that [cent]

    Returns:
        The price with its lines.

    Raises:
        ValueError: hours below zero

    Source: common practice: what is lost, what is new and what is set up again, less what is not needed.
    """
    cut = sum(1 for one in found for each in one.of(Fate.MODIFIED) if each.made is not Made.NOTHING)
    operation = next((one for one in shop.standards.operations if one.code == SIZED_AGAIN), None)
    minutes = (minutes_by(operation, operation.default_method) or 0.0) if operation else 0.0
    again = sized_again(cut, minutes, shop.standards.allowance)
    spent = round(sum(each.hours for each in found), 2)
    wood = lost_wood(before.unit(code), found, shop)
    lines = [
        *_difference(before, after),
        _hours_line("work in parts that are no longer usable", spent, before),
        *_wood_lines(wood, shop),
        _hours_line(f"cutting down {cut} {'part' if cut == 1 else 'parts'}", again, before),
        _hours_line("drawings and setting up again", set_up, before),
    ]
    computed = sum(line.amount for line in lines)
    net = computed if asked is None else asked
    if net != computed:
        lines.append(PriceLine(label="set by hand", amount=net - computed, working="asked, less all above"))
    tax = tax_amount(net, shop.terms.tax_rate)
    hours = round(after.hours - before.hours + spent + again + set_up, 2)
    return ChangePrice(
        lines=tuple(line for line in lines if line.amount),
        computed=computed,
        asked=net,
        tax=tax,
        total=net + tax,
        hours=hours,
        lost=spent,
        again=round(again + set_up, 2),
        weeks=weeks_later(hours, factor_at(before.risk, shop.spec.risk), before.promise.bench_hours),
    )


def _difference(before: JobEstimate, after: JobEstimate) -> Iterator[PriceLine]:
    """What the design itself takes more or less, part by part of the price."""
    was, becomes = before.price.charges, after.price.charges
    hours = f"({after.hours:.10g} − {before.hours:.10g}) h × {as_decimal(before.rate.rate)}"
    yield _less("materials with mark-up", becomes.charged_materials, was.charged_materials)
    yield PriceLine(label="labour", amount=becomes.labour - was.labour, working=hours)
    yield _less("in case hours run over", becomes.contingency, was.contingency)
    yield _less("outwork with mark-up", becomes.charged_outwork, was.charged_outwork)
    yield _less("delivery", becomes.delivery, was.delivery)
    yield _less("extras", becomes.extras, was.extras)


def _less(label: str, now: Cents, was: Cents) -> PriceLine:
    return PriceLine(label=label, amount=now - was, working=f"{as_decimal(now):,} − {as_decimal(was):,}")


def _hours_line(label: str, hours: Hours, job: JobEstimate) -> PriceLine:
    rate = job.rate.rate
    working = f"{hours:.10g} h × {as_decimal(rate)}"
    return PriceLine(label=label, amount=labour_amount(hours, rate), working=working)


def _wood_lines(wood: Iterable[LostWood], shop: Shop) -> Iterator[PriceLine]:
    added = show_percent(shop.terms.markup)
    for each in wood:
        yield PriceLine(
            label=f"{each.label} of parts that are no longer usable",
            amount=marked_up(each.amount, shop.terms.markup),
            working=f"{each.feet:.10g} bd ft × {as_decimal(each.price)}, {added} added",
        )
