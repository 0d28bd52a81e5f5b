"""Parts without a place in a layout: listed, with ways out that are tried and can be taken."""

import pytest

from casewright.records.layouts import CutLayout
from casewright.records.people import Role
from casewright.records.sessions import reading, writing
from casewright.shop.stock import PieceFacts
from pages.commissions import id_in
from pages.laid_out import PART, a_board, laid_out
from pages.stock_room import accepted

pytestmark = pytest.mark.one_database
LONG = {**PART, "name": "case side", "length": "100", "face": "A"}


@pytest.fixture
def short(shop):
    """A layout in which a part has no place, with a longer board that is spare: the address, and the job."""
    job = accepted(shop)
    plain = PieceFacts(width=8.0, length=96.0)
    held, spare = a_board(shop, plain), a_board(shop, PieceFacts(width=8.0, length=120.0), cost=4000)
    return laid_out(shop, job.job_id, held, spare=(spare,), parts=(LONG,)), job.job_id


def asked_of(shop, address):
    """The cut file of a layout."""
    with reading(shop.engine, shop.shop_id) as db:
        return dict(db.get_one(CutLayout, (shop.shop_id, id_in(address))).asked)


def test_a_part_without_place_is_listed_with_its_size_and_why(maker, short):
    page = maker.get(short[0])

    assert "1 part without place" in page.text
    assert "P1 case side 100 in × 7-1/2 in" in page.text
    assert "it is 100 in long, and the longest board gives 94 in once its ends are cut off." in page.text


def test_parts_that_are_alike_and_short_for_one_reason_stand_in_one_line_with_the_way_to_an_order(
    shop, maker
):
    job = accepted(shop)
    held = a_board(shop, PieceFacts(width=8.0, length=96.0))
    parts = (LONG, {**LONG, "code": "P2", "count": 2}, {**LONG, "code": "P3", "length": "101"})

    page = maker.get(laid_out(shop, job.job_id, held, parts=parts))

    assert "4 parts without place" in page.text
    assert "P1, 2 × P2 case side 100 in × 7-1/2 in : it is 100 in long" in page.text
    assert "P3 case side 101 in × 7-1/2 in : it is 101 in long" in page.text
    assert f'href="/stock/needs?job={job.job_id}"' in page.html


def test_a_short_list_leads_to_a_layout_without_what_was_put_by_hand(shop, maker):
    # 96 in less an inch off each end hold two parts of 40 in, unless one is put in the middle of the board.
    job = accepted(shop)
    held = a_board(shop, PieceFacts(width=8.0, length=96.0))
    by_hand = {
        **PART,
        "count": 2,
        "placed": [{"on": "B1", "number": 1, "from_end": "28", "from_edge": "1/4"}],
    }
    address = laid_out(shop, job.job_id, held, parts=(by_hand,))
    page = maker.get(address)
    short = page.text.partition("1 part without place")[2].partition("When the boards are cut")[0]

    asked = asked_of(shop, maker.post(f"{address}/by-hand", free="1").address)

    assert "What was put by hand may stand in the way" in short
    assert not asked["parts"][0].get("placed")


@pytest.mark.parametrize(
    ("above", "bound_is_for", "said"),
    [
        # 144 are taken where 100 are the bound: 44 of 144 are 30.6 %.
        (44.0, "all parts", "No layout could save more than 30.6 % of this wood."),
        (44.0, "parts with a place", "as it is laid out, could save more than 30.6 % of this wood."),
        (0.0, "parts with a place", "Nothing could be saved: the parts that have a place"),
    ],
)
def test_how_good_a_layout_is_says_what_could_be_saved(shop, maker, short, above, bound_is_for, said):
    with writing(shop.engine, shop.shop_id) as db:
        layout = db.get_one(CutLayout, (shop.shop_id, id_in(laid_out(shop, short[1], a_board(shop)))))
        (lot,) = layout.answer["lots"]
        told = {"percent_above_best_possible": above, "bound_is_for": bound_is_for, "proven_best": False}
        layout.answer = {**layout.answer, "lots": [{**lot, **told}]}

    assert said in maker.get(f"/cutting/{layout.id}").text


