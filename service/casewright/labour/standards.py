"""From quantities to minutes: which standards a shop works by, and the labour lines that they give."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache

from casewright.labour.batch import repeat_factor
from casewright.labour.drivers import Driver
from casewright.labour.figures import bundled, house_figures
from casewright.labour.operations import Group, Method, Operation, method_taken, minutes_by, operations
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import near_to
from casewright.measure.units import Hours, Minutes, Number

MINUTES_PER_HOUR = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodFactor:
    """How much longer or shorter a wood takes to cut than cherry.

    Attributes:
        wood: the wood's common name
        factor: on the minutes of cutting operations [dimensionless]
        source: where the figure comes from
        basis: published, common practice, from memory or learned
    """

    wood: str
    factor: Number
    source: str
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Standards:
    """The time standards that a shop works by; a quote keeps the ones that it was made with.

    Attributes:
        operations: every operation, in the order of the work
        wood_factors: the woods whose working time is known
        other_wood: the factor of every other wood
        allowance: for rest, sharpening and fetching, as a share of the direct minutes [dimensionless]
    """

    operations: tuple[Operation, ...]
    wood_factors: tuple[WoodFactor, ...]
    other_wood: WoodFactor
    allowance: Number

    def __post_init__(self) -> None:
        codes = [one.code for one in self.operations]
        twice = sorted({code for code in codes if codes.count(code) > 1})
        if twice:
            raise ValueError(f"Operation {', '.join(twice)} is in the standards twice; keep one of each.")
        if self.allowance < 0:
            raise ValueError("The allowance adds to the minutes; it cannot be below 0.")

    def changed(self, *own: Operation) -> "Standards":
        """The same standards with the shop's own figures in the place of those of the same code.

        Args:
            own: operations as the shop times them; a code that is new is added at the end

        Returns:
            New standards.

        Source: common practice.
        """
        by_code = {one.code: one for one in self.operations} | {one.code: one for one in own}
        return replace(self, operations=tuple(by_code.values()))


@dataclass(frozen=True, slots=True, kw_only=True)
class LabourLine:
    """What one operation takes on this piece, with its working.

    Attributes:
        code: the operation's code
        name: the operation's name
        group: the part of the work
        driver: what is counted; None for a line that a person named
        quantity: how many [dimensionless]
        each: minutes each, of the standard [min]
        method: by hand or with machine help
        factor: the wood's factor and a batch's, multiplied [dimensionless]
        minutes: what the line comes to [min]
    """

    code: str
    name: str
    group: Group
    driver: Driver | None
    quantity: Number
    each: Minutes
    method: Method
    factor: Number
    minutes: Minutes


@cache
def house_standards() -> Standards:
    """The standards that a shop starts with.

    Returns:
        Planning figures for one practised maker, to be replaced by the shop's own log.

    Source: common practice.
    """
    factors = bundled("standards.json")["wood_factors"]
    other = factors["other"]
    return Standards(
        operations=operations(),
        wood_factors=tuple(WoodFactor(**row) for row in factors["woods"]),
        other_wood=WoodFactor(
            wood="any other", factor=other["factor"], source=other["note"], basis=other["basis"]
        ),
        allowance=house_figures().allowance,
    )


def factor_for(wood: str, standards: Standards | None = None) -> WoodFactor:
    """How much longer a wood takes to cut than cherry.

    Args:
        wood: the common name; letter case and underscores do not matter
        standards: the shop's standards; None for the ones it starts with

    Returns:
        The factor with its source; for a wood without one, cherry's, and the note that says so.

    Source: common practice.
    """
    held = standards or house_standards()
    plain = wood.strip().lower().replace("_", " ")
    return next((row for row in held.wood_factors if row.wood == plain), held.other_wood)


def operation_minutes(
    quantity: Number, each: Minutes, wood_factor: Number = 1.0, batch_factor: Number = 1.0
) -> Minutes:
    """What one operation takes on the whole piece, without the allowance.

    Rule: quantity * each * wood_factor * batch_factor

    Args:
        quantity: how many there are of what the operation counts [dimensionless]
        each: the standard [min]
        wood_factor: for a cutting operation, how the wood works beside cherry [dimensionless]
        batch_factor: for a first-piece standard, the batch's average beside the first [dimensionless]

    Returns:
        Direct minutes [min]

    Source: common practice.
    """
    return quantity * each * wood_factor * batch_factor


def labour_lines(
    quantities: Mapping[Driver, Number],
    methods: Mapping[str, Method] | None = None,
    wood_factor: Number = 1.0,
    standards: Standards | None = None,
    ledger: Ledger = UNKEPT,
) -> tuple[LabourLine, ...]:
    """What every operation takes on a piece, line by line, in the order of the work.

    Args:
        quantities: what was counted; feet and areas come as the caller rounded them [dimensionless]
        methods: the operations that this job does otherwise than the shop's default, by code
        wood_factor: how the piece's wood works beside cherry; cutting operations take it [dimensionless]
        standards: the shop's standards; None for the ones it starts with
        ledger: where the working is kept

    Returns:
        One line for each operation of which there is any.

    Raises:
        ValueError: a quantity is below zero, or a method is given for an operation that does not exist.

    Source: common practice.
    """
    held = standards or house_standards()
    wanted = methods or {}
    refuse_strangers(quantities, wanted, held)
    return tuple(
        labour_line(one, quantities[one.driver], wanted.get(one.code), wood_factor, ledger)
        for one in held.operations
        if quantities.get(one.driver, 0) > 0
    )


def refuse_strangers(
    quantities: Mapping[Driver, Number], methods: Mapping[str, Method], standards: Standards
) -> None:
    """Refuses a quantity below zero and a method for an operation that is not in the standards.

    Args:
        quantities: what was counted [dimensionless]
        methods: methods by operation code
        standards: the operations that exist

    Raises:
        ValueError: with a sentence that names the stranger.

    Source: common practice.
    """
    below = [driver.value.replace("_", " ") for driver, quantity in quantities.items() if quantity < 0]
    if below:
        raise ValueError(f"There cannot be fewer than none of: {', '.join(below)}.")
    strangers = sorted(set(methods) - {one.code for one in standards.operations})
    if strangers:
        raise ValueError(
            f"There is no operation {', '.join(strangers)}; the list of operations has the codes."
        )


def labour_line(
    one: Operation,
    quantity: Number,
    wanted: Method | None = None,
    wood_factor: Number = 1.0,
    ledger: Ledger = UNKEPT,
) -> LabourLine:
    """What one operation takes on a piece.

    Args:
        one: the operation
        quantity: how many there are of what it counts [dimensionless]
        wanted: by hand or with machine help; None for the shop's default
        wood_factor: how the piece's wood works beside cherry [dimensionless]
        ledger: where the working is kept

    Returns:
        The line, with its factors.

    Source: common practice.
    """
    method = method_taken(one, wanted)
    each = ledger.given(
        f"standard.{one.code}",
        minutes_by(one, method) or 0.0,
        f"{one.source} ({one.basis}), by {method}; a shop file has its own as minutes {one.code}",
        Minutes,
    )
    cutting = wood_factor if one.cutting else 1.0
    repeats = repeat_factor(one, quantity)
    minutes = ledger.take(
        f"minutes.{one.code}",
        operation_minutes,
        quantity=quantity,
        each=each,
        wood_factor=cutting,
        batch_factor=repeats,
    )
    return LabourLine(
        code=one.code,
        name=one.name,
        group=one.group,
        driver=one.driver,
        quantity=quantity,
        each=each,
        method=method,
        factor=cutting * repeats,
        minutes=minutes,
    )


def direct_minutes(lines: Iterable[LabourLine], group: Group | None = None) -> Minutes:
    """The direct minutes of all lines, or of those of one part of the work.

    Args:
        lines: labour lines in any order
        group: the part of the work; None for all of it

    Returns:
        Their sum, without the allowance [min]

    Source: common practice.
    """
    return math.fsum(line.minutes for line in lines if group in (None, line.group))


def with_allowance(minutes: Minutes, allowance: Number) -> Hours:
    """Hours to be paid for: direct minutes and the allowance for rest, sharpening and fetching.

    Rule: minutes * (1 + allowance) / 60, to the nearest hundredth of an hour

    Args:
        minutes: direct minutes [min]
        allowance: a share of the direct minutes [dimensionless]

    Returns:
        Hours, to 0.01 h, as the price takes them [hour]

    Source: common practice.
    """
    return round(near_to(minutes * (1 + allowance) / MINUTES_PER_HOUR, 0.01), 2)
