"""The table of slides: what a maker's sheet says of each, typed, refused beside its field, and kept."""

import pytest

from pages.commissions import change_figures

ADDRESS = "/shop/slides"
FIGURES = "/shop/figures.json"


def values(page, row):
    """What stands in the fields of one slide."""
    start = f"slide.{row}."
    return {
        name.removeprefix(start): text for name, text in page.form(ADDRESS).sent() if name.startswith(start)
    }


NEW = {
    "slide.4.name": "drawer runner 45",
    "slide.4.kind": "side-mount",
    "slide.4.space_least": "12.8 mm",
    "slide.4.space_most": "13.1 mm",
    "slide.4.lengths": "450 mm; 400 mm",
    "slide.4.behind": "3 mm",
    "slide.4.travel": "110 %",
    "slide.4.load_lb": "90",
    "slide.4.headroom": "20 mm",
    "slide.4.under": "6 mm",
    "slide.4.tall": "45 mm",
    "slide.4.weight_lb": "1.5",
    "slide.4.item": "slides",
    "slide.4.source": "sheet 12, May",
}


def test_a_shop_without_a_table_sees_general_slides_and_that_the_makers_sheet_governs(owner):
    page = owner.get(ADDRESS)

    first = values(page, 1)
    assert (first["space_least"], first["space_most"], first["travel"]) == ("12.9 mm", "13.2 mm", "100 %")
    assert values(page, 3)["deduction"] == "42 mm"
    assert "the maker’s sheet governs" in page.text
    assert "published figure" in page.text
    assert "from memory" in page.text


def test_a_slide_of_the_shops_own_is_added_and_the_others_keep_their_ground(owner):
    owner.get(ADDRESS)

    page = owner.send(ADDRESS, **NEW)

    of_under_mounts = ("deduction", "side_most", "recess", "notch_width", "notch_height")
    left_out = ("lengths", *of_under_mounts, "pin_hole", "pin_in", "pin_up")
    assert values(page, 4) | {"lengths": ""} == {
        name.removeprefix("slide.4."): text for name, text in NEW.items()
    } | dict.fromkeys(left_out, "")
    assert values(page, 4)["lengths"] == "400 mm; 450 mm"
    kept = owner.browser.get(FIGURES).json()["slides"]
    assert [each["name"] for each in kept][-1] == "drawer runner 45"
    assert [each.get("basis", "") for each in kept] == [
        "published figure",
        "published figure",
        "from memory",
        "",
    ]
    assert kept[-1]["travel"] == 1.1


def test_what_is_shown_and_sent_back_changes_nothing(owner):
    owner.get(ADDRESS)

    owner.send(ADDRESS)

    assert "slides" not in owner.browser.get(FIGURES).json()


def test_a_metric_shop_writes_bare_millimetres(owner):
    owner.get("/shop")
    owner.send("/shop", unit="mm")
    owner.get(ADDRESS)

    page = owner.send(ADDRESS, **{"slide.1.space_most": "13,4", "slide.1.lengths": "400; 450"})

    assert values(page, 1)["space_most"] == "13.4"
    assert owner.browser.get(FIGURES).json()["slides"][0]["space_most"] == "13.4 mm"


def test_an_emptied_table_is_the_general_one_again(shop, owner):
    owner.get(ADDRESS)
    owner.send(ADDRESS, **{"slide.2.out": "1", "slide.3.out": "1"})
    assert [each["name"] for each in owner.browser.get(FIGURES).json()["slides"]] == [
        "side-mount, full travel"
    ]
    owner.get(ADDRESS)

    page = owner.send(ADDRESS, **{"slide.1.out": "1"})

    assert values(page, 3)["name"] == "under-mount, full travel"
    assert "slides" not in owner.browser.get(FIGURES).json()


@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("slide.1.space_least", "wide", "“wide” is not a size"),
        ("slide.1.space_least", "", "Write the least side space of the sheet, such as 12.9 mm."),
        ("slide.1.space_least", "14 mm", "The least side space is more than the most"),
        ("slide.1.travel", "500 %", "outside 10 to 120 %"),
        ("slide.1.travel", "far", "“far” is not a size"),
        ("slide.1.lengths", "16; long", "“long” is not a size"),
        ("slide.1.load_lb", "much", "Write a number such as 100"),
        ("slide.2.name", "Side-mount, full travel", "two slides are called"),
        ("slide.3.deduction", "", "an under-mount slide needs its deduction"),
        ("slide.1.under", "2", "What lies under the box is part of the headroom"),
        ("slide.4.tall", "1", "Say what you call it"),
    ],
)
def test_what_cannot_be_is_refused_beside_its_field_and_kept(owner, name, typed, words):
    owner.get(ADDRESS)

    page = owner.send(ADDRESS, status=422, **{name: typed})

    assert words.casefold() in page.text.casefold()
    assert page.form(ADDRESS).value(name) == typed


def test_the_table_of_a_shop_file_stands_on_the_page(shop, owner):
    change_figures(
        shop,
        slides=[
            {
                "name": "shelf slide",
                "kind": "side-mount",
                "space_least": "1/2",
                "space_most": "17/32",
                "lengths": ["14"],
                "behind": "1/8",
                "travel_length": "10",
                "load_lb": 40,
                "headroom": "1/2",
                "under": "1/8",
                "tall": "1",
                "weight_lb": 1,
                "item": "slides",
            }
        ],
    )

    page = owner.get(ADDRESS)

    assert (values(page, 1)["name"], values(page, 1)["travel"]) == ("shelf slide", "10")
    assert "your own" in page.text
