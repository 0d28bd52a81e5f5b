"""Single figures of the shop on a page: what each is called, how it is typed, on what ground it stands."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from casewright.measure.lengths import LengthUnit, write_length
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.web.settings.forms import Draft, FigureReader, in_money, in_percent, plain_number

OWN = "your own"


class Kind(StrEnum):
    """How a figure is typed."""

    PERCENT = "per cent"
    MONEY = "money"
    NUMBER = "number"
    LENGTH = "length"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """On what ground a figure stands.

    Attributes:
        word: your own, example, published, common practice, from memory or computed
        source: where it comes from; empty for the shop's own
    """

    word: str
    source: str = ""


def ground_of(basis: str, source: str = "") -> Ground:
    """The ground that a row of the program's own data names."""
    word = basis.partition(";")[0]
    if word == "learned":
        return Ground(word=OWN)
    said = source.removeprefix(f"{word} ").removeprefix(f"{word}: ")
    return Ground(word=word, source="" if said == word else said)


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One figure of the shop.

    Attributes:
        name: its name in a shop file, and that of its field
        label: what it is called
        kind: how it is typed
        of: reads it from the figures that hold
        usual: the ground of the usual figure
        hint: a line under the label
        unit: what stands behind it
        least: the least that is taken, as typed
        most: the most
        example: a good value
    """

    name: str
    label: str
    kind: Kind
    of: Callable[[Figures], float]
    usual: Ground
    hint: str = ""
    unit: str = ""
    least: float = 0
    most: float = 0
    example: str = "1"


def shown_line(line: Line, figures: Figures, unit: LengthUnit) -> str:
    """A figure as it stands in its field."""
    value = line.of(figures)
    printed: dict[Kind, Callable[[], str]] = {
        Kind.PERCENT: lambda: in_percent(value),
        Kind.MONEY: lambda: in_money(value),
        Kind.NUMBER: lambda: plain_number(value),
        Kind.LENGTH: lambda: write_length(value, unit),
    }
    return printed[line.kind]()


def read_lines(
    read: FigureReader, lines: Iterable[Line], figures: Figures, unit: LengthUnit, draft: Draft
) -> None:
    """Takes those figures into a draft that were changed; an emptied field goes back to the usual."""
    for line in lines:
        if read.typed.get(line.name).strip() != shown_line(line, figures, unit):
            draft.put(line.name, _read_line(read, line, unit))


def _read_line(read: FigureReader, line: Line, unit: LengthUnit) -> Any:
    if line.kind is Kind.MONEY:
        return read.amount(line.name)
    if line.kind is Kind.LENGTH:
        return read.length(line.name, unit, needed=False)
    if line.kind is Kind.PERCENT:
        return read.percent(line.name, least=line.least, most=line.most, example=line.example)
    return read.optional(line.name, least=line.least, most=line.most, example=line.example)


def grounds_of(lines: Iterable[Line], spec: ShopSpec) -> dict[str, Ground]:
    """On what ground each figure stands now, by its name."""
    return {line.name: Ground(word=OWN) if is_own(spec, line.name) else line.usual for line in lines}


def is_own(spec: ShopSpec, name: str) -> bool:
    """Whether the shop has said something about a figure."""
    return name in spec.model_fields_set and getattr(spec, name) is not None
