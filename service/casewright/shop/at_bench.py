"""A drawer as it stands at the bench: worked out with what was measured, and what it needs next."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property

from casewright.labour.bench import CaseProgress, DrawerProgress, case_progress, drawer_progress
from casewright.labour.next_step import Step, TakeBack, can_leave, can_take_back, next_step
from casewright.measure.findings import Finding, Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import refusal, unit_read
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.measuring import Measurable, measurable, with_bench
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.drawers.drawer import Drawer as WorkedDrawer
from casewright.records.bench import Drawer
from casewright.records.board import BoardRow, Tapped, drawer_row, drawers_of_case, tapped
from casewright.records.jobs import UnitRevision
from casewright.records.people import Shop
from casewright.records.sessions import Fenced
from casewright.shop.bench import Place, at_rest, taps_of
from casewright.shop.estimating import worked_unit
from casewright.shop.figures import figures_text
from casewright.shop.refusals import NotFound
from casewright.shop.units import load_unit, origins_of, said_not_agreed, spec_from, spec_text

GONE = "The present design has no such opening any more. What was done to this drawer is kept below."
NOT_YET = "which is not agreed yet: nothing is made for it until it is."
MEASURED_PATH = re.compile(r"(measured|parts|openings)\b", re.IGNORECASE)
"""The place of a measured size in a unit file, with or without the head that it stands under."""
NO_LONGER = "The sizes that were measured no longer go with the design, so the sizes as drawn are shown."


@dataclass(frozen=True, kw_only=True)
class AtBench:
    """One drawer at the bench.

    Attributes:
        row: the drawer with its case, unit and job
        case_drawers: the drawers of its case, from the top left
        taps: what was tapped about the case and its drawers
        revision: the revision of the unit that is made: the agreed one, where a later one is not agreed yet
        spec: the unit as it was designed in that revision, as JSON text
        figures: the shop's figures, as JSON text
        shop_unit: the unit in which the shop thinks
    """

    row: BoardRow
    case_drawers: Sequence[Drawer]
    taps: Sequence[Tapped]
    revision: UnitRevision
    spec: str
    figures: str
    shop_unit: LengthUnit

    @cached_property
    def codes(self) -> dict[str, str]:
        """The opening that every drawer has in the revision that is made, by the origin of the drawer."""
        return {origin: code for code, origin in origins_of(self.revision).items()}

    @property
    def code(self) -> str:
        """The drawer's opening in the revision that is made; empty where it has none there."""
        return self.codes.get(self.row.drawer.origin, "")

    @cached_property
    def progress(self) -> DrawerProgress:
        """Where the drawer stands."""
        return drawer_progress(taps_of(self.taps, self.row.drawer.id))

    @cached_property
    def case(self) -> CaseProgress:
        """Where its case stands."""
        return case_progress(taps_of(self.taps, None))

    @cached_property
    def step(self) -> Step:
        """What comes next."""
        return next_step(self.progress, self.case)

    @cached_property
    def sizes(self) -> dict[str, dict[str, float]]:
        """What was measured on every drawer of the case, by its code [in]."""
        known = [(self.codes[each.origin], each) for each in self.case_drawers if each.origin in self.codes]
        found = {code: drawer_progress(taps_of(self.taps, each.id)) for code, each in known}
        return {code: progress.measured for code, progress in found.items() if progress.measured}

    @cached_property
    def worked(self) -> tuple[Construction | None, str]:
        """The unit worked out with what was measured, and what stood in the way.

        Where measured sizes no longer go with the design, it is worked out without them; None where the
        design itself cannot be built any more.
        """
        said = ""
        for sizes in (self.sizes, {}):
            try:
                return self._work(sizes), f"{NO_LONGER} {said}" if said else ""
            except REFUSALS as error:
                said = plain_sentence(error, self.unit)
        return None, said

    @cached_property
    def text(self) -> str:
        """The unit as it is worked out, as JSON text: with what was measured, where that goes."""
        return self.spec if self.worked[1] else self._text(self.sizes)

    @cached_property
    def drawer(self) -> WorkedDrawer | None:
        """The drawer, worked out; None where the design has no such opening any more, or not yet."""
        code = f"{self.row.unit.code}-{self.code}"
        built = None if self.row.drawer.gone else self.worked[0]  # another may have its code by now
        return next((each for each in built.drawers if each.code == code), None) if built else None

    @cached_property
    def measurables(self) -> tuple[Measurable, ...]:
        """The sizes that the bench is asked for."""
        built = self.worked[0]
        return measurable(built, self.drawer.code) if built and self.drawer else ()

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """The checks about this drawer that did not pass, the gravest first."""
        built = self.worked[0]
        if built is None or self.drawer is None:
            return ()
        about = [each for each in built.findings if is_about(each, self.drawer.code)]
        failed = [each for each in about if each.verdict is not Verdict.PASS]
        return tuple(sorted(failed, key=lambda each: each.verdict is not Verdict.STOP))

    @property
    def unit(self) -> LengthUnit:
        """The unit in which the shop reads the piece."""
        return unit_read(self.shop_unit, spec_from(self.spec).unit)

    @property
    def trouble(self) -> str:
        """Why the bench cannot go on, or goes on without what was measured; empty where all is well."""
        return at_rest(self.row.job) or self.worked[1] or self._no_opening

    @property
    def _no_opening(self) -> str:
        """Why the drawer is not made, where it has no opening any more, or has none yet."""
        if self.row.drawer.gone:
            return GONE
        if self.code:
            return ""
        return f"This drawer comes with revision {self.row.unit.revision}, {NOT_YET}"

    @property
    def not_agreed(self) -> str:
        """What to mind where the unit was changed and the change is not agreed; empty where it was not."""
        said, drawer = said_not_agreed(self.row.unit), self.row.drawer
        if not said or not self.code or self.code == drawer.code:
            return said
        return f"{said} In that revision this drawer is {self.code}."

    @property
    def is_idle(self) -> bool:
        """Whether nothing new is tapped about the drawer: its job is not worked on, or it has no opening."""
        return bool(at_rest(self.row.job) or self._no_opening)

    def take_back(self, now: datetime, *, is_maker: bool) -> TakeBack:
        """Whether somebody may take the last stage back now, as `take_back_stage` decides it."""
        said = at_rest(self.row.job)
        if said:
            return TakeBack(stage=self.progress.stage, allowed=False, reason=said)
        return can_take_back(self.progress, now, is_maker=is_maker)

    def leave(self, now: datetime, *, is_maker: bool) -> TakeBack:
        """Whether somebody may say now that it stands as it was, as `leave_as_it_was` decides it."""
        said = at_rest(self.row.job)
        if said:
            return TakeBack(stage="", allowed=False, reason=said)
        return can_leave(self.progress, now, is_maker=is_maker)

    @property
    def place(self) -> Place:
        """The drawer as a place where something may be tapped."""
        return Place(self.row.job, self.row.carcase, self.row.drawer, list(self.taps))

    @property
    def neighbours(self) -> tuple[Drawer | None, Drawer | None]:
        """The drawer before and the one after it, in the case."""
        ids = [each.id for each in self.case_drawers]
        if self.row.drawer.id not in ids:
            return None, None
        place = ids.index(self.row.drawer.id)
        before = self.case_drawers[place - 1] if place else None
        return before, self.case_drawers[place + 1] if place + 1 < len(ids) else None

    def refusals(self, changes: Mapping[str, float | None]) -> dict[str, str]:
        """What is wrong with sizes as they are about to be kept.

        Args:
            changes: by name, such as `SL.thickness`, the size; None takes one back [in]

        Returns:
            A sentence for each size that cannot be; nothing where all can.
        """
        whole = self._refusal(changes)
        if not whole:
            return {}
        each = {name: self._refusal({name: size}) for name, size in changes.items()}
        found = {name: sentence for name, sentence in each.items() if sentence}
        return found or dict.fromkeys(list(changes)[-1:], whole)

    def _refusal(self, changes: Mapping[str, float | None]) -> str:
        code = self.code
        together = {**self.sizes.get(code, {}), **changes}
        held = {name: size for name, size in together.items() if size is not None}
        try:
            self._work({**self.sizes, code: held})
        except REFUSALS as error:
            return plain_sentence(error, self.unit)
        return ""

    def _work(self, sizes: Mapping[str, Mapping[str, float]]) -> Construction:
        return worked_unit(self._text(sizes), self.figures)

    def _text(self, sizes: Mapping[str, Mapping[str, float]]) -> str:
        return spec_text(with_bench(spec_from(self.spec), sizes)) if sizes else self.spec