def test_ways_out_are_ranked_by_the_wood_that_they_take(maker, short):
    # The spare board of 10 ft is 120 × 8 / 144 = 6.7 bd ft; the least board that a yard sells for the part is
    # 9 ft by 8 in, 6.0 bd ft: 100 in and an inch off each end, 7-1/2 in and 1/4 in off each edge.
    page = maker.get(short[0])

    bought, spare = (
        page.text.find("Get one more board of cherry 4/4, 108 in × 8 in"),
        page.text.find("Take B2"),
    )
    assert 0 < bought < spare
    assert "6.7 bd ft" in page.text


def test_money_is_for_the_owner_alone(shop, short):
    owner, maker = shop.visitor(Role.OWNER), shop.visitor(Role.MAKER)

    pages = [who.get(short[0]).text for who in (owner, maker)]

    assert ["6.7 bd ft, $40.00" in text for text in pages] == [True, False]
    assert ["$" in text.partition("Ways out")[2].partition("When the boards")[0] for text in pages] == [
        True,
        False,
    ]


def test_the_feet_that_a_yard_would_be_asked_for_are_reckoned_with_the_shop_s_waste(maker, short):
    # 100 × 7-1/2 in at 4/4 are 5.21 bd ft; cherry case parts in FAS waste 20 % (TRADE table of yields, common
    # practice): 5.21 / 0.8 = 6.5, so 7 whole feet.
    page = maker.get(short[0])

    assert "An order for these parts alone is 7 bd ft of cherry 4/4 FAS" in page.text


def test_a_way_out_is_taken_and_laid_out_anew_once(shop, maker, short):
    address, _ = short
    page = maker.get(address)
    number = page.html.partition("Take B2 too")[2].partition('name="way" value="')[2].partition('"')[0]

    first = maker.post(f"{address}/ways-out", wood="0", way=number, once="a mark")
    again = maker.post(f"{address}/ways-out", wood="0", way=number, once="a mark")

    boards = {each["code"]: each.get("spare", False) for each in asked_of(shop, first.address)["boards"]}
    assert first.address == again.address
    assert boards == {"B1": False, "B2": False}


def test_a_way_out_that_changes_a_part_changes_nothing_else(shop, maker):
    job = accepted(shop)
    wide = {**PART, "code": "T", "length": "30", "width": "14"}
    address = laid_out(
        shop, job.job_id, a_board(shop, PieceFacts(width=8.0, length=120.0)), parts=(PART, wide)
    )
    page = maker.get(address)
    number = page.html.partition("Glue T up")[2].partition('name="way" value="')[2].partition('"')[0]

    made = maker.post(f"{address}/ways-out", wood="0", way=number)

    assert asked_of(shop, made.address)["parts"] == [PART, {**wide, "glue_up": {}}]


@pytest.mark.parametrize("typed", [{"wood": "0", "way": "99"}, {"wood": "x", "way": ""}, {}])
def test_a_way_out_that_is_not_there_is_refused(maker, short, typed):
    maker.post(f"{short[0]}/ways-out", status=404, **typed)


def test_the_bench_sees_what_is_short_and_chooses_nothing(shop, short):
    page = shop.visitor(Role.BENCH).get(short[0])

    assert "1 part without place" in page.text
    assert "Lay it out so" not in page.text


def test_what_is_not_ticked_on_the_rack_is_named_as_spare(shop, maker):
    job = accepted(shop)
    one, two = a_board(shop), a_board(shop)
    maker.get(f"/jobs/{job.job_id}/cutting")

    page = maker.post(f"/jobs/{job.job_id}/cutting", take=one, seconds="1", first_cut="best", offcuts="first")

    boards = {each["code"]: each.get("spare", False) for each in asked_of(shop, page.address)["boards"]}
    assert two
    assert boards == {"B1": False, "B2": True}
