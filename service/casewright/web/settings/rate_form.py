"""The form of the rate: its rows of costs and stages, and what is read from them."""

import re
from collections.abc import Mapping, Sequence
from functools import cache

from casewright.measure.fields import write_money
from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pricing.rate import YearlyCost, example_year
from casewright.pricing.risk import RiskLevel
from casewright.pricing.stages import Stage, stage_plan, stage_plans
from casewright.web.frame.typed import read_money
from casewright.web.settings.forms import Draft, FigureReader, in_money, in_percent, plain_number
from casewright.web.settings.lines import OWN, Ground, read_lines, shown_line
from casewright.web.settings.rate_lines import ALL_LINES

BLANK_COSTS = 3
BLANK_STAGES = 2
MOST_ROWS = 60
RATIO = re.compile(r"\d{1,2}([.,]\d{1,6})?", re.ASCII)


def rate_values(spec: ShopSpec) -> dict[str, str]:
    """The fields of the form, from figures."""
    held = figures_of_spec(spec)
    values = {line.name: shown_line(line, held, LengthUnit.INCH) for line in ALL_LINES}
    for row, cost in enumerate(_largest_first(held), 1):
        values |= {f"cost.{row}.name": cost.name, f"cost.{row}.amount": in_money(cost.amount)}
    for row, stage in enumerate(held.stages.stages, 1):
        values |= {f"stage.{row}.trigger": stage.trigger, f"stage.{row}.share": in_percent(stage.share)}
    ratios = ", ".join(plain_number(ratio) for ratio in spec.ratios)
    return values | {"risk": spec.risk.value, "ratios": ratios, "plan": ""}


def _largest_first(held: Figures) -> list[YearlyCost]:
    return sorted(held.year.costs, key=lambda cost: (-cost.amount, cost.name))


def rows_of(values: Mapping[str, str], group: str, blank: int) -> range:
    """The rows of a list to show: those that are filled, and some empty ones behind them."""
    filled = [
        int(name.split(".")[1])
        for name, text in values.items()
        if re.fullmatch(rf"{group}\.\d{{1,3}}\.\w+", name) and text.strip()
    ]
    return range(1, min(max(filled, default=0) + blank, MOST_ROWS) + 1)


def read_rate(read: FigureReader, spec: ShopSpec) -> Draft:
    """The changes that the form asks for."""
    held, draft = figures_of_spec(spec), Draft()
    read_lines(read, ALL_LINES, held, LengthUnit.INCH, draft)
    _read_costs(read, held, draft)
    _read_stages(read, held, draft)
    _read_ratios(read, spec, draft)
    risk = read.choice("risk", [level.value for level in RiskLevel])
    if risk != spec.risk.value:
        draft.put("risk", risk)
    return draft


def _read_costs(read: FigureReader, held: Figures, draft: Draft) -> None:
    costs: dict[str, int] = {}
    for row in rows_of(read.typed.values(), "cost", 0):
        name_field, field = f"cost.{row}.name", f"cost.{row}.amount"
        if read.ticked(f"cost.{row}.out"):
            continue
        name = read.line(name_field, most=120)
        if not name and not read.typed.get(field).strip():
            continue
        if not name:
            read.fault(name_field, "Say what this cost is for, such as Rent; or empty its amount, too.")
        if name.casefold() in {each.casefold() for each in costs}:
            read.fault(name_field, f"{name} stands here twice; put both amounts into one row.")
        costs[name] = read.money(field)
        draft.fields[f"yearly_costs.{name[:60]}"] = field
    draft.fields["yearly_costs"] = "cost.1.name"
    if not costs:
        read.fault("cost.1.name", "A year has at least one cost: the maker's pay.")
    if costs != {cost.name: cost.amount for cost in held.year.costs}:
        draft.spec["yearly_costs"] = {name: write_money(amount) for name, amount in costs.items()}


def _read_stages(read: FigureReader, held: Figures, draft: Draft) -> None:
    draft.fields["stages"] = "stage.1.share"
    plan = read.choice("plan", ["", *(each.name for each in stage_plans())], default="")
    stages = stage_plan(plan).stages if plan else _typed_stages(read, held.stages.stages, draft)
    if stages != held.stages.stages:
        draft.spec["stages"] = [{"trigger": each.trigger, "share": each.share} for each in stages]


def _typed_stages(read: FigureReader, held: Sequence[Stage], draft: Draft) -> tuple[Stage, ...]:
    stages: list[Stage] = []
    for row in rows_of(read.typed.values(), "stage", 0):
        trigger_field, field = f"stage.{row}.trigger", f"stage.{row}.share"
        trigger = read.line(trigger_field, most=120)
        typed = read.typed.get(field).strip()
        if read.ticked(f"stage.{row}.out") or not (trigger or typed):
            continue
        if not trigger:
            read.fault(trigger_field, "Say on what this payment falls due, such as on signing.")
        as_held = held[row - 1].share if row <= len(held) else None
        share = as_held if as_held is not None and typed == in_percent(as_held) else _share(read, field)
        draft.fields[f"stages[{len(stages) + 1}]"] = field
        stages.append(Stage(trigger=trigger, share=share))
    total = sum(each.share or 0 for each in stages)
    if not stages:
        read.fault("stage.1.trigger", "A price is paid in at least one stage, such as 100 % on delivery.")
    elif abs(total - 1) > 1e-9:
        read.fault("stage.1.share", f"The stages add up to {in_percent(total)} %. Make them 100 %.")
    return tuple(stages)


def _share(read: FigureReader, field: str) -> float:
    if not read.typed.get(field).strip():
        read.fault(field, "Write its part of the price in per cent, such as 25.")
    return read.percent(field, least=0.01, most=100, example="25") or 0.0


def _read_ratios(read: FigureReader, spec: ShopSpec, draft: Draft) -> None:
    ratios: list[float] = []
    for word in re.split(r"[;\n]|,\s+|,$|\s+", read.typed.get("ratios").strip()):
        if not word.strip():
            continue
        value = float(word.replace(",", ".")) if RATIO.fullmatch(word) else 0.0
        if not 0.05 < value < 20:
            read.fault(
                "ratios",
                f"“{word[:24]}” is not a ratio. Write actual over estimated hours of each job, "
                "such as 1.02, 0.95, 1.1.",
            )
        ratios.append(value)
    if tuple(ratios) != spec.ratios:
        draft.put("ratios", ratios)


@cache
def field_names() -> Mapping[str, str]:
    """What each field is called in a list of faults."""
    rows = range(1, MOST_ROWS + 1)
    return (
        {line.name: line.label for line in ALL_LINES}
        | {f"cost.{row}.{column}": f"Yearly cost {row}" for row in rows for column in ("name", "amount")}
        | {f"stage.{row}.{column}": f"Payment {row}" for row in rows for column in ("trigger", "share")}
        | {"ratios": "Past jobs"}
    )


def cost_grounds(values: Mapping[str, str]) -> dict[int, Ground]:
    """Of each row of costs whether it still is the example's."""
    made_up = {(cost.name, cost.amount) for cost in example_year().costs}
    return {
        row: Ground(word="example" if (name, read_money(amount)) in made_up else OWN)
        for row in rows_of(values, "cost", 0)
        if (name := values.get(f"cost.{row}.name", "")) and (amount := values.get(f"cost.{row}.amount", ""))
    }
