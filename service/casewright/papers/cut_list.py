"""The cut list of a job as it is kept: how the boards are broken down, and what every part finishes to."""

from collections.abc import Iterable, Iterator

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.papers.cautions import cautions_at
from casewright.papers.head import JobPaper, PaperHead
from casewright.pieces.asked.fields import Spec
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.parts import Grain, Part, PartLine
from casewright.pieces.takeoff.rough import RoughLine, TakeOff
from casewright.wood.movement import Cut


class RoughRow(Spec):
    """Alike pieces as they are broken out of boards, or cut from a sheet.

    `marks` is the unit's code and the line of its cut list; `boards` are glued up for each piece.
    """

    mark: str
    name: str
    quantity: int
    boards: int
    width_in: float
    length_in: float
    thickness_in: float
    finished_width_in: float
    finished_length_in: float
    two_from: str = ""
    sawn_from: int = 0


class Breakdown(Spec):
    """Everything that comes from one wood, cut and class, longest first; or from one kind of sheet."""

    wood: str
    cut: Cut
    bought: str
    rough_bd_ft: float
    rows: tuple[RoughRow, ...]


class FinishedRow(Spec):
    """One part, or alike parts, finished; the codes are what the parts are marked with."""

    mark: str
    codes: tuple[str, ...]
    name: str
    wood: str
    cut: Cut
    sheet: bool
    thickness_in: float
    width_in: float
    length_in: float
    grain: Grain
    face: str
    ends: tuple[str, str]
    measured: tuple[str, ...]


class FinishedGroup(Spec):
    """The case, or one drawer with the sizes that it is fitted to."""

    code: str
    height_in: float | None = None
    width_in: float | None = None
    length_in: float | None = None
    opening_height_in: float | None = None
    opening_width_in: float | None = None
    rows: tuple[FinishedRow, ...]


class OffcutRow(Spec):
    """Small parts that come from what falls off."""

    name: str
    quantity: int
    size: str
    note: str


class UnitCuts(Spec):
    """The finished parts of one unit; `count` units are made alike."""

    code: str
    name: str
    count: int
    groups: tuple[FinishedGroup, ...]
    offcuts: tuple[OffcutRow, ...]


class CutListPaper(JobPaper):
    """The cut list of a job, rough and finished. Lengths in inches, feet in board feet."""

    breakdowns: tuple[Breakdown, ...]
    units: tuple[UnitCuts, ...]
    cautions: tuple[str, ...] = ()

    @property
    def parts(self) -> int:
        """How many parts there are, those from offcuts left out."""
        return sum(row.quantity for each in self.breakdowns for row in each.rows)


def cut_list_paper(head: PaperHead, units: Iterable[tuple[Construction, TakeOff]]) -> CutListPaper:
    """The cut list of a job.

    Args:
        head: who, what and when
        units: every unit, worked out and taken off

    Returns:
        The paper, ready to be printed or kept.
    """
    held = tuple(units)
    return CutListPaper(
        head=head,
        breakdowns=tuple(_breakdowns(held)),
        units=tuple(_unit(unit, head.unit) for unit, _ in held),
        cautions=cautions_at(
            "saw",
            (part.wood for unit, _ in held for part in unit.parts),
            resawn=any(line.is_matched for _, takeoff in held for line in takeoff.lines),
        ),
    )


def _breakdowns(units: tuple[tuple[Construction, TakeOff], ...]) -> Iterator[Breakdown]:
    """Wood by wood in the order of the cut list, the thinner class first, the longest piece first."""
    solid: dict[tuple[str, Cut, str], list[tuple[str, RoughLine]]] = {}
    for unit, takeoff in units:
        for line in takeoff.lines:
            part = line.of.part
            solid.setdefault((part.wood, part.cut, line.bought.name), []).append((unit.spec.code, line))
    woods = list(dict.fromkeys(wood for wood, _, _ in solid))

    def turn(key: tuple[str, Cut, str]) -> tuple[int, str, float]:
        return woods.index(key[0]), key[1].value, solid[key][0][1].bought.rough

    for key in sorted(solid, key=turn):
        lines = sorted(solid[key], key=lambda each: (-each[1].length, -each[1].width, each[0], each[1].line))
        yield Breakdown(
            wood=key[0],
            cut=key[1],
            bought=key[2],
            rough_bd_ft=sum(line.rough for _, line in lines),
            rows=tuple(_rough(code, line) for code, line in lines),
        )
    yield from _sheets(units)


