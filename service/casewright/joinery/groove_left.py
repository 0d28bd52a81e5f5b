"""What a groove for the bottom leaves of the boards that it is cut into."""

from dataclasses import dataclass

from casewright.joinery.groove import Groove
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveLimits:
    """What a groove is to leave of a board. Lengths are in inches.

    Attributes:
        left_least: what it leaves behind it, at least
        left_part: and at least this part of the board
        planed: a board so much thinner still passes
    """

    left_least: Sourced
    left_part: Sourced
    planed: Sourced


GROOVES = GrooveLimits(**sourced("groove_limits"))
"""The limits of a shop that has set none of its own."""


def left_behind(board: Inches, groove_depth: Inches) -> Inches:
    """What a groove leaves of the board behind it.

    Rule: board - groove_depth

    Args:
        board: thickness of the side, slip or front [in]
        groove_depth: depth of the groove [in]

    Returns:
        The wood behind the groove [in]

    Source: geometry of the drawer.
    """
    return board - groove_depth


def least_left_behind(board: Inches, least: Inches, part: Number) -> Inches:
    """What a groove has to leave of the board behind it.

    Rule: the greater of least and board × part

    Args:
        board: thickness of the side, slip or front [in]
        least: never less than this [in]
        part: this part of the board [dimensionless]

    Returns:
        The wood to be left [in]

    Source: common practice.
    """
    return max(least, board * part)


def board_for_groove(groove_depth: Inches, limits: GrooveLimits = GROOVES) -> Inches:
    """How thick a board is at least that takes so deep a groove.

    Rule: the greater of groove_depth + left_least and groove_depth / (1 - left_part)

    Args:
        groove_depth: depth of the groove [in]
        limits: what it is to leave

    Returns:
        The thickness of the board [in]

    Source: what a groove has to leave, solved for the board.
    """
    return max(groove_depth + limits.left_least.value, groove_depth / (1 - limits.left_part.value))


def wood_behind_groove(
    board: Inches, depth: Inches, name: str, limits: GrooveLimits = GROOVES, about: str = ""
) -> Finding:
    """Whether the groove leaves enough of a board behind it.

    Args:
        board: thickness of the board [in]
        depth: depth of the groove [in]
        name: what the board is called
        limits: what the groove is to leave
        about: code of the joint

    Returns:
        A pass or a stop, with the depth and the board that would pass.

    Source: common practice.
    """
    left = left_behind(board, depth)
    needed = least_left_behind(board, limits.left_least.value, limits.left_part.value)
    # A board that was planed a 64th thin is still the board that was drawn.
    thin = left + limits.planed.value < needed - TOLERANCE
    remedy: Words = ""
    if thin:
        most, thick = board - needed, board_for_groove(depth, limits)
        remedy = say("Make the groove {:down} deep, or the {} {:up} thick.", most, name, thick)
        if most < 1 / 64:
            remedy = say("Make the {} {:up} thick.", name, thick)
    return new_finding(
        rule=f"{name} behind groove",
        verdict=Verdict.STOP if thin else Verdict.PASS,
        message=say("The groove leaves {} of the {}; it needs {:bare}.", left, name, needed),
        remedy=remedy,
        about=about,
        found=left,
        needed=needed,
        source=limits.left_part.source if needed > limits.left_least.value else limits.left_least.source,
    )


def refuse_groove_through(groove: Groove | None, limits: GrooveLimits = GROOVES, **boards: Inches) -> None:
    """Refuses a groove that leaves nothing of a board.

    Args:
        groove: the groove; None when there is none
        limits: what it is to leave
        boards: thickness of each board by its name, with `_` for a space [in]

    Raises:
        CannotBeLaidOut: the groove is as deep as a board is thick, or deeper.

    Source: geometry of the joint.
    """
    if groove is None:
        return
    for name, board in boards.items():
        if groove.depth < board - TOLERANCE:
            continue
        words, most = (
            name.replace("_", " "),
            board - least_left_behind(board, limits.left_least.value, limits.left_part.value),
        )
        said = say("A groove {} deep goes through the {} of {:bare}", groove.depth, words, board)
        if most < 1 / 64:
            thick = up_to(board_for_groove(groove.depth, limits), 1 / 64)
            raise CannotBeLaidOut(say("{}; make the {} {} thick.", said, words, thick))
        raise CannotBeLaidOut(say("{}; make it {:down bare} deep or shallower.", said, most))
