"""The price book: every price that is known, whose it is, and how old."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import ClassVar
from urllib.parse import urlencode

from fastapi import APIRouter
from starlette.responses import Response

from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.shop.own_figures import held_figures, spec_of
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Owner, Visit
from casewright.web.settings.forms import fresh, save
from casewright.web.settings.price_form import (
    KINDS,
    OLD_AFTER,
    PriceLine,
    chosen,
    field_names,
    price_lines,
    price_values,
    read_prices,
)
from casewright.wood.species import woods

router = APIRouter()
STANDINGS = {"": "All", "example": "Examples", "own": "Your own", "old": "Older than 90 days"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Which prices somebody wants to see."""

    kind: str = ""
    q: str = ""
    standing: str = ""

    @property
    def address(self) -> str:
        """The page with these prices."""
        asked = {name: getattr(self, name) for name in self.__slots__ if getattr(self, name)}
        return f"/shop/prices?{urlencode(asked)}" if asked else "/shop/prices"


@dataclass(frozen=True, slots=True, kw_only=True)
class PricesPage(Page):
    """The price book."""

    template: ClassVar[str] = "shop/prices.html"
    form: Form
    groups: tuple[tuple[str, tuple[PriceLine, ...]], ...]
    names: Mapping[str, str]
    shown: int
    total: int
    examples: int
    old: int
    wanted: Wanted
    kinds: Mapping[str, str]
    standings: Mapping[str, str]
    items: tuple[str, ...]
    old_after: int
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/prices")
def show_prices(visit: Owner, kind: str = "", q: str = "", standing: str = "") -> Response:
    """The prices, or some of them."""
    spec, form = fresh(visit, price_values)
    wanted = wanted_of(kind, q, standing)
    if wanted.kind:
        form.values = {**form.values, "new.kind": wanted.kind}
    return show(visit, _page(visit, spec, form, wanted))


@router.post("/shop/prices")
def save_prices(visit: Owner, kind: str = "", q: str = "", standing: str = "") -> Response:
    """Saves the prices that the form shows; the others stay."""
    wanted = wanted_of(kind, q, standing)
    again = save(visit, price_values, partial(read_prices, today=visit.today))
    if again is None:
        return see(wanted.address, "saved")
    form, status = again
    return show(visit, _page(visit, spec_of(held_figures(visit.db, visit.shop)), form, wanted), status)


def wanted_of(kind: str, q: str, standing: str) -> Wanted:
    """What an address asks for, as far as it makes sense."""
    return Wanted(
        kind=kind if kind in set(KINDS) else "",
        q=" ".join(q.split())[:60],
        standing=standing if standing in STANDINGS else "",
    )


def _page(visit: Visit, spec: ShopSpec, form: Form, wanted: Wanted) -> PricesPage:
    lines = price_lines(spec, visit.today)
    sent = {name.removeprefix("price.") for name in form.values if name.startswith("price.")}
    seen = [line for line in chosen(lines, wanted.kind, wanted.q, wanted.standing) if line.mark in sent]
    return PricesPage(
        title="Prices",
        form=form,
        groups=tuple(
            (words, found)
            for kind, words in KINDS.items()
            if (found := tuple(line for line in seen if line.row.kind is kind))
        ),
        names=field_names(lines),
        shown=len(seen),
        total=len(lines),
        examples=sum(not line.is_own for line in lines),
        old=sum(line.is_old for line in lines),
        wanted=wanted,
        kinds={"": "All kinds"} | {kind.value: words for kind, words in KINDS.items()},
        standings=STANDINGS,
        items=tuple(sorted({line.row.item for line in lines} | {each.name for each in woods()})),
        old_after=OLD_AFTER.days,
        tabs=rooms_for(visit),
    )
