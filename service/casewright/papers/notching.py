"""Templates of notched drawers: a back before under-mount slides, and a bottom that goes around pipes."""

from collections.abc import Iterator

from casewright.joinery.solid import Marked, Outline, Strip, Stroke, round_outline
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer

TITLE = "Slides, notches of the back"
AROUND_PIPES = "Notch around pipes, cut-out of the bottom"
BESIDE = 1.5
"""How far a template reaches past what is cut, to be laid on (common practice) [in]."""


def notch_height(drawer: Drawer) -> Inches:
    """How high the notches for under-mount slides are cut into the back of a drawer.

    Rule: what the slide asks for above the lower edges of the sides, less what the back stands above those

    Args:
        drawer: the drawer

    Returns:
        From the lower edge of the back; 0 where the bottom passes under it, and none is needed [in]

    Source: geometry of the box; the maker's sheet governs.
    """
    slides = drawer.run.slides
    if slides is None or not slides.model.is_under:
        return 0.0
    return max(0.0, slides.model.notch_height - drawer.sizes.back_foot)


def notch_strips(unit: Construction) -> Iterator[tuple[Strip, tuple[str, ...]]]:
    """The templates of all backs before under-mount slides.

    Args:
        unit: the unit, worked out

    Yields:
        For each different back a strip, turned over for its right end, and the parts that it serves.
    """
    groups: dict[tuple[object, ...], list[Drawer]] = {}
    for drawer in unit.drawers:
        slides = drawer.run.slides
        if slides is not None and slides.model.is_under:
            key = (slides.model.name, *(round(each, 6) for each in _places(drawer)))
            groups.setdefault(key, []).append(drawer)
    for drawers in groups.values():
        strip = _strip(unit, drawers[0])
        if strip.waste:
            yield strip, tuple(f"{drawer.code}-{mark}" for drawer in drawers for mark in drawer.sizes.backs)


def _places(drawer: Drawer) -> tuple[Inches, Inches, Inches]:
    """From the end of the back to the inside face of a side, the back's height, its notches' height."""
    sizes = drawer.sizes
    return (sizes.back_length - sizes.inside.width) / 2, sizes.back_height, notch_height(drawer)


def _shortest(drawer: Drawer) -> Inches:
    """The length of its back, or of the shorter one beside a notch."""
    notch = drawer.sizes.notch
    return min(notch.left_back, notch.right_back) if notch else drawer.sizes.back_length


def _strip(unit: Construction, drawer: Drawer) -> Strip:
    inset, height, cut = _places(drawer)
    slides = drawer.run.slides
    if slides is None:
        raise ValueError(f"{drawer.code} runs on no slides")
    model, waste = slides.model, list[Outline]()
    lines = [Marked(stroke=Stroke.GAUGE, start=(inset, 0.0), end=(inset, height), label="inside of the side")]
    right = inset + model.notch_width
    if cut and model.notch_width:
        waste.append(((inset, 0.0), (right, 0.0), (right, cut), (inset, cut)))
        lines.append(Marked(stroke=Stroke.SAW, start=(right, 0.0), end=(right, cut)))
        lines.append(
            Marked(stroke=Stroke.STOP, start=(inset, cut), end=(right, cut), label=say("notch, {} high", cut))
        )
    # Hooks are placed from the underside of the bottom, which lies in its groove above the sides' edges.
    up = unit.spec.drawers.groove.height + model.pin_up - drawer.sizes.back_foot
    if model.pin_hole and up > model.pin_hole / 2:
        across = inset + model.pin_in
        waste.append(round_outline((across, up), model.pin_hole))
        lines.append(
            Marked(
                stroke=Stroke.GAUGE,
                start=(across, 0.0),
                end=(across, height),
                label=say("hook, hole {}", model.pin_hole),
            )
        )
        lines.append(Marked(stroke=Stroke.STOP, start=(inset, up), end=(right, up)))
    return Strip(
        board="back",
        face="rear face",
        length=min(_shortest(drawer), right + BESIDE),
        height=height,
        lines=tuple(lines),
        waste=tuple(waste),
    )


def cut_out_strips(unit: Construction) -> Iterator[tuple[Strip, tuple[str, ...]]]:
    """The templates of all bottoms that are cut out around pipes.

    Args:
        unit: the unit, worked out

    Yields:
        For each different cut-out a strip of the underside along the rear edge, and the parts that it serves.

    Source: geometry of the bottom; the boards around the notch are measured before it is sawn.
    """
    groups: dict[tuple[object, ...], list[Drawer]] = {}
    for drawer in unit.drawers:
        cut, bottom = drawer.bottom.cut_out, drawer.bottom
        if cut is not None:
            sizes = (cut.along, cut.length, cut.depth, bottom.across, bottom.deep)
            groups.setdefault(tuple(round(size, 6) for size in sizes), []).append(drawer)
    for drawers in groups.values():
        yield _of_bottom(drawers[0]), tuple(f"{drawer.code}-N" for drawer in drawers)


def _of_bottom(drawer: Drawer) -> Strip:
    cut, bottom = drawer.bottom.cut_out, drawer.bottom
    if cut is None:
        raise ValueError(f"{drawer.code} has no cut-out")
    left, right, deep = cut.along, cut.along + cut.length, cut.depth
    return Strip(
        board="bottom",
        face="underside",
        left="left end",
        foot="rear edge",
        length=min(bottom.across, right + BESIDE),
        height=min(bottom.deep, deep + BESIDE),
        lines=(
            Marked(stroke=Stroke.SAW, start=(left, 0.0), end=(left, deep), label="cut-out"),
            Marked(stroke=Stroke.SAW, start=(right, 0.0), end=(right, deep)),
            Marked(stroke=Stroke.STOP, start=(left, deep), end=(right, deep)),
        ),
        waste=(((left, 0.0), (right, 0.0), (right, deep), (left, deep)),),
        is_handed=False,
    )
