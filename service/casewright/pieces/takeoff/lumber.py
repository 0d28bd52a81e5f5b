"""The lumber order as a yard understands it: whole feet, and counted widths, lengths and sequences."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.lengths import LengthUnit, show, show_mm
from casewright.measure.rounding import up_to
from casewright.measure.units import MILLIMETRES_PER_INCH, BoardFeet, Count, Inches
from casewright.pieces.asked.shop import Shop
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.row_heights import row_words
from casewright.pieces.takeoff.rough import FeetGroup, RoughLine, TakeOff
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.rough import rough_length
from casewright.wood.thickness import ThicknessClass
from casewright.wood.waste import PartUse


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardNeed:
    """Boards that must have at least a certain width and length.

    Attributes:
        quantity: how many parts each need such a board
        width: least width [in]
        length: least length [in]
        lines: the lines of the cut list it is for
        matched: are these boards part of a sequence set, and not to be sent twice?
    """

    quantity: int
    width: float
    length: float
    lines: tuple[str, ...]
    matched: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SequenceSet:
    """Fronts that are cut one after the other, so that the figure runs across them.

    Attributes:
        name: which fronts
        way: `along` one board or a panel as long, or `across` one wide board or panel
        parts: their codes, in order
        width: rough width of the blank [in]
        length: rough length of the blank [in]
        boards: how many boards a blank `along` is glued up from, where no board is wide enough; else one
    """

    name: str
    way: str
    parts: tuple[str, ...]
    width: float
    length: float
    boards: int = 1

    @property
    def board_width(self) -> float:
        """Width of each board that the blank is made of [in]."""
        return self.width / self.boards


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """One line of the lumber order.

    Attributes:
        wood: shop name of the wood
        cut: how it is to be sawn
        bought: thickness class
        grade: the grade that is asked for
        groups: the feet behind the line, each with its own waste
        exact: feet before rounding [bd ft]
        feet: whole feet to order [bd ft]
        longest: the longest board that is needed, with its trim [in]
        needs: wide boards that are needed, counted
        sequences: sets that must come from one log, in order
        grade_note: what a lower grade would do
    """

    wood: str
    cut: Cut
    bought: ThicknessClass
    grade: GradeName
    groups: tuple[FeetGroup, ...]
    exact: float
    feet: int
    longest: float
    needs: tuple[BoardNeed, ...]
    sequences: tuple[SequenceSet, ...]
    grade_note: str


def whole_feet_up(exact: BoardFeet) -> Count:
    """Feet to order: the next whole foot.

    Rule: exact, rounded up to a whole foot

    Args:
        exact: feet of all groups of the line [bd ft]

    Returns:
        Whole feet.

    Source: common practice: yards count whole feet.
    """
    return round(up_to(exact, 1))


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


def along_length(lengths: Inches, parts: Count, kerf: Inches, trim: Inches) -> Inches:
    """The length of a board from which parts are cut one after the other.

    Rule: lengths + (parts - 1) × kerf + 2 × trim

    Args:
        lengths: finished lengths added up [in]
        parts: how many there are
        kerf: what each saw cut takes [in]
        trim: taken off each end [in]

    Returns:
        The length needed [in]

    Source: geometry of the cut.
    """
    return lengths + (parts - 1) * kerf + 2 * trim


def across_width(widths: Inches, parts: Count, kerf: Inches, edge: Inches) -> Inches:
    """The width of a board or panel from which parts are ripped one above the other.

    Rule: widths + (parts - 1) × kerf + 2 × edge

    Args:
        widths: finished widths added up [in]
        parts: how many there are
        kerf: what each saw cut takes [in]
        edge: taken off each edge to straighten it [in]

    Returns:
        The width needed [in]

    Source: geometry of the cut.
    """
    return widths + (parts - 1) * kerf + 2 * edge


def lumber_order(unit: Construction, takeoff: TakeOff, shop: Shop) -> tuple[OrderLine, ...]:
    """The lumber to order for all units of a design.

    Args:
        unit: one unit, worked out
        takeoff: what all units take
        shop: grades, kerfs and trims

    Returns:
        One line for each wood, cut and class.

    Source: common practice; grades by the NHLA rules.
    """
    found: dict[tuple[str, Cut, str], list[FeetGroup]] = {}
    for group in takeoff.groups:
        found.setdefault((group.wood, group.cut, group.bought.name), []).append(group)
    sequences = sequence_sets(unit, takeoff, shop)
    return tuple(
        order_line(
            tuple(groups),
            sequences if _holds_fronts(groups) else (),
            shop,
            unit.ledger,
            "figures "
            + " + ".join(f"feet.{group.wood}.{group.bought.name}.{group.use}.order" for group in groups),
        )
        for groups in found.values()
    )


def _holds_fronts(groups: list[FeetGroup]) -> bool:
    return any(group.use is PartUse.SEQUENCE for group in groups)


def order_figure(wood: str, bought: ThicknessClass, cut: Cut) -> str:
    """The name under which the ledger keeps a line of the order.

    Args:
        wood: shop name of the wood
        bought: thickness class
        cut: how it is to be sawn

    Returns:
        Such as `order.cherry.4/4`.

    Source: common practice.
    """
    return f"order.{wood}.{bought.name}" + ("" if cut is Cut.FLAT else f".{cut}")


def order_line(
    groups: tuple[FeetGroup, ...],
    sequences: tuple[SequenceSet, ...],
    shop: Shop,
    ledger: Ledger,
    behind: str,
) -> OrderLine:
    """One line of the order: the feet of all its groups added up, and only then rounded to whole feet.

    Args:
        groups: feet of one wood, cut and class
        sequences: sets that must come from one log
        shop: grades, kerfs and trims
        ledger: keeps the working
        behind: which figures the feet are made of, in words

    Returns:
        The line.

    Source: common practice: yards count whole feet, once a line.
    """
    first = groups[0]
    exact = sum(group.order for group in groups)
    lines = [line for group in groups for line in group.lines]
    figure = order_figure(first.wood, first.bought, first.cut)
    return OrderLine(
        wood=first.wood,
        cut=first.cut,
        bought=first.bought,
        grade=shop.grade_of(first.wood),
        groups=groups,
        exact=exact,
        feet=ledger.take(
            f"{figure}.feet",
            whole_feet_up,
            exact=ledger.given(f"{figure}.exact", exact, behind, BoardFeet),
        ),
        longest=max(line.length for line in lines) + shop.spec.end_trim,
        needs=_needs(lines, shop),
        sequences=sequences,
        grade_note=_grade_note(lines, shop.grade_of(first.wood)),
    )


def _needs(lines: list[RoughLine], shop: Shop) -> tuple[BoardNeed, ...]:
    """Wide boards, counted: rough widths up to the quarter, the widest first."""
    found: dict[float, list[RoughLine]] = {}
    for line in lines:
        if line.boards == 1 and line.width > shop.spec.wide_over:
            found.setdefault(up_to(line.width, 1 / 4), []).append(line)
    return tuple(
        BoardNeed(
            quantity=sum(line.quantity for line in members),
            width=width,
            length=max(line.length for line in members) + shop.spec.end_trim,
            lines=tuple(line.line for line in members),
            matched=all(line.of.part.use is PartUse.SEQUENCE for line in members),
        )
        for width, members in sorted(found.items(), reverse=True)
    )


def _grade_note(lines: list[RoughLine], bought: GradeName) -> str:
    """How much of the line a cheaper grade would do, by the length of its least cuttings."""
    lower = [line for line in lines if line.grade.grade and line.grade.grade.name is GradeName.COMMON_1]
    none = [line.line for line in lines if line.grade.grade is None]
    total = sum(line.rough for line in lines)
    notes = []
    if lower and bought is not GradeName.COMMON_1:
        share = sum(line.rough for line in lower)
        words = "all of it" if len(lower) == len(lines) else f"{share:.1f} of {total:.1f} rough feet"
        notes.append(f"No. 1 Common would do for {words}, at more waste")
    if none:
        notes.append(f"no grade promises the length of {', '.join(none)}: pick boards by hand")
    return "; ".join(notes)


def sequence_sets(unit: Construction, takeoff: TakeOff, shop: Shop) -> tuple[SequenceSet, ...]:
    """The fronts that are cut in sequence: side by side along a board, one above the other across a panel.

    Args:
        unit: one unit, worked out
        takeoff: how the cut list breaks out its parts
        shop: kerf and trims

    Returns:
        The sets of one unit; none where fronts need not match.

    Source: common practice.
    """
    if not unit.spec.sequence_fronts:
        return ()
    fronts = {part.code: part for part in unit.parts if part.grain_set == "fronts"}
    rows = [
        (stack.code, row.mark, [fronts[f"{unit.spec.code}-{opening.code}-F"] for opening in row.openings])
        for stack in unit.face.stacks
        for row in stack.rows
    ]
    cut = {code: line for line in takeoff.lines for code in line.of.codes}
    along = tuple(
        _along(mark, row, [cut[part.code] for part in row], shop) for _, mark, row in rows if len(row) > 1
    )
    single: dict[str, list[Part]] = {}
    for stack, _, row in rows:
        if len(row) == 1:
            single.setdefault(stack, []).append(row[0])
    return (*along, *(_across(stack, found, shop) for stack, found in single.items() if len(found) > 1))


def _along(mark: str, row: list[Part], cut: list[RoughLine], shop: Shop) -> SequenceSet:
    """One board for the row; where the cut list glues a front up, the boards of its panel as it has them."""
    boards = max(line.boards for line in cut)
    return SequenceSet(
        name=f"fronts of row {mark}",
        way="along",
        parts=tuple(part.code for part in row),
        width=max(part.width for part in row) + shop.spec.edge_trim
        if boards == 1
        else max(line.width for line in cut),
        length=along_length(
            lengths=sum(part.length for part in row),
            parts=len(row),
            kerf=shop.spec.kerf,
            trim=shop.spec.end_trim,
        ),
        boards=boards,
    )


def _across(stack: str, fronts: list[Part], shop: Shop) -> SequenceSet:
    """One panel for the fronts that stand one above the other in a stack."""
    where = f"fronts of {row_words(stack)}" if stack else "full-width fronts"
    return SequenceSet(
        name=f"{where}, top to bottom",
        way="across",
        parts=tuple(part.code for part in fronts),
        width=across_width(
            widths=sum(part.width for part in fronts),
            parts=len(fronts),
            kerf=shop.spec.kerf,
            edge=shop.spec.edge_trim,
        ),
        length=rough_length(max(part.length for part in fronts)),
    )


def sequence_words(found: SequenceSet, unit: LengthUnit = LengthUnit.INCH) -> str:
    """A sequence set in a yard's words, its sizes as a yard picks them.

    Args:
        found: the set
        unit: the unit that the shop works in

    Returns:
        One sentence.

    Source: common practice.
    """
    if found.way != "along":
        where = "one panel or wide board from one log, {width} × {length}"
    elif found.boards == 1:
        where = "one board, at least {width} wide and {length} long"
    else:
        where = "{boards} boards from one log for a panel, each at least {width} wide and {length} long"
    written = show if unit is LengthUnit.INCH else show_mm
    size = where.format(
        boards=found.boards,
        width=written(yard_size(found.board_width, unit)),
        length=written(yard_size(found.length, unit)),
    )
    return f"{found.name} ({len(found.parts)}): {size}; consecutive, ends marked"
