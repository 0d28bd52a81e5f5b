"""Ordering for one job or several, of one supplier or several; what they are told, and what they are not."""

import csv
from io import StringIO

import pytest

from pages.commissions import id_in
from pages.stock_room import YARD, accepted, begin, issue, on_rack, supplier, tap
from printed import text_of


def lumber(page, start="Cherry 4/4 FAS"):
    """The number of the line of a new order that begins with some words."""
    found = [
        name.split(".")[1]
        for name, each in page.form("/stock/orders").fields
        if name.endswith(".what") and each.value.startswith("lumber/" + start)
    ]
    return found[0]


def test_a_supplier_is_taken_down_changed_and_found_again(maker):
    maker.get("/stock/suppliers/new")

    maker.send("/stock/suppliers", name="Sawyer <& Daughters>", kinds__lumber="1", lead_days="10")
    address = maker.page.address.partition("?")[0]
    maker.get(f"{address}/change")
    page = maker.send(address, phone="802 555 0111")

    assert "lumber" in page.text
    assert "10 days" in page.text
    assert "802 555 0111" in maker.get("/stock/suppliers").text
    assert "Sawyer &lt;&amp; Daughters&gt;" in maker.page.html


def test_a_supplier_who_sells_nothing_is_refused_and_what_was_typed_stays(maker):
    maker.get("/stock/suppliers/new")

    page = maker.send("/stock/suppliers", status=422, name="Sawyer", phone="555")

    assert "Tick what they sell" in page.text
    assert page.form("/stock/suppliers").value("phone") == "555"


def test_of_two_who_change_a_supplier_the_second_sees_both_texts(maker, owner):
    address = f"/stock/suppliers/{supplier(maker)}"
    owner.get(f"{address}/change")
    maker.get(f"{address}/change")
    maker.send(address, phone="1")

    page = owner.send(address, status=409, phone="2")

    assert "Theirs: 1" in page.text
    assert page.form(address).value("phone") == "2"


def test_an_order_of_one_job_is_what_its_lumber_page_says(shop, maker):
    job = accepted(shop)
    supplier(maker)

    page = issue(maker, job.job_id)

    lumber_page = maker.get(f"/units/{job.unit_ids()[0]}/lumber").text
    assert page.seen.headings == ["Order P-0001"]
    assert "Chest for the hall" in page.text
    feet = page.html.partition('data-label="Feet"><strong>')[2].partition("<")[0]
    assert f"{feet} bd ft" in lumber_page or feet in lumber_page


def test_the_yards_copy_names_no_customer_no_job_and_no_part(shop, maker):
    job = accepted(shop)
    supplier(maker)
    address = issue(maker, job.job_id, remarks="Call Ben at the gate.").address.partition("?")[0]

    theirs = text_of(maker.browser.get(f"{address}/order.pdf").content)
    ours = text_of(maker.browser.get(f"{address}/order.pdf?copy=shop").content)

    assert "Call Ben at the gate." in theirs
    assert "Sawyer & Daughters" in theirs
    assert "substitute" in theirs
    assert "Net tally, kiln-dried" in theirs
    for private in ("Marsh", "hall", "Lines of the cut list", "÷"):
        assert private not in theirs
    assert "Lines of the cut list" in ours


def test_the_csv_has_every_line_and_no_price(shop, maker):
    job = accepted(shop)
    supplier(maker)
    address = issue(maker, job.job_id).address.partition("?")[0]

    rows = list(csv.DictReader(StringIO(maker.browser.get(f"{address}/order.csv").text)))

    assert {row["order"] for row in rows} == {"P-0001"}
    assert {"lumber", "hardware"} <= {row["kind"] for row in rows}
    assert not any("price" in name or "cent" in name for name in rows[0])


