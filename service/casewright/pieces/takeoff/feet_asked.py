"""What is asked before the boards are known: which parts have to come out of how many feet."""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from casewright.measure.units import BoardFeet, Count, Inches, Number
from casewright.pieces.asked.shop import Shop
from casewright.pieces.layout.grain_sets import Way
from casewright.pieces.takeoff.cut_parts import NARROWEST_STRIP
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.pieces.takeoff.rough import RoughLine
from casewright.pieces.takeoff.sequences import SequenceSet
from casewright.wood.grades import GradeName
from casewright.wood.loads import NamedBoards, board_habit
from casewright.wood.rough import usual_allowances

SURE = 0.9
SET_WAYS = (Way.ALONG, Way.ACROSS, Way.GRID)
"""Sets that are cut from one blank; what is opened from one thickness is broken out so already."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FeetPart:
    """Parts of one rough size, or the blanks of sets that match.

    Attributes:
        mark: which line of the cut list it is
        width: rough width; of what is glued up, without what each of its strips takes [in]
        length: rough length, along the grain [in]
        count: how many [dimensionless]
        is_glued: may each be glued up from strips?
    """

    mark: str
    width: Inches
    length: Inches
    count: Count
    is_glued: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FeetAsked:
    """How many feet of one wood, cut, class and grade give all parts?

    Attributes:
        parts: what has to come out
        named: boards that the order names by their size
        grade: the grade
        thickness: nominal thickness of the class [in]
        average: usable width of the wood's average board [in]
        rough: feet of the parts on rough size, below which nobody orders [bd ft]
        ordered: feet that the order has, the waste of the table or of the shop in them [dimensionless]
        kerf: what each cut takes [in]
        end_trim: taken off each end of a board [in]
        edge_trim: taken off to straighten an edge [in]
        jointing: what jointing both edges takes from a strip of a panel [in]
        narrowest: narrowest strip, before its edges are jointed [in]
        widest: widest strip, likewise [in]
        sure: the share of loads in which the feet are to be enough [dimensionless]
        seed: the same seed draws the same loads [dimensionless]
    """

    parts: tuple[FeetPart, ...]
    named: tuple[NamedBoards, ...]
    grade: GradeName
    thickness: Inches
    average: Inches
    rough: BoardFeet
    ordered: Count
    kerf: Inches = 0.125
    end_trim: Inches = 1.0
    edge_trim: Inches = 0.25
    jointing: Inches = 0.25
    narrowest: Inches = 2.5
    widest: Inches = 6.0
    sure: Number = SURE
    seed: Count = 0

    def __post_init__(self) -> None:
        if not 0 < self.sure < 1:
            raise ValueError("Ask for a share between 0 and 1, such as 0.9.")


@dataclass(frozen=True, slots=True, kw_only=True)
class EnoughFeet:
    """How many feet give all parts, over loads that were drawn by chance.

    Attributes:
        feet: whole feet that were enough in the share of loads that was asked for; None where too few loads
            held every part at all [dimensionless]
        usual: feet that were enough in half of the loads; None likewise [dimensionless]
        chance: the share of loads in which the feet that the order has were enough [dimensionless]
        loads: how many loads were drawn [dimensionless]
        boards: how many boards came for the usual feet, in the middle of the loads [dimensionless]
        never: parts that some load of any size did not hold, by their marks
    """

    feet: Count | None
    usual: Count | None
    chance: Number
    loads: Count
    boards: Count
    never: tuple[str, ...]


def feet_asked(members: Sequence[tuple[str, OrderLine]], shop: Shop, *, seed: Count) -> FeetAsked:
    """The question that the lines of one wood, cut, class and grade put.

    Panels are glued up from strips as the cut file says. What matches is cut from one blank, as the order
    asks for it.

    Args:
        members: lines of the order, one a job, each with what goes before its marks
        shop: kerf, trims and widths of boards
        seed: the same seed draws the same loads [dimensionless]

    Returns:
        The question.

    Source: common practice.
    """
    first = members[0][1]
    parts = tuple(part for mark, line in members for part in _parts_of(line, mark, shop))
    spec, board = shop.spec, usual_allowances().board
    return FeetAsked(
        parts=parts,
        named=_named(parts, first.grade, spec.wide_over, spec.edge_trim, spec.end_trim),
        grade=first.grade,
        thickness=first.bought.rough,
        average=shop.board_width(first.wood),
        rough=math.fsum(group.rough for _, line in members for group in line.groups),
        ordered=sum(line.feet for _, line in members),
        kerf=spec.kerf,
        end_trim=spec.end_trim,
        edge_trim=spec.edge_trim,
        jointing=board,
        narrowest=NARROWEST_STRIP,
        # Two strips must be able to share what is a little too wide for one.
        widest=max(shop.board_width(first.wood) + board, 2 * NARROWEST_STRIP),
        seed=seed,
    )


def _parts_of(line: OrderLine, mark: str, shop: Shop) -> Iterator[FeetPart]:
    """The parts of a line, and the blanks of its sets in place of the parts that match."""
    lines = [each for group in line.groups for each in group.lines]
    sets = [found for found in line.sequences if found.way in SET_WAYS]
    matched = {code for found in sets for code in found.parts}
    for each in lines:
        alone = [code for code in each.of.codes if code not in matched]
        count = each.blanks * (2 if each.halves else 1) * len(alone) // len(each.of.codes)
        if count:
            yield FeetPart(
                mark=mark + each.line,
                width=_net_width(each),
                length=each.length,
                count=count,
                is_glued=each.boards > 1,
            )
    for found in sets:
        members = [each for each in lines if not matched.isdisjoint(each.of.codes)]
        units = max((each.quantity // len(each.of.codes) for each in members), default=1)
        yield _blank_of(found, mark, units, shop)


def _net_width(line: RoughLine) -> Inches:
    return line.width - (line.boards * usual_allowances().board if line.boards > 1 else 0.0)


def _blank_of(found: SequenceSet, mark: str, units: Count, shop: Shop) -> FeetPart:
    """The blank of a set; its trims are the board's, which are taken off anyway."""
    spec, is_along = shop.spec, found.way == Way.ALONG
    width = found.width - (spec.edge_trim if not is_along or found.boards == 1 else 0.0)
    glued = found.boards > 1 or (not is_along and width > spec.widest_board)
    return FeetPart(
        mark=mark + found.name,
        width=width - (found.boards * usual_allowances().board if found.boards > 1 else 0.0),
        length=found.length - (2 * spec.end_trim if found.way in (Way.ALONG, Way.GRID) else 0.0),
        count=units,
        is_glued=glued,
    )


def _named(
    parts: Iterable[FeetPart], grade: GradeName, wide_over: Inches, edge_trim: Inches, end_trim: Inches
) -> tuple[NamedBoards, ...]:
    """The boards that an order names: for parts wider than boards are as a rule, or longer than the least."""
    shortest = 12 * board_habit(grade).lengths[0] - 2 * end_trim
    wanted: Counter[tuple[Inches, Inches]] = Counter()
    for part in parts:
        is_wide = not part.is_glued and part.width > wide_over
        if is_wide or part.length > shortest:
            wanted[part.width + edge_trim if is_wide else 0.0, part.length] += part.count
    return tuple(
        NamedBoards(width=width, length=length, count=count)
        for (width, length), count in sorted(wanted.items(), reverse=True)
    )
