"""The shop itself, as it stands on a quote, and what of its figures is still made up."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import ClassVar
from zoneinfo import available_timezones

from fastapi import APIRouter
from starlette.responses import Response

from casewright.pieces.words.clauses import Clause, clauses, usual_texts
from casewright.records.people import Shop
from casewright.shop.figures import figures
from casewright.shop.last_backup import LastBackup, last_backup
from casewright.shop.own_shop import ShopFacts, change_shop
from casewright.shop.still_examples import StillExamples, still_examples
from casewright.web.door.entry import CURRENCIES, PAPERS, UNITS
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Owner, Visit
from casewright.web.settings.forms import FigureReader, in_percent, meet

router = APIRouter()
FRACTIONS = {"8": "1/8 in", "16": "1/16 in", "32": "1/32 in", "64": "1/64 in", "128": "1/128 in"}
PLAIN = ("name", "address", "phone", "email", "unit", "currency", "time_zone", "paper", "terms")


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """One thing to see to before a quote goes out.

    Attributes:
        address: the page where it is put right
        words: what it is
        is_done: whether it has been seen to
        counts: whether a quote should wait for it
    """

    address: str
    words: str
    is_done: bool
    counts: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopPage(Page):
    """The shop itself."""

    template: ClassVar[str] = "shop/itself.html"
    form: Form
    left: tuple[Left, ...]
    zones: tuple[str, ...]
    currencies: tuple[str, ...]
    papers: Mapping[str, str]
    units: Mapping[str, str]
    fractions: Mapping[str, str]
    usual: tuple[Clause, ...]
    backup: LastBackup | None
    backup_is_old: bool
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop")
def show_shop(visit: Owner, terms: str = "") -> Response:
    """What the shop says of itself."""
    values = shop_values(visit)
    form = _form(visit, values)
    if terms == "usual":
        form = _form(visit, values, terms="\n\n".join(usual_texts("terms")))
    return show(visit, _page(visit, form))


@router.post("/shop")
def save_shop(visit: Owner) -> Response:
    """Saves what the shop says of itself; of two who save at once the second sees both."""
    now = shop_values(visit)
    met = meet(visit.typed, _as_shown(visit, now), now)
    if met.theirs:
        form = _form(visit, now, **_plain(met.typed.values()))
        form.theirs = met.theirs
        return show(visit, _page(visit, form), 409)
    read = FigureReader(met.typed)
    facts, tax = read_shop(read, currencies_of(visit.shop))
    if read.faults:
        form = _form(visit, now, **_plain(met.typed.values()))
        form.faults = read.faults
        return show(visit, _page(visit, form), 422)
    change_shop(visit.db, visit.shop, facts, tax, visit.who, visit.now)
    return see("/shop", "saved")


def shop_values(visit: Visit) -> dict[str, str]:
    """The fields of the form as they stand now."""
    shop = visit.shop
    values = {name: str(getattr(shop, name)) for name in PLAIN}
    return values | {
        "denominator": str(shop.denominator),
        "quote_days": str(shop.quote_days),
        "tax": in_percent(figures(visit.db, shop).terms.tax_rate),
    }


def currencies_of(shop: Shop) -> dict[str, str]:
    """The sign of each currency that a shop may have: its own stays, even where no new shop is offered it."""
    return {**CURRENCIES, shop.currency: shop.symbol} if shop.currency not in CURRENCIES else CURRENCIES


def read_shop(read: FigureReader, currencies: Mapping[str, str]) -> tuple[ShopFacts, float]:
    """The shop that a form describes, and its tax as a share."""
    currency = read.choice("currency", currencies)
    facts = ShopFacts(
        name=read.line("name", most=120, needed="Write the shop's name, as it should stand on a quote."),
        address=read.text("address", most=1000),
        phone=read.line("phone", most=60),
        email=read.email("email"),
        unit=read.choice("unit", UNITS),
        denominator=int(read.choice("denominator", FRACTIONS)),
        currency=currency,
        symbol=currencies[currency],
        time_zone=read.choice("time_zone", zones()),
        paper=read.choice("paper", PAPERS),
        quote_days=read.whole("quote_days", least=1, most=365),
        terms=read.text("terms", most=40_000),
    )
    return facts, read.percent("tax", least=0, most=60, example="6.25") or 0.0


@cache
def zones() -> tuple[str, ...]:
    """The time zones to choose from."""
    return tuple(sorted(zone for zone in available_timezones() if "/" in zone or zone == "UTC"))


def _form(visit: Visit, now: Mapping[str, str], **typed: str) -> Form:
    """A form that remembers what it was shown from."""
    return form_of(
        **{**now, **typed}, version=str(visit.shop.version), was=json.dumps(now, ensure_ascii=False)
    )


def _plain(values: Mapping[str, str]) -> dict[str, str]:
    return {name: text for name, text in values.items() if name not in {"version", "was", "once"}}


def _as_shown(visit: Visit, now: dict[str, str]) -> dict[str, str]:
    """The fields as the form showed them: as they are while the version is the same."""
    version = Reader(visit.typed).whole("version", least=1, most=10**8, default=visit.shop.version)
    if version == visit.shop.version:
        return now
    try:
        shown = json.loads(visit.typed.get("was"))
    except ValueError:
        shown = None
    return {name: str(shown.get(name, "")) for name in now} if isinstance(shown, dict) else {}


def _page(visit: Visit, form: Form) -> ShopPage:
    held = figures(visit.db, visit.shop)
    data: Path | None = visit.request.app.state.data
    backup = last_backup(data) if data else None
    return ShopPage(
        title="The shop",
        form=form,
        left=left_to_do(still_examples(held), has_address=bool(visit.shop.address and visit.shop.phone)),
        zones=zones(),
        currencies=tuple(currencies_of(visit.shop)),
        papers=PAPERS,
        units=UNITS,
        fractions=FRACTIONS,
        usual=clauses("terms"),
        backup=backup,
        backup_is_old=backup is not None and backup.is_old(visit.now),
        tabs=rooms_for(visit),
    )


def left_to_do(still: StillExamples, *, has_address: bool) -> tuple[Left, ...]:
    """What a shop should see to before its first quote."""
    return (
        Left(address="#address", words="Address and telephone stand on the quote", is_done=has_address),
        Left(
            address="/shop/rate#costs",
            words=_of(still.costs, still.all_costs, "yearly costs", "made up"),
            is_done=not still.costs,
        ),
        Left(
            address="/shop/prices?standing=example",
            words=_of(still.prices, still.all_prices, "prices", "examples"),
            is_done=not still.prices,
        ),
        Left(
            address="/shop/rate#minimum",
            words="The least charge is an example" if still.minimum else "The least charge is yours",
            is_done=not still.minimum,
        ),
        Left(
            address="/shop/hours",
            words=_of(still.times, still.all_times, "times", "planning figures for one practised maker"),
            is_done=not still.times,
            counts=False,
        ),
        Left(
            address="/shop/rate#ratios",
            words=(
                f"The risk is learned from {still.ratios} jobs of yours"
                if still.ratios >= 3
                else "The risk is a usual one: fewer than 3 past jobs are known"
            ),
            is_done=still.ratios >= 3,
            counts=False,
        ),
    )


def _of(count: int, total: int, things: str, state: str) -> str:
    if not count:
        return f"All {total} {things} are yours"
    return f"{count} of {total} {things} are {state}"
