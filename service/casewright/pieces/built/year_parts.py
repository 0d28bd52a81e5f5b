"""The parts beside the fronts and sides of drawers through the year: bottoms, back, top, frames, base."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from casewright.joinery.families.bottom_groove.asked import BOTTOMS
from casewright.joinery.families.edge.asked import EDGES
from casewright.joinery.families.edge.sizes import covered_then, gap_then
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, PerPercent
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.alike import drawers_alike
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import PLY_PLAY
from casewright.pieces.layout.season import across
from casewright.pieces.layout.year import Through, Year
from casewright.pieces.rules import season_rules as rules
from casewright.wood.movement import Direction, coefficient, plywood_coefficient
from casewright.wood.species import wood


@dataclass(frozen=True, slots=True, kw_only=True)
class PartYear:
    """One size of a part that moves, through the year.

    Attributes:
        part: what it is, with the codes of drawers where it is one of theirs
        made_of: its wood and cut, or its sheet
        what: the size that is followed
        through: the size now, at both ends and month by month
        limit: what it must not fall below; None where it only tells how far something moves [in]
        note: what to do about it
    """

    part: str
    made_of: str
    what: str
    through: Through
    limit: Inches | None
    note: Words

    @property
    def passes(self) -> bool:
        """Whether it stays above its limit all year."""
        return self.limit is None or min(self.through.months) >= self.limit - TOLERANCE


def sawn(timber: Timber) -> str:
    """A wood with its cut, as the yard says it.

    Args:
        timber: the wood and how it was sawn

    Returns:
        Such as `cherry, flat-sawn`.

    Source: common practice.
    """
    return f"{timber.wood}, {timber.cut.sawn}"


def through_thickness(timber: Timber, ledger: Ledger) -> PerPercent:
    """The movement coefficient of a board in its thickness.

    Args:
        timber: the wood and how it was sawn
        ledger: keeps the working

    Returns:
        The change in thickness as a share of it, for each percent of moisture [1 per % moisture]

    Source: Wood Handbook, FPL-GTR-190 (2010), table 13-5, by the direction rule of its chapter 13.
    """
    species = wood(timber.wood)
    return ledger.take(
        f"moves.{species.name}.{timber.cut}.thickness",
        coefficient,
        radial=species.radial,
        tangential=species.tangential,
        cut=timber.cut,
        direction=Direction.THICKNESS,
    )


def parts_through(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    """Every part that moves and has room to, but the fronts and sides in height.

    Args:
        unit: the unit
        year: the year at home
        ledger: keeps the working

    Returns:
        The parts.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    groups = drawers_alike(unit.drawers, _deep)
    for group in groups:
        codes = ", ".join(each.sizes.code for each in group)
        whose = codes if len(groups) > 1 else "every drawer"
        yield from _drawer_parts(unit.spec, group[0], whose, (year, ledger))
    if unit.spec.drawers.on_frames:
        yield from _frames(unit, year, ledger)
    yield from _back(unit, year, ledger)
    yield from _top(unit.spec, year, ledger)


def _deep(drawer: Drawer) -> tuple[float, ...]:
    """What decides how the bottom of a drawer and its sides move."""
    sizes, bottom = drawer.sizes, drawer.bottom
    clear = sizes.opening.width - sizes.width, sizes.opening.depth - sizes.length
    # Only plywood moves from side to side: solid bottoms have their long grain that way.
    wide = bottom.across if bottom.sag is None else 0.0
    thick = sizes.back, sizes.left_side, sizes.right_side
    return tuple(float(each) for each in (*clear, bottom.deep, wide, *thick))


Named = Callable[[str, float], float]


def _taken(under: Ledger, name: str, rule: Callable[..., float], **inputs: float) -> Named:
    """A size by its rule, to be followed through the year."""
    return lambda when, change: under.take(f"{name}_{when}", rule, **inputs, change=change)


