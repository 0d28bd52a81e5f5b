"""A frame's tenon: groove, haunch, shoulders, the wood at the mortise, a dry joint; and that it closes."""

from dataclasses import replace

import pytest
from hypothesis import given

from casewright.joinery.chisels import RACK
from casewright.joinery.families.frame_tenon.asked import FrameTenon, PanelGroove
from casewright.joinery.families.frame_tenon.joint import frame_tenon
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.solid import Axis
from casewright.joinery.tenons import carved
from casewright.measure.findings import Verdict, worst
from closing import faults
from joints import GROOVE, finding, frame, frames


@given(frames())
def test_every_frame_closes(asked):
    assert faults(frame_tenon(asked).shape) == []


@given(frames())
def test_groove_tenon_and_haunch_fill_the_rail(asked):
    found = frame_tenon(asked)

    assert asked.groove_depth + found.width + asked.haunch == pytest.approx(asked.rail)
    assert asked.face + asked.tenon + found.back == pytest.approx(asked.thickness)


@given(frames())
def test_doubling_every_size_doubles_what_follows(asked):
    # the room for the glue is a size of the shop and not of the frame, so depth is left out
    twice = frame_tenon(
        FrameTenon(
            **{
                name: 2 * getattr(asked, name)
                for name in (
                    "thickness",
                    "rail",
                    "stile",
                    "tenon",
                    "face",
                    "length",
                    "haunch",
                    "beyond",
                    "slack",
                )
            },
            groove=asked.groove and PanelGroove(width=2 * asked.groove.width, depth=2 * asked.groove.depth),
        )
    )

    once = frame_tenon(asked)
    assert twice.width == pytest.approx(2 * once.width)
    assert twice.reach == pytest.approx(2 * once.reach)
    assert twice.back == pytest.approx(2 * once.back)


def area(outlines):
    """Of rectangles."""
    return sum(abs((each[2][0] - each[0][0]) * (each[2][1] - each[0][1])) for each in outlines)


def test_carving_takes_out_what_is_cut_and_leaves_the_rest():
    pieces = carved(((0, 4), (0, 2), (0, 3)), (((0, 2), (1, 5), (1, 2)), ((1, 3), (1, 2), (0, 2))))

    below = area(piece.section(Axis.Y, 0.5) for piece in pieces if piece.start < 0.5 < piece.end)
    above = area(piece.section(Axis.Y, 1.5) for piece in pieces if piece.start < 1.5 < piece.end)
    assert below == pytest.approx(12)
    assert above == pytest.approx(12 - 1 - 4)


def test_a_rear_joint_stands_open_by_its_slack_before_the_shoulder():
    rail, stile = frame(slack=0.125).shape.boards

    beside = [corner for piece in rail.section(Axis.Z, 0.1) for corner in piece]
    assert max(x for x, _ in beside) == -0.125
    assert min(x for piece in stile.section(Axis.Z, 0.1) for x, _ in piece) == 0.0


def test_the_haunch_fills_the_groove_at_the_end_of_the_stile():
    rail, _ = frame(groove=GROOVE).shape.boards

    top = [x for piece in rail.section(Axis.Y, 1.9) for x, _ in piece]
    assert max(top) == 0.375
    assert frame(groove=GROOVE).haunch_length == 0.375


def test_without_a_groove_the_haunch_is_as_long_as_it_is_thick():
    assert frame().haunch_length == 0.25


def test_a_tenon_as_long_as_the_groove_is_deep_needs_no_mortise():
    found = frame(groove=GROOVE, length=0.375, haunch=0.0)

    assert found.depth == 0.375
    assert not {"mortise_depth", "mortise_length"} & {each.name for each in found.settings}
    assert worst(found.findings) is Verdict.PASS