def test_two_jobs_in_one_order_are_added_up_before_they_are_rounded(shop, maker):
    one, other = accepted(shop), accepted(shop)
    supplier(maker)
    alone = maker.get(f"/stock/needs?job={one.job_id}")
    feet_alone = int(alone.form("/stock/orders").value(f"buy.{lumber(alone, 'cherry/flat/4/4')}.quantity"))

    both = maker.get(f"/stock/needs?job={one.job_id}&job={other.job_id}")

    feet = int(both.form("/stock/orders").value(f"buy.{lumber(both, 'cherry/flat/4/4')}.quantity"))
    assert 2 * feet_alone - 1 <= feet <= 2 * feet_alone
    page = maker.send("/stock/orders")
    assert "Job 1" in page.text
    assert "Job 2" in page.text


def test_each_supplier_gets_what_it_sells(shop, maker):
    job = accepted(shop)
    supplier(maker, "Yard", **{"kinds.lumber": "1"})
    supplier(maker, "Brass shop", **{"kinds.hardware": "1", "kinds.finish": "1"})

    page = issue(maker, job.job_id)

    assert page.seen.headings == ["Orders"]
    assert "P-0001" in page.text
    assert "P-0002" in page.text
    assert "2 orders" in page.text


def test_what_was_ordered_before_is_not_ordered_again(shop, maker):
    job = accepted(shop)
    supplier(maker)
    issue(maker, job.job_id)

    page = maker.get(f"/stock/needs?job={job.job_id}")

    line = lumber(page, "cherry/flat/4/4")
    assert "Ordered before" in page.text
    assert page.form("/stock/orders").value(f"buy.{line}.quantity") == "0"
    assert page.form("/stock/orders").value(f"buy.{line}.supplier") == ""


def test_nothing_to_buy_is_refused_beside_the_first_line(shop, maker):
    job = accepted(shop)
    page = maker.get(f"/stock/needs?job={job.job_id}")

    page = maker.send("/stock/orders", status=422)

    assert "Nothing is bought yet" in page.text


def test_a_bad_count_is_refused_beside_its_line_and_kept(shop, maker):
    job = accepted(shop)
    supplier(maker)
    maker.get(f"/stock/needs?job={job.job_id}")

    page = maker.send("/stock/orders", status=422, buy__1__quantity="lots", delivery="to the door")

    assert "“lots” cannot be used here" in page.text
    assert page.form("/stock/orders").value("buy.1.quantity") == "lots"
    assert page.form("/stock/orders").value("delivery") == "to the door"


def test_the_rack_is_asked_first_and_what_it_gives_is_kept_for_the_job(shop, maker):
    job = accepted(shop)
    supplier(maker)
    without = maker.get(f"/stock/needs?job={job.job_id}")
    line = lumber(without, "cherry/flat/4/4")
    before = int(without.form("/stock/orders").value(f"buy.{line}.quantity"))
    offcut = on_rack(maker, "6", "60")

    page = maker.get(f"/stock/needs?job={job.job_id}")

    assert "O1" in page.text
    assert int(page.form("/stock/orders").value(f"buy.{line}.quantity")) < before
    made = maker.send("/stock/orders")
    assert "From the rack: 1 piece, O1" in made.text
    assert "kept for job 1" in maker.get(offcut).text


def test_what_is_left_on_the_rack_is_bought_after_all(shop, maker):
    job = accepted(shop)
    supplier(maker)
    without = maker.get(f"/stock/needs?job={job.job_id}")
    line = lumber(without, "cherry/flat/4/4")
    before = without.form("/stock/orders").value(f"buy.{line}.quantity")
    on_rack(maker, "6", "60")

    page = maker.get(f"/stock/needs?asked=1&job={job.job_id}")

    assert page.form("/stock/orders").value(f"buy.{line}.quantity") == before


def test_a_form_sent_twice_makes_one_order(shop, maker):
    job = accepted(shop)
    supplier(maker)
    maker.get(f"/stock/needs?job={job.job_id}")
    fields = maker.page.form("/stock/orders").sent()
    data = dict(fields)

    first, second = maker.post("/stock/orders", **data), maker.post("/stock/orders", **data)

    assert first.address == second.address
    assert "1 order" in maker.get("/stock/orders").text


