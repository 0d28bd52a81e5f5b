"""Stages at the bench: what comes next, what holds it up, what can be taken back, taps that come twice."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casewright.labour.bench import (
    BenchEvent,
    CaseProgress,
    DrawerProgress,
    EventKind,
    case_progress,
    drawer_progress,
)
from casewright.labour.next_step import can_take_back, next_case_step, next_step
from casewright.labour.stages import before_marking, case_stages, drawer_stages, dry_fit, gates, place_of
from casewright.labour.standards import house_standards

START = datetime(2026, 11, 25, 8, 0, tzinfo=UTC)
DRAWER = [stage.code for stage in drawer_stages()]
CASE = [stage.code for stage in case_stages()]


def tap(kind, minute=0, *, mark="", who="Ida", **said) -> BenchEvent:
    """A tap, so many minutes after eight."""
    at = START + timedelta(minutes=minute)
    return BenchEvent(id=mark or f"{kind}-{minute}-{said}", kind=EventKind(kind), at=at, who=who, **said)


def reached(*codes) -> list[BenchEvent]:
    """One stage after the other, a minute apart."""
    return [tap("reached", minute, stage=code) for minute, code in enumerate(codes)]


def sized(**sizes) -> list[BenchEvent]:
    """Measured sizes; an underscore stands for the point in a name."""
    return [tap("measured", size=name.replace("_", "."), value=value) for name, value in sizes.items()]


def ticked(*codes) -> list[BenchEvent]:
    return [tap("ticked", tick=code) for code in codes]


def case_at(code) -> CaseProgress:
    """A case that has reached a stage."""
    return case_progress(reached(*CASE[: CASE.index(code) + 1]))


def drawer_at(code, *others) -> DrawerProgress:
    """A drawer that has reached a stage, and whatever else was tapped."""
    return drawer_progress([*reached(*DRAWER[: DRAWER.index(code) + 1]), *others])


ALL_TICKED = [line.code for line in dry_fit()]
LOOKED_OVER = [line.code for line in before_marking()]
OPENING = sized(opening_height=8.5, opening_width=38.0)
SIDES = sized(SL_thickness=0.5, SR_thickness=0.5)


def test_a_drawer_goes_from_its_parts_to_its_place_in_the_case():
    assert [stage.word for stage in drawer_stages()] == [
        *("milled", "fitted", "joints cut", "dry-fitted", "glued up", "run in"),
        *("stops and pulls on", "finished", "in the case"),
    ]


def test_a_case_goes_from_its_panels_to_inspection():
    assert [stage.word for stage in case_stages()] == [
        *("panels ready", "joints cut", "glued up", "frames and runners in"),
        *("base, back and top on", "finished", "inspected"),
    ]


def test_what_is_cut_at_the_bench_is_finished_by_a_stage():
    staged = {code for stage in (*drawer_stages(), *case_stages()) for code in stage.operations}
    cut = {one.code for one in house_standards().operations if one.cutting}

    # P03 to P05 mill the stock of case and drawers together, and are earned for each one's part
    assert cut - staged == {"P03", "P04", "P05"}


@pytest.mark.parametrize("stage", [*drawer_stages(), *case_stages()], ids=lambda stage: stage.word)
def test_a_stage_says_what_is_done_when_it_is_reached(stage):
    assert stage.meaning
    assert stage.steps
    assert (stage.source, stage.basis) != ("", "")


def test_every_operation_that_a_stage_finishes_is_one_of_the_hours():
    known = {one.code for one in house_standards().operations}

    finished = [code for stage in (*drawer_stages(), *case_stages()) for code in stage.operations]
    assert set(finished) <= known
    assert len(finished) == len(set(finished))


def test_the_dry_fit_has_eleven_lines_and_two_of_them_a_number():
    limits = {line.code: line.most_in for line in dry_fit() if line.most_in is not None}

    assert len(dry_fit()) == 11
    assert limits == {"diagonals": 1 / 32, "winding": 1 / 64}


def test_every_gate_stands_before_a_stage_that_there_is():
    assert [gate for gate in gates() if gate.stage not in DRAWER or not gate.reason] == []


def test_a_new_drawer_is_to_be_milled():
    step = next_step(drawer_progress([]), case_progress([]))

    assert step.stage is not None
    assert (step.stage.code, step.allowed, step.reason) == ("milled", True, "")


def test_a_drawer_is_not_fitted_before_the_case_is_glued_up():
    step = next_step(drawer_at("milled"), case_at("joints"))

    assert not step.allowed
    assert step.held[0] == "needs the case glued up, so that the opening can be measured"


def test_a_drawer_is_not_fitted_before_its_opening_is_measured():
    step = next_step(drawer_at("milled", *sized(opening_height=8.5)), case_at("glued"))

    assert step.reason == "needs the opening measured"


def test_a_drawer_is_fitted_to_an_opening_that_is_measured():
    assert next_step(drawer_at("milled", *OPENING), case_at("glued")).allowed


@pytest.mark.parametrize(("sizes", "allowed"), [([], False), (SIDES[:1], False), (SIDES, True)])
def test_joints_are_not_cut_before_both_sides_are_measured(sizes, allowed):
    step = next_step(drawer_at("fitted", *sizes, *ticked(*LOOKED_OVER)), case_at("glued"))

    assert step.allowed is allowed
    assert step.reason == ("" if allowed else "needs the side thickness measured")


def test_joints_are_not_cut_before_the_parts_are_looked_over():
    step = next_step(drawer_at("fitted", *SIDES, *ticked("handed", "inside", "edge")), case_at("glued"))

    assert step.reason == "needs the parts looked over before marking out: 3 of 4 ticked"


def test_the_list_before_marking_out_counts_nothing_for_the_dry_fit():
    assert not {line.code for line in before_marking()} & {line.code for line in dry_fit()}


def test_glue_waits_for_the_dry_fit_list():
    step = next_step(drawer_at("dry", *ticked("closes", "lap", "labels")), case_at("glued"))

    assert step.reason == "needs the dry-fit list: 3 of 11 ticked"


def test_glue_is_allowed_when_every_line_is_ticked():
    step = next_step(drawer_at("dry", *ticked(*ALL_TICKED)), case_at("glued"))

    assert step.allowed
    assert step.cautions == (
        "No PVA glue below 50 °F (10 °C): wood, glue and room. (leevalley.com, glue data sheet)",
    )


def test_a_number_stands_for_a_tick_while_it_is_small_enough():
    rest = [code for code in ALL_TICKED if code not in {"diagonals", "winding"}]
    sizes = sized(dry_diagonals=1 / 32, dry_winding=1 / 64)

    assert next_step(drawer_at("dry", *ticked(*rest), *sizes), case_at("glued")).allowed


def test_a_number_that_is_too_large_holds_the_glue_whatever_is_ticked():
    events = [*ticked(*ALL_TICKED), *sized(dry_diagonals=3 / 64)]

    step = next_step(drawer_at("dry", *events), case_at("glued"))

    assert tuple(map(str, step.held)) == (
        "needs the dry-fit list: 10 of 11 ticked",
        "diagonals: 3/64 in is more than the 1/32 that are allowed",
    )


@pytest.mark.parametrize(
    ("case", "held"),
    [
        ("glued", ("needs the runners in and trued", "needs the case top on")),
        ("frames", ("needs the case top on",)),
        ("closed", ()),
    ],
)
def test_a_drawer_is_stopped_when_runners_are_in_and_the_top_is_on(case, held):
    assert next_step(drawer_at("run"), case_at(case)).held == held


def test_nothing_comes_after_the_last_stage():
    drawer, case = drawer_at("in"), case_at("inspected")

    assert (next_step(drawer, case).stage, next_step(drawer, case).allowed) == (None, False)
    assert (next_case_step(case).stage, next_case_step(case).allowed) == (None, False)


def test_the_next_stage_of_a_case_is_open():
    step = next_case_step(case_at("joints"))

    assert step.stage is not None
    assert (step.stage.code, step.allowed, len(step.cautions)) == ("glued", True, 1)


def test_a_tap_says_who_did_it_and_when():
    held = drawer_progress([tap("reached", 5, stage="milled", who="Ole"), *ticked("lap"), *SIDES])

    assert (held.reached[0].who, held.reached[0].at) == ("Ole", START + timedelta(minutes=5))
    assert held.ticked == {"lap"}
    assert held.measured == {"SL.thickness": 0.5, "SR.thickness": 0.5}


def test_a_size_that_is_measured_again_takes_the_place_of_the_first():
    sizes = [
        tap("measured", minute, size="SL.thickness", value=value) for minute, value in ((1, 0.5), (2, 0.49))
    ]

    assert drawer_progress(sizes).measured == {"SL.thickness": 0.49}


def test_a_size_can_be_taken_back():
    sizes = [
        tap("measured", minute, size="SL.thickness", value=value) for minute, value in ((1, 0.5), (2, None))
    ]

    assert drawer_progress(sizes).measured == {}


def test_a_tick_can_be_taken_off_again():
    events = [tap("ticked", 1, tick="lap"), tap("unticked", 2, tick="lap"), tap("ticked", 3, tick="closes")]

    assert drawer_progress(events).ticked == {"closes"}


def test_notes_are_kept_in_the_order_of_their_time():
    events = [tap("note", 2, text="lap thin"), tap("note", 1, text="knot at the back")]

    assert [mark.text for mark in drawer_progress(events).notes] == ["knot at the back", "lap thin"]


def test_a_stage_that_two_people_take_back_goes_back_once():
    events = [*reached("milled", "fitted", "joints")]
    events += [tap("taken_back", 5, stage="joints"), tap("taken_back", 6, stage="joints", who="Ole")]

    assert drawer_progress(events).stage == "fitted"


@pytest.mark.parametrize(
    ("minutes", "is_maker", "allowed"),
    [(0, False, True), (10, False, True), (10.5, False, False), (600, True, True)],
)
def test_anybody_takes_a_stage_back_for_ten_minutes_and_a_maker_later(minutes, is_maker, allowed):
    drawer = drawer_progress(reached("milled"))

    answer = can_take_back(drawer, START + timedelta(minutes=minutes), is_maker=is_maker)

    assert (answer.stage, answer.allowed) == ("milled", allowed)
    assert ("ask the owner or a maker" in answer.reason) is not allowed


def test_there_is_nothing_to_take_back_before_the_first_stage():
    assert can_take_back(drawer_progress([]), START, is_maker=True).reason == "nothing has been reached yet"


@pytest.mark.parametrize(
    ("said", "message"),
    [
        ({"kind": "reached"}, "names its stage"),
        ({"kind": "ticked"}, "names its tick"),
        ({"kind": "measured"}, "names its size"),
        ({"kind": "measured", "size": "SL.thickness", "value": -1.0}, "not below nothing"),
        ({"kind": "note"}, "names its text"),
    ],
)
def test_a_tap_that_says_too_little_is_refused(said, message):
    with pytest.raises(ValueError, match=message):
        tap(**said)


def test_a_tap_without_an_id_or_a_time_zone_is_refused():
    with pytest.raises(ValueError, match="needs an id"):
        BenchEvent(id="", kind=EventKind.NOTE, at=START, who="Ida", text="x")
    with pytest.raises(ValueError, match="needs its time zone"):
        BenchEvent(id="1", kind=EventKind.NOTE, at=START.replace(tzinfo=None), who="Ida", text="x")


def test_a_stage_that_there_is_not_is_named_with_those_that_there_are():
    assert place_of("joints", drawer_stages()) == 2
    with pytest.raises(ValueError, match="There is no stage “sawn”; there are milled, fitted"):
        place_of("sawn", drawer_stages())


@st.composite
def taps(draw) -> list[BenchEvent]:
    """Taps of all kinds about one drawer, some too early, some twice."""
    said = st.one_of(
        st.sampled_from(DRAWER).map(lambda code: {"kind": "reached", "stage": code}),
        st.sampled_from(["", *DRAWER]).map(lambda code: {"kind": "taken_back", "stage": code}),
        st.sampled_from(ALL_TICKED).map(lambda code: {"kind": "ticked", "tick": code}),
        st.sampled_from(ALL_TICKED).map(lambda code: {"kind": "unticked", "tick": code}),
        st.tuples(st.sampled_from(["SL.thickness", "dry.winding"]), st.none() | st.floats(0, 2)).map(
            lambda found: {"kind": "measured", "size": found[0], "value": found[1]}
        ),
        st.text(min_size=1, max_size=5).map(lambda text: {"kind": "note", "text": text}),
    )
    each = st.tuples(st.integers(0, 30), st.sampled_from(["Ida", "Ole"]), said)
    return [
        tap(minute=minute, who=who, mark=str(number), **what)
        for number, (minute, who, what) in enumerate(draw(st.lists(each, min_size=1, max_size=30)))
    ]


@given(taps())
def test_no_stage_is_ever_left_out(events):
    codes = [mark.name for mark in drawer_progress(events).reached]

    assert codes == DRAWER[: len(codes)]


@given(taps(), st.randoms(use_true_random=False), st.data())
def test_the_same_taps_in_any_order_and_sent_twice_tell_the_same(events, chance, data):
    again = data.draw(st.lists(st.sampled_from(events), max_size=10))
    mixed = [*events, *again]
    chance.shuffle(mixed)

    assert drawer_progress(mixed) == drawer_progress(events)


@given(taps())
def test_taking_back_the_last_stage_leaves_all_as_it_was_before(events):
    before = drawer_progress(events)
    assume(before.stage != DRAWER[-1])
    code = DRAWER[len(before.reached)]

    after = drawer_progress([*events, tap("reached", 40, stage=code, mark="x")])
    undone = drawer_progress(
        [*events, tap("reached", 40, stage=code, mark="x"), tap("taken_back", 41, stage=code, mark="y")]
    )

    assert after.stage == code
    assert undone == before
