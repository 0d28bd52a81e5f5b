"""Tipping, sag and jam as findings."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.findings import Verdict
from casewright.stability.jam import check_jam, check_shape, engaged_length, jam_length, off_centre
from casewright.stability.limits import house_limits
from casewright.stability.masses import Drawer, Mass, Piece
from casewright.stability.sag import bottom_sag, check_sag, fill_pressure, sag_limit, thickness_for
from casewright.stability.scope import Use, check_restraint, check_scope, is_in_scope
from casewright.stability.tip_checks import (
    factor_shown,
    interlock_suffices,
    tip_cases,
    tip_findings,
    verdict_on,
    worst_cases,
)
from casewright.stability.tipping import Kind

LIMITS = house_limits()
BEDROOM = Use(free_standing=True, clothing=True, volume=5.0, restraint=True)


def chest(travel):
    drawer = Drawer(
        label="R1",
        weight=15,
        centre=8,
        height=12,
        travel=travel,
        load_height=16,
        fill_weight=40,
        fill_centre=9,
    )
    return Piece(
        case=Mass(label="case", weight=90, x=10, z=18), drawers=(drawer,), height=30, support_depth=18
    )


@pytest.mark.parametrize(
    ("height", "weight", "change", "covered"),
    [
        (27, 30, {"volume": 3.2}, True),
        (26.9, 30, {"volume": 3.2}, False),
        (27, 29.9, {"volume": 3.2}, False),
        (27, 30, {"volume": 3.1}, False),
        (27, 30, {"clothing": False}, False),
        (27, 30, {"free_standing": False}, False),
    ],
)
def test_the_rule_covers_free_standing_clothing_storage_from_all_three_limits_up(
    height, weight, change, covered
):
    use = replace(BEDROOM, **change)

    assert is_in_scope(height, weight, use, LIMITS) is covered


def test_a_piece_that_is_covered_is_told_of_the_rule_and_that_only_its_test_decides():
    found = check_scope(chest(10), BEDROOM, LIMITS)

    assert found.verdict is Verdict.PASS
    assert "16 CFR 1261, which adopts ASTM F2057-23, covers it" in str(found.message)
    assert "only the test of the standard decides" in str(found.message)


def test_a_piece_that_is_not_covered_is_told_every_reason():
    use = replace(BEDROOM, clothing=False, volume=2.0)

    found = check_scope(chest(10), use, LIMITS)

    assert "it is not for clothing and 2.00 cu ft is below 3.2 cu ft" in str(found.message)


def test_a_built_in_is_not_tried_for_tipping():
    found = tip_findings(chest(20), replace(BEDROOM, free_standing=False))

    assert [finding.rule for finding in found] == ["tip scope"]
    assert "fixed to the building" in str(found[0].message)


def test_a_short_travel_passes_and_a_full_one_is_stopped_with_the_travel_that_would_pass():
    short = {finding.rule: finding for finding in tip_findings(chest(10), BEDROOM)}
    full = {finding.rule: finding for finding in tip_findings(chest(26), BEDROOM)}

    # 900 hold; 15 x 8 + 40 x 9 = 480 closed over 55 lb: (720 + 480) / 55 = 21.81, down to 21-13/16 less a bit
    assert short["tip all open"].verdict is Verdict.PASS
    assert full["tip all open"].verdict is Verdict.STOP
    assert str(full["tip all open"].remedy).startswith("Stop the drawers at 21-13/16 in; or add")
    assert "restraint" in str(full["tip all open"].remedy)
    # lacking 1.25 x (55 x 26 - 480) - 900 = 287.5: at 17 in, 1 before the rear edge, that is 16.9 lb; over
    # 158.75 lb it is 1.81 in; the 90 lb of the case go back by half of 6.39 in
    assert "add 17 lb at the bottom" in str(full["tip all open"].remedy)
    assert "front feet 1-13/16 in forward" in str(full["tip all open"].remedy)


def test_a_drawer_that_never_gets_before_the_feet_has_no_factor_to_write_down():
    # 55 lb with their centres 8 and 9 in back, opened by 4: nothing of them comes before the front edge
    found = {finding.rule: finding for finding in tip_findings(chest(4), BEDROOM)}["tip all open"]

    assert found.verdict is Verdict.PASS
    assert found.found is None
    assert "a factor of no limit" in str(found.message)


def test_a_body_is_told_to_be_deeper_only_by_what_a_maker_would_do():
    some = {finding.rule: finding for finding in tip_findings(chest(24), BEDROOM)}["tip all open"]
    light = replace(chest(26), case=Mass(label="case", weight=9, x=10, z=18))
    none = {finding.rule: finding for finding in tip_findings(light, BEDROOM)}["tip all open"]

    # 1.25 x (55 x 24 - 480) - 900 = 150 lack; the 90 lb of the case go back by half of 3.33 in, within 9 in
    assert "make the body 3-1/2 in deeper" in str(some.remedy)
    # 1.25 x (55 x 26 - 480) - 90 = 1097.5 lack; half of 243.9 in for 9 lb
    assert "deeper" not in str(none.remedy)


def test_the_situations_come_with_the_wall_restraint_at_the_end():
    rules = [finding.rule for finding in tip_findings(chest(10), BEDROOM)]

    assert rules == [
        "tip scope",
        "tip all open",
        "tip child, level",
        "tip child, carpet",
        "tip push",
        "tip restraint",
    ]


@pytest.mark.parametrize(
    ("factor", "kind", "covered", "verdict"),
    [
        (1.25, Kind.ALL_OPEN, True, Verdict.PASS),
        (1.2499, Kind.ALL_OPEN, True, Verdict.CAUTION),
        (1.0, Kind.PUSH, True, Verdict.CAUTION),
        (0.99, Kind.PUSH, True, Verdict.STOP),
        (0.5, Kind.CHILD_LEVEL, True, Verdict.STOP),
        (0.5, Kind.CHILD_LEVEL, False, Verdict.CAUTION),
        (0.99, Kind.ALL_OPEN, False, Verdict.STOP),
    ],
)
def test_a_factor_passes_from_the_target_up_and_stops_below_one(factor, kind, covered, verdict):
    assert verdict_on(factor, 1.25, kind, covered) is verdict


def test_a_factor_never_looks_safer_than_it_is():
    assert factor_shown(1.2499) == "1.24"
    assert factor_shown(1.0) == "1.00"
    assert factor_shown(float("inf")) == "no limit"


@pytest.mark.parametrize(
    ("planned", "covered", "verdict"),
    [
        (True, True, Verdict.PASS),
        (False, True, Verdict.STOP),
        (False, False, Verdict.CAUTION),
    ],
)
def test_a_wall_restraint_is_always_asked_for(planned, covered, verdict):
    found = check_restraint(planned, covered)

    assert found.verdict is verdict
    assert "restraint" in str(found.message)


def pair(weight, centre):
    """Two drawers alike, one above the other, in a case of some weight."""
    low = replace(chest(12).drawers[0], volume=1.0)
    high = replace(low, label="R2", height=24, load_height=28)
    return replace(chest(12), case=Mass(label="case", weight=weight, x=centre, z=18), drawers=(high, low))


@pytest.mark.parametrize("kind", ["tip child, level", "tip child, carpet"])
def test_an_interlock_is_no_remedy_where_one_drawer_is_open_anyway(kind):
    found = {finding.rule: str(finding.remedy) for finding in tip_findings(pair(40, 8), BEDROOM)}

    assert found[kind]
    assert "interlock" not in found[kind]


@given(st.floats(5, 120), st.floats(2, 12))
def test_an_interlock_is_offered_where_it_suffices_and_nowhere_else(weight, centre):
    piece = pair(weight, centre)
    locked = {
        case.situation.kind: case.factor
        for case in worst_cases(tip_cases(replace(piece, one_at_a_time=True)))
    }

    for case in worst_cases(tip_cases(piece)):
        kind = {Kind.ALL_OPEN: Kind.ONE_OPEN, Kind.PUSH: Kind.PUSH}.get(case.situation.kind)
        suffices = kind is not None and locked[kind] >= LIMITS.target_factor
        assert interlock_suffices(case, piece, LIMITS) is suffices


def test_a_drawer_that_cannot_open_safely_at_all_is_told_so():
    light = replace(chest(12), case=Mass(label="case", weight=5, x=1, z=18))

    found = {finding.rule: finding for finding in tip_findings(light, BEDROOM)}

    assert str(found["tip child, level"].remedy).startswith("Stop the drawers at")
    assert str(found["tip push"].remedy).startswith("No travel is safe")


def integrated_sag(pressure, span, modulus, thickness, steps=2000):
    """The sag in the middle by virtual work: the product of both moments over the span, Simpson's rule."""
    stiffness = modulus * thickness**3 / 12
    step = span / 2 / steps

    def product(x):
        return pressure / 2 * x * (span - x) * x / 2

    inner = sum((4 if place % 2 else 2) * product(place * step) for place in range(1, steps))
    return 2 * (product(0) + inner + product(span / 2)) * step / 3 / stiffness


