"""A job from its enquiry to its last payment: its forms, its states, its history."""

import pytest
from sqlalchemy import select

from casewright.records.jobs import JobState, Unit, UnitRevision
from casewright.records.papers import QuoteState
from casewright.records.sessions import writing
from casewright.shop.jobs import load_job
from counting import MOST, counted
from jobs import take_on, with_quote, with_unit
from pages.commissions import commission


def taken_on(visitor, **typed):
    """A job, taken on by its form; its address."""
    visitor.get("/jobs/new")
    visitor.send("/jobs", **({"name": "Walnut dresser", "new__name": "Ada Marsh"} | typed))
    return visitor.page.address.partition("?")[0]


def test_a_job_is_taken_on_with_a_new_customer_in_one_form(maker):
    address = taken_on(
        maker, asked="For the hall, like grandmother's.", due_on="2027-06-18", new__phone="555 0134"
    )

    page = maker.get(address)

    assert page.seen.headings == ["1 · Walnut dresser"]
    assert "Ada Marsh" in page.text
    assert "555 0134" in page.text
    assert "wanted by 18 Jun 2027" in page.text
    assert "No unit yet" in page.text


def test_a_job_for_a_known_customer_asks_nothing_twice(maker):
    maker.get("/customers/new")
    maker.send("/customers", name="Ada Marsh")
    customer = maker.page.address.rpartition("/")[2].partition("?")[0]
    form = maker.get(f"/jobs/new?customer={customer}").form("/jobs")

    maker.send("/jobs", name="Hall chest")

    assert form.value("customer_id") == customer
    assert "1 customer" in maker.get("/customers").text


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"name": ""}, "Write what it is, such as Walnut dresser"),
        ({"new__name": ""}, "or choose a customer you know"),
        ({"new__email": "ada at home"}, "“ada at home” is not an e-mail address"),
        ({"due_on": "in May"}, "“in May” is not a day. Write it as 2027-03-01."),
    ],
)
def test_what_cannot_be_used_is_said_beside_its_field_and_kept(maker, typed, sentence):
    maker.get("/jobs/new")

    page = maker.send(
        "/jobs", status=422, **({"name": "Chest", "new__name": "Ada Marsh", "note": "Stairs."} | typed)
    )

    assert sentence in page.text
    assert page.form("/jobs").value("note") == "Stairs."


def test_a_known_and_a_new_customer_at_once_is_asked_about(maker):
    maker.get("/customers/new")
    maker.send("/customers", name="Ada Marsh")
    customer = maker.page.address.rpartition("/")[2].partition("?")[0]
    maker.get("/jobs/new")

    page = maker.send("/jobs", status=422, name="Chest", customer_id=customer, new__name="Tom Marsh")

    assert "Keep one: choose “a new customer”, or empty the fields below." in page.text


def test_a_form_sent_twice_takes_on_one_job_and_one_customer(maker):
    form = maker.get("/jobs/new").form("/jobs")
    fields = dict(form.sent()) | {"name": "Walnut dresser", "new.name": "Ada Marsh"}

    first = maker.post("/jobs", **fields)
    second = maker.post("/jobs", **fields)

    assert first.address == second.address
    assert "1 customer" in maker.get("/customers").text


def test_a_customer_of_another_shop_is_nobody_here(app, shop, books, clock, maker):
    from people import new_shop  # noqa: PLC0415

    other = new_shop(app, books, clock)
    with writing(books, other.shop_id) as db:
        theirs = take_on(db, other, 1).customer_id
    form = maker.get("/jobs/new").form("/jobs")

    maker.post("/jobs", status=404, **(dict(form.sent()) | {"name": "Chest", "customer_id": theirs}))

    assert "No jobs yet" in maker.get("/jobs").text


def test_a_job_lives_from_enquiry_to_closed(maker, shop):
    address = taken_on(maker)
    with writing(shop.engine, shop.shop_id) as db:
        with_unit(db, shop, load_job(db, address.rpartition("/")[2]))

    states = []
    for state in ("quoted", "accepted", "in hand", "ready", "delivered", "closed"):
        maker.post(f"{address}/state", state=state, sure="1")
        states.append(f"The job is {state} now" in maker.page.text)

    assert states == [True] * 6
    assert "closed 1" in maker.get("/jobs?state=closed").text


