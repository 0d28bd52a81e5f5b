"""Checks of the face: does every stack close, does every row, and do the openings suit what they are for?"""

from collections.abc import Iterator
from itertools import pairwise

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import FullOverlay
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.floors import lays_floors, over_frames
from casewright.pieces.layout.openings import Face, FaceRow, Stack
from casewright.pieces.layout.row_heights import row_words

STEEPEST_GRADUATION = 2.0
LOWEST_OPENING = 2.0
ROUNDING = 1 / 16
"""Openings are rounded to this, and the lowest takes what all the others leave [in]."""
BESIDE_DRAWN = 1 / 4
"""A case comes out nearer to its drawing than this; a size further off is of another opening, or of another
design (common practice) [in]."""
KNEES_WIDE, KNEES_HIGH = 24.0, 24.0
"""The least room for the knees of somebody who sits at a desk (common practice) [in]."""


def face_checks(spec: UnitSpec, face: Face) -> Iterator[Finding]:
    """The checks of the face.

    Args:
        spec: what the maker chose
        face: its stacks, rows and openings

    Yields:
        The findings, passes too.

    Source: common practice.
    """
    yield _whole(spec, face)
    for row in face.rows:
        yield _columns(spec, row)
    for stack in face.stacks[1:]:
        yield _stack(spec, stack)
        for row in stack.rows:
            yield _columns_of(spec, stack, row)
    for stack in face.stacks:
        yield from _graduation(spec, stack)
    yield from _low(spec, face)
    yield from _measured(spec, face)
    yield from _knees(face)
    yield from _floors(spec, face)


def _whole(spec: UnitSpec, face: Face) -> Finding:
    """Openings, dividers and rails add up to the body, to nothing over."""
    frame = spec.frame
    openings = sum(row.height for row in face.rows)
    between = frame.upper + frame.lower + (len(face.rows) - 1) * frame.divider
    over = abs(openings + between - face.body_height)
    return at_most(
        "stack closes",
        over,
        0.0,
        say(
            "Openings of {:bare} and {:bare} of rails and dividers make a body of {}.",
            openings,
            between,
            face.body_height,
        ),
        say("The heights are {} apart; leave one of them out.", over),
    )


def _stack(spec: UnitSpec, stack: Stack) -> Finding:
    """Openings and dividers of a stack within a column add up to its row, to nothing over."""
    openings = sum(row.height for row in stack.rows)
    between = (len(stack.rows) - 1) * spec.frame.divider
    over = abs(openings + between - stack.height)
    return at_most(
        "stack closes",
        over,
        0.0,
        say(
            "{}: openings of {:bare} and {:bare} of dividers make a stack of {}.",
            _start(stack.code),
            openings,
            between,
            stack.height,
        ),
        say("The heights are {} apart; leave one of them out.", over),
        about=stack.code,
    )


def _start(code: str) -> Words:
    """A row or column at the start of a sentence."""
    words = row_words(code)
    return f"{words[0].upper()}{words[1:]}"


def _columns(spec: UnitSpec, row: FaceRow) -> Finding:
    """Opening widths, uprights and sides add up to the width, to nothing over."""
    widths = sum(cell.width for cell in row.cells)
    total = widths + (len(row.cells) - 1) * spec.frame.upright + 2 * spec.frame.side
    over = abs(total - spec.body.width)
    return at_most(
        "columns close",
        over,
        0.0,
        say(
            "Row {:d}: openings of {:bare} with {} make {} of {:bare}.",
            row.number,
            widths,
            "the legs" if spec.legs else "uprights and sides",
            total,
            spec.body.width,
        ),
        say("The widths are {} apart; leave one of them out.", over),
        about=row.code,
    )


def _columns_of(spec: UnitSpec, stack: Stack, row: FaceRow) -> Finding:
    """Opening widths and uprights of a row add up to its stack, to nothing over."""
    widths = sum(cell.width for cell in row.cells)
    total = widths + (len(row.cells) - 1) * spec.frame.upright
    over = abs(total - stack.width)
    return at_most(
        "columns close",
        over,
        0.0,
        say(
            "{}: openings of {:bare} with uprights make {} of {:bare}.",
            _start(row.code),
            widths,
            total,
            stack.width,
        ),
        say("The widths are {} apart; leave one of them out.", over),
        about=row.code,
    )


