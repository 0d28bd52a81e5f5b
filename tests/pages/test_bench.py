"""A drawer at the bench: numbers, measured sizes, the dry-fit list, notes; the fold over what was tapped."""

import gzip
import re
from concurrent.futures import ThreadPoolExecutor

import pytest

from benchwork import case_reaches, drawer_ids, drawer_reaches, events, hand, job_in_hand, kept_stage
from casewright.labour.stages import dry_fit
from casewright.records.bench import Drawer
from casewright.records.people import Role
from casewright.records.sessions import reading, writing
from casewright.shop.bench import drawer_place, set_sizes
from casewright.shop.measured import bench_sizes
from counting import MOST, counted

LINES = [line.code for line in dry_fit()]


@pytest.fixture
def job(shop):
    """A job in hand whose case is glued up."""
    made = job_in_hand(shop)
    case_reaches(shop, made, "glued")
    return made


@pytest.fixture
def drawer(shop, job):
    """The middle drawer of its chest."""
    return drawer_ids(shop, job)["R2-1"]


def number(page, label):
    """The large number under a label."""
    found = re.search(rf"<dt>{re.escape(label)}</dt><dd><b>(.*?)</b>(.*?)</dd>", page.html)
    assert found, label
    return found[1]


def struck_out(page, label):
    """The number that is struck out beside it."""
    found = re.search(
        rf"<dt>{re.escape(label)}</dt><dd><b>.*?</b> <s><span class=\"unseen\">not </span>(.*?)</s>",
        page.html,
    )
    assert found, label
    return found[1]


@pytest.mark.one_database
def test_the_page_has_the_numbers_that_matter(bench, drawer):
    page = bench.get(f"/bench/{drawer}")

    assert page.seen.headings == ["Drawer 1-A-R2-1"]
    assert number(page, "Opening, height") == "6"
    assert number(page, "Opening, width") == "22-1/2"
    assert number(page, "G2") == "7/16"  # side 1/2 less a rabbet of 1/16
    assert struck_out(page, "G2") == "1/2"


@pytest.mark.one_database
def test_the_next_step_is_one_large_button(shop, bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/drawers/{drawer}/stage")

    assert page.address == f"/bench/{drawer}"
    assert kept_stage(shop, drawer) == "milled"
    assert "Next: fitted , but not yet" in page.text
    assert "It needs the opening measured." in page.text


@pytest.mark.parametrize(
    ("path", "fields"),
    [("/drawers/{}/stage", {"stage": "milled"}), ("/bench/{}/ticks", {"tick": "shoulder"})],
)
def test_a_tap_by_script_brings_back_the_part_that_it_changes(bench, drawer, path, fields):
    answer = bench.browser.post(
        path.format(drawer),
        data={"once": "a", "back": f"/bench/{drawer}"} | fields,
        headers={"hx-request": "true", "x-block": "live"},
    )

    assert answer.status_code == 200
    assert answer.text.lstrip().startswith('<div id="live">')
    assert "<h1" not in answer.text


def test_after_a_tap_by_script_the_timer_offers_the_work_that_comes_next(shop, bench, drawer):
    drawer_reaches(shop, drawer, "joints")

    answer = bench.browser.post(
        f"/drawers/{drawer}/stage",
        data={"once": "a", "stage": "dry", "back": f"/bench/{drawer}"},
        headers={"hx-request": "true", "x-block": "live"},
    )

    assert 'name="operation" value="D12"' in answer.text  # the glue-up, after the dry-fit
    assert 'name="operation" value="D10"' not in answer.text


def test_a_measured_side_moves_the_second_gauge_at_once(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", SL__thickness="31/64", SR__thickness="31/64")

    assert number(page, "G2") == "27/64"  # 31/64 less 4/64
    assert struck_out(page, "G2") == "31/64"
    assert page.form(f"/bench/{drawer}/sizes").value("SL.thickness") == "31/64"


def test_sides_of_two_thicknesses_have_a_gauge_setting_each(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", SL__thickness="1/2", SR__thickness="15/32")

    assert (number(page, "G2, left"), struck_out(page, "G2, left")) == ("7/16", "1/2")
    assert (number(page, "G2, right"), struck_out(page, "G2, right")) == ("13/32", "15/32")


def test_a_measured_opening_moves_the_targets_by_as_much(bench, drawer):
    before = bench.get(f"/bench/{drawer}")
    width = number(before, "Make it wide, W")

    page = bench.send(f"/bench/{drawer}/sizes", opening__height="5-31/32", opening__width="22-15/32")

    assert number(page, "Opening, height") == "5-31/32"
    assert (width, number(page, "Make it wide, W")) == ("22-7/16", "22-13/32")
    assert number(page, "Make it high, H") != number(before, "Make it high, H")


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("typed", "shown"), [("5.96875", "5-31/32"), ("151.6 mm", "≈5-31/32"), ('5 31/32"', "5-31/32")]
)
def test_a_size_is_taken_in_every_notation_and_stands_as_it_was_typed(bench, drawer, typed, shown):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", opening__height=typed)

    assert number(page, "Opening, height") == shown
    assert page.form(f"/bench/{drawer}/sizes").value("opening.height") == typed


def test_what_is_measured_on_one_drawer_leaves_the_others_as_they_were(shop, bench, job, drawer):
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/sizes", SL__thickness="31/64", SR__thickness="31/64")

    other = bench.get(f"/bench/{drawer_ids(shop, job)['R1-1']}")

    assert number(other, "G2") == "7/16"


def test_each_piece_of_a_unit_has_sizes_of_its_own(shop, bench):
    made = job_in_hand(shop, "Bedsides", changes={"count": 2})
    first = drawer_ids(shop, made)["R1-1"]
    bench.get(f"/bench/{first}")
    bench.send(f"/bench/{first}/sizes", opening__height="5-15/64")

    with reading(shop.engine, shop.shop_id) as db:
        unit_id = db.get_one(Drawer, (shop.shop_id, first)).unit_id
        sizes = bench_sizes(db, [unit_id])

    assert sizes == {(unit_id, 1): {"R1-1": {"opening.height": 5.234375}}}


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("8 1/0", "8 1/0"),
        ("60", "60 in is far from the 6 that was drawn; measure again, or change the design."),
        ("-6", "-6"),
    ],
)
def test_a_size_that_cannot_be_is_refused_beside_its_field_and_kept(shop, bench, drawer, typed, sentence):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", status=422, opening__height=typed, opening__width="22-15/32")

    assert sentence in page.text
    assert 'id="opening-height-fault"' in page.html
    assert page.form(f"/bench/{drawer}/sizes").value("opening.height") == typed
    assert page.form(f"/bench/{drawer}/sizes").value("opening.width") == "22-15/32"
    assert page.seen.title.startswith("Error: ")
    assert not [each for each in events(shop) if each.kind == "measured"]


