"""Papers of a job: issued, read, printed, taken as CSV; out of date, then superseded by the next."""

import csv
import io

import pytest

from casewright.records.base import new_id
from casewright.records.bench import BenchEvent, Carcase, Drawer
from casewright.records.people import Role
from casewright.records.sessions import writing
from pages.commissions import change_figures, commission
from printed import read, text_of

pytestmark = pytest.mark.one_database

KINDS = ("lumber order", "cut list", "joint cards", "caution sheet")
SLUGS = {kind: kind.replace(" ", "-") for kind in KINDS}


@pytest.fixture
def job(shop):
    """A job with one small chest."""
    return commission(shop)


def issue(job, who, kind, **words):
    """Issues a paper; gives its page."""
    return who.post(f"/jobs/{job.job_id}/papers", kind=kind, **words)


def measure(shop, job, size, value):
    """A size tapped in at the bench for the first drawer."""
    with writing(shop.engine, shop.shop_id) as db:
        drawer = db.query(Drawer).filter(Drawer.job_id == job.job_id).order_by(Drawer.position).first()
        case = db.query(Carcase).filter(Carcase.id == drawer.carcase_id).one()
        db.add(
            BenchEvent(
                job_id=job.job_id,
                carcase_id=case.id,
                drawer_id=drawer.id,
                kind="measured",
                data={"size": size, "value": value},
                tap=new_id(),
                at=shop.clock.now,
                who="Cy Roper",
                person_id=shop.people[Role.BENCH].id,
            )
        )


@pytest.mark.parametrize(
    ("kind", "title", "said"),
    [
        ("lumber order", "Lumber order L-0001", "bd ft in all"),
        ("cut list", "Cut list C-0001", "Drawer A-R1-1"),
        ("joint cards", "Joint cards J-0001", "Gauge 2"),
        ("caution sheet", "Caution sheet S-0001", "Fix the wall restraint."),
    ],
)
def test_a_paper_is_issued_and_read_on_the_screen(job, maker, kind, title, said):
    page = issue(job, maker, kind)

    assert page.seen.headings == [title]
    assert said in page.text
    assert "issued" in page.text


@pytest.mark.parametrize("kind", KINDS)
def test_a_paper_prints_the_same_on_any_day(job, maker, shop, clock, kind):
    address = issue(job, maker, kind).address
    first = maker.browser.get(f"{address}/{SLUGS[kind]}.pdf").content
    change_figures(shop, widest_board="6", end_trim="3")
    clock.pass_by(days=3)

    again = maker.browser.get(f"{address}/{SLUGS[kind]}.pdf").content

    assert first.startswith(b"%PDF")
    assert again == first


@pytest.mark.parametrize(
    ("kind", "copy", "called"),
    [
        ("lumber order", "", "Lumber order L-0001"),
        ("lumber order", "?copy=shop", "Lumber order L-0001, our copy"),
        ("cut list", "", "Cut list C-0001"),
        ("joint cards", "", "Joint cards J-0001"),
    ],
)
def test_every_page_of_a_paper_says_which_paper_it_is(job, maker, kind, copy, called):
    address = issue(job, maker, kind).address

    made = maker.browser.get(f"{address}/{SLUGS[kind]}.pdf{copy}").content

    assert [page for page in read(made).pages if f"{called} · job 1" not in page.extract_text()] == []


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_paper_is_printed_on_the_sheet_that_is_asked_for(job, maker, paper):
    address = issue(job, maker, "cut list").address

    answer = maker.browser.get(f"{address}/cut-list.pdf?paper={paper}")

    assert answer.headers["content-type"] == "application/pdf"
    assert answer.headers["content-disposition"] == 'inline; filename="C-0001-1-cut-list.pdf"'


def test_a_sheet_that_nobody_has_is_not_found(job, maker):
    address = issue(job, maker, "cut list").address

    page = maker.get(f"{address}/cut-list.pdf?paper=vellum", status=404)

    assert "letter or a4" in page.text


