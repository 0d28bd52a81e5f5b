"""The width, length and height that a drawer gets from what it runs on."""

from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import AppliedFront
from casewright.pieces.asked.drawer_spec import Drawers
from casewright.pieces.asked.running_spec import OnSlides
from casewright.pieces.asked.slide_spec import GOVERNS, OwnSlide
from casewright.pieces.layout.openings import Opening
from casewright.pieces.rules import drawer_rules as rules
from casewright.pieces.rules import slide_rules

SMALL = 12.0
"""An opening up to this wide (and deep) gets the clearances of small work (common practice) [in]."""
SMALL_SIDE_GAP, SIDE_GAP = 1 / 64, 1 / 32
SMALL_BACK_GAP, BACK_GAP = 1 / 8, 1 / 4
CHOSEN_GAP = "chosen by the size of the opening (common practice); type your own as drawers.clearances"


def side_gap(opening: Opening, drawers: Drawers, under: Ledger) -> Inches:
    """Clearance at each side of a drawer in its opening: typed, or by the size of the opening.

    Args:
        opening: the hole it goes into
        drawers: what the maker chose
        under: keeps the working

    Returns:
        The clearance [in]

    Source: common practice.
    """
    if drawers.clearances.side is not None:
        return drawers.clearances.side
    gap = SMALL_SIDE_GAP if opening.designed_width <= SMALL else SIDE_GAP
    return under.given("side_gap", gap, CHOSEN_GAP, Inches)


def _back_gap(opening: Opening, drawers: Drawers, under: Ledger) -> Inches:
    if drawers.clearances.back is not None:
        return drawers.clearances.back
    gap = SMALL_BACK_GAP if opening.designed_width <= SMALL and opening.designed_depth <= SMALL else BACK_GAP
    return under.given("back_gap", gap, CHOSEN_GAP, Inches)


def box_width(
    opening: Opening,
    drawers: Drawers,
    slide: OwnSlide | None,
    sides: tuple[Inches, Inches],
    under: Ledger,
) -> Inches:
    """The width of a drawer over its sides.

    Args:
        opening: the hole it goes into
        drawers: what the maker chose
        slide: the slide it runs on; None for wood
        sides: thickness of the left and of the right side [in]
        under: keeps the working

    Returns:
        The width [in]

    Source: common practice; of slides the maker's sheet.
    """
    if slide is None:
        gap = side_gap(opening, drawers, under)
        return under.take("width", rules.drawer_width, opening=opening.width, side_gap=gap)
    if slide.deduction is not None and slide.is_under:
        return under.take(
            "width",
            slide_rules.under_mount_box_width,
            opening=opening.width,
            deduction=under.given("slide_deduction", slide.deduction, GOVERNS, Inches),
            left_side=sides[0],
            right_side=sides[1],
        )
    return under.take(
        "width",
        slide_rules.slide_box_width,
        opening=opening.width,
        space=under.given("slide_space", slide.space, GOVERNS, Inches),
        most=slide.space_most,
    )


def box_length(
    opening: Opening, drawers: Drawers, slide: OwnSlide | None, shrinkage: Inches, face: Inches, under: Ledger
) -> Inches:
    """The length of a drawer, front to back.

    Args:
        opening: the hole it goes into
        drawers: what the maker chose
        slide: the slide it runs on; None for wood
        shrinkage: how much shallower the case gets when driest [in]
        face: thickness of the front that is seen, as measured or as drawn [in]
        under: keeps the working

    Returns:
        The length over front and sides; on slides one of their lengths, with an applied front before it, or
        0 where none goes in [in]

    Source: common practice; of slides the maker's sheet.
    """
    inset = drawers.stops.inset
    if slide is None:
        return under.take(
            "length",
            rules.drawer_length,
            depth=opening.depth - inset,
            back_gap=_back_gap(opening, drawers, under),
            shrinkage=shrinkage,
        )
    applied = before_the_box(drawers, face)
    length = slide_length(drawers, slide, slide_room(opening, drawers, slide, shrinkage, applied, under))
    if not length:
        return 0.0
    return under.take(
        "length",
        slide_rules.on_slides,
        slide=under.given("slide_length", length, f"of the table of slides; {GOVERNS}", Inches),
        front=applied,
    )


def before_the_box(drawers: Drawers, face: Inches) -> Inches:
    """What of an opening's depth a show front takes up that is screwed to the box within it [in]."""
    return face if isinstance(drawers.style, AppliedFront) else 0.0


def slide_room(
    opening: Opening, drawers: Drawers, slide: OwnSlide, shrinkage: Inches, applied: Inches, under: Ledger
) -> Inches:
    """The longest slide that goes into an opening, behind what a show front takes up [in]."""
    return under.take(
        "slide_room",
        slide_rules.slide_room,
        depth=opening.depth - drawers.stops.inset,
        front=applied,
        behind=slide.behind,
        shrinkage=shrinkage,
    )


def slide_length(drawers: Drawers, slide: OwnSlide, room: Inches) -> Inches:
    """The length that was typed, else the longest of the table that goes in; 0 where none does [in]."""
    if isinstance(drawers.running, OnSlides) and drawers.running.length is not None:
        return drawers.running.length
    return max((each for each in slide.lengths if each <= room + 1e-9), default=0.0)


def box_height(
    opening: Inches, height: Inches, drawers: Drawers, slide: OwnSlide | None, under: Ledger
) -> Inches:
    """The height of a drawer's sides: behind a show front no more than the headroom of its slides leaves.

    Args:
        opening: height of the opening [in]
        height: height by the opening and the seasons [in]
        drawers: what the maker chose
        slide: the slide it runs on; None for wood
        under: keeps the working

    Returns:
        The height [in]

    Source: common practice; of slides the maker's sheet.
    """
    if slide is None or not drawers.has_box_front:
        return height
    headroom = under.given("slide_headroom", slide.headroom, GOVERNS, Inches)
    most = under.take("box_height", slide_rules.slide_box_height, opening=opening, headroom=headroom)
    return min(height, most)