@given(st.floats(0.001, 1), st.floats(4, 60), st.floats(1e5, 3e6), st.floats(0.1, 1))
def test_the_sag_is_what_adding_up_the_bending_gives(pressure, span, modulus, thickness):
    sag = bottom_sag(pressure, span, modulus, thickness)

    assert sag == pytest.approx(integrated_sag(pressure, span, modulus, thickness), rel=1e-9)


@given(st.floats(10, 60), st.floats(0.2, 0.5), st.floats(5e5, 2e6), st.floats(1, 20))
def test_a_bottom_of_the_thickness_asked_for_passes(span, thickness, modulus, fill_height):
    pressure = fill_pressure(fill_height, 8.5)
    sag, limit = bottom_sag(pressure, span, modulus, thickness), sag_limit(span, 300)

    thicker = thickness_for(thickness, sag, limit)

    assert check_sag(span, thicker, modulus, fill_height).verdict is Verdict.PASS


def test_half_the_span_sags_a_sixteenth_as_much():
    assert bottom_sag(0.04, 18, 1.5e6, 0.375) == pytest.approx(
        bottom_sag(0.04, 36, 1.5e6, 0.375) / 16, rel=1e-12
    )


def test_a_short_bottom_passes_without_a_remedy():
    found = check_sag(15, 0.375, 1.58e6, 4, about="A-R1-1")

    assert (found.verdict, str(found.remedy), found.about) == (Verdict.PASS, "", "A-R1-1")


