"""Papers for the tests, and what a reader finds in a PDF: its words, its tags, how large its letters are."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import cache, lru_cache
from io import BytesIO
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject

from casewright.drawing.elevation import elevation
from casewright.measure.lengths import LengthUnit
from casewright.papers.cut_list import CutListPaper, cut_list_paper
from casewright.papers.head import PaperHead
from casewright.papers.joint_cards import JointCardsPaper, joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from casewright.papers.order import OrderPaper, order_paper
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.job_estimate import JobEstimate, estimate_job
from casewright.pieces.words.offer import Offer, OfferedOption, Party, offer
from pdf_words import words_of
from units import TODAY, chest, dresser, unit

SHOP = Party(name="Hollow Elm Workshop", lines=("14 Mill Lane", "Ashbury, VT 05401", "802 555 0137"))
CUSTOMER = Party(name="Ada Lindqvist", lines=("7 Orchard Street", "Ashbury, VT 05401"))
PLY = {"kind": "ply", "sheet": "birch plywood", "nominal": "1/4"}


def head(**changes: Any) -> PaperHead:
    """The head of a paper, with some fields changed."""
    usual = {
        "shop": "Hollow Elm Workshop",
        "number": "P-0007",
        "job_number": "2026-014",
        "job_name": "Dresser for Ada Lindqvist",
        "revision": 2,
        "supersedes": 1,
        "issued_on": TODAY,
    }
    return PaperHead(**usual | changes)


@cache
def long_job() -> JobEstimate:
    """A job of three units: worked dresser A, two small chests with ply bottoms, and a wide chest."""
    small = chest({"code": "B", "count": 2, "drawers.bottom": PLY})
    wide = chest(
        {"code": "C", "name": "Wide chest", "body.width": "40", "rows": [{"columns": 2}, {}, {}, {}]}
    )
    return estimate_job((unit(dresser()), unit(small), unit(wide)), example_shop(), TODAY)


@cache
def dresser_job() -> JobEstimate:
    """Worked dresser A as a job of its own."""
    return estimate_job((unit(dresser()),), example_shop(), TODAY)


@cache
def chest_job() -> JobEstimate:
    """A chest of one drawer as a job of its own: its papers are short."""
    return estimate_job((unit(chest({"rows": [{}]})),), example_shop(), TODAY)


def offered(job: JobEstimate | None = None, **changes: Any) -> Offer:
    """A quote for a job, by default for worked dresser A."""
    held = job or dresser_job()
    usual: dict[str, Any] = {
        "offered_by": SHOP,
        "customer": CUSTOMER,
        "job_number": "2026-014",
        "job_name": "Dresser for the north bedroom",
        "quote_number": "Q-0042",
        "revision": 2,
        "issued_on": TODAY,
        "valid_until": date(2026, 12, 25),
        "drawings": {each.unit.spec.code: elevation(each.unit).svg() for each in held.units},
        "options": (
            OfferedOption(
                label="Walnut outside", words="Case and fronts in walnut.", difference_cents=184_500
            ),
            OfferedOption(label="Without the wax", words="", difference_cents=-12_050),
        ),
    }
    return offer(held, example_shop(), **usual | changes)


def cuts(job: JobEstimate | None = None, **changes: Any) -> CutListPaper:
    """The cut list of a job, by default of worked dresser A."""
    held = job or dresser_job()
    return cut_list_paper(head(**changes), [(each.unit, each.takeoff) for each in held.units])


def ordered(job: JobEstimate | None = None, **changes: Any) -> OrderPaper:
    """The lumber order of a job, by default of worked dresser A."""
    held = job or dresser_job()
    return order_paper(
        head(**changes),
        held.order,
        held.sheets,
        held.hardware,
        finishes=held.finishes,
        materials=held.materials,
        counts={each.unit.spec.code: each.takeoff.count for each in held.units},
        supplier="Sawyer & Daughters",
        needed_by=date(2027, 1, 15),
    )


def cards(job: JobEstimate | None = None, **changes: Any) -> JointCardsPaper:
    """The joint cards of a job, by default of worked dresser A."""
    held = job or dresser_job()
    return joint_cards_paper(head(**changes), [each.unit for each in held.units])


@cache
def printed_cards() -> bytes:
    """The joint cards of worked dresser A, printed once for all who read in them."""
    return joint_cards_pdf(cards())


METRIC = {"unit": LengthUnit.MILLIMETRE}


@dataclass(frozen=True)
class Letters:
    """Some letters on a page: where they begin, how large they are [pt]."""

    text: str
    x: float
    size: float


def read(pdf: bytes) -> PdfReader:
    """The PDF, open."""
    return PdfReader(BytesIO(pdf))


def plain(text: str) -> str:
    """Words on one line, without the breaks of no width."""
    return re.sub(r"\s+", " ", text.replace("\u200b", ""))


@lru_cache(maxsize=32)
def pages_of(pdf: bytes, last: int = 0) -> list[str]:
    """The words of each page, or of the last few only: to read one takes as long as to print five."""
    return [plain(words_of(page)) for page in read(pdf).pages[-last:]]


def text_of(pdf: bytes) -> str:
    """All words of a PDF."""
    return " ".join(pages_of(pdf))


def running_text_of(pdf: bytes, foot: str) -> str:
    """All words of a PDF without the foot of its pages, so that a paragraph runs on over a page's end."""
    return plain(" ".join(page.partition(foot)[0] for page in pages_of(pdf)))


def letters_of(pdf: bytes) -> list[Letters]:
    """All letters of a PDF with their places and sizes."""
    found: list[Letters] = []

    def visit(text: str, user: list[float], line: list[float], _font: object, size: float) -> None:
        if text.strip():
            x = user[0] * line[4] + user[2] * line[5] + user[4]
            found.append(Letters(plain(text).strip(), x, abs(user[3] * line[3] * size)))

    for page in read(pdf).pages:
        words_of(page, visitor_text=visit)
    return found


def tags_of(pdf: bytes) -> list[str]:
    """The tags of the PDF's structure, in reading order."""
    root = read(pdf).trailer["/Root"]
    return list(_tags(root["/StructTreeRoot"]["/K"]))


def _tags(node: Any) -> Iterator[str]:
    held = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(held, ArrayObject):
        for each in held:
            yield from _tags(each)
    elif isinstance(held, DictionaryObject):
        if "/S" in held:
            yield str(held["/S"]).removeprefix("/")
        if "/K" in held:
            yield from _tags(held["/K"])


def alternatives_of(pdf: bytes) -> list[str]:
    """The words that stand for pictures where they cannot be seen."""
    root = read(pdf).trailer["/Root"]
    return list(_alternatives(root["/StructTreeRoot"]["/K"]))


def _alternatives(node: Any) -> Iterator[str]:
    held = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(held, ArrayObject):
        for each in held:
            yield from _alternatives(each)
    elif isinstance(held, DictionaryObject):
        if "/Alt" in held:
            yield str(held["/Alt"])
        if "/K" in held:
            yield from _alternatives(held["/K"])
