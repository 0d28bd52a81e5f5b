"""Boards of a layout are cut: they leave the rack, and what is left of them comes on it, once."""

import re

import pytest
from sqlalchemy import select

from casewright.measure.lengths import from_ticks
from casewright.records.jobs import Job
from casewright.records.people import Role
from casewright.records.sessions import reading, writing
from casewright.records.stock import PieceKind, PieceState, StockPiece
from casewright.shop.jobs import load_job
from casewright.shop.stock import PieceFacts, label, move_piece
from pages.laid_out import PART, a_board, laid_out
from pages.stock_room import accepted
from printed import text_of


def the_piece(shop, piece_id):
    with reading(shop.engine, shop.shop_id) as db:
        return db.get_one(StockPiece, (shop.shop_id, piece_id))


def offcuts(shop):
    """The offcuts on the shop's rack, in the order of their labels."""
    with reading(shop.engine, shop.shop_id) as db:
        asked = select(StockPiece).where(StockPiece.kind == PieceKind.OFFCUT).order_by(StockPiece.number)
        return db.scalars(asked).all()


@pytest.fixture
def cut(shop):
    """A job whose one part is laid out on one board of the rack: the job, the board, the layout's address."""
    job = accepted(shop)
    board = a_board(shop)
    return job.job_id, board, laid_out(shop, job.job_id, board)


def test_a_board_that_is_cut_leaves_the_rack_and_what_is_left_of_it_comes_there(shop, maker, cut):
    job_id, board, address = cut
    maker.get(f"{address}/put-away")

    page = maker.send(f"{address}/put-away")

    held, [left] = the_piece(shop, board), offcuts(shop)
    assert (held.state, held.for_job) == (PieceState.USED, job_id)
    assert (left.state, left.material, left.size, left.from_id) == (PieceState.STOCK, "cherry", "4/4", board)
    assert f"B1 {label(left)}" in page.text
    assert page.address.partition("?")[0] == address


def test_an_offcut_has_its_share_of_the_cost_and_what_is_known_of_its_board(shop, maker, cut):
    # One part 40 in long from 96 in: 1 in off each end (the cut file's usual trim), 1/8 in of kerf; the piece
    # is as wide as the board less 1/4 in off each edge. Worth: its share by area of $32.00.
    _, _, address = cut
    maker.get(f"{address}/put-away")

    maker.send(f"{address}/put-away")

    [left] = offcuts(shop)
    length, width = from_ticks(left.length_ticks), from_ticks(left.width_ticks)
    [knot] = left.defects
    assert (length, width) == (96 - 2 - 40 - 0.125, 7.5)
    assert left.cost_cents == round(3200 * length * width / (96 * 8))
    assert (left.moisture, left.log_mark, left.place, left.sap_edge) == (7.5, "7", "rack 2", "lower")
    assert from_ticks(knot["from_left"]) == pytest.approx(80 - (1 + 40 + 0.125))
    assert from_ticks(knot["from_edge"]) == pytest.approx(1 - 0.25)


def test_sizes_are_corrected_and_what_is_not_kept_is_left_out(shop, maker):
    job, one, two = accepted(shop), a_board(shop), a_board(shop)
    address = laid_out(shop, job.job_id, one, two, parts=({**PART, "length": "60", "count": 2},))
    maker.get(f"{address}/put-away")

    maker.send(
        f"{address}/put-away",
        left__0__0__length="30-1/2",
        left__0__0__width="7-3/8",
        left__0__0__place="short rack",
        left__1__0__kept="",
    )

    [left] = offcuts(shop)
    assert (from_ticks(left.length_ticks), from_ticks(left.width_ticks)) == (30.5, 7.375)
    assert left.place == "short rack"
    assert {the_piece(shop, each).state for each in (one, two)} == {PieceState.USED}


