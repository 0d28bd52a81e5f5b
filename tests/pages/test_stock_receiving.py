"""Receiving: a tap is a board, the tally as the yard counts it, the claim, and what goes back."""

import re

import pytest

from casewright.records.sessions import reading
from casewright.records.stock_lists import pieces_of_delivery
from pages.commissions import id_in
from pages.stock_room import accepted, begin, issue, supplier, tap
from people import new_shop
from printed import text_of

K27 = [
    ("6-1/2", "8 ft"),
    ("8", "12 ft"),
    ("10", "13 ft"),
    ("7-1/4", "10 ft"),
    ("9", "10 ft"),
    ("5-1/2", "12 ft"),
]
"""A bundle worked by hand: surface measure 4, 8, 11, 6, 8 and 5, which is 42; exact 42.2."""


def delivery(shop, maker):
    """A delivery without an order."""
    return begin(maker, supplier(maker))


def pieces(shop, address):
    with reading(shop.engine, shop.shop_id) as db:
        return pieces_of_delivery(db, id_in(address))


def test_a_bundle_is_counted_as_the_yard_counts_it(shop, maker, bench):
    address = delivery(shop, maker)

    for width, length in K27:
        page = tap(bench, address, width, length)

    assert "surface measure 42" in page.text
    assert "42 bd ft as the yard counts" in page.text
    assert "42.21 exact" in page.text


def test_the_next_board_inherits_length_place_and_log(shop, bench, maker):
    address = delivery(shop, maker)

    page = tap(bench, address, "7", "11 ft", place="Bay 2", log_mark="K", thickness="1", moisture="7")

    form = page.form(f"{address}/pieces")
    assert form.value("length") == "11 ft"
    assert form.value("place") == "Bay 2"
    assert form.value("log_mark") == "K"
    assert form.value("thickness") == "1"
    assert form.value("moisture") == ""


def test_a_written_size_wins_over_the_buttons(shop, bench, maker):
    address = delivery(shop, maker)
    sort = {"material": "cherry", "size": "4/4", "cut": "flat", "grade": "FAS"}

    bench.post(f"{address}/pieces", **sort, width="7-3/16", length="8 ft", length_typed="8 ft 5 in")

    (piece,) = pieces(shop, address)
    assert (piece.width_ticks / 16256, piece.length_ticks / 16256) == (7.1875, 101.0)


def test_a_length_that_is_tapped_holds_after_a_board_whose_length_was_written(shop, bench, maker):
    address = delivery(shop, maker)
    first = tap(bench, address, "7", "8 ft", length_typed="8 ft 5 in")
    form = first.form(f"{address}/pieces")

    tap(bench, address, "5", "10 ft", length_typed=form.value("length_typed"))
    tap(bench, address, "5", form.value("length"))

    # 10 ft are 120 in; 8 ft 5 in are 101 in, and stand among the buttons, chosen.
    assert (form.value("length"), form.value("length_typed")) == ("101", "")
    assert [piece.length_ticks / 16256 for piece in pieces(shop, address)] == [101.0, 120.0, 101.0]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"width": "1/0"}, "is not a size"),
        ({"width": "0"}, "at least"),
        ({"tapped": "99"}, "Tap one of the widths"),
        ({"tapped": "7", "moisture": "wet"}, "Write a number such as 7.5"),
        ({"tapped": "7", "material": "chery"}, "chery"),
        ({"tapped": "7", "length_typed": "8 1/0"}, "is not a size"),
    ],
)
def test_what_cannot_be_tallied_is_refused_and_nothing_is_lost(shop, bench, maker, typed, said):
    address = delivery(shop, maker)
    sort = {"material": "cherry", "size": "4/4", "cut": "flat", "grade": "FAS", "place": "Bay 3"}

    page = bench.post(f"{address}/pieces", status=422, **({"length": "8 ft"} | sort | typed))

    assert said in page.text
    assert page.form(f"{address}/pieces").value("place") == "Bay 3"
    assert not pieces(shop, address)


