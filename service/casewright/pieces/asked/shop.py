"""What a shop brings to every job, ready for the rooms that use it."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.choose import LOOKS, Looks
from casewright.joinery.defaults import USUAL, Usual
from casewright.joinery.saws import Saw, SawUse
from casewright.joinery.sourced import Sourced
from casewright.labour.operations import Operation
from casewright.labour.standards import Standards, WoodFactor, factor_for, house_standards
from casewright.pieces.asked.rack_spec import OwnLooks, OwnUsual
from casewright.pieces.asked.reading import parse_json, read_as
from casewright.pieces.asked.shop_spec import OwnMinutes, ShopSpec
from casewright.pieces.asked.slide_spec import OwnSlide, house_slides
from casewright.pricing.charges import PlainLine
from casewright.pricing.prices import PriceBook, PriceRow, example_prices
from casewright.pricing.rate import ShopYear, YearlyCost, example_year
from casewright.pricing.risk import RiskHistory
from casewright.pricing.stages import Stage, StagePlan, stage_plan
from casewright.pricing.terms import Terms, house_terms
from casewright.wood.basis import Basis, Evidence
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.sheets import sheet_waste
from casewright.wood.species import wood
from casewright.wood.waste import Footage, PartUse, Waste, waste_for
from casewright.wood.yields import JobYield, own_waste

SHOP_FILE = "the shop file"
LEARNED = Evidence(basis=Basis.LEARNED, source=SHOP_FILE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """A shop's figures, its own where it has any.

    Attributes:
        spec: what the shop file says
        rack: chisels, saws, cutters and gauges
        usual: what is usual in its dovetails
        looks: what looks well to it
        standards: time standards
        year: yearly costs and billable hours
        prices: the price book
        history: how past jobs ran
        terms: mark-ups, rounding, least charge, tax
        stages: when the price is paid
        outwork: what others ask for this job
        extras: fixed extras of this job
        slides: the table of metal slides
    """

    spec: ShopSpec
    rack: Rack
    usual: Usual
    looks: Looks
    standards: Standards
    year: ShopYear
    prices: PriceBook
    history: RiskHistory
    terms: Terms
    stages: StagePlan
    outwork: tuple[PlainLine, ...]
    extras: tuple[PlainLine, ...]
    slides: tuple[OwnSlide, ...]

    def board_width(self, name: str) -> float:
        """The usable width of an average board of a wood [in]."""
        return self.spec.average_board.get(name) or wood(name).average_board_width

    def grade_of(self, name: str) -> GradeName:
        """The grade in which a wood is bought."""
        return self.spec.grades.get(name, self.spec.grade)

    def waste_of(self, name: str, use: PartUse, cut: Cut) -> Waste:
        """The waste of a wood for a use: as the shop typed it, as its jobs taught it, else the table's."""
        bought = self.grade_of(name)
        for own in self.spec.waste:
            if own.wood == name and own.use in {None, use} and own.grade in {None, bought}:
                return Waste(
                    fraction=own.waste, footage=Footage.ROUGH, row="the shop's own", evidence=LEARNED
                )
        table = waste_for(wood(name), bought, use, cut)
        took = (each for each in self.spec.yields if each.wood == name and each.grade == bought)
        jobs = (
            JobYield(job=one.job, reckoned=one.reckoned, cut=one.cut) for each in took for one in each.jobs
        )
        return own_waste(table, tuple(jobs))

    def sheet_waste(self) -> Waste:
        """The waste of sheet goods, on net area: the shop's own, else the table's."""
        own = self.spec.sheet_waste
        if own is None:
            return sheet_waste()
        return Waste(fraction=own, footage=Footage.NET, row="the shop's own", evidence=LEARNED)

    def factor_of(self, name: str) -> WoodFactor:
        """How a wood works beside cherry."""
        if name in self.spec.wood_factors:
            factor = self.spec.wood_factors[name]
            return WoodFactor(wood=name, factor=factor, source=SHOP_FILE, basis=Basis.LEARNED)
        return factor_for(name, self.standards)


