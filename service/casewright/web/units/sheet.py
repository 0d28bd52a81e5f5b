"""The form of a unit as its template shows it: fields with echoes, groups with a line that sums them up."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from casewright.measure.lengths import LengthError, LengthUnit, parse_length, show_in
from casewright.measure.saying import written_in
from casewright.measure.units import MILLIMETRES_PER_INCH
from casewright.web.units.case_labels import (
    BY_THE_BOX,
    FRONT_HEIGHT,
    OPENING_HEIGHT,
    heights_are_fronts,
    labelled,
)
from casewright.web.units.counting import counts, is_replaced
from casewright.web.units.fields import Asked, Choices, Group, Kind
from casewright.web.units.follows import FOLLOWS
from casewright.web.units.form import Read, asked_fields, openings_of, unit_in
from casewright.web.units.groups import MORE_GROUPS, RULE_FIELDS, SIZE_FIELDS, WOOD_FIELDS
from casewright.web.units.measured_text import MEASURED, SIDES, entries, least_of, several, spread
from casewright.web.units.row_fields import FINE_FIELDS, FINE_GROUPS
from casewright.web.units.rows import Line, Shape, line_fields, shape_of

WORDS_IN_A_LINE = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldShown:
    """One field as it stands on the page.

    Attributes:
        asked: what the form asks
        value: what is typed
        usual: what holds when it is left empty, as a hint inside the field
        hint: what it is, its sizes in the unit of the form
        example: how it is written, in the unit of the form
        echo: a typed size in other words
        fault: what is wrong with it
        theirs: what somebody else saved meanwhile; None where that is the same
    """

    asked: Asked
    value: str
    usual: str
    hint: str
    example: str
    echo: str
    fault: str
    theirs: str | None

    @property
    def choices(self) -> Choices:
        """What may be chosen, with what is held where the list has it not."""
        known = {value for value, _ in self.asked.choices}
        more = () if self.value in known else ((self.value, self.value or "choose"),)
        return (*more, *self.asked.choices)


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupShown:
    """A group of fields as it stands on the page."""

    group: Group
    fields: tuple[FieldShown, ...]
    now: str
    is_open: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RowShown:
    """One row, or one column that is spelled out.

    Attributes:
        line: the row or column
        fields: its fields
        depth: how many rows and columns it lies within
        is_first: is it the first of its stack?
        is_last: is it the last?
    """

    line: Line
    fields: tuple[FieldShown, ...]
    depth: int
    is_first: bool
    is_last: bool

    @property
    def first(self) -> tuple[FieldShown, ...]:
        """What every row is asked."""
        return tuple(each for each in self.fields if not _is_fine(each))

    @property
    def more(self) -> tuple[FieldShown, ...]:
        """What is left to the rules in most rows: folders, pulls, tails, and a notch around pipes."""
        return tuple(each for each in self.fields if _is_fine(each))

    @property
    def says_more(self) -> bool:
        """Is anything typed there, or wrong?"""
        return any(
            each.fault or each.theirs is not None or each.value not in ("", each.asked.usual)
            for each in self.more
        )


def _is_fine(each: FieldShown) -> bool:
    before, _, last = each.asked.name.rpartition(".")
    return last in FINE_FIELDS or before.rpartition(".")[2] in FINE_GROUPS


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningMeasured:
    """What was measured of one opening.

    Attributes:
        code: of the opening
        fields: its height, width and depth; what was drawn stands in them faintly
    """

    code: str
    fields: tuple[FieldShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitSheet:
    """The whole form.

    Attributes:
        unit: `in` or `mm`
        follows: where the openings were when the form was opened
        size: name, count and size
        rule: how the rows grow
        rows: the rows, from the top
        height: what the column of their heights is called
        woods: the three woods that every unit has
        groups: everything else
        measured: what was measured of each opening
        faults: field, label and sentence of everything that cannot be used
        is_stale: whether somebody else saved meanwhile
    """

    unit: str
    follows: str
    size: tuple[FieldShown, ...]
    rule: tuple[FieldShown, ...]
    rows: tuple[RowShown, ...]
    height: str
    woods: tuple[FieldShown, ...]
    groups: tuple[GroupShown, ...]
    measured: tuple[OpeningMeasured, ...]
    faults: tuple[tuple[str, str, str], ...]
    is_stale: bool = False

    @property
    def fields(self) -> tuple[FieldShown, ...]:
        """Every field of the form."""
        inner = [each for group in self.groups for each in group.fields]
        inner += [each for opening in self.measured for each in opening.fields]
        rows = [each for row in self.rows for each in row.fields]
        return (*self.size, *rows, *self.rule, *self.woods, *inner)

    @property
    def called(self) -> tuple[FieldShown, ...]:
        """The fields whose label follows from other fields, so that it changes while one types."""
        return tuple(each for each in self.fields if each.asked.name in BY_THE_BOX)

    @property
    def heights(self) -> tuple[FieldShown, ...]:
        """The heights of the rows; their label follows from other fields, too."""
        return tuple(each for row in self.rows for each in row.first if each.asked.name.endswith(".height"))


Drawn = Mapping[str, Mapping[str, str]]
"""Of each opening by its code: each of its sizes as it was drawn, written out."""


def sheet_of(
    typed: Read,
    theirs: Mapping[str, str] | None = None,
    lists: Mapping[str, Choices] | None = None,
    drawn: Drawn | None = None,
) -> UnitSheet:
    """The form with what was typed into it.

    Args:
        typed: what was typed, and what is wrong with it
        theirs: what somebody else saved meanwhile, field by field
        lists: what may be chosen in a field whose list is the shop's own, by the field's name
        drawn: what the openings measure by the drawing
    """
    openings = openings_of(typed.values)
    read = replace(typed, values=spread(typed.values, openings))
    other, listed = theirs or {}, lists or {}

    def shown(fields: Iterable[Asked]) -> tuple[FieldShown, ...]:
        called = (labelled(_listed(each, listed), read.values) for each in fields)
        return tuple(_field(each, read, other) for each in called)

    known = (labelled(each, read.values) for each in asked_fields(shape_of(read.values)))
    names = {each.name: each.label for each in known}
    measured = tuple(_opening(code, read, (drawn or {}).get(code, {})) for code in openings)
    return UnitSheet(
        unit=unit_in(read.values).value,
        follows=read.values.get(FOLLOWS, ""),
        size=shown(SIZE_FIELDS),
        rule=shown(RULE_FIELDS),
        rows=tuple(_rows(shape_of(read.values), shown)),
        height=FRONT_HEIGHT if heights_are_fronts(read.values) else OPENING_HEIGHT,
        woods=shown(WOOD_FIELDS),
        groups=tuple(
            _measured(each, shown(each.fields), measured, typed)
            if each.key == MEASURED
            else _group(each, read, other, shown(each.fields))
            for each in MORE_GROUPS
        ),
        measured=measured,
        faults=tuple(
            (name.replace(".", "-"), names.get(name) or _of_opening(name), sentence)
            for name, sentence in read.faults.items()
        ),
        is_stale=theirs is not None,
    )


def _opening(code: str, read: Read, drawn: Mapping[str, str]) -> OpeningMeasured:
    fields = []
    for side in SIDES:
        name = f"{MEASURED}.{code}.{side}"
        value = read.values.get(name, "")
        fields.append(
            FieldShown(
                asked=Asked(name=name, label=_of_opening(name), kind=Kind.SIZE),
                value=value,
                usual=drawn.get(side, ""),
                hint="",
                example="",
                echo=_measured_echo(value, read.unit),
                fault=read.faults.get(name, ""),
                theirs=None,
            )
        )
    return OpeningMeasured(code=code, fields=tuple(fields))


def _of_opening(name: str) -> str:
    """What the field of an opening's size is called: `R5-1 height`."""
    return name.removeprefix(f"{MEASURED}.").replace(".", " ") if name.startswith(f"{MEASURED}.") else ""


