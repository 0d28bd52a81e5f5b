"""The process that draws loads: what is too much, too slow or broken is said in words."""

from dataclasses import replace

import pytest

from casewright.pieces.takeoff.feet_asked import FeetAsked, FeetPart
from casewright.solving import beside
from casewright.solving.beside import NoAnswer, answer_beside
from casewright.solving.feet import MOST_PARTS, enough_for
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
def test_a_process_that_breaks_off_or_takes_too_long_is_said_to(
    tmp_path, monkeypatch, program, patience, words
):
    (tmp_path / "broken_worker.py").write_text(program, encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    monkeypatch.setattr(beside, "PATIENCE", patience)

    with pytest.raises(NoAnswer, match=words):
        answer_beside("broken_worker", b"")
