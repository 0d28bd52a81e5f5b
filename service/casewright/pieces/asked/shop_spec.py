"""What a shop file says: the shop's own rack, boards, grades, times, prices, rates and history.

It names only what differs from the figures that the rooms of the core bring as their own data, each with its
basis; what it leaves out stays as it is there.
"""

from datetime import date
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.joinery.saws import SawUse
from casewright.labour.operations import Method
from casewright.labour.standards import house_standards
from casewright.measure.fields import Money
from casewright.pieces.asked.fields import Size, Spec, known_wood
from casewright.pieces.asked.rack_spec import (
    MOST_KEPT,
    MOST_TOOLS,
    Kerf,
    OwnLooks,
    OwnSaw,
    OwnUsual,
    ToolWidth,
)
from casewright.pieces.asked.slide_spec import MOST_SLIDES, OwnSlide, names_once
from casewright.pricing.prices import PriceKind
from casewright.pricing.risk import RiskLevel
from casewright.wood.grades import GradeName
from casewright.wood.waste import PartUse

WoodName = Annotated[str, BeforeValidator(known_wood)]
Share = Annotated[float, Field(ge=0, lt=1)]
MOST_HOURS_A_WEEK = 2_000
"""The most paid hours that a shop's people have in a week, all of them together: fifty people's [hour]."""


class OwnMinutes(Spec):
    """The shop's own time for an operation."""

    hand: float | None = Field(None, ge=0, le=10_000, description="Minutes each by hand.", examples=[25])
    machine: float | None = Field(
        None, ge=0, le=10_000, description="Minutes each with machine help.", examples=[14]
    )


class OwnWaste(Spec):
    """The shop's own waste, on rough size."""

    wood: WoodName = Field(description="The wood.", examples=["cherry"])
    use: PartUse | None = Field(None, description="What the parts are for; all uses when left out.")
    grade: GradeName | None = Field(None, description="The grade; all grades when left out.")
    waste: Share = Field(description="Waste as a share of what is bought.", examples=[0.2])


class OwnYield(Spec):
    """What one of the shop's jobs took of a wood in a grade."""

    job: int = Field(ge=1, description="The job's number.", examples=[14])
    reckoned: float = Field(
        gt=0,
        le=1e6,
        description="Feet that the table of waste would have bought for its parts.",
        examples=[39],
    )
    cut: float = Field(
        gt=0, le=1e6, description="Feet that were cut up for them, kept offcuts left out.", examples=[44]
    )


class OwnYields(Spec):
    """What the shop's jobs took of a wood in a grade; from three jobs on they weigh in beside the table."""

    wood: WoodName = Field(description="The wood.", examples=["cherry"])
    grade: GradeName = Field(description="The grade.", examples=["FAS"])
    jobs: tuple[OwnYield, ...] = Field((), max_length=1000, description="Job by job.")


class OwnPrice(Spec):
    """One price of the shop's own."""

    kind: PriceKind = Field(description="The sort of thing.", examples=["lumber"])
    item: str = Field(min_length=1, max_length=80, description="Its name.", examples=["cherry"])
    size: str = Field("", max_length=40, description="Thickness class or thickness.", examples=["4/4"])
    unit: str = Field(
        "each", min_length=1, max_length=20, description="What one of it is.", examples=["bd ft"]
    )
    price: Money = Field(description="Price of one, in currency units.", examples=["9.50"])
    quoted: date | None = Field(None, description="When it was quoted.", examples=["2026-11-02"])


class OwnStage(Spec):
    """One stage payment, by share."""

    trigger: str = Field(
        min_length=1, max_length=120, description="What it falls due on.", examples=["on signing"]
    )
    share: float = Field(gt=0, le=1, description="Share of the total.", examples=[0.1])


class Charge(Spec):
    """An amount that somebody else asks, or a fixed extra."""

    label: str = Field(min_length=1, max_length=120, description="What it is for.", examples=["turned feet"])
    amount: Money = Field(description="What it costs, in currency units.", examples=["120.00"])


