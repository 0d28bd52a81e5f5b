"""Where web frames lie and what runs in them from front to back: runners, kickers, rails of partitions."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from casewright.measure.making import quickly_made
from casewright.measure.units import Inches
from casewright.pieces.asked.running_spec import FullRunners
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.openings import FaceRow, Stack, Walls
from casewright.pieces.rules import case_rules as rules

SIDE_RUNNER, PARTITION_RAIL, CENTRE_RUNNER, CENTRE_KICKER = "W2", "W8", "W3", "W5"
KICKER, TOP_RAIL_OF_PARTITION = "W4", "W9"
RANKS = (SIDE_RUNNER, KICKER, PARTITION_RAIL, TOP_RAIL_OF_PARTITION, CENTRE_RUNNER, CENTRE_KICKER)
"""Of two that would overlap, the one that stands first here does for both."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Bearer:
    """What runs from the front rail of a frame to its back rail.

    Attributes:
        mark: its mark within the frame, such as `RL`
        line: its line in the cut list
        name: what it is called
        left: its left edge, from the outside of the left case side [in]
        width: its width [in]
    """

    mark: str
    line: str
    name: str
    left: Inches
    width: Inches


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class WebFrame:
    """The frame under a row, in a stack.

    Attributes:
        mark: its mark within the unit, such as `D1` or `D2-1-3`
        left: inner face of the wall at its left, from the outside of the left case side [in]
        width: clear width between its walls [in]
        walls: what stands at its left and at its right
        z: its lower face, from the underside of the case bottom [in]
        above: the row that runs on it
        below: the row under it
    """

    mark: str
    left: Inches
    width: Inches
    walls: Walls
    z: Inches
    above: FaceRow
    below: FaceRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """An upright or a partition, where it meets a frame: its left edge [in], and which of them it is."""

    left: Inches
    is_partition: bool


def web_frames(case: CasePlan) -> Iterator[WebFrame]:
    """The frames between the rows of every stack, from the top of each down.

    Args:
        case: what the case is worked out from

    Yields:
        Each frame; the case bottom is none.

    Source: geometry of the case.
    """
    for stack in case.face.stacks:
        yield from frames_of_stack(case, stack)


def frames_of_stack(case: CasePlan, stack: Stack) -> Iterator[WebFrame]:
    """The frames between the rows of a stack, from the top down.

    Args:
        case: what the case is worked out from
        stack: the stack

    Yields:
        Each frame; none where nothing lies between the rows.

    Source: geometry of the case.
    """
    if case.spec.case.divider_kind == "none":
        return
    for above, below in zip(stack.rows[:-1], stack.rows[1:], strict=True):
        yield WebFrame(
            mark=f"D{above.mark}",
            left=stack.left,
            width=stack.width,
            walls=stack.walls,
            z=above.bottom - case.spec.case.divider,
            above=above,
            below=below,
        )


def standing_on(row: FaceRow) -> Iterator[Standing]:
    """The uprights and partitions whose lower ends meet what lies under a row.

    Args:
        row: the row; where a column of it has rows of its own, those of the lowest of them count

    Yields:
        Each of them.

    Source: geometry of the case.
    """
    yield from _of_row(row)
    for cell in row.cells:
        if cell.stack is not None:
            yield from standing_on(cell.stack.rows[-1])


def hanging_from(row: FaceRow) -> Iterator[Standing]:
    """The uprights and partitions whose upper ends meet what lies over a row.

    Args:
        row: the row; where a column of it has rows of its own, those of the top one of them count

    Yields:
        Each of them.

    Source: geometry of the case.
    """
    yield from _of_row(row)
    for cell in row.cells:
        if cell.stack is not None:
            yield from hanging_from(cell.stack.rows[0])


def _of_row(row: FaceRow) -> Iterator[Standing]:
    for left in row.uprights:
        yield Standing(left=left, is_partition=False)
    for left in row.partitions:
        yield Standing(left=left, is_partition=True)


