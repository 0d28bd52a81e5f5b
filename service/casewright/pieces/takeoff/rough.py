"""What a unit takes: rough sizes, classes and feet, line by line and by what is bought together."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from casewright.measure.ledger import Ledger
from casewright.measure.units import BoardFeet, Count, Inches
from casewright.pieces.asked.shop import Shop
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.grain_sets import PAIRED, grain_sets, is_sawn_in_two
from casewright.pieces.layout.parts import PartLine
from casewright.wood.grades import GradeChoice, cheapest_grade
from casewright.wood.movement import Cut
from casewright.wood.rough import boards_in_panel, is_ganged, rough_length, rough_width
from casewright.wood.sheets import Sheet, SheetsByArea, sheets, sheets_by_area
from casewright.wood.tally import board_feet
from casewright.wood.thickness import Resaw, ThicknessClass, TooThick, resaw_class, thickness_class
from casewright.wood.waste import PartUse, Waste, order_feet


@dataclass(frozen=True, slots=True, kw_only=True)
class RoughLine:
    """One line of the cut list as it is broken out, for all units together.

    Attributes:
        line: the mark of the line
        of: the finished line
        quantity: parts of all units
        bought: thickness class
        width: rough width [in]
        length: rough length [in]
        boards: boards glued up for each part, or for each of its matched halves
        net: feet on finished width and length, at class thickness [bd ft]
        rough: feet on rough size [bd ft]
        grade: the cheapest grade whose least cutting holds the part
        resaw: the class from which two come, where that saves wood or they match; else None
        blanks: how many are broken out: one for each pair that is sawn from one, else one for each part
        figures: where its figures lie in the ledger
        is_matched: are its parts opened from one thickness, so that the pair is bought as one board?
        halves: is each part glued up from two such halves?
    """

    line: str
    of: PartLine
    quantity: int
    bought: ThicknessClass
    width: float
    length: float
    boards: int
    net: float
    rough: float
    grade: GradeChoice
    resaw: Resaw | None
    blanks: int
    figures: str
    is_matched: bool = False
    halves: bool = False

    @property
    def is_panel(self) -> bool:
        """Is each part glued up?"""
        return self.halves or self.boards > 1

    @property
    def glue_lines(self) -> int:
        """Glue lines of all parts on the line."""
        return ((2 if self.halves else 1) * self.boards - 1) * self.quantity

    @property
    def resawn_boards(self) -> int:
        """Boards that are sawn in two through their thickness, for parts that match."""
        return self.blanks * self.boards if self.is_matched else 0

    @property
    def resawn_area(self) -> float:
        """What the saw goes through of them, rough width by rough length [sq in]."""
        return self.blanks * self.width * self.length if self.is_matched else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FeetGroup:
    """Feet that are bought with one waste: one wood, class and use.

    Attributes:
        wood: shop name of the wood
        cut: how it is sawn
        bought: thickness class
        use: what the parts are for
        lines: the lines it is for
        net: feet on finished size [bd ft]
        rough: feet on rough size [bd ft]
        waste: the waste, with its basis
        order: feet to buy [bd ft]
    """

    wood: str
    cut: Cut
    bought: ThicknessClass
    use: PartUse
    lines: tuple[RoughLine, ...]
    net: float
    rough: float
    waste: Waste
    order: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeOff:
    """What all units of the design take together.

    Attributes:
        count: how many units
        lines: solid parts, as they are broken out
        groups: feet by wood, class and use
        sheets: sheet goods, by area
    """

    count: int
    lines: tuple[RoughLine, ...]
    groups: tuple[FeetGroup, ...]
    sheets: tuple[SheetsByArea, ...]

    @property
    def rough(self) -> float:
        """Feet on rough size of all solid parts [bd ft]."""
        return sum(group.rough for group in self.groups)


def feet_of_parts(quantity: Count, thickness: Inches, width: Inches, length: Inches) -> BoardFeet:
    """The board feet of parts that are alike.

    Rule: quantity × thickness × width × length / 144

    Args:
        quantity: how many there are
        thickness: rough thickness of the class [in]
        width: width of each [in]
        length: length of each [in]

    Returns:
        Feet of all of them [bd ft]

    Source: NHLA rules: a board foot is 144 cubic inches of rough size.
    """
    return quantity * board_feet(thickness=thickness, width=width, length=length)


def take_off(unit: Construction, shop: Shop) -> TakeOff:
    """What all units of a design take.

    Args:
        unit: one unit, worked out
        shop: boards, grades and wastes

    Returns:
        The take-off; doubling the count doubles its feet.

    Source: common practice; board measure by the NHLA rules.
    """
    count = unit.spec.count
    solid = [line for line in unit.lines if not line.part.sheet]
    opened = _opened(unit)
    lines = tuple(
        _rough(each, count, shop, unit.ledger, (figures, match))
        for line in solid
        for each, figures, match in _by_match(line, opened)
    )
    return TakeOff(
        count=count,
        lines=lines,
        groups=_groups(lines, shop, unit.ledger),
        sheets=_sheets(unit, count, shop),
    )


class _Match(StrEnum):
    """How the parts of a line are opened from one thickness, if they are."""

    NONE = "none"
    PAIR = "pair"
    HALVES = "halves"


def _opened(unit: Construction) -> dict[str, _Match]:
    """The parts that are sawn two and two from one thickness, by their codes."""
    wishes = unit.spec.grain
    if PAIRED.keys().isdisjoint((wishes.doors, wishes.sides, wishes.top)):
        return {}
    return {
        part.code: _Match.HALVES if found.halves else _Match.PAIR
        for found in grain_sets(unit.spec, unit.face, unit.parts)
        if is_sawn_in_two(found)
        for part in found.parts
    }


def _by_match(line: PartLine, opened: dict[str, _Match]) -> Iterator[tuple[PartLine, str, _Match]]:
    """A line of the cut list, parted into what is opened in pairs and what is not."""
    for match in _Match:
        codes = tuple(code for code in line.codes if opened.get(code, _Match.NONE) is match)
        if codes:
            is_whole = len(codes) == len(line.codes)
            figures = line.line if is_whole or match is _Match.NONE else f"{line.line}.matched"
            yield line if is_whole else replace(line, codes=codes), figures, match


def _rough(line: PartLine, count: int, shop: Shop, root: Ledger, how: tuple[str, _Match]) -> RoughLine:
    part, (figures, match) = line.part, how
    ledger = root.under(figures)
    quantity = line.quantity * count
    paired = _two_from_one(part.thickness) if match is not _Match.NONE else None
    halves = paired is not None and match is _Match.HALVES
    blanks = quantity if paired is None or halves else quantity // 2
    finished = ledger.take("half", half_of, whole=part.width) if halves else part.width
    boards = 1
    if finished > shop.spec.widest_board:
        boards = ledger.take("boards", boards_in_panel, width=finished, average=shop.board_width(part.wood))
    width = ledger.take("rough_width", rough_width, width=finished, boards=boards)
    length = ledger.take(
        "rough_length", rough_length, length=part.length, ganged=is_ganged(part.length, line.quantity)
    )
    bought = paired.bought if paired else thickness_class(part.thickness)
    feet = {"quantity": blanks, "thickness": bought.rough}
    # A leg is sawn out square: nobody resaws it.
    resawn = boards == 1 and line.quantity > 1 and part.use is not PartUse.LEG
    resaw = _two_from_one(part.thickness) if resawn and not paired else None
    return RoughLine(
        line=line.line,
        of=line,
        quantity=quantity,
        bought=bought,
        width=width,
        length=length,
        boards=boards,
        net=ledger.take("net_feet", feet_of_parts, **feet, width=finished, length=part.length),
        rough=ledger.take("rough_feet", feet_of_parts, **feet, width=width, length=length),
        grade=cheapest_grade(part.length, finished / boards),
        resaw=paired or (resaw if resaw and resaw.saves else None),
        blanks=blanks,
        figures=figures,
        is_matched=paired is not None,
        halves=halves,
    )


def half_of(whole: Inches) -> Inches:
    """The width of one of two matched halves, finished.

    Rule: whole / 2

    Args:
        whole: finished width of the part [in]

    Returns:
        Width of a half [in]

    Source: geometry.
    """
    return whole / 2


def _two_from_one(thickness: Inches) -> Resaw | None:
    """The class from which two parts come by resawing; None where no board is so thick."""
    try:
        return resaw_class(thickness)
    except TooThick:
        return None


def _groups(lines: tuple[RoughLine, ...], shop: Shop, ledger: Ledger) -> tuple[FeetGroup, ...]:
    """Lines bought with one waste, in the order of the cut list."""
    found: dict[tuple[str, Cut, str, PartUse], list[RoughLine]] = {}
    for line in lines:
        part = line.of.part
        found.setdefault((part.wood, part.cut, line.bought.name, part.use), []).append(line)
    groups = []
    for (name, cut, bought, use), members in found.items():
        waste = shop.waste_of(name, use, cut)
        rough = sum(line.rough for line in members)
        figure = f"feet.{name}.{bought}.{use}" + ("" if cut is Cut.FLAT else f".{cut}")
        groups.append(
            FeetGroup(
                wood=name,
                cut=cut,
                bought=members[0].bought,
                use=use,
                lines=tuple(members),
                net=sum(line.net for line in members),
                rough=ledger.given(f"{figure}.rough", rough, f"rough feet of {_marks(members)} added up"),
                waste=waste,
                order=ledger.take(f"{figure}.order", order_feet, rough=rough, waste=waste),
            )
        )
    return tuple(groups)


def _marks(lines: list[RoughLine]) -> str:
    return ", ".join(line.line for line in lines)


def _sheets(unit: Construction, count: int, shop: Shop) -> tuple[SheetsByArea, ...]:
    """Sheet goods by area: how they are laid out is not reckoned here."""
    found: dict[str, list[float]] = {}
    for line in unit.lines:
        if line.part.sheet:
            area = line.part.width * line.part.length * line.quantity * count
            found.setdefault(line.part.wood, []).append(area)
    by_name: dict[str, Sheet] = {str(sheet): sheet for sheet in sheets()}
    return tuple(
        sheets_by_area(
            tuple(areas), by_name[name], shop.sheet_waste(), ledger=unit.ledger.under(f"sheets.{name}")
        )
        for name, areas in found.items()
    )
