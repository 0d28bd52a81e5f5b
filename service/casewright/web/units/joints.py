"""The dovetails of a unit's drawers: settings, positions, drawings and checks, each layout once."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, ClassVar, cast

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.tail_joints import half_blind_drawing, through_drawing
from casewright.joinery.choose import Choice
from casewright.joinery.joint import Joint
from casewright.joinery.layout import Tail
from casewright.measure.ledger import Ledger
from casewright.papers.gauge_sheet import RULE, gauge_lines, gauge_sheet_data, too_few_to_keep
from casewright.papers.joint_settings import chosen_text, setting_text
from casewright.papers.writing import Writing, aside
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.gauges_to_set import wrong_of
from casewright.pieces.drawers.alike import through_alike
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.front_sets import FrontSet, front_sets
from casewright.pieces.drawers.front_words import of_the_box
from casewright.pieces.drawers.layouts import DrawerEnd
from casewright.web.frame.pages import Page, drawing, show
from casewright.web.frame.typed import Typed
from casewright.web.frame.visits import Office
from casewright.web.units.divider_card import DividerCard, asked_of, card_id, divider_card
from casewright.web.units.findings import Checks, checks_of
from casewright.web.units.layouts_shown import layouts_address
from casewright.web.units.result import Shown, named, shown_size
from casewright.web.units.worked import UnitHead, see_built_unit

router = APIRouter()
FIGURES = {
    "dividers": "divider_setting",
    "correction": "divider_correction",
    "front_half_pin": "top_half_pin",
    "rabbet_width": "gauge_1",
}
"""The figures behind settings that go by another name there."""
OF_THE_LAP = ("lap", "side_shortening")
"""The settings that follow the thickness of a front, drawer by drawer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingShown:
    """One number to set at the bench."""

    name: str
    label: str
    value: Shown
    wrong: tuple[str, ...]
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TailShown:
    """One tail by its four corners."""

    number: int
    corners: tuple[Shown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JointShown:
    """One joint, with all that it serves."""

    id: str
    title: str
    serves: tuple[str, ...]
    parts: tuple[str, ...]
    settings: tuple[SettingShown, ...]
    wrong: str
    tails: tuple[TailShown, ...]
    measured_from: str
    drawing: Markup
    checks: Checks
    advice: tuple[str, ...] = ()
    choices: str = ""
    layouts: tuple[tuple[str, str], ...] = ()
    card: DividerCard | None = None
    tools: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class JointsPage(Page):
    """The joints of a unit."""

    template: ClassVar[str] = "units/joints.html"
    head: UnitHead
    address: str
    unit: str
    gauges: Sequence[Mapping[str, Any]]
    gauges_rule: str
    gauges_again: tuple[str, ...]
    """In which order gauges and dividers are used again, where the rack holds too few."""
    joints: tuple[JointShown, ...]
    others: str
    chosen: tuple[tuple[str, str, str], ...]


@router.get("/units/{unit_id}/joints")
def show_joints(visit: Office, unit_id: str) -> Response:
    """The dovetails of a unit's drawers, ready to be set out."""
    seen = see_built_unit(visit, unit_id)
    unit, writing, asked = seen.built, seen.writing, asked_of(visit.request)
    page = JointsPage(
        title=f"Joints of unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        address=f"{seen.head.address}/joints",
        unit=writing.unit.value,
        gauges=gauge_sheet_data(gauge_lines(unit, writing.unit), writing),
        gauges_rule=RULE.format(writing.size(1 / 64)),
        gauges_again=tuple(too_few_to_keep(unit, writing.unit)),
        joints=(
            *_fronts(unit, writing, seen.head.address, asked),
            *_backs(unit, writing, seen.head.address, asked),
        ),
        others=f"{seen.head.address}/joints/case",
        chosen=tuple(
            (each.name.replace("_", " "), chosen_text(each, writing), aside(writing.said(each.why)))
            for each in unit.chosen
        ),
    )
    return show(visit, page)


def _fronts(unit: Construction, writing: Writing, address: str, asked: Typed) -> Iterator[JointShown]:
    """One for each layout and setting of gauge 2, as the cards are printed."""
    shown: set[str] = set()
    own = unit.spec.drawers.has_box_front
    for each in front_sets(unit.drawers):
        joint, drawers, codes = each.joint, list(each.drawers), list(each.codes)
        code = next((held.sizes.code for held in drawers if held.sizes.code not in shown), "")
        shown.add(code)
        name = f"{drawers[0].sizes.code}.front_joint"
        place = card_id(code or drawers[0].sizes.code, DrawerEnd.FRONT) + ("" if code else "-again")
        settings = settings_shown(joint, writing, unit.ledger, name)
        yield JointShown(
            id=place,
            title=f"{'Box’s front' if own else 'Front'}, half-blind dovetail",
            serves=tuple(codes),
            parts=(*(f"{drawer}-F" for drawer in codes), *each.sides),
            settings=tuple(of_the_set(each, settings, writing)),
            wrong=writing.said(joint.wrong_gauge_text),
            tails=tails_shown(joint.layout.tails, writing, name),
            measured_from="the bottom edge of the side",
            drawing=drawing(half_blind_drawing(joint, each.drawn, writing.unit, f"{place}-drawn").svg()),
            checks=checks_of(tuple(of_the_box(unit.spec.drawers, each.findings)), writing.unit),
            advice=tuple(writing.said(line) for line in each.advice),
            choices=_choices(drawers[0].joints.front_choices),
            layouts=_layouts(drawers, DrawerEnd.FRONT, address),
            card=divider_card(joint.layout, place, ", ".join(codes), writing, asked) if code else None,
        )


def of_the_set(
    held: FrontSet, settings: tuple[SettingShown, ...], writing: Writing
) -> Iterator[SettingShown]:
    """The settings of a set of fronts: all that is struck out, and each lap with the drawers that have it.

    Args:
        held: the set
        settings: the settings of its joint
        writing: how sizes are written

    Yields:
        The settings; of laps that differ one for each.
    """
    for one in settings:
        if one.name in OF_THE_LAP and len(held.laps) > 1:
            for lap in held.laps:
                value = shown_size(lap.lap, writing)
                yield replace(one, value=value, note=f"{', '.join(lap.drawers)}; {one.note}")
        elif one.wrong:
            yield replace(one, wrong=tuple(writing.size(size) for size in wrong_of(held)))
        else:
            yield one


def _backs(unit: Construction, writing: Writing, address: str, asked: Typed) -> Iterator[JointShown]:
    for joint, drawers in through_alike(unit.drawers):
        codes, name = [each.code for each in drawers], f"{drawers[0].sizes.code}.back_joint"
        raised = joint.lower_edge_offset > 0
        yield JointShown(
            id=card_id(drawers[0].sizes.code, DrawerEnd.BACK),
            title="Back, through dovetail",
            serves=tuple(codes),
            parts=_served(unit, codes, "back"),
            settings=settings_shown(joint, writing, unit.ledger, name),
            wrong=writing.said(joint.wrong_gauge_text),
            tails=tails_shown(joint.side_tails, writing, "" if raised else name),
            measured_from="the bottom edge of the side",
            drawing=drawing(through_drawing(joint, tuple(codes), writing.unit, f"{codes[0]}-back").svg()),
            checks=checks_of(joint.findings, writing.unit),
            advice=tuple(writing.said(line) for line in joint.advice),
            choices=_choices(drawers[0].joints.back_choices),
            layouts=_layouts(drawers, DrawerEnd.BACK, address),
            card=divider_card(
                joint.layout,
                card_id(drawers[0].sizes.code, DrawerEnd.BACK),
                ", ".join(codes),
                writing,
                asked,
            ),
        )


def _served(unit: Construction, codes: list[str], end: str) -> tuple[str, ...]:
    """The parts on whose ends the joint is cut: the sides, and the front or the back."""
    front = "box front" if unit.spec.drawers.has_box_front else "front"
    names = tuple(f"Drawer {name}" for name in ("side", front if end == "front" else end))
    return tuple(
        part.code
        for part in unit.parts
        if part.code.rpartition("-")[0] in codes and part.name.startswith(names)
    )


def settings_shown(joint: Joint, writing: Writing, ledger: Ledger, name: str) -> tuple[SettingShown, ...]:
    """The settings of a joint, each with the figure behind it.

    Args:
        joint: the joint, worked out
        writing: how sizes are written
        ledger: the working of the unit
        name: where that of the joint lies in it

    Returns:
        The settings, in the order of work.
    """
    worked = cast(Joint | None, ledger.result(name))
    figures = {each.name: each.value for each in worked.settings} if worked else {}
    return tuple(
        SettingShown(
            name=each.name,
            label=writing.said(each.label),
            value=Shown(
                text=setting_text(each, writing),
                figure=named(_same(each.value, figures.get(each.name))) or _figure(ledger, name, each.name),
            ),
            wrong=() if each.wrong is None else (writing.size(each.wrong),),
            note=writing.said(each.note),
        )
        for each in joint.settings
    )


def _same(value: float, figure: float | None) -> float:
    """The figure where it is the same number, and else the number."""
    return value if figure is None or figure != value else figure


def _figure(ledger: Ledger, name: str, setting: str) -> str:
    """The figure behind a setting: of this joint, or of what all drawers share."""
    shared = f"drawers.{name.rpartition('.')[2]}"
    tried = [f"{where}.{FIGURES.get(setting, setting)}" for where in (name, shared)]
    return next((each for each in tried if each in ledger), "")


def tails_shown(tails: tuple[Tail, ...], writing: Writing, name: str) -> tuple[TailShown, ...]:
    """The corners of each tail.

    Args:
        tails: from the reference edge
        writing: how sizes are written
        name: where the working of the joint lies in the ledger; empty where theirs is not kept

    Returns:
        The tails, numbered.
    """
    return tuple(
        TailShown(
            number=number,
            corners=tuple(
                shown_size(getattr(tail, corner), writing, f"{name}.tail_{number}_{corner}" if name else "")
                for corner in ("lower_end", "upper_end", "lower_base", "upper_base")
            ),
        )
        for number, tail in enumerate(tails, start=1)
    )


def _choices(choices: tuple[Choice, ...]) -> str:
    """The ranking of tail counts, best first; empty where the maker chose."""
    return ", ".join(f"{each.count} ({each.score:.1f})" for each in choices[:3])


def _layouts(drawers: list[Drawer], end: DrawerEnd, address: str) -> tuple[tuple[str, str], ...]:
    """Where the layouts of the rows that have the joint are chosen: address and words."""
    rows = dict.fromkeys(each.sizes.opening.row_mark for each in drawers)
    return tuple((layouts_address(address, row, end), f"row {row}") for row in rows)
