"""Which fields of a unit's form count with what is chosen elsewhere in it."""

from collections.abc import Mapping

from casewright.web.units.drawer_groups import SLIPS
from casewright.web.units.fields import Asked
from casewright.web.units.groups import BUILT_AS, RULE, SINGLE
from casewright.web.units.shell_groups import CLEAT


def counts(asked: Asked, values: Mapping[str, str]) -> bool:
    """Whether a field counts with what is chosen elsewhere in the form."""
    if asked.name.endswith(".contents"):  # of a row: whichever rule of the form asks for it
        return any(name.endswith(RULE) and text == "contents" for name, text in values.items())
    return applies(asked, values) and (not asked.when or _is_chosen(asked.when, values))


def applies(asked: Asked, values: Mapping[str, str]) -> bool:
    """Whether a field belongs to what the piece is built as."""
    built = BUILT_AS.get(asked.name)
    return built is None or _is_chosen(built, values)


def _is_chosen(when: tuple[str, ...], values: Mapping[str, str]) -> bool:
    switch, *by = when
    if switch.startswith("rows."):  # a column's own rule, or a size without which there is no notch
        text = values.get(switch, "").strip()
        return text in by if by else bool(text)
    if switch in (SLIPS, CLEAT):
        return bool(values.get(switch, "").strip())
    usual = next(each.usual for each in SINGLE if each.name == switch)
    return (values.get(switch, "").strip() or usual) in by


def is_replaced(asked: Asked, values: Mapping[str, str]) -> bool:
    """Whether an end of the year, left empty, follows from a year that is given elsewhere in the form."""
    if values.get(asked.name, "").strip():
        return False
    year = any(values.get(f"season.{name}", "").strip() for name in ("climate", "months"))
    fitted = bool(values.get("season.fitted", "").strip())
    return (year and asked.name.startswith(("season.driest.", "season.wettest."))) or (
        fitted and asked.name.startswith("season.shop.")
    )
