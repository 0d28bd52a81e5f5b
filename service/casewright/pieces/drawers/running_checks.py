"""Checks of how drawers run and stop: grooves, guides, slides, loads and outstops."""

from collections.abc import Iterator

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Pounds
from casewright.pieces.asked.slide_spec import GOVERNS
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.running import BattenGroove, Guide, Lined, Slides
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.rules import running_rules as rules
from casewright.pieces.rules import slide_rules
from casewright.stability.limits import house_limits
from casewright.stability.volume import clear_volume
from casewright.wood.movement import movement

GROOVE_LEFT = 3 / 16
"""Wood behind the groove of a side that hangs (common practice) [in]."""
LOOSE = 1 / 16
"""Side clearance of a drawer that a centre guide leads, at the most (common practice) [in]."""
LEAST_LINED = 1 / 2
"""A lined drawer that is lower holds nothing that a hand could take out (common practice) [in]."""
UNCOVERED = 1 / 8
"""What may stay open beside a front on slides (common practice) [in]."""
ABOVE_GROOVE = 1 / 8
"""Wood between two grooves of a side, and above the upper one (common practice) [in]."""
HELD_BACK = 2.0
"""How much of a drawer stays in the case at its outstop, at the least (common practice) [in]."""


def running_checks(
    spec: UnitSpec, drawers: tuple[Drawer, ...], climate: Climate, weights: dict[str, Pounds], ledger: Ledger
) -> Iterator[Finding]:
    """The checks of how the drawers run and stop.

    Args:
        spec: what the maker chose
        drawers: the drawers
        climate: the moisture contents between which the wood moves
        weights: each drawer's own weight, by its code [lb]
        ledger: keeps the working

    Returns:
        The findings, passes too; none for drawers on runners without an outstop that was asked for.

    Source: common practice; of slides the maker's sheet.
    """
    moves = across(spec.woods.drawers, ledger)
    for drawer in drawers:
        run = drawer.run
        if run.groove is not None:
            yield from _hung(spec, drawer, run.groove, (moves, climate.swelling))
        if run.guide is not None:
            yield from _guided(spec, drawer, run.guide)
        if run.slides is not None:
            yield from _on_slides(spec, drawer, run.slides)
            yield _load(spec, drawer, run.slides, weights[drawer.code], ledger)
        yield from _stopped(spec, drawer)
        if run.lined is not None:
            yield _lined(drawer, run.lined)


def _lined(drawer: Drawer, lined: Lined) -> Finding:
    least = min(lined.width, lined.depth, lined.height)
    return at_least(
        "room within lining",
        least,
        LEAST_LINED,
        say(
            "Within its lining the drawer is {} wide, {} deep and {} high.",
            lined.width,
            lined.depth,
            lined.height,
        ),
        say("Take a lining {:up} thinner, or make the row higher.", LEAST_LINED - least),
        about=drawer.code,
        verdict=Verdict.CAUTION,
    )


def _hung(
    spec: UnitSpec, drawer: Drawer, groove: BattenGroove, moves: tuple[float, float]
) -> Iterator[Finding]:
    yield at_least(
        "side left at batten groove",
        groove.left,
        GROOVE_LEFT,
        say("Behind the groove for its batten {} of the side is left.", groove.left),
        say("Let the battens project {:up} less, or make the sides thicker.", GROOVE_LEFT - groove.left),
        about=drawer.code,
    )
    held = spec.drawers.groove
    floor = held.height + held.width + ABOVE_GROOVE
    yield at_least(
        "batten groove above bottom",
        groove.height,
        floor,
        say(
            "The groove for the batten begins {} up the side, that for the bottom ends {:bare} up.",
            groove.height,
            held.height + held.width,
        ),
        say("Begin it {:up} up or higher.", floor),
        about=drawer.code,
    )
    top = drawer.sizes.side_height - ABOVE_GROOVE
    yield at_most(
        "batten groove below top",
        groove.height + groove.width,
        top,
        say(
            "The groove for the batten ends {} up a side {:bare} high.",
            groove.height + groove.width,
            drawer.sizes.side_height,
        ),
        say("Begin it {:down} up or lower.", top - groove.width),
        about=drawer.code,
    )
    coefficient, swelling = moves
    grows = movement(size=groove.height + groove.width, coefficient=coefficient, change=swelling)
    gap = spec.drawers.clearances.bottom
    yield at_least(
        "hangs clear when wettest",
        gap,
        grows,
        say("Under the drawer there is {}; below its batten the side grows {:.3 bare}.", gap, grows),
        say("Leave {:up} below it.", grows + 1 / 64),
        about=drawer.code,
        source="Wood Handbook, FPL-GTR-282 (2021), chapter 13",
    )


