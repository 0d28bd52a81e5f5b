"""The one place that sets type: a template of `templates/papers` and plain data become the bytes of a PDF.

Data goes in as JSON and is read as values: nothing that a person typed is ever read as markup. The files that
a template may read are those beside it; there is no network and no clock in it, so the same data gives the
same bytes. Type cannot be stopped once it is being set: what bounds the time is how much one paper may hold,
and that only a few are set at once, in an engine each (an engine serves one thread at a time).
"""

import json
import logging
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from enum import StrEnum
from queue import Empty, LifoQueue
from typing import Any

from typst import Compiler, TypstError

from casewright import folders
from casewright.papers.cleaning import clean

LOG = logging.getLogger(__name__)
ACCESSIBLE = ["ua-1"]
"""The standard for PDFs that a screen reader can follow, ISO 14289-1; it refuses a sign that no font has."""
NO_GLYPH = "could not be displayed"
MOST = 2_000_000
"""Signs of data that one paper may hold, drawings and all: a cut list of 2,300 parts has 600,000."""
ENGINES = 2
PATIENCE = 20.0
"""How long a paper waits for its turn [s]."""


class Paper(StrEnum):
    """The sheet that a paper is printed on."""

    LETTER = "letter"
    A4 = "a4"


TYPST_PAPER = {Paper.LETTER: "us-letter", Paper.A4: "a4"}


class TooMuchForOnePaper(ValueError):
    """More than one paper can hold; the message says what would work."""


class PapersAreBusy(RuntimeError):
    """Other papers are being made, and took longer than anybody should wait."""


_idle: LifoQueue[Compiler | None] = LifoQueue()
for _ in range(ENGINES):
    _idle.put(None)


def render(template: str, data: Mapping[str, Any], paper: Paper = Paper.LETTER) -> bytes:
    """A paper as PDF: tagged, titled, set in our own fonts.

    Args:
        template: the name of a template, such as `quote`
        data: what it shows, as plain values ready to be printed
        paper: the sheet

    Returns:
        The bytes; the same for the same data. A sign that our fonts lack comes from a font of this computer;
        where none has it, the PDF is tagged but not declared to follow the accessibility standard, and the
        log says so.

    Raises:
        TooMuchForOnePaper: the data would make a book
        PapersAreBusy: no engine came free in time
    """
    asked = json.dumps(clean(data) | {"sheet": TYPST_PAPER[paper]}, ensure_ascii=False)
    if len(asked) > MOST:
        raise TooMuchForOnePaper(
            f"This paper would hold {len(asked):,} signs, and one holds {MOST:,}: make it for fewer units."
        )
    with _engine() as engine:
        try:
            return _set(engine, template, asked, ACCESSIBLE)
        except TypstError as error:
            if NO_GLYPH not in str(error):
                raise
            return _with_other_fonts(template, asked)


def _with_other_fonts(template: str, asked: str) -> bytes:
    """A paper with a sign that our fonts lack: in the fonts of this computer, if one of them has it."""
    engine = _new_engine(ours_alone=False)
    try:
        return _set(engine, template, asked, ACCESSIBLE)
    except TypstError as error:
        if NO_GLYPH not in str(error):
            raise
        LOG.warning("%s: tagged but not declared PDF/UA-1, for no font has one of its signs", template)
        return _set(engine, template, asked, None)


@contextmanager
def _engine() -> Iterator[Compiler]:
    """An engine for the one paper that is being set."""
    try:
        engine = _idle.get(timeout=PATIENCE)
    except Empty:
        raise PapersAreBusy("Other papers are being made. Ask for this one again in a minute.") from None
    try:
        engine = engine or _new_engine(ours_alone=True)
        yield engine
    finally:
        _idle.put(engine)


def _new_engine(*, ours_alone: bool) -> Compiler:
    return Compiler(
        root=folders.templates() / "papers",
        font_paths=[folders.static() / "fonts"],
        ignore_system_fonts=ours_alone,
    )


def _set(engine: Compiler, template: str, asked: str, standards: Any) -> bytes:
    """The PDF, without a date of its own: only what the paper says tells when it was issued."""
    made = engine.compile(
        input=folders.templates() / "papers" / f"{template}.typ",
        sys_inputs={"data": asked},
        pdf_standards=standards,
        timestamp=0,
    )
    if not isinstance(made, bytes):
        raise TypeError(f"a PDF is one row of bytes, not {type(made).__name__}")
    return made
