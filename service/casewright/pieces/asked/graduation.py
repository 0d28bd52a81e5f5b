"""Graduated drawers: opening heights that grow towards the floor by a rule.

Heights are worked out exactly, then each is rounded to 1/16 in and what rounding leaves goes into the bottom
opening, where a sixteenth is never seen.
"""

from collections.abc import Sequence
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import near_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches, Number
from casewright.pieces.asked.fields import Length, Size, Spec

SIXTEENTH = 1 / 16
HEADROOM = 0.5
"""Above the contents of a drawer (common practice) [in]."""
LARGEST_RATIO = 10.0


class CannotGraduate(ValueError):
    """The rule gives no row heights that can be made; the message says what would."""


class Equal(Spec):
    """All openings alike."""

    rule: Literal["equal"] = Field(description="All openings alike.", examples=["equal"])


class Step(Spec):
    """Each opening taller than the one above by the same step."""

    rule: Literal["step"] = Field(description="The same step from row to row.", examples=["step"])
    step: Length | None = Field(
        None,
        ge=0,
        le=24,
        description="The step. Left out with no first opening: the thickness of a divider (common practice).",
        examples=["3/4"],
    )
    first: Size | None = Field(None, description="The top opening; the step follows from it.", examples=["6"])

    @model_validator(mode="after")
    def one_of_them(self) -> Self:
        if self.step is not None and self.first is not None:
            raise PydanticCustomError(
                "step", "give the step or the first opening, not both: the other follows", {}
            )
        return self


class Ratio(Spec):
    """Each opening taller than the one above by the same ratio."""

    rule: Literal["ratio"] = Field(description="The same ratio from row to row.", examples=["ratio"])
    ratio: float | None = Field(None, ge=1, le=3, description="The ratio.", examples=[1.12])
    first: Size | None = Field(
        None, description="The top opening; the ratio follows from it.", examples=["5-1/2"]
    )
    on: Literal["opening", "pitch"] = Field(
        "opening",
        description="Does the ratio hold for openings, or for opening and divider together?",
        examples=["pitch"],
    )

    @model_validator(mode="after")
    def one_of_them(self) -> Self:
        if (self.ratio is None) == (self.first is None):
            raise PydanticCustomError(
                "ratio", "give either the ratio (such as 1.12) or the first opening", {}
            )
        if self.first is not None and self.on == "pitch":
            raise PydanticCustomError("ratio", "a ratio on the pitch is given as a ratio, such as 1.12", {})
        return self


class Roots(Spec):
    """Openings as the square roots of whole numbers in a row."""

    rule: Literal["roots"] = Field(description="As square roots of consecutive numbers.", examples=["roots"])
    start: int = Field(1, ge=1, le=100, description="The first number: 1 gives 1, √2, √3 …", examples=[4])


class Contents(Spec):
    """Each opening as tall as its contents need, and the spare shared out."""

    rule: Literal["contents"] = Field(description="By what goes in.", examples=["contents"])
    spare: Literal["equal", "proportion"] = Field(
        "equal",
        description="Is the spare height shared equally, or in proportion to the need?",
        examples=["equal"],
    )


Graduation = Annotated[Equal | Step | Ratio | Roots | Contents, Field(discriminator="rule")]


def equal_opening(total: Inches, count: Count) -> Inches:
    """The height of each opening when all are alike.

    Rule: total / count

    Args:
        total: all opening heights added up [in]
        count: how many openings share it

    Returns:
        The height of one [in]

    Source: arithmetic.
    """
    return total / count


def first_by_step(total: Inches, count: Count, step: Inches) -> Inches:
    """The top opening when each is taller than the one above by a step.

    Rule: (total - step × count × (count - 1) / 2) / count

    Args:
        total: all opening heights added up [in]
        count: how many openings share it
        step: growth from row to row [in]

    Returns:
        The height of the top opening [in]

    Source: sum of an arithmetic series.
    """
    return (total - step * count * (count - 1) / 2) / count


def step_by_first(total: Inches, count: Count, first: Inches) -> Inches:
    """The step from row to row when the top opening is given.

    Rule: 2 × (total - count × first) / (count × (count - 1))

    Args:
        total: all opening heights added up [in]
        count: how many openings share it; two or more
        first: height of the top opening [in]

    Returns:
        The step [in]

    Source: sum of an arithmetic series.
    """
    return 2 * (total - count * first) / (count * (count - 1))


def first_by_ratio(total: Inches, count: Count, ratio: Number) -> Inches:
    """The top opening when each is taller than the one above by a ratio.

    Rule: total × (ratio - 1) / (ratio ^ count - 1)

    Args:
        total: all opening heights added up [in]
        count: how many openings share it
        ratio: growth from row to row

    Returns:
        The height of the top opening [in]

    Source: sum of a geometric series.
    """
    if abs(ratio - 1) < 1e-12:
        return total / count
    return total * (ratio - 1) / (ratio**count - 1)


