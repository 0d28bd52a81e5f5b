"""What was changed in a unit's form since it was opened: kept in the form itself, step by step, to be undone.

It needs no script and no row in the books, goes with what is typed through a reload or a lost sign-in, and
ends when the unit is saved: from then on its revisions are the history.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

NOT_CHANGES = frozenset(
    {
        "do",
        "once",
        "was",
        "past",
        "ahead",
        "step",
        "version",
        "note",
        "at",
        "into",
        "to",
        "view",
        "show",
        "remark",
    }
)
"""Fields that steer the form, and say nothing of what is built."""
MOST_STEPS = 200
MOST_SIGNS = 60_000
"""How much the steps may hold together: the oldest are forgotten first."""

ROWS = "rows."
"""What the fields of rows begin with: such a row is there even where nothing is typed into it."""

TICKS = (".knee",)
"""How the names of boxes in rows end: one that is not ticked is not sent at all."""

Values = dict[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One change.

    Attributes:
        fields: what stood in the changed fields before it, by their names; None where there was no such field
        of: the mark of the typing that made it; empty for a change made at one stroke
    """

    fields: Mapping[str, str | None]
    of: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """The steps of a form.

    Attributes:
        was: what stood in the form after the last step; empty fields are left out, but those of rows
        past: steps that can be undone, the latest last
        ahead: steps that can be made again, the next one last
    """

    was: Values
    past: tuple[Step, ...] = ()
    ahead: tuple[Step, ...] = ()

    @property
    def was_text(self) -> str:
        """The last state, for the form to carry."""
        return _text(self.was)

    @property
    def past_text(self) -> str:
        """The steps behind, for the form to carry."""
        return _text([[each.of, each.fields] for each in self.past])

    @property
    def ahead_text(self) -> str:
        """The steps ahead, for the form to carry."""
        return _text([[each.of, each.fields] for each in self.ahead])


def _text(held: Any) -> str:
    return json.dumps(held, ensure_ascii=False, separators=(",", ":"))


def begun(values: Mapping[str, str]) -> History:
    """The history of a form that was just opened."""
    return History(was=_filled(values))


def read_history(typed: Mapping[str, str], values: Mapping[str, str]) -> History:
    """The history that a form carries; one that begins now where it carries none that can be read.

    Args:
        typed: every field that was sent
        values: what stood in the form when it was opened
    """
    was = _read(typed.get("was", ""), dict)
    if not _is_values(was):
        return begun(values)
    return History(was=was, past=_steps(typed.get("past", "")), ahead=_steps(typed.get("ahead", "")))


def _read(text: str, kind: type) -> Any:
    try:
        held = json.loads(text) if len(text) <= 2 * MOST_SIGNS else None
    except (ValueError, RecursionError):
        return None
    return held if isinstance(held, kind) else None


def _is_values(held: Any, *, gaps: bool = False) -> bool:
    return isinstance(held, dict) and all(
        isinstance(each, str) or (gaps and each is None) for each in held.values()
    )


def _steps(text: str) -> tuple[Step, ...]:
    held = _read(text, list) or []
    pairs = [each for each in held if isinstance(each, list) and len(each) == 2]
    pairs = [each for each in pairs if _is_values(each[1], gaps=True)]
    return tuple(Step(of=str(of), fields=fields) for of, fields in pairs[-MOST_STEPS:])


def _filled(values: Mapping[str, str]) -> Values:
    return {
        name: text
        for name, text in values.items()
        if (text or (name.startswith(ROWS) and not name.endswith(TICKS))) and name not in NOT_CHANGES
    }


def stepped(history: History, values: Mapping[str, str], of: str = "") -> History:
    """The history with one step more, where anything changed since the last.

    Args:
        history: the history before
        values: what stands in the form now
        of: the mark of the typing: what one goes on typing into one field is one step
    """
    now = _filled(values)
    fields = _between(history.was, now)
    if not fields:
        return history
    last = history.past[-1] if history.past else None
    if last and of and last.of == of and last.fields.keys() == fields.keys():
        return History(was=now, past=history.past)
    return History(was=now, past=_kept((*history.past, Step(fields=fields, of=of))))


def _between(was: Values, now: Values) -> dict[str, str | None]:
    """What has to be written back into the fields that differ."""
    return {name: was.get(name) for name in {**was, **now} if was.get(name) != now.get(name)}


def _kept(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    room, kept = MOST_SIGNS, 0
    for each in reversed(steps[-MOST_STEPS:]):
        room -= len(each.of) + sum(len(name) + len(text or "") + 6 for name, text in each.fields.items()) + 8
        if room < 0:
            break
        kept += 1
    return steps[len(steps) - kept :]


def undone(history: History) -> History:
    """The form one step back; as it is where nothing was changed."""
    if not history.past:
        return history
    was, again = _taken(history.was, history.past[-1])
    return History(was=was, past=history.past[:-1], ahead=_kept((*history.ahead, again)))


def redone(history: History) -> History:
    """The form one step forward; as it is where nothing was undone."""
    if not history.ahead:
        return history
    was, back = _taken(history.was, history.ahead[-1])
    return History(was=was, past=_kept((*history.past, back)), ahead=history.ahead[:-1])


def _taken(was: Values, step: Step) -> tuple[Values, Step]:
    """A form after a step, and the step that leads back."""
    back = {name: was.get(name) for name in step.fields}
    made = {name: text for name, text in {**was, **step.fields}.items() if text is not None}
    return made, Step(fields=back, of=step.of)
