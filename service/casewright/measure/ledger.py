"""The ledger that keeps the working: what went in, what came out, and the rule that made it.

A function of the core is called through `Ledger.take`, which writes down the figure's name, the function and
its inputs. Nothing is formatted until somebody asks why, so keeping the working costs about a microsecond a
figure; and the explanation is read from the function's own docstring, so it cannot drift from the sum.

Where whole joints are worked out by the hundred and hardly anybody asks, a ledger owes their working: it
notes how it is made, and makes it when it is first read.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from threading import RLock
from typing import Any, TypeVar

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


Owed = tuple[Callable[[Any, "Ledger"], object], object]
"""A working that is not written down yet: what writes it, and for which question."""

NOTHING_IN: dict[str, object] = {}
"""The inputs of what nobody computed; nobody adds to it."""

OWED: Kept = (None, NOTHING_IN, None, "", None)
"""Stands in the place of what is owed."""

_SETTLING = RLock()
"""A unit may be read by several requests at once, and what it owes is to be written down once; what is owed
may itself owe."""


class _Book:
    """What all ledgers of one computation share: its entries, and under which prefixes some are owed.

    What is owed has its place among the entries, under its prefix, which no figure is called; what came of it
    once it is written down is kept by its prefix too.
    """

    __slots__ = ("entries", "owed", "results")

    def __init__(self) -> None:
        self.entries: dict[str, Kept] = {}
        self.owed: dict[str, tuple[Owed, ...]] = {}
        self.results: dict[str, object] = {}

    def copied(self) -> "_Book":
        """A book of its own with the same in it."""
        copy = _Book()
        copy.entries, copy.owed, copy.results = dict(self.entries), dict(self.owed), dict(self.results)
        return copy

    def settled(self) -> dict[str, Kept]:
        """Every entry, with what was owed written down in its place."""
        if not self.owed:
            return self.entries
        with _SETTLING:
            entries: dict[str, Kept] = {}
            for name, kept in list(self.entries.items()):
                if name in self.owed:
                    for work, asked in self.owed[name]:
                        written = Ledger()
                        self.results[name] = work(asked, written.under(name.removesuffix(".")))
                        entries.update(written._book.settled())
                else:
                    entries[name] = kept
            self.entries, self.owed = entries, {}
            return entries


class Ledger:
    """The working of one computation, figure by figure, in the order in which they were made."""

    __slots__ = ("_book", "_prefix")

    def __init__(self) -> None:
        self._book = _Book()
        self._prefix = ""

    def under(self, prefix: str) -> "Ledger":
        """The same ledger, with every figure's name led by a prefix and a dot."""
        child = Ledger.__new__(Ledger)
        child._book = self._book
        child._prefix = f"{self._prefix}{prefix}."
        return child

    @property
    def root(self) -> "Ledger":
        """The same ledger, with no prefix before a figure's name."""
        if not self._prefix:
            return self
        root = Ledger.__new__(Ledger)
        root._book = self._book
        root._prefix = ""
        return root

    def copied(self) -> "Ledger":
        """A ledger of its own with the same working: what is added to it, this one does not know."""
        copy = Ledger.__new__(Ledger)
        copy._book = self._book.copied()
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
        self._book.entries[name] = (rule, inputs, value, "", None)
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
        self._book.entries[name] = (None, NOTHING_IN, value, basis, kind)
        if value.__class__ is float:
            number = _float(Figure, value)  # type: ignore[arg-type]
            number.name = name
            return number  # type: ignore[return-value]
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
        self._book.entries.update(entries._book.settled())

    def owe(self, work: Callable[[Any, "Ledger"], object], asked: object) -> None:
        """Notes how a working is made whose results are known already; it is made when somebody reads it.

        Args:
            work: works the question out and writes down how, under this ledger's prefix
            asked: the question

        Source: common practice.
        """
        book, name = self._book, self._prefix
        book.entries[name] = OWED
        book.owed[name] = (*book.owed.get(name, ()), (work, asked))

    def result(self, name: str) -> object:
        """What came of a working that was owed: equal to the result, but with numbers that are figures.

        Args:
            name: what it was owed under, such as `R5-1.front_joint`

        Returns:
            The result; None where nothing was owed under that name.

        Source: common practice.
        """
        self._book.settled()
        return self._book.results.get(f"{name}.")

    def _entries(self, figure: str) -> dict[str, Kept]:
        """The entries among which a figure is, if it is among any."""
        book = self._book
        return book.settled() if any(map(figure.startswith, book.owed)) else book.entries

    def __contains__(self, figure: str) -> bool:
        return figure in self._entries(figure)

    def __getitem__(self, figure: str) -> Working:
        return Working(figure, *self._entries(figure)[figure])

    def __iter__(self) -> Iterator[Working]:
        return (Working(figure, *kept) for figure, kept in self._book.settled().items())

    def __len__(self) -> int:
        return len(self._book.settled())


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

    def owe(self, work: Callable[[Any, "Ledger"], object], asked: object) -> None:
        """Owes nothing."""


UNKEPT = Unkept()
