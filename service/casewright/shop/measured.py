"""A unit's choices with what the bench has measured on it: a measured size beats a designed one."""

from casewright.pieces.measuring import with_bench
from casewright.pieces.reading import CannotRead
from casewright.records.sessions import Fenced
from casewright.shop.bench import bench_sizes
from casewright.shop.units import LoadedUnit, spec_text


def measured_text(db: Fenced, loaded: LoadedUnit) -> tuple[str, int]:
    """A unit's choices, as JSON text, with the sizes that were tapped in; and how many they are.

    Of a unit that is made several times each piece has sizes of its own; the unit keeps the designed ones.
    """
    if loaded.unit.count > 1:
        return loaded.text, 0
    sizes = bench_sizes(db, loaded.unit.id)
    try:
        text = spec_text(with_bench(loaded.spec, sizes)) if sizes else loaded.text
    except CannotRead:  # of a part that a later revision has no more
        return loaded.text, 0
    return text, sum(len(each) for each in sizes.values()) if text != loaded.text else 0
