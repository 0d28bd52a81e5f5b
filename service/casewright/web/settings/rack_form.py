"""The rack as a form: chisels, cutters, saws line by line, gauges, dividers, and the shop's usual numbers."""

from collections.abc import Mapping
from functools import cache, partial
from typing import Any

from casewright.joinery.saws import SawUse
from casewright.measure.lengths import LengthUnit, write_length
from casewright.pieces.asked.rack_spec import MOST_KEPT, OwnSaw
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.web.settings.forms import Draft, FigureReader
from casewright.web.settings.rack_lines import HABITS, Habit, Typing
from casewright.web.settings.rate_form import MOST_ROWS, rows_of

BLANK = 2
WIDTHS = {"chisel": "chisels", "cutter": "cutters"}
"""The lists of plain widths, each with its name in a shop file."""
COUNTS = ("gauges", "dividers")
USES = {SawUse.DOVETAIL: "tails", SawUse.FRET: "thin gaps"}
NO_WIDTH = "Write its width, such as 1/4; or take the line out."


def rack_values(spec: ShopSpec, unit: LengthUnit) -> dict[str, str]:
    """The fields of the form, from figures."""
    rack = figures_of_spec(spec).rack
    values: dict[str, str] = {name: str(getattr(rack, name)) for name in COUNTS}
    for group, name in WIDTHS.items():
        for row, width in enumerate(getattr(rack, name), 1):
            values[f"{group}.{row}.width"] = write_length(width, unit)
    for row, saw in enumerate(rack.saws, 1):
        values |= {
            f"saw.{row}.name": saw.name,
            f"saw.{row}.use": saw.use.value,
            f"saw.{row}.kerf": write_length(saw.kerf, unit),
        }
    for habit in HABITS:
        own = habit.own(spec)
        values[habit.name] = "" if own is None else habit.shown(own, unit)
    return values


def rack_rows(values: Mapping[str, str], group: str, blank: int = BLANK) -> range:
    """The lines of a list to show; what a saw is for is never empty and does not count."""
    return rows_of({name: text for name, text in values.items() if not name.endswith(".use")}, group, blank)


@cache
def field_names() -> Mapping[str, str]:
    """What each field is called in a list of faults."""
    rows = range(1, MOST_ROWS + 1)
    return {
        "gauges": "Marking gauges",
        "dividers": "Pairs of dividers",
        **{f"{group}.{row}.width": f"{group.capitalize()} {row}" for group in WIDTHS for row in rows},
        **{f"saw.{row}.{column}": f"Saw {row}" for row in rows for column in ("name", "use", "kerf")},
        **{habit.name: habit.label for habit in HABITS},
    }


def read_rack(read: FigureReader, spec: ShopSpec, unit: LengthUnit) -> Draft:
    """The changes that the form asks for."""
    draft = Draft()
    for group, name in WIDTHS.items():
        _read_widths(read, spec, unit, draft, group, name)
    _read_saws(read, spec, unit, draft)
    for name in COUNTS:
        _read_count(read, spec, draft, name)
    for group in ("usual", "looks"):
        _read_habits(read, spec, unit, draft, group)
    return draft


def _held_or_read(
    read: FigureReader, field: str, unit: LengthUnit, held: Mapping[str, float], needed: str
) -> float:
    """A width as it is kept where its text is unchanged, so that nothing is rounded by being shown."""
    typed = read.typed.get(field).strip()
    if not typed:
        read.fault(field, needed)
    if typed in held:
        return held[typed]
    return read.length(field, unit) or 0.0


def _read_widths(
    read: FigureReader, spec: ShopSpec, unit: LengthUnit, draft: Draft, group: str, name: str
) -> None:
    owned: tuple[float, ...] = getattr(figures_of_spec(spec).rack, name)
    held = {write_length(width, unit): width for width in owned}
    widths: dict[float, str] = {}
    for row in rack_rows(read.typed.values(), group, 0):
        field = f"{group}.{row}.width"
        if read.ticked(f"{group}.{row}.out") or not read.typed.get(field).strip():
            continue
        width = _held_or_read(read, field, unit, held, NO_WIDTH)
        if width in widths and field not in read.faults:
            read.fault(field, f"This {group} stands here twice; take one of the lines out.")
        widths[width] = field
    kept = sorted(widths)
    draft.fields |= {f"{name}[{place}]": widths[width] for place, width in enumerate(kept, 1)}
    draft.fields[name] = f"{group}.1.width"
    if tuple(kept) != owned:
        draft.spec[name] = kept or None


