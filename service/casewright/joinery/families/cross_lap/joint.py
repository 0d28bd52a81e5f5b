"""Two strips that cross, each notched for half of its depth, as in the egg crate of a bank of small drawers.

The notch follows what the other strip measured, not what it is called. Places are counted from the end of the
strip, each by itself: pitches added up would carry their rounding along.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import cutter_at_hand, how_it_is_cut
from casewright.joinery.families.cross_lap.asked import (
    LIMITS,
    CrossLap,
    half_notch,
    notch_width,
    other_notch,
)
from casewright.joinery.families.cross_lap.checks import lap_fits, wood_beyond, wood_left
from casewright.joinery.families.cross_lap.shape import LEVEL, UPRIGHT, cross_lap_shape
from casewright.joinery.joint import (
    Choosing,
    Chosen,
    JointKind,
    Measure,
    Measured,
    Setting,
    Solved,
    Values,
    fields,
)
from casewright.joinery.solid import Shape
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.remembering import remembered
from casewright.measure.saying import say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossLapJoint:
    """Crossing strips, worked out.

    Attributes:
        given: what was asked for
        level_width: how wide the notches of the level strips are [in]
        upright_width: how wide those of the upright strips are [in]
        upright_notch: how deep those of the upright strips are, from the front edge [in]
        findings: every check that was carried out, passes too
    """

    given: CrossLap
    level_width: Inches
    upright_width: Inches
    upright_notch: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the notches, then their places."""
        return (*_notches(self), *_places(self.given))

    @property
    def shape(self) -> Shape:
        """The joint in space, at one crossing."""
        return cross_lap_shape(self.given)


@remembered
def cross_lap(joint: CrossLap, ledger: Ledger = UNKEPT) -> CrossLapJoint:
    """Crossing strips, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    take = ledger.take
    level = take("level_width", notch_width, crossing=joint.upright, play=joint.play)
    upright = take("upright_width", notch_width, crossing=joint.level, play=joint.play)
    widths = (level,) if abs(level - upright) < 1e-9 else (level, upright)
    return CrossLapJoint(
        given=joint,
        level_width=level,
        upright_width=upright,
        upright_notch=take("upright_notch", other_notch, depth=joint.depth, notch=joint.notch),
        findings=(
            lap_fits(joint),
            wood_left(joint),
            wood_beyond(joint),
            *(cutter_at_hand("notch", width, joint.rack.cutters, joint.mark) for width in widths),
        ),
    )


def _notches(joint: CrossLapJoint) -> Iterator[Setting]:
    given = joint.given
    for name, strip, other, width, depth, edge in (
        ("level", LEVEL, UPRIGHT, joint.level_width, given.notch, "rear"),
        ("upright", UPRIGHT, LEVEL, joint.upright_width, joint.upright_notch, "front"),
    ):
        yield Setting(
            name=f"{name}_width",
            label=f"Notch in the {strip}",
            value=width,
            measure=Measure.FINE,
            note=say("as wide as the {} measures; {}", other, how_it_is_cut(width, given.rack.cutters)),
        )
        yield Setting(
            name=f"{name}_notch",
            label=f"Its depth in the {strip}",
            value=depth,
            note=f"from the {edge} edge; both together are the depth of the strips",
        )


def _places(given: CrossLap) -> Iterator[Setting]:
    for name, strip, end, wall, marks in (
        ("level", LEVEL, "left", "left", given.level_marks),
        ("upright", UPRIGHT, "lower", "lower", given.upright_marks),
    ):
        for number, at in enumerate(marks, start=1):
            yield Setting(
                name=f"{name}_{number}",
                label=f"{strip.capitalize()}, notch {number}",
                value=at,
                note=f"to its {wall} wall, from the {end} end; clamp all strips alike and mark them at once",
            )


def chosen_notch(depth: Inches) -> Chosen:
    """How deep the level strip is notched where nothing else is said.

    Args:
        depth: depth of the strips, front to back [in]

    Returns:
        Half of it, down to 1/64 in, with the reason.

    Source: common practice.
    """
    return Chosen(
        name="notch",
        value=half_notch(depth, LIMITS.part.value),
        measure=Measure.LENGTH,
        why=say(
            "Half of the depth of {}, rounded down to {}; the other strip takes the rest.", depth, 1 / 64
        ),
        source=LIMITS.part.source,
    )


def _chosen_play() -> Chosen:
    return Chosen(
        name="play",
        value=LIMITS.play.value,
        measure=Measure.FINE,
        why="The strips are pressed together by hand.",
        source=LIMITS.play.source,
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """Crossing strips from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    depth = take.number("depth")
    joint = CrossLap(
        depth=depth,
        level=take.number("level"),
        upright=take.number("upright"),
        level_marks=(take.number("level_first"),),
        upright_marks=(take.number("upright_first"),),
        notch=take.or_choose("notch", chosen_notch, depth),
        play=take.or_choose("play", _chosen_play),
        rack=rack,
    )
    return Solved(joint=cross_lap(joint, ledger), chosen=take.chosen)


FIELDS = fields("cross_lap")

KIND = JointKind(
    name="cross-lap",
    title="Strips that cross, notched for half of their depth",
    fields=FIELDS,
    solve=_solve,
)
