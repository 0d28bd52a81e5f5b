"""Every kind of joint is solved from plain numbers in the same way."""

from dataclasses import replace

import pytest

from casewright.joinery.chisels import RACK
from casewright.joinery.joint import Measure
from casewright.joinery.kinds import kinds, solve
from casewright.measure.ledger import Ledger
from casewright.measure.lengths import parse_length
from casewright.measure.working import explain
from joints import finding

KINDS = list(kinds().values())

READ = {
    Measure.LENGTH: lambda text: float(parse_length(text)),
    Measure.FINE: lambda text: float(parse_length(text)),
    Measure.SLOPE: lambda text: float(text.removeprefix("1:")),
    Measure.COUNT: int,
    Measure.PERCENT: float,
    Measure.NUMBER: float,
    Measure.ANSWER: {"no": 0.0, "yes": 1.0}.__getitem__,
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
        (
            "half-blind",
            {"height": 0.0},
            r"The height cannot be 0 in; give a size above 0; 8-13/32 in for example\.",
        ),
        (
            "half-blind",
            {"height": float("nan")},
            r"The height cannot be nan in; give a size above 0; 8-13/32 in for",
        ),
        ("half-blind", {"slope": float("inf")}, r"The slope cannot be inf; give a slope such as 1:8\."),
        (
            "half-blind",
            {"pin": -0.125},
            r"The pin cannot be -1/8 in; give a size above 0; 1/8 in for example\.",
        ),
        (
            "half-blind",
            {"rabbet": -0.125},
            r"The rabbet cannot be -1/8 in; give a size of 0 or more; 1/16 in for example\.",
        ),
        (
            "half-blind",
            {"tails": 0},
            r"The tails cannot be 0; give a whole number of tails, 1 or more; 5 for example\.",
        ),
        (
            "half-blind",
            {"tails": 2.5},
            r"The tails cannot be 2\.5; give a whole number of tails, 1 or more; 5 for",
        ),
        ("half-blind", {"groove_height": 0.375}, r"A groove needs both its height .*; 3/8 in and 1/4 in are"),
        ("half-blind", {"groove_depth": 0.25}, r"A groove needs both its height"),
        (
            "half-blind",
            {"front_moisture": 8},
            r"The front moisture is compared with the side moisture; give that too, as --side-moisture 8, or",
        ),
        ("half-blind", {"side_gravity": 0.5}, r"give that too, as --front-gravity 0\.50, or leave both out"),
        (
            "half-blind",
            {"measured_tail_length": 0.625},
            r"compared with the measured socket depth; give that too, as --measured-socket-depth 5/8,",
        ),
        (
            "half-blind",
            {"front_gravity": 7, "side_gravity": 0.5},
            r"The front gravity cannot be 7; give a number of 0\.1 or more, up to 1\.4; 0\.50 for example\.",
        ),
        ("half-blind", {"can_be_replaced": 2}, r"The can be replaced cannot be 2; give yes or no\."),
        ("half-blind", {"slope": 1.0}, r"A slope of 1:1 makes no dovetail: .* Make it 1:5 or slighter; 1:8"),
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


@pytest.mark.parametrize("kind", ["half-blind", "through"])
@pytest.mark.parametrize(("proud", "verdict"), [(1 / 16, "pass"), (1 / 4, "caution")])
def test_what_stands_proud_is_no_more_than_a_plane_takes_off(kind, proud, verdict):
    sizes = {"height": 8.40625, "front": 0.8125, "back": 0.5, "side": 0.5, "proud": proud}
    known = {field.name for field in kinds()[kind].fields}

    joint = solve(kind, {name: size for name, size in sizes.items() if name in known}).joint

    assert finding(joint, "proud").verdict == verdict
    assert ("Let them stand 1/32 in proud" in str(finding(joint, "proud").remedy)) is (verdict == "caution")


@pytest.mark.parametrize(("answer", "spare"), [(0.0, True), (1.0, False), (None, False)])
def test_a_front_that_cannot_be_replaced_is_said_so(answer, spare):
    values = {"height": 8.40625, "front": 0.8125, "side": 0.5, "can_be_replaced": answer}

    advice = solve("half-blind", values).joint.advice

    assert any("spare front blank" in str(line) for line in advice) is spare
