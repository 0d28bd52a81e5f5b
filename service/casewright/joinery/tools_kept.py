"""Gauges and dividers that stay set until the last piece is marked, and whether the shop has enough."""

from collections.abc import Iterable, Sequence

from casewright.joinery.joint import Setting, Tool
from casewright.joinery.limits import LIMITS
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Count, Inches

NAMES = {Tool.GAUGE: ("gauge", "gauges"), Tool.DIVIDERS: ("pair of dividers", "pairs of dividers")}
RULES = {tool: f"{tool.value} at hand" for tool in Tool}
KEPT_RULES = frozenset(RULES.values())
"""The checks of tools that stay set."""
GROUND = (
    "common practice: a setting that is kept is the same on every piece, and one that is made again is not"
)


def kept_settings(
    settings: Iterable[Setting], tool: Tool, within: Inches = LIMITS.gauge_tolerance.value
) -> tuple[Setting, ...]:
    """The settings that take a tool each: two that agree are one.

    Args:
        settings: the settings of a joint or of several, in the order of work
        tool: gauges or dividers
        within: how closely two settings agree that are one [in]

    Returns:
        The settings, in the order of work.

    Source: common practice.
    """
    kept: list[Setting] = []
    for each in settings:
        if each.tool is tool and all(abs(each.value - one.value) > within + TOLERANCE for one in kept):
            kept.append(each)
    return tuple(kept)


def tools_at_hand(settings: Iterable[Setting], tool: Tool, owned: Count, about: str = "") -> Finding:
    """Whether the shop can keep every setting until the last piece is marked, and in which order if not.

    Args:
        settings: the settings of a joint or of several, in the order of work
        tool: gauges or dividers
        owned: how many the shop can keep set at once [dimensionless]
        about: code of the joint; empty for the whole unit

    Returns:
        A pass that says what to set and keep; a caution with the order in which to use one again.

    Source: common practice.
    """
    kept = kept_settings(settings, tool)
    needs = len(kept)
    one, many = NAMES[tool]
    short = needs > owned
    listed = strung(", ", (_named(each) for each in kept))
    named = f"{owned} {one if owned == 1 else many}"
    return new_finding(
        rule=RULES[tool],
        verdict=Verdict.CAUTION if short else Verdict.PASS,
        message=say("Set and keep {}: that takes {:d}, and the shop has {}.", listed, needs, named)
        if needs
        else f"No setting takes a {one}.",
        remedy=_order(kept, one, owned) if short else "",
        about=about,
        found=owned,
        needed=needs,
        source=GROUND,
    )


def _named(setting: Setting) -> Words:
    return say("{} ({})", setting.label, setting.value)


def _order(kept: Sequence[Setting], one: str, owned: Count) -> Words:
    """All tools but one stay as they are set; the last is used for the rest, one setting after the other."""
    stay, first, later = kept[: owned - 1], kept[owned - 1], kept[owned:]
    again = say(
        "mark every piece with {}, then set that {} to {}; try each on a piece that is cut.",
        _named(first),
        one,
        strung(", then to ", (_named(each) for each in later)),
    )
    if not stay:
        return say("First {}", again)
    return say("Set and keep {}; {}", strung(", ", (_named(each) for each in stay)), again)
