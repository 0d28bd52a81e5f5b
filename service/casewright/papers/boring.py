"""Templates in full size of what is bored and let in: pulls, notches for slides, and the gains of hinges."""

from collections.abc import Iterable, Iterator, Sequence

from casewright.joinery.solid import Marked, Strip, Stroke, round_outline
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.papers.dxf import dxf_of
from casewright.papers.full_size import NamedStrip, tiled
from casewright.papers.full_size_pdf import loose_template_pdf
from casewright.papers.kept_strips import KeptStrip, kept
from casewright.papers.notching import AROUND_PIPES, cut_out_strips, notch_strips
from casewright.papers.notching import TITLE as NOTCHES
from casewright.papers.pdf import Paper
from casewright.papers.strip_svg import strips_svg
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.pulls import Boring, Hole

TITLE = "Pulls, boring template"
HINGES = "Hinges, gains"
CROSS = 1 / 2
"""How far the lines of a hole reach beyond its middle: to be seen around a bradawl [in]."""


def boring_strips(unit: Construction, shown: LengthUnit) -> Iterator[KeptStrip]:
    """The boring templates of a unit, as they are kept with its joint cards.

    Args:
        unit: the unit, worked out
        shown: in which its words are kept

    Yields:
        For each different front a strip, or one for each of its pulls where they stand at different distances
        from its two ends; then one for each different back that is notched for slides, and for each different
        bottom that is cut out around pipes, where one sheet holds it.
    """
    for strip, codes in _strips(unit):
        yield kept(strip, TITLE, codes, shown)
    for strip, codes in notch_strips(unit):
        yield kept(strip, NOTCHES, codes, shown)
    for strip, codes in cut_out_strips(unit):
        # Of what a sheet does not hold, the figures are quicker laid out on the board than sheets are joined.
        if len(tiled(NamedStrip(strip=strip, title=AROUND_PIPES, serves=""))) == 1:
            yield kept(strip, AROUND_PIPES, codes, shown)


def boring_templates(unit: Construction) -> tuple[NamedStrip, ...]:
    """The boring templates of a unit, ready to be printed.

    Args:
        unit: the unit, worked out

    Returns:
        A strip for each different front or pull; none without pulls.
    """
    return _named(TITLE, _strips(unit))


def boring_files(unit: Construction, shown: LengthUnit, paper: Paper | None = None) -> dict[str, bytes]:
    """The templates of a unit as files: to be printed in full size, and for drawing programs and cutters.

    Args:
        unit: the unit, worked out
        shown: in which sizes are written
        paper: the sheet; left out, A4 beside millimetres and Letter beside inches

    Returns:
        The bytes by the file's name, as PDF, DXF and SVG: for pulls, for backs that are notched for slides,
        for hinges, and for bottoms that are cut out around pipes.
    """
    sheet = paper or (Paper.A4 if shown is LengthUnit.MILLIMETRE else Paper.LETTER)
    files: dict[str, bytes] = {}
    for name, title, strips in (
        ("pulls", TITLE, boring_templates(unit)),
        ("slides", NOTCHES, _named(NOTCHES, notch_strips(unit))),
        ("hinges", HINGES, hinge_templates(unit)),
        ("notch", AROUND_PIPES, _named(AROUND_PIPES, cut_out_strips(unit))),
    ):
        if strips:
            start, of = f"{unit.spec.code}-{name}-template", f"{title}, {unit.spec.name}"
            files[f"{start}.pdf"] = loose_template_pdf(of, strips, shown, sheet, what="For")
            files[f"{start}.dxf"] = dxf_of(strips)
            files[f"{start}.svg"] = strips_svg(strips, of)
    return files


def _named(title: str, strips: Iterable[tuple[Strip, tuple[str, ...]]]) -> tuple[NamedStrip, ...]:
    return tuple(NamedStrip(strip=strip, title=title, serves=", ".join(codes)) for strip, codes in strips)


def hinge_templates(unit: Construction) -> tuple[NamedStrip, ...]:
    """The templates of the hinges' gains, on doors and case.

    Args:
        unit: the unit, worked out

    Returns:
        Two strips for each kind of leaf; none without doors, or where no hinge is let in.
    """
    return tuple(
        NamedStrip(strip=strip, title=HINGES, serves=", ".join(placed.cut_on(strip.board)))
        for placed in unit.case_joints
        if placed.kind == "hinge"
        for strip in placed.joint.shape.strips
    )


def _strips(unit: Construction) -> Iterator[tuple[Strip, tuple[str, ...]]]:
    groups: dict[tuple[object, ...], list[Drawer]] = {}
    for drawer in unit.drawers:
        groups.setdefault(_alike(drawer), []).append(drawer)
    for drawers in groups.values():
        codes = tuple(f"{drawer.code}-F" for drawer in drawers)
        for strip in _of_front(drawers[0].boring):
            yield strip, codes


def _alike(drawer: Drawer) -> tuple[object, ...]:
    """What decides a template: the front, and the holes in it."""
    boring = drawer.boring
    sizes = (boring.width, boring.height, boring.up, boring.screw)
    places = (number for hole in boring.holes for number in hole)
    return tuple(round(number, 6) for number in (*sizes, *places))


def _of_front(boring: Boring) -> Iterator[Strip]:
    lines = boring.lines
    if not lines:
        return
    if len(lines) == 2 and abs(lines[0] + lines[1] - boring.width) < TOLERANCE:
        yield _strip(boring, lines[:1], is_handed=True)
        return
    for line in lines:
        yield _strip(boring, (line,), is_handed=False)


def _strip(boring: Boring, lines: Sequence[Inches], *, is_handed: bool) -> Strip:
    """One pull: its centre line, the height of its screws, and each hole with its cross."""
    line = lines[0]
    holes = [hole for hole in boring.holes if _nearest(hole, boring.lines) == line]
    first, last = min(hole[0] for hole in holes), max(hole[0] for hole in holes)
    return Strip(
        board="front",
        face="face",
        length=boring.width,
        height=boring.height,
        lines=(
            Marked(
                stroke=Stroke.GAUGE,
                start=(line, 0.0),
                end=(line, boring.height),
                label=say("pull, hole {}", boring.screw),
            ),
            Marked(stroke=Stroke.STOP, start=(first - CROSS, boring.up), end=(last + CROSS, boring.up)),
            *(
                Marked(stroke=Stroke.SAW, start=(along, up - CROSS), end=(along, up + CROSS))
                for along, up in holes
                if abs(along - line) > TOLERANCE
            ),
        ),
        waste=tuple(round_outline(hole, boring.screw) for hole in holes),
        left="end" if is_handed else "left end",
        is_handed=is_handed,
    )


def _nearest(hole: Hole, lines: Sequence[Inches]) -> Inches:
    return min(lines, key=lambda line: abs(line - hole[0]))
