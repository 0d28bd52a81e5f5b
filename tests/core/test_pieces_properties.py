"""Whatever carcase a shop makes: it closes, its drawers run in every season, and every part can be cut."""

from decimal import Decimal
from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import CUTS, WOODS, carcases
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.takeoff.rough import take_off
from units import built, changed, chest

CLOSE = 1e-9
"""Sums of a few dozen floats below 100 in [in]."""


def moves(timber):
    """The coefficient across a board, by the handbook's direction rule: rift lies half-way."""
    radial, tangential, _ = WOODS[timber.wood]
    return dict(zip(CUTS, (tangential, radial, (radial + tangential) / 2), strict=True))[str(timber.cut)]


def air_of(made):
    """Moisture content now, driest and wettest."""
    return made.climate.now, made.climate.driest, made.climate.wettest


def overlap(one, other):
    """The volume that two boxes have in common, each as its near and its far corner."""
    sides = [
        min(far, other_far) - max(near, other_near)
        for near, far, other_near, other_far in zip(*one, *other, strict=True)
    ]
    return 0.0 if min(sides) <= CLOSE else sides[0] * sides[1] * sides[2]


def corners(box):
    """The near and the far corner of a box."""
    return (box.x, box.y, box.z), (box.x + box.width, box.y + box.depth, box.z + box.height)


def hole(made, opening):
    """The near and the far corner of an opening."""
    floor = made.face.base_height + opening.bottom
    return (opening.left, 0.0, floor), (
        opening.left + opening.width,
        made.face.opening_depth,
        floor + opening.height,
    )


def sizes_of(parts):
    """Code and finished size of each part."""
    return [(part.code, part.thickness, part.width, part.length) for part in parts]


def of_drawer(made, code):
    """The parts of one drawer."""
    return [part for part in made.parts if part.code.rsplit("-", 1)[0] == code]


def as_designed(made):
    """Every opening measured as it was designed, and every drawer part too."""
    openings = {
        opening.code: {"height": opening.height, "width": opening.width, "depth": opening.depth}
        for opening in made.face.openings
    }
    parts = {
        part.code.removeprefix(f"{made.spec.code}-"): {
            "thickness": part.thickness,
            "width": part.width,
            "length": part.length,
        }
        for part in made.parts
        if part.line[0] in "FSKM"
    }
    return {"openings": openings, "parts": parts}


@given(carcases())
def test_openings_and_what_lies_between_them_make_the_height_of_the_body(data):
    made = built(data)

    case, rows = made.spec.case, made.face.rows
    stack = sum(row.height for row in rows) + (len(rows) - 1) * case.divider + case.sub_top_rail + case.bottom
    assert stack == pytest.approx(made.face.body_height, abs=CLOSE)
    assert sum(row.height for row in rows) == pytest.approx(data["body"]["opening_total"], abs=CLOSE)


@given(carcases())
def test_the_columns_of_every_row_make_the_width_of_the_body(data):
    made = built(data)

    case = made.spec.case
    widths = [
        sum(opening.designed_width for opening in row.openings)
        + (len(row.openings) - 1) * case.upright
        + 2 * case.side
        for row in made.face.rows
    ]
    assert widths == pytest.approx([data["body"]["width"]] * len(widths), abs=CLOSE)


@given(carcases())
def test_every_drawer_clears_its_opening_when_it_is_wettest(data):
    made = built(data)

    now, _, wettest = air_of(made)
    front, side = moves(made.spec.woods.of("fronts")), moves(made.spec.woods.drawers)
    swollen = [drawer.sizes.height * (1 + max(front, side) * (wettest - now)) for drawer in made.drawers]
    room = [drawer.sizes.opening.height - made.spec.drawers.clearances.top for drawer in made.drawers]
    assert [height for height, most in zip(swollen, room, strict=True) if height > most + CLOSE] == []


@given(carcases())
def test_no_drawer_is_lower_than_the_season_asks(data):
    made = built(data)

    now, _, wettest = air_of(made)
    front, side = moves(made.spec.woods.of("fronts")), moves(made.spec.woods.drawers)
    taller = [
        (drawer.sizes.height + 1 / 64) * (1 + max(front, side) * (wettest - now)) for drawer in made.drawers
    ]
    room = [drawer.sizes.opening.height - made.spec.drawers.clearances.top for drawer in made.drawers]
    assert [height for height, most in zip(taller, room, strict=True) if height < most - CLOSE] == []