def test_a_tap_sent_twice_is_one_board(shop, bench, maker):
    address = delivery(shop, maker)

    tap(bench, address, "7", once="a-tap")
    tap(bench, address, "7", once="a-tap")

    assert len(pieces(shop, address)) == 1


def test_a_tap_is_taken_back(shop, bench, maker):
    address = delivery(shop, maker)
    tap(bench, address, "7")
    (piece,) = pieces(shop, address)

    page = bench.post(f"/stock/pieces/{piece.id}/removal")

    assert not pieces(shop, address)
    assert "Taken back." in page.text


def test_sheets_come_several_at_once(shop, bench, maker):
    address = delivery(shop, maker)
    sort = {"material": "birch plywood", "size": "1/2", "is_sheet": "1"}

    page = bench.post(f"{address}/pieces", **sort, count="4", width="48", length_typed="96")

    assert "4 sheets" in page.text
    assert [each.number for each in pieces(shop, address)] == [1, 2, 3, 4]


def test_a_metric_shop_taps_millimetres(app, books, clock):
    shop = new_shop(app, books, clock, unit="mm")
    maker = shop.visitor()
    address = begin(maker, supplier(maker))

    tap(maker, address, "180-15", "2400 mm")

    (piece,) = pieces(shop, address)
    assert (piece.width_ticks, piece.length_ticks) == (195 * 640, 2400 * 640)


def test_nothing_is_tallied_after_the_tally_was_ended(shop, bench, maker):
    address = delivery(shop, maker)
    bench.post(f"{address}/end")

    page = bench.post(
        f"{address}/pieces",
        status=409,
        material="cherry",
        size="4/4",
        cut="flat",
        grade="FAS",
        tapped="7",
        length="8 ft",
    )

    assert "The tally of this delivery was ended" in page.text
    bench.post(f"{address}/end", back="1")
    tap(bench, address, "7")


def test_an_order_is_here_when_nothing_more_will_come(shop, maker):
    job = accepted(shop)
    yard = supplier(maker)
    order = issue(maker, job.job_id).address.partition("?")[0]
    address = begin(maker, yard, id_in(order))
    tap(maker, address, "7")

    maker.post(f"{address}/end", all_here="1")

    assert "All of it is here" not in maker.get(order).text
    assert "It is open after all" in maker.page.text


def test_the_claim_sets_the_bill_against_the_tally(shop, maker, owner):
    """By hand: 44 ft billed at 9.50 is 418.00; 42 came; 2 ft at 9.50 is 19.00 to ask back."""
    address = delivery(shop, maker)
    for width, length in K27:
        tap(maker, address, width, length)
    owner.get(f"{address}/claim")

    page = owner.send(
        f"{address}/claim", bill__1__quantity="44", bill__1__amount="418.00", bill_number="7731"
    )

    assert "$19.00" in page.text
    assert "2 × $9.50" in page.text
    assert "4.5 %" in page.text
    assert sum(each.cost_cents for each in pieces(shop, address)) == 41800
    printed = text_of(owner.browser.get(f"{address}/claim.pdf").content)
    assert "We ask for a credit of $19.00" in printed
    assert "7731" in printed


def test_a_wet_board_is_told_and_goes_back_on_the_claim(shop, maker, owner):
    address = delivery(shop, maker)
    tap(maker, address, "8", "12 ft", moisture="12")
    tap(maker, address, "8", "12 ft")
    wet = pieces(shop, address)[0]
    assert "wet: 12 % moisture" in maker.get(f"/stock/pieces/{wet.id}").text.lower()

    maker.post(f"/stock/pieces/{wet.id}/acts", act="send back", why="wet")
    owner.get(f"{address}/claim")
    page = owner.send(f"{address}/claim", bill__1__quantity="16", bill__1__amount="160")

    assert "sent back: B1" in page.text
    assert "$80.00" in page.text
    # 160.00 over the 8 ft that stay, and 80.00 over them once the credit has come.
    assert "$20.00 for each foot that stays" in page.text
    assert "$10.00 once the credit has come" in page.text
    assert pieces(shop, address)[1].cost_cents == 16000


