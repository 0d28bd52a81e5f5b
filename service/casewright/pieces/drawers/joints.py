"""The joints of the drawers: sides into fronts, sides into backs, dovetails set out as a family."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from casewright.joinery.choose import Choice
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import HalfBlindJoint, half_blind
from casewright.joinery.families.through.joint import Through, ThroughJoint, through
from casewright.joinery.family import BoardEnd, SetOut, shared_pitch
from casewright.joinery.joint import Joint
from casewright.joinery.limits import LIMITS
from casewright.joinery.spacing import TOLERANCE, flare, most_tails
from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.saying import say
from casewright.measure.units import Percent
from casewright.pieces.asked.drawer_fronts import Inset
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.batch_gauges import SIDES, BatchGauges, batch_gauges, full_sides
from casewright.pieces.drawers.ends import HALF_BLIND, End
from casewright.pieces.drawers.make import DrawerMake
from casewright.pieces.drawers.notch_joints import NotchJoints, notch_joints
from casewright.pieces.drawers.other_ends import other_end
from casewright.pieces.drawers.set_outs import drawer_groove, set_out
from casewright.pieces.drawers.sizes import NOTHING, CannotBuild, DrawerSizes
from casewright.wood.species import wood


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerJoints:
    """The two joints of a drawer, each cut twice.

    Attributes:
        front: sides into front, or into the box's own front
        back: sides into back
        front_family: the name of the front joint in the joinery, such as `half-blind`
        back_family: likewise of the back joint
        front_choices: tail counts that pass, ranked; none for another joint than a dovetail
        back_choices: likewise for the back
        front_set_out: how the front joints of the unit are set out; None for another joint than a dovetail
        back_set_out: likewise the back joints
        front_drawn: the end of the side at the front as it was drawn, by which the family is chosen
        back_drawn: likewise at the back
        notch: those of the inner sides around a notch; None without one
    """

    front: Joint
    back: Joint
    front_family: str
    back_family: str
    front_choices: tuple[Choice, ...]
    back_choices: tuple[Choice, ...]
    front_set_out: SetOut | None
    back_set_out: SetOut | None
    front_drawn: BoardEnd
    back_drawn: BoardEnd
    notch: NotchJoints | None = None

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was found of all of them; around a notch what is not said of the back already."""
        found = (*self.front.findings, *self.back.findings)
        if self.notch is None:
            return found
        return (*found, *(each for each in self.notch.findings if each not in found))

    @property
    def half_blind(self) -> HalfBlindJoint | None:
        """The front joint where it is a half-blind dovetail."""
        return self.front if isinstance(self.front, HalfBlindJoint) else None

    @property
    def through(self) -> ThroughJoint | None:
        """The back joint where it is a through dovetail."""
        return self.back if isinstance(self.back, ThroughJoint) else None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tails:
    """How the tails at one end of all sides are set out: their setting, the ends, and the rows' pitch."""

    setting: SetOut
    family: float | None


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
        CannotBuild: a side is too low for a single tail, or a joint has no room in its boards

    Source: common practice; each rule of the joinery names its own.
    """
    usual, groove = shop.usual, drawer_groove(spec)
    # By what was drawn: a measured opening must not change the tails of drawers that may already be cut.
    drawn = {each.code: (_drawn_front(each, shared), _drawn_back(each, shared)) for each in sizes}
    first = tuple(_first_of_rows(sizes))
    front = _tails_of(
        shared.at_front,
        lambda: set_out(spec, "front_joint", shop, usual.half_pin_front, groove, ledger),
        (drawn[each.code][0] for each in first),
    )
    back = _tails_of(
        shared.at_back,
        lambda: set_out(spec, "back_joint", shop, usual.half_pin_back, None, ledger),
        (drawn[each.code][1] for each in first),
    )
    gauges = batch_gauges(spec, sizes, ledger.under("drawers"))
    joints = []
    for each in sizes:
        at = _At(spec=spec, sizes=each, shared=shared, shop=shop, gauges=gauges, ledger=ledger)
        end = "front"
        try:
            fronts, front_joint = at.front(front)
            end = "back"
            backs, back_joint = at.back(back)
            end = "notch"
            notch = at.notch(back_joint)
        except ValueError as error:  # CannotBeLaidOut is one: one setting goes for all, so it says of which
            raise CannotBuild(say("drawer {}, {} joint: {}", each.code, end, error.args[0])) from None
        joints.append(
            DrawerJoints(
                front=front_joint,
                back=back_joint,
                front_family=shared.at_front.family,
                back_family=shared.at_back.family,
                front_choices=fronts,
                back_choices=backs,
                front_set_out=front.setting if front else None,
                back_set_out=back.setting if back else None,
                front_drawn=drawn[each.code][0],
                back_drawn=drawn[each.code][1],
                notch=notch,
            )
        )
    return tuple(joints)


def _tails_of(end: End, setting: Callable[[], SetOut], ends: Iterable[BoardEnd]) -> _Tails | None:
    if not end.is_dovetailed:
        return None
    held = setting()
    return _Tails(setting=held, family=shared_pitch(held, ends))


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class _At:
    """One drawer, at which joints are worked out."""

    spec: UnitSpec
    sizes: DrawerSizes
    shared: DrawerMake
    shop: Shop
    gauges: BatchGauges
    ledger: Ledger

    def front(self, tails: _Tails | None) -> tuple[tuple[Choice, ...], Joint]:
        under = self.ledger.under(self.sizes.code).under("front_joint")
        if tails is None:
            end = self.shared.at_front
            return (), other_end(self.spec, self.sizes, end, self.shop.rack, under, at_back=False)
        row = row_of(self.spec.rows, self.sizes.opening.row_mark)
        choices, count = _tails(self.sizes.code, tails, front_end(self.sizes), row.front_tails)
        if self.shared.at_front.family == HALF_BLIND:
            asked = _half_blind(self.spec, self.sizes, tails.setting, self.shop, count, self.gauges)
            return choices, half_blind(asked, under)
        return choices, through(self._through_front(tails.setting, count), under)

    def back(self, tails: _Tails | None) -> tuple[tuple[Choice, ...], Joint]:
        under = self.ledger.under(self.sizes.code).under("back_joint")
        if tails is None:
            end = self.shared.at_back
            return (), other_end(self.spec, self.sizes, end, self.shop.rack, under, at_back=True)
        row = row_of(self.spec.rows, self.sizes.opening.row_mark)
        choices, count = _tails(self.sizes.code, tails, back_end(self.sizes), row.back_tails)
        return choices, through(self._through_back(tails.setting, count), under)

    def notch(self, back: Joint) -> NotchJoints | None:
        """The joints of the inner sides around its notch, dovetailed as its back is."""
        return notch_joints(self.spec, self.sizes, self.shared.at_notch, back, self.shop.rack, self.ledger)

    def _through_back(self, setting: SetOut, tails: int) -> Through:
        """The back joint as it is asked for; sides that agree within 1/64 share the setting on the back."""
        sizes = self.sizes
        return Through(
            height=sizes.back_height,
            back=sizes.back,
            lower_edge_offset=sizes.back_foot,
            **self._through(setting, tails),
        )

    def _through_front(self, setting: SetOut, tails: int) -> Through:
        sizes = self.sizes
        return Through(
            height=sizes.joint_height,
            back=sizes.front,
            lower_edge_offset=0.0,
            **self._through(setting, tails),
        )

    def _through(self, setting: SetOut, tails: int) -> dict[str, Any]:
        left, right = self.sizes.left_side, self.sizes.right_side
        if self.gauges.for_back:
            sides = full_sides(self.spec, self.sizes)
            left, right = (self.gauges.for_back.get(mark, thick) for mark, thick in sides)
        apart = abs(left - right) > TOLERANCE
        return {
            "side": max(left, right),
            "ends": (("left", left), ("right", right)) if apart else (),
            "rabbet": 0.0,
            "half_pin": setting.half_pin,
            "pin": setting.pin,
            "tails": tails,
            "slope": setting.slope,
            "rack": self.shop.rack,
            "mark": f"{self.spec.code}-{self.sizes.code}",
        }


def front_end(sizes: DrawerSizes) -> BoardEnd:
    """The end of a drawer's side that goes into its front.

    Args:
        sizes: the drawer

    Returns:
        The end as it is now.

    Source: geometry of the joint.
    """
    return BoardEnd(height=sizes.joint_height, tail_length=sizes.gauge_1)


def back_end(sizes: DrawerSizes) -> BoardEnd:
    """The end of a drawer's side that its back stands in, from the lower edge of the back up.

    Args:
        sizes: the drawer

    Returns:
        The end as it is now.

    Source: geometry of the joint.
    """
    return BoardEnd(height=sizes.back_height, tail_length=sizes.back)


def _drawn_front(sizes: DrawerSizes, shared: DrawerMake) -> BoardEnd:
    drawn = sizes.drawn_height - sizes.height + sizes.joint_height
    return BoardEnd(height=drawn, tail_length=shared.gauge_1)


def _drawn_back(sizes: DrawerSizes, shared: DrawerMake) -> BoardEnd:
    drawn = sizes.drawn_height - sizes.height + sizes.back_height
    return BoardEnd(height=drawn, tail_length=shared.back)


def _first_of_rows(sizes: tuple[DrawerSizes, ...]) -> Iterable[DrawerSizes]:
    return (each for each in sizes if each.opening.is_first)


def _tails(code: str, tails: _Tails, end: BoardEnd, typed: int | None) -> tuple[tuple[Choice, ...], int]:
    """The ranked counts and the one that is used: the maker's own, the best, or the most that fit at all."""
    setting = tails.setting
    choices = setting.choices(end, tails.family)
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
    spec: UnitSpec, sizes: DrawerSizes, setting: SetOut, shop: Shop, tails: int, gauges: BatchGauges
) -> HalfBlind:
    """The front joint as it is asked for, with what was measured of its parts."""
    found, drawers = spec.measured.parts, spec.drawers
    is_boxed, sides, front = drawers.has_box_front, [NOTHING], NOTHING
    if found:
        sides = [found.get(f"{sizes.code}-{mark}", NOTHING) for mark in SIDES]
        front = found.get(f"{sizes.code}-{'BF' if is_boxed else 'F'}", NOTHING)
    heights = [part.width for part in sides if part.width]
    height = (min(heights) if heights else sizes.side_height) - (sizes.side_height - sizes.joint_height)
    # Lips and beads are no part of what the joint is laid out on.
    plain = isinstance(drawers.style, Inset) or is_boxed
    before = spec.woods.drawers if is_boxed else spec.woods.of("fronts")
    full = tuple(full_sides(spec, sizes)) if gauges.in_rabbet else ()
    marks = dict(full)
    measured = tuple(side for side in gauges.in_rabbet if side[0] in marks)
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
        front_excess=max(0.0, (front.width or sizes.joint_height) - height) if plain else 0.0,
        groove=setting.groove,
        rack=shop.rack,
        locked_gauge_1=sizes.gauge_1 if front.thickness else None,
        can_be_replaced=is_boxed or not spec.matched_fronts,
        measured_tail_length=max((part.tail_length for part in sides if part.tail_length), default=None),
        measured_socket_depth=front.socket_depth,
        measured_sides=measured,
        full_sides=full if measured else (),
        shared_settings=tuple(side for side in gauges.settings if side[0] in marks),
        front_moisture=front.moisture,
        side_moisture=_furthest(front.moisture, [part.moisture for part in sides if part.moisture]),
        front_gravity=wood(before.wood).gravity,
        side_gravity=wood(spec.woods.drawers.wood).gravity,
        mark=f"{spec.code}-{sizes.code}",
    )


def _furthest(front: Percent | None, sides: list[Percent]) -> Percent | None:
    """The moisture of the side that is furthest from the front's."""
    return max(sides, key=lambda side: abs(side - (front or 0.0)), default=None)
