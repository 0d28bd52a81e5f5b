"""The rack: pieces measured, kept, cut up and put back; offcuts labelled; yields noted and learned."""

import pytest

from casewright.records.people import Shop
from casewright.records.sessions import reading
from casewright.shop.figures import figures
from casewright.wood.basis import Basis
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse
from pages.stock_room import accepted, begin, on_rack, supplier, tap


def board(who, width="8", length="12 ft", **more):
    """A board on the rack; gives its address."""
    address = begin(who, supplier(who))
    page = tap(who, address, width, length, **more)
    return next(link for link in page.seen.links if link.startswith("/stock/pieces/"))


def test_what_is_measured_later_stands_with_the_board(maker):
    address = board(maker)
    maker.get(address)

    page = maker.send(
        f"{address}/sizes",
        left_width="8-1/2",
        right_width="7-1/2",
        moisture="7.5",
        place="Bay 4",
        sap_edge="lower",
    )

    assert "8.00 bd ft" in page.text
    form = page.form(f"{address}/sizes")
    assert form.value("left_width") == "8-1/2"
    assert form.value("sap_edge") == "lower"
    assert "Bay 4" in maker.get("/stock").text


def test_a_defect_is_a_rectangle_on_a_face(maker):
    address = board(maker)
    maker.get(address)
    knot = {
        "defect__1__from_left": "30",
        "defect__1__from_edge": "2",
        "defect__1__length": "3",
        "defect__1__width": "2",
    }

    page = maker.send(f"{address}/sizes", **knot, defect__1__face="better")

    assert page.form(f"{address}/sizes").value("defect.1.length") == "3"
    assert page.form(f"{address}/sizes").value("defect.1.face") == "better"
    assert "1 defect" in maker.get("/stock").text


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"defect__1__from_left": "143", "defect__1__length": "3", "defect__1__width": "1"}, "past the end"),
        ({"defect__1__from_edge": "7", "defect__1__length": "3", "defect__1__width": "2"}, "past the edge"),
        ({"defect__1__length": "3"}, "has a length and a width"),
        ({"width": "wide"}, "is not a size"),
        ({"moisture": "200"}, "200 % is outside 1 to 60 %"),
    ],
)
def test_what_a_board_cannot_have_is_refused_beside_its_field_and_kept(maker, typed, said):
    address = board(maker)
    maker.get(address)

    page = maker.send(f"{address}/sizes", status=422, place="Bay 9", **typed)

    assert said in page.text
    assert page.form(f"{address}/sizes").value("place") == "Bay 9"
    name, value = next(iter(typed.items()))
    assert page.form(f"{address}/sizes").value(name.replace("__", ".")) == value


def test_of_two_who_measure_a_board_the_second_sees_both(maker, bench):
    address = board(maker)
    bench.get(address)
    maker.get(address)
    maker.send(f"{address}/sizes", place="Bay 1")

    page = bench.send(f"{address}/sizes", status=409, place="Bay 2")

    assert "Theirs: Bay 1" in page.text
    assert page.form(f"{address}/sizes").value("place") == "Bay 2"


def test_a_board_is_kept_released_cut_up_and_put_back(shop, maker):
    job, address = accepted(shop), board(maker)

    assert "kept for job 1" in maker.post(f"{address}/acts", act="keep", job=job.job_id).text
    maker.post(f"{address}/acts", act="release")
    assert "in stock" in maker.get(address).text
    assert "New offcut of B1" in maker.post(f"{address}/acts", act="use", job=job.job_id).text
    assert "used in job 1" in maker.get(address).text
    maker.post(f"{address}/acts", act="return")

    page = maker.get(address)
    assert "in stock" in page.text
    assert [each for each in ("Kept", "Released", "Cut up", "Put back") if each in page.text] == [
        "Kept",
        "Released",
        "Cut up",
        "Put back",
    ]


def test_a_board_is_kept_for_no_job_in_particular_is_refused(shop, maker):
    accepted(shop)
    address = board(maker)

    page = maker.post(f"{address}/acts", status=422, act="keep")

    assert "Choose the job" in page.text


