"""What is wrong in a file, in a sentence that names the field and shows a value that would do."""

import json
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from casewright.measure.lengths import LengthUnit, parse_length
from casewright.measure.printing import unit_of
from casewright.measure.saying import Words, in_unit, say
from casewright.measure.units import Unit
from casewright.pieces.asked import case_spec, crate_spec, drawer_spec, graduation, running_spec, shell_spec
from casewright.pieces.asked.drawer_fronts import STYLES
from casewright.pieces.asked.drawer_joints import JOINTS

TAGGED: dict[str, type[BaseModel]] = {
    "equal": graduation.Equal,
    "step": graduation.Step,
    "ratio": graduation.Ratio,
    "roots": graduation.Roots,
    "contents": graduation.Contents,
    "solid": drawer_spec.SolidBottom,
    "ply": drawer_spec.PlyBottom,
    "carcase": case_spec.Carcase,
    "legs": case_spec.LegsAndAprons,
    "crate": crate_spec.Crate,
    **{kind: model for model in (*JOINTS, *STYLES) for kind in model.model_fields["kind"].examples or ()},
    "plinth": shell_spec.Plinth,
    "brackets": shell_spec.BracketFeet,
    "turned": shell_spec.TurnedFeet,
    "toe": shell_spec.ToeBase,
    "runners": running_spec.OnRunners,
    "side-hung": running_spec.SideHung,
    "centre guide": running_spec.CentreGuide,
    "full-length runners": running_spec.FullRunners,
    "slides": running_spec.OnSlides,
}
"""The models that a word in the file chooses between, by that word."""

LIMITS = {
    "greater_than": ("gt", "small", "more than"),
    "greater_than_equal": ("ge", "small", "at least"),
    "less_than": ("lt", "large", "less than"),
    "less_than_equal": ("le", "large", "at most"),
}
EXACT = 2**53
"""Below it a number without a fraction is exact."""
NAMED = {"'rule'": '"rule": "step"', "'kind'": '"kind": "solid"'}
"""How the word that chooses a model is written, for a model that lacks it."""
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


def problem(model: type[BaseModel], detail: ErrorDetails, unit: LengthUnit = LengthUnit.INCH) -> Problem:
    """One error of the validation, as a sentence about the field.

    Args:
        model: the model that the data did not fit
        detail: what the validation found
        unit: the unit of the file

    Returns:
        The field and the sentence.

    Source: the schema of the model.
    """
    place = _place(model, detail["loc"])
    return Problem(place.path, in_unit(_sentence(model, place, detail), unit))


def _place(model: type[BaseModel], location: tuple[int | str, ...]) -> _Place:
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
        elif here is not None and step in here.model_fields:
            field = here.model_fields[step]
            is_length = any(isinstance(mark, Unit) and mark.name == "inch" for mark in _marks(field))
            good = field.examples[0] if field.examples else None
            example = _example(good, is_length) if field.examples else ""
            here = _model_of(field.annotation)
            path += f".{step}" if path else step
        elif here is None and step in TAGGED:
            here = TAGGED[step]
        elif not (step.startswith("function-") or step in {"Timber", "float", "str", "int"}):
            path += f".{step[:60]}" if path else step[:60]
    return _Place(path, here, example, is_length)


def _marks(field: FieldInfo) -> tuple[object, ...]:
    """What is written beside a field's type: its unit among it."""
    return (*field.metadata, unit_of(field.annotation))


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


def _sentence(model: type[BaseModel], place: _Place, detail: ErrorDetails) -> Words:
    kind, context = detail["type"], detail.get("ctx", {})
    good: Words = say("; for example {}", place.example) if place.example else ""
    shown = _shown(detail["input"])
    if kind in OWN:
        return detail["msg"]
    if kind == "extra_forbidden":
        return _unknown_key(model, detail)
    if kind in LIMITS:
        key, wrong, words = LIMITS[kind]
        limit = say("{:exact bare}" if place.is_length else "{:g}", context[key])
        return say("{} is too {}: {} {}{}", shown, wrong, words, limit, good)
    if kind in PLAIN:
        return say("{} is not {}{}", shown, PLAIN[kind], good)
    if kind in {"literal_error", "enum", "union_tag_invalid"}:
        return f"{shown} cannot stand here; write {context.get('expected') or context.get('expected_tags')}"
    named = NAMED.get(str(context.get("discriminator")), "one that the schema has")
    if place.path == "construction":
        named = '"kind": "legs"'
    simple = {
        "missing": "this is missing",
        "too_short": "this is empty",
        "string_too_short": "this is empty",
        "string_pattern_mismatch": f"{shown} is not of the form that it has",
        "union_tag_not_found": f"it should say which kind it is, as {named}",
    }
    usual = f"{shown} cannot be used: {detail['msg'][0].lower()}{detail['msg'][1:]}"
    return simple.get(kind, usual) + good


def _unknown_key(model: type[BaseModel], detail: ErrorDetails) -> str:
    """The sentence for a key that the file should not have, with the nearest that it may have."""
    owner = _place(model, detail["loc"][:-1]).model
    known = list(owner.model_fields) if owner else []
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
