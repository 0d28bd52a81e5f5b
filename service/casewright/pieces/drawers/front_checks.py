"""Checks of the fronts: do they clear each other, cover their openings, and hide what they should?"""

from bisect import bisect_right
from collections.abc import Iterator, Sequence

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.front_checks import groove_hidden
from casewright.joinery.groove import groove_fit
from casewright.joinery.groove_left import wood_behind_groove
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import CockBeaded, FullOverlay, HalfOverlay, Inset, Lipped
from casewright.pieces.asked.drawer_spec import SolidBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.ends import BOX, LOCK_RABBET, SLIDING, THROUGH
from casewright.pieces.drawers.front_parts import bead_rabbet
from casewright.pieces.drawers.front_words import of_the_box
from casewright.pieces.drawers.overlays import COVER_LEAST
from casewright.pieces.drawers.set_outs import drawer_groove
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.rules import front_rules as rules

HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 13"
GAP_LEAST = 1 / 32
"""What has to stay between two fronts when they are wettest (common practice) [in]."""
BESIDE_LEAST = 1 / 4
"""Wood beside the socket of a sliding dovetail, less of which splits off (common practice) [in]."""
SIDE_GAP_MOST = 1 / 8
"""A wider gap beside an inset front is seen from across the room (common practice) [in]."""
SCREW, FROM_EDGE = 3 / 16, 1.0
"""A screw that holds a show front, and how far its rows are from the box's edges (common practice) [in]."""


