"""The tenon of a frame's rail in its stile, with the groove for a panel and the haunch that fills its end.

In a web frame the rail is a runner and the stile its back rail: that rear joint is left dry, with slack, so
that the case can shrink. `frame_tenon_shape` says how the joint stands in space.
"""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import how_it_is_cut
from casewright.joinery.families.frame_tenon.asked import (
    LIMITS,
    FrameTenon,
    PanelGroove,
    usual_frame_haunch,
    usual_frame_length,
    usual_slack,
    usual_tenon,
)
from casewright.joinery.families.frame_tenon.checks import frame_findings
from casewright.joinery.families.frame_tenon.shape import frame_shape
from casewright.joinery.joint import (
    Choosing,
    Chosen,
    JointKind,
    Measure,
    Measured,
    Setting,
    Solved,
    Tool,
    Values,
    fields,
)
from casewright.joinery.solid import Shape
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import (
    back_shoulder,
    haunch_length,
    how_mortised,
    length_over_tenons,
    mortise_depth,
    tenon_reach,
    tenon_width,
    wood_left,
)
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import quickly_made
from casewright.measure.remembering import remembered
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class FrameTenonJoint:
    """A frame's tenon, worked out.

    Attributes:
        given: what was asked for
        width: width of the tenon, which is the length of the mortise [in]
        back: the shoulder behind the tenon [in]
        depth: depth of the mortise from the stile's edge [in]
        haunch_length: how far the haunch reaches into the stile; 0 without a haunch [in]
        left: what is left of the stile behind the mortise [in]
        reach: how far the tenon reaches into the stile [in]
        rail_length: the rail over its tenons; 0 when the frame's size is not known [in]
        findings: every check that was carried out, passes too
    """

    given: FrameTenon
    width: Inches
    back: Inches
    depth: Inches
    haunch_length: Inches
    left: Inches
    reach: Inches
    rail_length: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: gauge, groove, mortise, tenon, lengths."""
        return (
            *self._gauges(),
            *self._groove(),
            *self._mortise(),
            *self._tenon(),
            self._rail(),
        )

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        return frame_shape(self.given)

    def _gauges(self) -> tuple[Setting, ...]:
        given = self.given
        # From the back the same two lines come out only when the tenon is in the middle.
        off = abs(given.face - self.back) > TOLERANCE
        return (
            Setting(
                name="gauge_1",
                label="Mortise gauge, first pin",
                value=given.face,
                note="from the face, on both: the inner edge of the stile, the end and edges of the rail",
                wrong=self.back if off else None,
                tool=Tool.GAUGE,
            ),
            Setting(
                name="gauge_2",
                label="Mortise gauge, second pin",
                value=given.face + given.tenon,
                note="from the same face",
                wrong=self.back + given.tenon if off else None,
            ),
            Setting(
                name="chisel",
                label="Mortise chisel or cutter",
                value=given.tenon,
                note=say("as the tenon is thick: {}", how_mortised(given.tenon, given.rack)),
            ),
        )

    def _groove(self) -> tuple[Setting, ...]:
        given = self.given
        if not given.groove:
            return ()
        return (
            Setting(
                name="groove_fence",
                label="Groove from the face",
                value=given.groove_span[0],
                note="in the inner edges of both, through to their ends",
            ),
            Setting(
                name="groove_width",
                label="Groove width",
                value=given.groove.width,
                note=how_it_is_cut(given.groove.width, given.rack.cutters),
            ),
            Setting(name="groove_depth", label="Groove depth", value=given.groove.depth),
        )

    def _mortise(self) -> tuple[Setting, ...]:
        given = self.given
        if given.is_stub:
            return ()
        starts = given.haunch + given.beyond
        return (
            Setting(
                name="mortise_depth",
                label="Mortise depth",
                value=self.depth,
                note="from the edge of the stile, not from the floor of its groove"
                if given.groove
                else "from the edge of the stile; at the tenon's length the shoulder would not close",
                wrong=self.depth - given.groove_depth if given.groove else given.length,
            ),
            Setting(
                name="mortise_start",
                label="Mortise begins",
                value=starts,
                note="on the stile, from its end",
            ),
            Setting(
                name="mortise_length",
                label="Mortise length",
                value=self.width,
                note="the rail without its groove and haunch",
                wrong=given.rail if self.width < given.rail - TOLERANCE else None,
            ),
        )

    def _tenon(self) -> tuple[Setting, ...]:
        given = self.given
        settings = [
            Setting(
                name="shoulder",
                label="Shoulder line",
                value=given.length,
                note="from the end of the rail, all around",
            ),
            Setting(name="tenon", label="Tenon thickness", value=given.tenon),
            Setting(name="tenon_width", label="Tenon width", value=self.width),
        ]
        if given.haunch:
            settings += [
                Setting(
                    name="haunch",
                    label="Haunch width",
                    value=given.haunch,
                    note="from the outer edge of the rail",
                ),
                Setting(
                    name="haunch_length",
                    label="Haunch length",
                    value=self.haunch_length,
                    note="from the shoulder, as deep as the groove" if given.groove else "from the shoulder",
                ),
            ]
        if given.slack:
            settings.append(
                Setting(
                    name="slack",
                    label="Gap at the shoulder",
                    value=given.slack,
                    note="leave this joint dry; glue the front joint alone",
                )
            )
        return tuple(settings)

    def _rail(self) -> Setting:
        given = self.given
        added = 2 * given.length - given.slack
        if self.rail_length:
            return Setting(
                name="rail_length",
                label="Rail length",
                value=self.rail_length,
                note="over both tenons, less the gap" if given.slack else "over both tenons",
                wrong=self.rail_length + given.slack if given.slack else None,
            )
        return Setting(
            name="added",
            label="Added to the rail",
            value=added,
            note="to the clear distance between the stiles, for both tenons, less the gap"
            if given.slack
            else "to the clear distance between the stiles, for both tenons",
            wrong=2 * given.length if given.slack else None,
        )


@remembered
def frame_tenon(joint: FrameTenon, ledger: Ledger = UNKEPT) -> FrameTenonJoint:
    """A frame's tenon, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    depth = joint.depth
    if not joint.is_stub:
        clearance = joint.limits.clearance.value
        depth = ledger.take("mortise_depth", mortise_depth, length=joint.length, clearance=clearance)
    left = ledger.take("left", wood_left, post=joint.stile, depth=depth)
    reach = ledger.take("reach", tenon_reach, length=joint.length, slack=joint.slack)
    haunch = rail_length = 0.0
    if joint.haunch:
        haunch = ledger.take(
            "haunch_length",
            haunch_length,
            groove_depth=joint.groove_depth,
            tenon=joint.tenon,
            length=joint.length,
        )
    if joint.overall:
        rail_length = ledger.take(
            "rail_length",
            length_over_tenons,
            overall=joint.overall,
            post=joint.stile,
            other=joint.other_stile or joint.stile,
            length=joint.length,
            slack=joint.slack,
        )
    return FrameTenonJoint(
        given=joint,
        width=ledger.take(
            "tenon_width", tenon_width, board=joint.rail, lower=joint.groove_depth, upper=joint.haunch
        ),
        back=ledger.take(
            "back_shoulder",
            back_shoulder,
            thickness=joint.thickness,
            face=joint.face,
            tenon=joint.tenon,
        ),
        depth=depth,
        haunch_length=haunch,
        left=left,
        reach=reach,
        rail_length=rail_length,
        findings=frame_findings(joint, left, reach),
    )


