"""Why a figure is what it is: one entry of the ledger, explained from its own rule."""

import difflib
import inspect
from collections.abc import Callable
from dataclasses import dataclass

from casewright.measure.docstrings import Docstring, read_docstring, without_unit
from casewright.measure.ledger import Figure, Ledger, WholeFigure, Working
from casewright.measure.printing import SHOP, Style, hints, show_value
from casewright.measure.saying import in_unit, written_in

NEAREST = 8
LONGEST_PATTERN = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """One thing that went into a figure.

    Attributes:
        name: the argument's name in the rule
        meaning: what the rule's docstring says of it
        value: what it was, with its unit
        origin: the figure of the ledger that it came from, or those that it is a list of; empty for none
    """

    name: str
    meaning: str
    value: str
    origin: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """One figure with its whole working, as a maker reads it.

    Attributes:
        figure: the figure's name
        value: what came out, with its unit
        what: what the figure is
        rule: the formula in the names of the inputs; empty where there is no formula
        inputs: what went in
        source: where the rule comes from
        basis: for a figure that was given and not computed, who gave it
    """

    figure: str
    value: str
    what: str
    rule: str = ""
    inputs: tuple[Input, ...] = ()
    source: str = ""
    basis: str = ""


class NoSuchFigure(LookupError):
    """The ledger has no figure of that name; the message names the nearest."""


def explain(ledger: Ledger, figure: str, style: Style = SHOP) -> Explanation:
    """One figure of the ledger, with the rule that made it and all that went in.

    Args:
        ledger: the working of a computation
        figure: the figure's full name
        style: how the shop writes sizes and money

    Returns:
        The explanation, from the docstring of the rule itself.

    Raises:
        NoSuchFigure: the ledger has no figure of that name.

    Source: common practice.
    """
    if figure not in ledger:
        raise NoSuchFigure(_not_there(ledger, figure))
    working = ledger[figure]
    if working.rule is None:
        return _given(ledger, working, style)
    described = read_docstring(working.rule)
    return Explanation(
        figure=figure,
        value=show_value(working.value, hints(working.rule).get("return"), style),
        what=written_in(described.summary, style.length),
        rule=written_in(described.rule, style.length),
        inputs=_inputs(working, working.rule, described, style),
        source=written_in(described.source, style.length),
    )


def find(ledger: Ledger, pattern: str) -> tuple[str, ...]:
    """The figures that a name may mean: itself and those under it, else those that end so, else the nearest.

    Args:
        ledger: the working of a computation
        pattern: a figure's name, the beginning of one up to a dot, its last part, or a slip of one of these

    Returns:
        Names of figures, in the order in which they were made; of near ones the nearest first.

    Source: common practice.
    """
    wanted = pattern.strip()[:LONGEST_PATTERN].removesuffix(".")
    names = [working.figure for working in ledger]
    under = [name for name in names if name == wanted or name.startswith(f"{wanted}.")]
    ending = [name for name in names if name.endswith(f".{wanted}")]
    return tuple(under or ending or _nearest(wanted, names))


def _nearest(wanted: str, names: list[str]) -> list[str]:
    """The names most like the one wanted, by the whole or by the last part."""
    by_last: dict[str, list[str]] = {}
    for name in names:
        by_last.setdefault(name.rpartition(".")[2], []).append(name)
    whole = difflib.get_close_matches(wanted, names, NEAREST)
    last = difflib.get_close_matches(wanted, by_last, NEAREST)
    return list(dict.fromkeys(whole + [name for part in last for name in by_last[part]]))[:NEAREST]


def _not_there(ledger: Ledger, figure: str) -> str:
    """A sentence for a name that the ledger has not."""
    near = find(ledger, figure)
    meant = f" Did you mean {', '.join(near[:NEAREST])}?" if near else ""
    return f"There is no figure “{figure[:60]}” in this working.{meant}"


def _given(ledger: Ledger, working: Working, style: Style) -> Explanation:
    """A figure that nobody computed, in the unit given with it or asked for by the first rule to use it."""
    value = show_value(working.value, working.kind or _kind_in_use(ledger, working.figure), style)
    basis = written_in(in_unit(working.basis, style.length), style.length)
    return Explanation(figure=working.figure, value=value, what="Given, not computed.", basis=basis)


def _kind_in_use(ledger: Ledger, figure: str) -> object:
    """The annotation of the first argument that a given figure was handed to."""
    return next(
        (
            hints(working.rule).get(name)
            for working in ledger
            if working.rule is not None
            for name, value in working.inputs.items()
            if _origins(value) == (figure,)
        ),
        None,
    )


def _origins(value: object) -> tuple[str, ...]:
    """The figure that a value is, or those that a list is made of."""
    members = value if isinstance(value, tuple) else (value,)
    return tuple(each.name for each in members if isinstance(each, Figure | WholeFigure))


def _inputs(
    working: Working, rule: Callable[..., object], described: Docstring, style: Style
) -> tuple[Input, ...]:
    """All that went in, in the order of the rule's arguments, with the usual values of those left out."""
    kinds = hints(rule)
    return tuple(
        Input(
            name=name,
            meaning=written_in(without_unit(described.args.get(name, "")), style.length),
            value=show_value(value, kinds.get(name), style),
            origin=show_value(_origins(value)) if _origins(value) else "",
        )
        for name, value in _bound(rule, working.inputs).items()
        if not isinstance(value, Ledger)
    )


def _bound(rule: Callable[..., object], inputs: dict[str, object]) -> dict[str, object]:
    """The inputs in the order of the rule's arguments, with the rule's own values for those left out."""
    try:
        arguments = inspect.signature(rule).parameters
    except (TypeError, ValueError):
        return inputs
    filled = {name: inputs.get(name, each.default) for name, each in arguments.items()}
    return {name: value for name, value in filled.items() if value is not inspect.Parameter.empty} | inputs
