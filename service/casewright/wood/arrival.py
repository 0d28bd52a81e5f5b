"""Boards at the door and offcuts at the saw: what is claimed, and what is worth a label."""

from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import BoardFeet, Inches, Number, Percent
from casewright.wood.tally import board_feet
from casewright.wood.thickness import ThicknessClass

WETTEST = 10.0
"""Over this moisture a kiln-dried board goes back [percent]."""
THIN_BY = 1 / 32
"""A board may lie so far under its class, beside what the kiln-dried rule allows [in]."""
LEAST_SHOW = (3.0, 12.0)
LEAST_INSIDE = (2.5, 15.0)
"""Least width and length of an offcut that is kept, for what shows and for what does not [in]."""


def faults_on_arrival(
    bought: ThicknessClass, thickness: Inches | None, moisture: Percent | None, wettest: Percent = WETTEST
) -> tuple[Words, ...]:
    """What is wrong with a board that has come, as the order says what goes back.

    Args:
        bought: the class that was ordered, rough
        thickness: as measured; None where nobody did [in]
        moisture: as measured; None where nobody did [percent]
        wettest: the moisture over which boards go back [percent]

    Returns:
        A sentence for each fault; none for a board that stays.

    Source: NHLA Rules 2023, standard kiln dried rule, for the scant thickness; 10 % and 1/32 in are common
    practice.
    """
    found: list[Words] = []
    least = bought.rough - bought.kiln_scant - THIN_BY
    if thickness is not None and thickness < least - TOLERANCE:
        found.append(say("thin: {} for {}, which may be {} at its least", thickness, bought.name, least))
    if moisture is not None and moisture > wettest + TOLERANCE:
        found.append(f"wet: {moisture:g} % moisture, over {wettest:g} %")
    return tuple(found)


def tally_difference(billed: BoardFeet, received: BoardFeet) -> Number:
    """How far a bill lies over what was tallied, as a share of the bill.

    Rule: (billed - received) / billed

    Args:
        billed: feet on the bill [bd ft]
        received: feet of the shop's own tally, counted as a yard counts [bd ft]

    Returns:
        Above nothing where too little came; nothing for a bill of nothing [dimensionless]

    Source: common practice.
    """
    return (billed - received) / billed if billed else 0.0


def is_worth_keeping(width: Inches, length: Inches) -> bool:
    """Whether an offcut of solid wood is measured, labelled and put on the rack.

    Rule: at least 3 by 12 in, or 2-1/2 by 15 in

    Args:
        width: clear width [in]
        length: length along the grain [in]

    Returns:
        True where it will serve.

    Source: common practice.
    """
    return any(
        width >= least[0] - TOLERANCE and length >= least[1] - TOLERANCE
        for least in (LEAST_SHOW, LEAST_INSIDE)
    )


def usable_width(middle: Inches, left: Inches | None, right: Inches | None) -> Inches:
    """The width of the widest straight strip in a board that was measured at its middle and ends.

    Rule: the least of the three

    Args:
        middle: width in the middle [in]
        left: width at the left end; None where it was not measured [in]
        right: width at the right end; None where it was not measured [in]

    Returns:
        Width before an edge is straightened [in]

    Source: common practice.
    """
    return min(each for each in (middle, left, right) if each is not None)


def exact_feet(
    thickness: Inches, middle: Inches, left: Inches | None, right: Inches | None, length: Inches
) -> BoardFeet:
    """The exact footage of a board that is wider at one end.

    Rule: thickness * (left + 2 * middle + right) / 4 * length / 144

    Args:
        thickness: nominal thickness of the class [in]
        middle: width in the middle [in]
        left: width at the left end; None where it is that of the middle [in]
        right: width at the right end; None where it is that of the middle [in]
        length: measured length [in]

    Returns:
        Board feet, unrounded [bd ft]

    Source: geometry: two trapezia that meet in the middle.
    """
    mean = ((middle if left is None else left) + 2 * middle + (middle if right is None else right)) / 4
    return board_feet(thickness=thickness, width=mean, length=length)
