"""The process that draws loads: what is too much, too slow or broken is said in words."""

import sys
from dataclasses import replace

import pytest

from casewright.pieces.takeoff.feet_asked import FeetAsked, FeetPart
from casewright.solving import feet
from casewright.solving.feet import MOST_PARTS, NoAnswer, enough_for
from casewright.wood.grades import GradeName

ASKED = FeetAsked(
    parts=(FeetPart(mark="a", width=5, length=30, count=4),),
    named=(),
    grade=GradeName.FAS,
    thickness=1.0,
    average=7.5,
    rough=4.2,
    ordered=6,
)
MANY = replace(ASKED, parts=(FeetPart(mark="a", width=5, length=30, count=MOST_PARTS + 1),))


def test_what_is_about_too_many_parts_has_no_answer_and_holds_up_nothing_else():
    none, found = enough_for((MANY, ASKED))

    assert none is None
    assert found is not None
    assert found.feet >= 5


@pytest.mark.parametrize(
    ("program", "patience", "words"),
    [("raise SystemExit(1)", 60.0, "want of memory"), ("import time; time.sleep(30)", 0.2, "fewer jobs")],
)
def test_a_process_that_breaks_off_or_takes_too_long_is_said_to(monkeypatch, program, patience, words):
    monkeypatch.setattr(feet, "COMMAND", (sys.executable, "-c", program))
    monkeypatch.setattr(feet, "PATIENCE", patience)

    with pytest.raises(NoAnswer, match=words):
        enough_for((replace(ASKED, seed=77),))
