"""The form of a tally: the lengths and widths it offers to tap, and what stands in it for the next board."""

from casewright.measure.lengths import LengthUnit, from_ticks, write_length
from casewright.measure.units import MILLIMETRES_PER_INCH
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
    offered = (
        [float(each) / MILLIMETRES_PER_INCH for each in LENGTHS_MM]
        if metric
        else [each * 12.0 for each in FEET]
    )
    place = next((at for at, each in enumerate(offered) if abs(each - length) < 1e-6), None)
    if place is None:
        values["length_typed"] = write_length(length, unit)
    else:
        values["length"] = f"{LENGTHS_MM[place]} mm" if metric else f"{FEET[place]} ft"
    thickness = inches(last.thickness_ticks)
    values |= {
        "thickness": write_length(thickness, unit) if thickness else "",
        "log_mark": last.log_mark,
        "place": last.place,
    }
    return form_of(**values)
