"""The pinned rabbet as it is asked for, its limits, and where its pins stand."""

from dataclasses import dataclass

from casewright.joinery.groove import Groove
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to, up_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class PinnedRabbetLimits:
    """What a pinned rabbet is held to, and its habits. Lengths are in inches.

    Attributes:
        rabbet_least_part: a rabbet that takes a lesser part of the front is cautioned
        rabbet_most_part: so is one that takes more
        lip_least: a thinner lip is cautioned
        size_step: what is chosen is a multiple of this
        pin_least: a thinner pin is cautioned, where the rabbet has room for it
        pin_thin_least: where it has none, one thinner than this
        pin_part: so is one thicker than the depth of the rabbet divided by this
        pin_sides: a pin is so many times as long as the side is thick where nothing else is said
        pin_sides_least: one shorter than so many times is cautioned
        margin: from the edges to the first pins where nothing else is said
        margin_least: pins nearer to an edge stop the joint
        spacing_most: pins farther apart are cautioned
    """

    rabbet_least_part: Sourced
    rabbet_most_part: Sourced
    lip_least: Sourced
    size_step: Sourced
    pin_least: Sourced
    pin_thin_least: Sourced
    pin_part: Sourced
    pin_sides: Sourced
    pin_sides_least: Sourced
    margin: Sourced
    margin_least: Sourced
    spacing_most: Sourced


LIMITS = PinnedRabbetLimits(**sourced("pinned_rabbet_limits"))
"""The limits of a shop that has set none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PinnedRabbet:
    """A pinned rabbet as it is asked for.

    Attributes:
        height: height of the boards at the joint [in]
        front: thickness of the front [in]
        side: thickness of the side [in]
        lip: what of the front is left before the end of the side [in]
        pin: thickness of a pin [in]
        pin_length: length of a pin, through the side and into the front [in]
        margin: from the edges to the first and the last pin [in]
        pins: number of pins
        groove: the groove for the bottom, in both boards; None for none
        drawer_depth: from the face of the front to the rear; None when it is not known [in]
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    height: Inches
    front: Inches
    side: Inches
    lip: Inches
    pin: Inches
    pin_length: Inches
    margin: Inches
    pins: Count
    groove: Groove | None = None
    drawer_depth: Inches | None = None
    limits: PinnedRabbetLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(
            height=self.height,
            front=self.front,
            side=self.side,
            lip=self.lip,
            pin=self.pin,
            pin_length=self.pin_length,
            margin=self.margin,
        )
        self._refuse_what_leaves_no_rabbet()
        self._refuse_pins_without_room()
        if self.drawer_depth is not None and self.drawer_depth <= self.front:
            raise CannotBeLaidOut(
                say(
                    "A drawer {} deep ends within its front of {}; make it deeper than {:bare}.",
                    self.drawer_depth,
                    self.front,
                    self.front,
                )
            )

    def _refuse_what_leaves_no_rabbet(self) -> None:
        if self.rabbet <= TOLERANCE:
            usual = usual_lip(self.front, self.limits)
            raise CannotBeLaidOut(
                say("A lip of {} leaves no rabbet in a front of {}; make it {}.", self.lip, self.front, usual)
            )
        if self.pin >= self.rabbet:
            raise CannotBeLaidOut(
                say(
                    "A pin of {} has no room in a rabbet {} deep; {:down} would.",
                    self.pin,
                    self.rabbet,
                    self.rabbet / self.limits.pin_part.value,
                )
            )
        if self.pin_length <= self.side:
            raise CannotBeLaidOut(
                say(
                    "A pin {} long ends within the side of {}; make it {}.",
                    self.pin_length,
                    self.side,
                    self.limits.pin_sides.value * self.side,
                )
            )

    def _refuse_pins_without_room(self) -> None:
        least = self.limits.margin_least.value
        if self.margin <= self.pin / 2:
            raise CannotBeLaidOut(
                say(
                    "A pin of {} that stands {} from the edge breaks out of it; put it {} from the edge.",
                    self.pin,
                    self.margin,
                    max(least, self.pin),
                )
            )
        if 2 * self.margin + self.pin >= self.height:
            lowest = 2 * (least + self.pin)
            mended = (
                say("put them {} from the edges.", least)
                if self.height >= lowest
                else say("a height of {} takes two.", lowest)
            )
            raise CannotBeLaidOut(
                say(
                    "Pins {} from both edges have no room in a height of {}; {}",
                    self.margin,
                    self.height,
                    mended,
                )
            )
        # Between two pins there is at least as much wood as a pin is thick.
        most = max(2, int(down_to((self.height - 2 * self.margin) / (2 * self.pin), 1.0)) + 1)
        if not 2 <= self.pins <= most:
            usual = pin_count(self.height, self.margin, self.limits.spacing_most.value)
            raise CannotBeLaidOut(
                say(
                    "A row of {:d} is none for pins of {} in a height of {}; take {:d}.",
                    self.pins,
                    self.pin,
                    self.height,
                    min(most, usual),
                )
            )

    @property
    def rabbet(self) -> Inches:
        """How deep the rabbet is, from the inside face of the front [in]."""
        return self.front - self.lip

    @property
    def spacing(self) -> Inches:
        """From one pin to the next, centre to centre [in]."""
        return pin_spacing(self.height, self.margin, self.pins)


