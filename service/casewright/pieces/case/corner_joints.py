"""The corners of a carcase: rails, top and bottom in the sides, by whichever joint the maker chose."""

from collections.abc import Iterator
from functools import partial

from casewright.joinery.families.carcase.asked import Carcase
from casewright.joinery.families.carcase.joint import carcase
from casewright.joinery.families.dowels.joint import doweled
from casewright.joinery.families.frame_tenon.asked import LIMITS as FRAMES
from casewright.joinery.families.frame_tenon.asked import FrameTenon, usual_tenon
from casewright.joinery.families.frame_tenon.joint import frame_tenon
from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.families.housing.joint import housing
from casewright.joinery.families.loose_tenon.joint import loose_tenoned
from casewright.joinery.joint import Joint
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.case_spec import DOVETAILS
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.boards import growth
from casewright.pieces.case.corners import CaseCorner
from casewright.pieces.case.ends import corner_tenon, is_housed
from casewright.pieces.layout.parts import Part
from casewright.pieces.rules.corner_rules import fastenings

RAILS, TOP, BOTTOM = "rails", "case_top", "bottom"
"""Short names of joints."""
NAMES = {RAILS: "Sub-top rails", TOP: "Case top", BOTTOM: "Case bottom"}
SCREW_MARGIN, SCREW_SPACING = 1.5, 6.0
"""From an edge to the first screw of a housed corner, and between two at the most (common practice) [in]."""
TWINS = 2.0
"""A rail that lies flat has a tenon for so many thicknesses of its width (common practice)."""


def corner_joints(bench: CaseBench, corners: tuple[CaseCorner, ...]) -> Iterator[AskedJoint]:
    """Rails or top, and bottom, into the sides.

    Args:
        bench: what the joints are worked out from
        corners: the corners, counted

    Yields:
        A joint for each size of board.

    Source: common practice of case making.
    """
    rails, bottom = corners
    case = bench.spec.case
    if bench.spec.has_case_top:
        yield from _joined(bench, TOP, (bench.of("C11"),), rails)
    else:
        yield from _joined(bench, RAILS, tuple(bench.alike("C2", "C7")), rails)
    if not bottom.corners:
        return
    if is_housed(bench.plan):
        yield _housed(bench, BOTTOM, BOTTOM, bench.of("C5", "C6"), bottom)
    else:
        boards = bench.of("C6") if case.is_ply else bench.of("C5", "C6")
        yield from _joined(bench, BOTTOM, (boards,), bottom)


def _joined(
    bench: CaseBench, key: str, groups: tuple[tuple[Part, ...], ...], corner: CaseCorner
) -> Iterator[AskedJoint]:
    """One kind of board into the sides; boards of other sizes have a joint of their own."""
    kind = bench.spec.case.joined
    for number, boards in enumerate(groups, start=1):
        name = key if len(groups) == 1 else f"{key}_{number}"
        if kind in DOVETAILS:
            yield _dovetailed(bench, key, name, boards, corner)
        elif kind == "housing":
            yield _housed(bench, key, name, boards, corner)
        elif kind == "tenon":
            yield _tenoned(bench, name, boards, key)
        else:
            yield _butted(bench, key, name, boards, corner)


def _places(key: str, boards: tuple[Part, ...], corner: CaseCorner) -> Count:
    """How often a joint is cut: a bottom or top and its lipping lie in one."""
    return 2 * len(boards) if key == RAILS else corner.corners


def _across(bench: CaseBench, key: str, boards: tuple[Part, ...]) -> Inches:
    """How long the joint is from front to back: with a lipping that is joined as the board is [in]."""
    case = bench.spec.case
    return boards[-1].width + (case.lipping if key == BOTTOM and not case.is_ply else 0.0)


def _dovetailed(
    bench: CaseBench, key: str, name: str, boards: tuple[Part, ...], corner: CaseCorner
) -> AskedJoint:
    """Dovetails; the gauge is locked, so that a measured side changes the lap."""
    case = bench.spec.case
    lap = case.lap if case.joined == "half-blind" else 0.0

    def solve() -> Joint:
        # Of through tails the gauge is set to the side as it is; of lapped ones it stays as it was set.
        left = bench.side - (case.side - lap) if lap else 0.0
        return carcase(
            Carcase(
                width=corner.width,
                tail_board=boards[-1].thickness,
                pin_board=bench.side,
                lap=left,
                half_pin=case.corner_half_pin,
                back_half_pin=case.corner_half_pin,
                pin=case.corner_pin,
                tails=corner.tails,
                slope=case.carcase_slope,
                outside=bench.spec.body.width,
                rack=bench.rack,
                mark=boards[-1].code,
            ),
            bench.ledger(name),
        )

    through = () if lap else tuple(_rabbet_in_a_pin(bench, key))
    return AskedJoint(
        key=name,
        kind="carcase",
        title=f"{NAMES[key]} into the sides, {'' if lap else 'through '}carcase dovetail",
        places=_places(key, boards, corner),
        serves=(("tail board", boards), ("pin board", bench.pin_boards)),
        solve=solve,
        advice=through,
    )