def test_what_is_not_on_the_rack_cannot_be_kept(shop, maker):
    job, address = accepted(shop), board(maker)
    maker.post(f"{address}/acts", act="send back", why="shake")

    page = maker.post(f"{address}/acts", status=409, act="keep", job=job.job_id)

    assert "B1 is sent back" in page.text


def test_an_offcut_is_worth_its_share_of_the_board(maker, owner):
    """By hand: the board of 8 by 144 in cost 80.00; 4 by 36 in are an eighth of it."""
    address = board(maker)
    delivery = next(link for link in maker.get(address).seen.links if "/deliveries/1" in link)
    owner.get(f"{delivery}/claim")
    owner.send(f"{delivery}/claim", bill__1__quantity="8", bill__1__amount="80.00")
    owner.get(f"/stock/offcuts/new?piece={address.rpartition('/')[2]}")

    page = owner.send("/stock/offcuts", width="4", length="36")

    assert "Offcut O1" in page.text
    assert "Worth $10.00" in page.text
    assert "Cut from it: O1" in maker.get(address).text


@pytest.mark.parametrize(
    ("size", "said"),
    [(("9", "36"), "cannot be larger than B1"), (("2", "10"), "smaller than what is usually kept")],
)
def test_an_offcut_that_cannot_be_or_is_small_is_doubted(maker, size, said):
    address = board(maker)
    maker.get(f"/stock/offcuts/new?piece={address.rpartition('/')[2]}")

    page = maker.send("/stock/offcuts", status=422, width=size[0], length=size[1], place="Bin")

    assert said in page.text
    assert page.form("/stock/offcuts").value("place") == "Bin"


def test_a_small_offcut_is_labelled_all_the_same(maker):
    maker.get("/stock/offcuts/new")
    maker.send("/stock/offcuts", status=422, material="cherry", size="4/4", width="2", length="10")

    page = maker.send("/stock/offcuts", small="1")

    assert "Offcut O1" in page.text


def test_the_rack_is_shown_by_wood_and_kind(maker):
    on_rack(maker, "5", "30")
    on_rack(maker, "6", "30", material="poplar")

    assert "O2" not in maker.get("/stock?material=cherry").text
    assert "O1" in maker.page.text
    assert "Nothing of that" in maker.get("/stock?kind=sheet").text


def cut_up(shop, who, boards):
    """A job that took some boards of cherry; gives its id."""
    job = accepted(shop)
    address = begin(who, supplier(who))
    for _ in range(boards):
        page = tap(who, address, "10", "12 ft")
        piece = next(link for link in page.seen.links if link.startswith("/stock/pieces/"))
        who.post(f"{piece}/acts", act="use", job=job.job_id)
    return job.job_id


def cherry_waste(shop):
    with reading(shop.engine, shop.shop_id) as db:
        held = figures(db, db.get_one(Shop, shop.shop_id))
    return held.waste_of("cherry", PartUse.CASE, Cut.FLAT)


def test_three_jobs_teach_the_shop_its_own_waste(shop, owner):
    table = cherry_waste(shop)
    for _ in range(2):
        owner.post("/stock/yields", job=cut_up(shop, owner, 4))
    assert cherry_waste(shop) == table

    page = owner.post("/stock/yields", job=cut_up(shop, owner, 4))

    learned = cherry_waste(shop)
    assert learned.evidence.basis is Basis.LEARNED
    assert learned.evidence.source == "jobs 1, 2 and 3"
    assert learned.fraction > table.fraction  # 40 ft of boards were cut up for each small chest
    assert "learned" in page.text


def test_a_job_noted_again_counts_once(shop, owner):
    job = cut_up(shop, owner, 4)
    owner.post("/stock/yields", job=job)
    owner.post("/stock/yields", job=job)

    assert owner.get("/stock/yields").html.count(f'href="/jobs/{job}"') == 1


def test_less_wood_than_parts_is_refused_with_its_figures(shop, owner):
    job = cut_up(shop, owner, 1)

    page = owner.post("/stock/yields", status=409, job=job)

    assert "cannot come out of 10.0 bd ft of boards" in page.text


def test_a_job_without_boards_teaches_nothing(shop, owner):
    page = owner.post("/stock/yields", status=409, job=accepted(shop).job_id)

    assert "No board is noted as cut up" in page.text