def _sheets(units: tuple[tuple[Construction, TakeOff], ...]) -> Iterator[Breakdown]:
    """Parts from sheets, which are cut to their finished size."""
    found: dict[str, list[tuple[Construction, PartLine]]] = {}
    for unit, _ in units:
        for line in unit.lines:
            if line.part.sheet:
                found.setdefault(line.part.wood, []).append((unit, line))
    for name, lines in found.items():
        lines.sort(key=lambda each: (-each[1].part.length, -each[1].part.width))
        yield Breakdown(
            wood=name,
            cut=Cut.FLAT,
            bought="sheet",
            rough_bd_ft=0.0,
            rows=tuple(
                RoughRow(
                    mark=f"{unit.spec.code}-{line.line}",
                    name=line.part.name,
                    quantity=line.quantity * unit.spec.count,
                    boards=1,
                    width_in=line.part.width,
                    length_in=line.part.length,
                    thickness_in=line.part.thickness,
                    finished_width_in=line.part.width,
                    finished_length_in=line.part.length,
                )
                for unit, line in lines
            ),
        )


def _rough(code: str, line: RoughLine) -> RoughRow:
    part = line.of.part
    return RoughRow(
        mark=f"{code}-{line.line}",
        name=part.name,
        quantity=line.quantity,
        boards=line.boards,
        width_in=line.width,
        length_in=line.length,
        thickness_in=part.thickness,
        finished_width_in=part.width,
        finished_length_in=part.length,
        two_from=line.resaw.bought.name if line.resaw and not line.is_matched else "",
        sawn_from=line.blanks if line.is_matched else 0,
    )


def _unit(unit: Construction, shown: LengthUnit) -> UnitCuts:
    """The case line by line, then every drawer part by part."""
    drawers = {drawer.code for drawer in unit.drawers}

    def is_case(line: PartLine) -> bool:
        return line.codes[0].rpartition("-")[0] not in drawers

    case = FinishedGroup(
        code=f"{unit.spec.code}-C",
        rows=tuple(
            _finished(line.part, line.line, line.codes, shown) for line in unit.lines if is_case(line)
        ),
    )
    return UnitCuts(
        code=unit.spec.code,
        name=unit.spec.name,
        count=unit.spec.count,
        groups=(case, *_drawers(unit, shown)),
        offcuts=tuple(
            OffcutRow(
                name=part.name,
                quantity=part.quantity,
                size=in_unit(part.size, shown),
                note=in_unit(part.note, shown),
            )
            for part in unit.small_parts
        ),
    )


def _drawers(unit: Construction, shown: LengthUnit) -> Iterator[FinishedGroup]:
    marks = {code: line.line for line in unit.lines for code in line.codes}
    for drawer in unit.drawers:
        sizes = drawer.sizes
        alike: dict[str, list[Part]] = {}
        for part in unit.parts:
            if part.code.rpartition("-")[0] == drawer.code:
                alike.setdefault(marks[part.code], []).append(part)
        yield FinishedGroup(
            code=drawer.code,
            height_in=sizes.height,
            width_in=sizes.width,
            length_in=sizes.length,
            opening_height_in=sizes.opening.height,
            opening_width_in=sizes.opening.width,
            rows=tuple(
                _finished(parts[0], mark, tuple(part.code for part in parts), shown)
                for mark, parts in alike.items()
            ),
        )


def _finished(part: Part, mark: str, codes: tuple[str, ...], shown: LengthUnit) -> FinishedRow:
    return FinishedRow(
        mark=mark,
        codes=codes,
        name=part.name,
        wood=part.wood,
        cut=part.cut,
        sheet=part.sheet,
        thickness_in=part.thickness,
        width_in=part.width,
        length_in=part.length,
        grain=part.grain,
        face=part.face.value,
        ends=(in_unit(part.ends[0], shown), in_unit(part.ends[1], shown)),
        measured=part.measured,
    )
