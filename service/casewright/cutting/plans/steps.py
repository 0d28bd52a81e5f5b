"""The cuts of a board in the order in which one person makes them, in words.

All cuts across the whole board come first, then those of each piece, so that what is lifted gets smaller from
step to step.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from casewright.cutting.asked.stock_spec import Board
from casewright.cutting.plans.sawing import Sawn, Way
from casewright.cutting.plans.spots import Spot
from casewright.cutting.plans.values import BoardLayout, Laid
from casewright.measure.saying import Said, Words, say, strung
from casewright.measure.units import TICKS_PER_INCH, Count, Inches

FEW = 6
"""So many marks are told of a piece; of more only how many they are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One setting of the saw, and what is cut with it.

    Attributes:
        number: from 1 [dimensionless]
        kind: `straighten`, `square`, `rip` or `crosscut`
        setting: width or length of what is cut off, or how much comes off the board's edge or end [in]
        count: how many cuts of this setting follow on each other [dimensionless]
        of: the pieces that are cut; empty for the whole board
        pieces: what the cuts make: marks of parts, or of pieces that are cut up further
        makes: the parts that come of it, now or later
        lines: where the cuts run, each a rectangle without length or without width
        is_left: is it a piece that is left over?
    """

    number: Count
    kind: str
    setting: Inches
    count: Count
    of: tuple[str, ...]
    pieces: tuple[str, ...]
    makes: tuple[str, ...]
    lines: tuple[Spot, ...] = ()
    is_left: bool = False


def steps_of(layout: BoardLayout) -> tuple[Step, ...]:
    """The cuts of a board in the order in which they are made.

    Args:
        layout: the board

    Returns:
        The steps, numbered.

    Source: common practice: long cuts first, while the board still steadies itself.
    """
    return tuple(_numbered([*_first_steps(layout), *_cuts(layout.sawn)]))


@dataclass(slots=True)
class _Setting:
    """A step before it has its number."""

    kind: str
    setting: int
    count: int
    of: tuple[str, ...]
    pieces: tuple[str, ...]
    makes: tuple[str, ...]
    lines: tuple[Spot, ...] = ()
    is_left: bool = False

    @property
    def alike(self) -> tuple[object, ...]:
        """What cuts have in common that are made with one setting, as often from each piece."""
        return self.kind, self.setting, self.is_left, self.count // max(1, len(self.of))

    def joins(self, other: "_Setting") -> bool:
        """Is the other cut with the same setting, from the next piece?"""
        return bool(self.of and other.of) and self.alike == other.alike and self.of[-1] != other.of[0]

    def join(self, other: "_Setting") -> None:
        """Takes the other in."""
        self.count += other.count
        self.of += other.of
        self.pieces += other.pieces
        self.makes += other.makes
        self.lines += other.lines


def _numbered(found: Iterable[_Setting]) -> Iterator[Step]:
    steps: list[_Setting] = []
    for each in found:
        if steps and steps[-1].joins(each):
            steps[-1].join(each)
        else:
            steps.append(each)
    for number, each in enumerate(steps, 1):
        yield Step(
            number=number,
            kind=each.kind,
            setting=each.setting / TICKS_PER_INCH,
            count=each.count,
            of=each.of,
            pieces=each.pieces,
            makes=each.makes,
            lines=each.lines,
            is_left=each.is_left,
        )


def _first_steps(layout: BoardLayout) -> Iterator[_Setting]:
    """The first edge and end, against which all the others are measured."""
    spot = layout.sawn.spot
    if spot.y:
        line = Spot(spot.x, spot.y, spot.length, 0)
        yield _Setting("straighten", spot.y, 1, (), (), (), (line,))
    if spot.x:
        yield _Setting("square", spot.x, 1, (), (), (), (Spot(spot.x, spot.y, 0, spot.width),))


def _cuts(whole: Sawn[Laid]) -> Iterator[_Setting]:
    """The cuts of all pieces that are equally far, then those of what they were cut into."""
    level = [("", whole)]
    while level:
        waiting: list[list[_Setting]] = []
        after: list[tuple[str, Sawn[Laid]]] = []
        for of, piece in level:
            if piece.way is not None:
                named = list(_named(of, piece))
                waiting.append(list(_of_piece(of, piece, named)))
                after += [(name, part) for name, part in named if part.pieces]
        yield from _in_turn([cuts for cuts in waiting if cuts])
        level = after


def _in_turn(waiting: list[list[_Setting]]) -> Iterator[_Setting]:
    """Cuts of several pieces so that a setting serves as many of them as it can; of each in its own order."""
    last: tuple[object, ...] | None = None
    while waiting:
        heads = [cuts[0].alike for cuts in waiting]
        last = last if last in heads else max(heads, key=heads.count)
        served = [cuts for cuts in waiting if cuts[0].alike == last]
        first = served[0].pop(0)
        for cuts in served[1:]:
            first.join(cuts.pop(0))
        yield first
        waiting = [cuts for cuts in waiting if cuts]


def _named(of: str, piece: Sawn[Laid]) -> Iterator[tuple[str, Sawn[Laid]]]:
    """What a piece is cut into, with a name for each: the part's own, or a number under its own."""
    number = 0
    for part in piece.pieces:
        if part.held is not None:
            yield part.held.label, part
        elif part.pieces:
            number += 1
            yield f"{of}.{number}" if of else str(number), part
        else:
            yield "", part