def usual_lip(front: Inches, limits: PinnedRabbetLimits = LIMITS) -> Inches:
    """What is left of a front before the end of the side: a third, up to a 16th, and enough to hide the pins.

    Rule: the greater of front * (1 - rabbet_most_part), up to a multiple of size_step, and lip_least, but no
    more than front * (1 - rabbet_least_part)

    Args:
        front: thickness of the front [in]
        limits: what the joint is held to

    Returns:
        The lip [in]

    Source: Fine Woodworking, 2007 special issue: the rabbet takes half to two thirds of the front.
    """
    third = up_to(front * (1 - limits.rabbet_most_part.value), limits.size_step.value)
    return min(max(third, limits.lip_least.value), front * (1 - limits.rabbet_least_part.value))


def least_pin(rabbet: Inches, limits: PinnedRabbetLimits = LIMITS) -> Inches:
    """The thinnest pin for a rabbet: one that can be driven, or in a thin rabbet one of bamboo.

    Rule: pin_least, or pin_thin_least where rabbet / pin_part is less than that

    Args:
        rabbet: depth of the rabbet [in]
        limits: what the joint is held to

    Returns:
        The thickness of the pin [in]

    Source: from memory.
    """
    is_thin = rabbet / limits.pin_part.value < limits.pin_least.value - TOLERANCE
    return limits.pin_thin_least.value if is_thin else limits.pin_least.value


def usual_pin(rabbet: Inches, limits: PinnedRabbetLimits = LIMITS) -> Inches:
    """How thick a pin is where nothing else is said: a third of the rabbet, down to a 16th.

    Rule: rabbet / pin_part, down to a multiple of size_step, and at least least_pin

    Args:
        rabbet: depth of the rabbet [in]
        limits: what the joint is held to

    Returns:
        The thickness of a pin [in]

    Source: from memory: as much wood on both sides of a pin as it is thick itself.
    """
    return max(down_to(rabbet / limits.pin_part.value, limits.size_step.value), least_pin(rabbet, limits))


def pin_count(height: Inches, margin: Inches, spacing: Inches) -> Count:
    """How many pins a height takes.

    Rule: (height - 2 * margin) / spacing, up to a whole number, and 1; at least 2

    Args:
        height: height of the boards at the joint [in]
        margin: from the edges to the first and the last pin [in]
        spacing: between two pins at the most [in]

    Returns:
        The number of pins [dimensionless]

    Source: common practice.
    """
    return max(2, int(up_to((height - 2 * margin) / spacing, 1.0)) + 1)


def pin_spacing(height: Inches, margin: Inches, pins: Count) -> Inches:
    """From one pin to the next, so that they are spaced evenly.

    Rule: (height - 2 * margin) / (pins - 1)

    Args:
        height: height of the boards at the joint [in]
        margin: from the edges to the first and the last pin [in]
        pins: number of pins, at least 2 [dimensionless]

    Returns:
        The distance from centre to centre [in]

    Source: geometry of the joint.
    """
    return (height - 2 * margin) / (pins - 1)


def pin_places(height: Inches, margin: Inches, pins: Count) -> tuple[Inches, ...]:
    """Where the pins stand.

    Rule: margin + number * (height - 2 * margin) / (pins - 1)

    Args:
        height: height of the boards at the joint [in]
        margin: from the edges to the first and the last pin [in]
        pins: number of pins, at least 2 [dimensionless]

    Returns:
        The middle of each pin above the bottom edge, the lowest first [in]

    Source: geometry of the joint.
    """
    return tuple(margin + number * (height - 2 * margin) / (pins - 1) for number in range(pins))


def usual_margin(
    height: Inches,
    pin: Inches,
    spacing: Inches,
    pins: Count | None = None,
    groove: Groove | None = None,
    limits: PinnedRabbetLimits = LIMITS,
) -> Inches:
    """From the edges to the first pins where nothing else is said: 1/2 in, and clear of the groove.

    Rule: margin, or margin_least in low boards; raised by 64ths until no pin comes nearer to the groove than
    half its thickness

    Args:
        height: height of the boards at the joint [in]
        pin: thickness of a pin [in]
        spacing: between two pins at the most [in]
        pins: number of pins; None for as many as the spacing takes [dimensionless]
        groove: the groove for the bottom; None for none
        limits: what the joint is held to

    Returns:
        The margin; the usual one where none is clear [in]

    Source: common practice; the groove by geometry.
    """
    usual = limits.margin.value
    if height < 2 * (usual + pin):
        usual = limits.margin_least.value
    if groove is None:
        return usual
    # Where the first pin itself is in the way, the next place for it is above the groove.
    margin = usual if clear_of(groove, (usual,), pin) else up_to(groove.top + pin, 1 / 64)
    while height - 2 * margin > 2 * pin:
        count = pin_count(height, margin, spacing) if pins is None else pins
        if count < 2 or clear_of(groove, pin_places(height, margin, count), pin):
            return margin
        margin += 1 / 64
    return usual


def clear_of(groove: Groove, places: tuple[Inches, ...], room: Inches) -> bool:
    """Whether the groove stays so far from the middle of every pin.

    Args:
        groove: the groove for the bottom
        places: the middle of each pin above the bottom edge [in]
        room: what has to be whole wood above and below each middle [in]

    Returns:
        Whether all of them are clear.

    Source: geometry of the joint.
    """
    return all(
        place + room <= groove.height + TOLERANCE or groove.top <= place - room + TOLERANCE
        for place in places
    )
