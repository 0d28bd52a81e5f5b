"""The editor of a unit: what is typed is kept, worked out and saved, and refused in plain words."""

import pytest

from casewright.measure.lengths import parse_length
from casewright.records.people import Role
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from pages.visitor import without_marks
from people import new_shop

LIVE = {"hx-request": "true", "x-block": "result"}


@pytest.fixture
def job(shop):
    """A job of a shop with the figures that priced worked dresser A."""
    use_figures(shop, EXAMPLE_FIGURES)
    return new_job(shop)


@pytest.fixture
def unit(shop, job):
    """Worked dresser A; its address."""
    return f"/units/{new_unit(shop, job)}"


def test_the_editor_shows_the_saved_unit_with_its_price(maker, unit):
    page = maker.get(unit)

    assert page.form(unit).value("body.width") == "39-1/2"
    assert page.form(unit).value("rows.1.columns") == "2"
    assert "$16,150.00" in page.text
    assert "$17,119.00" in page.text


@pytest.mark.one_database
def test_worked_dresser_a_typed_into_the_form_of_another_unit_has_its_price(maker, job):
    maker.get(f"/jobs/{job}/units/new")
    typed = {
        "body.width": "3' 3-1/2\"",
        "body.depth": "19 3/4",
        "body.height_as": "opening_total",
        "body.height": "35 in",
        "drawers.front": "13/16",
        "drawers.side": "0.5",
        "drawers.lap": "3/16",
        "drawers.rabbet": "1/16",
    }

    page = maker.post(f"/jobs/{job}/units", start="dresser")
    address = page.address.partition("?")[0]
    saved = maker.post(address, **filled(page, address, typed))

    assert "Saved." in saved.text
    assert "$16,150.00" in saved.text
    assert "$17,119.00" in saved.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    "notation",
    [
        "39 13/16",
        "39-13/16",
        '39-13/16"',
        "3' 3-13/16\"",
        "3'3 13/16\"",
        "3′ 3 13⁄16″",
        "3ft 3in",
        "3 ft",
        "39.8125",
        "39 in",
        "39 5/8 in",
        "39⅝",
        "39 ¾",
        "39½",
        "1011.2 mm",
        "101.1cm",
        "1000 mm",
        "39",
        "40.0",
        "3' 4\"",
    ],
)
def test_a_size_is_taken_in_every_notation_and_kept_to_the_tick(maker, unit, notation):
    page = maker.get(unit)
    meant = float(parse_length(notation))

    saved = maker.post(unit, **filled(page, unit, {"body.width": notation}))

    kept = saved.form(unit).value("body.width")
    assert float(parse_length(kept)) == pytest.approx(meant, abs=1 / 32512)  # half a tick of 1/640 mm
    assert "Saved." in saved.text


@pytest.mark.one_database
def test_a_typed_size_is_echoed_in_inches_and_millimetres(maker, unit):
    page = maker.get(unit)

    worked = maker.post(f"{unit}/working", **filled(page, unit, {"body.depth": "1' 3-5/8\""}))

    assert worked.form(unit).value("body.depth") == "1' 3-5/8\""
    assert "= 15-5/8 in = 396.9 mm" in worked.text


