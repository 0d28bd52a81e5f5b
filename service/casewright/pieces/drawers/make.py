"""What all drawers of a unit share, chosen where the maker left it out."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from casewright.joinery.chisels import Rack
from casewright.joinery.defaults import Usual, chosen_lap, chosen_rabbet
from casewright.joinery.families.box.batch import chosen_batch_finger
from casewright.joinery.families.box.joint import chosen_play
from casewright.joinery.gauges import first_gauge
from casewright.joinery.groove import Groove
from casewright.joinery.joint import Chosen, Measure
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import CockBeaded, Inset, Lipped
from casewright.pieces.asked.drawer_joints import BoxJoint, FrontJoint
from casewright.pieces.asked.drawer_spec import Drawers
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.slide_spec import OwnSlide
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.ends import BOX, HALF_BLIND, THROUGH, End, back_end, front_end, notch_end
from casewright.pieces.drawers.notches import is_notched
from casewright.pieces.drawers.overlays import Cover, covers
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.season import across

SOCKETS_TO_THE_LIP = "The sockets go up to the lip, whose rabbet they are laid out in."


BELOW_ITS_OPENING = 1 / 4
"""A box is lower than its opening by no more than this, in any season (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerMake:
    """What every drawer of the unit shares: chosen where the maker left it out.

    Attributes:
        drawers: what the maker chose
        front: thickness of the board in front that the sides are joined to [in]
        back: thickness of a back [in]
        at_front: how the sides are joined to that board
        at_back: how they are joined to the back
        at_notch: how the inner sides around a notch are joined to inner back and short backs; None where no
            drawer has one
        lap: designed lap of half-blind dovetails; 0 for another joint [in]
        rabbet: designed registration rabbet of theirs [in]
        gauge_1: depth of their sockets; the front for another joint [in]
        front_moves: movement coefficient, in height, of what moves in the opening in front [1 per % moisture]
        side_moves: movement coefficient of a side in height [1 per % moisture]
        covers: by the code of its opening, what a front before the case covers; none for other fronts
        chosen: what was left out, with the reason for each choice
        slide: the metal slide that they run on; None for wood
    """

    drawers: Drawers
    front: float
    back: float
    at_front: End
    at_back: End
    at_notch: End | None
    lap: float
    rabbet: float
    gauge_1: float
    front_moves: float
    side_moves: float
    covers: Mapping[str, Cover]
    chosen: tuple[Chosen, ...]
    slide: OwnSlide | None


def shared_construction(
    spec: UnitSpec, face: Face, shop: Shop, slide: OwnSlide | None, ledger: Ledger
) -> DrawerMake:
    """Fills in what the drawers of a unit share.

    Args:
        spec: what the maker chose
        face: the openings
        shop: the shop's habits and its rack
        slide: the metal slide that they run on; None for wood
        ledger: keeps the working

    Returns:
        The construction that all drawers share.

    Raises:
        CannotBuild: a joint has no room in its boards, or is none for the style of the fronts

    Source: the defaults of the joinery, each with its own source.
    """
    drawers = spec.drawers
    front = drawers.joined_front
    back = drawers.side if drawers.back is None else drawers.back
    lowest = min((each.height for each in face.openings), default=None)
    ends = _ends(drawers, (front, back), lowest, shop.rack, ledger)
    _refuse_what_does_not_go_together(drawers, ends[0])
    lap, rabbet, chosen = 0.0, 0.0, [each for end in ends for each in end.chosen]
    gauge_1 = front
    if ends[0].family == HALF_BLIND:
        lap, rabbet, more = _lap_and_rabbet(drawers, front, shop.usual, ledger)
        chosen = [*more, *chosen]
        gauge_1 = ledger.take("drawers.gauge_1", first_gauge, front=front, lap=lap)
    side_moves = across(spec.woods.drawers, ledger)
    before = drawers.fronts_outside
    return DrawerMake(
        drawers=drawers,
        front=front,
        back=back,
        at_front=ends[0],
        at_back=ends[1],
        at_notch=notch_end(ends[1], back, drawers.side, shop.rack, ledger.under("drawers.notch_joint"))
        if is_notched(spec, face)
        else None,
        lap=lap,
        rabbet=rabbet,
        gauge_1=gauge_1,
        front_moves=side_moves if before else across(spec.woods.of("fronts"), ledger),
        side_moves=side_moves,
        covers=covers(spec, face, ledger) if before else {},
        chosen=tuple(chosen),
        slide=slide,
    )


def _ends(
    drawers: Drawers, boards: tuple[Inches, Inches], lowest: Inches | None, rack: Rack, ledger: Ledger
) -> tuple[End, End]:
    front, back = boards
    under = ledger.under("drawers.front_joint"), ledger.under("drawers.back_joint")
    joint, chosen = _with_finger(drawers, front, lowest, rack, under[0])
    made = front_end(joint, front, drawers.side, rack, under[0])
    return (
        replace(made, chosen=(*made.chosen, *chosen)),
        back_end(drawers.back_joint, joint, back, drawers.side, rack, under[1]),
    )


def _with_finger(
    drawers: Drawers, front: Inches, lowest: Inches | None, rack: Rack, under: Ledger
) -> tuple[FrontJoint, tuple[Chosen, ...]]:
    """A box joint with one cutter for all drawers, which are lowered to whole fingers where nothing shows."""
    joint = drawers.front_joint
    if not isinstance(joint, BoxJoint):
        return joint, ()
    whole = joint.height == "whole fingers" or (joint.height is None and drawers.has_box_front)
    joint = joint.model_copy(update={"height": "whole fingers" if whole else "as fitted"})
    play = () if joint.play is not None else (chosen_play(),)
    if joint.finger is not None:
        return joint, play
    thinner, groove = min(front, drawers.side), drawers.groove
    held = (
        None
        if drawers.screwed_under
        else Groove(height=groove.height, width=groove.width, depth=groove.depth)
    )
    room = None if lowest is None else lowest - BELOW_ITS_OPENING
    pick = chosen_batch_finger(thinner, rack.cutters, held, room)
    under.given("finger", pick.value, say("chosen: {}", pick.why), Inches)
    return joint.model_copy(update={"finger": pick.value}), (pick, *play)


def _lap_and_rabbet(
    drawers: Drawers, front: Inches, usual: Usual, ledger: Ledger
) -> tuple[Inches, Inches, list[Chosen]]:
    chosen = []
    lap, rabbet = drawers.lap, drawers.rabbet
    if lap is None:
        chosen.append(_lap(drawers, front, usual))
        lap = ledger.given("drawers.lap", chosen[-1].value, say("chosen: {}", chosen[-1].why))
    if rabbet is None:
        chosen.append(chosen_rabbet(drawers.side, usual))
        rabbet = ledger.given("drawers.rabbet", chosen[-1].value, say("chosen: {}", chosen[-1].why))
    if lap >= front:
        raise CannotBuild(
            say(
                "drawers.lap: a lap of {} leaves nothing of a front {:bare} thick; make it {:bare}",
                lap,
                front,
                chosen_lap(front, drawers.side, usual).value,
            )
        )
    if rabbet >= drawers.side:
        raise CannotBuild(
            say(
                "drawers.rabbet: a rabbet of {} leaves nothing of a side {:bare} thick; make it {:bare}",
                rabbet,
                drawers.side,
                chosen_rabbet(drawers.side, usual).value,
            )
        )
    return lap, rabbet, chosen


def _lap(drawers: Drawers, front: Inches, usual: Usual) -> Chosen:
    """The lap where none is typed; behind a lip the sockets go no further than its rabbet."""
    habit = chosen_lap(front, drawers.side, usual)
    if not isinstance(drawers.style, Lipped) or drawers.style.thick <= habit.value:
        return habit
    return Chosen(
        name="lap",
        value=drawers.style.thick,
        measure=Measure.LENGTH,
        why=SOCKETS_TO_THE_LIP,
        source="common practice of lipped fronts",
    )


def _refuse_what_does_not_go_together(drawers: Drawers, front: End) -> None:
    style = drawers.style
    if isinstance(style, Inset):
        return
    if drawers.stands_before and drawers.stops.inset:
        raise CannotBuild(
            f"drawers.stops.inset: a {style.kind} front stands before the case, and cannot stand behind its "
            "face; make it 0"
        )
    if isinstance(style, Lipped):
        if drawers.screwed_under:
            raise CannotBuild(
                "drawers.bottom: a lipped front stands before the case, and no bottom can run under it; "
                "choose a groove"
            )
        if style.thick >= drawers.front:
            raise CannotBuild(
                say(
                    "drawers.style.thick: a lip of {} leaves nothing of a front {:bare} thick in the "
                    "opening; make it {:bare}",
                    style.thick,
                    drawers.front,
                    drawers.front / 2,
                )
            )
        if front.family in (THROUGH, BOX):
            raise CannotBuild(
                f"drawers.front_joint: a {front.kind} goes through the front, and a lipped front covers it; "
                "choose a half-blind dovetail, whose lap is the lip"
            )
    if isinstance(style, CockBeaded):
        if front.family != HALF_BLIND:
            raise CannotBuild(
                f"drawers.front_joint: a bead is let into the lap of the front, and a {front.kind} has none; "
                "choose a half-blind dovetail"
            )
        if drawers.screwed_under:
            raise CannotBuild(
                "drawers.bottom: a bead runs along the lower edge of the front, where the bottom would "
                "show; choose a groove"
            )
