"""What a lot asks to be laid out: every part as a blank, sets together, and what may be glued up."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from casewright.cutting.asked.parts_spec import CutPart, GrainSet, Saw
from casewright.cutting.plans.blanks import Blank, Broken, matched, single
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.lots import Lot
from casewright.cutting.plans.strips import Panel, panel_of, strip_counts


@dataclass(slots=True)
class Wanted:
    """What is to be laid out.

    Attributes:
        blanks: what is cut in one piece
        panels: what may be glued up
        broken: sets that cannot be kept with the stock that there is
    """

    blanks: list[Blank] = field(default_factory=list)
    panels: list[Panel] = field(default_factory=list)
    broken: list[Broken] = field(default_factory=list)


def fits(blank: Blank, ground: Ground) -> bool:
    """Could a blank lie on a board on which nothing else lies?

    Args:
        blank: the blank
        ground: the board or sheet

    Returns:
        Whether the board is large and thick enough; its defects are not asked.

    Source: geometry.
    """
    spot = ground.usable.flipped() if ground.grain_across else ground.usable
    if ground.thickness < blank.thickness:
        return False
    if blank.length <= spot.length and blank.width <= spot.width:
        return True
    may_turn = blank.may_turn or not ground.has_grain
    return may_turn and blank.width <= spot.length and blank.length <= spot.width


def fits_any(blank: Blank, grounds: Iterable[Ground]) -> bool:
    """Could a blank lie on one of some boards?

    Args:
        blank: the blank
        grounds: the boards or sheets

    Returns:
        Whether one is large and thick enough.

    Source: geometry.
    """
    return any(fits(blank, ground) for ground in grounds)


def wanted(lot: Lot, saw: Saw) -> Wanted:
    """What a lot asks to be laid out; what was put by hand is not in it.

    Args:
        lot: the lot
        saw: kerf and allowances

    Returns:
        Blanks, and what may be glued up.

    Source: common practice.
    """
    found = Wanted()
    left = Counter({part.code: part.count - len(part.placed) for part in lot.parts})
    for asked in lot.sets:
        _add_set(found, asked, lot, saw, left)
    for part in lot.parts:
        _add_part(found, part, lot, saw, left[part.code])
    trees = {
        code: each.name for each in lot.sets if each.way == "one tree" for row in each.rows for code in row
    }
    if trees:
        found.blanks = [_of_tree(blank, trees) for blank in found.blanks]
        found.panels = [replace(panel, blank=_of_tree(panel.blank, trees)) for panel in found.panels]
    return found


def _of_tree(blank: Blank, trees: dict[str, str]) -> Blank:
    names = [trees[code] for code in blank.codes if code in trees]
    return replace(blank, one_tree=names[0]) if names else blank


def _add_set(found: Wanted, asked: GrainSet, lot: Lot, saw: Saw, left: Counter[str]) -> None:
    """The blanks of a set, if the stock holds them; else its parts stay by themselves."""
    if asked.way == "one tree":
        return
    needed = Counter(code for row in asked.rows for code in row)
    if any(left[code] < number for code, number in needed.items()):
        found.broken.append(Broken(name=asked.name, way=asked.way, reason="some of it was put by hand"))
        return
    parts = lot.by_code
    blanks = matched(asked, parts, saw, has_allowance=not lot.is_sheets)
    glue = asked.glue_up or parts[asked.rows[0][0]].glue_up
    if all(fits_any(blank, lot.grounds) for blank in blanks):
        found.blanks += blanks
    elif asked.way in ("along", "across", "grid") and glue and strip_counts(panel_of(blanks[0], glue, saw)):
        found.panels.append(panel_of(blanks[0], glue, saw))
    else:
        thick = asked.way in ("book", "slip") and not any(
            ground.thickness >= blanks[0].thickness for ground in lot.grounds
        )
        what = "thick" if thick else "large"
        found.broken.append(
            Broken(name=asked.name, way=asked.way, reason=f"no board is {what} enough for it in one piece")
        )
        return
    left.subtract(needed)


def _add_part(found: Wanted, part: CutPart, lot: Lot, saw: Saw, number: int) -> None:
    """Parts by themselves: glued up, two from one thickness, or one from one board."""
    blank = single(part, saw, has_allowance=not lot.is_sheets)
    if part.glue_up and strip_counts(panel := panel_of(blank, part.glue_up, saw)):
        found.panels += [panel] * number
        return
    if part.resaw and number > 1:
        pair = single(part, saw, has_allowance=not lot.is_sheets, second=part)
        if fits_any(pair, lot.grounds):
            found.blanks += [pair] * (number // 2)
            number %= 2
    found.blanks += [blank] * number