def test_more_left_in_the_rabbet_than_the_side_is_thick_is_refused(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", status=422, SL__thickness="1/2", SL__in_rabbet="9/16")

    assert "cannot be thicker than the side itself" in page.text


def test_an_emptied_field_takes_its_size_back(shop, bench, drawer):
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/sizes", opening__height="5-31/32")

    page = bench.send(f"/bench/{drawer}/sizes", opening__height="")

    assert number(page, "Opening, height") == "6"
    assert [each.data["value"] for each in events(shop) if each.kind == "measured"] == [5.96875, None]


def test_sizes_that_were_kept_already_are_not_kept_again(shop, bench, drawer):
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/sizes", opening__height="5-31/32")
    before = len(events(shop))

    bench.send(f"/bench/{drawer}/sizes")

    assert len(events(shop)) == before


@pytest.mark.one_database
def test_a_failed_check_stops_the_drawer_in_red(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", SL__thickness="5/16", SR__thickness="5/16")

    assert '<div class="halt"><p><strong>Stop: do not cut.</strong>' in page.html


def test_sizes_that_no_longer_go_with_a_new_design_are_said_to(shop, bench, job, drawer):
    with writing(shop.engine, shop.shop_id) as db:
        set_sizes(db, drawer_place(db, drawer), {"opening.height": (60.0, "60")}, hand(shop))

    page = bench.get(f"/bench/{drawer}")

    assert "The sizes that were measured no longer go with the design" in page.text
    assert number(page, "Opening, height") == "6"


def test_the_dry_fit_list_is_ticked_line_by_line(shop, bench, drawer):
    drawer_reaches(shop, drawer, "dry")

    for line in LINES[:-1]:
        bench.post(f"/bench/{drawer}/ticks", tick=line, once=line)
    page = bench.get(f"/bench/{drawer}")

    assert "Dry-fit: 10 of 11" in page.text
    assert "It needs the dry-fit list: 10 of 11 ticked." in page.text


def test_a_line_that_can_be_measured_says_what_is_measured_and_how_much_may_be(shop, bench, drawer):
    page = bench.get(f"/bench/{drawer}")

    assert "or measured: difference of the diagonals, at most 1/32" in page.text
    assert "or measured: gap under the high corner, at most 1/64" in page.text


@pytest.mark.one_database
def test_a_whole_list_lets_the_drawer_be_glued_up(shop, bench, drawer):
    drawer_reaches(shop, drawer, "dry")
    for line in LINES:
        bench.post(f"/bench/{drawer}/ticks", tick=line, once=line)
    page = bench.get(f"/bench/{drawer}")

    bench.send(f"/drawers/{drawer}/stage")

    assert "No PVA glue below 50 °F" in page.text
    assert kept_stage(shop, drawer) == "glued"


def test_a_tick_is_taken_off_by_the_same_button(bench, drawer):
    bench.post(f"/bench/{drawer}/ticks", tick="shoulder", once="a")

    page = bench.post(f"/bench/{drawer}/ticks", untick="shoulder", once="b")

    assert "Dry-fit: 0 of 11" in page.text


def test_diagonals_are_measured_in_place_of_a_tick(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/ticks", dry__diagonals="1/64")

    assert "Dry-fit: 1 of 11" in page.text
    assert page.form(f"/bench/{drawer}/ticks").value("dry.diagonals") == "1/64"


def test_diagonals_too_far_apart_hold_the_drawer(shop, bench, drawer):
    drawer_reaches(shop, drawer, "dry")
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/ticks", dry__diagonals="1/16")

    assert "diagonals: 1/16 in is more than the 1/32 that are allowed" in page.text


def test_an_unknown_line_of_the_list_is_refused(bench, drawer):
    page = bench.post(f"/bench/{drawer}/ticks", 404, tick="luck", once="a")

    assert "Neither list has a line “luck”." in page.text


def test_ten_people_who_tick_at_once_are_all_heard(shop, drawer):
    visitors = [shop.visitor(Role.BENCH) for _ in LINES]

    with ThreadPoolExecutor(len(LINES)) as pool:
        answers = list(
            pool.map(
                lambda pair: pair[0].post(f"/bench/{drawer}/ticks", tick=pair[1], once=pair[1]),
                zip(visitors, LINES, strict=True),
            )
        )

    assert {answer.status for answer in answers} == {200}
    assert sorted(each.data["tick"] for each in events(shop) if each.kind == "ticked") == sorted(LINES)


def test_a_note_stands_with_who_and_when(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/notes", note="Tear-out at the <left> end.")

    assert "note: Tear-out at the &lt;left&gt; end." in page.html
    assert "Cy Roper, 1 Mar 2027, 10:00" in page.text


def test_an_empty_note_is_refused(bench, drawer):
    bench.get(f"/bench/{drawer}")

    assert "Write a few words first." in bench.send(f"/bench/{drawer}/notes", status=422).text


def test_the_drawers_of_a_case_lead_to_one_another(shop, bench, job):
    ids = drawer_ids(shop, job)

    page = bench.get(f"/bench/{ids['R2-1']}")

    assert {f"/bench/{ids['R1-1']}", f"/bench/{ids['R3-1']}"} <= set(page.seen.links)


def test_a_drawer_without_an_opening_keeps_its_past_and_takes_no_more_taps(shop, bench, drawer):
    drawer_reaches(shop, drawer, "milled")
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Drawer, (shop.shop_id, drawer)).gone = True

    page = bench.get(f"/bench/{drawer}")
    refused = bench.post(f"/drawers/{drawer}/stage", 409, stage="fitted", once="a")

    assert "The present design has no such opening any more." in page.text
    assert "Milled : Cy Roper" in page.text
    assert "has no opening in the present design" in refused.text


def test_the_bench_sees_no_money(bench, drawer):
    page = bench.get(f"/bench/{drawer}")

    assert "$" not in page.text


@pytest.mark.one_database
def test_a_shop_in_millimetres_reads_and_writes_them(shop, bench):
    made = job_in_hand(
        shop, changes={"unit": "mm", "body": {"width": 610, "depth": 406, "opening_total": 457}}
    )
    case_reaches(shop, made, "glued")
    drawer = drawer_ids(shop, made)["R1-1"]
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", SL__thickness="12.3", SR__thickness="12.3")

    assert struck_out(page, "G2") == "12.3"
    assert 'data-step="0.0196' in page.html  # half a millimetre


@pytest.mark.one_database
@pytest.mark.parametrize(("method", "path"), [("GET", ""), ("POST", "/sizes"), ("POST", "/ticks")])
def test_a_drawers_page_costs_few_statements(shop, bench, drawer, method, path):
    drawer_reaches(shop, drawer, "dry")
    bench.get(f"/bench/{drawer}")

    with counted(shop.engine) as sent:
        bench.browser.request(
            method,
            f"/bench/{drawer}{path}",
            data={"once": "a", "tick": LINES, "opening.height": "5-31/32", "opening.width": "22-15/32"},
            follow_redirects=False,
        )

    assert len(sent) <= MOST


@pytest.mark.one_database
def test_a_drawers_page_is_light_on_a_bad_line(shop, bench, drawer):
    drawer_reaches(shop, drawer, "dry")

    page = bench.get(f"/bench/{drawer}")

    assert len(gzip.compress(page.html.encode(), 5)) < 22_000  # 60 KB with style sheet and scripts


def test_another_shops_drawer_has_no_page(bench):
    assert "There is no such drawer in this shop." in bench.get("/bench/1m89k3c0wpsyx", status=404).text
