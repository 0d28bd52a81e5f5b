"""The numbers of a drawer that matter at the bench, as they are printed large."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.joint import Joint
from casewright.labour.bench import DrawerProgress
from casewright.measure.lengths import LengthUnit, show_in
from casewright.measure.saying import in_unit, say
from casewright.papers.bench import benches
from casewright.papers.joint_settings import setting_text, wrong_text
from casewright.papers.run_words import run_facts
from casewright.papers.writing import Writing
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.front_sets import half_blind_of

BOX_FRONT = "BF"
"""The mark of a box's own front, behind its show front."""
SAME = 1e-6
"""Two sizes nearer than this are one [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """One number.

    Attributes:
        label: what it is
        value: the number, as text
        wrong: the numbers that are easily taken for it, printed struck out; none where there is no such trap
        note: where it is used; empty where the label says it
    """

    label: str
    value: str
    wrong: tuple[str, ...] = ()
    note: str = ""


def size_text(inches: float, unit: LengthUnit) -> str:
    """A size without its unit, which stands once at the head: 8-13/32, or 213.5."""
    return show_in(inches, unit).removesuffix(f" {unit.value}")


def main_numbers(drawer: Drawer, progress: DrawerProgress, unit: LengthUnit) -> tuple[Number, ...]:
    """The opening, the targets, the gauges, the dividers, and the parts that are cut to length."""
    return (*_targets(drawer, progress, unit), *_joint(drawer, unit), *_parts(drawer, unit))


def _targets(drawer: Drawer, progress: DrawerProgress, unit: LengthUnit) -> Iterator[Number]:
    sizes, opening = drawer.sizes, drawer.sizes.opening
    for name, size in (("height", opening.height), ("width", opening.width)):
        note = "measured" if f"opening.{name}" in progress.measured else "as drawn: measure it"
        yield Number(label=f"Opening, {name}", value=size_text(size, unit), note=note)
    own = "box’s front" if sizes.joined == BOX_FRONT else "front"
    boards = f"{own} and sides" if sizes.front_height == sizes.height else "over all of it"
    yield Number(label="Make it high, H", value=size_text(sizes.height, unit), note=boards)
    across = f"{own} and back" if sizes.front_length == sizes.back_length == sizes.width else "over the sides"
    yield Number(label="Make it wide, W", value=size_text(sizes.width, unit), note=across)
    yield from _front(drawer, unit)


def _front(drawer: Drawer, unit: LengthUnit) -> Iterator[Number]:
    """The front, where it is another size than its drawer, and the boards that are lower or shorter."""
    sizes, face = drawer.sizes, drawer.sizes.face
    if abs(face.height - sizes.height) > SAME or abs(face.width - sizes.width) > SAME:
        size = f"{size_text(face.height, unit)} × {size_text(face.width, unit)}"
        yield Number(label="Front", value=size, note="high × wide, as it is seen")
    if abs(sizes.side_height - sizes.height) > SAME:
        yield Number(label="Sides, height", value=size_text(sizes.side_height, unit), note="on the bottom")


def _joint(drawer: Drawer, unit: LengthUnit) -> Iterator[Number]:
    joint = drawer.joints.half_blind
    if joint is None:
        yield from _large(drawer.joints.front_family, drawer.joints.front, "", unit)
        return
    yield Number(
        label="G1", value=size_text(joint.gauge_1, unit), note="sockets, from the inside face of the front"
    )
    yield from _second_gauge(drawer, unit)
    yield Number(
        label="Dividers d",
        value=size_text(joint.stepping.setting, unit),
        note=_exactly(joint.stepping.setting, unit),
    )
    yield Number(
        label="Overshoot",
        value=size_text(joint.stepping.overshoot, unit),
        note="the last step, past the far half pin: one pin",
    )
    yield Number(
        label="Tails n",
        value=str(joint.layout.count),
        note=f"half pin {size_text(joint.layout.half_pin, unit)}, slope 1:{joint.layout.slope:g}",
    )


def _large(family: str, joint: Joint, before: str, unit: LengthUnit) -> Iterator[Number]:
    """The settings of any joint that a tool is set to, in the order of work."""
    writing, large = Writing(unit=unit), benches()[family].large
    for each in joint.settings:
        if each.name in large:
            yield Number(
                label=f"{before}{in_unit(each.label, unit)}",
                value=setting_text(each, writing),
                wrong=() if each.wrong is None else (wrong_text(each, writing),),
                note=in_unit(each.note, unit),
            )


def _second_gauge(drawer: Drawer, unit: LengthUnit) -> Iterator[Number]:
    """One setting, or one for each side where they differ, each with the full thickness struck out.

    A side that is not measured, or was measured beside its rabbet, has the setting as drawn, and says so.
    """
    joint = half_blind_of(drawer)
    words = {"SL": "left", "SR": "right"}
    sides = {mark: joint.second_gauge_for(f"{drawer.code}-{mark}") for mark in words}
    if len(set(sides.values())) == 1:
        setting, measured = sides["SL"]
        wrong = _struck(joint, [setting]) if measured or joint.gauge_groups else _drawn_wrong(joint)
        note = "from the end of the front"
        yield Number(
            label="G2",
            value=size_text(setting, unit),
            wrong=tuple(size_text(each, unit) for each in wrong),
            note=note if measured else f"{note}; {_as_drawn(drawer, 'SL')}",
        )
        return
    full = dict(joint.given.full_sides)
    for mark, (setting, measured) in sides.items():
        thick = full.get(f"{drawer.code}-{mark}", joint.given.side)
        yield Number(
            label=f"G2, {words[mark]}",
            value=size_text(setting, unit),
            wrong=(size_text(thick, unit),) if thick - setting > SAME else (),
            note=f"{words[mark]} side" if measured else f"{words[mark]} side; {_as_drawn(drawer, mark)}",
        )


def sides_drawn(drawer: Drawer) -> tuple[str, str]:
    """Which side the drawings of the two joints show, where the sides or their settings differ.

    Args:
        drawer: the drawer

    Returns:
        For front and back `, left side` or `, right side`; empty where both sides are alike.
    """
    sizes, front, back = drawer.sizes, drawer.joints.half_blind, drawer.joints.through
    thick = {"left": sizes.left_side, "right": sizes.right_side}
    in_front = at_back = ""
    if front:
        set_to = {
            "left": front.second_gauge_for(f"{drawer.code}-SL")[0],
            "right": front.second_gauge_for(f"{drawer.code}-SR")[0],
        }
        seen = front.side_seen, front.gauge_2
        in_front = _nearest({each: (thick[each], set_to[each]) for each in thick}, seen)
    if back:
        ends = dict(back.given.ends) or thick
        at_back = _nearest({each: (ends[each],) for each in thick}, (back.given.side,))
    return in_front, at_back


def _nearest(sides: Mapping[str, tuple[float, ...]], drawn: tuple[float, ...]) -> str:
    """The side that is nearest to what is drawn; empty where the sides are alike."""
    first, second = sides.values()
    if all(abs(one - other) <= SAME for one, other in zip(first, second, strict=True)):
        return ""
    off = {
        each: sum(abs(one - size) for one, size in zip(sizes, drawn, strict=True))
        for each, sizes in sides.items()
    }
    return f", {min(off, key=off.__getitem__)} side"


def _drawn_wrong(joint: HalfBlindJoint) -> tuple[float, ...]:
    return () if joint.wrong_gauge_2 is None else (joint.wrong_gauge_2,)


def _struck(joint: HalfBlindJoint, settings: list[float]) -> tuple[float, ...]:
    """The full thicknesses of the sides that share a setting."""
    return tuple(wrong for group in joint.gauge_groups if group.setting in settings for wrong in group.wrong)


def _as_drawn(drawer: Drawer, mark: str) -> str:
    """Why a setting is only the drawn one."""
    beside = half_blind_of(drawer).given.sides_beside_rabbet
    if f"{drawer.code}-{mark}" in beside:
        return "as drawn: measure it again, in its rabbet"
    return "as drawn: measure it"


def _parts(drawer: Drawer, unit: LengthUnit) -> Iterator[Number]:
    sizes, bottom = drawer.sizes, drawer.bottom
    pieces = f", {bottom.pieces} pieces" if bottom.pieces > 1 else ""
    yield Number(label="Sides, length", value=size_text(sizes.side_length, unit))
    yield Number(label="Back, height", value=size_text(sizes.back_height, unit))
    yield Number(label="Bottom, across", value=size_text(bottom.across, unit), note=f"side to side{pieces}")
    yield Number(label="Bottom, deep", value=size_text(bottom.deep, unit), note="front to back")


def _exactly(inches: float, unit: LengthUnit) -> str:
    """What stands behind a setting that no rule shows."""
    rounded = size_text(inches, unit).startswith("≈")
    return f"{inches:.3f} by the caliper" if rounded and unit is LengthUnit.INCH else "step it up and down"


def more_numbers(drawer: Drawer, unit: LengthUnit) -> tuple[Number, ...]:
    """What is looked up once: gaps, lap, groove, chisels, the back's gauges, what it runs on, pulls."""
    return (*_more(drawer, unit), *_run(drawer, unit))


