"""The rack: chisels, cutters and saws line by line, gauges, and the shop's usual numbers in joints."""

import pytest

from pages.commissions import change_figures, commission
from pages.test_papers import issue

pytestmark = pytest.mark.one_database

ADDRESS = "/shop/rack"


def widths(page, group):
    """What stands in a list of widths, in the order of its lines."""
    return [
        value
        for name, value in page.form(ADDRESS).sent()
        if name.startswith(f"{group}.") and name.endswith(".width") and value
    ]


def emptied(page, group, column):
    """The fields of a list, emptied."""
    fields = [name for name, _ in page.form(ADDRESS).sent()]
    return {name: "" for name in fields if name.startswith(f"{group}.") and name.endswith(f".{column}")}


def test_a_shop_without_figures_sees_the_usual_rack_with_its_grounds(owner):
    page = owner.get(ADDRESS)

    assert widths(page, "cutter") == ["1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4"]
    assert page.form(ADDRESS).value("saw.1.name") == "dovetail saw"
    assert page.form(ADDRESS).value("gauges") == "4"
    assert "a bench set of chisels" in page.text
    assert "House: 1/8 in." in page.text
    assert page.form(ADDRESS).value("usual_pin") == ""


def test_a_line_is_added_changed_and_taken_out_in_any_notation(owner):
    owner.get(ADDRESS)

    page = owner.send(
        ADDRESS, **{"cutter.1.width": "6 mm", "cutter.2.out": "1", "cutter.9.width": "1 1/4", "gauges": "2"}
    )

    assert widths(page, "cutter") == ["6 mm", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "1-1/4"]
    assert page.form(ADDRESS).value("gauges") == "2"
    assert page.seen.headings[0] == "Rack"


def test_a_metric_shop_writes_bare_millimetres(owner):
    owner.get("/shop")
    owner.send("/shop", unit="mm")
    page = owner.get(ADDRESS)

    page = owner.send(
        ADDRESS,
        **emptied(page, "chisel", "width")
        | {"chisel.2.width": "12,5", "chisel.1.width": "6", "saw.2.kerf": "0,4"},
    )

    assert widths(page, "chisel") == ["6", "12.5"]
    assert page.form(ADDRESS).value("saw.2.kerf") == "0.4"


def test_an_emptied_list_is_the_usual_one_again(owner):
    before = owner.get(ADDRESS)
    usual = widths(before, "chisel")
    owner.send(ADDRESS, **{"chisel.1.out": "1", "saw.1.kerf": "0.02"})
    page = owner.get(ADDRESS)

    page = owner.send(
        ADDRESS,
        **emptied(page, "chisel", "width"),
        **emptied(page, "saw", "name"),
        **emptied(page, "saw", "kerf"),
    )

    assert widths(page, "chisel") == usual
    assert page.form(ADDRESS).value("saw.1.kerf") == "1/32"


def test_the_kerf_of_an_old_file_stands_in_the_list_and_goes_with_it(shop, owner):
    change_figures(shop, saw_kerf="0.6 mm", chisels=["1/4"])

    page = owner.get(ADDRESS)
    assert (page.form(ADDRESS).value("saw.1.kerf"), widths(page, "chisel")) == ("0.6 mm", ["1/4"])
    page = owner.send(ADDRESS, **{"saw.1.name": "my saw"})

    assert page.form(ADDRESS).value("saw.1.name") == "my saw"
    assert page.form(ADDRESS).value("saw.1.kerf") == "0.6 mm"
    assert "saw_kerf" not in owner.browser.get("/shop/figures.json").json()


def test_usual_numbers_are_kept_and_given_back_to_the_house(owner):
    owner.get(ADDRESS)

    page = owner.send(
        ADDRESS, usual_pin="3/16", usual_slope_hardwood="1:7", looks_family_free="15", looks_width_weight="30"
    )

    form = page.form(ADDRESS)
    shown = [form.value(f"{name}") for name in ("usual_pin", "usual_slope_hardwood", "looks_family_free")]
    assert shown == ["3/16", "1:7", "15"]
    assert owner.browser.get("/shop/figures.json").json()["looks"] == {
        "width_weight": 30,
        "family_free": 0.15,
    }
    page = owner.send(
        ADDRESS, usual_pin="", usual_slope_hardwood="", looks_family_free="", looks_width_weight=""
    )
    assert page.form(ADDRESS).value("usual_pin") == ""
    assert "usual" not in owner.browser.get("/shop/figures.json").json()


@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("chisel.1.width", "wide", "“wide” is not a size"),
        ("cutter.9.width", "1/4", "This cutter stands here twice; take one of the lines out."),
        ("cutter.9.width", "7", "is too large: at most 6"),
        ("saw.1.kerf", "1/2", "is too large: at most 1/4"),
        ("saw.1.kerf", "", "Write how wide it cuts, such as 1/32 or 0.6 mm."),
        ("saw.1.name", "", "Say what you call this saw, such as dovetail saw."),
        ("saw.1.use", "fret", "One saw at least is for cutting tails"),
        ("gauges", "0", "0 is outside 1 to 20."),
        ("dividers", "two", "Write a whole number such as 1."),
        ("usual_pin", "thin", "“thin” is not a size"),
        ("usual_slope_hardwood", "steep", "“steep” is not a slope. Write it as 1:8"),
        ("usual_lap_part", "40", "40 is outside 2 to 12."),
        ("looks_family_free", "110", "110 % is outside 0 to 100 %."),
        ("looks_wide_tail", "0", "is too small: more than 0"),
    ],
)
def test_a_fault_stands_beside_its_field_with_what_was_typed(owner, name, typed, words):
    owner.get(ADDRESS)

    page = owner.send(ADDRESS, status=422, **{name: typed, "saw.2.kerf": "0.015"})

    assert words in page.text
    assert page.form(ADDRESS).value(name) == typed
    assert page.form(ADDRESS).value("saw.2.kerf") == "0.015"
    assert f'id="{name.replace(".", "-")}-fault"' in page.html


