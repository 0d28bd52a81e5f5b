"""Sheets by area, the label rule, and how much finish to buy."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.ledger import Ledger
from casewright.wood.basis import Basis
from casewright.wood.finish import Finish, coated_area, finish, finishes, quarts_needed, whole_quarts
from casewright.wood.grades import GradeName
from casewright.wood.sheets import needs_label, sheet, sheet_waste, sheets, sheets_by_area
from casewright.wood.species import wood
from casewright.wood.waste import PartUse, waste_for


def test_sheets_are_counted_from_the_net_area_with_waste_as_a_part_of_what_is_bought() -> None:
    birch = sheet("birch plywood", "1/4")

    bought = sheets_by_area([2000, 2000, 2000], birch)

    # arithmetic: 6000 / 0.85 / 3600 = 1.961
    assert bought.exact == pytest.approx(1.961, abs=0.001)
    assert bought.count == 2
    assert "by area" in bought.note


def test_the_working_of_a_sheet_count_can_be_asked_for() -> None:
    ledger = Ledger()

    bought = sheets_by_area([4000], sheet("mdf", "3/4"), ledger=ledger)

    assert ledger["sheets_by_area"].value == bought.exact


def test_exactly_one_sheet_of_parts_without_waste_is_one_sheet() -> None:
    mdf = sheet("mdf", "3/4")
    none = type(sheet_waste())(
        fraction=0.0, footage=sheet_waste().footage, row="none", evidence=sheet_waste().evidence
    )

    assert sheets_by_area([mdf.area / 3] * 3, mdf, none).count == 1


@given(st.lists(st.floats(10, 2000), max_size=30))
def test_the_sheets_bought_hold_the_area_of_the_parts(areas: list[float]) -> None:
    mdf = sheet("mdf", "1/2")

    bought = sheets_by_area(areas, mdf)

    # a billionth of a sheet is forgiven in rounding up
    assert bought.count * mdf.area >= sum(areas) - 1e-4


def test_a_waste_on_rough_lumber_is_refused_for_sheets() -> None:
    rough = waste_for(wood("poplar"), GradeName.FAS, PartUse.INSIDE)

    with pytest.raises(ValueError, match="Take a waste on net size"):
        sheets_by_area([100], sheet("mdf", "3/4"), rough)


@pytest.mark.parametrize(("face", "labelled"), [(144, False), (144.1, True), (13.75 * 12.75, True)])
def test_a_composite_panel_over_the_limit_is_labelled(face: float, labelled: bool) -> None:
    assert needs_label(sheet("hardwood plywood", "1/4"), face) is labelled


def test_a_sheet_that_is_not_sold_is_refused_with_those_of_its_kind() -> None:
    with pytest.raises(ValueError, match="1/4 in mdf, 1/2 in mdf, 3/4 in mdf"):
        sheet("MDF", "7/8")


def test_a_kind_that_is_not_sold_is_refused_with_the_kinds() -> None:
    with pytest.raises(ValueError, match="hardwood plywood, birch plywood, mdf, particleboard"):
        sheet("marble", "3/4")


@pytest.mark.parametrize("each", sheets(), ids=str)
def test_no_sheet_is_thicker_than_it_is_called(each: object) -> None:
    named = {"1/8": 0.125, "1/4": 0.25, "3/8": 0.375, "1/2": 0.5, "5/8": 0.625, "3/4": 0.75, "1": 1.0}

    # a 6.5 mm sheet called 1/4 in is 0.006 in over its name
    assert each.thickness <= named[each.nominal] + 0.007  # type: ignore[attr-defined]


def test_finish_for_a_dresser_is_bought_by_the_quart() -> None:
    varnish = finish("wiping varnish")

    quarts = quarts_needed(coated_area(30, 4) + coated_area(40, 1), varnish.coverage, varnish.loss)

    # arithmetic: 160 / 125 * 1.15 = 1.472
    assert quarts == pytest.approx(1.472, abs=0.0005)
    assert whole_quarts(quarts) == 2


def test_two_quarts_exactly_are_two_quarts() -> None:
    assert whole_quarts(quarts_needed(250, 125, 0)) == 2


def test_sprayed_lacquer_loses_more_than_anything_brushed() -> None:
    lost = {each.name: each.loss for each in finishes()}

    assert lost.pop("lacquer") == 0.30
    assert set(lost.values()) == {0.15}


def test_every_finish_is_marked_as_a_habit_to_be_replaced_by_the_shops_own_measure() -> None:
    assert {each.evidence.basis for each in finishes()} == {Basis.COMMON_PRACTICE}


@pytest.mark.parametrize(
    ("asked", "name"), [("Water-Based", "water-base"), ("danish oil", "oil"), ("SHELLAC", "shellac")]
)
def test_a_finish_is_found_by_other_names(asked: str, name: str) -> None:
    assert finish(asked).name == name


def test_a_finish_that_is_not_known_is_refused_with_those_that_are() -> None:
    with pytest.raises(ValueError, match="wiping varnish, varnish, oil"):
        finish("milk")


def test_a_finish_that_covers_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="covers something"):
        Finish(
            name="air",
            coverage=0,
            loss=0,
            aliases=(),
            evidence=finish("oil").evidence,
            loss_evidence=finish("oil").loss_evidence,
        )
