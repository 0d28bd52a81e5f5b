"""Joints for the tests: sizes by the 64th, tenons of frames and legs, what stands on a joint by its name."""

from typing import Any

from hypothesis import strategies as st

from casewright.joinery.families.frame_tenon.asked import FrameTenon, PanelGroove
from casewright.joinery.families.frame_tenon.joint import FrameTenonJoint, frame_tenon
from casewright.joinery.families.leg_tenon.asked import LegTenon
from casewright.joinery.families.leg_tenon.joint import LegTenonJoint, leg_tenon
from casewright.joinery.joint import Field, Joint, Measure, Setting, Solved
from casewright.joinery.kinds import kinds, solve
from casewright.measure.findings import Finding
from casewright.measure.lengths import LengthUnit, parse_length

GROOVE = PanelGroove(width=0.25, depth=0.375)


def sizes(least: float, most: float) -> st.SearchStrategy[float]:
    """Any size from one to another, by the 64th of an inch."""
    return st.integers(round(least * 64), round(most * 64)).map(lambda marks: marks / 64)


def meant(field: Field) -> float:
    """What a field's example means."""
    if field.measure.is_length:
        return float(parse_length(field.example, LengthUnit.INCH))
    if field.measure is Measure.SLOPE:
        return float(field.example.partition(":")[2])
    return float(field.example)


def example(kind: str, **changes: float) -> Solved:
    """The joint that the examples of its needed fields make, with some of its fields given otherwise."""
    asked = kinds()[kind].fields
    return solve(kind, {field.name: meant(field) for field in asked if field.required} | changes)


def finding(joint: Joint, rule: str) -> Finding:
    """One check of a joint."""
    return next(each for each in joint.findings if each.rule == rule)


def setting(joint: Joint, name: str) -> Setting:
    """One number that a card prints."""
    return next(each for each in joint.settings if each.name == name)


def frame(**given: Any) -> FrameTenonJoint:
    """The tenon of a frame's rail, with some sizes changed."""
    usual = {"thickness": 0.75, "rail": 2.0, "stile": 2.5, "tenon": 0.25, "face": 0.25, "length": 1.625}
    return frame_tenon(FrameTenon(**{**usual, "haunch": 0.625, **given}))


@st.composite
def frames(draw: st.DrawFn) -> FrameTenon:
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


def bedside_leg(**given: Any) -> LegTenon:
    """The leg of a bedside table, with some sizes changed."""
    usual = {"leg": 1.5, "apron": 0.75, "height": 5.5, "setback": 0.125, "tenon": 0.25, "face": 0.25}
    return LegTenon(**{**usual, "length": 1.0, "haunch": 0.75, "lower_shoulder": 0.25, **given})


def leg_joint(**given: Any) -> LegTenonJoint:
    """Its joint, worked out."""
    return leg_tenon(bedside_leg(**given))