def _of_piece(of: str, piece: Sawn[Laid], named: list[tuple[str, Sawn[Laid]]]) -> Iterator[_Setting]:
    way = piece.way or Way.RIP
    runs: list[tuple[int, bool, list[tuple[str, Sawn[Laid]]]]] = []
    for name, part in named:
        size = part.spot.width if way is Way.RIP else part.spot.length
        if runs and runs[-1][:2] == (size, not name):
            runs[-1][2].append((name, part))
        else:
            runs.append((size, not name, [(name, part)]))
    end = piece.spot.far if way is Way.RIP else piece.spot.right
    for size, is_left, held in runs:
        last = held[-1][1].spot
        needs_no_cut = (last.far if way is Way.RIP else last.right) == end
        count = len(held) - needs_no_cut
        if count:
            makes = tuple(laid.label for _, part in held for laid in _laid(part))
            pieces = tuple(name for name, _ in held if name)
            lines = tuple(_line(piece.spot, part.spot, way) for _, part in held[:count])
            yield _Setting(way.value, size, count, (of,) if of else (), pieces, makes, lines, is_left)


def _line(whole: Spot, part: Spot, way: Way) -> Spot:
    """Where the cut runs that takes a part off a piece: along its far edge, or its other end."""
    if way is Way.RIP:
        return Spot(whole.x, part.far, whole.length, 0)
    return Spot(part.right, whole.y, 0, whole.width)


def _laid(piece: Sawn[Laid]) -> Iterator[Laid]:
    if piece.held is not None:
        yield piece.held
    for part in piece.pieces:
        yield from _laid(part)


def set_ups(steps: Sequence[Step]) -> Count:
    """How often the saw is set anew.

    Args:
        steps: the steps of a board, or of several on end

    Returns:
        The number of settings, equal ones that follow on each other counting once [dimensionless]

    Source: common practice.
    """
    settings = [(step.kind, step.setting) for step in steps]
    return sum(1 for place, each in enumerate(settings) if place == 0 or settings[place - 1] != each)


def step_words(step: Step, layout: BoardLayout) -> Said:
    """A step as it is said at the saw.

    Args:
        step: the step
        layout: its board

    Returns:
        A sentence.

    Source: common practice.
    """
    kind = "board" if isinstance(layout.ground.stock, Board) else "sheet"
    if step.kind == "straighten":
        return say("Straighten the near edge of the {}: {} comes off.", kind, step.setting)
    if step.kind == "square":
        return say("Square the first end: {} comes off.", step.setting)
    what = f"the {kind}"
    if step.of:
        what = f"piece {step.of[0]}" if len(step.of) == 1 else f"pieces {', '.join(step.of)}"
    verb = "Rip" if step.kind == Way.RIP else "Crosscut"
    each = step.count // max(1, len(step.of))
    times = "" if each == 1 else f", {each} times{' each' if len(step.of) > 1 else ''}"
    if step.is_left:
        return say("{} {} at {}{}; that is left over.", verb, what, step.setting, times)
    return say("{} {} at {}{}: {}.", verb, what, step.setting, times, _made(step))


def _made(step: Step) -> Words:
    """What a step makes: parts by their marks, pieces with what is in them."""
    if all(piece in step.makes for piece in step.pieces):
        return _listed(step.pieces)
    name = "piece" if len(step.pieces) == 1 else "pieces"
    return strung(" ", [name, ", ".join(step.pieces), f"({_listed(step.makes)})"])


def _listed(marks: Sequence[str]) -> str:
    counted = Counter(marks)
    words = [mark if number == 1 else f"{number} {mark}" for mark, number in counted.items()]
    more = len(words) - FEW
    return ", ".join(words[:FEW]) + (f" and {more} more" if more > 0 else "")
