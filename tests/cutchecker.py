"""Looks over an answer of `casewright cut` against the cut file that it answers, and believes nothing of it.

It reads the JSON of both, has its own reader for sizes and its own geometry, and imports nothing of the
program. What it asks is physics and the file's own wishes, not how the program works.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Any

from askedcuts import Asked
from gluedcuts import glued_faults
from straightcuts import (
    HAIR,
    Rectangle,
    comes_apart,
    leaves_of,
    overlap,
    rectangle,
    takes_stages,
    tree_faults,
)


def complaints(file: dict[str, Any], answer: dict[str, Any]) -> list[str]:
    """Everything that is wrong with an answer; empty where nothing is."""
    asked = Asked(file)
    return [
        *_counts(asked, answer),
        *(
            f"{board['stock']} no. {board['number']}: {wrong}"
            for lot in answer["lots"]
            for board in lot["layouts"]
            for wrong in _board(asked, board, lot)
        ),
        *(
            f"{bar['stock']} no. {bar['number']}: {wrong}"
            for lot in answer["lots"]
            for bar in lot["lengths"]
            for wrong in _bar(asked, bar)
        ),
        *glued_faults(asked, answer),
        *_sets(asked, answer),
        *_ways_out(answer),
        *_money(asked, answer),
    ]


# How many of what


def _counts(asked: Asked, answer: dict[str, Any]) -> Iterator[str]:
    laid = [each for lot in answer["lots"] for held in _held(lot) for each in held["parts"]]
    marks = Counter(
        (each["code"], each["number"], first.get("strip") or 0)
        for first in laid
        for each in (first, first.get("second"))
        if each
    )
    yield from (f"{mark} is cut {times} times" for mark, times in marks.items() if times > 1)
    made = _made(laid, answer)
    glued_sets = [name for name in asked.sets if made[name]]
    for name in glued_sets:
        made.update(code for row in asked.sets[name]["rows"] for code in row)
    for code, part in asked.parts.items():
        if made[code] != part.get("count", 1):
            yield f"{made[code]} of {code} are accounted for, of {part.get('count', 1)}"
    if unknown := made.keys() - asked.parts.keys() - asked.sets.keys():
        yield f"nobody asked for {sorted(unknown)}"
    yield from _stock_is_there(asked, answer)


def _held(lot: dict[str, Any]) -> list[dict[str, Any]]:
    return [*lot["layouts"], *lot["lengths"]]


def _made(laid: Sequence[dict[str, Any]], answer: dict[str, Any]) -> Counter[str]:
    """How many of each part are cut, or told to have no place; of a panel its first strip counts."""
    made: Counter[str] = Counter()
    for each in laid:
        if (each.get("strip") or 1) == 1:
            made[each["code"]] += 1
        if each.get("second"):
            made[each["second"]["code"]] += 1
    for lot in answer["lots"]:
        for each in lot["unplaced"]:
            made[each["code"]] += each["count"]
        made.update(each["code"] for each in lot["not_where_put"])
    return made


def _stock_is_there(asked: Asked, answer: dict[str, Any]) -> Iterator[str]:
    used = Counter((held["stock"], held["number"]) for lot in answer["lots"] for held in _held(lot))
    for (code, number), times in used.items():
        if times > 1:
            yield f"{code} no. {number} is cut {times} times"
        stock = asked.boards.get(code) or asked.sheets.get(code) or asked.lengths[code]
        if stock.get("spare") and not any(
            hand["on"] == code for part in asked.parts.values() for hand in part.get("placed", ())
        ):
            yield f"{code} is spare and was not to be cut"
        limit = stock.get("count", 1 if code in asked.boards else None)
        if limit is not None and number > limit:
            yield f"{code} no. {number} does not exist"


# One board


def _board(asked: Asked, board: dict[str, Any], lot: dict[str, Any]) -> Iterator[str]:
    stock = asked.boards.get(board["stock"]) or asked.sheets[board["stock"]]
    if stock["wood"].lower() != lot["wood"].lower() or stock.get("class") != lot["class"]:
        yield "it is of another wood or class than its lot"
    laid = board["parts"]
    if not laid:
        yield "nothing is cut from it"
    for number, one in enumerate(laid):
        yield from _laid(asked, one, stock, lot)
        for other in laid[number + 1 :]:
            if overlap(rectangle(one), rectangle(other), asked.kerf):
                yield f"{one['code']} and {other['code']} leave no kerf between them"
    spots = [rectangle(each) for each in laid]
    if not comes_apart(spots, asked.kerf):
        yield "no straight cuts take it apart"
    if board["stock"] in asked.sheets:
        yield from _stages(asked, board, lot)
    yield from tree_faults(board["cuts"], asked.kerf)
    leaves = sorted(rectangle(leaf) for leaf in leaves_of(board["cuts"]) if "part" in leaf)
    if len(leaves) != len(spots) or not all(
        math.isclose(one, other, abs_tol=HAIR)
        for leaf, spot in zip(leaves, sorted(spots), strict=False)
        for one, other in zip(leaf, spot, strict=True)
    ):
        yield "its cuts do not give its parts"
    for left in board["left"]:
        if any(overlap(rectangle(left), spot) for spot in spots):
            yield "what is left over lies where a part lies"
    outer = _outer(asked, stock)
    used = sum(length * width for _, _, length, width in spots) / (outer[2] * outer[3])
    if abs(used * 100 - board["percent_used"]) > 0.02:
        yield f"{used * 100:.2f} % of it is used, not {board['percent_used']}"


def _stages(asked: Asked, board: dict[str, Any], lot: dict[str, Any]) -> Iterator[str]:
    """Are the stages kept, or named as broken where what was put by hand or matches lies across them?"""
    laid = board["parts"]
    spots = [rectangle(each) for each in laid]
    does = any(takes_stages(spots, axis, asked.stages, asked.kerf) for axis in (0, 1))
    is_free = not any(each["by_hand"] or each["set"] for each in laid) and not lot["sets_broken"]
    if not does and board["stages_kept"]:
        yield f"it takes more than {asked.stages} stages and does not say so"
    if not does and is_free:
        yield f"it takes more than {asked.stages} stages"
    if does and is_free and not board["stages_kept"]:
        yield f"it is said to take more than {asked.stages} stages and does not"


def _outer(asked: Asked, stock: dict[str, Any]) -> Rectangle:
    widths = [stock[name] for name in ("width", "width_middle", "width_end") if stock.get(name)]
    return 0.0, 0.0, asked.size(stock["length"]), max(map(asked.size, widths))


def _laid(asked: Asked, laid: dict[str, Any], stock: dict[str, Any], lot: dict[str, Any]) -> Iterator[str]:
    spot = rectangle(laid)
    code = laid["code"]
    names = [code, *([laid["second"]["code"]] if laid["second"] else [])]
    if code in asked.sets:
        names = [each for row in asked.sets[code]["rows"] for each in row]
    parts = [asked.parts[name] for name in names]
    for part in parts:
        if part["wood"].lower() != stock["wood"].lower() or part.get("class") != stock.get("class"):
            yield f"{code} is of another wood or class"
    yield from _inside(asked, laid, stock)
    across = stock.get("grain") == "width"
    along, wide = spot[2:] if laid["turned"] == across else spot[3:1:-1]
    if laid["turned"] and not (
        all(part.get("grain") == "any" for part in parts) or stock.get("grain") == "none"
    ):
        yield f"{code} lies across the grain"
    if laid["turned"] and any(part.get("ends") == "kept" for part in parts):
        yield f"{code} should keep its first end first"
    if not laid["strip"]:
        sizes = [asked.part_size(name) for name in names]
        want = max(length for length, _ in sizes), max(width for _, width in sizes)
        if not (math.isclose(along, want[0], abs_tol=HAIR) and math.isclose(wide, want[1], abs_tol=HAIR)):
            yield f"{code} is {along:g} × {wide:g}, not {want[0]:g} × {want[1]:g}"
    if not laid["by_hand"]:
        yield from _wood_is_fit(asked, laid, stock, parts)
    if laid["second"]:
        thick = max(asked.size(part["thickness"]) for part in parts)
        needed = 2 * (thick + asked.saw["cleaning"]) + asked.saw["resaw_kerf"]
        name = stock["class"].split("/")
        has = asked.size(stock["thickness"]) if stock.get("thickness") else int(name[0]) / int(name[1])
        if has < needed - HAIR:
            yield f"{code} and its second need {needed:g} of thickness; it has {has:g}"


def _inside(asked: Asked, laid: dict[str, Any], stock: dict[str, Any]) -> Iterator[str]:
    x, y, length, width = rectangle(laid)
    outer = _outer(asked, stock)
    if laid["by_hand"]:
        hands = [
            (asked.size(hand["from_end"]), asked.size(hand["from_edge"]))
            for hand in asked.parts[laid["code"]]["placed"]
            if hand["on"] == stock["code"]
        ]
        if not any(abs(x - end) < 1e-4 and abs(y - edge) < 1e-4 for end, edge in hands):
            yield f"{laid['code']} was moved from where it was put by hand"
        if x < -HAIR or y < -HAIR or x + length > outer[2] + HAIR or y + width > outer[3] + HAIR:
            yield f"{laid['code']} reaches beyond it"
        return
    trim, edge = (
        (asked.saw["end_trim"], asked.saw["edge"])
        if "class" in stock
        else (asked.size(stock.get("trim", "1/4 in")),) * 2
    )
    if x < trim - HAIR or x + length > outer[2] - trim + HAIR:
        yield f"{laid['code']} reaches into an end that is cut off"
    narrow = min(_width_at(asked, stock, place) for place in _places(asked, stock, x, x + length))
    if y < edge - HAIR or y + width > narrow - edge + HAIR:
        yield f"{laid['code']} reaches into an edge that is cut off"


def _places(asked: Asked, stock: dict[str, Any], start: float, end: float) -> list[float]:
    """Where a board may be narrowest between two places: at either, or in the middle of the board."""
    middle = asked.size(stock["length"]) / 2
    return [start, end, *([middle] if start < middle < end else [])]


def _width_at(asked: Asked, stock: dict[str, Any], place: float) -> float:
    length, first = asked.size(stock["length"]), asked.size(stock["width"])
    last = asked.size(stock["width_end"]) if stock.get("width_end") else first
    marks = [(0.0, first), (length, last)]
    if stock.get("width_middle"):
        marks.insert(1, (length / 2, asked.size(stock["width_middle"])))
    for (x0, w0), (x1, w1) in pairwise(marks):
        if x0 <= place <= x1:
            return w0 + (w1 - w0) * (place - x0) / (x1 - x0)
    return min(first, last)


def _wood_is_fit(
    asked: Asked, laid: dict[str, Any], stock: dict[str, Any], parts: Sequence[dict[str, Any]]
) -> Iterator[str]:
    spot = rectangle(laid)
    needs_both = any(part.get("clear", "both faces") == "both faces" for part in parts)
    for defect in stock.get("defects", []):
        place = tuple(asked.size(defect[name]) for name in ("from_end", "from_edge", "length", "width"))
        if overlap(spot, place) and (needs_both or defect.get("face", "both") != "back"):  # type: ignore[arg-type]
            yield f"{laid['code']} has a defect in it"
    if any(part.get("face") == "A" for part in parts):
        near, far = asked.size(stock.get("sap_near", 0)), asked.size(stock.get("sap_far", 0))
        if near and spot[1] < near - HAIR:
            yield f"{laid['code']} has sapwood on its near edge"
        narrow = min(
            _width_at(asked, stock, place) for place in _places(asked, stock, spot[0], spot[0] + spot[2])
        )
        if far and spot[1] + spot[3] > narrow - far + HAIR:
            yield f"{laid['code']} has sapwood on its far edge"


# Lengths


def _bar(asked: Asked, bar: dict[str, Any]) -> Iterator[str]:
    stock = asked.lengths[bar["stock"]]
    trim = asked.size(stock.get("trim", 0))
    place, end = trim, asked.size(stock["length"]) - trim
    for number, each in enumerate(bar["parts"]):
        if asked.parts[each["code"]]["wood"].lower() != stock["wood"].lower():
            yield f"{each['code']} is of another kind"
        if each["from_end_in"] < place + (asked.kerf if number else 0) - HAIR:
            yield f"{each['code']} leaves no kerf before it"
        if abs(each["length_in"] - asked.part_size(each["code"])[0]) > HAIR:
            yield f"{each['code']} has another length"
        place = each["from_end_in"] + each["length_in"]
    if place > end + HAIR:
        yield "more is cut from it than there is"


# Ways out


def _ways_out(answer: dict[str, Any]) -> Iterator[str]:
    """Each speaks of parts without a place, counts them rightly, and stands behind none that is better."""
    for lot in answer["lots"]:
        short = Counter({each["code"]: each["count"] for each in lot["unplaced"]})
        before = (0, 0)
        for way in lot["ways_out"]:
            if Counter(way["parts"]) - short:
                yield f"{way['words']}: it places parts that have a place"
            if len(way["parts"]) + way["still_without_place"] != short.total():
                yield f"{way['words']}: it does not count the parts without a place"
            rank = (way["still_without_place"], way["cost"])
            if rank < before:
                yield f"{way['words']}: a way before it is worse"
            before = rank
            if bool(way["boards"]) != bool(way["cost"]):
                yield f"{way['words']}: it costs something and takes nothing, or the other way round"


# Sets and money


def _sets(asked: Asked, answer: dict[str, Any]) -> Iterator[str]:
    broken = {each["name"] for lot in answer["lots"] for each in lot["sets_broken"]}
    where: dict[str, list[tuple[str, int, dict[str, Any], str]]] = defaultdict(list)
    for lot in answer["lots"]:
        for board in lot["layouts"]:
            stock = asked.boards.get(board["stock"]) or asked.sheets[board["stock"]]
            for laid in board["parts"]:
                place = (board["stock"], board["number"], laid, stock.get("log", ""))
                for code in {laid["code"], (laid["second"] or laid)["code"]}:
                    where[code].append(place)
    for name, each in asked.sets.items():
        if name in broken or name in where:
            continue
        codes = [code for row in each["rows"] for code in row]
        if each["way"] == "one tree":
            logs = {place[3] for code in codes for place in where[code]}
            if len(logs) != 1 or "" in logs:
                yield f"set {name} comes from the logs {sorted(logs)}"
        elif each["way"] in ("book", "slip"):
            for row in each["rows"]:
                pairs = [
                    sorted((place[2]["code"], place[2]["second"]["code"]))
                    for place in where[row[0]]
                    if place[2]["second"]
                ]
                if sorted(row) not in pairs:
                    yield f"set {name}: {row} do not come from one thickness"
        elif not _follows(asked, each, where):
            yield f"set {name} does not lie as it should"


def _follows(asked: Asked, each: dict[str, Any], where: dict[str, Any]) -> bool:
    """Do the parts lie kerf by kerf, in order, on one board?"""
    rows = [[code] for code in each["rows"][0]] if each["way"] == "across" else each["rows"]
    for stock, number, first, _ in where[rows[0][0]]:
        x0, y0 = first["from_end_in"], first["from_edge_in"]
        flipped = stock in asked.sheets and asked.sheets[stock].get("grain") == "width"
        y, fine = 0.0, True
        for row in rows:
            x, widest = 0.0, 0.0
            for code in row:
                at = (x0 + y, y0 + x) if flipped else (x0 + x, y0 + y)
                fine = fine and any(
                    (place[0], place[1]) == (stock, number)
                    and abs(place[2]["from_end_in"] - at[0]) < HAIR
                    and abs(place[2]["from_edge_in"] - at[1]) < HAIR
                    for place in where[code]
                )
                length, width = asked.part_size(code)
                x, widest = x + length + asked.kerf, max(widest, width)
            y += widest + asked.kerf
        if fine:
            return True
    return False


def _money(asked: Asked, answer: dict[str, Any]) -> Iterator[str]:
    complete = True
    for lot in answer["lots"]:
        held = _held(lot)
        if lot["cost"] != sum(each["cost"] for each in held):
            yield f"{lot['wood']}: the costs do not add up"
        if lot["bound"] > lot["cost_counted"]:
            yield f"{lot['wood']}: the bound is above the cost"
        if lot["proven_best"] and lot["bound"] != lot["cost_counted"]:
            yield f"{lot['wood']}: it is called proven and the bound is below"
        if sum(each["taken"] for each in lot["tried"]) > 1:
            yield f"{lot['wood']}: two ways are taken"
        for board in held:
            stock = (
                asked.boards.get(board["stock"])
                or asked.sheets.get(board["stock"])
                or asked.lengths[board["stock"]]
            )
            if stock.get("cost") and round(float(stock["cost"]) * 100) != board["cost"]:
                yield f"{board['stock']} costs {stock['cost']}, not {board['cost']}"
        complete = complete and not lot["unplaced"] and not lot["not_where_put"]
    if answer["complete"] != complete:
        yield "it is called complete and is not, or the other way round"
