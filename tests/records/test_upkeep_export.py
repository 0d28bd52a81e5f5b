"""An export is everything of one shop, open to any program, without what opens a door."""

import io
import json
import zipfile
from datetime import date
from functools import partial
from pathlib import Path

import pypdf
import pytest
from filling import MOMENT, fill
from sqlalchemy import Engine

from benchwork import job_in_hand
from casewright.records.base import new_id
from casewright.records.jobs import Customer, Job
from casewright.records.papers import Paper, PaperKind, Quote, QuoteState
from casewright.records.people import Shop
from casewright.records.sessions import writing
from casewright.records.tables import METADATA
from casewright.shop.papers import issue_paper, job_at_hand
from casewright.shop.refusals import Refused
from casewright.upkeep.archive import FileIsThere
from casewright.upkeep.export import NOT_OF_THE_SHOP, export
from casewright.upkeep.place import Place
from casewright.web.frame.paper_says import OrderWords
from casewright.web.quotes.paper_making import Writer
from people import PASSWORD, Clock, ShopInTest, new_shop

LINK = "9f" * 32
OFFER = {
    "form": 1,
    "shop": {"name": "Marrow Street Furniture", "lines": ["1 Marrow Street"]},
    "customer": {"name": "Ida Lund", "lines": []},
    "job_number": "1",
    "job_name": "A chest",
    "quote_number": "4",
    "revision": 2,
    "issued_on": "2027-03-01",
    "valid_until": "2027-03-31",
    "symbol": "$",
    "currency": "USD",
    "unit": "in",
    "units": [
        {"code": "A", "name": "Chest", "count": 1, "words": ["A chest of cherry."], "price_cents": 120_000}
    ],
    "net_cents": 120_000,
    "tax_rate": 0.06,
    "tax_cents": 7_200,
    "total_cents": 127_200,
    "stages": [{"trigger": "on acceptance", "share": 1, "amount_cents": 127_200}],
    "terms": ["Paid on acceptance."],
    "not_included": [],
    "cautions": [],
}


@pytest.fixture
def shop(place: Place) -> ShopInTest:
    """A shop with papers, beside another shop."""
    new_shop(None, place.engine, Clock(), name="The other shop")
    shop = new_shop(None, place.engine, Clock())
    with_papers(shop)
    return shop


def with_papers(shop: ShopInTest) -> None:
    """A quote that was sent, and a cut list of a form that nobody can print any more."""
    customer, job = new_id(), new_id()
    rows = [
        Customer(id=customer, name="Ida Lund", created_at=MOMENT),
        Job(
            id=job,
            number=1,
            name="A chest",
            customer_id=customer,
            due_on=date(2027, 5, 1),
            created_at=MOMENT,
            moved_at=MOMENT,
        ),
        Quote(
            id=new_id(),
            job_id=job,
            number=4,
            revision=2,
            state=QuoteState.SENT,
            offer=OFFER,
            basis={},
            total_cents=127_200,
            link_hash=LINK,
            created_at=MOMENT,
        ),
        Paper(
            id=new_id(),
            job_id=job,
            kind=PaperKind.CUT_LIST,
            number=1,
            revision=1,
            content={"of another": "time"},
            basis_hash="0",
            issued_at=MOMENT,
            who="Ada",
        ),
    ]
    with writing(shop.engine, shop.shop_id) as db:
        for row in rows:
            db.add(row)
            db.flush()


def issue(shop: ShopInTest, kind: PaperKind) -> None:
    """A paper of a job with one chest, issued as a page does it."""
    job_id, today = job_in_hand(shop), shop.clock.now.date()
    with writing(shop.engine, shop.shop_id) as db:
        held, job = db.get_one(Shop, shop.shop_id), db.get_one(Job, (shop.shop_id, job_id))
        at_hand = job_at_hand(db, held, job, today)
        writer = Writer(shop=held, job=job, at_hand=at_hand, today=today, words=OrderWords())
        issue_paper(db, job, kind, at_hand, partial(writer.write, kind), "Ada Marsh", shop.clock.now)


