"""The ledger that keeps the working: what went in, what came out, and the rule that made it.

A function of the core is called through `Ledger.take`, which writes down the figure's name, the function and
its inputs. Nothing is formatted until somebody asks why, so keeping the working costs about a microsecond a
figure; and the explanation is read from the function's own docstring, so it cannot drift from the sum.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeVar

from casewright.measure.saying import Words

T = TypeVar("T")


class Figure(float):
    """A number that remembers which entry of the ledger made it.

    It is an ordinary float in every sum; given to the next rule as an input, it tells the ledger where that
    input came from. The result of arithmetic on it is a plain float again.

    Attributes:
        name: the figure's name in the ledger
    """

    __slots__ = ("name",)
    name: str

    def __new__(cls, value: float, name: str) -> "Figure":
        """The number under its name."""
        figure = super().__new__(cls, value)
        figure.name = name
        return figure

    def __getnewargs__(self) -> tuple[float, str]:  # type: ignore[override] # a copy keeps its name
        """What a copy is made of."""
        return float(self), self.name


class WholeFigure(int):
    """A count or an amount in cents that remembers which entry of the ledger made it.

    Attributes:
        name: the figure's name in the ledger
    """

    name: str

    def __new__(cls, value: int, name: str) -> "WholeFigure":
        """The number under its name."""
        figure = super().__new__(cls, value)
        figure.name = name
        return figure

    def __getnewargs__(self) -> tuple[int, str]:  # type: ignore[override] # a copy keeps its name
        """What a copy is made of."""
        return int(self), self.name


_float = float.__new__


def _named(value: T, name: str) -> T:
    """The value, remembering its name if it is a number."""
    if isinstance(value, float):
        # As `Figure(value, name)` would, without the call: a piece takes some eight hundred figures.
        figure = _float(Figure, value)
        figure.name = name
        return figure  # type: ignore[return-value]
    if isinstance(value, int) and type(value) in (int, WholeFigure):
        return WholeFigure(value, name)  # type: ignore[return-value]
    return value


Kept = tuple[Callable[..., object] | None, dict[str, object], object, Words, object]
"""An entry as it lies in the ledger: rule, inputs, value, basis, kind. A `Working` is made when asked for."""


@dataclass(frozen=True, slots=True)
class Working:
    """One entry of the ledger.

    Attributes:
        figure: the figure's name, a dotted path such as `A-R5-1.height`
        rule: the function that made it; None for a figure that was given
        inputs: what went in, by the names of the rule's arguments
        value: what came out
        basis: for a given figure, who gave it: the unit file, the shop's settings, a default and its source
        kind: for a given figure, the alias of its unit, such as `Inches`, where whoever gave it said so
    """

    figure: str
    rule: Callable[..., object] | None
    inputs: dict[str, object]
    value: object
    basis: Words = ""
    kind: object = None


class Ledger:
    """The working of one computation, figure by figure, in the order in which they were made."""

    __slots__ = ("_prefix", "_workings")

    def __init__(self) -> None:
        self._workings: dict[str, Kept] = {}
        self._prefix = ""

    def under(self, prefix: str) -> "Ledger":
        """The same ledger, with every figure's name led by a prefix and a dot."""
        child = Ledger.__new__(Ledger)
        child._workings = self._workings
        child._prefix = f"{self._prefix}{prefix}."
        return child

    @property
    def root(self) -> "Ledger":
        """The same ledger, with no prefix before a figure's name."""
        if not self._prefix:
            return self
        root = Ledger.__new__(Ledger)
        root._workings = self._workings
        root._prefix = ""
        return root

    def copied(self) -> "Ledger":
        """A ledger of its own with the same working: what is added to it, this one does not know."""
        copy = Ledger.__new__(Ledger)
        copy._workings = dict(self._workings)
        copy._prefix = self._prefix
        return copy

    def take(self, figure: str, rule: Callable[..., T], /, **inputs: object) -> T:
        """Works a figure out by a rule and writes the working down.

        Args:
            figure: the figure's name, unique within the ledger; taken again, it replaces the earlier working
            rule: a documented function of the core
            inputs: its arguments, by name

        Returns:
            What the rule returns; a number comes back as a figure that remembers its name.

        Source: common practice.
        """
        value = rule(**inputs)
        name = self._prefix + figure
        self._workings[name] = (rule, inputs, value, "", None)
        if value.__class__ is float:  # nearly every figure: without a further call
            number = _float(Figure, value)  # type: ignore[arg-type]
            number.name = name
            return number  # type: ignore[return-value]
        return _named(value, name)

    def given(self, figure: str, value: T, basis: Words, kind: object = None) -> T:
        """Writes down a figure that nobody computed: it was typed, measured, or is a default.

        Args:
            figure: the figure's name
            value: what was given
            basis: who gave it and on what ground
            kind: the alias of its unit, such as `Inches`; left out, the first rule that uses it says

        Returns:
            The value; a number remembers its name.

        Source: common practice.
        """
        name = self._prefix + figure
        self._workings[name] = (None, {}, value, basis, kind)
        return _named(value, name)

    def named(self, figure: str) -> str:
        """The whole name that a figure has here, with every prefix.

        Args:
            figure: the figure's name below this ledger's prefix

        Returns:
            Its name in the whole ledger.

        Source: common practice.
        """
        return self._prefix + figure

    def repeat(self, entries: "Ledger") -> None:
        """Writes down once more what another ledger holds: for what is the same in every computation.

        Args:
            entries: a ledger whose figures have the names that they are to have here

        Source: common practice.
        """
        self._workings.update(entries._workings)

    def __contains__(self, figure: str) -> bool:
        return figure in self._workings

    def __getitem__(self, figure: str) -> Working:
        return Working(figure, *self._workings[figure])

    def __iter__(self) -> Iterator[Working]:
        return (Working(figure, *kept) for figure, kept in self._workings.items())

    def __len__(self) -> int:
        return len(self._workings)


class Unkept(Ledger):
    """A ledger that works everything out and keeps nothing, for callers who will not ask why."""

    __slots__ = ()

    def under(self, prefix: str) -> "Ledger":
        """Itself: there is nothing to put a prefix before."""
        return self

    def copied(self) -> "Ledger":
        """Itself: there is nothing to copy."""
        return self

    def take(self, figure: str, rule: Callable[..., T], /, **inputs: object) -> T:
        """Works a figure out and forgets how."""
        return rule(**inputs)

    def given(self, figure: str, value: T, basis: Words, kind: object = None) -> T:
        """Hands the value back."""
        return value

    def repeat(self, entries: "Ledger") -> None:
        """Forgets them."""


UNKEPT = Unkept()
