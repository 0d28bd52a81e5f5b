"""A measured opening far from its drawing is doubted: it may have been another one before rows moved."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct


def _found(sizes: dict[str, str]) -> dict[str, tuple[Verdict, str]]:
    spec = preset("dresser").spec_json | {"measured": {"openings": {"R3-1": sizes}}}
    unit = construct(read_as(UnitSpec, spec), example_shop())
    return {
        str(each.message).split()[0]: (each.verdict, each.about)
        for each in unit.findings
        if each.rule == "measured beside drawn"
    }


def test_nothing_is_said_where_nothing_was_measured() -> None:
    assert _found({}) == {}


@pytest.mark.parametrize(
    ("off", "verdict"), [(-1 / 16, Verdict.PASS), (1 / 4, Verdict.PASS), (17 / 64, Verdict.CAUTION)]
)
def test_more_than_a_quarter_inch_is_doubted(off: float, verdict: Verdict) -> None:
    """A quarter inch: common practice; cases come out within an eighth of their drawing."""
    [opening] = [
        each
        for each in construct(preset("dresser").spec(), example_shop()).face.openings
        if each.code == "R3-1"
    ]
    assert _found({"height": str(float(opening.height) + off)}) == {"Height": (verdict, "A-R3-1")}
