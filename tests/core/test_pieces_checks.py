"""The checks of a unit: each says what was found and what would pass; what cannot be built is refused."""

import pytest

from casewright.pieces.refusals import REFUSALS
from units import built, chest


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
    assert (finding.remedy != "") is (verdict == "stop")


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
        ({"drawers.groove.depth": "3/8"}, "side left at groove", "stop"),
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
    assert [finding for finding in findings if (finding.remedy == "") != (verdict == "pass")] == []


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
