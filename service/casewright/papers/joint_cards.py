"""The joint cards of a job as they are kept: one for each joint and gauge setting, to hang at the bench."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from casewright.drawing.divider_walk import walk_at_once_drawing
from casewright.drawing.tail_joints import half_blind_drawing, through_drawing
from casewright.joinery.chisels import Chisels
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.layout import Tail, TailLayout
from casewright.joinery.tools_kept import KEPT_RULES
from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.papers.cautions import joint_cautions, joint_kinds
from casewright.papers.head import JobPaper, PaperHead
from casewright.papers.kept_strips import KeptStrip, joint_strips, story_stick
from casewright.papers.warned import Warned, warned_of
from casewright.pieces.asked.fields import Spec
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.parts import Drawer


class GaugeFigure(Spec):
    """A gauge setting; `wrong_in` is the size that is easily set instead, and is printed struck out."""

    name: str
    value_in: float
    wrong_in: float | None = None
    note: str


class TailRow(Spec):
    """One tail by its corners, measured up from the bottom edge."""

    lower_end_in: float
    upper_end_in: float
    lower_base_in: float
    upper_base_in: float


class SizeRow(Spec):
    """A size that is set or checked once, such as the lap."""

    name: str
    values_in: tuple[float, ...]
    note: str = ""


class JointCard(Spec):
    """One row of dovetails: gauges, the walk of the dividers, every tail, chisels, and what it serves."""

    title: str
    unit_code: str
    drawers: tuple[str, ...]
    parts: tuple[str, ...]
    gauges: tuple[GaugeFigure, ...]
    wrong_text: str
    half_pin_in: float
    divider_in: float
    overshoot_in: float
    correction_in: float
    slope: float
    bevel_degrees: float
    measured_from: str
    tails: tuple[TailRow, ...]
    sizes: tuple[SizeRow, ...]
    advice: tuple[str, ...]
    warned: tuple[Warned, ...]
    drawing: str
    walk_drawing: str = ""
    """The walk of the dividers as one figure; cards from before have none."""


class DividerCard(Spec):
    """The sliding dovetails of the dividers, and the marks of the story stick."""

    unit_code: str
    sizes: tuple[SizeRow, ...]
    slope: float
    tops_in: tuple[float, ...]
    warned: tuple[Warned, ...]


class JointCardsPaper(JobPaper):
    """The joint cards of a job. Lengths in inches; drawings as SVG."""

    cards: tuple[JointCard, ...]
    dividers: tuple[DividerCard, ...]
    cautions: tuple[str, ...] = ()
    strips: tuple[KeptStrip, ...] = ()
    """What is marked on the boards, in full size; papers from before have none."""


def joint_cards_paper(head: PaperHead, units: Iterable[Construction]) -> JointCardsPaper:
    """The joint cards of a job.

    Args:
        head: who, what and when
        units: every unit, worked out

    Returns:
        The paper, ready to be printed or kept.
    """
    held = tuple(units)
    return JointCardsPaper(
        head=head,
        cards=tuple(card for unit in held for card in (*_fronts(unit, head), *_backs(unit, head))),
        dividers=tuple(card for unit in held for card in _dividers(unit, head)),
        cautions=(
            *joint_cautions({kind for unit in held for kind in joint_kinds(unit)}),
            *(said for unit in held for said in _too_few_to_keep(unit, head.unit)),
        ),
        strips=tuple(strip for unit in held for strip in _strips(unit, head.unit)),
    )


def _too_few_to_keep(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    """In which order gauges and dividers are used again, where the shop has too few to keep them set."""
    for found in unit.findings:
        if found.rule in KEPT_RULES and found.verdict is not Verdict.PASS:
            where = found.about or unit.spec.code
            yield f"{where}: {in_unit(found.message, shown)} {in_unit(found.remedy, shown)}"


def _strips(unit: Construction, shown: LengthUnit) -> Iterator[KeptStrip]:
    """The templates of a unit, one for each joint, and the story stick of its dividers."""
    for drawers in _alike(unit, lambda drawer: replace(drawer.joints.front.given, mark="")):
        codes = [drawer.code for drawer in drawers]
        yield from joint_strips(drawers[0].joints.front, "Half-blind dovetail, front", codes, shown)
    for drawers in _alike(unit, lambda drawer: replace(drawer.joints.back.given, mark="")):
        codes = [drawer.code for drawer in drawers]
        yield from joint_strips(drawers[0].joints.back, "Through dovetail, back", codes, shown)
    stick = story_stick(unit)
    if stick:
        yield stick


def _alike(unit: Construction, asked_for: Callable[[Drawer], object]) -> Iterator[list[Drawer]]:
    """Drawers with the same joint."""
    groups: list[tuple[object, list[Drawer]]] = []
    for drawer in unit.drawers:
        asked = asked_for(drawer)
        found = next((members for other, members in groups if other == asked), None)
        if found is None:
            groups.append((asked, [drawer]))
        else:
            found.append(drawer)
    return (members for _, members in groups)


def _fronts(unit: Construction, head: PaperHead) -> Iterator[JointCard]:
    """One card for each front joint, and for each setting of the second gauge where sides were measured."""
    for drawers in _alike(unit, lambda drawer: replace(drawer.joints.front.given, mark="")):
        joint, codes = drawers[0].joints.front, tuple(drawer.code for drawer in drawers)
        drawing = half_blind_drawing(joint, codes, head.unit, f"{codes[0]}-front").svg()
        sides = tuple(f"{code}-{side}" for code in codes for side in ("SL", "SR"))
        settings = [(group.setting, group.marks) for group in joint.gauge_groups] or [(joint.gauge_2, sides)]
        for setting, marks in settings:
            parts = (*(f"{code}-F" for code in codes), *marks)
            yield _front_card(unit.spec.code, joint, codes, (setting, parts), drawing, head.unit)


def _front_card(
    unit_code: str,
    joint: HalfBlindJoint,
    codes: tuple[str, ...],
    served: tuple[float, tuple[str, ...]],
    drawing: str,
    unit: LengthUnit,
) -> JointCard:
    given, layout, setting = joint.given, joint.layout, served[0]
    rabbeted = given.rabbet > 0
    after = "left of the side after the rabbet" if rabbeted else "thickness of the side"
    sizes = [SizeRow(name="Lap", values_in=(joint.lap,), note=f"index {joint.lap_index:.1f}")]
    if rabbeted:
        size = (joint.rabbet_width, given.rabbet)
        sizes.append(SizeRow(name="Rabbet, wide × deep", values_in=size, note="inside of the side"))
    if given.groove:
        groove = (given.groove.height, given.groove.width, given.groove.depth)
        sizes.append(SizeRow(name="Groove, up × wide × deep", values_in=groove, note="from the bottom edge"))
    if given.front_excess > 0:
        top = (joint.top_half_pin_on_front,)
        sizes.append(SizeRow(name="Top half pin on the front", values_in=top, note="the front is higher"))
    return JointCard(
        title="Half-blind dovetail, drawer front",
        unit_code=unit_code,
        drawers=codes,
        parts=served[1],
        gauges=(
            GaugeFigure(
                name="Gauge 1",
                value_in=joint.gauge_1,
                note="depth of the sockets, from the inside face of the front; baseline on the sides"
                + ("; width of the rabbet" if rabbeted else ""),
            ),
            GaugeFigure(
                name="Gauge 2",
                value_in=setting,
                wrong_in=joint.wrong_gauge_2,
                note=f"{after}: on the inside face of the front, from its end",
            ),
        ),
        wrong_text=in_unit(joint.wrong_gauge_text, unit),
        half_pin_in=layout.half_pin,
        divider_in=joint.stepping.setting,
        overshoot_in=joint.stepping.overshoot,
        correction_in=joint.stepping.correction,
        slope=layout.slope,
        bevel_degrees=layout.bevel_degrees,
        measured_from="from the bottom edge of the side and of the front",
        tails=_tails(layout.tails),
        sizes=(*sizes, *_chisels(joint.chisels)),
        advice=tuple(in_unit(line, unit) for line in joint.advice),
        warned=warned_of(joint.findings, unit),
        drawing=drawing,
        walk_drawing=_walk(layout, f"{codes[0]}-front", unit),
    )


def _backs(unit: Construction, head: PaperHead) -> Iterator[JointCard]:
    for drawers in _alike(unit, lambda drawer: replace(drawer.joints.back.given, mark="")):
        joint, codes = drawers[0].joints.back, tuple(drawer.code for drawer in drawers)
        drawing = through_drawing(joint, codes, head.unit, f"{codes[0]}-back").svg()
        parts = tuple(f"{code}-{part}" for code in codes for part in ("B", "SL", "SR"))
        yield _back_card(unit.spec.code, joint, codes, parts, drawing, head.unit)


def _back_card(
    unit_code: str,
    joint: ThroughJoint,
    codes: tuple[str, ...],
    parts: tuple[str, ...],
    drawing: str,
    unit: LengthUnit,
) -> JointCard:
    layout, offset = joint.layout, joint.lower_edge_offset
    sizes = [SizeRow(name="Back above the side's edge", values_in=(offset,), note="lower edge to lower edge")]
    return JointCard(
        title="Through dovetail, drawer back",
        unit_code=unit_code,
        drawers=codes,
        parts=parts,
        gauges=(
            GaugeFigure(
                name="Gauge for the side",
                value_in=joint.gauge_side,
                note="baseline of the tails, from the end",
            ),
            GaugeFigure(
                name="Gauge for the back",
                value_in=joint.gauge_back,
                wrong_in=joint.wrong_gauge_back,
                note="baseline of the pins, on both faces, from the end",
            ),
        ),
        wrong_text=in_unit(joint.wrong_gauge_text, unit),
        half_pin_in=layout.half_pin,
        divider_in=joint.stepping.setting,
        overshoot_in=joint.stepping.overshoot,
        correction_in=joint.stepping.correction,
        slope=layout.slope,
        bevel_degrees=layout.bevel_degrees,
        measured_from="from the bottom edge of the side; mark the first half pin above the back's lower edge",
        tails=_tails(joint.side_tails),
        sizes=(*(sizes if offset else ()), *_chisels(joint.chisels)),
        advice=(),
        warned=warned_of(joint.findings, unit),
        drawing=drawing,
        walk_drawing=_walk(layout, f"{codes[0]}-back", unit),
    )


def _dividers(unit: Construction, head: PaperHead) -> Iterator[DividerCard]:
    """The sliding dovetails of the dividers, where the unit has them."""
    joint = unit.divider_joint
    if joint is None:
        return
    yield DividerCard(
        unit_code=unit.spec.code,
        sizes=tuple(
            SizeRow(
                name=in_unit(setting.label, head.unit),
                values_in=(setting.value,),
                note=in_unit(setting.note, head.unit),
            )
            for setting in joint.settings
            if setting.measure.is_length
        ),
        slope=joint.given.slope,
        tops_in=tuple(unit.face.divider_tops(unit.spec.case.divider)),
        warned=warned_of(joint.findings, head.unit),
    )


def _walk(layout: TailLayout, name: str, unit: LengthUnit) -> str:
    return walk_at_once_drawing(layout, "The walk with the dividers", unit, f"{name}-walk").svg()


def _tails(tails: tuple[Tail, ...]) -> tuple[TailRow, ...]:
    return tuple(
        TailRow(
            lower_end_in=tail.lower_end,
            upper_end_in=tail.upper_end,
            lower_base_in=tail.lower_base,
            upper_base_in=tail.upper_base,
        )
        for tail in tails
    )


def _chisels(chisels: Chisels) -> Iterator[SizeRow]:
    if chisels.sockets is not None:
        yield SizeRow(name="Chisel, sockets", values_in=(chisels.sockets,))
    if chisels.between_tails is not None:
        if chisels.fret_saw:
            note = "at the baseline; fret saw first"
        else:
            note = "from the end too" if chisels.enters_from_end else "at the baseline only"
        yield SizeRow(name="Chisel, between tails", values_in=(chisels.between_tails,), note=note)
