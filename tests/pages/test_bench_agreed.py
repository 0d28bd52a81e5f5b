"""Between a change and the customer's word the bench goes by what is agreed; no wood is cut for the rest."""

import pytest

from benchwork import approved_unit, case_reaches, drawer_ids, drawer_reaches, job_in_hand
from casewright.web.units.form_acts import Pressed, acted
from pages.unit_jobs import EXAMPLE_FIGURES, filled, use_figures

NOTE = {"note": "The alcove is narrower."}


@pytest.fixture
def job(shop):
    """A chest of three drawers in hand, its case glued, its lowest drawer milled."""
    use_figures(shop, EXAMPLE_FIGURES)
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer_reaches(shop, drawer_ids(shop, job)["R3-1"], "milled")
    return job


@pytest.fixture
def unit(shop, owner, job):
    """The unit, approved at its first revision."""
    return approved_unit(shop, owner, job)


def revise(owner, unit, **typed):
    owner.post(unit, **filled(owner.get(unit), unit, {**NOTE, **typed}))


def agree(owner, unit):
    """The change order is made and signed."""
    address = f"{unit}/revisions/2/change-order"
    page = owner.post(address, **filled(owner.get(address), address, {"act": "make it"}))
    owner.send(f"{page.address.partition('?')[0]}/agreement", name="Ines Cole", way="signed")


def numbers_at(bench, drawer):
    """What stands under the numbers of a drawer's page."""
    found = bench.get(f"/bench/{drawer}").text.partition("Numbers inches")[2].partition("More numbers")[0]
    assert "Make it wide, W" in found
    return found


def can_be_tapped(bench, drawer):
    forms = bench.get(f"/bench/{drawer}").seen.forms
    return any(form.action.startswith((f"/drawers/{drawer}/", f"/bench/{drawer}/sizes")) for form in forms)


def test_until_a_change_is_agreed_the_bench_has_the_numbers_of_what_is_agreed(shop, owner, bench, job, unit):
    drawer = drawer_ids(shop, job)["R2-1"]
    agreed = numbers_at(bench, drawer)
    revise(owner, unit, **{"body.width": "30"})

    assert numbers_at(bench, drawer) == agreed
    assert "The numbers at the bench are those of revision 1" in bench.get(f"/bench/{drawer}").text
    agree(owner, unit)
    assert numbers_at(bench, drawer) != agreed


@pytest.mark.one_database
def test_a_size_measured_meanwhile_is_held_against_the_agreed_design_and_stays(shop, owner, bench, job, unit):
    drawer = drawer_ids(shop, job)["R2-1"]
    revise(owner, unit, **{"body.width": "30"})
    page = bench.get(f"/bench/{drawer}")
    sizes = f"/bench/{drawer}/sizes"
    bench.post(sizes, **filled(page, sizes, {"opening.width": "22-3/8"}))

    # The opening is 24 less two sides of 3/4, so 22-1/2 as agreed: 1/8 over what is measured. In the
    # revision it would be 28-1/2.
    page = bench.get(f"/bench/{drawer}").text
    assert "1/8 under" in page
    assert "6-1/8 under" not in page


@pytest.mark.one_database
def test_a_drawer_that_comes_with_a_change_is_not_made_before_the_change_is_agreed(
    shop, owner, bench, job, unit
):
    revise(owner, unit, **{"rows.2.columns": "2"})
    drawer = drawer_ids(shop, job)["R2-2"]

    assert "comes with revision 2, which is not agreed yet" in bench.get(f"/bench/{drawer}").text
    assert not can_be_tapped(bench, drawer)
    agree(owner, unit)
    assert "comes with revision" not in bench.get(f"/bench/{drawer}").text
    assert can_be_tapped(bench, drawer)


@pytest.mark.one_database
def test_a_drawer_that_a_change_moves_has_the_numbers_of_its_agreed_place_and_says_so(
    shop, owner, bench, job, unit
):
    lowest = drawer_ids(shop, job)["R3-1"]
    agreed = numbers_at(bench, lowest)
    sent = dict(owner.get(unit).form(unit).sent())
    moved = acted(sent, Pressed(act="row-up-3")).values
    owner.post(unit, **{**moved, **NOTE})

    assert drawer_ids(shop, job)["R2-1"] == lowest
    assert numbers_at(bench, lowest) == agreed
    assert "In that revision this drawer is R3-1." in bench.get(f"/bench/{lowest}").text
