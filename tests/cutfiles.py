"""Cut files for tests: at random with everything that a cut file can ask, and boards cut up without waste."""

import json
import random
from fractions import Fraction
from typing import Any

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.cutting.budget import Budget
from casewright.cutting.plans.plan import plan_cuts
from casewright.cutting.plans.values import CutPlan
from casewright.papers.cutting_data import cutting_data
from cutchecker import complaints


def steps(number: int, seed: int = 0) -> Budget:
    """A budget that ends by steps alone, so that a busy machine answers as a quiet one."""
    return Budget(now=lambda: 0.0, steps=number, seed=seed)


def planned(data: dict[str, Any], number: int = 2) -> CutPlan:
    """The layout of a cut file in a few steps."""
    return plan_cuts(cut_file_of(data), steps(number))


def answered(data: dict[str, Any], number: int = 2) -> dict[str, Any]:
    """The layout as the command prints it for machines."""
    return cutting_data(planned(data, number))


def only_lot(data: dict[str, Any], number: int = 3) -> dict[str, Any]:
    """The only lot of an answer with which the checker finds nothing wrong."""
    found = json.loads(json.dumps(answered(data, number)))
    assert complaints(data, found) == []
    assert len(found["lots"]) == 1
    lot: dict[str, Any] = found["lots"][0]
    return lot


def laid_of(lot: dict[str, Any]) -> list[tuple[str, dict[str, Any]]]:
    """Everything that is cut, with the mark of its board."""
    return [(each["stock"], one) for each in lot["layouts"] for one in each["parts"]]


def written(size: Fraction) -> str:
    """A size as a maker writes it."""
    whole, rest = divmod(size, 1)
    if not rest:
        return str(whole)
    return f"{whole}-{rest}" if whole else str(rest)


def eighths(rng: random.Random, low: int, high: int) -> str:
    """A size between two whole inches, in eighths."""
    return written(Fraction(rng.randint(low * 8, high * 8), 8))


def random_file(seed: int) -> dict[str, Any]:
    """A cut file with some of everything; not all of it can always be placed, or kept.

    Args:
        seed: which one

    Returns:
        The file as its JSON would be.
    """
    rng = random.Random(seed)  # noqa: S311 - no secret is made of it
    file: dict[str, Any] = {"cut_file": 1, "parts": [], "sets": []}
    if rng.random() < 0.4:
        file["saw"] = {
            "kerf": rng.choice(["1/8", "3/32", "0", "1/4", "3.2 mm"]),
            "end_trim": rng.choice(["0", "1", "2"]),
        }
    if rng.random() < 0.5:
        file["first_cut"] = rng.choice(["rip first", "crosscut first", "board by board", "best"])
    file["offcuts"] = rng.choice(["first", "by cost", "last"])
    if rng.random() < 0.8:
        _add_boards(file, rng)
    if rng.random() < 0.5 or not file["parts"]:
        _add_sheets(file, rng)
    if rng.random() < 0.3:
        _add_lengths(file, rng)
    return file


def _add_boards(file: dict[str, Any], rng: random.Random) -> None:
    file["boards"] = [_board(number, rng) for number in range(rng.randint(1, 8))]
    file["parts"] += [_part(number, file, rng) for number in range(rng.randint(1, 7))]
    for number in range(rng.randint(0, 2)):
        _add_set(number, file, rng)


def _board(number: int, rng: random.Random) -> dict[str, Any]:
    wide = rng.randint(40, 80)
    board: dict[str, Any] = {
        "code": f"B{number}",
        "wood": "cherry",
        "class": "4/4",
        "length": eighths(rng, 40, 130),
        "width": written(Fraction(wide, 8)),
    }
    if rng.random() < 0.3:
        board["width_end"] = written(Fraction(max(24, wide + rng.randint(-16, 16)), 8))
    if rng.random() < 0.2:
        board["width_middle"] = written(Fraction(max(24, wide + rng.randint(-8, 8)), 8))
    if rng.random() < 0.2:
        board[rng.choice(["sap_near", "sap_far"])] = eighths(rng, 1, 2)
    if rng.random() < 0.3:
        board["defects"] = [
            {
                "from_end": eighths(rng, 0, 39),
                "from_edge": eighths(rng, 0, 2),
                "length": eighths(rng, 1, 5),
                "width": eighths(rng, 1, 2),
                "face": rng.choice(["front", "back", "both"]),
            }
            for _ in range(rng.randint(1, 3))
        ]
    if rng.random() < 0.5:
        board["log"] = rng.choice("78")
    if rng.random() < 0.2:
        board["count"] = rng.randint(1, 3)
    if rng.random() < 0.2:
        board["thickness"] = "1-1/8"
    if rng.random() < 0.2:
        board["offcut"] = True
    return board