@given(carcases())
def test_every_drawer_fits_its_opening_in_width_and_depth(data):
    made = built(data)

    now, driest, _ = air_of(made)
    shrinks = data["body"]["depth"] * moves(made.spec.woods.case) * (now - driest)
    wide = [drawer for drawer in made.drawers if drawer.sizes.width > drawer.sizes.opening.width - 1 / 32]
    long = [
        drawer
        for drawer in made.drawers
        if drawer.sizes.length > drawer.sizes.opening.depth - shrinks - 1 / 8 + CLOSE
    ]
    assert (wide, long) == ([], [])


@given(carcases())
def test_every_part_has_a_size_in_every_direction(data):
    made = built(data)

    assert [part for part in made.parts if min(part.thickness, part.width, part.length) <= 0] == []


@given(carcases())
def test_every_drawer_holds_something(data):
    made = built(data)

    insides = [drawer.sizes.inside for drawer in made.drawers]
    assert [inside for inside in insides if min(inside.width, inside.depth, inside.height) <= 0] == []


@given(carcases())
def test_every_part_of_a_drawer_lies_within_its_opening(data):
    made = built(data)

    holes = {drawer.code: hole(made, drawer.sizes.opening) for drawer in made.drawers}
    outside = [
        part.code
        for code, (near, far) in holes.items()
        for part in of_drawer(made, code)
        for part_near, part_far in [corners(part.box)]
        if min(map(float.__sub__, map(float, part_near), map(float, near))) < -CLOSE
        or min(map(float.__sub__, map(float, far), map(float, part_far))) < -CLOSE
    ]
    assert outside == []


@given(carcases())
def test_no_part_of_the_case_stands_in_an_opening(data):
    made = built(data)

    holes = [hole(made, opening) for opening in made.face.openings]
    in_the_way = [
        part.code
        for part in made.case.parts
        for opening in holes
        if part.box and overlap(corners(part.box), opening) > 0
    ]
    assert in_the_way == []


@given(carcases())
def test_every_part_has_a_mark_of_its_own(data):
    made = built(data)

    codes = [part.code for part in made.parts]
    assert len(set(codes)) == len(codes)
    assert sorted(code for line in made.lines for code in line.codes) == sorted(codes)


@given(carcases())
def test_the_tails_and_pins_of_every_joint_make_its_height(data):
    made = built(data)

    layouts = [joint.layout for drawer in made.drawers for joint in (drawer.joints.front, drawer.joints.back)]
    sums = [
        2 * layout.half_pin + layout.count * layout.tail_width + (layout.count - 1) * layout.pin
        for layout in layouts
    ]
    assert sums == pytest.approx([layout.height for layout in layouts], abs=CLOSE)


@given(carcases())
def test_the_weights_of_the_parts_and_pulls_add_up(data):
    made = built(changed(data, {"drawers.bottom": {"kind": "solid"}}))

    now, _, _ = air_of(made)
    wood = sum(
        part.thickness
        * part.width
        * part.length
        / 1728
        * 62.4
        * WOODS[part.wood][2]
        * (1 + now / 100)
        # a round foot is pi / 4 of its square
        * (pi / 4 if part.name.startswith("Turned foot") else 1)
        for part in made.parts
    )
    pulls = 0.3 * sum(len(drawer.pulls) for drawer in made.drawers)
    drawers = sum(mass.weight for mass in made.masses.drawers.values())
    assert made.masses.total == pytest.approx(wood + pulls, rel=1e-9)  # float sums
    assert made.masses.case.weight + drawers == pytest.approx(made.masses.total, rel=1e-9)


@settings(max_examples=25)
@given(carcases())
def test_two_units_take_twice_the_feet_of_one(data):
    one, two = (take_off(built(changed(data, {"count": count})), example_shop()).groups for count in (1, 2))

    # to the last bit: nothing may be rounded on the way to the order
    assert [(group.net, group.rough, group.order) for group in two] == [
        (2 * group.net, 2 * group.rough, 2 * group.order) for group in one
    ]


