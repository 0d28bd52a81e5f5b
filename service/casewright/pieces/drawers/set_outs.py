"""How the dovetails of a unit's drawers are set out: what all rows share at one end of their sides."""

from casewright.joinery.defaults import pin_habit, slope_habit
from casewright.joinery.family import SetOut
from casewright.joinery.groove import Groove
from casewright.joinery.sourced import Sourced
from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches, Number
from casewright.pieces.asked.drawer_joints import Joint
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.wood.species import wood

CHOSEN = "usual, by the joinery's own table of defaults; type your own in the unit file"
OWN = "usual in this shop, by its own numbers; type another in the unit file"


def drawer_groove(spec: UnitSpec) -> Groove | None:
    """The groove for the bottoms, which the lowest tails are to hide.

    Args:
        spec: what the maker chose

    Returns:
        The groove; None where the bottoms are screwed under.

    Source: common practice.
    """
    if spec.drawers.screwed_under:
        return None
    groove = spec.drawers.groove
    return Groove(height=groove.height, width=groove.width, depth=groove.depth, in_side=groove.slips is None)


def set_out(
    spec: UnitSpec, name: str, shop: Shop, half_pin: Sourced, groove: Groove | None, ledger: Ledger
) -> SetOut:
    """How the dovetails at one end of all sides are set out.

    Args:
        spec: what the maker chose
        name: `front_joint` or `back_joint`
        shop: the shop's rack, its usual numbers, and what looks well to it
        half_pin: the half pin that is usual there
        groove: the groove that the lowest tail must hide; None when there is none
        ledger: keeps the working

    Returns:
        What every row shares.

    Source: the defaults of the joinery, each with its own source.
    """
    joint, side = getattr(spec.drawers, name), spec.drawers.side
    if not isinstance(joint, Joint):
        joint = spec.drawers.front_joint  # a back that is joined as the front
    typed = joint if isinstance(joint, Joint) else Joint()
    softwood = not wood(spec.woods.drawers.wood).hardwood
    under = ledger.under(f"drawers.{name}")

    def chosen(field: str, habit: Sourced, kind: object) -> float:
        own: float | None = getattr(typed, field)
        if own is not None:
            return own
        return under.given(field, habit.value, OWN if habit.basis == "learned" else CHOSEN, kind)

    return SetOut(
        half_pin=chosen("half_pin", half_pin, Inches),
        pin=chosen("pin", pin_habit(side, shop.usual), Inches),
        slope=chosen("slope", slope_habit(softwood, shop.usual), Number),
        side=side,
        kerf=shop.rack.kerf,
        groove=groove,
        looks=shop.looks,
    )
