"""A change after approval: what is made already stays, is cut down, is scrapped, or has to be made anew."""

from collections import Counter

import pytest

from casewright.pieces.built.construct import Construction
from casewright.pieces.built.rework import Rework, by_fate, rework
from casewright.pieces.built.rework_fates import Fate, PartFate
from casewright.pieces.built.rework_stages import Made, Reached
from units import built, dresser

ALL_MILLED = Reached(
    case="panels", drawers={f"R{row}-1": "milled" for row in range(1, 6)} | {"R1-2": "milled"}
)


@pytest.fixture(scope="module")
def dresser_a() -> Construction:
    return built(dresser())


def fate(found: Rework, code: str) -> PartFate:
    return next(each for each in found.parts if each.code == code and each.fate is not Fate.NEW)


def counts(found: Rework) -> Counter[Fate]:
    return Counter(each.fate for each in found.parts)


@pytest.mark.parametrize("stage", ["", "milled", "joints", "glued", "in"])
def test_a_change_that_changes_nothing_leaves_every_part_untouched(dresser_a, stage):
    drawers = {drawer.sizes.code: stage for drawer in dresser_a.drawers}

    found = rework(dresser_a, built(dresser()), Reached(case="glued", drawers=drawers))

    assert counts(found) == {Fate.UNTOUCHED: len(dresser_a.parts)}
    assert (found.hours, found.offcut) == (0, 0)


def test_another_wood_scraps_only_the_fronts_that_are_cut(dresser_a):
    after = built(dresser({"woods.fronts": "walnut"}))

    found = rework(dresser_a, after, Reached(drawers={"R1-1": "milled"}))

    assert [each.code for each in found.of(Fate.SCRAPPED)] == ["A-R1-1-F"]
    assert [each.code for each in found.of(Fate.NEW)] == ["A-R1-1-F"]
    assert "walnut" in str(fate(found, "A-R1-1-F").reason)
    assert fate(found, "A-R2-1-F").fate is Fate.MODIFIED  # not cut yet: nothing is lost


def test_a_front_that_is_glued_in_takes_its_drawer_with_it_but_for_the_bottom(dresser_a):
    after = built(dresser({"woods.fronts": "walnut"}))

    found = rework(dresser_a, after, Reached(drawers={"R2-1": "glued"}, hours={"R2-1": 7.0}))

    gone = {each.code.removeprefix("A-R2-1-") for each in found.of(Fate.SCRAPPED)}
    assert gone == {"F", "SL", "SR", "B"}
    assert found.hours == pytest.approx(4.0)  # four of the seven parts of the drawer
    assert "glued to the drawer front" in str(fate(found, "A-R2-1-SL").reason)


def test_a_lower_measured_opening_is_met_by_ripping_what_is_milled(dresser_a):
    after = built(dresser({"measured.openings": {"R3-1": {"height": "6-7/8"}}}))

    found = rework(dresser_a, after, Reached(case="glued", drawers={"R3-1": "milled"}))

    cut = {each.code.removeprefix("A-R3-1-"): str(each.reason) for each in found.of(Fate.MODIFIED)}
    assert cut["F"] == "rip it from 6-29/32 in to 6-25/32 in."
    assert set(cut) == {"F", "SL", "SR", "B"}
    assert found.of(Fate.SCRAPPED) == ()


@pytest.mark.parametrize(("opening", "expected"), [("6-15/16", Fate.MODIFIED), ("6-3/4", Fate.SCRAPPED)])
def test_a_glued_drawer_is_planed_by_a_sixteenth_and_no_more(dresser_a, opening, expected):
    after = built(dresser({"measured.openings": {"R3-1": {"height": opening}}}))

    found = rework(dresser_a, after, Reached(case="glued", drawers={"R3-1": "glued"}))

    assert fate(found, "A-R3-1-SL").fate is expected


def test_a_higher_opening_scraps_the_parts_that_are_cut_too_low(dresser_a):
    after = built(dresser({"measured.openings": {"R3-1": {"height": "7-1/2"}}}))

    found = rework(dresser_a, after, Reached(case="glued", drawers={"R3-1": "milled"}))

    assert {each.code for each in found.of(Fate.SCRAPPED)} >= {"A-R3-1-F", "A-R3-1-SL", "A-R3-1-SR"}
    assert "the new width" in str(fate(found, "A-R3-1-F").reason)
    assert found.offcut > 0


