"""Hours at the bench, written down: entries and their opposites, beside the work, as people write them."""

import pytest

from benchwork import (
    CASE_STAGES,
    case_reaches,
    drawer_ids,
    drawer_reaches,
    job_in_hand,
    logged,
    minutes,
    start_timer_of,
)
from casewright.records.people import Role
from casewright.shop.refusals import Refused
from casewright.shop.time import read_minutes, whole_minutes
from counting import MOST, counted


@pytest.fixture
def job(shop):
    """A job in hand."""
    return job_in_hand(shop)


def test_time_is_written_down_and_compared_with_the_estimate(shop, maker, job):
    maker.get(f"/jobs/{job}/hours")

    page = maker.send(f"/jobs/{job}/hours", operation="D06", time="1:30", note="Curly grain.")

    assert "Added." in page.text
    assert "12 % for rest, sharpening and fetching" in page.text
    assert "1 Mar 2027 Ben Tull D06 Saw and chop the tails 1:30 h" in page.text
    assert "Curly grain." in page.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("time", "soon", "“soon” is not a time."),
        ("time", "", "This is empty. Write minutes such as 45"),
        ("time", "0", "An entry is from 1 minute to 24 hours"),
        ("day", "2027-03-02", "This day is still to come"),
        ("day", "yesterday", "“yesterday” is not a day."),
        ("operation", "", "Choose one of the list."),
    ],
)
def test_a_bad_entry_is_refused_beside_its_field_and_kept(shop, bench, job, field, typed, sentence):
    good = {"operation": "D06", "time": "45", "note": "Kept."}
    bench.get(f"/jobs/{job}/hours")

    page = bench.send(f"/jobs/{job}/hours", status=422, **(good | {field: typed}))

    assert f"{field.capitalize()}: {sentence}" in page.text
    assert page.form(f"/jobs/{job}/hours").value("note") == "Kept."
    assert f'id="{field}-fault"' in page.html
    assert logged(shop) == []


def test_the_office_writes_down_for_others(shop, maker, job):
    maker.get(f"/jobs/{job}/hours")

    page = maker.send(f"/jobs/{job}/hours", operation="D06", time="45", person=shop.people[Role.BENCH].id)

    assert "written down by Ben Tull" in page.text
    assert [entry.person_id for entry in logged(shop)] == [shop.people[Role.BENCH].id]


def test_the_bench_writes_down_for_itself_only(shop, bench, job):
    bench.post(
        f"/jobs/{job}/hours",
        operation="D06",
        time="45",
        day="2027-03-01",
        person=shop.people[Role.MAKER].id,
    )

    assert [entry.person_id for entry in logged(shop)] == [shop.people[Role.BENCH].id]


def test_the_bench_sees_its_own_time_and_no_other(shop, bench, maker, job):
    maker.get(f"/jobs/{job}/hours")
    maker.send(f"/jobs/{job}/hours", operation="D08", time="2:00")
    bench.get(f"/jobs/{job}/hours")

    page = bench.send(f"/jobs/{job}/hours", operation="D06", time="0:45")

    assert "Your time" in page.text
    assert "0:45 h" in page.text
    assert "2:00 h" not in page.text
    assert "Estimated" not in page.text
    assert "$" not in page.text


def test_a_form_sent_twice_makes_one_entry(shop, bench, job):
    fields = dict(bench.get(f"/jobs/{job}/hours").form(f"/jobs/{job}/hours").sent())
    fields |= {"operation": "D06", "time": "45"}

    bench.post(f"/jobs/{job}/hours", **fields)
    bench.post(f"/jobs/{job}/hours", **fields)

    assert minutes(logged(shop)) == [45]


