"""The woods a shop buys: what moves, what weighs, what bends, each figure with its ground."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache, lru_cache

from casewright.measure.saying import say
from casewright.measure.units import (
    Inches,
    Number,
    Percent,
    PerPercent,
    PoundsForce,
    PoundsPerCubicFoot,
    PoundsPerSquareInch,
)
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.movement import (
    USUAL_SATURATION,
    Cut,
    Direction,
    coefficient,
    coefficient_from_shrinkage,
    density,
    gravity_at,
)
from casewright.wood.tables import document, rows

Grounds = tuple[tuple[str, Evidence], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wood:
    """One species as a shop buys it.

    Attributes:
        name: what the shop calls it, such as `cherry`
        common_name: its name in the Wood Handbook
        botanical_name: genus and species
        hardwood: true for a broadleaved tree, false for a conifer
        radial: dimensional change coefficient across the rings [1 per % moisture]
        tangential: dimensional change coefficient along the rings [1 per % moisture]
        gravity: specific gravity on ovendry weight and volume at 12 % moisture [dimensionless]
        gravity_green: the same on green volume [dimensionless]
        average_board_width: usable width of a usual board, for counting the boards of a panel [in]
        shrinkage_radial: shrinkage across the rings from green to ovendry [%]
        shrinkage_tangential: shrinkage along the rings from green to ovendry [%]
        saturation: the moisture at which shrinkage starts [%]
        elasticity: modulus of elasticity along the grain at 12 % moisture; None where it is not known [psi]
        hardness: side hardness at 12 % moisture; None where none is printed [lbf]
        aliases: other names that yards and makers use
        note: what a maker should know about the figures
        grounds: for each figure, where it comes from
    """

    name: str
    common_name: str
    botanical_name: str
    hardwood: bool
    radial: PerPercent
    tangential: PerPercent
    gravity: Number
    gravity_green: Number
    average_board_width: Inches
    shrinkage_radial: Percent
    shrinkage_tangential: Percent
    saturation: Percent = USUAL_SATURATION
    elasticity: PoundsPerSquareInch | None = None
    hardness: PoundsForce | None = None
    aliases: tuple[str, ...] = ()
    note: str = ""
    grounds: Grounds = ()

    def __post_init__(self) -> None:
        if not 0 < self.radial < 0.02 or not 0 < self.tangential < 0.02:
            raise ValueError(
                f"{self.name}: a board moves by 0.0005 to 0.005 of its width for each percent of moisture; "
                f"{self.radial:g} and {self.tangential:g} are not such coefficients."
            )
        if not 0.05 < self.gravity < 1.5:
            raise ValueError(f"{self.name}: no wood has a specific gravity of {self.gravity:g}.")
        if self.average_board_width <= 0:
            raise ValueError(
                say("{}: a usual board is wider than {:exact}.", self.name, self.average_board_width)
            )

    def evidence(self, figure: str) -> Evidence:
        """The ground for one figure of this wood.

        Args:
            figure: the figure's name, such as `tangential`

        Returns:
            Its basis and source.

        Raises:
            KeyError: no such figure is known of this wood.

        Source: each figure names its own.
        """
        return dict(self.grounds)[figure]

    def coefficient(self, cut: Cut, direction: Direction = Direction.WIDTH) -> PerPercent:
        """How much a board of this wood moves for each percent of moisture.

        Args:
            cut: flat, quarter or rift
            direction: width, thickness or length

        Returns:
            The coefficient for `movement` [1 per % moisture]

        Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, Table 13-5.
        """
        return coefficient(self.radial, self.tangential, cut, direction)

    def shrinkage(self, cut: Cut, direction: Direction = Direction.WIDTH) -> Percent:
        """How much a board of this wood shrinks from green to ovendry.

        Args:
            cut: flat, quarter or rift
            direction: width, thickness or length

        Returns:
            The shrinkage for `movement_by_shrinkage` [%]

        Source: Wood Handbook, FPL-GTR-190 (2010), Tables 4-3 and 4-4.
        """
        return coefficient(self.shrinkage_radial, self.shrinkage_tangential, cut, direction)

    def density(self, moisture: Percent) -> PoundsPerCubicFoot:
        """What a cubic foot of this wood weighs.

        Args:
            moisture: moisture content [%]

        Returns:
            Weight with the water in it [lb per cu ft]

        Source: Wood Handbook, FPL-GTR-190 (2010), chapter 4.
        """
        return density(self.gravity, moisture)


class UnknownWood(ValueError):
    """A name that no wood goes by.

    Attributes:
        name: what was asked for
        nearest: names that may have been meant
    """

    def __init__(self, name: str, nearest: tuple[str, ...]) -> None:
        meant = f" Did you mean {' or '.join(nearest)}?" if nearest else ""
        super().__init__(f"“{name}” is not a wood in the table.{meant}")
        self.name = name
        self.nearest = nearest


@cache
def woods() -> tuple[Wood, ...]:
    """Every wood in the table, hardwoods first.

    Returns:
        One value for each row of the reference table.

    Source: Wood Handbook, FPL-GTR-282 (2021) and FPL-GTR-190 (2010); each figure names its table.
    """
    return tuple(_wood(row) for row in rows("species"))


@lru_cache(maxsize=512)  # asked some thirty times for one unit, by the same few names
def wood(name: str) -> Wood:
    """The wood that goes by a name.

    Capitals, hyphens and spaces make no difference.

    Args:
        name: the shop's name, the Wood Handbook's name, the botanical name, or an alias

    Returns:
        The wood.

    Raises:
        UnknownWood: no wood goes by that name; the nearest names are given.

    Source: common practice.
    """
    found = _by_name().get(_plain(name))
    if found is None:
        raise UnknownWood(name, _nearest(_plain(name)))
    return found


def _plain(name: str) -> str:
    """A name without capitals, and with one space for whatever stands between words."""
    return " ".join(re.split(r"[\s\-,()]+", name.casefold())).strip()


def _names(wood: Wood) -> Iterator[str]:
    """All the names that a wood goes by; the handbook's name also without what it adds in brackets."""
    yield wood.name
    yield wood.common_name
    yield re.sub(r"\(.*?\)", "", wood.common_name)
    if not wood.botanical_name.endswith("spp."):
        yield wood.botanical_name
    yield from wood.aliases


