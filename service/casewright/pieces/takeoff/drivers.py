"""What the time standards count, taken from the unit and its take-off."""

from collections.abc import Iterable

from casewright.joinery.butted_row import RowJoint
from casewright.joinery.families.batten.joint import BattenJoint
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.labour.drivers import Driver
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import near_to
from casewright.measure.units import Number
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.asked.drawer_fronts import CockBeaded
from casewright.pieces.asked.shell_spec import BracketFeet, ToeBase, TurnedFeet
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.end_joints import drawer_ends
from casewright.pieces.case.bases import foot_count
from casewright.pieces.case.corner_goods import of_corners
from casewright.pieces.case.divider_joints import SLIDING as SLIDING_END
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.ends import BOX, HOUSING, LOCK_RABBET, PINNED, SLIDING
from casewright.pieces.layout.openings import Face
from casewright.pieces.takeoff.rough import TakeOff
from casewright.pieces.takeoff.run_drivers import run_drivers

SQUARE_INCHES = 144
COUNTED = "counted from the parts, joints and surfaces of the unit; feet and areas in figures drivers.…"
CORNERS = 2
"""At the front of a drawer as at its back."""
AROUND_A_NOTCH = 4
"""Grooved pieces more where a bottom is held all round: a second back, two inner sides and the inner back."""
LEAF_FACES = 4
"""Of a board that is sawn in two: each of its leaves is planed on both faces."""
ON_THE_MACHINE = ("cutter", "key", "side_depth", "front_depth", "fence", "groove_depth", "tongue_gauge")
"""The settings by which one set-up of a machine differs from another."""
FASTENED: dict[str, Driver] = {
    "frame-tenon": Driver.MORTISE_JOINTS,
    "dowels": Driver.DOWELS,
    "loose-tenon": Driver.LOOSE_TENONS,
}
"""What is counted of a corner of the case by the family of its joint."""
CORNER_OF: dict[str, tuple[Driver, Driver | None]] = {
    BOX: (Driver.BOX_JOINT_CORNERS, Driver.BOX_JOINT_BATCHES),
    LOCK_RABBET: (Driver.LOCK_RABBET_CORNERS, Driver.LOCK_RABBET_BATCHES),
    PINNED: (Driver.PINNED_CORNERS, None),
    SLIDING: (Driver.DRAWER_HOUSINGS, None),
    HOUSING: (Driver.DRAWER_HOUSINGS, None),
}
"""What is counted of a drawer's corner by the family of its joint: corners, and a machine's set-ups."""


def nearest_whole(exact: Number) -> Number:
    """A measure counted in whole feet: the standards are no finer.

    Rule: exact, to the nearest whole number

    Args:
        exact: feet or square feet

    Returns:
        Whole feet or square feet

    Source: common practice.
    """
    return near_to(exact, 1)


def whole_if_any(exact: Number) -> Number:
    """A measure counted in whole feet, where even a little of it takes the time of one.

    Rule: exact, to the nearest whole number, at least 1

    Args:
        exact: square feet, more than none

    Returns:
        Whole square feet

    Source: common practice.
    """
    return max(near_to(exact, 1), 1.0)


DIVIDING = ("C3", "W1", "D2")
"""The lines of what divides two rows: rails in front and at the rear, or a board."""
HOUSED = ("C4", "C8", "G1", "G2")
"""The lines of uprights, partitions and the strips of a crate."""
TOP_BY = {"buttons": Driver.TOPS, "slots": Driver.SLOTTED_TOPS, "clips": Driver.CLIPPED_TOPS}
"""What is counted of a top by how it is held; one that is dovetailed in is among the corners."""
PULLS_BY = {"one": Driver.PULLS, "two": Driver.TWO_SCREW_PULLS}
"""What is counted of a pull by its screws."""
SHEETS_OF_A_CASE = ("C1", "C4", "C6", "C8", "C9", "C11", "D2")
"""The lines of what is cut from the sheets of a plywood case."""


def count_drivers(unit: Construction, takeoff: TakeOff) -> dict[Driver, float]:
    """Every quantity that an operation's minutes go with, for all units of the design.

    Args:
        unit: one unit, worked out
        takeoff: what all units take

    Returns:
        The quantities; feet and areas to the nearest whole.

    Source: common practice.
    """
    count = takeoff.count
    counted = {
        Driver.UNIT: 1,
        Driver.JOBS: 1,
        **_stock(takeoff, unit.ledger),
        **{driver: number * count for driver, number in _of_one(unit).items()},
        **_surfaces(unit, count),
    }
    under = unit.ledger.under("counted")
    return {
        driver: under.given(driver.value, float(number), COUNTED, Number)
        for driver, number in counted.items()
    }


