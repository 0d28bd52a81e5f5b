"""Heights that were measured of a drawer: in its opening, and together."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from casewright.pieces.built.measuring import with_measured
from units import dresser, unit

IN_OPENING, ALIKE, FRONT = "height in its opening", "sides alike in height", "front as high as its sides"
HIGH = 8.40625
"""As a front and sides in an opening of 8-1/2 are planed."""


def found(heights, opening=8.5):
    """The findings about measured heights of one drawer, by rule and part."""
    parts = {f"R5-1-{mark}": {"width": height} for mark, height in heights.items()}
    made = construct(with_measured(unit(dresser()), {"R5-1": {"height": opening}}, parts), example_shop())
    rules = {IN_OPENING, ALIKE, FRONT}
    return {(each.rule, each.about): each for each in made.findings if each.rule in rules}


def test_heights_that_were_not_measured_are_not_checked():
    assert found({}) == {}


@pytest.mark.parametrize("mark", ["F", "SL", "SR"])
@pytest.mark.parametrize(
    ("over", "verdict"),
    [(0, Verdict.PASS), (1 / 64, Verdict.PASS), (1 / 32, Verdict.CAUTION), (1 / 2, Verdict.STOP)],
)
def test_a_part_is_no_higher_than_its_opening_lets_it_be(mark, over, verdict):
    finding = found({mark: HIGH + over})[IN_OPENING, f"A-R5-1-{mark}"]

    assert finding.verdict is verdict


def test_a_measured_opening_stops_parts_that_were_planed_for_a_higher_one():
    findings = found({"F": 8.5, "SL": 8.375}, opening=8)

    front = findings[IN_OPENING, "A-R5-1-F"]
    assert [each.verdict for each in findings.values() if each.rule == IN_OPENING] == [Verdict.STOP] * 2
    assert (
        str(front.message) == "The front measures 8-1/2 in high; an opening 8 in high lets it be 7-29/32 in."
    )
    assert str(front.remedy).startswith("Plane ")


def test_a_part_too_high_passes_once_it_is_planed_as_the_remedy_says():
    high = found({"F": 8.5}, opening=8)[IN_OPENING, "A-R5-1-F"]

    planed = found({"F": high.needed}, opening=8)[IN_OPENING, "A-R5-1-F"]

    assert planed.verdict is Verdict.PASS


@pytest.mark.parametrize(("apart", "verdict"), [(1 / 64, Verdict.PASS), (1 / 32, Verdict.CAUTION)])
def test_sides_are_alike_in_height(apart, verdict):
    finding = found({"SL": HIGH, "SR": HIGH - apart})[ALIKE, "A-R5-1"]

    assert finding.verdict is verdict


def test_the_higher_side_is_planed_to_the_lower():
    finding = found({"SL": 8.25, "SR": 8.375})[ALIKE, "A-R5-1"]

    assert str(finding.message) == "The left side is 8-1/4 in high and the right side 8-3/8 in: 1/8 in apart."
    assert str(finding.remedy) == "Plane the right side to 8-1/4 in, as the left side is."


@pytest.mark.parametrize(("low", "verdict"), [(0, Verdict.PASS), (1 / 16, Verdict.CAUTION)])
def test_a_front_is_no_lower_than_its_sides(low, verdict):
    finding = found({"F": HIGH - low, "SL": HIGH})[FRONT, "A-R5-1"]

    assert finding.verdict is verdict
