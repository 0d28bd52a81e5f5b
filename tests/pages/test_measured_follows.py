"""What was measured at the bench goes with its drawer when rows are added, moved or taken out."""

import pytest
from sqlalchemy import select

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand, unit_address
from casewright.records.bench import Drawer
from casewright.records.sessions import reading
from casewright.shop.measured import bench_sizes
from pages.unit_jobs import filled

NOTE = {"note": "The customer asks for it."}


@pytest.fixture
def job(shop):
    """A chest of three drawers whose case is glued and whose second drawer is measured."""
    made = job_in_hand(shop)
    case_reaches(shop, made, "glued")
    return made


@pytest.fixture
def unit(shop, job):
    return unit_address(shop, job)


@pytest.fixture
def measured(shop, bench, job):
    """The second drawer; its left side is 15/32 in thick."""
    drawer = drawer_ids(shop, job)["R2-1"]
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/sizes", SL__thickness="15/32")
    return drawer


def sizes(shop, unit):
    """The thickness of left sides that counts now, by the code of the drawer."""
    with reading(shop.engine, shop.shop_id) as db:
        found = bench_sizes(db, [unit.rpartition("/")[2]]).get((unit.rpartition("/")[2], 1), {})
        return {code: each["SL.thickness"] for code, each in found.items() if "SL.thickness" in each}


def row_of(shop, drawer):
    with reading(shop.engine, shop.shop_id) as db:
        found = db.get_one(Drawer, (shop.shop_id, drawer))
        return found.code, found.gone


def press(maker, unit, *acts):
    """The form after some of its buttons, as it would be sent."""
    page = maker.get(unit)
    for act in acts:
        page = maker.post(f"{unit}/working", 200, **filled(page, unit, {}), do=act)
    return page


def save(maker, unit, page, **typed):
    return maker.post(unit, **filled(page, unit, {**NOTE, **typed}))


@pytest.mark.one_database
def test_a_row_above_moves_the_drawer_and_its_sizes_go_along(shop, maker, unit, measured):
    save(maker, unit, press(maker, unit, "row-above-1"))

    assert sizes(shop, unit) == {"R3-1": 15 / 32}
    assert row_of(shop, measured) == ("R3-1", False)


@pytest.mark.one_database
def test_two_rows_that_change_places_keep_what_is_theirs(shop, maker, unit, measured):
    save(maker, unit, press(maker, unit, "row-up-2"))

    assert sizes(shop, unit) == {"R1-1": 15 / 32}


def test_the_sizes_of_a_drawer_that_is_taken_out_are_kept_and_not_applied(shop, maker, bench, unit, measured):
    save(maker, unit, press(maker, unit, "row-remove-2"))

    assert sizes(shop, unit) == {}
    assert row_of(shop, measured) == ("R2-1", True)
    page = bench.get(f"/bench/{measured}")
    assert "The present design has no such opening any more." in page.text
    assert "15/32" in page.text


@pytest.mark.one_database
def test_a_new_row_with_the_old_code_begins_with_nothing(shop, maker, unit, measured):
    save(maker, unit, press(maker, unit, "row-remove-2", "row-below-1"))

    assert sizes(shop, unit) == {}
    assert row_of(shop, measured) == ("R2-1", True)


def test_undo_takes_the_move_back(shop, maker, unit, measured):
    save(maker, unit, press(maker, unit, "row-above-1", "undo"), **{"drawers.side": "15/32"})

    assert sizes(shop, unit) == {"R2-1": 15 / 32}


@pytest.mark.one_database
def test_several_moves_before_saving_are_followed_to_the_end(shop, maker, unit, measured):
    save(maker, unit, press(maker, unit, "row-above-1", "row-down-3", "row-remove-1"))

    assert sizes(shop, unit) == {"R3-1": 15 / 32}


def test_moves_in_several_revisions_are_followed(shop, maker, unit, measured):
    save(maker, unit, press(maker, unit, "row-above-1"))
    save(maker, unit, press(maker, unit, "row-down-3"))

    assert sizes(shop, unit) == {"R4-1": 15 / 32}


def test_an_old_revision_brought_back_has_its_drawer_and_sizes_again(shop, maker, unit, measured):
    save(maker, unit, press(maker, unit, "row-remove-2"))
    save(maker, unit, press(maker, unit, "row-above-1"))
    page = maker.get(f"{unit}/revisions/1")

    maker.post(f"{unit}/revisions", **filled(page, f"{unit}/revisions", NOTE))

    assert sizes(shop, unit) == {"R2-1": 15 / 32}
    assert row_of(shop, measured) == ("R2-1", False)


def test_saved_over_somebody_else_the_drawer_is_followed_from_what_was_opened(shop, maker, unit, measured):
    mine = press(maker, unit, "row-up-2")
    save(maker, unit, press(maker, unit, "row-above-1"))

    stale = maker.post(unit, 409, **filled(mine, unit, NOTE))
    maker.post(unit, **filled(stale, unit, NOTE))

    assert sizes(shop, unit) == {"R1-1": 15 / 32}


@pytest.mark.one_database
def test_the_bench_says_how_its_parts_are_still_marked(maker, bench, unit, measured):
    save(maker, unit, press(maker, unit, "row-above-1"))

    page = bench.get(f"/bench/{measured}")

    assert "This drawer was R2-1 before rows were moved." in page.text


def test_a_moved_drawer_stands_at_its_stage_beside_the_code_that_it_had(shop, maker, job, unit):
    drawer_reaches(shop, drawer_ids(shop, job)["R3-1"], "glued")
    save(maker, unit, press(maker, unit, "row-remove-1"))
    save(maker, unit, maker.get(unit), **{"woods.fronts.wood": "walnut"})

    against_first = maker.get(f"{unit}/revisions/3/rework?against=1").text
    against_second = maker.get(f"{unit}/revisions/3/rework?against=2").text

    assert "A-R3-1-F" in against_first
    assert "Drawer front, row 2 A-R2-1-F glued in" in against_second


@pytest.mark.one_database
@pytest.mark.parametrize("text", ["", "x R1-1=R9-9", "1 R1-1=R2-1 R2-1=R2-1", "999999 R1-1="])
def test_a_field_that_says_nonsense_loses_nothing(shop, maker, unit, measured, text):
    sent = filled(maker.get(unit), unit, {**NOTE, "drawers.side": "7/16"})

    maker.post(unit, **{**sent, "follows": text})

    assert len(sizes(shop, unit)) <= 1
    with reading(shop.engine, shop.shop_id) as db:
        assert len(db.scalars(select(Drawer).where(Drawer.gone.is_(False))).all()) == 3