def _rabbet_in_a_pin(bench: CaseBench, key: str) -> Iterator[Words]:
    """Where the rabbet of the back comes out, the joint shows outside."""
    if key == RAILS:
        return
    yield say(
        "The rear edge of each side carries the rabbet for the back, {} deep: stop it at the corner, or keep "
        "it inside the rear half pin, so that it does not show outside.",
        bench.spec.back.rabbet,
    )


def _housed(
    bench: CaseBench, key: str, name: str, boards: tuple[Part, ...], corner: CaseCorner
) -> AskedJoint:
    """A housing at the end of the side, open there; the bottom of framed sides is free to move in it."""
    case, face = bench.spec.case, bench.plan.face
    board = boards[-1]
    across = _across(bench, key, boards)

    def solve() -> Joint:
        return housing(
            Housing(
                divider=board.thickness,
                case_side=bench.side,
                depth=case.housing,
                stop=0.0,
                length=across,
                inside_width=face.clear_width,
                rack=bench.rack,
                mark=board.code,
                housed="board",
            ),
            bench.ledger(name),
        )

    end = "lower" if key == BOTTOM else "upper"
    advice: list[Words] = [
        say("At the {} end of the side the housing is open: a rabbet with one wall.", end),
    ]
    free = growth(bench.plan)
    if is_housed(bench.plan):
        advice.append(
            "Glue the front 3 in only, and screw it there from below; the rest slides in its housing."
        )
        if free:
            advice.append(say("Leave {:up 16} free at the rear: so much it grows at the wettest.", free))
    else:
        screws = fastenings(across, SCREW_MARGIN, SCREW_SPACING)
        advice.append(
            say(
                "{:d} screws at each end, from outside through the side: the first {} from the edge, no more "
                "than {} apart; plug or cover them.",
                screws,
                SCREW_MARGIN,
                SCREW_SPACING,
            )
        )
    return AskedJoint(
        key=name,
        kind="housing",
        title=f"{NAMES[key]} into the sides, housed{'' if is_housed(bench.plan) else ' and screwed'}",
        places=_places(key, boards, corner),
        serves=(("board", boards), ("case side", bench.inner_faces)),
        solve=solve,
        advice=tuple(advice),
    )


def _tenoned(bench: CaseBench, name: str, boards: tuple[Part, ...], key: str) -> AskedJoint:
    """Rails that lie flat, with tenons side by side in the face of the stile or side."""
    board = boards[0]
    twins = tenons_of(board)
    each = board.width / twins
    haunch = min(FRAMES.end_least.value, board.thickness / 2)
    tenon = _twin(bench, each, board.thickness - haunch)
    length = corner_tenon(bench.plan)
    return AskedJoint(
        key=name,
        kind="frame-tenon",
        title=f"{NAMES[key]} into the sides, {_number(twins)} in each end",
        places=2 * len(boards) * twins,
        serves=(("rail", boards), ("stile", bench.inner_faces)),
        solve=partial(_twin_tenon, bench, name, board, (each, tenon, length, haunch)),
        advice=(
            say(
                "The rail lies flat: what is called its thickness here is {}, its share of the rail's width.",
                each,
            ),
        ),
    )


def tenons_of(rail: Part) -> Count:
    """How many tenons a rail that lies flat has side by side at each end."""
    return max(1, round(rail.width / (TWINS * rail.thickness)))


def _number(twins: Count) -> str:
    return {1: "a tenon", 2: "twin tenons"}.get(twins, f"{twins} tenons")


def _twin(bench: CaseBench, each: Inches, most: Inches) -> Inches:
    """Thickness of a tenon: no thicker than it is high, and a chisel of the rack where one is so thin."""
    usual = usual_tenon(each, bench.rack)
    if usual <= most:
        return usual
    return max((chisel for chisel in bench.rack.chisels if chisel <= most), default=most)


def _twin_tenon(
    bench: CaseBench, name: str, board: Part, sizes: tuple[Inches, Inches, Inches, Inches]
) -> Joint:
    each, tenon, length, haunch = sizes
    return frame_tenon(
        FrameTenon(
            thickness=each,
            rail=board.thickness,
            stile=bench.side,
            tenon=tenon,
            face=(each - tenon) / 2,
            length=length,
            haunch=haunch,
            overall=bench.spec.body.width,
            rack=bench.rack,
            mark=board.code,
        ),
        bench.ledger(name),
    )


def _butted(
    bench: CaseBench, key: str, name: str, boards: tuple[Part, ...], corner: CaseCorner
) -> AskedJoint:
    """Dowels or loose tenons in the end of a board and the face of the side."""
    board = boards[-1]
    across = _across(bench, key, boards)
    kind = bench.spec.case.joined
    clear = bench.plan.face.clear_width

    def solve() -> Joint:
        sizes = (across, board.thickness, bench.side, clear, board.code)
        if kind == "dowels":
            return doweled(*sizes, bench.ledger(name))
        return loose_tenoned(*sizes, bench.rack, bench.ledger(name))

    return AskedJoint(
        key=name,
        kind="dowels" if kind == "dowels" else "loose-tenon",
        title=f"{NAMES[key]} between the sides, {kind.replace('-', ' ')}",
        places=_places(key, boards, corner),
        serves=(("board", boards), ("case side", bench.inner_faces)),
        solve=solve,
    )
