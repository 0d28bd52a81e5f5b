"""Whatever piece on legs a shop makes: it closes, its drawers run, and its parts keep to their places."""

from itertools import combinations

import pytest
from hypothesis import given, settings

from carcases import CUTS, WOODS
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.takeoff.rough import take_off
from casewright.wood.sheets import sheets
from legwork import pieces_on_legs
from units import built, changed

SHEETS = {str(each): each.density for each in sheets()}
CLOSE = 1e-9
"""Sums of a few dozen floats below 100 in [in]."""
LET_IN = {
    frozenset({"Leg", "Side apron"}),
    frozenset({"Leg", "Back apron"}),
    frozenset({"Leg", "Upper front rail"}),
    frozenset({"Leg", "Lower front rail"}),
    frozenset({"Leg", "Divider rail, front"}),
    frozenset({"Runner", "Lower front rail"}),
    frozenset({"Runner", "Divider rail, front"}),
    frozenset({"Kicker", "Upper front rail"}),
    frozenset({"Runner", "Leg"}),
    frozenset({"Kicker", "Leg"}),
    *(
        frozenset({standing, over})
        for standing in ("Upright between drawers", "Partition")
        for over in (
            *("Upper front rail", "Lower front rail", "Divider rail, front"),
            *("Centre runner", "Centre kicker", "Runner", "Kicker"),
        )
    ),
    *(
        frozenset({"Floor bearer, at the back", over})
        for over in ("Centre runner", "Centre kicker", "Partition")
    ),
    *(
        frozenset({running, rail})
        for running in ("Centre runner", "Centre kicker")
        for rail in ("Upper front rail", "Lower front rail", "Divider rail, front")
    ),
}
"""What is let into or notched around each other: the joints of a piece on legs."""


def common(one, other):
    """From where to where two boxes, each three stretches, lie in each other; None where they do not."""
    found = [
        (max(near, other_near), min(far, other_far))
        for (near, far), (other_near, other_far) in zip(one, other, strict=True)
    ]
    return found if min(far - near for near, far in found) > CLOSE else None


def room(box):
    """A box as three stretches."""
    return ((box.x, box.x + box.width), (box.y, box.y + box.depth), (box.z, box.z + box.height))


def lies_in(inner, outer):
    return all(
        near >= outer_near - CLOSE and far <= outer_far + CLOSE
        for (near, far), (outer_near, outer_far) in zip(inner, outer, strict=True)
    )


def named(part):
    return part.name.removesuffix(", square, then tapered")


def moves(timber):
    """The coefficient across a board, by the handbook's direction rule: rift lies half-way."""
    radial, tangential, _ = WOODS[timber.wood]
    return dict(zip(CUTS, (tangential, radial, (radial + tangential) / 2), strict=True))[str(timber.cut)]


@given(pieces_on_legs())
def test_rails_and_openings_make_the_height_of_the_aprons(data):
    made = built(data)

    rows, legs = made.face.rows, made.spec.legs
    stack = sum(row.height for row in rows) + (len(rows) + 1) * legs.rail
    assert stack == pytest.approx(legs.apron_height, abs=CLOSE)
    assert made.face.base_height + stack + made.spec.top.thickness == pytest.approx(
        data["body"]["overall_height"], abs=CLOSE
    )


@given(pieces_on_legs())
def test_every_part_has_a_size_in_every_direction_and_a_mark_of_its_own(data):
    made = built(data)

    assert [part for part in made.parts if min(part.thickness, part.width, part.length) <= 0] == []
    codes = [part.code for part in made.parts]
    assert sorted(set(codes)) == sorted(codes)


@given(pieces_on_legs())
def test_every_drawer_clears_its_opening_when_it_is_wettest(data):
    made = built(data)

    swelling = made.climate.wettest - made.climate.now
    most = max(moves(made.spec.woods.of("fronts")), moves(made.spec.woods.drawers))
    tight = [
        drawer.code
        for drawer in made.drawers
        if drawer.sizes.height * (1 + most * swelling)
        > drawer.sizes.opening.height - made.spec.drawers.clearances.top + CLOSE
    ]
    assert tight == []


