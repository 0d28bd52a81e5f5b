"""A JSON file that somebody wrote: read into a model, with a sentence for whatever cannot be used."""

import json
import math
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from casewright.measure.fields import Spec
from casewright.measure.lengths import LengthUnit
from casewright.measure.sentences import NO_CHOICES, Choices, Problem, problem

LARGEST_FILE = 1_000_000
"""Characters; a unit file of forty rows and a cut file of a thousand parts are far below it."""
MOST_DIGITS = 12
LONGEST_NUMBER = 40

Read = TypeVar("Read", bound=Spec)


@dataclass(frozen=True, slots=True, kw_only=True)
class FileKind:
    """What a file is called in a sentence about it, and how one begins.

    Attributes:
        name: such as `unit file`
        start: its first signs
    """

    name: str
    start: str


@dataclass(frozen=True, slots=True)
class _Refused(Exception):
    """Raised inside the JSON reader for what the standard allows and a size cannot be."""

    problem: Problem


class CannotRead(ValueError):
    """A file that cannot be used, with every problem that was found in it."""

    def __init__(self, *problems: Problem) -> None:
        self.problems = problems
        super().__init__(str(problems[0]))


def parse_json(text: str, kind: FileKind) -> Any:
    """What a JSON file holds.

    Args:
        text: the text of the file
        kind: what it should be

    Returns:
        Whatever the JSON says.

    Raises:
        CannotRead: it is not JSON, it says one key twice, or it is too large

    Source: RFC 8259.
    """
    if len(text) > LARGEST_FILE:
        raise CannotRead(
            Problem("", f"the file is larger than {LARGEST_FILE:,} characters; a {kind.name} is small")
        )
    try:
        return json.loads(
            text.removeprefix("\ufeff"),
            object_pairs_hook=_without_repeats,
            parse_constant=_no_constant,
            parse_int=_whole_number,
            parse_float=_number,
        )
    except json.JSONDecodeError as error:
        message = (
            f"this is not JSON: {error.msg[0].lower()}{error.msg[1:]} at line {error.lineno}, "
            f"column {error.colno}; a {kind.name} looks like {kind.start}"
        )
        raise CannotRead(Problem("", message)) from None
    except RecursionError:
        raise CannotRead(TOO_DEEP) from None
    except _Refused as refused:
        raise CannotRead(refused.problem) from None


TOO_DEEP = Problem("", "the file is nested too deeply; one that is right has a few levels")


def _without_repeats(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise _Refused(Problem(key[:60], "this key stands there twice; keep the one that is meant"))
        found[key] = value
    return found


def _no_constant(name: str) -> Any:
    raise _Refused(Problem("", f"{name} is not a number that a size can have; write one such as 15.625"))


def _whole_number(digits: str) -> int:
    if len(digits) > MOST_DIGITS:
        raise _Refused(Problem("", f"{digits[:12]}… has {len(digits)} digits; write a number such as 15"))
    return int(digits)


def _number(digits: str) -> float:
    value = float(digits) if len(digits) <= LONGEST_NUMBER else math.inf
    if not math.isfinite(value):
        raise _Refused(
            Problem("", f"{digits[:20]} is not a number that a size can have; write one such as 15.625")
        )
    return value


def read_as(model: type[Read], data: Any, choices: Choices = NO_CHOICES, start: str = "{…}") -> Read:
    """Data from a file as a model, with a sentence for whatever does not fit.

    Args:
        model: the model that the data should fit
        data: what the file held
        choices: what words in the file choose
        start: how such a file begins

    Returns:
        The model.

    Raises:
        CannotRead: with a sentence for each field that cannot be used

    Source: the schema of the model.
    """
    if not isinstance(data, dict):
        raise CannotRead(Problem("", f"the file should hold one object, such as {start}"))
    unit = LengthUnit.MILLIMETRE if data.get("unit") == LengthUnit.MILLIMETRE else LengthUnit.INCH
    try:
        return model.model_validate(data, context={"unit": unit})
    except ValidationError as error:
        details = _without_echoes(error.errors(include_url=False))
        raise CannotRead(
            *dict.fromkeys(problem(model, detail, unit, choices) for detail in details)
        ) from None
    except RecursionError:
        raise CannotRead(TOO_DEEP) from None


def _without_echoes(details: list[ErrorDetails]) -> list[ErrorDetails]:
    """The errors without those that call a list too short only because what stands in it is wrong."""
    places = [detail["loc"] for detail in details]
    return [
        detail
        for detail in details
        if detail["type"] != "too_short"
        or not any(len(place) > len(loc := detail["loc"]) and place[: len(loc)] == loc for place in places)
    ]
