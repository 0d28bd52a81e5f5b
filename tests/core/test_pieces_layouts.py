"""The layouts of a unit's drawers: ranked as they are built, and taken into its file and out again."""

import json

import pytest

from casewright.joinery.family import row_choices
from casewright.pieces.asked.reading import CannotRead, write_unit
from casewright.pieces.drawers.layouts import (
    DrawerEnd,
    laid_out_with,
    set_out_of,
    tail_end,
    unit_families,
    with_layout,
)
from casewright.pieces.drawers.sizes import CannotBuild
from units import built, chest, dresser, unit

DRESSER = built(dresser())
ENDS = list(DrawerEnd)


def of_unit(made, end, pin):
    """The family of a unit with one pin."""
    return next(each for each in unit_families(made.spec, made.drawers, end) if each.pin == pin)


@pytest.mark.parametrize("end", ENDS)
def test_the_present_family_has_the_tails_that_are_built(end):
    free = built(chest({"rows": [{"columns": 2}, {}, {}]}))
    family = of_unit(free, end, set_out_of(free.drawers, end).pin)

    first = [each for each in free.drawers if each.sizes.opening.column == 1]
    counts = [getattr(each.joints, end.value).layout.count for each in first]
    assert [row.taken.count for row in family.rows] == counts
    assert [row.choices for row in family.rows] == [
        getattr(each.joints, f"{end.value}_choices") for each in first
    ]


@pytest.mark.parametrize("end", ENDS)
@pytest.mark.parametrize("row", [1, 3, 5])
def test_a_layout_that_is_offered_is_built_with_the_score_that_was_shown(end, row):
    shown = row_choices(unit_families(DRESSER.spec, DRESSER.drawers, end), row - 1)[2]

    made = built_with(row, end, shown.count, shown.pin)

    family = of_unit(made, end, shown.pin)
    joint = getattr(drawer_of(made, row).joints, end.value)
    assert family.rows[row - 1].taken == shown
    assert (joint.layout.count, joint.layout.pin, joint.layout.pitch) == (shown.count, shown.pin, shown.pitch)


def built_with(row, end, tails, pin):
    """Worked dresser A with a layout taken."""
    spec = with_layout(unit(dresser()), str(row), end, tails, pin)
    return built(json.loads(write_unit(spec)))


def drawer_of(made, row):
    """The first drawer of a row."""
    return next(each for each in made.drawers if each.sizes.opening.row == row)


@pytest.mark.parametrize("end", ENDS)
def test_a_joint_tried_is_the_joint_that_is_built_afterwards(end):
    tried = laid_out_with(drawer_of(DRESSER, 5), end, 6, 3 / 32)

    joint = getattr(drawer_of(built_with(5, end, 6, 3 / 32), 5).joints, end.value)
    assert (tried.layout, tried.findings) == (joint.layout, joint.findings)


def test_a_choice_taken_back_leaves_the_file_as_it_was():
    before = unit(chest())
    taken = with_layout(before, "2", DrawerEnd.FRONT, 4, 3 / 32)

    assert (taken.rows[1].front_tails, taken.drawers.front_joint.pin) == (4, 3 / 32)
    assert write_unit(with_layout(taken, "2", DrawerEnd.FRONT, None, None)) == write_unit(before)


def test_a_choice_for_one_end_leaves_the_other_end_and_the_other_rows_alone():
    taken = with_layout(unit(chest()), "2", DrawerEnd.BACK, 4, 1 / 4)

    assert taken.drawers.front_joint.pin is None
    assert [(row.front_tails, row.back_tails) for row in taken.rows] == [
        (None, None),
        (None, 4),
        (None, None),
    ]


def test_a_pin_is_written_in_the_unit_of_the_file():
    metric = unit(chest({"unit": "mm", "body": {"width": 610, "depth": 406, "opening_total": 457}}))

    taken = with_layout(metric, "1", DrawerEnd.FRONT, 3, 3 / 25.4)

    assert taken.drawers.front_joint.pin == pytest.approx(3 / 25.4, abs=1e-9)  # float error only
    assert '"pin": "3"' in write_unit(taken)


@pytest.mark.parametrize(("tails", "pin"), [(0, 0.125), (61, 0.125), (3, 0.0)])
def test_a_number_that_no_unit_can_have_is_refused(tails, pin):
    with pytest.raises(CannotRead):
        with_layout(unit(chest()), "1", DrawerEnd.FRONT, tails, pin)


def test_the_tails_of_the_back_stand_on_the_backs_own_height():
    drawer = drawer_of(DRESSER, 5)

    # worked joint J3: 7-21/32 high, 1/2 long
    assert (tail_end(drawer, DrawerEnd.BACK).height, tail_end(drawer, DrawerEnd.BACK).tail_length) == (
        7 + 21 / 32,
        0.5,
    )


@pytest.mark.parametrize("end", ENDS)
def test_a_joint_that_cannot_be_laid_out_names_its_drawer(end):
    with pytest.raises(CannotBuild, match=f"^drawer R2-1, {end.value} joint: .*no width left for 40 tails"):
        built(dresser({f"rows.1.{end.tails_name}": 40}))
