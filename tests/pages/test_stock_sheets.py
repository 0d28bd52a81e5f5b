"""Sheets of several jobs: counted together, what is on the rack first, each job's share kept right."""

import re

from sqlalchemy import select

from casewright.records.sessions import reading
from casewright.records.stock import OrderLine
from casewright.solving import sheets as solved
from casewright.solving.beside import NoAnswer
from pages.stock_room import accepted, supplier

PLY = {"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}}


def needs(who, *jobs, more=""):
    return who.get("/stock/needs?" + "&".join(f"job={each.job_id}" for each in jobs) + more)


def sheets_of(page):
    """How many sheets the form proposes, and how its line is called."""
    found = [
        name.split(".")[1]
        for name, each in page.form("/stock/orders").fields
        if name.endswith(".what") and each.value.startswith("sheet/")
    ]
    [line] = found
    return int(page.form("/stock/orders").value(f"buy.{line}.quantity")), line


def test_two_jobs_that_each_take_a_sheet_take_one_together_and_the_page_says_how(shop, maker):
    one, other = accepted(shop, **PLY), accepted(shop, **PLY)
    supplier(maker)

    alone, _ = sheets_of(needs(maker, one))
    page = needs(maker, one, other)

    together, _ = sheets_of(page)
    assert (alone, together) == (1, 1)
    assert "laid out for 2 jobs together, kerf 1/8 in, 1/4 in trimmed off each edge" in page.text
    assert "no layout takes fewer" in page.text


def test_each_job_keeps_its_share_and_neither_is_ordered_for_again(shop, maker):
    one, other = accepted(shop, **PLY), accepted(shop, **(PLY | {"count": 3}))
    supplier(maker)
    needs(maker, one, other)

    maker.send("/stock/orders")

    with reading(shop.engine, shop.shop_id) as db:
        line = db.scalars(select(OrderLine).where(OrderLine.kind == "sheet")).one()
    shares, areas = line.detail["shares"], line.detail["areas"]
    assert sum(shares.values()) == line.quantity
    assert shares[other.job_id] / shares[one.job_id] == areas[other.job_id] / areas[one.job_id]
    assert round(areas[other.job_id] / areas[one.job_id], 6) == 3
    for job in (one, other):
        page = needs(maker, job)
        assert sheets_of(page)[0] == 0
        assert "Ordered before" in page.text


def test_a_job_that_grew_since_takes_what_is_new(shop, maker):
    one = accepted(shop, **PLY)
    supplier(maker)
    needs(maker, one)
    maker.send("/stock/orders")
    one.revise(one.unit_ids()[0], **(PLY | {"count": 12}))

    bought, _ = sheets_of(needs(maker, one))

    assert bought >= 1


def test_an_offcut_on_the_rack_spares_a_sheet_unless_it_is_unticked(shop, maker):
    one = accepted(shop, **PLY)
    supplier(maker)
    page = needs(maker, one)
    size = re.search(r'value="sheet/birch plywood//([^/"]+(?:/\d+)?)/"', page.html)[1]
    piece = {"material": "birch plywood", "size": size, "is_sheet": "1", "width": "47", "length": "80"}
    maker.post("/stock/offcuts", **piece)

    with_it = needs(maker, one)
    without = needs(maker, one, more="&asked=1")

    assert "spares new sheets" in with_it.text
    assert sheets_of(with_it)[0] == 0
    assert sheets_of(without)[0] == 1
    needs(maker, one)
    maker.send("/stock/orders")
    assert "kept" in maker.get("/stock").text


def test_where_they_cannot_be_laid_out_they_are_counted_by_area_and_it_says_so(shop, maker, monkeypatch):
    def refuse(*_):
        raise NoAnswer("too much")

    monkeypatch.setattr(solved, "answer_beside", refuse)
    monkeypatch.setattr(solved, "_answers", solved._answers.__wrapped__)
    one, other = accepted(shop, **PLY), accepted(shop, **PLY)
    supplier(maker)

    page = needs(maker, one, other)

    assert sheets_of(page)[0] == 2
    assert "by area, job by job, not laid out" in page.text