@pytest.mark.one_database
def test_a_size_that_no_rule_shows_is_echoed_with_one_sign(maker, unit):
    page = maker.get(unit)

    worked = maker.post(f"{unit}/working", **filled(page, unit, {"body.width": "1384 mm"}))

    assert "1384 mm ≈ 54-31/64 in" in worked.text
    assert "= ≈" not in worked.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("body.width", "39 1/0", "nothing can be divided by 0"),
        ("body.width", "", "This is missing; for example “39-1/2”."),
        ("body.depth", "wide", "“wide” is not a size. Write it as 7-13/32, 7.4 or 188 mm."),
        ("body.height", "", "This is missing; write a height, such as 44-3/8."),
        ("rows.2.columns", "two", "“two” is not a whole number; for example 2."),
        ("rows.2.widths", "12; x", "“x” is not a size"),
        ("rows.1.widths", "12", "there are 2 drawers but widths for 1; give one for each, or none"),
        ("rows.3.height", "-4", "no size is less than nothing"),
        ("graduation.step", "a bit", "“a bit” is not a size"),
        ("drawers.front_joint.slope", "1", "1 is too small: more than 1; for example 8."),
        ("season.shop.moisture", "90", "90 is too large: at most 25; for example 8.5."),
        ("woods.case.wood", "chery", "did you mean cherry"),
        ("finish.show_coats", "400", "400 is too large: at most 20; for example 4."),
        ("measured", "R9-9 height 5", "there is no such opening"),
        ("count", "0", "0 is too small: at least 1; for example 1."),
        ("name", "", "This is missing"),
    ],
)
def test_what_cannot_be_used_is_refused_beside_its_field_and_kept(maker, unit, field, typed, sentence):
    page = maker.get(unit)

    refused = maker.post(
        unit, status=422, **filled(page, unit, {field: typed, "body.height_as": "opening_total"})
    )

    beside = refused.html.partition(f'id="{field.replace(".", "-")}-said">')[2].partition("</p>")[0]
    assert sentence.lower() in _plain(beside).lower()
    assert refused.form(unit).value(field) == typed
    assert refused.seen.title.startswith("Error: ")
    assert f'href="#{field.replace(".", "-")}"' in refused.html
    assert "Not worked out with what is typed now" in refused.text
    assert "$16,150.00" in refused.text


@pytest.mark.one_database
def test_air_that_is_given_by_halves_is_refused_where_its_group_begins(maker, unit):
    page = maker.get(unit)
    typed = {"season.shop.moisture": "", "season.shop.humidity": "45"}

    refused = maker.post(unit, status=422, **filled(page, unit, typed))

    assert "humidity with one of °F and °C" in refused.text
    assert 'href="#season-shop-moisture"' in refused.html
    assert '<details class="sheet choices" id="group-season" open>' in refused.html


def _plain(html: str) -> str:
    return html.replace("&#34;", '"').replace("&#39;", "'")


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("typed", "place", "words"),
    [
        ({"rows.1.height": "40"}, "all", "leave the others nothing"),
        ({"rows.1.columns": "12", "body.width": "8"}, "rows-1-widths", "use fewer columns"),
        ({"rows.1.widths": "14; 14; 14", "rows.1.columns": ""}, "rows-1-widths", "The widths of row 1"),
        ({"graduation.rule": "contents"}, "rows-1-contents", "add contents, such as 4-1/2"),
        ({"graduation.step": "8"}, "all", "use a smaller step"),
        ({"rows.3.widths": "0.00001; rest"}, "rows-3-widths", "is too small: more than 0"),
    ],
)
def test_what_cannot_be_built_is_refused_in_the_core_s_own_words(maker, unit, typed, place, words):
    page = maker.get(unit)

    refused = maker.post(unit, status=422, **filled(page, unit, typed))

    assert f'href="#{place}"' in refused.html
    assert words in refused.text


def of_drawers(rows: int, columns: int, **changed: str) -> dict[str, str]:
    """What is typed for a large unit: so many rows of so many drawers, in a case that has room for them."""
    each = {f"rows.{number}.columns": str(columns) for number in range(1, rows + 1)}
    size = {"body.width": "170", "body.height_as": "overall_height", "body.height": "220"}
    return size | {"graduation.rule": "equal"} | each | changed


TOO_MANY = "one unit has at most 150. Make two units of it, each with some of the drawers."