def bearers(case: CasePlan, frame: WebFrame) -> tuple[Bearer, ...]:
    """What runs from front to back in a frame, for the row above it and the row below.

    A side pair carries the outer drawers; a centre runner lies under each upright, and a rail as wide under
    each partition that stands on the frame. What stands below needs a kicker, or a rail to be housed in,
    where none of those lies over it.

    Args:
        case: what the case is worked out from
        frame: the frame

    Returns:
        The runners, kickers and rails; of two that would overlap there is one that does for both. Where the
        drawers hang on battens or slides, only the rails of partitions.

    Source: common practice of solid-wood case making.
    """
    frames, drawers = case.spec.frames, case.spec.drawers
    right = frame.left + frame.width - frames.runner_width
    found: list[Bearer] = []
    if drawers.on_frames and not isinstance(drawers.running, FullRunners):
        found = [
            _side("RL", SIDE_RUNNER, "Runner", frame.left, frames.runner_width),
            _side("RR", SIDE_RUNNER, "Runner", right, frames.runner_width),
        ]
    over = list(standing_on(frame.above))
    bare = [each for each in hanging_from(frame.below) if not _is_near(each, over, case)]
    wide, narrow = frames.centre_runner_width, frames.runner_width
    if drawers.on_frames:
        found += _centred(case, over, ("RC", CENTRE_RUNNER, "Centre runner", wide), is_partition=False)
    found += _centred(case, over, ("PR", PARTITION_RAIL, "Partition rail", wide), is_partition=True)
    if drawers.on_frames:
        found += _centred(case, bare, ("KC", CENTRE_KICKER, "Centre kicker", narrow), is_partition=False)
    found += _centred(case, bare, ("PH", PARTITION_RAIL, "Partition rail", wide), is_partition=True)
    return apart(case, frame.mark, found)


def top_bearers(case: CasePlan) -> tuple[Bearer, ...]:
    """What runs from front to back between the rails under the top: kickers, and rails over partitions.

    Args:
        case: what the case is worked out from

    Returns:
        The kickers and rails.

    Source: common practice of solid-wood case making.
    """
    side, width = case.spec.case.side, case.spec.frames.runner_width
    found: list[Bearer] = []
    under = list(hanging_from(case.face.rows[0]))
    wide = case.spec.frames.centre_runner_width
    if case.spec.drawers.on_frames:
        found = [
            _side("KL", KICKER, "Kicker", side, width),
            _side("KR", KICKER, "Kicker", case.spec.body.width - side - width, width),
            *_centred(case, under, ("KC", KICKER, "Kicker", width), is_partition=False),
        ]
    found += _centred(case, under, ("PH", TOP_RAIL_OF_PARTITION, "Partition rail", wide), is_partition=True)
    return apart(case, "C", found)


def _side(mark: str, line: str, name: str, left: Inches, width: Inches) -> Bearer:
    return Bearer(mark=mark, line=line, name=name, left=left, width=width)


def _centred(
    case: CasePlan, places: list[Standing], kind: tuple[str, str, str, Inches], *, is_partition: bool
) -> Iterator[Bearer]:
    """One for each upright, or for each partition, centred on it."""
    mark, line, name, width = kind
    chosen = (each.left for each in places if each.is_partition is is_partition)
    for number, left in enumerate(chosen, start=1):
        yield Bearer(
            mark=f"{mark}{number}",
            line=line,
            name=name,
            left=left + (case.spec.case.upright - width) / 2,
            width=width,
        )


def _is_near(below: Standing, above: list[Standing], case: CasePlan) -> bool:
    """Does a runner or rail over it cover what stands below?"""
    reach = (case.spec.frames.centre_runner_width - case.spec.case.upright) / 2
    return any(abs(below.left - each.left) < reach for each in above)


def apart(case: CasePlan, mark: str, found: list[Bearer]) -> tuple[Bearer, ...]:
    """The same runners, kickers and rails, but one wider piece where two would overlap.

    Args:
        case: what the case is worked out from
        mark: that of the frame, for the working
        found: what is wanted

    Returns:
        What is made.

    Source: common practice.
    """
    ordered = sorted(found, key=lambda each: each.left)
    if all(one.left + one.width <= other.left + 1e-9 for one, other in pairwise(ordered)):
        return tuple(found)
    kept: list[Bearer] = []
    for each in ordered:
        last = kept[-1] if kept else None
        if last is None or last.left + last.width <= each.left + 1e-9:
            kept.append(each)
            continue
        winner = min(last, each, key=lambda bearer: RANKS.index(bearer.line))
        right = max(last.left + last.width, each.left + each.width)
        figure = f"{mark}-{winner.mark}.width"
        width = case.ledger.take(figure, rules.across_both, left=last.left, right=right)
        kept[-1] = replace(winner, left=last.left, width=width)
    order = {each.mark: place for place, each in enumerate(found)}
    return tuple(sorted(kept, key=lambda each: order[each.mark]))
