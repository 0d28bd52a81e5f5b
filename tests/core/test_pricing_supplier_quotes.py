"""Which of a supplier's quotes holds for a line: the one that names it most closely."""

from datetime import date

import pytest

from casewright.pricing.prices import PriceKind
from casewright.pricing.supplier_quotes import SupplierQuote, quote_for


def quoted(price, **more):
    held = {"kind": PriceKind.LUMBER, "item": "white oak", "size": "4/4", "on": date(2027, 2, 1)}
    return SupplierQuote(price=price, **(held | more))


QUOTES = (
    quoted(1, grade="FAS"),
    quoted(2),
    quoted(3, cut="quarter"),
    quoted(4, size="8/4"),
    quoted(5, kind=PriceKind.SHEET, item="birch plywood", size="1/2"),
)


@pytest.mark.parametrize(
    ("asked", "price"),
    [
        ({"cut": "flat", "grade": "FAS"}, 1),
        ({"cut": "flat", "grade": "No. 1 Common"}, 2),
        ({"cut": "quarter", "grade": "FAS"}, 3),
        ({"cut": "rift", "grade": "Selects"}, 2),
        ({"cut": "flat", "grade": "FAS", "size": "8/4"}, 4),
        ({"cut": "flat", "grade": "FAS", "size": "5/4"}, None),
        ({"item": "White_Oak", "grade": "FAS"}, 1),
        ({"kind": PriceKind.SHEET, "item": "birch plywood", "size": "1/2"}, 5),
    ],
)
def test_the_quote_that_names_a_line_most_closely_holds(asked, price):
    asked = {"kind": PriceKind.LUMBER, "item": "white oak", "size": "4/4"} | asked

    found = quote_for(QUOTES, asked.pop("kind"), asked.pop("item"), **asked)

    assert (found and found.price) == price


def test_a_price_below_zero_is_none():
    with pytest.raises(ValueError, match="below zero"):
        quoted(-1)
