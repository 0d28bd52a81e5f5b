"""The tenon of a frame's rail: its settings, its marks, and what is chosen for it."""

import pytest
from hypothesis import given

from casewright.joinery.families.frame_tenon.asked import usual_tenon
from casewright.joinery.families.frame_tenon.joint import frame_tenon
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict, worst
from joints import GROOVE, frame, frames, setting


def test_the_gauge_is_never_set_from_the_back():
    off_middle = frame(face=0.3125)

    assert setting(off_middle, "gauge_1").value == 0.3125
    assert setting(off_middle, "gauge_1").wrong == 0.1875
    assert setting(frame(), "gauge_1").wrong is None


def test_a_mortise_is_deep_from_the_edge_and_not_from_the_floor_of_the_groove():
    found = setting(frame(groove=GROOVE), "mortise_depth")

    assert (found.value, found.wrong) == (1.6875, 1.3125)


def test_a_rail_is_cut_shorter_by_the_gap():
    found = setting(frame(overall=18.0, slack=0.125), "rail_length")

    assert (found.value, found.wrong) == (18 - 5 + 3.25 - 0.125, 18 - 5 + 3.25)


def test_without_the_frames_size_it_is_said_what_the_tenons_add():
    assert setting(frame(), "added").value == 3.25


def test_the_marks_lie_where_the_mortise_is():
    found = frame(groove=GROOVE, beyond=0.5)

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
