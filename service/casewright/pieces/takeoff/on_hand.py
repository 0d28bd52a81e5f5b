"""What the rack already holds for a line of the order: offcuts first, the smallest that serves."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from casewright.measure.units import BoardFeet, Inches
from casewright.pieces.asked.shop import Shop
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.pieces.takeoff.rough import RoughLine
from casewright.wood.strips import Blank, longest_first, parts_out_of
from casewright.wood.tally import board_feet


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceOnHand:
    """A board or an offcut of solid wood on the rack.

    Attributes:
        id: which piece it is
        width: usable width [in]
        length: length along the grain [in]
        is_offcut: are its edges straight and its ends square already?
    """

    id: str
    width: Inches
    length: Inches
    is_offcut: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Serves:
    """What a piece from the rack would give.

    Attributes:
        piece: the piece
        parts: the marks of the lines that it holds parts of
        rough: feet of those parts on rough size [bd ft]
        order: feet that need not be bought for them, waste included [bd ft]
    """

    piece: PieceOnHand
    parts: tuple[str, ...]
    rough: BoardFeet
    order: BoardFeet


def blanks_of(lines: Iterable[RoughLine]) -> tuple[Blank, ...]:
    """What has to come out of boards for some lines of the cut list.

    Args:
        lines: lines, as they are broken out

    Returns:
        The parts on rough size, longest first; glued-up ones may be made up of strips.

    Source: common practice.
    """
    return longest_first(
        [
            Blank(
                width=line.width,
                length=line.length,
                count=line.blanks * (2 if line.halves else 1),
                mark=line.line,
                is_glued=line.boards > 1,
            )
            for line in lines
        ]
    )


def served_from_rack(line: OrderLine, pieces: Sequence[PieceOnHand], shop: Shop) -> tuple[Serves, ...]:
    """What the rack holds of a line of the order, piece by piece.

    Offcuts come before boards and small before large, so that long stock stays whole. What one piece gives is
    no more wanted of the next. Parts in sequence are left out: their boards are chosen together.

    Args:
        line: the line of the order
        pieces: what is on the rack in its wood, cut and class
        shop: kerf and trims

    Returns:
        One entry for each piece that gives something.

    Source: common practice: what is on hand is used before wood is bought.
    """
    matched = {code for found in line.sequences for code in found.parts}
    lines = [each for group in line.groups for each in group.lines if matched.isdisjoint(each.of.codes)]
    waste = {each.line: group.waste.fraction for group in line.groups for each in group.lines}
    blanks, spec = blanks_of(lines), shop.spec
    wanted = [each.wanted for each in blanks]
    found = []
    for piece in sorted(pieces, key=lambda each: (not each.is_offcut, each.width * each.length, each.id)):
        edge, end = (0.0, 0.0) if piece.is_offcut else (spec.edge_trim, 2 * spec.end_trim)
        out = parts_out_of(piece.width - edge, piece.length - end, blanks, wanted, spec.kerf)
        if not any(out):
            continue
        wanted = [want - got for want, got in zip(wanted, out, strict=True)]
        feet = {
            blank.mark: board_feet(
                thickness=line.bought.rough,
                width=got if blank.is_glued else got * blank.width,
                length=blank.length,
            )
            for blank, got in zip(blanks, out, strict=True)
            if got
        }
        found.append(
            Serves(
                piece=piece,
                parts=tuple(feet),
                rough=sum(feet.values()),
                order=sum(each / (1 - waste[mark]) for mark, each in feet.items()),
            )
        )
    return tuple(found)
