"""What a change changes, in the words of the paper that a customer signs."""

import re

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.rework import rework
from casewright.pieces.built.rework_stages import Reached
from casewright.pieces.words.changed_words import UNSEEN, changed_words, work_words
from casewright.pieces.words.wording import plural_of_part
from units import built, chest, dresser

INCH, MM = LengthUnit.INCH, LengthUnit.MILLIMETRE


@pytest.fixture(scope="module")
def chest_a() -> Construction:
    return built(chest())


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        # the case is 24 in wide, its top stands over each side by 3/4 in: 25-1/2 in over all
        ({"body.width": "26"}, ["Width over all: 25-1/2 in becomes 27-1/2 in."]),
        ({"body.depth": "18"}, ["Depth over all: 16-3/4 in becomes 18-3/4 in."]),
        ({"woods.fronts": "walnut"}, ["The drawer fronts are walnut instead of cherry."]),
        ({"finish.show_coats": 1}, ["One coat of finish on the outside instead of four."]),
        ({"drawers.side": "7/16"}, ["Drawer sides 7/16 in thick instead of 1/2."]),
        ({"pulls.item": "ring"}, ["With rings instead of pulls."]),
        ({"count": 2}, ["Two are made instead of one."]),
    ],
)
def test_each_change_is_told_with_what_was_and_what_becomes(chest_a, changes, said):
    assert list(changed_words(chest_a, built(chest(changes)), INCH)) == said


def test_a_shop_in_millimetres_reads_millimetres(chest_a):
    # 25.5 in = 647.7 mm, 27.5 in = 698.5 mm; a tape shows whole millimetres
    assert changed_words(chest_a, built(chest({"body.width": "26"})), MM) == (
        "Width over all: 648 mm becomes 699 mm.",
    )


def with_heights(*heights: str) -> Construction:
    data = dresser()
    data["rows"] = [row | {"height": each} for row, each in zip(data["rows"], heights, strict=True)]
    return built(data)


def test_rows_that_become_higher_and_lower_are_called_by_their_place_from_the_top():
    before = with_heights("5-1/2", "6-1/4", "7", "7-3/4", "8-1/2")
    after = with_heights("5-1/2", "6-1/4", "7", "8-1/4", "8")

    assert changed_words(before, after, INCH) == (
        "Fourth row from the top, height of the drawer openings: 7-3/4 in becomes 8-1/4 in.",
        "Lowest row, height of the drawer openings: 8-1/2 in becomes 8 in.",
    )


def test_many_rows_are_told_in_one_list():
    before = with_heights("5-1/2", "6-1/4", "7", "7-3/4", "8-1/2")
    after = with_heights("6", "6-1/2", "7-1/4", "7-1/2", "7-3/4")

    assert changed_words(before, after, INCH) == (
        "Heights of the drawer openings from the top: 5-1/2, 6-1/4, 7, 7-3/4 and 8-1/2 in become "
        "6, 6-1/2, 7-1/4, 7-1/2 and 7-3/4 in.",
    )


def test_a_drawer_more_is_counted_and_the_new_front_told():
    data = dresser()
    data["rows"] = [*data["rows"], {}]

    said = changed_words(built(dresser()), built(data), INCH)

    assert "Drawers: six become seven." in said
    assert "It has seven drawers: two side by side at the top, then five across the full width." in said


def test_a_base_that_is_left_out_is_told_with_the_height_that_goes_with_it(chest_a):
    said = changed_words(chest_a, built(chest({"base": None})), INCH)

    assert "Height over all: 25-7/8 in becomes 21-7/8 in." in said  # a plinth of 4 in
    assert "The case stands straight on the floor, without a base." in said


def test_what_nobody_sees_is_said_to_be_so(chest_a):
    assert changed_words(chest_a, built(chest({"frames.runner_width": "2-3/4"})), INCH) == (UNSEEN,)


@pytest.mark.parametrize(
    ("reached", "changes", "said"),
    [
        (Reached(), {"body.width": "26"}, "Nothing of it is made yet"),
        (
            Reached(case="glued", drawers={"R1-1": "glued"}),
            {"body.width": "26"},
            "the case and one drawer are made again",
        ),
        (
            Reached(case="glued", drawers={"R1-1": "glued", "R2-1": "milled"}),
            {"woods.fronts": "walnut"},
            "two drawers are made again",
        ),
        (Reached(case="glued"), {"finish.show_coats": 1}, "What is made already stays as it is."),
    ],
)
def test_the_customer_reads_what_becomes_of_the_work_and_no_mark_of_a_part(chest_a, reached, changes, said):
    found = work_words(chest_a, (rework(chest_a, built(chest(changes)), reached),))

    assert said in " ".join(found)
    assert not re.search(r"\bA-", " ".join(found))


def test_work_that_is_only_cut_down_is_not_lost():
    before, after = (
        built(dresser()),
        built(dresser({"measured.openings": {"R3-1": {"height": "6-7/8"}}})),
    )
    found = rework(before, after, Reached(case="glued", drawers={"R3-1": "milled"}))

    assert work_words(before, (found,)) == (
        "What is made already is worked to the new sizes; none of it is lost.",
    )


@pytest.mark.parametrize(
    ("noun", "many"),
    [
        ("drawer front", "drawer fronts"),
        ("upright between drawers", "uprights between drawers"),
        ("lipping of a case side", "lippings of a case side"),
        ("drawer back beside the notch", "drawer backs beside the notch"),
    ],
)
def test_parts_are_counted_by_their_first_words(noun, many):
    assert plural_of_part(noun) == many
