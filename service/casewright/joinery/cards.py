"""The settings that every row of tails puts on its card."""

from casewright.joinery.chisels import Chisels
from casewright.joinery.dividers import Stepping
from casewright.joinery.joint import Measure, Setting, Tool
from casewright.joinery.layout import TailLayout
from casewright.measure.making import maker
from casewright.measure.saying import say

new_setting = maker(Setting)
"""Makes a setting as `Setting` does, and sooner: the drawers of a piece have hundreds."""


def dividers_setting(stepping: Stepping) -> Setting:
    """What the dividers stay set to.

    Args:
        stepping: the work with the dividers

    Returns:
        The setting.

    Source: common practice.
    """
    return new_setting(
        name="dividers",
        label="Dividers",
        value=stepping.setting,
        note=say("{:d} steps from each mark, to {} past the other", stepping.steps, stepping.overshoot),
        tool=Tool.DIVIDERS,
    )


def layout_settings(layout: TailLayout, stepping: Stepping) -> tuple[Setting, ...]:
    """What is set to lay the tails out: half pins, dividers and bevel.

    Args:
        layout: the row of tails
        stepping: the work with the dividers

    Returns:
        The settings, in the order of work.

    Source: common practice.
    """
    return (
        Setting(name="half_pin", label="Half pin", value=layout.half_pin, note="a mark from each edge"),
        dividers_setting(stepping),
        Setting(name="steps", label="Steps", value=stepping.steps, measure=Measure.COUNT),
        Setting(name="overshoot", label="Overshoot", value=stepping.overshoot, note="one pin"),
        Setting(
            name="correction",
            label=say("Dividers for each {:fraction} out", 1 / 64),
            value=stepping.correction,
            note="close them by this when the last step lands long, open them when it lands short",
        ),
        Setting(
            name="slope",
            label="Slope",
            value=layout.slope,
            measure=Measure.SLOPE,
            note=f"set the bevel {layout.slope:g} along and 1 across",
        ),
        Setting(
            name="bevel",
            label="Bevel",
            value=layout.bevel_degrees,
            measure=Measure.DEGREES,
            note="from square to the end",
        ),
    )


def chisel_settings(chisels: Chisels) -> tuple[Setting, ...]:
    """Which chisels to lay out; a chisel that the rack lacks is left to the findings.

    Args:
        chisels: which chisels clear the joint

    Returns:
        The settings, in the order of work.

    Source: common practice.
    """
    settings = []
    if chisels.between_tails is not None:
        if chisels.fret_saw:
            note = "at the baseline only; saw the waste out with a fret saw"
        elif chisels.enters_from_end:
            note = "at the baseline and from the end"
        else:
            note = "at the baseline only; it does not enter from the end"
        settings.append(
            Setting(name="tail_chisel", label="Chisel between tails", value=chisels.between_tails, note=note)
        )
    if chisels.sockets is not None:
        settings.append(Setting(name="socket_chisel", label="Chisel for the sockets", value=chisels.sockets))
    return tuple(settings)