def _measured_echo(text: str, unit: LengthUnit) -> str:
    """A measured size in other words; of several, that the least counts."""
    count = len(several(text, unit))
    said = echo(least_of(text, unit), unit)
    return f"the least of {count}: {said}" if said and count > 1 else said


def _measured(
    group: Group, fields: tuple[FieldShown, ...], openings: Iterable[OpeningMeasured], typed: Read
) -> GroupShown:
    """The group of measured sizes, with how many there are in its line."""
    count = len({(each.code, each.name) for each in entries(typed.values.get(MEASURED, ""))})
    now = f"{count} size{'' if count == 1 else 's'}" if count else "Nothing"
    every = (*fields, *(each for opening in openings for each in opening.fields))
    is_open = any(each.fault or each.theirs is not None for each in every)
    return GroupShown(group=group, fields=fields, now=now, is_open=is_open)


def _rows(
    lines: Shape, shown: Callable[[Iterable[Asked]], tuple[FieldShown, ...]], depth: int = 0
) -> Iterator[RowShown]:
    """Every row and spelled-out column, each before what lies within it."""
    for place, line in enumerate(lines, 1):
        yield RowShown(
            line=line,
            fields=shown(line_fields(line)),
            depth=depth,
            is_first=place == 1,
            is_last=place == len(lines),
        )
        yield from _rows(line.inner, shown, depth + 1)


def _listed(asked: Asked, lists: Mapping[str, Choices]) -> Asked:
    """A field that takes a name of one of the shop's tables, as a list of what stands there."""
    found = lists.get(asked.name)
    return replace(asked, kind=Kind.CHOICE, choices=found, hint="") if found else asked


