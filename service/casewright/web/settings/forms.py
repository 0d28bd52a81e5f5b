"""Forms over the shop's figures: two who save at once, what a text means, and faults beside their fields."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from casewright.measure.shares import share_of_percent
from casewright.pieces.asked.reading import CannotRead, read_as
from casewright.pieces.asked.sentences import Problem
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.shop.figures import save_figures
from casewright.shop.own_figures import held_figures, spec_of
from casewright.web.frame.pages import form_of
from casewright.web.frame.typed import Form, Reader, Typed
from casewright.web.frame.visits import Visit
from casewright.wood.species import UnknownWood, wood

WHOLE_PAGE = "figures"
"""The id of every form of figures: where a fault without a field of its own leads to."""
IN_A_FILE = re.compile(r'(?<=for example )"([^"]*)"')
"""A size as a file quotes it; in a field it stands without."""
ROW = re.compile(r"^(\w+)\.\d+\.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """A form after it met what somebody else saved meanwhile.

    Attributes:
        typed: the fields, with theirs wherever only they changed something
        theirs: what they saved in fields that both changed
    """

    typed: Typed
    theirs: Mapping[str, str]


def meet(typed: Typed, base: Mapping[str, str], now: Mapping[str, str]) -> Met:
    """Lays a form over what has been saved since it was shown.

    Args:
        typed: the form as it was sent
        base: its fields as they were shown
        now: its fields as they would be shown now
    """
    sent = typed.values()
    other = {_group(name) for name in {*base, *now} if base.get(name, "") != now.get(name, "")}
    mine = {_group(name) for name, text in sent.items() if _differs(text, base.get(name, ""))}
    shown = [name for name in sent if name in base or name in now]
    values = sent | {
        name: now.get(name, "") for name in shown if _group(name) in other and _group(name) not in mine
    }
    both = other & mine
    theirs = {
        name: now.get(name, "")
        for name in sent
        if _group(name) in both and _differs(sent[name], now.get(name, ""))
    }
    return Met(typed=Typed(tuple(values.items())), theirs=theirs)


def _group(name: str) -> str:
    """The rows of a list count as one: a row may have another place by now."""
    row = ROW.match(name)
    return row[1] if row else name


def _differs(one: str, other: str) -> bool:
    return one.strip() != other.strip()


@dataclass(slots=True)
class Draft:
    """New figures on their way, and from which field each part of them came.

    Attributes:
        spec: what is to be set; None sets a figure back to the usual one
        fields: the field of the form by the path in the shop file
    """

    spec: dict[str, Any] = field(default_factory=dict)
    fields: dict[str, str] = field(default_factory=dict)

    def put(self, path: str, value: Any, name: str = "") -> None:
        """Sets a figure that came from a field."""
        self.spec[path] = value
        self.fields[path] = name or path

    def field_of(self, problem: Problem) -> str:
        """The field of the form that a problem belongs to."""
        path = problem.field
        while path and path not in self.fields:
            # A name that somebody typed stands in a path, too, with whatever dots and brackets it has.
            path = path[: max(path.rfind("."), path.rfind("["), 0)]
        return self.fields.get(path, WHOLE_PAGE)


class FigureReader(Reader):
    """Reads figures: an empty field means the usual one."""

    def percent(self, name: str, *, least: float, most: float, example: str) -> float | None:
        """A share of one, typed in per cent."""
        value = self.optional(name, least=least, most=most, example=example, unit=" %")
        return None if value is None else share_of_percent(value)

    def optional(self, name: str, *, least: float, most: float, example: str, unit: str = "") -> float | None:
        """A number, or nothing."""
        if not self.typed.get(name).strip():
            return None
        return self.number(name, least=least, most=most, example=example, unit=unit)

    def wood(self, name: str, *, needed: str = "") -> str:
        """A wood of the species table, under the name by which the program asks for it."""
        typed = self.line(name, most=80, needed=needed)
        try:
            return wood(typed).name if typed else ""
        except UnknownWood as error:
            self.fault(name, str(error))
            return typed

    def amount(self, name: str) -> str | None:
        """An amount of money as a shop file holds it, or nothing."""
        if not self.typed.get(name).strip():
            return None
        cents = self.money(name)
        return f"{cents // 100}.{cents % 100:02d}"


def in_percent(share: float | None) -> str:
    """A share of one as it stands in a field."""
    return "" if share is None else f"{share * 100:.6f}".rstrip("0").rstrip(".")


def in_money(cents: float | None) -> str:
    """An amount as it stands in a field."""
    return "" if cents is None else f"{int(cents) // 100}.{int(cents) % 100:02d}"


def plain_number(value: float | None) -> str:
    """A number as it stands in a field."""
    return "" if value is None else f"{value:.6f}".rstrip("0").rstrip(".")


def mark_of(*parts: str) -> str:
    """Names as the end of a field's name; no two give the same."""
    return "_".join("".join(_sign(each) for each in part) for part in parts)


