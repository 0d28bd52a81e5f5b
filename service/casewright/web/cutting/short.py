"""What has no place in a layout: which parts, and ways out with what each takes in wood."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from fastapi import APIRouter
from starlette.responses import Response

from casewright.cutting.asked.changing import changed
from casewright.cutting.asked.cut_file import cut_file_of
from casewright.measure.json_files import CannotRead
from casewright.measure.lengths import LengthUnit, parse_length, show_in
from casewright.measure.money import show_money
from casewright.records.layouts import CutLayout
from casewright.shop.figures import figures
from casewright.shop.jobs import load_job
from casewright.shop.layouts import layout_with_all
from casewright.shop.refusals import NotFound, Refused
from casewright.shop.short_list import feet_to_buy
from casewright.web.cutting.again import ask_again
from casewright.web.frame.visits import Office, Visit

router = APIRouter()
UNITS = {"boards": "bd ft", "sheets": "sq ft", "lengths": "ft"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PartShort:
    """Parts without a place that are alike: their marks and what they are, size, how many, and why."""

    codes: str
    what: str
    size: str
    count: int
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOutShown:
    """A way out: what is done, how many parts find a place so, what it takes in wood and on which boards."""

    number: int
    words: str
    places: str
    is_enough: bool
    takes: str
    boards: str
    cost: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortList:
    """What of one wood has no place.

    Attributes:
        number: which wood of the layout it is
        parts: the parts
        ways: how they could have a place, the best first
        to_buy: what an order would be for the parts alone, in a sentence; empty for sheets and lengths
    """

    number: int
    parts: Sequence[PartShort]
    ways: Sequence[WayOutShown]
    to_buy: str


def short_list(visit: Visit, layout: CutLayout, number: int, lot: Mapping[str, Any]) -> ShortList:
    """What of one wood of a layout has no place, with its ways out.

    Args:
        visit: who looks at it, which says whether money is shown
        layout: the layout
        number: which of its woods
        lot: that wood, as a layout is kept
    """
    asked = {part["code"]: part for part in layout.asked["parts"]}
    symbol = visit.shop.symbol if visit.is_owner else ""
    ways = lot.get("ways_out", ())
    return ShortList(
        number=number,
        parts=list(_parts(lot["unplaced"], asked, visit.unit)),
        ways=[_way(place, each, lot, symbol) for place, each in enumerate(ways)],
        to_buy=_to_buy(visit, layout, lot, asked, symbol) if lot["unplaced"] and lot["class"] else "",
    )


def _parts(
    unplaced: Iterable[Mapping[str, Any]], asked: Mapping[str, Mapping[str, Any]], unit: LengthUnit
) -> Iterator[PartShort]:
    """Parts without a place; what is alike and short for the same reason stands in one line."""
    alike: dict[tuple[str, str, str], list[Mapping[str, Any]]] = {}
    for each in unplaced:
        part = asked[each["code"]]
        sizes = [part[name] for name in ("length", "width") if part.get(name)]
        size = " × ".join(show_in(float(parse_length(str(size), unit)), unit) for size in sizes)
        alike.setdefault((part.get("name", ""), size, each["reason"]), []).append(each)
    for (what, size, reason), short in alike.items():
        yield PartShort(
            codes=", ".join(
                f"{each['count']} × {each['code']}" * (each["count"] > 1) or each["code"] for each in short
            ),
            what=what,
            size=size,
            count=sum(each["count"] for each in short),
            reason=reason,
        )


def _way(number: int, way: Mapping[str, Any], lot: Mapping[str, Any], symbol: str) -> WayOutShown:
    total = len(way["parts"]) + way["still_without_place"]
    is_enough = not way["still_without_place"]
    kind = "boards" if lot["class"] else "lengths" if lot["lengths"] else "sheets"
    named = "" if way["kind"] == "one more" else ", ".join(way["boards"])
    return WayOutShown(
        number=number,
        words=way["words"],
        places=("all" if total > 1 else "yes") if is_enough else f"{len(way['parts'])} of {total}",
        is_enough=is_enough,
        takes=f"{way['feet']:.1f} {UNITS[kind]}" if way["boards"] else "no more wood",
        boards=named,
        cost=show_money(way["cost"], symbol) if symbol and way["cost_in"] == "money" else "",
    )


def _to_buy(
    visit: Visit, layout: CutLayout, lot: Mapping[str, Any], asked: Mapping[str, Any], symbol: str
) -> str:
    """What a yard would be asked for, reckoned as every order of the shop is."""
    short = [(asked[each["code"]], each["count"]) for each in lot["unplaced"]]
    own = figures(visit.db, visit.shop, load_job(visit.db, layout.job_id))
    order = feet_to_buy(lot["wood"], lot["class"], short, own)
    if order is None:
        return ""
    cost = f", {show_money(order.cents, symbol)}" if symbol and order.cents is not None else ""
    return (
        f"An order for these parts alone is {order.feet} bd ft of {lot['wood']} {lot['class']} {order.grade}"
        f"{cost}, with the waste that the shop’s orders reckon with."
    )


@router.post("/cutting/{layout_id}/ways-out")
def take_way_out(visit: Office, layout_id: str) -> Response:
    """Asks for the same layout with what a way out changes; sent twice, it counts once."""
    layout = layout_with_all(visit.db, layout_id)
    asked = changed(layout.asked, _chosen(visit, layout)["change"])
    try:
        cut_file_of(asked)
    except CannotRead as error:
        raise Refused(str(error), 422) from None

    return ask_again(visit, layout, asked)


def _chosen(visit: Visit, layout: CutLayout) -> Mapping[str, Any]:
    """The way out that a form names.

    Raises:
        NotFound: the layout has none there
    """
    ways = list(_all_ways(layout))
    wanted = f"{visit.typed.get('wood')}.{visit.typed.get('way')}"
    for name, way in ways:
        if name == wanted:
            return way
    raise NotFound("way out")


def _all_ways(layout: CutLayout) -> Iterator[tuple[str, Mapping[str, Any]]]:
    for number, lot in enumerate((layout.answer or {}).get("lots", ())):
        for place, way in enumerate(lot.get("ways_out", ())):
            yield f"{number}.{place}", way
