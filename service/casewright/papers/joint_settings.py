"""What is set for a joint at the bench, as text: gauges, dividers, slopes, and where each tail stands."""

from dataclasses import replace

from casewright.joinery.joint import Chosen, Joint, Measure, Setting
from casewright.joinery.layout import Tail
from casewright.papers.writing import Writing, table


def settings_table(joint: Joint, writing: Writing) -> str:
    """The settings of any joint.

    Args:
        joint: a joint that has been worked out
        writing: how sizes are written

    Returns:
        A table, in the order of work.
    """
    return table(
        ("Setting", "", "Wrong", "Where"),
        (
            (
                writing.said(setting.label),
                setting_text(setting, writing),
                "" if setting.wrong is None else f"not {wrong_text(setting, writing)}",
                writing.said(setting.note),
            )
            for setting in joint.settings
        ),
        right=(1,),
    )


def setting_text(setting: Setting, writing: Writing) -> str:
    """The number of a setting as it is printed.

    Args:
        setting: the setting
        writing: how sizes are written

    Returns:
        Such as `7/16`, `5`, `1:8` or `7.13°`.
    """
    if setting.measure is Measure.FINE:
        return writing.fine(setting.value)
    if setting.measure is Measure.LENGTH:
        small = 0 < abs(setting.value) < 1 / 64 - 1e-9
        return writing.fine(setting.value, 4) if small else writing.size(setting.value)
    return number_text(setting.value, setting.measure)


def wrong_text(setting: Setting, writing: Writing) -> str:
    """The number that is easily taken for a setting, as it is printed.

    Args:
        setting: the setting
        writing: how sizes are written

    Returns:
        Such as `1/2`; nothing where there is no such trap.
    """
    return "" if setting.wrong is None else setting_text(replace(setting, value=setting.wrong), writing)


def chosen_text(choice: Chosen, writing: Writing) -> str:
    """The number that was chosen, as it is printed.

    Args:
        choice: what was chosen
        writing: how sizes are written

    Returns:
        Such as `3/16`, `5` or `1:8`.
    """
    if choice.measure is Measure.FINE:
        return writing.fine(choice.value)
    if choice.measure is Measure.LENGTH:
        return writing.size(choice.value)
    return number_text(choice.value, choice.measure)


def number_text(value: float, measure: Measure) -> str:
    """A number that is no length.

    Args:
        value: the number
        measure: what kind of number it is

    Returns:
        The number with its sign.
    """
    written = {
        Measure.SLOPE: f"1:{value:g}",
        Measure.DEGREES: f"{value:.2f}°",
        Measure.PERCENT: f"{value:g} %",
    }
    return written.get(measure, f"{value:g}")


def positions_table(title: str, tails: tuple[Tail, ...], writing: Writing) -> str:
    """Where each tail stands.

    Args:
        title: the heading of the first column
        tails: from the bottom up
        writing: how sizes are written

    Returns:
        A table.
    """
    return table(
        (title, "Lower, end", "Upper, end", "Lower, baseline", "Upper, baseline"),
        (
            (
                f"tail {number}",
                writing.size(tail.lower_end),
                writing.size(tail.upper_end),
                writing.size(tail.lower_base),
                writing.size(tail.upper_base),
            )
            for number, tail in enumerate(tails, start=1)
        ),
        right=range(1, 5),
    )


def spans_table(title: str, spans: tuple[tuple[float, float], ...], writing: Writing) -> str:
    """From where to where each finger reaches.

    Args:
        title: the heading of the first column
        spans: from the bottom up [in]
        writing: how sizes are written

    Returns:
        A table.
    """
    return table(
        (title, "Lower edge", "Upper edge"),
        (
            (f"{title.lower()} {number}", writing.size(low), writing.size(high))
            for number, (low, high) in enumerate(spans, start=1)
        ),
        right=(1, 2),
    )