def _drawer_parts(spec: UnitSpec, first: Drawer, whose: str, kept: tuple[Year, Ledger]) -> Iterator[PartYear]:
    (year, ledger), bottom = kept, spec.drawers.bottom
    sizes, deep = first.sizes, first.bottom.deep
    under = ledger.under(f"year.{sizes.code}")
    is_ply = isinstance(bottom, PlyBottom)
    moves = plywood_coefficient()[0] if is_ply else across(spec.woods.of("bottoms"), ledger)
    made_of = first.bottom.material if is_ply else sawn(spec.woods.of("bottoms"))
    over = bottom.over if sizes.back_foot else 0.0
    part = partial(PartYear, part=f"Bottom of {whose}", made_of=made_of)
    yield part(
        what="room behind it",
        through=year.follow(
            _taken(
                under,
                "behind",
                rules.room_behind,
                clearance=sizes.opening.depth - sizes.length,
                depth=spec.body.depth,
                side_moves=across(spec.woods.case, ledger),
                bottom=deep,
                bottom_moves=moves if sizes.back_foot else 0.0,
                over=over,
            )
        ),
        limit=BOTTOMS.behind_least.value,
        note="Side and bottom at one moisture; the checks take the shortest side with the longest bottom.",
    )
    if sizes.back_foot:
        reach = _taken(
            under, "reach", rules.reach_under, back=sizes.back, over=over, bottom=deep, moves=moves
        )
        yield part(
            what="reach under the back",
            through=year.follow(reach),
            limit=0.0,
            note="Hold it in the front groove only; slot the screw under the back.",
        )
    if is_ply:
        play = _taken(under, "play", rules.play_left, play=PLY_PLAY, panel=first.bottom.across, moves=moves)
        yield part(what="play in each groove", through=year.follow(play), limit=0.0, note="Cut as given.")
    side = max(sizes.left_side, sizes.right_side)
    yield PartYear(
        part=f"Sides of {whose}",
        made_of=sawn(spec.woods.drawers),
        what="clearance beside them",
        through=year.follow(
            _taken(
                under,
                "beside",
                rules.side_room,
                gap=(sizes.opening.width - sizes.width) / 2,
                side=side,
                moves=through_thickness(spec.woods.drawers, ledger),
            )
        ),
        limit=0.0,
        note="They move in thickness; the width of the opening is long grain and stays.",
    )


def _frames(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    spec, under = unit.spec, ledger.under("year.case")
    side = across(spec.woods.case, ledger)
    slack = _taken(
        under, "slack", rules.slack_behind, slack=unit.case.slack, depth=spec.body.depth, moves=side
    )
    yield PartYear(
        part="Runners",
        made_of=f"long grain, in sides of {sawn(spec.woods.case)}",
        what="gap at the rear",
        through=year.follow(slack),
        limit=0.0,
        note="Leave the rear joint dry.",
    )


def _back(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    spec, board, under = unit.spec, unit.case.back_board, ledger.under("year.back")
    moves = across(spec.woods.of("back"), ledger)
    part = partial(PartYear, part="Back boards", made_of=sawn(spec.woods.of("back")))
    gaps = year.follow(_taken(under, "gap", gap_then, board=board, gap=spec.back.gap, movement=moves))
    yield part(
        what="gap at each lap",
        through=gaps,
        limit=0.0,
        note="Fix each at the middle of its width only.",
    )

    def covers(when: str, change: float) -> float:
        gap = gap_then(board=board, gap=spec.back.gap, movement=moves, change=change)
        return under.take(
            f"covers_{when}", covered_then, overlap=spec.back.lap, gap=gap, movement=moves, change=change
        )

    yield part(
        what="what the laps cover",
        through=year.follow(covers),
        limit=EDGES.cover_stop.value,
        note="Less than the limit lets light through.",
    )


def _top(spec: UnitSpec, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    under, depth = ledger.under("year.top"), spec.body.depth
    top, side = across(spec.woods.of("top"), ledger), across(spec.woods.case, ledger)
    made_of = f"{sawn(spec.woods.of('top'))}, on {sawn(spec.woods.case)}"
    grows = year.follow(_taken(under, "grows", rules.apart, size=depth, one=top, other=0.0))
    note = say("Fixed at the front, over a depth of {}: so far it moves at the rear.", depth)
    yield PartYear(
        part="Top", made_of=made_of, what="moves over the case", through=grows, limit=None, note=note
    )
    if top != side:
        yield PartYear(
            part="Top",
            made_of=made_of,
            what="moves apart from the sides",
            through=year.follow(_taken(under, "apart", rules.apart, size=depth, one=top, other=side)),
            limit=None,
            note="Its buttons need this much slack, with a little to spare.",
        )
    timber = spec.woods.inside if spec.case.lipping else spec.woods.case
    wide, moves = depth - spec.case.lipping, across(timber, ledger)
    if moves != side:
        bottom = year.follow(_taken(under, "bottom", rules.apart, size=wide, one=moves, other=side))
        yield PartYear(
            part="Case bottom",
            made_of=f"{sawn(timber)}, in {sawn(spec.woods.case)}",
            what="moves apart from the sides",
            through=bottom,
            limit=None,
            note="Dovetailed to them: the less the woods differ, the less the joint has to hold.",
        )
    if spec.plinth is not None:
        returns = year.follow(_taken(under, "plinth", rules.apart, size=depth, one=side, other=0.0))
        yield PartYear(
            part="Plinth returns",
            made_of=f"long grain, under sides of {sawn(spec.woods.case)}",
            what="the side moves over them",
            through=returns,
            limit=None,
            note="Fix them at the front, slot the rear screws.",
        )
