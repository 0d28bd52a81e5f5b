"""The web frames that carry the drawers, and the kickers over the top row."""

from collections.abc import Iterator

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.running_spec import FullRunners
from casewright.pieces.case.dust import dust_depth, dust_parts
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.web_frames import (
    PARTITION_RAIL,
    TOP_RAIL_OF_PARTITION,
    Bearer,
    WebFrame,
    bearers,
    top_bearers,
    web_frames,
)
from casewright.pieces.layout.openings import Wall, Walls
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse


def divider_rails(case: CasePlan) -> Iterator[Part]:
    """The front rails of the web frames.

    Args:
        case: what the case is worked out from

    Yields:
        One for each frame, from wall to wall of its stack.

    Source: common practice of solid-wood case making.
    """
    woods, width = case.spec.woods, case.spec.case.rail_width
    for frame in web_frames(case):
        name, mark = "Divider rail, front", f"{frame.mark}-RF"
        yield _rail(case, frame, (mark, "C3", name), woods.case, FaceClass.EDGE, 0.0, width)


def frame_parts(case: CasePlan) -> Iterator[Part]:
    """Rear rails, runners and kickers: a side pair under each row but the lowest, more under uprights.

    Args:
        case: what the case is worked out from

    Returns:
        The parts; where the drawers hang on battens or slides, only what partitions are housed in.

    Source: common practice; the rear joint is left dry so that a solid side can move past it.
    """
    thick, frames, face = case.spec.case, case.spec.frames, case.face
    is_full = isinstance(case.spec.drawers.running, FullRunners)
    take = case.ledger.take
    back_y = face.opening_depth - frames.back_rail_width
    webs = [(frame, _borne(case, frame)) for frame in web_frames(case)]
    for frame, borne in webs:
        if not borne:
            continue
        names = (f"{frame.mark}-RB", "W1", "Frame back rail")
        wood, width = case.spec.woods.inside, frames.back_rail_width
        yield _rail(case, frame, names, wood, FaceClass.INSIDE, back_y, width)
    shared = {"depth": face.opening_depth, "front_rail": thick.rail_width, "tenon": frames.tenon}
    runner = take(
        "runner_length", rules.runner_length, **shared, back_rail=frames.back_rail_width, slack=case.slack
    )
    deep = dust_depth(case) if thick.divider_kind == "dust-frame" else None
    for frame, borne in webs:
        if is_full and thick.divider_kind != "solid":
            yield from _full_runners(case, frame, frames.back_rail_width if borne else 0.0)
        z = face.base_height + frame.z
        members = [_member(case, bearer, frame.mark, z, runner, thick.divider) for bearer in borne]
        yield from members
        if deep:
            yield from dust_parts(case, frame, members, deep)
    kicker = take(
        "kicker_length",
        rules.runner_length,
        **{**shared, "depth": case.board_depth},
        back_rail=thick.rail_width,
        slack=case.slack,
    )
    z = face.base_height + face.body_height - thick.sub_top_rail
    for bearer in _under_the_top(case):
        yield _member(case, bearer, "C", z, kicker, thick.sub_top_rail)


def _borne(case: CasePlan, frame: WebFrame) -> tuple[Bearer, ...]:
    """What runs from front to back in a divider.

    A board over the full depth needs nothing; behind a front rail alone lies only what partitions stand on.
    """
    kind = case.spec.case.divider_kind
    if kind == "solid":
        return ()
    found = bearers(case, frame)
    return found if kind != "rail" else tuple(each for each in found if each.line == PARTITION_RAIL)


def _under_the_top(case: CasePlan) -> tuple[Bearer, ...]:
    """What runs from front to back under the top; a top between the sides does for all of it."""
    if case.spec.has_case_top:
        return ()
    found = top_bearers(case)
    if case.spec.case.divider_kind != "rail":
        return found
    return tuple(each for each in found if each.line == TOP_RAIL_OF_PARTITION)


