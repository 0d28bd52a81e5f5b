"""The floor of a notched drawer: what is sawn out of its bottom, and what is left to stand on."""

from casewright.measure.ledger import Ledger
from casewright.measure.units import CubicFeet, Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import PLY_PLAY, DrawerSizes
from casewright.pieces.layout.parts import CutOut
from casewright.pieces.rules import notch_rules as rules


def cut_out(spec: UnitSpec, sizes: DrawerSizes, across: Inches, under: Ledger) -> CutOut | None:
    """What is sawn out of the rear edge of a bottom around the notch of its drawer.

    Args:
        spec: what the maker chose
        sizes: the drawer
        across: size of the bottom from side to side [in]
        under: keeps the working of this drawer

    Returns:
        The cut-out: as far as the grooves of the inner sides hold it, or flush with the notch where the inner
        sides stand on the bottom; None without a notch.

    Source: geometry of the drawer; the play is common practice.
    """
    notch, drawers = sizes.notch, spec.drawers
    if notch is None:
        return None
    kept = under.under("notch")
    if drawers.screwed_under or sizes.back_foot:
        edge, length = notch.left, notch.width
        depth = kept.take(
            "cut_out_deep",
            rules.cut_out_deep,
            depth=notch.depth,
            set_in=0.0 if drawers.screwed_under else sizes.set_in,
            over=drawers.bottom.over,
        )
    else:
        groove = drawers.groove.depth
        edge = notch.around_left + groove - PLY_PLAY
        length = kept.take(
            "cut_out",
            rules.cut_out_grooved,
            around=notch.around,
            groove_depth=groove,
            play=PLY_PLAY,
        )
        depth = kept.take(
            "cut_out_deep",
            rules.cut_out_deep_grooved,
            depth=notch.depth,
            set_in=sizes.set_in,
            back=sizes.back,
            head=notch.head,
        )
    along = kept.take(
        "cut_out_along",
        rules.cut_out_along,
        edge=edge,
        inside=sizes.left_side,
        bottom=across,
        room=sizes.inside.width,
    )
    return CutOut(along=along, length=length, depth=depth)


def floor_depth(sizes: DrawerSizes) -> Inches:
    """The depth of a drawer with as large a floor and no notch.

    Args:
        sizes: the drawer

    Returns:
        Its clear depth, less where a notch takes of its floor [in]

    Source: geometry of the drawer.
    """
    inside, notch = sizes.inside, sizes.notch
    if notch is None:
        return inside.depth
    area = rules.floor_area(
        width=inside.width, depth=inside.depth, taken_wide=notch.around, taken_deep=notch.taken
    )
    return area / inside.width


def notched_room(sizes: DrawerSizes, under: Ledger) -> CubicFeet | None:
    """The room in a notched drawer, as the tip-over rule counts it.

    Args:
        sizes: the drawer
        under: keeps the working

    Returns:
        The volume; None for a drawer without a notch [cu ft]

    Source: CPSC business guidance, Clothing Storage Units, of what is left of the drawer.
    """
    inside, notch = sizes.inside, sizes.notch
    if notch is None:
        return None
    floor = under.take(
        f"{sizes.code}.floor",
        rules.floor_area,
        width=inside.width,
        depth=inside.depth,
        taken_wide=notch.around,
        taken_deep=notch.taken,
    )
    return under.take(f"{sizes.code}.volume", rules.notched_volume, floor=floor, height=inside.height)


def load_centre(sizes: DrawerSizes) -> Inches:
    """How far behind the inside of its front what fills a drawer has its centre.

    Args:
        sizes: the drawer

    Returns:
        Half its clear depth; less where a notch keeps the load before it [in]

    Source: centre of an area.
    """
    inside, notch = sizes.inside, sizes.notch
    if notch is None:
        return inside.depth / 2
    return rules.middle_of_the_floor(
        width=inside.width, depth=inside.depth, taken_wide=notch.around, taken_deep=notch.taken
    )