def _of_one(unit: Construction) -> dict[Driver, float]:
    return _case(unit) | _drawers(unit) | run_drivers(unit) | _doors(unit)


def _stock(takeoff: TakeOff, ledger: Ledger) -> dict[Driver, float]:
    under = ledger.under("drivers")
    panels = [line for line in takeoff.lines if line.is_panel]
    area = sum(line.quantity * line.of.part.width * line.of.part.length for line in panels)
    return {
        Driver.ROUGH_FEET: under.take("rough_feet", nearest_whole, exact=takeoff.rough),
        Driver.BOARDS: sum(line.blanks * line.boards for line in takeoff.lines),
        Driver.GLUE_LINES: sum(line.glue_lines for line in takeoff.lines),
        Driver.PANELS: sum(line.quantity for line in panels),
        Driver.PANEL_SQFT: under.take("panel_square_feet", nearest_whole, exact=area / SQUARE_INCHES),
        **_resawn(takeoff, under),
    }


def _resawn(takeoff: TakeOff, under: Ledger) -> dict[Driver, float]:
    """Boards sawn in two for parts that match: the saw set up once, the cut, both faces of both leaves."""
    boards = sum(line.resawn_boards for line in takeoff.lines)
    if not boards:
        return {}
    cut = sum(line.resawn_area for line in takeoff.lines) / SQUARE_INCHES
    return {
        Driver.RESAW_SETUPS: 1,
        Driver.RESAWN_BOARDS: boards,
        Driver.RESAWN_SQFT: under.take("resawn_square_feet", whole_if_any, exact=cut),
        Driver.LEAF_FACE_SQFT: under.take("leaf_face_square_feet", whole_if_any, exact=LEAF_FACES * cut),
    }


def _case(unit: Construction) -> dict[Driver, float]:
    """Of one case: its parts, corners, housed ends and frame tenons."""
    lines = {line.part.line: 0 for line in unit.lines}
    for line in unit.lines:
        lines[line.part.line] += line.quantity
    if unit.spec.legs:
        return _on_legs(unit, unit.spec.legs, lines)
    runners = sum(lines.get(mark, 0) for mark in ("W2", "W3", "W4", "W5", "W8", "W9"))
    return {
        Driver.PARTS: sum(line.quantity for line in unit.lines),
        Driver.CASE_CORNERS: sum(corner.corners for corner in unit.corners if corner.tails),
        **_case_tails(unit),
        **_let_in_ends(unit, lines),
        Driver.FRAME_TENONS: runners * 2,
        Driver.CASES: 1,
        Driver.BACK_BOARDS: lines.get("P1", 0) + lines.get("P2", 0),
        Driver.PLINTH_CORNERS: 4 * len(unit.face.pedestals) if unit.spec.plinth else 0,
        **_top(unit.spec.top.fixing),
        Driver.RUNNERS: runners + lines.get("W6", 0),
        **({Driver.FRAMED_BACKS: 1} if unit.case.back_frame else {}),
        **({Driver.CLEATS: 1} if unit.spec.cleat else {}),
        **({Driver.SCRIBE_STRIPS: 2} if unit.spec.site.scribe else {}),
        **({Driver.CROSS_LAPS: lines.get("G1", 0) * lines.get("G2", 0)} if unit.spec.crate else {}),
        **_base(unit.spec, unit.face),
        **_corners(unit),
        **_sides(unit, lines),
    }


def _case_tails(unit: Construction) -> dict[Driver, float]:
    """Tails of the case's corners: those that go through need no socket."""
    goes_through = unit.spec.case.joined == "through"
    tails = sum(corner.corners * corner.tails for corner in unit.corners)
    return {Driver.THROUGH_CASE_TAILS if goes_through else Driver.CASE_TAILS: tails}


def _let_in_ends(unit: Construction, lines: dict[str, int]) -> dict[Driver, float]:
    """Ends that are let into boards: dividers housed or dovetailed, all else housed."""
    dividing = 2 * sum(lines.get(mark, 0) for mark in DIVIDING)
    housed = (
        2 * sum(lines.get(mark, 0) for mark in HOUSED)
        + _housed_shelf_ends(unit)
        + sum(placed.places for placed in of_corners(unit.case_joints) if placed.kind == "housing")
    )
    if unit.spec.case.divider_end == SLIDING_END:
        return {Driver.HOUSED_ENDS: housed, Driver.SLIDING_ENDS: dividing}
    return {Driver.HOUSED_ENDS: housed + dividing}


