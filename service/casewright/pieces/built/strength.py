"""Do shelves, rails and a desk's top stay straight, does the case stay square, may the runners wear."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Pounds
from casewright.pieces.asked.shell_spec import BOARDED
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import Face, FaceRow, Stack
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.weights import density_of, part_weight
from casewright.stability.beams import PLY_ALONG, Board, Load, beam_sag, check_beam, shelf_load, short_enough
from casewright.stability.limits import house_limits
from casewright.stability.masses import Drawer as Body
from casewright.stability.sag import sag_limit
from casewright.wood.species import wood

SHELF, RAIL, TOP = "C9", "C3", "T1"
WEAR = 1 / 32
"""So much sides and runners may wear before a bottom rubs, at the least (common practice) [in]."""
WIDE_OPEN = 36.0
"""An open space as wide as this has nothing in it that keeps a case square (common practice) [in]."""
ABOUT = 0.5
"""What stands so nearly over something bears on it [in]."""


def strength_checks(
    spec: UnitSpec,
    face: Face,
    drawers: Sequence[Drawer],
    parts: Sequence[Part],
    bodies: Iterable[Body],
    moisture: float,
    ledger: Ledger,
) -> Iterator[Finding]:
    """The checks of strength, but those of drawer bottoms and slides.

    Args:
        spec: what the maker chose
        face: the openings
        drawers: the drawers
        parts: every part of the unit
        bodies: what each drawer weighs, empty and full
        moisture: moisture content of the wood [%]
        ledger: keeps the working

    Yields:
        The findings, passes too.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 9; limits by common practice.
    """
    under = ledger.under("strength")
    full = {body.label: body.weight + body.fill_weight for body in bodies}
    known = {part.code: part for part in parts}
    yield from _shelves(spec, face, known, moisture, under)
    if spec.legs is None:
        yield from _rails(spec, face, drawers, known, full, moisture, under)
    yield from _knee_spaces(spec, face, parts, moisture, under)
    yield from _square(spec, face)
    yield from _wear(spec, drawers)


def _board(part: Part, span: Inches, moisture: float) -> Board:
    """A part as a board on two supports: of plywood by its usual stiffness."""
    modulus = PLY_ALONG if part.sheet else wood(part.wood).elasticity or PLY_ALONG
    weight = part_weight(volume=part.volume, density=density_of(part.wood, moisture))
    return Board(
        span=span,
        width=part.width,
        thickness=part.thickness,
        modulus=modulus,
        weight=weight * span / part.length,
    )


def _shelves(
    spec: UnitSpec, face: Face, known: Mapping[str, Part], moisture: float, under: Ledger
) -> Iterator[Finding]:
    """One check for the shelves of a space, which are alike."""
    for space in face.spaces:
        part = known.get(f"{spec.code}-{space.code}-SH1") if space.shelves else None
        if part is None:
            continue
        board, own = _board(part, space.width, moisture), under.under(f"{space.code}.shelf")
        load = own.take("load", shelf_load, length=space.width, per_foot=spec.use.shelf_load_lb)
        sag = beam_sag(board, load, (), own)
        limit = own.take("limit", sag_limit, span=board.span, ratio=house_limits().shelf_ratio)
        yield check_beam(
            "shelf sag",
            say("A shelf {} thick with {:g} lb a foot", part.thickness, spec.use.shelf_load_lb),
            board,
            sag,
            limit,
            limit_name="shelf_ratio",
            about=f"{spec.code}-{space.code}",
            remedy=say(
                ", or let it span {:down} or less between partitions", short_enough(board.span, sag, limit)
            ),
        )


def _rails(
    spec: UnitSpec,
    face: Face,
    drawers: Sequence[Drawer],
    known: Mapping[str, Part],
    full: Mapping[str, Pounds],
    moisture: float,
    under: Ledger,
) -> Iterator[Finding]:
    """Front rails under rows whose drawers run on them: drawn out, a full drawer bears on its rail alone."""
    in_row: dict[str, list[Drawer]] = {}
    for drawer in drawers:
        if drawer.run.slides is None and drawer.run.groove is None:
            in_row.setdefault(drawer.sizes.opening.row_code, []).append(drawer)
    for stack in face.stacks:
        for place, above in enumerate(stack.rows[:-1], start=1):
            part = known.get(f"{spec.code}-D{above.mark}-RF")
            loaded = in_row.get(above.code)
            if part is not None and loaded:
                ends = _supports(spec, stack, stack.rows[place:])
                yield from _rail(above, ends, part, loaded, full, moisture, under)


def _supports(spec: UnitSpec, stack: Stack, below: Sequence[FaceRow]) -> list[Inches]:
    """The walls of a stack, and between them what stands one on the other down to the case bottom."""
    half = spec.frame.upright / 2
    standing: list[Inches] = []
    if abs(stack.bottom - spec.frame.lower) < ABOUT:
        first, *lower = [[left + half for left in (*row.uprights, *row.partitions)] for row in below]
        standing = [at for at in first if all(any(abs(at - other) < ABOUT for other in row) for row in lower)]
    return sorted([stack.left, *standing, stack.left + stack.width])


def _rail(
    above: FaceRow,
    ends: Sequence[Inches],
    part: Part,
    drawers: Sequence[Drawer],
    full: Mapping[str, Pounds],
    moisture: float,
    under: Ledger,
) -> Iterator[Finding]:
    """The longest free piece of a rail, between the walls of its stack and what stands under it."""
    left, right = max(pairwise(ends), key=lambda pair: pair[1] - pair[0])
    places = [
        Load(weight=full[drawer.code] / 2, near=edge - left)
        for drawer in drawers
        for edge in (_edges(drawer))
        if left < edge < right
    ]
    board, own = _board(part, right - left, moisture), under.under(f"{above.code}.rail")
    sag = beam_sag(board, 0.0, places, own)
    limit = own.take("limit", sag_limit, span=board.span, ratio=house_limits().sag_ratio)
    yield check_beam(
        "rail sag",
        say("The rail under row {}, its full drawers drawn out,", above.mark),
        board,
        sag,
        limit,
        limit_name="sag_ratio",
        about=part.code,
        lasting=False,
        remedy=", or wider, or stand an upright under it in every row below",
    )


def _edges(drawer: Drawer) -> tuple[Inches, Inches]:
    """Where the sides of a drawer run, from the outside of the left case side."""
    sizes = drawer.sizes
    middle = sizes.opening.left + sizes.opening.width / 2
    half = sizes.width / 2
    return middle - half + sizes.left_side / 2, middle + half - sizes.right_side / 2


def _knee_spaces(
    spec: UnitSpec, face: Face, parts: Sequence[Part], moisture: float, under: Ledger
) -> Iterator[Finding]:
    """A top over a knee space with nothing under it; where a row of drawers spans it, its rail bears too."""
    spaces = [space for space in face.spaces if space.knee]
    top = next((part for part in parts if part.line == TOP), None) if spaces else None
    if top is None:
        return
    for space in spaces:
        board, own = _board(top, space.width, moisture), under.under(f"{space.code}.top")
        load = own.take("load", shelf_load, length=space.width, per_foot=spec.use.shelf_load_lb)
        sag = beam_sag(board, load, (), own)
        limit = own.take("limit", sag_limit, span=board.span, ratio=house_limits().shelf_ratio)
        yield check_beam(
            "top sag",
            say("The top over the knee space, with {:g} lb a foot,", spec.use.shelf_load_lb),
            board,
            sag,
            limit,
            limit_name="shelf_ratio",
            about=f"{spec.code}-{space.code}",
            remedy=", or put a rail on edge under it",
        )


def _square(spec: UnitSpec, face: Face) -> Iterator[Finding]:
    """What keeps the case from leaning to one side: a stiff back, or frames where there are boards."""
    if spec.legs is not None:
        return
    kind = spec.back.kind
    loose = kind in BOARDED or kind == "none"
    wide = [
        space
        for space in face.spaces
        if space.knee or (space.width >= WIDE_OPEN and space.holds == "open") or kind == "none"
    ]
    message: Words = "A stiff back keeps the case square."
    if loose:
        back = "No back keeps" if kind == "none" else "Boards that move past one another do not keep"
        message = f"{back} the case square; its corners and web frames have to."
    at_risk = loose and bool(wide)
    yield Finding(
        rule="racking",
        verdict=Verdict.CAUTION if at_risk else Verdict.PASS,
        message=message,
        remedy=(
            f"Give it a panelled or plywood back, or a stiff panel across {wide[0].code}: nothing there "
            "keeps the case from leaning."
            if at_risk
            else ""
        ),
        about=f"{spec.code}-{wide[0].code}" if at_risk else "",
    )


def _wear(spec: UnitSpec, drawers: Sequence[Drawer]) -> Iterator[Finding]:
    """Sides and runners wear, and the drawer comes down: its bottom must not rub before its time."""
    for drawer in drawers:
        if drawer.run.slides is not None or drawer.run.groove is not None or spec.drawers.screwed_under:
            continue
        groove, bottom = spec.drawers.groove, drawer.bottom
        room = groove.height - max(0.0, bottom.thickness - groove.width) - (bottom.sag or 0.0)
        yield at_least(
            "runner wear",
            room,
            WEAR,
            say(
                "Sides and runners may wear {:.3} before the bottom rubs; wipe them with wax, not with oil.",
                room,
            ),
            say("Raise the groove by {:up}.", WEAR - room),
            about=drawer.code,
            verdict=Verdict.CAUTION,
        )
