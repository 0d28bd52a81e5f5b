"""Time: a timer for each person, the log of a job, and taking an entry back by its opposite."""

import re
from datetime import UTC, datetime

import pytest
from sqlalchemy import select

from benchwork import drawer_ids, job_in_hand, logged, minutes, start_timer_of
from casewright.records.bench import Timer
from casewright.records.people import Role
from casewright.records.sessions import reading


@pytest.fixture
def job(shop):
    """A job in hand."""
    return job_in_hand(shop)


def test_a_timer_runs_on_the_board_and_on_the_drawers_page(shop, bench, job):
    drawer = drawer_ids(shop, job)["R1-1"]
    start_timer_of(bench, job, drawer=drawer)
    shop.clock.pass_by(minutes=65, seconds=9)

    pages = [bench.get("/board"), bench.get(f"/bench/{drawer}"), bench.get(f"/jobs/{job}/hours")]

    assert ["1:05:09" in page.text for page in pages] == [True] * 3
    assert all("Saw and chop the tails, job 1, R1-1" in page.text for page in pages)
    assert all('aria-live="off"' in page.html for page in pages)


def test_the_operations_of_the_job_s_own_estimate_are_offered_first(bench, job):
    page = bench.get(f"/jobs/{job}/hours")

    listed = re.findall(r'<option value="([A-Z]\d\d)"', page.html.partition("</select>")[0])
    assert (
        listed.index("Y02") < listed.index("D15") < listed.index("E01")
    )  # no sliding bottom, no frames here


def test_a_stopped_timer_is_an_entry_of_whole_minutes(shop, bench, job):
    drawer = drawer_ids(shop, job)["R1-1"]
    start_timer_of(bench, job, drawer=drawer)
    shop.clock.pass_by(minutes=41, seconds=31)
    bench.get("/board")

    bench.send("/timer/end")

    (entry,) = logged(shop)
    assert (entry.seconds, entry.operation, entry.drawer_id) == (42 * 60, "D06", drawer)
    assert (entry.who, entry.on_day.isoformat()) == ("Cy Roper", "2027-03-01")
    assert "0:41" not in bench.get("/board").text


def test_a_timer_that_was_hardly_started_counts_a_minute(shop, bench, job):
    start_timer_of(bench, job)
    shop.clock.pass_by(seconds=5)

    bench.post("/timer/end")

    assert minutes(logged(shop)) == [1]


def test_a_pause_does_not_count(shop, bench, job):
    start_timer_of(bench, job)
    shop.clock.pass_by(minutes=20)
    bench.get("/board")
    bench.send("/timer/pause")
    shop.clock.pass_by(hours=2)
    bench.get("/board")
    bench.send("/timer/run")
    shop.clock.pass_by(minutes=10)

    bench.post("/timer/end")

    assert minutes(logged(shop)) == [30]


def test_pausing_twice_and_going_on_twice_changes_nothing(shop, bench, job):
    start_timer_of(bench, job)
    shop.clock.pass_by(minutes=20)
    for _ in range(2):
        bench.post("/timer/pause")
    shop.clock.pass_by(minutes=7)
    for _ in range(2):
        bench.post("/timer/run")
    shop.clock.pass_by(minutes=1)

    bench.post("/timer/end")

    assert minutes(logged(shop)) == [21]


