"""What the command that lays parts out does. Loaded only for those who ask for it."""

import argparse
import time
from pathlib import Path
from typing import Any

from casewright.cutting.asked.cut_file import CUT_FILE, CutFile, cut_file_of, cut_file_schema
from casewright.cutting.budget import Budget
from casewright.cutting.plans.plan import plan_cuts
from casewright.cutting.plans.values import CutPlan
from casewright.measure.json_files import CannotRead, parse_json
from casewright.measure.saying import refusal
from casewright.measure.sentences import Problem
from casewright.papers.cutting_data import cutting_data
from casewright.papers.cutting_report import cutting_report
from casewright.papers.writing import Writing
from casewright.pieces.asked import reading
from casewright.pieces.asked.shop import Shop, example_shop, shop
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.takeoff.cut_parts import cut_file_for
from casewright.pieces.takeoff.rough import take_off
from casewright.terminal import (
    FINE,
    Unusable,
    package_text,
    read_text,
    show,
    show_json,
    write_files,
    writing_of,
)

WITHOUT_PLACE = 1
EXAMPLE = "example_cut.json"
HELP = "`casewright cut --schema` says what a cut file holds"
NEEDS_STOCK = (
    "a unit file says what is cut, not from what: give --stock FILE, a cut file with boards and sheets and "
    "without parts"
)


def run(given: argparse.Namespace) -> int:
    """`casewright cut`.

    Args:
        given: the options

    Returns:
        The exit status: 1 where a part has no place.
    """
    if given.schema:
        return show_json(cut_file_schema())
    file, symbol = _asked(given)
    budget = Budget(now=time.monotonic, seconds=given.seconds, seed=given.seed)
    plan = plan_cuts(file, budget)
    writing = writing_of(given, file.unit, symbol)
    if given.svg:
        _write_drawings(Path(given.svg), plan, writing)
    if given.json:
        show_json(cutting_data(plan))
    else:
        show(cutting_report(plan, writing))
    return FINE if plan.is_complete else WITHOUT_PLACE


def _asked(given: argparse.Namespace) -> tuple[CutFile, str]:
    """What is to be cut, and the sign of the shop's money."""
    figures = _shop(given.shop)
    text = package_text(EXAMPLE, "casewright.cutting") if given.file is None else read_text(given.file, HELP)
    data = parse_json(text, CUT_FILE)
    stock = None if given.stock is None else parse_json(read_text(given.stock, HELP), CUT_FILE)
    if stock is not None and not isinstance(stock, dict):
        raise CannotRead(Problem("", "the file with the stock should hold one object"))
    if isinstance(data, dict) and "casewright" in data:
        if stock is None:
            raise Unusable(NEEDS_STOCK)
        return _of_unit(text, stock, figures), figures.spec.symbol
    if isinstance(data, dict) and stock is not None:
        data = {**stock, **data}
    return cut_file_of(data), figures.spec.symbol


def _of_unit(text: str, stock: dict[str, Any], figures: Shop) -> CutFile:
    spec: UnitSpec = reading.read_unit(text)
    try:
        unit = construct(spec, figures)
        return cut_file_for(unit, take_off(unit, figures), figures, stock)
    except REFUSALS as error:
        raise Unusable(refusal(error, spec.unit)) from None


def _shop(name: str | None) -> Shop:
    if name is None:
        return example_shop()
    return shop(reading.read_as(ShopSpec, reading.parse_json(read_text(name))))


def _write_drawings(folder: Path, plan: CutPlan, writing: Writing) -> None:
    from casewright.drawing.board_layout import layout_drawings  # noqa: PLC0415 - only for those who ask

    drawn = {
        name: drawing.svg(standalone=True).encode() for name, drawing in layout_drawings(plan, writing.unit)
    }
    write_files(folder, drawn, "--svg")
