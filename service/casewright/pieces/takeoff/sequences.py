"""The blanks of matched parts, as a yard has to find them."""

from dataclasses import dataclass

from casewright.measure.lengths import LengthUnit, show, show_mm
from casewright.measure.rounding import up_to
from casewright.measure.units import MILLIMETRES_PER_INCH, Inches
from casewright.pieces.asked.shop import Shop
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.grain_sets import GrainSet, Way, grain_sets, is_sawn_in_two
from casewright.pieces.rules.grain_rules import across_width, along_length
from casewright.pieces.takeoff.rough import RoughLine, TakeOff
from casewright.wood.rough import rough_length, rough_width
from casewright.wood.thickness import resaw_thickness_needed


@dataclass(frozen=True, slots=True, kw_only=True)
class SequenceSet:
    """Parts that are cut from one blank, or one tree, so that their figure matches.

    Attributes:
        name: which parts
        way: `along` one board or a panel as long; `across` a wide board or panel; a `grid` of both; `book`
            or `slip` from the thickness of one board; or `one tree`
        parts: their codes, in order
        width: rough width of the blank [in]
        length: rough length of the blank [in]
        boards: how many boards a blank `along` is glued up from, where no board is wide enough; else one
        thickness: what the blank has to measure, rough, to be sawn in two; 0 where it is not [in]
    """

    name: str
    way: str
    parts: tuple[str, ...]
    width: float
    length: float
    boards: int = 1
    thickness: float = 0.0

    @property
    def board_width(self) -> float:
        """Width of each board that the blank is made of [in]."""
        return self.width / self.boards


def yard_size(needed: Inches, unit: LengthUnit = LengthUnit.INCH) -> Inches:
    """A width or length as it is asked for at a yard, which picks boards with a tape and cuts to no 64th.

    Rule: needed, rounded up to the next 1/4 in; to the next 5 mm where the shop works in millimetres

    Args:
        needed: the least width or length that serves [in]
        unit: the unit that the shop works in

    Returns:
        The size to ask for, never less than what is needed [in]

    Source: common practice: boards are tallied to the quarter inch.
    """
    if unit is LengthUnit.MILLIMETRE:
        return up_to(needed * MILLIMETRES_PER_INCH, 5) / MILLIMETRES_PER_INCH
    return up_to(needed, 1 / 4)


def sequence_sets(unit: Construction, takeoff: TakeOff, shop: Shop) -> tuple[SequenceSet, ...]:
    """The blanks of all parts that match.

    Args:
        unit: one unit, worked out
        takeoff: how the cut list breaks out its parts
        shop: kerf and trims

    Returns:
        The sets of one unit; none where nothing need match.

    Source: common practice.
    """
    found = grain_sets(unit.spec, unit.face, unit.parts)
    if not found:
        return ()
    cut = {code: line for line in takeoff.lines for code in line.of.codes}
    # Along boards first, then across panels: as a yard's list has always had them.
    blanks = [blank_of(each, cut, shop) for each in found]
    return tuple(sorted(blanks, key=lambda each: each.way != Way.ALONG))


def blank_of(found: GrainSet, cut: dict[str, RoughLine], shop: Shop) -> SequenceSet:
    """The blank of one set.

    Args:
        found: the set
        cut: how the cut list breaks out each part; a part that it does not know is one board
        shop: kerf and trims

    Returns:
        The blank; of one tree, the widest and the longest of its parts.

    Source: common practice.
    """
    parts, spec = found.parts, shop.spec
    boards, thickness = 1, 0.0
    if found.way in (Way.ALONG, Way.GRID):
        lines = [cut[part.code] for part in parts if part.code in cut]
        boards = max((line.boards for line in lines), default=1) if found.way is Way.ALONG else 1
        length = max(
            along_length(
                lengths=sum(part.length for part in row),
                parts=len(row),
                kerf=spec.kerf,
                trim=spec.end_trim,
            )
            for row in found.rows
        )
    else:
        length = rough_length(max(part.length for part in parts))
    if found.way in (Way.ACROSS, Way.GRID):
        stacked = parts if found.way is Way.ACROSS else tuple(row[0] for row in found.rows)
        width = across_width(
            widths=sum(part.width for part in stacked),
            parts=len(stacked),
            kerf=spec.kerf,
            edge=spec.edge_trim,
        )
    elif boards > 1:
        width = max(line.width for line in lines)
    else:
        widest = max(part.width for part in parts) / (2 if found.halves else 1)
        width = widest + spec.edge_trim if found.way is Way.ALONG else rough_width(widest)
    if is_sawn_in_two(found):
        thickness = resaw_thickness_needed(max(part.thickness for part in parts))
    return SequenceSet(
        name=found.name,
        way=found.way.value,
        parts=tuple(part.code for part in parts),
        width=width,
        length=length,
        boards=boards,
        thickness=thickness,
    )


def where_words(found: SequenceSet) -> str:
    """What kind of blank a set takes, with places for its sizes.

    Args:
        found: the set

    Returns:
        Words with the places `{boards}`, `{width}`, `{length}` and `{thickness}`.

    Source: common practice.
    """
    if found.way == Way.ONE_TREE:
        return "all from one log, boards up to {width} × {length}"
    if found.way in (Way.BOOK, Way.SLIP):
        opened = "opened like a book" if found.way == Way.BOOK else "slipped side by side"
        return "one board, {thickness} thick, {width} × {length}, sawn in two and " + opened
    if found.way != Way.ALONG:
        return "one panel or wide board from one log, {width} × {length}"
    if found.boards == 1:
        return "one board, at least {width} wide and {length} long"
    return "{boards} boards from one log for a panel, each at least {width} wide and {length} long"


def sequence_words(found: SequenceSet, unit: LengthUnit = LengthUnit.INCH) -> str:
    """A sequence set in a yard's words, its sizes as a yard picks them.

    Args:
        found: the set
        unit: the unit that the shop works in

    Returns:
        One sentence.

    Source: common practice.
    """
    written = show if unit is LengthUnit.INCH else show_mm
    size = where_words(found).format(
        boards=found.boards,
        width=written(yard_size(found.board_width, unit)),
        length=written(yard_size(found.length, unit)),
        thickness=written(yard_size(found.thickness, unit)),
    )
    end = "" if found.way in (Way.ONE_TREE, Way.BOOK, Way.SLIP) else "; consecutive, ends marked"
    return f"{found.name} ({len(found.parts)}): {size}{end}"
