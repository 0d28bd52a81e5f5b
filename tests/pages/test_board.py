"""The board: which drawers have reached what, one tap forward, one tap back."""

import gzip
import re
from concurrent.futures import ThreadPoolExecutor
from urllib.parse import urlencode

import pytest

from benchwork import (
    CASE_STAGES,
    DRAWER_STAGES,
    case_id,
    case_reaches,
    drawer_ids,
    drawer_reaches,
    events,
    job_in_hand,
    kept_stage,
)
from casewright.labour.stages import drawer_stages
from casewright.records.jobs import JobState
from casewright.records.people import Role
from counting import MOST, counted
from pages.visitor import without_marks

BY_SCRIPT = {"hx-request": "true", "x-block": "line"}


def tap(visitor, drawer, stage, mark, status=200, **more):
    """One tap on the next square of a drawer."""
    return visitor.post(f"/drawers/{drawer}/stage", status, stage=stage, once=mark, **more)


def test_the_glued_up_drawers_are_counted_and_named_at_the_top(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer_reaches(shop, drawer_ids(shop, job)["R2-1"], "glued")

    page = bench.get("/board")

    assert "Glued up: 1 of 3 1-A R2-1" in page.text


def test_the_board_shows_those_that_have_reached_a_stage_at_least(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    ids = drawer_ids(shop, job)
    drawer_reaches(shop, ids["R1-1"], "joints")
    drawer_reaches(shop, ids["R2-1"], "milled")

    page = bench.get("/board?stage=fitted")

    assert "Fitted: 1 of 3 1-A R1-1" in page.text
    assert f"d-{ids['R1-1']}" in page.seen.ids
    assert f"d-{ids['R2-1']}" not in page.seen.ids


def test_a_stage_that_is_to_come_is_not_taken_for_one_that_is_reached(shop, bench):
    job_in_hand(shop)

    page = bench.get("/board")

    assert "next: panels ready – tap when the case" in page.text
    assert "next: milled – tap when R1-1" in page.text


def test_the_board_shows_those_that_come_to_a_stage_next(shop, bench):
    job = job_in_hand(shop)
    ids = drawer_ids(shop, job)
    drawer_reaches(shop, ids["R3-1"], "milled")

    page = bench.get("/board?stage=fitted&how=next")

    assert "Next is “fitted”: 1 of 3 1-A R3-1" in page.text
    assert f"d-{ids['R1-1']}" not in page.seen.ids


@pytest.mark.one_database
def test_the_board_shows_the_drawers_of_one_job(shop, bench):
    first, second = job_in_hand(shop, "Hall chest"), job_in_hand(shop, "Tall chest")

    page = bench.get(f"/board?job={second}")

    assert f"d-{drawer_ids(shop, second)['R1-1']}" in page.seen.ids
    assert f"d-{drawer_ids(shop, first)['R1-1']}" not in page.seen.ids
    assert "Glued up: 0 of 3" in page.text


@pytest.mark.parametrize(
    "state", [JobState.ENQUIRY, JobState.DELIVERED], ids=["an enquiry", "a piece that was delivered"]
)
def test_the_board_leaves_out_what_is_not_in_hand(shop, bench, state):
    job_in_hand(shop, state=state)

    page = bench.get("/board")

    assert "Nothing is in hand" in page.text


def test_a_piece_that_is_made_twice_has_two_cases_on_the_board(shop, bench):
    job_in_hand(shop, "Bedsides", changes={"count": 2})

    page = bench.get("/board")

    assert "1-A (1)" in page.text
    assert "piece 2 of 2" in page.text
    assert "Glued up: 0 of 6" in page.text


def test_the_choice_of_job_and_stage_stands_above_the_drawers(shop, bench):
    job = job_in_hand(shop)

    page = bench.get(f"/board?job={job}&stage=&how=reached")

    assert (
        page.html.index('id="ask-job"') < page.html.index('id="ask-stage"') < page.html.index('id="counts"')
    )
    assert page.form("/board").value("job") == job


def test_one_tap_moves_a_drawer_on_and_leads_back_to_the_same_board(shop, bench):
    job = job_in_hand(shop)
    drawer = drawer_ids(shop, job)["R1-1"]
    bench.get(f"/board?job={job}")

    page = bench.send(f"/drawers/{drawer}/stage")

    assert page.address == f"/board?job={job}"
    assert kept_stage(shop, drawer) == "milled"
    assert "milled Cy Roper, 1 Mar 10:00" in page.text


def test_a_tap_by_script_brings_back_its_line_alone(shop, bench):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]

    answer = bench.browser.post(
        f"/drawers/{drawer}/stage",
        data={"stage": "milled", "once": "a", "back": "/board"},
        headers=BY_SCRIPT,
    )

    assert answer.text.lstrip().startswith(f'<tr id="d-{drawer}"')
    assert answer.text.count("<tr") == 1


def test_a_cases_tap_by_script_brings_back_the_drawers_that_it_frees(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "joints")
    drawer_reaches(shop, drawer_ids(shop, job)["R1-1"], "milled")

    answer = bench.browser.post(
        f"/cases/{case_id(shop, job)}/stage",
        data={"stage": "glued", "once": "a", "back": "/board"},
        headers={"hx-request": "true", "x-block": "rows"},
    )

    assert answer.text.lstrip().startswith('<tbody id="rows"')
    assert "needs the opening measured" in answer.text
    assert "needs the case glued up" not in answer.text


def test_the_same_tap_twice_counts_once(shop, bench):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]
    tap(bench, drawer, "milled", "one-tap")

    tap(bench, drawer, "milled", "one-tap")

    assert len(events(shop)) == 1


