"""What each drawer runs on and stops against: battens, guides, slides, stop lines and outstops."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.running_spec import CentreGuide, FullRunners, OnSlides, SideHung
from casewright.pieces.asked.slide_spec import OwnSlide, no_such_slide
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.run_sizes import before_the_box, side_gap, slide_length, slide_room
from casewright.pieces.drawers.sizes import CannotBuild, DrawerSizes
from casewright.pieces.layout.openings import Face
from casewright.pieces.rules import running_rules as rules
from casewright.pieces.rules import slide_rules

HANGS = 1 / 16
"""Under a drawer that hangs on battens, so that it does not scrape the rail (common practice) [in]."""
BUTTON = 1 / 2
"""Thickness of a turn-button on the inside of a back (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenGroove:
    """The groove in a side that hangs on a batten [in].

    Attributes:
        width: up and down
        depth: into the side
        height: bottom edge of the side up to it
        left: what is left of the thinner side behind it
        batten: lower edge of its batten above that of the opening
    """

    width: Inches
    depth: Inches
    height: Inches
    left: Inches
    batten: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Guide:
    """A centre guide under a bottom [in].

    Attributes:
        room: between bottom and rail
        width: of the guide
        height: of the guide
        length: from the stop line to the back of the opening
        notch: width of the notch that rides on it
    """

    room: Inches
    width: Inches
    height: Inches
    length: Inches
    notch: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Slides:
    """The pair of slides of a drawer [in].

    Attributes:
        model: the slide, as the table has it
        length: of the slides
        room: the longest slide that would go in
        space: what is left at each side of the box
    """

    model: OwnSlide
    length: Inches
    room: Inches
    space: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Lined:
    """What a lined drawer holds: clear width, depth, height, and what a notch takes of its floor [in]."""

    width: Inches
    depth: Inches
    height: Inches
    taken: tuple[Inches, Inches] = (0.0, 0.0)

    @property
    def area(self) -> Inches:
        """Of the lining, at the bottom and all around [sq in]."""
        wide, deep = self.taken
        return self.width * self.depth - wide * deep + 2 * self.height * (self.width + self.depth + deep)


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """How one drawer runs and stops.

    Attributes:
        travel: how far it opens [in]
        foot: its underside above the lower edge of its opening [in]
        groove: for battens at its sides
        guide: under its middle
        slides: at its sides or under it
        stop: the stop line behind the face of the rail; None without blocks, on slides, and where the front
            itself stops against the case [in]
        outstop_is_pin: is it a pin, and no button?
        outstop: the line behind the face of the rail where it is caught; None without one of those asked for
        most_travel: how far an outstop could let it out at the most; None without one of those asked for [in]
        lined: what it holds within its lining; None without one
    """

    travel: Inches
    foot: Inches
    groove: BattenGroove | None = None
    guide: Guide | None = None
    slides: Slides | None = None
    stop: Inches | None = None
    outstop_is_pin: bool = False
    outstop: Inches | None = None
    most_travel: Inches | None = None
    lined: Lined | None = None


def chosen_slide(spec: UnitSpec, slides: tuple[OwnSlide, ...]) -> OwnSlide | None:
    """The slide that the drawers run on.

    Args:
        spec: what the maker chose
        slides: the shop's table

    Returns:
        The slide; None where they run on wood.

    Raises:
        CannotBuild: the table has none of that name, or of that length; with those that it has

    Source: the shop's table of slides.
    """
    running = spec.drawers.running
    if not isinstance(running, OnSlides):
        return None
    if running.slide is None:
        found = slides[0]
    else:
        name = running.slide.casefold()
        asked = next((each for each in slides if each.name.casefold() == name), None)
        if asked is None:
            raise CannotBuild(no_such_slide(running.slide, slides))
        found = asked
    if running.length is not None and all(abs(running.length - each) > 1e-6 for each in found.lengths):
        nearest = min(found.lengths, key=lambda each: abs(each - (running.length or 0.0)))
        raise CannotBuild(
            say(
                "drawers.running.length: “{}” is not sold {} long; the nearest is {}",
                found.name,
                running.length,
                nearest,
            )
        )
    return found


def refuse_running(spec: UnitSpec, face: Face, slide: OwnSlide | None) -> None:
    """Refuses what cannot run: slides longer than the case is deep, full-length runners between legs.

    Args:
        spec: what the maker chose
        face: the openings
        slide: the slide that the drawers run on; None for wood

    Raises:
        CannotBuild: with the field and what would do

    Source: geometry of the case.
    """
    running = spec.drawers.running
    if isinstance(running, FullRunners) and spec.legs:
        raise CannotBuild(
            "drawers.running.kind: full-length runners are fixed to the sides of a carcase, and legs have "
            "none; choose runners"
        )
    if isinstance(running, CentreGuide) and spec.drawers.groove.height <= rules.PLAY:
        raise CannotBuild(
            "drawers.groove.height: a centre guide needs room under the bottom; raise the groove"
        )
    if slide is None:
        return
    shallow = min(face.openings, key=lambda each: each.depth)
    shortest = min(slide.lengths)
    applied = before_the_box(spec.drawers, spec.drawers.front)
    room = shallow.depth - spec.drawers.stops.inset - applied - slide.behind
    if room < shortest - 1e-9:
        raise CannotBuild(
            say(
                "drawers.running.slide: the shortest “{}” is {} long and opening {} takes {:down}; make the "
                "case {:up} deeper, or choose another slide",
                slide.name,
                shortest,
                shallow.code,
                max(0.0, room),
                shortest - room,
            )
        )


def with_running(spec: UnitSpec, ledger: Ledger) -> UnitSpec:
    """The choices with a gap under a drawer that hangs, where none was typed.

    Args:
        spec: what the maker chose
        ledger: keeps the working

    Returns:
        The choices.

    Source: common practice.
    """
    drawers = spec.drawers
    if not isinstance(drawers.running, SideHung | OnSlides):
        return spec
    if "bottom" in drawers.clearances.model_fields_set:
        return spec
    gap = ledger.given(
        "drawers.clearances.bottom", HANGS, "a drawer that hangs must not scrape (common practice)", Inches
    )
    clearances = drawers.clearances.model_copy(update={"bottom": gap})
    return spec.model_copy(update={"drawers": drawers.model_copy(update={"clearances": clearances})})


def drawer_run(
    spec: UnitSpec,
    sizes: DrawerSizes,
    slide: OwnSlide | None,
    shrinkage: Inches,
    bottom: Inches,
    ledger: Ledger,
) -> Run:
    """How one drawer runs and stops.

    Args:
        spec: what the maker chose
        sizes: its sizes
        slide: the slide that it runs on; None for wood
        shrinkage: how much shallower the case gets when driest [in]
        bottom: thickness of its bottom [in]
        ledger: keeps the working

    Returns:
        The run.

    Source: common practice; of slides the maker's sheet.
    """
    under, running, stops = ledger.under(sizes.code), spec.drawers.running, spec.drawers.stops
    slides = None if slide is None else _slides(spec, sizes, slide, shrinkage, under)
    if stops.travel is not None:
        travel = stops.travel
    elif slides is not None:
        travel = slides.model.opens(slides.length)
    else:
        travel = sizes.length * spec.use.travel_share
    stop = None
    # A front that stands before the case stops against it.
    if slides is None and stops.blocks and not sizes.stand:
        stop = under.take("stop_line", rules.stop_line, front=sizes.inner, inset=stops.inset)
    outstop = most = None
    if stops.outstop in ("turn-button", "pin") and slides is None:
        caught = {
            "length": sizes.length,
            "back": sizes.back + sizes.set_in,
            "catch": BUTTON if stops.outstop == "turn-button" else 0.0,
            "inset": stops.inset,
        }
        rail = spec.case.rail_width if spec.legs is None else (spec.legs.rail_width or spec.legs.leg)
        most = under.take("most_travel", rules.outstop_travel, **caught, line=rail)
        outstop = under.take("outstop_line", rules.outstop_line, **caught, travel=travel)
    raised = slides is not None and spec.drawers.has_box_front
    return Run(
        travel=travel,
        foot=slide.under if slide is not None and raised else spec.drawers.clearances.bottom,
        groove=_groove(running, spec, sizes, under) if isinstance(running, SideHung) else None,
        guide=_guide(running, spec, sizes, bottom, under) if isinstance(running, CentreGuide) else None,
        slides=slides,
        stop=stop,
        outstop_is_pin=stops.outstop == "pin",
        outstop=outstop,
        most_travel=most,
        lined=_lined(spec.drawers.lining, sizes, under) if spec.drawers.lining else None,
    )


def _lined(lining: Inches, sizes: DrawerSizes, under: Ledger) -> Lined:
    inside = sizes.inside
    return Lined(
        width=under.take("lined_width", rules.lined_across, inside=inside.between_slips, lining=lining),
        depth=under.take("lined_depth", rules.lined_across, inside=inside.depth, lining=lining),
        height=under.take("lined_height", rules.lined_height, inside=inside.height, lining=lining),
        taken=(sizes.notch.around + 2 * lining, sizes.notch.taken) if sizes.notch else (0.0, 0.0),
    )


def _slides(spec: UnitSpec, sizes: DrawerSizes, slide: OwnSlide, shrinkage: Inches, under: Ledger) -> Slides:
    opening = sizes.opening
    applied = before_the_box(spec.drawers, sizes.face.thickness)
    room = slide_room(opening, spec.drawers, slide, shrinkage, applied, under)
    space = under.take("side_space", slide_rules.side_space, opening=opening.width, box=sizes.width)
    return Slides(model=slide, length=slide_length(spec.drawers, slide, room), room=room, space=space)


def _groove(running: SideHung, spec: UnitSpec, sizes: DrawerSizes, under: Ledger) -> BattenGroove:
    width = under.take("batten_groove_width", rules.batten_groove_width, batten=running.batten)
    depth = under.take(
        "batten_groove_depth",
        rules.batten_groove_depth,
        projection=running.projection,
        side_gap=side_gap(sizes.opening, spec.drawers, under),
    )
    height = running.height
    if height is None:
        height = under.take(
            "batten_groove_height", rules.batten_groove_height, side=sizes.side_height, groove=width
        )
    hangs = spec.drawers.clearances.bottom
    return BattenGroove(
        width=width,
        depth=depth,
        height=height,
        left=min(sizes.left_side, sizes.right_side) - depth,
        batten=under.take("batten_up", rules.batten_up, gap=hangs, groove=height),
    )


def _guide(running: CentreGuide, spec: UnitSpec, sizes: DrawerSizes, bottom: Inches, under: Ledger) -> Guide:
    groove = spec.drawers.groove
    room = under.take(
        "guide_room",
        rules.room_under_bottom,
        groove_height=groove.height,
        bottom=bottom,
        groove_width=groove.width,
    )
    height = running.guide_height
    if height is None:
        height = under.take("guide_height", rules.guide_height, room=room)
    return Guide(
        room=room,
        width=running.guide_width,
        height=height,
        length=under.take(
            "guide_length",
            rules.guide_length,
            depth=sizes.opening.depth,
            front=max(0.0, sizes.inner),
            inset=spec.drawers.stops.inset,
        ),
        notch=under.take("guide_notch", rules.guide_notch, guide=running.guide_width),
    )
