"""A joint whose boards go by other names: words and shapes change, sizes do not."""

import pytest

from casewright.joinery.called import Called, renamed
from casewright.joinery.joint import Setting
from casewright.joinery.kinds import solve
from casewright.measure.saying import say

NAMES = (("case side", "front"), ("divider", "side"))


def slid():
    return solve("sliding", {"divider": 0.5, "case_side": 0.75}).joint


def test_names_change_at_once_so_that_two_can_change_places():
    assert renamed("front and back", (("front", "back"), ("back", "front"))) == "back and front"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("Divider length", "Side length"),
        ("the case side's face", "the front's face"),
        ("between the case sides", "between the fronts"),
        ("dividers {}", "sides {}"),
        ("a subdivider", "a subdivider"),
    ],
)
def test_a_name_is_changed_as_a_whole_word_with_its_capital_and_its_plural(words, said):
    assert renamed(words, NAMES) == said


def test_lengths_in_words_stay():
    words = say("{} of {}: {}", "the divider", 0.5, say("left of the case side {:bare}", 1 / 4))

    assert str(renamed(words, NAMES)) == "the side of 1/2 in: left of the front 1/4"


def test_settings_and_findings_keep_their_numbers():
    joint = slid()
    first = Setting(name="side_length", label="Side length", value=18.0)
    called = Called(of=joint, names=NAMES, about="A-R1-1", without=("added",), first=(first,))

    own = {each.name: each.value for each in joint.settings if each.name != "added"}
    assert {each.name: each.value for each in called.settings} == own | {"side_length": 18.0}
    assert [each.found for each in called.findings] == [each.found for each in joint.findings]
    assert {each.about for each in called.findings} == {"A-R1-1"}


def test_the_shape_is_the_same_but_for_its_names():
    joint = slid()
    called = Called(of=joint, names=NAMES)

    assert [board.name for board in called.shape.boards] == ["front", "side"]
    assert [board.prisms for board in called.shape.boards] == [board.prisms for board in joint.shape.boards]
    assert {strip.board for strip in called.shape.strips} == {"front", "side"}
    assert called.tip == joint.tip
