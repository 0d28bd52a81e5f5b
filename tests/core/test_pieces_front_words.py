"""A box with a front of its own: what is said of its joints is said of that, and not of the show front."""

import pytest

from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say
from casewright.pieces.drawers.front_words import of_the_box
from units import built, chest

OVERLAY = {"drawers.style": {"kind": "full overlay"}, "drawers.box_front": "3/8", "drawers.lap": "1/16"}


def remedies(data):
    return {each.rule: str(each.remedy) for each in built(chest(data)).findings}


def test_a_box_front_that_is_too_thin_is_named():
    said = remedies({**OVERLAY, "drawers.box_front": "3/8", "drawers.groove.depth": "1/4"})

    assert said["JC10"] == "Make the box’s front at least 5/8 in thick."
    assert said["front behind groove"].endswith("or the box’s front 1/2 in thick.")


def test_an_inset_front_stays_the_front():
    said = remedies({"drawers.front": "3/8", "drawers.lap": "1/16"})

    assert said["JC10"].startswith("Make the front at least 5/8 in thick")


@pytest.mark.parametrize(
    "said", ["The show front stays.", "Slots run front to back.", "An applied front hides it."]
)
def test_other_fronts_and_directions_are_left_as_they_are(said):
    drawers = built(chest(OVERLAY)).spec.drawers
    finding = Finding(rule="JC1", verdict=Verdict.PASS, message=say(said), remedy="")

    [found] = of_the_box(drawers, [finding])
    assert str(found.message) == said
