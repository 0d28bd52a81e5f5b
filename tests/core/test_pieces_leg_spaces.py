"""Doors and open spaces on legs: floors, what they lie on, partitions, shelves, and what is refused."""

import pytest

from casewright.pieces.built.refusals import REFUSALS
from units import bedside, built

NIGHTSTAND = {
    "body": {"width": 20, "depth": 16, "overall_height": 26},
    "construction.apron_height": "16",
    "rows": [{"height": "4"}, {"holds": "open"}],
}
SIDEBOARD = {
    "body": {"width": 54, "depth": 18, "overall_height": 34},
    "construction.apron_height": "24",
    "construction.leg": "2",
    "rows": [
        {"height": "5", "columns": 3},
        {"holds": "doors", "across": [{}, {}, {"holds": "open", "shelves": 1}]},
    ],
}


def part(made, code):
    return next(each for each in made.parts if each.code == f"B-{code}")


def touches(one, other):
    """Whether two boxes share a face or some room, each from front left below."""
    return all(
        getattr(one, at) <= getattr(other, at) + getattr(other, size) + 1e-9
        and getattr(other, at) <= getattr(one, at) + getattr(one, size) + 1e-9
        for at, size in (("x", "width"), ("y", "depth"), ("z", "height"))
    )


def test_a_nightstand_has_a_floor_on_its_rail_runners_and_a_bearer_at_the_back():
    made = built(bedside(NIGHTSTAND))

    floor = part(made, "R2-1-FL").box
    under = [part(made, code) for code in ("C-RL", "C-RR", "R2-1-FB")]

    assert all(each.box.z + each.box.height == pytest.approx(floor.z) for each in under)
    assert all(touches(each.box, floor) for each in under)
    assert part(made, "R2-1-FLE").box.z == pytest.approx(part(made, "C-LF").box.z + 0.75)


def test_a_bearer_fits_between_the_two_runners():
    made = built(bedside(NIGHTSTAND))

    left, right, bearer = (part(made, code).box for code in ("C-RL", "C-RR", "R2-1-FB"))

    assert bearer.x == pytest.approx(left.x + left.width)
    assert bearer.x + bearer.width == pytest.approx(right.x)


def test_doors_under_drawers_stand_between_legs_and_partitions():
    made = built(bedside(SIDEBOARD))

    partition = part(made, "R2-P1")
    # 24 of apron, three rails of 3/4 and a row of 5 leave 16-3/4; housed a third of the rail at both ends.
    assert partition.length == pytest.approx(16.75 + 2 * 0.25)
    assert partition.thickness == pytest.approx(0.75)
    assert [door.plan.opening.code for door in made.doors] == ["R2-1", "R2-2"]
    assert {joint.key for joint in made.case_joints} >= {"partitions_R2", "uprights_R1"}


def test_a_partition_is_housed_in_the_rails_and_in_a_runner_and_a_kicker_or_runner_over_it():
    made = built(bedside(SIDEBOARD))

    partition = part(made, "R2-P1").box
    held = [each for each in ("C-LF", "D1-RF", "C-RC1", "D1-RC1") if touches(part(made, each).box, partition)]

    assert held == ["C-LF", "D1-RF", "C-RC1", "D1-RC1"]


def test_a_partition_has_room_to_grow_before_the_back_apron():
    made = built(bedside(SIDEBOARD))

    free = made.face.opening_depth - part(made, "R2-P1").width

    assert 0 < free < 0.5


def test_a_shelf_fits_between_legs_on_pins():
    made = built(bedside(SIDEBOARD))
    space = next(each for each in made.face.spaces if each.shelves)

    shelf = part(made, "R2-3-SH1")

    assert shelf.length == pytest.approx(space.width - 2 * made.spec.shelving.play)
    assert "pins" in str(shelf.ends[0])


def test_a_drawer_beside_doors_has_a_guide_only_where_it_runs_beside_an_apron():
    made = built(bedside({**SIDEBOARD, "rows": [{"across": [{}, {"holds": "doors"}]}]}))

    guides = [each.code for each in made.parts if each.line == "W3"]

    assert guides == ["B-R1-GL"]


def test_the_floor_can_be_left_out():
    made = built(bedside({**NIGHTSTAND, "shelving.floor": "none"}))

    assert not [each for each in made.parts if each.line in ("C13", "C14")]


def test_drawers_on_slides_need_no_runner_and_a_floor_does():
    rows = [{"height": 4}, {"holds": "open"}]
    made = built(bedside({**NIGHTSTAND, "rows": rows, "drawers.running": {"kind": "side-hung"}}))

    runners = [each.code for each in made.parts if each.line == "W1"]

    assert runners == ["B-C-RL", "B-C-RR"]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"rows": [{"across": [{"rows": [{}, {}]}, {}]}]},
            "row 1 has a column with rows of its own; on legs the rails between rows go from leg to leg",
        ),
        ({"rows": [{}, {"across": [{"holds": "open", "knee": True}, {}]}]}, "knees have their room under"),
        (
            {"rows": [{}, {"holds": "open", "across": [{"shelves": 1}]}], "shelving.fixing": "housings"},
            "shelving.fixing: between legs there is no board",
        ),
    ],
)
def test_what_legs_cannot_hold_is_refused_with_what_would_do(changes, sentence):
    with pytest.raises(REFUSALS, match=sentence):
        built(bedside({**NIGHTSTAND, **changes}))
