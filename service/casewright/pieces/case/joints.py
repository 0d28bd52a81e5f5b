"""The joints of the case: its corners, dividers, uprights, frames and back, each worked out once.

A measured part beats its drawing: a joint takes the sizes of the boards that it is cut on.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial

from casewright.joinery.chisels import Rack
from casewright.joinery.families.carcase.asked import Carcase
from casewright.joinery.families.carcase.joint import carcase
from casewright.joinery.families.edge.asked import FEWEST, Edge
from casewright.joinery.families.edge.joint import edge_joint
from casewright.joinery.families.edge.sizes import room_to_swell
from casewright.joinery.families.frame_tenon.asked import LIMITS as FRAMES
from casewright.joinery.families.frame_tenon.asked import FrameTenon, usual_tenon
from casewright.joinery.families.frame_tenon.joint import frame_tenon
from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.families.housing.joint import housing
from casewright.joinery.families.sliding.joint import Sliding, sliding
from casewright.joinery.joint import Joint
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.corners import CaseCorner
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.openings import FaceRow
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.season import across

PLANED = 1 / 64
"""To what the room at the outer edges of a back is rounded up: a stroke or two of the plane [in]."""
SLIDING = "sliding dovetail"
RAILS, BOTTOM, DIVIDERS, BACK = "rails", "bottom", "dividers", "back"
"""Short names of joints."""
SAID_OF_THE_CASE = ("room when wettest",)
"""Checks of a back that the case has as its own, by the name of `back gaps`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseJoints:
    """Every joint of a case.

    Attributes:
        joints: those that can be laid out
        findings: their checks, and a stop for each that cannot
    """

    joints: tuple[PlacedJoint, ...]
    findings: tuple[Finding, ...]


