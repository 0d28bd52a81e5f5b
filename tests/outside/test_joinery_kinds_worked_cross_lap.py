"""Crossing strips against what is common practice of cross halvings and egg crates, by pencil."""

import pytest

from casewright.joinery.kinds import solve

COMMON = "common practice of cross halvings: each for half of the depth, as wide as the other strip measures"


def values(found):
    return {setting.name: setting.value for setting in found.settings}


@pytest.mark.parametrize(
    ("depth", "level", "upright", "notches", "widths"),
    [
        # half of 7 is 3-1/2 for both
        (7.0, 0.5, 0.5, (3.5, 3.5), (0.5, 0.5)),
        # half of 6-3/8 is 3-3/16; a strip that measured 0.49 takes a notch of 0.49
        (6.375, 0.49, 0.375, (3.1875, 3.1875), (0.375, 0.49)),
        # half of 8-3/64 is 4-3/128: 4-1/64 of the one, 4-1/32 of the other, flush in front
        (8.046875, 0.5, 0.5, (4.015625, 4.03125), (0.5, 0.5)),
    ],
)
def test_notches_are_as_by_pencil(depth, level, upright, notches, widths):
    given = {"depth": depth, "level": level, "upright": upright, "level_first": 8.5, "upright_first": 4.25}
    found = values(solve("cross-lap", given).joint)

    assert (found["level_notch"], found["upright_notch"]) == notches, COMMON
    assert (found["level_width"], found["upright_width"]) == widths, COMMON
