"""What the stability screen found, in sentences: the same on page, report and caution sheet."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Number
from casewright.pieces.built.standing import Limit, Standing
from casewright.pieces.built.wall_load import Wall
from casewright.stability.limits import house_limits
from casewright.stability.scope import RULE, reason_outside
from casewright.stability.tip_checks import DEEPER_MOST, factor_shown, verdict_on, what_is_done
from casewright.stability.tipping import TipCase

ONLY_THE_TEST = (
    "This is a design screen: it reckons from drawn sizes and usual densities. Only the test of the standard "
    "decides, done on the finished piece; local codes and licensed practice come first."
)
GOVERNS = "16 CFR 1261 requires ASTM F2057-23 of clothing storage units made after 1 September 2023"
SIDEWAYS = (
    "A push to the side is not reckoned: a narrow, tall piece asks for the wall restraint all the more."
)
OTHERS_OPEN = "child, others open"
"""How the situation is called in which a child hangs on one of several open drawers."""


def scope_words(held: Standing) -> Words:
    """Whether the rule covers a piece, and why not where it does not.

    Args:
        held: how the piece stands

    Returns:
        One sentence or two.
    """
    if held.covered:
        return (
            f"{GOVERNS}; this piece is free-standing, for clothing, and reaches all three limits, so the "
            "rule covers it: it needs the tests, the warning label and a wall restraint."
        )
    use, piece = held.unit.stand.use, held.unit.stand.piece
    weight = next(each.found for each in held.limits if each.unit == "lb")
    reason = reason_outside(piece.height, weight, use, house_limits())
    wanted = "Fix a wall restraint all the same." if use.free_standing else "It is held by its wall fixings."
    return say("Outside {}, because {}. {}", RULE, reason, wanted)


def case_name(case: TipCase) -> str:
    """A situation by a short name, with its drawer or door.

    Args:
        case: the situation, worked out

    Returns:
        Such as `child, carpet: A-R5-1`.
    """
    about = case.situation.about
    return f"{case.situation.kind}: {about}" if about else str(case.situation.kind)


def alone_line(held: Standing) -> Words:
    """How far each drawer may come out by itself with a child's weight on it.

    Args:
        held: how the piece stands

    Returns:
        One sentence, drawers with the same travel together; nothing where there is no drawer.
    """
    by_travel: dict[float, list[str]] = {}
    for code, travel in held.alone.items():
        by_travel.setdefault(float(travel), []).append(code)
    if not by_travel:
        return ""
    said = strung(
        "; ", (say("{:down} for {}", travel, ", ".join(codes)) for travel, codes in by_travel.items())
    )
    child = house_limits().child_weight
    return say("Greatest safe travel of one drawer alone, with {:g} lb on its front: {}.", child, said)


def together_line(held: Standing) -> Words:
    """How far all drawers may come out together, full.

    Args:
        held: how the piece stands

    Returns:
        One sentence; nothing where they cannot.
    """
    if not held.unit.drawers or held.unit.stand.piece.one_at_a_time:
        return ""
    return say("Greatest safe travel of all drawers together, full: {:down}.", held.unit.stand.safe_travel)


def verdict_of(case: TipCase, held: Standing) -> str:
    """How a situation comes out, as its check says.

    Args:
        case: the situation, worked out
        held: how the piece stands

    Returns:
        `pass`, `caution` or `stop`.
    """
    target = house_limits().target_factor
    return verdict_on(case.factor, target, case.situation.kind, held.covered).value


def limit_words(limit: Limit, number: float) -> Words:
    """A figure of a limit with its unit.

    Args:
        limit: the limit
        number: of the piece, or from where on the rule covers a piece

    Returns:
        Such as `27 in`, `160.8 lb`, `11.56 cu ft`.
    """
    if limit.unit == "in":
        return say("{}", number)
    return f"{number:.{1 if limit.unit == 'lb' else 2}f} {limit.unit}"


def others_open_words(held: Standing) -> Words:
    """What the screen says of a child on one of several open drawers; nothing where that cannot be.

    Args:
        held: how the piece stands

    Returns:
        One sentence; nothing of a piece that is fixed to the building either.
    """
    case = held.others_open
    if case is None or not held.unit.stand.use.free_standing:
        return ""
    tips = case.factor < 1
    return say(
        "With every other drawer open too, {:g} lb on the front of {} {} (factor {}): the carpet test is "
        "reported to leave the others open as far as interlocks allow, so read the standard{}.",
        house_limits().child_weight,
        case.situation.about,
        "tips it" if tips else "is held",
        factor_shown(case.factor),
        "; an interlock forbids this" if tips else "",
    )


FIXED = (
    "It is fixed to the building and held by its fixings, so nothing of the screen is asked of it. Fix it "
    "before its drawers are loaded: until then nothing holds it."
)
"""What holds of a piece that does not stand free."""
UNFIXED = "If nothing held it"
"""How the situations of such a piece are called: they are for information."""


def shown_verdict(case: TipCase, held: Standing) -> str:
    """How a situation comes out, in a word for people: of a fixed piece what would be, and no verdict.

    Args:
        case: the situation, worked out
        held: how the piece stands

    Returns:
        `pass`, `caution` or `stop`; `would stand` or `would tip` where nothing is asked.
    """
    if held.unit.stand.use.free_standing:
        return verdict_of(case, held)
    return unfixed_word(case.factor)


def unfixed_word(factor: Number | None) -> str:
    """How a piece that is fixed would fare in a situation if nothing held it.

    Args:
        factor: holding over tipping; None where nothing tips [dimensionless]

    Returns:
        `would stand` or `would tip`.
    """
    return "would stand" if factor is None or factor >= 1 else "would tip"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mending:
    """What was looked for to make a piece stand.

    Attributes:
        enough: what makes every situation reach the factor that is wanted, each by itself; the wall restraint
            last, always
        not_enough: what helps and does not suffice by itself
    """

    enough: tuple[Words, ...]
    not_enough: tuple[Words, ...]


def mending(held: Standing) -> Mending:
    """What would make every situation reach the factor that is wanted, each by itself with its figure.

    Args:
        held: how the piece stands

    Returns:
        Sentences; none for a piece that is fixed to the building, of which nothing is asked.
    """
    if not held.unit.stand.use.free_standing:
        return Mending(enough=(), not_enough=())
    lines = (*_of_travel(held), *_of_interlock(held), *_of_weight(held))
    return Mending(
        enough=(*(line for line, suffices in lines if suffices), RESTRAINT),
        not_enough=tuple(line for line, suffices in lines if not suffices),
    )


RESTRAINT = (
    "A wall restraint to ASTM F3096, always: fixed at delivery to a stud, whatever the screen says. The "
    "screen does not count it."
)


def _of_travel(held: Standing) -> Iterator[tuple[Words, bool]]:
    """Outstops, and whether they suffice."""
    target, found, piece = house_limits().target_factor, held.remedies, held.unit.stand.piece
    drawn = max((each.travel for each in piece.drawers), default=0.0)
    if not drawn:
        return
    if found.whatever_travel:
        yield (
            say(
                "A shorter travel of the drawers: {}, has a factor of {} however far they open.",
                what_is_done(found.whatever_travel, piece, house_limits()),
                factor_shown(found.whatever_travel.factor),
            ),
            False,
        )
    elif found.travel >= drawn:
        yield (
            say(
                "Outstops at {} as drawn are enough; every situation passes up to {:down}.",
                drawn,
                found.travel,
            ),
            True,
        )
    elif found.travel:
        yield (
            say(
                "Outstops at {:down} for every drawer: every situation reaches {:g}.",
                found.travel,
                target,
            ),
            True,
        )
    else:
        yield "A shorter travel of the drawers: no travel is short enough.", False


def _of_interlock(held: Standing) -> Iterator[tuple[Words, bool]]:
    """An interlock, and whether it suffices."""
    least = held.remedies.interlock
    if least is not None:
        words = "An interlock that opens one drawer at a time: the least factor becomes {}."
        yield say(words, factor_shown(least)), least >= house_limits().target_factor


def _of_weight(held: Standing) -> Iterator[tuple[Words, bool]]:
    """A deeper body, weight at the back and feet further forward: each to the figure that suffices."""
    target, found, piece = house_limits().target_factor, held.remedies, held.unit.stand.piece
    if 0 < found.deeper <= piece.support_depth * DEEPER_MOST:
        yield (
            say(
                "A body {:up 16} deeper, with drawers that open no further: every situation reaches {:g}.",
                found.deeper,
                target,
            ),
            True,
        )
    if found.added:
        back = "{:g} lb more, low at the back of the case: every situation reaches {:g}."
        yield say(back, found.added, target), True
        feet = "Front feet {:up 16} further forward: every situation reaches {:g}."
        yield say(feet, found.forward, target), True


def wall_lines(wall: Wall) -> Iterator[Words]:
    """What the wall fixings of a piece carry.

    Args:
        wall: their load

    Yields:
        One sentence for each thing to know.
    """
    if wall.hangs:
        yield say(
            "Piece and contents weigh {:.0f} lb, all of it along the wall; filled drawers open pull {:.0f} "
            "lb out of it, {} above the edge that bears.",
            up_to(wall.weight, 1),
            up_to(wall.pull, 1),
            wall.lever,
        )
    else:
        yield say(
            "The floor carries it; the fixings, {} above it, hold {:.0f} lb out of the wall in the worst "
            "situation.",
            wall.lever,
            up_to(wall.pull, 1),
        )
    yield say(
        "At least {:d} fixings, each with {:.0f} lb to carry, taken to hold {:g} lb with a factor of {:g}.",
        wall.fixings,
        up_to(wall.each, 1),
        wall.holds,
        wall.factor,
    )
    yield (
        "Know the wall: into studs or solid masonry, never into plasterboard alone; look for wires and "
        "pipes. What a fixing holds is its maker's to say, and the wall's."
    )