def test_a_board_that_is_not_cut_yet_stays_and_is_put_away_later(shop, maker):
    job, one, two = accepted(shop), a_board(shop), a_board(shop)
    address = laid_out(shop, job.job_id, one, two, parts=({**PART, "length": "60", "count": 2},))
    maker.get(f"{address}/put-away")

    maker.send(f"{address}/put-away", cut__1="")
    between = [the_piece(shop, each).state for each in (one, two)]
    maker.get(f"{address}/put-away")
    page = maker.send(f"{address}/put-away")

    assert between == [PieceState.USED, PieceState.STOCK]
    assert the_piece(shop, two).state is PieceState.USED
    assert len(offcuts(shop)) == 2
    assert "Put away what is left" not in page.text


def test_where_cuts_are_ticked_off_only_a_board_that_is_cut_is_proposed(shop, maker):
    job, one, two = accepted(shop), a_board(shop), a_board(shop)
    address = laid_out(shop, job.job_id, one, two, parts=({**PART, "length": "60", "count": 2},))
    untouched = maker.get(f"{address}/put-away").form(f"{address}/put-away")
    first = set(re.findall(r'name="board" value="B1">.*?name="step" value="(\d+)"', maker.get(address).html))

    for step in first:
        maker.post(f"{address}/cuts", board="B1", step=step, done="1")
    begun = maker.get(f"{address}/put-away").form(f"{address}/put-away")

    assert first
    assert [
        [name for name, field in form.fields if name.startswith("cut.") and field.checked]
        for form in (untouched, begun)
    ] == [["cut.0", "cut.1"], ["cut.0"]]


def test_the_form_counts_once(shop, maker, cut):
    _, _, address = cut
    maker.get(f"{address}/put-away")
    maker.send(f"{address}/put-away", once="a mark")

    maker.post(f"{address}/put-away", once="a mark", **{"cut.0": "1"})
    again = maker.post(f"{address}/put-away", status=422, once="another mark", **{"cut.0": "1"})

    assert len(offcuts(shop)) == 1
    assert "B1 was put away meanwhile, by Ben Tull." in again.text


def test_a_board_that_was_used_meanwhile_is_refused_beside_its_tick_and_nothing_else_is_done(shop, maker):
    job, one, two = accepted(shop), a_board(shop), a_board(shop)
    address = laid_out(shop, job.job_id, one, two, parts=({**PART, "length": "60", "count": 2},))
    maker.get(f"{address}/put-away")
    with writing(shop.engine, shop.shop_id) as db:
        piece = db.get_one(StockPiece, (shop.shop_id, two))
        move_piece(db, piece, "use", load_job(db, job.job_id), "Cy Roper", shop.clock.now)

    page = maker.send(f"{address}/put-away", status=422, left__0__0__place="short rack")

    assert "B2 is used by now and cannot be cut up again." in page.text
    assert page.form(f"{address}/put-away").value("left.0.0.place") == "short rack"
    assert the_piece(shop, one).state is PieceState.STOCK
    assert offcuts(shop) == []


def test_a_board_that_is_kept_for_another_job_by_now_is_refused(shop, maker, cut):
    _, board, address = cut
    other = accepted(shop)
    with writing(shop.engine, shop.shop_id) as db:
        piece = db.get_one(StockPiece, (shop.shop_id, board))
        move_piece(db, piece, "keep", load_job(db, other.job_id), "Cy Roper", shop.clock.now)
    maker.get(f"{address}/put-away")

    page = maker.send(f"{address}/put-away", status=422, cut__0="1")

    assert "B1 is kept for another job by now." in page.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"length": "a yard"}, "a yard"),
        ({"length": "97"}, "B1 leaves pieces from 1/2 in to 96 in that way."),
        ({"width": "0.1"}, "B1 leaves pieces from 1/2 in to 8 in that way."),
        ({"length": "10", "width": "2"}, "It is smaller than what is usually kept."),
    ],
)
def test_a_size_that_cannot_be_is_refused_beside_its_field_and_kept(shop, maker, cut, typed, said):
    _, _, address = cut
    maker.get(f"{address}/put-away")
    fields = {f"left__0__0__{name}": text for name, text in typed.items()}

    page = maker.send(f"{address}/put-away", status=422, **fields)

    form = page.form(f"{address}/put-away")
    assert said in page.text
    assert [form.value(f"left.0.0.{name}") for name in typed] == list(typed.values())