@pytest.mark.parametrize(
    ("given", "rule", "verdict", "remedy"),
    [
        ({"face": 0.1875}, "shoulders", Verdict.PASS, ""),
        ({"face": 0.171875}, "shoulders", Verdict.STOP, "Put the tenon in the middle, 1/4 in from the face."),
        ({"face": 0.3125}, "shoulders", Verdict.PASS, ""),
        ({"face": 0.328125}, "shoulders", Verdict.STOP, "Put the tenon in the middle, 1/4 in from the face."),
        (
            {"tenon": 0.40625, "face": 0.171875},
            "shoulders",
            Verdict.STOP,
            "Make the tenon 3/8 in thick or thinner, in the middle, "
            "or the rail and the stile 25/32 in thick.",
        ),
        (
            {"thickness": 0.375, "tenon": 0.125, "face": 0.125},
            "shoulders",
            Verdict.STOP,
            "Make the rail and the stile 1/2 in thick.",
        ),
        ({"tenon": 0.1875}, "tenon thickness", Verdict.PASS, ""),
        (
            {"tenon": 0.171875},
            "tenon thickness",
            Verdict.CAUTION,
            "Make it from 3/16 in to 3/8 in thick.",
        ),
        ({"tenon": 0.375, "face": 0.1875}, "tenon thickness", Verdict.PASS, ""),
        (
            {"tenon": 0.390625, "face": 0.1875},
            "tenon thickness",
            Verdict.CAUTION,
            "Make it from 3/16 in to 3/8 in thick.",
        ),
        (
            {"tenon": 0.125, "face": 0.3125, "groove": PanelGroove(width=0.125, depth=0.25)},
            "tenon thickness",
            Verdict.PASS,
            "",
        ),
        ({"groove": GROOVE}, "tenon and groove", Verdict.PASS, ""),
        (
            {"groove": PanelGroove(width=0.3125, depth=0.375)},
            "tenon and groove",
            Verdict.STOP,
            "Make the tenon 5/16 in thick, as the groove is wide.",
        ),
        ({"haunch": 1.75}, "tenon width", Verdict.PASS, ""),
        ({"haunch": 1.78125}, "tenon width", Verdict.STOP, "Make the haunch 1-3/4 in wide or less."),
        (
            {"rail": 0.5, "haunch": 0.0625, "groove": GROOVE},
            "tenon width",
            Verdict.STOP,
            "Make the board 3/16 in wider.",
        ),
        ({"length": 2.1875}, "wood behind the mortise", Verdict.PASS, ""),
        (
            {"length": 2.203125},
            "wood behind the mortise",
            Verdict.STOP,
            "Make the tenon 2-3/16 in long or shorter, or the stile 2-33/64 in wide.",
        ),
        (
            {"length": 0.5, "groove": PanelGroove(width=0.25, depth=0.5), "stile": 0.75},
            "wood behind the mortise",
            Verdict.PASS,
            "",
        ),
        (
            {"length": 0.5625, "groove": PanelGroove(width=0.25, depth=0.5), "stile": 0.75},
            "wood behind the mortise",
            Verdict.STOP,
            "Make the stile 7/8 in wide or wider.",
        ),
        ({"haunch": 0.375}, "mortise near the end", Verdict.PASS, ""),
        ({"haunch": 0.125, "beyond": 0.25}, "mortise near the end", Verdict.PASS, ""),
        (
            {"haunch": 0.359375},
            "mortise near the end",
            Verdict.CAUTION,
            "Make the haunch 1/64 in wider, so that the mortise starts lower.",
        ),
        (
            {"haunch": 0.0},
            "mortise near the end",
            Verdict.STOP,
            "Make the haunch 3/8 in wider, so that the mortise starts lower.",
        ),
        ({}, "mortise chisel", Verdict.PASS, ""),
        (
            {"tenon": 0.28125},
            "mortise chisel",
            Verdict.CAUTION,
            "Make the tenon 1/4 in thick, or cut the mortise with the 1/4 in cutter, in 2 passes.",
        ),
        (
            {"rack": replace(RACK, chisels=(), cutters=(0.5,))},
            "mortise chisel",
            Verdict.CAUTION,
            "Cut it with a cutter of 1/4, or list the shop's chisels.",
        ),
        (
            {"rack": replace(RACK, chisels=())},
            "mortise chisel",
            Verdict.PASS,
            "",
        ),
        ({"slack": 1.375}, "reach of the tenon", Verdict.PASS, ""),
        (
            {"slack": 1.390625},
            "reach of the tenon",
            Verdict.STOP,
            "Make the tenon 1-41/64 in long or longer.",
        ),
        ({"rail": 6.625}, "tenon across the grain", Verdict.PASS, ""),
        (
            {"rail": 6.640625},
            "tenon across the grain",
            Verdict.CAUTION,
            "Divide it into two tenons, each 6 in wide or less.",
        ),
        ({"slack": 0.125, "shrinkage": 0.125}, "slack of the rear joint", Verdict.PASS, ""),
        (
            {"slack": 0.125, "shrinkage": 0.126},
            "slack of the rear joint",
            Verdict.STOP,
            "Leave a gap of 5/32 in or more, and cut the runner shorter by it.",
        ),
    ],
)
def test_each_limit_passes_up_to_its_value_and_not_beyond(given, rule, verdict, remedy):
    found = finding(frame(**given), rule)

    assert found.verdict is verdict
    assert str(found.remedy) == remedy


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"tenon": 0.5}, "a tenon of 1/4 in at 1/4 in from the face would"),
        ({"face": 0.0}, "a tenon of 1/4 in at 1/4 in from the face would"),
        ({"face": 0.5}, "a tenon of 1/4 in at 1/4 in from the face would"),
        ({"length": 2.4375}, "make the tenon 1-5/8 in long"),
        ({"stile": 0.5, "length": 0.5}, "make the tenon 3/16 in long"),
        ({"stile": 0.125, "length": 0.5}, "make the tenon 1/32 in long"),
        (
            {"stile": 0.5, "length": 0.5, "groove": PanelGroove(width=0.25, depth=0.4375)},
            "make the stile 13/16 in or wider",
        ),
        ({"haunch": 2.0}, "make it 1-3/4 in or less"),
        ({"slack": 1.625}, "make it 1-7/8 in or longer"),
        ({"groove": PanelGroove(width=0.75, depth=0.375)}, "make it less than 3/4 in wide"),
        ({"groove": PanelGroove(width=0.25, depth=2.0)}, "3/8 in is usual"),
        ({"groove": GROOVE, "length": 0.25}, "make it 3/8 in or longer"),
        ({"overall": 5.0}, "stiles of 5 in together; make it more than 5"),
        ({"overall": 5.5, "other_stile": 3.0}, "stiles of 5-1/2 in together"),
    ],
)
def test_what_cannot_be_cut_is_refused_with_what_can(given, said):
    with pytest.raises(CannotBeLaidOut) as refused:
        frame(**given)

    assert said in str(refused.value.args[0])


@pytest.mark.parametrize("name", ["thickness", "rail", "stile", "tenon", "length"])
def test_a_size_of_nothing_is_refused(name):
    with pytest.raises(ValueError, match="give a size above 0"):
        frame(**{name: 0.0})


@pytest.mark.parametrize(
    ("changes", "works"),
    [
        ({"tenon": 0.5}, {"tenon": 0.25, "face": 0.25}),
        ({"length": 2.4375}, {"length": 1.625}),
        ({"haunch": 2.0}, {"haunch": 1.75}),
        ({"slack": 1.625}, {"slack": 1.625, "length": 1.875}),
    ],
)
def test_the_value_that_a_refusal_names_can_be_cut(changes, works):
    with pytest.raises(CannotBeLaidOut):
        frame(**changes)

    assert worst(frame(**works).findings) is Verdict.PASS