def _graduation(spec: UnitSpec, stack: Stack) -> Iterator[Finding]:
    """Rows of drawers grow towards the floor.

    What holds doors or nothing is left out of account, and drawers for folders, which give their height.
    """
    heights = [
        row.height + _before_case(spec, row)
        for row in stack.rows
        if row.openings and row_of(spec.rows, row.mark).files is None
    ]
    if not heights or (stack.code and len(heights) == 1):
        return
    about, where = stack.code, f"{_start(stack.code)}: " if stack.code else ""
    ratio = heights[-1] / heights[0]
    fall = max((above - below for above, below in pairwise(heights)), default=0.0)
    if fall > len(heights) * ROUNDING / 2 + TOLERANCE:
        yield Finding(
            rule="graduation",
            verdict=Verdict.CAUTION,
            message=say("{}{} opening is {} lower than the one above it.", where, _an(where), fall),
            remedy="Drawers usually grow towards the floor: lower the first opening, or give the step.",
            about=about,
            found=float(fall),
            needed=0.0,
        )
        return
    yield at_most(
        "graduation",
        ratio,
        STEEPEST_GRADUATION,
        f"{where}{'the' if where else 'The'} lowest opening is {ratio:.2f} times the top one.",
        "More than twice looks top-heavy in reverse; use a smaller step.",
        about=about,
        verdict=Verdict.CAUTION,
    )


def _before_case(spec: UnitSpec, row: FaceRow) -> Inches:
    """What a row's fronts cover of the case, where fronts with nothing between them set out the rows [in]."""
    style, frame = spec.drawers.style, spec.frame
    if frame.divider or not isinstance(style, FullOverlay):
        return 0.0
    half = style.gap / 2
    above = frame.upper - style.edge if row.is_top else -half
    below = frame.lower - style.edge if row.is_lowest else -half
    return above + below


def _an(where: str) -> str:
    return "an" if where else "An"


def _low(spec: UnitSpec, face: Face) -> Iterator[Finding]:
    if spec.drawers.bottom.kind != "solid":
        return
    lowest = min(row.height for row in face.all_rows if row.openings)
    yield at_least(
        "low opening",
        lowest,
        LOWEST_OPENING,
        say("The lowest opening is {} high.", lowest),
        say("Below {} a solid bottom eats the drawer; use ply, or fewer rows.", LOWEST_OPENING),
        verdict=Verdict.CAUTION,
    )


def _floors(spec: UnitSpec, face: Face) -> Iterator[Finding]:
    """What stands in an open space, or behind doors, needs a floor: a web frame is open between its rails."""
    closed = spec.case.divider_kind in ("dust-frame", "solid")
    laid = lays_floors(spec)
    if laid:
        under = say(
            "a floor of plywood {} thick, laid on its frame: fast in front only, for the sides move past it.",
            spec.shelving.floor_sheet.bought.thickness,
        )
    else:
        under = say("a divider that is closed." if closed else "a frame that is open between its rails.")
    for row, space in over_frames(face):
        yield Finding(
            rule="floor of a space",
            verdict=Verdict.PASS if closed or laid else Verdict.CAUTION,
            message=say("{} stands on {}", space.code, under),
            remedy=""
            if closed or laid
            else f"Choose dust frames or solid dividers under row {row.mark}, have a floor laid on web "
            "frames, or put doors and open spaces into the lowest row.",
            about=space.code,
        )


def _measured(spec: UnitSpec, face: Face) -> Iterator[Finding]:
    """A size stays with the code under which it was measured; when rows move, that may be another opening."""
    for opening in (*face.openings, *face.spaces):
        for name in opening.measured:
            found, drawn = getattr(opening, name), getattr(opening, f"designed_{name}")
            yield at_most(
                "measured beside drawn",
                abs(found - drawn),
                BESIDE_DRAWN,
                say("{} measured {}; drawn is {:bare}.", name.capitalize(), found, drawn),
                "Measure it again: this may have been another opening before rows were moved.",
                about=f"{spec.code}-{opening.code}",
                verdict=Verdict.CAUTION,
            )


def _knees(face: Face) -> Iterator[Finding]:
    """Somebody can sit at a knee space: it is wide and high enough."""
    for space in face.spaces:
        if not space.knee:
            continue
        for size, least, word, more in (
            (space.width, KNEES_WIDE, "wide", "Make the columns beside it narrower, or the piece wider"),
            (space.height, KNEES_HIGH, "high", "Make the row over it lower, or the piece higher"),
        ):
            yield at_least(
                "knee space",
                size,
                least,
                say("The knee space {} is {} {}.", space.code, size, word),
                say("{}: {} is the least to sit at.", more, least),
                about=space.code,
                verdict=Verdict.CAUTION,
            )
