"""Every kind of joint is solved from plain numbers in the same way."""

from dataclasses import replace

import pytest

from casewright.joinery.chisels import RACK
from casewright.joinery.joint import Measure
from casewright.joinery.kinds import kinds, solve
from casewright.measure.ledger import Ledger
from casewright.measure.lengths import parse_length
from casewright.measure.working import explain

KINDS = list(kinds().values())

READ = {
    Measure.LENGTH: lambda text: float(parse_length(text)),
    Measure.FINE: lambda text: float(parse_length(text)),
    Measure.SLOPE: lambda text: float(text.removeprefix("1:")),
    Measure.COUNT: int,
    Measure.PERCENT: float,
    Measure.NUMBER: float,
}
"""How the example of a field is read."""


def examples(kind, *, only_required: bool) -> dict[str, float]:
    """The example values of a kind's fields."""
    return {
        field.name: READ[field.measure](field.example)
        for field in kind.fields
        if field.required or not only_required
    }


def test_the_kinds_are_found_by_their_modules():
    assert {"box", "half-blind", "sliding", "through"} <= set(kinds())
    assert all(name == kind.name for name, kind in kinds().items())


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_the_required_fields_alone_make_a_joint_and_the_rest_is_chosen_with_a_reason(kind):
    solved = solve(kind.name, examples(kind, only_required=True))

    names = {field.name for field in kind.fields if not field.required}
    assert solved.chosen
    assert {chosen.name for chosen in solved.chosen} <= names
    assert all(str(chosen.why).endswith(".") and chosen.source for chosen in solved.chosen)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_the_examples_of_all_fields_make_a_joint_and_nothing_is_chosen(kind):
    assert solve(kind.name, examples(kind, only_required=False)).chosen == ()


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_giving_what_was_chosen_makes_the_same_joint(kind):
    values = examples(kind, only_required=True)
    first = solve(kind.name, values)

    again = solve(kind.name, values | {chosen.name: chosen.value for chosen in first.chosen})

    assert again.joint == first.joint
    assert again.chosen == ()


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_every_kind_lists_findings_and_settings_with_names_of_their_own(kind):
    joint = solve(kind.name, examples(kind, only_required=False)).joint

    names = [setting.name for setting in joint.settings]
    assert joint.findings
    assert len(set(names)) == len(names)
    assert all(setting.label for setting in joint.settings)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_every_field_is_explained(kind):
    assert all(field.help.endswith(".") for field in kind.fields)
    assert all(bool(field.default) is not field.required for field in kind.fields)
    required_first = [field.required for field in kind.fields]
    assert required_first == sorted(required_first, reverse=True)


def test_a_field_is_an_option_with_dashes():
    field = next(field for field in kinds()["half-blind"].fields if field.name == "half_pin")

    assert field.option == "--half-pin"


def test_none_is_as_good_as_left_out():
    values = {"height": 8.40625, "front": 0.8125, "side": 0.5}

    assert solve("half-blind", values | {"lap": None, "tails": None}) == solve("half-blind", values)


def test_the_front_of_the_dresser_is_chosen_as_its_maker_did():
    """Worked joint J1 from its three sizes and its groove."""
    solved = solve(
        "half-blind",
        {"height": 8.40625, "front": 0.8125, "side": 0.5, "groove_height": 0.375, "groove_width": 0.25},
    )

    assert {chosen.name: chosen.value for chosen in solved.chosen} == {
        "lap": 3 / 16,
        "half_pin": 1 / 8,
        "pin": 1 / 8,
        "slope": 8,
        "rabbet": 1 / 16,
        "tails": 5,
    }


def test_a_locked_gauge_settles_the_lap():
    solved = solve("half-blind", {"height": 8.40625, "front": 0.828125, "side": 0.5, "locked_gauge_1": 0.625})

    assert (solved.joint.lap, solved.joint.given.lap) == (0.203125, 0.203125)
    assert "lap" not in {chosen.name for chosen in solved.chosen}


def test_measured_sides_are_grouped():
    sides = (("1L", 0.4375), ("1R", 0.46875))

    solved = solve("half-blind", {"height": 8.40625, "front": 0.8125, "side": 0.5}, measured=sides)

    assert len(solved.joint.gauge_groups) == 2


def test_the_shops_own_rack_is_used():
    narrow = replace(RACK, chisels=(0.125, 0.25))

    solved = solve("half-blind", {"height": 8.40625, "front": 0.8125, "side": 0.5}, rack=narrow)

    assert solved.joint.chisels.sockets == 0.25


def test_the_ledger_says_which_numbers_were_given_and_which_were_chosen():
    ledger = Ledger()

    solve("half-blind", {"height": 8.40625, "front": 0.8125, "side": 0.5}, ledger=ledger)

    assert ledger["height"].basis == "given"
    assert explain(ledger, "side").value == "1/2 in"
    assert str(ledger["lap"].basis).startswith("chosen: A quarter of the 13/16 in front")


@pytest.mark.parametrize(
    ("kind", "changes", "sentence"),
    [
        ("finger", {}, r"“finger” is not a joint known here; it can be .*box, .*half-blind, .*through\."),
        ("half-blind", {"front": None}, r"The front is missing; give it as --front 13/16\."),
        (
            "half-blind",
            {"depth": 1.0},
            r"A half-blind joint has no “depth”; it takes height, front, side, lap",
        ),
        ("half-blind", {"height": 0.0}, r"The height cannot be 0; 8-13/32 is an example\."),
        ("half-blind", {"height": float("nan")}, r"The height cannot be nan; 8-13/32 is an example\."),
        ("half-blind", {"slope": float("inf")}, r"The slope cannot be inf; 1:8 is an example\."),
        ("half-blind", {"pin": -0.125}, r"The pin cannot be -1/8; 1/8 is an example\."),
        ("half-blind", {"rabbet": -0.125}, r"The rabbet cannot be -1/8; 1/16 is an example\."),
        ("half-blind", {"tails": 0}, r"The tails cannot be 0; 5 is an example\."),
        ("half-blind", {"tails": 2.5}, r"The number of tails cannot be 2\.5; it is a whole number\."),
        ("half-blind", {"groove_height": 0.375}, r"A groove needs both its height"),
        ("half-blind", {"height": 0.5}, r"No number of tails passes\."),
    ],
)
def test_values_that_cannot_be_meant_are_refused_with_a_sentence(kind, changes, sentence):
    values = {"height": 8.40625, "front": 0.8125, "side": 0.5}

    with pytest.raises(ValueError, match=sentence):
        solve(kind, values | changes)


def test_a_kind_without_groups_takes_no_measured_sides():
    with pytest.raises(ValueError, match="A sliding joint takes no measured sides"):
        solve("sliding", {"divider": 0.75, "case_side": 0.75}, measured=(("1L", 0.5),))


def test_no_rabbet_is_a_value_and_not_left_out():
    solved = solve("half-blind", {"height": 8.40625, "front": 0.8125, "side": 0.5, "rabbet": 0.0})

    assert solved.joint.gauge_2 == 0.5
