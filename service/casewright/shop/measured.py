"""A unit's choices with what the bench has measured on it: a measured size beats a designed one."""

from collections.abc import Iterable, Mapping

from casewright.labour.bench import BenchEvent as Tap
from casewright.labour.bench import drawer_progress
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.built.measuring import Sizes, with_bench
from casewright.records.measured import size_taps
from casewright.records.sessions import Fenced
from casewright.shop.bench import tap_from
from casewright.shop.units import LoadedUnit, spec_text


def bench_sizes(db: Fenced, unit_ids: Iterable[str]) -> Mapping[tuple[str, int], Sizes]:
    """The sizes that were measured on every piece of some units: by drawer, then by name [in]; one query.

    Returns:
        By unit and piece, such as `{"R5-1": {"opening.height": 8.46875}}`; pieces without any are left out.
    """
    taps: dict[tuple[str, int, str], list[Tap]] = {}
    for unit_id, piece, drawer, tap in size_taps(db, unit_ids):
        taps.setdefault((unit_id, piece, drawer), []).append(tap_from(tap))
    found: dict[tuple[str, int], dict[str, dict[str, float]]] = {}
    for (unit_id, piece, drawer), each in taps.items():
        measured = drawer_progress(each).measured
        if measured:
            found.setdefault((unit_id, piece), {})[drawer] = measured
    return found


def measured_sizes(db: Fenced, units: Iterable[LoadedUnit]) -> Mapping[str, Sizes]:
    """The sizes that were measured on units that are made once, by the unit's id; one query.

    Of a unit that is made several times each piece has sizes of its own; the unit keeps the designed ones.
    """
    made_once = [each.unit.id for each in units if each.unit.count == 1]
    return {unit_id: sizes for (unit_id, _), sizes in bench_sizes(db, made_once).items()} if made_once else {}


def text_with(loaded: LoadedUnit, sizes: Sizes) -> str:
    """A unit's choices, as JSON text, with sizes from the bench.

    Raises:
        CannotRead: a size cannot be one
    """
    return spec_text(with_bench(loaded.spec, sizes)) if sizes else loaded.text


def measured_text(db: Fenced, loaded: LoadedUnit) -> tuple[str, int]:
    """A unit's choices, as JSON text, with the sizes that were tapped in; and how many they are."""
    sizes = measured_sizes(db, [loaded]).get(loaded.unit.id, {})
    try:
        text = text_with(loaded, sizes)
    except CannotRead:  # of a part that a later revision has no more
        return loaded.text, 0
    return text, sum(map(len, sizes.values())) if text != loaded.text else 0
