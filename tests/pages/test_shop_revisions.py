"""Revisions of the figures: who changed what, the shop file out and in, and an old revision put back."""

import json

import pytest

from benchwork import job_in_hand
from casewright.cli import main
from casewright.records.jobs import JobState
from counting import MOST, counted
from units import DRESSER_FILE

REVISIONS = "/shop/revisions"
CHERRY = "price.lumber_cherry_4~2f~4"


def change_price(visitor, price):
    """A new price of cherry."""
    visitor.get("/shop/prices")
    visitor.send("", **{CHERRY: price})


def test_a_revision_says_who_changed_what(owner):
    change_price(owner, "10.75")

    page = owner.get(REVISIONS)

    assert "Price: cherry 4/4: 9.50, the example → 10.75 for one bd ft, quoted 2027-03-01" in page.text
    assert "Revision 2 holds now" in page.text
    assert "Ada Marsh" in page.text


def test_a_changed_rent_is_the_only_cost_that_changed(owner):
    owner.get("/shop/rate")
    owner.send("/shop/rate", **{"cost.2.amount": "16800"})

    page = owner.get(f"{REVISIONS}/2")

    assert "Yearly cost: Rent 14400.00 16800.00" in page.text
    assert page.text.partition("All that it says")[0].count("Yearly cost") == 1


def test_an_old_revision_is_looked_at_and_holds_again(owner):
    change_price(owner, "10.75")
    change_price(owner, "11.50")
    owner.get(f"{REVISIONS}/2")

    page = owner.send(f"{REVISIONS}/2")

    assert "Revision 4 holds now" in page.text
    assert owner.get("/shop/prices").form().value(CHERRY) == "10.75"


def test_the_file_that_is_downloaded_is_read_by_the_command_line(owner, tmp_path, capsys):
    change_price(owner, "100.75")
    file = tmp_path / "shop.json"

    answer = owner.get("/shop/figures.json")
    file.write_text(answer.html, encoding="utf-8")
    done = main(["estimate", str(DRESSER_FILE), "--shop", str(file)])

    assert done == 0
    assert "100.75" in capsys.readouterr().out
    assert answer.headers["content-disposition"].endswith('filename="marrow-street-furniture-figures-2.json"')


def test_a_file_goes_out_and_comes_in_again_unchanged(owner):
    change_price(owner, "10.75")
    text = owner.get("/shop/figures.json").html
    change_price(owner, "12")
    owner.get(REVISIONS)

    owner.send("", file=text)

    assert json.loads(owner.get("/shop/figures.json").html) == json.loads(text)
    assert owner.get("/shop/prices").form().value(CHERRY) == "10.75"


def test_what_is_for_one_job_stays_out_of_the_shops_figures(owner):
    owner.get(REVISIONS)

    owner.send("", file='{"name": "Another shop", "miles": 20, "extras": [{"label": "crate", "amount": 80}]}')

    held = json.loads(owner.get("/shop/figures.json").html)
    assert held["name"] == "Marrow Street Furniture"
    assert held["miles"] == 20
    assert "extras" not in held


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "Paste the whole file"),
        ("{", "This is not JSON"),
        ('{"chisels": ["wide"], "profit": 2, "wood": "oak"}', "chisels[1]: “wide” is not a size"),
        ('{"chisels": ["wide"], "profit": 2, "wood": "oak"}', "profit: 2 is too large: less than 1"),
        ('{"chisels": ["wide"], "profit": 2, "wood": "oak"}', "wood: This key is not known"),
        ('{"minutes": {"Q9": {"hand": 3}}}', "There is no operation Q9"),
    ],
)
def test_a_file_with_faults_is_refused_with_a_sentence_for_each_and_kept(owner, text, words):
    owner.get(REVISIONS)

    page = owner.send("", status=422, file=text)

    assert words in page.text.replace("&#34;", '"')
    assert page.form().value("file") == text


def test_a_file_is_not_taken_in_over_a_change_that_was_not_seen(shop, owner):
    owner.get(REVISIONS)
    change_price(shop.visitor(), "10.75")

    page = owner.send("", status=409, file='{"miles": 20}')

    assert "Somebody else changed the figures meanwhile." in page.text
    assert page.form().value("file") == '{"miles": 20}'


@pytest.mark.parametrize("number", ["0", "7", "99999999999999999999"])
def test_a_revision_that_never_was_is_not_found(owner, number):
    page = owner.get(f"{REVISIONS}/{number}", status=404)

    assert "There is no such revision of the figures in this shop." in page.text


def test_estimates_follow_the_figures_at_once(shop, owner):
    job = job_in_hand(shop, state=JobState.ENQUIRY)
    before = owner.get(f"/jobs/{job}").text

    change_price(owner, "1000")

    assert owner.get(f"/jobs/{job}").text != before


@pytest.mark.one_database
@pytest.mark.parametrize(
    "address",
    ["/shop", "/shop/rate", "/shop/prices", "/shop/hours", "/shop/woods", REVISIONS, f"{REVISIONS}/3"],
)
def test_a_page_takes_few_statements_however_many_revisions_there_are(shop, owner, address):
    for price in ("10", "11", "12"):
        change_price(owner, price)

    with counted(shop.engine) as sent:
        owner.get(address)

    assert len(sent) <= MOST
