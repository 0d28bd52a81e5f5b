"""The heights of the rows of a stack: locked ones as typed, the others by the rule of graduation."""

from dataclasses import dataclass
from functools import partial
from itertools import cycle

from casewright.measure.ledger import Figure, Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import FullOverlay
from casewright.pieces.asked.graduation import (
    HEADROOM,
    CannotGraduate,
    Contents,
    Graduation,
    Ratio,
    Roots,
    Step,
    by_contents,
    contents_need,
    graduated,
    rounded_openings,
)
from casewright.pieces.asked.layout_spec import Row
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.least_rows import refuse_too_many_rows
from casewright.pieces.rules.front_rules import all_fronts, opening_behind

USUAL_STEP = 3 / 4
"""The step where none is typed and no divider lies between the rows (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StackAsked:
    """The rows of a stack as they were asked for.

    Attributes:
        spec: what the maker chose
        rows: from the top down
        graduation: how they grow
        code: that of its column, such as `R2-1`; empty for the whole face
        path: where the rows stand in the unit file, such as `rows` or `rows.2.across.1.rows`
        ledger: keeps the working
    """

    spec: UnitSpec
    rows: tuple[Row, ...]
    graduation: Graduation
    code: str
    path: str
    ledger: Ledger

    @property
    def figures(self) -> str:
        """Under which name the working of its graduation is kept."""
        return f"{self.code}.graduation" if self.code else "graduation"

    def row_code(self, number: int) -> str:
        """The code of a row, counted from one."""
        return f"{self.code}-{number}" if self.code else f"R{number}"


def row_words(code: str) -> str:
    """A row or a column by its code, in words.

    Args:
        code: such as `R2`, `R2-1`, or `R2-1-3`

    Returns:
        Such as “row 2, column 1, row 3”.

    Source: the unit file.
    """
    steps = zip(code.removeprefix("R").split("-"), cycle(("row", "column")), strict=False)
    return ", ".join(f"{kind} {number}" for number, kind in steps)


def row_heights(asked: StackAsked, total: Inches) -> tuple[Inches, ...]:
    """The designed opening heights of a stack: locked rows as typed, the others by the rule.

    Args:
        asked: the rows
        total: all opening heights added up [in]

    Returns:
        One height for each row, from the top down [in]

    Raises:
        CannotGraduate: no heights can be made of what was given; in a column, named by its path

    Source: common practice; what rounding leaves goes to the lowest row.
    """
    style = _set_out_by(asked)
    heights = _heights if style is None else partial(_by_the_fronts, style)
    if not asked.code:
        return heights(asked, total)
    refuse_too_many_rows(asked.rows, asked.spec.drawers, total, row_words(asked.code), total)
    try:
        return heights(asked, total)
    except CannotGraduate as refused:
        raise CannotGraduate(say("{}: {}", row_words(asked.code), refused.args[0])) from None


def _set_out_by(asked: StackAsked) -> FullOverlay | None:
    """The fronts before the case that set out its rows, as nothing lies between them; else None."""
    style = asked.spec.drawers.style
    if asked.spec.frame.divider or isinstance(asked.graduation, Contents):
        return None
    return style if isinstance(style, FullOverlay) else None


def _by_the_fronts(style: FullOverlay, asked: StackAsked, total: Inches) -> tuple[Inches, ...]:
    """Openings behind fronts that grow by the rule, from the middle of one gap between them to the next."""
    frame = asked.spec.frame
    fronts = _heights(
        asked,
        asked.ledger.take(
            f"{asked.figures}.fronts",
            all_fronts,
            face=total + frame.upper + frame.lower,
            edge=style.edge,
            gap=style.gap,
            count=len(asked.rows),
        ),
    )
    half = style.gap / 2
    above = [style.edge - frame.upper, *(half for _ in fronts[1:])]
    below = [*(half for _ in fronts[1:]), style.edge - frame.lower]
    found = [
        asked.ledger.take(
            f"{asked.figures}.opening_{number}", opening_behind, front=front, above=over, below=under
        )
        for number, (front, over, under) in enumerate(zip(fronts, above, below, strict=True), start=1)
    ]
    # What rounding the fronts left goes to the lowest opening, too.
    return (*found[:-1], total - sum(found[:-1]))


def _heights(asked: StackAsked, total: Inches) -> tuple[Inches, ...]:
    rows = asked.rows
    free = [index for index, row in enumerate(rows) if row.height is None]
    left = total - sum(row.height for row in rows if row.height is not None)
    if not free:
        if abs(left) > 1e-6:
            raise CannotGraduate(
                say("the rows add up to {} of {:bare}; leave one height out", total - left, total)
            )
        return tuple(row.height or 0.0 for row in rows)
    if left <= 0:
        raise CannotGraduate(
            say(
                "the locked rows take {} of {:bare} and leave the others nothing; lower one of them",
                total - left,
                total,
            )
        )
    exact = _by_rule(asked, free, left)
    for place, (index, height) in enumerate(zip(free, exact, strict=True)):
        asked.ledger.given(f"{asked.figures}.row_{index + 1}", height, _grown(asked, place), Inches)
    heights = iter(rounded_openings(exact, left))
    chosen = tuple(next(heights) if row.height is None else row.height for row in rows)
    if min(chosen) <= 0:
        raise CannotGraduate(
            f"rounding leaves no opening in row {chosen.index(min(chosen)) + 1}; use fewer rows"
        )
    return chosen


def _grown(asked: StackAsked, place: int) -> str:
    """How the exact height of a row comes about, in words that name the figures to ask for next."""
    rule, named = asked.graduation, asked.figures
    total = "opening_total" if not asked.code else f"{asked.code}.opening_total"
    if _set_out_by(asked):
        total = f"{named}.fronts"
    if isinstance(rule, Step):
        return f"the first opening and {place} steps: figures {named}.first and {named}.step"
    if isinstance(rule, Ratio):
        return f"the first opening × the ratio, {place} times: figures {named}.first and {named}.ratio"
    if isinstance(rule, Roots):
        return f"in proportion to the square root of {rule.start + place}, out of figure {total}"
    if isinstance(rule, Contents):
        return f"what its contents need and its share of the spare: figures {named}.need_…, {total}"
    return f"see figure {named}.opening"


def _by_rule(asked: StackAsked, free: list[int], left: float) -> tuple[float, ...]:
    """Exact heights of the rows that are not locked."""
    rule, under = asked.graduation, asked.ledger.under(asked.figures)
    if not isinstance(rule, Contents):
        divider = asked.spec.frame.divider
        if isinstance(rule, Step) and not divider:
            divider = under.given("divider", USUAL_STEP, "the usual step, as nothing lies between", Inches)
        return graduated(rule, left, len(free), divider, under)
    groove = asked.spec.drawers.groove
    needs = []
    for index in free:
        row = asked.rows[index]
        if row.contents is None:
            raise CannotGraduate(
                f"row {index + 1} does not say how tall its contents are; add contents, such as 4-1/2"
            )
        needs.append(
            under.take(
                f"need_{index + 1}",
                contents_need,
                contents=row.contents,
                build_up=groove.height + groove.width if row.drawers else 0.0,
                headroom=HEADROOM,
            )
        )
    return by_contents(rule, needs, left)


def origin_of(asked: StackAsked, number: int, size: Inches) -> Words:
    """Where a size of an opening comes from, in words that name the figures to ask for next.

    Args:
        asked: the rows
        number: which of them, counted from one
        size: the size; where it is a figure itself, that is named [in]

    Returns:
        The words.

    Source: the unit file.
    """
    if isinstance(size, Figure):
        return f"see figure {size.name}"
    if asked.rows[number - 1].height is not None:
        return f"see figure {asked.path}.{number}.height"
    return say(
        "see figure {}.row_{:d}, rounded to {}; what rounding leaves goes to the lowest row",
        asked.figures,
        number,
        1 / 16,
    )
