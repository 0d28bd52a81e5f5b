"""The housing: as wide as the divider was measured, stopped or through; its limits, and that it closes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.housing.asked import Housing, usual_depth
from casewright.joinery.families.housing.joint import KIND, housing
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.solid import Axis
from casewright.measure.findings import Verdict
from closing import faults

SIZES = st.integers(8, 96).map(lambda marks: marks / 64)
STOPS = st.one_of(st.just(0.0), st.integers(8, 64).map(lambda marks: marks / 64))
LENGTHS = st.one_of(st.none(), st.integers(80, 1600).map(lambda marks: marks / 64))


def joint(**given):
    return housing(Housing(**{"divider": 0.75, "case_side": 0.75, "depth": 0.25, **given}))


def verdicts(found):
    return {finding.rule: finding.verdict for finding in found.findings}


def remedy(found, rule):
    return str(next(finding.remedy for finding in found.findings if finding.rule == rule))


def settings(found):
    return {setting.name: setting for setting in found.settings}


@given(SIZES, SIZES, SIZES, STOPS, LENGTHS, st.sampled_from([0.0, 0.002, 0.004, 0.01]))
def test_every_housing_closes_but_for_its_play(divider, depth, left, stop, length, play):
    found = joint(divider=divider, case_side=depth + left, depth=depth, stop=stop, length=length, play=play)

    assert faults(found.shape) == []


def test_the_only_gap_is_the_play_above_the_divider():
    shape = joint(play=0.004).shape
    middle = sum(shape.filled[2]) / 2
    cut = {board.name: board.section(Axis.Z, middle) for board in shape.boards}

    tops = [max(y for _, y in piece) for piece in cut["divider"]]
    walls = sorted({y for piece in cut["case side"] for _, y in piece})
    assert tops == [0.75, 0.75]
    assert walls[1:3] == [0.0, 0.754]


def test_the_housing_follows_what_was_measured_and_not_what_the_board_is_called():
    found = settings(joint(divider=0.738))

    assert found["width"].value == pytest.approx(0.742, abs=1e-12)  # one addition of floats
    assert found["width"].wrong == 0.738


def test_without_play_no_width_is_taken_for_another():
    assert settings(joint(play=0.0))["width"].wrong is None


@given(SIZES, SIZES, st.integers(64, 3840).map(lambda marks: marks / 64))
def test_a_divider_reaches_from_floor_to_floor(depth, left, inside):
    found = settings(joint(case_side=depth + left, depth=depth, inside_width=inside))

    assert found["divider_length"].value == inside + 2 * depth
    assert found["divider_length"].wrong == inside
    assert found["wood_left"].value == left


def test_where_the_case_is_not_known_what_is_added_is_given():
    found = settings(joint())

    assert (found["added"].value, found["added"].wrong) == (0.5, 0.25)
    assert {"divider_length", "lower_wall", "upper_wall", "housing_length"}.isdisjoint(found)


def test_the_lower_wall_carries_the_divider_and_the_play_lies_above_it():
    found = settings(joint(top_edge=10.0))

    assert found["lower_wall"].value == 9.25
    assert found["upper_wall"].value == pytest.approx(10.004, abs=1e-12)  # one addition of floats


def test_a_stopped_housing_has_a_notch_of_its_own_size():
    found = settings(joint(length=18.0))

    assert (found["stop"].value, found["notch_back"].value) == (0.5, 0.5)
    assert found["notch_in"].value == found["depth"].value
    assert (found["housing_length"].value, found["housing_length"].wrong) == (17.5, 18.0)


def test_a_housing_that_runs_through_has_neither_stop_nor_notch():
    found = joint(stop=0.0, length=18.0)

    assert {"stop", "notch_in", "notch_back"}.isdisjoint(settings(found))
    assert settings(found)["housing_length"].value == 18.0
    assert [strip.waste for strip in found.shape.strips if strip.board == "divider"] == [()]


@pytest.mark.parametrize(
    ("asked", "rule", "verdict"),
    [
        ({"depth": 0.25}, "housing depth", Verdict.PASS),
        ({"depth": 0.265625}, "housing depth", Verdict.STOP),
        ({"depth": 0.125}, "housing carries", Verdict.PASS),
        ({"depth": 0.109375}, "housing carries", Verdict.CAUTION),
        ({"stop": 0.0}, "stop at the front", Verdict.PASS),
        ({"stop": 0.3125}, "stop at the front", Verdict.PASS),
        ({"stop": 0.296875}, "stop at the front", Verdict.CAUTION),
        ({"play": 0.002}, "play for the glue", Verdict.PASS),
        ({"play": 0.008}, "play for the glue", Verdict.PASS),
        ({"play": 0.0015}, "play for the glue", Verdict.CAUTION),
        ({"play": 0.0085}, "play for the glue", Verdict.CAUTION),
    ],
)
def test_each_limit_holds_on_both_sides(asked, rule, verdict):
    assert verdicts(joint(**asked))[rule] is verdict


def test_a_finding_says_what_would_pass():
    thin = joint(depth=0.109375, case_side=0.34375)

    assert remedy(joint(depth=0.3125), "housing depth") == (
        "Make the housing 1/4 in deep or shallower, or the case side 15/16 in thick."
    )
    assert remedy(thin, "housing carries") == "Make the case side 3/8 in thick and the housing 1/8 in deep."
    assert remedy(joint(depth=0.0625), "housing carries") == "Make the housing 1/8 in deep or deeper."
    assert remedy(joint(stop=0.25), "stop at the front") == "Stop it 1/2 in back, or run it through."
    assert remedy(joint(divider=0.738, play=0.02), "play for the glue") == (
        "Make the housing 0.742 in wide: try it on scrap with an offcut of the divider."
    )


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ({"depth": 0.75}, "goes through the case side of 3/4; make it 1/4"),
        ({"stop": 3.0, "length": 3.0}, "stop it 1/2 back, or run it through"),
        ({"stop": 0.75, "length": 0.75}, "stop it 3/8 back, or run it through"),
        ({"top_edge": 0.5}, "put its upper face at 3/4 in or higher"),
    ],
)
def test_what_has_no_room_is_refused_with_what_would(asked, said):
    with pytest.raises(CannotBeLaidOut, match=said):
        joint(**asked)


@pytest.mark.parametrize("name", ["divider", "case_side", "depth", "length", "inside_width", "top_edge"])
def test_a_size_of_nothing_is_refused(name):
    with pytest.raises(ValueError, match=f"The {name.replace('_', ' ')} cannot be 0"):
        joint(**{name: 0.0})


def test_what_is_left_out_is_chosen_with_its_reason():
    found = solve("housing", {"divider": 0.75, "case_side": 0.8125})

    assert {each.name: each.value for each in found.chosen} == {"depth": 0.25, "play": 0.004, "stop": 0.5}
    assert all(str(each.why) and each.source for each in found.chosen)


@given(st.integers(24, 96).map(lambda marks: marks / 64), SIZES)
def test_what_is_chosen_passes_every_check_in_sides_from_three_eighths(case_side, divider):
    found = solve("housing", {"divider": divider, "case_side": case_side}).joint

    assert set(verdicts(found).values()) == {Verdict.PASS}


def test_a_side_too_thin_for_a_16th_has_a_third_of_it_taken():
    assert usual_depth(0.15) == pytest.approx(0.05, abs=1e-12)  # one division of floats


def test_the_strips_mark_the_walls_the_stop_and_the_notch():
    side, divider = joint(length=3.0).shape.strips

    assert [line.label for line in side.lines] == ["lower wall", "upper wall", "stop"]
    assert side.waste == (((0.5, 0.0), (3.0, 0.0), (3.0, 0.754), (0.5, 0.754)),)
    assert divider.waste == (((0.0, 0.0), (0.25, 0.0), (0.25, 0.5), (0.0, 0.5)),)


def test_its_name_and_title_are_the_trades():
    assert (KIND.name, KIND.title) == ("housing", "Housing of a divider in a case side")
