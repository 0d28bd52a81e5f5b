"""What is wrong in a file, in a sentence that names the field and shows a value that would do."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import Any

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from casewright.measure.lengths import LengthUnit, parse_length
from casewright.measure.printing import unit_of
from casewright.measure.saying import Words, in_unit, say
from casewright.measure.units import Unit

LIMITS = {
    "greater_than": ("gt", "small", "more than"),
    "greater_than_equal": ("ge", "small", "at least"),
    "less_than": ("lt", "large", "less than"),
    "less_than_equal": ("le", "large", "at most"),
}
STEPS = frozenset({"float", "str", "int"})
EXACT = 2**53
"""Below it a number without a fraction is exact."""
PLAIN = {
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "int_parsing_size": "a whole number of that size",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "float_parsing": "a number",
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "string_type": "text",
    "tuple_type": "a list",
    "dict_type": "an object in braces",
    "model_type": "an object in braces",
    "model_attributes_type": "an object in braces",
}
OWN = {
    "length",
    "wood",
    "exactly_one",
    "widths",
    "layout",
    "step",
    "ratio",
    "air",
    "season",
    "in_rabbet",
    "price",
    "choice",
}
"""Errors that this program raises itself: their message is a whole sentence."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing in a file that cannot be used.

    Attributes:
        field: the field, by its path in the file; empty for the file as a whole
        message: what is wrong with it and what would be right
    """

    field: str
    message: str

    def __str__(self) -> str:
        return f"{self.field}: {self.message}" if self.field else self.message


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What a kind of file lets a word choose, so that an error can be followed into what was chosen.

    Attributes:
        models: the models that a word in the file chooses between, by that word
        named: how the word that chooses is written, by the name of its key
        named_at: how it is written in one place of the file, by that place
        steps: names of the validator's own steps, which are no fields
    """

    models: Mapping[str, type[BaseModel]] = field(default_factory=dict)
    named: Mapping[str, str] = field(default_factory=dict)
    named_at: Mapping[str, str] = field(default_factory=dict)
    steps: frozenset[str] = frozenset()


NO_CHOICES = Choices()


@dataclass(frozen=True, slots=True)
class _Place:
    """Where in the models an error sits.

    Attributes:
        path: the field as the file writes it, list entries counted from one
        model: the model that stands in that place, where one does
        example: a good value of the field, as JSON; empty where none is known
        is_length: whether a size stands there, so that its limits are in inches
    """

    path: str
    model: type[BaseModel] | None
    example: Words
    is_length: bool


def problem(
    model: type[BaseModel],
    detail: ErrorDetails,
    unit: LengthUnit = LengthUnit.INCH,
    choices: Choices = NO_CHOICES,
) -> Problem:
    """One error of the validation, as a sentence about the field.

    Args:
        model: the model that the data did not fit
        detail: what the validation found
        unit: the unit of the file
        choices: what words in the file choose

    Returns:
        The field and the sentence.

    Source: the schema of the model.
    """
    place = _place(model, detail["loc"], choices)
    return Problem(place.path, in_unit(_sentence(model, place, detail, choices), unit))


def _place(model: type[BaseModel], location: tuple[int | str, ...], choices: Choices) -> _Place:
    """Follows an error's location through the models, past the validator's own inner steps."""
    here: type[BaseModel] | None = model
    example: Words = ""
    path, is_length = "", False
    good: Any = None
    for step in location:
        if isinstance(step, int):
            path += f"[{step + 1}]"
            if isinstance(good, list) and good and not isinstance(good[0], dict):
                good = good[0]  # of a list of sizes, one of them
                example = _example(good, is_length)
        elif here is not None and (found := _field(here, step)):
            is_length = any(isinstance(mark, Unit) and mark.name == "inch" for mark in _marks(found))
            good = found.examples[0] if found.examples else None
            example = _example(good, is_length) if found.examples else ""
            here = _model_of(found.annotation)
            path += f".{step}" if path else step
        elif here is None and step in choices.models:
            here = choices.models[step]
        elif not (step.startswith("function-") or step in STEPS | choices.steps):
            path += f".{step[:60]}" if path else step[:60]
    return _Place(path, here, example, is_length)


