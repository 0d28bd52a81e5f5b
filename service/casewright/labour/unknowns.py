"""Known unknowns: what makes this piece harder than the standards, named as lines of its own.

A figure folded into the hours is argued about a year later; a line that says curly grain is not.
"""

from collections.abc import Collection, Iterable

from casewright.labour.operations import Group, Method
from casewright.labour.standards import LabourLine, direct_minutes
from casewright.measure.units import Minutes, Number


def added_share(label: str, lines: Iterable[LabourLine], codes: Collection[str], share: Number) -> LabourLine:
    """A line for work that takes a share longer than the standards say, such as planing curly grain.

    Rule: share * (minutes of the operations named)

    Args:
        label: what the customer could be told
        lines: the labour lines of the piece
        codes: the operations that take longer
        share: how much longer, as a share of their minutes [dimensionless]

    Returns:
        The added line; the operations' own lines stay as they are.

    Raises:
        ValueError: none of the operations is done on this piece.

    Source: common practice.
    """
    concerned = [line for line in lines if line.code in codes]
    if not concerned:
        raise ValueError(f"“{label}” adds to operations that this piece does not have.")
    return named_line(label, concerned[0].group, direct_minutes(concerned), share)


def added_minutes(label: str, minutes: Minutes, group: Group = Group.DELIVER) -> LabourLine:
    """A line for work that no standard counts, such as carrying to a third floor.

    Args:
        label: what the customer could be told
        minutes: direct minutes [min]
        group: the part of the work

    Returns:
        The added line.

    Source: common practice.
    """
    return named_line(label, group, minutes, 1.0)


def named_line(label: str, group: Group, each: Minutes, quantity: Number) -> LabourLine:
    """A labour line that a person named and no driver counts.

    Args:
        label: what it is for
        group: the part of the work
        each: the minutes that it is a share or a multiple of [min]
        quantity: the share or multiple [dimensionless]

    Returns:
        The line, with the code “own”.

    Source: common practice.
    """
    if not label.strip():
        raise ValueError("Name the line; an unnamed allowance cannot be checked afterwards.")
    return LabourLine(
        code="own",
        name=label,
        group=group,
        driver=None,
        quantity=quantity,
        each=each,
        method=Method.HAND,
        factor=1.0,
        minutes=quantity * each,
    )