def _top(fixing: str) -> dict[Driver, float]:
    """The top that is fitted, by what holds it; nothing where it is a corner of the case or is left out."""
    return {TOP_BY[fixing]: 1} if fixing in TOP_BY else {}


def _corners(unit: Construction) -> dict[Driver, float]:
    """Of corners that are neither dovetailed nor housed: their tenons, dowels or loose tenons."""
    counted: dict[Driver, float] = {}
    for placed in of_corners(unit.case_joints):
        driver = FASTENED.get(placed.kind)
        if driver is None:
            continue
        joint = placed.joint
        each = joint.given.count if isinstance(joint, RowJoint) else 1
        counted[driver] = counted.get(driver, 0) + placed.places * each
    return counted


def _sides(unit: Construction, lines: dict[str, int]) -> dict[Driver, float]:
    """Of framed and plywood sides, and of the panels of dust frames."""
    found = {
        Driver.FRAMED_SIDES: 2 if unit.case.plan.frame else 0,
        Driver.CASE_SHEETS: sum(
            line.quantity for line in unit.lines if line.part.sheet and line.part.line in SHEETS_OF_A_CASE
        ),
        Driver.LIPPED_EDGES: sum(lines.get(mark, 0) for mark in ("E1", "E2", "C5", "C10", "C12", "D1")),
        Driver.DUST_PANELS: lines.get("D3", 0),
    }
    if not unit.spec.case.is_ply:
        del found[Driver.CASE_SHEETS], found[Driver.LIPPED_EDGES]
    return {driver: float(number) for driver, number in found.items() if number}


def _housed_shelf_ends(unit: Construction) -> int:
    """Both ends of every shelf that does not lie loose."""
    if unit.spec.shelving.fixing == "pins":
        return 0
    return 2 * sum(space.shelves for space in unit.face.spaces)


def _base(spec: UnitSpec, face: Face) -> dict[Driver, float]:
    """Of what it stands on, where that is no plinth."""
    base = spec.stands_on
    if isinstance(base, BracketFeet):
        return {Driver.BRACKET_FEET: 4 * len(face.pedestals)}
    if isinstance(base, TurnedFeet):
        return {Driver.TURNED_FEET: foot_count(spec, face)}
    return {Driver.TOE_BASES: len(face.pedestals)} if isinstance(base, ToeBase) else {}


def _on_legs(unit: Construction, legs: LegsAndAprons, lines: dict[str, int]) -> dict[Driver, float]:
    """Of one piece on legs: every apron and rail has a joint at each end, a runner its tongue in front."""
    tenoned = sum(lines.get(mark, 0) for mark in ("A1", "A2", "R2", "R3"))
    run = sum(lines.get(mark, 0) for mark in ("W1", "W2", "W4", "W5"))
    return {
        Driver.PARTS: sum(line.quantity for line in unit.lines),
        Driver.CASE_CORNERS: sum(corner.corners for corner in unit.corners),
        Driver.CASE_TAILS: sum(corner.corners * corner.tails for corner in unit.corners),
        Driver.MORTISE_JOINTS: 2 * tenoned,
        Driver.TAPERED_LEGS: lines.get("L1", 0) if legs.tapered else 0,
        Driver.FRAME_TENONS: run,
        Driver.CASES: 1,
        **_top(legs.fixing),
        Driver.RUNNERS: run + lines.get("W3", 0),
        **({Driver.HOUSED_ENDS: 2 * lines["R4"]} if "R4" in lines else {}),
    }


def _drawers(unit: Construction) -> dict[Driver, float]:
    """Of one unit's drawers: sides, joints, tails, bottoms and pulls."""
    drawers = unit.drawers
    sockets, through, joints = _tails(drawers)
    grooved = (
        0
        if unit.spec.drawers.screwed_under
        else 3
        if any(drawer.sizes.back_foot > 0 for drawer in drawers)
        else 4
    )
    notched = sum(1 for drawer in drawers if drawer.sizes.notch is not None)
    slipped = sum(1 for drawer in drawers if drawer.slip is not None)
    rabbeted = sum(2 for drawer in drawers if drawer.sizes.rabbet > 0)
    return {
        Driver.DRAWERS: len(drawers),
        Driver.SIDES: 2 * len(drawers),
        Driver.GROOVED_PIECES: grooved * len(drawers) + (AROUND_A_NOTCH * notched if grooved == 4 else 0),
        Driver.RABBETED_ENDS: rabbeted,
        Driver.DOVETAIL_JOINTS: joints,
        Driver.DRAWER_TAILS: sockets + through,
        Driver.SOCKET_TAILS: sockets,
        Driver.THROUGH_TAILS: through,
        Driver.BOTTOMS: sum(drawer.bottom.pieces for drawer in drawers),
        Driver.MUNTINS: sum(1 for drawer in drawers if drawer.bottom.muntin is not None),
        PULLS_BY[unit.spec.pulls.holes]: sum(len(drawer.pulls) for drawer in drawers),
        **({Driver.SLIPPED_DRAWERS: slipped} if slipped else {}),
        **({Driver.NOTCHED_DRAWERS: notched} if notched else {}),
        **_fronts(unit),
        **_other_corners(unit),
    }


