"""What the bench makes again after a change: which drawers, from which stage on, what is measured anew."""

import pytest

from casewright.pieces.built.construct import Construction
from casewright.pieces.built.remakes import Remake, remakes
from casewright.pieces.built.rework import rework
from casewright.pieces.built.rework_stages import CASE, Reached
from casewright.pieces.words.remake_words import full_words, short_words
from units import built, chest, dresser


@pytest.fixture(scope="module")
def chest_a() -> Construction:
    return built(chest())


def again(before: Construction, after: Construction, reached: Reached) -> dict[str, Remake]:
    """What is made again of a unit whose rows stay where they are."""
    found = remakes(rework(before, after, reached), before, after, reached, reached)
    return {each.assembly: each for each in found}


def marks(parts) -> set[str]:
    return {each.becomes.rsplit("-", 1)[-1] for each in parts}


def test_a_wood_that_changes_sends_a_milled_and_a_glued_drawer_back_and_leaves_the_one_not_begun(chest_a):
    after = built(chest({"woods.fronts": "walnut"}))

    found = again(chest_a, after, Reached(case="glued", drawers={"R3-1": "glued", "R2-1": "milled"}))

    assert set(found) == {"R2-1", "R3-1"}
    assert (found["R2-1"].first, found["R2-1"].until) == ("milled", "milled")
    assert (found["R3-1"].first, found["R3-1"].until) == ("milled", "glued")
    assert marks(found["R2-1"].fresh) == {"F"}
    assert marks(found["R3-1"].fresh) == {"F", "SL", "SR", "B"}
    assert marks(found["R3-1"].stay) == {"N"}  # the bottom is not in yet


def test_what_was_measured_on_new_boards_is_forgotten_and_on_the_others_kept(chest_a):
    after = built(chest({"woods.fronts": "walnut"}))

    found = again(chest_a, after, Reached(case="glued", drawers={"R2-1": "milled"}))["R2-1"]

    assert found.forgets_size("F.thickness")
    assert not found.forgets_size("SL.thickness")


def test_a_width_that_changes_takes_the_case_back_to_its_panels(chest_a):
    after = built(chest({"body.width": "26"}))

    found = again(chest_a, after, Reached(case="glued"))

    assert set(found) == {CASE}
    assert (found[CASE].first, found[CASE].until) == ("panels", "closed")  # top and back come with the last


def test_a_top_that_changes_leaves_a_glued_case_as_it_is_until_it_is_closed(chest_a):
    after = built(chest({"top.overhang_front": "1-1/2"}))

    found = again(chest_a, after, Reached(case="glued"))[CASE]

    assert (found.first, found.until) == ("closed", "closed")
    assert short_words(found) == "new: top"


def test_a_glued_drawer_that_is_planed_waits_for_its_run_and_goes_back_to_nothing():
    before = built(dresser())
    after = built(dresser({"measured.openings": {"R3-1": {"height": "6-15/16"}}}))

    glued = again(before, after, Reached(case="glued", drawers={"R3-1": "glued"}))["R3-1"]
    dry = again(before, after, Reached(case="glued", drawers={"R3-1": "dry"}))["R3-1"]

    assert (glued.first, glued.until) == ("run", "run")
    assert (dry.first, dry.until) == ("dry", "dry")
    assert glued.fresh == ()


def test_a_bottom_alone_is_cut_before_the_drawer_is_put_together(chest_a):
    after = built(chest({"woods.bottoms": "hard maple"}))

    early = again(chest_a, after, Reached(case="glued", drawers={"R1-1": "joints"}))["R1-1"]
    late = again(chest_a, after, Reached(case="glued", drawers={"R1-1": "glued"}))["R1-1"]

    assert (early.first, early.until) == ("dry", "dry")
    assert (late.first, late.until) == ("run", "run")
    assert short_words(early) == "new: bottom"


