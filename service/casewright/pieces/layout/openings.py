"""The face of the case: its rows and columns, and the opening that each drawer goes into."""

from dataclasses import dataclass

from casewright.measure.ledger import Figure, Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.graduation import (
    HEADROOM,
    CannotGraduate,
    Contents,
    Equal,
    Ratio,
    Roots,
    Step,
    by_contents,
    contents_need,
    graduated,
    rounded_openings,
)
from casewright.pieces.asked.measured import MeasuredOpening
from casewright.pieces.asked.spec import Row, UnitSpec
from casewright.pieces.layout.heights import plan_heights
from casewright.pieces.rules import case_rules as rules
from casewright.pieces.rules import leg_rules


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """The hole that one drawer goes into.

    Attributes:
        code: row and position, such as `R5-1`
        row: from the top, starting with 1
        column: from the left, starting with 1
        left: left edge, from the outside of the left case side [in]
        bottom: lower edge, from the underside of the case bottom [in]
        width: clear width; measured where it was [in]
        height: clear height; measured where it was [in]
        depth: front edge of the case to the back; measured where it was [in]
        designed_width: as it was drawn [in]
        designed_height: as it was drawn [in]
        designed_depth: as it was drawn [in]
        measured: the names of the sizes that were measured
    """

    code: str
    row: int
    column: int
    left: float
    bottom: float
    width: float
    height: float
    depth: float
    designed_width: float
    designed_height: float
    designed_depth: float
    measured: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceRow:
    """One row: its designed height, its openings, and the uprights between them.

    Attributes:
        number: from the top, starting with 1
        bottom: lower edge of the openings, from the underside of the case bottom [in]
        height: designed height of the openings [in]
        openings: from left to right
        uprights: left edge of each upright, from the outside of the left case side [in]
    """

    number: int
    bottom: float
    height: float
    openings: tuple[Opening, ...]
    uprights: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """The heights and widths that everything else hangs on.

    Attributes:
        body_height: height of the case body [in]
        base_height: height of the base [in]
        overall_height: floor to the upper face of the top [in]
        opening_total: all opening heights of a column added up [in]
        clear_width: width between the case sides [in]
        opening_depth: designed depth of every opening [in]
        rows: from the top down
    """

    body_height: float
    base_height: float
    overall_height: float
    opening_total: float
    clear_width: float
    opening_depth: float
    rows: tuple[FaceRow, ...]

    @property
    def openings(self) -> tuple[Opening, ...]:
        """All openings, row by row from the top, each row from the left."""
        return tuple(opening for row in self.rows for opening in row.openings)

    def divider_tops(self, divider: float) -> tuple[float, ...]:
        """The upper edge of each divider, from the underside of the case bottom, lowest first [in]."""
        return tuple(row.bottom for row in reversed(self.rows[:-1]) if divider)


def plan_face(spec: UnitSpec, ledger: Ledger) -> Face:
    """Works out heights, rows and columns of a unit.

    Args:
        spec: what the maker chose
        ledger: keeps the working

    Returns:
        The face of the case.

    Raises:
        CannotGraduate: no row heights or column widths can be made of what was given

    Source: geometry of the case.
    """
    heights = plan_heights(spec, ledger)
    row_heights = _row_heights(spec, heights.opening_total, ledger)
    clear = ledger.take("clear_width", rules.clear_width, width=spec.body.width, side=spec.frame.side)
    depth = _depth(spec, ledger)
    rows = []
    bottom = spec.frame.lower + heights.opening_total + (len(spec.rows) - 1) * spec.frame.divider
    for number, (row, height) in enumerate(zip(spec.rows, row_heights, strict=True), start=1):
        bottom -= height
        rows.append(_row(spec, row, number, bottom, height, clear, depth, ledger))
        bottom -= spec.frame.divider
    return Face(
        body_height=heights.body,
        base_height=heights.base,
        overall_height=heights.overall,
        opening_total=heights.opening_total,
        clear_width=clear,
        opening_depth=depth,
        rows=tuple(rows),
    )


def _depth(spec: UnitSpec, ledger: Ledger) -> Inches:
    """The depth of the openings: to the back boards, or to the back apron."""
    legs = spec.legs
    if legs is None:
        return ledger.take(
            "opening_depth", rules.opening_depth, depth=spec.body.depth, back=spec.back.thickness
        )
    return ledger.take(
        "opening_depth",
        leg_rules.depth_to_apron,
        depth=spec.body.depth,
        setback=legs.setback,
        apron=legs.apron,
    )


def _row_heights(spec: UnitSpec, total: float, ledger: Ledger) -> tuple[float, ...]:
    """The designed opening heights: locked rows as typed, the others by the rule."""
    free = [index for index, row in enumerate(spec.rows) if row.height is None]
    left = total - sum(row.height for row in spec.rows if row.height is not None)
    if not free:
        if abs(left) > 1e-6:
            raise CannotGraduate(
                say("the rows add up to {} of {:bare}; leave one height out", total - left, total)
            )
        return tuple(row.height or 0.0 for row in spec.rows)
    if left <= 0:
        raise CannotGraduate(
            say(
                "the locked rows take {} of {:bare} and leave the others nothing; lower one of them",
                total - left,
                total,
            )
        )
    exact = _by_rule(spec, free, left, ledger)
    for place, (index, height) in enumerate(zip(free, exact, strict=True)):
        ledger.given(f"graduation.row_{index + 1}", height, _grown(spec.graduation, place), Inches)
    heights = iter(rounded_openings(exact, left))
    chosen = tuple(next(heights) if row.height is None else row.height for row in spec.rows)
    if min(chosen) <= 0:
        raise CannotGraduate(
            f"rounding leaves no opening in row {chosen.index(min(chosen)) + 1}; use fewer rows"
        )
    return chosen


