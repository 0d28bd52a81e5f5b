"""One row of a unit at one end of its sides, with every layout that it could have, and its family."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from casewright.joinery.choose import Choice
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.family import Family, SetOut, row_choices, tried_pins
from casewright.joinery.layout import TailLayout
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding
from casewright.measure.saying import Words
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.layout_spec import with_row
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.layouts import DrawerEnd, laid_out_with, set_out_of, tail_end, unit_families

Dovetail = HalfBlindJoint | ThroughJoint


@dataclass(frozen=True, slots=True, kw_only=True)
class Own:
    """A layout as the maker types it.

    Attributes:
        tails: the number of tails
        pin: the width of the pin [in]
    """

    tails: Count
    pin: Inches


@dataclass(frozen=True, kw_only=True)
class Sight:
    """One row at one end of its sides.

    Attributes:
        built: the unit
        row: the mark of the row, such as `5` or `2-1-3`
        end: which end of the sides
        own: what is typed; None where nothing is
    """

    built: Construction
    row: str
    end: DrawerEnd
    own: Own | None = None

    @cached_property
    def drawers(self) -> tuple[Drawer, ...]:
        """The drawers of the row; the first stands for all when layouts are ranked."""
        return tuple(each for each in self.built.drawers if each.sizes.opening.row_mark == self.row)

    @cached_property
    def marks(self) -> tuple[str, ...]:
        """The marks of every row that has drawers, from the top."""
        return marks_of(self.built)

    @cached_property
    def set_out(self) -> SetOut:
        """What all rows share at this end."""
        return set_out_of(self.built.drawers, self.end)

    @property
    def codes(self) -> tuple[str, ...]:
        """The codes of the row's drawers."""
        return tuple(each.code for each in self.drawers)

    @property
    def layout(self) -> TailLayout:
        """The layout as it is."""
        return self.joint_of(self.drawers[0]).layout

    @property
    def pin(self) -> Inches:
        """The pin that is looked at: as typed, else as it is [in]."""
        return self.own.pin if self.own else self.set_out.pin

    def joint_of(self, drawer: Drawer) -> Dovetail:
        """The joint of a drawer at this end."""
        joint = drawer.joints.front if self.end is DrawerEnd.FRONT else drawer.joints.back
        if not isinstance(joint, HalfBlindJoint | ThroughJoint):
            raise ValueError(f"{drawer.code} has no dovetails there.")  # its page is not found before this
        return joint

    @cached_property
    def families(self) -> tuple[Family, ...]:
        """All rows, for every width of the pin, with what is typed for this one."""
        pins = dict.fromkeys((*tried_pins(self.set_out), self.pin))
        return unit_families(self._spec(), self.built.drawers, self.end, tuple(pins))

    @property
    def family(self) -> Family | None:
        """All rows with the pin that is looked at; None where the saw leaves no room for it."""
        return next((each for each in self.families if same(each.pin, self.pin)), None)

    @cached_property
    def choices(self) -> tuple[Choice, ...]:
        """Every layout of the row that passes, best first."""
        return row_choices(self.families, self.marks.index(self.row))

    def choice(self, tails: Count, pin: Inches) -> Choice | None:
        """A layout with its score; None where it does not pass."""
        return next((each for each in self.choices if each.count == tails and same(each.pin, pin)), None)

    def joints(self, tails: Count, pin: Inches) -> tuple[Dovetail, ...]:
        """The joints of the row's drawers with a layout.

        Raises:
            CannotBeLaidOut: one of them has no room for it
        """
        return tuple(laid_out_with(each, self.end, tails, pin) for each in self.drawers)

    def findings(self, tails: Count, pin: Inches) -> tuple[Finding, ...]:
        """Every check of the row's joints with a layout."""
        return tuple(each for joint in self.joints(tails, pin) for each in joint.findings)

    def why_not(self, tails: Count, pin: Inches) -> Words:
        """Why a layout does not pass; empty where it does."""
        refused = self.set_out.refused(tail_end(self.drawers[0], self.end), [pin])
        if not refused or self.choice(tails, pin):
            return ""
        return next((each.why for each in refused if each.count == tails), refused[-1].why)

    def refused(self) -> Iterator[tuple[Words, Count, list[Inches]]]:
        """Why other numbers of tails, and other pins, do not pass: the reason, the number, and the pins."""
        pins = dict.fromkeys((*tried_pins(self.set_out), self.pin))
        found: dict[tuple[str, Count], tuple[Words, list[Inches]]] = {}
        for each in self.set_out.refused(tail_end(self.drawers[0], self.end), pins):
            found.setdefault((str(each.why), each.count), (each.why, []))[1].append(each.pin)
        for (_, count), (why, for_pins) in sorted(found.items(), key=lambda item: item[0][1]):
            yield why, count, for_pins

    def family_layouts(self) -> Iterator[tuple[str, TailLayout, float | None]]:
        """Each row with the pin that is looked at: its mark, its layout, and its score if it passes."""
        scores = [row.taken for row in self.family.rows] if self.family else []
        first = (each for each in self.built.drawers if each.sizes.opening.is_first)
        for place, drawer in enumerate(first):
            mark = drawer.sizes.opening.row_mark
            taken = scores[place] if scores else None
            count = self.joint_of(drawer).layout.count if taken is None else taken.count
            if self.own and mark == self.row:
                count = self.own.tails
            try:
                layout = laid_out_with(drawer, self.end, count, self.pin).layout
            except REFUSALS:  # what the family says of this row tells why
                continue
            yield mark, layout, taken.score if taken else None

    def _spec(self) -> UnitSpec:
        """The choices with the number of tails that is typed, which is all that the ranking asks of them."""
        spec = self.built.spec
        if self.own is None:
            return spec
        rows = with_row(spec.rows, self.row, {self.end.tails_name: self.own.tails})
        return spec.model_copy(update={"rows": rows})


def marks_of(built: Construction) -> tuple[str, ...]:
    """The marks of every row that has drawers, from the top."""
    return tuple(each.sizes.opening.row_mark for each in built.drawers if each.sizes.opening.is_first)


def same(one: Inches, other: Inches) -> bool:
    """Whether two widths are one, but for what is lost when a size is written down and read again."""
    return abs(one - other) < 1e-6 + TOLERANCE
