"""The money of a job: what was agreed, what came in, what is open; and the figures of one job alone."""

import re
from datetime import date

import pytest

from casewright.records.jobs import JobState
from casewright.records.papers import QuoteState
from casewright.records.sessions import writing
from jobs import offer_of, take_on, with_quote, with_unit


@pytest.fixture
def agreed(shop):
    """The address of a job for which a quote of $10,600.00 in four stages was accepted."""
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState.ACCEPTED, name="Hall chest")
        with_unit(db, shop, job)
        with_quote(db, shop, job, QuoteState.ACCEPTED)
    return f"/jobs/{job.id}"


def stages(page):
    """Each stage with where it stands."""
    return re.findall(
        r'<th scope="row">([a-z ]+)<span class="line"><span class="state \w+">([^<]+)</span>', page.html
    )


def pay(visitor, address, status=200, **typed):
    """Writes a payment down by the form of the job's page."""
    action = f"{address}/payments"
    form = next(form for form in visitor.get(address).seen.forms if form.action == action)
    return visitor.post(action, status, **(dict(form.sent()) | {"amount": "1,060.00"} | typed))


def test_stages_count_from_the_accepted_quote_to_the_cent(maker, agreed):
    page = maker.get(agreed)

    assert stages(page) == [
        ("signing", "open"),
        ("before material is bought", "open"),
        ("three quarters complete", "open"),
        ("completion", "open"),
    ]
    assert "$10,600.00 agreed $10,000.00 and $600.00 tax" in page.text
    assert "Open $10,600.00" in page.text


def test_before_a_quote_is_accepted_only_the_estimate_stands(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState.QUOTED)
        with_unit(db, shop, job)
        with_quote(db, shop, job, QuoteState.SENT)

    page = maker.get(f"/jobs/{job.id}")

    assert stages(page) == []
    assert "estimate" in page.text
    assert "Stage payments count from the day on which a quote is accepted." in page.text


def test_of_two_accepted_quotes_the_later_one_holds(maker, shop, agreed):
    with writing(shop.engine, shop.shop_id) as db:
        job = db.get_one(_job_table(), (shop.shop_id, agreed.rpartition("/")[2]))
        later = offer_of(net=1_200_000, tax=72_000)
        facts = {"offer": later, "total_cents": later["total_cents"]}
        shop.clock.pass_by(days=2)
        with_quote(db, shop, job, QuoteState.ACCEPTED, 2, **facts)

    assert "$12,720.00 agreed" in maker.get(agreed).text


def _job_table():
    from casewright.records.jobs import Job  # noqa: PLC0415

    return Job


def test_a_payment_fills_the_stages_in_their_order(maker, agreed):
    page = pay(maker, agreed, amount="3,000.50", method="bank transfer")

    assert stages(page)[:3] == [
        ("signing", "paid"),
        ("before material is bought", "$2,299.50 open"),
        ("three quarters complete", "open"),
    ]
    assert "Took in $3,000.50 (bank transfer)." in page.text
    assert "Open $7,599.50" in page.text


def test_a_payment_sent_twice_comes_in_once(maker, agreed):
    form = maker.get(agreed).form(f"{agreed}/payments")
    fields = dict(form.sent()) | {"amount": "1060"}

    maker.post(f"{agreed}/payments", **fields)
    page = maker.post(f"{agreed}/payments", **fields)

    assert "Came in $1,060.00" in page.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"amount": "a lot"}, "“a lot” cannot be used here. Write an amount such as 1,250.00."),
        ({"amount": "0"}, "A payment of nothing is none."),
        ({"amount": ""}, "This is empty. Write an amount such as 1,250.00."),
        ({"received_on": "2027-03-02"}, "This day is still ahead."),
        ({"received_on": ""}, "Write the day on which it came in."),
    ],
)
def test_a_payment_that_cannot_be_used_is_kept_and_nothing_comes_in(maker, agreed, typed, sentence):
    page = pay(maker, agreed, status=422, **({"note": "No. 1182"} | typed))

    assert sentence in page.text
    assert page.form(f"{agreed}/payments").value("note") == "No. 1182"
    assert "Came in $0.00" in maker.get(agreed).text


def test_a_payment_is_corrected_by_an_entry_against_it_and_both_stay(maker, agreed):
    page = pay(maker, agreed)
    address = next(form.action for form in page.seen.forms if form.action.endswith("/correction"))

    page = maker.send(address, why="The check was for another job.")

    assert "corrected $1,060.00" in page.text
    assert "correction -$1,060.00 The check was for another job." in page.text
    assert "Corrected a payment of $1,060.00: The check was for another job." in page.text
    assert "Open $10,600.00" in page.text


def test_a_payment_corrected_twice_is_corrected_once(maker, agreed):
    page = pay(maker, agreed)
    address = next(form.action for form in page.seen.forms if form.action.endswith("/correction"))

    maker.post(address)
    page = maker.post(address)

    assert "Came in $0.00" in page.text


