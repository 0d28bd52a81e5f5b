"""The joints of the web frames: runners and kickers in the rails."""

from collections.abc import Iterator
from functools import partial

from casewright.joinery.families.frame_tenon.asked import LIMITS as FRAMES
from casewright.joinery.families.frame_tenon.asked import FrameTenon, PanelGroove, usual_tenon
from casewright.joinery.families.frame_tenon.joint import frame_tenon
from casewright.joinery.joint import Joint
from casewright.measure.rounding import up_to
from casewright.measure.units import Inches
from casewright.pieces.asked.case_spec import DOVETAILS
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.ends import rail_ends
from casewright.pieces.layout.parts import Part

DUSTED = ("W2", "W3", "W5", "W8")
"""What of a dust frame has the groove for its panels."""


def frame_joints(bench: CaseBench) -> Iterator[AskedJoint]:
    """Runners and kickers into the rails: glued in front, dry at the rear, where a solid side moves past.

    Args:
        bench: what the joints are worked out from

    Yields:
        A joint for each size and place of a member.

    Source: common practice of solid-wood case making.
    """
    case, frames = bench.spec.case, bench.spec.frames
    kinds = (
        ("runners", ("W2", "W3", "W5", "W8"), ("C3", "W1"), frames.back_rail_width, 0.0),
        # The rails under the top end in tails, whose waste is cut away down to their baseline.
        ("kickers", ("W4", "W9"), ("C2", "C7"), case.rail_width, _cut_away(bench)),
    )
    for key, marks, rails, rear, tails in kinds:
        front_rails, rear_rails = (bench.of(mark) for mark in rails)
        groups = list(_alike_in_place(bench.of(*marks), front_rails))
        for number, (beyond, members) in enumerate(groups, start=1):
            name = key if len(groups) == 1 else f"{key}_{number}"
            where = "within" if beyond > members[0].width else "at the sides"
            words = " and ".join(dict.fromkeys(f"{part.name.lower()}s" for part in members)).capitalize()
            yield AskedJoint(
                key=name,
                kind="frame-tenon",
                title=f"{words} {where}, frame tenon, dry at the rear",
                places=2 * len(members),
                serves=(("rail", members), ("stile", (*front_rails, *rear_rails))),
                solve=partial(
                    _frame_ends, bench, name, members[0], sorted((case.rail_width, rear)), (beyond, tails)
                ),
                advice=("The front joint is marked alike, and glued tight.",),
            )


def _cut_away(bench: CaseBench) -> Inches:
    """How much of a rail's end under the top is cut away around its tails or tenons [in]."""
    case = bench.spec.case
    if case.joined in DOVETAILS or case.joined == "tenon":
        return rail_ends(bench.plan).reach
    return 0.0


def _alike_in_place(
    members: tuple[Part, ...], rails: tuple[Part, ...]
) -> Iterator[tuple[Inches, tuple[Part, ...]]]:
    """Members of one size that stand as far from the nearer end of their rails, with that distance [in]."""
    by_frame = {rail.code.rpartition("-")[0]: rail.box for rail in rails}
    groups: dict[tuple[Inches, ...], list[Part]] = {}
    for part in members:
        rail = by_frame[part.code.rpartition("-")[0]]
        left, right = rail.x, rail.x + rail.width
        beyond = min(part.box.x - left, right - part.box.x - part.box.width)
        groups.setdefault((round(beyond, 6), part.thickness, part.width), []).append(part)
    for (beyond, *_), alike in groups.items():
        yield beyond, tuple(alike)


def _frame_ends(
    bench: CaseBench, name: str, member: Part, rails: list[Inches], end: tuple[Inches, Inches]
) -> Joint:
    """Both ends of a member, on its narrower rail; where the rail has little whole wood beside it, set in."""
    beyond, tails = end
    whole = beyond - tails
    tenon = usual_tenon(member.thickness, bench.rack)
    dust = None
    if bench.spec.case.divider_kind == "dust-frame" and member.line in DUSTED:
        panel = bench.spec.case.dust
        dust = PanelGroove(width=panel.bought.thickness, depth=panel.groove)
        tenon = max(tenon, dust.width)
    return frame_tenon(
        FrameTenon(
            thickness=member.thickness,
            rail=member.width,
            stile=rails[0],
            other_stile=rails[1],
            tenon=tenon,
            face=(member.thickness - tenon) / 2,
            length=bench.spec.frames.tenon,
            groove=dust,
            haunch=up_to(max(0.0, FRAMES.end_least.value - whole), FRAMES.haunch_step.value),
            beyond=max(0.0, beyond),
            slack=bench.plan.slack,
            shrinkage=bench.shrinkage,
            overall=bench.plan.face.opening_depth,
            rack=bench.rack,
            mark=member.code,
        ),
        bench.ledger(name),
    )