def _field(model: type[BaseModel], key: str) -> FieldInfo | None:
    """The field that a file writes under a key."""
    by_alias = (info for info in model.model_fields.values() if info.alias == key)
    return next(by_alias, model.model_fields.get(key))


def _marks(info: FieldInfo) -> tuple[object, ...]:
    """What is written beside a field's type: its unit among it."""
    return (*info.metadata, unit_of(info.annotation))


def _example(good: Any, is_length: bool) -> Words:
    """A good value as a file holds it; a size in the unit of the file."""
    text = json.dumps(good, ensure_ascii=False)
    if not is_length or not isinstance(good, str):
        return text
    size = say('"{:bare}"', float(parse_length(good)))
    return size if str(size) == text else text


def _model_of(annotation: Any) -> type[BaseModel] | None:
    """The one model behind an annotation, looking through optional, tuple, dict and annotated types."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    inner = getattr(annotation, "__args__", ())
    models = [found for item in inner if (found := _model_of(item))]
    return models[0] if len(models) == 1 else None


def _sentence(model: type[BaseModel], place: _Place, detail: ErrorDetails, choices: Choices) -> Words:
    kind, context = detail["type"], detail.get("ctx", {})
    good: Words = say("; for example {}", place.example) if place.example else ""
    shown = _shown(detail["input"])
    if kind in OWN:
        return detail["msg"]
    if kind == "extra_forbidden":
        return _unknown_key(model, detail, choices)
    if kind in LIMITS:
        key, wrong, words = LIMITS[kind]
        limit = say("{:exact bare}" if place.is_length else "{:g}", context[key])
        return say("{} is too {}: {} {}{}", shown, wrong, words, limit, good)
    if kind in PLAIN:
        return say("{} is not {}{}", shown, PLAIN[kind], good)
    if kind in {"literal_error", "enum", "union_tag_invalid"}:
        return f"{shown} cannot stand here; write {context.get('expected') or context.get('expected_tags')}"
    named = choices.named.get(str(context.get("discriminator")).strip("'"), "one that the schema has")
    named = choices.named_at.get(place.path, named)
    simple = {
        "missing": "this is missing",
        "too_short": "this is empty",
        "too_long": f"this holds {context.get('actual_length')} entries; at most {context.get('max_length')}",
        "string_too_short": "this is empty",
        "string_pattern_mismatch": f"{shown} is not of the form that it has",
        "union_tag_not_found": f"it should say which kind it is, as {named}",
    }
    usual = f"{shown} cannot be used: {detail['msg'][0].lower()}{detail['msg'][1:]}"
    return simple.get(kind, usual) + good


def _unknown_key(model: type[BaseModel], detail: ErrorDetails, choices: Choices) -> str:
    """The sentence for a key that the file should not have, with the nearest that it may have."""
    owner = _place(model, detail["loc"][:-1], choices).model
    known = [info.alias or name for name, info in owner.model_fields.items()] if owner else []
    near = get_close_matches(str(detail["loc"][-1]), known, n=1, cutoff=0.5)
    return (
        f"this key is not known; {f'did you mean {near[0]}?' if near else 'known here: ' + ', '.join(known)}"
    )


def _shown(value: Any) -> str:
    """A typed value, quoted and shortened for a message."""
    if isinstance(value, float) and value.is_integer() and abs(value) < EXACT:
        value = int(value)  # a typed 0 was read as 0.0, which nobody typed
    text = json.dumps(value, ensure_ascii=False, default=str)
    text = "".join(sign if sign.isprintable() else "\ufffd" for sign in text)
    return text if len(text) <= 40 else f"{text[:37]}…"
