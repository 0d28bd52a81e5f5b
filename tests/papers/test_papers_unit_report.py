"""The unit's report as text: a gap that closes is told in words."""

from dataclasses import replace

from casewright.measure.lengths import LengthUnit
from casewright.papers.unit_report import openings_section
from casewright.papers.writing import Writing
from units import built, chest


def test_a_gap_that_closes_says_by_how_much_it_binds_instead_of_a_minus():
    """1/64 in less than none: 0.016 in, or 0.40 mm (1/64 of 25.4 is 0.397)."""
    assert Writing().gap(-1 / 64) == "binds by 1/64"
    assert Writing().gap(-1 / 64, is_fine=True) == "binds by 0.016"
    assert Writing(unit=LengthUnit.MILLIMETRE).gap(-1 / 64, is_fine=True) == "binds by 0.40"
    assert Writing().gap(1 / 64) == "1/64"


def test_the_table_of_drawers_says_so():
    unit = built(chest())
    first, *others = unit.drawers
    gaps = replace(first.sizes.gaps, wettest_front=-0.018)
    closed = replace(unit, drawers=(replace(first, sizes=replace(first.sizes, gaps=gaps)), *others))

    assert "binds by" not in openings_section(unit, Writing())
    assert "binds by 0.018" in openings_section(closed, Writing())
    assert "-0.018" not in openings_section(closed, Writing())