def contents(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as packed:
        return {name: packed.read(name) for name in packed.namelist()}


def test_an_export_holds_every_table_of_the_shop_and_its_papers(
    place: Place, shop: ShopInTest, tmp_path: Path
):
    done = export(place, tmp_path / "all.zip", shop.shop_id)

    parts = contents(done.path)
    tables = {name.removeprefix("data/").removesuffix(".json") for name in parts if name.startswith("data/")}
    assert tables == {table.name for table in METADATA.sorted_tables} - NOT_OF_THE_SHOP
    assert "Marrow Street Furniture" in parts["README.txt"].decode()
    assert json.loads(parts["export.json"])["rows"] == done.rows


def test_nothing_of_another_shop_is_in_it(place: Place, shop: ShopInTest, tmp_path: Path):
    parts = contents(export(place, tmp_path / "all.zip", shop.shop_id).path)

    rows = [row for name in parts if name.startswith("data/") for row in json.loads(parts[name])]
    assert {row["shop_id"] for row in rows} == {shop.shop_id}
    assert b"The other shop" not in b"".join(parts.values())


def test_nothing_that_opens_a_door_is_in_it(place: Place, shop: ShopInTest, tmp_path: Path):
    whole = b"".join(contents(export(place, tmp_path / "all.zip", shop.shop_id).path).values()).decode(
        "latin-1"
    )

    assert "argon2" not in whole
    assert PASSWORD not in whole
    assert LINK not in whole
    assert (place.secret() or b"").decode() not in whole
    assert "_hash" not in whole.replace("basis_hash", "")


def test_money_is_whole_cents_and_moments_and_days_are_iso(place: Place, shop: ShopInTest, tmp_path: Path):
    parts = contents(export(place, tmp_path / "all.zip", shop.shop_id).path)

    (quote,), (job,) = json.loads(parts["data/quote.json"]), json.loads(parts["data/job.json"])
    assert quote["total_cents"] == 127_200
    assert quote["offer"] == OFFER
    assert job["created_at"] == "2027-03-14T06:30:00.123456+00:00"
    assert job["due_on"] == "2027-05-01"


def test_a_quote_is_printed_as_it_was_sent(place: Place, shop: ShopInTest, tmp_path: Path):
    parts = contents(export(place, tmp_path / "all.zip", shop.shop_id).path)

    text = pypdf.PdfReader(io.BytesIO(parts["papers/quote-4-2.pdf"])).pages[0].extract_text()
    assert "Ida Lund" in text


@pytest.mark.parametrize(
    ("kind", "said"),
    [
        (PaperKind.LUMBER_ORDER, "Lumber order"),
        (PaperKind.CUT_LIST, "Cut list"),
        (PaperKind.JOINT_CARDS, "Joint card"),
        (PaperKind.CAUTION_SHEET, "Caution sheet"),
    ],
)
def test_every_kind_of_paper_is_printed_as_it_was_issued(
    place: Place, tmp_path: Path, kind: PaperKind, said: str
):
    issue(new_shop(None, place.engine, Clock()), kind)

    done = export(place, tmp_path / "all.zip")

    name = f"{kind.value.replace(' ', '-')}-1-1"
    pages = pypdf.PdfReader(io.BytesIO(contents(done.path)[f"papers/{name}.pdf"])).pages
    assert said in pages[0].extract_text()
    assert done.unprinted == ()


def test_a_paper_that_nobody_can_print_any_more_is_named_and_its_content_kept(
    place: Place, shop: ShopInTest, tmp_path: Path
):
    done = export(place, tmp_path / "all.zip", shop.shop_id)

    (paper,) = json.loads(contents(done.path)["data/paper.json"])
    assert done.unprinted == ("cut-list-1-1",)
    assert paper["content"] == {"of another": "time"}


def test_one_json_file_a_folder_and_a_zip_hold_the_same_rows(place: Place, shop: ShopInTest, tmp_path: Path):
    export(place, tmp_path / "all.zip", shop.shop_id)
    export(place, tmp_path / "all.json", shop.shop_id)
    export(place, tmp_path / "all", shop.shop_id)

    zipped = contents(tmp_path / "all.zip")
    one = json.loads((tmp_path / "all.json").read_text(encoding="utf-8"))["data"]
    assert {name: json.loads(zipped[f"data/{name}.json"]) for name in one} == one
    assert {
        path.stem: json.loads(path.read_text(encoding="utf-8"))
        for path in (tmp_path / "all" / "data").iterdir()
    } == one
    assert (tmp_path / "all" / "papers" / "quote-4-2.pdf").read_bytes() == zipped["papers/quote-4-2.pdf"]


@pytest.mark.parametrize("name", ["all.zip", "all.json", "all"])
def test_an_export_replaces_nothing_and_leaves_nothing_half_made(
    place: Place, shop: ShopInTest, tmp_path: Path, name: str
):
    (tmp_path / name).write_text("something else")

    with pytest.raises(FileIsThere):
        export(place, tmp_path / name, shop.shop_id)

    assert (tmp_path / name).read_text() == "something else"
    assert [path.name for path in tmp_path.glob(".*")] == []


def test_of_several_shops_one_must_be_named(place: Place, shop: ShopInTest, tmp_path: Path):
    with pytest.raises(Refused, match=rf"{shop.shop_id}.*The other shop"):
        export(place, tmp_path / "all.zip")

    assert export(place, tmp_path / "all.zip", "Marrow Street Furniture").shop == "Marrow Street Furniture"


def test_both_databases_give_the_same_rows_of_every_kind(fresh_books: Engine, tmp_path: Path):
    fill(fresh_books)
    with fresh_books.connect() as connection:
        first = connection.execute(
            METADATA.tables["shop"].select().where(METADATA.tables["shop"].c.demo)
        ).one()

    done = export(Place(engine=fresh_books, data=tmp_path), tmp_path / "all.json", first.shop_id)

    data = json.loads(done.path.read_text(encoding="utf-8"))["data"]
    assert set(done.rows.values()) == {1}
    assert data["payment"][0]["amount_cents"] == -(2**62)
    assert data["history"][0]["after"]["text"].startswith("½ ⅛")
