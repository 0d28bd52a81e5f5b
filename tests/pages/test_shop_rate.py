"""The rate: costs of a year, hours, the terms of a price and the stages in which it is paid."""

import pytest

from pages.visitor import Visitor


def amount_field(page, name):
    """The field of the amount of a yearly cost."""
    fields = dict(page.form("/shop/rate").sent())
    field = next(key for key, value in fields.items() if key.endswith(".name") and value == name)
    return field.replace(".name", ".amount")


def first_free(page, group, column):
    """The first empty field of a list."""
    fields = page.form("/shop/rate").sent()
    return next(key for key, value in fields if key.startswith(group) and key.endswith(column) and not value)


def test_the_rate_of_the_made_up_year_is_shown_with_its_working(owner):
    page = owner.get("/shop/rate")

    assert "$108.33" in page.text  # 117,000 / 1,200 / 0.9, worked by hand
    assert "yearly / billable / (1 - profit)" in page.text
    assert "$117,000.00" in page.text


def test_a_changed_rent_changes_the_rate_at_once(owner):
    page = owner.get("/shop/rate")

    page = owner.send("/shop/rate", **{amount_field(page, "Rent"): "26,400"})

    assert "$119.44" in page.text  # 129,000 / 1,200 / 0.9
    assert page.form("/shop/rate").value(amount_field(page, "Rent")) == "26400.00"


def test_a_cost_is_added_and_another_taken_out_without_script(owner):
    page = owner.get("/shop/rate")
    vehicle = amount_field(page, "Vehicle").replace(".amount", "")
    free = first_free(page, "cost", "name").replace(".name", "")

    page = owner.send(
        "/shop/rate", **{f"{vehicle}.out": "1", f"{free}.name": "Bookkeeper", f"{free}.amount": "2 400"}
    )

    sent = dict(page.form("/shop/rate").sent()).values()
    assert "Bookkeeper" in sent
    assert "Vehicle" not in sent


def test_looking_saves_nothing(owner):
    page = owner.get("/shop/rate")

    tried = owner.post("/shop/rate/look", **dict(page.form("/shop/rate").sent()) | {"profit": "20"})

    assert "Not saved yet" in tried.text
    assert "$121.88" in tried.text  # 97.50 / 0.8
    assert "$108.33" in owner.get("/shop/rate").text


def test_a_script_gets_the_block_that_changes(owner):
    fields = dict(owner.get("/shop/rate").form("/shop/rate").sent()) | {"profit": "20"}
    owner.browser.headers.update({"hx-request": "true", "x-block": "worked"})

    answer = owner.browser.post("/shop/rate/look", data=fields)

    assert answer.status_code == 200
    assert "<html" not in answer.text
    assert "$121.88" in answer.text


def test_stages_that_do_not_add_up_are_refused_and_kept(owner):
    owner.get("/shop/rate")

    page = owner.send("/shop/rate", status=422, **{"stage.1.share": "15"})

    assert "The stages add up to 105 %. Make them 100 %." in page.text
    assert page.form("/shop/rate").value("stage.1.share") == "15"


def test_thirds_stay_thirds(owner):
    owner.get("/shop/rate")
    owner.send("/shop/rate", plan="thirds")

    page = owner.send("/shop/rate", **{"stage.2.trigger": "before the last coat"})

    assert page.form("/shop/rate").value("stage.2.trigger") == "before the last coat"
    assert page.form("/shop/rate").value("stage.3.share") == "33.333333"
    assert "33.3 % before the last coat" in owner.get("/shop/revisions").text


def test_past_jobs_teach_the_reserve(owner):
    owner.get("/shop/rate")

    page = owner.send("/shop/rate", ratios="1.02, 0.95, 1,10; 1.22\n0.98, 1.15, 1.30")

    # worked dresser A: the factors of these seven jobs
    assert "1.10" in page.text
    assert "1.21" in page.text
    assert "1.27" in page.text
    assert "learned from 7 jobs" in page.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("ratios", "1.1, twelve", "“twelve” is not a ratio"),
        ("profit", "100", "100 % is outside 0 to 99 %"),
        ("weeks", "forty", "Write a number such as 48"),
        ("minimum", "a lot", "Write an amount such as 1,250.00"),
        ("rounding", "0", "is too small: more than 0"),
        ("cost.2.name", "", "Say what this cost is for"),
        ("cost.2.name", "maker's pay", "stands here twice"),
    ],
)
def test_each_fault_stands_beside_its_field_with_what_was_typed(owner, name, typed, words):
    owner.get("/shop/rate")

    page = owner.send("/shop/rate", status=422, **{name: typed})

    assert words in page.text
    assert page.form("/shop/rate").value(name) == typed
    assert f'id="{name.replace(".", "-")}-fault"' in page.html


@pytest.mark.parametrize("typed", ["200", "2,000"])
def test_a_shop_of_several_enters_the_hours_of_everyone_together(owner, typed):
    owner.get("/shop/rate")

    page = owner.send("/shop/rate", hours_per_week=typed)

    assert page.form("/shop/rate").value("hours_per_week") == typed.replace(",", "")
    assert page.address == "/shop/rate?said=saved"


def test_more_hours_than_a_week_of_any_shop_has_are_refused(owner):
    owner.get("/shop/rate")

    page = owner.send("/shop/rate", status=422, hours_per_week="2001")

    assert "2001 is outside 1 to 2000" in page.text


def test_an_emptied_field_goes_back_to_the_usual_figure(owner):
    owner.get("/shop/rate")
    owner.send("/shop/rate", markup="35")

    page = owner.send("/shop/rate", markup="")

    assert page.form("/shop/rate").value("markup") == "20"


def test_of_two_owners_the_second_sees_both_figures(shop, owner):
    other: Visitor = shop.visitor()
    owner.get("/shop/rate")
    other.get("/shop/rate")
    other.send("/shop/rate", profit="15", weeks="46")

    page = owner.send("/shop/rate", status=409, profit="12")

    assert "Theirs: 15" in page.text
    assert page.form("/shop/rate").value("profit") == "12"
    assert page.form("/shop/rate").value("weeks") == "46"
    page = owner.send("/shop/rate")
    assert page.form("/shop/rate").value("profit") == "12"
    assert page.form("/shop/rate").value("weeks") == "46"


def test_a_form_that_changes_nothing_makes_no_revision(owner):
    before = owner.get("/shop/rate").form("/shop/rate").value("revision")

    page = owner.send("/shop/rate")

    assert page.form("/shop/rate").value("revision") == before


def test_a_usual_plan_says_its_stages_in_whole_per_cent(owner):
    page = owner.get("/shop/rate")

    assert "Halves: 50 %, 50 %" in page.text
    assert "Four stages: 10 %, 40 %, 25 %, 25 %" in page.text
