"""The marks of the cut list: parts that share one but differ in size stay apart, however many there are."""

from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, part_lines
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse


def _part(number: int, line: str) -> Part:
    return Part(
        code=f"A-R1-{number}-SL",
        line=line,
        name="Drawer side",
        wood="cherry",
        cut=Cut.FLAT,
        thickness=0.5,
        width=4.0,
        length=10.0 + number / 16,
        face=FaceClass.DRAWER,
        grain=Grain.BACK,
        use=PartUse.DRAWER,
        box=Box(0.0, 0.0, 0.0, 0.5, 10.0, 4.0),
    )


def test_sizes_beyond_the_alphabet_get_two_letters() -> None:
    marks = [each.line for each in part_lines(_part(number, "S5") for number in range(60))]
    assert marks[:3] == ["S5", "S5b", "S5c"]
    assert marks[25:29] == ["S5z", "S5aa", "S5ab", "S5ac"]
    assert len(set(marks)) == 60
    assert all(mark.isalnum() for mark in marks)


def test_a_numbered_mark_counts_on() -> None:
    assert [each.line for each in part_lines(_part(number, "N#") for number in range(3))] == [
        "N1",
        "N2",
        "N3",
    ]
