"""Does a notched drawer keep clear of the pipes that it was notched for, and does its floor carry?"""

from collections.abc import Iterator, Sequence

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.part_year import through_thickness
from casewright.pieces.drawers.bottom_plans import THIN_PLY, pressure_on
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import NotchSizes
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.season import Climate
from casewright.pieces.rules import notch_rules as rules
from casewright.stability.beams import PLY_ALONG
from casewright.stability.limits import house_limits
from casewright.stability.sag import bottom_sag, sag_limit, thickness_for

AIR = 1 / 2
"""Between a drawer and pipes that it must not touch, at each side and before them (common practice) [in]."""
PLUMBING = (
    "Pipes stand in {}: the shut-off valves must stay within reach, the pipes follow the plumbing code of "
    "the place, and a licensed plumber sets them."
)
STIFF = 3 / 8
"""The thinnest plywood that carries a wide drawer without a bar, as it is sold (common practice) [in]."""
THROUGH = 1e-6
"""What overlaps by less only touches [in]."""


def notch_checks(
    spec: UnitSpec,
    climate: Climate,
    drawers: Sequence[Drawer],
    parts: Sequence[Part],
    shrinkage: Inches,
    ledger: Ledger,
) -> Iterator[Finding]:
    """The checks of notched drawers.

    Args:
        spec: what the maker chose
        climate: the moisture contents between which the wood moves
        drawers: the drawers
        parts: every part of the unit
        shrinkage: how much shallower the case gets when driest [in]
        ledger: keeps the working

    Yields:
        The findings, passes too; none where no drawer has a notch.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    notched = [(drawer, notch) for drawer in drawers if (notch := drawer.sizes.notch)]
    for drawer, notch in notched:
        under = ledger.under(drawer.sizes.code).under("notch")
        yield _beside(spec, climate, drawer, notch, under)
        if notch.asked.reach is not None:
            yield _before(spec, drawer, notch, shrinkage, under)
        yield from _floor(spec, drawer, notch, under)
        yield _in_the_way(drawer, notch, parts)
    if notched:
        yield Finding(
            rule="plumbing behind drawers",
            verdict=Verdict.CAUTION,
            message=say(PLUMBING, ", ".join(drawer.code for drawer, _ in notched)),
            about=notched[0][0].code,
            remedy="Have pipes and valves measured, their place agreed with the plumber, before it is cut; "
            "what they need of the back of the case is sawn at the place.",
        )


def _beside(spec: UnitSpec, climate: Climate, drawer: Drawer, notch: NotchSizes, under: Ledger) -> Finding:
    """The clear width, and the air that it leaves at each side of the pipes, when wettest."""
    clear = under.take(
        "clear_wettest",
        rules.clear_then,
        notch=notch.width,
        left=notch.left_inner,
        right=notch.right_inner,
        moves=through_thickness(spec.woods.drawers, under),
        change=climate.swelling,
    )
    pipes = notch.asked.pipes
    if pipes is None:
        return Finding(
            rule="air beside pipes",
            verdict=Verdict.PASS,
            message=say(
                "The notch is {} clear, {:.3 bare} when wettest; pipes up to {:down} over all have {} of air "
                "at each side.",
                notch.width,
                clear,
                max(0.0, clear - 2 * AIR),
                AIR,
            ),
            about=drawer.code,
        )
    # A slide leads its drawer; on wood it may stand at one side of its opening.
    sizes = drawer.sizes
    play = 0.0 if drawer.run.slides else (sizes.opening.width - sizes.width) / 2
    air = under.take("air_beside", rules.air_beside, clear=clear, pipes=pipes, play=play)
    return _aired(
        "air beside pipes",
        air,
        say("Pipes {} over all have {:.3} of air at each side of the notch when it is wettest.", pipes, air)
        if air >= 0
        else say("Pipes {} over all are {:.3} too wide at each side of the notch.", pipes, -air),
        say("Make the notch {:up} wider.", 2 * max(0.0, AIR - air)),
        drawer.code,
    )


def _before(spec: UnitSpec, drawer: Drawer, notch: NotchSizes, shrinkage: Inches, under: Ledger) -> Finding:
    """The air between the inner back of a shut drawer and the pipes."""
    sizes, reach = drawer.sizes, notch.asked.reach or 0.0
    air = under.take(
        "air_before",
        rules.air_before,
        opening=sizes.opening.depth,
        shut=sizes.length + spec.drawers.stops.inset,
        depth=notch.depth,
        reach=reach,
        shrinks=shrinkage,
    )
    return _aired(
        "air before pipes",
        air,
        say("Shut, the drawer keeps {:.3} before pipes {} before the back of the case.", air, reach)
        if air >= 0
        else say("It does not shut: pipes {} before the back of the case are {:.3} in its way.", reach, -air),
        say("Make the notch {:up} deeper.", max(0.0, AIR - air)),
        drawer.code,
    )


def _aired(rule: str, air: Inches, message: Words, remedy: Words, about: str) -> Finding:
    """Pipes that a drawer would touch stop it; too little air is looked at first."""
    verdict = Verdict.STOP if air < 0 else Verdict.CAUTION
    return at_least(rule, air, AIR, message, remedy, about=about, verdict=verdict)


def _floor(spec: UnitSpec, drawer: Drawer, notch: NotchSizes, under: Ledger) -> Iterator[Finding]:
    """One sheet without a bar under its middle, which would stand where the pipes do."""
    bottom, inside, limits = drawer.bottom, drawer.sizes.inside, house_limits()
    if bottom.thickness <= THIN_PLY:
        most = spec.drawers.muntin.over
        yield at_most(
            "bottom without a bar",
            inside.between_slips,
            most,
            say(
                "The notched bottom, {} thick, is {:bare} wide without a bar.", bottom.thickness, inside.width
            ),
            say(
                "Take plywood of {:up} or more: a bar under the middle would stand where the pipes do.", STIFF
            ),
            about=drawer.code,
            verdict=Verdict.CAUTION,
        )
    arm = max(notch.left_arm, notch.right_arm)
    sag = under.take(
        "arm_sag",
        bottom_sag,
        pressure=pressure_on(spec, drawer.sizes, under),
        span=arm,
        modulus=PLY_ALONG,
        thickness=bottom.thickness,
    )
    allowed = under.take("arm_sag_allowed", sag_limit, span=arm, ratio=limits.sag_ratio)
    yield at_most(
        "bottom sag",
        sag,
        allowed,
        say("Full, the bottom sags {:.3} over {}, its wider arm; {:.3 bare} is allowed.", sag, arm, allowed),
        say("Make the bottom {:up} thick.", thickness_for(bottom.thickness, sag, allowed)),
        about=drawer.code,
        verdict=Verdict.CAUTION,
        source="beam formula of a uniformly loaded strip; the stiffness of plywood is from memory",
    )


def _in_the_way(drawer: Drawer, notch: NotchSizes, parts: Sequence[Part]) -> Finding:
    """What of the case lies over or under the notch: the case is not cut for pipes."""
    sizes = drawer.sizes
    opening = sizes.opening
    left = opening.left + (opening.width - sizes.width) / 2 + notch.left
    front, rear = sizes.length - notch.depth, opening.depth
    level = next(part.box.z for part in parts if part.code == f"{drawer.code}-F")
    found = [
        part
        for part in parts
        if part.line[:1] in DIVIDING
        and part.box.x + part.box.width > left + THROUGH
        and part.box.x < left + notch.width - THROUGH
        and part.box.y + part.box.depth > front + THROUGH
        and part.box.y < rear - THROUGH
    ]
    near = sorted(found, key=lambda part: abs(part.box.z - level))
    named = ", ".join(dict.fromkeys(part.code for part in near[:4]))
    more = ", …" if len(near) > 4 else ""
    return Finding(
        rule="pipes through the case",
        verdict=Verdict.CAUTION if found else Verdict.PASS,
        message=say("Over or under the notch lies {}{}; no part of the case is cut for pipes.", named, more)
        if found
        else "Nothing of the case lies over or under the notch.",
        remedy="Lead the pipes past, leave out the dividers between these rows, or notch them at the bench."
        if found
        else "",
        about=drawer.code,
        found=float(len(found)),
        needed=0.0,
    )


DIVIDING = "DWR"
"""The first letters of the lines of what lies between rows: boards, frames, and rails between legs."""