def test_a_tap_sent_again_after_it_was_taken_back_does_not_count_anew(shop, bench):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]
    tap(bench, drawer, "milled", "one-tap")
    bench.post(f"/drawers/{drawer}/stage/undo", stage="milled", once="back")

    tap(bench, drawer, "milled", "one-tap")

    assert kept_stage(shop, drawer) == ""


def test_two_people_who_tap_one_stage_make_it_once(shop, bench, maker):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]
    tap(bench, drawer, "milled", "the first")

    tap(maker, drawer, "milled", "the second")

    assert [each.who for each in events(shop)] == ["Cy Roper"]


def test_a_stage_too_soon_is_refused_with_the_one_that_comes_first(shop, bench):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]

    page = tap(bench, drawer, "dry", "a", status=409, back="/board")

    assert "Drawer R1-1 is not there yet: “milled” comes first." in page.text
    assert kept_stage(shop, drawer) == ""


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("case_at", "drawer_at", "stage", "reason"),
    [
        ("joints", "milled", "fitted", "needs the case glued up"),
        ("glued", "milled", "fitted", "needs the opening measured"),
        ("glued", "fitted", "joints", "needs the side thickness measured"),
        ("glued", "dry", "glued", "needs the dry-fit list: 0 of 11 ticked"),
        ("glued", "run", "stops", "needs the runners in and trued"),
        ("frames", "run", "stops", "needs the case top on"),
    ],
)
def test_a_gate_holds_a_drawer_with_its_reason(shop, bench, case_at, drawer_at, stage, reason):
    job = job_in_hand(shop)
    case_reaches(shop, job, case_at)
    drawer = drawer_ids(shop, job)["R2-1"]
    drawer_reaches(shop, drawer, drawer_at)
    seen = bench.get("/board").text

    page = tap(bench, drawer, stage, "a", status=409, back="/board")

    word = next(each.word for each in drawer_stages() if each.code == stage)
    assert reason in seen
    assert f"Drawer R2-1: “{word}” is not allowed yet: {reason}" in page.text
    assert kept_stage(shop, drawer) == drawer_at


def test_a_refused_tap_by_script_says_why_in_its_line(shop, bench):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]

    answer = bench.browser.post(
        f"/drawers/{drawer}/stage", data={"stage": "in", "once": "a", "back": "/board"}, headers=BY_SCRIPT
    )

    assert answer.status_code == 409
    assert '<strong class="no" role="alert">Drawer R1-1 is not there yet' in without_marks(answer.text)


def test_a_drawer_goes_through_every_stage_to_its_place_in_the_case(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, CASE_STAGES[-1])
    drawer = drawer_ids(shop, job)["R3-1"]

    drawer_reaches(shop, drawer, DRAWER_STAGES[-1])

    assert kept_stage(shop, drawer) == "in"
    assert "in the case 1" in bench.get("/board").text


def test_a_case_moves_on_by_taps_of_its_own(shop, bench):
    case = case_id(shop, job_in_hand(shop))
    bench.get("/board")

    page = bench.send(f"/cases/{case}/stage")

    assert "panels ready Cy Roper, 1 Mar 10:00" in page.text


def test_anybody_takes_a_stage_back_within_ten_minutes(shop, bench, maker):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]
    tap(maker, drawer, "milled", "a")
    shop.clock.pass_by(minutes=10)
    page = bench.get("/board")

    bench.send(f"/drawers/{drawer}/stage/undo")

    assert "Undo “milled” of R1-1" in page.text
    assert kept_stage(shop, drawer) == ""
    assert len(events(shop)) == 2


