"""The woods as a form: the boards, and the shop's own grades, widths and waste."""

from collections.abc import Mapping
from functools import cache
from typing import Any

from casewright.measure.lengths import LengthUnit, write_length
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.web.settings.forms import Draft, FigureReader, in_percent
from casewright.web.settings.lines import read_lines, shown_line
from casewright.web.settings.rate_form import MOST_ROWS, rows_of
from casewright.web.settings.wood_lines import BOARD_LINES
from casewright.wood.grades import GradeName, grades
from casewright.wood.waste import PartUse

BLANK = 2
USES = {
    PartUse.CASE: "case",
    PartUse.DRAWER: "drawer sides and backs",
    PartUse.INSIDE: "inside parts",
    PartUse.SEQUENCE: "fronts in sequence",
    PartUse.LEG: "legs",
}


def grades_bought() -> tuple[GradeName, ...]:
    """The grades that furniture makers buy."""
    return tuple(each.name for each in grades() if each.for_furniture)


def wood_values(spec: ShopSpec, unit: LengthUnit) -> dict[str, str]:
    """The fields of the form, from figures."""
    held = figures_of_spec(spec)
    values = {line.name: shown_line(line, held, unit) for line in BOARD_LINES}
    values["grade"] = spec.grade.value
    for row, (name, grade) in enumerate(sorted(spec.grades.items()), 1):
        values |= {f"grades.{row}.wood": name, f"grades.{row}.grade": grade.value}
    for row, (name, width) in enumerate(sorted(spec.average_board.items()), 1):
        values |= {f"board.{row}.wood": name, f"board.{row}.width": write_length(width, unit)}
    for row, own in enumerate(spec.waste, 1):
        values |= {
            f"waste.{row}.wood": own.wood,
            f"waste.{row}.use": own.use.value if own.use else "",
            f"waste.{row}.grade": own.grade.value if own.grade else "",
            f"waste.{row}.waste": in_percent(own.waste),
        }
    return values


def wood_rows(values: Mapping[str, str], group: str) -> range:
    """The rows of a list to show; a list to choose from is never empty, so the woods count."""
    named = {name: text for name, text in values.items() if name.endswith((".wood", ".width", ".waste"))}
    return rows_of(named, group, BLANK)


@cache
def field_names() -> Mapping[str, str]:
    """What each field is called in a list of faults."""
    lists = {"grades": "Grade", "board": "Average board", "waste": "Waste"}
    return {
        **{line.name: line.label for line in BOARD_LINES},
        **{
            f"{group}.{row}.{column}": f"{words}, row {row}"
            for group, words in lists.items()
            for row in range(1, MOST_ROWS + 1)
            for column in ("wood", "grade", "width", "use", "waste")
        },
    }


def read_woods(read: FigureReader, spec: ShopSpec, unit: LengthUnit) -> Draft:
    """The changes that the form asks for."""
    held, draft = figures_of_spec(spec), Draft()
    read_lines(read, BOARD_LINES, held, unit, draft)
    grade = read.choice("grade", [each.value for each in GradeName])
    if grade != spec.grade.value:
        draft.put("grade", grade)
    _read_grades(read, spec, draft)
    _read_boards(read, spec, unit, draft)
    _read_waste(read, spec, draft)
    return draft


def _rows(read: FigureReader, group: str, column: str) -> list[tuple[int, str]]:
    """The rows of a list that say something, each with its wood."""
    found = []
    for row in wood_rows(read.typed.values(), group):
        filled = read.typed.get(f"{group}.{row}.wood") or read.typed.get(f"{group}.{row}.{column}")
        if filled.strip() and not read.ticked(f"{group}.{row}.out"):
            name = read.wood(f"{group}.{row}.wood", needed="Name the wood, such as cherry; or empty the row.")
            found.append((row, name))
    return found


def _once(read: FigureReader, seen: Mapping[str, Any], field: str, name: str) -> None:
    if name in seen:
        read.fault(field, f"{name} stands here twice; keep the row that holds.")


def _read_grades(read: FigureReader, spec: ShopSpec, draft: Draft) -> None:
    bought: dict[str, str] = {}
    for row, name in _rows(read, "grades", "wood"):
        _once(read, bought, f"grades.{row}.wood", name)
        bought[name] = read.choice(f"grades.{row}.grade", [each.value for each in GradeName])
        draft.fields[f"grades.{name}"] = f"grades.{row}.grade"
    if bought != {name: grade.value for name, grade in spec.grades.items()}:
        draft.spec["grades"] = bought


def _read_boards(read: FigureReader, spec: ShopSpec, unit: LengthUnit, draft: Draft) -> None:
    widths: dict[str, float] = {}
    for row, name in _rows(read, "board", "width"):
        field = f"board.{row}.width"
        _once(read, widths, f"board.{row}.wood", name)
        held = spec.average_board.get(name)
        if held is not None and read.typed.get(field).strip() == write_length(held, unit):
            widths[name] = held
        else:
            widths[name] = read.length(field, unit) or 0.0
        draft.fields[f"average_board.{name}"] = field
    if widths != spec.average_board:
        draft.spec["average_board"] = widths


def _read_waste(read: FigureReader, spec: ShopSpec, draft: Draft) -> None:
    own: list[dict[str, Any]] = []
    for row, name in _rows(read, "waste", "waste"):
        start = f"waste.{row}"
        use = read.choice(f"{start}.use", ["", *(each.value for each in PartUse)], default="")
        grade = read.choice(f"{start}.grade", ["", *(each.value for each in GradeName)], default="")
        waste = read.percent(f"{start}.waste", least=0, most=95, example="20")
        if waste is None:
            read.fault(f"{start}.waste", "Write the waste in per cent of what is bought, such as 20.")
        own.append({"wood": name, "use": use or None, "grade": grade or None, "waste": waste or 0.0})
        draft.fields |= {f"waste[{len(own)}]": f"{start}.wood", f"waste[{len(own)}].waste": f"{start}.waste"}
    if own != [each.model_dump(mode="json") for each in spec.waste]:
        draft.spec["waste"] = own
