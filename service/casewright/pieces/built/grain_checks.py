"""Checks of what is wished of the wood on the face: can its blanks be had, and what is given up?"""

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import say
from casewright.pieces.asked.grain_spec import GrainWishes
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.grain_sets import GrainSet, Way, wished_sets
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.roles import role_of
from casewright.pieces.rules.grain_rules import across_width, along_length
from casewright.wood.movement import Cut
from casewright.wood.rough import rough_length, rough_width
from casewright.wood.thickness import resaw_thickness_needed, usual_classes

USUAL = GrainWishes()


def grain_checks(spec: UnitSpec, face: Face, parts: Sequence[Part], shop: Shop) -> Iterator[Finding]:
    """The checks of matched parts and of other wishes; nothing where none was typed.

    Args:
        spec: what the maker chose
        face: rows and columns
        parts: every part of the unit
        shop: the boards that it can get

    Yields:
        The findings, passes too.

    Raises:
        CannotBuild: a match is given up that the unit has not

    Source: common practice; sizes of blanks by the geometry of the cut.
    """
    wishes = spec.grain
    if wishes == USUAL:
        return
    sets = {found.name.casefold(): found for found in wished_sets(spec, face, parts)}
    reasons = {}
    for number, each in enumerate(wishes.given_up, start=1):
        if each.name.casefold() not in sets:
            raise CannotBuild(_unknown(number, each.name, [found.name for found in sets.values()]))
        reasons[each.name.casefold()] = each.reason
    for name, found in sets.items():
        yield _given_up(found, reasons[name]) if name in reasons else _blank(found, shop)
    if wishes.top != "no" and "top" not in sets:
        yield Finding(
            rule="matched parts",
            verdict=Verdict.CAUTION,
            message="The halves of the top are to match, and this piece has no top of solid wood.",
            remedy="Leave the match of the top out, or give the piece a top.",
        )
    yield from _quartered(wishes, parts)
    yield from _without_sap(wishes, parts)


def _unknown(number: int, name: str, known: list[str]) -> str:
    near = get_close_matches(name, known, n=1)
    hint = f"did you mean {near[0]}?" if near else f"there are {', '.join(known)}" if known else ""
    where = f"grain.given_up.{number}.name"
    return f"{where}: nothing called {name} is matched" + (f"; {hint}" if hint else " in this piece")


def _given_up(found: GrainSet, reason: str) -> Finding:
    return Finding(
        rule="match given up",
        verdict=Verdict.CAUTION,
        message=say("The {} do not match: {}.", found.name, reason.rstrip(".")),
        remedy="It is named on the drawing and the quote: have the customer sign it.",
        about=found.parts[0].code,
    )


def _blank(found: GrainSet, shop: Shop) -> Finding:
    """The blank of a set, and whether a single board can be it."""
    parts, spec, widest = found.parts, shop.spec, shop.spec.widest_board
    about = found.parts[0].code
    if found.way in (Way.BOOK, Way.SLIP):
        return _sawn_in_two(found, shop)
    if found.way is Way.ONE_TREE:
        return Finding(
            rule="matched parts",
            verdict=Verdict.PASS,
            message=say(
                "{}: mark the boards of one log at the yard, for {:d} parts.", found.name, len(parts)
            ),
            about=about,
        )
    along = found.way in (Way.ALONG, Way.GRID)
    length = (
        max(
            along_length(
                lengths=sum(part.length for part in row),
                parts=len(row),
                kerf=spec.kerf,
                trim=spec.end_trim,
            )
            for row in found.rows
        )
        if along
        else rough_length(max(part.length for part in parts))
    )
    stacked = parts if found.way is Way.ACROSS else tuple(row[0] for row in found.rows)
    width = (
        rough_width(max(part.width for part in parts))
        if found.way is Way.ALONG
        else across_width(
            widths=sum(part.width for part in stacked),
            parts=len(stacked),
            kerf=spec.kerf,
            edge=spec.edge_trim,
        )
    )
    is_panel = width > widest
    return Finding(
        rule="matched parts",
        verdict=Verdict.CAUTION if is_panel and found.way is Way.ALONG else Verdict.PASS,
        message=say("The {} take one blank {:bare} wide and {} long.", found.name, width, length),
        remedy=say(
            "No board is over {} wide: glue the blank up from one log before they are cut, or give the match "
            "up.",
            widest,
        )
        if is_panel and found.way is Way.ALONG
        else "",
        about=about,
        found=float(width),
        needed=float(widest) if found.way is Way.ALONG else None,
        source="geometry of the cut",
    )


def _sawn_in_two(found: GrainSet, shop: Shop) -> Finding:
    """A board thick enough to be sawn in two, and wide enough for the parts."""
    part = max(found.parts, key=lambda each: each.thickness)
    needed = resaw_thickness_needed(part.thickness)
    width = rough_width(max(each.width for each in found.parts) / (2 if found.halves else 1))
    bought = next((each for each in usual_classes() if each.rough >= needed - 1e-9), None)
    thickest = max(each.rough for each in usual_classes())
    wide = width > shop.spec.widest_board
    opened = "opened like a book" if found.way is Way.BOOK else "slipped side by side"
    if bought is None:
        verdict, remedy = (
            Verdict.STOP,
            say("The thickest board is {}: make the part thinner, or match it in sequence.", thickest),
        )
    elif wide:
        verdict, remedy = (
            Verdict.CAUTION,
            say(
                "No board is over {} wide: saw and glue it from several boards, each pair opened in turn.",
                shop.spec.widest_board,
            ),
        )
    else:
        verdict, remedy = Verdict.PASS, say("")
    return Finding(
        rule="matched parts",
        verdict=verdict,
        message=say(
            "The {}, {}, take a board {:up} thick or more, {} wide{}.",
            found.name,
            opened,
            needed,
            width,
            f": {bought.name}" if bought else "",
        ),
        remedy=remedy if verdict is not Verdict.PASS else "",
        about=found.parts[0].code,
        found=float(needed),
        needed=float(thickest),
        source="geometry of the cut",
    )


def _quartered(wishes: GrainWishes, parts: Sequence[Part]) -> Iterator[Finding]:
    for role in dict.fromkeys(wishes.quarter):
        found = [part for part in parts if role_of(part) == role and not part.sheet]
        wrong = [part for part in found if part.cut is not Cut.QUARTER]
        if found:
            yield Finding(
                rule="quartersawn",
                verdict=Verdict.STOP if wrong else Verdict.PASS,
                message=f"{len(found) - len(wrong)} of {len(found)} parts ({role}) are quartersawn."
                if wrong
                else f"All {len(found)} parts ({role}) are quartersawn.",
                remedy="Choose quartersawn wood for them, or take the wish away." if wrong else "",
                about=(wrong or found)[0].code,
            )


def _without_sap(wishes: GrainWishes, parts: Sequence[Part]) -> Iterator[Finding]:
    for role in dict.fromkeys(wishes.no_sap):
        found = [part for part in parts if role_of(part) == role and not part.sheet]
        if found:
            yield Finding(
                rule="no sapwood",
                verdict=Verdict.PASS,
                message=f"{len(found)} parts ({role}) show no sapwood: lay them out inside the sap line.",
                about=found[0].code,
            )