def _read_saws(read: FigureReader, spec: ShopSpec, unit: LengthUnit, draft: Draft) -> None:
    owned = figures_of_spec(spec).rack.saws
    held = {write_length(saw.kerf, unit): saw.kerf for saw in owned}
    saws: list[dict[str, Any]] = []
    for row in rack_rows(read.typed.values(), "saw", 0):
        start = f"saw.{row}"
        name_field, field = f"{start}.name", f"{start}.kerf"
        name = read.line(name_field, most=60)
        if read.ticked(f"{start}.out") or not (name or read.typed.get(field).strip()):
            continue
        if not name:
            read.fault(name_field, "Say what you call this saw, such as dovetail saw.")
        use = read.choice(f"{start}.use", [each.value for each in SawUse])
        kerf = _held_or_read(read, field, unit, held, "Write how wide it cuts, such as 1/32 or 0.6 mm.")
        saws.append({"name": name, "use": use, "kerf": kerf})
        place = f"saws[{len(saws)}]"
        draft.fields |= {place: name_field, f"{place}.kerf": field, f"{place}.use": f"{start}.use"}
    draft.fields["saws"] = "saw.1.name"
    if not saws:
        draft.spec |= {"saws": None, "saw_kerf": None} if spec.saws or spec.saw_kerf else {}
        return
    if all(saw["use"] != SawUse.DOVETAIL.value for saw in saws):
        read.fault(
            "saw.1.use", "One saw at least is for cutting tails; or empty the list for the usual ones."
        )
    if saws != [OwnSaw(name=saw.name, use=saw.use, kerf=saw.kerf).model_dump() for saw in owned]:
        draft.spec |= {"saws": saws, "saw_kerf": None}


def _read_count(read: FigureReader, spec: ShopSpec, draft: Draft, name: str) -> None:
    held = getattr(figures_of_spec(spec).rack, name)
    typed = read.typed.get(name).strip()
    if typed != str(held):
        draft.put(name, read.whole(name, least=1, most=MOST_KEPT) if typed else None)


def _read_habits(read: FigureReader, spec: ShopSpec, unit: LengthUnit, draft: Draft, group: str) -> None:
    own: dict[str, float] = {}
    for habit in HABITS:
        if habit.group == group:
            value = _read_habit(read, habit, spec, unit)
            if value is not None:
                own[habit.key] = value
            draft.fields[f"{group}.{habit.key}"] = habit.name
    held = getattr(spec, group)
    if own != (held.model_dump(exclude_none=True) if held else {}):
        draft.spec[group] = own or None


def _read_habit(read: FigureReader, habit: Habit, spec: ShopSpec, unit: LengthUnit) -> float | None:
    typed, held = read.typed.get(habit.name).strip(), habit.own(spec)
    if held is not None and typed == habit.shown(held, unit):
        return held
    if habit.kind is Typing.LENGTH:
        return read.length(habit.name, unit, needed=False)
    if habit.kind is Typing.SLOPE:
        return _slope(read, habit.name)
    number = (
        read.percent
        if habit.kind is Typing.PERCENT
        else partial(read.optional, unit=f" {habit.unit}".rstrip())
    )
    example = habit.shown(habit.house.value, unit)
    return number(habit.name, least=habit.least, most=habit.most, example=example)


def _slope(read: FigureReader, name: str) -> float | None:
    """A slope of 1:8, typed so or as 8."""
    typed = read.typed.get(name).replace(" ", "")
    if not typed:
        return None
    try:
        slope = float(typed.removeprefix("1:").replace(",", "."))
    except ValueError:
        slope = 0.0
    if not 1 < slope <= 20:
        read.fault(name, f"“{typed[:24]}” is not a slope. Write it as 1:8, from 1:1.1 to 1:20.")
    return slope
