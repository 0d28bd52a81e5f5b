"""The kinds of papers that a shop issues: how each is read back, shown and printed."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from casewright.papers.caution_sheet import CautionSheetPaper
from casewright.papers.caution_sheet_pdf import caution_sheet_data, caution_sheet_pdf
from casewright.papers.csv_files import cut_list_csv, lumber_order_csv
from casewright.papers.cut_list import CutListPaper
from casewright.papers.cut_list_pdf import cut_list_data, cut_list_pdf
from casewright.papers.dxf import dxf_of
from casewright.papers.joint_cards import JointCardsPaper
from casewright.papers.joint_cards_pdf import joint_cards_data, joint_cards_pdf, joint_templates_pdf
from casewright.papers.order import OrderPaper
from casewright.papers.order_pdf import lumber_order_pdf, order_data
from casewright.papers.pdf import Paper as Sheet
from casewright.records.papers import PaperKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """One kind of paper.

    Attributes:
        slug: its name in an address
        title: its name
        for_bench: whether the bench reads it
        read: the paper, from what is kept
        data: what is read on page and paper
        pdf: the paper as PDF
        csv: the paper as CSV; None where it has none
        templates: what is marked on the boards, in full size, as PDF; None where it has none
        dxf: likewise, as DXF
    """

    slug: str
    title: str
    for_bench: bool
    read: Callable[[Mapping[str, Any]], Any]
    data: Callable[[Any], dict[str, Any]]
    pdf: Callable[[Any, Sheet], bytes]
    csv: Callable[[Any], bytes] | None = None
    templates: Callable[[Any, Sheet], bytes] | None = None
    dxf: Callable[[Any], bytes] | None = None


def _order(held: OrderPaper, sheet: Sheet) -> bytes:
    return lumber_order_pdf(held, sheet)


KINDS: Mapping[PaperKind, Kind] = MappingProxyType(
    {
        PaperKind.LUMBER_ORDER: Kind(
            slug="lumber-order",
            title="Lumber order",
            for_bench=False,
            read=OrderPaper.model_validate,
            data=lambda held: order_data(held, for_shop=True),
            pdf=_order,
            csv=lumber_order_csv,
        ),
        PaperKind.CUT_LIST: Kind(
            slug="cut-list",
            title="Cut list",
            for_bench=True,
            read=CutListPaper.model_validate,
            data=cut_list_data,
            pdf=cut_list_pdf,
            csv=cut_list_csv,
        ),
        PaperKind.JOINT_CARDS: Kind(
            slug="joint-cards",
            title="Joint cards",
            for_bench=True,
            read=JointCardsPaper.model_validate,
            data=joint_cards_data,
            pdf=joint_cards_pdf,
            templates=joint_templates_pdf,
            dxf=lambda held: dxf_of(strip.named() for strip in held.strips),
        ),
        PaperKind.CAUTION_SHEET: Kind(
            slug="caution-sheet",
            title="Caution sheet",
            for_bench=False,
            read=CautionSheetPaper.model_validate,
            data=caution_sheet_data,
            pdf=caution_sheet_pdf,
        ),
    }
)
"""Every kind beside the quote, which is an offer and has a page and a link of its own."""
