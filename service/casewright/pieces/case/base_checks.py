"""Checks of what a case stands on: has its wood room to move, and does it carry?"""

from collections.abc import Iterator

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say
from casewright.pieces.asked.shell_spec import BracketFeet, Plinth, ToeBase, TurnedFeet
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.carcase import Carcase

HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 13"
CROSS_GRAIN = 6.0
"""Fixed across the grain over more than this, a part needs a slot (common practice) [in]."""


def base_checks(spec: UnitSpec, case: Carcase) -> Iterator[Finding]:
    """The checks of what a case stands on.

    Args:
        spec: what the maker chose
        case: the carcase, and how far its sides move

    Returns:
        The findings, passes too.

    Source: common practice; movement by the Wood Handbook, chapter 13.
    """
    base = spec.stands_on
    if isinstance(base, Plinth):
        yield from _plinth(spec, base, case)
    elif isinstance(base, BracketFeet):
        yield from _bracket_feet(spec, base, case)
    elif isinstance(base, TurnedFeet):
        yield _foot_tenon(spec, base)
        yield _at_the_lathe(spec)
    elif isinstance(base, ToeBase):
        yield _toe_base(spec, base)


def _plinth(spec: UnitSpec, base: Plinth, case: Carcase) -> Iterator[Finding]:
    """Plinth returns run with the grain under a side that moves across it."""
    if spec.body.depth > CROSS_GRAIN and case.side_swelling + case.side_shrinkage > 0:
        yield _along_the_grain(spec, case, "Plinth returns")
    if base.setback:
        yield at_most(
            "plinth under the sides",
            base.setback,
            spec.case.side,
            say(
                "The plinth stands {} inside the case, under sides {:bare} thick.",
                base.setback,
                spec.case.side,
            ),
            say(
                "Past {:bare} only the joints of the bottom carry the sides: set it back less, or glue "
                "blocks under the sides.",
                spec.case.side,
            ),
            verdict=Verdict.CAUTION,
            about=f"{spec.code}-B",
        )


def _along_the_grain(spec: UnitSpec, case: Carcase, which: str) -> Finding:
    swells, shrinks = case.side_swelling, case.side_shrinkage
    return Finding(
        rule="cross-grain fixing",
        verdict=Verdict.PASS,
        message=say(
            "{} run with the grain under a side that swells {:.3} and shrinks "
            "{:.3}: fix them at the front and slot the screws at the rear, "
            "{:up 16} long each way.",
            which,
            swells,
            shrinks,
            max(swells, shrinks),
        ),
        about=f"{spec.code}-B",
        found=float(max(swells, shrinks)),
        source=HANDBOOK,
    )


def _bracket_feet(spec: UnitSpec, base: BracketFeet, case: Carcase) -> Iterator[Finding]:
    if base.width > CROSS_GRAIN and case.side_swelling + case.side_shrinkage > 0:
        yield _along_the_grain(spec, case, "The sides of the feet")
    yield at_least(
        "bracket feet",
        base.width,
        base.height,
        say("Each foot is {} wide and {:bare} high.", base.width, base.height),
        say(
            "A foot higher than wide breaks at the mitre when the case is pushed: make it {:up} wide, or "
            "lower, and glue the corner block to the floor.",
            base.height,
        ),
        verdict=Verdict.CAUTION,
        about=f"{spec.code}-B",
        source="common practice",
    )


def _foot_tenon(spec: UnitSpec, base: TurnedFeet) -> Finding:
    """A foot that is pushed sideways works its tenon in the block."""
    return at_least(
        "foot tenon",
        base.block,
        base.tenon,
        say("The tenons are {} thick and {:bare} long, through the block.", base.tenon, base.block),
        say(
            "A tenon shorter than it is thick works loose: make the block {:up} thick, or the tenon "
            "{:down} thick.",
            base.tenon,
            base.block,
        ),
        verdict=Verdict.CAUTION,
        about=f"{spec.code}-B",
        source="common practice",
    )


def _at_the_lathe(spec: UnitSpec) -> Finding:
    return Finding(
        rule="at the lathe",
        verdict=Verdict.PASS,
        message="Turn the feet with a face shield on, no gloves, sleeves and hair tied back; set the rest "
        "close, turn the square by hand before the lathe runs, and take the rest away to sand.",
        about=f"{spec.code}-B",
        source="29 CFR 1910.213; common practice",
    )


def _toe_base(spec: UnitSpec, base: ToeBase) -> Finding:
    return Finding(
        rule="setting up",
        verdict=Verdict.PASS,
        message=say(
            "Set the toe base first: level it on the highest place of the floor, with up to {} under it, "
            "screw it to the studs or the floor; then set the case on it, screw the cases to each other and "
            "to the studs, and scribe the face to the floor last.",
            base.levelling,
        )
        if base.levelling
        else "Set the toe base first: scribe it to the floor till it is level, screw it to the studs or the "
        "floor; then set the case on it and screw it to the studs.",
        about=f"{spec.code}-B",
        source="common practice",
    )
