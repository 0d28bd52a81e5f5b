"""Two revisions of the figures side by side, each difference in words."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from casewright.joinery.saws import SawUse
from casewright.labour.operations import operations
from casewright.measure.fields import write_money
from casewright.measure.shares import show_part, show_percent
from casewright.pricing.prices import example_prices
from casewright.pricing.rate import example_year

PERCENT = {"sheet_waste", "allowance", "billable_share", "profit", "markup", "outwork_markup", "tax_rate"}
WORDS = {
    "name": "Name",
    "basis": "Where the figures come from",
    "symbol": "Sign of the currency",
    "chisels": "Chisels",
    "saw_kerf": "Kerf of the dovetail saw",
    "saws": "Saw",
    "cutters": "Cutters",
    "gauges": "Marking gauges",
    "dividers": "Pairs of dividers",
    "usual": "Usual in dovetails",
    "looks": "Looks",
    "widest_board": "Widest clear board",
    "wide_over": "Picked by hand over",
    "average_board": "Average board",
    "kerf": "Kerf of the saw",
    "end_trim": "Trim at each end",
    "edge_trim": "Trim of an edge",
    "grade": "Grade bought",
    "grades": "Grade bought",
    "waste": "Waste",
    "yields": "What jobs took",
    "sheet_waste": "Waste of sheet goods",
    "methods": "By hand or machine",
    "minutes": "Minutes",
    "wood_factors": "How it works beside cherry",
    "allowance": "Allowance",
    "yearly_costs": "Yearly cost",
    "weeks": "Weeks worked in a year",
    "hours_per_week": "Paid hours in a week",
    "billable_share": "Share of the hours that is billed",
    "profit": "Profit, of the price",
    "prices": "Price",
    "markup": "Mark-up on materials",
    "outwork_markup": "Mark-up on outwork",
    "rounding": "Price rounded up to",
    "minimum": "Least charge",
    "tax_rate": "Tax",
    "stages": "Stage payments",
    "ratios": "Past jobs, actual over estimated",
    "risk": "How sure the hours are",
    "queue_weeks": "Weeks of work before a new job",
    "miles": "Miles to deliver",
    "outwork": "Outwork",
    "extras": "Fixed extras",
}
"""What each figure of a shop file is called on a page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """One figure before and after; empty text where it was left to the usual one."""

    what: str
    before: str
    after: str


def what_changed(before: Mapping[str, Any], after: Mapping[str, Any]) -> tuple[Difference, ...]:
    """Every figure in which two revisions differ.

    Args:
        before: the earlier one, as it is kept
        after: the later one
    """
    old, new = in_words(_with_costs(before)), in_words(_with_costs(after))
    usual = _example_prices()
    return tuple(
        Difference(
            what=what,
            before=old.get(what) or usual.get(what, ""),
            after=new.get(what) or usual.get(what, ""),
        )
        for what in dict.fromkeys((*old, *new))
        if old.get(what) != new.get(what)
    )


def _with_costs(held: Mapping[str, Any]) -> Mapping[str, Any]:
    """Figures with the example's year where the shop has none: a shop replaces all costs or none."""
    if held.get("yearly_costs") is not None:
        return held
    return {**held, "yearly_costs": {cost.name: write_money(cost.amount) for cost in example_year().costs}}


@cache
def _example_prices() -> Mapping[str, str]:
    """What stands in the example's price book, by what it is called here."""
    return {
        f"{WORDS['prices']}: {row.item} {row.size}".strip(): f"{write_money(row.price)}, the example"
        for row in example_prices().rows
    }


def in_words(held: Mapping[str, Any]) -> dict[str, str]:
    """Every figure of a revision by what it is called."""
    return {what: value for name in WORDS if name in held for what, value in _lines(name, held[name])}


def _lines(name: str, value: Any) -> Iterator[tuple[str, str]]:
    words = WORDS[name]
    if value is None or value in ("", [], {}):
        return
    if name == "prices":
        for row in value:
            size = f" {row['size']}" if row.get("size") else ""
            day = f", quoted {row['quoted']}" if row.get("quoted") else ""
            yield f"{words}: {row['item']}{size}", f"{row['price']} for one {row.get('unit', 'each')}{day}"
    elif name == "saws":
        for row in value:
            yield f"{words}: {row['name']}", f"cuts {row['kerf']}, {row.get('use', SawUse.DOVETAIL)}"
    elif name in ("usual", "looks"):
        yield from ((f"{words}: {key.replace('_', ' ')}", _small(each)) for key, each in value.items())
    elif name in ("waste", "yields"):
        yield from ((f"{words}: {where}", said) for where, said in _of_woods(name, value))
    elif name == "stages":
        yield words, "; ".join(f"{show_part(row['share'])} {row['trigger']}" for row in value)
    elif isinstance(value, Mapping):
        for key, each in value.items():
            yield f"{words}: {_operation(key)}", _small(each)
    else:
        yield words, show_percent(value) if name in PERCENT else _small(value)


def _of_woods(name: str, rows: Any) -> Iterator[tuple[str, str]]:
    """The shop's own waste, typed or as its jobs taught it."""
    for row in rows:
        where = ", ".join(str(row[key]) for key in ("wood", "use", "grade") if row.get(key))
        if name == "waste":
            yield where, show_percent(row["waste"])
        for job in row.get("jobs", ()):
            yield f"{where}, job {job['job']}", f"{job['cut']:g} bd ft, {job['reckoned']:g} by the table"


def _operation(key: str) -> str:
    names = {one.code: one.name for one in operations()}
    return f"{key} {names[key]}" if key in names else key


def _small(value: Any) -> str:
    if isinstance(value, Mapping):
        return ", ".join(f"{each:g} by {key}" for key, each in value.items() if each is not None)
    if isinstance(value, list):
        return "; ".join(
            f"{each['label']} {each['amount']}" if isinstance(each, Mapping) else str(each) for each in value
        )
    return f"{value:g}" if isinstance(value, float) else str(value)
