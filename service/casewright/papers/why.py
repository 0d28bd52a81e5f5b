"""Why a figure is what it is: its working, and that of the figures it came from, as text."""

from casewright.measure.ledger import Figure, Ledger
from casewright.measure.printing import Style
from casewright.measure.working import Explanation, NoSuchFigure, explain, find
from casewright.papers.writing import Writing
from casewright.pieces.built.asked_for import with_asked
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.parts import SIZES, PartLine

MOST = 40
"""Figures that one answer explains; a wider question lists the rest by name."""


def why(unit: Construction, asked: str, writing: Writing) -> str:
    """The working behind a line of a report, or behind a figure by its name.

    Args:
        unit: the unit, whose ledger holds the working of its estimate too
        asked: a line of the cut list (F5), a part (A-R5-1-SL), a drawer (R5-1), an operation (P04), a figure
        writing: how sizes and money are written

    Returns:
        One paragraph for each figure: what it is, the rule, what went in and from where, and the source.

    Raises:
        NoSuchFigure: nothing has that name; the message names the nearest
    """
    unit = with_asked(unit, asked)
    ledger, style = unit.ledger, Style(length=writing.unit, symbol=writing.symbol)
    names = figures_behind(unit, asked)
    line = _line_called(unit, asked)
    heading = _line_heading(line, writing) if line else ""
    shown: dict[str, Explanation] = {}
    for name in names:
        _follow(ledger, name, style, shown)
    text = [heading, *(_paragraph(explanation) for explanation in list(shown.values())[:MOST])]
    left = list(shown)[MOST:]
    if left:
        text.append(f"and {len(left)} more; ask for one by its name: {', '.join(left[:12])} …")
    return "\n\n".join(block for block in text if block)


def figures_section(ledger: Ledger) -> str:
    """The names of all figures, for a reader who does not know what to ask for.

    Args:
        ledger: the working

    Returns:
        One line for each group of figures.
    """
    groups: dict[str, list[str]] = {}
    for working in ledger:
        head, _, rest = working.figure.partition(".")
        groups.setdefault(head, []).append(rest)
    lines = []
    for head, rests in groups.items():
        inner = [rest for rest in rests if rest]
        words = ", ".join(inner[:6]) + (f" … ({len(inner)})" if len(inner) > 6 else "")
        lines.append(f"{head}.{{{words}}}" if inner else head)
    return "\n".join(lines)


def figures_behind(unit: Construction, asked: str) -> tuple[str, ...]:
    """The figures that a name stands for.

    Args:
        unit: the unit, whose ledger holds the working
        asked: a line, a part, a drawer, an operation or a figure

    Returns:
        Names of figures in the ledger, one at least.

    Raises:
        NoSuchFigure: nothing has that name; the message names the nearest
    """
    asked = asked.strip()
    line = _line_called(unit, asked)
    if line is not None:
        return _line_figures(unit.ledger, line)
    short = asked.removeprefix(f"{unit.spec.code}-")
    found = find(unit.ledger, short if f"{short}.height" in unit.ledger else asked)
    exact = [
        name for name in found if asked in {name, name.rpartition(".")[2]} or _is_under(name, (asked, short))
    ]
    if not exact:
        raise NoSuchFigure(_nothing(unit.ledger, unit, asked))
    return tuple(exact)


def _line_called(unit: Construction, asked: str) -> PartLine | None:
    wanted = asked.strip()
    return next((line for line in unit.lines if wanted == line.line or wanted in line.codes), None)


def _is_under(name: str, heads: tuple[str, ...]) -> bool:
    return any(name.startswith(f"{head}.") for head in heads)


def _line_heading(line: PartLine, writing: Writing) -> str:
    part = line.part
    text = [
        f"{line.line}: {part.name}, {line.quantity} of {part.wood}, "
        f"{writing.sizes(part.thickness, part.width, part.length)}",
        f"codes: {', '.join(line.codes)}",
    ]
    for name in SIZES:
        size = getattr(part, name)
        origin = f"figure {size.name}" if isinstance(size, Figure) else "worked out from the figures below"
        measured = ", measured" if name in part.measured else ""
        text.append(f"{name} {writing.size(size)}{measured}: {origin}")
    return "\n".join(text)


def _line_figures(ledger: Ledger, line: PartLine) -> tuple[str, ...]:
    sizes = [getattr(line.part, name) for name in SIZES]
    finished = [size.name for size in sizes if isinstance(size, Figure)]
    rough = [working.figure for working in ledger if working.figure.startswith(f"{line.line}.")]
    return tuple(dict.fromkeys((*finished, *rough)))


def _follow(ledger: Ledger, name: str, style: Style, shown: dict[str, Explanation]) -> None:
    """A figure, then the figures that it came from, each once."""
    if name in shown or len(shown) > MOST * 4:
        return
    explanation = explain(ledger, name, style)
    shown[name] = explanation
    for given in explanation.inputs:
        if given.origin in ledger:
            _follow(ledger, given.origin, style, shown)
    if explanation.basis.startswith("see figure "):
        _follow(ledger, explanation.basis.removeprefix("see figure ").split(",")[0], style, shown)


def _paragraph(explanation: Explanation) -> str:
    lines = [f"{explanation.figure} = {explanation.value}"]
    if explanation.basis:
        lines.append(f"  given: {explanation.basis}")
        return "\n".join(lines)
    lines.append(f"  {explanation.what}")
    if explanation.rule:
        lines.append(f"  rule: {explanation.rule}")
    lines += [
        f"    {given.name} = {given.value}" + (f"  from {given.origin}" if given.origin else "")
        for given in explanation.inputs
    ]
    lines.append(f"  source: {explanation.source}")
    return "\n".join(lines)


def _nothing(ledger: Ledger, unit: Construction, asked: str) -> str:
    near = (*find(ledger, asked)[:5], *(line.line for line in unit.lines[:1]))
    return (
        f"Nothing here is called “{asked[:40]}”; near it: {', '.join(near)}. Give --why alone for the list."
    )
