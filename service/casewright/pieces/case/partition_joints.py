"""The joints of uprights and partitions: into what lies over and under them, and what is housed in them."""

from collections.abc import Iterator
from functools import partial

from casewright.joinery.families.housing.asked import Housing
from casewright.joinery.families.housing.joint import housing
from casewright.joinery.joint import Joint
from casewright.measure.units import Inches
from casewright.pieces.case.asked_joints import AskedJoint, CaseBench
from casewright.pieces.case.partitions import parted, stands_by_a_knee
from casewright.pieces.layout.openings import FaceRow, Wall
from casewright.pieces.layout.parts import Part


def upright_joints(bench: CaseBench) -> Iterator[AskedJoint]:
    """The uprights of each row into the rails above and below it.

    Args:
        bench: what the joints are worked out from

    Yields:
        A joint for each row that has uprights.

    Source: common practice of solid-wood case making.
    """
    uprights = bench.of("C4")
    for row in bench.plan.face.all_rows if uprights else ():
        here = _of_row(bench, uprights, row, "U")
        if here:
            yield AskedJoint(
                key=f"uprights_{row.code}",
                kind="housing",
                title=f"Uprights of row {row.mark} into the rails, housing",
                places=2 * len(here),
                serves=(("upright", here),),
                solve=partial(_upright, bench, row, here[0], bench.spec.case.rail_width),
            )


def partition_joints(bench: CaseBench) -> Iterator[AskedJoint]:
    """The partitions of each row into what lies over and under it; bottoms and shelves into their walls.

    Args:
        bench: what the joints are worked out from

    Yields:
        A joint for each row that has partitions; one for the bottoms beside knee spaces; one for shelves
        that do not lie loose.

    Source: common practice of solid-wood case making.
    """
    partitions = bench.of("C8")
    for row in bench.plan.face.all_rows if partitions else ():
        here = _of_row(bench, partitions, row, "P")
        if here:
            standing = sum(stands_by_a_knee(row, cells) for cells in parted(row))
            yield AskedJoint(
                key=f"partitions_{row.code}",
                kind="housing",
                title=f"Partitions of row {row.mark} into rails and bottom, housing",
                places=2 * len(here) - standing,
                serves=(("partition", here),),
                solve=partial(_upright, bench, row, here[0], bench.plan.face.opening_depth),
                advice=(
                    "Cut the housing through rails, partition rail and case bottom in one.",
                    "Glue it at the front rail and in the case bottom; leave it dry in the partition rail "
                    "and the rear rail, past which it moves.",
                ),
            )
    yield from _bottoms(bench)
    yield from _shelves(bench)


def _of_row(bench: CaseBench, parts: tuple[Part, ...], row: FaceRow, mark: str) -> tuple[Part, ...]:
    start = bench.plan.code(f"{row.code}-{mark}")
    return tuple(part for part in parts if part.code.startswith(start))


def _upright(bench: CaseBench, row: FaceRow, part: Part, length: Inches) -> Joint:
    """An upright or a partition into the thinner of what lies over and under its row."""
    is_upright = part.line == "C4"
    return housing(
        Housing(
            divider=part.thickness,
            case_side=bench.plan.rail_by(row),
            depth=bench.plan.upright_housing(row),
            stop=0.0,
            length=length,
            inside_width=row.height,
            rack=bench.rack,
            mark=part.code,
            into="rail",
            housed="upright" if is_upright else "partition",
        ),
        bench.ledger(f"{'uprights' if is_upright else 'partitions'}_{row.code}"),
    )


def _bottoms(bench: CaseBench) -> Iterator[AskedJoint]:
    """The case bottoms of pedestals, each housed in the partition beside the knee space."""
    places = sum(each.walls.count(Wall.PARTITION) for each in bench.plan.face.pedestals)
    if places:
        bottoms = bench.of("C6")
        yield AskedJoint(
            key="bottoms_in_partitions",
            kind="housing",
            title="Case bottoms into the partitions, housing",
            places=places,
            serves=(("case bottom", bottoms),),
            solve=partial(_housed, bench, "bottoms_in_partitions", bottoms[0], "case bottom"),
        )


def _shelves(bench: CaseBench) -> Iterator[AskedJoint]:
    """Shelves that are housed, in sides and partitions."""
    shelves = bench.of("C9") if bench.spec.shelving.fixing == "housings" else ()
    if shelves:
        yield AskedJoint(
            key="shelves",
            kind="housing",
            title="Shelves into sides and partitions, housing",
            places=2 * len(shelves),
            serves=(("shelf", shelves),),
            solve=partial(_housed, bench, "shelves", shelves[0], "shelf"),
        )


def _housed(bench: CaseBench, name: str, part: Part, housed: str) -> Joint:
    walls = bench.of("C8") or bench.pin_boards
    return housing(
        Housing(
            divider=part.thickness,
            case_side=min(wall.thickness for wall in walls),
            depth=bench.plan.housing_in(Wall.PARTITION),
            stop=0.0,
            length=part.width,
            rack=bench.rack,
            mark=part.code,
            into="partition",
            housed=housed,
        ),
        bench.ledger(name),
    )
