"""The kept stage of drawers and cases is the fold over all that was tapped about them."""

import random

import pytest

from benchwork import (
    CASE_STAGES,
    DRAWER_STAGES,
    SIDES,
    case_id,
    case_reaches,
    drawer_ids,
    drawer_reaches,
    hand,
    job_in_hand,
    kept_stage,
    opening,
)
from casewright.labour.stages import dry_fit
from casewright.records.bench import Carcase, Drawer
from casewright.records.jobs import Job, JobState
from casewright.records.people import Role
from casewright.records.sessions import reading, writing
from casewright.shop.bench import (
    case_place,
    drawer_place,
    reach_stage,
    refold,
    set_sizes,
    set_ticks,
    take_back_stage,
)
from casewright.shop.refusals import Refused

LINES = [line.code for line in dry_fit()]


@pytest.fixture
def job(shop):
    """A job in hand whose case is glued up."""
    made = job_in_hand(shop)
    case_reaches(shop, made, "glued")
    return made


@pytest.fixture
def drawer(shop, job):
    """The middle drawer of its chest."""
    return drawer_ids(shop, job)["R2-1"]


@pytest.mark.one_database
@pytest.mark.parametrize("seed", range(6))
def test_the_kept_stage_is_the_fold_over_all_that_was_tapped(shop, job, seed):
    chance = random.Random(seed)  # noqa: S311 - the same taps on every run
    ids = list(drawer_ids(shop, job).values())

    for _ in range(60):
        _tap_something(shop, job, chance, ids)
        shop.clock.pass_by(seconds=chance.choice([-30, 0, 0, 1, 200]))

    with writing(shop.engine, shop.shop_id) as db:
        places = [case_place(db, case_id(shop, job)), *(drawer_place(db, each) for each in ids)]
        assert [place.name for place in places if refold(place)] == []


def test_a_stage_out_of_step_is_mended_by_the_next_tap(shop, job, drawer):
    drawer_reaches(shop, drawer, "milled")
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Drawer, (shop.shop_id, drawer)).stage = "glued"

    with writing(shop.engine, shop.shop_id) as db:
        take_back_stage(db, drawer_place(db, drawer), "milled", hand(shop))

    assert kept_stage(shop, drawer) == ""


def _tap_something(shop, job, chance, ids):
    """One tap at random, as often refused as taken."""
    with writing(shop.engine, shop.shop_id) as db:
        on_case = chance.random() < 0.2
        place = case_place(db, case_id(shop, job)) if on_case else drawer_place(db, chance.choice(ids))
        code = place.drawer.code if place.drawer else ""
        stages = CASE_STAGES if on_case else DRAWER_STAGES
        acts = [
            lambda: reach_stage(db, place, chance.choice(stages), hand(shop)),
            lambda: reach_stage(db, place, place.step.stage.code, hand(shop)),
            lambda: take_back_stage(db, place, place.progress.stage or stages[0], hand(shop, Role.MAKER)),
            lambda: set_sizes(db, place, opening(code) | SIDES if code else {}, hand(shop)),
            lambda: set_ticks(db, place, dict.fromkeys(LINES, chance.random() < 0.8), hand(shop)),
        ]
        try:
            chance.choice(acts)()
        except (Refused, AttributeError):
            return


def test_a_case_that_is_taken_apart_again_is_shown_so(shop, maker, job):
    case = case_id(shop, job)

    maker.post(f"/cases/{case}/stage/undo", stage="glued", once="a")

    with reading(shop.engine, shop.shop_id) as db:
        assert db.get_one(Carcase, (shop.shop_id, case)).stage == "joints"


@pytest.mark.parametrize("state", [JobState.LOST, JobState.CLOSED, JobState.QUOTED])
@pytest.mark.parametrize(
    "tap",
    [
        lambda db, place, hand: reach_stage(db, place, "fitted", hand),
        lambda db, place, hand: take_back_stage(db, place, "milled", hand),
        lambda db, place, hand: set_sizes(db, place, SIDES, hand),
        lambda db, place, hand: set_ticks(db, place, {LINES[0]: True}, hand),
    ],
    ids=["stage", "back", "size", "tick"],
)
def test_nothing_is_tapped_for_a_job_that_the_bench_does_not_work_on(shop, job, drawer, state, tap):
    drawer_reaches(shop, drawer, "milled")
    put(shop, job, state)

    with pytest.raises(Refused, match=f"stands at “{state.value}”"), writing(shop.engine, shop.shop_id) as db:
        tap(db, drawer_place(db, drawer), hand(shop))


def test_a_tap_that_comes_late_counts_after_the_piece_was_delivered(shop, job, drawer):
    put(shop, job, JobState.DELIVERED)

    drawer_reaches(shop, drawer, "milled")

    assert kept_stage(shop, drawer) == "milled"


def test_a_note_may_be_kept_about_a_drawer_of_a_closed_job(shop, bench, job, drawer):
    put(shop, job, JobState.CLOSED)
    page = bench.get(f"/bench/{drawer}")

    noted = bench.send(f"/bench/{drawer}/notes", note="Runs tight in August.")

    assert "stands at “closed”" in page.text
    assert "Runs tight in August." in noted.text


@pytest.mark.parametrize("state", [JobState.LOST, JobState.CLOSED, JobState.QUOTED])
def test_a_drawer_of_a_job_at_rest_says_why_and_shows_nothing_to_tap(shop, maker, job, drawer, state):
    drawer_reaches(shop, drawer, "fitted")
    put(shop, job, state)

    page = maker.get(f"/bench/{drawer}")

    assert f"stands at “{state.value}”: the office moves it" in page.text
    assert "Next: joints" in page.text
    assert "Opening, height 6 as drawn, drawn 6" in page.text
    posts = [form.action for form in page.seen.forms if form.action.startswith(("/drawers/", "/bench/"))]
    assert posts == [f"/bench/{drawer}/notes"]


def put(shop, job, state):
    """Puts a job into a state, whatever the way there."""
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Job, (shop.shop_id, job)).state = state
