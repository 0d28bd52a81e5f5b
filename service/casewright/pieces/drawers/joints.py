"""The joints of the drawers: half-blind at the front, through at the back, set out as a family."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.choose import Choice
from casewright.joinery.defaults import pin_habit, slope_habit
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import HalfBlindJoint, half_blind
from casewright.joinery.families.through.joint import Through, ThroughJoint, through
from casewright.joinery.family import BoardEnd, SetOut, shared_pitch
from casewright.joinery.groove import Groove
from casewright.joinery.limits import LIMITS
from casewright.joinery.sourced import Sourced
from casewright.joinery.spacing import TOLERANCE, flare, most_tails
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches, Number, Percent
from casewright.pieces.asked.drawer_spec import Joint
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.batch_gauges import SIDES, BatchGauges, batch_gauges, full_sides
from casewright.pieces.drawers.sizes import NOTHING, CannotBuild, DrawerMake, DrawerSizes
from casewright.wood.species import wood

CHOSEN = "usual, by the joinery's own table of defaults; type your own in the unit file"
OWN = "usual in this shop, by its own numbers; type another in the unit file"


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerJoints:
    """The two joints of a drawer, each cut twice.

    Attributes:
        front: sides into front
        back: sides into back
        front_choices: tail counts that pass, ranked
        back_choices: likewise for the back
        front_set_out: how the front joints of the unit are set out
        back_set_out: likewise the back joints
        front_drawn: the end of the side at the front as it was drawn, by which the family is chosen
        back_drawn: likewise at the back
    """

    front: HalfBlindJoint
    back: ThroughJoint
    front_choices: tuple[Choice, ...]
    back_choices: tuple[Choice, ...]
    front_set_out: SetOut
    back_set_out: SetOut
    front_drawn: BoardEnd
    back_drawn: BoardEnd


def drawer_joints(
    spec: UnitSpec, sizes: tuple[DrawerSizes, ...], shared: DrawerMake, shop: Shop, ledger: Ledger
) -> tuple[DrawerJoints, ...]:
    """Sets out the joints of every drawer of the unit.

    Tail counts that the maker left out are ranked, each row's spacing against that of the family, so that the
    fronts look cut by one hand.

    Args:
        spec: what the maker chose
        sizes: the drawers
        shared: what they share
        shop: the shop's rack, its usual numbers, and what looks well to it
        ledger: keeps the working

    Returns:
        The joints, in the order of the drawers.

    Raises:
        CannotBuild: a side is too low for a single tail

    Source: common practice; each rule of the joinery names its own.
    """
    drawers = spec.drawers
    groove = Groove(
        height=drawers.groove.height,
        width=drawers.groove.width,
        depth=drawers.groove.depth,
        in_side=drawers.groove.slips is None,
    )
    rack, usual = shop.rack, shop.usual
    front = _setting(spec, "front_joint", shared, shop, usual.half_pin_front, groove, ledger)
    back = _setting(spec, "back_joint", shared, shop, usual.half_pin_back, None, ledger)
    # By what was drawn: a measured opening must not change the tails of drawers that may already be cut.
    drawn = {
        each.code: (
            BoardEnd(height=each.drawn_height, tail_length=shared.gauge_1),
            BoardEnd(height=each.drawn_height - each.height + each.back_height, tail_length=shared.back),
        )
        for each in sizes
    }
    first = tuple(_first_of_rows(sizes))
    front_family = shared_pitch(front, (drawn[each.code][0] for each in first))
    back_family = shared_pitch(back, (drawn[each.code][1] for each in first))
    joints = []
    gauges = batch_gauges(spec, sizes, ledger.under("drawers"))
    for each in sizes:
        row, under = row_of(spec.rows, each.opening.row_mark), ledger.under(each.code)
        fronts, front_tails = _tails(each.code, front, front_end(each), front_family, row.front_tails)
        backs, back_tails = _tails(each.code, back, back_end(each), back_family, row.back_tails)
        with _of(each, "front"):
            asked = _half_blind(spec, each, front, rack, front_tails, gauges)
            front_joint = half_blind(asked, under.under("front_joint"))
        with _of(each, "back"):
            back_joint = through(
                _through(spec, each, back, rack, back_tails, gauges), under.under("back_joint")
            )
        joints.append(
            DrawerJoints(
                front=front_joint,
                back=back_joint,
                front_choices=fronts,
                back_choices=backs,
                front_set_out=front,
                back_set_out=back,
                front_drawn=drawn[each.code][0],
                back_drawn=drawn[each.code][1],
            )
        )
    return tuple(joints)


@contextmanager
def _of(sizes: DrawerSizes, end: str) -> Iterator[None]:
    """Says of which drawer a joint is that cannot be laid out: one setting goes for all of them."""
    try:
        yield
    except ValueError as error:  # CannotBeLaidOut is one
        raise CannotBuild(say("drawer {}, {} joint: {}", sizes.code, end, error.args[0])) from None


def front_end(sizes: DrawerSizes) -> BoardEnd:
    """The end of a drawer's side that goes into its front.

    Args:
        sizes: the drawer

    Returns:
        The end as it is now.

    Source: geometry of the joint.
    """
    return BoardEnd(height=sizes.height, tail_length=sizes.gauge_1)


def back_end(sizes: DrawerSizes) -> BoardEnd:
    """The end of a drawer's side that its back stands in, from the lower edge of the back up.

    Args:
        sizes: the drawer

    Returns:
        The end as it is now.

    Source: geometry of the joint.
    """
    return BoardEnd(height=sizes.back_height, tail_length=sizes.back)


def _setting(
    spec: UnitSpec,
    name: str,
    shared: DrawerMake,
    shop: Shop,
    half_pin: Sourced,
    groove: Groove | None,
    ledger: Ledger,
) -> SetOut:
    joint: Joint = getattr(spec.drawers, name)
    side = shared.drawers.side
    softwood = not wood(spec.woods.drawers.wood).hardwood
    under = ledger.under(f"drawers.{name}")

    def chosen(field: str, typed: float | None, habit: Sourced, kind: object) -> float:
        if typed is not None:
            return typed
        return under.given(field, habit.value, OWN if habit.basis == "learned" else CHOSEN, kind)

    return SetOut(
        half_pin=chosen("half_pin", joint.half_pin, half_pin, Inches),
        pin=chosen("pin", joint.pin, pin_habit(side, shop.usual), Inches),
        slope=chosen("slope", joint.slope, slope_habit(softwood, shop.usual), Number),
        side=side,
        kerf=shop.rack.kerf,
        groove=groove,
        looks=shop.looks,
    )


def _first_of_rows(sizes: tuple[DrawerSizes, ...]) -> Iterable[DrawerSizes]:
    return (each for each in sizes if each.opening.is_first)


def _tails(
    code: str, setting: SetOut, end: BoardEnd, family: float | None, typed: int | None
) -> tuple[tuple[Choice, ...], int]:
    """The ranked counts and the one that is used: the maker's own, the best, or the most that fit at all."""
    choices = setting.choices(end, family)
    if typed is not None:
        return choices, typed
    if choices:
        return choices, choices[0].count
    height, narrowing = end.height, flare(end.tail_length, setting.slope)
    least = 1 / 8
    count = most_tails(height, setting.half_pin, setting.pin, narrowing, max(least, setting.side))
    count = count or most_tails(height, setting.half_pin, setting.pin, narrowing, least)
    if count == 0:
        need = 2 * setting.half_pin + 2 * narrowing + max(setting.side, LIMITS.neck_least.value)
        raise CannotBuild(
            say(
                "drawer {}: a board {} high holds no tail between half pins of "
                "{:bare}; make it at least {:up}, or the half pins smaller",
                code,
                height,
                setting.half_pin,
                need,
            )
        )
    return (), count