def case_joints(
    plan: CasePlan, parts: Iterable[Part], corners: tuple[CaseCorner, ...], shrinkage: Inches, rack: Rack
) -> CaseJoints:
    """Every joint of a case, worked out.

    Args:
        plan: what the case is worked out from
        parts: the parts, with what was measured of them
        corners: the dovetailed corners, counted
        shrinkage: how much the sides lose in depth [in]
        rack: the shop's chisels and saw

    Returns:
        The joints and their checks.

    Source: common practice of solid-wood case making; each family of joints names its own.
    """
    lines: dict[str, list[Part]] = {}
    for part in parts:
        lines.setdefault(part.line, []).append(part)
    bench = _Bench(plan=plan, lines=lines, shrinkage=shrinkage, rack=rack)
    rails, bottom = corners
    asked = (
        *_corners(bench, RAILS, "Sub-top rails into the sides", ("C2", "C7"), rails),
        *_corners(bench, BOTTOM, "Case bottom into the sides", ("C5", "C6"), bottom),
        *_dividers(bench),
        *_uprights(bench),
        *_frames(bench),
        *_back(bench),
    )
    joints, findings = [], []
    for each in asked:
        try:
            joint = each.solve()
        except ValueError as error:  # CannotBeLaidOut is one
            findings.append(_refused(each, error))
            continue
        joints.append(
            PlacedJoint(
                key=each.key,
                title=each.title,
                places=each.places,
                serves=each.codes,
                joint=joint,
                working=f"case.joints.{each.key}",
                advice=each.advice,
            )
        )
        findings.extend(found for found in joint.findings if found.rule not in SAID_OF_THE_CASE)
    return CaseJoints(joints=tuple(joints), findings=tuple(findings))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bench:
    """What the joints of a case are worked out from."""

    plan: CasePlan
    lines: dict[str, list[Part]]
    shrinkage: Inches
    rack: Rack

    @property
    def spec(self) -> UnitSpec:
        return self.plan.spec

    def ledger(self, key: str) -> Ledger:
        return self.plan.ledger.under(f"joints.{key}")

    def of(self, *marks: str) -> tuple[Part, ...]:
        """The parts of some lines."""
        return tuple(part for mark in marks for part in self.lines.get(mark, ()))

    def alike(self, *marks: str) -> Iterator[tuple[Part, ...]]:
        """The parts of some lines, those of one thickness and width together."""
        groups: dict[tuple[Inches, Inches], list[Part]] = {}
        for part in self.of(*marks):
            groups.setdefault((part.thickness, part.width), []).append(part)
        return (tuple(group) for group in groups.values())

    @property
    def side(self) -> Inches:
        """Thickness of the thinner case side, measured where it was [in]."""
        return min(part.thickness for part in self.of("C1"))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """A joint that is to be worked out, and what it serves."""

    key: str
    title: str
    places: int
    serves: tuple[tuple[str, tuple[Part, ...]], ...]
    solve: Callable[[], Joint]
    advice: tuple[Words, ...] = ()

    @property
    def codes(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        return tuple((board, tuple(part.code for part in parts)) for board, parts in self.serves)


def _corners(
    bench: _Bench, key: str, title: str, marks: tuple[str, ...], corner: CaseCorner
) -> Iterator[_Asked]:
    """Rails or bottom into the sides; the gauge is locked, so that a measured side changes the lap."""
    case = bench.spec.case
    gauge = case.side - case.lap
    groups = [bench.of(*marks)] if key == BOTTOM else list(bench.alike(*marks))
    for number, boards in enumerate(groups, start=1):
        name = key if len(groups) == 1 else f"{key}_{number}"

        def solve(board: Part = boards[-1], name: str = name) -> Joint:
            return carcase(
                Carcase(
                    width=corner.width,
                    tail_board=board.thickness,
                    pin_board=bench.side,
                    lap=bench.side - gauge,
                    half_pin=case.corner_half_pin,
                    back_half_pin=case.corner_half_pin,
                    pin=case.corner_pin,
                    tails=corner.tails,
                    slope=case.carcase_slope,
                    outside=bench.spec.body.width,
                    rack=bench.rack,
                    mark=board.code,
                ),
                bench.ledger(name),
            )

        yield _Asked(
            key=name,
            title=f"{title}, carcase dovetail",
            places=2 if key == BOTTOM else 2 * len(boards),
            serves=(("tail board", boards), ("pin board", bench.of("C1"))),
            solve=solve,
        )


def _dividers(bench: _Bench) -> Iterator[_Asked]:
    """The rails between two rows, in front and at the rear, into the sides."""
    case, sides = bench.spec.case, bench.of("C1")
    by_thickness: dict[Inches, list[Part]] = {}
    for rail in bench.of("C3", "W1"):
        by_thickness.setdefault(rail.thickness, []).append(rail)
    for number, (thick, rails) in enumerate(by_thickness.items(), start=1):
        name = DIVIDERS if len(by_thickness) == 1 else f"{DIVIDERS}_{number}"

        def solve(thick: Inches = thick, name: str = name) -> Joint:
            if case.divider_end == SLIDING:
                return sliding(
                    Sliding(
                        divider=thick,
                        case_side=bench.side,
                        depth=case.housing,
                        shoulder=case.divider_shoulder,
                        length=case.rail_width,
                        mark=bench.plan.code("D"),
                    ),
                    bench.ledger(name),
                )
            return housing(
                Housing(
                    divider=thick,
                    case_side=bench.side,
                    depth=case.housing,
                    stop=0.0,
                    inside_width=bench.plan.face.clear_width,
                    mark=bench.plan.code("D"),
                ),
                bench.ledger(name),
            )

        yield _Asked(
            key=name,
            title=f"Divider rails into the sides, {case.divider_end}",
            places=2 * len(rails),
            serves=(("divider", tuple(rails)), ("case side", sides)),
            solve=solve,
        )


def _uprights(bench: _Bench) -> Iterator[_Asked]:
    """The uprights of a row into the rails above and below it."""
    case, rows = bench.spec.case, bench.plan.face.rows
    uprights = bench.of("C4")
    for row in rows:
        here = tuple(part for part in uprights if part.code.startswith(bench.plan.code(f"R{row.number}-U")))
        if not here:
            continue
        name = f"uprights_R{row.number}"

        def solve(
            thick: Inches = here[0].thickness,
            row: FaceRow = row,
            code: str = here[0].code,
            name: str = name,
        ) -> Joint:
            return housing(
                Housing(
                    divider=thick,
                    case_side=bench.plan.rail_by(row),
                    depth=bench.plan.upright_housing(row),
                    stop=0.0,
                    length=case.rail_width,
                    inside_width=row.height,
                    mark=code,
                    into="rail",
                    housed="upright",
                ),
                bench.ledger(name),
            )

        yield _Asked(
            key=name,
            title=f"Uprights of row {row.number} into the rails, housing",
            places=2 * len(here),
            serves=(("upright", here),),
            solve=solve,
        )


def _frames(bench: _Bench) -> Iterator[_Asked]:
    """Runners and kickers into the rails: glued in front, dry at the rear, where a solid side moves past."""
    case, frames = bench.spec.case, bench.spec.frames
    kinds = (
        ("runners", "Runners", ("W2", "W3", "W5"), ("C3", "W1"), frames.back_rail_width),
        ("kickers", "Kickers", ("W4",), ("C2", "C7"), case.rail_width),
    )
    for key, words, marks, rails, rear in kinds:
        front_rails, rear_rails = (bench.of(mark) for mark in rails)
        groups = list(_alike_in_place(bench.of(*marks), front_rails))
        for number, (beyond, members) in enumerate(groups, start=1):
            name = key if len(groups) == 1 else f"{key}_{number}"
            yield _Asked(
                key=name,
                title=f"{words} into the rails, frame tenon, dry at the rear",
                places=2 * len(members),
                serves=(("rail", members), ("stile", (*front_rails, *rear_rails))),
                solve=partial(_frame_ends, bench, name, members[0], sorted((case.rail_width, rear)), beyond),
                advice=("The front joint is marked alike, and glued tight.",),
            )


def _alike_in_place(
    members: tuple[Part, ...], rails: tuple[Part, ...]
) -> Iterator[tuple[Inches, tuple[Part, ...]]]:
    """Members of one size that stand as far from the nearer end of their rails, with that distance [in]."""
    if not rails:
        return
    left, right = rails[0].box.x, rails[0].box.x + rails[0].box.width
    groups: dict[tuple[Inches, ...], list[Part]] = {}
    for part in members:
        beyond = min(part.box.x - left, right - part.box.x - part.box.width)
        groups.setdefault((round(beyond, 6), part.thickness, part.width), []).append(part)
    for (beyond, *_), alike in groups.items():
        yield beyond, tuple(alike)


def _frame_ends(bench: _Bench, name: str, member: Part, rails: list[Inches], beyond: Inches) -> Joint:
    """Both ends of a member, on its narrower rail; near the ends of the rails the tenon is set in."""
    tenon = usual_tenon(member.thickness, bench.rack)
    return frame_tenon(
        FrameTenon(
            thickness=member.thickness,
            rail=member.width,
            stile=rails[0],
            other_stile=rails[1],
            tenon=tenon,
            face=(member.thickness - tenon) / 2,
            length=bench.spec.frames.tenon,
            haunch=up_to(max(0.0, FRAMES.end_least.value - beyond), FRAMES.haunch_step.value),
            beyond=max(0.0, beyond),
            slack=bench.plan.slack,
            shrinkage=bench.shrinkage,
            overall=bench.plan.face.opening_depth,
            rack=bench.rack,
            mark=member.code,
        ),
        bench.ledger(name),
    )


def _back(bench: _Bench) -> Iterator[_Asked]:
    """The shiplap of the back boards; one board alone has none."""
    back, boards = bench.spec.back, bench.of("P1")
    if len(boards) < FEWEST:
        return
    climate, moves = bench.plan.climate, across(bench.spec.woods.of("back"), bench.plan.ledger)
    whole = bench.plan.face.clear_width + 2 * back.rabbet
    # Drawn to fill the width; what the outer boards need is planed off them as they go up.
    room = room_to_swell(boards[0].width, moves, climate.swelling, PLANED)

    def solve() -> Joint:
        return edge_joint(
            Edge(
                width=whole + 2 * room,
                thickness=boards[0].thickness,
                boards=len(boards),
                tongue=0.0,
                overlap=back.lap,
                gap=back.gap,
                end_gap=room,
                movement=moves,
                swelling=climate.swelling,
                shrinking=climate.drying,
                mark=bench.plan.code("K"),
            ),
            bench.ledger(BACK),
        )

    yield _Asked(
        key=BACK,
        title="Back boards, shiplap",
        places=len(boards) - 1,
        serves=(("board", boards),),
        solve=solve,
        advice=(say("Plane {} off the outer edge of the first board and of the last as they go up.", room),),
    )


def _refused(asked: _Asked, error: ValueError) -> Finding:
    return Finding(
        rule="joint of the case",
        verdict=Verdict.STOP,
        message=f"{asked.title}: it cannot be laid out.",
        remedy=error.args[0],
        about=asked.serves[0][1][0].code,
    )
