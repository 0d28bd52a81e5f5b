"""What every kind of joint offers, so that papers, drawings and the command line need not know the kind.

A joint's module gives the value that is asked for, a function that works it out, and one `KIND` that lists
the fields and solves them from plain numbers. A joint once worked out lists its findings and its settings.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import ParamSpec, Protocol

from casewright.joinery.chisels import Rack
from casewright.joinery.groove import Groove
from casewright.joinery.solid import Shape
from casewright.joinery.sourced import rows
from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.measure.lengths import parse_length
from casewright.measure.making import quickly_made
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Degrees, Inches, Number, Percent

P = ParamSpec("P")

Values = Mapping[str, Number | None]
"""What somebody gave for a joint's fields, by name; None, or a name left out, to have it chosen."""

Measured = tuple[tuple[str, Inches], ...]
"""Marks of parts, each with the thickness that was measured [in]."""


class Measure(StrEnum):
    """What kind of number a setting or a field is, which decides how it is read and printed.

    A fine length is one that no rule shows: it is set with a feeler gauge or a caliper, and printed in
    thousandths of an inch or hundredths of a millimetre. An answer is yes or no, kept as 1 or 0.
    """

    LENGTH = "length"
    FINE = "fine"
    COUNT = "count"
    SLOPE = "slope"
    DEGREES = "degrees"
    PERCENT = "percent"
    NUMBER = "number"
    ANSWER = "answer"

    @property
    def is_length(self) -> bool:
        """Whether it is a length, in inches."""
        return self in {Measure.LENGTH, Measure.FINE}


UNITS: dict[Measure, object] = {
    Measure.LENGTH: Inches,
    Measure.FINE: Inches,
    Measure.COUNT: Count,
    Measure.SLOPE: Number,
    Measure.DEGREES: Degrees,
    Measure.PERCENT: Percent,
    Measure.NUMBER: Number,
    Measure.ANSWER: Count,
}
"""The unit of each kind of number."""


class Tool(StrEnum):
    """What is set to a number and kept so until the last piece is marked."""

    GAUGE = "gauges"
    DIVIDERS = "dividers"


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """One number that a card prints, to be set at the bench.

    Attributes:
        name: short and unique within the joint, such as `gauge_2`
        label: what a maker calls it
        value: the number, unrounded; a length is in inches, a slope is how far along for one across
        measure: what kind of number it is
        note: where it is used, and from which face or edge
        wrong: the number that is easily taken for it, printed struck out; None when there is no such trap
        tool: what stays set to it until the last piece is marked; None for whatever is set once
    """

    name: str
    label: Words
    value: Number
    measure: Measure = Measure.LENGTH
    note: Words = ""
    wrong: Number | None = None
    tool: Tool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """One number that was left out and has been chosen.

    Attributes:
        name: the field
        value: what was chosen; a length is in inches
        measure: what kind of number it is
        why: the reason, as a sentence
        source: where the rule of choice comes from
    """

    name: str
    value: Number
    measure: Measure
    why: Words
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One number that a joint asks for.

    Attributes:
        name: the field's name in `Values`
        help: what it is, in a maker's words
        measure: what kind of number it is
        example: how it may be typed
        required: whether the joint cannot be solved without it
        default: what is taken when it is left out, in words; empty for a required field
        least: the least number that makes sense
        least_is_too_small: whether the least itself is refused, as a height of 0 is
        most: the greatest number that can be meant
    """

    name: str
    help: str
    measure: Measure
    example: str
    required: bool = False
    default: str = ""
    least: Number = 0.0
    least_is_too_small: bool = True
    most: Number = math.inf

    @property
    def option(self) -> str:
        """The field's name as an option of the command line."""
        return f"--{self.name.replace('_', '-')}"

    @property
    def shown_example(self) -> Words:
        """The example, a length in the unit of whoever reads it."""
        return say("{}", float(parse_length(self.example))) if self.measure.is_length else self.example

    @property
    def typed_example(self) -> Words:
        """The example as it is typed after its option."""
        return say("{:bare}", float(parse_length(self.example))) if self.measure.is_length else self.example

    @property
    def wanted(self) -> Words:
        """What would do for it, as it stands after “give”."""
        if self.measure is Measure.ANSWER:
            return "yes or no"
        if self.measure is Measure.COUNT:
            fewest = int(self.least) + self.least_is_too_small
            what = self.name.replace("_", " ")
            return f"a whole number of {what}, {fewest} or more; {self.example} for example"
        kind = "size" if self.measure.is_length else "slope" if self.measure is Measure.SLOPE else "number"
        least = f"{self.least:g}"
        span = f"above {least}" if self.least_is_too_small else f"of {least} or more"
        if self.measure is Measure.SLOPE:
            return f"a slope such as {self.example}"
        if self.most < math.inf:
            span = f"{span}, up to {self.most:g}"
        return say("a {} {}; {} for example", kind, span, self.shown_example)

    def allows(self, value: Number) -> bool:
        """Whether a number can be meant.

        Args:
            value: the number [in for a length]

        Returns:
            Whether it lies within what the field takes, and is whole where it counts.

        Source: common practice.
        """
        too_small = value <= self.least if self.least_is_too_small else value < self.least
        whole = self.measure not in {Measure.COUNT, Measure.ANSWER} or value == int(value)
        return math.isfinite(value) and not too_small and value <= self.most and whole


