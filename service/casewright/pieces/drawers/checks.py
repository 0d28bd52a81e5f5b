"""Checks of the drawers: do they clear, close, run and hold?"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

from casewright.joinery.families.bottom_groove.asked import BOTTOMS
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.carcase import Carcase
from casewright.pieces.drawers.bottom_plans import BottomPlan
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.season import Climate, across
from casewright.stability.jam import check_jam, check_shape
from casewright.stability.limits import Limits, house_limits
from casewright.stability.sag import thickness_for
from casewright.wood.movement import movement

HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 13"
BEHIND = BOTTOMS.behind_least.value
"""Left behind a drawer when everything has moved (common practice) [in]."""
RUNNER_ROOM = BOTTOMS.runner_room.value
ALIGNED = 1 / 32


def drawer_checks(
    spec: UnitSpec, climate: Climate, case: Carcase, drawers: tuple[Drawer, ...], ledger: Ledger
) -> Iterator[Finding]:
    """The checks of every drawer.

    Args:
        spec: what the maker chose
        climate: the moisture contents between which the wood moves
        case: the carcase
        drawers: the drawers
        ledger: keeps the working

    Returns:
        The findings, passes too.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    moves = 0.0 if isinstance(spec.drawers.bottom, PlyBottom) else across(spec.woods.of("bottoms"), ledger)
    limits = replace(house_limits(), friction=spec.use.jam_friction)
    for drawer in drawers:
        yield _wettest(spec, drawer)
        yield from _depth(spec, drawer, case, climate, moves)
        yield check_shape(drawer.sizes.length, drawer.sizes.width, about=drawer.code)
        if drawer.run.slides is None:
            yield _jam(drawer, limits)
        yield from _groove(spec, drawer)
        yield from _sag(spec, drawer)
    yield from _pull_lines(drawers)


def _wettest(spec: UnitSpec, drawer: Drawer) -> Finding:
    gaps, top = drawer.sizes.gaps, spec.drawers.clearances.top
    return at_least(
        "clears when wettest",
        gaps.wettest,
        top,
        say(
            "The gap above is {} now, {:.3 bare} when wettest, {:.3 bare} when driest.",
            gaps.now,
            gaps.wettest,
            gaps.driest,
        ),
        say("Plane the drawer {} lower.", top - gaps.wettest + 1 / 64),
        about=drawer.code,
        source=HANDBOOK,
    )


def _depth(
    spec: UnitSpec, drawer: Drawer, case: Carcase, climate: Climate, moves: float
) -> Iterator[Finding]:
    """A drawer still closes when the side is shortest and its bottom longest, which stays under the back."""
    sizes, deep = drawer.sizes, drawer.bottom.deep
    grows = movement(size=deep, coefficient=moves, change=climate.swelling)
    under = sizes.back_foot > 0 or spec.drawers.screwed_under
    over = spec.drawers.bottom.over if under else 0.0
    # What the bottom reaches past the back may lie between the sides, where they run on behind it.
    needed = case.side_shrinkage + max(0.0, grows + over - sizes.set_in) + BEHIND
    clearance = sizes.opening.depth - sizes.length
    yield at_least(
        "depth season",
        clearance,
        needed,
        say(
            "Behind the drawer there is {}; the side shrinks {:.3 bare}, the "
            "bottom grows {:.3 bare} and reaches {:bare} past the back; {:bare} stays.",
            clearance,
            case.side_shrinkage,
            grows,
            over,
            BEHIND,
        ),
        say("Make the drawer {} shorter.", needed - clearance + 1 / 64),
        about=drawer.code,
        source=HANDBOOK,
    )
    shrinks = movement(size=deep, coefficient=moves, change=climate.drying)
    yield at_most(
        "bottom stays under the back",
        shrinks,
        sizes.back + over,
        say(
            "The bottom shrinks {:.3} under a back {} thick, and reaches {:bare} past it.",
            shrinks,
            sizes.back,
            over,
        ),
        say("Let the bottom reach {:up} past the back.", shrinks - sizes.back),
        about=drawer.code,
        source=HANDBOOK,
    )