def front_checks(
    spec: UnitSpec, face: Face, climate: Climate, drawers: tuple[Drawer, ...], ledger: Ledger
) -> Iterator[Finding]:
    """The checks of the fronts and of joints that show; nothing for inset fronts with half-blind dovetails.

    Args:
        spec: what the maker chose
        face: the height of the case
        climate: the moisture contents between which the wood moves
        drawers: the drawers
        ledger: keeps the working

    Returns:
        The findings, passes too.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    style = spec.drawers.style
    if isinstance(style, Lipped | FullOverlay | HalfOverlay):
        yield from _gaps(spec, face, climate, drawers, ledger)
    if drawers and spec.drawers.back_joint.kind != spec.drawers.back_kind != "as the front":
        yield _back(spec, drawers[0])
    for drawer in drawers:
        yield from _joint(spec, drawer)
        if isinstance(style, FullOverlay | HalfOverlay):
            yield _covered(drawer, is_divided=spec.legs is not None or spec.frame.divider > 0)
        if isinstance(style, CockBeaded):
            yield _bead(style, drawer)
        if isinstance(style, Inset) and drawer.run.slides is not None:
            yield _filled(drawer)
        if spec.drawers.has_box_front:
            yield _slots(spec, drawer, climate, ledger)
        if spec.drawers.screwed_under or spec.drawers.bottom.kind == "solid":
            yield from _bottom(spec, drawer, climate, ledger)


def _joint(spec: UnitSpec, drawer: Drawer) -> Iterator[Finding]:
    """What a joint shows, and what the groove leaves where its family does not ask."""
    drawers, joints = spec.drawers, drawer.joints
    family, groove = joints.front_family, drawer_groove(spec)
    shown = not drawers.has_box_front
    if family in (THROUGH, BOX) or (family == LOCK_RABBET and not drawer.sizes.side_start):
        yield _ends_shown(drawer, shown=shown)
    if isinstance(joints.front, ThroughJoint) and groove:
        yield groove_hidden(groove, groove_fit(joints.front.layout, groove), about=drawer.code)
        yield _groove_shown(drawer, shown=shown)
    if family == SLIDING:
        yield _beside(drawer)
    if groove and not isinstance(joints.front, HalfBlindJoint) and family != BOX:
        thin = min(drawer.sizes.left_side, drawer.sizes.right_side)
        if groove.in_side:
            yield wood_behind_groove(thin, groove.depth, "side", about=drawer.code)
        behind = wood_behind_groove(drawer.sizes.front, groove.depth, "front", about=drawer.code)
        yield from of_the_box(drawers, (behind,))


def _back(spec: UnitSpec, first: Drawer) -> Finding:
    """A back needs no lap and is no wider than its box: it is joined as nearly as it can be."""
    front = spec.drawers.front_joint.kind
    return Finding(
        rule="back as the front",
        verdict=Verdict.CAUTION,
        message=f"A back has no {front}: no wider than its box, it hides nothing; it is dovetailed through.",
        remedy="Choose the through dovetail for the back, or a housing.",
        about=first.code,
        source="common practice",
    )


def _ends_shown(drawer: Drawer, *, shown: bool) -> Finding:
    """Whether the ends of the sides show at the face of the drawer."""
    covered = "Another front covers the ends of the sides."
    return Finding(
        rule="ends at the face",
        verdict=Verdict.CAUTION if shown else Verdict.PASS,
        message="The ends of the sides show at the face of the drawer." if shown else covered,
        remedy="Screw an applied front to the box, or choose a joint with a lap." if shown else "",
        about=drawer.code,
        source="geometry of the joint",
    )


def _groove_shown(drawer: Drawer, *, shown: bool) -> Finding:
    """The groove of a side leaves through the end of its lowest tail, which here is at the face."""
    message = say(
        "The groove leaves the sides through the ends of their lowest tails, at the face: stop it {} short "
        "of the front end.",
        drawer.sizes.front,
    )
    return Finding(
        rule="groove at the face",
        verdict=Verdict.CAUTION if shown else Verdict.PASS,
        message=message if shown else "The show front covers the ends of the grooves.",
        remedy="Stop the groove in the sides, use slips, or screw an applied front to the box."
        if shown
        else "",
        about=drawer.code,
        source="geometry of the joint",
    )


def _beside(drawer: Drawer) -> Finding:
    beside = (drawer.sizes.face.width - drawer.sizes.width) / 2
    return at_least(
        "front beyond the side",
        beside,
        BESIDE_LEAST,
        say(
            "The front goes on {} beyond the side; beside its socket it needs {:bare}.", beside, BESIDE_LEAST
        ),
        "Choose an overlay front, or slides, which make the box narrower than its front.",
        about=drawer.code,
        source="common practice: the wood beside a socket splits off",
    )


def _covered(drawer: Drawer, *, is_divided: bool) -> Finding:
    """Whether a front before the case covers every edge of its opening.

    Where no divider parts two openings, it covers their sides, and the box above and below.
    """
    face, opening = drawer.sizes.face, drawer.sizes.opening
    foot = opening.bottom if is_divided else opening.bottom + drawer.run.foot
    top = opening.bottom + opening.height if is_divided else foot + drawer.sizes.height
    least = min(
        opening.left - face.left,
        face.right - opening.left - opening.width,
        foot - face.bottom,
        face.top - top,
    )
    return at_least(
        "front covers its opening",
        least,
        COVER_LEAST,
        say("The front covers the edges of its opening by at least {:down}.", least)
        if least >= 0
        else say("The front leaves {} of its opening open.", -least),
        "Let the fronts be shared over the dividers, or make the gaps narrower.",
        about=drawer.code,
        verdict=Verdict.STOP if least < 0 else Verdict.CAUTION,
        source="common practice",
    )


def _bead(style: CockBeaded, drawer: Drawer) -> Finding:
    rabbet, lap = bead_rabbet(style, drawer), drawer.sizes.lap
    return at_most(
        "bead in the lap",
        rabbet,
        lap,
        say("The bead goes {} in from the face; the lap is {:bare} thick.", rabbet, lap),
        say("Let it go in {:down}, or make the lap thicker: it would cut into the sockets.", lap),
        about=drawer.code,
        source="geometry of the joint",
    )


def _filled(drawer: Drawer) -> Finding:
    """Whether an inset front on slides fills its opening, which the box does not."""
    face, opening = drawer.sizes.face, drawer.sizes.opening
    gap = (opening.width - face.width) / 2
    return at_most(
        "front fills its opening",
        gap,
        SIDE_GAP_MOST,
        say("Beside the front there is {} at each end.", gap),
        "Screw an applied front to the box, or slide the sides into a wider front.",
        about=drawer.code,
        verdict=Verdict.CAUTION,
        source="common practice",
    )


def _slots(spec: UnitSpec, drawer: Drawer, climate: Climate, ledger: Ledger) -> Finding:
    """How long the slots are through which the show front is screwed, so that it can move on the box."""
    apart = max(0.0, drawer.sizes.front_height - 2 * FROM_EDGE)
    slot = ledger.under(drawer.sizes.code).take(
        "front_slot",
        rules.slot_of_a_front,
        apart=apart,
        coefficient=across(spec.woods.of("fronts"), ledger),
        change=climate.wettest - climate.driest,
        screw=SCREW,
    )
    return Finding(
        rule="slots for the show front",
        verdict=Verdict.PASS,
        message=say(
            "Screw the show front from inside: the lower row of screws fast, the upper row, {} above it, "
            "through slots {:up} long, up and down, under washers.",
            apart,
            slot,
        ),
        about=drawer.code,
        source=HANDBOOK,
    )


def _bottom(spec: UnitSpec, drawer: Drawer, climate: Climate, ledger: Ledger) -> Iterator[Finding]:
    bottom, groove = spec.drawers.bottom, spec.drawers.groove
    if not isinstance(bottom, SolidBottom):
        return
    if spec.drawers.screwed_under:
        slot = ledger.under(drawer.sizes.code).take(
            "bottom_slot",
            rules.slot_of_a_front,
            apart=drawer.bottom.deep,
            coefficient=across(spec.woods.of("bottoms"), ledger),
            change=climate.wettest - climate.driest,
            screw=SCREW,
        )
        yield Finding(
            rule="slots for the bottom",
            verdict=Verdict.PASS,
            message=say(
                "Screw the bottom fast along the front; towards the back through slots up to {:up} long, "
                "front to back.",
                slot,
            ),
            about=drawer.code,
            source=HANDBOOK,
        )
    elif bottom.edges == "plain":
        yield at_most(
            "plain bottom fits its groove",
            abs(bottom.thickness - groove.width),
            1 / 64,
            say("The bottom is {} thick and its groove {} wide.", bottom.thickness, groove.width),
            say("Cut the groove {} wide, or raise the edges of the bottom.", bottom.thickness),
            about=drawer.code,
            source="common practice",
        )


def _gaps(
    spec: UnitSpec, face: Face, climate: Climate, drawers: Sequence[Drawer], ledger: Ledger
) -> Iterator[Finding]:
    """What stays between fronts that stand before the case, above and beside each, when they are wettest."""
    moves = across(spec.woods.of("fronts"), ledger)
    overhangs = spec.top.overhang_front > 0
    fronts = Fronts(drawers)
    for drawer in drawers:
        own, under = drawer.sizes.face, ledger.under(drawer.sizes.code)
        above = fronts.above(drawer)
        if above is not None or overhangs:
            high = above.sizes.face.bottom if above else face.body_height
            yield _gap(
                under.take(
                    "front_gap_wettest",
                    rules.gap_when_wettest,
                    gap=high - own.top,
                    front=own.height,
                    other=above.sizes.face.height if above else 0.0,
                    coefficient=moves,
                    swelling=climate.swelling,
                ),
                high - own.top,
                f"{drawer.code} and {above.code}" if above else f"{drawer.code} and the top",
                drawer.code,
            )
        beside = fronts.beside(drawer)
        if beside is not None:
            gap = beside.sizes.face.left - own.right
            yield _gap(gap, gap, f"{drawer.code} and {beside.code}", drawer.code)


def _gap(wettest: Inches, now: Inches, between: str, about: str) -> Finding:
    return at_least(
        "gap between fronts",
        wettest,
        GAP_LEAST,
        say("Between {} there is {} now, and {:.3} when they are wettest.", between, now, wettest),
        say("Make the gap {:up} or wider.", now + GAP_LEAST - wettest),
        about=about,
        source=HANDBOOK,
    )


class Fronts:
    """The fronts of a unit in the order of their lower edges, and of their left ends, to find neighbours."""

    def __init__(self, drawers: Sequence[Drawer]) -> None:
        self._up = sorted(drawers, key=lambda each: each.sizes.face.bottom)
        self._bottoms = [each.sizes.face.bottom for each in self._up]
        self._right = sorted(drawers, key=lambda each: each.sizes.face.left)
        self._lefts = [each.sizes.face.left for each in self._right]

    def above(self, drawer: Drawer) -> Drawer | None:
        """The next front above one, over some of its length."""
        own = drawer.sizes.face
        for other in self._up[bisect_right(self._bottoms, own.bottom + TOLERANCE) :]:
            face = other.sizes.face
            if min(own.right, face.right) > max(own.left, face.left):
                return other
        return None

    def beside(self, drawer: Drawer) -> Drawer | None:
        """The next front at the right of one, over some of its height."""
        own = drawer.sizes.face
        for other in self._right[bisect_right(self._lefts, own.left + TOLERANCE) :]:
            face = other.sizes.face
            if min(own.top, face.top) > max(own.bottom, face.bottom):
                return other
        return None
