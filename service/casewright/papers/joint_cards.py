"""The joint cards of a job as they are kept: one for each joint and gauge setting, to hang at the bench."""

from collections.abc import Iterable, Iterator

from casewright.drawing.tail_joints import half_blind_drawing, through_drawing
from casewright.joinery.chisels import Chisels
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.layout import Tail
from casewright.joinery.spacing import TOLERANCE
from casewright.labour.stages import before_marking
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit, say, written_in
from casewright.papers.boring import boring_strips
from casewright.papers.cautions import joint_cautions, joint_kinds
from casewright.papers.gauge_sheet import GaugeLine, gauge_lines, too_few_to_keep
from casewright.papers.head import JobPaper, PaperHead
from casewright.papers.kept_strips import KeptStrip, joint_strips, kept, story_sticks
from casewright.papers.settings_card import SettingsCard, card_walk, settings_card
from casewright.papers.warned import Warned, warned_of
from casewright.pieces.asked.fields import Spec
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.gauges_to_set import wrong_of
from casewright.pieces.built.joints import other_joints
from casewright.pieces.drawers.alike import drawers_alike, through_alike
from casewright.pieces.drawers.front_sets import FrontSet, front_sets, half_blind_of

FOR_BACK = "Gauge for the back"
"""The name of a gauge of the back; where its ends have a setting each, with the end behind it."""


class GaugeFigure(Spec):
    """A gauge setting; `wrong_in` is the size that is easily set instead, and is printed struck out."""

    name: str
    value_in: float
    wrong_in: float | None = None
    also_wrong_in: tuple[float, ...] = ()
    """Further sizes that are struck out: the full thicknesses of other sides."""
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
    of: tuple[str, ...] = ()
    """Codes of the drawers for which it holds; empty for all of the card."""


class JointCard(Spec):
    """One row of dovetails: gauges, the walk of the dividers, every tail, chisels, and what it serves."""

    title: str
    kind: str = ""
    """Name of the kind of joint, by which its tools are known; cards from before have none."""
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
    ticks: tuple[str, ...] = ()
    """What is looked at before anything is marked out, a box each."""
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
    others: tuple[SettingsCard, ...] = ()
    """Of the case and of the drawers' bottoms; papers from before have none."""
    dividers: tuple[DividerCard, ...] = ()
    """Papers from before have their sliding dovetails here."""
    cautions: tuple[str, ...] = ()
    strips: tuple[KeptStrip, ...] = ()
    """What is marked on the boards, in full size; papers from before have none."""
    gauges: tuple[GaugeLine, ...] = ()
    """Every gauge that is set, once; papers from before have none."""


def joint_cards_paper(
    head: PaperHead, units: Iterable[Construction], *, drawn: bool = True
) -> JointCardsPaper:
    """The joint cards of a job.

    Args:
        head: who, what and when
        units: every unit, worked out
        drawn: whether with drawings and templates; without them where only the figures are compared

    Returns:
        The paper, ready to be printed or kept.
    """
    held = tuple(units)
    return JointCardsPaper(
        head=head,
        cards=tuple(
            card for unit in held for card in (*_fronts(unit, head, drawn), *_backs(unit, head, drawn))
        ),
        others=tuple(card for unit in held for card in _others(unit, head.unit, drawn)),
        cautions=(
            *joint_cautions({kind for unit in held for kind in joint_kinds(unit)}),
            *(said for unit in held for said in too_few_to_keep(unit, head.unit)),
        ),
        strips=tuple(strip for unit in held for strip in _strips(unit, head.unit)) if drawn else (),
        gauges=tuple(line for unit in held for line in gauge_lines(unit, head.unit)),
    )


def _strips(unit: Construction, shown: LengthUnit) -> Iterator[KeptStrip]:
    """The templates of a unit, for each joint, for the pulls, and the story stick of its dividers."""
    held = [drawer for drawer in unit.drawers if drawer.joints.half_blind]
    for drawers in drawers_alike(held, lambda drawer: _marked_on(half_blind_of(drawer))):
        yield from joint_strips(half_blind_of(drawers[0]), "Half-blind dovetail, front", drawers, shown)
    for joint, drawers in through_alike(unit.drawers):
        yield from joint_strips(joint, "Through dovetail, back", drawers, shown)
    for placed in other_joints(unit):
        for strip in placed.joint.shape.strips:
            yield kept(strip, placed.title, placed.cut_on(strip.board), shown)
    yield from boring_strips(unit, shown)
    yield from story_sticks(unit)


def _others(unit: Construction, shown: LengthUnit, drawn: bool) -> Iterator[SettingsCard]:
    """One card for each joint of the case, and for each kind of drawer bottom."""
    code = unit.spec.code
    for placed in other_joints(unit):
        yield settings_card(
            placed.kind,
            placed.joint,
            placed.title,
            shown,
            placed.serves,
            unit_code=code,
            name=f"{code}-{placed.key}",
            advice=placed.advice,
            with_cautions=False,
            drawn=drawn,
        )


def _marked_on(joint: HalfBlindJoint) -> object:
    """What decides the templates of a front joint: sides of other thicknesses share them."""
    return (
        joint.layout,
        joint.gauge_1,
        joint.gauge_2,
        joint.given.front_excess,
        joint.given.groove,
        joint.lap,
    )


