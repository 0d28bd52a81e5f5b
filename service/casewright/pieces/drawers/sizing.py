"""The sizes of each drawer, from the opening that it goes into and the seasons that it must pass."""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.families.box.sizes import usual_finger
from casewright.joinery.lap import lap_left
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import quickly_made
from casewright.measure.rounding import down_to
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import AppliedFront, CockBeaded
from casewright.pieces.asked.drawer_spec import Drawers, PlyBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.ends import HALF_BLIND, SLIDING, End
from casewright.pieces.drawers.faces import front_face
from casewright.pieces.drawers.make import DrawerMake
from casewright.pieces.drawers.notches import Boxed, notch_sizes
from casewright.pieces.drawers.run_sizes import box_height, box_length, box_width, side_gap
from casewright.pieces.drawers.sizes import NOTHING, SHORT_BACKS, CannotBuild, DrawerSizes, Gaps, Inside
from casewright.pieces.layout.openings import Opening
from casewright.pieces.layout.season import Climate
from casewright.pieces.rules import drawer_rules as rules
from casewright.pieces.rules import front_rules

HEADROOM = 1 / 8
"""Under the obstruction above a drawer: CPSC guidance on the volume of clothing storage [in]."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class _Boards:
    """The thicknesses of a drawer's boards, as measured or as drawn [in]."""

    face: float
    front: float
    left: float
    right: float
    back: float


