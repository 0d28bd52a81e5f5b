"""The two lists of a drawer, before marking out and at the dry-fit, with what is measured beside them."""

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.labour.bench import DrawerProgress, Mark
from casewright.labour.next_step import is_done
from casewright.labour.stages import GateKind, Tick, drawer_stages, dry_fit, gates
from casewright.measure.lengths import LengthError, LengthUnit, parse_length, write_length
from casewright.measure.saying import in_unit, say, unit_read, written_in
from casewright.shop.at_bench import AtBench
from casewright.shop.bench import is_same
from casewright.web.bench.numbers import size_text
from casewright.web.frame.typed import Reader

MOISTURE = (("F.moisture", "Front, moisture in %"), ("SL.moisture", "Side, moisture in %"))
"""What a moisture meter says before marking out; front and side are not cut while they are apart."""
FITTED = (("SL.tail_length", "Tails, length"), ("F.socket_depth", "Sockets, depth"))
"""What is measured at the dry-fit: tails that are longer than their sockets are deep burst the lap."""
LEAST_MOISTURE, MOST_MOISTURE = 2, 30


@dataclass(frozen=True, slots=True, kw_only=True)
class TickLine:
    """One line of a list.

    Attributes:
        line: the line
        word: what is looked at, as the shop reads it
        ticked: whether it is ticked
        done: whether it is, or what was measured is little enough
        most: the most that may be measured, as text; empty for a line that is ticked only
        over: what was measured too much, and what to do; empty where it is little enough
    """

    line: Tick
    word: str
    ticked: bool
    done: bool
    most: str
    over: str


def tick_lines(lines: Iterable[Tick], progress: DrawerProgress, unit: LengthUnit) -> list[TickLine]:
    """The lines of a list, each with where it stands.

    Args:
        lines: the list
        progress: where the drawer stands
        unit: in which sizes are read
    """
    return [
        TickLine(
            line=line,
            word=written_in(line.word, unit),
            ticked=line.code in progress.ticked,
            done=is_done(line, progress),
            most=size_text(line.most_in, unit) if line.most_in else "",
            over=_over(line, progress, unit),
        )
        for line in lines
    ]


def _over(line: Tick, progress: DrawerProgress, unit: LengthUnit) -> str:
    """A line that is measured can neither be ticked nor pass; silence would read as kept and good."""
    found = progress.measured.get(line.size) if line.size else None
    if found is None or line.most_in is None or is_done(line, progress):
        return ""
    measured = in_unit(say("{:bare}", found), unit)
    return f"{measured} is over {size_text(line.most_in, unit)}: not done. {line.mend}."


def typed_beside(read: Reader, held: AtBench, shop: LengthUnit) -> dict[str, tuple[float | None, str]]:
    """What was typed beside the lists and differs from what is held; an empty field takes a number back.

    Args:
        read: the form
        held: the drawer
        shop: the unit in which the reader thinks
    """
    unit, found = unit_read(shop, held.unit), {}
    lengths = [line.size for line in dry_fit() if line.size] + [name for name, _ in FITTED]
    for name in lengths:
        if read.typed.has(name):
            found[name] = read.length(name, unit, needed=False)
    for name, _ in MOISTURE:
        if read.typed.has(name):
            found[name] = _moisture(read, name)
    before = held.progress.measured
    changed = {name: size for name, size in found.items() if not is_same(before.get(name), size)}
    if not read.faults:
        for name, sentence in held.refusals(changed).items():
            read.fault(name, sentence)
    return {name: (size, read.typed.get(name).strip()) for name, size in changed.items()}


def _moisture(read: Reader, name: str) -> float | None:
    if not read.typed.get(name).strip().rstrip("%").strip():
        return None
    return read.number(name, least=LEAST_MOISTURE, most=MOST_MOISTURE, example="8.5", unit="%")


def as_typed(mark: Mark, unit: LengthUnit) -> str:
    """What was typed, where it means the same in the unit that is read now.

    Args:
        mark: what is kept
        unit: in which sizes are read
    """
    size = mark.value or 0.0
    if mark.name.endswith(".moisture"):
        return f"{size:g}"
    try:
        if is_same(float(parse_length(mark.text, unit)), size):
            return mark.text
    except LengthError:  # nothing was typed, or not in a way that this unit reads
        pass
    return write_length(size, unit)


def worked_through_now(kind: GateKind, lines: Iterable[TickLine], held: AtBench) -> bool:
    """Whether a list is being worked through: near its stage, or begun and not past it.

    Args:
        kind: which list
        lines: its lines
        held: the drawer
    """
    codes = [stage.code for stage in drawer_stages()]
    listed = next(gate.stage for gate in gates() if gate.kind is kind)
    ahead = codes.index(listed) - len(held.progress.reached)
    near = {0} if kind is GateKind.MARKED else {0, 1}
    begun = any(each.ticked for each in lines) and not held.progress.has_reached(listed)
    return ahead in near or begun