@settings(max_examples=25)
@given(carcases())
def test_what_was_measured_as_it_was_designed_changes_nothing(data):
    designed = built(data)

    measured = built(changed(data, {"measured": as_designed(designed)}))

    assert sizes_of(measured.parts) == sizes_of(designed.parts)
    assert [part.box for part in measured.parts] == [part.box for part in designed.parts]
    assert [drawer.joints.front.layout for drawer in measured.drawers] == [
        drawer.joints.front.layout for drawer in designed.drawers
    ]
    assert [drawer.joints.front.gauge_2 for drawer in measured.drawers] == [
        drawer.joints.front.gauge_2 for drawer in designed.drawers
    ]
    assert measured.masses == designed.masses


@settings(max_examples=25)
@given(carcases(), st.data())
def test_a_measured_opening_moves_only_its_own_drawer(data, choose):
    designed = built(data)
    opening = choose.draw(st.sampled_from(designed.face.openings))
    less = choose.draw(st.integers(1, 16)) / 64
    found = {"height": opening.height - less, "width": opening.width - less}

    measured = built(changed(data, {"measured.openings": {opening.code: found}}))

    own = f"{designed.spec.code}-{opening.code}"
    was, is_now = designed.drawer(own).sizes.height, measured.drawer(own).sizes.height
    # Down to the 64th and divided by the swelling, a height can swallow one 64th of the opening, and no more.
    assert was - less - 1 / 64 <= is_now < was + (less == 1 / 64) / 64
    assert measured.drawer(own).sizes.width == pytest.approx(
        designed.drawer(own).sizes.width - less, abs=1 / 64
    )
    before, after = (
        [size for size in sizes_of(each.parts) if not size[0].startswith(own)]
        for each in (designed, measured)
    )
    assert before == after


@settings(max_examples=25)
@given(carcases())
def test_a_file_in_millimetres_makes_the_same_parts(data):
    def metric(inches):
        return float(Decimal(inches) * Decimal("25.4"))

    body = {name: metric(size) for name, size in data["body"].items()}
    base = data["base"] and {
        name: size if isinstance(size, str) else metric(size) for name, size in data["base"].items()
    }
    lipping = metric(data["case"]["lipping"])

    made = built(changed(data, {"unit": "mm", "body": body, "base": base, "case.lipping": lipping}))

    assert sizes_of(made.parts) == sizes_of(built(data).parts)


SIZES = [
    *("body.width", "body.depth", "body.opening_total", "top.thickness", "top.overhang_back"),
    *("case.side", "case.sub_top_rail", "case.bottom", "case.divider", "case.upright", "case.rail_width"),
    *("case.lipping", "case.lap", "case.housing", "case.divider_shoulder", "base.height", "base.thickness"),
    *("frames.runner_width", "frames.centre_runner_width", "frames.back_rail_width", "frames.tenon"),
    *("frames.slack", "back.thickness", "back.rabbet", "back.lap", "back.gap"),
    *("drawers.front", "drawers.side", "drawers.back", "drawers.lap", "drawers.rabbet", "drawers.proud"),
    *("drawers.drop", "drawers.groove.height", "drawers.groove.width", "drawers.groove.depth"),
    *("drawers.bottom.thickness", "drawers.bottom_play", "drawers.muntin.width", "drawers.muntin.thickness"),
    *("drawers.front_joint.half_pin", "drawers.front_joint.pin", "drawers.back_joint.half_pin"),
    *("drawers.clearances.side", "drawers.clearances.top", "drawers.clearances.bottom"),
    *("drawers.clearances.back", "graduation.step"),
]
"""Every size of a unit file that a slip of the keys can spoil."""
TYPED = st.one_of(st.sampled_from([1 / 128, 1 / 16, 3, 11.9]), st.floats(1 / 64, 12))


@settings(max_examples=80)
@given(
    st.dictionaries(st.sampled_from(SIZES), TYPED, min_size=1, max_size=3),
    st.integers(1, 40),
    st.integers(1, 12),
    st.sampled_from(["housing", "sliding dovetail"]),
)
def test_silly_sizes_are_built_whole_or_refused_in_a_sentence(sizes, rows, columns, end):
    plain = {"graduation": {"rule": "step"}, "drawers.bottom": {"kind": "solid"}, "case.divider_end": end}
    data = chest({**plain, "rows": [{"columns": columns}, *({} for _ in range(rows - 1))], **sizes})

    try:
        made = built(data)
        take_off(made, example_shop())
        faults = [part.code for part in made.parts if min(part.thickness, part.width, part.length) <= 0]
    except REFUSALS as refused:
        sentence = str(refused)
        faults = [sentence] if "nan" in sentence or len(sentence.split()) < 5 else []

    assert faults == []