def _grown(rule: Equal | Step | Ratio | Roots | Contents, place: int) -> str:
    """How the exact height of a row comes about, in words that name the figures to ask for next."""
    if isinstance(rule, Step):
        return f"the first opening and {place} steps: figures graduation.first and graduation.step"
    if isinstance(rule, Ratio):
        return f"the first opening × the ratio, {place} times: figures graduation.first and graduation.ratio"
    if isinstance(rule, Roots):
        return f"in proportion to the square root of {rule.start + place}, out of figure opening_total"
    if isinstance(rule, Contents):
        return "what its contents need and its share of the spare: figures graduation.need_…, opening_total"
    return "see figure graduation.opening"


def _by_rule(spec: UnitSpec, free: list[int], left: float, ledger: Ledger) -> tuple[float, ...]:
    """Exact heights of the rows that are not locked."""
    rule, under = spec.graduation, ledger.under("graduation")
    if not isinstance(rule, Contents):
        return graduated(rule, left, len(free), spec.frame.divider, under)
    groove = spec.drawers.groove
    needs = []
    for index in free:
        contents = spec.rows[index].contents
        if contents is None:
            raise CannotGraduate(
                f"row {index + 1} does not say how tall its contents are; add contents, such as 4-1/2"
            )
        needs.append(
            under.take(
                f"need_{index + 1}",
                contents_need,
                contents=contents,
                build_up=groove.height + groove.width,
                headroom=HEADROOM,
            )
        )
    return by_contents(rule, needs, left)


def _row(
    spec: UnitSpec,
    row: Row,
    number: int,
    bottom: float,
    height: float,
    clear: float,
    depth: float,
    ledger: Ledger,
) -> FaceRow:
    """One row of openings, with what was measured of them."""
    left = spec.frame.side
    openings, uprights = [], []
    widths = _column_widths(spec, row, number, clear, ledger)
    for column, width in enumerate(widths, start=1):
        openings.append(_opening(spec, number, column, left, bottom, width, height, depth, ledger))
        left += width
        if column < len(widths):
            uprights.append(left)
            left += spec.frame.upright
    return FaceRow(
        number=number, bottom=bottom, height=height, openings=tuple(openings), uprights=tuple(uprights)
    )


def _column_widths(spec: UnitSpec, row: Row, number: int, clear: float, ledger: Ledger) -> tuple[float, ...]:
    """The opening widths of a row: typed ones as they are, the others sharing what is left."""
    typed = row.column_widths
    if spec.legs and len(typed) > 1:
        raise CannotGraduate(
            say(
                "row {:d} has {:d} drawers side by side; on legs and aprons a row has one drawer in its "
                "column: choose a carcase, or one drawer",
                number,
                len(typed),
            )
        )
    if typed == (None,):
        return (clear,)
    fixed = sum(width for width in typed if width is not None)
    shared = sum(1 for width in typed if width is None)
    left = clear - (len(typed) - 1) * spec.frame.upright - fixed
    if shared == 0:
        if abs(left) > 1e-6:
            raise CannotGraduate(
                say(
                    "the widths of row {:d} and its uprights add up to {} but the case "
                    "is {:bare} wide inside; leave one width out (null)",
                    number,
                    clear - left,
                    clear,
                )
            )
        return tuple(width or 0.0 for width in typed)
    if left / shared < 1:
        raise CannotGraduate(
            say("row {:d} leaves {} for a drawer; use fewer columns", number, max(0.0, left / shared))
        )
    width = ledger.take(
        f"R{number}.column_width",
        rules.column_width,
        clear=clear,
        upright=spec.frame.upright,
        columns=len(typed),
        fixed=fixed,
        shared=shared,
    )
    return tuple(width if typed_width is None else typed_width for typed_width in typed)


NOT_MEASURED = MeasuredOpening()


def _opening(
    spec: UnitSpec,
    number: int,
    column: int,
    left: float,
    bottom: float,
    width: float,
    height: float,
    depth: float,
    ledger: Ledger,
) -> Opening:
    """One opening; a measured size takes the place of the designed one."""
    code = f"R{number}-{column}"
    under = ledger.under(code)
    found = spec.measured.openings.get(code, NOT_MEASURED)
    sizes = {}
    for name, designed in (("height", height), ("width", width), ("depth", depth)):
        value = getattr(found, name)
        if value is not None and not designed / 2 < value < designed * 2:
            raise CannotGraduate(
                say(
                    "measured.openings.{}.{}: {} is far from the {:bare} that "
                    "was drawn; measure again, or change the design",
                    code,
                    name,
                    value,
                    designed,
                )
            )
        basis = _origin(spec, number, designed if value is None else value)
        sizes[name] = under.given(f"opening_{name}", designed if value is None else value, basis)
    return Opening(
        code=code,
        row=number,
        column=column,
        left=left,
        bottom=bottom,
        designed_width=width,
        designed_height=height,
        designed_depth=depth,
        measured=tuple(name for name in sizes if getattr(found, name) is not None),
        **sizes,
    )


def _origin(spec: UnitSpec, number: int, size: float) -> Words:
    """Where a size of an opening comes from, in words that name the figures to ask for next."""
    if isinstance(size, Figure):
        return f"see figure {size.name}"
    if spec.rows[number - 1].height is not None:
        return f"see figure rows.{number}.height"
    return say(
        "see figure graduation.row_{:d}, rounded to {}; what rounding leaves goes to the lowest row",
        number,
        1 / 16,
    )
