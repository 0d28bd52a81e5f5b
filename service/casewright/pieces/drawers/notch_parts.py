"""The boards around the notch of a drawer: a short back in each arm, two inner sides, and the inner back."""

from collections.abc import Iterator

from casewright.measure.saying import Words, say
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer, Place
from casewright.pieces.drawers.end_words import END_OF_A_BOARD, END_OF_A_SIDE
from casewright.pieces.drawers.sizes import INNER_BACK, INNER_SIDES, SHORT_BACKS
from casewright.pieces.layout.parts import Box, CutOut, FaceClass, Grain, Part
from casewright.wood.waste import PartUse


def notch_parts(spec: UnitSpec, drawer: Drawer, place: Place) -> Iterator[Part]:
    """The boards that stand in place of the back of a notched drawer, where they sit when it is closed.

    Args:
        spec: what the maker chose
        drawer: the drawer
        place: where its box sits

    Returns:
        The parts; none for a drawer without a notch.

    Source: common practice of drawers around plumbing.
    """
    sizes, notch, joints = drawer.sizes, drawer.sizes.notch, drawer.joints.notch
    if notch is None or joints is None:
        return
    row, high = sizes.opening.row_mark, sizes.back_height
    z = place.z + sizes.foot + sizes.back_foot
    outer, inner = END_OF_A_BOARD[drawer.joints.back_family], END_OF_A_BOARD[joints.family]
    backs = (
        (SHORT_BACKS[0], notch.backs[0], notch.left_back, notch.left_start, (outer, inner)),
        (SHORT_BACKS[1], notch.backs[1], notch.right_back, notch.right_start, (inner, outer)),
    )
    for mark, thick, length, x, ends in backs:
        yield Part(
            code=f"{drawer.code}-{mark}",
            line=f"K{row}",
            name=f"Drawer back beside the notch, row {row}",
            wood=spec.woods.drawers.wood,
            cut=spec.woods.drawers.cut,
            thickness=thick,
            width=high,
            length=length,
            face=FaceClass.DRAWER,
            grain=Grain.ACROSS,
            use=PartUse.DRAWER,
            ends=ends,
            box=Box(place.x + x, place.y + sizes.to_the_back - thick, z, length, thick, high),
        )
    sides = (
        (INNER_SIDES[0], notch.left_inner, notch.around_left),
        (INNER_SIDES[1], notch.right_inner, notch.left + notch.width),
    )
    for mark, thickness, x in sides:
        yield Part(
            code=f"{drawer.code}-{mark}",
            line=f"S{row}",
            name=f"Drawer inner side, row {row}",
            wood=spec.woods.drawers.wood,
            cut=spec.woods.drawers.cut,
            thickness=thickness,
            width=high,
            length=notch.side_length,
            face=FaceClass.DRAWER,
            grain=Grain.BACK,
            use=PartUse.DRAWER,
            ends=(END_OF_A_SIDE[joints.family],) * 2,
            box=Box(
                place.x + x,
                place.y + notch.start + notch.side_start,
                z,
                thickness,
                notch.side_length,
                high,
            ),
        )
    head = notch.around_left + (notch.around - notch.head_length) / 2
    yield Part(
        code=f"{drawer.code}-{INNER_BACK}",
        line=f"K{row}",
        name=f"Drawer inner back, row {row}",
        wood=spec.woods.drawers.wood,
        cut=spec.woods.drawers.cut,
        thickness=notch.head,
        width=high,
        length=notch.head_length,
        face=FaceClass.DRAWER,
        grain=Grain.ACROSS,
        use=PartUse.DRAWER,
        ends=(inner, inner),
        box=Box(place.x + head, place.y + notch.start, z, notch.head_length, notch.head, high),
    )


def cut_out_words(held: Words, cut: CutOut) -> Words:
    """How a bottom is held, and what is sawn out of its rear edge once it has its size.

    Args:
        held: how its ends are held
        cut: the cut-out

    Returns:
        The words for the cut list.

    Source: common practice: a blank is cut whole.
    """
    return say(
        "{}; cut out at the rear {:fraction} wide × {:fraction} deep, {:fraction} from its left end",
        held,
        cut.length,
        cut.depth,
        cut.along,
    )


def notch_advice(cut: CutOut) -> Words:
    """When and where the bottom of a notched drawer is cut out.

    Args:
        cut: the cut-out

    Returns:
        A sentence for the card.

    Source: common practice: the boards around the notch are tried on the bottom before they are glued.
    """
    return say(
        "Saw the bottom whole; then cut it out from its rear edge, {} wide and {} deep, {} from its left "
        "end, and try it around the boards of the notch before they are glued.",
        cut.length,
        cut.depth,
        cut.along,
    )