@pytest.mark.parametrize(
    ("held", "asked"), [("enquiry", "ready"), ("quoted", "delivered"), ("lost", "accepted")]
)
def test_a_move_without_an_arrow_is_refused(maker, shop, held, asked):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState(held)).id

    page = maker.post(f"/jobs/{job}/state", status=409, state=asked)

    assert f"A job that is {held} cannot become {asked} at once." in page.text


@pytest.mark.parametrize(
    ("held", "asked"), [("enquiry", "quoted"), ("enquiry", "accepted"), ("quoted", "accepted")]
)
def test_a_job_without_a_unit_is_not_quoted_and_not_accepted(maker, shop, held, asked):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState(held)).id

    page = maker.post(f"/jobs/{job}/state", status=409, state=asked)

    assert f"The job has no unit, so there is nothing to call {asked}; describe one first" in page.text
    assert f"The job is {asked} now" not in maker.get(f"/jobs/{job}").text


def test_a_job_goes_back_to_accepted_after_its_unit_was_taken_out(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState.IN_HAND).id

    page = maker.post(f"/jobs/{job}/state", state="accepted")

    assert "The job is accepted now, in hand before." in page.text


def test_a_lost_job_says_why_and_can_be_taken_up_again(maker):
    address = taken_on(maker)
    maker.get(f"{address}/lost")

    asked = maker.send(f"{address}/state", status=422, why=" ")
    maker.send(f"{address}/state", why="A cheaper one from a shop in town.")
    lost = maker.page.text
    maker.post(f"{address}/state", state="enquiry")

    assert "Write why, in a few words" in asked.text
    assert "lost now, enquiry before: A cheaper one from a shop in town." in lost
    assert "The job is enquiry now, lost before." in maker.page.text


def test_a_state_pressed_twice_is_moved_to_once(maker, shop):
    address = f"/jobs/{commission(shop).job_id}"

    maker.post(f"{address}/state", state="quoted")
    maker.post(f"{address}/state", state="quoted")

    assert maker.page.text.count("The job is quoted now") == 1


def test_of_two_who_change_a_job_the_second_sees_both(maker, owner):
    address = taken_on(maker)
    owner.get(f"{address}/change")
    maker.get(f"{address}/change")
    maker.send(address, name="Cherry dresser", due_on="2027-07-01")

    page = owner.send(address, status=409, name="Oak dresser")

    assert page.form(address).value("name") == "Oak dresser"
    assert "Theirs: Cherry dresser" in page.text
    assert "Theirs: 2027-07-01" in page.text
    assert "Oak dresser" in owner.send(address).text


def test_a_double_press_on_save_changes_a_job_once(maker):
    address = taken_on(maker)
    typed = dict(maker.get(f"{address}/change").form(address).sent()) | {"name": "Cherry dresser"}

    maker.post(f"{address}/change", **typed)
    second = maker.post(f"{address}/change", **typed)

    assert second.address == f"{address}?said=saved"
    assert second.text.count("Changed the job: name.") == 1


def test_a_job_goes_to_another_customer(maker):
    address = taken_on(maker)
    maker.get("/customers/new")
    maker.send("/customers", name="Tom Roe")
    tom = maker.page.address.rpartition("/")[2].partition("?")[0]
    maker.get(f"{address}/change")

    maker.send(address, customer_id=tom)

    assert "Changed the job: customer." in maker.page.text
    assert "Ada Marsh → Tom Roe" in maker.page.text


def test_the_history_shows_what_was_before_and_after(maker):
    address = taken_on(maker)
    maker.get(f"{address}/change")

    page = maker.send(address, name="Cherry dresser", note="Three flights of stairs.")

    assert "Changed the job: name, note." in page.text
    assert "Walnut dresser → Cherry dresser" in page.text
    assert "nothing → Three flights of stairs." in page.text
    assert "Ben Tull" in page.text


def test_a_long_history_is_read_page_by_page(maker):
    address = taken_on(maker)
    for state in ["lost", "enquiry"] * 30:
        maker.post(f"{address}/state", state=state, why="Too dear.")

    first = maker.get(f"{address}/history")
    second = maker.get(f"{address}/history?page=2")

    assert "All of its history" in maker.get(address).text
    assert "Took on job 1" not in first.text
    assert "Took on job 1, Walnut dresser." in second.text


