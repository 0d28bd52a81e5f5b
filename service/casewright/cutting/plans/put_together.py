"""How the strips of each panel lie side by side, so that glue lines keep off joints."""

from collections.abc import Iterator, Sequence

from casewright.cutting.asked.parts_spec import Saw
from casewright.cutting.panels.gluing import put_together
from casewright.cutting.plans.lots import Lot
from casewright.cutting.plans.strips import Panel
from casewright.cutting.plans.values import BoardLayout, Glued, Laid, Mark
from casewright.measure.lengths import to_ticks
from casewright.measure.units import Ticks


def glued_panels(
    boards: Sequence[BoardLayout], panels: Sequence[Panel], lot: Lot, saw: Saw
) -> Iterator[Glued]:
    """Every panel that is glued up from strips, and in which order.

    Args:
        boards: where the strips lie
        panels: what may be glued up
        lot: their lot
        saw: what jointing takes

    Returns:
        One entry for each panel of two strips or more.

    Source: common practice: a glue line in a half pin or at the edge of a groove opens.
    """
    strips: dict[Mark, list[Laid]] = {}
    for board in boards:
        for laid in board.laid:
            if laid.strips > 1:
                strips.setdefault(laid.mark, []).append(laid)
    widths = {
        panel.blank.matched if len(panel.blank.inside) > 1 else panel.blank.inside[0].code: panel.blank.width
        for panel in panels
    }
    jointing = to_ticks(saw.jointing)
    for mark, held in strips.items():
        nets = {laid.strip: laid.spot.width - jointing for laid in held}
        order, trimmed, is_clear = put_together(
            tuple(nets.values()), widths[mark.code], _kept_off(mark.code, lot)
        )
        left = dict(sorted(nets.items()))
        numbers = [_take(left, net) for net in order]
        yield Glued(mark=mark, order=tuple(numbers), nets=tuple(order), trimmed=trimmed, is_clear=is_clear)


def _take(left: dict[int, Ticks], net: Ticks) -> int:
    """The first strip that is so wide and has no place yet."""
    number = next(number for number, width in left.items() if width == net)
    del left[number]
    return number


def _kept_off(code: str, lot: Lot) -> tuple[tuple[Ticks, Ticks], ...]:
    """Where no glue line of a part or set may lie."""
    part = lot.by_code.get(code)
    glue = part.glue_up if part else None
    if part is None:
        asked = next(each for each in lot.sets if each.name == code)
        glue = asked.glue_up or lot.by_code[asked.rows[0][0]].glue_up
    return tuple((to_ticks(each.start), to_ticks(each.end)) for each in glue.keep_off) if glue else ()