class ShopSpec(Spec):
    """A shop's own figures. Everything may be left out."""

    name: str = Field("", max_length=120, description="The shop.", examples=["Example shop"])
    basis: str = Field("", max_length=300, description="Where its figures come from.")
    symbol: str = Field("$", max_length=4, description="The sign of its currency.", examples=["$"])

    chisels: tuple[Size, ...] | None = Field(
        None,
        min_length=1,
        max_length=MOST_TOOLS,
        description="Widths of the chisels.",
        examples=[["1/4", "1/2"]],
    )
    saw_kerf: Kerf | None = Field(
        None,
        description="Kerf of the dovetail saw, where no saws are listed.",
        examples=["1/32"],
    )
    saws: tuple[OwnSaw, ...] | None = Field(
        None,
        min_length=1,
        max_length=MOST_TOOLS,
        description="Saws for joints; one at least for dovetails.",
        examples=[[{"name": "dovetail saw", "use": "dovetail", "kerf": "1/32"}]],
    )
    cutters: tuple[ToolWidth, ...] | None = Field(
        None,
        min_length=1,
        max_length=MOST_TOOLS,
        description="Widths of the straight cutters: bits, dado heads, plough irons.",
        examples=[["1/4", "1/2"]],
    )
    gauges: int | None = Field(
        None, ge=1, le=MOST_KEPT, description="Marking gauges that can be kept set at once.", examples=[4]
    )
    dividers: int | None = Field(
        None, ge=1, le=MOST_KEPT, description="Pairs of dividers that can be kept set at once.", examples=[2]
    )
    usual: OwnUsual | None = Field(None, description="The shop's own usual numbers for dovetails.")
    looks: OwnLooks | None = Field(None, description="The shop's own taste in tails.")
    slides: tuple[OwnSlide, ...] | None = Field(
        None,
        min_length=1,
        max_length=MOST_SLIDES,
        description="The table of metal slides, as their makers' sheets say; in place of the general one.",
    )
    widest_board: Size = Field(
        10.0,
        description="Widest clear board to be had; wider parts are glued up (common practice).",
        examples=["10"],
    )
    wide_over: Size = Field(
        7.0,
        description="Rough width over which boards must be picked by hand (common practice).",
        examples=["7"],
    )
    average_board: dict[WoodName, Size] = Field(
        default_factory=dict,
        description="Usable width of an average board, by wood.",
        examples=[{"cherry": "6"}],
    )
    kerf: Size = Field(0.125, description="Kerf of the saw that breaks boards down.", examples=["1/8"])
    end_trim: Size = Field(1.0, description="Trim at each end of a board.", examples=["1"])
    edge_trim: Size = Field(0.25, description="Taken off to straighten an edge.", examples=["1/4"])

    grade: GradeName = Field(GradeName.FAS, description="The grade that is bought.", examples=["FAS"])
    grades: dict[WoodName, GradeName] = Field(
        default_factory=dict, description="Other grades, by wood.", examples=[{"poplar": "No. 1 Common"}]
    )
    waste: tuple[OwnWaste, ...] = Field((), description="The shop's own waste, in place of the table's.")
    yields: tuple[OwnYields, ...] = Field((), description="What the shop's jobs took of each wood.")
    sheet_waste: Share | None = Field(None, description="Waste of sheet goods, by area.", examples=[0.15])

    methods: dict[str, Method] = Field(
        default_factory=dict, description="Hand or machine, by operation code.", examples=[{"P04": "hand"}]
    )
    minutes: dict[str, OwnMinutes] = Field(
        default_factory=dict,
        description="The shop's own times, by operation code.",
        examples=[{"D06": {"hand": 3}}],
    )
    wood_factors: dict[WoodName, Annotated[float, Field(ge=0.1, le=10)]] = Field(
        default_factory=dict, description="How a wood works beside cherry.", examples=[{"white oak": 1.2}]
    )
    allowance: Share | None = Field(None, description="For rest, sharpening, fetching.", examples=[0.12])

    yearly_costs: dict[str, Money] | None = Field(
        None, min_length=1, description="Costs of a year by name.", examples=[{"Maker's pay": "68000"}]
    )
    weeks: float | None = Field(None, ge=1, le=53, description="Weeks worked in a year.", examples=[48])
    hours_per_week: float | None = Field(
        None,
        ge=1,
        le=MOST_HOURS_A_WEEK,
        description="Paid hours in a week, of everyone together.",
        examples=[40],
    )
    billable_share: float | None = Field(
        None, ge=0.05, le=1, description="Share of paid hours that reach the bench.", examples=[0.625]
    )
    profit: Share | None = Field(None, description="Profit, as a share of the price.", examples=[0.1])

    prices: tuple[OwnPrice, ...] = Field((), description="The shop's own prices.")
    markup: float | None = Field(None, ge=0, le=5, description="Mark-up on direct materials.", examples=[0.2])
    outwork_markup: float | None = Field(None, ge=0, le=5, description="Mark-up on outwork.", examples=[0.15])
    rounding: Money | None = Field(
        None, gt=0, description="The price is rounded up to this.", examples=["10"]
    )
    minimum: Money | None = Field(None, description="Least charge for a job.", examples=["250"])
    tax_rate: Share | None = Field(None, description="Tax on the price.", examples=[0.06])
    stages: tuple[OwnStage, ...] | None = Field(None, min_length=1, description="Stage payments.")

    ratios: tuple[Annotated[float, Field(gt=0.05, lt=20)], ...] = Field(
        (),
        max_length=1000,
        description="Actual over estimated hours of past jobs.",
        examples=[[1.02, 0.95, 1.1]],
    )
    risk: RiskLevel = Field(RiskLevel.P80, description="How sure the hours of a price are.", examples=["P80"])
    queue_weeks: float = Field(0.0, ge=0, le=520, description="Weeks of work before this job.", examples=[6])
    miles: float = Field(0.0, ge=0, le=10_000, description="Miles driven to deliver.", examples=[60])
    outwork: tuple[Charge, ...] = Field((), description="Work done by others for this job.")
    extras: tuple[Charge, ...] = Field((), description="Fixed extras of this job.")

    @model_validator(mode="after")
    def one_saw_cuts_dovetails(self) -> Self:
        if self.saws is None:
            return self
        if all(saw.use is not SawUse.DOVETAIL for saw in self.saws):
            raise PydanticCustomError(
                "choice", "no saw is for dovetails; list one with its kerf, 1/32 in as a rule", {}
            )
        if self.saw_kerf is not None:
            raise PydanticCustomError(
                "choice", "the kerf of the dovetail saw stands twice; leave saw_kerf out beside saws", {}
            )
        return self

    @model_validator(mode="after")
    def codes_exist(self) -> Self:
        known = {one.code for one in house_standards().operations}
        strangers = sorted((set(self.methods) | set(self.minutes)) - known)
        if strangers:
            raise PydanticCustomError(
                "choice",
                "there is no operation {code}; the hours table has the codes, such as P04",
                {"code": strangers[0]},
            )
        return self

    @model_validator(mode="after")
    def slides_have_names(self) -> Self:
        names_once(self.slides or ())
        return self

    @model_validator(mode="after")
    def one_price_each(self) -> Self:
        keys = [(own.kind, own.item.casefold(), own.size) for own in self.prices]
        twice = next((own for own, key in zip(self.prices, keys, strict=True) if keys.count(key) > 1), None)
        if twice:
            thing = f"{twice.item} {twice.size}".strip()
            raise PydanticCustomError(
                "choice", "{thing} has two prices; keep the one that holds", {"thing": thing}
            )
        return self

    @model_validator(mode="after")
    def stages_make_a_whole(self) -> Self:
        total = sum(stage.share for stage in self.stages or ())
        if self.stages and abs(total - 1) > 1e-9:
            raise PydanticCustomError(
                "choice", "the stages add up to {total} of the price; make them 1", {"total": f"{total:g}"}
            )
        return self
