"""A change after approval is priced, looked at, made an order of the job, and agreed on or withdrawn."""

import re

import pytest

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand, unit_address
from casewright.records.jobs import Job
from casewright.records.papers import QuoteState
from casewright.records.sessions import writing
from jobs import with_quote
from pages.unit_jobs import EXAMPLE_FIGURES, filled, use_figures
from printed import text_of

LINE = re.compile(r"<tr><th scope=\"row\">([^<]*)</th><td[^>]*>([^<]*)</td><td[^>]*>([^<]*)</td></tr>")


@pytest.fixture
def job(shop):
    """A chest of three drawers in hand: its case glued, its lowest drawer glued, the one above milled."""
    use_figures(shop, EXAMPLE_FIGURES)
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    ids = drawer_ids(shop, job)
    drawer_reaches(shop, ids["R3-1"], "glued")
    drawer_reaches(shop, ids["R2-1"], "milled")
    return job


@pytest.fixture
def unit(shop, job):
    return unit_address(shop, job)


def revise(who, unit, **typed):
    sent = filled(who.get(unit), unit, {"note": "The customer asks for walnut fronts.", **typed})
    who.post(unit, **sent)


def cents(text):
    """Money as it is read, in cents."""
    sign = -1 if text.strip().startswith(("-", "−", "(")) else 1
    return sign * int(re.sub(r"[^0-9]", "", text))


def lines_of(page):
    """The lines of a change's price as it is looked at: label, working, cents."""
    return {label: (working, cents(amount)) for label, working, amount in LINE.findall(page.html)}


def made_up_of(page):
    """The same on the order that was made."""
    return {
        label: (working, cents(amount))
        for label, amount, working in re.findall(
            r'<li><span class="row"><span>([^<]*)</span><span class="number">([^<]*)</span></span>'
            r' <span class="soft small figure">([^<]*)</span></li>',
            page.html,
        )
    }


def made(who, unit, **typed):
    """The change order of the second revision."""
    address = f"{unit}/revisions/2/change-order"
    who.get(address)
    return who.post(address, **{"act": "make it", "against": "1", "set_up": "0.5", "asked": ""} | typed)


@pytest.mark.one_database
def test_a_change_is_priced_line_by_line_and_the_lines_add_up(owner, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})

    page = owner.get(f"{unit}/revisions/2/change-order")

    lines = lines_of(page)
    asked = lines.pop("asked")[1]
    assert "work in parts that are no longer usable" in lines
    assert any(label.startswith("cherry") and "no longer usable" in label for label in lines)
    assert sum(amount for _, amount in lines.values()) == asked


@pytest.mark.one_database
def test_the_work_that_is_lost_is_the_hours_of_the_scrapped_parts_at_the_rate(owner, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})

    working, amount = lines_of(owner.get(f"{unit}/revisions/2/change-order"))[
        "work in parts that are no longer usable"
    ]

    hours, rate = re.fullmatch(r"([0-9.]+) h × ([0-9.]+)", working).groups()
    assert float(hours) > 0
    assert amount == pytest.approx(float(hours) * float(rate) * 100, abs=0.5)
    said = re.search(r"About ([0-9.]+) hours have gone", owner.get(f"{unit}/revisions/2/rework").text)
    assert float(hours) == pytest.approx(float(said[1]), abs=0.05)


