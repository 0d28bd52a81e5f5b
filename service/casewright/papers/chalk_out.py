"""The chalk-out sheet: each board drawn with its parts, so that it can be chalked and cut."""

from collections.abc import Iterator, Mapping
from typing import Any

from casewright.measure.lengths import LengthUnit, show_in
from casewright.papers.cautions import cautions_at
from casewright.papers.cleaning import name, words
from casewright.papers.head import loose_head
from casewright.papers.pdf import Paper, render


def chalk_out_pdf(answer: Mapping[str, Any], title: str, paper: Paper = Paper.LETTER) -> bytes:
    """A layout on paper, board by board.

    Args:
        answer: the layout with its drawings, as it is kept
        title: of which job it is, and which layout
        paper: the sheet of paper

    Returns:
        A PDF.
    """
    return render("chalk_out", chalk_out_data(answer, title), paper)


def chalk_out_data(answer: Mapping[str, Any], title: str) -> dict[str, Any]:
    """A layout as it is printed.

    Args:
        answer: the layout with its drawings, as it is kept
        title: of which job it is, and which layout

    Returns:
        Every figure in words, the drawings as SVG.
    """
    unit = LengthUnit(answer["unit"])
    woods = [lot["wood"].partition(",")[0] for lot in answer["lots"]]
    return loose_head("Chalk-out sheet", title, unit, what="For") | {
        "lots": [
            {
                "title": name(" ".join(filter(None, (lot["wood"], lot["class"])))),
                "used": f"{lot['percent_used']:.0f} % becomes parts",
                "troubles": [words(each) for each in trouble_words(lot)],
                "boards": [
                    _board(board, view, unit) for board, view in zip(lot["layouts"], views, strict=True)
                ],
                "bar_views": list(bars),
                "bars": [[words(each) for each in bar_words(bar, unit)] for bar in lot["lengths"]],
            }
            for lot, views, bars in zip(
                answer["lots"],
                answer["drawings"],
                answer.get("length_drawings", [()] * len(answer["lots"])),
                strict=True,
            )
        ],
        "cautions": [words(each) for each in cautions_at("saw", woods, _is_resawn(answer))],
    }


def _is_resawn(answer: Mapping[str, Any]) -> bool:
    """Are any two parts of a layout sawn from one thickness?"""
    boards = (board for lot in answer["lots"] for board in lot["layouts"])
    return any(part.get("second") for board in boards for part in board["parts"])


def trouble_words(lot: Mapping[str, Any]) -> Iterator[str]:
    """What could not be placed, put where it was wanted or kept together, each with its reason.

    Args:
        lot: all boards of one wood and class, as a layout is kept

    Yields:
        Whole sentences.
    """
    for each in lot["unplaced"]:
        times = f" ({each['count']} times)" if each["count"] > 1 else ""
        yield f"{each['code']}{times} has no place: {each['reason']}."
    yield from broken_words(lot)


def broken_words(lot: Mapping[str, Any]) -> Iterator[str]:
    """What could not be put where it was wanted or kept together, each with its reason.

    Args:
        lot: all boards of one wood and class, as a layout is kept

    Yields:
        Whole sentences.
    """
    for each in lot["not_where_put"]:
        yield f"{each['code']} could not be put there: {each['reason']}."
    for each in lot["sets_broken"]:
        yield f"{each['name']} do not match as wanted: {each['reason']}."
    for board in lot["layouts"]:
        if not board.get("stages_kept", True):
            yield (
                f"{board['name']} takes {board['stages']} stages of cuts, more than were asked for: what was "
                "put by hand, matches or found a place late turns the saw once more."
            )


def size_words(piece: Mapping[str, Any], unit: LengthUnit) -> str:
    """Length and width of a board, or of what is left of one.

    Args:
        piece: as a layout is kept
        unit: the shop's unit

    Returns:
        Such as `96 in × 8-5/16 in`.
    """
    return f"{show_in(piece['length_in'], unit)} × {show_in(piece['width_in'], unit)}"


def left_words(piece: Mapping[str, Any], unit: LengthUnit) -> str:
    """What is left of a board: its size, and whether it has a defect or sapwood.

    Args:
        piece: as a layout is kept
        unit: the shop's unit

    Returns:
        A few words.
    """
    return size_words(piece, unit) + ("" if piece["clear"] else ", not clear")


def bar_words(bar: Mapping[str, Any], unit: LengthUnit) -> tuple[str, str, str]:
    """Stock that is only cut to length: its name, its parts from the first end on, what is left.

    Args:
        bar: as a layout is kept
        unit: the shop's unit

    Returns:
        Three texts.
    """
    parts = ", ".join(f"{each['code']} {show_in(each['length_in'], unit)}" for each in bar["parts"])
    called = bar["stock"] if bar["number"] == 1 else f"{bar['stock']} no. {bar['number']}"
    return called, parts, show_in(bar["left_in"], unit)


def _board(board: Mapping[str, Any], view: str, unit: LengthUnit) -> dict[str, Any]:
    return {
        "name": name(board["name"]),
        "size": size_words(board, unit),
        "place": name(board["place"]),
        "view": view,
        "alt": f"{name(board['name'])} with the parts that are cut from it.",
        "steps": [words(step["words"]) for step in board["steps"]],
        "left": [left_words(each, unit) for each in board["left"]],
    }
