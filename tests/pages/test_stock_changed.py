"""An order whose job changed after it was issued: which lines differ, by how much, and nothing by itself."""

import re

from pages.stock_room import accepted, issue, supplier

WARNING = "Since this order was issued"


def ordered(shop, who, **changes):
    """A job, and the address of the one order for it; the clock then moves on."""
    job = accepted(shop, **changes)
    supplier(who)
    address = issue(who, job.job_id).address.partition("?")[0]
    shop.clock.pass_by(minutes=5)
    return job, address


def feet(page, wood):
    """What a line took when it was ordered and takes now, in feet, as the page has it."""
    row = page.html.partition("What it takes otherwise now</h2>")[2].partition(f'row">{wood}')[2]
    return tuple(float(each) for each in re.findall(r">([\d.]+) bd ft<", row.partition("</tr>")[0]))


def test_an_order_of_a_job_that_stands_as_it_was_says_nothing(shop, maker):
    job, address = ordered(shop, maker)

    assert WARNING not in maker.get(address).text
    assert "an order for this job" not in maker.get(f"/jobs/{job.job_id}").text


def test_twice_as_many_units_take_twice_the_feet_and_the_order_stays_as_it_was(shop, maker):
    job, address = ordered(shop, maker)
    before = maker.get(f"{address}/order.csv").text
    job.revise(job.unit_ids()[0], count=2)

    page = maker.get(address)

    assert f"{WARNING} unit A of job 1 was changed" in page.text
    then, now = feet(page, "Cherry 4/4 FAS")
    assert round(now / then, 2) == 2
    assert f"{round(now - then, 2):g} bd ft more" in page.text
    assert maker.get(f"{address}/order.csv").text == before
    assert address in maker.get(f"/jobs/{job.job_id}").html


def test_once_the_rest_is_ordered_the_job_warns_no_more(shop, maker):
    job, _ = ordered(shop, maker)
    job.revise(job.unit_ids()[0], count=2)
    shop.clock.pass_by(minutes=5)
    assert "an order for this job" in maker.get(f"/jobs/{job.job_id}").text

    issue(maker, job.job_id)

    assert "an order for this job" not in maker.get(f"/jobs/{job.job_id}").text


def test_another_wood_is_less_of_the_one_and_not_ordered_of_the_other(shop, maker):
    job, address = ordered(shop, maker)
    job.revise(
        job.unit_ids()[0], **{"woods": {"case": "walnut", "drawers": "soft maple", "inside": "poplar"}}
    )

    page = maker.get(address)

    assert feet(page, "Cherry 4/4 FAS")[1] == 0
    assert "not ordered yet" in page.text.partition("Walnut 4/4 FAS")[2]


def test_a_new_name_takes_the_same_and_is_no_warning(shop, maker):
    job, address = ordered(shop, maker)
    job.revise(job.unit_ids()[0], name="Chest for the landing")

    page = maker.get(address)

    assert "it takes the same" in page.text
    assert WARNING not in page.text


def test_a_unit_that_was_added_and_one_that_was_taken_out_are_named(shop, maker):
    job, address = ordered(shop, maker)
    job.add()
    assert "unit B of job 1 was changed" in maker.get(address).text

    job.take_out(job.unit_ids()[0])

    assert "unit A of job 1 was taken out" in maker.get(address).text


def test_sheets_differ_by_the_area_of_their_parts(shop, maker):
    ply = {"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}}
    job, address = ordered(shop, maker, **ply)
    job.revise(job.unit_ids()[0], **(ply | {"count": 2}))

    row = (
        maker.get(address).html.partition("What it takes otherwise now</h2>")[2].partition("Birch plywood")[2]
    )

    then, now, more = (
        float(each) for each in re.findall(r">([\d.]+) sq ft of parts", row.partition("</tr>")[0])
    )
    assert round(now / then, 1) == 2
    assert round(now - then, 1) == round(more, 1)


def test_an_order_that_was_called_off_warns_of_nothing(shop, maker):
    job, address = ordered(shop, maker)
    job.revise(job.unit_ids()[0], count=2)
    maker.get(address)
    maker.post(f"{address}/state", state="called off", version="1")

    assert WARNING not in maker.get(address).text
    assert "an order for this job" not in maker.get(f"/jobs/{job.job_id}").text