def shop(spec: ShopSpec) -> Shop:
    """A shop's figures from its file, with the data of the rooms for whatever it leaves out.

    Args:
        spec: what the shop file says

    Returns:
        The shop.

    Source: the data files of the rooms; each row names its own.
    """
    return Shop(
        spec=spec,
        rack=_rack(spec),
        usual=replace(USUAL, **_own_numbers(spec.usual)),
        looks=replace(LOOKS, **_own_numbers(spec.looks)),
        standards=_standards(spec),
        year=_year(spec),
        prices=_prices(spec),
        history=RiskHistory(ratios=spec.ratios),
        terms=_terms(spec),
        stages=_stages(spec),
        outwork=tuple(PlainLine(label=line.label, amount=line.amount) for line in spec.outwork),
        extras=tuple(PlainLine(label=line.label, amount=line.amount) for line in spec.extras),
        slides=spec.slides or house_slides(),
    )


@cache
def example_shop() -> Shop:
    """A made-up shop of one maker, to be replaced by the reader's own.

    Returns:
        The shop.

    Source: an example.
    """
    text = files("casewright.pieces").joinpath("data/example_shop.json").read_text(encoding="utf-8")
    return shop(read_as(ShopSpec, parse_json(text)))


def _rack(spec: ShopSpec) -> Rack:
    return Rack(
        chisels=_widths(spec.chisels, RACK.chisels),
        saws=_saws(spec),
        cutters=_widths(spec.cutters, RACK.cutters),
        gauges=spec.gauges or RACK.gauges,
        dividers=spec.dividers or RACK.dividers,
    )


def _widths(own: tuple[float, ...] | None, usual: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(sorted(set(own))) if own else usual


def _saws(spec: ShopSpec) -> tuple[Saw, ...]:
    if spec.saws is not None:
        return tuple(Saw(name=own.name, use=own.use, kerf=own.kerf) for own in spec.saws)
    if spec.saw_kerf is None:
        return RACK.saws
    kerf = spec.saw_kerf
    return tuple(replace(saw, kerf=kerf) if saw.use is SawUse.DOVETAIL else saw for saw in RACK.saws)


def _own_numbers(own: OwnUsual | OwnLooks | None) -> dict[str, Sourced]:
    """The numbers that a shop has set, each with its ground."""
    given = own.model_dump(exclude_none=True) if own else {}
    return {
        name: Sourced(value=value, source=SHOP_FILE, basis=Basis.LEARNED.value)
        for name, value in given.items()
    }


def _standards(spec: ShopSpec) -> Standards:
    held = house_standards()
    own = [_timed(one, spec.minutes.get(one.code)) for one in held.operations]
    methods = [
        replace(one, default_method=spec.methods[one.code]) if one.code in spec.methods else one
        for one in own
    ]
    allowance = held.allowance if spec.allowance is None else spec.allowance
    return replace(held.changed(*methods), allowance=allowance)


def _timed(one: Operation, own: OwnMinutes | None) -> Operation:
    if own is None:
        return one
    return replace(
        one,
        hand=one.hand if own.hand is None else own.hand,
        machine=one.machine if own.machine is None else own.machine,
        source=SHOP_FILE,
        basis=Basis.LEARNED,
    )


def _year(spec: ShopSpec) -> ShopYear:
    held = example_year()
    given: Mapping[str, float] = {
        name: value
        for name in ("weeks", "hours_per_week", "billable_share", "profit")
        if (value := getattr(spec, name)) is not None
    }
    costs = held.costs
    if spec.yearly_costs is not None:
        costs = tuple(YearlyCost(name=name, amount=amount) for name, amount in spec.yearly_costs.items())
    return replace(held, costs=costs, **given)


def _prices(spec: ShopSpec) -> PriceBook:
    return example_prices().changed(
        *(
            PriceRow(
                kind=own.kind,
                item=own.item,
                size=own.size,
                unit=own.unit,
                price=own.price,
                on=own.quoted,
                source=SHOP_FILE,
            )
            for own in spec.prices
        )
    )


def _terms(spec: ShopSpec) -> Terms:
    given: dict[str, Any] = {
        name: value
        for name, value in (
            ("markup", spec.markup),
            ("outwork_markup", spec.outwork_markup),
            ("step", spec.rounding),
            ("minimum", spec.minimum),
            ("tax_rate", spec.tax_rate),
        )
        if value is not None
    }
    return replace(house_terms(), **given)


def _stages(spec: ShopSpec) -> StagePlan:
    if spec.stages is None:
        return stage_plan()
    return StagePlan(
        name=SHOP_FILE, stages=tuple(Stage(trigger=own.trigger, share=own.share) for own in spec.stages)
    )
