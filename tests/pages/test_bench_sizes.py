"""At the bench, what must be measured next stands where the next step says so."""

import re

import pytest

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand
from casewright.records.sessions import writing
from casewright.shop.bench import drawer_place

KEPT = {"opening.height": "6", "opening.width": "22-1/2", "SL.thickness": "1/2", "SR.thickness": "31/64"}


def measured(shop, drawer):
    """The sizes that are kept of a drawer [in]."""
    with writing(shop.engine, shop.shop_id) as db:
        return drawer_place(db, drawer).drawer_progress.measured


@pytest.fixture
def drawer(shop):
    """A drawer that is milled, in a case that is glued up."""
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    made = drawer_ids(shop, job)["R2-1"]
    drawer_reaches(shop, made, "milled")
    return made


def test_a_step_that_waits_for_a_size_has_its_field_right_below(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer = drawer_ids(shop, job)["R2-1"]
    drawer_reaches(shop, drawer, "milled")

    held = bench.get(f"/bench/{drawer}").html
    answer = bench.send(f"/bench/{drawer}/sizes", **{"opening.height": "6", "opening.width": "22-1/2"}).html

    # the reason, then its two sizes, the other needed ones, the button, the numbers; each once
    order = [
        "It needs the opening",
        'id="opening-width"',
        'id="SL-thickness"',
        "Keep these sizes",
        'id="numbers"',
    ]
    assert [held.count(each) for each in order] == [1] * 5
    assert sorted(order, key=held.index) == order
    # nothing is waited for any more: the numbers come first
    assert answer.index('id="numbers"') < answer.index('id="opening-width"')


def test_only_a_size_for_want_of_which_the_next_stage_is_held_is_called_needed(bench, drawer):
    first = bench.get(f"/bench/{drawer}")
    second = bench.send(f"/bench/{drawer}/sizes", opening__height="6")
    third = bench.send(f"/bench/{drawer}/sizes", opening__width="22-1/2")
    fourth = bench.send(f"/drawers/{drawer}/stage")

    found = [
        re.findall(r'<label for="([a-zA-Z-]*)">[^<]* <b class="needed">', each.html)
        for each in (first, second, third, fourth)
    ]
    assert found == [
        ["opening-height", "opening-width"],
        ["opening-width"],
        [],
        ["SL-thickness", "SR-thickness"],
    ]


def test_a_tap_by_script_brings_the_sizes_that_are_waited_for_with_it(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer = drawer_ids(shop, job)["R2-1"]

    answer = bench.browser.post(
        f"/drawers/{drawer}/stage",
        data={"once": "a", "stage": "milled", "back": f"/bench/{drawer}"},
        headers={"hx-request": "true", "x-block": "live"},
    ).text

    assert (
        answer.index("It needs the opening") < answer.index('id="opening-height"') < answer.index("numbers")
    )
    assert "hx-preserve" not in answer


@pytest.mark.parametrize(
    ("part", "fault"),
    [("ticks", {"dry.diagonals": "1/0"}), ("notes", {"note": ""})],
    ids=["a wrong line of the dry-fit list", "an empty note"],
)
def test_a_fault_in_one_form_leaves_the_sizes_of_another_where_they_are(shop, bench, drawer, part, fault):
    bench.post(f"/bench/{drawer}/sizes", **KEPT)

    page = bench.post(f"/bench/{drawer}/{part}", 422, **fault)
    shown = {name: page.form(f"/bench/{drawer}/sizes").value(name) for name in KEPT}
    bench.send(f"/bench/{drawer}/sizes")

    assert shown == KEPT
    assert len(measured(shop, drawer)) == 4


def test_a_fault_in_a_size_leaves_the_diagonals_where_they_are(shop, bench, drawer):
    bench.post(f"/bench/{drawer}/ticks", **{"dry.diagonals": "1/64"})

    page = bench.post(f"/bench/{drawer}/sizes", 422, **{"opening.height": "8 1/0"})
    shown = page.form(f"/bench/{drawer}/ticks").value("dry.diagonals")
    bench.send(f"/bench/{drawer}/ticks")

    assert shown == "1/64"
    assert measured(shop, drawer) == {"dry.diagonals": 1 / 64}


def test_a_field_that_was_emptied_beside_a_wrong_one_stays_empty(bench, drawer):
    bench.post(f"/bench/{drawer}/sizes", **KEPT)

    page = bench.post(f"/bench/{drawer}/sizes", 422, **(KEPT | {"opening.height": "x", "opening.width": ""}))

    form = page.form(f"/bench/{drawer}/sizes")
    assert (form.value("opening.height"), form.value("opening.width")) == ("x", "")