def test_labels_are_printed_for_the_boards_that_stay(shop, maker):
    address = delivery(shop, maker)
    tap(maker, address, "8", "12 ft")
    tap(maker, address, "9", "12 ft")
    maker.post(f"/stock/pieces/{pieces(shop, address)[0].id}/acts", act="send back", why="wet")

    printed = text_of(maker.browser.get(f"/stock/labels.pdf?delivery={id_in(address)}").content)

    assert ("B1" in printed, "B2" in printed) == (False, True)


def test_what_is_still_to_come_is_not_on_the_claim(shop, maker, owner):
    job, yard = accepted(shop).job_id, supplier(maker)
    address = begin(maker, yard, id_in(issue(maker, job).address.partition("?")[0]))
    tap(maker, address, "7")
    page = owner.get(f"{address}/claim")
    place = re.search(r'bill\.(\d+)\.what" value="cherry/flat/4/4/FAS"', page.html)[1]

    page = owner.send(f"{address}/claim", **{f"bill__{place}__quantity": "5", f"bill__{place}__amount": "50"})

    printed = text_of(owner.browser.get(f"{address}/claim.pdf").content)
    assert "Poplar 4/4" in page.text
    assert ("cherry 4/4 FAS" in printed, "poplar" in printed) == (True, False)


def test_of_two_who_write_a_bill_the_second_is_told(shop, maker, owner):
    address, other = delivery(shop, maker), shop.visitor()
    tap(maker, address, "8", "12 ft")
    other.get(f"{address}/claim")
    owner.get(f"{address}/claim")
    owner.send(f"{address}/claim", bill__1__quantity="8", bill__1__amount="80")

    page = other.send(f"{address}/claim", status=409, bill__1__quantity="9", bill__1__amount="90")

    assert "Somebody else saved this" in page.text
    assert page.form(f"{address}/claim").value("bill.1.quantity") == "9"


def test_a_maker_sees_what_was_billed_and_came_and_no_money(shop, maker, owner):
    address = delivery(shop, maker)
    tap(maker, address, "8", "12 ft")
    owner.get(f"{address}/claim")
    owner.send(f"{address}/claim", bill__1__quantity="10", bill__1__amount="95")

    page = maker.get(f"{address}/claim")

    assert "20 %" in page.text
    assert "$" not in page.text
    assert "$" not in maker.get("/stock").text
    assert "$" in owner.get("/stock").text


def test_the_bench_tallies_and_sees_no_money(shop, bench, maker, owner):
    address = delivery(shop, maker)
    tap(bench, address, "8", "12 ft")
    owner.get(f"{address}/claim")
    owner.send(f"{address}/claim", bill__1__quantity="8", bill__1__amount="80")

    for path in (address, "/stock", f"/stock/pieces/{pieces(shop, address)[0].id}"):
        assert "$" not in bench.get(path).text
    assert bench.get(f"{address}/claim", status=403)


def test_a_claim_without_a_bill_is_refused(shop, maker, owner):
    address = delivery(shop, maker)

    assert "Write down the bill first" in owner.get(f"{address}/claim.pdf", status=409).text


def test_labels_of_a_delivery_are_printed(shop, maker):
    address = delivery(shop, maker)
    tap(maker, address, "8", "12 ft", place="Bay 2", moisture="7.5", log_mark="K")

    printed = text_of(maker.browser.get(f"/stock/labels.pdf?delivery={id_in(address)}").content)

    for said in ("B1", "Cherry 4/4 FAS", "8 in × 144 in", "7.5 %", "log K", "Bay 2"):
        assert said in printed