def test_the_second_issue_supersedes_the_first_and_both_can_be_read(job, maker):
    first = issue(job, maker, "cut list")

    second = issue(job, maker, "cut list")

    assert second.seen.headings == ["Cut list C-0001, revision 2"]
    assert "Supersedes revision 1" in second.text
    assert "superseded by revision 2" in maker.get(first.address).text


def test_a_form_sent_twice_issues_one_paper(job, maker):
    first = issue(job, maker, "cut list", once="the same mark")

    second = issue(job, maker, "cut list", once="the same mark")

    assert second.address == first.address
    assert "revision" not in second.seen.headings[0]


def test_each_kind_has_numbers_of_its_own(job, maker):
    issue(job, maker, "cut list")

    page = issue(job, maker, "lumber order")

    assert page.seen.headings == ["Lumber order L-0001"]


def test_a_paper_is_out_of_date_once_its_unit_is_revised(job, maker):
    address = issue(job, maker, "cut list").address
    before = maker.get(address).text
    job.revise(job.unit_ids()[0], **{"body.width": "30"})

    page = maker.get(address)

    assert "Out of date" not in before
    assert "Out of date: unit A is at revision 2, here it is 1" in page.text


def test_a_paper_is_out_of_date_once_a_size_is_measured_and_the_next_one_has_it(job, maker, shop):
    address = issue(job, maker, "cut list").address
    measure(shop, job, "opening.height", 5.125)
    stale = maker.get(address).text

    fresh = issue(job, maker, "cut list")

    assert "sizes of unit A have been measured at the bench since" in stale
    assert "opening 5-1/8 × 22-1/2" in fresh.text
    assert "Out of date" not in fresh.text


def test_sizes_that_no_longer_go_with_the_design_are_left_out_and_it_is_said(job, maker, shop):
    measure(shop, job, "F.thickness", 0.2)

    page = issue(job, maker, "joint cards")

    assert "no longer go with the design" in page.text


def test_a_price_makes_no_cut_list_out_of_date(job, maker, shop):
    address = issue(job, maker, "cut list").address

    change_figures(shop, markup=0.5, tax_rate=0.2)

    assert "Out of date" not in maker.get(address).text


def test_the_order_says_where_to_when_and_how(job, maker):
    page = issue(
        job,
        maker,
        "lumber order",
        supplier="Hill & Sons <yard>",
        needed_by="2027-04-01",
        remarks="Ring first.\nNo short boards.",
    )

    printed = text_of(maker.browser.get(f"{page.address}/lumber-order.pdf").content)

    assert "Hill & Sons <yard>" in printed
    assert "1 April 2027" in printed
    assert "No short boards." in printed
    assert "Marsh" not in printed


def test_a_day_that_is_none_is_refused(job, maker):
    page = maker.post(f"/jobs/{job.job_id}/papers", status=422, kind="lumber order", needed_by="soon")

    assert "“soon” is not a day" in page.text


def test_a_job_without_units_has_no_papers_and_it_is_said(job, maker):
    job.take_out(job.unit_ids()[0])

    page = maker.post(f"/jobs/{job.job_id}/papers", status=422, kind="cut list")

    assert "draw one first" in page.text


@pytest.mark.parametrize(
    ("kind", "column", "found"),
    [("cut list", "quantity", "1"), ("lumber order", "wood", "cherry")],
)
def test_a_paper_is_read_by_a_spreadsheet(job, maker, kind, column, found):
    address = issue(job, maker, kind).address

    answer = maker.browser.get(f"{address}/{SLUGS[kind]}.csv")

    rows = list(csv.DictReader(io.StringIO(answer.content.decode())))
    assert answer.headers["content-type"] == "text/csv; charset=utf-8"
    assert found in {row[column] for row in rows}


