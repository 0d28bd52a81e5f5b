"""An order to one supplier as PDF: their copy, and the shop's with the sums and parts behind each line."""

from typing import Any

from casewright.papers.head import head_data
from casewright.papers.order_pdf import lumber_words, order_data, used_up_words
from casewright.papers.pdf import Paper, render
from casewright.papers.supply_order import SupplyOrderPaper
from casewright.papers.writing import several


def supply_order_pdf(
    order: SupplyOrderPaper,
    paper: Paper = Paper.LETTER,
    *,
    for_shop: bool = False,
    with_prices: bool = True,
) -> bytes:
    """An order under the numbers of its jobs alone: the supplier is told neither customer nor margin.

    Args:
        order: the order, as it is kept
        paper: the sheet
        for_shop: the copy that stays, with the sums and the parts behind each line, and what the rack gives
        with_prices: with the prices that were quoted for it

    Returns:
        A PDF.
    """
    data = supply_order_data(order, for_shop=for_shop, with_prices=with_prices)
    return render("order", data, paper)


def supply_order_data(
    order: SupplyOrderPaper, *, for_shop: bool = False, with_prices: bool = True
) -> dict[str, Any]:
    """An order as it is read, on paper and on a page.

    Args:
        order: the order, as it is kept
        for_shop: with the sums and the parts behind each line, and what the rack gives
        with_prices: with the prices that were quoted for it

    Returns:
        Every size and note in words.
    """
    head = head_data(order.head, "Order", copy="our copy" if for_shop else "", shows_job_name=False)
    data = order_data(order, for_shop=for_shop) | head
    if with_prices:
        data["remarks"] = [*data["remarks"], *order.quoted]
    if not order.lumber:
        data["asked"] = []
    if for_shop:
        data["lumber"] = [
            lumber_words(line, order.head.unit)
            | {"needs": [*lumber_words(line, order.head.unit)["needs"], *_rack(line.rack, line.rack_bd_ft)]}
            for line in order.lumber
        ]
    elif order.with_sundries:
        data["used_up"] = used_up_words(order)
        data["hardware"] = [[str(line.quantity + line.spare), line.item] for line in order.hardware]
    return data


def _rack(labels: tuple[str, ...], feet: float) -> list[str]:
    if not labels:
        return []
    what = several(len(labels), "piece")
    return [f"From the rack: {what}, {', '.join(labels)}; {feet:.2f} bd ft less to buy"]
