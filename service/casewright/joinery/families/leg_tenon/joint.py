"""The tenons of aprons in a leg: set back from its face, haunched at its top, mitred where two meet.

Two aprons at a corner are alike. `leg_tenon_shape` says how the joint stands in space.
"""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.families.leg_tenon.asked import LegTenon
from casewright.joinery.families.leg_tenon.checks import leg_findings
from casewright.joinery.families.leg_tenon.rules import (
    LIMITS,
    guide_thickness,
    inner_wall,
    leg_haunch_length,
    mitred_length,
    outer_wall,
    usual_face,
    usual_leg_haunch,
    usual_leg_length,
    usual_leg_tenon,
)
from casewright.joinery.families.leg_tenon.shape import leg_shape
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
    how_mortised,
    length_over_tenons,
    mortise_depth,
    tenon_width,
    wood_left,
)
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Degrees, Inches

MITRE: Degrees = 45.0
"""Two aprons meet square, so that each tenon gives way by half."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LegTenonJoint:
    """A leg with its aprons, worked out.

    Attributes:
        given: what was asked for
        outer: the wall of a mortise towards the leg's outside face [in]
        inner: its wall towards the inside face [in]
        back: the shoulder behind the tenon [in]
        width: width of the tenon, which is the length of the mortise [in]
        depth: depth of the mortise [in]
        left: what is left of the leg behind it [in]
        inner_length: how long the tenon is at its inner cheek, which is its length unless it is mitred [in]
        haunch_length: how far the haunch reaches into the leg; 0 without a haunch [in]
        guide: from the inside of the apron to the inside of the leg [in]
        apron_lengths: the apron from left to right and that from front to back, over their tenons; 0 when
            the piece's size is not known [in]
        findings: every check that was carried out, passes too
    """

    given: LegTenon
    outer: Inches
    inner: Inches
    back: Inches
    width: Inches
    depth: Inches
    left: Inches
    inner_length: Inches
    haunch_length: Inches
    guide: Inches
    apron_lengths: tuple[Inches, Inches]
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: gauges, mortise, tenon, mitre, lengths."""
        return (
            *self._gauges(),
            *self._mortise(),
            *self._tenon(),
            *self._mitre(),
            *self._lengths(),
        )

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        return leg_shape(self.given)

    def _gauges(self) -> tuple[Setting, ...]:
        given = self.given
        # The gauge that marked the aprons is still set when the legs are marked.
        wrong = given.setback > TOLERANCE
        return (
            Setting(
                name="gauge_apron_1",
                label="Gauge for aprons, first pin",
                value=given.face,
                note="from the outside face, on the ends and edges",
                tool=Tool.GAUGE,
            ),
            Setting(
                name="gauge_apron_2",
                label="Gauge for aprons, second pin",
                value=given.face + given.tenon,
                note="from the same face",
            ),
            Setting(
                name="gauge_leg_1",
                label="Gauge for legs, first pin",
                value=self.outer,
                note="from each outside face, on the inside face beside it: the apron's and its setback",
                wrong=given.face if wrong else None,
                tool=Tool.GAUGE,
            ),
            Setting(
                name="gauge_leg_2",
                label="Gauge for legs, second pin",
                value=self.outer + given.tenon,
                note="from the same face",
                wrong=given.face + given.tenon if wrong else None,
            ),
            Setting(
                name="chisel",
                label="Mortise chisel or cutter",
                value=given.tenon,
                note=say("as the tenon is thick: {}", how_mortised(given.tenon, given.rack)),
            ),
        )

    def _mortise(self) -> tuple[Setting, ...]:
        given = self.given
        socket = (
            Setting(
                name="socket_depth",
                label="Haunch socket depth",
                value=self.haunch_length + given.limits.clearance.value,
                note="from the top of the leg down to the mortise",
            ),
        )
        return (
            Setting(
                name="mortise_depth",
                label="Mortise depth",
                value=self.depth,
                note="from the leg's face; at the tenon's length the shoulder would not close",
                wrong=given.length,
            ),
            Setting(
                name="mortise_start",
                label="Mortise begins",
                value=given.haunch + given.beyond,
                note="on the leg, from its top",
            ),
            Setting(
                name="mortise_length",
                label="Mortise length",
                value=self.width,
                note="the apron without its haunch and its lower shoulder",
                wrong=given.height if self.width < given.height - TOLERANCE else None,
            ),
            *(socket if self.haunch_length else ()),
        )

    def _tenon(self) -> tuple[Setting, ...]:
        given = self.given
        settings = [
            Setting(
                name="shoulder",
                label="Shoulder line",
                value=given.length,
                note="from the end of the apron, all around",
            ),
            Setting(name="tenon", label="Tenon thickness", value=given.tenon),
            Setting(name="tenon_width", label="Tenon width", value=self.width),
        ]
        if given.lower_shoulder:
            settings.append(
                Setting(
                    name="lower_shoulder",
                    label="Lower shoulder",
                    value=given.lower_shoulder,
                    note="off the lower edge of the apron",
                )
            )
        if given.haunch:
            settings += [
                Setting(
                    name="haunch",
                    label="Haunch width",
                    value=given.haunch,
                    note="from the apron's upper edge",
                ),
                Setting(
                    name="haunch_length",
                    label="Haunch length",
                    value=self.haunch_length,
                    note="from the shoulder",
                ),
            ]
        return tuple(settings)

    def _mitre(self) -> tuple[Setting, ...]:
        if not self.given.is_mitred:
            return ()
        return (
            Setting(
                name="mitre",
                label="Mitre of the tenon's end",
                value=MITRE,
                measure=Measure.DEGREES,
                note="the outer cheek keeps its length",
            ),
            Setting(
                name="inner_length",
                label="Mitre begins",
                value=self.inner_length,
                note="on the inner cheek, from the shoulder",
                wrong=self.given.length,
            ),
        )

    def _lengths(self) -> tuple[Setting, ...]:
        given = self.given
        found = [
            Setting(name=name, label=label, value=value, note="over both tenons")
            for name, label, value in zip(
                ("across_length", "deep_length"),
                ("Apron, left to right", "Apron, front to back"),
                self.apron_lengths,
                strict=True,
            )
            if value
        ]
        if not found:
            note = "to the clear distance between the legs, for both tenons; the setback changes nothing"
            added = 2 * given.length
            found.append(Setting(name="added", label="Added to an apron", value=added, note=note))
        if self.guide > TOLERANCE:
            found.append(
                Setting(
                    name="guide",
                    label="Side guide",
                    value=self.guide,
                    note="thick, inside the apron, to be flush with the leg",
                )
            )
        return tuple(found)


