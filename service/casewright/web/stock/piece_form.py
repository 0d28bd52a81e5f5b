"""What is measured of one piece of stock, as a form: sizes, moisture, sapwood, defects, place."""

from collections.abc import Mapping
from typing import Any

from casewright.measure.lengths import LengthUnit, from_ticks, show_in, write_length
from casewright.records.stock import StockPiece
from casewright.shop.stock import PieceFacts
from casewright.web.frame.typed import Reader

LARGEST = 600.0
"""Nobody carries a board of more than 50 ft [in]."""
DEFECT_ROWS = 8
SAP = (("", "none"), ("lower", "lower edge"), ("upper", "upper edge"), ("both", "both edges"))
FACES = (("both", "both faces"), ("better", "better face"), ("poor", "poor face"))
DEFECT_SIZES = ("from_left", "from_edge", "length", "width")
DEFECT_WORDS = {
    "from_left": "from the left end",
    "from_edge": "from the lower edge",
    "length": "long",
    "width": "wide",
}
SIZES = ("width", "left_width", "right_width", "length", "thickness")


def read_size(read: Reader, name: str, unit: LengthUnit) -> float:
    """A width or length of stock, within what somebody can carry."""
    size = read.length(name, unit) or 0.0
    if name not in read.faults and not 0.5 <= size <= LARGEST:
        least, most = show_in(0.5, unit), show_in(LARGEST, unit)
        read.fault(name, f"A piece of stock measures {least} at least and {most} at most.")
    return max(size, 0.5)


def piece_values(piece: StockPiece, unit: LengthUnit) -> dict[str, str]:
    """The fields of the form, from what is known."""
    values = {}
    for name in SIZES:
        ticks = getattr(piece, f"{name}_ticks")
        values[name] = "" if ticks is None else write_length(from_ticks(ticks), unit)
    for row, defect in enumerate(piece.defects[:DEFECT_ROWS], 1):
        values[f"defect.{row}.face"] = str(defect["face"])
        values |= {
            f"defect.{row}.{name}": write_length(from_ticks(defect[name]), unit) for name in DEFECT_SIZES
        }
    return values | {
        "moisture": "" if piece.moisture is None else f"{piece.moisture:g}",
        "sap_edge": piece.sap_edge,
        "log_mark": piece.log_mark,
        "place": piece.place,
        "note": piece.note,
        "version": str(piece.version),
    }


def defect_rows(values: Mapping[str, str]) -> range:
    """The rows of defects to show: those that say something, and one more."""
    filled = [
        row
        for row in range(1, DEFECT_ROWS + 1)
        if any(values.get(f"defect.{row}.{name}", "").strip() for name in DEFECT_SIZES)
    ]
    return range(1, min(max(filled, default=0) + 1, DEFECT_ROWS) + 1)


def names() -> dict[str, str]:
    """What the fields are called in the list of problems."""
    plain = {
        "width": "Width in the middle",
        "left_width": "Width at the left end",
        "right_width": "Width at the right end",
        "length": "Length",
        "thickness": "Thickness",
        "moisture": "Moisture",
    }
    rows = range(1, DEFECT_ROWS + 1)
    return plain | {
        f"defect.{row}.{name}": f"Defect {row}, {words}"
        for row in rows
        for name, words in DEFECT_WORDS.items()
    }


def read_piece(read: Reader, unit: LengthUnit) -> PieceFacts:
    """The facts that a form describes."""
    length, width = read_size(read, "length", unit), read_size(read, "width", unit)
    ends = [
        read_size(read, name, unit) if read.typed.get(name).strip() else None
        for name in ("left_width", "right_width")
    ]
    moisture = None
    if read.typed.get("moisture").strip():
        moisture = read.number("moisture", least=1, most=60, example="7.5", unit=" %")
    return PieceFacts(
        width=width,
        length=length,
        left_width=ends[0],
        right_width=ends[1],
        thickness=read.length("thickness", unit, needed=False) or None,
        moisture=moisture,
        sap_edge=read.choice("sap_edge", [value for value, _ in SAP], default=""),
        defects=tuple(_read_defects(read, unit, length, max(width, *(each or 0.0 for each in ends)))),
        log_mark=read.line("log_mark", most=40),
        place=read.line("place", most=80),
        note=read.line("note", most=300),
    )


def _read_defects(read: Reader, unit: LengthUnit, length: float, width: float) -> list[dict[str, Any]]:
    found = []
    for row in range(1, DEFECT_ROWS + 1):
        start = f"defect.{row}"
        if not any(read.typed.get(f"{start}.{name}").strip() for name in DEFECT_SIZES):
            continue
        defect: dict[str, Any] = {
            "face": read.choice(f"{start}.face", [value for value, _ in FACES], default="both")
        }
        for name in DEFECT_SIZES:
            defect[name] = float(read.length(f"{start}.{name}", unit) or 0.0)
        if defect["from_left"] + defect["length"] > length + 1e-6:
            read.fault(
                f"{start}.length", f"It would reach past the end: the board is {show_in(length, unit)} long."
            )
        if defect["from_edge"] + defect["width"] > width + 1e-6:
            read.fault(
                f"{start}.width", f"It would reach past the edge: the board is {show_in(width, unit)} wide."
            )
        if not defect["length"] or not defect["width"]:
            read.fault(f"{start}.length", "A defect has a length and a width; empty the row if it is none.")
        found.append(defect)
    return found
