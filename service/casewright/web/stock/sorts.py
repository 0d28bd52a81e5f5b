"""What sort of stock a piece is, from a form and in words."""

from casewright.measure.lengths import LengthUnit, from_ticks, show_in
from casewright.records.stock import StockPiece
from casewright.shop.stock import StockSort
from casewright.web.frame.typed import Reader
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.species import UnknownWood, wood
from casewright.wood.thickness import thickness_classes

CUTS: dict[str, str] = {Cut.QUARTER: Cut.QUARTER.sawn, Cut.RIFT: Cut.RIFT.sawn}


def sort_words(sort: StockSort) -> str:
    """A sort of stock in words, such as `Cherry 4/4 FAS`."""
    cut = CUTS.get(sort.cut, "")
    size = f"{sort.size} in" if sort.is_sheet else sort.size
    words = " ".join(part for part in (sort.material, size, cut, sort.grade) if part)
    return words[:1].upper() + words[1:]


def size_words(piece: StockPiece, unit: LengthUnit) -> str:
    """Width and length of a piece, such as `6-1/2 in × 96 in`."""
    return " × ".join(show_in(from_ticks(each), unit) for each in (piece.width_ticks, piece.length_ticks))


def sort_values(sort: StockSort) -> dict[str, str]:
    """A sort of stock as hidden fields hold it."""
    return {
        "material": sort.material,
        "size": sort.size,
        "cut": sort.cut,
        "grade": sort.grade,
        "is_sheet": "1" if sort.is_sheet else "",
    }


def read_sort(read: Reader) -> StockSort:
    """The sort of stock that a form describes: a known wood in a class, or sheets of some kind."""
    if read.ticked("is_sheet"):
        return StockSort(
            material=read.line(
                "material", most=120, needed="Write what the sheet is of, such as birch plywood."
            ),
            size=read.line("size", most=40, needed="Write the thickness that it is sold by, such as 1/2."),
            is_sheet=True,
        )
    name = read.line("material", most=120, needed="Write the wood, such as cherry.")
    try:
        name = wood(name).name if name else name
    except UnknownWood as error:
        read.fault("material", str(error))
    size = read.choice("size", [each.name for each in thickness_classes()])
    cut = read.choice("cut", [each.value for each in Cut], default=Cut.FLAT.value)
    grade = read.choice("grade", ["", *(each.value for each in GradeName)], default="")
    return StockSort(material=name, size=size, cut=cut, grade=grade)