@pytest.mark.parametrize("path", ["", "/change", "/own", "/lost", "/history"])
def test_a_job_of_another_shop_is_not_there(app, books, clock, maker, path):
    from people import new_shop  # noqa: PLC0415

    other = new_shop(app, books, clock)
    with writing(books, other.shop_id) as db:
        theirs = take_on(db, other, 1).id

    page = maker.get(f"/jobs/{theirs}{path}", status=404)

    assert "There is no such job in this shop." in page.text


@pytest.mark.parametrize("address", ["/jobs", "/jobs/new", "/search?q=oak"])
def test_the_bench_has_no_business_in_the_office(bench, address):
    page = bench.get(address, status=403)

    assert "This page is for the owner or the maker" in page.text


def test_the_page_of_a_job_shows_its_units_with_size_checks_and_price(owner, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1)
        with_unit(db, shop, job)

    page = owner.get(f"/jobs/{job.id}")

    assert "A Small chest" in page.text
    assert "3 drawers, none begun" not in page.text
    assert "It costs us" in page.text
    assert "Margin" in page.text


def test_the_drawers_of_a_case_are_not_said_to_stand_where_the_case_does(owner, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1)
        with_unit(db, shop, job)

    page = owner.get(f"/jobs/{job.id}")

    assert "Case A: not begun, 3 drawers in it" in page.text


def test_a_job_without_a_quote_offers_one_before_anything_else(maker, shop):
    page = maker.get(f"/jobs/{commission(shop).job_id}")

    box = page.html.partition('aria-label="What is next"')[2].partition("</section>")[0]
    assert box.index('class="main">New quote') < box.index("Mark as quoted")


def test_the_history_reads_sizes_as_they_were_typed(maker, shop):
    job = commission(shop)
    unit = job.add()
    job.revise(unit, rows=[{"widths": ["6", None, "6"], "height": "6"}, {"height": "6"}, {"height": "6"}])

    page = maker.get(f"/jobs/{job.job_id}")

    assert "row 1, widths nothing → 6; rest; 6" in page.text


def test_a_maker_sees_the_price_and_neither_cost_nor_margin(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1)
        with_unit(db, shop, job)

    page = maker.get(f"/jobs/{job.id}")

    assert "estimate" in page.text
    assert "$" in page.text
    assert "It costs us" not in page.text
    assert "Margin" not in page.text
    assert "Least to accept" not in page.text


@pytest.mark.parametrize(
    ("state", "words"),
    [(QuoteState.DRAFT, "Go on with the quote"), (QuoteState.SENT, "Write the answer down")],
)
def test_a_job_that_is_not_agreed_leads_to_its_open_quote(maker, shop, state, words):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState.QUOTED)
        quote = with_quote(db, shop, job, state)

    page = maker.get(f"/jobs/{job.id}")

    assert words in page.text
    assert f"/quotes/{quote}" in page.seen.links


def test_a_unit_that_cannot_be_built_says_why_and_holds_the_page_not_up(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1)
        unit = with_unit(db, shop, job)
        revision = db.scalars(select(UnitRevision).where(UnitRevision.unit_id == unit)).one()
        narrow = {**revision.spec, "body": {**revision.spec["body"], "width": "1/2"}}
        db.add(UnitRevision(unit_id=unit, number=2, spec=narrow, at=shop.clock.now, who="Ada Marsh"))
        db.get_one(Unit, (shop.shop_id, unit)).revision = 2

    page = maker.get(f"/jobs/{job.id}")

    assert "cannot be built yet" in page.text
    assert "No price yet." in page.text


def test_the_page_of_a_job_takes_few_queries_whatever_it_holds(owner, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState.IN_HAND)
        for number in range(1, 5):
            with_unit(db, shop, job)
            with_quote(db, shop, job, QuoteState.SENT, number)
        with_quote(db, shop, job, QuoteState.ACCEPTED, 9)

    with counted(shop.engine) as statements:
        owner.get(f"/jobs/{job.id}")

    assert len(statements) <= MOST, statements
