"""The joints of crossing strips: over each other, and in the boards of the case."""

from collections.abc import Iterator
from functools import partial
from itertools import product

from casewright.joinery.families.cross_lap.asked import LIMITS, CrossLap, half_notch
from casewright.joinery.families.cross_lap.joint import CrossLapJoint, cross_lap
from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.families.housing.joint import HousingJoint, housing
from casewright.measure.units import Inches
from casewright.pieces.asked.crate_spec import Crate
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.crate import LEVEL, UPRIGHT, level_marks, strip_depth, upright_marks
from casewright.pieces.layout.parts import Part

LAPS, HOUSED = "laps", "strips"
"""Short names of the joints."""


def crate_joints(bench: CaseBench) -> Iterator[AskedJoint]:
    """The cross laps of the strips, and the housings of their ends.

    Args:
        bench: what the joints are worked out from

    Yields:
        A lap for each pair of thicknesses, as measured; a housing for each direction.

    Source: common practice of crossing strips; each family of joints names its own.
    """
    crate = bench.spec.crate
    if crate is None:
        return
    pairs = list(product(_alike(bench, LEVEL), _alike(bench, UPRIGHT)))
    for number, (level, upright) in enumerate(pairs, start=1):
        name = LAPS if len(pairs) == 1 else f"{LAPS}_{number}"
        yield AskedJoint(
            key=name,
            kind="cross-lap",
            title="Strips over each other, cross lap",
            places=len(level) * len(upright),
            serves=(("level strip", level), ("upright strip", upright)),
            solve=partial(_lap, bench, crate, name, level[0].thickness, upright[0].thickness),
            advice=(
                "Saw all strips of one direction together, edges up, so that every notch stands in one line.",
            ),
        )
    face = bench.plan.face
    clear = face.body_height - bench.spec.frame.upper - bench.spec.frame.lower
    for line, word, into, inside in (
        (LEVEL, "level", "case side", face.clear_width),
        (UPRIGHT, "upright", "top or bottom", clear),
    ):
        for number, strips in enumerate(groups := _alike(bench, line), start=1):
            name = f"{HOUSED}_{word}" if len(groups) == 1 else f"{HOUSED}_{word}_{number}"
            yield AskedJoint(
                key=name,
                kind="housing",
                title=f"{word.capitalize()} strips into the {into}, housing",
                places=2 * len(strips),
                serves=(("strip", strips),),
                solve=partial(_housed, bench, name, strips[0], into, inside),
            )


def _alike(bench: CaseBench, line: str) -> tuple[tuple[Part, ...], ...]:
    """The strips of one direction, those that measured the same thickness together."""
    groups: dict[Inches, list[Part]] = {}
    for strip in bench.of(line):
        groups.setdefault(strip.thickness, []).append(strip)
    return tuple(tuple(group) for group in groups.values())


def _lap(bench: CaseBench, crate: Crate, name: str, level: Inches, upright: Inches) -> CrossLapJoint:
    depth = strip_depth(bench.plan)
    return cross_lap(
        CrossLap(
            depth=depth,
            level=level,
            upright=upright,
            notch=half_notch(depth, LIMITS.part.value),
            level_marks=level_marks(bench.plan),
            upright_marks=upright_marks(bench.plan, crate),
            rack=bench.rack,
            mark=bench.plan.code("G"),
        ),
        bench.ledger(name),
    )


def _housed(bench: CaseBench, name: str, strip: Part, into: str, inside: Inches) -> HousingJoint:
    case, frame = bench.spec.case, bench.spec.frame
    board = bench.side if into == "case side" else min(frame.upper, frame.lower)
    return housing(
        Housing(
            divider=strip.thickness,
            case_side=board,
            depth=case.housing,
            stop=0.0,
            length=strip.width,
            inside_width=inside,
            rack=bench.rack,
            mark=strip.code,
            into=into,
            housed="strip",
        ),
        bench.ledger(name),
    )
