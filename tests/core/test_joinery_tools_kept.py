"""Gauges and dividers that stay set, and in which order one is used again."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.chisels import RACK
from casewright.joinery.joint import Setting, Tool
from casewright.joinery.kinds import solve
from casewright.joinery.tools_kept import kept_settings, tools_at_hand
from casewright.measure.findings import Verdict

HALF_BLIND = {"height": 8.40625, "front": 0.8125, "side": 0.5}


def gauges(*values):
    return tuple(
        Setting(name=f"gauge_{place}", label=f"Gauge {place}", value=value, tool=Tool.GAUGE)
        for place, value in enumerate(values, 1)
    )


@given(st.lists(st.integers(4, 64).map(lambda marks: marks / 32), min_size=1), st.integers(1, 6))
def test_it_is_enough_when_there_is_a_gauge_for_every_different_setting(values, owned):
    found = tools_at_hand(gauges(*values), Tool.GAUGE, owned)

    assert found.needed == len(set(values))
    assert (found.verdict is Verdict.PASS) == (len(set(values)) <= owned)
    assert bool(found.remedy) == (found.verdict is Verdict.CAUTION)


def test_settings_that_agree_share_a_gauge():
    kept = kept_settings(gauges(0.5, 0.4375, 0.5), Tool.GAUGE)

    assert [each.value for each in kept] == [0.5, 0.4375]


@pytest.mark.parametrize(
    ("owned", "remedy"),
    [
        (
            1,
            "First mark every piece with Gauge 1 (5/8 in), then set that gauge to Gauge 2 (7/16 in), then to "
            "Gauge 3 (1/2 in); try each on a piece that is cut.",
        ),
        (
            2,
            "Set and keep Gauge 1 (5/8 in); mark every piece with Gauge 2 (7/16 in), then set that gauge to "
            "Gauge 3 (1/2 in); try each on a piece that is cut.",
        ),
        (3, ""),
    ],
)
def test_too_few_gauges_are_used_again_in_the_order_of_work(owned, remedy):
    found = tools_at_hand(gauges(0.625, 0.4375, 0.5), Tool.GAUGE, owned)

    assert str(found.remedy) == remedy


def test_a_joint_says_what_to_set_and_keep():
    solved = solve("half-blind", HALF_BLIND)

    found = next(each for each in solved.findings if each.rule == "gauges at hand")
    assert found.verdict is Verdict.PASS
    assert str(found.message) == (
        "Set and keep Gauge 1 (5/8 in), Gauge 2 (7/16 in): that takes 2, and the shop has 4 gauges."
    )


def test_one_gauge_is_too_few_for_a_half_blind_joint():
    solved = solve("half-blind", HALF_BLIND, rack=replace(RACK, gauges=1))

    found = next(each for each in solved.findings if each.rule == "gauges at hand")
    assert found.verdict is Verdict.CAUTION
    assert str(found.message).endswith("that takes 2, and the shop has 1 gauge.")
