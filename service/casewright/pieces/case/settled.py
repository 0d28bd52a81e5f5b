"""The choices of a case with what its sheets settle: plywood is as thick as it measures, not as called."""

from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches
from casewright.pieces.asked.case_spec import Case
from casewright.pieces.asked.layout_spec import Shelving
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.rules import corner_rules as rules

BOARDS = ("side", "sub_top_rail", "bottom", "upright", "divider")
"""The thicknesses that a case of plywood takes from its sheet."""
PART = 3
"""A housing is no deeper than the side divided by this (common practice)."""
SAME_SHEET = 1 / 16
"""A thickness that is no further from the sheet's was measured on it (common practice) [in]."""
THROUGH_A_BOARD = "slots"
"""How a solid top is held over a case top of plywood, which has no rails to groove: by screws through it, in
round holes in front and in slots behind, as the top moves and the sheet does not (common practice)."""
NO_RAILS = "there are no rails under a plywood top, so what was typed for them does not count"


def with_sheet_sizes(spec: UnitSpec, ledger: Ledger) -> UnitSpec:
    """The choices with the thicknesses of a plywood case as its sheet measures, where none was typed.

    The thickness typed for a side is what the sheet measures: the other boards are of the same sheet. The
    case top is as thick as the sides, whatever was typed for the rails that it takes the place of, and a top
    over it is held by screws through it, where nothing else was typed.

    A case with nothing between its rows has dividers of no thickness.

    Args:
        spec: what the maker chose
        ledger: keeps the working

    Returns:
        The same choices for any other case.

    Source: the sheet table; each row names its own source.
    """
    case = spec.case
    if spec.legs:
        return spec
    if case.divider_kind == "none" and not spec.crate:
        none = ledger.given("case.divider", 0.0, "nothing lies between the rows", Inches)
        spec = spec.model_copy(update={"case": case.model_copy(update={"divider": none})})
        case = spec.case
    if not case.is_ply:
        return _with_lap(spec, ledger)
    bought = case.ply.bought
    basis = f"as {bought} measures; measure your own sheet"
    typed = case.model_fields_set
    names = [name for name in BOARDS if name not in typed and (name != "divider" or _is_of_sheet(case))]
    if "sub_top_rail" in typed:
        names.append("sub_top_rail")
    thick = bought.thickness
    if "side" in typed:
        thick, basis = case.side, "of the same sheet as the sides"
    sizes = {
        name: ledger.given(f"case.{name}", thick, f"{basis}; {NO_RAILS}" if name in typed else basis, Inches)
        for name in names
    }
    side = sizes.get("side", case.side)
    if "housing" not in typed and case.housing > side / PART:
        sizes["housing"] = ledger.take("case.housing", rules.thinner_housing, side=side)
    if "lipping" not in typed:
        sizes["lipping"] = case.ply.lipping
    case = case.model_copy(update=sizes)
    settled: dict[str, object] = {"case": case, "shelving": _shelves_of_sheet(spec, case, ledger)}
    if "fixing" not in spec.top.model_fields_set:
        settled["top"] = spec.top.model_copy(update={"fixing": THROUGH_A_BOARD})
    return spec.model_copy(update=settled)


def _with_lap(spec: UnitSpec, ledger: Ledger) -> UnitSpec:
    """The choices with a lap before the tails of the case that their boards do not break out."""
    case = spec.case
    if "lap" in case.model_fields_set or case.joined != "half-blind":
        return spec
    board = max(case.bottom, spec.top.thickness if spec.top.is_dovetailed else case.sub_top_rail)
    sizes = {
        "board": board,
        "side": case.side,
    }
    if rules.lap_for_board(**sizes) <= case.lap:
        return spec
    lap = ledger.take("case.lap", rules.lap_for_board, **sizes)
    return spec.model_copy(update={"case": case.model_copy(update={"lap": lap})})


def _shelves_of_sheet(spec: UnitSpec, case: Case, ledger: Ledger) -> Shelving:
    """Shelves as thick as the sheet and lipped as the case, where nothing else was typed."""
    shelving, bought = spec.shelving, case.ply.bought
    sizes = {}
    if "thickness" not in shelving.model_fields_set:
        basis = f"as {bought} measures; measure your own sheet"
        sizes["thickness"] = ledger.given("shelving.thickness", bought.thickness, basis, Inches)
    if "edge" not in shelving.model_fields_set:
        sizes["edge"] = ledger.given("shelving.edge", case.lipping, "as the case is lipped", Inches)
    return shelving.model_copy(update=sizes)


def boards_of_sheet(case: Case, has_uprights: bool) -> dict[str, Inches]:
    """The boards that a plywood case has of its sheet, by their fields, with the thickness of each.

    Args:
        case: the choices, settled
        has_uprights: does anything stand between two openings?

    Returns:
        The thicknesses; nothing for a case of other sides [in]

    Source: common practice of plywood cases.
    """
    if not case.is_ply:
        return {}
    names = ["side", "bottom"]
    if has_uprights:
        names.append("upright")
    if _is_of_sheet(case):
        names.append("divider")
    return {name: getattr(case, name) for name in names}


def _is_of_sheet(case: Case) -> bool:
    return case.divider_kind == "solid"