@given(pieces_on_legs())
def test_parts_overlap_only_where_they_are_let_into_each_other(data):
    made = built(data)

    # A tenon is boxed as thick as its board: whether two meet within a leg or pass, the joints say.
    legs = [room(part.box) for part in made.case.parts if part.line == "L1"]
    met = {
        frozenset({named(one), named(other)})
        for one, other in combinations(made.case.parts, 2)
        if (shared := common(room(one.box), room(other.box)))
        and not any(lies_in(shared, leg) for leg in legs if "L1" not in (one.line, other.line))
    }
    assert met <= LET_IN


@given(pieces_on_legs())
def test_no_part_of_a_drawer_meets_a_part_of_the_case(data):
    made = built(data)

    of_drawers = [part for part in made.parts if part not in made.case.parts]
    met = [
        (one.code, other.code)
        for one in of_drawers
        for other in made.case.parts
        if common(room(one.box), room(other.box))
    ]
    assert met == []


@given(pieces_on_legs())
def test_slips_stand_between_the_sides_and_the_bottom_lies_in_their_grooves(data):
    made = built(data)

    slips = made.spec.drawers.groove.slips
    boxes = {part.code: part.box for part in made.parts}
    for drawer in made.drawers:
        left, right = (boxes.get(f"{drawer.code}-{mark}") for mark in ("XL", "XR"))
        assert (left is not None) == (slips is not None)
        if slips is None or drawer.bottom.pieces > 1:
            continue
        bottom = boxes[f"{drawer.code}-N"]
        play = 1 / 32
        assert left.x + left.width - bottom.x == pytest.approx(slips.depth - play, abs=CLOSE)
        assert bottom.x + bottom.width - right.x == pytest.approx(slips.depth - play, abs=CLOSE)
        side = boxes[f"{drawer.code}-SL"]
        assert side.x + side.width == pytest.approx(left.x, abs=CLOSE)


@given(pieces_on_legs())
def test_the_weights_of_the_parts_and_pulls_add_up(data):
    made = built(changed(data, {"drawers.bottom": {"kind": "solid"}}))

    # Floors and shelves may be sheets. Water is 62.4 lb a cubic foot: Wood Handbook (2010), chapter 4.
    weights = SHEETS | {wood: 62.4 * row[2] * (1 + made.climate.now / 100) for wood, row in WOODS.items()}
    legs, low = made.spec.construction, made.face.base_height
    # A taper to 5/8 takes from a square prism: of its frustum 1 + 5/8 + 25/64 thirds are left.
    taken = low * legs.leg**2 * (1 - (1 + 5 / 8 + 25 / 64) / 3) if legs.tapered else 0.0
    wood = sum(
        (part.thickness * part.width * part.length - taken * (part.line == "L1")) / 1728 * weights[part.wood]
        for part in made.parts
    )
    pulls = 0.3 * sum(len(drawer.pulls) for drawer in made.drawers)
    assert made.masses.total == pytest.approx(wood + pulls, rel=1e-9)  # float sums


@given(pieces_on_legs())
def test_front_rails_and_aprons_of_usual_size_are_clear_or_mitred_in_the_legs(data):
    made = built(data)

    held = {"front rails clear the aprons", "two mortises"}
    stops = [finding for finding in made.findings if finding.rule in held and finding.verdict == "stop"]
    assert stops == []


@settings(max_examples=25)
@given(pieces_on_legs())
def test_two_pieces_take_twice_the_feet_of_one(data):
    one, two = (take_off(built(changed(data, {"count": count})), example_shop()).groups for count in (1, 2))

    assert [(group.net, group.rough) for group in two] == [(2 * group.net, 2 * group.rough) for group in one]


@settings(max_examples=25)
@given(pieces_on_legs())
def test_what_was_measured_as_it_was_designed_changes_nothing(data):
    designed = built(data)
    parts = {
        part.code.removeprefix(f"{designed.spec.code}-"): {"thickness": part.thickness}
        for part in designed.case.parts
    }

    measured = built(changed(data, {"measured": {"parts": parts}}))

    assert [part.box for part in measured.parts] == [part.box for part in designed.parts]
    assert [each.joint.settings for each in measured.case_joints] == [
        each.joint.settings for each in designed.case_joints
    ]
