"""Sizes from the bench put into a unit's choices, and which sizes the bench is asked for."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from math import inf

from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.measured import Measured, MeasuredOpening, MeasuredPart
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import INNER_BACK, INNER_SIDES, CannotBuild

Sizes = Mapping[str, Mapping[str, Inches]]
"""Sizes by what they are measured on, then by their names [in]."""
OPENING = "opening"


@dataclass(frozen=True, slots=True, kw_only=True)
class Measurable:
    """One size that the bench is asked for.

    Attributes:
        size: its name in a tap at the bench, such as `SL.thickness` or `opening.height`
        path: its place in the unit file below `measured`, such as `parts.R5-1-SL.thickness`
        label: what it is, in words
        designed: what it should be [in]
        found: what was measured last; None where nothing was [in]
    """

    size: str
    path: str
    label: str
    designed: float
    found: float | None


def with_measured(spec: UnitSpec, openings: Sizes, parts: Sizes) -> UnitSpec:
    """The choices of a unit, with sizes that were measured at the bench.

    A size that the unit file has already is kept where the bench says nothing of it, and gives way where it
    does. A size equal to the designed one changes nothing but that it counts as measured.

    Args:
        spec: what the maker chose
        openings: openings by code, each with height, width or depth, as `{"R5-1": {"height": 8.46875}}` [in]
        parts: parts by their code within the unit, each with thickness, width, length or in_rabbet [in]

    Returns:
        The choices; every size that follows from them follows the measured one.

    Raises:
        CannotRead: a size cannot be one, or has a name that nothing has

    Source: common practice: a measured size beats a designed one.
    """
    held = spec.measured
    measured = read_as(
        Measured,
        {
            "openings": _merged(held.openings, openings),
            "parts": _merged(held.parts, parts),
        },
    )
    return spec.model_copy(update={"measured": measured})


def _merged(
    held: Mapping[str, MeasuredOpening] | Mapping[str, MeasuredPart], found: Sizes
) -> dict[str, dict[str, float]]:
    before = {code: each.model_dump(exclude_none=True) for code, each in held.items()}
    return {
        code: {**before.get(code, {}), **{name: float(size) for name, size in found.get(code, {}).items()}}
        for code in dict.fromkeys((*before, *found))
    }


def with_bench(spec: UnitSpec, drawers: Sizes) -> UnitSpec:
    """The choices of a unit, with the sizes that were tapped in for its drawers.

    Args:
        spec: what the maker chose
        drawers: by drawer, as `R5-1` or with the unit's code before it, the sizes by their names in a tap,
            such as `SL.thickness`; names that are of no part, such as `dry.diagonals`, are passed over [in]

    Returns:
        The choices with the measured sizes.

    Raises:
        CannotRead: a size cannot be one

    Source: common practice: a measured size beats a designed one.
    """
    openings: dict[str, dict[str, float]] = {}
    parts: dict[str, dict[str, float]] = {}
    for code, sizes in drawers.items():
        short = code.removeprefix(f"{spec.code}-")
        for name, value in sizes.items():
            part, _, size = name.partition(".")
            if part == OPENING and size in MeasuredOpening.model_fields:
                openings.setdefault(short, {})[size] = value
            elif part in PARTS and size in MeasuredPart.model_fields:
                parts.setdefault(f"{short}-{part}", {})[size] = value
    return with_measured(spec, openings, parts)


def measured_words(code: str, now: Mapping[str, Inches], before: Mapping[str, Inches]) -> tuple[Words, ...]:
    """What was measured of a drawer that had not been measured so before, in words.

    Args:
        code: the drawer with its unit, as `A-R1-1`
        now: the sizes by their names in a tap, such as `SL.thickness` [in]
        before: the sizes as they were; as drawn where they had not been measured [in]

    Returns:
        For each what was measured, such as: side A-R1-1-SL measured 23/64.

    Source: common practice: a measured size beats a designed one.
    """
    found: list[Words] = []
    for name, size in now.items():
        part, _, what = name.partition(".")
        if abs(size - before.get(name, inf)) < TOLERANCE or (what not in SAID_OF and part != OPENING):
            continue
        if part == OPENING and what in MeasuredOpening.model_fields:
            found.append(say("{} of opening {} measured {:bare}", what, code, size))
        elif part in PARTS:
            thing = "side" if part in ("SL", "SR") else PARTS[part]
            found.append(say("{} {}-{} measured {:bare}{}", thing, code, part, size, SAID_OF[what]))
    return tuple(found)


SAID_OF = {"thickness": "", "width": " high", "in_rabbet": " in its rabbet"}
PARTS = {
    **{"F": "front", "SL": "left side", "SR": "right side", "B": "back", "BF": "box front"},
    **{"BL": "left back", "BR": "right back"},
    **{"IL": "left inner side", "IR": "right inner side", "IB": "inner back"},
}
"""The parts of a drawer that are measured, by their marks."""


def measurable(unit: Construction, drawer_code: str) -> tuple[Measurable, ...]:
    """The sizes that the bench is asked for at one drawer, in the order in which they are met.

    Args:
        unit: the unit, worked out
        drawer_code: the drawer, as `A-R5-1` or `R5-1`

    Returns:
        The opening; front, sides and back as they come from the plane; what a rabbet leaves of each side.

    Raises:
        CannotBuild: the unit has no such drawer

    Source: common practice: what the gauges are set by.
    """
    short = drawer_code.removeprefix(f"{unit.spec.code}-")
    drawers = {drawer.sizes.code: drawer for drawer in unit.drawers}
    if short not in drawers:
        near = get_close_matches(short, drawers, n=1)
        hint = f"did you mean {near[0]}?" if near else f"there are {', '.join(list(drawers)[:8])}"
        raise CannotBuild(f"{short[:40]}: there is no such drawer; {hint}")
    drawer = drawers[short]
    return (*_opening(unit.spec, drawer), *_parts(unit.spec, drawer))


def _opening(spec: UnitSpec, drawer: Drawer) -> Iterator[Measurable]:
    opening = drawer.sizes.opening
    held = spec.measured.openings.get(opening.code, MeasuredOpening())
    designed = {
        "height": opening.designed_height,
        "width": opening.designed_width,
        "depth": opening.designed_depth,
    }
    for name, size in designed.items():
        yield Measurable(
            size=f"{OPENING}.{name}",
            path=f"openings.{opening.code}.{name}",
            label=f"opening, {name}",
            designed=float(size),
            found=_found(held, name),
        )


def _parts(spec: UnitSpec, drawer: Drawer) -> Iterator[Measurable]:
    drawers, sizes = spec.drawers, drawer.sizes
    back = drawers.side if drawers.back is None else drawers.back
    left_in_rabbet = {"in_rabbet": drawers.side - sizes.rabbet} if sizes.rabbet else {}
    designed: dict[str, dict[str, float]] = {
        "F": {"thickness": drawers.front, "width": sizes.face.height},
        "SL": {"thickness": drawers.side, **left_in_rabbet, "width": sizes.side_height},
        "SR": {"thickness": drawers.side, **left_in_rabbet, "width": sizes.side_height},
        **{mark: {"thickness": back} for mark in sizes.backs},
    }
    if sizes.notch:
        designed |= {mark: {"thickness": drawers.side} for mark in INNER_SIDES}
        designed[INNER_BACK] = {"thickness": back}
    if drawers.has_box_front:
        designed["BF"] = {"thickness": drawers.joined_front, "width": sizes.front_height}
    for mark, each in designed.items():
        code = f"{sizes.code}-{mark}"
        held = spec.measured.parts.get(code, MeasuredPart())
        for name, size in each.items():
            yield Measurable(
                size=f"{mark}.{name}",
                path=f"parts.{code}.{name}",
                label=f"{PARTS[mark]}, {WORDS[name]}",
                designed=float(size),
                found=_found(held, name),
            )


WORDS = {"thickness": "thickness", "width": "height", "in_rabbet": "what the rabbet leaves"}
"""A board's width is a drawer's height."""


def size_words(size: str) -> str:
    """What a size is, in words.

    Args:
        size: its name in a tap at the bench, such as `SL.thickness` or `opening.height`

    Returns:
        Such as: left side, thickness.

    Source: what the bench is asked for.
    """
    part, _, what = size.partition(".")
    return f"{PARTS.get(part, part)}, {what if part == OPENING else WORDS.get(what, what.replace('_', ' '))}"


def _found(held: MeasuredOpening | MeasuredPart, name: str) -> float | None:
    value = getattr(held, name)
    return None if value is None else float(value)
