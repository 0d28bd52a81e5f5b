"""Putting parts by hand: which may be put where, and a cut file with one more of them in its place."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.measure.json_files import CannotRead
from casewright.measure.lengths import LengthUnit, parse_length, show_in, write_with_unit
from casewright.records.layouts import CutLayout
from casewright.web.frame.typed import Reader

NAMES = {
    "part": "Part",
    "board": "Board",
    "from_end": "From the first end",
    "from_edge": "From the near edge",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PartToPlace:
    """A part where it lies, in inches from the board's first end and near edge."""

    code: str
    x: float
    y: float
    length: float
    width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardToPlace:
    """A board with its parts, to drag them on."""

    name: str
    length: float
    width: float
    parts: Sequence[PartToPlace]


def boards_to_place(answer: Mapping[str, Any]) -> list[BoardToPlace]:
    """The boards of a layout with those of their parts that are cut in one piece.

    Args:
        answer: the layout, as it is kept
    """
    return [
        BoardToPlace(
            name=board["name"],
            length=board["length_in"],
            width=board["width_in"],
            parts=[
                PartToPlace(
                    code=part["code"],
                    x=part["from_end_in"],
                    y=part["from_edge_in"],
                    length=part["length_in"],
                    width=part["width_in"],
                )
                for part in board["parts"]
                if not part["strips"] and not part["second"]
            ],
        )
        for lot in answer.get("lots", ())
        for board in lot["layouts"]
    ]


def parts_to_place(asked: Mapping[str, Any]) -> list[str]:
    """The parts that can be put by hand: those that are cut in one piece from a board or sheet."""
    return [part["code"] for part in asked.get("parts", ()) if part.get("width") and not part.get("glue_up")]


def stock_to_place(asked: Mapping[str, Any]) -> dict[str, tuple[str, int]]:
    """The names of all boards and sheets, as a layout has them, each with its mark and its number.

    Those alike stand one by one; of sheets without end the first few.
    """
    return {
        each["code"] if count == 1 else f"{each['code']} no. {number}": (each["code"], number)
        for kind in ("boards", "sheets")
        for each in asked.get(kind, ())
        if not each.get("spare")
        for count in [each.get("count", 1 if kind == "boards" else ENDLESS)]
        for number in range(1, count + 1)
    }


ENDLESS = 4


def put_words(asked: Mapping[str, Any], unit: LengthUnit) -> list[str]:
    """What was put by hand, in words."""
    names = {place: name for name, place in stock_to_place(asked).items()}
    return [
        f"{part['code']} on {names[hand['on'], hand['number']]}, "
        f"{_shown(hand['from_end'], unit)} from its first end and "
        f"{_shown(hand['from_edge'], unit)} from its near edge"
        for part, hand in _put(asked)
    ]


def _put(asked: Mapping[str, Any]) -> Iterator[tuple[Mapping[str, Any], Mapping[str, Any]]]:
    for part in asked.get("parts", ()):
        for hand in part.get("placed", ()):
            yield part, hand


def _shown(typed: str, unit: LengthUnit) -> str:
    return show_in(float(parse_length(typed, unit)), unit)


def freed(asked: Mapping[str, Any]) -> dict[str, Any]:
    """The same cut file with nothing put by hand."""
    parts = [{name: value for name, value in part.items() if name != "placed"} for part in asked["parts"]]
    return {**asked, "parts": parts}


def with_part(layout: CutLayout, read: Reader, unit: LengthUnit) -> dict[str, Any]:
    """The cut file of a layout with the part of a form where the form puts it.

    Of parts alike one more is put, until all of them are; then the first of them moves.

    Args:
        layout: the layout
        read: the form; its faults are noted there
        unit: the shop's unit
    """
    asked = layout.asked
    code = read.choice("part", parts_to_place(asked))
    stock = stock_to_place(asked)
    board = read.choice("board", stock)
    end, edge = read.length("from_end", unit), read.length("from_edge", unit)
    if end is None or edge is None or read.faults:
        return dict(asked)
    on, number = stock[board]
    hand = {
        "on": on,
        "number": number,
        "from_end": write_with_unit(end),
        "from_edge": write_with_unit(edge),
    }
    parts = []
    for part in asked["parts"]:
        if part["code"] != code:
            parts.append(part)
            continue
        before = list(part.get("placed", ()))
        kept = before[1:] if len(before) >= part.get("count", 1) else before
        parts.append({**part, "placed": [*kept, hand]})
    found = {**asked, "parts": parts}
    try:
        cut_file_of(found)
    except CannotRead as error:
        read.fault("board", str(error))
    return found
