"""The lumber order as a yard understands it: whole feet, and counted widths, lengths and sequences."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.rounding import up_to
from casewright.measure.units import BoardFeet, Count
from casewright.pieces.asked.shop import Shop
from casewright.pieces.built.construct import Construction
from casewright.pieces.takeoff.rough import FeetGroup, RoughLine, TakeOff
from casewright.pieces.takeoff.sequences import SequenceSet, sequence_sets
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
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
            tuple(each for each in sequences if each.parts[0] in _codes(groups)),
            shop,
            unit.ledger,
            "figures "
            + " + ".join(f"feet.{group.wood}.{group.bought.name}.{group.use}.order" for group in groups),
        )
        for groups in found.values()
    )


def _codes(groups: list[FeetGroup]) -> set[str]:
    return {code for group in groups for line in group.lines for code in line.of.codes}


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
            quantity=sum(line.blanks for line in members),
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
