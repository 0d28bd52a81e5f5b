"""The shelves of open spaces and of what stands behind doors."""

from collections.abc import Iterator

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.fields import Timber
from casewright.pieces.case.floors import floor_under
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.settled import SAME_SHEET
from casewright.pieces.layout.openings import Space, Wall
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part, timber
from casewright.pieces.rules import case_rules as rules
from casewright.wood.waste import PartUse


def shelf_parts(case: CasePlan) -> Iterator[Part]:
    """The shelves, evenly spaced in their openings, each with its front edge.

    Args:
        case: what the case is worked out from

    Yields:
        The parts, opening by opening, from the lowest shelf up.

    Source: common practice of cabinet making.
    """
    for space in case.face.spaces:
        if space.shelves:
            yield from _of_space(case, space)


def _of_space(case: CasePlan, space: Space) -> Iterator[Part]:
    shelving, under = case.spec.shelving, case.ledger.under(space.code)
    thick, front = shelving.thickness, front_of_shelves(case, space)
    laid, clear = floor_under(case, space), space.height
    if laid:
        clear = under.take("clear_height", rules.between, whole=clear, one_end=laid, other_end=0.0)
    gap = under.take("shelf_gap", rules.shelf_gap, height=clear, thickness=thick, shelves=space.shelves)
    depth = under.take(
        "shelf_depth", rules.between, whole=case.face.opening_depth, one_end=front, other_end=0.0
    )
    if shelving.fixing == "pins":
        start, words = space.left + shelving.play, say("loose on pins, {} of room", shelving.play)
        length = under.take(
            "shelf_length",
            rules.between,
            whole=space.width,
            one_end=shelving.play,
            other_end=shelving.play,
        )
    else:
        deep = case.housing_in(Wall.PARTITION)
        start, words = space.left - deep, say("housing, {:fraction} deep", deep)
        length = under.take("shelf_length", rules.housed_length, opening=space.width, housing=deep)
    floor = case.face.base_height + space.bottom + laid
    made_of = wood_of_shelves(case, space)
    for number in range(1, space.shelves + 1):
        z = floor + number * gap + (number - 1) * thick
        mark = f"{space.code}-SH{number}"
        yield from _shelf(case, mark, Box(start, front, z, length, depth, thick), words, made_of)


def front_of_shelves(case: CasePlan, space: Space) -> Inches:
    """How far behind the front edge of the case a shelf begins: behind doors, further back.

    Args:
        case: what the case is worked out from
        space: the opening

    Returns:
        The distance [in]

    Source: common practice.
    """
    setback = case.spec.shelving.setback
    if space.holds != "doors":
        return setback
    doors = case.spec.doors
    if doors.style != "inset":
        return setback
    return case.ledger.take(
        "shelf_front", rules.over_all, inner=doors.thickness, one_end=setback, other_end=0.0
    )


def _is_of_sheet(case: CasePlan) -> bool:
    """Is a shelf cut from the sheet of a plywood case? One that is asked thicker or thinner is a board."""
    thick = case.spec.case
    return thick.is_ply and abs(case.spec.shelving.thickness - thick.ply.bought.thickness) <= SAME_SHEET


def wood_of_shelves(case: CasePlan, space: Space) -> Timber:
    """The wood of a space's solid shelves: that of the case where they are seen, else that of the inside.

    Args:
        case: what the case is worked out from
        space: the opening

    Returns:
        The wood that was asked for shelves, where one was.

    Source: common practice: a shelf in an open bay is seen by day, one behind a door is not.
    """
    woods, is_seen = case.spec.woods, space.holds != "doors"
    return woods.shelves or (woods.case if is_seen or not case.spec.shelving.edge else woods.inside)


def _shelf(case: CasePlan, mark: str, box: Box, words: Words, made_of: Timber) -> Iterator[Part]:
    woods, edge, depth = case.spec.woods, case.spec.shelving.edge, box.depth
    of_sheet = _is_of_sheet(case)
    if not of_sheet and timber(made_of) == timber(woods.case):
        edge = 0.0  # of the case's wood from front to back, it needs no strip before it
    if edge:
        yield new_part(
            code=case.code(f"{mark}E"),
            line="C12",
            name="Shelf edge",
            wood=woods.case.wood,
            cut=woods.case.cut,
            thickness=box.height,
            width=edge,
            length=box.width,
            face=FaceClass.EDGE,
            grain=Grain.ACROSS,
            use=PartUse.CASE,
            ends=(words, words),
            box=Box(box.x, box.y, box.z, box.width, edge, box.height),
        )
        depth = case.ledger.take("shelf_width", rules.between, whole=depth, one_end=edge, other_end=0.0)
    yield new_part(
        code=case.code(mark),
        line="C9",
        name="Shelf",
        **(case.spec.case.ply.material if of_sheet else timber(made_of)),
        thickness=box.height,
        width=depth,
        length=box.width,
        face=FaceClass.INSIDE if edge else FaceClass.EDGE,
        grain=Grain.ACROSS,
        use=PartUse.INSIDE if edge else PartUse.CASE,
        ends=(words, words),
        box=Box(box.x, box.y + edge, box.z, box.width, depth, box.height),
    )
