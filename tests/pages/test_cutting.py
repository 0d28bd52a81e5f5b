"""A job's parts laid out on boards, the cuts ticked off, a part put by hand, the layout printed."""

import time

import pytest

from casewright.records.people import Role
from pages.stock_room import accepted
from people import Clock, new_shop
from printed import text_of

pytestmark = pytest.mark.one_database

BOARDS = {
    f"more__{row}__{name}": value
    for row, wood in enumerate(("cherry|4/4", "poplar|4/4", "soft maple|4/4"))
    for name, value in (("wood", wood), ("length", "120"), ("width", "9-1/2"), ("count", "40"))
}
PATIENCE = 400  # seconds; the first layout on a machine waits for the compiler


def lay_out(maker, job_id, **fields):
    """The page of a layout of the job, once it is there."""
    maker.get(f"/jobs/{job_id}/cutting")
    page = maker.send(f"/jobs/{job_id}/cutting", seconds="1", **{**BOARDS, **fields})
    return waited(maker, page.address)


def waited(maker, address):
    """The page of a layout that is asked for, when nobody works on it any more."""
    ends = time.monotonic() + PATIENCE
    while time.monotonic() < ends:
        page = maker.get(address)
        if "hx-trigger" not in page.html:
            return page
        time.sleep(0.2)
    raise AssertionError(f"no layout after {PATIENCE} s: {page.text}")


@pytest.fixture(scope="module")
def laid(app, books, clock):
    """A shop with a job that is laid out, its maker, the job and the layout: made once, for it takes long."""
    clock.now = Clock().now
    shop = new_shop(app, books, clock)
    maker = shop.visitor(Role.MAKER)
    job = accepted(shop)
    return shop, maker, job.job_id, lay_out(maker, job.job_id).address


def test_parts_are_laid_out_on_boards_that_are_typed(laid):
    _, maker, _, address = laid

    page = maker.get(address)

    assert "poplar 4/4 Becomes parts" in page.text
    assert "Kerf, trim and what is left" in page.text
    assert "Left and worth keeping" in page.text
    assert page.html.count('class="drawing"') > 2


def test_what_has_no_board_is_named_with_its_reason(laid):
    _, maker, _, address = laid

    page = maker.get(address)

    assert "no board of cherry 5/4 is in the stock" in page.text, "no 5/4 was typed"
    assert "Get one more board of cherry 5/4" in page.text


def test_a_cut_is_ticked_off_at_the_bench_and_taken_back(laid):
    shop, _, _, address = laid
    bench = shop.visitor(Role.BENCH)
    path = address.partition("?")[0]
    first = bench.get(path).form(f"{path}/cuts")
    cut = {name: first.value(name) for name in ("board", "step")}

    made = bench.post(f"{path}/cuts", **cut, done="1", once="a tap")
    again = bench.post(f"{path}/cuts", **cut, done="1", once="a tap")
    back = bench.post(f"{path}/cuts", **cut, done="0", once="another tap")

    assert made.html.count('aria-pressed="true"') == 1
    assert again.html.count('aria-pressed="true"') == 1
    assert back.html.count('aria-pressed="true"') == 0


@pytest.mark.parametrize("step", ["999", "-1", "1e3", ""])
def test_a_cut_that_is_not_there_is_refused(laid, step):
    _, maker, _, address = laid
    path = address.partition("?")[0]

    page = maker.post(
        f"{path}/cuts", status=404 if step == "999" else 422, board="N1 no. 1", step=step, done="1"
    )

    assert "cut" in page.text


def test_the_bench_sees_no_money_and_places_nothing(laid):
    shop, _, _, address = laid

    page = shop.visitor(Role.BENCH).get(address)

    assert "Put a part by hand" not in page.text
    assert "Wood consumed" not in page.text


def test_the_chalk_out_sheet_has_each_board_and_its_cautions(laid):
    _, maker, _, address = laid

    printed = maker.browser.get(address.partition("?")[0] + "/chalk-out.pdf").content
    said = text_of(printed)

    assert "N1" in said
    assert "Left and worth keeping" in said
    assert "push sticks" in said


def test_a_part_put_by_hand_stays_where_it_was_put(laid):
    _, maker, _, address = laid
    path = address.partition("?")[0]
    on_poplar = maker.get(path).html.partition('data-board="N2 no. 1"')[2]
    part = on_poplar.partition('data-code="')[2].partition('"')[0]
    typed = {"part": part, "board": "N2 no. 7", "from_end": "20", "from_edge": "1/2"}

    page = waited(maker, maker.send(f"{path}/by-hand", **typed).address)

    assert f"{part} on N2 no. 7, 20 in from its first end and 1/2 in from its near edge" in page.text
    assert "could not be put there" not in page.text


def test_a_part_put_beyond_its_board_is_refused_beside_the_field(laid):
    _, maker, _, address = laid
    path = address.partition("?")[0]
    maker.get(path)

    page = maker.send(f"{path}/by-hand", status=422, board="N1 no. 1", from_end="a yard", from_edge="1/2")

    assert page.form(f"{path}/by-hand").value("from_end") == "a yard"
    assert "a yard" in page.text


def test_nothing_chosen_to_cut_from_is_refused_and_what_was_typed_stays(shop, maker):
    job = accepted(shop)
    maker.get(f"/jobs/{job.job_id}/cutting")

    page = maker.send(f"/jobs/{job.job_id}/cutting", status=422, seconds="7")

    assert "Choose what to cut from" in page.text
    assert page.form(f"/jobs/{job.job_id}/cutting").value("seconds") == "7"


@pytest.mark.parametrize("seconds", ["0", "61", "soon"])
def test_a_time_beyond_the_limits_is_refused(shop, maker, seconds):
    job = accepted(shop)
    maker.get(f"/jobs/{job.job_id}/cutting")

    page = maker.send(f"/jobs/{job.job_id}/cutting", status=422, **{**BOARDS, "seconds": seconds})

    assert "Seconds" in page.text


def test_a_layout_of_another_shop_is_not_there(laid, maker):
    _, _, _, address = laid

    assert "no such layout" in maker.get(address, status=404).text
