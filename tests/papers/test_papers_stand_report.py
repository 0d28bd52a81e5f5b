"""How a unit stands, on the command line: what is asked of it, what would mend it, and what is no remedy."""

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.papers.stand_report import stand_section
from casewright.papers.writing import Writing
from casewright.pieces.asked.presets import preset
from units import built, chest

LOCKED_IS_NOT_ENOUGH = {"body": {"width": "24", "depth": "12", "overall_height": "30"}}
"""So shallow that one drawer alone tips it under a child."""


def report(data):
    """Its words, wherever a line ends; two spaces stand between the columns of a table."""
    lines = stand_section(built(data), Writing(unit=LengthUnit.INCH)).splitlines()
    return " ".join(line.strip() for line in lines)


@pytest.mark.parametrize("start", ["kitchen-bank", "wall-hung-bank", "built-in-bank"])
def test_of_a_fixed_bank_nothing_is_asked_and_no_remedy_is_listed(start):
    said = report(preset(start).spec_json)

    assert "Fix it before its" in said
    assert said.index("Fix it before its") < said.index("If nothing held it, for information")
    assert "would tip" in said
    assert [
        word for word in ("Verdict", "  stop  ", "Outstops at", "Front feet", "mend it") if word in said
    ] == []


def test_what_does_not_suffice_alone_stands_under_a_heading_of_its_own():
    said = report(chest(LOCKED_IS_NOT_ENOUGH))
    enough, _, lacking = said.partition("Not enough alone:")

    assert "An interlock that opens one drawer at a time: the least factor becomes 0." in lacking
    assert "An interlock" not in enough
    assert "What would mend it" in enough


def test_reasons_why_the_rule_does_not_cover_a_piece_are_a_sentence():
    said = " ".join(report(preset("kitchen-bank").spec_json).split())

    assert "because it is fixed to the building and it is not for clothing." in said
