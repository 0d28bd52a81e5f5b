"""The order to a yard as it is kept: feet by wood and class, what boards they must hold, sheets, hardware."""

from collections.abc import Iterable, Mapping
from datetime import date

from casewright.measure.lengths import LengthUnit
from casewright.papers.cautions import cautions_at
from casewright.papers.head import JobPaper, PaperHead
from casewright.pieces.asked.fields import Spec
from casewright.pieces.costs.priced import FinishNeed
from casewright.pieces.layout.fitted import HardwareItem
from casewright.pieces.takeoff.lumber import BoardNeed, OrderLine
from casewright.pieces.takeoff.rough import FeetGroup
from casewright.pieces.takeoff.sequences import SequenceSet, yard_size
from casewright.pricing.materials import MaterialLine
from casewright.pricing.prices import PriceKind
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.sheets import SheetsByArea
from casewright.wood.waste import PartUse


class BoardsNeeded(Spec):
    """Boards of a least width and length, as a yard picks them; `matched` ones are part of a set."""

    quantity: int
    width_in: float
    length_in: float
    lines: tuple[str, ...]
    matched: bool


class MatchedSet(Spec):
    """Pieces that are cut one after the other from one log; `sets` such sets are wanted.

    `width_in` is that of one board; of `boards` for a panel it is that of each. `thickness_in` is what a
    board that is sawn in two has to measure; 0 where none is.
    """

    sets: int
    name: str
    way: str
    pieces: int
    width_in: float
    length_in: float
    boards: int = 1
    thickness_in: float = 0.0


class FeetBehind(Spec):
    """Feet that one use of the wood takes: what the parts measure rough, and what is wasted of the bought."""

    use: PartUse
    rough_bd_ft: float
    waste: float
    order_bd_ft: float
    lines: tuple[str, ...]


class LumberLine(Spec):
    """One wood, cut and class; `must_plane_to_in` is the thickest part that comes from it."""

    wood: str
    cut: Cut
    bought: str
    grade: GradeName
    feet_bd_ft: int
    exact_bd_ft: float
    surfacing: str
    must_plane_to_in: float
    longest_in: float
    needs: tuple[BoardsNeeded, ...]
    sets: tuple[MatchedSet, ...]
    behind: tuple[FeetBehind, ...]
    grade_note: str


class SheetLine(Spec):
    """Sheets of one kind and thickness."""

    kind: str
    nominal: str
    sheets: int
    thickness_in: float
    width_in: float
    length_in: float
    note: str


class HardwareLine(Spec):
    """Something bought by the piece."""

    item: str
    quantity: int
    spare: int
    note: str


class FinishLine(Spec):
    """Finish of one product, in whole quarts; `exact_quarts` is what the coats take."""

    product: str
    quarts: int
    exact_quarts: float


class ConsumableLine(Spec):
    """Something used up at the bench; `unit` says how it is counted."""

    item: str
    quantity: float
    unit: str


class OrderPaper(JobPaper):
    """What a job takes from the yard and the hardware shop. No price, and no customer."""

    supplier: str = ""
    needed_by: date | None = None
    delivery: str = ""
    lumber: tuple[LumberLine, ...]
    sheets: tuple[SheetLine, ...]
    hardware: tuple[HardwareLine, ...]
    finishes: tuple[FinishLine, ...] = ()
    consumables: tuple[ConsumableLine, ...] = ()
    remarks: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


