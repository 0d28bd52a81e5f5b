"""From what the maker chose to what is built: openings, drawers, parts, joints, weights and checks."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches

from casewright.joinery.joint import Chosen
from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_spec import PlyBottom, SolidBottom
from casewright.pieces.asked.measured import MeasuredPart
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.checks import unit_checks
from casewright.pieces.built.door_swing import swing_checks
from casewright.pieces.built.masses import Masses, masses
from casewright.pieces.built.possible import refuse_impossible, refuse_sizeless
from casewright.pieces.built.stand import Stand, stand
from casewright.pieces.built.strength import strength_checks
from casewright.pieces.built.surfaces import Surfaces, surfaces
from casewright.pieces.built.tracing import traced
from casewright.pieces.built.wall_load import wall_findings
from casewright.pieces.case.carcase import Carcase, carcase
from casewright.pieces.case.corner_goods import corner_hardware, corner_small_parts
from casewright.pieces.case.corners import CaseCorner, case_corners
from casewright.pieces.case.joints import case_joints
from casewright.pieces.case.settled import with_sheet_sizes
from casewright.pieces.case.tops import top_part
from casewright.pieces.doors.build import build_doors, door_joints
from casewright.pieces.doors.checks import door_checks
from casewright.pieces.doors.hanging import Door, door_hardware
from casewright.pieces.drawers.bottom_plans import plan_bottom, plan_slip, with_chosen_slips
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.front_words import of_the_box
from casewright.pieces.drawers.joints import DrawerJoints, drawer_joints
from casewright.pieces.drawers.make import DrawerMake, shared_construction
from casewright.pieces.drawers.notches import refuse_notches
from casewright.pieces.drawers.parts import drawer_parts
from casewright.pieces.drawers.run_parts import inset, run_hardware, run_parts, run_small_parts
from casewright.pieces.drawers.running import chosen_slide, drawer_run, refuse_running, with_running
from casewright.pieces.drawers.running_checks import running_checks
from casewright.pieces.drawers.sizes import CannotBuild, DrawerSizes
from casewright.pieces.drawers.sizing import drawer_sizes
from casewright.pieces.drawers.usual_boards import with_usual_boards
from casewright.pieces.layout.face import plan_face
from casewright.pieces.layout.fitted import HardwareItem, SmallPart
from casewright.pieces.layout.fittings import hardware, shelf_pins, small_parts
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import SIZES, Part, PartLine, part_lines, with_measured
from casewright.pieces.layout.pulls import boring, pull_centres
from casewright.pieces.layout.roles import with_faces
from casewright.pieces.layout.season import Climate, climate


@dataclass(frozen=True, slots=True, kw_only=True)
class Construction:
    """One unit, worked out.

    Attributes:
        spec: what the maker chose
        face: heights, rows, columns and openings
        climate: the moisture contents between which the wood moves
        case: the carcase and how far its sides move
        drawers: every drawer, row by row from the top
        doors: the doors of each opening that has any
        corners: the dovetailed corners of the case, counted
        case_joints: every joint of the case
        parts: every part of one unit
        lines: the cut list, alike parts on one line
        hardware: what is bought by the piece
        small_parts: what is cut from offcuts
        surfaces: areas to prepare and finish
        masses: what it weighs
        stand: how it stands with its drawers open
        chosen: what was left out and has been chosen
        findings: every check, passes too
        ledger: the working of every figure
    """

    spec: UnitSpec
    face: Face
    climate: Climate
    case: Carcase
    drawers: tuple[Drawer, ...]
    doors: tuple[Door, ...]
    corners: tuple[CaseCorner, ...]
    case_joints: tuple[PlacedJoint, ...]
    parts: tuple[Part, ...]
    lines: tuple[PartLine, ...]
    hardware: tuple[HardwareItem, ...]
    small_parts: tuple[SmallPart, ...]
    surfaces: Surfaces
    masses: Masses
    stand: Stand
    chosen: tuple[Chosen, ...]
    findings: tuple[Finding, ...]
    ledger: Ledger

    def drawer(self, code: str) -> Drawer:
        """The drawer of a code, such as `A-R5-1`."""
        return next(drawer for drawer in self.drawers if drawer.code == code)


def construct(chosen: UnitSpec, shop: Shop, ledger: Ledger | None = None) -> Construction:
    """Works out one unit.

    Args:
        chosen: what the maker chose
        shop: the shop's rack, boards and habits
        ledger: keeps the working; a new one when left out

    Returns:
        The unit, with every check that applies.

    Raises:
        CannotGraduate: no row heights can be made of what was given
        CannotBuild: a part is left without a size
        CannotBeLaidOut: a joint is left without a tail

    Source: common practice of solid-wood case making; each rule names its own source.
    """
    ledger = Ledger() if ledger is None else ledger
    spec = with_sheet_sizes(traced(chosen, ledger), ledger)
    spec = with_usual_boards(spec, ledger)
    spec = with_running(with_chosen_slips(_groove_for_sheet(spec, ledger), ledger), ledger)
    weather = climate(spec.season, ledger)
    face = plan_face(spec, ledger)
    _refuse_strangers(spec, face)
    refuse_impossible(spec, face)
    case = carcase(spec, face, weather, shop.rack, ledger)
    slide = chosen_slide(spec, shop.slides)
    refuse_running(spec, face, slide)
    refuse_notches(spec, face)
    make = shared_construction(spec, face, shop, slide, ledger)
    sizes = tuple(
        drawer_sizes(spec, opening, make, weather, case.side_shrinkage, shop.rack, ledger)
        for opening in face.openings
    )
    joints = drawer_joints(spec, sizes, make, shop, ledger)
    centres = pull_centres(spec, face, ledger)
    drawers = tuple(
        _drawer(spec, each, joint, centres[each.code], make, case.side_shrinkage, ledger)
        for each, joint in zip(sizes, joints, strict=True)
    )
    hung = build_doors(spec, face, weather, ledger)
    parts = with_faces(spec, _measured(spec, (*_parts(spec, face, case, drawers), *hung.parts)))
    refuse_sizeless(parts)
    lines = part_lines(parts)
    weights = masses(spec, face, drawers, hung.doors, parts, weather.now, ledger)
    standing = stand(spec, face, drawers, hung.doors, weights, ledger)
    corners = case_corners(spec, face, shop.rack)
    joined = case_joints(case.plan, parts, corners, case.side_shrinkage, shop.rack)
    framed = door_joints(spec, hung.doors, parts, weather, shop.rack, ledger)
    return Construction(
        spec=spec,
        face=face,
        climate=weather,
        case=case,
        drawers=drawers,
        doors=hung.doors,
        corners=corners,
        case_joints=(*joined.joints, *framed.joints),
        parts=parts,
        lines=lines,
        hardware=(
            *hardware(spec, face, sum(len(drawer.pulls) for drawer in drawers)),
            *run_hardware(spec, drawers),
            *door_hardware(spec, hung.doors),
            *shelf_pins(spec, face),
            *corner_hardware(joined.joints),
        ),
        small_parts=(
            *run_small_parts(spec, drawers),
            *small_parts(spec, face),
            *corner_small_parts(joined.joints),
        ),
        surfaces=surfaces(spec, face, drawers, hung.doors, top_part(spec, parts), ledger),
        masses=weights,
        stand=standing,
        chosen=make.chosen,
        findings=(
            *unit_checks(spec, face, weather, case, drawers, parts, lines, shop, ledger),
            *running_checks(
                spec, drawers, weather, {code: each.weight for code, each in weights.drawers.items()}, ledger
            ),
            *standing.findings,
            *strength_checks(spec, face, drawers, parts, standing.piece.drawers, weather.now, ledger),
            *wall_findings(spec, face, parts, standing, ledger),
            *joined.findings,
            *door_checks(spec, hung.doors, weather, ledger),
            *swing_checks(spec, hung.doors, drawers, ledger),
            *framed.findings,
            *of_the_box(spec.drawers, (finding for joint in joints for finding in joint.findings)),
        ),
        ledger=ledger,
    )


def _drawer(
    spec: UnitSpec,
    sizes: DrawerSizes,
    joints: DrawerJoints,
    centres: tuple[float, ...],
    make: DrawerMake,
    shrinkage: float,
    ledger: Ledger,
) -> Drawer:
    bottom, face = plan_bottom(spec, sizes, ledger), sizes.face
    return Drawer(
        code=f"{spec.code}-{sizes.code}",
        sizes=sizes,
        joints=joints,
        bottom=bottom,
        slip=plan_slip(spec, sizes, ledger),
        pulls=centres,
        run=drawer_run(spec, sizes, make.slide, shrinkage, bottom.thickness, ledger),
        boring=boring(spec, sizes.code, (face.left, face.width, face.height), centres, ledger),
    )


def _parts(spec: UnitSpec, face: Face, case: Carcase, drawers: tuple[Drawer, ...]) -> Iterator[Part]:
    yield from case.parts
    for drawer in drawers:
        yield from inset(drawer_parts(spec, drawer, face.base_height), spec.drawers.stops.inset)
    yield from run_parts(spec, face, drawers)


def _measured(spec: UnitSpec, parts: Iterable[Part]) -> Iterator[Part]:
    """The parts with their measured sizes; a measured code that no part has is refused."""
    left = dict(spec.measured.parts)
    if not left:
        yield from parts
        return
    known = []
    for part in parts:
        short = part.code.removeprefix(f"{spec.code}-")
        known.append(short)
        yield with_measured(part, _believable(short, part, left.pop(short, None)))
    for stranger in left:
        near = get_close_matches(stranger, known, n=1)
        hint = f"did you mean {near[0]}?" if near else f"codes look like {known[-1]}"
        raise CannotBuild(f"measured.parts.{stranger}: there is no such part; {hint}")


def _believable(code: str, part: Part, found: MeasuredPart | None) -> MeasuredPart | None:
    """What was measured of a part; a slip of the pen is told from a plane's work by its size."""
    for name in SIZES if found else ():
        size, drawn = getattr(found, name), getattr(part, name)
        if size is not None and not drawn / 2 < size < drawn * 2:
            raise CannotBuild(
                say(
                    "measured.parts.{}.{}: {} is far from the {:bare} that was "
                    "drawn; measure again, or change the design",
                    code,
                    name,
                    size,
                    drawn,
                )
            )
    return found


