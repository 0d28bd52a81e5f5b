"""Boards over the full depth of a case: its bottom, the top of a plywood case, and solid dividers."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Timber
from casewright.pieces.case.ends import bottom_ends, rail_ends
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import Wall
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.layout.season import across
from casewright.pieces.rules import case_rules
from casewright.pieces.rules import corner_rules as rules
from casewright.wood.movement import movement
from casewright.wood.waste import PartUse


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A board over the full depth, with its lipping.

    Attributes:
        mark: its mark within the unit; the lipping has an L behind it
        name: what it is
        lines: the line of the lipping, and that of the board, in the cut list
        figure: the name of its width in the working
        thickness: how thick it is [in]
        start: its left end, from the outside of the left side [in]
        length: over both ends [in]
        clear: between what stands at its ends: where that begins, and how wide it is [in]
        ends: the joint at its left and at its right end
        z: its lower face, above the floor [in]
    """

    mark: str
    name: str
    lines: tuple[str, str]
    figure: str
    thickness: Inches
    start: Inches
    length: Inches
    clear: tuple[Inches, Inches]
    ends: tuple[Words, Words]
    z: Inches


def bottom_parts(case: CasePlan) -> Iterator[Part]:
    """The case bottom: one over the whole width, or one for each pedestal beside a knee space.

    Args:
        case: what the case is worked out from

    Yields:
        The parts, the lipping of each first.

    Source: common practice of case making.
    """
    thick, pedestals, ends = case.spec.case, case.face.pedestals, bottom_ends(case)
    if len(pedestals) == 1 and pedestals[0].walls == (Wall.SIDE, Wall.SIDE):
        clear = thick.side, case.face.clear_width
        words = ends.words, ends.words
        yield from board_parts(case, _bottom(case, "C-B", (ends.start, ends.length), clear, words))
        return
    for number, pedestal in enumerate(pedestals, start=1):
        mark, walls = f"C-B{number}", pedestal.walls
        thicknesses = [thick.side if wall is Wall.SIDE else thick.upright for wall in walls]
        reach = [ends.reach if wall is Wall.SIDE else case.housing_in(wall) for wall in walls]
        left = pedestal.left + thicknesses[0]
        clear = left, pedestal.right - pedestal.left - sum(thicknesses)
        long = case.ledger.take(
            f"{mark}.length", case_rules.housed_between, opening=clear[1], left=reach[0], right=reach[1]
        )
        into = say("housing, {:fraction} deep, in the partition", case.housing_in(Wall.PARTITION))
        first, last = (ends.words if wall is Wall.SIDE else into for wall in walls)
        yield from board_parts(case, _bottom(case, mark, (left - reach[0], long), clear, (first, last)))


def _bottom(
    case: CasePlan,
    mark: str,
    along: tuple[Inches, Inches],
    clear: tuple[Inches, Inches],
    ends: tuple[Words, Words],
) -> Board:
    return Board(
        mark=mark,
        name="Case bottom",
        lines=("C5", "C6"),
        figure="bottom_width",
        thickness=case.spec.case.bottom,
        start=along[0],
        length=along[1],
        clear=clear,
        ends=ends,
        z=case.face.base_height,
    )


def ply_top_parts(case: CasePlan) -> Iterator[Part]:
    """The plywood top of a plywood case, in place of rails, and the lipping in front of it.

    Args:
        case: what the case is worked out from

    Yields:
        The parts, the lipping first.

    Source: common practice of plywood cases.
    """
    thick, ends = case.spec.case, rail_ends(case)
    board = Board(
        mark="C-T",
        name="Case top",
        lines=("E2", "C11"),
        figure="case_top_width",
        thickness=thick.sub_top_rail,
        start=ends.start,
        length=ends.length,
        clear=(thick.side, case.face.clear_width),
        ends=(ends.words, ends.words),
        z=case.face.base_height + case.face.body_height - thick.sub_top_rail,
    )
    yield from board_parts(case, board)


def board_parts(case: CasePlan, board: Board) -> Iterator[Part]:
    """A board of show wood from front to back; or lipping, and behind it wood of the inside or plywood.

    Args:
        case: what the case is worked out from
        board: what it is

    Yields:
        The parts, the lipping first.

    Source: common practice.
    """
    thick = case.spec.case
    depth, lipping = _depth(case, board), thick.lipping
    if lipping:
        # Before plywood the lipping lies between the sides' own; of solid wood it is joined as the board is.
        start, length = board.clear if thick.is_ply else (board.start, board.length)
        yield new_part(
            code=case.code(f"{board.mark}L"),
            line=board.lines[0],
            name=f"{board.name} lipping",
            wood=case.spec.woods.case.wood,
            cut=case.spec.woods.case.cut,
            thickness=board.thickness,
            width=lipping,
            length=length,
            face=FaceClass.EDGE,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=("square", "square") if thick.is_ply else board.ends,
            box=Box(start, 0.0, board.z, length, lipping, board.thickness),
        )
        depth = case.ledger.take(
            board.figure, case_rules.between, whole=depth, one_end=lipping, other_end=0.0
        )
    yield _behind(case, board, depth, lipping)


def _behind(case: CasePlan, board: Board, depth: Inches, lipping: Inches) -> Part:
    thick = case.spec.case
    is_seen = not lipping and not thick.is_ply
    material = thick.ply.material if thick.is_ply else timber(wood_behind(case))
    return new_part(
        code=case.code(board.mark),
        line=board.lines[1],
        name=board.name if is_seen or thick.is_ply else f"{board.name} panel",
        **material,
        thickness=board.thickness,
        width=depth,
        length=board.length,
        face=FaceClass.EDGE if is_seen else FaceClass.INSIDE,
        grain=Grain.ACROSS,
        use=PartUse.CASE if is_seen else PartUse.INSIDE,
        ends=board.ends,
        box=Box(board.start, lipping, board.z, board.length, depth, board.thickness),
    )


def wood_behind(case: CasePlan) -> Timber:
    """The wood of a board over the full depth: that of the inside behind a lipping, else that of the case."""
    woods = case.spec.woods
    return woods.inside if case.spec.case.lipping else woods.case


def growth(case: CasePlan, of: Timber | None = None, figure: str = "board_growth") -> Inches:
    """How much a solid board over the full depth grows towards the back between sides that do not [in]."""
    thick = case.spec.case
    if thick.is_ply or not thick.is_framed:
        return 0.0
    moves = across(of or wood_behind(case), case.ledger.root)
    return case.ledger.take(
        figure,
        movement,
        size=case.face.opening_depth - thick.lipping,
        coefficient=moves,
        change=case.climate.swelling,
    )


def _depth(case: CasePlan, board: Board) -> Inches:
    """The depth of the opening, less room to grow where the sides do not grow with it."""
    closes = board.mark.startswith(("C-B", "C-T"))
    depth, grows = case.board_depth if closes else case.face.opening_depth, growth(case)
    if not grows:
        return depth
    return case.ledger.take(f"{board.figure}_free", rules.free_depth, depth=depth, growth=grows)