def _half_blind(
    spec: UnitSpec, sizes: DrawerSizes, setting: SetOut, rack: Rack, tails: int, gauges: BatchGauges
) -> HalfBlind:
    """The front joint as it is asked for, with what was measured of its parts."""
    found = spec.measured.parts
    sides = [found.get(f"{sizes.code}-{mark}", NOTHING) for mark in SIDES]
    front = found.get(f"{sizes.code}-F", NOTHING)
    heights = [part.width for part in sides if part.width]
    height = min(heights) if heights else sizes.height
    full = tuple(full_sides(spec, sizes))
    measured = tuple(side for side in gauges.in_rabbet if side[0] in dict(full))
    return HalfBlind(
        height=height,
        front=sizes.front,
        lap=sizes.lap,
        side=max(sizes.left_side, sizes.right_side),
        rabbet=sizes.rabbet,
        half_pin=setting.half_pin,
        pin=setting.pin,
        tails=tails,
        slope=setting.slope,
        proud=spec.drawers.proud,
        front_excess=max(0.0, (front.width or sizes.height) - height),
        groove=setting.groove,
        rack=rack,
        locked_gauge_1=sizes.gauge_1 if front.thickness else None,
        can_be_replaced=not spec.matched_fronts,
        measured_tail_length=max((part.tail_length for part in sides if part.tail_length), default=None),
        measured_socket_depth=front.socket_depth,
        measured_sides=measured,
        full_sides=full if measured else (),
        shared_settings=tuple(side for side in gauges.settings if side[0] in dict(full)),
        front_moisture=front.moisture,
        side_moisture=_furthest(front.moisture, [part.moisture for part in sides if part.moisture]),
        front_gravity=wood(spec.woods.of("fronts").wood).gravity,
        side_gravity=wood(spec.woods.drawers.wood).gravity,
        mark=f"{spec.code}-{sizes.code}",
    )


def _furthest(front: Percent | None, sides: list[Percent]) -> Percent | None:
    """The moisture of the side that is furthest from the front's."""
    return max(sides, key=lambda side: abs(side - (front or 0.0)), default=None)


def _through(
    spec: UnitSpec, sizes: DrawerSizes, setting: SetOut, rack: Rack, tails: int, gauges: BatchGauges
) -> Through:
    """The back joint as it is asked for; sides that agree within 1/64 share the setting on the back."""
    left, right = (gauges.for_back.get(mark, thick) for mark, thick in full_sides(spec, sizes))
    apart = abs(left - right) > TOLERANCE
    return Through(
        height=sizes.back_height,
        side=max(left, right),
        ends=(("left", left), ("right", right)) if apart else (),
        back=sizes.back,
        rabbet=0.0,
        half_pin=setting.half_pin,
        pin=setting.pin,
        tails=tails,
        slope=setting.slope,
        lower_edge_offset=sizes.back_foot,
        rack=rack,
        mark=f"{spec.code}-{sizes.code}",
    )