def test_a_long_bottom_is_stopped_with_a_muntin_and_a_thickness_that_would_pass():
    found = check_sag(36.9375, 0.375, 1.58e6, 7.75)

    assert found.verdict is Verdict.STOP
    assert "over 17-15/32 in the sag is 0.007 in" in str(found.remedy)
    assert "7/16 in thick" in str(found.remedy)


@pytest.mark.parametrize(("modulus", "thickness"), [(0, 0.375), (1.58e6, 0)])
def test_a_bottom_without_stiffness_is_refused(modulus, thickness):
    with pytest.raises(ValueError, match="give both"):
        bottom_sag(0.04, 36, modulus, thickness)


def test_a_pull_on_the_centre_line_never_jams():
    assert jam_length(off_centre(38, 19), 0.3) == 0


@given(st.floats(8, 30), st.floats(0, 30), st.floats(0, 20))
def test_a_drawer_stopped_where_the_jam_check_says_passes(length, travel, pull):
    jam = jam_length(pull, LIMITS.friction)
    shorter = max(0.0, length - jam)

    at_stop = check_jam(length, min(travel, shorter), pull)

    assert at_stop.verdict is (Verdict.PASS if jam <= length else Verdict.CAUTION)


def test_a_wide_drawer_pulled_at_its_corner_is_a_caution_with_both_remedies():
    found = check_jam(14, 12, 15)

    # 2 x 0.3 x 15 = 9 in needed, 2 in engaged: stop at 5 in, or the pull within 2 / 0.6 = 3-1/3 in
    assert found.verdict is Verdict.CAUTION
    assert str(found.remedy).startswith("Stop it at 5 in, or set the pull within 3-21/64 in")


def test_a_drawer_that_comes_right_out_is_not_engaged():
    assert engaged_length(18, 20) == 0


@pytest.mark.parametrize(
    ("length", "width", "verdict"), [(18, 36, Verdict.PASS), (17.9, 36, Verdict.CAUTION)]
)
def test_a_drawer_is_at_least_half_as_long_as_wide(length, width, verdict):
    assert check_shape(length, width).verdict is verdict


def test_a_drawer_too_short_for_its_width_is_told_how_long_it_should_be():
    found = check_shape(16, 36)

    assert str(found.message) == "16 in long and 36 in wide; half the width is 18 in."
    assert str(found.remedy).startswith("Make it 18 in long or split the row in two")


def test_a_piece_on_all_three_limits_is_outside_only_for_what_it_is_used_for():
    drawer = replace(chest(10).drawers[0], weight=10)
    at_limits = replace(chest(10), height=27, case=Mass(label="case", weight=20, x=10), drawers=(drawer,))

    found = check_scope(at_limits, replace(BEDROOM, clothing=False, volume=3.2), LIMITS)

    assert "ASTM F2057-23: it is not for clothing. This is" in str(found.message)
