"""Every page of the demo's shop, as its owner, its bench hand, a customer and a newcomer come to see it."""

from collections.abc import Iterator
from contextlib import ExitStack
from dataclasses import dataclass, field

import pytest
from playwright.sync_api import Browser, FloatRect, Page

from browser.by_hand import tap_about, walk_with_tab
from browser.demo_shop import DemoShop, open_demo_shop
from browser.page_looks import Look, Scales, look_at
from browser.places import BEFORE_SET_UP, BENCH_PLACES, BY_KEYBOARD, PLACES, Place
from browser.watching import PHONE, Watch, watched
from serving import Served, from_checkout

OFFICE_BYTES, LIGHT_BYTES, MOST_REQUESTS = 100_000, 60_000, 10


@dataclass
class Eyes:
    """Looks at each page once, in the window of whoever sees it, and remembers what there was to be seen."""

    shop: DemoShop
    windows: dict[str, tuple[Page, Scales, Watch]] = field(default_factory=dict)
    seen: dict[Place, Look] = field(default_factory=dict)

    def look(self, place: Place) -> Look:
        """What there is to be seen at a place."""
        if place not in self.seen:
            page, scales, watch = self.windows[place.who]
            self.seen[place] = look_at(page, scales, watch, lambda page: self.arrive(page, place))
        return self.seen[place]

    def arrive(self, page: Page, place: Place) -> int:
        """Goes to a place in a window; gives the status of the answer."""
        return place.arrive(page, self.shop.address(place.path, place.state))


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A service of these tests' own."""
    with from_checkout(tmp_path_factory.mktemp("demo")) as served:
        yield served


@pytest.fixture(scope="module")
def eyes(chromium: Browser, site: Served) -> Iterator[Eyes]:
    """The demo's shop, and a window for each who looks at it."""
    eyes = Eyes(DemoShop(site))
    with ExitStack() as stack:

        def open_window(who: str) -> None:
            context = chromium.new_context(base_url=site.url, locale="en-US", reduced_motion="reduce")
            stack.callback(context.close)
            if who in eyes.shop.keys:
                context.add_cookies([{"name": "casewright", "value": eyes.shop.keys[who], "url": site.url}])
            watch = stack.enter_context(watched(context, site))
            page = context.new_page()
            eyes.windows[who] = (page, Scales(page), watch)

        open_window("stranger")
        for place in BEFORE_SET_UP:
            eyes.look(place)
        open_demo_shop(chromium, eyes.shop)
        for who in eyes.shop.keys:
            open_window(who)
        yield eyes


each_place = pytest.mark.parametrize("place", PLACES, ids=str)


@each_place
def test_a_page_answers_and_the_browser_has_nothing_to_complain_of(eyes, place):
    look = eyes.look(place)

    assert look.status == place.status
    assert look.watched == []


@each_place
def test_nothing_keeps_people_out_by_day_and_by_night(eyes, place):
    assert eyes.look(place).violations == []


@each_place
def test_no_page_runs_off_sideways_on_a_small_phone_or_with_large_letters(eyes, place):
    assert eyes.look(place).sideways == []


@each_place
def test_no_text_is_cut_off_when_letters_are_large_or_wide_apart(eyes, place):
    assert eyes.look(place).clipped == []


@each_place
def test_no_amount_size_or_code_is_broken_by_the_end_of_a_line(eyes, place):
    assert eyes.look(place).torn == []


@each_place
def test_every_figure_of_a_table_stands_under_the_head_of_its_column(eyes, place):
    assert eyes.look(place).shifted == []


@each_place
def test_a_finger_hits_what_it_is_to_press(eyes, place):
    assert eyes.look(place).fingers == []


@each_place
def test_on_paper_a_page_keeps_its_tables_and_has_nothing_to_be_pressed(eyes, place):
    assert eyes.look(place).paper == []


@pytest.mark.parametrize("place", [place for place in PLACES if not place.typed], ids=str)
def test_a_page_comes_over_a_thin_line(eyes, place):
    look = eyes.look(place)

    assert look.requests <= MOST_REQUESTS
    assert look.weight <= (LIGHT_BYTES if place.is_light else OFFICE_BYTES)


@pytest.mark.parametrize("place", BENCH_PLACES, ids=str)
def test_the_bench_is_read_at_arm_s_length_and_hit_in_gloves(eyes, place):
    look = eyes.look(place)

    assert look.is_bench
    assert look.glove == []


