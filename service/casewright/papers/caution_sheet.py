"""The caution sheet of a job as it is kept: what the stability screen found, what the customer is told."""

import json
import math
from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.drawing.standing import standing_view
from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.papers.head import JobPaper, PaperHead
from casewright.papers.stand_words import (
    ONLY_THE_TEST,
    SIDEWAYS,
    alone_line,
    limit_words,
    mending,
    others_open_words,
    scope_words,
    together_line,
    verdict_of,
    wall_lines,
)
from casewright.pieces.asked.fields import Spec
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.standing import Standing, basis_of, unit_standing
from casewright.stability.limits import house_limits
from casewright.stability.tip_checks import SOURCES, factor_shown, what_is_done, worst_cases
from casewright.wood.sheets import label_area


class LimitRow(Spec):
    """One of the three limits of the rule."""

    name: str
    found: str
    least: str
    reached: bool
    basis: str
    found_number: float


class CaseRow(Spec):
    """One kind of situation at its worst; `of` has the factors of all its drawers."""

    done: str
    of: tuple[str, ...]
    holding_in_lb: float
    tipping_in_lb: float
    factor: float | None
    verdict: str
    basis: str


class CarryRow(Spec):
    """Something that is carried in one piece."""

    what: str
    weight_lb: float
    people: int


class UnitCaution(Spec):
    """What the screen found of one unit."""

    code: str
    name: str
    count: int
    covered: bool
    scope: str
    limits: tuple[LimitRow, ...]
    cases: tuple[CaseRow, ...]
    travels: tuple[str, ...]
    travels_in: dict[str, float]
    others: str
    remedies: tuple[str, ...]
    carries: tuple[CarryRow, ...]
    wall: tuple[str, ...]
    view: str
    composite: str = ""
    """What the piece carries a label for: its faces of composite wood; empty for none."""
    not_enough: tuple[str, ...] = ()
    """What helps against tipping and does not suffice by itself."""
    is_fixed: bool = False
    """Is it fixed to the building? Then its situations are for information, and nothing is to be mended."""


class Told(Spec):
    """Something to know, with its source."""

    text: str
    source: str


class CautionSheetPaper(JobPaper):
    """The caution sheet of a job. Weights in pounds, moments in inch-pounds, lengths in inches."""

    units: tuple[UnitCaution, ...]
    screen: str
    label: tuple[Told, ...]
    wording: str
    restraint: tuple[Told, ...]
    certificate: Told


@cache
def told() -> dict[str, Any]:
    """What every caution sheet tells, each with its source."""
    text = files("casewright.papers").joinpath("data/tipping.json").read_text(encoding="utf-8")
    held: dict[str, Any] = json.loads(text)
    return held


def caution_sheet_paper(head: PaperHead, units: Iterable[Construction]) -> CautionSheetPaper:
    """The caution sheet of a job.

    Args:
        head: who, what and when
        units: every unit, worked out

    Returns:
        The paper, ready to be printed or kept.
    """
    known = told()
    return CautionSheetPaper(
        head=head,
        units=tuple(_unit(unit_standing(unit), head.unit) for unit in units),
        screen=ONLY_THE_TEST,
        label=tuple(map(Told.model_validate, known["label"])),
        wording=known["wording"],
        restraint=tuple(map(Told.model_validate, known["restraint"])),
        certificate=Told.model_validate(known["certificate"]),
    )


def _unit(held: Standing, shown: LengthUnit) -> UnitCaution:
    spec, travels = held.unit.spec, {code: float(travel) for code, travel in held.alone.items()}
    worst = min(worst_cases(held.cases), key=lambda case: case.factor)
    lines = (line for line in (together_line(held), alone_line(held)) if line)
    found = mending(held)
    return UnitCaution(
        code=spec.code,
        name=spec.name,
        count=spec.count,
        covered=held.covered,
        scope=in_unit(scope_words(held), shown),
        limits=tuple(
            LimitRow(
                name=each.name,
                found=in_unit(limit_words(each, each.found), shown),
                least=in_unit(limit_words(each, each.least), shown),
                reached=each.is_reached,
                basis=each.basis,
                found_number=float(each.found),
            )
            for each in held.limits
        ),
        cases=tuple(_cases(held, shown)),
        travels=tuple(in_unit(line, shown) for line in lines),
        travels_in={"together": float(held.unit.stand.safe_travel), **travels},
        others=in_unit(others_open_words(held), shown),
        remedies=(*(in_unit(line, shown) for line in found.enough), SIDEWAYS) if found.enough else (),
        not_enough=tuple(in_unit(line, shown) for line in found.not_enough),
        is_fixed=not held.unit.stand.use.free_standing,
        carries=tuple(
            CarryRow(what=each.what, weight_lb=float(each.weight), people=int(each.people))
            for each in held.carries
        ),
        wall=tuple(in_unit(line, shown) for line in wall_lines(held.wall)) if held.wall else (),
        view=standing_view(held.unit, worst, shown).svg(),
        composite=_composite(held),
    )


def _composite(held: Standing) -> str:
    """The label of composite wood, where a face is large enough for one."""
    found = next((each for each in held.unit.findings if each.rule == "composite-wood label"), None)
    if found is None or found.verdict is Verdict.PASS:
        return ""
    return (
        f"Parts {found.about}: a face of composite wood is over {label_area():g} sq in. The piece carries "
        "the label of the rule, with the maker's name and the month it was made, and the invoice of the "
        f"sheets is kept ({found.source})."
    )


def _cases(held: Standing, shown: LengthUnit) -> Iterator[CaseRow]:
    """Each kind of situation at its worst, with the factors of all its drawers."""
    for worst in worst_cases(held.cases):
        alike = [case for case in held.cases if case.situation.kind is worst.situation.kind]
        yield CaseRow(
            done=in_unit(what_is_done(worst, held.unit.stand.piece, house_limits()), shown),
            of=tuple(f"{case.situation.about} {factor_shown(case.factor)}" for case in alike)
            if len(alike) > 1
            else (),
            holding_in_lb=float(worst.holding),
            tipping_in_lb=float(worst.tipping),
            factor=None if math.isinf(worst.factor) else float(worst.factor),
            verdict=verdict_of(worst, held),
            basis=basis_of(SOURCES[worst.situation.kind]),
        )
