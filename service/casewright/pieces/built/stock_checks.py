"""Checks of the stock: can the boards be had, and do they leave room to plane?"""

from collections.abc import Iterator

from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say, strung
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.parts import FaceClass, PartLine
from casewright.wood.rough import rough_width
from casewright.wood.sheets import label_area, sheets
from casewright.wood.thickness import flattening_loss, thickness_class

LONG = 36.0
"""A part longer than this has to be flattened before it is thicknessed (common practice) [in]."""
SINGLE = {FaceClass.SHOW, FaceClass.DRAWER}


def stock_checks(spec: UnitSpec, lines: tuple[PartLine, ...], shop: Shop) -> Iterator[Finding]:
    """The checks of the boards that the parts come from.

    Args:
        spec: what the maker chose
        lines: the cut list of the unit
        shop: the boards that the shop can get

    Returns:
        The findings, passes too.

    Source: common practice; surfaced thickness by the NHLA rules.
    """
    yield _wide_boards(spec, lines, shop)
    yield from _glued_fronts(lines, shop)
    yield _class_limits(spec, lines)
    yield from _label(spec, lines)


def _names(lines: list[PartLine]) -> str:
    return ", ".join(dict.fromkeys(line.line for line in lines))


def _wide_boards(spec: UnitSpec, lines: tuple[PartLine, ...], shop: Shop) -> Finding:
    """Parts that come from one board each, but from a wider one than most."""
    over, widest = shop.spec.wide_over, shop.spec.widest_board
    wide = [
        line
        for line in lines
        if not line.part.sheet and line.part.width <= widest and rough_width(line.part.width) > over
    ]
    needs = strung(", ", (say("{} {:fraction}", line.line, rough_width(line.part.width)) for line in wide))
    return Finding(
        rule="wide boards",
        verdict=Verdict.CAUTION if wide else Verdict.PASS,
        message=(
            say("Rough widths over {}: {}.", over, needs)
            if wide
            else say("No board need be over {} wide.", over)
        ),
        remedy=(
            "Pick wide boards at the yard, or glue one panel in order and rip the parts from it."
            if wide
            else ""
        ),
        about=_names(wide),
        found=max((rough_width(line.part.width) for line in wide), default=None),
        needed=over,
    )


def _glued_fronts(lines: tuple[PartLine, ...], shop: Shop) -> Iterator[Finding]:
    """Drawer parts wider than any board to be had: they are glued up, and the joint shows on a front."""
    widest_board = shop.spec.widest_board
    glued = [line for line in lines if line.part.line[0] in "FSKU" and line.part.width > widest_board]
    if glued:
        widest = max(line.part.width for line in glued)
        yield Finding(
            rule="glued drawer parts",
            verdict=Verdict.CAUTION,
            message=say(
                "{}: up to {} wide, over the {:bare} of the widest clear board, so they are glued up.",
                _names(glued),
                widest,
                widest_board,
            ),
            remedy="Match the joint on the fronts, find wider boards, or add a row.",
            about=_names(glued),
            found=float(widest),
            needed=float(widest_board),
        )


def _class_limits(spec: UnitSpec, lines: tuple[PartLine, ...]) -> Finding:
    """Parts finished within 1/16 in of what their class gives, and too long to be planed without loss."""
    tight = []
    for line in lines:
        part = line.part
        if part.sheet or part.length <= LONG:
            continue
        bought = thickness_class(part.thickness)
        if part.thickness > bought.surfaced - flattening_loss() + 1e-9:
            tight.append(line)
    thick = max((line.part.thickness for line in tight), default=0.0)
    return Finding(
        rule="class",
        verdict=Verdict.CAUTION if tight else Verdict.PASS,
        message=(
            say("Long parts finished at the limit of their class: {}, up to {} thick.", _names(tight), thick)
            if tight
            else "Every part leaves room to flatten in its thickness class."
        ),
        remedy=(
            say("Pick straight boards, finish them {} thinner, or buy a class up.", flattening_loss())
            if tight
            else ""
        ),
        about=_names(tight),
        found=thick or None,
        source="NHLA rules, standard thickness of surfaced lumber; the allowance is common practice",
    )


def _label(spec: UnitSpec, lines: tuple[PartLine, ...]) -> Iterator[Finding]:
    """Large faces of composite wood carry a label."""
    of_sheets = [line for line in lines if line.part.sheet]
    if of_sheets:
        composite = {str(sheet) for sheet in sheets() if sheet.composite}
        large = [
            line
            for line in of_sheets
            if line.part.wood in composite and line.part.width * line.part.length > label_area()
        ]
        yield Finding(
            rule="composite-wood label",
            verdict=Verdict.CAUTION if large else Verdict.PASS,
            message=(
                f"{_names(large)}: a face over {label_area():g} sq in of composite wood, so it is labelled."
                if large
                else f"No composite-wood face is over {label_area():g} sq in."
            ),
            remedy=(
                "Use compliant sheets, keep the invoice, label the piece; confirm the rule where you sell."
                if large
                else ""
            ),
            about=_names(large),
            found=max((line.part.width * line.part.length for line in large), default=None),
            needed=label_area(),
            source="40 CFR 770 (TSCA title VI)",
        )
