"""The figures of the rate page: the year, the terms of a price, and what a new job starts with."""

from casewright.pieces.asked.shop_spec import MOST_HOURS_A_WEEK
from casewright.pricing.bundled import bundled
from casewright.web.settings.lines import Ground, Kind, Line, ground_of

_YEAR = bundled("costs.json")["year"]
_TERMS = {row["name"]: ground_of(row["basis"], row["source"]) for row in bundled("terms.json")["terms"]}
_USUAL_YEAR = ground_of(_YEAR["basis"], _YEAR["source"])
_NOTHING = Ground(word="common practice", source="none until the shop says so")

YEAR_LINES = (
    Line(
        name="weeks",
        label="Weeks worked in a year",
        kind=Kind.NUMBER,
        of=lambda shop: shop.year.weeks,
        usual=_USUAL_YEAR,
        unit="weeks",
        least=1,
        most=53,
        example="48",
    ),
    Line(
        name="hours_per_week",
        label="Paid hours in a week",
        hint="Of everyone together.",
        kind=Kind.NUMBER,
        of=lambda shop: shop.year.hours_per_week,
        usual=_USUAL_YEAR,
        unit="hours",
        least=1,
        most=MOST_HOURS_A_WEEK,
        example="40",
    ),
    Line(
        name="billable_share",
        label="Of these, at the bench for jobs",
        hint="50 to 70 is usual; the rest is office, sweeping, talking to customers.",
        kind=Kind.PERCENT,
        of=lambda shop: shop.year.billable_share,
        usual=_USUAL_YEAR,
        unit="%",
        least=5,
        most=100,
        example="62.5",
    ),
    Line(
        name="profit",
        label="Profit, as a part of the price",
        hint="Not of the cost: a tenth of the price is a ninth of the cost.",
        kind=Kind.PERCENT,
        of=lambda shop: shop.year.profit,
        usual=Ground(word="example"),
        unit="%",
        least=0,
        most=99,
        example="10",
    ),
)
TERM_LINES = (
    Line(
        name="markup",
        label="Mark-up on materials",
        kind=Kind.PERCENT,
        of=lambda shop: shop.terms.markup,
        usual=_TERMS["markup"],
        unit="%",
        least=0,
        most=500,
        example="20",
    ),
    Line(
        name="outwork_markup",
        label="Mark-up on outwork",
        kind=Kind.PERCENT,
        of=lambda shop: shop.terms.outwork_markup,
        usual=_TERMS["outwork_markup"],
        unit="%",
        least=0,
        most=500,
        example="15",
    ),
    Line(
        name="rounding",
        label="Price rounded up to",
        kind=Kind.MONEY,
        of=lambda shop: shop.terms.step,
        usual=_TERMS["step"],
    ),
    Line(
        name="minimum",
        label="Least charge for a job",
        kind=Kind.MONEY,
        of=lambda shop: shop.terms.minimum,
        usual=_TERMS["minimum"],
    ),
)
JOB_LINES = (
    Line(
        name="queue_weeks",
        label="Weeks of work before a new job",
        hint="A job may say otherwise.",
        kind=Kind.NUMBER,
        of=lambda shop: shop.spec.queue_weeks,
        usual=_NOTHING,
        unit="weeks",
        least=0,
        most=520,
        example="6",
    ),
    Line(
        name="miles",
        label="Miles to deliver, there and back",
        hint="A job may say otherwise.",
        kind=Kind.NUMBER,
        of=lambda shop: shop.spec.miles,
        usual=_NOTHING,
        unit="miles",
        least=0,
        most=10_000,
        example="60",
    ),
)
ALL_LINES = (*YEAR_LINES, *TERM_LINES, *JOB_LINES)
