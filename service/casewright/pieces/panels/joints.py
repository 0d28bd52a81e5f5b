"""The tenons of a frame: its rails in the stiles, its muntins in the rails."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.families.frame_tenon.asked import (
    FrameTenon,
    PanelGroove,
    usual_frame_haunch,
    usual_tenon,
)
from casewright.joinery.families.frame_tenon.joint import frame_tenon
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.parts import Part
from casewright.pieces.panels.frame import PanelFrame


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameTenons:
    """The tenons of frames alike.

    Attributes:
        joints: those that can be laid out
        findings: their checks, and a stop for each that cannot
    """

    joints: tuple[PlacedJoint, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tenoned:
    """One kind of joint of the frame: what is tenoned into what, and where."""

    key: str
    title: str
    members: tuple[Part, ...]
    posts: tuple[Part, ...]
    rail: Inches
    haunch: Inches
    beyond: Inches
    is_stub: bool = False
    advice: tuple[Words, ...] = ()


def frame_tenons(
    frame: PanelFrame,
    codes: Sequence[str],
    parts: Mapping[str, Part],
    rack: Rack,
    ledger: Ledger,
    key: str,
    working: str,
    title: str,
) -> FrameTenons:
    """The tenons of frames alike, each kind worked out once.

    Args:
        frame: the frame, sized
        codes: the code of each whole frame, such as `A-C-SL`
        parts: the parts of the unit by their code, with what was measured of them
        rack: the shop's chisels
        ledger: keeps the working
        key: the first word of the joints' short names, such as `sides`
        working: where the joints' figures lie in the ledger, such as `case.joints`
        title: what the frame is, in a maker's words, such as `side`

    Returns:
        The joints and their checks.

    Source: common practice of frame-and-panel work.
    """
    joints: list[PlacedJoint] = []
    findings: list[Finding] = []
    for each in _kinds(frame, codes, parts, key, title):
        try:
            joint = frame_tenon(_asked(frame, each, rack), ledger.under(f"{working}.{each.key}"))
        except ValueError as error:  # CannotBeLaidOut is one
            findings.append(
                Finding(
                    rule="joint of the frame",
                    verdict=Verdict.STOP,
                    message=f"{each.title}: it cannot be laid out.",
                    remedy=error.args[0],
                    about=each.members[0].code,
                )
            )
            continue
        joints.append(
            PlacedJoint(
                key=each.key,
                kind="frame-tenon",
                title=each.title,
                places=2 * len(each.members),
                serves=(
                    ("rail", tuple(part.code for part in each.members)),
                    ("stile", tuple(part.code for part in each.posts)),
                ),
                joint=joint,
                working=f"{working}.{each.key}",
                advice=each.advice,
            )
        )
        findings.extend(joint.findings)
    return FrameTenons(joints=tuple(joints), findings=tuple(findings))


def _kinds(
    frame: PanelFrame, codes: Sequence[str], parts: Mapping[str, Part], key: str, title: str
) -> Iterator[_Tenoned]:
    how, rails = frame.asked.how, frame.rails

    def of(*marks: str) -> tuple[Part, ...]:
        return tuple(parts[f"{code}-{mark}"] for code in codes for mark in marks)

    stiles, last = of("S1", "S2"), len(rails)
    middle = tuple(f"R{number}" for number in range(2, last))
    outer = {rails[0]: ["R1"]}
    outer.setdefault(rails[-1], []).append(f"R{last}")
    for width, marks in outer.items():
        both = len(marks) > 1
        where = "top and bottom" if both else "top" if marks == ["R1"] else "bottom"
        members = of(*marks)
        yield _Tenoned(
            key=f"{key}_rails" if both else f"{key}_{where}",
            title=f"Rails of the {title} into the stiles, {where}, frame tenon",
            members=members,
            posts=stiles,
            rail=min(width, *(part.width for part in members)),
            haunch=usual_frame_haunch(width, how.groove_depth),
            beyond=0.0,
        )
    twice = (say("The groove runs along both edges: {} deep at each.", how.groove_depth),)
    if middle:
        members = of(*middle)
        yield _Tenoned(
            key=f"{key}_middle",
            title=f"Middle rails of the {title} into the stiles, frame tenon",
            members=members,
            posts=stiles,
            # One of the two grooves is taken off the width, the other is the joint's own.
            rail=members[0].width - how.groove_depth,
            haunch=0.0,
            beyond=rails[0] + frame.clear_height + how.groove_depth,
            advice=twice,
        )
    if frame.muntins:
        count = frame.muntins * (last - 1)
        members = of(*(f"M{number}" for number in range(1, count + 1)))
        yield _Tenoned(
            key=f"{key}_muntins",
            title=f"Muntins of the {title} into the rails, stub tenon",
            members=members,
            posts=of(*(f"R{number}" for number in range(1, last + 1))),
            rail=members[0].width - how.groove_depth,
            haunch=0.0,
            beyond=frame.tenon + frame.clear_width + how.groove_depth,
            is_stub=True,
            advice=twice,
        )


def _asked(frame: PanelFrame, each: _Tenoned, rack: Rack) -> FrameTenon:
    """The joint as it is asked for; raises ValueError where it cannot be."""
    thick = min(part.thickness for part in (*each.members, *each.posts))
    # One setting makes groove and tenon where the panel is as thick as a tenon; no groove is wider than one.
    tenon = frame.groove if each.is_stub else max(frame.groove, usual_tenon(thick, rack))
    return FrameTenon(
        thickness=thick,
        rail=each.rail,
        stile=min(part.width for part in each.posts),
        tenon=tenon,
        face=(thick - tenon) / 2,
        length=frame.stub if each.is_stub else frame.tenon,
        groove=PanelGroove(width=frame.groove, depth=frame.asked.how.groove_depth),
        haunch=each.haunch,
        beyond=each.beyond,
        overall=0.0 if each.is_stub else frame.asked.width,
        rack=rack,
        mark=each.members[0].code,
    )