@pytest.mark.one_database
def test_a_small_piece_is_kept_all_the_same_where_that_is_ticked(shop, maker, cut):
    _, _, address = cut
    maker.get(f"{address}/put-away")
    maker.send(f"{address}/put-away", status=422, left__0__0__length="10")

    maker.send(f"{address}/put-away", small="1")

    assert [from_ticks(each.length_ticks) for each in offcuts(shop)] == [10]


@pytest.mark.one_database
def test_scraps_are_not_offered(shop, maker):
    # 96 in less 2 in of trim, 83 in of part and 1/8 in of kerf leaves 10-7/8 in: under 12 in, which is the
    # least that is kept (common practice).
    job, board = accepted(shop), a_board(shop, PieceFacts(width=8.0, length=96.0))
    address = laid_out(shop, job.job_id, board, parts=({**PART, "length": "83"},))

    page = maker.get(f"{address}/put-away")

    assert "Cut up with nothing worth keeping B1, 96 in × 8 in" in page.text


def test_what_is_left_of_typed_boards_and_new_sheets_is_valued_by_the_price_book(shop, maker):
    job = accepted(shop)
    plywood = {"code": "S", "wood": "1/4 in hardwood plywood", "length": "40", "width": "40"}
    address = laid_out(
        shop,
        job.job_id,
        parts=(PART, plywood),
        boards=[{"code": "N1", "wood": "cherry", "class": "4/4", "length": "96", "width": "8"}],
        sheets=[{"code": "P1", "wood": "1/4 in hardwood plywood", "length": "96", "width": "48"}],
    )
    maker.get(f"{address}/put-away")

    maker.send(f"{address}/put-away")

    found = offcuts(shop)
    assert {(each.material, each.size, each.is_sheet) for each in found} == {
        ("cherry", "4/4", False),
        ("hardwood plywood", "1/4", True),
    }
    assert all(each.cost_cents and each.cost_cents > 0 for each in found)
    assert {each.from_id for each in found} == {None}


@pytest.mark.one_database
def test_an_offcut_goes_first_into_the_next_layout(shop, maker, cut):
    job_id, _, address = cut
    maker.get(f"{address}/put-away")
    maker.send(f"{address}/put-away")
    [left] = offcuts(shop)
    small = {**PART, "length": "20", "width": "4"}

    again = laid_out(shop, job_id, left.id, a_board(shop), parts=(small,))

    page = maker.get(again)
    assert 'id="board-O1"' in page.html
    assert 'id="board-B2"' not in page.html


@pytest.mark.one_database
def test_the_labels_of_what_is_left_are_printed_together(shop, maker):
    job, one, two = accepted(shop), a_board(shop), a_board(shop)
    address = laid_out(shop, job.job_id, one, two, parts=({**PART, "length": "60", "count": 2},))
    maker.get(f"{address}/put-away")
    page = maker.send(f"{address}/put-away")
    link = re.search(r'href="(/stock/labels\.pdf\?piece=[^"]+)"', page.html)

    printed = text_of(maker.browser.get(link[1]).content)

    assert "O1" in printed
    assert "O2" in printed


@pytest.mark.one_database
def test_the_bench_puts_away_without_seeing_money(shop, cut):
    _, _, address = cut
    bench, owner = shop.visitor(Role.BENCH), shop.visitor(Role.OWNER)

    pages = [who.get(f"{address}/put-away") for who in (bench, owner)]

    assert ["worth $" in page.text for page in pages] == [False, True]


@pytest.mark.one_database
def test_the_job_tells_what_was_cut_up(shop, maker, cut):
    job_id, _, address = cut
    maker.get(f"{address}/put-away")

    maker.send(f"{address}/put-away")

    assert "Cut up B1 by layout 1; O1 on the rack." in maker.get(f"/jobs/{job_id}/history").text
    with reading(shop.engine, shop.shop_id) as db:
        assert db.get_one(Job, (shop.shop_id, job_id)).number
