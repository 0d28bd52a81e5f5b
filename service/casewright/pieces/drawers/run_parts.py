"""What belongs to the case for each drawer that does not run on frames: battens, guides, packing, slides."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import ceil

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.running_spec import CentreGuide, SideHung
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.running import BUTTON
from casewright.pieces.layout.fitted import HardwareItem, SmallPart
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.wood.waste import PartUse

STOPS_PER_DRAWER = 2
SQUARE_FOOT = 144.0
STOP = (1 / 4, 3 / 4, 1.5)
"""A stop block: thickness, width and length (common practice) [in]."""
TURN_BUTTON = (BUTTON, 1.0, 2.5)
PIN = (3 / 8, 3 / 8, 2.0)
SLIDE_PACKING = 2.0
"""Height of the packing that carries a slide between legs (common practice) [in]."""
SOLID = "fixed at the front, slotted at the rear: the side moves past it"


def inset(parts: Iterable[Part], back: Inches) -> Iterable[Part]:
    """The parts of a drawer that stands behind the face of the rails.

    Args:
        parts: where they sit when its front is flush
        back: how far it stands behind [in]

    Returns:
        The parts, moved back.

    Source: geometry.
    """
    if not back:
        return parts
    return (replace(part, box=replace(part.box, y=part.box.y + back)) for part in parts)


def run_parts(spec: UnitSpec, face: Face, drawers: Iterable[Drawer]) -> Iterator[Part]:
    """Battens, centre guides and packing of the case, one drawer after the other.

    Args:
        spec: what the maker chose
        face: the openings
        drawers: the drawers

    Returns:
        The parts; none where drawers run on runners alone.

    Source: common practice.
    """
    running = spec.drawers.running
    for drawer in drawers:
        if isinstance(running, SideHung):
            yield from _battens(spec, face, drawer, running)
        elif isinstance(running, CentreGuide):
            yield from _guide(spec, face, drawer, running)
        elif drawer.run.slides is not None and spec.legs:
            low = face.base_height + drawer.sizes.opening.bottom
            yield from _packing(spec, drawer, low, SLIDE_PACKING)


def _battens(spec: UnitSpec, face: Face, drawer: Drawer, running: SideHung) -> Iterator[Part]:
    opening, groove = drawer.sizes.opening, drawer.run.groove
    if groove is None:
        return
    z = face.base_height + opening.bottom + groove.batten
    right = opening.left + opening.width - running.projection
    ends: Words = "butt, against the rail" if spec.legs else SOLID
    for mark, x in (("L", opening.left), ("R", right)):
        yield new_part(
            code=f"{spec.code}-H-{opening.code}-{mark}",
            line="H1",
            name="Batten",
            wood=spec.woods.drawers.wood,
            cut=spec.woods.drawers.cut,
            thickness=running.projection,
            width=running.batten,
            length=opening.depth,
            face=FaceClass.INSIDE,
            grain=Grain.BACK,
            use=PartUse.INSIDE,
            ends=(ends, ends),
            box=Box(x, 0.0, z, running.projection, opening.depth, running.batten),
        )
    if spec.legs:
        yield from _packing(spec, drawer, z, running.batten)


def _packing(spec: UnitSpec, drawer: Drawer, z: Inches, height: Inches) -> Iterator[Part]:
    """Between the legs, flush with them: what battens or slides are screwed to."""
    legs, opening = spec.legs, drawer.sizes.opening
    thick = 0.0 if legs is None else legs.leg - legs.setback - legs.apron
    if legs is None or thick <= 0:
        return
    between = spec.body.depth - 2 * legs.leg
    for mark, x in (("L", opening.left - thick), ("R", opening.left + opening.width)):
        yield new_part(
            code=f"{spec.code}-H-{opening.code}-P{mark}",
            line="H2",
            name="Packing",
            wood=spec.woods.inside.wood,
            cut=spec.woods.inside.cut,
            thickness=thick,
            width=height,
            length=between,
            face=FaceClass.INSIDE,
            grain=Grain.BACK,
            use=PartUse.INSIDE,
            ends=("butt, between the legs",) * 2,
            box=Box(x, legs.leg, z, thick, between, height),
        )


def _guide(spec: UnitSpec, face: Face, drawer: Drawer, running: CentreGuide) -> Iterator[Part]:
    opening, guide = drawer.sizes.opening, drawer.run.guide
    if guide is None:
        return
    start = opening.depth - guide.length
    yield new_part(
        code=f"{spec.code}-H-{opening.code}-G",
        line="H3",
        name="Centre guide",
        wood=spec.woods.inside.wood,
        cut=spec.woods.inside.cut,
        thickness=guide.height,
        width=running.guide_width,
        length=guide.length,
        face=FaceClass.INSIDE,
        grain=Grain.BACK,
        use=PartUse.INSIDE,
        ends=("at the stop line, screwed to the front rail", "screwed to the back rail, slotted"),
        box=Box(
            opening.left + (opening.width - running.guide_width) / 2,
            start,
            face.base_height + opening.bottom,
            running.guide_width,
            guide.length,
            guide.height,
        ),
    )


def run_small_parts(spec: UnitSpec, drawers: tuple[Drawer, ...]) -> Iterator[SmallPart]:
    """What is cut from offcuts for running: stops, outstops, and shoes that ride on a centre guide.

    Args:
        spec: what the maker chose
        drawers: the drawers

    Returns:
        The small parts of one unit.

    Source: common practice.
    """
    stopped = [drawer for drawer in drawers if drawer.run.stop is not None]
    if stopped:
        line = stopped[0].run.stop or 0.0
        yield SmallPart(
            name="Drawer stop",
            quantity=len(stopped) * STOPS_PER_DRAWER,
            size=_size(*STOP),
            note=say("stop line {:fraction} behind the face of the rail", line),
        )
    caught = [drawer for drawer in drawers if drawer.run.outstop is not None]
    if caught:
        is_pin = spec.drawers.stops.outstop == "pin"
        lines = sorted({round(drawer.run.outstop or 0.0, 6) for drawer in caught})
        yield SmallPart(
            name="Outstop pin" if is_pin else "Turn-button",
            quantity=len(caught),
            size=_size(*(PIN if is_pin else TURN_BUTTON)),
            note=say(
                "in the kicker, {:fraction} behind the face of the rail"
                if is_pin
                else "inside the back; its catch in the kicker {:fraction} behind the face of the rail",
                lines[0],
            ),
        )
    shoes = [drawer for drawer in drawers if drawer.run.guide is not None and drawer.sizes.back_foot > 0]
    if shoes and shoes[0].run.guide is not None:
        guide = shoes[0].run.guide
        yield SmallPart(
            name="Guide shoe",
            quantity=len(shoes),
            size=_size(guide.room, 1.0, guide.notch + 2.0),
            note=say("under the back, notched {:fraction} wide to ride on the guide", guide.notch),
        )


def _size(thickness: Inches, width: Inches, length: Inches) -> Words:
    return say("{:bare} × {:bare} × {:fraction}", thickness, width, length)


def run_hardware(spec: UnitSpec, drawers: tuple[Drawer, ...]) -> Iterator[HardwareItem]:
    """The slides to be bought, in pairs, the lining by whole square feet, and an interlock's catches.

    Args:
        spec: what the maker chose
        drawers: the drawers

    Returns:
        One item for each model of slide, its note says how many of each length; what else was chosen.

    Source: common practice.
    """
    found: dict[str, dict[tuple[str, Inches], int]] = {}
    for drawer in drawers:
        slides = drawer.run.slides
        if slides is not None:
            held = found.setdefault(slides.model.item, {})
            key = (slides.model.name, slides.length)
            held[key] = held.get(key, 0) + 1
    for item, lengths in found.items():
        said = "; ".join(
            say("{:d} × {} {}", count, long, name).__str__() for (name, long), count in lengths.items()
        )
        yield HardwareItem(item=item, quantity=sum(lengths.values()), note=f"pairs: {said}")
    lined = sum(drawer.run.lined.area for drawer in drawers if drawer.run.lined is not None)
    if lined:
        area = ceil(lined / SQUARE_FOOT)
        yield HardwareItem(item="drawer lining", quantity=area, note="square feet: bottoms and all around")
    if spec.use.locks_one_at_a_time:
        yield HardwareItem(item="drawer interlock", quantity=len(drawers), note="one drawer opens at a time")
