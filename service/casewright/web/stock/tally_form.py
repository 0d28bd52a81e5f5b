"""The form of a tally: the lengths and widths it offers to tap, and what stands in it for the next board."""

from casewright.measure.lengths import LengthUnit, from_ticks, show_in, write_length
from casewright.measure.units import MILLIMETRES_PER_INCH, Inches
from casewright.records.stock import StockPiece
from casewright.shop.stock import StockSort, inches
from casewright.web.frame.pages import form_of
from casewright.web.frame.typed import Form
from casewright.wood.sheets import sheets

FEET = tuple(range(4, 17))
INCHES = tuple(range(3, 17))
QUARTERS = (("0", "even"), ("1/4", "+ 1/4"), ("1/2", "+ 1/2"), ("3/4", "+ 3/4"))
LENGTHS_MM = tuple(range(1200, 5100, 300))
WIDTHS_MM = tuple(range(80, 420, 20))
STEPS_MM = (("0", "even"), ("5", "+ 5"), ("10", "+ 10"), ("15", "+ 15"))


def lengths_to_tap(last: StockPiece | None, unit: LengthUnit) -> list[tuple[str, str]]:
    """The lengths that are offered; the one of the board before is among them, however odd it is."""
    offered = (
        [(f"{each} mm", f"{each / 1000:g} m") for each in LENGTHS_MM]
        if unit is LengthUnit.MILLIMETRE
        else [(f"{each} ft", f"{each} ft") for each in FEET]
    )
    length = from_ticks(last.length_ticks) if last and not last.is_sheet else 0.0
    if length and not _button(length, unit):
        offered.append((write_length(length, unit), show_in(length, unit)))
    return offered


def _button(length: Inches, unit: LengthUnit) -> str:
    """What the button of a length sends; nothing where it has none."""
    if unit is LengthUnit.MILLIMETRE:
        each = round(length * MILLIMETRES_PER_INCH)
        return f"{each} mm" if each in LENGTHS_MM and abs(each / MILLIMETRES_PER_INCH - length) < 1e-6 else ""
    feet = round(length / 12.0)
    return f"{feet} ft" if feet in FEET and abs(feet * 12.0 - length) < 1e-6 else ""


def inherited(last: StockPiece | None, sort: StockSort | None, unit: LengthUnit) -> Form:
    """What stands in the form: what the board before was, but for its own width and moisture."""
    metric = unit is LengthUnit.MILLIMETRE
    values = {"length": "2400 mm" if metric else "8 ft", "over": "0", "count": "1"}
    if sort and sort.is_sheet:
        known = next(
            (each for each in sheets() if (each.kind, each.nominal) == (sort.material, sort.size)), None
        )
        values |= {
            "width": write_length(known.width if known else 48.0, unit),
            "length_typed": write_length(known.length if known else 96.0, unit),
        }
    if last is None:
        return form_of(**values)
    length = from_ticks(last.length_ticks)
    if sort and sort.is_sheet:
        values["length_typed"] = write_length(length, unit)
    else:
        # Among the buttons, not in the field for what is written: that wins over whatever is tapped next.
        values["length"] = _button(length, unit) or write_length(length, unit)
    thickness = inches(last.thickness_ticks)
    values |= {
        "thickness": write_length(thickness, unit) if thickness else "",
        "log_mark": last.log_mark,
        "place": last.place,
    }
    return form_of(**values)
