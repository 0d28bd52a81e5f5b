"""The parts of a frame with its panels, put in their place."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.panels.frame import PanelFrame
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse


@dataclass(frozen=True, slots=True, kw_only=True)
class FramePlace:
    """Where a frame stands, and what its parts are called.

    Attributes:
        code: the code of the whole frame, such as `A-C-SL`; its parts have theirs behind it: `-S1` and `-S2`
            the stiles, `-R1` … the rails from the top, `-M1` … the muntins, `-P1` … the panels
        line: the letters before the number of each line of the cut list: 1 stiles, 2 rails, 3 muntins, 4
            panels
        name: what it is in a maker's words, such as `Side`: its parts are `Side stile` …
        x: its left edge, from the outside of the left case side [in]
        y: its front, from the front edge of the case [in]
        z: its foot, above the floor [in]
        is_side: whether its width runs front to back; else it runs side to side
        shows_first: whether the outer, shown face is the left one of a side, or the front one else
        face: what is seen of it
        use: which waste it is bought with
    """

    code: str
    line: str
    name: str
    x: Inches
    y: Inches
    z: Inches
    is_side: bool
    shows_first: bool = True
    face: FaceClass = FaceClass.SHOW
    use: PartUse = PartUse.CASE


def frame_parts(frame: PanelFrame, place: FramePlace) -> Iterator[Part]:
    """Stiles, rails, muntins and panels of one frame in its place.

    Args:
        frame: the frame, sized
        place: where it stands

    Yields:
        The parts, the stiles first.

    Source: geometry of the frame.
    """
    asked, how = frame.asked, frame.asked.how
    joined = {"thickness": asked.thickness, **timber(asked.timber)}
    tenon = say("frame tenon, {:fraction} long", frame.tenon)
    stub = say("stub tenon in the groove, {:fraction} long", frame.stub)
    level = Grain.BACK if place.is_side else Grain.ACROSS
    for number, start in ((1, 0.0), (2, asked.width - how.stile)):
        yield _part(
            place,
            f"S{number}",
            1,
            "stile",
            length=asked.height,
            width=how.stile,
            grain=Grain.UPRIGHT,
            ends=("mortise for the bottom rail", "mortise for the top rail"),
            box=_box(frame, place, start, 0.0, how.stile, asked.height),
            **joined,
        )
    over = frame.rail_length
    feet = tuple(_feet(frame))
    for number, (rail, foot) in enumerate(zip(frame.rails, feet, strict=True), start=1):
        yield _part(
            place,
            f"R{number}",
            2,
            f"{_which(number, len(frame.rails))} rail",
            length=over,
            width=rail,
            grain=level,
            ends=(tenon, tenon),
            box=_box(frame, place, how.stile - frame.tenon, foot, over, rail),
            **joined,
        )
    yield from _between(frame, place, feet, joined, (stub, stub))


def _between(
    frame: PanelFrame, place: FramePlace, feet: tuple[Inches, ...], joined: dict[str, Any], stubs: Any
) -> Iterator[Part]:
    """What lies between the rails: muntins and panels, row by row from the top."""
    asked, how = frame.asked, frame.asked.how
    reach = (frame.panel_width - frame.clear_width) / 2
    up = (frame.panel_height - frame.clear_height) / 2
    material = {"wood": str(frame.sheet), "cut": Cut.FLAT, "sheet": True} if frame.sheet else None
    muntin = panel = 0
    for foot, rail in zip(feet[1:], frame.rails[1:], strict=True):
        low = foot + rail
        for column in range(frame.muntins + 1):
            start = how.stile + column * (frame.clear_width + frame.muntin)
            if column:
                muntin += 1
                length = frame.muntin_length
                yield _part(
                    place,
                    f"M{muntin}",
                    3,
                    "muntin",
                    length=length,
                    width=frame.muntin,
                    grain=Grain.UPRIGHT,
                    ends=stubs,
                    box=_box(frame, place, start - frame.muntin, low - frame.stub, frame.muntin, length),
                    **joined,
                )
            panel += 1
            yield _part(
                place,
                f"P{panel}",
                4,
                "panel",
                thickness=frame.panel_thickness,
                length=frame.panel_height,
                width=frame.panel_width,
                grain=Grain.UPRIGHT,
                ends=("loose in the groove",) * 2,
                box=_box(frame, place, start - reach, low - up, frame.panel_width, frame.panel_height, True),
                **(material or timber(asked.panel)),
            )


def _feet(frame: PanelFrame) -> Iterator[Inches]:
    """The lower edge of each rail above the foot of the frame, from the top down."""
    at = frame.asked.height
    for rail in frame.rails:
        yield at - rail
        at -= rail + frame.clear_height


def _which(number: int, rails: int) -> str:
    return "top" if number == 1 else "bottom" if number == rails else "middle"


def _part(place: FramePlace, mark: str, line: int, name: str, **sizes: Any) -> Part:
    return new_part(
        code=f"{place.code}-{mark}",
        line=f"{place.line}{line}",
        name=f"{place.name} {name}",
        face=place.face,
        use=place.use,
        **sizes,
    )


def _box(
    frame: PanelFrame,
    place: FramePlace,
    start: Inches,
    foot: Inches,
    width: Inches,
    height: Inches,
    is_panel: bool = False,
) -> Box:
    """Where a member sits: so far along the frame and so far above its foot."""
    thick = frame.panel_thickness if is_panel else frame.asked.thickness
    # From the shown face; where that is the far one, the recess comes first.
    outer = frame.asked.thickness - frame.recess - thick if is_panel else 0.0
    deep = outer if place.shows_first or not is_panel else frame.recess
    if place.is_side:
        return Box(place.x + deep, place.y + start, place.z + foot, thick, width, height)
    return Box(place.x + start, place.y + deep, place.z + foot, width, thick, height)