def test_a_drawer_more_makes_a_frame_and_a_drawer_and_cuts_the_others_down(dresser_a):
    data = dresser()
    data["rows"] = [*data["rows"], {}]
    del data["body"]["opening_total"]
    data["body"]["body_height"] = "39-1/2"
    after = built(data)

    found = rework(dresser_a, after, ALL_MILLED)

    assert counts(found)[Fate.NEW] > 0
    assert {each.code for each in found.of(Fate.NEW)} >= {"A-D5-RF", "A-D5-RB"}
    assert fate(found, "A-C-SL").fate is Fate.UNTOUCHED  # its joints are not cut yet
    assert "new card" in str(fate(found, "A-C-SL").reason)
    assert {each.fate for each in found.parts if each.name.startswith("Drawer side")} <= {
        Fate.MODIFIED,
        Fate.NEW,
        Fate.UNTOUCHED,
    }


def test_a_case_whose_housings_are_cut_does_not_take_another_row(dresser_a):
    data = dresser()
    data["rows"] = [*data["rows"], {}]
    del data["body"]["opening_total"]
    data["body"]["body_height"] = "39-1/2"
    after = built(data)

    found = rework(dresser_a, after, Reached(case="joints", hours={"C": 20.0}))

    side = fate(found, "A-C-SL")
    assert side.fate is Fate.SCRAPPED
    assert "joints elsewhere" in str(side.reason)
    assert found.hours > 0


def test_a_made_drawer_goes_to_the_row_that_is_as_it_is(dresser_a):
    data = dresser()
    heights = ["5-1/2", "6-1/4", "7", "7-3/4", "8-1/2"]
    data["rows"] = [row | {"height": height} for row, height in zip(data["rows"], heights, strict=True)]
    before = built(data)
    swapped = {**data, "rows": [data["rows"][place] for place in (0, 2, 1, 3, 4)]}
    after = built(swapped)

    found = rework(before, after, Reached(drawers={"R2-1": "glued", "R3-1": "glued"}))

    moved = fate(found, "A-R2-1-SL")
    assert (moved.fate, moved.becomes, moved.made) == (Fate.UNTOUCHED, "A-R3-1-SL", Made.GLUED)
    assert found.of(Fate.SCRAPPED) == ()


def test_a_part_left_over_serves_another_of_its_kind_cut_down(dresser_a):
    data = dresser()
    data["rows"] = data["rows"][1:]
    after = built(data)

    found = rework(dresser_a, after, ALL_MILLED)

    reused = [each for each in found.parts if each.becomes and each.becomes != each.code]
    assert all("Use it as" in str(each.reason) for each in reused)
    assert found.of(Fate.SCRAPPED)  # the half-width drawers of the first row have no opening any more


@pytest.mark.parametrize(
    "changes",
    [
        {"body.width": "38"},
        {"body.depth": "18"},
        {"drawers.side": "7/16"},
        {"woods.drawers": "hard maple"},
        {"case.divider": "7/8"},
        {"base": None},
    ],
)
@pytest.mark.parametrize("stage", ["", "milled", "joints", "glued"])
def test_every_part_of_both_designs_is_accounted_for_once(dresser_a, changes, stage):
    after = built(dresser(changes))
    reached = Reached(
        case={"milled": "panels"}.get(stage, stage), drawers=dict.fromkeys(ALL_MILLED.drawers, stage)
    )

    found = rework(dresser_a, after, reached)

    old = Counter(each.code for each in found.parts if each.fate is not Fate.NEW)
    served = Counter(each.becomes for each in found.parts if each.becomes)
    assert old == Counter(part.code for part in dresser_a.parts)
    assert served == Counter(part.code for part in after.parts)
    assert all(each.hours == 0 for each in found.parts if each.fate is not Fate.SCRAPPED)
    assert sum(len(parts) for _, parts in by_fate(found)) == len(found.parts)


@pytest.mark.parametrize("stage", ["milled", "joints", "glued"])
def test_what_is_made_is_never_asked_to_grow(dresser_a, stage):
    after = built(dresser({"body.width": "40", "drawers.front": "3/4"}))

    found = rework(dresser_a, after, Reached(case="panels", drawers=dict.fromkeys(ALL_MILLED.drawers, stage)))

    made = [each for each in found.parts if each.made is not Made.NOTHING and each.after]
    assert made
    assert all(
        after <= before + 1e-6 for each in made for before, after in zip(each.before, each.after, strict=True)
    )
