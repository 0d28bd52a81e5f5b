"""The cut file: parts, stock and the habits of the saw, from which a layout is made.

Every default is written here or beside the field that it is of, with its ground; nothing else does.
"""

from collections import Counter
from collections.abc import Iterator
from typing import Any, Literal, Self

from pydantic import Field, TypeAdapter, model_validator
from pydantic_core import PydanticCustomError

from casewright.cutting.asked.parts_spec import CutPart, GrainSet, Saw, Words
from casewright.cutting.asked.stock_spec import Board, LengthStock, SheetStock, Stock
from casewright.measure import json_files
from casewright.measure.fields import Size, Spec
from casewright.measure.json_files import CannotRead, FileKind
from casewright.measure.lengths import LengthUnit
from casewright.measure.sentences import Problem

VERSION = 1
CUT_FILE = FileKind(name="cut file", start='{"cut_file": 1, "parts": […], "boards": […]}')
MOST_PARTS = 5_000
"""Parts of one file, counted singly: more than a shop of five cuts in a year of one job."""
MOST_STOCK = 2_000

FirstCut = Literal["best", "rip first", "crosscut first", "board by board"]


class KeptOver(Spec):
    """From which size what is left is kept."""

    width: Size = Field(description="Across the grain.", examples=["3"])
    length: Size = Field(description="Along the grain.", examples=["12"])


class Keep(Spec):
    """What is worth a place on the rack."""

    show: KeptOver = Field(
        KeptOver(width=3.0, length=12.0),
        description="Clear wood, fit to be seen (common practice).",
        examples=[{"width": "3", "length": "12"}],
    )
    inside: KeptOver = Field(
        KeptOver(width=2.5, length=15.0),
        description="Wood with a defect or sapwood, for what nobody sees (common practice).",
        examples=[{"width": "2-1/2", "length": "15"}],
    )


class CutFile(Spec):
    """What is to be cut from what, and how."""

    cut_file: Literal[1] = Field(description="Version of this file's form.", examples=[1])
    unit: LengthUnit = Field(
        LengthUnit.INCH, description="The unit of bare numbers, and of the answer.", examples=["mm"]
    )
    name: Words = Field("", description="What it is for.", examples=["Hall chest"])
    saw: Saw = Field(Saw(), description="Kerf, trims and allowances.", examples=[{"kerf": "1/8"}])
    first_cut: FirstCut = Field(
        "best",
        description=(
            "How boards are broken down: ripped to width first, crosscut to length first, board by board "
            "whichever is better; best tries all of them."
        ),
        examples=["rip first"],
    )
    stages: Literal[2, 3] = Field(
        3,
        description="How often the direction of the cuts may change on a sheet, a last trimming cut apart.",
        examples=[2],
    )
    offcuts: Literal["first", "by cost", "last"] = Field(
        "first",
        description="Are offcuts used before whole stock, by what they cost, or after all else?",
        examples=["last"],
    )
    keep: Keep = Field(
        Keep(),
        description="From which size what is left is kept.",
        examples=[{"show": {"width": "3", "length": "12"}}],
    )
    parts: tuple[CutPart, ...] = Field(
        min_length=1,
        max_length=MOST_PARTS,
        description="What is to be cut.",
        examples=[
            [{"code": "F1", "wood": "cherry", "class": "4/4", "length": "38-7/8", "width": "7", "count": 2}]
        ],
    )
    sets: tuple[GrainSet, ...] = Field(
        (),
        max_length=500,
        description="Parts whose grain matches.",
        examples=[[{"name": "fronts", "way": "across", "rows": [["F1", "F2"]]}]],
    )
    boards: tuple[Board, ...] = Field(
        (),
        max_length=MOST_STOCK,
        description="Boards, as they came.",
        examples=[[{"code": "B1", "wood": "cherry", "class": "4/4", "length": "96", "width": "7-1/2"}]],
    )
    sheets: tuple[SheetStock, ...] = Field(
        (),
        max_length=MOST_STOCK,
        description="Sheets.",
        examples=[[{"code": "P1", "wood": "birch plywood", "length": "96", "width": "48"}]],
    )
    lengths: tuple[LengthStock, ...] = Field(
        (),
        max_length=MOST_STOCK,
        description="Stock that is only cut to length.",
        examples=[[{"code": "L1", "wood": "walnut edging", "length": "96"}]],
    )

    @model_validator(mode="after")
    def _holds_together(self) -> Self:
        for complaint, values in _complaints(self):
            raise PydanticCustomError("choice", complaint, values)
        return self


Complaint = tuple[Any, dict[str, Any]]


