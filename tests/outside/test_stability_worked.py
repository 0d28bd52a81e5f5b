"""The tip table, the sag and the jam length of worked dresser A, and the printed tilts and volumes."""

import pytest

from casewright.measure.findings import Verdict
from casewright.stability.jam import check_jam, check_shape, jam_length, off_centre
from casewright.stability.limits import house_limits
from casewright.stability.masses import Drawer, Mass, Piece, at_travel, tilt_of, total_weight
from casewright.stability.remedies import greatest_travel, safe_travel
from casewright.stability.sag import bottom_sag, check_sag, fill_pressure, half_span, sag_limit
from casewright.stability.scope import Use
from casewright.stability.situations import all_open_filled, child_on_drawer, push_at_top
from casewright.stability.tip_checks import tip_findings
from casewright.stability.tipping import tip_case
from casewright.stability.volume import clear_volume, fill_weight

# worked dresser A, as printed: code, weight, centre behind the front, centre above the floor, volume; and the
# top of the opening, where a child's weight takes hold: plinth 4, bottom 3/4, then openings and dividers
DRAWERS = [
    ("R1 left", 6.97, 8.20, 40.0, 0.842, 42.75),
    ("R1 right", 6.97, 8.20, 40.0, 0.842, 42.75),
    ("R2", 13.43, 8.03, 33.4, 2.050, 36.5),
    ("R3", 14.45, 8.04, 26.0, 2.330, 29.5),
    ("R4", 15.50, 8.05, 17.9, 2.609, 21.75),
    ("R5", 16.55, 8.06, 9.0, 2.889, 13.25),
]
BEDROOM = Use(free_standing=True, clothing=True, volume=11.56, restraint=True)


def dresser(travel=12.5):
    return Piece(
        case=Mass(label="case", weight=87.0, x=10.90, z=24.6),
        drawers=tuple(
            Drawer(
                label=label,
                weight=weight,
                centre=centre,
                height=height,
                travel=travel,
                load_height=load_height,
                fill_weight=fill_weight(volume, 8.5),
                fill_centre=9.53,
            )
            for label, weight, centre, height, volume, load_height in DRAWERS
        ),
        height=44.375,
        support_depth=19.75,
    )


def all_open(travel):
    return all_open_filled(at_travel(dresser(), travel))


def child(block):
    return child_on_drawer(dresser(), "R5", 60, block)


@pytest.mark.parametrize(
    ("situation", "holding", "tipping", "factor", "source"),
    [
        (all_open(12.5), 948, 619, 1.53, "worked dresser A, all open two thirds, filled"),
        (all_open(14), 948, 877, 1.08, "worked dresser A, all open 14 in, filled"),
        (all_open(15.75), 948, 1179, 0.80, "worked dresser A, all open 15-3/4 in, filled: it tips"),
        (child(0), 1411, 824, 1.71, "worked dresser A, 60 lb on row 5, level"),
        (child(0.43), 1328, 844, 1.57, "worked dresser A, 60 lb on row 5, on a 0.43 in block"),
        (push_at_top(dresser(), 10, 56), 948, 771, 1.23, "worked dresser A, empty, 10 lb push at the top"),
    ],
)
def test_the_tip_table_of_the_dresser_agrees_with_print(situation, holding, tipping, factor, source):
    case = tip_case(situation)

    # the printed weights and centres are rounded: hundredths of a pound at a foot move the sums by about one
    assert case.holding == pytest.approx(holding, abs=1.0), source
    assert case.tipping == pytest.approx(tipping, abs=1.0), source
    assert case.factor == pytest.approx(factor, abs=0.005), source


def test_the_safe_travel_of_the_dresser_is_rounded_down():
    # with the printed sums: (948 / 1.25 + 1,533.5) / 172.2 = 13.31
    assert safe_travel(948, 1533.5, 172.2, 1.25) == 13 + 19 / 64


def test_the_safe_travel_from_the_printed_weights_is_the_same_within_their_rounding():
    # 1/64 in of travel is 2.7 in-lb here, less than the rounding of the printed weights
    assert greatest_travel(all_open(12.5), 1.25) == pytest.approx(13 + 19 / 64, abs=1 / 64)


def test_the_dresser_passes_everything_but_the_push_which_is_a_caution():
    verdicts = {finding.rule: finding.verdict for finding in tip_findings(dresser(), BEDROOM)}

    assert verdicts == {
        "tip scope": Verdict.PASS,
        "tip all open": Verdict.PASS,
        "tip child, level": Verdict.PASS,
        "tip child, carpet": Verdict.PASS,
        "tip push": Verdict.CAUTION,
        "tip restraint": Verdict.PASS,
    }


def test_the_dresser_on_full_extension_slides_would_be_stopped():
    verdicts = {finding.rule: finding.verdict for finding in tip_findings(dresser(18.5), BEDROOM)}

    assert verdicts["tip all open"] is Verdict.STOP


def test_the_dresser_weighs_what_is_printed():
    filled = sum(drawer.fill_weight for drawer in dresser().drawers)

    assert total_weight(dresser()) == pytest.approx(160.8, abs=0.1)  # the printed weights are rounded
    assert filled == pytest.approx(98.3, abs=0.05)


@pytest.mark.parametrize(
    ("depth", "tilt", "source"),
    [
        (16, 1.54, "0.43 in block at 16 in between supports"),
        (18, 1.37, "0.43 in block at 18 in between supports"),
        (19.75, 1.25, "worked dresser A"),
    ],
)
def test_a_block_under_the_back_tilts_as_printed(depth, tilt, source):
    assert tilt_of(0.43, depth) == pytest.approx(tilt, abs=0.005), source


def test_a_drawers_volume_is_counted_as_the_guidance_says():
    # CPSC business guidance, Clothing Storage Units: 30 wide, 16 deep, 6 clear height
    volume = clear_volume(30, 16, 6, house_limits().volume_allowance)

    assert volume == pytest.approx(1.632, abs=0.0005)


def test_the_bottom_of_row_five_sags_too_far_without_a_muntin():
    # worked dresser A: 36-15/16 in of 3/8 in poplar, 1.58 million psi, filled 7-3/4 in
    found = check_sag(36 + 15 / 16, 3 / 8, 1.58e6, 7.75)

    assert found.found == pytest.approx(0.133, abs=0.0005)
    assert found.needed == pytest.approx(0.123, abs=0.0005)
    assert found.verdict is Verdict.STOP


def test_the_bottom_of_row_five_passes_with_its_muntin():
    span = half_span(36 + 15 / 16, 2)

    sag = bottom_sag(fill_pressure(7.75, 8.5), span, 1.58e6, 3 / 8)

    assert sag == pytest.approx(0.007, abs=0.0005)  # worked dresser A
    assert sag < sag_limit(span, 300)


def test_the_wide_drawers_of_the_dresser_do_not_jam():
    away = off_centre(38, 9 + 5 / 16)

    found = check_jam(18.75, 12.5, away)

    # worked dresser A: 9.69 off centre, jam length 5.8, 6-1/4 still engaged
    assert away == pytest.approx(9.69, abs=0.005)
    assert jam_length(away, 0.3) == pytest.approx(5.8, abs=0.05)
    assert (found.found, found.verdict) == (6.25, Verdict.PASS)


def test_the_wide_drawers_of_the_dresser_are_a_caution_for_their_shape():
    found = check_shape(18.75, 37 + 15 / 16)

    assert found.needed == pytest.approx(18.97, abs=0.005)  # worked dresser A
    assert found.verdict is Verdict.CAUTION
