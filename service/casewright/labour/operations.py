"""The operations of the shop, in the order of the work, each with its minutes by hand and by machine."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from casewright.labour.drivers import Driver
from casewright.labour.figures import bundled
from casewright.measure.units import Minutes, Number


class Method(StrEnum):
    """How an operation is done. Machine means with machine help, not untouched by hand."""

    HAND = "hand"
    MACHINE = "machine"


class Timing(StrEnum):
    """Whose minutes a standard holds: the average of a batch, or the first piece of one."""

    AVERAGE = "average"
    FIRST = "first"


class Group(StrEnum):
    """The part of the work that an operation belongs to."""

    PREPARE = "preparing stock"
    CASE = "case"
    DRAWERS = "drawers"
    FURTHER = "further work"
    FINISH = "finish"
    DELIVER = "delivery and papers"


GROUPS = {
    "P": Group.PREPARE,
    "C": Group.CASE,
    "D": Group.DRAWERS,
    "E": Group.FURTHER,
    "Z": Group.FINISH,
    "Y": Group.DELIVER,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Operation:
    """One operation with its time standard.

    Attributes:
        code: the short code on the cards, such as D06; its letter says which group it is of
        name: what is done, in the shop's words
        driver: what is counted
        per: what one of them is called on paper
        hand: minutes each by hand; None where the shop does it by machine only [min]
        machine: minutes each with machine help; None where it is handwork only [min]
        default_method: how it is done unless the job says otherwise
        cutting: the wood's hardness counts: sawing, chopping, planing
        setup: paid once a batch, however many pieces follow
        resource: what it occupies: bench, machine, clamps, flat spot, finish room, vehicle, office
        wait_after: the key of the wait that follows; empty for none
        overnight: the wait may run while nobody is there
        helper: a second pair of hands is needed
        timing: whether the minutes are a batch's average or its first piece
        learning: for a first-piece standard, what a doubling of the count leaves of the time [dimensionless]
        source: where the minutes come from
        basis: published, common practice, from memory or learned
    """

    code: str
    name: str
    driver: Driver
    per: str
    hand: Minutes | None
    machine: Minutes | None
    default_method: Method
    cutting: bool = False
    setup: bool = False
    resource: str = "bench"
    wait_after: str = ""
    overnight: bool = False
    helper: bool = False
    timing: Timing = Timing.AVERAGE
    learning: Number = 1.0
    source: str = "the shop's own figure"
    basis: str = "common practice"

    def __post_init__(self) -> None:
        given = [minutes for minutes in (self.hand, self.machine) if minutes is not None]
        if not given or min(given) < 0:
            raise ValueError(f"Operation {self.code} has no minutes; give it some by hand or by machine.")
        if self.code[:1] not in GROUPS:
            raise ValueError(f"Operation {self.code}: begin its code with one of {', '.join(GROUPS)}.")
        if not 0.5 <= self.learning <= 1:
            raise ValueError(f"Operation {self.code}: a learning rate is between 0.5 and 1, such as 0.95.")

    @property
    def group(self) -> Group:
        """The part of the work, by the letter of the code."""
        return GROUPS[self.code[0]]


@cache
def operations() -> tuple[Operation, ...]:
    """The operations that a shop starts with, in the order of the work.

    Returns:
        One value for each operation.

    Source: common practice; planning figures, to be replaced by what the shop itself has logged.
    """
    return tuple(operation(row) for row in bundled("operations.json")["operations"])


def operation(row: dict[str, object]) -> Operation:
    """One operation read from a row of a standards file.

    Args:
        row: the fields of `Operation` by name, as JSON gives them

    Returns:
        The operation.

    Raises:
        ValueError: the row names a driver, method or timing that does not exist, or has no minutes.

    Source: common practice.
    """
    named = {
        "driver": Driver(str(row["driver"])),
        "default_method": Method(str(row["default_method"])),
        "timing": Timing(str(row.get("timing", Timing.AVERAGE))),
    }
    return Operation(**{**row, **named})  # type: ignore[arg-type]


def method_taken(one: Operation, wanted: Method | None = None) -> Method:
    """How an operation is done: as wanted, else as the shop does it by default.

    Args:
        one: the operation
        wanted: what the job asks for; None for the shop's default

    Returns:
        The method asked for; the other one where the shop has minutes for that only.

    Source: common practice.
    """
    method = wanted or one.default_method
    if minutes_by(one, method) is None:
        return Method.HAND if method is Method.MACHINE else Method.MACHINE
    return method


def minutes_by(one: Operation, method: Method) -> Minutes | None:
    """The minutes of an operation by one method.

    Args:
        one: the operation
        method: by hand or with machine help

    Returns:
        Minutes each, or None where the shop has no figure for it [min]

    Source: common practice.
    """
    return one.hand if method is Method.HAND else one.machine
