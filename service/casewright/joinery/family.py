"""The tails of a whole piece: every count and every pin width, row by row and all rows as one family.

The width of the pin is one for all rows, since one saw cut and one chisel make it; the number of tails is
each row's own. So a family is one width of the pin with the best, or the chosen, number for each row, and is
scored by the rows that stand in it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import fmean

from casewright.joinery.choose import LOOKS, Choice, Looks, Refusal, family_pitch, rank, refusals
from casewright.joinery.groove import Groove
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.making import quickly_made
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches, Number

USUAL_PINS: tuple[Sourced, ...] = tuple(sourced("pins").values())
"""The widths of a pin that are tried, from slender to plain, each with its ground [in]."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class BoardEnd:
    """The end of a board that carries tails.

    Attributes:
        height: its height [in]
        tail_length: from the end of the board to the baseline [in]
    """

    height: Inches
    tail_length: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class SetOut:
    """What every row of a piece shares when one of its joints is set out.

    Attributes:
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        slope: how far along for one across, 8 for 1:8
        side: thickness of the tail board [in]
        kerf: how wide the dovetail saw cuts [in]
        groove: the groove that the lowest tail must hide; None when there is none
        looks: what looks well, and the weights
        limits: what a joint is held to
    """

    half_pin: Inches
    pin: Inches
    slope: Number
    side: Inches
    kerf: Inches
    groove: Groove | None = None
    looks: Looks = LOOKS
    limits: Limits = LIMITS

    @property
    def least_pin(self) -> Inches:
        """The narrowest pin that the saw leaves room for [in]."""
        return max(self.limits.pin_least.value, self.kerf + self.limits.pin_over_kerf.value)

    def choices(
        self, end: BoardEnd, family: Inches | None = None, pin: Inches | None = None
    ) -> tuple[Choice, ...]:
        """The numbers of tails that pass on one end, best first.

        Args:
            end: the end
            family: the spacing of the piece's rows; None to leave it out of account [in]
            pin: another width of the pin; None for the one that is set out [in]

        Returns:
            The layouts, as `rank` gives them.

        Source: common practice; the weights are from memory.
        """
        return rank(
            end.height,
            self.side,
            end.tail_length,
            self.half_pin,
            self.pin if pin is None else pin,
            self.slope,
            self.kerf,
            groove=self.groove,
            family_pitch=family,
            looks=self.looks,
            limits=self.limits,
        )

    def refused(self, end: BoardEnd, pins: Iterable[Inches]) -> tuple[Refusal, ...]:
        """Why the other numbers of tails, and the other widths of the pin, do not pass on one end.

        Args:
            end: the end
            pins: the widths that were tried [in]

        Returns:
            One refusal for each number of tails up to the first that is too many, pin by pin; one alone for
            a pin that is too narrow for any.

        Source: common practice.
        """
        found: list[Refusal] = []
        for pin in pins:
            sizes = (end.height, self.side, end.tail_length, self.half_pin, pin, self.slope, self.kerf)
            said = refusals(*sizes, groove=self.groove, looks=self.looks, limits=self.limits)
            found += said if self.passes(pin) else said[:1]
        return tuple(found)

    def passes(self, pin: Inches) -> bool:
        """Whether a pin is wide enough for the saw and for the limits.

        Args:
            pin: the width [in]

        Returns:
            Whether it is.

        Source: common practice.
        """
        return pin >= self.least_pin - TOLERANCE


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One row of a piece, by the end on which its tails stand.

    Attributes:
        name: what it is called
        end: the end as it is now
        drawn: the end as it was drawn; it decides the family, so that a measured opening does not change the
            tails of rows that may already be cut
        tails: how many tails the maker wants; None to leave it to the looks
    """

    name: str
    end: BoardEnd
    drawn: BoardEnd
    tails: Count | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RowLayouts:
    """One row in a family.

    Attributes:
        row: the row
        choices: the numbers of tails that pass, best first, each scored within the family
        taken: the maker's own number, else the best; None where that does not pass
    """

    row: Row
    choices: tuple[Choice, ...]
    taken: Choice | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """All rows of a piece with one width of the pin.

    Attributes:
        pin: that width, at the end of the tails [in]
        pitch: the spacing that the rows share; None where no row has one of its own [in]
        rows: the rows, in their order
        refused: why some row cannot have this pin; empty when all can
    """

    pin: Inches
    pitch: Inches | None
    rows: tuple[RowLayouts, ...]
    refused: tuple[Refusal, ...]

    @property
    def score(self) -> Number:
        """The mean of the rows' scores, a row that has none counted as nothing [of 100]."""
        return fmean(row.taken.score if row.taken else 0.0 for row in self.rows)

    @property
    def worst(self) -> RowLayouts | None:
        """The row that costs the family most; None where none costs anything to speak of."""
        row = min(self.rows, key=lambda each: each.taken.score if each.taken else 0.0)
        return row if row.taken is None or row.taken.score < 100 - 0.05 else None


