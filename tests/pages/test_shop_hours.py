"""The hours: the shop's own minutes beside the usual ones, and what the log teaches."""

from datetime import UTC, datetime, timedelta

import pytest

from benchwork import job_in_hand
from casewright.labour.standards import house_standards
from casewright.pieces.asked.sentences import Problem
from casewright.records.jobs import Job, JobState
from casewright.records.people import Person, Role, Shop
from casewright.records.sessions import writing
from casewright.shop.time import Work, log_time
from casewright.web.settings.forms import WHOLE_PAGE, Draft
from counting import MOST, counted

ADDRESS = "/shop/hours"
OPERATIONS = len(house_standards().operations)
LOG = "/shop/hours/log"


def worked(shop, minutes, *, operation="D12", state=JobState.DELIVERED):
    """A job of a chest of three drawers with some time on one operation."""
    job_id = job_in_hand(shop, state=state)
    with writing(shop.engine, shop.shop_id) as db:
        held = db.get_one(Person, (shop.shop_id, shop.people[Role.MAKER].id))
        now = shop.clock.now
        work = Work(job_id=job_id, operation=operation)
        log_time(db, held, work, round(minutes * 60), now.date(), held.name, now)
    return job_id


def test_the_usual_minutes_stand_beside_empty_fields(owner):
    page = owner.get(ADDRESS)

    assert page.form(ADDRESS).value("hand.D12") == ""
    assert "usual 14" in page.text
    assert f"None of the {OPERATIONS} operations has a time of your own yet." in page.text


def test_own_minutes_are_marked_and_go_back_when_emptied(owner):
    owner.get(ADDRESS)
    page = owner.send(ADDRESS, **{"hand.D12": "12,5"})
    assert page.form(ADDRESS).value("hand.D12") == "12.5"
    assert f"1 of {OPERATIONS} operations have times of your own." in page.text

    page = owner.send(ADDRESS, **{"hand.D12": ""})

    assert f"None of the {OPERATIONS} operations" in page.text


def test_an_operation_goes_over_to_the_machine_and_back(owner):
    owner.get(ADDRESS)
    page = owner.send(ADDRESS, **{"method.P03": "hand"})
    assert page.form(ADDRESS).value("method.P03") == "hand"

    page = owner.send(ADDRESS, **{"method.P03": "machine"})

    assert page.form(ADDRESS).value("method.P03") == "machine"


def test_a_wood_gets_a_factor_under_the_name_that_parts_have(owner):
    owner.get(ADDRESS)

    page = owner.send(
        ADDRESS, **{"new.wood": "Rock maple", "factor.walnut": "1.05", "new.factor": ""}, status=422
    )
    assert "hard maple stands in the table already" in page.text
    page = owner.send(ADDRESS, **{"new.wood": "american beech", "new.factor": "1.3"})

    assert page.form(ADDRESS).value("factor.walnut") == "1.05"
    assert page.form(ADDRESS).value("factor.beech") == "1.3"


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("hand.D12", "a while", "Write a number such as 12.5"),
        ("machine.P03", "-1", "-1 min is outside 0 to 10000 min"),
        ("allowance", "100", "100 % is outside 0 to 99 %"),
        ("factor.walnut", "20", "20 is outside 0.1 to 10"),
        ("new.wood", "ceder", "is not a wood in the table"),
    ],
)
def test_a_fault_stands_beside_its_field(owner, name, typed, words):
    owner.get(ADDRESS)

    page = owner.send(ADDRESS, status=422, **{name: typed})

    assert words in page.text
    assert page.form(ADDRESS).value(name) == typed
    assert f'id="{name.replace(".", "-")}-fault"' in page.html


def test_of_two_owners_the_second_sees_both_times(shop, owner):
    other = shop.visitor()
    owner.get(ADDRESS)
    other.get(ADDRESS)
    other.send(ADDRESS, **{"hand.D12": "16", "hand.D13": "22"})

    page = owner.send(ADDRESS, status=409, **{"hand.D12": "11"})

    assert "Theirs: 16" in page.text
    assert page.form(ADDRESS).value("hand.D12") == "11"
    assert page.form(ADDRESS).value("hand.D13") == "22"


