"""What a case stands on: the parts of each kind of base, where it bears, and what is said of it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from carcases import BASES, carcases
from casewright.drawing.elevation import elevation
from casewright.drawing.section import section
from casewright.measure.findings import Verdict
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.words.describe import describe
from units import built, chest, estimated, unit

CLOSE = 1e-9
"""Sums of a few floats below 100 in [in]."""


def cut_list(made):
    """Line, quantity, thickness, width and length of the parts of a base."""
    return [
        (line.line, line.quantity, line.part.thickness, line.part.width, line.part.length)
        for line in made.lines
        if line.line[0] == "B"
    ]


def based(base, **changes):
    """The small chest, 24 x 16, on a base."""
    return built(chest({"base": base, **changes}))


def found(made, rule):
    return [finding for finding in made.findings if finding.rule == rule]


def test_a_base_that_does_not_say_its_kind_is_a_plinth():
    assert (
        unit(chest({"base": {"height": "5"}})).base
        == unit(chest({"base": {"kind": "plinth", "height": 5}})).base
    )


@pytest.mark.parametrize(
    ("base", "lines"),
    [
        # 24 x 16: set back 1 at the front and both sides, front 24 - 2, returns 16 - 1, rail 22 - 2 x 3/4
        (
            {"setback": "1"},
            [("B1", 1, 0.75, 4, 22), ("B2", 2, 0.75, 4, 15), ("B3", 1, 0.75, 4, 20.5)],
        ),
        # the front covers the ends of the returns, which are 3/4 shorter
        (
            {"corner": "butt"},
            [("B1", 1, 0.75, 4, 24), ("B2", 2, 0.75, 4, 15.25), ("B3", 1, 0.75, 4, 22.5)],
        ),
        # two mitred pairs, two side boards at the rear, and a plain bracket of 5 - 3/4 behind each
        (
            {"kind": "brackets", "width": "5"},
            [("B1", 2, 0.75, 4, 5), ("B2", 4, 0.75, 4, 5), ("B3", 2, 0.75, 4, 4.25)],
        ),
        # 1-1/2 thick: from one board each; 4 - 1 in free height and an inch of tenon
        (
            {"kind": "turned", "diameter": "1-1/2"},
            [("B1", 4, 1.5, 1.5, 4), ("B2", 4, 1, 1.5, 1.5)],
        ),
        # 3 thick: two boards of 1-1/2 make the square
        ({"kind": "turned"}, [("B1", 8, 1.5, 3, 4), ("B2", 4, 1, 3, 3)]),
        # 4 - 1/2 for levelling; 16 - 3 - 1/4 deep, less two boards; 24 less two ends is under 24 clear
        (
            {"kind": "toe", "made_of": "solid"},
            [
                ("B1", 1, 0.75, 3.5, 24),
                ("B2", 1, 0.75, 3.5, 24),
                ("B3", 2, 0.75, 3.5, 11.25),
                ("B4", 1, 0.25, 4, 24),
            ],
        ),
    ],
)
def test_the_parts_of_a_base_follow_from_the_case(base, lines):
    assert cut_list(based(base)) == lines


def test_plywood_of_a_toe_base_is_as_thick_as_it_measures():
    made = based({"kind": "toe", "facing": 0})

    (front, *_) = [part for part in made.parts if part.line == "B1"]
    assert (front.sheet, front.wood, front.thickness) == (True, "3/4 in hardwood plywood", 0.71875)


@pytest.mark.parametrize(
    ("width", "members"),
    # clear between n boards of 3/4: (w - 3/4 n) / (n - 1) <= 24
    [("25-1/2", 2), ("25-9/16", 3), ("50-1/4", 3), ("50-5/16", 4)],
)
def test_cross_members_of_a_toe_base_are_no_further_apart_than_wished(width, members):
    made = based({"kind": "toe", "made_of": "solid"}, **{"body.width": width})

    assert sum(part.line == "B3" for part in made.parts) == members


@pytest.mark.parametrize(
    ("base", "front", "rear"),
    [
        (None, 0.0, 16.0),
        ({}, 0.0, 16.0),
        ({"setback": "1"}, 1.0, 16.0),
        ({"kind": "brackets"}, 0.0, 16.0),
        ({"kind": "brackets", "forward": "3/4", "rear": "1/2"}, -0.75, 15.5),
        # 3 thick on a pad of 1-1/2: it bears 3/4 inside its square
        ({"kind": "turned"}, 0.75, 15.25),
        ({"kind": "turned", "pad": "2", "setback": "1"}, 1.5, 15.5),
        ({"kind": "toe", "toe_space": "3"}, 3.25, 16.0),
    ],
)
def test_where_a_base_bears_is_known(base, front, rear):
    spec = unit(chest({"base": base}))

    assert (spec.support_front, spec.support_rear) == (front, rear)


def test_legs_bear_at_their_outside_whatever_the_base_says():
    spec = unit(
        chest(
            {
                "construction": {"kind": "legs"},
                "body": {"width": "18", "depth": "14", "overall_height": "26"},
                "base": {"kind": "toe"},
            }
        )
    )

    assert (spec.support_front, spec.support_rear) == (0.0, 14.0)


@given(carcases(), st.sampled_from(BASES))
def test_what_bears_lies_under_the_case_and_holds_it_as_high_as_asked(data, base):
    made = built(data | {"base": base})

    boxes = [part.box for part in made.parts if part.line[0] == "B"]
    high = max((box.z + box.height for box in boxes), default=0.0)
    assert high == pytest.approx(made.face.base_height, abs=CLOSE)
    assert made.face.overall_height == pytest.approx(
        made.face.base_height + made.face.body_height + made.spec.top.thickness, abs=CLOSE
    )
    spec = made.spec
    assert -0.5 - CLOSE <= spec.support_front < spec.support_rear <= spec.body.depth + CLOSE
    assert min((box.y for box in boxes), default=0.0) >= min(spec.support_front, 0.0) - CLOSE
    assert all(box.x >= 0 and box.x + box.width <= spec.body.width + CLOSE for box in boxes)


@pytest.mark.parametrize("base", [each for each in BASES if each is not None])
def test_every_base_can_be_drawn_described_and_priced(base):
    held = estimated(chest({"base": base}))

    words = " ".join(describe(held.unit))
    assert "It stands on" in words
    assert elevation(held.unit).body.count("A-B-") >= 1
    assert section(held.unit).body != section(built(chest({"base": None}))).body
    assert held.unpriced == ()


def test_a_turned_foot_weighs_less_than_its_square():
    made = based({"kind": "turned"})

    foot = next(part for part in made.parts if part.line == "B1")
    # pi / 4 of 1-1/2 x 3 x 4
    assert foot.volume == pytest.approx(14.137, abs=0.001)


def test_five_feet_carry_a_wide_case_unless_four_are_asked_for():
    wide = {"body.width": "60", "body.depth": "20"}

    counts = [
        sum(part.line == "B2" for part in based({"kind": "turned", **more}, **wide).parts)
        for more in ({}, {"number": 4})
    ]
    assert counts == [5, 4]


@pytest.mark.parametrize(
    ("base", "rule", "verdict"),
    [
        ({"setback": "3/4"}, "plinth under the sides", Verdict.PASS),
        ({"setback": "7/8"}, "plinth under the sides", Verdict.CAUTION),
        ({"kind": "brackets", "width": "5", "height": "5"}, "bracket feet", Verdict.PASS),
        ({"kind": "brackets", "width": "5", "height": "6"}, "bracket feet", Verdict.CAUTION),
        ({"kind": "turned"}, "foot tenon", Verdict.PASS),
        ({"kind": "turned", "block": "3/4"}, "foot tenon", Verdict.CAUTION),
        ({"kind": "toe"}, "setting up", Verdict.PASS),
    ],
)
def test_a_base_is_held_to_what_carries(base, rule, verdict):
    (finding,) = found(based(base), rule)

    assert finding.verdict == verdict


@pytest.mark.parametrize(
    ("base", "field"),
    [
        ({"setback": "5"}, "base.setback"),
        ({"kind": "brackets", "width": "9"}, "base.width"),
        ({"kind": "turned", "diameter": "9"}, "base.diameter"),
        ({"kind": "toe", "toe_space": "9"}, "base.toe_space"),
    ],
)
def test_a_base_that_leaves_no_room_is_refused_with_what_would_do(base, field):
    with pytest.raises(CannotBuild, match=rf"{field}: .* or less"):
        based(base)


@pytest.mark.parametrize(
    "base",
    [{"kind": "turned", "pad": "4"}, {"kind": "turned", "block": "4"}, {"kind": "toe", "levelling": "2"}],
)
def test_a_base_that_contradicts_itself_is_refused(base):
    with pytest.raises(CannotRead, match="make"):
        unit(chest({"base": base}))


def test_the_schema_lists_the_keys_of_every_kind_of_base():
    held = UnitSpec.model_json_schema()

    listed = [ref["$ref"].rpartition("/")[2] for ref in held["properties"]["base"]["anyOf"][0]["oneOf"]]
    assert listed == ["Plinth", "BracketFeet", "TurnedFeet", "ToeBase"]
    assert {"toe_space", "levelling"} <= set(held["$defs"]["ToeBase"]["properties"])