@pytest.mark.one_database
def test_after_ten_minutes_the_bench_is_refused_and_told_whom_to_ask(shop, bench):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]
    tap(bench, drawer, "milled", "a")
    shop.clock.pass_by(minutes=10, seconds=1)

    page = bench.post(f"/drawers/{drawer}/stage/undo", 403, stage="milled", once="b", back="/board")

    assert "ask the owner or a maker to take it back" in page.text
    assert f"/drawers/{drawer}/stage/undo" not in {form.action for form in page.seen.forms}
    assert kept_stage(shop, drawer) == "milled"


@pytest.mark.parametrize("role", [Role.OWNER, Role.MAKER])
def test_owner_and_maker_take_a_stage_back_later_too(shop, bench, role):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]
    tap(bench, drawer, "milled", "a")
    shop.clock.pass_by(days=3)
    visitor = shop.visitor(role)
    visitor.get(f"/bench/{drawer}")

    visitor.send(f"/drawers/{drawer}/stage/undo")

    assert kept_stage(shop, drawer) == ""


@pytest.mark.one_database
def test_a_stage_under_a_later_one_cannot_be_taken_back(shop, maker):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer = drawer_ids(shop, job)["R1-1"]
    drawer_reaches(shop, drawer, "fitted")

    page = maker.post(f"/drawers/{drawer}/stage/undo", 409, stage="milled", once="b")

    assert "take back its last stage first" in page.text


def test_taking_back_twice_takes_back_once(shop, maker):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer = drawer_ids(shop, job)["R1-1"]
    drawer_reaches(shop, drawer, "fitted")
    maker.post(f"/drawers/{drawer}/stage/undo", stage="fitted", once="b")

    maker.post(f"/drawers/{drawer}/stage/undo", stage="fitted", once="c")

    assert kept_stage(shop, drawer) == "milled"


def test_ten_people_who_tap_at_once_are_all_heard(shop):
    job = job_in_hand(shop, changes={"rows": [{"columns": 4}, {"columns": 4}, {"columns": 2}]})
    ids = list(drawer_ids(shop, job).values())
    visitors = [shop.visitor(Role.BENCH) for _ in ids]

    with ThreadPoolExecutor(len(ids)) as pool:
        answers = list(
            pool.map(lambda pair: tap(pair[0], pair[1], "milled", pair[1]), zip(visitors, ids, strict=True))
        )

    assert [answer.status for answer in answers] == [200] * 10
    assert sorted(each.tap for each in events(shop)) == sorted(ids)
    assert {kept_stage(shop, drawer) for drawer in ids} == {"milled"}


def test_ten_people_who_tap_one_drawer_at_once_move_it_one_stage(shop):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]
    visitors = [shop.visitor(Role.BENCH) for _ in range(10)]

    with ThreadPoolExecutor(10) as pool:
        answers = list(
            pool.map(lambda each: tap(each[1], drawer, "milled", f"tap {each[0]}"), enumerate(visitors))
        )

    assert [answer.status for answer in answers] == [200] * 10
    assert len(events(shop)) == 1


def test_another_shops_drawer_is_not_there(shop, bench):
    page = tap(bench, "1m89k3c0wpsyx", "milled", "a", status=404)

    assert "There is no such drawer in this shop." in page.text


def test_the_board_costs_the_same_few_statements_however_much_is_in_hand(shop, bench):
    job_in_hand(shop)
    with counted(shop.engine) as few:
        bench.get("/board")
    for number in range(4):
        job_in_hand(shop, f"Chest {number}", changes={"count": 4})

    with counted(shop.engine) as many:
        page = bench.get("/board")

    assert len(few) == len(many) <= MOST
    assert "Page 1 of 2, 51 drawers" in page.text
    assert len(re.findall(r"<[a-z]", page.html)) <= 1500


@pytest.mark.parametrize("headers", [BY_SCRIPT, {}], ids=["by script", "without"])
def test_a_tap_costs_few_statements(shop, bench, headers):
    drawer = drawer_ids(shop, job_in_hand(shop))["R1-1"]

    with counted(shop.engine) as sent:
        bench.browser.post(
            f"/drawers/{drawer}/stage",
            data={"stage": "milled", "once": "a", "back": "/board"},
            headers=headers,
            follow_redirects=False,
        )

    assert len(sent) <= MOST


@pytest.mark.one_database
def test_a_full_board_is_light_on_a_bad_line(shop, bench):
    for number in range(5):
        job_in_hand(shop, f"Chest {number}", changes={"count": 4})

    page = bench.get("/board")

    assert len(gzip.compress(page.html.encode(), 5)) < 12_000  # 60 KB with style sheet and scripts


def test_what_an_address_asks_wrongly_is_passed_over(shop, bench):
    job_in_hand(shop)

    page = bench.get("/board?" + urlencode({"stage": "sawn", "how": "ever", "page": "٣", "job": ""}))

    assert "Glued up: 0 of 3" in page.text