@pytest.mark.parametrize(
    ("kind", "file"),
    [("joint cards", "joint-cards.csv"), ("cut list", "lumber-order.pdf"), ("cut list", "joint-cards.pdf")],
)
def test_a_file_that_a_paper_does_not_have_is_not_found(job, maker, kind, file):
    address = issue(job, maker, kind).address

    maker.get(f"{address}/{file}", status=404)


@pytest.mark.parametrize("kind", ["cut list", "joint cards"])
def test_the_bench_reads_and_prints_what_hangs_at_the_bench_and_no_money_is_on_it(job, maker, bench, kind):
    address = issue(job, maker, kind).address

    page = bench.get(address)

    printed = bench.browser.get(f"{address}/{SLUGS[kind]}.pdf").content
    assert "$" not in page.text + text_of(printed)
    assert "Issue it again" not in page.text


def test_the_bench_reads_no_order(job, maker, bench):
    address = issue(job, maker, "lumber order").address

    bench.get(address, status=403)
    bench.get(f"{address}/lumber-order.pdf", status=403)
    bench.get(f"{address}/lumber-order.csv", status=403)
    bench.post(f"/jobs/{job.job_id}/papers", status=403, kind="cut list")


def test_an_order_is_asked_for_before_it_is_issued(job, maker):
    page = maker.get(f"/jobs/{job.job_id}/lumber-order")

    assert page.seen.headings == ["New lumber order"]
    assert "bd ft" in page.text
    assert "wiping varnish" in page.text
    assert "Lumber order L-0001" not in maker.get(f"/jobs/{job.job_id}").text


def test_the_first_order_of_a_job_names_its_yard_and_is_revision_one(job, maker):
    maker.get(f"/jobs/{job.job_id}/lumber-order")

    page = maker.send(f"/jobs/{job.job_id}/papers", supplier="Hill & Sons", needed_by="2027-04-01")

    assert page.seen.headings == ["Lumber order L-0001"]
    assert "1 April 2027" in page.text
    assert 'value="Hill &amp; Sons"' in page.html


def test_the_next_order_begins_with_what_the_last_one_said(job, maker):
    issue(job, maker, "lumber order", supplier="Hill & Sons", remarks="Ring first.")

    page = maker.get(f"/jobs/{job.job_id}/lumber-order")

    assert "Issue revision 2" in page.text
    assert 'value="Hill &amp; Sons"' in page.html
    assert "Ring first." in page.html


def test_what_was_typed_stays_in_the_form_when_a_day_is_none(job, maker):
    typed = {"kind": "lumber order", "supplier": "Hill & Sons", "needed_by": "soon"}

    page = maker.post(f"/jobs/{job.job_id}/papers", status=422, **typed)

    assert "“soon” is not a day" in page.text
    assert 'value="Hill &amp; Sons"' in page.html


def test_the_templates_of_the_cards_are_printed_in_full_size(job, maker, shop):
    page = issue(job, maker, "joint cards")

    [address] = [each for each in page.seen.links if each.endswith("copy=templates")]
    text = text_of(maker.browser.get(address).content)

    for words in (
        "Templates in full size",
        "Half-blind dovetail, front",
        "A-R1-1-SL",
        "Story stick",
        "100 mm",
    ):
        assert words in text


def test_the_layouts_of_the_cards_are_had_as_dxf(job, maker):
    page = issue(job, maker, "joint cards")

    [address] = [each for each in page.seen.links if each.endswith(".dxf")]
    answer = maker.browser.get(address)

    assert answer.headers["content-type"] == "image/vnd.dxf"
    assert b"AcDbLine" in answer.content


def test_a_cut_list_has_no_templates(job, maker):
    page = issue(job, maker, "cut list")

    assert [each for each in page.seen.links if "templates" in each] == []
    assert maker.browser.get(f"{page.address}/cut-list.pdf?copy=templates").status_code == 404
    assert maker.browser.get(f"{page.address}/cut-list.dxf").status_code == 404
