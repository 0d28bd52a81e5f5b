"""Starting units: each can be built, priced and delivered as it is."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.asked.presets import preset, presets
from casewright.pieces.asked.reading import read_unit, write_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.estimate import estimate
from casewright.pieces.words.describe import describe
from units import TODAY, built

EVERY = pytest.mark.parametrize("start", presets(), ids=lambda start: start.key)


def test_there_are_several_to_start_from_each_by_its_own_name():
    keys, names = [each.key for each in presets()], [each.name for each in presets()]

    assert keys[0] == "dresser"
    assert len(set(keys)) == len(set(names)) == len(keys) >= 7
    assert [each.place for each in presets()] == list(range(1, len(keys) + 1))


@EVERY
def test_it_is_built_and_priced_without_a_stop_by_the_example_shop(start):
    held = estimate(start.spec(), example_shop(), TODAY)

    assert [finding.message for finding in held.findings if finding.verdict is Verdict.STOP] == []
    assert held.unpriced == ()
    assert held.price.asked > 250_00


@EVERY
def test_it_is_made_of_woods_that_suit_the_work(start):
    woods = start.spec().woods

    # runners and what is not seen need not be of the show wood, and sides should wear well
    assert woods.inside.wood == "poplar"
    assert woods.drawers.wood in {"soft maple", "hard maple"}
    assert woods.case.wood in {"cherry", "walnut", "white oak", "white ash"}


@EVERY
def test_it_is_written_and_read_back_as_it_was(start):
    assert read_unit(write_unit(start.spec())) == start.spec()


@EVERY
def test_it_says_what_it_is_and_on_what_ground(start):
    assert start.words.endswith(".")
    assert (start.source, start.basis) == (start.source.strip(), "common practice")
    assert start.source != ""


def test_changing_one_leaves_the_next_as_it_was():
    start = preset("dresser")

    start.spec_json["body"]["width"] = "10"

    assert preset("dresser").spec_json["body"]["width"] == "39"


def test_the_metric_one_is_described_in_millimetres():
    start = preset("metric-chest")

    assert "930 mm wide × 495 mm deep × 1000 mm high" in describe(built(start.spec_json))[0]


def test_a_starting_unit_that_there_is_not_is_named_with_those_that_there_are():
    with pytest.raises(ValueError, match="There is no starting unit “sofa”; there are dresser, bedside"):
        preset("sofa")


def test_a_piece_that_the_rule_leaves_out_says_so_where_a_child_or_a_push_would_tip_it():
    made = built(preset("jewelry-chest").spec_json)

    said = [
        each for each in made.findings if each.rule.startswith("tip ") and each.verdict is Verdict.CAUTION
    ]
    assert {each.rule for each in said} == {"tip child, level", "tip child, carpet", "tip push"}
    for each in said:
        assert "does not ask for this, as it is not for clothing, 14 in is below 27 in" in str(each.message)
        assert "common practice" in str(each.message)


def test_the_drawers_of_the_tool_chest_open_wide_enough_and_nothing_tips_it():
    made = built(preset("tool-chest").spec_json)

    assert all(drawer.run.travel >= 7.5 for drawer in made.drawers)
    tips = {each.rule: each.verdict for each in made.findings if each.rule.startswith("tip ")}
    assert set(tips.values()) == {Verdict.PASS}


def test_a_kitchen_bank_of_equal_fronts_is_not_told_to_grow_towards_the_floor():
    made = built(preset("kitchen-bank").spec_json)

    [found] = [each for each in made.findings if each.rule == "graduation"]
    assert found.verdict is Verdict.PASS
    assert len({round(drawer.sizes.face.height, 6) for drawer in made.drawers[1:]}) == 1
