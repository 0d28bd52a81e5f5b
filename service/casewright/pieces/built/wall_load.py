"""What the wall fixings of a piece carry that is fixed to the building, and whether they are enough."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import up_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches, Number, Pounds
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.stand import Stand
from casewright.pieces.case.wall import studs_met
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Part
from casewright.pieces.rules.wall_rules import cleat_screws
from casewright.stability.limits import house_limits
from casewright.stability.masses import total_weight
from casewright.stability.wall import (
    fixing_load,
    fixings_needed,
    hung_weight,
    pull_at_wall,
    pull_out,
    wall_moment,
)

BELOW_TOP = 2.0
"""Wall fixings sit so far below the upper edge of the body, in a rail (common practice) [in]."""
SOURCE = "statics; what a fixing holds is its maker's to say, and the wall's (from memory until typed)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """What pulls at the wall fixings of a piece that is fixed to the building.

    Attributes:
        hangs: the wall carries its weight; else it stands on the floor and the wall only holds it upright
        weight: of piece and contents, where it hangs [lb]
        pull: out of the wall, at all the fixings together [lb]
        lever: from the edge that bears, or the floor, up to the fixings [in]
        fixings: how many it asks for
        each: what one of them carries [lb]
        holds: what one is taken to hold [lb]
        factor: by how much it is to be stronger [dimensionless]
    """

    hangs: bool
    weight: Pounds
    pull: Pounds
    lever: Inches
    fixings: Count
    each: Pounds
    holds: Pounds
    factor: Number


def wall_load(spec: UnitSpec, face: Face, parts: Sequence[Part], stand: Stand, ledger: Ledger) -> Wall:
    """The load of the fixings: of a hung piece its weight and lever, of one that stands what tips it.

    Args:
        spec: what the maker chose
        face: heights of base and body
        parts: every part, for the place of a cleat
        stand: what the piece weighs, and its situations
        ledger: keeps the working

    Returns:
        The load, and how many fixings it asks for.

    Source: statics.
    """
    under, use = ledger.under("wall"), spec.use
    hangs = spec.cleat is not None or face.base_height == 0
    lever = _lever(spec, face, parts, hangs)
    weight = 0.0
    if hangs:
        dead = total_weight(stand.piece)
        weight = under.take("weight", hung_weight, dead=dead, contents=stand.fill + _on_shelves(spec, face))
        moment = under.take("moment", wall_moment, **_opened(spec, stand, weight))
        pull = under.take("pull", pull_out, moment=moment, lever=lever)
    else:
        target = house_limits().target_factor
        case = max(stand.cases, key=lambda each: target * each.tipping - each.holding)
        moments = {"holding": case.holding, "tipping": case.tipping}
        pull = under.take("pull", pull_at_wall, **moments, target=target, lever=lever)
    holds = {"holds": use.fixing_lb, "factor": use.fixing_factor}
    fixings = under.take("fixings", fixings_needed, shear=weight, pull=pull, **holds)
    return Wall(
        hangs=hangs,
        weight=weight,
        pull=pull,
        lever=lever,
        fixings=fixings,
        each=under.take("each", fixing_load, shear=weight, pull=pull, fixings=fixings),
        holds=use.fixing_lb,
        factor=use.fixing_factor,
    )


def _lever(spec: UnitSpec, face: Face, parts: Sequence[Part], hangs: bool) -> float:
    """From the edge that bears, or the floor, up to the middle of the cleat, or to screws through a rail."""
    hooked = f"{spec.code}-Q-C"
    for part in parts:
        if part.code == hooked:
            return part.box.z + part.box.height / 2 - face.base_height
    return face.body_height + (0.0 if hangs else face.base_height) - BELOW_TOP


def _on_shelves(spec: UnitSpec, face: Face) -> float:
    """What lies on shelves, and on the floor of their spaces."""
    return sum(
        (space.shelves + 1) * space.width / 12 * spec.use.shelf_load_lb
        for space in face.spaces
        if not space.knee
    )


def _opened(spec: UnitSpec, stand: Stand, weight: float) -> dict[str, float]:
    """What turns a hung piece away from its wall: all of it, and the drawers that can be open at once."""
    piece = stand.piece
    loads = [each.weight + each.fill_weight for each in piece.drawers] or [0.0]
    return {
        "weight": weight,
        "depth": spec.body.depth,
        "opened": max(loads) if piece.one_at_a_time else sum(loads),
        "travel": max((each.travel for each in piece.drawers), default=0.0),
    }


def wall_findings(
    spec: UnitSpec, face: Face, parts: Sequence[Part], stand: Stand, ledger: Ledger
) -> Iterator[Finding]:
    """Whether the screws of a cleat carry the piece; of one that is fixed otherwise, how many it asks for.

    Args:
        spec: what the maker chose
        face: heights of base and body, and the width between the sides
        parts: every part
        stand: what the piece weighs, and its situations
        ledger: keeps the working

    Yields:
        One finding; none for a piece that stands free and hangs on nothing.

    Source: statics.
    """
    if spec.use.free_standing and spec.cleat is None:
        return
    wall = wall_load(spec, face, parts, stand, ledger)
    asks = say(
        "The fixings carry {:.0f} lb along the wall and {:.0f} lb out of it, {} up: {:d} of them, taken to "
        "hold {:g} lb each with a factor of {:g}.",
        up_to(wall.weight, 1),
        up_to(wall.pull, 1),
        wall.lever,
        wall.fixings,
        wall.holds,
        wall.factor,
    )
    if spec.cleat is None:
        yield Finding(
            rule="wall fixings",
            verdict=Verdict.PASS,
            message=asks,
            found=float(wall.fixings),
            source=SOURCE,
        )
        return
    screws = cleat_screws(studs=max(1, studs_met(spec, face.clear_width)), each=spec.cleat.screws)
    yield at_least(
        "wall fixings",
        screws,
        wall.fixings,
        say("{} The cleat has {:d}.", asks, screws),
        "Put more screws into each stud, take stronger ones and type what they hold, or hang it lower and "
        "screw its lower edge too.",
        about=f"{spec.code}-Q",
        source=SOURCE,
    )