def test_the_log_moves_a_standard_by_its_share_of_the_evidence(shop, owner):
    # three drawers, 21 min each with 12 % of rest: (4 * 14 + 21) / 5 = 15.4
    worked(shop, 3 * 21 * 1.12)

    page = owner.get(LOG)
    assert "Glue-up" in page.text
    assert "15.4" in page.text
    owner.post(LOG, revision="1", take="D12.hand")

    assert owner.get(ADDRESS).form(ADDRESS).value("hand.D12") == "15.4"


def test_no_hour_teaches_twice(shop, owner):
    worked(shop, 3 * 21 * 1.12)
    owner.get(LOG)
    owner.post(LOG, revision="1", take="D12.hand")

    page = owner.get(LOG)

    assert "The log has nothing new to say" in page.text


def test_a_later_job_teaches_the_standard_that_was_taken_over(shop, owner):
    worked(shop, 3 * 21 * 1.12)
    owner.post(LOG, revision="1", take="D12.hand")
    shop.clock.now += timedelta(days=1)
    worked(shop, 3 * 15.4 * 1.12)

    page = owner.get(LOG)

    assert "15.4" in page.text
    assert "21" not in page.text.partition("Glue-up")[2].partition("Take over")[0]


def test_the_jobs_of_a_demo_teach_nothing(shop, owner):
    job_id = worked(shop, 3 * 21 * 1.12)
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Job, (shop.shop_id, job_id)).demo = True

    assert "What the log says" not in owner.get(ADDRESS).text
    assert "The log has nothing new to say" in owner.get(LOG).text


@pytest.mark.parametrize("has_demo", [True, False])
def test_where_a_demo_is_in_the_shop_the_log_says_that_it_does_not_count(shop, owner, has_demo):
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Shop, shop.shop_id).demo = has_demo

    assert (
        "The time on the demo's jobs is made up and does not count here" in owner.get(LOG).text
    ) is has_demo


def test_a_standard_that_was_set_in_the_evening_is_taught_by_the_work_of_the_next_morning(shop, owner):
    shop.clock.now = datetime(2027, 3, 2, 1, 30, tzinfo=UTC)  # the evening of 1 March in the shop
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Shop, shop.shop_id).time_zone = "America/New_York"
    owner.post(ADDRESS, revision="1", **{"hand.D12": "15"})
    shop.clock.now += timedelta(hours=13)
    worked(shop, 3 * 21 * 1.12)

    assert "Glue-up" in owner.get(LOG).text


def test_work_in_hand_teaches_nothing_yet(shop, owner):
    worked(shop, 60, state=JobState.IN_HAND)

    page = owner.get(ADDRESS)

    assert "What the log says" not in page.text
    assert "The log has nothing new to say" in owner.get(LOG).text


def test_lessons_are_not_taken_over_a_change_that_was_not_seen(shop, owner):
    worked(shop, 3 * 21 * 1.12)
    owner.get(ADDRESS)
    owner.send(ADDRESS, allowance="10")

    page = owner.post(LOG, status=409, revision="1", take="D12.hand")

    assert "Somebody else changed the figures meanwhile." in page.text
    assert owner.get(ADDRESS).form(ADDRESS).value("hand.D12") == ""


def test_the_log_of_many_jobs_takes_few_statements(shop, owner):
    for _ in range(4):
        worked(shop, 60)

    with counted(shop.engine) as sent:
        owner.get(LOG)

    assert len(sent) <= MOST


@pytest.mark.parametrize("path", ["minutes.a[b", "a]b[", "minutes.D06.hand[0", "[", "."])
def test_a_problem_whose_path_has_brackets_of_its_own_finds_its_field_or_the_whole_page(path):
    draft = Draft()
    draft.put("minutes", {}, "codes")

    assert draft.field_of(Problem(field=path, message="no")) in {"codes", WHOLE_PAGE}
