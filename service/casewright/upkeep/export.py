"""Everything of a shop as open JSON, with the papers that it issued: for other programs, and for leaving."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from pydantic import ValidationError
from sqlalchemy import Connection
from typst import TypstError

from casewright import __version__
from casewright.papers.kinds import KINDS
from casewright.papers.pdf import Paper as Sheet
from casewright.papers.pdf import PapersAreBusy, TooMuchForOnePaper
from casewright.papers.quote_pdf import quote_pdf
from casewright.pieces.words.offer import Offer
from casewright.records.engine import newest_revision
from casewright.records.papers import PaperKind
from casewright.records.people import Shop
from casewright.records.sessions import across_shops
from casewright.upkeep.backup import one_moment
from casewright.upkeep.forms import TableForm, tables_of
from casewright.upkeep.place import Place
from casewright.upkeep.rows import rows_of
from casewright.upkeep.sinks import Sink, sink_for
from casewright.upkeep.users import the_shop

FORM = 1
QUOTE = "quote"
"""What an offer is called among the kinds of papers."""
NOT_OF_THE_SHOP = {"attempt", "house", "key_link", "once", "sign_in"}
"""What belongs to the installation, or opens a door."""
SECRET_COLUMNS = {"password_hash", "token_hash", "link_hash", "link_serial"}
UNPRINTABLE = (ValidationError, TypstError, TooMuchForOnePaper, PapersAreBusy, ValueError)
README = """\
{shop}: everything that casewright {version} kept of this shop, at {at}.

The form of this export is {form}. Each file in data/ is one table: a JSON array of its rows, in the order of
their ids. A value that is not there is left out of its row.

- ids join the tables: job.customer_id is the id of a row of customer, and so on.
- *_cents are whole cents of {currency}; sizes say their unit, or are text as it was typed.
- *_at and at are moments, in UTC with their offset; *_on are days, as 2027-03-01.
- shop_figures holds every revision of the shop's rates, prices and standards; shop.figures names the present.
- unit_revision.spec is what the maker chose; unit.revision names the present one.
- quote.offer is what the customer read, quote.basis what it was made from; paper.content a paper.
- history, bench_event, time_entry and payment are written once; a correction is a row of its own.

Passwords, sign-ins and the keys of links are not in it. The papers that were issued are in papers/, as PDF.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exported:
    """An export.

    Attributes:
        path: where it is
        shop: the shop's name
        rows: how many rows each table has
        papers: how many papers were printed
        unprinted: the papers that could not be; their content is in the data
    """

    path: Path
    shop: str
    rows: dict[str, int]
    papers: int
    unprinted: tuple[str, ...]


def export(place: Place, target: Path, shop: str | None = None, *, overwrite: bool = False) -> Exported:
    """Writes everything of a shop, of one moment.

    Args:
        place: where the data are
        target: a .zip file, a .json file (without papers), or a folder that is not there yet
        shop: the shop's name or id; None for the only one
        overwrite: whether a file of this name may be replaced

    Returns:
        What was written.

    Raises:
        FileIsThere: there is something of this name
        Refused: the shop is not clear
    """
    with across_shops(place.engine) as db:
        held = the_shop(db, shop)
    rows: dict[str, int] = {}
    unprinted: list[str] = []
    printed = 0
    with one_moment(place.engine) as connection, sink_for(target, overwrite=overwrite) as sink:
        sink.text("README.txt", _about(held))
        for form in tables_of(newest_revision()):
            if form.name not in NOT_OF_THE_SHOP:
                rows[form.name] = sink.rows(form.name, _rows(connection, form, held.shop_id))
        if sink.takes_papers:
            printed, unprinted = _print(connection, held, sink)
        sink.facts(
            {"form": FORM, "program": __version__, "at": _now(), "shop": held.name, "rows": rows}
            | {"papers": printed, "unprinted": unprinted}
        )
    return Exported(path=target, shop=held.name, rows=rows, papers=printed, unprinted=tuple(unprinted))


def _now() -> str:
    return datetime.now(UTC).isoformat(timespec="seconds")


def _about(shop: Shop) -> str:
    return README.format(shop=shop.name, version=__version__, at=_now(), form=FORM, currency=shop.currency)


def _rows(connection: Connection, form: TableForm, shop_id: str) -> Iterator[dict[str, Any]]:
    for row in rows_of(connection, form, shop_id):
        yield {name: value for name, value in row.items() if name not in SECRET_COLUMNS}


def _print(connection: Connection, shop: Shop, sink: Sink) -> tuple[int, list[str]]:
    """Prints every paper that was issued; says how many, and which could not be."""
    printed, unprinted = 0, []
    for name, paper, content in _issued(connection, shop.shop_id):
        try:
            sink.file(f"papers/{name}.pdf", _pdf(paper, content, Sheet(shop.paper)))
            printed += 1
        except UNPRINTABLE:
            unprinted.append(name)
    return printed, unprinted


def _issued(connection: Connection, shop_id: str) -> Iterator[tuple[str, str, dict[str, Any]]]:
    forms = {form.name: form for form in tables_of(newest_revision())}
    for row in rows_of(connection, forms["quote"], shop_id):
        if row.get("offer"):
            yield f"quote-{row['number']}-{row['revision']}", QUOTE, row["offer"]
    for row in rows_of(connection, forms["paper"], shop_id):
        kind = row["kind"]
        # Beside the paper, its content holds what it was made from; one that is of another form stays whole.
        paper = row["content"].get("paper", row["content"])
        yield f"{kind.replace(' ', '-')}-{row['number']}-{row['revision']}", kind, paper


def _pdf(kind: str, content: dict[str, Any], sheet: Sheet) -> bytes:
    if kind == QUOTE:
        return quote_pdf(Offer.model_validate(content), sheet)
    held = KINDS[PaperKind(kind)]
    return held.pdf(held.read(content), sheet)
