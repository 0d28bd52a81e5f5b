"""The joints of the inner sides around a notch: into the short backs, and into the inner back in front."""

from dataclasses import dataclass, replace

from casewright.joinery.chisels import Rack
from casewright.joinery.families.through.joint import ThroughJoint, through
from casewright.joinery.joint import Joint
from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.ends import End
from casewright.pieces.drawers.other_ends import other_end
from casewright.pieces.drawers.sizes import DrawerSizes


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class NotchJoints:
    """The joints around a notch, each cut twice.

    Attributes:
        rear: inner sides into the short backs
        head: inner sides into the inner back
        family: the name of both in the joinery, such as `through`
    """

    rear: Joint
    head: Joint
    family: str

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was found of both, each once."""
        rear = self.rear.findings
        return (*rear, *(each for each in self.head.findings if each not in rear))


def notch_joints(
    spec: UnitSpec, sizes: DrawerSizes, end: End | None, back: Joint, rack: Rack, ledger: Ledger
) -> NotchJoints | None:
    """The joints of the inner sides around the notch of a drawer.

    Args:
        spec: what the maker chose
        sizes: the drawer
        end: how inner sides are joined; None where no drawer of the unit has a notch
        back: the joint of the drawer's sides with its backs
        rack: the shop's cutters
        ledger: keeps the working

    Returns:
        The joints; None without a notch.

    Raises:
        ValueError: they cannot be laid out

    Source: common practice: the new corners are joined as those of the back.
    """
    if sizes.notch is None or end is None:
        return None
    under = ledger.under(sizes.code)
    rear, head = (
        _joined(spec, _seen_so(sizes, board), end, back, rack, under.under(f"{name}_joint"))
        for name, board in (("notch_rear", sizes.back), ("notch_head", sizes.notch.head))
    )
    return NotchJoints(rear=rear, head=head, family=end.family)


def _seen_so(sizes: DrawerSizes, board: Inches) -> DrawerSizes:
    """A drawer as its inner sides see it: they stand level with the board across them."""
    notch = sizes.notch
    if notch is None:
        return sizes
    return replace(
        sizes,
        left_side=notch.left_inner,
        right_side=notch.right_inner,
        back=board,
        side_length=notch.side_length,
        width=notch.around,
    )


def _joined(spec: UnitSpec, sizes: DrawerSizes, end: End, back: Joint, rack: Rack, ledger: Ledger) -> Joint:
    if not isinstance(back, ThroughJoint):
        return other_end(spec, sizes, end, rack, ledger, at_back=True, level=True)
    # Tails as those of the sides at the back, so that one setting of the dividers serves all corners.
    asked = replace(
        back.given,
        side=max(sizes.left_side, sizes.right_side),
        back=sizes.back,
        ends=(),
        lower_edge_offset=0.0,
    )
    return through(asked, ledger)