def shared_pitch(set_out: SetOut, ends: Iterable[BoardEnd], pin: Inches | None = None) -> Inches | None:
    """The spacing that the rows of a piece share: the median of what each would choose for itself.

    Args:
        set_out: how the joint is set out
        ends: one end of each row
        pin: another width of the pin; None for the one that is set out [in]

    Returns:
        The spacing; None where no row has a layout that passes [in]

    Source: common practice.
    """
    best = [found[0].pitch for end in ends if (found := set_out.choices(end, pin=pin))]
    return family_pitch(tuple(best)) if best else None


def tried_pins(set_out: SetOut, pins: Sequence[Sourced] = USUAL_PINS) -> tuple[Inches, ...]:
    """The widths of the pin that are worth trying: the one that is set out, and the usual ones.

    Args:
        set_out: how the joint is set out
        pins: the usual widths

    Returns:
        Each width once, the one that is set out first [in]

    Source: common practice.
    """
    return tuple(dict.fromkeys((set_out.pin, *(each.value for each in pins))))


def families(
    set_out: SetOut, rows: Sequence[Row], pins: Sequence[Inches] | None = None
) -> tuple[Family, ...]:
    """Every width of the pin with all rows laid out by it, the best looking family first.

    Args:
        set_out: how the joint is set out
        rows: the rows of the piece
        pins: the widths of the pin to be tried; None for the one that is set out and the usual ones [in]

    Returns:
        One family for each width that the saw leaves room for: those in which every row passes first, each
        kind by its score; of equals the one whose pin stands first in `pins`.

    Raises:
        ValueError: there are no rows.

    Source: common practice; the weights are from memory.
    """
    if not rows:
        raise ValueError("A piece without a row of drawers has no family.")
    widths = tried_pins(set_out) if pins is None else tuple(pins)
    found = [_family(set_out, rows, pin) for pin in widths if set_out.passes(pin)]
    return tuple(sorted(found, key=lambda each: (bool(each.refused), -each.score)))


def row_choices(found: Sequence[Family], number: Count) -> tuple[Choice, ...]:
    """Every number of tails with every width of the pin that one row could have, the best looking first.

    Args:
        found: the families
        number: which row, counted from nought

    Returns:
        The layouts, each scored within the family of its pin; of equals the one with fewer tails first.

    Source: common practice; the weights are from memory.
    """
    every = (choice for family in found for choice in family.rows[number].choices)
    return tuple(sorted(every, key=lambda choice: (-choice.score, choice.count)))


def _family(set_out: SetOut, rows: Sequence[Row], pin: Inches) -> Family:
    pitch = shared_pitch(set_out, (row.drawn for row in rows), pin)
    laid_out = tuple(_row(set_out, row, pitch, pin) for row in rows)
    refused = tuple(_refusal(each, set_out, pin) for each in laid_out if each.taken is None)
    return Family(pin=pin, pitch=pitch, rows=laid_out, refused=refused)


def _row(set_out: SetOut, row: Row, pitch: Inches | None, pin: Inches) -> RowLayouts:
    choices = set_out.choices(row.end, pitch, pin)
    wanted = (each for each in choices if row.tails in (None, each.count))
    return RowLayouts(row=row, choices=choices, taken=next(wanted, None))


def _refusal(laid_out: RowLayouts, set_out: SetOut, pin: Inches) -> Refusal:
    """Why a row has no layout in a family: the reason against its own number, or against the first."""
    row = laid_out.row
    refused = set_out.refused(row.end, [pin])
    why = next((each for each in refused if each.count == row.tails), refused[-1])
    return Refusal(count=row.tails or why.count, pin=pin, why=say("{}: {}", row.name, why.why))
