"""How every paper is set: for every reader, on its sheet, the same each time, whatever a name holds."""

import logging
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from queue import LifoQueue
from typing import Any

import pytest

from casewright.papers import pdf
from casewright.papers.cleaning import breakable, clean
from casewright.papers.cut_list_pdf import cut_list_pdf
from casewright.papers.joint_cards_pdf import joint_cards_pdf
from casewright.papers.order_pdf import lumber_order_pdf
from casewright.papers.pdf import Paper, PapersAreBusy, TooMuchForOnePaper, render
from casewright.papers.quote_pdf import quote_pdf
from casewright.pieces.words.offer import Party
from pdf_words import words_of
from printed import cards, chest_job, cuts, letters_of, offered, ordered, read, tags_of, text_of

Print = Callable[..., bytes]


def quote_named(name: str, paper: Paper = Paper.LETTER) -> bytes:
    """A quote in which everything that a person types is this name."""
    party = Party(name=name[:200], lines=(name, name))
    return quote_pdf(
        offered(
            offered_by=party,
            customer=party,
            job_name=name,
            job_number=name,
            quote_number=name,
            terms=(name,),
            not_included=(name,),
            cautions=(name,),
        ),
        paper,
    )


def cuts_named(name: str, paper: Paper = Paper.LETTER) -> bytes:
    return cut_list_pdf(cuts(shop=name, job_name=name, job_number=name), paper)


def order_named(name: str, paper: Paper = Paper.LETTER) -> bytes:
    held = ordered(shop=name, job_number=name)
    return lumber_order_pdf(held.model_copy(update={"supplier": name, "remarks": (name,)}), paper)


def cards_named(name: str, paper: Paper = Paper.LETTER) -> bytes:
    return joint_cards_pdf(cards(chest_job(), shop=name, job_name=name, job_number=name), paper)


EVERY = pytest.mark.parametrize(
    "print_named",
    [quote_named, cuts_named, order_named, cards_named],
    ids=["quote", "cuts", "order", "cards"],
)


@EVERY
@pytest.mark.parametrize(
    ("paper", "size"), [(Paper.LETTER, {612.0, 792.0}), (Paper.A4, {595.276, 841.89})], ids=["letter", "a4"]
)
def test_a_paper_is_printed_on_the_sheet_that_was_asked_for(print_named: Print, paper, size):
    boxes = {
        frozenset({round(float(page.mediabox.width), 3), round(float(page.mediabox.height), 3)})
        for page in read(print_named("Elm", paper)).pages
    }

    assert boxes == {frozenset(size)}


@EVERY
def test_a_paper_can_be_followed_by_a_screen_reader(print_named: Print):
    made = print_named("Elm")
    root: Any = read(made).trailer["/Root"]

    assert root["/MarkInfo"]["/Marked"] is True or root["/MarkInfo"]["/Marked"].value is True
    assert root["/Lang"] == "en"
    assert b"<pdfuaid:part>1" in root["/Metadata"].get_data()
    assert {"H1", "Table", "THead", "TH", "TD"} <= set(tags_of(made))


@EVERY
def test_a_paper_is_titled_with_its_number_and_carries_no_clock(print_named: Print):
    about = read(print_named("Elm 7")).metadata

    assert about is not None
    assert "Elm 7" in str(about.title)
    assert "/CreationDate" not in about
    assert "/ModDate" not in about


@EVERY
def test_the_same_paper_is_the_same_bytes(print_named: Print):
    assert print_named("Elm") == print_named("Elm")


@EVERY
def test_words_are_read_the_fast_way_as_pypdf_reads_them_alone(print_named: Print):
    made = print_named("Elm (7) \\\\ ½ [a]")

    alone = [page.extract_text() for page in read(made).pages]

    assert [words_of(page) for page in read(made).pages] == alone


def test_fonts_are_our_own_and_within_the_file():
    page = read(quote_named("Elm")).pages[0]

    fonts = {str(font.get_object()["/BaseFont"]) for font in page["/Resources"]["/Font"].values()}

    assert fonts
    assert [font for font in fonts if "SourceSans3" not in font] == []