def _fronts(unit: Construction, head: PaperHead, drawn: bool) -> Iterator[JointCard]:
    """One card for each layout of a front joint, and for each setting of the second gauge."""
    for number, each in enumerate(front_sets(unit.drawers)):
        name = f"{each.codes[0]}-front-{number}"
        drawing = half_blind_drawing(each.joint, each.drawn, head.unit, name).svg() if drawn else ""
        walk = card_walk(each.joint.layout, name, head.unit) if drawn else ""
        yield _front_card(unit.spec.code, each, (drawing, walk), head.unit)


def _front_card(unit_code: str, held: FrontSet, drawn: tuple[str, str], unit: LengthUnit) -> JointCard:
    drawing, walk = drawn
    joint = held.joint
    given, layout = joint.given, joint.layout
    rabbeted = given.rabbet > 0
    after = "left of the side after the rabbet" if rabbeted else "thickness of the side"
    sizes = list(_laps(held))
    if rabbeted:
        sizes.append(_rabbet(joint, unit))
    if given.groove:
        groove = (given.groove.height, given.groove.width, given.groove.depth)
        sizes.append(SizeRow(name="Groove, up × wide × deep", values_in=groove, note="from the bottom edge"))
    if given.front_excess > 0:
        top = (joint.top_half_pin_on_front,)
        sizes.append(SizeRow(name="Top half pin on the front", values_in=top, note="the front is higher"))
    *other_wrong, wrong = wrong_of(held) or (None,)
    return JointCard(
        title="Half-blind dovetail, drawer front",
        kind="half-blind",
        unit_code=unit_code,
        drawers=held.codes,
        parts=(*(f"{each.code}-{each.sizes.joined}" for each in held.drawers), *held.sides),
        gauges=(
            GaugeFigure(
                name="Gauge 1",
                value_in=joint.gauge_1,
                note="depth of the sockets, from the inside face of the front; baseline on the sides"
                + ("; width of the rabbet" if rabbeted else ""),
            ),
            GaugeFigure(
                name="Gauge 2",
                value_in=joint.gauge_2,
                wrong_in=wrong,
                also_wrong_in=tuple(size for size in other_wrong if size is not None),
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
        advice=tuple(in_unit(line, unit) for line in held.advice),
        warned=warned_of(held.findings, unit),
        drawing=drawing,
        ticks=tuple(written_in(line.word, unit) for line in before_marking()),
        walk_drawing=walk,
    )


def _rabbet(joint: HalfBlindJoint, unit: LengthUnit) -> SizeRow:
    """The rabbet as it is cut; where it was measured, what it came out at in the side that is drawn."""
    drawn, seen, note = joint.given.rabbet, joint.rabbet_seen, "inside of the side"
    if abs(drawn - seen) > TOLERANCE:
        group = joint.gauge_groups[0]
        words = say("as measured at {}; drawn {:bare} deep", group.marks[group.worst], drawn)
        note = in_unit(words, unit)
    return SizeRow(name="Rabbet, wide × deep", values_in=(joint.rabbet_width, seen), note=note)


def _laps(held: FrontSet) -> Iterator[SizeRow]:
    """The lap; where fronts were planed to other thicknesses each lap says whose it is."""
    if len(held.laps) == 1:
        [only] = held.laps
        yield SizeRow(name="Lap", values_in=(only.lap,), note=f"index {only.index:.1f}")
        return
    for lap in held.laps:
        note = f"{', '.join(lap.drawers)}; index {lap.index:.1f}"
        yield SizeRow(name="Lap", values_in=(lap.lap,), note=note, of=lap.drawers)


def _backs(unit: Construction, head: PaperHead, drawn: bool) -> Iterator[JointCard]:
    for joint, drawers in through_alike(unit.drawers):
        codes = tuple(drawer.code for drawer in drawers)
        name = f"{codes[0]}-back"
        drawing = through_drawing(joint, codes, head.unit, name).svg() if drawn else ""
        walk = card_walk(joint.layout, name, head.unit) if drawn else ""
        parts = tuple(f"{each.code}-{part}" for each in drawers for part in (*each.sizes.backs, "SL", "SR"))
        yield _back_card(unit.spec.code, joint, codes, parts, (drawing, walk), head.unit)


def _back_card(
    unit_code: str,
    joint: ThroughJoint,
    codes: tuple[str, ...],
    parts: tuple[str, ...],
    drawn: tuple[str, str],
    unit: LengthUnit,
) -> JointCard:
    drawing, walk = drawn
    layout, offset = joint.layout, joint.lower_edge_offset
    sizes = [SizeRow(name="Back above the side's edge", values_in=(offset,), note="lower edge to lower edge")]
    return JointCard(
        title="Through dovetail, drawer back",
        kind="through",
        unit_code=unit_code,
        drawers=codes,
        parts=parts,
        gauges=(
            GaugeFigure(
                name="Gauge for the side",
                value_in=joint.gauge_side,
                note="baseline of the tails, from the end",
            ),
            *(
                GaugeFigure(
                    name=f"{FOR_BACK}, {end}" if end else FOR_BACK,
                    value_in=setting,
                    wrong_in=joint.wrong_gauge_back,
                    note=f"baseline of the pins, on both faces, from {f'the {end}' if end else 'the'} end",
                )
                for end, setting in joint.back_ends
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
        advice=tuple(in_unit(line, unit) for line in joint.advice),
        warned=warned_of(joint.findings, unit),
        drawing=drawing,
        walk_drawing=walk,
    )


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