def _jam(drawer: Drawer, limits: Limits) -> Finding:
    """Pulled by one knob, a drawer jams when too little of it is still in the case."""
    sizes = drawer.sizes
    centre = sizes.opening.left + sizes.opening.width / 2
    return check_jam(
        sizes.length,
        drawer.travel,
        max(abs(pull - centre) for pull in drawer.pulls),
        about=drawer.code,
        limits=limits,
    )


def _groove(spec: UnitSpec, drawer: Drawer) -> Iterator[Finding]:
    if spec.drawers.screwed_under:
        return
    groove = spec.drawers.groove
    thickness = drawer.bottom.thickness
    if isinstance(spec.drawers.bottom, PlyBottom):
        yield at_most(
            "ply fits groove",
            abs(groove.width - thickness),
            1 / 32,
            say("The sheet measures {:.3} and the groove {}.", thickness, groove.width),
            say("Cut the groove {} wide, from the sheet itself.", thickness),
            about=drawer.code,
            verdict=Verdict.CAUTION,
        )
    if not spec.drawers.on_frames:
        return
    room = groove.height - max(0.0, thickness - groove.width)
    yield at_least(
        "room over runner",
        room,
        RUNNER_ROOM,
        say("The bottom's underside is {} above the runner.", room),
        say("Raise the groove {:up}.", RUNNER_ROOM - room),
        about=drawer.code,
    )


def _sag(spec: UnitSpec, drawer: Drawer) -> Iterator[Finding]:
    bottom = drawer.bottom
    if bottom.sag is None:
        return
    without: Words = ""
    if bottom.pieces > 1 and bottom.sag_without_muntin is not None:
        limit = drawer.sizes.inside.between_slips / 300
        words = "too much" if bottom.sag_without_muntin > limit else "allowed"
        without = say(
            " Without a muntin it would sag {:.3} over {:.3 bare}: {}.",
            bottom.sag_without_muntin,
            limit,
            words,
        )
    yield at_most(
        "bottom sag",
        bottom.sag,
        bottom.sag_allowed,
        say(
            "Full, the bottom sags {:.3} over {}; {:.3 bare} is allowed.{}",
            bottom.sag,
            bottom.span,
            bottom.sag_allowed,
            without,
        ),
        _stiffer(bottom),
        about=drawer.code,
        source="beam formula of a uniformly loaded strip; the limit of span/300 is common practice",
    )


def _stiffer(bottom: BottomPlan) -> Words:
    """What would keep a bottom straight."""
    thick = thickness_for(bottom.thickness, bottom.sag or 0.0, bottom.sag_allowed)
    muntin = "" if bottom.pieces > 1 else "Use a muntin, or "
    return say("{}make the bottom {:up} thick.", muntin or "Narrow the drawer, or ", thick)


def _pull_lines(drawers: tuple[Drawer, ...]) -> Iterator[Finding]:
    """Pulls of wide drawers stand in line down the case: in rows of a stack parted alike, by columns."""
    openings = [drawer.sizes.opening for drawer in drawers]
    parted = Counter(each.row_code for each in openings)
    lines: dict[tuple[str, int, int], list[tuple[float, ...]]] = {}
    for drawer, opening in zip(drawers, openings, strict=True):
        if len(drawer.pulls) > 1:
            stack = opening.row_code.rpartition("-")[0]
            lines.setdefault((stack, parted[opening.row_code], opening.column), []).append(drawer.pulls)
    if not lines:
        return
    spread = max(
        max(pair[side] for pair in pairs) - min(pair[side] for pair in pairs)
        for pairs in lines.values()
        for side in (0, 1)
    )
    yield at_most(
        "pull lines",
        spread,
        ALIGNED,
        say("The pulls of wide drawers are out of line by {:up} at the most.", spread),
        "Give the rows the same columns, or set the pulls by hand.",
        verdict=Verdict.CAUTION,
    )