def order_paper(
    head: PaperHead,
    lumber: Iterable[OrderLine],
    sheets: Iterable[SheetsByArea] = (),
    hardware: Iterable[HardwareItem] = (),
    *,
    finishes: Iterable[FinishNeed] = (),
    materials: Iterable[MaterialLine] = (),
    counts: Mapping[str, int] | None = None,
    supplier: str = "",
    needed_by: date | None = None,
    delivery: str = "",
    surfacing: str = "rough",
    remarks: tuple[str, ...] = (),
) -> OrderPaper:
    """The order of a job.

    Args:
        head: who, what and when
        lumber: the lines of the lumber order
        sheets: the sheets to buy
        hardware: what is bought by the piece
        finishes: the finish to buy
        materials: what is priced for the job; of it only what is used up at the bench, without its price
        counts: how many units are made alike, by the unit's code; one where left out
        supplier: the yard, if it is known
        needed_by: the day on which the wood must be there
        delivery: pick-up, or where it is to go
        surfacing: how the boards are to come, such as `hit-and-miss to 15/16`
        remarks: what else the yard should know

    Returns:
        The paper, ready to be printed or kept.
    """
    alike, lines = counts or {}, tuple(lumber)
    return OrderPaper(
        head=head,
        supplier=supplier,
        needed_by=needed_by,
        delivery=delivery,
        lumber=tuple(_lumber(line, alike, surfacing, head.unit) for line in lines),
        sheets=tuple(_sheet(each) for each in sheets),
        hardware=tuple(
            HardwareLine(item=each.item, quantity=each.quantity, spare=each.spare, note=each.note)
            for each in hardware
        ),
        finishes=tuple(
            FinishLine(product=each.product, quarts=each.buy, exact_quarts=each.quarts)
            for each in finishes
            if each.buy
        ),
        consumables=tuple(
            ConsumableLine(item=each.label, quantity=each.quantity, unit=each.unit)
            for each in materials
            if each.kind is PriceKind.CONSUMABLE
        ),
        remarks=remarks,
        cautions=cautions_at("order", (line.wood for line in lines)),
    )


def _lumber(line: OrderLine, alike: Mapping[str, int], surfacing: str, unit: LengthUnit) -> LumberLine:
    thickest = max(each.of.part.thickness for group in line.groups for each in group.lines)
    return LumberLine(
        wood=line.wood,
        cut=line.cut,
        bought=line.bought.name,
        grade=line.grade,
        feet_bd_ft=line.feet,
        exact_bd_ft=line.exact,
        surfacing=surfacing,
        must_plane_to_in=thickest,
        longest_in=yard_size(line.longest, unit),
        needs=tuple(_need(need, unit) for need in line.needs),
        sets=tuple(_set(found, alike, unit) for found in line.sequences),
        behind=tuple(_behind(group) for group in line.groups),
        grade_note=line.grade_note,
    )


def _need(need: BoardNeed, unit: LengthUnit) -> BoardsNeeded:
    return BoardsNeeded(
        quantity=need.quantity,
        width_in=yard_size(need.width, unit),
        length_in=yard_size(need.length, unit),
        lines=need.lines,
        matched=need.matched,
    )


def _set(found: SequenceSet, alike: Mapping[str, int], unit: LengthUnit) -> MatchedSet:
    """One set for each unit that is made; the first part's code begins with its unit's."""
    made = next((code for code in alike if found.parts[0].startswith(f"{code}-")), "")
    return MatchedSet(
        sets=alike.get(made, 1),
        name=found.name,
        way=found.way,
        pieces=len(found.parts),
        width_in=yard_size(found.board_width, unit),
        length_in=yard_size(found.length, unit),
        boards=found.boards,
        thickness_in=yard_size(found.thickness, unit),
    )


def _behind(group: FeetGroup) -> FeetBehind:
    return FeetBehind(
        use=group.use,
        rough_bd_ft=group.rough,
        waste=group.waste.fraction,
        order_bd_ft=group.order,
        lines=tuple(line.line for line in group.lines),
    )


def _sheet(each: SheetsByArea) -> SheetLine:
    return SheetLine(
        kind=each.sheet.kind,
        nominal=each.sheet.nominal,
        sheets=each.count,
        thickness_in=each.sheet.thickness,
        width_in=each.sheet.width,
        length_in=each.sheet.length,
        note=each.note,
    )
