"""Figures in plain words: what they are called, what is a share in them, and which come from the shop."""

import re

from casewright.measure.printing import show_number
from casewright.measure.working import Input
from casewright.pieces.built.construct import Construction

NAMES = {
    "price.asked": "the price asked",
    "price.tax": "the tax",
    "price.total": "the price with tax",
    "price.materials": "materials in the price",
    "price.labour": "labour in the price",
    "price.contingency": "the part for surprises",
    "price.outwork": "outwork in the price",
    "price.delivery": "delivery in the price",
    "price.before_rounding": "the price before rounding",
    "price.cost": "what the job is likely to cost",
    "price.lowest": "the least to accept",
    "rate.yearly_costs": "the costs of a year",
    "rate.billable_hours": "the hours that can be billed in a year",
    "rate.hourly_cost": "the cost of an hour",
    "rate.hourly_rate": "the rate of an hour",
    "hours.total": "the hours, with the allowance",
    "hours.minutes": "the minutes, without the allowance",
    "promise.promised_weeks": "the weeks that are promised",
    "masses.total": "the weight, empty",
    "masses.case": "the weight of the case",
    "masses.drawers": "the weight of the drawers",
    "masses.doors": "the weight of the doors",
    "overall_width": "the width over all",
    "overall_depth": "the depth over all",
    "overall_height": "the height over all",
    "body_height": "the height of the case side",
    "opening_total": "the height of all openings together",
    "clear_width": "the clear width",
    "opening_depth": "the depth of the openings",
}
STAGE = re.compile(r"price\.stage_(\d+)")
OPERATION = re.compile(r"hours\.(minutes|standard)\.(\w+)")
SHARES = {
    "markup",
    "profit",
    "tax_rate",
    "taxable_share",
    "allowance",
    "billable_share",
    "consumables",
    "share",
    "margin",
}
"""Inputs of rules that are parts of a whole, and are written in per cent."""
MARK_UP = re.compile(r"([\d.]+) × ([\d.]+)")
LARGE = re.compile(r"\b\d{4,}\.\d\d\b")
OF_THE_SHOP = {
    "step": "rounding",
    "minimum": "minimum",
    "markup": "markup",
    "tax_rate": "tax_rate",
    "taxable_share": "",
    "allowance": "allowance",
    "profit": "profit",
    "per_distance": "",
}
"""Inputs that no figure gives, each with its name in a shop's figures; empty where it has none there."""


def plain_name(figure: str, unit: Construction) -> str:
    """What a figure is called in words; empty where it has its key alone."""
    if figure in NAMES:
        return NAMES[figure]
    if stage := STAGE.fullmatch(figure):
        return f"payment {stage[1]}"
    if found := OPERATION.fullmatch(figure):
        return f"the {'minutes' if found[1] == 'minutes' else 'time standard'} of {found[2]}"
    head, _, size = figure.removeprefix("year.").rpartition(".")
    line = next((each for each in unit.lines if head and head == each.line), None)
    if line:
        return f"{line.part.name}: {size.replace('_', ' ')}"
    drawers = {each.code.partition("-")[2] for each in unit.drawers}
    return f"drawer {head}: {size.replace('_', ' ')}" if head in drawers else ""


def in_per_cent(given: Input) -> str:
    """What an input was, a share of a whole in per cent."""
    if given.name not in SHARES:
        return given.value
    try:
        return f"{show_number(round(float(given.value) * 100, 6))} %"
    except ValueError:
        return given.value


def line_working(label: str, working: str) -> str:
    """The working of a line of a price as it is printed: money by thousands, a mark-up in per cent."""
    found = MARK_UP.fullmatch(working)
    if found and label.startswith("mark-up"):
        working = f"{found[1]} × {show_number(round(float(found[2]) * 100, 6))} %"
    return LARGE.sub(lambda money: f"{float(money[0]):,.2f}", working)
