"""Pieces of the rack as a cut file holds them: its words become those of the file, sizes stay exact."""

import pytest

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.measure.lengths import to_ticks
from casewright.records.stock import PieceKind, StockPiece
from casewright.shop.cut_files import SAP, material_called, sort_called, stock_data_of
from casewright.shop.stock import PieceFacts, columns_of

FACTS = {"width": 7.25, "length": 96.5}


def piece(kind=PieceKind.BOARD, number=3, facts=(), **columns):
    """A piece that nobody keeps."""
    given = {"material": "cherry", "size": "4/4", "cut": "flat", "is_sheet": False} | columns
    return StockPiece(kind=kind, number=number, **given, **columns_of(PieceFacts(**FACTS | dict(facts))))


def read(*pieces, **part):
    """The cut file of a part and some pieces."""
    asked = {"code": "P", "wood": "cherry", "class": "4/4", "length": "20", "width": "5"} | part
    return cut_file_of({"cut_file": 1, "parts": [asked], **stock_data_of(pieces)})


def test_a_board_keeps_its_mark_sizes_and_cost():
    board = read(piece(cost_cents=3850, facts={"left_width": 7.5, "right_width": 7.0})).boards[0]

    assert (board.code, board.wood, board.thickness_class, board.cost) == ("B3", "cherry", "4/4", 3850)
    assert (board.length, board.width, board.width_middle, board.width_end) == (96.5, 7.5, 7.25, 7.0)


@pytest.mark.parametrize(("face", "becomes"), [("both", "both"), ("better", "front"), ("poor", "back")])
def test_a_defect_lies_where_it_was_measured_on_the_face_that_was_named(face, becomes):
    defect = {"face": face, "from_left": 30.0, "from_edge": 2.0, "length": 2.0, "width": 1.5}

    found = read(piece(facts={"defects": (defect,)})).boards[0].defects[0]

    assert (found.face, found.from_end, found.from_edge, found.length, found.width) == (
        becomes,
        30,
        2,
        2,
        1.5,
    )


@pytest.mark.parametrize(
    ("edge", "near", "far"), [("", 0, 0), ("lower", SAP, 0), ("upper", 0, SAP), ("both", SAP, SAP)]
)
def test_sapwood_lies_along_the_edges_that_were_named(edge, near, far):
    board = read(piece(facts={"sap_edge": edge})).boards[0]

    assert (board.sap_near, board.sap_far) == (near, far)


def test_a_size_that_no_fraction_of_an_inch_tells_stays_as_it_was_measured():
    board = read(piece(facts={"width": 183.4 / 25.4})).boards[0]

    assert to_ticks(board.width) == to_ticks(183.4 / 25.4)


def test_another_cut_than_flat_goes_with_the_name_of_the_wood():
    quartered = piece(material="white oak", cut="quarter")

    assert read(quartered).boards[0].wood == "white oak, quartersawn"


def test_an_offcut_and_a_sheet_are_known_as_such():
    sheet = piece(PieceKind.SHEET, material="birch plywood", is_sheet=True, size="1/2", cut="")
    found = read(piece(PieceKind.OFFCUT), sheet)

    assert found.boards[0].offcut
    assert (found.sheets[0].code, found.sheets[0].count) == ("S3", 1)


def test_a_sheet_is_called_as_the_parts_call_it():
    sheet = piece(PieceKind.SHEET, material="birch plywood", is_sheet=True, size="1/2", cut="")

    assert read(sheet).sheets[0].wood == "1/2 in birch plywood"


@pytest.mark.parametrize(
    "columns",
    [
        {"material": "cherry", "size": "4/4", "cut": "flat"},
        {"material": "white oak", "size": "8/4", "cut": "quarter"},
        {"material": "birch plywood", "size": "1/2", "cut": "", "is_sheet": True},
    ],
)
def test_a_sort_of_stock_is_found_again_from_what_a_cut_file_calls_it(columns):
    held = piece(**columns)
    [named] = stock_data_of([held])["sheets" if held.is_sheet else "boards"]

    found = sort_called(named["wood"], named.get("class", ""))

    assert (found.material, found.size, found.cut, found.is_sheet) == (
        held.material,
        held.size,
        held.cut,
        held.is_sheet,
    )
    assert material_called(named["wood"]) == held.material
