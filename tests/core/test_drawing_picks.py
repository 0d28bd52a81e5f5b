"""Every view of a unit leads from its drawers to wherever they are asked for, and leads nowhere unasked."""

import re

import pytest

from casewright.drawing.opened import opened_view
from casewright.drawing.plan import plan_view
from casewright.drawing.section import section
from units import built, dresser

PLACE = re.compile(
    r'<a href="#(?P<to>[^"]+)" data-pick="(?P<code>[^"]+)" aria-label="[^"]+">'
    r'<rect x="(?P<x>[^"]+)" y="(?P<y>[^"]+)" width="(?P<width>[^"]+)" height="(?P<height>[^"]+)"'
)


@pytest.fixture(scope="module")
def unit():
    """Worked dresser A: two drawers side by side over four."""
    return built(dresser({}))


@pytest.mark.parametrize("view", [section, opened_view, plan_view])
def test_a_view_leads_nowhere_unless_it_is_asked_to(unit, view):
    assert "<a " not in view(unit).svg()


@pytest.mark.parametrize("view", [section, opened_view])
def test_from_the_side_each_row_leads_to_one_of_its_drawers(unit, view):
    places = [found.groupdict() for found in PLACE.finditer(view(unit, None, lambda code: f"#{code}").svg())]

    assert [each["code"].partition("-")[0] for each in places] == ["R1", "R2", "R3", "R4", "R5"]
    assert all(each["to"] == each["code"] for each in places)
    # The lowest opening of worked dresser A is 8-1/2 high.
    assert float(places[-1]["height"]) == pytest.approx(8.5, abs=0.01)


def test_a_plan_leads_to_the_drawers_that_it_cuts(unit):
    places = [
        found.groupdict() for found in PLACE.finditer(plan_view(unit, None, lambda code: f"#{code}").svg())
    ]

    assert [each["code"] for each in places] == ["R1-1", "R1-2"]
    # 38 between the sides less an upright of 3/4 is 37-1/4, half of which is 18-5/8.
    assert [float(each["width"]) for each in places] == pytest.approx([18.625, 18.625], abs=0.01)


def test_a_drawer_that_is_open_is_a_larger_place_than_one_that_is_shut(unit):
    shut, opened = (
        [float(found["width"]) for found in PLACE.finditer(view(unit, None, lambda code: f"#{code}").svg())]
        for view in (section, opened_view)
    )

    assert all(more > less for less, more in zip(shut, opened, strict=True))


def test_what_has_no_address_is_no_place(unit):
    drawn = section(unit, None, lambda code: "#here" if code.startswith("R5") else "").svg()

    assert [found["code"] for found in PLACE.finditer(drawn)] == ["R5-1"]
