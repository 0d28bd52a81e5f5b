"""What the stability screen found, in sentences: the same on page, report and caution sheet."""

from collections.abc import Iterator

from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say, strung
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
        One sentence, or nothing.
    """
    case = held.others_open
    if case is None:
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


def remedy_lines(held: Standing) -> Iterator[Words]:
    """What would make every situation reach the factor that is wanted, each by itself with its figure.

    Args:
        held: how the piece stands

    Yields:
        One sentence for each remedy; the wall restraint last, always.
    """
    target, found, piece = house_limits().target_factor, held.remedies, held.unit.stand.piece
    drawn = max((each.travel for each in piece.drawers), default=0.0)
    if drawn and found.whatever_travel:
        yield say(
            "No travel of the drawers is enough by itself: {}, has a factor of {} however far they open.",
            what_is_done(found.whatever_travel, piece, house_limits()),
            factor_shown(found.whatever_travel.factor),
        )
    elif drawn and found.travel >= drawn:
        yield say(
            "Outstops at {} as drawn are enough; every situation passes up to {:down}.",
            drawn,
            found.travel,
        )
    elif drawn and found.travel:
        yield say(
            "Outstops at {:down} for every drawer: every situation reaches {:g}.",
            found.travel,
            target,
        )
    elif drawn:
        yield "No travel of the drawers is enough by itself."
    if found.interlock is not None:
        yield say(
            "An interlock that opens one drawer at a time: the least factor becomes {}{}.",
            factor_shown(found.interlock),
            "" if found.interlock >= target else ", which is not enough by itself",
        )
    if 0 < found.deeper <= piece.support_depth * DEEPER_MOST:
        yield say(
            "A body {:up 16} deeper, with drawers that open no further: every situation reaches {:g}.",
            found.deeper,
            target,
        )
    if found.added:
        yield say(
            "{:g} lb more, low at the back of the case: every situation reaches {:g}.", found.added, target
        )
        yield say("Front feet {:up 16} further forward: every situation reaches {:g}.", found.forward, target)
    yield (
        "A wall restraint to ASTM F3096, always: fixed at delivery to a stud, whatever the screen says. The "
        "screen does not count it."
    )


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
