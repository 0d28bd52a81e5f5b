"""A field of a unit's form: what the schema says of it, how it is typed, what it is when left empty."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from types import UnionType
from typing import Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import PydanticUndefined

from casewright.measure.lengths import LengthUnit, show_mm, write_length
from casewright.measure.printing import unit_of
from casewright.pieces.asked.spec import UnitSpec
from casewright.web.units.hints import brief_hint


class Kind(StrEnum):
    """How a field is typed."""

    SIZE = "size"
    SIZES = "sizes"
    LINES = "lines"
    NUMBER = "number"
    WHOLE = "whole"
    TEXT = "text"
    TICK = "tick"
    CHOICE = "choice"


Choices = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One field of the form.

    Attributes:
        name: its path in the unit file, rows counted from one
        label: what the form calls it
        kind: how it is typed
        hint: what the schema says of it
        example: how it may be written
        usual: what stands for it when it is left empty; None where that depends on other choices
        choices: what may be chosen, each with its words
        when: the field that switches it on, and by which values, or by any; empty where it always counts
        lead: is it named in the line that sums its group up, typed or not?
        bare: does its value say enough in that line, without the label?
        is_wide: do its words need the room of two fields?
        needed: can the unit not do without it?
        empty: what stands in it, faintly, while nothing is typed and nothing usual is known
        unticked: what the line that sums its group up says of a tick that is taken out
    """

    name: str
    label: str
    kind: Kind
    hint: str = ""
    example: str = ""
    usual: Any = None
    choices: Choices = ()
    when: tuple[str, ...] = ()
    lead: bool = False
    bare: bool = False
    is_wide: bool = False
    needed: bool = False
    empty: str = ""
    unticked: str = ""

    @property
    def id(self) -> str:
        """Its id on the page."""
        return self.name.replace(".", "-")

    @property
    def switched(self) -> str:
        """The class by which the style sheet hides it while it does not count."""
        if self.when and self.when[0].startswith("rows."):  # a switch of its own, in the same row
            return f"in-{'-'.join(self.when[1:]) or 'typed'}"
        return switched_by(self.when)

    def usual_text(self, unit: LengthUnit) -> str:
        """What stands for it when it is left empty, as it would be typed; parts of an inch to 0.1 mm."""
        if self.usual is None:
            return ""
        if self.kind is Kind.SIZE:
            return usual_size(self.usual, unit)
        return f"{self.usual:.4g}" if isinstance(self.usual, float) else str(self.usual)


@cache
def usual_size(inches: float, unit: LengthUnit) -> str:
    """A size that the schema takes, as it would be typed; parts of an inch to 0.1 mm. There are few."""
    text = write_length(inches, unit)
    return show_mm(inches) if text.endswith(" in") else text


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Fields that belong together.

    Attributes:
        key: its short name
        title: its heading
        fields: in the order of the form
        note: a sentence above them
        when: the field that switches it on, and by which values; empty where it always counts
    """

    key: str
    title: str
    fields: tuple[Asked, ...]
    note: str = ""
    when: tuple[str, ...] = ()

    @property
    def switched(self) -> str:
        """The class by which the style sheet hides it while it does not count."""
        return switched_by(self.when)


JOINT_OF = {"drawers.front_joint.kind": "front-", "drawers.back_joint.kind": "back-"}
"""Switches that have values in common: their classes say whose they are."""


def switched_by(when: tuple[str, ...]) -> str:
    """The class of what counts only with some choices of a switch; empty where it always counts."""
    if not when:
        return ""
    values = "-".join(value.replace(" ", "_") for value in when[1:])
    return f"when-{JOINT_OF.get(when[0], '')}{values}"


def schema_field(path: str) -> FieldInfo:
    """The field of the schema that a path leads to.

    Raises:
        LookupError: the schema has no such field
    """
    models: tuple[type[BaseModel], ...] = (UnitSpec,)
    found: FieldInfo | None = None
    for step in path.split("."):
        if step.isdigit():
            continue
        holder = next((model for model in models if step in model.model_fields), None)
        if holder is None:
            raise LookupError(path)
        found = holder.model_fields[step]
        models = tuple(_models(found.annotation))
    if found is None:
        raise LookupError(path)
    return found


def usual_of(path: str) -> Any:
    """What the schema takes for a field that is left out; None where it takes nothing."""
    field = schema_field(path)
    first, *rest = path.split(".")
    here: Any = UnitSpec.model_fields[first].get_default(call_default_factory=True)
    for step in rest:
        here = getattr(here, step, PydanticUndefined)
    if here is PydanticUndefined:
        here = field.default
    return None if here is PydanticUndefined else here


def _models(annotation: Any) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for inner in get_args(annotation):
        yield from _models(inner)


def _plain(annotation: Any) -> Any:
    """The type behind an annotation that may be optional or carry marks."""
    if get_origin(annotation) in {Union, UnionType}:
        return _plain(next(arm for arm in get_args(annotation) if arm is not type(None)))
    if hasattr(annotation, "__metadata__"):
        return _plain(get_args(annotation)[0])
    return annotation


def _kind(field: FieldInfo) -> Kind:
    marks = [unit_of(field.annotation), *field.metadata]
    if any(getattr(mark, "name", "") == "inch" for mark in marks):
        return Kind.SIZE
    plain = _plain(field.annotation)
    if get_origin(plain) is Literal:
        return Kind.CHOICE
    return {bool: Kind.TICK, int: Kind.WHOLE, float: Kind.NUMBER}.get(plain, Kind.TEXT)


def ask(name: str, label: str, choices: Choices = (), when: tuple[str, ...] = (), **more: Any) -> Asked:
    """A field of the form, with what the schema says of it."""
    field = schema_field(name)
    kind = more.pop("kind", Kind.CHOICE if choices else _kind(field))
    usual = usual_of(name)
    if kind is Kind.CHOICE and not choices:
        words = get_args(_plain(field.annotation))
        choices = tuple((word, f"{word} (usual)" if word == usual else word) for word in words)
    given: dict[str, Any] = {
        "hint": brief_hint(label, field.description or ""),
        "example": str(field.examples[0]) if field.examples else "",
        "needed": field.is_required(),
    } | more
    return Asked(name=name, label=label, kind=kind, usual=usual, choices=choices, when=when, **given)