def _sign(each: str) -> str:
    if each.isascii() and each.isalnum():
        return each
    return "-" if each == " " else f"~{ord(each):x}~"


Shows = Callable[[ShopSpec], dict[str, str]]
Reads = Callable[[FigureReader, ShopSpec], Draft]


def fresh(visit: Visit, shows: Shows) -> tuple[ShopSpec, Form]:
    """The figures that hold, and a form that shows them."""
    spec = spec_of(held_figures(visit.db, visit.shop))
    return spec, form_of(**shows(spec), revision=str(visit.shop.figures))


def save(visit: Visit, shows: Shows, reads: Reads) -> tuple[Form, int] | None:
    """Saves a form of figures as one new revision.

    Args:
        visit: the visit, whose form names the revision that it was shown from
        shows: the fields of the form, from figures
        reads: the changes that a form asks for

    Returns:
        None when it is saved; else the form to be shown again, and the status.
    """
    held = held_figures(visit.db, visit.shop)
    met = _met(visit, shows(spec_of(held)), shows)
    revision = str(visit.shop.figures)
    if met.theirs:
        return Form(values={**met.typed.values(), "revision": revision}, theirs=met.theirs), 409
    read = FigureReader(met.typed)
    draft = reads(read, spec_of(held))
    if not read.faults:
        try:
            save_figures(visit.db, visit.shop, merged(held, draft), visit.shop.figures, visit.who, visit.now)
        except CannotRead as error:
            note_problems(read, draft, error.problems)
    else:
        _note_the_rest(read, draft, held)
    if read.faults:
        return Form(values={**met.typed.values(), "revision": revision}, faults=read.faults), 422
    return None


def _met(visit: Visit, now: Mapping[str, str], shows: Shows) -> Met:
    read = Reader(visit.typed)
    started = read.whole("revision", least=1, most=visit.shop.figures, default=visit.shop.figures)
    if started == visit.shop.figures:
        return Met(typed=visit.typed, theirs={})
    return meet(visit.typed, shows(spec_of(held_figures(visit.db, visit.shop, started))), now)


def merged(held: Mapping[str, Any], draft: Draft) -> dict[str, Any]:
    """The figures with what a draft sets; what it sets to None goes back to the usual."""
    both = {**held, **draft.spec}
    return {name: value for name, value in both.items() if value is not None}


def _note_the_rest(read: Reader, draft: Draft, held: Mapping[str, Any]) -> None:
    """Beside the faults of what was typed, those of the figures: all that is wrong is said at once.

    Of a field that has a fault no more is said, nor of the figures as a whole, which lack it.
    """
    try:
        read_as(ShopSpec, merged(held, draft))
    except CannotRead as error:
        here = [each for each in error.problems if draft.field_of(each) not in {WHOLE_PAGE, *read.faults}]
        note_problems(read, draft, here)


def note_problems(read: Reader, draft: Draft, problems: Iterable[Problem]) -> None:
    """Puts every problem of the figures beside the field that it came from."""
    for problem in problems:
        name = draft.field_of(problem)
        where = f"{problem.field}: " if name == WHOLE_PAGE and problem.field else ""
        read.fault(name, where + sentence(IN_A_FILE.sub(r"\1", problem.message)))


def sentence(text: str) -> str:
    """A message of the core as a whole sentence."""
    ended = text if text.endswith((".", "?", "!")) else f"{text}."
    return ended[:1].upper() + ended[1:]