@cache
def _by_name() -> Mapping[str, Wood]:
    """Every name; a shop name comes before all others, and of two equal ones the earlier row's counts."""
    table = {_plain(each.name): each for each in woods()}
    for each in woods():
        for name in _names(each):
            table.setdefault(_plain(name), each)
    return table


def _nearest(name: str) -> tuple[str, ...]:
    """At most four shop names: those that share most words with the name, or else look like it."""
    words = set(name.split())
    shared = {each.name: len(words & set(_plain(each.name).split())) for each in woods()}
    sharing = sorted(filter(shared.get, shared), key=shared.__getitem__, reverse=True)
    if sharing:
        return tuple(sharing[:4])
    alike = get_close_matches(name, _by_name(), n=8, cutoff=0.6)
    return tuple(dict.fromkeys(_by_name()[each].name for each in alike))[:4]


def _wood(row: Mapping[str, str]) -> Wood:
    """One row of the table; what an imported wood lacks is computed from its shrinkage and green gravity."""
    saturation = float(row["saturation_pct"])
    shrinkages = float(row["shrinkage_radial_pct"]), float(row["shrinkage_tangential_pct"])
    computed = row["coefficient_ground"] == "identity"
    radial, tangential = (
        (coefficient_from_shrinkage(each, saturation) for each in shrinkages)
        if computed
        else (float(row["radial"]), float(row["tangential"]))
    )
    green = float(row["gravity_green"])
    return Wood(
        name=row["name"],
        common_name=row["common_name"],
        botanical_name=row["botanical_name"],
        hardwood=row["group"] == "hardwood",
        radial=radial,
        tangential=tangential,
        gravity=float(row["gravity"]) if row["gravity"] else gravity_at(green, 12),
        gravity_green=green,
        average_board_width=float(row["average_board_width_in"]),
        shrinkage_radial=shrinkages[0],
        shrinkage_tangential=shrinkages[1],
        saturation=saturation,
        elasticity=float(row["elasticity_psi"]) if row["elasticity_psi"] else None,
        hardness=float(row["hardness_lbf"]) if row["hardness_lbf"] else None,
        aliases=tuple(row["aliases"].split("|")) if row["aliases"] else (),
        note=row["note"],
        grounds=tuple(_grounds(row)),
    )


FIGURES = {
    "radial": "coefficient",
    "tangential": "coefficient",
    "gravity": "gravity",
    "gravity_green": "gravity_green",
    "average_board_width": "average_board_width",
    "shrinkage_radial": "shrinkage",
    "shrinkage_tangential": "shrinkage",
    "elasticity": "elasticity",
    "hardness": "hardness",
}
"""Each figure of a wood, and the column of grounds that it shares."""


def _grounds(row: Mapping[str, str]) -> Iterator[tuple[str, Evidence]]:
    texts = document("species_grounds")["grounds"]
    for figure, column in FIGURES.items():
        mark = row[f"{column}_ground"]
        if mark:
            yield figure, evidence_of(texts[column][mark])
