"""Waste is a part of what is bought, and belongs to one kind of feet."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.basis import Basis, Evidence
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.species import wood, woods
from casewright.wood.waste import (
    Footage,
    NoWasteFigure,
    PartUse,
    Waste,
    learned_waste,
    mill_waste,
    order_feet,
    order_feet_from_net,
    waste_for,
    waste_found,
)

GUESS = Evidence(basis=Basis.COMMON_PRACTICE, source="common practice")


def waste_of(fraction: float, footage: Footage = Footage.ROUGH) -> Waste:
    return Waste(fraction=fraction, footage=footage, row="a row", evidence=GUESS)


@pytest.mark.parametrize(
    ("name", "use", "cut", "select", "common"),
    [
        ("poplar", PartUse.CASE, Cut.FLAT, 0.15, 0.25),
        ("soft maple", PartUse.DRAWER, Cut.FLAT, 0.15, 0.25),
        ("cherry", PartUse.INSIDE, Cut.FLAT, 0.15, 0.25),
        ("hard maple", PartUse.DRAWER, Cut.QUARTER, 0.15, 0.28),
        ("white ash", PartUse.DRAWER, Cut.FLAT, 0.15, 0.28),
        ("cherry", PartUse.CASE, Cut.FLAT, 0.20, 0.35),
        ("walnut", PartUse.CASE, Cut.FLAT, 0.25, 0.40),
        ("white oak", PartUse.CASE, Cut.FLAT, 0.20, 0.35),
        ("white oak", PartUse.CASE, Cut.QUARTER, 0.25, 0.35),
        ("cherry", PartUse.LEG, Cut.FLAT, 0.25, 0.40),
    ],
)
def test_waste_follows_wood_grade_use_and_cut(
    name: str, use: PartUse, cut: Cut, select: float, common: float
) -> None:
    assert waste_for(wood(name), GradeName.FAS, use, cut).fraction == select
    assert waste_for(wood(name), GradeName.SELECTS, use, cut).fraction == select
    assert waste_for(wood(name), GradeName.COMMON_1, use, cut).fraction == common


@pytest.mark.parametrize("name", ["cherry", "walnut", "poplar", "teak"])
def test_fronts_in_sequence_waste_thirty_percent_and_are_not_cut_from_common_boards(name: str) -> None:
    assert waste_for(wood(name), GradeName.FAS, PartUse.SEQUENCE).fraction == 0.30
    with pytest.raises(NoWasteFigure, match="buy FAS or Selects"):
        waste_for(wood(name), GradeName.COMMON_1, PartUse.SEQUENCE)


@pytest.mark.parametrize("use", PartUse)
@pytest.mark.parametrize("cut", Cut)
def test_every_wood_use_and_cut_has_a_figure_on_rough_size(use: PartUse, cut: Cut) -> None:
    found = [waste_for(each, GradeName.FAS, use, cut) for each in woods()]

    assert {each.footage for each in found} == {Footage.ROUGH}
    assert {each.evidence.basis for each in found} == {Basis.COMMON_PRACTICE}
    assert min(each.fraction for each in found) >= 0.15
    assert max(each.fraction for each in found) <= 0.30


def test_a_wood_that_the_table_does_not_name_takes_a_row_that_says_so() -> None:
    assert "not in the table" in waste_for(wood("butternut"), GradeName.FAS, PartUse.CASE).row


def test_no_figure_is_given_for_a_grade_that_furniture_is_not_made_of() -> None:
    with pytest.raises(NoWasteFigure, match=r"No\. 2A Common is not bought"):
        waste_for(wood("cherry"), GradeName.COMMON_2A, PartUse.CASE)


def test_a_hundred_feet_at_thirty_percent_is_not_a_hundred_and_thirty() -> None:
    # arithmetic: 100 / 0.7 = 142.857
    assert order_feet(100, waste_of(0.30)) == pytest.approx(142.857, abs=0.001)


@given(st.floats(0, 10_000), st.floats(0, 0.95))
def test_an_order_is_never_under_what_the_parts_take(rough: float, fraction: float) -> None:
    ordered = order_feet(rough, waste_of(fraction))

    assert ordered >= rough
    # what is wasted of the order leaves the parts, to the sixteenth digit
    assert ordered * (1 - fraction) == pytest.approx(rough, rel=1e-12)


def test_net_waste_is_refused_for_rough_feet() -> None:
    with pytest.raises(ValueError, match="41 % on net size does not go with feet on rough size"):
        order_feet(100, mill_waste(GradeName.COMMON_1))


def test_rough_waste_is_refused_for_net_feet() -> None:
    with pytest.raises(ValueError, match="20 % on rough size does not go with feet on net size"):
        order_feet_from_net(100, waste_for(wood("cherry"), GradeName.FAS, PartUse.CASE))


@pytest.mark.parametrize("fraction", [-0.1, 1, 20, float("nan")])
def test_waste_typed_as_a_percentage_is_refused(fraction: float) -> None:
    with pytest.raises(ValueError, match=r"such as 0\.20 for 20 %"):
        waste_of(fraction)


def test_a_job_teaches_the_shop_its_own_waste() -> None:
    learned = learned_waste(80, 110, Footage.ROUGH, "three cherry dressers, 2025")

    # arithmetic: 30 of 110 ft went: 0.2727
    assert learned.fraction == pytest.approx(0.2727, abs=0.0001)
    assert learned.evidence.basis is Basis.LEARNED
    assert order_feet(80, learned) == pytest.approx(110)


@pytest.mark.parametrize(("used", "bought"), [(0, 10), (11, 10), (-1, 10)])
def test_more_parts_than_lumber_is_refused(used: float, bought: float) -> None:
    with pytest.raises(ValueError, match="cannot come out of"):
        waste_found(used, bought)


def test_no_mill_yield_is_made_up_for_selects() -> None:
    with pytest.raises(NoWasteFigure, match="No mill yield is published for Selects"):
        mill_waste(GradeName.SELECTS)
