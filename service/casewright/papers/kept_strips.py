"""What is marked on the boards of a job's joints, as it is kept with the joint cards."""

from collections.abc import Iterator, Sequence

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.solid import Flat, Marked, Strip, Stroke
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.measure.units import Inches
from casewright.papers.full_size import NamedStrip
from casewright.pieces.asked.fields import Spec
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.sticks import stack_marks

STICK_WIDTH = 1.0
"""How wide a story stick is drawn [in]."""


class KeptLine(Spec):
    """One line to be marked."""

    stroke: Stroke
    start_in: Flat
    end_in: Flat
    label: str = ""


class KeptStrip(Spec):
    """What is marked on one face of one board, and on which parts it is laid."""

    title: str
    serves: str
    board: str
    face: str
    length_in: float
    height_in: float
    lines: tuple[KeptLine, ...]
    waste_in: tuple[tuple[Flat, ...], ...] = ()
    left: str = ""
    """What lies at its left; in papers from before it is a part of the face's words."""
    foot: str = "bottom edge"
    is_handed: bool = False

    def named(self) -> NamedStrip:
        """The strip, ready to be printed."""
        lines = tuple(
            Marked(stroke=line.stroke, start=line.start_in, end=line.end_in, label=line.label)
            for line in self.lines
        )
        strip = Strip(
            board=self.board,
            face=self.face,
            length=self.length_in,
            height=self.height_in,
            lines=lines,
            waste=self.waste_in,
            left=self.left,
            foot=self.foot,
            is_handed=self.is_handed,
        )
        return NamedStrip(strip=strip, title=self.title, serves=self.serves)


def kept(strip: Strip, title: str, serves: Sequence[str], unit: LengthUnit) -> KeptStrip:
    """A strip as it is kept.

    Args:
        strip: what is marked
        title: the joint
        serves: marks of the parts that it is laid on
        unit: in which its words are kept

    Returns:
        The strip.
    """
    return KeptStrip(
        title=title,
        serves=", ".join(serves),
        board=strip.board,
        face=strip.face,
        length_in=strip.length,
        height_in=strip.height,
        lines=tuple(
            KeptLine(
                stroke=line.stroke, start_in=line.start, end_in=line.end, label=in_unit(line.label, unit)
            )
            for line in strip.lines
        ),
        waste_in=strip.waste,
        left=strip.left,
        foot=strip.foot,
        is_handed=strip.is_handed,
    )


def joint_strips(
    joint: HalfBlindJoint | ThroughJoint, title: str, drawers: Sequence[Drawer], unit: LengthUnit
) -> Iterator[KeptStrip]:
    """The strips of a drawer's joint: for its sides, and for its front or back.

    Args:
        joint: the joint, worked out
        title: what it is
        drawers: those that have it
        unit: in which their words are kept

    Yields:
        A strip for each board.
    """
    is_front = isinstance(joint, HalfBlindJoint)
    for strip in joint.shape.strips:
        parts = (
            f"{each.code}-{mark}"
            for each in drawers
            for mark in (
                ("SL", "SR")
                if strip.board == "side"
                else (each.sizes.joined,)
                if is_front
                else each.sizes.backs
            )
        )
        yield kept(strip, title, tuple(parts), unit)


def story_sticks(unit: Construction) -> Iterator[KeptStrip]:
    """The story stick of a case's dividers, and one for the stacks within its columns.

    Args:
        unit: the unit, worked out

    Yields:
        The sticks; none where the case has no dividers.
    """
    whole = story_stick(unit)
    if whole:
        yield whole
    for marks in stack_marks(unit.face):
        foot = unit.spec.stick_foot if marks.is_from_bottom else "lower edge of the openings"
        yield _stick(unit, f"Story stick of the dividers of {marks.codes}", marks.codes, foot, marks.tops)


def story_stick(unit: Construction) -> KeptStrip | None:
    """The upper edges of a case's dividers, from the underside of its bottom.

    Args:
        unit: the unit, worked out

    Returns:
        The stick; None where the case has no dividers.
    """
    tops = unit.face.divider_tops(unit.spec.frame.divider)
    if not tops:
        return None
    serves = f"both {'front legs' if unit.spec.legs else 'case sides'}"
    return _stick(unit, "Story stick of the dividers", serves, unit.spec.stick_foot, tops)


def _stick(unit: Construction, title: str, serves: str, foot: str, tops: Sequence[Inches]) -> KeptStrip:
    ends = [edge for top in tops for edge in (top - unit.spec.frame.divider, top)]
    return KeptStrip(
        title=title,
        serves=f"{unit.spec.code}, {serves}",
        board="story stick",
        face=f"from the {foot}",
        foot=foot,
        length_in=STICK_WIDTH,
        height_in=max(ends) + STICK_WIDTH,
        lines=tuple(
            KeptLine(stroke=Stroke.STOP, start_in=(0.0, edge), end_in=(STICK_WIDTH, edge)) for edge in ends
        ),
    )