def at_bench(db: Fenced, shop: Shop, drawer_id: str) -> AtBench:
    """A drawer at the bench; five queries.

    A unit that was changed after its approval is made as it is agreed until the change is: wood that is cut
    by numbers which the customer then refuses is lost.

    Raises:
        NotFound: the shop has no such drawer
    """
    row = drawer_row(db, drawer_id)
    if row is None:
        raise NotFound("drawer")
    made = load_unit(db, row.unit.id, row.unit.approved)
    return AtBench(
        row=row,
        case_drawers=drawers_of_case(db, row.carcase.id),
        taps=tapped(db, [row.carcase.id]),
        revision=made.revision,
        spec=made.text,
        figures=figures_text(db, shop, row.job),
        shop_unit=LengthUnit(shop.unit),
    )


def is_about(finding: Finding, code: str) -> bool:
    """Whether a check is about a drawer or one of its parts."""
    marks = finding.about.split(", ")
    return any(mark == code or mark.startswith(f"{code}-") for mark in marks)


def plain_sentence(error: Exception, unit: LengthUnit) -> str:
    """What the core says, without the path of the field in a unit file."""
    text = refusal(error, unit)
    path, colon, rest = text.partition(": ")
    plain = rest if colon and MEASURED_PATH.match(path) else text
    return f"{plain[:1].upper()}{plain[1:].rstrip('.')}."
