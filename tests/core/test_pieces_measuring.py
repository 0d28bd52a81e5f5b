"""Sizes from the bench: they take the place of the designed ones, and nothing else changes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from carcases import carcases
from casewright.labour.next_step import dry_fit
from casewright.labour.stages import gates
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from casewright.pieces.built.measuring import measurable, with_bench, with_measured
from casewright.pieces.drawers.sizes import CannotBuild
from units import built, dresser, unit


def sizes_of(spec):
    """Every part's sizes and the first gauge of every drawer."""
    made = construct(spec, example_shop())
    parts = {part.code: (part.thickness, part.width, part.length) for part in made.parts}
    return parts | {drawer.code: (drawer.joints.front.gauge_2,) for drawer in made.drawers}


def close_to(sizes):
    """The same sizes, as nearly as floats can say: a lap is the front less what is left of it."""
    return {code: pytest.approx(each, abs=1e-9) for code, each in sizes.items()}


def test_the_bench_is_asked_for_the_opening_and_for_what_the_gauges_are_set_by():
    asked = measurable(built(dresser()), "A-R5-1")

    assert [(each.path, each.label, each.designed) for each in asked] == [
        ("openings.R5-1.height", "opening, height", 8.5),
        ("openings.R5-1.width", "opening, width", 38.0),
        ("openings.R5-1.depth", "opening, depth", 19.25),
        ("parts.R5-1-F.thickness", "front, thickness", 0.8125),
        ("parts.R5-1-F.width", "front, height", 8.40625),
        ("parts.R5-1-SL.thickness", "left side, thickness", 0.5),
        ("parts.R5-1-SL.in_rabbet", "left side, what the rabbet leaves", 0.4375),
        ("parts.R5-1-SL.width", "left side, height", 8.40625),
        ("parts.R5-1-SR.thickness", "right side, thickness", 0.5),
        ("parts.R5-1-SR.in_rabbet", "right side, what the rabbet leaves", 0.4375),
        ("parts.R5-1-SR.width", "right side, height", 8.40625),
        ("parts.R5-1-B.thickness", "back, thickness", 0.5),
    ]


def test_a_side_without_a_rabbet_is_not_asked_what_the_rabbet_leaves():
    asked = measurable(built(dresser({"drawers.rabbet": 0})), "R1-2")

    assert [each.size for each in asked if each.size.endswith("in_rabbet")] == []


def test_what_was_measured_stands_beside_what_was_designed():
    spec = with_bench(unit(dresser()), {"R5-1": {"opening.height": 8.46875}})

    height, width = measurable(construct(spec, example_shop()), "R5-1")[:2]

    assert (height.designed, height.found) == (8.5, 8.46875)
    assert (width.designed, width.found) == (38.0, None)


def test_every_size_that_a_gate_needs_is_asked_for():
    asked = {each.size for each in measurable(built(dresser()), "R5-1")}

    needed = {size for gate in gates() if gate.kind == "measured" for size in gate.needs}
    assert needed <= asked


def test_a_drawer_follows_the_opening_that_was_measured():
    spec = with_measured(unit(dresser()), {"R5-1": {"height": 8.46875}}, {})

    drawer = construct(spec, example_shop()).drawer("A-R5-1")

    # 8-15/32 is 1/32 less than was drawn, and so is the drawer: (8.46875 - 1/32) / 1.007225, down to a 64th
    assert drawer.sizes.height == 8.375


def test_a_gauge_follows_the_side_that_was_measured():
    spec = with_bench(unit(dresser()), {"A-R5-1": {"SL.thickness": 0.484375, "SR.thickness": 0.484375}})

    joint = construct(spec, example_shop()).drawer("A-R5-1").joints.front

    # 31/64 less the rabbet of 1/16
    assert joint.gauge_2 == pytest.approx(0.421875)


def test_the_bench_gives_way_to_nothing_but_a_later_measure():
    first = with_measured(unit(dresser()), {"R5-1": {"height": 8.46875, "width": 37.9}}, {})

    second = with_measured(first, {"R5-1": {"height": 8.4375}, "R4-1": {"height": 7.75}}, {})

    held = second.measured.openings
    assert (held["R5-1"].height, held["R5-1"].width, held["R4-1"].height) == (8.4375, 37.9, 7.75)


def test_numbers_of_the_dry_fit_are_no_sizes_of_a_part():
    sizes = {line.size: 0.01 for line in dry_fit() if line.size}

    assert with_bench(unit(dresser()), {"R5-1": sizes}).measured == unit(dresser()).measured


@given(carcases(), st.data())
def test_a_measured_size_equal_to_the_designed_one_changes_nothing(data, chance):
    spec = unit(data)
    made = construct(spec, example_shop())
    drawer = chance.draw(st.sampled_from(made.drawers))
    asked = {each.size: each.designed for each in measurable(made, drawer.code)}
    chosen = chance.draw(st.sets(st.sampled_from(sorted(asked)), min_size=1))

    after = with_bench(spec, {drawer.code: {size: asked[size] for size in chosen}})

    assert sizes_of(after) == close_to(sizes_of(spec))


def test_sizes_already_in_the_file_stay_in_millimetre_shops_too():
    data = dresser({"unit": "mm", "measured": {"openings": {"R5-1": {"height": "215"}}}})

    held = with_measured(unit(data), {}, {"R5-1-SL": {"thickness": 0.5}}).measured

    # 215 mm
    assert held.openings["R5-1"].height == pytest.approx(8.464567, abs=1e-6)
    assert held.parts["R5-1-SL"].thickness == 0.5


@pytest.mark.parametrize(
    ("parts", "message"),
    [
        ({"R5-1-SL": {"thickness": 0.0}}, "more than 0"),
        ({"R5-1-SL": {"girth": 1.0}}, "not known"),
        ({"R5-1-SL": {"thickness": 0.5, "in_rabbet": 0.6}}, "cannot be thicker than the side"),
    ],
)
def test_a_size_that_cannot_be_one_is_refused(parts, message):
    with pytest.raises(CannotRead, match=message):
        with_measured(unit(dresser()), {}, parts)


@pytest.mark.parametrize(("code", "hint"), [("A-R5-2", "did you mean R5-1"), ("X", "there are R1-1, R1-2")])
def test_a_drawer_that_there_is_not_is_named_with_one_that_there_is(code, hint):
    with pytest.raises(CannotBuild, match=hint):
        measurable(built(dresser()), code)