def ratio_by_first(total: Inches, count: Count, first: Inches) -> Number:
    """The ratio from row to row when the top opening is given.

    Rule: the ratio for which first × (ratio ^ count - 1) / (ratio - 1) = total

    Args:
        total: all opening heights added up [in]
        count: how many openings share it; two or more
        first: height of the top opening [in]

    Returns:
        The ratio, found by halving the interval

    Raises:
        CannotGraduate: no ratio between 1 and 10 gives that total

    Source: sum of a geometric series, solved by bisection.
    """
    low, high = 1.0, LARGEST_RATIO
    if first * count > total + 1e-9 or first_by_ratio(total=total, count=count, ratio=high) > first:
        raise CannotGraduate(
            say(
                "no ratio fills {} with {:d} openings that grow from {:bare}; "
                "make the first opening {:down bare} or less",
                total,
                count,
                first,
                total / count,
            )
        )
    for _ in range(200):
        middle = (low + high) / 2
        if first_by_ratio(total=total, count=count, ratio=middle) > first:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def contents_need(contents: Inches, build_up: Inches, headroom: Inches) -> Inches:
    """The least opening that holds what goes in.

    Rule: contents + build_up + headroom

    Args:
        contents: height of what goes in [in]
        build_up: the drawer bottom and what is below it [in]
        headroom: left above the contents [in]

    Returns:
        The least height of the opening [in]

    Source: common practice.
    """
    return contents + build_up + headroom


def locked_height(value: Inches) -> Inches:
    """An opening that was locked: it is what was typed.

    Rule: value

    Args:
        value: the height that was typed [in]

    Returns:
        The same height [in]

    Source: the unit file.
    """
    return value


def rounded_openings(heights: Sequence[Inches], total: Inches) -> tuple[Inches, ...]:
    """Heights rounded to 1/16 in, with what rounding leaves put into the bottom opening.

    Args:
        heights: exact heights, from the top down [in]
        total: what they must add up to [in]

    Returns:
        Heights that add up to the total [in]

    Source: common practice: a sixteenth is least seen in the deepest drawer.
    """
    upper = [near_to(height, SIXTEENTH) for height in heights[:-1]]
    return (*upper, total - sum(upper))


def graduated(
    rule: Equal | Step | Ratio | Roots,
    total: Inches,
    count: int,
    divider: Inches,
    ledger: Ledger = UNKEPT,
) -> tuple[float, ...]:
    """Exact opening heights by a rule, from the top down.

    Args:
        rule: how the openings grow
        total: all opening heights added up [in]
        count: how many openings share it
        divider: thickness of a divider, for the default step and for ratios on the pitch [in]
        ledger: keeps the working

    Returns:
        One height for each row [in]

    Raises:
        CannotGraduate: an opening would vanish, or no ratio fits

    Source: arithmetic and geometric series.
    """
    if isinstance(rule, Roots):
        roots = [(rule.start + index) ** 0.5 for index in range(count)]
        heights = tuple(total * root / sum(roots) for root in roots)
    elif isinstance(rule, Step):
        first, step = _first_and_step(rule, total, count, divider, ledger)
        heights = tuple(first + index * step for index in range(count))
    elif isinstance(rule, Ratio):
        heights = _by_ratio(rule, total, count, divider, ledger)
    else:
        heights = (ledger.take("opening", equal_opening, total=total, count=count),) * count
    if min(heights) <= 0:
        raise CannotGraduate(
            say("{:d} openings in {} leave nothing for the smallest; use a smaller step", count, total)
        )
    return heights


def _first_and_step(
    rule: Step, total: Inches, count: int, divider: Inches, ledger: Ledger
) -> tuple[float, float]:
    if rule.first is None:
        step = divider if rule.step is None else rule.step
        return ledger.take("first", first_by_step, total=total, count=count, step=step), step
    if count == 1:
        return total, 0.0
    return rule.first, ledger.take("step", step_by_first, total=total, count=count, first=rule.first)


def _by_ratio(rule: Ratio, total: Inches, count: int, divider: Inches, ledger: Ledger) -> tuple[float, ...]:
    extra = divider if rule.on == "pitch" else 0.0
    ratio = rule.ratio
    if ratio is None:
        if count == 1:
            return (total,)
        ratio = ledger.take("ratio", ratio_by_first, total=total, count=count, first=rule.first or 0.0)
    first = ledger.take("first", first_by_ratio, total=total + count * extra, count=count, ratio=ratio)
    return tuple(first * ratio**index - extra for index in range(count))


def by_contents(rule: Contents, needs: Sequence[Inches], total: Inches) -> tuple[float, ...]:
    """Exact opening heights that hold the contents, from the top down.

    Args:
        rule: how the spare height is shared
        needs: the least height of each opening [in]
        total: all opening heights added up [in]

    Returns:
        One height for each row [in]

    Raises:
        CannotGraduate: the contents need more than there is

    Source: common practice.
    """
    spare = total - sum(needs)
    if spare < -1e-9:
        raise CannotGraduate(
            say(
                "the contents need {} of openings and there are {:bare}; make the case {:up} taller",
                sum(needs),
                total,
                -spare,
            )
        )
    if rule.spare == "equal":
        return tuple(need + spare / len(needs) for need in needs)
    return tuple(need * total / sum(needs) for need in needs)
