"""A unit worked out for its pages, as far as it can be, with the sentence of whatever cannot."""

from dataclasses import dataclass, replace
from datetime import date

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import refusal, unit_read
from casewright.papers.writing import Writing
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.estimate import Estimate
from casewright.records.jobs import Job, Unit, UnitRevision
from casewright.shop.estimating import estimated_unit, worked_unit
from casewright.shop.figures import figures_text
from casewright.shop.measured import measured_text
from casewright.shop.refusals import NotFound
from casewright.shop.units import LoadedUnit, load_unit
from casewright.web.frame.visits import Visit

TABS = (
    ("", "Design"),
    ("/cut-list", "Parts"),
    ("/joints", "Joints"),
    ("/season", "Season"),
    ("/stability", "Stability"),
    ("/lumber", "Lumber"),
    ("/hours", "Hours"),
    ("/price", "Price"),
    ("/checks", "Checks"),
    ("/compare", "Compare"),
    ("/revisions", "Revisions"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A unit worked out.

    Attributes:
        unit: what is built; None where the choices cannot be built
        held: what it takes and costs; None where that cannot be said
        refusal: the sentence of whatever stands in the way
    """

    unit: Construction | None
    held: Estimate | None
    refusal: str = ""


def work_out(text: str, figures: str, today: date, shown: LengthUnit) -> Worked:
    """A unit worked out as far as it can be.

    Args:
        text: what the maker chose, as JSON text
        figures: the shop's figures, as JSON text
        today: the day from which the promise counts
        shown: the unit in which a refusal is read
    """
    try:
        held = estimated_unit(text, figures, today)
    except CannotRead as refused:  # a size so small that it is nothing once it is written down
        return Worked(unit=None, held=None, refusal=refusal(refused, shown))
    except REFUSALS as refused:
        return _unpriced(text, figures, refusal(refused, shown), shown)
    return Worked(unit=held.unit, held=held)


def _unpriced(text: str, figures: str, why: str, shown: LengthUnit) -> Worked:
    """What is built where it cannot be priced; nothing where it cannot be built either."""
    try:
        return Worked(unit=worked_unit(text, figures), held=None, refusal=why)
    except REFUSALS as refused:
        return Worked(unit=None, held=None, refusal=refusal(refused, shown))


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitHead:
    """What stands at the top of every page of a unit.

    Attributes:
        unit: the unit
        job: its job
        revision: the revision that is shown
        address: of its first page
        measured: how many sizes from the bench are worked in
        remark: why sizes from the bench are not
        tabs: its pages
    """

    unit: Unit
    job: Job
    revision: UnitRevision
    address: str
    measured: int = 0
    remark: str = ""
    tabs: tuple[tuple[str, str], ...] = TABS

    @property
    def is_approved(self) -> bool:
        """Whether the revision that holds is the approved one."""
        return self.unit.approved == self.unit.revision


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """A unit as a page finds it: loaded, with the shop's figures and its way to write; not worked out."""

    loaded: LoadedUnit
    head: UnitHead
    figures: str
    writing: Writing

    def writing_in(self, unit: LengthUnit) -> Writing:
        """The same way to write, with sizes in another unit."""
        return replace(self.writing, unit=unit)

    def work_out(self, today: date) -> Worked:
        """The unit as it was saved, worked out."""
        return work_out(self.loaded.text, self.figures, today, self.writing.unit)


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen(Met):
    """A unit as a page sees it: found and worked out."""

    worked: Worked

    @property
    def built(self) -> Construction:
        """The unit, built.

        Raises:
            NotFound: it cannot be built with the figures that hold now
        """
        if self.worked.unit is None:
            raise NotFound(f"working of this unit: {self.worked.refusal}")
        return self.worked.unit


def head_of(loaded: LoadedUnit) -> UnitHead:
    """The head of a unit's pages."""
    return UnitHead(
        unit=loaded.unit, job=loaded.job, revision=loaded.revision, address=f"/units/{loaded.unit.id}"
    )


def writing_of(visit: Visit, loaded: LoadedUnit) -> Writing:
    """How a unit's pages write: in the unit that the shop reads it in, with its fractions and its money."""
    shop = visit.shop
    return Writing(
        unit=unit_read(visit.unit, loaded.spec.unit), denominator=shop.denominator, symbol=shop.symbol
    )


def meet_unit(visit: Visit, unit_id: str, number: int | None = None) -> Met:
    """A unit of the shop as it was designed, with the figures that hold now.

    Raises:
        NotFound: the shop has no such unit or revision
    """
    loaded = load_unit(visit.db, unit_id, number)
    return Met(
        loaded=loaded,
        head=head_of(loaded),
        figures=figures_text(visit.db, visit.shop, loaded.job),
        writing=writing_of(visit, loaded),
    )


def see_unit(visit: Visit, unit_id: str, number: int | None = None) -> Seen:
    """As `meet_unit`, worked out."""
    met = meet_unit(visit, unit_id, number)
    return Seen(
        loaded=met.loaded,
        head=met.head,
        figures=met.figures,
        writing=met.writing,
        worked=met.work_out(visit.today),
    )


NO_LONGER = "Sizes measured at the bench no longer go with the design, so they are left out here."


def see_built_unit(visit: Visit, unit_id: str, number: int | None = None) -> Seen:
    """A unit of the shop as it is being built: as `see_unit`, with what the bench has measured on it.

    Raises:
        NotFound: the shop has no such unit or revision
    """
    seen = see_unit(visit, unit_id, number)
    if number is not None:
        return seen
    text, measured = measured_text(visit.db, seen.loaded)
    if not measured:
        return seen
    worked = work_out(text, seen.figures, visit.today, seen.writing.unit)
    if worked.held is None:
        return replace(seen, head=replace(seen.head, remark=NO_LONGER))
    return replace(seen, worked=worked, head=replace(seen.head, measured=measured))
