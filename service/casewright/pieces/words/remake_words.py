"""What the bench makes again after a change, in words that are read beside a vise."""

from collections.abc import Iterable, Iterator

from casewright.measure.saying import Words, say
from casewright.pieces.built.remakes import Remake
from casewright.pieces.built.rework_alike import Alike, alike
from casewright.pieces.built.rework_fates import Fate, PartFate, noun_of
from casewright.pieces.built.rework_stages import CASE
from casewright.pieces.words.wording import plural_of_part

MOST_KINDS = 4
"""So many kinds of parts are named in a line of the board before the rest is counted."""
DRAWER = "drawer "


def short_words(remake: Remake) -> str:
    """What is made again, in the one line that fits on a board.

    Args:
        remake: what is made again of a drawer or the case

    Returns:
        Such as `new: front, 2 sides; cut down: bottom`.

    Source: common practice.
    """
    told = [f"use the drawer made for {remake.taken_from}"] if remake.taken_from else []
    told += [f"new: {_named(remake.fresh, remake)}"] if remake.fresh else []
    told += [f"cut down: {_named(remake.cut, remake)}"] if remake.cut else []
    return "; ".join(told)


def full_words(remake: Remake) -> Iterator[Words]:
    """The same part by part, with sizes, and what stays.

    Args:
        remake: what is made again of a drawer or the case

    Yields:
        A line for parts that are alike.

    Source: common practice.
    """
    for each in alike(remake.fresh):
        yield say("Make new: {}, {}.", _counted(each, remake), _sizes(each.one))
    for each in alike(remake.cut):
        where = f" to serve as {each.one.becomes}" if each.one.becomes != each.one.code else ""
        if each.one.fate is Fate.MODIFIED:
            yield say("Cut down: {}{}: {}", _counted(each, remake), where, each.one.reason)
        else:
            yield f"Use {_counted(each, remake)}{where}."
    if remake.stay and not remake.taken_from:
        yield f"Stays: {_named(remake.stay, remake, most=99)}."


def _sizes(part: PartFate) -> Words:
    thick, wide, long = part.after
    return say("{:bare} × {:bare} × {} of {}", thick, wide, long, part.wood)


def _noun(noun: str, remake: Remake) -> str:
    return noun if remake.assembly == CASE else noun.removeprefix(DRAWER)


def _counted(each: Alike, remake: Remake) -> str:
    if remake.assembly == CASE and len(each.parts) == 1:
        return f"{each.one.name[:1].lower()}{each.one.name[1:]}"  # front and back rail are told apart
    return _several(len(each.parts), _noun(each.noun, remake))


def _several(count: int, noun: str) -> str:
    return noun if count == 1 else f"{count} {plural_of_part(noun)}"


def _named(parts: Iterable[PartFate], remake: Remake, most: int = MOST_KINDS) -> str:
    """The kinds of some parts with their numbers, such as `front, 2 sides`."""
    kinds: dict[str, int] = {}
    for each in parts:
        noun = _noun(noun_of(each.name), remake)
        kinds[noun] = kinds.get(noun, 0) + 1
    told = [_several(count, noun) for noun, count in kinds.items()]
    rest = sum([*kinds.values()][most:])
    return ", ".join((*told[:most], *([f"{rest} more"] if rest else [])))