def test_a_second_timer_stops_the_first_and_keeps_its_time(shop, bench, job):
    start_timer_of(bench, job, "D06")
    shop.clock.pass_by(minutes=30)

    page = start_timer_of(bench, job, "D08")

    assert "The timer that ran before was stopped; its time is written down." in page.text
    assert [(entry.operation, entry.seconds // 60) for entry in logged(shop)] == [("D06", 30)]
    assert "Half-blind sockets" in page.text


def test_starting_the_same_work_again_lets_the_timer_run_on(shop, bench, job):
    start_timer_of(bench, job)
    shop.clock.pass_by(minutes=30)
    start_timer_of(bench, job)
    shop.clock.pass_by(minutes=30)

    bench.post("/timer/end")

    assert minutes(logged(shop)) == [60]


def test_each_person_has_a_timer_of_their_own(shop, bench, maker, job):
    start_timer_of(bench, job)
    start_timer_of(maker, job, "D08")
    shop.clock.pass_by(minutes=5)

    bench.post("/timer/end")

    with reading(shop.engine, shop.shop_id) as db:
        assert [each.person_id for each in db.scalars(select(Timer))] == [shop.people[Role.MAKER].id]


def test_work_past_midnight_belongs_to_the_day_on_which_it_began(shop, bench, job):
    shop.clock.now = datetime(2027, 3, 2, 4, 40, tzinfo=UTC)  # 11:40 at night on 1 March in New York
    visitor = shop.visitor(Role.BENCH)
    start_timer_of(visitor, job)
    shop.clock.pass_by(minutes=50)

    visitor.post("/timer/end")

    (entry,) = logged(shop)
    assert (entry.on_day.isoformat(), entry.seconds) == ("2027-03-01", 50 * 60)


def test_a_timer_that_was_forgotten_is_stopped_with_the_time_that_was_worked(shop, bench, job):
    start_timer_of(bench, job)
    shop.clock.pass_by(hours=14)
    page = bench.get("/board")

    bench.send("/timer/end", time="3:30")

    assert "Forgot to stop it?" in page.text
    assert minutes(logged(shop)) == [210]


def test_a_timer_that_ran_for_days_is_written_down_as_one(shop, bench, job):
    start_timer_of(bench, job)
    shop.clock.pass_by(days=3)

    bench.post("/timer/end")

    (entry,) = logged(shop)
    assert (entry.seconds, entry.note) == (
        24 * 3600,
        "The timer ran longer than a day; a day was written down.",
    )


def test_a_timer_stopped_twice_makes_one_entry(shop, bench, job):
    start_timer_of(bench, job)
    shop.clock.pass_by(minutes=5)

    bench.post("/timer/end", once="a")
    bench.post("/timer/end", once="b")

    assert minutes(logged(shop)) == [5]


def test_a_timer_started_by_mistake_is_dropped(shop, bench, job):
    start_timer_of(bench, job)
    bench.get("/board")

    page = bench.send("/timer/removal")

    assert logged(shop) == []
    assert "on Saw and chop the tails" not in page.text


def test_the_button_that_drops_a_timer_is_not_shown_until_it_is_asked_for(shop, bench, job):
    start_timer_of(bench, job)

    html = bench.get("/board").html

    drop = html.index('action="/timer/removal"')
    assert html.rindex("<details>", 0, drop) > html.index('action="/timer/end"')
    assert "</details>" not in html[html.rindex("<details>", 0, drop) : drop]


def test_a_page_that_shows_an_earlier_timer_does_not_drop_the_one_that_runs_now(shop, bench, job):
    start_timer_of(bench, job, "D06")
    bench.get("/board")
    started = bench.page.form("/timer/removal").value("started")
    shop.clock.pass_by(minutes=5)
    start_timer_of(bench, job, "D08")

    page = bench.post("/timer/removal", started=started, back="/board")

    assert "Half-blind sockets" in page.text


@pytest.mark.one_database
@pytest.mark.parametrize("place", ["the board", "a drawer", "the hours"])
def test_a_mistyped_time_stands_beside_its_field_on_the_page_where_the_timer_was_stopped(
    shop, bench, job, place
):
    drawer = drawer_ids(shop, job)["R1-1"]
    address = {"the board": f"/board?job={job}", "a drawer": f"/bench/{drawer}"}.get(
        place, f"/jobs/{job}/hours"
    )
    start_timer_of(bench, job)
    shop.clock.pass_by(hours=14)
    heading = bench.get(address).seen.headings

    page = bench.send("/timer/end", 422, time="1;30")
    again = bench.send("/timer/end", time="1:30")

    assert page.seen.headings == heading
    assert page.seen.title.startswith("Error: ")
    assert "“1;30” is not a time. Write minutes such as 45" in page.text
    assert page.form("/timer/end").value("time") == "1;30"
    assert 'aria-describedby="clock-time-fault"' in page.html
    assert "/board" in page.seen.links
    assert again.address == address
    assert minutes(logged(shop)) == [90]


@pytest.mark.one_database
def test_a_mistyped_time_for_a_timer_that_has_ended_leads_back(shop, bench, job):
    page = bench.post("/timer/end", time="1;30", back=f"/jobs/{job}/hours")

    assert page.address == f"/jobs/{job}/hours"


def test_a_pause_by_script_brings_back_the_timer_alone(shop, bench, job):
    start_timer_of(bench, job)

    answer = bench.browser.post(
        "/timer/pause", data={"back": "/board"}, headers={"hx-request": "true", "x-block": "clock"}
    )

    assert answer.text.lstrip().startswith('<div id="clock">')
    assert "resting:" in answer.text


@pytest.mark.parametrize(
    "wrong", [{"operation": "X99"}, {"drawer": "1m89k3c0wpsyx"}], ids=["an operation", "a drawer"]
)
def test_a_timer_for_what_is_not_there_is_refused(shop, bench, job, wrong):
    fields = {"job": job, "operation": "D06"} | wrong

    bench.post("/timer", 404, **fields)
