"""The chalk-out sheet: each board drawn with its parts, so that it can be chalked and cut."""

from collections.abc import Iterator, Mapping, Sequence
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
                "troubles": [words(each) for each in _troubles(lot, reasons)],
                "boards": [
                    _board(board, view, unit) for board, view in zip(lot["layouts"], views, strict=True)
                ],
                "bars": [_bar(each, unit) for each in lot["lengths"]],
            }
            for lot, views, reasons in zip(answer["lots"], answer["drawings"], answer["reasons"], strict=True)
        ],
        "cautions": [words(each) for each in cautions_at("saw", woods)],
    }


def _troubles(lot: Mapping[str, Any], reasons: Sequence[str]) -> Iterator[str]:
    for each, reason in zip(lot["unplaced"], reasons, strict=True):
        yield f"{each['code']} × {each['count']} has no place: {reason}."
    for each in lot["sets_broken"]:
        yield f"{each['name']}: the grain does not match as wanted: {each['reason']}."


def _board(board: Mapping[str, Any], view: str, unit: LengthUnit) -> dict[str, Any]:
    called = board["stock"] if board["number"] == 1 else f"{board['stock']} no. {board['number']}"
    return {
        "name": name(called),
        "size": f"{show_in(board['length_in'], unit)} × {show_in(board['width_in'], unit)}",
        "place": name(board["place"]),
        "view": view,
        "alt": f"{name(called)} with the parts that are cut from it.",
        "steps": [words(step["words"]) for step in board["steps"]],
        "left": [
            f"{show_in(each['length_in'], unit)} × {show_in(each['width_in'], unit)}"
            + ("" if each["clear"] else ", not clear")
            for each in board["left"]
        ],
    }


def _bar(bar: Mapping[str, Any], unit: LengthUnit) -> list[str]:
    called = bar["stock"] if bar["number"] == 1 else f"{bar['stock']} no. {bar['number']}"
    parts = ", ".join(f"{name(each['code'])} {show_in(each['length_in'], unit)}" for each in bar["parts"])
    return [name(called), parts, show_in(bar["left_in"], unit)]