def test_an_entry_is_taken_back_by_its_opposite_and_stays_in_the_log(shop, bench, job):
    bench.get(f"/jobs/{job}/hours")
    bench.send(f"/jobs/{job}/hours", operation="D06", time="45")
    (entry,) = logged(shop)

    page = bench.send(f"/jobs/{job}/hours/{entry.id}/correction")
    bench.post(f"/jobs/{job}/hours/{entry.id}/correction")

    assert minutes(logged(shop)) == [45, -45]
    assert logged(shop)[1].corrects_id == entry.id
    assert "takes an entry back, by Cy Roper" in page.text


def test_the_opposite_of_an_entry_is_not_taken_back(shop, bench, job):
    bench.get(f"/jobs/{job}/hours")
    bench.send(f"/jobs/{job}/hours", operation="D06", time="45")
    bench.post(f"/jobs/{job}/hours/{logged(shop)[0].id}/correction")

    page = bench.post(f"/jobs/{job}/hours/{logged(shop)[1].id}/correction", 409)

    assert "write the time down anew instead" in page.text


def test_the_bench_does_not_take_back_the_time_of_others(shop, bench, maker, job):
    maker.get(f"/jobs/{job}/hours")
    maker.send(f"/jobs/{job}/hours", operation="D08", time="2:00")

    bench.post(f"/jobs/{job}/hours/{logged(shop)[0].id}/correction", 403)

    assert minutes(logged(shop)) == [120]


def test_hours_that_run_ahead_of_the_work_are_warned_of(shop, maker, job):
    for _ in range(2):
        maker.get(f"/jobs/{job}/hours")
        maker.send(f"/jobs/{job}/hours", operation="D06", time="24:00")

    page = maker.get(f"/jobs/{job}/hours")

    assert "The hours run ahead of the work." in page.text
    assert "0% of the work is done" in page.text


def test_work_that_is_done_takes_the_warning_away(shop, maker, job):
    case_reaches(shop, job, CASE_STAGES[-1])
    for drawer in drawer_ids(shop, job).values():
        drawer_reaches(shop, drawer, "in")
    for _ in range(2):
        maker.get(f"/jobs/{job}/hours")
        maker.send(f"/jobs/{job}/hours", operation="D06", time="24:00")

    page = maker.get(f"/jobs/{job}/hours")

    assert "The hours run ahead of the work." not in page.text


def test_neither_maker_nor_owner_finds_money_among_the_hours(shop, maker, owner, job):
    assert "$" not in maker.get(f"/jobs/{job}/hours").text
    assert "$" not in owner.get(f"/jobs/{job}/hours").text


@pytest.mark.one_database
def test_the_hours_cost_the_same_few_statements_however_long_the_log(shop, maker, job):
    start_timer_of(maker, job)
    with counted(shop.engine) as few:
        maker.get(f"/jobs/{job}/hours")
    for number in range(20):
        maker.post(f"/jobs/{job}/hours", operation="D06", time="5", day="2027-03-01", once=f"mark {number}")

    with counted(shop.engine) as many:
        maker.get(f"/jobs/{job}/hours")

    assert len(few) == len(many) <= MOST


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("45", 45),
        ("45 min", 45),
        ("1:30", 90),
        ("1:5", 65),
        ("1.5 h", 90),
        ("1,5 h", 90),
        ("2 h", 120),
        ("1 h 30", 90),
        ("1h30min", 90),
        ("24:00", 1440),
        ("1.5", 90),
        ("1,5", 90),
        (".75", 45),
        ("6h30m", 390),
        ("2h 15", 135),
    ],
)
def test_a_time_is_read_as_people_write_it(typed, expected):
    assert read_minutes(typed) == expected * 60


@pytest.mark.parametrize("typed", ["", "-5", "1:75", "25:00", "1.5.5", "25.5", "h", "9" * 400, "٤٥"])
def test_what_is_no_time_is_refused(typed):
    with pytest.raises(Refused):
        read_minutes(typed)


@pytest.mark.parametrize(("seconds", "expected"), [(0, 1), (29, 1), (89, 1), (90, 2), (3599, 60)])
def test_seconds_become_the_nearest_minute_and_one_at_the_least(seconds, expected):
    assert whole_minutes(seconds) == expected * 60
