"""Wood of the rack that was cut up for a job counts against what is still to be bought for it."""

import re

import pytest

from pages.commissions import id_in
from pages.stock_room import accepted, begin, issue, on_rack, supplier, tap

pytestmark = pytest.mark.one_database


def cherry(who, job):
    """Of the line of cherry 4/4: its text, the exact feet and the feet that are proposed."""
    page = who.get(f"/stock/needs?job={job}")
    row = page.html.partition('<th scope="row">Cherry 4/4')[2].partition("</tr>")[0]
    return (
        row,
        float(re.search(r"([\d.]+) bd ft", row)[1]),
        int(re.search(r'quantity"[^>]*value="(\d+)"', row)[1]),
    )


def cut_for(who, piece, job):
    """Says that a piece went into a job."""
    who.get(piece)
    who.post(f"{piece}/acts", act="use", job=job)


def test_a_board_of_the_rack_that_was_cut_up_for_the_job_is_not_bought_again(shop, owner):
    # 9 in by 96 in at 4/4 are 6.00 bd ft.
    job = accepted(shop).job_id
    supplier(owner)
    piece = on_rack(owner, "9", "96")
    cut_for(owner, piece, job)

    row, exact, to_buy = cherry(owner, job)

    assert "Cut up for it: 6.00 bd ft of O1" in row
    assert exact - 6 <= to_buy < exact - 5


def test_what_came_back_of_it_as_an_offcut_does_not_count(shop, owner):
    # 6.00 bd ft less 9 in by 24 in, 1.50 bd ft; the offcut itself is offered from the rack.
    job = accepted(shop).job_id
    supplier(owner)
    piece = on_rack(owner, "9", "96")
    cut_for(owner, piece, job)
    owner.post("/stock/offcuts", piece=id_in(piece), width="9", length="24")

    row, _, _ = cherry(owner, job)

    assert "Cut up for it: 4.50 bd ft of O1" in row


def test_a_board_that_came_for_an_order_of_the_job_counts_once(shop, owner, bench):
    job = accepted(shop).job_id
    yard = supplier(owner)
    order = id_in(re.search(r"/stock/orders/\w+", issue(owner, job).html)[0])
    address = begin(owner, yard, order)
    piece = re.search(r"/stock/pieces/\w+", tap(bench, address, "9").html)[0]
    cut_for(owner, piece, job)

    row, _, to_buy = cherry(owner, job)

    assert ("Ordered before" in row, "Cut up for it" in row, to_buy) == (True, False, 0)


def test_a_board_that_was_cut_up_for_another_job_serves_this_one_nothing(shop, owner):
    job, other = accepted(shop).job_id, accepted(shop).job_id
    supplier(owner)
    cut_for(owner, on_rack(owner, "9", "96"), other)

    row, exact, to_buy = cherry(owner, job)

    assert "Cut up" not in row
    assert exact <= to_buy < exact + 1
