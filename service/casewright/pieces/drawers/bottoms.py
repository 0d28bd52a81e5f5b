"""The bottom of a drawer in its grooves, as a joint of its own."""

from casewright.joinery.families.bottom_groove.asked import ALL_AROUND, UNDER_THE_BACK, BottomGroove
from casewright.joinery.families.bottom_groove.joint import BottomJoint, bottom_groove
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import PLY_PLAY
from casewright.pieces.layout.season import Climate, across


def bottom_joint(spec: UnitSpec, drawer: Drawer, climate: Climate, ledger: Ledger) -> BottomJoint:
    """The bottom of a drawer in its grooves: where they are cut, and what goes into them.

    Args:
        spec: what the maker chose
        drawer: the drawer
        climate: the moisture contents between which the wood moves
        ledger: keeps the working

    Returns:
        The joint; its bottom and muntin are as large as those of the cut list.

    Raises:
        CannotBeLaidOut: the groove cuts a side or the front in two

    Source: common practice of drawer making.
    """
    drawers, sizes, bottom = spec.drawers, drawer.sizes, spec.drawers.bottom
    ply = isinstance(bottom, PlyBottom)
    parted = drawer.bottom.muntin is not None
    thinner = min(sizes.left_side, sizes.right_side)
    if drawers.groove.depth >= thinner:
        raise CannotBeLaidOut(
            say("A groove {} deep cuts a side of {:bare} in two.", drawers.groove.depth, thinner)
        )
    return bottom_groove(
        BottomGroove(
            width=sizes.width,
            length=sizes.to_the_back,
            # Unlike sides leave as much room between them as two of their mean; what the groove leaves of the
            # thinner one is a check of the drawer.
            side=(sizes.left_side + sizes.right_side) / 2,
            front=sizes.front,
            back=sizes.back,
            groove_height=drawers.groove.height,
            groove_width=drawers.groove.width,
            groove_depth=drawers.groove.side_depth,
            front_depth=drawers.groove.depth,
            bottom=drawer.bottom.thickness,
            play=PLY_PLAY if ply else drawers.bottom_play,
            grooves=UNDER_THE_BACK if sizes.back_foot > 0 else ALL_AROUND,
            over=bottom.over if sizes.back_foot > 0 else 0.0,
            # A drawer deeper than its opening is stopped by a check of its own.
            back_gap=max(0.0, sizes.opening.depth - sizes.length + sizes.set_in),
            muntin=drawers.muntin.width if parted else 0.0,
            muntin_thickness=drawers.muntin.thickness if parted else 0.0,
            slip=drawers.groove.slip,
            slip_height=drawers.groove.slip_height,
            movement=0.0 if ply else across(spec.woods.of("bottoms"), ledger),
            swelling=climate.swelling,
            shrinking=climate.drying,
            mark=drawer.code,
        ),
        ledger.under(f"{sizes.code}.bottom_joint"),
    )
