"""Whether the heights that were measured of a drawer's front and sides go with its opening, and together."""

from collections.abc import Iterator, Mapping

from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import NOTHING

UNLIKE = 1 / 64
"""What two heights may be apart, or one be over its target, and still be called alike [in]."""
WORDS = {"F": "front", "BF": "box front", "SL": "left side", "SR": "right side"}
PRACTICE = "common practice"


def height_checks(spec: UnitSpec, drawers: tuple[Drawer, ...]) -> Iterator[Finding]:
    """The checks of heights that were measured; none of a drawer whose parts were not.

    A part that is over its target by more than the gap above the drawer binds in the wettest season, or does
    not go in at all: a stop. One that only takes some of the gap is a caution.

    Args:
        spec: what the maker chose, with what was measured
        drawers: the drawers

    Returns:
        The findings, passes too.

    Source: common practice.
    """
    for drawer in drawers:
        found = {
            mark: height
            for mark in WORDS
            if (height := spec.measured.parts.get(f"{drawer.sizes.code}-{mark}", NOTHING).width)
        }
        for mark, height in found.items():
            yield _in_opening(spec, drawer, mark, height)
        yield from _together(drawer, found)


def _in_opening(spec: UnitSpec, drawer: Drawer, mark: str, height: Inches) -> Finding:
    sizes, gap = drawer.sizes, spec.drawers.clearances.top
    lets = _lets(drawer)[mark]
    over = height - lets
    return at_most(
        "height in its opening",
        height,
        lets + min(UNLIKE, gap),
        say(
            "The {} measures {} high; an opening {} high lets it be {}.",
            WORDS[mark],
            height,
            sizes.opening.height,
            lets,
        ),
        say("Plane {} off the {}, or measure both again.", over, WORDS[mark]),
        about=f"{drawer.code}-{mark}",
        verdict=Verdict.STOP if over > gap + TOLERANCE else Verdict.CAUTION,
        source=PRACTICE,
    )


def _lets(drawer: Drawer) -> Mapping[str, Inches]:
    """How high each board may be, by its mark."""
    sizes = drawer.sizes
    side = sizes.side_height
    return {"F": sizes.face.height, "BF": sizes.front_height, "SL": side, "SR": side}


def _together(drawer: Drawer, found: Mapping[str, Inches]) -> Iterator[Finding]:
    sides = {mark: height for mark, height in found.items() if mark in ("SL", "SR")}
    if len(sides) > 1:
        lower, higher = sorted(sides, key=lambda mark: sides[mark])
        apart = sides[higher] - sides[lower]
        yield at_most(
            "sides alike in height",
            apart,
            UNLIKE,
            say("The left side is {} high and the right side {}: {} apart.", *sides.values(), apart),
            say("Plane the {} to {}, as the {} is.", WORDS[higher], sides[lower], WORDS[lower]),
            about=drawer.code,
            verdict=Verdict.CAUTION,
            source=PRACTICE,
        )
    level = drawer.sizes.face.height == drawer.sizes.side_height
    if "F" in found and sides and level:
        low = max(sides.values()) - found["F"]
        yield at_most(
            "front as high as its sides",
            low,
            UNLIKE,
            say("The front is {} high and its sides up to {}.", found["F"], max(sides.values())),
            say("Plane the sides to {}, as the front is.", found["F"]),
            about=drawer.code,
            verdict=Verdict.CAUTION,
            source=PRACTICE,
        )