TALL = {820: 1180}
"""A window as wide as a tablet that stands upright is as high as one [px]."""


@pytest.mark.parametrize(("width", "place"), BY_KEYBOARD, ids=str)
def test_tab_comes_to_everything_once_and_shows_where_it_is(eyes, width, place):
    page, _, _ = eyes.windows[place.who]
    page.set_viewport_size({"width": width, "height": TALL.get(width, 800)})

    eyes.arrive(page, place)

    assert walk_with_tab(page) == []


@pytest.mark.parametrize("path", ["/board", "/bench/{drawer_id}"])
def test_twenty_taps_that_miss_the_middle_a_little_all_hit(chromium, site, eyes, path):
    place = next(place for place in BENCH_PLACES if place.path == path)
    context = chromium.new_context(base_url=site.url, reduced_motion="reduce", **PHONE)
    context.add_cookies([{"name": "casewright", "value": eyes.shop.keys["bench"], "url": site.url}])
    page = context.new_page()

    eyes.arrive(page, place)

    assert tap_about(page, taps=20, off=6) == []
    context.close()


def test_a_part_is_dragged_along_its_board_or_moved_by_keys(eyes):
    page, _, _ = eyes.windows["owner"]
    page.set_viewport_size({"width": 1280, "height": 900})
    page.goto(eyes.shop.address("/cutting/{layout_id}", ""))
    page.locator("#by-hand > summary").click()
    part = page.locator(".placing .part").first
    from_end = page.locator("[name=from_end]")
    part.scroll_into_view_if_needed()
    box = part.bounding_box()
    assert box is not None
    middle = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    begun = float(part.get_attribute("data-x") or "")
    inch = box["width"] / float(part.get_attribute("data-length") or "")

    page.mouse.move(*middle)
    page.mouse.down()
    page.mouse.move(middle[0] + 5 * inch, middle[1], steps=4)
    page.mouse.up()
    page.mouse.move(middle[0] + 9 * inch, middle[1])

    dragged = float(part.get_attribute("data-x") or "")
    assert dragged == pytest.approx(begun + 5, abs=1 / 8)
    assert page.locator("[name=part]").input_value() == part.get_attribute("data-code")
    part.press("ArrowLeft")
    assert float(part.get_attribute("data-x") or "") == dragged - 1 / 4
    assert from_end.input_value().startswith(str(int(dragged - 1 / 4)))


def test_the_board_shows_a_drawer_on_the_first_screen_of_a_phone(eyes):
    page, _, _ = eyes.windows["bench"]
    page.set_viewport_size({"width": 390, "height": 844})

    page.goto("/board")

    assert place_of(page, ".of-drawer")["y"] < 844 - 56
    assert place_of(page, "#ask-job")["y"] < place_of(page, "#rows")["y"]
    assert place_of(page, ".columns-of")["height"] < 100


def test_the_board_answers_from_across_the_room(eyes):
    page, _, _ = eyes.windows["bench"]
    page.set_viewport_size({"width": 1280, "height": 800})

    page.goto("/board")

    answer = page.locator(".answer strong")
    assert "Glued up: 11 of 31" in answer.inner_text()  # 15 in the demo; a change has put four back
    assert float(answer.evaluate("each => getComputedStyle(each).fontSize").removesuffix("px")) >= 44
    assert place_of(page, ".answer")["y"] < 200
    assert place_of(page, ".of-drawer")["y"] < 600


@pytest.mark.parametrize("path", ["/shop/people", "/shop/demo", "/units/{unit_id}/revisions"])
def test_all_rooms_of_a_page_are_in_view_on_a_phone(eyes, path):
    page, _, _ = eyes.windows["owner"]
    page.set_viewport_size({"width": 390, "height": 844})

    page.goto(eyes.shop.address(path, ""))

    for tab in page.locator("nav.tabs a").all():
        place = tab.bounding_box()
        assert place
        assert 0 <= place["x"] < place["x"] + place["width"] <= 390


def place_of(page: Page, selector: str) -> FloatRect:
    """Where the first of something stands on a page."""
    place = page.locator(selector).first.bounding_box()
    assert place
    return place


def test_no_link_of_the_shop_leads_nowhere(eyes):
    assert eyes.shop.dead == []
