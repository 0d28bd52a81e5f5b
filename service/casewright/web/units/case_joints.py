"""The joints of the case, and the bottoms of the drawers: settings, drawings and checks, each joint once."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.drawing.joint_views import shape_drawing
from casewright.joinery.families.carcase.joint import CarcaseJoint
from casewright.papers.bench import tools_named
from casewright.papers.cautions import joint_cautions
from casewright.papers.doors import Leaf, leaves_of
from casewright.papers.writing import Writing, several
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.joints import other_joints
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.sticks import stack_marks
from casewright.web.frame.pages import Page, drawing, show
from casewright.web.frame.visits import Office
from casewright.web.units.findings import checks_of
from casewright.web.units.joints import JointShown, settings_shown, tails_shown
from casewright.web.units.result import Shown, shown_size
from casewright.web.units.worked import UnitHead, see_built_unit

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafShown:
    """A leaf with the middles of its hinges, the lowest first, and the card on which their gains stand."""

    code: str
    hinged: str
    sizes: tuple[Shown, ...]
    from_below: tuple[Shown, ...]
    from_above: tuple[Shown, ...]
    card: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseJointsPage(Page):
    """The joints of a unit beside its drawers' dovetails."""

    template: ClassVar[str] = "units/case_joints.html"
    head: UnitHead
    address: str
    dovetails: str
    unit: str
    joints: tuple[JointShown, ...]
    story_stick: tuple[str, ...]
    stick_foot: str
    stack_sticks: tuple[tuple[str, str, tuple[str, ...]], ...]
    cautions: tuple[str, ...]
    leaves: tuple[LeafShown, ...]
    hinge: str
    """What the doors hang on, and how long it is."""


@router.get("/units/{unit_id}/joints/case")
def show_case_joints(visit: Office, unit_id: str) -> Response:
    """Every joint of the case and of the drawers' bottoms, ready to be set out."""
    seen = see_built_unit(visit, unit_id)
    unit, writing, address = seen.built, seen.writing, f"{seen.head.address}/joints"
    placed = other_joints(unit)
    page = CaseJointsPage(
        title=f"Joints of case {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        address=f"{address}/case",
        dovetails=address,
        unit=writing.unit.value,
        joints=tuple(_shown(each, unit, writing) for each in placed),
        story_stick=tuple(writing.size(top) for top in unit.face.divider_tops(unit.spec.frame.divider)),
        stick_foot=unit.spec.stick_foot,
        stack_sticks=tuple(_stack_sticks(unit, writing)),
        cautions=joint_cautions(each.kind for each in placed),
        leaves=tuple(_leaf(each, placed, writing) for each in leaves_of(unit)),
        hinge=f"{unit.spec.doors.hinge} {writing.size(unit.spec.doors.hinge_length)} {writing.unit.value}",
    )
    return show(visit, page)


def _leaf(leaf: Leaf, placed: tuple[PlacedJoint, ...], writing: Writing) -> LeafShown:
    plan = leaf.door.plan
    gains = (each.key for each in placed if leaf.gains is not None and each.joint is leaf.gains)
    return LeafShown(
        code=leaf.plan.code,
        hinged=leaf.plan.hinged,
        sizes=tuple(shown_size(each, writing) for each in (plan.height, plan.width, plan.thickness)),
        from_below=tuple(shown_size(each, writing) for each in leaf.from_below),
        from_above=tuple(shown_size(each, writing) for each in leaf.from_above),
        card="".join(f"joint-{key}" for key in gains),
    )


def _stack_sticks(unit: Construction, writing: Writing) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    """Of stacks within columns: which they are, from where their dividers are marked, and the marks."""
    for each in stack_marks(unit.face):
        foot = unit.spec.stick_foot if each.is_from_bottom else "lower edge of their openings"
        yield each.codes, foot, tuple(writing.size(top) for top in each.tops)


def _shown(placed: PlacedJoint, unit: Construction, writing: Writing) -> JointShown:
    joint = placed.joint
    tails = joint.layout.tails if isinstance(joint, CarcaseJoint) else ()
    drawn = shape_drawing(joint.shape, placed.title, writing.unit, placed.key)
    return JointShown(
        id=f"joint-{placed.key}",
        title=placed.title,
        serves=placed.drawers or (several(placed.places, "place", "places"),),
        parts=placed.parts,
        settings=settings_shown(joint, writing, unit.ledger, placed.working),
        wrong="",
        tails=tails_shown(tails, writing, ""),
        measured_from="the front edge",
        drawing=drawing(drawn.svg()),
        checks=checks_of(joint.findings, writing.unit),
        advice=tuple(writing.said(line) for line in placed.advice),
        tools=tools_named(placed.kind),
    )