def _full_runners(case: CasePlan, frame: WebFrame, back_rail: Inches) -> Iterator[Part]:
    """Runners screwed to the walls of the opening, from the front rail to the back or to a rear rail.

    Their front end is fixed and the rear one slotted: what a solid side shrinks is left open behind them.
    """
    thick, width = case.spec.case, case.spec.frames.runner_width
    length = case.ledger.take(
        "full_runner_length",
        rules.runner_length,
        depth=case.face.opening_depth,
        front_rail=thick.rail_width,
        back_rail=back_rail,
        tenon=0.0,
        slack=case.slack,
    )
    z = case.face.base_height + frame.z
    for mark, x in (("L", frame.left), ("R", frame.left + frame.width - width)):
        yield new_part(
            code=case.code(f"{frame.mark}-R{mark}"),
            line="W6",
            name="Runner, full length",
            wood=case.spec.woods.inside.wood,
            cut=case.spec.woods.inside.cut,
            thickness=thick.divider,
            width=width,
            length=length,
            face=FaceClass.INSIDE,
            grain=Grain.BACK,
            use=PartUse.INSIDE,
            ends=("butt behind the rail, screwed to the side", "slotted: the side moves past it"),
            box=Box(x, thick.rail_width, z, width, length, thick.divider),
        )


def housed_from(
    case: CasePlan, mark: str, left: Inches, width: Inches, walls: Walls
) -> tuple[Inches, Inches]:
    """Where a part housed in both walls of a stack begins, and how long it is.

    Args:
        case: what the case is worked out from
        mark: of the part, within the unit
        left: inner face of the wall at its left [in]
        width: clear width between the walls [in]
        walls: what they are

    Returns:
        Its left end, from the outside of the left case side, and its length [in]

    Source: geometry of the joint.
    """
    take, thick = case.ledger.take, case.spec.case
    if walls == (Wall.SIDE, Wall.SIDE):
        length = take("divider_length", rules.housed_length, opening=width, housing=thick.housing)
        return left - thick.housing, length
    deep = [case.housing_in(wall) for wall in walls]
    length = take(f"{mark}.length", rules.housed_between, opening=width, left=deep[0], right=deep[1])
    return left - deep[0], length


def end_words(case: CasePlan, walls: Walls) -> tuple[Words, Words]:
    """The joint of a divider at each of its ends.

    Args:
        case: what the case is worked out from
        walls: what stands at its left and at its right

    Returns:
        The words, the left end first.

    Source: the unit file.
    """
    kind = case.spec.case.divider_end
    left, right = (say("{}, {:fraction} deep", kind, case.housing_in(wall)) for wall in walls)
    return left, right


def _rail(
    case: CasePlan,
    frame: WebFrame,
    names: tuple[str, str, str],
    wood: Timber,
    seen: FaceClass,
    y: Inches,
    width: Inches,
) -> Part:
    """A rail of a frame, in front or at the rear."""
    mark, line, name = names
    start, length = housed_from(case, frame.mark, frame.left, frame.width, frame.walls)
    thick = case.spec.case.divider
    return new_part(
        code=case.code(mark),
        line=line,
        name=name,
        wood=wood.wood,
        cut=wood.cut,
        thickness=thick,
        width=width,
        length=length,
        face=seen,
        grain=Grain.ACROSS,
        use=PartUse.CASE if seen is FaceClass.EDGE else PartUse.INSIDE,
        ends=end_words(case, frame.walls),
        box=Box(start, y, case.face.base_height + frame.z, length, width, thick),
    )


def _member(case: CasePlan, bearer: Bearer, place: str, z: Inches, length: Inches, thickness: Inches) -> Part:
    thick, tenon = case.spec.case, case.spec.frames.tenon
    return new_part(
        code=case.code(f"{place}-{bearer.mark}"),
        line=bearer.line,
        name=bearer.name,
        wood=case.spec.woods.inside.wood,
        cut=case.spec.woods.inside.cut,
        thickness=thickness,
        width=bearer.width,
        length=length,
        face=FaceClass.INSIDE,
        grain=Grain.BACK,
        use=PartUse.INSIDE,
        ends=(
            say("frame tenon, {:fraction} long", tenon),
            say("frame tenon, {:fraction} long, left dry with a gap of {:fraction}", tenon, case.slack),
        ),
        box=Box(bearer.left, thick.rail_width - tenon, z, bearer.width, length, thickness),
    )
