"""The arithmetic of what a case stands on: plinth, feet and toe base."""

from casewright.measure.rounding import up_to
from casewright.measure.units import Count, Inches


def set_back(whole: Inches, setback: Inches, ends: Count) -> Inches:
    """What a base measures that stands back from the case.

    Rule: whole - ends × setback

    Args:
        whole: size of the case [in]
        setback: how far the base stands back from it [in]
        ends: at how many ends it does

    Returns:
        The size of the base [in]

    Source: geometry of the base.
    """
    return whole - ends * setback


def bays(length: Inches, board: Inches, apart: Inches) -> Count:
    """Into how many bays the cross members part a base, so that none is wider than wished.

    Rule: (length - board) / (apart + board), rounded up

    Args:
        length: length of the base over its ends [in]
        board: thickness of its boards [in]
        apart: the widest bay wished for, clear between boards [in]

    Returns:
        The bays: one cross member fewer

    Source: geometry of the base.
    """
    return max(1, round(up_to((length - board) / (apart + board), 1)))


def bay(length: Inches, board: Inches, bays: Count) -> Inches:
    """How wide each bay between cross members is.

    Rule: (length - (bays + 1) × board) / bays

    Args:
        length: length of the base over its ends [in]
        board: thickness of its boards [in]
        bays: how many there are

    Returns:
        Clear between two boards [in]

    Source: geometry of the base.
    """
    return (length - (bays + 1) * board) / bays


def levelled(height: Inches, levelling: Inches) -> Inches:
    """The width of the boards of a base that is levelled on the floor.

    Rule: height - levelling

    Args:
        height: floor to the underside of the case [in]
        levelling: what is left for levelling feet or wedges [in]

    Returns:
        The width of the boards [in]

    Source: common practice: the box is set level on the highest place of the floor.
    """
    return height - levelling


def foot_length(height: Inches, block: Inches, tenon: Inches) -> Inches:
    """The length of a turned foot with its tenon.

    Rule: height - block + tenon

    Args:
        height: floor to the underside of the case [in]
        block: thickness of the block above the foot [in]
        tenon: length of the tenon in it [in]

    Returns:
        The length over the tenon [in]

    Source: geometry of the base.
    """
    return height - block + tenon


def behind_the_front(depth: Inches, setback: Inches, front: Inches) -> Inches:
    """The length of a return that ends behind the front of a plinth.

    Rule: depth - setback - front

    Args:
        depth: depth of the case [in]
        setback: how far the plinth stands back at the front [in]
        front: thickness of the front, where the return butts against it; 0 where they are mitred [in]

    Returns:
        The length of the return [in]

    Source: geometry of the base.
    """
    return depth - setback - front


def layers(diameter: Inches, board: Inches) -> Count:
    """From how many boards the square of a turned foot is glued up.

    Rule: diameter / board, rounded up

    Args:
        diameter: greatest diameter of the foot [in]
        board: the thickest board that is planed for it [in]

    Returns:
        The boards

    Source: common practice.
    """
    return max(1, round(up_to(diameter / board, 1)))


def layer(diameter: Inches, layers: Count) -> Inches:
    """The thickness of each board that the square of a turned foot is glued up from.

    Rule: diameter / layers

    Args:
        diameter: greatest diameter of the foot [in]
        layers: how many boards

    Returns:
        The thickness of each [in]

    Source: geometry.
    """
    return diameter / layers
