"""The joints of a back: laps or tongues between its boards, the tenons of its frame."""

from collections.abc import Iterator

from casewright.joinery.families.edge.asked import EDGES, FEWEST, Edge
from casewright.joinery.families.edge.joint import edge_joint
from casewright.joinery.families.edge.sizes import room_to_swell, usual_tongue
from casewright.joinery.joint import Joint
from casewright.measure.saying import say
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.backs import BOARD, back_frame
from casewright.pieces.layout.season import across
from casewright.pieces.panels.joints import FrameTenons, frame_tenons

PLANED = 1 / 64
"""To what the room at the outer edges of a back is rounded up: a stroke or two of the plane [in]."""
BACK = "back"
"""Short name of the joint."""


def back_joint(bench: CaseBench) -> Iterator[AskedJoint]:
    """The laps or tongues of the back boards; one board alone has none.

    Args:
        bench: what the joints are worked out from

    Returns:
        The joint; nothing for another back.

    Source: common practice; the family of the joint names its own.
    """
    back, boards = bench.spec.back, bench.of(BOARD)
    if len(boards) < FEWEST:
        return
    climate, moves = bench.plan.climate, across(bench.spec.woods.of("back"), bench.plan.ledger)
    whole = bench.plan.face.clear_width + 2 * back.rabbet
    # Drawn to fill the width; what the outer boards need is planed off them as they go up.
    room = room_to_swell(boards[0].width, moves, climate.swelling, PLANED)

    tongue = 0.0 if back.kind == "shiplap" else back.tongue
    if tongue is None:
        part, step = EDGES.tongue_part.value, EDGES.tongue_step.value
        tongue = bench.ledger(BACK).take(
            "tongue", usual_tongue, thickness=boards[0].thickness, part=part, step=step
        )

    def solve() -> Joint:
        return edge_joint(
            Edge(
                width=whole + 2 * room,
                thickness=boards[0].thickness,
                boards=len(boards),
                tongue=tongue,
                overlap=back.lap,
                gap=back.gap,
                end_gap=room,
                movement=moves,
                swelling=climate.swelling,
                shrinking=climate.drying,
                rack=bench.rack,
                mark=bench.plan.code("K"),
            ),
            bench.ledger(BACK),
        )

    yield AskedJoint(
        key=BACK,
        kind="edge-joint",
        title=f"Back boards, {'tongue and groove' if tongue else 'shiplap'}",
        places=len(boards) - 1,
        serves=(("board", boards),),
        solve=solve,
        advice=(say("Plane {} off the outer edge of the first board and of the last as they go up.", room),),
    )


def back_frame_joints(bench: CaseBench) -> FrameTenons | None:
    """The tenons of a panelled back.

    Args:
        bench: what the joints are worked out from

    Returns:
        The joints and their checks; None for another back.

    Source: common practice of frame-and-panel work.
    """
    plan = bench.plan
    frame = back_frame(plan) if plan.spec.legs is None else None
    if frame is None:
        return None
    members = {part.code: part for part in bench.of("PF1", "PF2", "PF3", "PF4")}
    ledger = plan.ledger.root
    return frame_tenons(frame, (plan.code("K"),), members, bench.rack, ledger, BACK, "case.joints", "back")
