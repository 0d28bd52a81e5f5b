"""The pulls: how many on a front, on which centre lines, how high, and where their screws go through."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.layout_spec import Row
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face, Opening
from casewright.pieces.rules import running_rules as rules

Hole = tuple[Inches, Inches]
"""Left end of the front to the hole, and bottom edge of the front up to it [in]."""


def spare_pulls(pulls: Count, per: Count) -> Count:
    """How many pulls to have in hand beyond those fitted.

    Rule: pulls / per, rounded down

    Args:
        pulls: how many are fitted
        per: one spare for each so many

    Returns:
        The spares

    Source: common practice: one for each eight.
    """
    return pulls // per


def pull_centres(spec: UnitSpec, face: Face, ledger: Ledger) -> dict[str, tuple[float, ...]]:
    """Where the pulls go: one in the middle of a narrow drawer, two on a wide one.

    The pulls of a wide drawer stand on the centre lines of the outer drawers of the nearest row with more
    than one, so that they line up down the case; where there is none, a quarter of the width from each edge.

    Args:
        spec: what the maker chose
        face: the openings
        ledger: keeps the working

    Returns:
        For each opening, the centres from the left outside of the case [in]

    Source: common practice.
    """
    centres: dict[str, tuple[float, ...]] = {}
    typed = dict(_typed(spec.rows, "R"))
    for opening in face.openings:
        lines: tuple[float, ...]
        if _is_single(spec, opening, typed.get(opening.row_code)):
            lines = (
                ledger.take(f"{opening.code}.pull", rules.middle, left=opening.left, width=opening.width),
            )
        else:
            lines = _outer_lines(face, opening) or (
                opening.left + opening.width / 4,
                opening.left + opening.width * 3 / 4,
            )
        centres[opening.code] = lines
    return centres


def _typed(rows: tuple[Row, ...], start: str) -> Iterator[tuple[str, Count]]:
    """The rows that say how many pulls their drawers get, by their codes; rows of columns too."""
    for number, row in enumerate(rows, start=1):
        if row.pulls is not None:
            yield f"{start}{number}", row.pulls
        for place, column in enumerate(row.across or (), start=1):
            if column.rows is not None:
                yield from _typed(column.rows, f"{start}{number}-{place}-")


def _is_single(spec: UnitSpec, opening: Opening, typed: Count | None) -> bool:
    pulls = spec.pulls
    if typed is not None:
        return typed == 1
    if pulls.count == "by width":
        return opening.width <= pulls.one_up_to
    return pulls.count == "one"


def _outer_lines(face: Face, opening: Opening) -> tuple[float, float] | None:
    """The centre lines of the outer drawers of the nearest parted row, where this opening spans them."""
    parted = [row for row in face.all_rows if len(row.openings) > 1]
    for row in sorted(parted, key=lambda row: abs(row.bottom - opening.bottom)):
        first, last = row.openings[0], row.openings[-1]
        lines = (first.left + first.designed_width / 2, last.left + last.designed_width / 2)
        if opening.left < lines[0] and lines[1] < opening.left + opening.width:
            return lines
    return None


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Boring:
    """Where a front is bored for its pulls [in].

    Attributes:
        width: of the front
        height: of the front
        up: bottom edge of the front up to the screws
        lines: left end of the front to each pull's centre
        holes: every hole
        screw: diameter of a hole
        apart: between the two screws of a pull; 0 for a knob
    """

    width: Inches
    height: Inches
    up: Inches
    lines: tuple[Inches, ...]
    holes: tuple[Hole, ...]
    screw: Inches
    apart: Inches


def boring(
    spec: UnitSpec,
    code: str,
    front: tuple[Inches, Inches, Inches],
    centres: tuple[Inches, ...],
    ledger: Ledger,
) -> Boring:
    """Where a front is bored.

    Args:
        spec: what the maker chose
        code: row and position, such as `R5-1`
        front: left end of the front from the left outside of the case, its width and its height [in]
        centres: the pulls, from the left outside of the case [in]
        ledger: keeps the working

    Returns:
        The holes, from the left end and the bottom edge of the front.

    Source: geometry; where a pull is put is the maker's choice.
    """
    pulls = spec.pulls
    left, width, height = front
    down = {"middle": height / 2, "upper third": height / 3, "from the top": pulls.down}[pulls.height]
    up = ledger.under(code).take("pull_up", rules.pull_up, front=height, down=down)
    apart = (0.0,) if pulls.holes == "one" else (-pulls.centres / 2, pulls.centres / 2)
    lines = tuple(centre - left for centre in centres)
    return Boring(
        width=width,
        height=height,
        up=up,
        lines=lines,
        holes=tuple((line + off, up) for line in lines for off in apart),
        screw=pulls.screw,
        apart=0.0 if pulls.holes == "one" else pulls.centres,
    )