@EVERY
@pytest.mark.parametrize(
    "hostile",
    [
        '"); #panic("x") #read("/etc/passwd") *b* $x$ _i_ @l <l> \\ {{7*7}} <script>',
        '#import "quote.typ" #include "order.typ" #(1009*1013)',
        "= Heading\n+ list\n/ term: x",
    ],
    ids=["markup", "code", "lines"],
)
def test_markup_in_a_name_is_printed_as_it_was_typed(print_named: Print, hostile: str):
    printed = text_of(print_named(hostile))

    assert " ".join(hostile.split())[:38] in printed
    assert "1022117" not in printed
    assert "root:" not in printed


@EVERY
@pytest.mark.parametrize("sign", ["漢字", "🪑"])
def test_a_sign_without_a_glyph_neither_stops_a_paper_nor_costs_it_its_tags(print_named: Print, sign: str):
    made = print_named(f"Elm {sign} Workshop")

    assert "Elm" in text_of(made)
    assert {"H1", "TH"} <= set(tags_of(made))


def test_the_log_says_that_a_paper_is_not_declared_accessible(caplog, monkeypatch):
    monkeypatch.setattr(pdf, "_new_engine", lambda ours_alone: OURS(ours_alone=True))

    with caplog.at_level(logging.WARNING):
        order_named("Elm 漢字 Workshop")

    assert [record.message for record in caplog.records] == [
        "order: tagged but not declared PDF/UA-1, for no font has one of its signs"
    ]


OURS = pdf._new_engine


@EVERY
def test_a_name_of_five_thousand_signs_stays_on_the_sheet(print_named: Print):
    usual, long = print_named("Elm"), print_named("W" * 5000)
    width = max(float(page.mediabox.width) for page in read(long).pages)

    # Running text takes 0.4 of its height for a sign; an unbroken name of W would take far more than a line.
    outside = [each for each in letters_of(long) if each.x + 0.4 * each.size * len(each.text) > width]

    assert outside == []
    assert len(read(long).pages) <= len(read(usual).pages) + 12


@pytest.mark.parametrize("said", ["11-3/4", "A-R1-1-SL", "A-N1", "ABC-R12-2-SR", "C-W4"])
def test_a_size_or_a_code_is_not_broken_at_its_hyphen(said: str):
    # each remark begins a little further on, so that the ends of lines fall on every place of what is said
    remarks = tuple("i" * place + f" {said}" * 40 for place in range(1, 16))
    printed = lumber_order_pdf(ordered().model_copy(update={"remarks": remarks}))

    lines = [line.strip() for page in read(printed).pages for line in words_of(page).splitlines()]

    assert sum(line.count(said) for line in lines) >= 15 * 40
    assert [line for line in lines if line.endswith("-")] == []


@EVERY
@pytest.mark.parametrize("sign", ["\u202e", "\u2066", "\x00", "\x1b", "\x0b"])
def test_signs_that_turn_or_control_text_are_left_out(print_named: Print, sign: str):
    assert print_named(f"El{sign}m") == print_named("Elm")


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("plain é ½ 漢字", "plain é ½ 漢字"),
        ("two\r\nlines\tand", "two\nlines\tand"),
        ("a\u202eb\u200fc", "abc"),
        ("half \ud800 a sign", "half  a sign"),
        ({"x": ["\x07", 1, None, True]}, {"x": ["", 1, None, True]}),
    ],
)
def test_text_is_cleaned_through_and_through(typed, kept):
    assert clean(typed) == kept


def test_only_words_too_long_for_a_line_are_given_breaks():
    assert breakable("a hello@hollowelm.example b") == "a hello@hollowelm.example b"
    assert breakable("x" * 33) == "\u200b".join("x" * 33)


def test_a_paper_that_would_be_a_book_is_refused_with_what_would_work():
    with pytest.raises(TooMuchForOnePaper, match="make it for fewer units"):
        render("order", {"title": "x" * 2_000_001})


def test_a_paper_that_waits_too_long_says_so(monkeypatch):
    monkeypatch.setattr(pdf, "_idle", LifoQueue())
    monkeypatch.setattr(pdf, "PATIENCE", 0.01)

    with pytest.raises(PapersAreBusy, match="Ask for this one again"):
        order_named("Elm")


def test_many_papers_at_once_come_out_as_one_by_one():
    one = order_named("Elm")

    with ThreadPoolExecutor(8) as threads:
        many = set(threads.map(lambda _: order_named("Elm"), range(24)))

    assert many == {one}
