"""What a change puts back at the bench, and what becomes of it: by hand, tap by tap."""

from datetime import UTC, datetime, timedelta

import pytest

from casewright.labour.bench import BenchEvent, EventKind, drawer_progress
from casewright.labour.next_step import can_leave

START = datetime(2027, 3, 1, 9, 0, tzinfo=UTC)
GLUED = ("milled", "fitted", "joints", "dry", "glued")


def tapped(*told):
    """Taps one minute apart: a stage that is reached, or a kind with what it says."""
    return [
        BenchEvent(
            id=f"{place:03}",
            at=START + timedelta(minutes=place),
            who="Ada Marsh",
            **({"kind": EventKind.REACHED, "stage": each} if isinstance(each, str) else each),
        )
        for place, each in enumerate(told)
    ]


def back(stage, until="glued", change="CO-0001"):
    text = "new: front\nMake new: front, 3/4 × 6 × 22-1/2 in of walnut."
    return {"kind": EventKind.PUT_BACK, "stage": stage, "until": until, "change": change, "text": text}


def stands(change="CO-0001"):
    return {"kind": EventKind.STANDS, "change": change}


def test_a_glued_drawer_with_a_new_front_is_back_before_milled_and_says_what_is_made_again():
    found = drawer_progress(tapped(*GLUED, back("milled")))

    assert found.stage == ""
    [again] = found.again
    assert (again.was, again.kept, again.summary) == ("glued", 0, "new: front")
    assert again.details == ("Make new: front, 3/4 × 6 × 22-1/2 in of walnut.",)


def test_the_stages_before_the_first_that_is_done_again_hold_on():
    found = drawer_progress(tapped(*GLUED, back("dry")))

    assert [mark.name for mark in found.reached] == ["milled", "fitted", "joints"]


def test_it_is_done_once_its_last_stage_is_reached_again_and_not_before():
    nearly = drawer_progress(tapped(*GLUED, back("milled"), *GLUED[:-1]))
    done = drawer_progress(tapped(*GLUED, back("milled"), *GLUED))

    assert [each.change for each in nearly.again] == ["CO-0001"]
    assert done.again == ()
    assert done.stage == "glued"


def test_what_is_planed_before_the_next_stage_puts_nothing_back_and_waits_for_it():
    before = drawer_progress(tapped(*GLUED, back("run", until="run")))
    after = drawer_progress(tapped(*GLUED, back("run", until="run"), "run"))

    assert (before.stage, len(before.again)) == ("glued", 1)
    assert (after.stage, after.again) == ("run", ())


def test_that_it_stands_after_all_brings_every_stage_back():
    found = drawer_progress(tapped(*GLUED, back("milled"), stands()))

    assert [mark.name for mark in found.reached] == [*GLUED]
    assert found.reached[-1].at == START + timedelta(minutes=4)  # as it was tapped then
    assert found.again == ()


def test_once_the_work_has_gone_on_its_stages_do_not_come_back():
    found = drawer_progress(tapped(*GLUED, back("milled"), "milled", stands()))

    assert found.stage == "milled"


def test_a_stage_that_is_taken_back_after_the_remaking_opens_it_again():
    found = drawer_progress(
        tapped(*GLUED, back("milled"), *GLUED, {"kind": EventKind.TAKEN_BACK, "stage": "glued"})
    )

    assert [each.change for each in found.again] == ["CO-0001"]


def test_a_second_change_does_not_bring_a_first_one_back_that_is_done():
    found = drawer_progress(tapped(*GLUED, back("milled"), *GLUED, back("dry", change="CO-0002")))

    assert [each.change for each in found.again] == ["CO-0002"]


def test_of_two_changes_only_the_later_one_is_undone():
    found = drawer_progress(
        tapped(*GLUED, back("dry"), back("milled", until="joints", change="CO-0002"), stands())
    )

    assert found.stage == ""
    assert [each.change for each in found.again] == ["CO-0002"]


@pytest.mark.parametrize(
    ("minutes", "is_maker", "more", "allowed"),
    [(10, False, (), True), (11, False, (), False), (9999, True, (), True), (1, True, ("milled",), False)],
)
def test_for_ten_minutes_anybody_may_say_that_it_stands_later_the_maker_and_nobody_once_it_went_on(
    minutes, is_maker, more, allowed
):
    found = drawer_progress(tapped(*GLUED, back("milled"), *more))
    now = START + timedelta(minutes=5 + minutes)  # put back by the sixth tap, five minutes after the first

    answer = can_leave(found, now, is_maker=is_maker)

    assert (answer.allowed, answer.stage) == (allowed, "CO-0001")
    assert bool(answer.reason) is not allowed


@pytest.mark.parametrize("missing", ["stage", "until", "change"])
def test_a_tap_that_puts_back_says_from_where_until_when_and_why(missing):
    with pytest.raises(ValueError, match=missing):
        tapped({**back("milled"), missing: ""})