@pytest.mark.one_database
@pytest.mark.parametrize("address", ["", "/working", "/options"])
def test_more_drawers_than_a_unit_may_have_are_refused_beside_the_row_that_is_too_many(maker, unit, address):
    page = maker.get(unit)
    typed = of_drawers(30, 12, name="A wall of drawers")

    refused = maker.post(f"{unit}{address}", status=422, **filled(page, unit, typed))

    beside = refused.html.partition('id="rows-13-columns-said">')[2].partition("</p>")[0]
    assert f"The rows together ask for 360 drawers; {TOO_MANY}" in beside
    assert 'href="#rows-13-columns"' in refused.html
    assert refused.form(unit).value("rows.30.columns") == "12"
    assert refused.form(unit).value("name") == "A wall of drawers"
    assert maker.get(unit).form(unit).value("name").startswith("Worked dresser A")


@pytest.mark.one_database
def test_the_live_answer_says_as_well_that_there_are_too_many_drawers(maker, unit):
    page = maker.get(unit)

    answer = maker.browser.post(f"{unit}/working", data=filled(page, unit, of_drawers(30, 12)), headers=LIVE)

    assert answer.status_code == 422
    beside = answer.text.partition('data-of="rows-13-columns"')[2].partition("</p>")[0]
    assert f"The rows together ask for 360 drawers; {TOO_MANY}" in beside
    assert "<svg" not in answer.text


@pytest.mark.one_database
def test_drawers_that_only_their_widths_count_are_counted_too(maker, unit):
    page = maker.get(unit)
    typed = {"rows.2.columns": "", "rows.2.widths": "; ".join(["rest"] * 151)}

    refused = maker.post(unit, status=422, **filled(page, unit, typed))

    beside = refused.html.partition('id="rows-2-columns-said">')[2].partition("</p>")[0]
    assert TOO_MANY in beside


@pytest.mark.one_database
def test_as_many_drawers_as_a_unit_may_have_are_worked_out_and_one_more_is_not(maker, unit):
    page = maker.get(unit)
    most = of_drawers(15, 10)

    worked = maker.post(f"{unit}/working", **filled(page, unit, most))
    refused = maker.post(f"{unit}/working", status=422, **filled(page, unit, most | {"rows.1.columns": "11"}))

    assert "Worked out, not saved." in worked.text
    assert f"The rows together ask for 151 drawers; {TOO_MANY}" in refused.text


@pytest.mark.one_database
def test_a_live_answer_is_what_comes_out_and_nothing_else_and_saves_nothing(shop, maker, unit):
    page = maker.get(unit)

    answer = maker.browser.post(
        f"{unit}/working", data=filled(page, unit, {"body.width": "45-1/2"}), headers=LIVE
    )

    assert answer.status_code == 200
    assert "<html" not in answer.text
    assert "<form" not in answer.text
    assert "Worked out, not saved." in answer.text
    assert "45-1/2 in = 1155.7 mm" in without_marks(answer.text)
    assert "$16,150.00" not in answer.text
    assert maker.get(unit).form(unit).value("body.width") == "39-1/2"


@pytest.mark.one_database
def test_a_live_answer_to_a_slip_leaves_drawing_and_price_as_they_are(maker, unit):
    page = maker.get(unit)

    answer = maker.browser.post(f"{unit}/working", data=filled(page, unit, {"body.width": "x"}), headers=LIVE)

    assert answer.status_code == 422
    assert "is not a size" in answer.text
    assert "<svg" not in answer.text
    assert "$" not in answer.text


@pytest.mark.one_database
def test_rows_are_added_moved_and_removed_and_keep_all_that_was_typed(maker, unit):
    page = maker.get(unit)
    typed = {"rows.2.height": "6-1/4", "rows.3.front_tails": "5", "name": "A tall <dresser>", "note": "wider"}

    added = maker.post(f"{unit}/working", **filled(page, unit, typed | {"do": "row-add"}))
    moved = maker.post(f"{unit}/working", **filled(added, unit, {"do": "row-up-2"}))
    removed = maker.post(f"{unit}/working", **filled(moved, unit, {"do": "row-remove-3"}))

    assert added.form(unit).value("rows.6.columns") == ""
    assert added.form(unit).value("rows.2.height") == "6-1/4"
    assert moved.form(unit).value("rows.1.height") == "6-1/4"
    assert moved.form(unit).value("rows.2.columns") == "2"
    assert "rows.6.columns" not in dict(removed.form(unit).sent())
    assert removed.form(unit).value("name") == "A tall <dresser>"
    assert removed.form(unit).value("note") == "wider"
    assert maker.get(unit).form(unit).value("name").startswith("Worked dresser A")


