"""How values are printed in templates."""

from collections.abc import Iterable
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

from markupsafe import Markup, escape

from casewright.measure.money import show_money
from casewright.web.frame.unbroken import unbroken

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def day(value: date | None) -> str:
    """A day that nobody can misread: 3 Mar 2027."""
    return f"{value.day} {MONTHS[value.month - 1]} {value.year}" if value else ""


def moment(value: datetime | None, zone: str = "UTC") -> str:
    """A moment in the shop's time zone: 3 Mar 2027, 14:05."""
    if value is None:
        return ""
    local = value.astimezone(ZoneInfo(zone))
    return f"{day(local.date())}, {local:%H:%M}"


def lately(value: datetime | None, zone: str = "UTC") -> str:
    """A moment of the last weeks, where there is little room: 3 Mar 14:05."""
    if value is None:
        return ""
    local = value.astimezone(ZoneInfo(zone))
    return f"{local.day} {MONTHS[local.month - 1]} {local:%H:%M}"


def iso(value: datetime | date | None) -> str:
    """The same for machines."""
    if isinstance(value, datetime):
        return value.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    return value.isoformat() if value else ""


def money(cents: int | None, symbol: str = "$") -> str:
    """An amount of money; nothing for none."""
    return "" if cents is None else show_money(cents, symbol)


def percent(share: float, digits: int = 1) -> str:
    """A share of one as a percentage."""
    shown = f"{share * 100:.{digits}f}"
    return (shown.rstrip("0").rstrip(".") if digits else shown) + " %"


def hours(minutes: float) -> str:
    """Minutes as hours with one decimal."""
    return f"{minutes / 60:,.1f} h"


def hours_minutes(minutes: float) -> str:
    """Minutes as hours and minutes: 1:05 h."""
    whole = round(minutes)
    return f"{whole // 60:,}:{whole % 60:02d} h"


def clock(seconds: float) -> str:
    """Seconds as a timer shows them: 1:05:09."""
    whole = int(seconds)
    return f"{whole // 3600}:{whole // 60 % 60:02d}:{whole % 60:02d}"


def lines(text: str) -> Markup:
    """Text with its line ends kept."""
    return Markup("<br>").join(escape(unbroken(line)) for line in text.splitlines())


def count(number: int, one: str, many: str = "") -> str:
    """A count with its noun: 1 drawer, 6 drawers."""
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def twice(values: Iterable[str]) -> list[tuple[str, str]]:
    """Each value with itself as its words, for a list to choose from."""
    return [(value, value) for value in values]


FILTERS = {
    "twice": twice,
    "day": day,
    "moment": moment,
    "lately": lately,
    "iso": iso,
    "money": money,
    "percent": percent,
    "hours": hours,
    "hours_minutes": hours_minutes,
    "clock": clock,
    "lines": lines,
    "count": count,
    "unbroken": unbroken,
}