def _chosen(name: str, value: Inches, why: Words, source: str) -> Chosen:
    return Chosen(name=name, value=value, measure=Measure.LENGTH, why=why, source=source)


def _chosen_stile(rail: Inches) -> Chosen:
    return _chosen("stile", rail, "Rail and stile are often as wide.", "common practice")


def _chosen_groove_depth(rail: Inches, stile: Inches) -> Chosen:
    habit = LIMITS.groove_depth
    deep = min(habit.value, min(rail, stile) / 3)
    return _chosen("groove_depth", deep, say("{} holds a panel that moves.", deep), habit.source)


def _chosen_tenon(thickness: Inches, groove_width: Inches | None, rack: Rack) -> Chosen:
    if groove_width:
        why = "As thick as the groove is wide, so that one setting cuts both."
        return _chosen("tenon", groove_width, why, LIMITS.part.source)
    why_third = say("The chisel nearest to a third of the {} rail.", thickness)
    return _chosen("tenon", usual_tenon(thickness, rack), why_third, LIMITS.part.source)


def _chosen_face(thickness: Inches, tenon: Inches) -> Chosen:
    return _chosen("face", (thickness - tenon) / 2, "The tenon is in the middle.", "common practice")


def _chosen_length(stile: Inches, groove_depth: Inches) -> Chosen:
    length = usual_frame_length(stile, groove_depth)
    why = say("Two thirds of the {} stile, as far as the wood behind the mortise allows.", stile)
    return _chosen("length", length, why, LIMITS.length_part.source)


