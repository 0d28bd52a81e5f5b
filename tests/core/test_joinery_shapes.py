"""Joints in space: thousands of random ones close without overlap or gap, by shapely.

Half-blind, through and sliding dovetails; other families are tried beside their own tests.
"""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.solid import Stroke
from closing import faults


def marks(least, most):
    """Sizes by the 64th."""
    return st.integers(least, most).map(lambda count: count / 64)


TAILS = {
    "height": marks(128, 800),
    "side": marks(20, 56),
    "half_pin": marks(0, 24),
    "pin": marks(2, 16),
    "tails": st.integers(1, 9),
    "slope": st.sampled_from([5.0, 6.0, 7.0, 8.0, 10.0]),
    "rabbet": st.sampled_from([0.0, 1 / 32, 1 / 16]),
}
HALF_BLIND = st.fixed_dictionaries(
    TAILS
    | {
        "front": marks(40, 72),
        "lap": marks(6, 16),
        "proud": st.sampled_from([0.0, 1 / 64]),
        "front_excess": st.sampled_from([0.0, 1 / 8]),
    }
)
THROUGH = st.fixed_dictionaries(
    TAILS
    | {
        "back": marks(16, 56),
        "proud": st.sampled_from([0.0, 1 / 64]),
        "lower_edge_offset": st.sampled_from([0.0, 5 / 8]),
    }
)
SLIDING = st.fixed_dictionaries(
    {
        "divider": marks(32, 80),
        "case_side": marks(40, 80),
        "depth": marks(8, 20),
        "shoulder": marks(0, 6),
        "slope": st.sampled_from([5.0, 6.0, 8.0]),
        "length": st.just(0.0) | marks(64, 1280),
        "stop": st.just(0.0) | marks(8, 48),
    }
)


def solved(kind, values):
    """A joint; one that cannot be laid out is none to try."""
    try:
        return solve(kind, values).joint
    except CannotBeLaidOut:
        assume(False)


@settings(max_examples=60)
@given(HALF_BLIND)
def test_every_half_blind_joint_closes(values):
    assert faults(solved("half-blind", values).shape) == []


@settings(max_examples=60)
@given(THROUGH)
def test_every_through_joint_closes(values):
    assert faults(solved("through", values).shape) == []


@settings(max_examples=40)
@given(SLIDING)
def test_every_sliding_joint_closes(values):
    assert faults(solved("sliding", values).shape) == []


J1 = {
    "height": 8 + 13 / 32,
    "front": 13 / 16,
    "lap": 3 / 16,
    "side": 1 / 2,
    "rabbet": 1 / 16,
    "half_pin": 1 / 8,
    "pin": 1 / 8,
    "tails": 5,
    "slope": 8,
}
"""A front of the worked dresser: row 5."""


def test_the_strip_of_a_side_has_the_tails_where_the_table_has_them():
    joint = solve("half-blind", J1).joint
    strip = joint.shape.strips[0]

    saw = [line for line in strip.lines if line.stroke is Stroke.SAW]
    ends = sorted(line.start[1] for line in saw)
    bases = sorted(line.end[1] for line in saw)
    assert ends == pytest.approx(sorted(e for t in joint.layout.tails for e in (t.lower_end, t.upper_end)))
    assert bases == pytest.approx(sorted(b for t in joint.layout.tails for b in (t.lower_base, t.upper_base)))
    assert {line.start[0] for line in saw} == {0.0}
    assert {line.end[0] for line in saw} == {joint.gauge_1}


def test_the_strips_of_side_and_front_lay_the_same_tails_out():
    side, front = solve("half-blind", J1).joint.shape.strips

    tails = sorted((low[1], high[1]) for low, _, _, high in front.waste)
    pins = sorted((low[1], high[1]) for low, _, _, high in side.waste)
    edges = sorted(edge for pair in pins for edge in pair)[1:-1]
    # What is waste on one board stands on the other; at the baseline of the front's end strip.
    assert len(front.waste) == 5
    assert len(side.waste) == 6
    assert len(tails) * 2 == len(edges)


def test_the_trap_is_named_on_the_plan():
    plan = solve("half-blind", J1).joint.shape.cuts[0]

    gauge = next(each for each in plan.dimensions if each.name == "gauge 2")
    assert (gauge.start, gauge.end) == (0.0, 7 / 16)
    assert str(gauge.note) == "not 1/2"