def _guided(spec: UnitSpec, drawer: Drawer, guide: Guide) -> Iterator[Finding]:
    most = guide.room - rules.PLAY
    yield at_most(
        "guide height",
        guide.height,
        most,
        say("The guide is {} high; under the bottom there is {}.", guide.height, guide.room),
        say("Make the guide {:down} high, or raise the groove of the bottom.", max(0.0, most)),
        about=drawer.code,
    )
    if guide.height <= 0:
        yield Finding(
            rule="guide height left",
            verdict=Verdict.STOP,
            message=say("Under the bottom there is only {}: no room for a guide.", guide.room),
            remedy=say("Raise the groove of the bottom by {:up}.", 1 / 4 - guide.height),
            about=drawer.code,
        )
    gap = slide_rules.side_space(drawer.sizes.opening.width, drawer.sizes.width)
    yield at_most(
        "side clearance, guided",
        gap,
        LOOSE + 1 / 128,
        say("At each side there is {}; a guide leads a drawer with up to {}.", gap, LOOSE),
        say("Make the drawer {:up} wider.", 2 * (gap - LOOSE)),
        about=drawer.code,
        verdict=Verdict.CAUTION,
    )


def _on_slides(spec: UnitSpec, drawer: Drawer, slides: Slides) -> Iterator[Finding]:
    model, sizes = slides.model, drawer.sizes
    yield at_most(
        "slide length",
        slides.length,
        slides.room,
        say("The slides are {} long; the opening takes {:down}.", slides.length, slides.room),
        say("Take slides {:down} long or shorter.", max(0.0, slides.room)),
        about=drawer.code,
        source=GOVERNS,
    )
    yield from _space(drawer, slides)
    yield from _around(drawer, slides)
    if model.is_under:
        yield from _under(spec, drawer, slides)
        return
    yield at_least(
        "box as tall as slide",
        sizes.side_height,
        model.tall,
        say("The box is {} high and the slide on it {}.", sizes.side_height, model.tall),
        say("Make the row {:up} higher, or take a lower slide.", model.tall - sizes.side_height),
        about=drawer.code,
        source=GOVERNS,
    )


def _around(drawer: Drawer, slides: Slides) -> Iterator[Finding]:
    """The front covers the slides, and the box is as much lower than its opening as they ask."""
    sizes, opening = drawer.sizes, drawer.sizes.opening
    open_at_each = slide_rules.side_space(opening.width, sizes.face.width)
    yield at_most(
        "front covers slides",
        open_at_each,
        UNCOVERED,
        say("Beside the front {} stays open at each end.", max(0.0, open_at_each)),
        "Take an applied front or one before the case, or let the sides slide into the front.",
        about=drawer.code,
    )
    yield at_least(
        "headroom for slides",
        opening.height - sizes.side_height,
        slides.model.headroom,
        say(
            "The sides are {} lower than the opening; the slide asks for {}.",
            opening.height - sizes.side_height,
            slides.model.headroom,
        ),
        "Give the box a front of its own, behind an applied front or one before the case.",
        about=drawer.code,
        verdict=Verdict.CAUTION,
        source=GOVERNS,
    )