class Joint(Protocol):
    """A joint of any kind that has been worked out."""

    @property
    def given(self) -> object:
        """What was asked for."""

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Every check that was carried out, passes too."""

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work."""

    @property
    def shape(self) -> Shape:
        """The joint in space."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """A joint with what was chosen for it.

    Attributes:
        joint: the joint, worked out
        chosen: each number that had been left out, in the order in which they were chosen
        kept: whether the shop has gauges and dividers enough to keep the joint's settings
    """

    joint: Joint
    chosen: tuple[Chosen, ...]
    kept: tuple[Finding, ...] = ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Every check of the joint, and of the tools that stay set for it."""
        return (*self.joint.findings, *self.kept)


class Choosing:
    """Takes a joint's numbers one by one: each as it was given, or else chosen, and remembered as chosen."""

    def __init__(self, values: Values, ledger: Ledger, asked: tuple[Field, ...]) -> None:
        self._values = values
        self._ledger = ledger
        self._asked = {field.name: field for field in asked}
        self._units = {field.name: UNITS[field.measure] for field in asked}
        self._chosen: list[Chosen] = []

    @property
    def chosen(self) -> tuple[Chosen, ...]:
        """What has been chosen so far, in order."""
        return tuple(self._chosen)

    def optional(self, name: str) -> Number | None:
        """A number that may be left out.

        Args:
            name: the field

        Returns:
            The number as given, or None [in for a length]

        Source: common practice.
        """
        value = self._values.get(name)
        return None if value is None else self._given(name, float(value), "given")

    def number(self, name: str) -> Number:
        """A number that the joint cannot do without.

        Args:
            name: the field

        Returns:
            The number as given [in for a length]

        Raises:
            ValueError: it was left out.

        Source: common practice.
        """
        value = self.optional(name)
        if value is None:
            raise ValueError(f"The {name.replace('_', ' ')} is missing; this joint cannot do without it.")
        return value

    def or_choose(self, name: str, choose: Callable[P, Chosen], *args: P.args, **kwargs: P.kwargs) -> Number:
        """A number as it was given, or as a rule of choice has it.

        Args:
            name: the field
            choose: the rule of choice, called only when the number was left out
            args: what the rule needs
            kwargs: what the rule needs, by name

        Returns:
            The number [in for a length]

        Source: common practice.
        """
        value = self.optional(name)
        if value is not None:
            return value
        chosen = choose(*args, **kwargs)
        self._chosen.append(chosen)
        return self._given(name, chosen.value, say("chosen: {} ({})", chosen.why, chosen.source))

    def groove(self) -> Groove | None:
        """The groove for the bottom, when one was given.

        Returns:
            The groove; None when neither its height nor its width was given.

        Raises:
            ValueError: one was given without the other, or its depth without both.

        Source: common practice.
        """
        height, width, depth = (self.optional(f"groove_{size}") for size in ("height", "width", "depth"))
        if height is not None and width is not None:
            return Groove(height=height, width=width, depth=depth or width)
        if height is None and width is None and depth is None:
            return None
        sizes = (self._asked[f"groove_{size}"].shown_example for size in ("height", "width"))
        raise ValueError(
            say(
                "A groove needs both its height above the bottom edge and its width; {} and {} are usual.",
                *sizes,
            )
        )

    def pair(self, one: str, other: str) -> tuple[Number | None, Number | None]:
        """Two numbers that say something only together.

        Args:
            one: the one field
            other: the other field

        Returns:
            Both numbers; None for both when neither was given [in for a length]

        Raises:
            ValueError: one was given without the other.

        Source: common practice.
        """
        numbers = self.optional(one), self.optional(other)
        if (numbers[0] is None) is (numbers[1] is None):
            return numbers
        given, missing = (one, other) if numbers[1] is None else (other, one)
        field = self._asked[missing]
        raise ValueError(
            say(
                "The {} is compared with the {}; give that too, as {} {}, or leave both out.",
                given.replace("_", " "),
                missing.replace("_", " "),
                field.option,
                field.typed_example,
            )
        )

    def _given(self, name: str, value: Number, basis: Words) -> Number:
        return self._ledger.given(name, value, basis, self._units[name])


Solve = Callable[[Values, Measured, Rack, Ledger], Solved]


@dataclass(frozen=True, slots=True, kw_only=True)
class JointKind:
    """One family of joints.

    Attributes:
        name: its name on the command line and in files
        title: what it is, in a maker's words
        fields: what it asks for, the required first
        takes_measured_sides: whether it groups measured sides by their thickness
        solve: works the joint out from plain numbers
    """

    name: str
    title: str
    fields: tuple[Field, ...]
    solve: Solve
    takes_measured_sides: bool = False


@cache
def fields(kind: str) -> tuple[Field, ...]:
    """The fields of a joint, from its data file.

    Args:
        kind: the joint's module name

    Returns:
        Its fields, in the order in which they are asked for.

    Source: common practice.
    """
    return tuple(
        Field(name=name, **{**row, "measure": Measure(row["measure"])})
        for name, row in rows(f"{kind}_fields").items()
    )