def _groove_for_sheet(spec: UnitSpec, ledger: Ledger) -> UnitSpec:
    """The choices with a groove as wide as plywood measures, or a plain bottom, where no width was typed."""
    drawers = spec.drawers
    plain = isinstance(drawers.bottom, SolidBottom) and drawers.bottom.edges == "plain"
    sheeted = isinstance(drawers.bottom, PlyBottom)
    if not (plain or sheeted) or "width" in drawers.groove.model_fields_set:
        return spec
    basis = "as thick as the bottom, whose edges are plain"
    if isinstance(drawers.bottom, PlyBottom):
        bought = drawers.bottom.bought
        basis = f"as {bought} measures; measure your own sheet"
    width = ledger.given("drawers.groove.width", drawers.bottom_thickness, basis, Inches)
    groove = drawers.groove.model_copy(update={"width": width})
    return spec.model_copy(update={"drawers": drawers.model_copy(update={"groove": groove})})


def _refuse_strangers(spec: UnitSpec, face: Face) -> None:
    known = [opening.code for opening in (*face.openings, *face.spaces)]
    for stranger in spec.measured.openings:
        if stranger not in known:
            near = get_close_matches(stranger, known, n=1)
            hint = f"did you mean {near[0]}?" if near else f"there are {', '.join(known[:8])}"
            raise CannotBuild(f"measured.openings.{stranger}: there is no such opening; {hint}")
