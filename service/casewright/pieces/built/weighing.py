"""The weight of every part of a unit, and what has to be carried: reckoned when somebody asks."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.units import Count, Pounds
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.masses import Weighed, centre_of, half_slides, pull_entries
from casewright.pieces.layout.weights import density_of, part_weight
from casewright.stability.lifting import people_needed


@dataclass(frozen=True, slots=True, kw_only=True)
class Carry:
    """Something that is carried in one piece.

    Attributes:
        what: the piece with its drawers, the case alone, a drawer
        weight: empty [lb]
        people: how many carry it
    """

    what: str
    weight: Pounds
    people: Count


def weighed_parts(unit: Construction, ledger: Ledger) -> tuple[Weighed, ...]:
    """Every part of one unit with its weight, and its pulls and slides.

    Args:
        unit: the unit
        ledger: keeps the working

    Returns:
        Parts in their order, then the pulls of each drawer, then its slides, half of them in the case.

    Source: finished volumes and the densities of the species table.
    """
    under = ledger.under("weights")
    return (*_parts(unit, under), *_pulls(unit, under), *_slides(unit, under))


def _parts(unit: Construction, under: Ledger) -> Iterator[Weighed]:
    wet = float(unit.climate.now)
    densities: dict[str, float] = {}
    for part in unit.parts:
        density = densities.get(part.wood)
        if density is None:
            basis = f"of {part.wood} at {wet:.1f} % moisture, Wood Handbook, FPL-GTR-282 (2021), chapter 4"
            density = under.given(f"density.{part.wood}", density_of(part.wood, wet), basis)
            densities[part.wood] = density
        weight = under.take(part.code, part_weight, volume=part.volume, density=density)
        x, y, z = centre_of(part)
        yield Weighed(code=part.code, name=part.name, wood=part.wood, weight=weight, x=x, y=y, z=z)


def _pulls(unit: Construction, under: Ledger) -> Iterator[Weighed]:
    each = under.given("pull", unit.spec.pulls.weight_lb, "field pulls.weight_lb of the unit")
    for drawer in unit.drawers:
        for number, (_, x, y, z) in enumerate(pull_entries(unit.spec, unit.face, drawer), start=1):
            code = f"{drawer.code}-pull{number}"
            yield Weighed(code=code, name=unit.spec.pulls.item, wood="", weight=each, x=x, y=y, z=z)


def _slides(unit: Construction, under: Ledger) -> Iterator[Weighed]:
    for drawer in unit.drawers:
        slides = drawer.run.slides
        for weight, x, y, z in half_slides(unit.face, drawer):
            half = under.given(f"{drawer.code}-slides", weight, "half a pair, from the slide table", Pounds)
            name = f"half of {slides.model.name}" if slides else "half a pair of slides"
            for mark, where in (("slides", "in the drawer"), ("runs", "in the case")):
                yield Weighed(
                    code=f"{drawer.code}-{mark}", name=f"{name}, {where}", wood="", weight=half, x=x, y=y, z=z
                )


def carries(unit: Construction, ledger: Ledger) -> tuple[Carry, ...]:
    """What has to be carried: the piece as it is, the case with its drawers out, the heaviest drawer.

    Args:
        unit: the unit
        ledger: keeps the working

    Returns:
        Each with its people, the whole piece first; the drawers only where there are some.

    Source: common practice: drawers travel by themselves.
    """
    under, masses, each = ledger.under("lifting"), unit.masses, unit.spec.use.lift_lb
    loads: list[tuple[str, str, float]] = [("whole", "the piece with its drawers", masses.total)]
    if masses.drawers:
        out = masses.total - sum(each.weight for each in masses.drawers.values())
        code, heaviest = max(masses.drawers.items(), key=lambda item: item[1].weight)
        loads += [
            ("case", "the case, drawers out", out),
            ("drawer", f"the heaviest drawer, {code}", heaviest.weight),
        ]
    return tuple(
        Carry(what=what, weight=weight, people=under.take(name, people_needed, weight=weight, each=each))
        for name, what, weight in loads
    )
