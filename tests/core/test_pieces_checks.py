"""The checks of a unit: each says what was found and what would pass; what cannot be built is refused."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.built.refusals import REFUSALS
from units import built, chest, dresser, unit


def found(made, rule):
    return [finding for finding in made.findings if finding.rule == rule]


@pytest.mark.parametrize(
    ("site", "rule", "verdict"),
    # 25-1/2 x 16-3/4 with its top, 25-7/8 high
    [
        ({"door_width": "17", "door_height": "80"}, "door", "pass"),
        ({"door_width": "16"}, "door", "stop"),
        # 16-3/4 wide and 25-1/2 long turns where 2 (1.4142 x 22 - 16.75) = 28.7 allows it; 20 gives 23.1
        ({"turn_width": "22"}, "turn", "pass"),
        ({"turn_width": "20"}, "turn", "stop"),
    ],
)
def test_the_way_in_is_tried(site, rule, verdict):
    (finding,) = found(built(chest({"site": site})), rule)

    assert finding.verdict == verdict
    assert (str(finding.remedy) != "") is (verdict == "stop")


def test_a_way_in_that_nobody_measured_is_not_judged():
    made = built(chest())

    assert (found(made, "door"), found(made, "turn")) == ([], [])


@pytest.mark.parametrize(
    ("changes", "rule", "verdict"),
    [
        ({"graduation": {"rule": "step", "step": "3"}}, "graduation", "caution"),  # 3, 6, 9
        ({"graduation": {"rule": "step", "step": "5/8"}}, "graduation", "pass"),
        ({"frames.slack": "1/16"}, "runner slack", "stop"),
        ({"back.gap": "1/64"}, "back gaps", "stop"),
        ({"back.gap": "5/16", "back.lap": "3/8"}, "back laps", "stop"),
        ({"drawers.groove.depth": "3/8"}, "side behind groove", "stop"),
        ({"drawers.groove.height": "3/16"}, "room over runner", "stop"),
        ({"drawers.clearances.back": "1/16"}, "depth season", "stop"),
        ({"season.wettest.moisture": 18}, "moisture range", "caution"),
        ({"drawers.bottom": {"kind": "ply"}}, "composite-wood label", "caution"),
        ({"drawers.bottom": {"kind": "ply"}, "drawers.groove.width": "1/4"}, "ply fits groove", "caution"),
        ({"drawers.bottom": {"kind": "ply"}, "drawers.groove.width": "5.2 mm"}, "ply fits groove", "pass"),
        ({"drawers.muntin.use": "never", "body.width": "48"}, "bottom sag", "stop"),
        ({"drawers.front": "15/16", "body.width": "40"}, "class", "pass"),  # bought as 5/4
    ],
)
def test_a_check_says_what_was_found_and_what_would_pass(changes, rule, verdict):
    findings = found(built(chest(changes)), rule)

    assert {str(finding.verdict) for finding in findings} == {verdict}
    assert [finding for finding in findings if (str(finding.remedy) == "") != (verdict == "pass")] == []


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"drawers.lap": "3/4"}, "drawers.lap: .* leaves nothing of a front 3/4 thick; make it 3/16"),
        ({"drawers.rabbet": "1/2"}, "drawers.rabbet: .* leaves nothing of a side 1/2 thick; make it 1/16"),
        ({"rows": [{"height": "1"}, {}]}, "1 in high, too low for a drawer|drawers.groove.height: 3/8"),
        ({"body.depth": "2"}, "case.lipping: 1-1/2 is too much"),
        ({"body.width": "3"}, "frames.runner_width: 2-1/2 is too much"),
        ({"drawers.clearances.side": "11"}, "opening R1-1 .* too small for a drawer"),
        ({"rows.0.front_tails": 40}, "no width left for 40 tails"),
        ({"rows.0.back_tails": 30}, "no width left for 30 tails at the baseline; at most 15"),
        ({"drawers.front_joint.half_pin": "4"}, "holds no tail between half pins of 4"),
        ({"case.housing": "3/4"}, "case.housing: 3/4 is too much"),
        ({"case.lap": "3/4"}, "case.lap: 3/4 is too much"),
        ({"back.rabbet": "3/4"}, "back.rabbet: 3/4 is too much"),
        ({"case.lipping": "12", "body.depth": "12"}, "case.lipping: 12 is too much"),
        ({"drawers.muntin": {"use": "always", "width": "23"}}, "no bottom beside a muntin 23 wide"),
        ({"measured.parts": {"C-SL": {"thickness": "30"}}}, "30 in is far from the 3/4 that was drawn"),
    ],
)
def test_what_leaves_nothing_of_a_part_is_refused_with_what_would_do(changes, sentence):
    with pytest.raises(REFUSALS, match=sentence):
        built(chest(changes))


@pytest.mark.parametrize(
    ("changes", "rule", "remedy", "followed"),
    [
        ({"frames.slack": "1/16"}, "runner slack", "Make the gap 3/32 in", {"frames.slack": "3/32"}),
        ({"back.gap": "1/64"}, "back gaps", "Make the gap 3/64 in", {"back.gap": "3/64"}),
        (
            {"drawers.clearances.back": "1/16"},
            "depth season",
            "Make the drawer ≈1/32 in shorter",
            {"drawers.clearances.back": "5/16"},
        ),
        ({"back.gap": "5/16"}, "back laps", "Make the lap 7/16 in", {"back.gap": "5/16", "back.lap": "7/16"}),
        (
            {"drawers.groove.depth": "3/8"},
            "side behind groove",
            "Make the groove 1/4 in deep",
            {"drawers.groove.depth": "1/4"},
        ),
        (
            {"drawers.groove.height": "3/16"},
            "room over runner",
            "Raise the groove 1/16 in",
            {"drawers.groove.height": "1/4"},
        ),
        (
            {"drawers.bottom": {"kind": "ply"}, "drawers.groove.width": "1/4"},
            "ply fits groove",
            "Cut the groove ≈13/64 in wide",
            {"drawers.bottom": {"kind": "ply"}, "drawers.groove.width": "13/64"},
        ),
        (
            # a drawer 15 in long, stopped at 12-27/32, before a back of five boards
            {"use.travel_share": 1},
            "tip all open",
            "Stop the drawers at 12-27/32 in",
            {"use.travel_share": (12 + 27 / 32) / 15},
        ),
    ],
)
def test_a_remedy_that_is_followed_passes(changes, rule, remedy, followed):
    before, after = found(built(chest(changes)), rule), found(built(chest(followed)), rule)

    assert {str(finding.remedy).startswith(remedy) for finding in before} == {True}
    assert {str(finding.verdict) for finding in after} == {"pass"}


@pytest.mark.parametrize(
    ("changes", "rule", "verdict"),
    # on the limit a check still passes; a 64th beyond it does not
    [
        ({"graduation": {"rule": "step", "step": "2"}}, "graduation", "pass"),  # 4, 6, 8
        ({"graduation": {"rule": "step", "step": "2-1/16"}}, "graduation", "caution"),
        ({"drawers.groove.height": "1/4"}, "room over runner", "pass"),
        ({"drawers.groove.height": "15/64"}, "room over runner", "stop"),
        ({"back.gap": "1/4"}, "back laps", "pass"),
        ({"back.gap": "17/64"}, "back laps", "stop"),
        ({"season.wettest.moisture": 14}, "moisture range", "pass"),
        ({"season.wettest.moisture": 14.1}, "moisture range", "caution"),
        ({"season.driest.moisture": 5.9}, "moisture range", "caution"),
        ({"season.shop.moisture": 15, "season.wettest.moisture": 14}, "moisture range", "caution"),
        ({"site.door_width": "16-3/4"}, "door", "pass"),
        ({"site.door_width": "16-47/64"}, "door", "stop"),
        ({"site": {"door_width": "17", "door_height": "25"}}, "door", "stop"),
    ],
)
def test_a_check_turns_at_its_limit(changes, rule, verdict):
    assert {str(finding.verdict) for finding in found(built(chest(changes)), rule)} == {verdict}


def test_long_parts_at_the_limit_of_their_class_are_named():
    (finding,) = found(built(chest({"body.width": "40", "drawers.front": "13/16"})), "class")

    assert (str(finding.verdict), finding.about) == ("caution", "F1, F2, F3")


def test_a_part_that_is_short_enough_is_flattened_without_loss():
    (finding,) = found(built(chest({"drawers.front": "13/16"})), "class")

    assert (str(finding.verdict), str(finding.message)) == (
        "pass",
        "Every part leaves room to flatten in its thickness class.",
    )


# opening 22-1/2 wide and 15-1/2 deep, sides of 3/4; a joint leaves a sixteenth
@pytest.mark.parametrize(
    ("field", "most"),
    [
        ("case.lap", "11/16"),
        ("case.housing", "11/16"),
        ("back.rabbet", "11/16"),
        ("back.gap", "5/16"),
        ("drawers.groove.depth", "7/16"),
        ("frames.runner_width", "22-1/2"),
        ("case.rail_width", "7-11/16"),
    ],
)
def test_what_goes_too_deep_is_refused_with_the_most_that_goes(field, most):
    beyond = float(unit(chest({"body.width": most})).body.width) + 1 / 64

    with pytest.raises(REFUSALS, match=f"{field}: .* make it {most} or less"):
        built(chest({field: beyond}))


@pytest.mark.parametrize(
    ("field", "most"),
    [
        ("case.lap", "11/16"),
        ("case.housing", "11/16"),
        ("back.rabbet", "11/16"),
        ("case.rail_width", "7-11/16"),
    ],
)
def test_the_most_that_goes_is_built(field, most):
    assert built(chest({field: most})).parts != ()


def test_a_muntin_says_what_would_be_without_it():
    (sag,) = (finding for finding in found(built(dresser()), "bottom sag") if finding.about == "A-R5-1")
    (little,) = (finding for finding in found(built(dresser()), "bottom sag") if finding.about == "A-R2-1")

    # worked dresser A
    assert str(sag.message).endswith("Without a muntin it would sag 0.133 in over 0.123: too much.")
    assert str(little.message).endswith(": allowed.")


def pull_lines(rows, width):
    """The finding on the pulls of a case with these rows."""
    made = built(chest({"rows": rows, "body": {"width": width, "depth": "20", "opening_total": "18"}}))
    return [finding.verdict for finding in made.findings if finding.rule == "pull lines"]


def test_wide_drawers_side_by_side_have_their_pulls_in_line_column_by_column():
    assert pull_lines([{"columns": 2}, {"columns": 2}, {"columns": 2}], "58") == [Verdict.PASS]


def test_columns_of_other_widths_put_pulls_out_of_line():
    rows = [{"widths": ["30", None]}, {"widths": [None, "30"]}, {"columns": 2}]

    assert pull_lines(rows, "60") == [Verdict.CAUTION]
