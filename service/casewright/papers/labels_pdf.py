"""Labels for boards, sheets and offcuts, on a sheet to be cut up: the code to be read across the rack."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from casewright.papers.cleaning import name
from casewright.papers.pdf import Paper, render

MOST = 400
"""More labels are not printed at once."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """One label.

    Attributes:
        code: such as B12, O7 or S3
        sort: the wood with class and grade, or what a sheet is of
        size: width and length, in words
        facts: moisture, log, place, job and day, each in words; those that are not known are left out
    """

    code: str
    sort: str
    size: str
    facts: tuple[str, ...]


def labels_pdf(shop: str, labels: Sequence[Label], paper: Paper = Paper.LETTER) -> bytes:
    """The labels as PDF, in the order in which they come.

    Args:
        shop: the shop's name
        labels: the labels
        paper: the sheet

    Returns:
        A PDF.
    """
    return render("labels", labels_data(shop, labels), paper)


def labels_data(shop: str, labels: Sequence[Label]) -> dict[str, Any]:
    """The labels as they are printed.

    Args:
        shop: the shop's name
        labels: the labels

    Returns:
        Every one in words.
    """
    return {
        "title": f"Labels of {name(shop)}: {labels[0].code} to {labels[-1].code}" if labels else "Labels",
        "shop": name(shop),
        "foot": f"Labels · {name(shop)}",
        "is_draft": False,
        "labels": [
            {
                "code": each.code,
                "sort": name(each.sort, 60),
                "size": each.size,
                "facts": [name(fact, 40) for fact in each.facts],
            }
            for each in labels[:MOST]
        ],
    }
