"""The joints of the drawers that are no dovetails, worked out by the families that know them."""

from casewright.joinery.called import Called
from casewright.joinery.chisels import Rack
from casewright.joinery.families.housing.asked import LIMITS as HOUSINGS
from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.families.housing.joint import housing
from casewright.joinery.joint import Joint, Setting
from casewright.joinery.kinds import solve
from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_joints import HousedBack
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.ends import BOX, HOUSING, LOCK_RABBET, PINNED, SLIDING, End
from casewright.pieces.drawers.set_outs import drawer_groove
from casewright.pieces.drawers.sizes import DrawerSizes

AT_THE_BACK = (("front", "back"),)
"""A back that is joined as the front: what the family calls front is the back."""
LOOKED_AT = ("lip before the pins",)
"""What is asked of a front for its looks, and neither of a back nor of a front that another one covers."""
INTO_THE_FRONT = (
    ("case side", "front"),
    ("divider", "side"),
    ("left of the side", "left of the front"),
    ("behind the socket", "before the socket"),
)
"""A side that slides into its front, as a divider slides into a case side."""


def other_end(
    spec: UnitSpec,
    sizes: DrawerSizes,
    end: End,
    rack: Rack,
    ledger: Ledger,
    *,
    at_back: bool,
    level: bool = False,
) -> Joint:
    """The joint at one end of a drawer's sides, where it is no dovetail of several tails.

    Args:
        spec: what the maker chose
        sizes: the drawer
        end: what all drawers share there
        rack: the shop's cutters
        ledger: keeps the working of this joint
        at_back: whether it is the rear end
        level: whether the boards stand on one level, as those around a notch do

    Returns:
        The joint, its boards called what they are in the drawer.

    Raises:
        ValueError: it cannot be laid out

    Source: common practice; each family names its own.
    """
    mark = f"{spec.code}-{sizes.code}"
    if end.family == HOUSING:
        return _housed(spec, sizes, end, rack, ledger)
    if end.family == SLIDING:
        return _slid(sizes, end, rack, ledger, mark)
    side = max(sizes.left_side, sizes.right_side)
    values = {"side": side, **end.values}
    values["height"] = sizes.back_height if at_back else sizes.joint_height
    values["front"] = sizes.back if at_back else sizes.front
    groove = drawer_groove(spec)
    # The bottom passes under a back that stands on it, whose joint then has no groove.
    # Around a notch it surrounds the corner from without.
    grooved = groove if not (level or (at_back and sizes.back_foot)) else None
    if grooved and end.family in (BOX, PINNED):
        values |= {"groove_height": grooved.height, "groove_width": grooved.width}
        values["groove_depth"] = grooved.depth
    if end.family == BOX:
        # One cutter for all drawers: what it leaves of a height goes to the top finger.
        values["cutter"] = end.finger
    if end.family == LOCK_RABBET and not level:
        values["box_width"] = sizes.width
    solved = solve(end.family, values, rack=rack, ledger=ledger)
    settings = [_side_length(sizes)]
    if at_back and sizes.back_foot and not level:
        settings.append(_foot(sizes.back_foot))
    return Called(
        of=solved.joint,
        names=AT_THE_BACK if at_back else (),
        about=mark,
        unasked=LOOKED_AT if at_back or spec.drawers.has_box_front else (),
        first=tuple(settings),
    )


def _side_length(sizes: DrawerSizes, wrong: Inches | None = None) -> Setting:
    return Setting(
        name="side_length",
        label="Side length",
        value=sizes.side_length,
        note="over all that goes into its joints at both ends",
        wrong=wrong,
    )


def _foot(foot: Inches) -> Setting:
    return Setting(
        name="lower_edge_offset",
        label="Back above the side's edge",
        value=foot,
        note="from the side's bottom edge to the back's lower edge, from where the joint is laid out",
    )


def _slid(sizes: DrawerSizes, end: End, rack: Rack, ledger: Ledger, mark: str) -> Joint:
    values = {
        **end.values,
        "divider": max(sizes.left_side, sizes.right_side),
        "case_side": sizes.front,
        "length": sizes.joint_height,
    }
    solved = solve(SLIDING, values, rack=rack, ledger=ledger)
    beside = (sizes.face.width - sizes.width) / 2
    place = Setting(
        name="beside",
        label="Front beyond the side",
        value=beside,
        note="from the end of the front to the outside of the side, each end",
    )
    return Called(
        of=solved.joint,
        names=INTO_THE_FRONT,
        about=mark,
        without=("added",),
        first=(_side_length(sizes, wrong=sizes.side_length - end.reach), place),
    )


def _housed(spec: UnitSpec, sizes: DrawerSizes, end: End, rack: Rack, ledger: Ledger) -> Joint:
    asked = spec.drawers.back_joint
    play = asked.play if isinstance(asked, HousedBack) else None
    joint = housing(
        Housing(
            divider=sizes.back,
            case_side=min(sizes.left_side, sizes.right_side),
            depth=end.reach,
            play=HOUSINGS.play.value if play is None else play,
            stop=0.0,
            length=sizes.back_height,
            inside_width=sizes.inside.width,
            rack=rack,
            mark=f"{spec.code}-{sizes.code}",
            into="side",
            housed="back",
        ),
        ledger,
    )
    place = Setting(
        name="set_in",
        label="Housing from the end of the side",
        value=end.set_in,
        note="to its rear wall; the side runs on behind the back",
    )
    return Called(of=joint, names=(), first=(_side_length(sizes), place, _foot(sizes.back_foot)))