def _field(asked: Asked, read: Read, theirs: Mapping[str, str]) -> FieldShown:
    value, unit = read.values.get(asked.name, ""), unit_in(read.values)
    if asked.kind is Kind.CHOICE and not value and asked.usual is not None:
        value = str(asked.usual) if any(asked.usual == each for each, _ in asked.choices) else ""
    return FieldShown(
        asked=asked,
        value=value,
        usual="" if is_replaced(asked, read.values) else asked.usual_text(unit),
        hint=written_in(asked.hint, unit),
        example=_example(asked, unit),
        echo=echo(value, unit) if asked.kind is Kind.SIZE else "",
        fault=read.faults.get(asked.name, ""),
        theirs=theirs.get(asked.name),
    )


def _example(asked: Asked, unit: LengthUnit) -> str:
    """How a size is written here: whole fives of millimetres in a metric form."""
    if asked.kind is Kind.LINES:
        return written_in(asked.example, unit).removesuffix(f" {unit.value}")
    example = asked.example if asked.kind is Kind.SIZE else ""
    if not example or unit is LengthUnit.INCH:
        return example
    return str(round(float(parse_length(example)) * MILLIMETRES_PER_INCH / 5) * 5)


def echo(text: str, unit: LengthUnit) -> str:
    """A typed size in other words: `1' 3-5/8" = 15-5/8 in = 396.9 mm`; nothing for what is no size.

    What is rounded comes last, with one sign: `1384 mm ≈ 54-31/64 in`.
    """
    try:
        size = float(parse_length(text, unit)) if text.strip() else None
    except LengthError:
        return ""
    if size is None:
        return ""
    inches, metric = show_in(size, LengthUnit.INCH), show_in(size, LengthUnit.MILLIMETRE).removeprefix("≈")
    own, other = (inches, metric) if unit is LengthUnit.INCH else (metric, inches)
    typed = " ".join(text.split())
    said = [] if typed in {*_written(own), *(each.rpartition(" ")[0] for each in _written(own))} else [typed]
    shown = [each for each in (inches, metric) if each is own or typed not in _written(other)]
    whole = [each for each in shown if not each.startswith("≈")]
    rounded = [f" ≈ {each.removeprefix('≈')}" for each in shown if each.startswith("≈")]
    return " = ".join((*said, *whole)) + "".join(rounded)


def _written(size: str) -> set[str]:
    """The ways in which somebody would have typed a size just so: 1384.0 mm and 1384 mm."""
    return {size, size.replace(".0 ", " ")}


def _group(group: Group, read: Read, theirs: Mapping[str, str], fields: tuple[FieldShown, ...]) -> GroupShown:
    is_open = any(each.fault or each.theirs is not None for each in fields)
    return GroupShown(group=group, fields=fields, now=summed_up(fields, read.values), is_open=is_open)


def summed_up(fields: Iterable[FieldShown], values: Mapping[str, str]) -> str:
    """A group in one line: what was chosen, and the usual value of what matters most."""
    said = []
    for each in fields:
        if not counts(each.asked, values) or is_replaced(each.asked, values):
            continue
        words = _words(each)
        if words:
            said.append(words)
    if len(said) > WORDS_IN_A_LINE:
        said = [*said[:WORDS_IN_A_LINE], f"and {len(said) - WORDS_IN_A_LINE} more"]
    line = "; ".join(said) or "as usual"
    return f"{line[:1].upper()}{line[1:]}"


def _words(each: FieldShown) -> str:
    asked, value = each.asked, each.value.strip()
    label = "" if asked.bare else f"{asked.label[:1].lower()}{asked.label[1:]} "
    if asked.kind is Kind.TICK:
        is_usual = bool(value) == asked.usual
        if is_usual and not asked.lead:
            return ""
        return label.strip() if value else asked.unticked
    if asked.kind is Kind.LINES:
        return _lines(asked, len([line for line in value.splitlines() if line.strip()]))
    if asked.kind is Kind.CHOICE:
        word = dict(asked.choices).get(value, value).removesuffix(" (usual)")
        is_usual = value == (str(asked.usual) if asked.usual is not None else "")
        return "" if is_usual and not (asked.lead and value) else f"{label}{word}"
    if not value and not asked.lead:
        return ""
    return _said(label, value or each.usual)


def _said(label: str, figure: str) -> str:
    """A figure behind what it is, its percent sign behind it."""
    if not figure:
        return ""
    return f"{label.removesuffix('% ')}{figure} %" if label.endswith(" % ") else f"{label}{figure}"


def _lines(asked: Asked, count: int) -> str:
    """What was typed line by line, in a few words."""
    if asked.name == "season.months":
        return "the home month by month" if count else ""
    return f"{count} other wish{'' if count == 1 else 'es'}" if count else ""
