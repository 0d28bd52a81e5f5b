"""The joints of a piece on legs: aprons and rails into the legs."""

from collections.abc import Iterator
from functools import partial

from casewright.joinery.families.carcase.asked import Carcase
from casewright.joinery.families.carcase.joint import carcase
from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.families.housing.joint import housing
from casewright.joinery.families.leg_tenon.asked import LegTenon
from casewright.joinery.families.leg_tenon.joint import leg_tenon
from casewright.joinery.families.leg_tenon.rules import (
    LIMITS,
    usual_face,
    usual_leg_haunch,
    usual_leg_tenon,
)
from casewright.joinery.joint import Joint
from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.leg_sizes import leg_sizes
from casewright.pieces.case.leg_spaces import PARTITION
from casewright.pieces.layout.parts import Part
from casewright.pieces.rules.case_rules import upright_housing

HALF_PIN, WIDEST_HALF_PIN = 1 / 8, 3 / 8
"""The upper rail's one tail has this part of the rail on either side of it, and no more than so much (common
practice) [1, in]."""
SPLITS: Words = "Hold the dovetail clear of the leg's outside arris: short grain splits off there."


def leg_joints(bench: CaseBench, legs: LegsAndAprons) -> Iterator[AskedJoint]:
    """Aprons and rails into the legs.

    Args:
        bench: what the joints are worked out from
        legs: what the maker chose

    Yields:
        The back legs, where two aprons meet; the front legs; the upper rail; the rails below it.

    Source: common practice of leg-and-apron work.
    """
    sides, back = bench.of("A1"), bench.of("A2")
    posts = bench.of("L1")
    front, rear = (tuple(part for part in posts if part.code[-2] == mark) for mark in "FB")
    yield AskedJoint(
        key="back_legs",
        kind="leg-tenon",
        title="Side and back aprons into the back legs, leg tenons",
        places=2,
        serves=(("leg", rear), ("apron", (*sides, *back))),
        solve=partial(_apron, bench, "back_legs", legs, rear, (*sides, *back), 2),
    )
    yield AskedJoint(
        key="front_legs",
        kind="leg-tenon",
        title="Side aprons into the front legs, leg tenon",
        places=2,
        serves=(("leg", front), ("apron", sides)),
        solve=partial(_apron, bench, "front_legs", legs, front, sides, 1),
    )
    upper = bench.of("R1")
    yield AskedJoint(
        key="upper_rail",
        kind="carcase",
        title="Upper front rail into the tops of the front legs, lapped dovetail",
        places=2,
        serves=(("tail board", upper), ("pin board", front)),
        solve=partial(_dovetail, bench, legs, upper[0], front),
        advice=(SPLITS,),
    )
    for key, marks, words in (
        ("lower_rail", "R2", "Lower front rail"),
        ("divider_rails", "R3", "Divider rails"),
    ):
        rails = bench.of(marks)
        if rails:
            yield AskedJoint(
                key=key,
                kind="leg-tenon",
                title=f"{words} into the front legs, leg tenon",
                places=2 * len(rails),
                serves=(("leg", front), ("apron", rails)),
                solve=partial(_rail, bench, key, legs, rails, front),
                advice=("The rail lies flat: its width is the apron's thickness of this joint.",),
            )

    for line, mark, word, into in (
        ("R4", "U", "upright", "the rails"),
        (PARTITION, "P", "partition", "rails and runners"),
    ):
        standing = bench.of(line)
        for row in bench.plan.face.rows if standing else ():
            start = bench.plan.code(f"{row.code}-{mark}")
            here = tuple(part for part in standing if part.code.startswith(start))
            if here:
                key = f"{word}s_{row.code}"
                yield AskedJoint(
                    key=key,
                    kind="housing",
                    title=f"{word.capitalize()}s of row {row.mark} into {into}, housing",
                    places=2 * len(here),
                    serves=((word, here),),
                    solve=partial(_standing, bench, legs, here[0], row.height, word, key),
                )


def _standing(
    bench: CaseBench, legs: LegsAndAprons, part: Part, height: Inches, word: str, key: str
) -> Joint:
    return housing(
        Housing(
            divider=part.thickness,
            case_side=legs.rail,
            depth=upright_housing(housing=legs.rail, rail=legs.rail),
            stop=0.0,
            length=part.width,
            inside_width=height,
            rack=bench.rack,
            mark=part.code,
            into="rail",
            housed=word,
        ),
        bench.ledger(key),
    )