def _tails(drawers: Iterable[Drawer]) -> tuple[int, int, int]:
    """Tails in sockets, tails that go through, and dovetailed corners."""
    sockets = through = joints = 0
    for drawer in drawers:
        around = drawer.joints.notch
        for joint in (
            drawer.joints.front,
            drawer.joints.back,
            *((around.rear, around.head) if around else ()),
        ):
            if isinstance(joint, HalfBlindJoint):
                sockets += CORNERS * joint.layout.count
            elif isinstance(joint, ThroughJoint):
                through += CORNERS * joint.layout.count
            else:
                continue
            joints += CORNERS
    return sockets, through, joints


def _fronts(unit: Construction) -> dict[Driver, float]:
    """Show fronts that are fixed to a box, and fronts with a bead."""
    drawers = unit.spec.drawers
    found: dict[Driver, float] = {}
    if drawers.has_box_front:
        found[Driver.OVERLAY_FRONTS] = len(unit.drawers)
    if isinstance(drawers.style, CockBeaded):
        found[Driver.COCK_BEADED_DRAWERS] = len(unit.drawers)
    return found


def _other_corners(unit: Construction) -> dict[Driver, float]:
    """Corners that are cut by machine, each kind with a set-up for each joint that differs."""
    counted: dict[Driver, float] = {}
    set_up: set[tuple[object, ...]] = set()
    for placed in drawer_ends(unit):
        corner, batch = CORNER_OF.get(placed.kind, (None, None))
        if corner:
            counted[corner] = counted.get(corner, 0) + placed.places
        machine = (
            placed.kind,
            *((s.name, s.value) for s in placed.joint.settings if s.name in ON_THE_MACHINE),
        )
        if batch and machine not in set_up:
            set_up.add(machine)
            counted[batch] = counted.get(batch, 0) + 1
    return counted


def _doors(unit: Construction) -> dict[Driver, float]:
    """Of one unit's doors: leaves, hinges and knobs; nothing where there are none."""
    if not unit.doors:
        return {}
    leaves = sum(len(door.plan.leaves) for door in unit.doors)
    framed = sum(len(door.plan.leaves) for door in unit.doors if door.plan.frame is not None)
    return {
        Driver.DOORS: leaves,
        **({Driver.FRAMED_DOORS: framed} if framed else {Driver.SLAB_DOORS: leaves}),
        **_kept_flat(unit),
        Driver.HINGES: sum(len(door.plan.leaves) * len(door.hinges) for door in unit.doors),
        Driver.KNOBS: leaves,
    }


def _kept_flat(unit: Construction) -> dict[Driver, float]:
    """What keeps slab doors flat: their breadboard ends or battens."""
    counted: dict[Driver, float] = {}
    for placed in unit.case_joints:
        if isinstance(placed.joint, BattenJoint):
            is_end = placed.joint.given.is_breadboard
            driver = Driver.BREADBOARD_ENDS if is_end else Driver.SLAB_BATTENS
            counted[driver] = counted.get(driver, 0) + placed.places
    return counted


def _surfaces(unit: Construction, count: int) -> dict[Driver, float]:
    under, finish = unit.ledger.under("drivers"), unit.spec.finish
    show = under.take("show_square_feet", nearest_whole, exact=unit.surfaces.show * count)
    inside = under.take("inside_square_feet", nearest_whole, exact=unit.surfaces.inside * count)
    return {
        Driver.SHOW_SQFT: show,
        Driver.INSIDE_SQFT: inside,
        Driver.SHOW_COAT_SQFT: show * finish.show_coats,
        Driver.INSIDE_COAT_SQFT: inside * finish.inside_coats,
        Driver.RUB_SQFT: show * max(0, finish.show_coats - 1),
        Driver.COATS: finish.show_coats + finish.inside_coats,
    }