def test_a_payment_of_another_job_is_not_corrected_from_here(maker, shop, agreed):
    page = pay(maker, agreed)
    payment = next(form.action for form in page.seen.forms if form.action.endswith("/correction")).split("/")[
        4
    ]
    with writing(shop.engine, shop.shop_id) as db:
        other = take_on(db, shop, 2).id

    page = maker.post(f"/jobs/{other}/payments/{payment}/correction", status=404)

    assert "There is no such payment in this shop." in page.text


def test_money_that_goes_back_and_money_too_much_are_told_apart(maker, agreed):
    pay(maker, agreed, amount="11,000")
    too_much = maker.page.text

    page = pay(maker, agreed, amount="-400.00")

    assert "Too much came in $400.00" in too_much
    assert "Paid back $400.00." in page.text
    assert "Open $0.00" in page.text


def test_the_owner_sees_cost_and_margin_beside_what_was_agreed(owner, agreed):
    page = owner.get(agreed)

    assert re.search(r"It costs us \$[\d,]+\.\d\d Margin -?[\d.]+ % of the price before tax", page.text)
    assert "Least to accept" not in page.text


def test_a_job_has_figures_of_its_own_that_move_its_price(owner, shop, agreed):
    before = owner.get(agreed).text
    owner.get(f"{agreed}/own")

    page = owner.send(
        f"{agreed}/own", miles="120", risk="P90", outwork__0__label="turned feet", outwork__0__amount="120"
    )

    now = re.search(r"Today's figures would ask (\S+)\.", page.text)[1]
    was = re.search(r"Today's figures would ask (\S+)\.", before)[1]
    assert now != was
    assert "Changed the job&#39;s own figures." in page.text
    assert "outwork 1, label nothing → turned feet" in page.text
    assert "outwork 1, amount nothing → 120.00" in page.text


def test_a_maker_changes_the_way_and_neither_sees_nor_loses_the_outwork(owner, maker, agreed):
    owner.get(f"{agreed}/own")
    owner.send(f"{agreed}/own", outwork__0__label="turned feet", outwork__0__amount="120.00")
    form = maker.get(f"{agreed}/own")

    page = maker.send(f"{agreed}/own", miles="60")

    assert "turned feet" not in form.text
    assert "turned feet" not in page.text
    assert "miles nothing → 60" in page.text
    assert owner.get(f"{agreed}/own").form(f"{agreed}/own").value("outwork.0.label") == "turned feet"


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"miles": "far"}, "“far” cannot be used here. Write a number such as 60."),
        ({"miles": "20000"}, "20000 is outside 0 to 10000."),
        ({"queue_weeks": "-1"}, "-1 is outside 0 to 520."),
        ({"outwork__0__amount": "120"}, "Write what it is for; the customer will ask."),
        ({"extras__0__label": "crane"}, "This is empty. Write an amount such as 1,250.00."),
    ],
)
def test_a_figure_that_cannot_be_used_is_said_beside_its_field(owner, agreed, typed, sentence):
    owner.get(f"{agreed}/own")

    page = owner.send(f"{agreed}/own", status=422, **typed)

    assert sentence in page.text


def test_of_two_who_change_the_figures_the_second_sees_both(owner, maker, agreed):
    owner.get(f"{agreed}/own")
    maker.get(f"{agreed}/own")
    maker.send(f"{agreed}/own", miles="60")

    page = owner.send(f"{agreed}/own", status=409, miles="80")

    assert page.form(f"{agreed}/own").value("miles") == "80"
    assert "Theirs: 60" in page.text
    assert "miles 60 → 80" in owner.send(f"{agreed}/own").text


def test_a_payment_day_is_written_as_everywhere(maker, agreed):
    page = pay(maker, agreed, received_on=date(2027, 2, 25).isoformat())

    assert "25 Feb 2027" in page.text


def test_a_maker_whose_form_is_stale_is_told_no_cost_by_any_field(owner, maker, agreed):
    owner.get(f"{agreed}/own")
    owner.send(f"{agreed}/own", outwork__0__label="turned feet", outwork__0__amount="123.45")

    page = maker.post(
        f"{agreed}/own",
        409,
        **{"version": "1", "miles": "60", "outwork.0.label": "", "outwork.0.amount": "", "risk": ""},
    )

    assert "123.45" not in page.html
    assert "turned feet" not in page.html


def test_a_maker_who_changed_nothing_is_not_stopped_by_what_only_the_owner_may_see(owner, maker, agreed):
    maker.get(f"{agreed}/own")
    owner.get(f"{agreed}/own")
    owner.send(f"{agreed}/own", outwork__0__label="turned feet", outwork__0__amount="123.45")

    page = maker.send(f"{agreed}/own")

    assert "Saved." in page.text
    assert owner.get(f"{agreed}/own").form(f"{agreed}/own").value("outwork.0.amount") == "123.45"
