"""Whatever closes a case and holds it up: heights and depths close, and nothing stands in a drawer's way."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import BASES
from units import built, chest

CLOSE = 1e-9
"""Sums of a few dozen floats below 100 in [in]."""
PLY = 0.20472
"""What 1/4 in hardwood plywood measures, by the sheet table [in]."""
BACKS = {
    "shiplap": 0.5,
    "tongued": 0.5,
    "panelled": 0.5,
    "rabbeted-ply": PLY,
    "grooved-ply": PLY + 0.5,
    "none": 0.0,
}
"""What each kind of back takes of the depth where nothing else is said [in]."""


@st.composite
def closed(draw):
    """A case of one to four rows with any top, back, base and cleat, and either corner of solid sides."""
    cleat = draw(st.sampled_from([None, {}, {"room": "behind", "thickness": 0.5}]))
    return chest(
        {
            "body": {
                "width": draw(st.integers(18 * 16, 60 * 16)) / 16,
                "depth": draw(st.integers(14 * 16, 24 * 16)) / 16,
                "overall_height": draw(st.integers(28 * 16, 48 * 16)) / 16,
            },
            "rows": [{}] * draw(st.integers(1, 4)),
            "graduation": {"rule": "equal"},
            "top": {"fixing": draw(st.sampled_from(["buttons", "slots", "clips", "dovetails", "none"]))},
            "back": {"kind": draw(st.sampled_from(sorted(BACKS)))},
            "base": draw(st.sampled_from(BASES)),
            "case.corner": draw(st.sampled_from(["half-blind", "through"])),
            "cleat": cleat,
        }
    )


@settings(max_examples=25)
@given(closed())
def test_base_body_and_top_make_the_height_that_was_asked_for(data):
    made = built(data)

    face, spec = made.face, made.spec
    over = 0.0 if data["top"]["fixing"] in ("dovetails", "none") else 0.875
    assert face.base_height + face.body_height + over == pytest.approx(
        data["body"]["overall_height"], abs=CLOSE
    )
    upper = 0.875 if data["top"]["fixing"] == "dovetails" else 0.75
    between = upper + 0.75 + (len(face.rows) - 1) * 0.75
    assert sum(row.height for row in face.rows) + between == pytest.approx(face.body_height, abs=CLOSE)
    assert max(part.box.z + part.box.height for part in made.parts) == pytest.approx(
        face.base_height + face.body_height + over, abs=CLOSE
    )
    assert spec.support_front < spec.support_rear


@settings(max_examples=25)
@given(closed())
def test_opening_back_and_cleat_make_the_depth(data):
    made = built(data)

    cleat = 0.75 if data["cleat"] == {} else 0.0
    taken = BACKS[data["back"]["kind"]] + cleat
    assert made.face.opening_depth + taken == pytest.approx(data["body"]["depth"], abs=CLOSE)
    behind = 0.5 if data["cleat"] and "room" in data["cleat"] else 0.0
    rear = max(part.box.y + part.box.depth for part in made.parts)
    assert rear == pytest.approx(data["body"]["depth"] + behind, abs=CLOSE)


@settings(max_examples=25)
@given(closed())
def test_no_part_of_the_case_stands_in_an_opening(data):
    made = built(data)

    face = made.face
    for opening in face.openings:
        low = face.base_height + opening.bottom
        for part in made.case.parts:
            box = part.box
            room = (
                min(box.x + box.width, opening.left + opening.width) - max(box.x, opening.left),
                min(box.y + box.depth, face.opening_depth) - max(box.y, 0.0),
                min(box.z + box.height, low + opening.height) - max(box.z, low),
            )
            assert min(room) <= CLOSE, (part.code, opening.code, room)


@settings(max_examples=25)
@given(closed())
def test_every_part_has_a_size_and_every_one_a_code_of_its_own(data):
    made = built(data)

    assert all(min(part.thickness, part.width, part.length, part.solid) > 0 for part in made.parts)
    codes = [part.code for part in made.parts]
    assert len(set(codes)) == len(codes)
    assert made.masses.total > 0


@pytest.mark.parametrize("base", [base for base in BASES if base])
def test_each_pedestal_beside_a_knee_space_has_a_base_of_its_own(base):
    rows = [{"across": [{"rows": [{}, {}]}, {"width": "24", "knee": True}, {"rows": [{}, {}]}]}]
    data = chest({"body": {"width": "58", "depth": "22", "overall_height": "29"}, "rows": rows, "base": base})
    alone = chest({"body": {"width": "17", "depth": "22", "overall_height": "29"}, "base": base})

    made, single = built(data), built(alone)

    left, right = made.face.pedestals
    boxes = [part.box for part in made.parts if part.line[0] == "B"]
    assert all(box.x + box.width <= left.right + CLOSE or box.x >= right.left - CLOSE for box in boxes)
    count = sum(part.line[0] == "B" for part in single.parts)
    assert len(boxes) == 2 * count
    assert len({part.code for part in made.parts}) == len(made.parts)
