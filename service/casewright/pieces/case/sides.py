"""The sides of a carcase: boards glued up, frames with panels, or plywood with a solid lipping."""

from collections.abc import Iterator

from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.plan import STILL, CasePlan, SideMoves
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.panels.frame import FrameAsked, PanelFrame, plan_frame
from casewright.pieces.panels.parts import FramePlace, frame_parts
from casewright.pieces.rules import panel_rules
from casewright.wood.movement import movement
from casewright.wood.waste import PartUse

GUIDE = 1.0
"""Height of the strip that packs out a recessed panel where a drawer runs along it (common practice) [in]."""
FRAME = "case.sides"
"""Where the figures of framed sides lie in the ledger."""


def side_moves(spec: UnitSpec, climate: Climate, ledger: Ledger) -> SideMoves:
    """How much the sides of a carcase move in depth.

    Args:
        spec: what the maker chose
        climate: the moisture contents between which the wood moves
        ledger: keeps the working

    Returns:
        A solid side moves over its whole depth, a frame over its stiles alone, plywood not at all.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    take = ledger.under("case").take
    if spec.case.is_ply:
        return STILL
    moves = across(spec.woods.case, ledger)
    changes = (("side_shrinkage", climate.drying), ("side_swelling", climate.swelling))
    if spec.case.is_framed:
        stile = spec.case.panelling.stile
        shrinks, swells = (
            take(name, panel_rules.frame_moves, stile=stile, moves=moves, change=change)
            for name, change in changes
        )
        return SideMoves(across=2 * stile, moves=moves, shrinkage=shrinks, swelling=swells)
    shrinks, swells = (
        take(name, movement, size=spec.body.depth, coefficient=moves, change=change)
        for name, change in changes
    )
    return SideMoves(across=spec.body.depth, moves=moves, shrinkage=shrinks, swelling=swells)


def side_frame(spec: UnitSpec, face: Face, climate: Climate, ledger: Ledger) -> PanelFrame | None:
    """The frame of a framed side, sized; both sides are alike.

    Args:
        spec: what the maker chose
        face: the height of the body
        climate: the moisture contents between which the panels move
        ledger: keeps the working

    Returns:
        The frame; None where the sides are no frames.

    Source: common practice of frame-and-panel work.
    """
    if spec.legs or not spec.case.is_framed:
        return None
    asked = FrameAsked(
        width=spec.body.depth,
        height=face.body_height,
        thickness=spec.case.side,
        how=spec.case.panelling,
        timber=spec.woods.case,
        panel=spec.woods.case,
    )
    return plan_frame(asked, climate, ledger, FRAME)


def side_parts(case: CasePlan) -> Iterator[Part]:
    """Both sides of a carcase.

    Args:
        case: what the case is worked out from

    Yields:
        A board each; or stiles, rails and panels; or plywood and its lipping.

    Source: common practice.
    """
    thick, width = case.spec.case.side, case.spec.body.width
    for mark, x in (("SL", 0.0), ("SR", width - thick)):
        if case.frame:
            yield from frame_parts(case.frame, _place(case, mark, x))
        elif case.spec.case.is_ply:
            yield from _of_ply(case, mark, x)
        else:
            yield _of_boards(case, mark, x)
    if case.frame:
        yield from _guides(case, case.frame)


def side_codes(case: CasePlan) -> tuple[str, str]:
    """The codes of the two whole sides: `A-C-SL` and `A-C-SR`."""
    return case.code("C-SL"), case.code("C-SR")


def _of_boards(case: CasePlan, mark: str, x: Inches) -> Part:
    spec, face = case.spec, case.face
    thick, depth = spec.case.side, spec.body.depth
    return new_part(
        code=case.code(f"C-{mark}"),
        line="C1",
        name="Case side",
        wood=spec.woods.case.wood,
        cut=spec.woods.case.cut,
        thickness=thick,
        width=depth,
        length=face.body_height,
        face=FaceClass.SHOW,
        grain=Grain.UPRIGHT,
        use=PartUse.CASE,
        ends=_ends(spec),
        box=Box(x, 0.0, face.base_height, thick, depth, face.body_height),
    )


def _ends(spec: UnitSpec) -> tuple[Words, Words]:
    """What is cut at the foot of a side, and at its top."""
    corner, over = spec.case.joined, "case top" if spec.has_case_top else "sub-top rails"
    if corner == "half-blind":
        return "sockets for the case bottom", f"sockets for the {over}"
    words = {"through": "pins", "tenon": "mortises", "housing": "rabbet", "dowels": "holes"}
    cut = words.get(corner, "mortises")
    foot = "rabbet" if corner == "tenon" else cut
    return f"{foot} for the case bottom", f"{cut} for the {over}"


def _place(case: CasePlan, mark: str, x: Inches) -> FramePlace:
    return FramePlace(
        code=case.code(f"C-{mark}"),
        line="V",
        name="Side",
        x=x,
        y=0.0,
        z=case.face.base_height,
        is_side=True,
        shows_first=mark == "SL",
    )


def _of_ply(case: CasePlan, mark: str, x: Inches) -> Iterator[Part]:
    spec, face, ply = case.spec, case.face, case.spec.case.ply
    thick, lipping = spec.case.side, ply.lipping
    if lipping:
        yield new_part(
            code=case.code(f"C-{mark}L"),
            line="E1",
            name="Lipping of a case side",
            wood=spec.woods.case.wood,
            cut=spec.woods.case.cut,
            thickness=thick,
            width=lipping,
            length=face.body_height,
            face=FaceClass.EDGE,
            grain=Grain.UPRIGHT,
            use=PartUse.CASE,
            ends=("square", "square"),
            box=Box(x, 0.0, face.base_height, thick, lipping, face.body_height),
        )
    depth = case.ledger.take(
        "ply_side_width", panel_rules.less_lipping, depth=spec.body.depth, lipping=lipping
    )
    yield new_part(
        code=case.code(f"C-{mark}"),
        line="C1",
        name="Case side",
        **ply.material,
        thickness=thick,
        width=depth,
        length=face.body_height,
        face=FaceClass.SHOW,
        grain=Grain.UPRIGHT,
        use=PartUse.CASE,
        ends=_ends(spec),
        box=Box(x, lipping, face.base_height, thick, depth, face.body_height),
    )


def _guides(case: CasePlan, frame: PanelFrame) -> Iterator[Part]:
    """Strips on the panels, flush with the stiles, along which the drawers run where no rail does it."""
    if frame.recess <= 0:
        return
    how, thick, face = frame.asked.how, frame.asked.thickness, case.face
    spans = [how.stile + column * (frame.clear_width + frame.muntin) for column in range(frame.muntins + 1)]
    for row in face.rows:
        if _runs_along_a_rail(frame, row.bottom):
            continue
        height = min(GUIDE, row.height)
        places = (("L", thick - frame.recess), ("R", case.spec.body.width - thick))
        for mark, x in places:
            for number, start in enumerate(spans, start=1):
                yield new_part(
                    code=case.code(f"C-G{row.number}{mark}{number if len(spans) > 1 else ''}"),
                    line="V5",
                    name="Side guide",
                    wood=case.spec.woods.inside.wood,
                    cut=case.spec.woods.inside.cut,
                    thickness=frame.recess,
                    width=height,
                    length=frame.clear_width,
                    face=FaceClass.INSIDE,
                    grain=Grain.BACK,
                    use=PartUse.INSIDE,
                    ends=(say("butt, between the stiles"),) * 2,
                    box=Box(x, start, face.base_height + row.bottom, frame.recess, frame.clear_width, height),
                )


def _runs_along_a_rail(frame: PanelFrame, foot: Inches) -> bool:
    """Whether a rail of the side stands where the guide of a row would, from its foot up."""
    top = frame.asked.height
    for rail in frame.rails:
        if top - rail < foot + GUIDE and foot < top:
            return True
        top -= rail + frame.clear_height
    return False
