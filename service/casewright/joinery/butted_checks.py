"""A board against a case side with its row of dowels or loose tenons, worked out and checked."""

from casewright.joinery.butted import left_of_side, rest_of_length, row_count, row_places, row_spacing
from casewright.joinery.butted_row import ButtedRow, RowJoint
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.comparing import at_least, at_most
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.remembering import remembered
from casewright.measure.saying import say


@remembered
def row_joint(joint: ButtedRow, ledger: Ledger = UNKEPT) -> RowJoint:
    """A board against a case side, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint; its habits are common practice.
    """
    row = {"width": joint.width, "margin": joint.margin, "count": joint.count}
    return RowJoint(
        given=joint,
        board_depth=ledger.take(
            "board_depth",
            rest_of_length,
            length=joint.length,
            clearance=joint.limits.clearance.value,
            side_depth=joint.side_depth,
        ),
        spacing=ledger.take("spacing", row_spacing, **row),
        places=ledger.take("places", row_places, **row),
        left=ledger.take("left", left_of_side, case_side=joint.case_side, side_depth=joint.side_depth),
        findings=(
            piece_thickness(joint),
            left_behind(joint),
            reach(joint),
            before_the_first(joint),
            apart(joint),
        ),
    )


def piece_thickness(joint: ButtedRow) -> Finding:
    """Whether the pieces are as thick as their boards can hold.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    limits, board, one = joint.limits, min(joint.board, joint.case_side), joint.words.one
    thin, thick = board / limits.thin_part.value, board / limits.part.value
    off = not thin - TOLERANCE <= joint.thick <= thick + TOLERANCE
    return Finding(
        rule=f"{one} thickness",
        verdict=Verdict.CAUTION if off else Verdict.PASS,
        message=say(
            "The {}s are {} thick in a board of {}; from {:bare} to {} is usual.",
            one,
            joint.thick,
            board,
            thin,
            thick,
        ),
        remedy=say("Take {}s from {:up} to {:down} thick.", one, thin, thick) if off else "",
        about=joint.mark,
        found=joint.thick,
        needed=min(max(joint.thick, thin), thick),
        source=limits.part.source,
    )


def left_behind(joint: ButtedRow) -> Finding:
    """Whether the holes leave enough of the case side.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least, hole = joint.limits.left_least, joint.words.hole
    left = left_of_side(joint.case_side, joint.side_depth)
    most = joint.case_side - least.value
    return at_least(
        f"behind the {hole}s",
        left,
        least.value,
        say("Behind the {}s {} of the case side is left; {} is needed.", hole, left, least.value),
        say("Make them {:down} deep in the side or less.", most)
        if most > 0
        else say("Make the side {:up} thick or more.", least.value + joint.thick),
        about=joint.mark,
        source=least.source,
    )


def reach(joint: ButtedRow) -> Finding:
    """Whether the pieces reach far enough into both boards.

    Args:
        joint: the joint

    Returns:
        A pass, a caution, or a stop.

    Source: from memory.
    """
    limits, shorter, one = joint.limits, min(joint.side_depth, joint.board_depth), joint.words.one
    good, least = limits.reach_good.value * joint.thick, limits.reach_least.value * joint.thick
    in_side = joint.side_depth <= joint.board_depth + TOLERANCE
    short = shorter < good - TOLERANCE
    verdict = Verdict.CAUTION if short else Verdict.PASS
    if shorter < least - TOLERANCE:
        verdict = Verdict.STOP
    longer = say("Take {}s {:up} long or longer.", one, joint.length + good - shorter)
    thinner = say(
        "Take {}s {:down} thick or thinner, or a thicker side.", one, shorter / limits.reach_good.value
    )
    return Finding(
        rule=f"{one} reach",
        verdict=verdict,
        message=say(
            "The {}s lie {} deep in the {}; for their thickness {:bare} is good.",
            one,
            shorter,
            "case side" if in_side else "board",
            good,
        ),
        remedy="" if not short else thinner if in_side else longer,
        about=joint.mark,
        found=shorter,
        needed=good if short else shorter,
        source=limits.reach_good.source,
    )


def before_the_first(joint: ButtedRow) -> Finding:
    """Whether enough wood stands before the first piece and behind the last.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: from memory.
    """
    limit, one = joint.limits.edge_least, joint.words.one
    middle = joint.margin if joint.count > 1 else joint.width / 2
    wood = middle - joint.hole_length / 2
    begin = limit.value + joint.hole_length / 2
    # Two must fit beside each other too, or one alone is the way out.
    alone = joint.count == 1 or 2 * begin + joint.hole_length > joint.width
    narrow = joint.width - 2 * limit.value - joint.limits.slip.value
    return at_least(
        f"{one}s from the edge",
        wood,
        limit.value,
        say("Before the first {} {} of wood is left; {:up} or more does not split.", one, wood, limit.value),
        say("Begin the row {:up} from each edge or more.", begin)
        if not alone
        else say("Take one alone, {:down} or less.", narrow)
        if narrow > 0
        else say("Make the board {:up} wide or more.", 2 * limit.value + joint.hole_length),
        about=joint.mark,
        source=limit.source,
    )


def apart(joint: ButtedRow) -> Finding:
    """Whether there is enough wood between two pieces, and no more than the boards stay closed over.

    Args:
        joint: the joint

    Returns:
        A pass, a caution where they stand far apart, a stop where they stand too close.

    Source: from memory.
    """
    limits, one = joint.limits, joint.words.one
    found = row_spacing(joint.width, joint.margin, joint.count)
    least, most = limits.between_least.value + joint.hole_length, limits.spacing_most.value
    message = say("The {}s stand {} apart, middle to middle.", one, found)
    if joint.count == 1:
        most = max(most, joint.hole_length)
        found = joint.width / 2
        message = say("One {} holds a board {} wide.", one, joint.width)
    elif found < least - TOLERANCE:
        return at_least(
            f"{one}s apart",
            found,
            least,
            message,
            say("Take {:d} or fewer.", int((joint.width - 2 * joint.margin) / least + TOLERANCE) + 1),
            about=joint.mark,
            source=limits.between_least.source,
        )
    fewest = row_count(joint.width, min(joint.margin, joint.width / 4), most)
    return at_most(
        f"{one}s apart",
        found,
        most,
        message,
        say("Take {:d} or more.", fewest),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=limits.spacing_most.source,
    )
