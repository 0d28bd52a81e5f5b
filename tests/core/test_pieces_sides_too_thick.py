"""Sides that are thicker than their drawer allows are refused by what they are, not by what follows."""

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from casewright.pieces.built.measuring import with_measured
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.shop.at_bench import plain_sentence
from units import dresser, unit


def test_a_side_as_thick_as_its_drawer_is_refused_with_how_thick_it_may_be():
    spec = with_measured(unit(dresser()), {}, {"R1-1-SR": {"thickness": 99.0}})

    with pytest.raises(CannotBuild) as refused:
        construct(spec, example_shop())

    assert "sides 1/2 in and 99 in thick leave too little" in str(refused.value)
    assert "together they may be" in str(refused.value)
    assert "muntin" not in str(refused.value)


def test_the_bench_reads_no_path_of_a_unit_file():
    said = plain_sentence(ValueError("parts.R1-2-SR: what is left is thicker than the side"), LengthUnit.INCH)

    assert said == "What is left is thicker than the side."