def drawer_sizes(
    spec: UnitSpec,
    opening: Opening,
    shared: DrawerMake,
    climate: Climate,
    side_shrinkage: float,
    rack: Rack,
    ledger: Ledger,
) -> DrawerSizes:
    """The sizes of one drawer.

    Args:
        spec: what the maker chose
        opening: the hole it goes into, as designed or as measured
        shared: what all drawers of the unit share
        climate: the moisture contents between which the wood moves
        side_shrinkage: how much shallower the case gets when driest [in]
        rack: the shop's cutters
        ledger: keeps the working

    Returns:
        The sizes; measured thicknesses take the place of designed ones.

    Raises:
        CannotBuild: the opening is too small for a drawer of this make

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    under, drawers = ledger.under(opening.code), shared.drawers
    boards = _boards(spec, opening, shared)
    fits = _fits(opening.height, shared, climate, under)
    height = _box_height(opening.height, fits, shared, rack, under)
    width = box_width(opening, drawers, shared.slide, (boards.left, boards.right), under)
    length = box_length(opening, drawers, shared.slide, side_shrinkage, boards.face, under)
    lap = _lap(opening, shared, boards, under)
    box = _Box(shared=shared, boards=boards, width=width, under=under)
    box_start, whole = box.reach(length)
    start = box.taken_in_front(lap)
    bottom_under = _under_the_sides(spec, under) if drawers.screwed_under else 0.0
    side_height = box.board_height(height, bottom_under)
    back_height, back_foot = _back(drawers, side_height, under)
    _check_room(opening, height, width, whole, back_height)
    joint_height = box.joint_height(side_height)
    drawn_height = float(height)
    if opening.height != opening.designed_height:
        drawn = _fits(opening.designed_height, shared, climate, UNKEPT)
        drawn_height = _box_height(opening.designed_height, drawn, shared, rack, UNKEPT)
    inside = _inside(opening, drawers, box, whole, bottom_under)
    return DrawerSizes(
        opening=opening,
        height=height,
        drawn_height=drawn_height,
        width=width,
        length=length,
        stand=drawers.stands_before,
        face=front_face(
            opening,
            shared,
            boards.face,
            (width, fits if drawers.has_box_front else height),
            side_gap(opening, drawers, under),
            bottom_under,
            under,
        ),
        box_start=box_start,
        box_length=whole,
        front=boards.front,
        front_length=box.across(shared.at_front, "front_length"),
        front_height=joint_height,
        left_side=boards.left,
        right_side=boards.right,
        back=boards.back,
        back_length=box.across(shared.at_back, "back_length"),
        gauge_1=shared.gauge_1 if shared.at_front.family == HALF_BLIND else boards.front,
        lap=lap,
        rabbet=shared.rabbet,
        side_start=start,
        side_length=box.side_length(whole, start, lap),
        side_height=side_height,
        foot=bottom_under,
        joint_height=joint_height,
        back_height=back_height,
        back_foot=back_foot,
        set_in=shared.at_back.set_in,
        inside=inside,
        gaps=_gaps(opening, height, shared, climate, under),
        joined="BF" if drawers.has_box_front else "F",
        notch=notch_sizes(
            spec,
            opening,
            Boxed(
                width=width,
                length=whole,
                front=boards.front,
                left_side=boards.left,
                right_side=boards.right,
                back=boards.back,
                depth=inside.depth,
            ),
            (shared.at_back, shared.at_notch),
            under,
        ),
    )


def _boards(spec: UnitSpec, opening: Opening, shared: DrawerMake) -> _Boards:
    drawers = shared.drawers

    def thick(mark: str, drawn: Inches) -> Inches:
        return spec.measured.parts.get(f"{opening.code}-{mark}", NOTHING).thickness or drawn

    face = thick("F", drawers.front)
    return _Boards(
        face=face,
        front=thick("BF", shared.front) if drawers.has_box_front else face,
        left=thick("SL", drawers.side),
        right=thick("SR", drawers.side),
        # Of the backs beside a notch the thicker one says how deep the drawer is.
        back=max(thick(mark, thick("B", shared.back)) for mark in SHORT_BACKS),
    )


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class _Box:
    """The box of a drawer: what its joints make of its boards."""

    shared: DrawerMake
    boards: _Boards
    width: float
    under: Ledger

    def reach(self, length: Inches) -> tuple[Inches, Inches]:
        """Where the board that the sides are joined to begins, and from there to the ends of the sides."""
        drawers = self.shared.drawers
        if isinstance(drawers.style, AppliedFront):
            behind = self.under.take(
                "box_length", front_rules.behind_the_show_front, length=length, front=self.boards.face
            )
            return self.boards.face, behind
        stand = drawers.stands_before
        if stand == 0 or drawers.has_box_front:
            return 0.0, length
        return -stand, self.under.take("box_length", front_rules.whole_length, length=length, stand=stand)

    def taken_in_front(self, lap: Inches) -> Inches:
        """What the front joint takes off the length of the sides."""
        end = self.shared.at_front
        if end.family == SLIDING:
            return self.under.take(
                "side_start", front_rules.taken_by_the_socket, front=self.boards.front, depth=end.reach
            )
        return lap if end.family == HALF_BLIND else end.lip

    def side_length(self, length: Inches, start: Inches, lap: Inches) -> Inches:
        if self.shared.at_front.family == HALF_BLIND and self.shared.at_back.lip == 0:
            return self.under.take("side_length", rules.side_length, length=length, lap=lap)
        return self.under.take(
            "side_length",
            front_rules.side_between,
            length=length,
            at_front=start,
            at_back=self.shared.at_back.lip,
        )

    def across(self, end: End, name: str) -> Inches:
        """The length of the board across the sides: as wide as the box, or between them."""
        if not end.is_between:
            return self.width
        boards = self.boards
        return self.under.take(
            name,
            front_rules.between_the_sides,
            width=self.width,
            left=boards.left,
            right=boards.right,
            reach=end.reach,
        )

    def board_height(self, height: Inches, bottom: Inches) -> Inches:
        if not bottom:
            return height
        return self.under.take("side_height", front_rules.above_the_bottom, height=height, bottom=bottom)

    def joint_height(self, height: Inches) -> Inches:
        style = self.shared.drawers.style
        if not isinstance(style, CockBeaded):
            return height
        return self.under.take("joint_height", front_rules.below_the_bead, height=height, bead=style.bead)


def _lap(opening: Opening, shared: DrawerMake, boards: _Boards, under: Ledger) -> Inches:
    """The lap of half-blind dovetails: of a front that was planed to another thickness, what is left."""
    if shared.at_front.family != HALF_BLIND or boards.front == shared.front:
        return shared.lap
    lap = under.take("lap", lap_left, front=boards.front, gauge_1=shared.gauge_1)
    if lap > 0:
        return lap
    mark = "BF" if shared.drawers.has_box_front else "F"
    raise CannotBuild(
        say(
            "measured.parts.{}-{}: a front {} thick has no lap left before sockets "
            "{:bare} deep; make a thicker front, or change the lap of the whole batch",
            opening.code,
            mark,
            boards.front,
            shared.gauge_1,
        )
    )


def _under_the_sides(spec: UnitSpec, under: Ledger) -> Inches:
    """The thickness of a bottom that is screwed under the box."""
    return under.given("bottom_under", spec.drawers.bottom_thickness, "the bottom, under the sides", Inches)


def _fits(opening: float, shared: DrawerMake, climate: Climate, under: Ledger) -> float:
    """As high as the opening lets a drawer be, in all seasons."""
    clearances, end = shared.drawers.clearances, shared.at_front
    lower = end.whole_fingers or shared.slide is not None
    return under.take(
        "height_that_fits" if lower else "height",
        rules.drawer_height,
        opening=opening,
        bottom_gap=clearances.bottom,
        top_gap=clearances.top,
        coefficient=max(shared.front_moves, shared.side_moves),
        swelling=climate.swelling,
    )


def _box_height(opening: float, fits: float, shared: DrawerMake, rack: Rack, under: Ledger) -> float:
    """What it is made: on slides no more than they leave; a whole number of fingers where that is asked."""
    end = shared.at_front
    most = box_height(opening, fits, shared.drawers, shared.slide, under)
    if not end.whole_fingers:
        return most
    finger = end.finger or usual_finger(most, min(shared.front, shared.drawers.side), rack.cutters)
    number = max(2, int(down_to(most / finger, 1.0)))
    return under.take("height", front_rules.whole_fingers, height=most, finger=finger, number=number)


def _gaps(opening: Opening, height: float, shared: DrawerMake, climate: Climate, under: Ledger) -> Gaps:
    def gap(name: str, coefficient: float, change: float) -> float:
        return under.take(
            f"gap_{name}",
            rules.gap_above,
            opening=opening.height,
            bottom_gap=shared.drawers.clearances.bottom,
            height=height,
            coefficient=coefficient,
            change=change,
        )

    wetter, drier = climate.wettest - climate.now, climate.driest - climate.now
    return Gaps(
        now=gap("now", shared.front_moves, 0.0),
        wettest_front=gap("wettest_front", shared.front_moves, wetter),
        wettest_side=gap("wettest_side", shared.side_moves, wetter),
        driest_front=gap("driest_front", shared.front_moves, drier),
        driest_side=gap("driest_side", shared.side_moves, drier),
    )


def _back(drawers: Drawers, height: float, under: Ledger) -> tuple[float, float]:
    """Height of the back, and how far its lower edge stands above that of the sides."""
    four = isinstance(drawers.bottom, PlyBottom) and drawers.bottom.hold == "four grooves"
    if four or drawers.screwed_under:
        return under.take("back_height", rules.full_back_height, height=height, drop=drawers.drop), 0.0
    groove = drawers.groove
    tall = under.take(
        "back_height",
        rules.back_height,
        height=height,
        groove_height=groove.height,
        groove_width=groove.width,
        drop=drawers.drop,
    )
    return tall, groove.height + groove.width


def _inside(opening: Opening, drawers: Drawers, box: _Box, length: float, bottom: float) -> Inside:
    under, boards, groove = box.under, box.boards, drawers.groove
    clear = under.take(
        "inside_width", rules.width_inside, width=box.width, left_side=boards.left, right_side=boards.right
    )
    return Inside(
        width=clear,
        between_slips=clear
        if groove.slips is None
        else under.take("between_slips", rules.between_slips, inside=clear, slip=groove.slip),
        depth=_inside_depth(box, length),
        height=under.take(
            "inside_height",
            front_rules.height_over_the_bottom,
            opening=opening.height,
            bottom=bottom,
            headroom=HEADROOM,
        )
        if bottom
        else under.take(
            "inside_height",
            rules.height_inside,
            opening=opening.height,
            groove_height=groove.height,
            groove_width=groove.width,
            headroom=HEADROOM,
        ),
    )


def _inside_depth(box: _Box, length: Inches) -> Inches:
    boards, set_in = box.boards, box.shared.at_back.set_in
    if not set_in:
        return box.under.take(
            "inside_depth", rules.depth_inside, length=length, front=boards.front, back=boards.back
        )
    return box.under.take(
        "inside_depth",
        front_rules.clear_depth,
        length=length,
        front=boards.front,
        back=boards.back,
        set_in=set_in,
    )


def _check_room(opening: Opening, height: float, width: float, length: float, back_height: float) -> None:
    """Refuses a drawer that has no size left in some direction."""
    if back_height < 1 / 2:
        raise CannotBuild(
            say(
                "opening {} is {} high, too low for a drawer with its groove "
                "and back; make it at least {:up}, or lower the groove",
                opening.code,
                opening.height,
                opening.height - back_height + 1 / 2,
            )
        )
    if width < 2 or length < 2:
        raise CannotBuild(
            say(
                "opening {} is {} wide and {} deep, too "
                "small for a drawer of this make; make the case larger or the clearances smaller",
                opening.code,
                opening.width,
                opening.depth,
            )
        )
    if height <= 0:
        raise CannotBuild(f"opening {opening.code} is too low for any drawer; make it at least 2 in high")