@pytest.mark.one_database
def test_the_last_row_is_not_removed(maker, job):
    maker.get(f"/jobs/{job}/units/new")
    page = maker.post(f"/jobs/{job}/units", start="bedside")
    unit = page.address.partition("?")[0]

    after = maker.post(f"{unit}/working", **filled(page, unit, {"do": "row-remove-1"}))

    assert "rows.1.columns" in dict(after.form(unit).sent())


@pytest.mark.one_database
def test_the_form_is_written_in_the_other_unit_without_changing_a_size(maker, unit):
    page = maker.get(unit)

    metric = maker.post(f"{unit}/working", **filled(page, unit, {"do": "unit-mm"}))
    saved = maker.post(unit, **filled(metric, unit, {}))

    assert metric.form(unit).value("body.width") == "1003.3"
    assert metric.form(unit).value("drawers.front") == "13/16 in"
    assert saved.form(unit).value("body.width") == "1003.3"
    assert "$16,150.00" in saved.text
    assert "Such as 39-1/2." in page.text
    assert "Such as 1005." in metric.text
    assert "Such as 39-1/2." not in metric.text


def test_saving_what_is_there_already_makes_no_revision(maker, unit):
    page = maker.get(unit)

    saved = maker.post(unit, **filled(page, unit, {}))

    assert "Revision 1" in saved.text


def test_a_double_press_on_save_keeps_one_revision_and_says_saved(maker, unit):
    page = maker.get(unit)
    typed = filled(page, unit, {"body.width": "41"})

    maker.post(unit, **typed)
    second = maker.post(unit, **typed)

    assert "Saved." in second.text
    assert "Revision 2" in second.text
    assert second.form(unit).value("body.width") == "41"


def test_of_two_who_save_at_once_the_second_sees_both_values_by_field(shop, maker, unit):
    owner = shop.visitor(Role.OWNER)
    mine, theirs = owner.get(unit), maker.get(unit)
    maker.post(unit, **filled(theirs, unit, {"body.width": "41", "rows.2.height": "6"}))

    page = owner.post(unit, status=409, **filled(mine, unit, {"body.depth": "20-1/2"}))

    assert page.form(unit).value("body.depth") == "20-1/2"
    assert page.form(unit).value("body.width") == "39-1/2"
    assert "Theirs: 41" in page.text
    assert "Theirs: 19-3/4" in page.text
    assert "Theirs: 6" in page.text
    again = owner.post(unit, **filled(page, unit, {}))
    assert "Revision 3" in again.text
    assert again.form(unit).value("body.width") == "39-1/2"


def test_an_approved_unit_asks_why_it_changes(maker, unit):
    maker.post(f"{unit}/approval", number="1")
    page = maker.get(unit)

    refused = maker.post(unit, status=422, **filled(page, unit, {"body.depth": "20"}))
    saved = maker.post(unit, **filled(refused, unit, {"note": "The hall is narrower."}))

    assert "Revision 1 is approved." in page.text
    assert "Say why this one differs" in refused.text
    assert refused.form(unit).value("body.depth") == "20"
    assert "revision 1 approved" in saved.text
    assert "The hall is narrower." in maker.get(f"{unit}/revisions").text


def test_a_unit_of_another_shop_is_not_found(shop, app, books, clock, unit):
    other = new_shop(app, books, clock).visitor(Role.OWNER)

    other.get(unit, status=404)
    other.get(f"{unit}/price", status=404)
    other.post(f"{unit}/working", status=404)
