"""From how many strips, and how wide ones, a glued-up part is made."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.cutting.asked.parts_spec import GlueUp, Saw
from casewright.cutting.plans.blanks import Blank
from casewright.cutting.plans.ground import Ground
from casewright.measure.lengths import to_ticks
from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import TICKS_PER_INCH, Count, Ticks

FINE: Ticks = TICKS_PER_INCH // 64
MOST_STRIPS = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A blank that may be glued up.

    Attributes:
        blank: the blank in one piece, its width without any jointing
        narrowest: narrowest strip as it is sawn [tick]
        widest: widest strip as it is sawn [tick]
        strips: just so many; 0 for as many as suit [dimensionless]
        jointing: what jointing both edges takes of each strip [tick]
    """

    blank: Blank
    narrowest: Ticks
    widest: Ticks
    strips: Count
    jointing: Ticks


def panel_of(blank: Blank, glue: GlueUp, saw: Saw) -> Panel:
    """A blank that may be glued up, with its limits.

    Args:
        blank: the blank in one piece
        glue: how it may be glued up
        saw: what jointing takes

    Returns:
        The panel.

    Source: common practice.
    """
    return Panel(
        blank=blank,
        narrowest=to_ticks(glue.narrowest),
        widest=to_ticks(glue.widest),
        strips=glue.strips or 0,
        jointing=to_ticks(saw.jointing),
    )


def strip_counts(panel: Panel) -> tuple[Count, ...]:
    """From how many strips a panel can be made within its limits.

    Args:
        panel: the panel

    Returns:
        The counts, the fewest first; empty where none keeps the limits [dimensionless]

    Source: arithmetic: each strip gives its width less its jointing.
    """
    if panel.strips:
        return (panel.strips,) if equal_strips(panel, panel.strips) else ()
    return tuple(count for count in range(1, MOST_STRIPS + 1) if equal_strips(panel, count))


def equal_strips(panel: Panel, count: Count) -> tuple[Ticks, ...]:
    """A panel in strips that are equally wide.

    Rule: width / count + jointing, rounded up to 1/64 in; one strip alone is not jointed

    Args:
        panel: the panel
        count: how many strips [dimensionless]

    Returns:
        The width of each as it is sawn; empty where that is beyond the limits [tick]

    Source: common practice.
    """
    if count == 1:
        width = panel.blank.width
        return (width,) if width <= panel.widest else ()
    share = -(-panel.blank.width // count) + panel.jointing
    width = -(-share // FINE) * FINE
    if width < panel.narrowest and count == 2 and panel.blank.width < 2 * panel.narrowest:
        return ()
    return (width,) * count if panel.narrowest - TOLERANCE <= width <= panel.widest else ()


def fitted_strips(panel: Panel, widths: Sequence[Ticks]) -> tuple[Ticks, ...]:
    """A panel in strips as wide as boards are, so that they need not be ripped; the last as it comes out.

    Args:
        panel: the panel
        widths: usable widths of boards, in the order in which they are tried [tick]

    Returns:
        The width of each strip as it is sawn; empty where that does not come out within the limits [tick]

    Source: common practice.
    """
    left = panel.blank.width
    strips: list[Ticks] = []
    for width in widths:
        wide = min(width, panel.widest)
        if wide < panel.narrowest:
            continue
        last = left + panel.jointing
        if last <= wide:
            if last < panel.narrowest and strips:
                # The last two share what is left, so that neither is a sliver.
                both = strips.pop() + last
                half = -(-both // (2 * FINE)) * FINE
                strips += [half, half]
            else:
                strips.append(max(last, panel.narrowest))
            kept = all(panel.narrowest <= strip <= panel.widest for strip in strips)
            exact = not panel.strips or len(strips) == panel.strips
            return tuple(strips) if kept and exact and len(strips) > 1 else ()
        strips.append(wide)
        left -= wide - panel.jointing
    return ()


def choices(panel: Panel, grounds: Sequence[Ground]) -> Iterator[tuple[Ticks, ...]]:
    """The ways in which a panel may be made, the plainest first.

    Args:
        panel: the panel
        grounds: the boards that there are

    Returns:
        Widths of strips as they are sawn [tick]

    Source: common practice: few glue lines first.
    """
    counts = strip_counts(panel)
    for count in counts[:4]:
        yield equal_strips(panel, count)
    widths = sorted({ground.usable.width for ground in grounds}, reverse=True)
    for start in range(min(len(widths), 4)):
        strips = fitted_strips(panel, widths[start:] + widths[:start] * MOST_STRIPS)
        if strips:
            yield strips
    for width in widths[:4]:
        strips = fitted_strips(panel, [width] * MOST_STRIPS)
        if strips:
            yield strips