def _run(drawer: Drawer, unit: LengthUnit) -> Iterator[Number]:
    for fact in run_facts(drawer):
        value = in_unit(fact.value, unit).removesuffix(f" {unit.value}")
        yield Number(label=fact.label, value=value, note=in_unit(fact.note, unit))


def _more(drawer: Drawer, unit: LengthUnit) -> Iterator[Number]:
    gaps, gap = drawer.sizes.gaps, Writing(unit=unit).gap
    yield Number(
        label="Gap above, now",
        value=gap(gaps.now),
        note=f"{gap(gaps.wettest)} at the wettest, {gap(gaps.driest)} at the driest",
    )
    if front := drawer.joints.half_blind:
        yield from _more_in_front(drawer, front, unit)
    if back := drawer.joints.through:
        yield from _more_at_the_back(back, unit)
    else:
        yield from _large(drawer.joints.back_family, drawer.joints.back, "Back: ", unit)
    if around := drawer.joints.notch:
        yield from _large(around.family, around.rear, "Inner side into short back: ", unit)
        if _set(around.head) != _set(around.rear):
            yield from _large(around.family, around.head, "Inner side into inner back: ", unit)
    if drawer.pulls:
        yield Number(
            label="Pulls, centres",
            value=", ".join(size_text(each, unit) for each in drawer.pulls),
            note="from the left outside of the case",
        )