@pytest.mark.one_database
def test_the_hours_of_setting_up_again_are_the_makers_own(owner, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    address = f"{unit}/revisions/2/change-order"
    owner.get(address)

    page = owner.post(address, act="work it out", against="1", set_up="2", asked="")

    assert lines_of(page)["drawings and setting up again"][0].startswith("2 h × ")


def test_it_is_made_only_once_it_was_looked_at_and_then_stands_in_the_job(owner, job, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    owner.get(f"{unit}/revisions/2/change-order")
    assert "CO-0001" not in owner.get(f"/jobs/{job}").text

    page = made(owner, unit)

    assert "Change order CO-0001" in page.text
    assert "The customer asks for walnut fronts." in page.text
    assert "5 parts no longer usable" in page.text
    assert "Change order CO-0001 waits for an answer" in owner.get(f"/jobs/{job}").text


def test_what_is_asked_may_be_set_by_hand_and_says_so(owner, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})

    page = made(owner, unit, asked="4,000")

    assert "Change, before tax $4,000.00" in page.text
    assert "set by hand" in made_up_of(page)


@pytest.mark.one_database
def test_what_cannot_be_read_is_refused_beside_its_field_and_kept(owner, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    address = f"{unit}/revisions/2/change-order"
    owner.get(address)

    page = owner.post(address, status=422, act="make it", against="1", set_up="a day", asked="lots")

    assert "Write a number such as 0.5." in page.text
    assert "Write an amount such as 1,250.00." in page.text
    assert page.form(address).value("set_up") == "a day"


def test_once_agreed_the_unit_is_approved_and_the_job_owes_more(owner, shop, job, unit):
    with writing(shop.engine, shop.shop_id) as db:
        with_quote(db, shop, db.get_one(Job, (shop.shop_id, job)), QuoteState.ACCEPTED, 9)
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    page = made(owner, unit, asked="1000")
    total = re.search(r"With tax \$([0-9.,]+)", page.text)[1]

    agreed = owner.send(f"{page.address.partition('?')[0]}/agreement", name="Ida Poole", way="signed")

    assert "agreed by Ida Poole with a signature" in agreed.text
    assert "Approved" in owner.get(unit).text or "approved" in owner.get(unit).text
    money = owner.get(f"/jobs/{job}").text
    assert f"${total} more by change orders" in money
    assert f"change order CO-0001 open ${total}" in money


def test_an_agreed_one_is_neither_withdrawn_nor_agreed_again(owner, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    address = made(owner, unit).address.partition("?")[0]
    owner.send(f"{address}/agreement", name="Ida Poole", way="signed")

    assert "stays as it was agreed" in owner.post(f"{address}/removal", status=409).text
    owner.post(f"{address}/agreement", status=409, name="Ida Poole", way="signed")


@pytest.mark.one_database
def test_whoever_agreed_has_a_name(owner, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    address = made(owner, unit).address.partition("?")[0]

    page = owner.post(f"{address}/agreement", status=422, name=" ", way="signed")

    assert "Write who agreed." in page.text


def test_one_that_is_withdrawn_stays_in_the_books_and_costs_nothing(owner, job, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    address = made(owner, unit).address.partition("?")[0]

    owner.send(f"{address}/removal")

    page = owner.get(f"/jobs/{job}").text
    assert "Change order CO-0001 withdrawn" in page
    assert "by change orders" not in page


@pytest.mark.one_database
def test_a_smaller_piece_costs_less(owner, unit):
    revise(owner, unit, **{"finish.show_coats": "1"})

    page = owner.get(f"{unit}/revisions/2/change-order")

    assert "Less, before tax" in page.text


@pytest.mark.one_database
def test_a_maker_sees_what_is_asked_and_not_how_it_is_made_up(owner, maker, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})

    page = maker.get(f"{unit}/revisions/2/change-order")

    assert "Change, before tax $" in page.text
    assert "How it is made up" not in page.text
    assert " h × " not in page.text


def test_later_figures_do_not_change_an_order_that_is_made(owner, shop, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    page = made(owner, unit)
    before = made_up_of(page)
    assert before

    use_figures(shop, EXAMPLE_FIGURES | {"minutes": {"D08": {"hand": 60}}})

    assert made_up_of(owner.get(page.address.partition("?")[0])) == before


def test_its_paper_is_for_the_customer_to_sign_and_tells_nothing_of_the_making(owner, maker, unit):
    revise(owner, unit, **{"woods.fronts.wood": "walnut"})
    page = made(owner, unit, asked="1000")
    address = page.address.partition("?")[0]
    total = re.search(r"With tax \$([0-9.,]+)", page.text)[1]

    printed = text_of(maker.browser.get(f"{address}/paper.pdf").content)

    assert "Change order CO-0001" in printed
    assert "The drawer fronts are walnut instead of cherry." in printed
    assert "The customer asks for walnut fronts." not in printed
    assert not re.search(r"\bA-R\d", printed)
    assert f"I agree to Change order CO-0001, for ${total} more in all." in printed
    assert "Signature of" in printed
    assert made_up_of(page)
    assert not set(made_up_of(page)) & {line.strip() for line in printed.splitlines()}
    assert " h × " not in printed


def test_the_paper_of_one_that_was_answered_says_so_and_is_not_signed_again(owner, unit):
    revise(owner, unit, **{"finish.show_coats": "1"})
    address = made(owner, unit).address.partition("?")[0]
    assert "less in all. All else stays" in text_of(owner.browser.get(f"{address}/paper.pdf").content)

    owner.send(f"{address}/agreement", name="Ida Poole", way="signed")

    printed = text_of(owner.browser.get(f"{address}/paper.pdf").content)
    assert "Agreed by Ida Poole with a signature" in printed
    assert "Signature of" not in printed
