"""Files as answers: PDFs on the shop's sheet unless another is asked for; a sentence where there is none."""

import re
from collections.abc import Callable

from starlette.responses import Response

from casewright.papers.pdf import Paper, PapersAreBusy, TooMuchForOnePaper
from casewright.records.people import Shop
from casewright.shop.refusals import NotFound, Refused

POLICY = "default-src 'none'; object-src 'self'; style-src 'unsafe-inline'; frame-ancestors 'none'"
"""A PDF is no page of ours: the browser's own viewer needs its styles."""
NOT_IN_A_NAME = re.compile(r"[^A-Za-z0-9._-]+")


def paper_for(asked: str, shop: Shop) -> Paper:
    """The sheet that an address asks for; the shop's own where it asks for none.

    Raises:
        NotFound: there is no such sheet
    """
    wanted = asked or shop.paper
    if wanted not in set(Paper):
        raise NotFound("sheet: ask for letter or a4")
    return Paper(wanted)


def pdf_answer(name: str, make: Callable[[], bytes]) -> Response:
    """A PDF, shown in the browser under a name that it can be kept by.

    Raises:
        Refused: it would be a book, or others are being made
    """
    try:
        body = make()
    except TooMuchForOnePaper as error:
        raise Refused(str(error), 422) from None
    except PapersAreBusy as error:
        raise Refused(str(error), 503) from None
    return file_answer(f"{name}.pdf", body, "application/pdf", shown=True)


def file_answer(name: str, body: bytes, kind: str, *, shown: bool = False) -> Response:
    """A file, shown or to be kept."""
    plain = NOT_IN_A_NAME.sub("-", name)
    headers = {"content-disposition": f'{"inline" if shown else "attachment"}; filename="{plain}"'}
    if shown:
        headers["content-security-policy"] = POLICY
    return Response(body, media_type=kind, headers=headers)