def _chosen_haunch(rail: Inches, groove_depth: Inches, is_stub: bool) -> Chosen:
    if is_stub:
        why = "The tenon is as long as the groove is deep and fills it by itself."
        return _chosen("haunch", 0.0, why, "common practice")
    haunch = usual_frame_haunch(rail, groove_depth)
    why_third = say("A third of the {} rail keeps the mortise from the end of the stile.", rail)
    return _chosen("haunch", haunch, why_third, LIMITS.haunch_part.source)


def _chosen_slack(shrinkage: Inches) -> Chosen:
    why = say("The case loses {:.3} in depth, and a rear joint gives way to that.", shrinkage)
    return _chosen("slack", usual_slack(shrinkage), why, LIMITS.slack_step.source)


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A frame's tenon from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    thickness, rail = take.number("thickness"), take.number("rail")
    stile = take.or_choose("stile", _chosen_stile, rail)
    groove_width, groove_depth = take.optional("groove_width"), take.optional("groove_depth")
    if groove_width is not None and groove_depth is None:
        groove_depth = take.or_choose("groove_depth", _chosen_groove_depth, rail, stile)
    if groove_width is None and groove_depth is not None:
        raise ValueError(say("A groove {} deep needs its width too; {} is usual.", groove_depth, 1 / 4))
    groove = None
    if groove_width is not None and groove_depth is not None:
        groove = PanelGroove(width=groove_width, depth=groove_depth)
    deep = groove_depth or 0.0
    tenon = take.or_choose("tenon", _chosen_tenon, thickness, groove_width, rack)
    length = take.or_choose("length", _chosen_length, stile, deep)
    is_stub = groove is not None and length <= deep + TOLERANCE and tenon <= groove.width + TOLERANCE
    shrinkage = take.optional("shrinkage")
    slack = take.optional("slack")
    if slack is None and shrinkage is not None:
        slack = take.or_choose("slack", _chosen_slack, shrinkage)
    joint = FrameTenon(
        thickness=thickness,
        rail=rail,
        stile=stile,
        tenon=tenon,
        face=take.or_choose("face", _chosen_face, thickness, tenon),
        length=length,
        groove=groove,
        haunch=take.or_choose("haunch", _chosen_haunch, rail, deep, is_stub),
        beyond=take.optional("beyond") or 0.0,
        slack=slack or 0.0,
        shrinkage=shrinkage,
        overall=take.optional("overall") or 0.0,
        other_stile=take.optional("other_stile") or 0.0,
        rack=rack,
    )
    return Solved(joint=frame_tenon(joint, ledger), chosen=take.chosen)


FIELDS = fields("frame_tenon")

KIND = JointKind(
    name="frame-tenon",
    title="Tenon of a frame's rail in its stile",
    fields=FIELDS,
    solve=_solve,
)