def _space(drawer: Drawer, slides: Slides) -> Iterator[Finding]:
    """A box too wide binds and cannot be helped; one too narrow is packed out."""
    model, space = slides.model, slides.space
    said = say(
        "At each side of the box there is {:.3}; the slide takes {:.3} to {:.3}.",
        space,
        model.space_least,
        model.space_most,
    )
    yield at_least(
        "side space, least",
        space,
        model.space_least,
        said,
        say("Make the box {:up} narrower.", 2 * (model.space_least - space)),
        about=drawer.code,
        source=GOVERNS,
    )
    yield at_most(
        "side space, most",
        space,
        model.space_most,
        said,
        say("Pack each slide out by {:.3}, or make the box that much wider.", space - model.space_most),
        verdict=Verdict.CAUTION,
        about=drawer.code,
        source=GOVERNS,
    )


def _under(spec: UnitSpec, drawer: Drawer, slides: Slides) -> Iterator[Finding]:
    model, sizes = slides.model, drawer.sizes
    thick = max(sizes.left_side, sizes.right_side)
    most = model.side_most or thick
    yield at_most(
        "sides for the slide",
        thick,
        most,
        say("The sides are {} thick; the slide takes sides up to {}.", thick, most),
        say("Make the sides {:down} thick or thinner.", most),
        about=drawer.code,
        source=GOVERNS,
    )
    groove = spec.drawers.groove
    room = rules.room_under_bottom(groove.height, drawer.bottom.thickness, groove.width)
    yield at_least(
        "bottom recess",
        room,
        model.recess,
        say("The bottom lies {} above the lower edge of the sides; the slide needs {}.", room, model.recess),
        say("Raise the groove of the bottom by {:up}.", model.recess - room),
        about=drawer.code,
        source=GOVERNS,
    )


def _load(spec: UnitSpec, drawer: Drawer, slides: Slides, weight: Pounds, ledger: Ledger) -> Finding:
    inside, under = drawer.sizes.inside, ledger.under(drawer.sizes.code)
    if spec.drawers.load_lb is None:
        volume = clear_volume(inside.width, inside.depth, inside.height, 0.0)
        density = house_limits().fill_density
        load = under.take(
            "slide_load", slide_rules.carried_load, volume=volume, density=density, drawer=weight
        )
    else:
        load = under.take("slide_load", slide_rules.typed_load, load=spec.drawers.load_lb, drawer=weight)
    rated = slides.model.load_lb
    return at_most(
        "slide load",
        load,
        rated,
        say(
            "Full, the slides carry {:.1f} lb; “{}” is rated {:g} lb.",
            up_to(load, 0.1),
            slides.model.name,
            rated,
        ),
        "Take slides for a greater load, or make the drawer smaller.",
        about=drawer.code,
        source=GOVERNS,
    )


def _stopped(spec: UnitSpec, drawer: Drawer) -> Iterator[Finding]:
    run, stops, length = drawer.run, spec.drawers.stops, drawer.sizes.length
    if run.slides is not None:
        if stops.travel is not None:
            opens = run.slides.model.opens(run.slides.length)
            yield _travel(drawer, opens, say("the slides open {:down}", opens))
        return
    if stops.outstop == "none":
        yield Finding(
            rule="outstop",
            verdict=Verdict.CAUTION,
            message="Nothing keeps the drawer from coming right out and falling on a foot.",
            remedy="Fit a turn-button or a pin.",
            about=drawer.code,
        )
    if run.most_travel is not None:
        yield _travel(
            drawer, run.most_travel, say("then its outstop meets the rail, at {:down}", run.most_travel)
        )
    if stops.travel is not None:
        most = length - HELD_BACK
        yield _travel(drawer, most, say("{:up} of it have to stay in the case", HELD_BACK))


def _travel(drawer: Drawer, most: Inches, why: Words) -> Finding:
    return at_most(
        "travel",
        drawer.travel,
        most,
        say("The drawer opens {}; {}.", drawer.travel, why),
        say("Let it open {:down} or less.", max(0.0, most)),
        about=drawer.code,
    )