def _set(joint: Joint) -> list[tuple[str, float]]:
    """What is set for a joint."""
    return [(each.name, each.value) for each in joint.settings]


def _more_in_front(drawer: Drawer, front: HalfBlindJoint, unit: LengthUnit) -> Iterator[Number]:
    sizes = drawer.sizes
    yield Number(label="Lap", value=size_text(front.lap, unit), note=f"index {front.lap_index:.0f}")
    if sizes.rabbet:
        yield Number(
            label="Rabbet",
            value=f"{size_text(front.rabbet_width, unit)} × {size_text(sizes.rabbet, unit)}",
            note="wide × deep, inside of the sides",
        )
    groove = front.given.groove
    if groove:
        yield Number(
            label="Groove",
            value=f"{size_text(groove.height, unit)} up",
            note=f"{size_text(groove.width, unit)} wide, {size_text(groove.depth, unit)} deep",
        )
    yield Number(
        label=say("Dividers for each {:fraction} out", 1 / 64).in_unit(unit),
        value=_fine(front.stepping.correction, unit),
        note="close them when the last step lands long",
    )
    yield from _chisels(front, unit)


def _more_at_the_back(back: ThroughJoint, unit: LengthUnit) -> Iterator[Number]:
    yield Number(
        label="Back: gauge for the side", value=size_text(back.gauge_side, unit), note="from the end"
    )
    for end, setting in back.back_ends:
        yield Number(
            label=f"Back: gauge for the back, {end}" if end else "Back: gauge for the back",
            value=size_text(setting, unit),
            wrong=() if back.wrong_gauge_back is None else (size_text(back.wrong_gauge_back, unit),),
            note=f"both faces, from the {end} end" if end else "both faces, from the end",
        )
    yield Number(
        label="Back: dividers",
        value=size_text(back.stepping.setting, unit),
        note=f"{back.layout.count} tails, overshoot {size_text(back.stepping.overshoot, unit)}",
    )


def _fine(inches: float, unit: LengthUnit) -> str:
    """A correction far below what a rule shows."""
    return say("{:.4 bare}", inches).in_unit(unit)


def _chisels(front: HalfBlindJoint, unit: LengthUnit) -> Iterator[Number]:
    chisels = front.chisels
    if chisels.sockets is not None:
        yield Number(label="Chisel, sockets", value=size_text(chisels.sockets, unit))
    if chisels.between_tails is not None:
        note = "fret saw first" if chisels.fret_saw else ""
        yield Number(label="Chisel, between tails", value=size_text(chisels.between_tails, unit), note=note)
