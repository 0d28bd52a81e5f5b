"""Who, what and when: the head that every paper of a job carries, and what every kept paper has in common."""

from datetime import date
from typing import Any, Literal

from pydantic import Field

from casewright.measure.lengths import LengthUnit
from casewright.papers.cleaning import name
from casewright.pieces.asked.fields import Spec

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


class PaperHead(Spec):
    """What every paper of a job says at its top and at the foot of each page."""

    shop: str = Field("", description="Name of the shop.")
    number: str = Field("", description="The paper's own number, such as L-0003; none before it is issued.")
    job_number: str = Field(description="Number of the job.")
    job_name: str = Field("", description="What the shop calls the job.")
    revision: int = Field(
        1, ge=1, description="Revision of the paper; before it is issued, of the design that it is made from."
    )
    issued_on: date | None = Field(None, description="Day of issue; none for a draft.")
    units: tuple[tuple[str, int], ...] = Field(
        (), description="The units that it is made from, each with the revision of its design."
    )
    supersedes: int | None = Field(None, description="The revision that this paper takes the place of.")
    unit: LengthUnit = Field(LengthUnit.INCH, description="Unit in which the paper gives sizes first.")


class JobPaper(Spec):
    """A paper as it is kept: every figure on it, so that it prints the same years later."""

    form: Literal[1] = 1
    head: PaperHead


def day(on: date | None) -> str:
    """A day that nobody can read two ways.

    Args:
        on: the day; none for one not set

    Returns:
        Such as `25 November 2026`, or nothing.
    """
    return f"{on.day} {MONTHS[on.month - 1]} {on.year}" if on else ""


def head_data(head: PaperHead, title: str, *, copy: str = "", shows_job_name: bool = True) -> dict[str, Any]:
    """The head as a template prints it.

    Args:
        head: who, what and when
        title: what kind of paper it is, such as `Cut list`
        copy: which copy of it, such as `our copy`; empty where there is one
        shows_job_name: print the name of the job, which may be the customer's

    Returns:
        Title, shop, facts with their labels, and the words of the foot.
    """
    of_paper = head.issued_on is not None
    revision = f"{'' if of_paper else 'unit '}revision {head.revision}"
    job = name(head.job_number, 40)
    called = f"{title} {name(head.number, 20)}".rstrip()
    heading = f"{called}, {copy}" if copy else called
    issued = day(head.issued_on)
    label = "Paper revision" if of_paper else "Unit revision"
    facts = [["Job", job], [label, str(head.revision)], *_units(head), ["Issued", issued or "draft"]]
    if head.supersedes is not None:
        facts.append(["Supersedes", f"revision {head.supersedes}"])
    facts.append(["Sizes", "millimetres" if head.unit is LengthUnit.MILLIMETRE else "inches"])
    return {
        "title": f"{heading}, job {job}, {revision}" + ("" if issued else " (draft)"),
        "heading": heading,
        "shop": name(head.shop),
        "job_name": name(head.job_name) if shows_job_name else "",
        "facts": facts,
        "foot": f"{heading} · job {job} · {revision} · {issued or 'draft'}",
        "is_draft": not issued,
    }


def _units(head: PaperHead) -> list[list[str]]:
    """Of which revision of their design its units are; nothing where the paper does not say."""
    if not head.units:
        return []
    if len(head.units) == 1:
        return [["Unit revision", str(head.units[0][1])]]
    return [["Unit revisions", ", ".join(f"{name(code, 40)} {number}" for code, number in head.units)]]


def loose_head(heading: str, title: str, unit: LengthUnit, what: str = "Joint") -> dict[str, Any]:
    """The head of a paper that belongs to no job.

    Args:
        heading: what kind of paper it is, such as `Joint card`
        title: what it is of
        unit: in which sizes are written
        what: what kind of thing that is

    Returns:
        What `head_data` gives for the paper of a job; it is no draft, for nobody issues it.
    """
    sizes = "millimetres" if unit is LengthUnit.MILLIMETRE else "inches"
    return {
        "title": f"{heading}: {name(title)}",
        "heading": heading,
        "shop": "",
        "job_name": "",
        "facts": [[what, name(title)], ["Sizes", sizes]],
        "foot": f"{heading} · {name(title)}",
        "is_draft": False,
    }
