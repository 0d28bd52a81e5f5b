"""Usual sizes of a drawer's boards that follow what was typed, so that no default is warned of."""

from casewright.joinery.groove_left import GROOVES
from casewright.joinery.limits import LIMITS
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.drawer_joints import HalfBlindDovetail
from casewright.pieces.asked.drawer_spec import Drawers, PlyBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.rules import drawer_rules as rules

STEP = 1 / 32
"""To what such a size is rounded (common practice) [in]."""


def with_usual_boards(spec: UnitSpec, ledger: Ledger) -> UnitSpec:
    """The choices with a front and a groove that suit the sides, where neither was typed.

    A front that the sides are joined to is thicker than they are; a groove leaves enough of the thinnest
    board that it is cut into. The usual sizes stay wherever they do.

    Args:
        spec: what the maker chose
        ledger: keeps the working

    Returns:
        The same choices where the usual sizes do, or sizes were typed.

    Source: common practice; each rule names its own source.
    """
    drawers = _with_front(spec, ledger)
    groove = drawers.groove
    if "depth" not in groove.model_fields_set and not drawers.screwed_under:
        thinnest = _thinnest(drawers)
        deepest = rules.groove_that_leaves(thinnest, GROOVES.left_least.value, GROOVES.left_part.value, STEP)
        if 0 < deepest < groove.depth:
            depth = ledger.take(
                "drawers.groove.depth",
                rules.groove_that_leaves,
                board=thinnest,
                least=GROOVES.left_least.value,
                part=GROOVES.left_part.value,
                step=STEP,
            )
            drawers = drawers.model_copy(update={"groove": groove.model_copy(update={"depth": depth})})
    return spec if drawers is spec.drawers else spec.model_copy(update={"drawers": drawers})


def _with_front(spec: UnitSpec, ledger: Ledger) -> Drawers:
    """The front that the sides are joined to: the show front, or the box's own, which keeps a lap there."""
    drawers = spec.drawers
    name = "box_front" if drawers.has_box_front else "front"
    keeps_a_lap = isinstance(drawers.front_joint, HalfBlindDovetail)
    if name in drawers.model_fields_set or (name == "box_front" and not keeps_a_lap):
        return drawers
    sizes = {
        "side": drawers.side,
        "over": LIMITS.front_over_side.value,
        "least": LIMITS.front_least.value,
        "step": STEP,
    }
    if rules.front_over_side(**sizes) <= drawers.joined_front:
        return drawers
    front = ledger.take(f"drawers.{name}", rules.front_over_side, **sizes)
    return drawers.model_copy(update={name: front})


def _thinnest(drawers: Drawers) -> float:
    """The thinnest board that the groove is cut into: slips spare the sides, and most backs have none."""
    boards = [drawers.joined_front]
    if not drawers.groove.slips:
        boards.append(drawers.side)
    if isinstance(drawers.bottom, PlyBottom) and drawers.bottom.hold == "four grooves":
        boards.append(drawers.side if drawers.back is None else drawers.back)
    return min(boards)
