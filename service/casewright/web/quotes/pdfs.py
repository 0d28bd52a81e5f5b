"""A quote as PDF, as an answer."""

from functools import lru_cache

from starlette.responses import Response

from casewright.papers.pdf import Paper
from casewright.papers.quote_pdf import quote_pdf
from casewright.pieces.words.offer import Offer
from casewright.web.frame.pdfs import pdf_answer


def quote_answer(offer: Offer, paper: Paper) -> Response:
    """A quote as PDF; an issued one is the same, byte for byte, whenever it is asked for."""
    draft = "" if offer.issued_on else "-draft"
    name = f"{offer.quote_number}-{offer.revision}{draft}"
    return pdf_answer(name, lambda: _quote_bytes(offer.model_dump_json(), paper))


@lru_cache(maxsize=16)
def _quote_bytes(text: str, paper: Paper) -> bytes:
    return quote_pdf(Offer.model_validate_json(text), paper)