def _part(number: int, file: dict[str, Any], rng: random.Random) -> dict[str, Any]:
    part: dict[str, Any] = {
        "code": f"P{number}",
        "wood": "Cherry",
        "class": "4/4",
        "length": eighths(rng, 6, 45),
        "width": eighths(rng, 1, 9),
        "count": rng.randint(1, 5),
        "face": rng.choice("ABCD"),
        "clear": rng.choice(["both faces", "both faces", "one face"]),
        "grain": rng.choice(["along", "along", "any"]),
        "sizes": rng.choice(["rough", "finished"]),
    }
    if rng.random() < 0.2:
        part |= {"resaw": True, "thickness": rng.choice(["1/4", "3/8"])}
    if rng.random() < 0.2:
        part["width"] = eighths(rng, 9, 22)
        part["glue_up"] = {"narrowest": "2-1/2", "widest": rng.choice(["5", "6", "8"])}
        if rng.random() < 0.5:
            part["glue_up"]["keep_off"] = [{"start": "3", "end": "5"}, {"start": "6", "end": "6-1/2"}]
    if rng.random() < 0.15:
        part["ends"] = "kept"
    if rng.random() < 0.15 and "glue_up" not in part:
        part["placed"] = [
            {
                "on": rng.choice(file["boards"])["code"],
                "from_end": eighths(rng, 0, 40),
                "from_edge": eighths(rng, 0, 3),
            }
        ]
    return part


def _add_set(number: int, file: dict[str, Any], rng: random.Random) -> None:
    parts = rng.sample(file["parts"], min(len(file["parts"]), rng.randint(1, 3)))
    way = rng.choice(["along", "across", "grid", "one tree", "book"])
    codes = [part["code"] for part in parts for _ in range(rng.randint(1, 2)) if part["count"] > 2]
    if len(codes) < 2 or any(code in str(file["sets"]) for code in codes):
        return
    rows = [codes] if way not in ("book", "grid") else [codes[:2]]
    if way == "grid" and len(codes) > 3:
        rows = [codes[:2], codes[2:4]]
    if way == "book":
        for part in parts:
            part.setdefault("thickness", "1/4")
    file["sets"].append({"name": f"set {number}", "way": way, "rows": rows})


def _add_sheets(file: dict[str, Any], rng: random.Random) -> None:
    file["stages"] = rng.choice([2, 3])
    file["sheets"] = [
        {
            "code": f"S{number}",
            "wood": "birch ply",
            "length": rng.choice(["96", "60", "97", "48"]),
            "width": rng.choice(["48", "60", "30"]),
            "grain": rng.choice(["length", "length", "width", "none"]),
            "trim": rng.choice(["0", "1/4", "1/2"]),
            **({"count": rng.randint(1, 4)} if rng.random() < 0.5 else {}),
            **({"cost": f"{rng.randint(20, 90)}.50"} if rng.random() < 0.5 else {}),
            **({"offcut": True} if rng.random() < 0.3 else {}),
        }
        for number in range(rng.randint(1, 3))
    ]
    file["parts"] += [
        {
            "code": f"Q{number}",
            "wood": "birch ply",
            "length": eighths(rng, 5, 50),
            "width": eighths(rng, 3, 30),
            "count": rng.randint(1, 6),
            "grain": rng.choice(["along", "any"]),
        }
        for number in range(rng.randint(1, 6))
    ]


def _add_lengths(file: dict[str, Any], rng: random.Random) -> None:
    file["lengths"] = [
        {
            "code": f"L{number}",
            "wood": "edging",
            "length": eighths(rng, 40, 100),
            "trim": rng.choice(["0", "1/2"]),
            **({"count": rng.randint(1, 6)} if rng.random() < 0.4 else {}),
        }
        for number in range(rng.randint(1, 2))
    ]
    file["parts"] += [
        {"code": f"E{number}", "wood": "edging", "length": eighths(rng, 5, 60), "count": rng.randint(1, 5)}
        for number in range(rng.randint(1, 3))
    ]


def without_waste(seed: int, number: int) -> dict[str, Any]:
    """Boards cut up at random into so many parts, in three stages, so that a layout without waste exists.

    Args:
        seed: which one
        number: how many parts, or a few more

    Returns:
        The cut file as its JSON would be; no ends or edges are cut off, a kerf of 1/8 in is taken.
    """
    rng = random.Random(seed)  # noqa: S311 - no secret is made of it
    parts: list[dict[str, Any]] = []
    boards = []
    while len(parts) < number:
        length, width = rng.randint(70, 130) * 8, rng.randint(6, 11) * 8
        code = f"B{len(boards)}"
        boards.append(
            {
                "code": code,
                "wood": "cherry",
                "class": "4/4",
                "length": written(Fraction(length, 8)),
                "width": written(Fraction(width, 8)),
            }
        )
        for section in _cut(rng, length, 80, 300):
            for strip in _cut(rng, width, 16, 48):
                for piece in _cut(rng, section, 60, 200) if rng.random() < 0.4 else [section]:
                    parts.append(
                        {
                            "code": f"P{len(parts)}",
                            "wood": "cherry",
                            "class": "4/4",
                            "length": written(Fraction(piece, 8)),
                            "width": written(Fraction(strip, 8)),
                        }
                    )
    rng.shuffle(parts)
    return {
        "cut_file": 1,
        "saw": {"kerf": "1/8", "end_trim": "0", "edge": "0"},
        "parts": parts,
        "boards": boards,
    }


def _cut(rng: random.Random, whole: int, least: int, most: int) -> list[int]:
    """A length in eighths cut up at random, a kerf of one eighth between two pieces."""
    pieces = []
    while whole > most + least + 1:
        piece = rng.randint(least, most)
        pieces.append(piece)
        whole -= piece + 1
    return [*pieces, whole]
