"""The price book as a form: a row for every price that is known, and one to add."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction
from typing import Any

from casewright.measure.fields import write_money
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pricing.prices import PriceKind, PriceRow, example_prices, key_of, plain
from casewright.web.settings.forms import Draft, FigureReader, in_money, mark_of
from casewright.web.settings.lines import OWN, Ground, ground_of
from casewright.wood.movement import Cut
from casewright.wood.thickness import class_named

OLD_AFTER = timedelta(days=90)
"""A yard's price is asked again after a quarter (common practice)."""
KINDS = {
    PriceKind.LUMBER: "Lumber",
    PriceKind.SHEET: "Sheet goods",
    PriceKind.HARDWARE: "Hardware",
    PriceKind.FINISH: "Finish",
    PriceKind.CONSUMABLE: "Consumables",
    PriceKind.TRAVEL: "Travel",
}
UNITS = {
    PriceKind.LUMBER: "bd ft",
    PriceKind.SHEET: "sheet",
    PriceKind.HARDWARE: "each",
    PriceKind.FINISH: "quart",
    PriceKind.CONSUMABLE: "unit",
    PriceKind.TRAVEL: "mile",
}
"""What one of each kind usually is."""
NEW = ("item", "size", "unit", "price", "on")
Key = tuple[str, str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceLine:
    """One price on the page.

    Attributes:
        mark: what its fields end in
        row: the price that holds
        ground: whose it is
        example: the example's price; None where it has none
        age: days since it was quoted; None for an example, or without a day
    """

    mark: str
    row: PriceRow
    ground: Ground
    example: int | None
    age: int | None

    @property
    def name(self) -> str:
        """What it is a price of."""
        return f"{self.row.item} {self.row.size}".strip()

    @property
    def is_own(self) -> bool:
        """Whether the shop has put it in."""
        return self.ground.word == OWN

    @property
    def is_old(self) -> bool:
        """Whether it should be asked again."""
        return self.is_own and (self.age is None or self.age > OLD_AFTER.days)


def price_lines(spec: ShopSpec, today: date) -> tuple[PriceLine, ...]:
    """Every price, kind by kind, item by item, thin before thick."""
    rows = sorted(figures_of_spec(spec).prices.rows, key=_place)
    usual = {key_of(row): int(row.price) for row in example_prices().rows}
    return tuple(_line(row, usual.get(key_of(row)), today) for row in rows)


def _place(row: PriceRow) -> tuple[Any, ...]:
    try:
        size = (0, Fraction(row.size or "0"), "")
    except (ValueError, ZeroDivisionError):
        size = (1, Fraction(0), row.size)
    return (list(PriceKind).index(row.kind), row.item.casefold(), size)


def _line(row: PriceRow, example: int | None, today: date) -> PriceLine:
    ground = ground_of(row.basis, row.source)
    own = ground.word == OWN
    age = (today - row.on).days if own and row.on else None
    return PriceLine(mark=mark_of(*key_of(row)), row=row, ground=ground, example=example, age=age)


def chosen(lines: Iterable[PriceLine], kind: str, words: str, standing: str) -> tuple[PriceLine, ...]:
    """The prices that somebody wants to see."""
    asked = words.casefold().split()
    return tuple(
        line
        for line in lines
        if kind in {"", line.row.kind.value}
        and _stands(line, standing)
        and all(word in f"{line.name} {line.row.unit}".casefold() for word in asked)
    )


def _stands(line: PriceLine, standing: str) -> bool:
    asked = {"example": not line.is_own, "own": line.is_own, "old": line.is_old}
    return asked.get(standing, True)


def price_values(spec: ShopSpec) -> dict[str, str]:
    """The fields of the form, from figures; only the shop's own prices show their day."""
    values = {"new.kind": PriceKind.LUMBER.value, **{f"new.{name}": "" for name in NEW}}
    for row in figures_of_spec(spec).prices.rows:
        mark = mark_of(*key_of(row))
        own = ground_of(row.basis).word == OWN
        values[f"price.{mark}"] = in_money(row.price)
        values[f"on.{mark}"] = row.on.isoformat() if own and row.on else ""
    return values


def field_names(lines: Iterable[PriceLine]) -> dict[str, str]:
    """What each field is called in a list of faults."""
    names = {f"new.{name}": "Add a price" for name in NEW}
    for line in lines:
        names |= {f"price.{line.mark}": line.name, f"on.{line.mark}": f"Day of {line.name}"}
    return names


def read_prices(read: FigureReader, spec: ShopSpec, today: date) -> Draft:
    """The changes that the form asks for; rows that it does not show stay as they are."""
    draft, rows = Draft(), figures_of_spec(spec).prices.rows
    shown = price_values(spec)
    held = {_key(own.kind, own.item, own.size): own.model_dump(mode="json") for own in spec.prices}
    prices = dict(held)
    fields: dict[Key, str] = {}
    for row in rows:
        key = key_of(row)
        mark = mark_of(*key)
        fields[key] = f"price.{mark}"
        if read.ticked(f"back.{mark}"):
            prices.pop(key, None)
        elif read.typed.has(f"price.{mark}") and _is_changed(read, shown, mark):
            _change(read, prices, row, today, shown)
    _add(read, prices, fields, today)
    draft.fields["prices"] = "new.item"
    for place, key in enumerate(prices, 1):
        draft.fields |= {
            f"prices[{place}]": fields[key],
            f"prices[{place}].quoted": fields[key].replace("price", "on", 1),
        }
    if prices != held:
        draft.spec["prices"] = list(prices.values())
    return draft


def _key(kind: PriceKind, item: str, size: str) -> Key:
    return key_of(PriceRow(kind=kind, item=item, size=size, unit="each", price=0))


def _is_changed(read: FigureReader, shown: Mapping[str, str], mark: str) -> bool:
    return any(read.typed.get(name).strip() != shown[name] for name in (f"price.{mark}", f"on.{mark}"))


def _change(
    read: FigureReader,
    prices: dict[Key, dict[str, Any]],
    row: PriceRow,
    today: date,
    shown: Mapping[str, str],
) -> None:
    """A price in place of the one that holds. Without a day of its own, a new price is of today."""
    key = key_of(row)
    field, day = f"price.{mark_of(*key)}", f"on.{mark_of(*key)}"
    if not read.typed.get(field).strip():
        if key in {key_of(each) for each in example_prices().rows}:
            prices.pop(key, None)
        else:
            read.fault(field, "Write its price, such as 9.50, or tick that it is taken out.")
        return
    price, quoted = read.money(field), _quoted(read, day, today)
    new_price = read.typed.get(field).strip() != shown[field]
    if new_price and read.typed.get(day).strip() == shown[day]:
        quoted = today
    prices[key] = _own(row.kind, row.item, row.size, row.unit, price, quoted)


def _own(kind: PriceKind, item: str, size: str, unit: str, price: int, quoted: date | None) -> dict[str, Any]:
    """A price as a shop file holds it."""
    return {
        "kind": kind.value,
        "item": item,
        "size": size,
        "unit": unit,
        "price": write_money(price),
        "quoted": quoted.isoformat() if quoted else None,
    }


def _quoted(read: FigureReader, field: str, today: date) -> date | None:
    quoted = read.day(field)
    if quoted and quoted > today:
        read.fault(field, f"{quoted.isoformat()} is still to come. Write the day on which it was quoted.")
    return quoted


def _add(read: FigureReader, prices: dict[Key, dict[str, Any]], fields: dict[Key, str], today: date) -> None:
    """The price that the last row adds, if anything stands in it."""
    if not any(read.typed.get(f"new.{name}").strip() for name in ("item", "size", "price")):
        return
    kind = PriceKind(read.choice("new.kind", [each.value for each in PriceKind]))
    needed = "Say what it is a price of, such as cherry or brass knob."
    size = read.line("new.size", most=40)
    if kind is PriceKind.LUMBER:
        item = read.wood("new.item", needed=needed)
        _refuse_strange_class(read, size)
    else:
        item = read.line("new.item", most=80, needed=needed)
    price = read.money("new.price")
    unit = read.line("new.unit", most=20) or UNITS[kind]
    quoted = _quoted(read, "new.on", today) or today
    if not item:
        return
    key = _key(kind, item, size)
    if key in fields:
        thing = f"{item} {size}".strip()
        read.fault(
            "new.item", f"There is a price of {thing} already ({KINDS[kind].lower()}); change it there."
        )
    fields[key] = "new.price"
    prices[key] = _own(kind, item, size, unit, price, quoted)


def _refuse_strange_class(read: FigureReader, size: str) -> None:
    thickness_class, _, cut = size.partition(" ")
    try:
        class_named(thickness_class)
    except ValueError as error:
        read.fault("new.size", str(error))
    picked = [each.sawn for each in Cut if each is not Cut.FLAT]
    if cut and plain(cut) not in picked:
        read.fault(
            "new.size",
            f"“{cut}” is no cut that a yard sells by. Write {thickness_class} alone for boards as they come, "
            f"or {thickness_class} {' or '.join(picked)}.",
        )