def test_a_change_of_the_finish_makes_nothing_again(chest_a):
    reached = Reached(case="glued", drawers=dict.fromkeys(("R1-1", "R2-1", "R3-1"), "glued"))

    assert again(chest_a, built(chest({"finish.show_coats": 1})), reached) == {}


def test_two_drawers_that_change_places_are_named_and_fitted_to_run_again():
    data = dresser()
    heights = ["5-1/2", "6-1/4", "7", "7-3/4", "8-1/2"]
    data["rows"] = [row | {"height": height} for row, height in zip(data["rows"], heights, strict=True)]
    swapped = {**data, "rows": [data["rows"][place] for place in (0, 2, 1, 3, 4)]}

    found = again(built(data), built(swapped), Reached(drawers={"R2-1": "in", "R3-1": "in"}))

    assert found["R3-1"].taken_from == "R2-1"
    assert (found["R3-1"].first, found["R3-1"].until) == ("run", "in")
    assert short_words(found["R3-1"]) == "use the drawer made for R2-1"


def test_the_bench_reads_how_many_of_what_size_and_what_stays(chest_a):
    after = built(chest({"woods.fronts": "walnut"}))
    found = again(chest_a, after, Reached(case="glued", drawers={"R3-1": "glued"}))["R3-1"]

    # by hand: 5-1/4 + 6 + 6-3/4 in openings; the lowest less 3/32 in gap gives boards 6-21/32 in high
    assert short_words(found) == "new: front, 2 sides, back"
    lines = [str(line) for line in full_words(found)]
    assert "Make new: front, 3/4 × 6-21/32 × 22-7/16 in of walnut." in lines
    assert "Make new: 2 sides, 1/2 × 6-21/32 × 14-13/16 in of soft maple." in lines
    assert "Stays: bottom." in lines


def with_heights(*heights: str) -> Construction:
    data = chest()
    data["rows"] = [{"height": height} for height in heights]
    data["body"]["opening_total"] = "19-1/2" if len(heights) == 3 else "24-1/2"  # what the heights add up to
    return built(data)


def test_a_row_that_is_put_above_moves_the_drawers_and_makes_none_of_them_again():
    before, after = with_heights("6", "6-1/2", "7"), with_heights("5", "6", "6-1/2", "7")
    follows = {"R1-1": "R2-1", "R2-1": "R3-1", "R3-1": "R4-1"}
    made = Reached(drawers={"R1-1": "milled", "R2-1": "glued"})
    now = Reached(drawers={"R2-1": "milled", "R3-1": "glued"})

    found = rework(before, after, made, follows)
    again = remakes(found, before, after, made, now, follows)

    moved = {each.code: each.becomes for each in found.parts if each.becomes != each.code}
    assert moved["A-R1-1-F"] == "A-R2-1-F"
    assert moved["A-R2-1-SL"] == "A-R3-1-SL"
    assert {each.fate.value for each in found.parts if each.before and each.code in moved} == {"untouched"}
    assert [each.assembly for each in again if each.assembly != CASE] == []


def test_a_drawer_that_is_taken_out_gives_its_place_to_another_that_stays_as_it_is():
    before, after = with_heights("5", "6", "6-1/2", "7"), with_heights("6", "6-1/2", "7")
    follows = {"R2-1": "R1-1", "R3-1": "R2-1", "R4-1": "R3-1"}
    made = Reached(drawers=dict.fromkeys(("R1-1", "R2-1", "R3-1", "R4-1"), "glued"))
    now = Reached(drawers=dict.fromkeys(("R1-1", "R2-1", "R3-1"), "glued"))

    found = rework(before, after, made, follows)
    again = remakes(found, before, after, made, now, follows)

    lost = {each.code for each in found.parts if each.fate.value == "scrapped"}
    assert lost == {f"A-R1-1-{mark}" for mark in ("F", "SL", "SR", "B", "N")}
    assert [each.assembly for each in again if each.assembly != CASE] == []