def test_an_order_is_called_off_unless_something_came(shop, maker):
    job = accepted(shop)
    yard = supplier(maker)
    address = issue(maker, job.job_id).address.partition("?")[0]
    maker.post(f"{address}/state", state="called off")
    assert "called off" in maker.get(address).text
    maker.post(f"{address}/state", state="open")
    begin(maker, yard, id_in(address))

    page = maker.post(f"{address}/state", status=409, state="called off")

    assert "Something of this order has come" in page.text


def test_an_order_of_a_job_that_is_over_is_refused(shop, maker):
    job = accepted(shop)
    maker.post(f"/jobs/{job.job_id}/state", state="lost", why="too dear")

    page = maker.get(f"/stock/needs?job={job.job_id}", status=409)

    assert "take it up again" in page.text


@pytest.mark.parametrize("path", ["/stock/orders", "/stock/suppliers", "/stock/needs", "/stock/yields"])
def test_the_bench_sees_no_orders(bench, path):
    assert "This page is for" in bench.get(path, status=403).text


def test_how_sure_the_feet_are_stands_beside_the_waste_each_with_its_ground(shop, maker):
    job = accepted(shop)
    order = maker.get(f"/stock/needs?job={job.job_id}")
    feet = order.form("/stock/orders").value(f"buy.{lumber(order, 'cherry/flat/4/4')}.quantity")

    page = maker.get(f"/stock/needs/chance?job={job.job_id}")

    assert "Cherry 4/4 FAS" in page.text
    assert f"On the order, by waste {feet} bd ft, enough in" in " ".join(page.text.split())
    assert "20 % waste, case, top and base (common practice" in page.text
    assert "yield (published: Gene Wengert" in page.text
    again = maker.get(f"/stock/needs/chance?job={job.job_id}")
    assert page.text == again.text


def test_too_many_parts_are_named_and_not_drawn(shop, maker):
    job = accepted(shop, count=24)

    page = maker.get(f"/stock/needs/chance?job={job.job_id}")

    assert "loads are drawn for 200 at most" in page.text


def test_what_the_rack_was_kept_for_is_not_bought_after_all(shop, maker):
    job = accepted(shop)
    supplier(maker)
    on_rack(maker, "8", "60 in")
    issue(maker, job.job_id)
    assert "kept" in maker.get("/stock").text

    page = maker.get(f"/stock/needs?job={job.job_id}")

    line = lumber(page, "cherry/flat/4/4")
    assert page.form("/stock/orders").value(f"buy.{line}.quantity") == "0"


def test_a_supplier_with_whom_the_shop_has_done_is_offered_no_more(shop, maker):
    job = accepted(shop)
    yard = supplier(maker, "Old yard", **YARD)
    maker.post(f"/stock/suppliers/{yard}/end")

    page = maker.get(f"/stock/needs?job={job.job_id}")

    assert "Old yard" not in page.text


def test_boards_that_came_for_an_order_are_offered_to_no_other_job(shop, maker):
    one, other = accepted(shop), accepted(shop)
    yard = supplier(maker)
    order = issue(maker, one.job_id).address.partition("?")[0]
    tap(maker, begin(maker, yard, id_in(order)), "9", "12 ft")
    tap(maker, begin(maker, yard), "8", "12 ft")

    page = maker.get(f"/stock/needs?job={other.job_id}")

    assert "B2" in page.text
    assert "B1 cherry" not in page.text


def test_what_things_cost_is_for_the_owner(shop, maker, owner):
    job = accepted(shop)
    supplier(maker)
    address = issue(maker, job.job_id).address.partition("?")[0]

    assert "$" not in maker.get(address).text
    assert "Price of one" not in maker.get(f"/stock/needs?job={job.job_id}").text
    assert "Prices as they were known" in owner.get(address).text
    assert "$" not in text_of(maker.browser.get(f"{address}/order.pdf").content)