def _thin(parts: tuple[Part, ...]) -> Inches:
    """The thinnest of some parts, measured where it was [in]."""
    return min(part.thickness for part in parts)


def _apron(
    bench: CaseBench,
    key: str,
    legs: LegsAndAprons,
    posts: tuple[Part, ...],
    aprons: tuple[Part, ...],
    meeting: int,
) -> Joint:
    thick, height = _thin(aprons), aprons[0].width
    tenon = usual_leg_tenon(thick, bench.rack)
    lower = min(LIMITS.lower_shoulder.value, height / 4)
    body = bench.spec.body
    return leg_tenon(
        LegTenon(
            leg=_thin(posts),
            apron=thick,
            height=height,
            setback=legs.setback,
            tenon=tenon,
            face=usual_face(thick, legs.setback, tenon),
            length=leg_sizes(legs, bench.rack, UNKEPT).tenon,
            haunch=usual_leg_haunch(height, lower),
            lower_shoulder=lower,
            aprons=meeting,
            width=body.width if meeting > 1 else 0.0,
            depth=body.depth,
            rack=bench.rack,
            mark=posts[0].code,
        ),
        bench.ledger(key),
    )


def _rail(
    bench: CaseBench, key: str, legs: LegsAndAprons, rails: tuple[Part, ...], posts: tuple[Part, ...]
) -> Joint:
    """A rail that lies flat between the front legs, flush with their faces."""
    rail = rails[0]
    tenon = usual_leg_tenon(rail.width, bench.rack)
    beyond = bench.plan.face.base_height + bench.plan.face.body_height - rail.box.z - rail.box.height
    return leg_tenon(
        LegTenon(
            leg=_thin(posts),
            apron=rail.width,
            height=rail.thickness,
            setback=0.0,
            tenon=min(tenon, rail.thickness),
            face=(rail.width - min(tenon, rail.thickness)) / 2,
            length=leg_sizes(legs, bench.rack, UNKEPT).rail_tenon,
            aprons=1,
            beyond=beyond,
            width=bench.spec.body.width,
            rack=bench.rack,
            mark=rail.code,
        ),
        bench.ledger(key),
    )


def _dovetail(bench: CaseBench, legs: LegsAndAprons, rail: Part, posts: tuple[Part, ...]) -> Joint:
    post = _thin(posts)
    half_pin = min(WIDEST_HALF_PIN, rail.width * HALF_PIN)
    return carcase(
        Carcase(
            width=rail.width,
            tail_board=rail.thickness,
            pin_board=post,
            lap=post - leg_sizes(legs, bench.rack, UNKEPT).dovetail,
            half_pin=half_pin,
            back_half_pin=half_pin,
            pin=half_pin,
            tails=1,
            outside=bench.spec.body.width,
            rack=bench.rack,
            mark=rail.code,
        ),
        bench.ledger("upper_rail"),
    )


def rails_clear(bench: CaseBench, legs: LegsAndAprons) -> Iterator[Finding]:
    """Whether tenons and dovetails of the front rails stay clear of the side aprons' mortises.

    Args:
        bench: what the joints are worked out from
        legs: what the maker chose

    Yields:
        A finding for the tenons, and one for the dovetails.

    Source: common practice: less wood between two mortises breaks out.
    """
    sizes = leg_sizes(legs, bench.rack, UNKEPT)
    wall = sizes.wall + _thin(bench.of("L1")) - legs.leg
    least = LIMITS.clear_least
    for what, reach, code in (
        ("tenon of the lower rail", sizes.rail_tenon, "C-LF"),
        ("dovetail of the upper rail", sizes.dovetail, "C-UF"),
    ):
        yield at_least(
            "front rails clear the aprons",
            wall - reach,
            least.value,
            say(
                "In a front leg the {} ends {} before the side apron's mortise; {:bare} is to stay.",
                what,
                wall - reach,
                least.value,
            ),
            say("Make the {} {:down} long or shorter.", what, max(0.0, wall - least.value)),
            about=bench.plan.code(code),
            source=least.source,
        )
