"""The words of a PDF's page, read fast: pypdf takes a page apart sign by sign, which is most of its work.

Here it comes apart by whole operators, and those that only draw are left out. What text the others mean and
where it stands is pypdf's own reading; `tests/papers/test_papers_pdf.py` holds that both give the same.
"""

import re
from functools import cache
from io import BytesIO
from typing import Any

from pypdf import PageObject
from pypdf.generic import ArrayObject, ContentStream, NameObject

NUMBER = rb"[-+.\d]+"
STRING = rb"\((?:[^()\\]++|\\.|\((?:[^()\\]++|\\.)*+\))*+\)"
ROW = rb"\[(?:[-+.\d\s]++|" + STRING + rb")*+\]"
OPERATION = re.compile(
    rb"((?:" + NUMBER + rb"\s+)*+)([A-Za-z'\"][\w*]*+)"  # with the numbers before it
    rb"|/([^\s()<>\[\]{}/%]+)"  # a name
    rb"|(" + STRING + rb"|" + ROW + rb"|" + NUMBER + rb")",
    re.DOTALL,
)
OF_A_ROW = re.compile(STRING + rb"|" + NUMBER, re.DOTALL)
ESCAPED = re.compile(rb"\\([0-7]{1,3}|.)", re.DOTALL)
MEANT = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
OF_TEXT = {b"q", b"Q", b"cm", b"Do", b"BT", b"ET", b"'", b'"'} | {
    b"T" + each for each in (b"*", b"c", b"d", b"D", b"f", b"j", b"J", b"L", b"m", b"w", b"z")
}
"""What sets, moves and shows text. ISO 32000-1, tables 57, 87, 105 to 109."""


class Words(ContentStream):
    """The content of a page, of which only what text needs is taken."""

    def _parse_content_stream(self, stream: BytesIO) -> None:
        operands: list[Any] = []
        for numbers, operator, name, value in OPERATION.findall(stream.getvalue()):
            if operator in OF_TEXT:
                self._operations.append(([*operands, *map(float, numbers.split())], operator))
            if operator:
                operands = []
            else:
                operands.append(NameObject(f"/{name.decode()}") if name else meant(value))


@cache
def meant(value: bytes) -> Any:
    """A number, a string or a row of both."""
    if value.startswith(b"("):
        return ESCAPED.sub(_unescaped, value[1:-1])
    if value.startswith(b"["):
        return ArrayObject(map(meant, OF_A_ROW.findall(value)))
    return float(value)


def _unescaped(found: re.Match[bytes]) -> bytes:
    sign = found[1]
    return bytes([int(sign, 8)]) if sign.isdigit() else MEANT.get(sign, sign)


def words_of(page: PageObject, **more: Any) -> str:
    """What pypdf makes of a page's text; the page is then good for nothing else."""
    page[NameObject("/Contents")] = Words(page["/Contents"], page.pdf, "bytes")
    return page.extract_text(**more)