def test_two_owners_who_change_the_same_list_see_both(shop, owner):
    other = shop.visitor()
    owner.get(ADDRESS)
    other.get(ADDRESS)
    other.send(ADDRESS, **{"cutter.1.width": "3 mm"})

    page = owner.send(ADDRESS, status=409, **{"cutter.1.width": "4 mm", "gauges": "3"})

    assert "Theirs: 3 mm" in page.text
    assert page.form(ADDRESS).value("cutter.1.width") == "4 mm"
    assert page.form(ADDRESS).value("gauges") == "3"


def test_a_revision_says_what_was_changed_in_the_rack(owner):
    owner.get(ADDRESS)
    owner.send(ADDRESS, **{"saw.1.kerf": "0.5 mm", "usual_half_pin_front": "3/16", "gauges": "1"})

    page = owner.get("/shop/revisions")

    assert "Saw: dovetail saw" in page.text
    assert "Usual in dovetails: half pin front" in page.text
    assert "Marking gauges" in page.text


def test_a_unit_says_how_one_gauge_serves_its_drawers(shop, owner):
    job = commission(shop)
    owner.get(ADDRESS)
    owner.send(ADDRESS, gauges="1")

    page = owner.get(f"/units/{job.unit_ids()[0]}")

    assert "First mark every piece with Gauge 1" in page.text
    # The page of the joints says it below the gauges, by the names that they have there.
    joints = owner.get(f"/units/{job.unit_ids()[0]}/joints").text
    listed = joints[joints.index("Gauges to set") : joints.index("Front, half-blind dovetail")]
    again = listed[listed.index("First mark every piece with Gauge 1") :]
    assert "Back joint, gauge for the sides" in again


def test_joint_cards_say_what_to_set_and_keep_where_gauges_are_few(shop, owner):
    job = commission(shop)
    owner.get(ADDRESS)
    owner.send(ADDRESS, gauges="2", dividers="1")

    page = issue(job, owner, "joint cards")

    assert "A: Set and keep Gauge 1" in page.text
    assert "then set that gauge to" in page.text
    assert "A-R1-1: Set and keep Dividers" in page.text


def test_the_shops_own_pin_is_that_of_the_layouts(shop, owner):
    job = commission(shop)
    owner.get(ADDRESS)
    owner.send(ADDRESS, usual_pin="11/64", usual_pin_in_thin_sides="11/64")

    page = owner.get(f"/units/{job.unit_ids()[0]}/layouts")

    assert 'name="pin" value="" maxlength="40" autocomplete="off" placeholder="11/64' in page.html


@pytest.mark.parametrize(
    ("kind", "typed", "words"),
    [
        (
            "joint cards",
            {"usual_pin": "3/16", "usual_pin_in_thin_sides": "3/16"},
            "figures: usual.",
        ),
        ("joint cards", {"chisel.4.out": "1", "chisel.3.out": "1", "chisel.2.out": "1"}, "figures: chisels."),
        ("cut list", {"usual_lap_part": "3"}, "figures: usual."),
    ],
)
def test_a_paper_that_would_say_something_else_now_is_out_of_date(shop, owner, kind, typed, words):
    job = commission(shop)
    address = issue(job, owner, kind).address
    owner.get(ADDRESS)

    owner.send(ADDRESS, **typed)

    page = owner.get(address)
    assert "Out of date:" in page.text
    assert words in page.text


@pytest.mark.parametrize(
    ("kind", "typed"),
    [
        ("joint cards", {"cutter.9.width": "1-1/4", "gauges": "3"}),
        ("joint cards", {"chisel.12.width": "2"}),
        ("joint cards", {"gauges": "1"}),  # in another order of work, with the same figures
        ("cut list", {"usual_pin": "3/16", "usual_pin_in_thin_sides": "3/16"}),
        ("lumber order", {"chisel.4.out": "1", "looks_width_weight": "60"}),
    ],
)
def test_a_paper_that_would_say_the_same_stays(shop, owner, kind, typed):
    job = commission(shop)
    address = issue(job, owner, kind).address
    owner.get(ADDRESS)

    owner.send(ADDRESS, **typed)

    assert "Out of date" not in owner.get(address).text


def test_all_that_is_wrong_is_said_at_once_and_without_the_marks_of_a_file(owner):
    owner.get(ADDRESS)

    page = owner.send(
        ADDRESS, status=422, **{"chisel.1.width": "0", "saw.1.kerf": "2", "saw.2.name": "", "gauges": "0"}
    )

    assert "0 is too small: more than 0; for example 1/4." in page.text
    assert "2 is too large: at most 1/4" in page.text
    assert "Say what you call this saw" in page.text
    assert "0 is outside 1 to 20." in page.text
