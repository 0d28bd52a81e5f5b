"""Checks of what ties a piece to the building: studs, room to hang it, walls out of plumb."""

from collections.abc import Iterator

from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.asked.wall_spec import Cleat
from casewright.pieces.case.wall import studs_met
from casewright.pieces.layout.openings import Face
from casewright.pieces.rules.wall_rules import cleat_screws, scribe_needed

FEWEST_STUDS = 2
"""On one stud a piece can turn (common practice)."""
LEFT_OF_SCRIBE = 1 / 4
"""What stays of a strip where the wall comes nearest (common practice) [in]."""


def wall_checks(spec: UnitSpec, face: Face) -> Iterator[Finding]:
    """The checks of cleat and scribe strips.

    Args:
        spec: what the maker chose
        face: the width between the sides

    Returns:
        The findings, passes too; none for a piece that stands free.

    Source: common practice.
    """
    if spec.cleat:
        yield from _hung(spec, spec.cleat, studs_met(spec, face.clear_width))
    site = spec.site
    if site.scribe or site.out_of_plumb:
        needed = scribe_needed(out_of_plumb=site.out_of_plumb, least=LEFT_OF_SCRIBE)
        yield at_least(
            "scribe",
            site.scribe,
            needed,
            say("Walls {} out of plumb are met by strips {} wide.", site.out_of_plumb, site.scribe),
            say("Make the strips {:up} wide or more.", needed),
            verdict=Verdict.CAUTION,
        )
    if site.recess is not None:
        yield from _recess(spec, site.recess)


def _hung(spec: UnitSpec, cleat: Cleat, studs: int) -> Iterator[Finding]:
    screws = cleat_screws(studs=max(1, studs), each=cleat.screws)
    yield at_least(
        "cleat in the studs",
        studs,
        FEWEST_STUDS,
        say(
            "The cleat on the wall meets {:d} studs {:bare} apart wherever it is put: {:d} screws.",
            studs,
            cleat.studs,
            screws,
        ),
        "Find the studs first: with one alone the piece can turn; fix a board across two of them, or screw "
        "the lower edge of the case to the wall too.",
        verdict=Verdict.CAUTION,
        about=f"{spec.code}-Q",
    )
    yield Finding(
        rule="room to hang",
        verdict=Verdict.PASS,
        message=say(
            "To hook it in, two people lift the piece, without its drawers, {} above where it will hang: "
            "leave that free over it. Look for wires and pipes before a screw goes into the wall; screw "
            "the lower edge to it once the piece hangs.",
            cleat.thickness,
        ),
        about=f"{spec.code}-Q",
        found=float(cleat.thickness),
    )
    if spec.use.free_standing:
        yield Finding(
            rule="hung on the wall",
            verdict=Verdict.CAUTION,
            message="It has a cleat for the wall, and is asked for as standing free.",
            remedy="Say that it is fixed to the building, or leave the cleat out.",
            about=f"{spec.code}-Q",
        )


def _recess(spec: UnitSpec, recess: float) -> Iterator[Finding]:
    """The case goes between the walls, and its strips close what is left."""
    site, width = spec.site, spec.overall_width
    yield at_most(
        "between the walls",
        width,
        recess,
        say("The piece is {} wide, between walls {} apart at the nearest.", width, recess),
        say("Make it {:down} wide or less.", recess),
    )
    reach, widest = spec.body.width + 2 * site.scribe, recess + site.out_of_plumb
    yield at_least(
        "strips reach the walls",
        reach,
        widest,
        say("With its strips it is {} wide; the walls are up to {} apart.", reach, widest),
        say("Make each strip {:up} wide or more.", (widest - spec.body.width) / 2),
        verdict=Verdict.CAUTION,
    )
