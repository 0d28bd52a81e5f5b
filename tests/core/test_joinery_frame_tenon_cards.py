"""The tenon of a frame's rail: its settings, its marks, and what is chosen for it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.frame_tenon.asked import FrameTenon, PanelGroove, usual_tenon
from casewright.joinery.families.frame_tenon.joint import frame_tenon
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict, worst

GROOVE = PanelGroove(width=0.25, depth=0.375)


def sizes(least, most):
    return st.integers(round(least * 64), round(most * 64)).map(lambda marks: marks / 64)


def joint(**given):
    usual = {"thickness": 0.75, "rail": 2.0, "stile": 2.5, "tenon": 0.25, "face": 0.25, "length": 1.625}
    return frame_tenon(FrameTenon(**{**usual, "haunch": 0.625, **given}))


def setting(found, name):
    return next(each for each in found.settings if each.name == name)


@st.composite
def frames(draw):
    """Any frame that can be laid out: with and without groove, haunch, horn and slack, off the middle too."""
    thickness, rail, stile = draw(sizes(0.5, 2)), draw(sizes(1, 6)), draw(sizes(1, 5))
    tenon = draw(sizes(0.125, thickness / 2))
    face = draw(sizes(0.0625, thickness - tenon - 0.0625))
    back = thickness - face - tenon
    grooves = st.builds(
        PanelGroove,
        width=sizes(0.0625, tenon + 2 * min(face, back) - 1 / 32),
        depth=sizes(0.125, min(0.75, stile / 2 - 0.25)),
    )
    groove = draw(st.none() | grooves)
    deep = groove.depth if groove else 0.0
    length = draw(sizes(max(deep, 0.25), stile - 0.125))
    return FrameTenon(
        thickness=thickness,
        rail=rail,
        stile=stile,
        tenon=tenon,
        face=face,
        length=length,
        groove=groove,
        haunch=draw(sizes(0, rail - deep - 1 / 64)),
        beyond=draw(sizes(0, 2)),
        slack=draw(st.just(0.0) | sizes(1 / 64, length - 1 / 64)),
    )


def test_the_gauge_is_never_set_from_the_back():
    off_middle = joint(face=0.3125)

    assert setting(off_middle, "gauge_1").value == 0.3125
    assert setting(off_middle, "gauge_1").wrong == 0.1875
    assert setting(joint(), "gauge_1").wrong is None


def test_a_mortise_is_deep_from_the_edge_and_not_from_the_floor_of_the_groove():
    found = setting(joint(groove=GROOVE), "mortise_depth")

    assert (found.value, found.wrong) == (1.6875, 1.3125)


def test_a_rail_is_cut_shorter_by_the_gap():
    found = setting(joint(overall=18.0, slack=0.125), "rail_length")

    assert (found.value, found.wrong) == (18 - 5 + 3.25 - 0.125, 18 - 5 + 3.25)


def test_without_the_frames_size_it_is_said_what_the_tenons_add():
    assert setting(joint(), "added").value == 3.25


def test_the_marks_lie_where_the_mortise_is():
    found = joint(groove=GROOVE, beyond=0.5)

    stile = found.shape.strips[0]
    assert stile.waste == (((1.125, 0.25), (2.125, 0.25), (2.125, 0.5), (1.125, 0.5)),)
    assert setting(found, "mortise_start").value == 1.125
    assert setting(found, "mortise_length").value == 1.0


@given(frames())
def test_every_mark_lies_on_its_strip(asked):
    strips = frame_tenon(asked).shape.strips

    points = [
        (strip, point) for strip in strips for line in strip.lines for point in (line.start, line.end)
    ] + [(strip, point) for strip in strips for outline in strip.waste for point in outline]
    assert all(
        -1e-9 <= x <= strip.length + 1e-9 and -1e-9 <= y <= strip.height + 1e-9 for strip, (x, y) in points
    )


@pytest.mark.parametrize(("thickness", "tenon"), [(0.75, 0.25), (0.875, 0.3125), (1.0, 0.3125), (1.5, 0.5)])
def test_the_tenon_is_the_chisel_nearest_to_a_third(thickness, tenon):
    assert usual_tenon(thickness) == tenon


def test_what_is_left_out_is_chosen_with_its_reason():
    found = solve(
        "frame-tenon",
        {"thickness": 0.75, "rail": 1.5, "groove_width": 0.25, "shrinkage": 0.113},
    )

    assert {each.name: each.value for each in found.chosen} == {
        "stile": 1.5,
        "groove_depth": 0.375,
        "tenon": 0.25,
        "length": 1.0,
        "slack": 0.125,
        "face": 0.25,
        "haunch": 0.5,
    }
    assert all(str(each.why) and each.source for each in found.chosen)
    assert worst(found.joint.findings) is Verdict.PASS


def test_a_depth_without_a_width_is_no_groove():
    with pytest.raises(ValueError, match="A groove 3/8 in deep needs its width too; 1/4 in is usual"):
        solve("frame-tenon", {"thickness": 0.75, "rail": 2.0, "groove_depth": 0.375})


def test_a_tenon_as_thick_as_its_board_is_refused_with_one_that_is_not():
    with pytest.raises(CannotBeLaidOut, match="no two shoulders"):
        solve("frame-tenon", {"thickness": 0.75, "rail": 2.0, "tenon": 0.75})