def _complaints(file: CutFile) -> Iterator[Complaint]:
    """What does not fit together in a file whose fields are each right by themselves."""
    yield from _twice("parts", [part.code for part in file.parts])
    stock = (*file.boards, *file.sheets, *file.lengths)
    yield from _twice("stock", [each.code for each in stock])
    if not stock:
        yield "there is nothing to cut from: give boards, sheets or lengths", {}
    if (number := sum(part.count for part in file.parts)) > MOST_PARTS:
        yield (
            "these are {number} parts, and a file holds at most {most}: cut the job in two",
            {"number": f"{number:,}", "most": f"{MOST_PARTS:,}"},
        )
    held = {each.code: each for each in stock}
    for place, part in enumerate(file.parts, 1):
        yield from _of_part(f"parts[{place}]", part, held)
    counts = {part.code: part for part in file.parts}
    used: Counter[str] = Counter()
    for place, each in enumerate(file.sets, 1):
        yield from _of_set(f"sets[{place}].rows", each, counts)
        if each.way != "one tree":
            used.update(code for row in each.rows for code in row)
    for code, number in used.items():
        if number > counts[code].count:
            yield (
                "sets: {code} is in them {number} times, and there are {count} of it",
                {"code": code, "number": number, "count": counts[code].count},
            )


def _twice(what: str, codes: list[str]) -> Iterator[Complaint]:
    for code, number in Counter(codes).items():
        if number > 1:
            yield (
                "{what}: the code {code} stands there {number} times; give each its own, or a count",
                {"what": what, "code": code, "number": number},
            )


def _of_part(place: str, part: CutPart, held: dict[str, Stock]) -> Iterator[Complaint]:
    if len(part.placed) > part.count:
        yield (
            "{place}.placed: {number} of {code} are put by hand, and there are {count} of it",
            {"place": place, "number": len(part.placed), "code": part.code, "count": part.count},
        )
    for number, hand in enumerate(part.placed, 1):
        where = f"{place}.placed[{number}].on"
        found = held.get(hand.on)
        if found is None or isinstance(found, LengthStock):
            yield "{where}: no board or sheet has the code {code}", {"where": where, "code": hand.on}
        elif found.wood.casefold() != part.wood.casefold():
            yield (
                "{where}: {code} is {found}, and the part is {wood}",
                {"where": where, "code": hand.on, "found": found.wood, "wood": part.wood},
            )
        elif isinstance(found, Board) and found.thickness_class != part.thickness_class:
            yield (
                "{where}: {code} is {found}, and the part is {wood}",
                {
                    "where": where,
                    "code": hand.on,
                    "found": found.thickness_class,
                    "wood": part.thickness_class or "of no class",
                },
            )
        elif (count := getattr(found, "count", None)) is not None and hand.number > count:
            yield (
                "{where}: number {number} of {code} is meant, and there are {count}",
                {"where": where, "number": hand.number, "code": hand.on, "count": count},
            )
    if part.resaw and part.thickness is None:
        yield (
            "{place}.thickness: a part that may be sawn two from one board needs its finished thickness, "
            "such as 3/8",
            {"place": place},
        )
    if part.width is None and (part.glue_up or part.thickness_class or part.placed):
        yield "{place}.width: this is missing; only stock sold by length has none", {"place": place}
    if part.glue_up and part.glue_up.widest < part.glue_up.narrowest:
        yield "{place}.glue_up.widest: the widest strip is narrower than the narrowest", {"place": place}


def _of_set(place: str, each: GrainSet, parts: dict[str, CutPart]) -> Iterator[Complaint]:
    codes = [code for row in each.rows for code in row]
    for code in codes:
        if code not in parts:
            yield "{place}: no part has the code {code}", {"place": place, "code": code}
            return
        if parts[code].width is None:
            yield "{place}: {code} is only cut to length and matches nothing", {"place": place, "code": code}
            return
    if len(codes) < 2:
        yield "{place}: a set has two parts or more", {"place": place}
        return
    if len({(parts[code].wood.casefold(), parts[code].thickness_class) for code in codes}) > 1:
        yield "{place}: parts of several woods or classes cannot match", {"place": place}
    if each.way in ("along", "across") and len(each.rows) != 1:
        yield "{place}: a set cut {way} is one row", {"place": place, "way": each.way}
    if each.way in ("book", "slip"):
        if any(len(row) != 2 for row in each.rows):
            yield "{place}: each row is the two parts that are sawn from one thickness", {"place": place}
        elif any(parts[code].thickness is None for code in codes):
            yield (
                "{place}: parts that are sawn from one thickness need their finished thickness, such as 3/8",
                {"place": place},
            )


def cut_file_of(data: Any) -> CutFile:
    """A cut file from what its JSON held.

    Args:
        data: what the file held

    Returns:
        The file, every default filled in.

    Raises:
        CannotRead: with a sentence for each field that cannot be used

    Source: the schema of `CutFile`.
    """
    if isinstance(data, dict) and type(version := data.get("cut_file")) is int and version != VERSION:
        raise CannotRead(
            Problem("cut_file", f"this file is of version {version}; this program reads version {VERSION}")
        )
    return json_files.read_as(CutFile, data, start=CUT_FILE.start)


def cut_file_schema() -> dict[str, Any]:
    """The JSON Schema of a cut file.

    Returns:
        A JSON Schema, draft 2020-12.

    Source: json-schema.org, draft 2020-12.
    """
    schema = TypeAdapter(CutFile).json_schema(mode="validation")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