def leg_tenon(joint: LegTenon, ledger: Ledger = UNKEPT) -> LegTenonJoint:
    """A leg with its aprons, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    take, limits = ledger.take, joint.limits
    outer = take("outer_wall", outer_wall, setback=joint.setback, face=joint.face)
    inner = take("inner_wall", inner_wall, leg=joint.leg, outer_wall=outer, tenon=joint.tenon)
    depth = take("mortise_depth", mortise_depth, length=joint.length, clearance=limits.clearance.value)
    left = take("left", wood_left, post=joint.leg, depth=depth)
    inner_length, haunch = joint.length, 0.0
    if joint.is_mitred:
        inner_length = take("inner_length", mitred_length, cheek=inner, mitre_gap=limits.mitre_gap.value)
    if joint.haunch:
        haunch = take("haunch_length", leg_haunch_length, tenon=joint.tenon, length=inner_length)
    return LegTenonJoint(
        given=joint,
        outer=outer,
        inner=inner,
        back=take("back_shoulder", back_shoulder, thickness=joint.apron, face=joint.face, tenon=joint.tenon),
        width=take(
            "tenon_width", tenon_width, board=joint.height, lower=joint.lower_shoulder, upper=joint.haunch
        ),
        depth=depth,
        left=left,
        inner_length=inner_length,
        haunch_length=haunch,
        guide=take("guide", guide_thickness, leg=joint.leg, setback=joint.setback, apron=joint.apron),
        apron_lengths=(
            _over_tenons("across_length", joint.width, joint, ledger),
            _over_tenons("deep_length", joint.depth, joint, ledger),
        ),
        findings=leg_findings(joint, left),
    )


def _over_tenons(figure: str, overall: Inches, joint: LegTenon, ledger: Ledger) -> Inches:
    if not overall:
        return 0.0
    return ledger.take(
        figure, length_over_tenons, overall=overall, post=joint.leg, other=joint.leg, length=joint.length
    )


def _chosen(name: str, value: Inches, why: Words, source: str) -> Chosen:
    return Chosen(name=name, value=value, measure=Measure.LENGTH, why=why, source=source)


def _chosen_aprons() -> Chosen:
    why = "Two aprons meet at the leg of a corner."
    return Chosen(name="aprons", value=2, measure=Measure.COUNT, why=why, source="common practice")


def _chosen_setback(leg: Inches, apron: Inches) -> Chosen:
    habit = LIMITS.setback
    back = max(0.0, min(habit.value, leg - apron))
    return _chosen(
        "setback", back, say("{} shows that the apron is meant to stand back.", back), habit.source
    )


def _chosen_tenon(apron: Inches, rack: Rack) -> Chosen:
    tenon = usual_leg_tenon(apron, rack)
    why = say("The narrowest chisel from a third of the {} apron up to {}.", apron, LIMITS.tenon_most.value)
    return _chosen("tenon", tenon, why, LIMITS.part.source)


def _chosen_face(apron: Inches, setback: Inches, tenon: Inches) -> Chosen:
    face = usual_face(apron, setback, tenon)
    if face <= (apron - tenon) / 2 + TOLERANCE:
        return _chosen("face", face, "The tenon is in the middle.", "common practice")
    why = say("It leaves {} of the leg outside the mortise.", face + setback)
    return _chosen("face", face, why, LIMITS.wall_least.source)


def _chosen_length(leg: Inches, outer: Inches, tenon: Inches, aprons: Count) -> Chosen:
    length = usual_leg_length(leg, outer, tenon, aprons)
    why = say("Two thirds of the {} leg, as far as its walls and a second tenon allow.", leg)
    return _chosen("length", length, why, LIMITS.length_part.source)


def _chosen_lower_shoulder(height: Inches) -> Chosen:
    habit = LIMITS.lower_shoulder
    lower = min(habit.value, height / 4)
    return _chosen("lower_shoulder", lower, say("{} covers the end of the mortise.", lower), habit.source)


def _chosen_haunch(height: Inches, lower_shoulder: Inches) -> Chosen:
    haunch = usual_leg_haunch(height, lower_shoulder)
    why = say("A third of the {} apron, and at most {}.", height, LIMITS.haunch_most.value)
    return _chosen("haunch", haunch, why, LIMITS.haunch_part.source)


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A leg with its aprons from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    leg, apron, height = take.number("leg"), take.number("apron"), take.number("height")
    aprons = int(take.or_choose("aprons", _chosen_aprons))
    setback = take.or_choose("setback", _chosen_setback, leg, apron)
    tenon = take.or_choose("tenon", _chosen_tenon, apron, rack)
    face = take.or_choose("face", _chosen_face, apron, setback, tenon)
    lower = take.or_choose("lower_shoulder", _chosen_lower_shoulder, height)
    joint = LegTenon(
        leg=leg,
        apron=apron,
        height=height,
        setback=setback,
        tenon=tenon,
        face=face,
        length=take.or_choose("length", _chosen_length, leg, setback + face, tenon, aprons),
        haunch=take.or_choose("haunch", _chosen_haunch, height, lower),
        lower_shoulder=lower,
        aprons=aprons,
        width=take.optional("width") or 0.0,
        depth=take.optional("depth") or 0.0,
        rack=rack,
    )
    return Solved(joint=leg_tenon(joint, ledger), chosen=take.chosen)


FIELDS = fields("leg_tenon")

KIND = JointKind(
    name="leg-tenon",
    title="Tenons of aprons in a leg",
    fields=FIELDS,
    solve=_solve,
)
