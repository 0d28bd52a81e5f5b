"""The joints of the case: its corners, dividers, uprights, frames and back, each worked out once.

A measured part beats its drawing: a joint takes the sizes of the boards that it is cut on.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.measure.findings import Finding, Verdict
from casewright.measure.units import Inches
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.back_joints import back_frame_joints, back_joint
from casewright.pieces.case.corner_joints import corner_joints
from casewright.pieces.case.corners import CaseCorner
from casewright.pieces.case.crate_joints import crate_joints
from casewright.pieces.case.divider_joints import divider_joints
from casewright.pieces.case.frame_joints import frame_joints
from casewright.pieces.case.leg_joints import leg_joints, rails_clear
from casewright.pieces.case.partition_joints import partition_joints, upright_joints
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.sides import side_codes
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.parts import Part
from casewright.pieces.panels.frame import PanelFrame
from casewright.pieces.panels.joints import FrameTenons, frame_tenons

SAID_OF_THE_CASE = ("room when wettest",)
"""Checks of a back that the case has as its own, by the name of `back gaps`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseJoints:
    """Every joint of a case.

    Attributes:
        joints: those that can be laid out
        findings: their checks, and a stop for each that cannot
    """

    joints: tuple[PlacedJoint, ...]
    findings: tuple[Finding, ...]


def case_joints(
    plan: CasePlan, parts: Iterable[Part], corners: tuple[CaseCorner, ...], shrinkage: Inches, rack: Rack
) -> CaseJoints:
    """Every joint of a case, worked out.

    Args:
        plan: what the case is worked out from
        parts: the parts, with what was measured of them
        corners: the dovetailed corners, counted
        shrinkage: how much the sides lose in depth [in]
        rack: the shop's chisels and saw

    Returns:
        The joints and their checks.

    Raises:
        CannotBeLaidOut: a sliding dovetail that was asked for has no neck left

    Source: common practice of solid-wood case making; each family of joints names its own.
    """
    lines: dict[str, list[Part]] = {}
    for part in parts:
        lines.setdefault(part.line, []).append(part)
    bench = CaseBench(plan=plan, lines=lines, shrinkage=shrinkage, rack=rack)
    asked = _of_carcase(bench, corners) if plan.spec.legs is None else leg_joints(bench, plan.spec.legs)
    joints: list[PlacedJoint] = []
    findings = [] if plan.spec.legs is None else list(rails_clear(bench, plan.spec.legs))
    for each in asked:
        try:
            joint = each.solve()
        except ValueError as error:  # CannotBeLaidOut is one
            if each.kind == "sliding":
                raise  # asked for as such: without it there is no divider
            findings.append(_refused(each, error))
            continue
        joints.append(
            PlacedJoint(
                key=each.key,
                kind=each.kind,
                title=each.title,
                places=each.places,
                serves=each.codes,
                joint=joint,
                working=f"case.joints.{each.key}",
                advice=each.advice,
            )
        )
        findings.extend(found for found in joint.findings if found.rule not in SAID_OF_THE_CASE)
    if plan.frame:
        of_sides = _side_frames(bench, plan.frame)
        joints.extend(of_sides.joints)
        findings.extend(of_sides.findings)
    if of_back := back_frame_joints(bench):
        joints.extend(of_back.joints)
        findings.extend(of_back.findings)
    return CaseJoints(joints=tuple(joints), findings=tuple(findings))


def _side_frames(bench: CaseBench, frame: PanelFrame) -> FrameTenons:
    """The tenons of framed sides."""
    members = {part.code: part for part in bench.of("V1", "V2", "V3", "V4")}
    ledger, codes = bench.plan.ledger.root, side_codes(bench.plan)
    return frame_tenons(frame, codes, members, bench.rack, ledger, "sides", "case.joints", "sides")


def _of_carcase(bench: CaseBench, corners: tuple[CaseCorner, ...]) -> Iterator[AskedJoint]:
    yield from corner_joints(bench, corners)
    if bench.spec.crate:
        yield from crate_joints(bench)
    else:
        yield from divider_joints(bench)
        yield from upright_joints(bench)
        yield from partition_joints(bench)
        yield from frame_joints(bench)
    yield from back_joint(bench)


def _refused(asked: AskedJoint, error: ValueError) -> Finding:
    return Finding(
        rule="joint of the case",
        verdict=Verdict.STOP,
        message=f"{asked.title}: it cannot be laid out.",
        remedy=error.args[0],
        about=asked.serves[0][1][0].code,
    )
