"""The floors of open spaces, and of what stands behind doors, that lie on a web frame."""

from collections.abc import Iterator

from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import Face, FaceRow, Space
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse

PLAY = 1 / 32
"""Room at each end of a floor, so that it drops in between its walls (common practice) [in]."""


def over_frames(face: Face, *, on_legs: bool = False) -> Iterator[tuple[FaceRow, Space]]:
    """The openings without drawers that do not stand on the case bottom; on legs there is none.

    Args:
        face: the face
        on_legs: does it stand on legs?

    Yields:
        Each with its row.

    Source: geometry of the face.
    """
    for row in face.all_rows:
        if row.is_lowest and not on_legs:
            continue
        for cell in row.cells:
            if isinstance(cell.opening, Space):
                yield row, cell.opening


def lays_floors(spec: UnitSpec) -> bool:
    """Does a floor lie on the frames: is one wished, and a whole frame there to carry it?"""
    if spec.legs:
        return spec.shelving.floor != "none"
    return spec.shelving.floor != "none" and spec.case.divider_kind == "web-frame" and spec.drawers.on_frames


def floor_under(case: CasePlan, space: Space) -> Inches:
    """How much of the height of an opening its floor takes.

    Args:
        case: what the case is worked out from
        space: the opening

    Returns:
        The thickness of the floor; nothing where none lies there [in]

    Source: geometry of the case.
    """
    found = over_frames(case.face, on_legs=case.spec.legs is not None)
    is_laid = lays_floors(case.spec) and any(each.code == space.code for _, each in found)
    return case.spec.shelving.floor_sheet.bought.thickness if is_laid else 0.0


def floor_parts(case: CasePlan) -> Iterator[Part]:
    """The floors that lie on web frames: thin plywood behind a strip of show wood.

    Plywood does not move, and the sides do: a floor is fast in front only, and as far from the back as the
    runners under it are from their rear rail.

    Args:
        case: what the case is worked out from

    Yields:
        The strip of each, then the floor.

    Source: common practice of cabinet making.
    """
    spec = case.spec
    if not lays_floors(spec):
        return
    sheet, edge = spec.shelving.floor_sheet, spec.shelving.floor_edge
    thick = sheet.bought.thickness
    for _, space in over_frames(case.face, on_legs=spec.legs is not None):
        under = case.ledger.under(space.code)
        front = spec.doors.thickness if space.holds == "doors" and spec.doors.style == "inset" else 0.0
        length = under.take("floor_length", rules.between, whole=space.width, one_end=PLAY, other_end=PLAY)
        width = under.take(
            "floor_width",
            rules.between,
            whole=case.face.opening_depth,
            one_end=front + edge,
            other_end=case.slack,
        )
        x, z = space.left + PLAY, case.face.base_height + space.bottom
        words = (say("loose, {} of room", PLAY),) * 2
        yield new_part(
            code=case.code(f"{space.code}-FLE"),
            line="C14",
            name="Floor edge",
            wood=spec.woods.case.wood,
            cut=spec.woods.case.cut,
            thickness=thick,
            width=edge,
            length=length,
            face=FaceClass.EDGE,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=words,
            box=Box(x, front, z, length, edge, thick),
        )
        yield new_part(
            code=case.code(f"{space.code}-FL"),
            line="C13",
            name="Floor, laid on the frame",
            **sheet.material,
            thickness=thick,
            width=width,
            length=length,
            face=FaceClass.INSIDE,
            grain=Grain.ACROSS,
            use=PartUse.INSIDE,
            ends=words,
            box=Box(x, front + edge, z, length, width, thick),
        )
