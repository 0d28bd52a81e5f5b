"""Stepping a joint out with dividers, and the one move that corrects them.

The setting has a closed form, so there is nothing to hunt for: from the mark of the lower half pin, as many
steps as there are tails land past the upper mark by exactly one pin. An error in the setting shows up in that
pin multiplied by the number of steps, which is why correction by eye never settles.
"""

from dataclasses import dataclass

from casewright.joinery.layout import TailLayout
from casewright.joinery.spacing import TOLERANCE, divider_setting
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import quickly_made
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Stepping:
    """How a row of tails is stepped out.

    Attributes:
        half_pin: the mark to be made at each edge, from that edge [in]
        setting: what the dividers are set to [in]
        steps: how many steps are walked, which is the number of tails
        overshoot: how far past the upper mark the last step must land: one pin [in]
        correction: how much to change the dividers for each 1/64 that the landing is out [in]
    """

    half_pin: Inches
    setting: Inches
    steps: Count
    overshoot: Inches
    correction: Inches

    def lines(self) -> tuple[Words, ...]:
        """The work with the dividers, in order, as a card prints it.

        Returns:
            One sentence for each move.

        Source: common practice.
        """
        return (
            say("Mark a half pin of {} at both edges.", self.half_pin),
            say("Set the dividers to {}.", self.setting),
            say(
                "From the lower mark step up {:d}×: each step but the last marks the lower edge of the "
                "next tail, and the last lands {} past the upper mark.",
                self.steps,
                self.overshoot,
            ),
            f"From the upper mark step down {self.steps}×: the steps mark the upper edges of the tails.",
            say(
                "If the last step lands long by {:fraction}, close the dividers by {:.4}, "
                "if short, open them as much; then step again.",
                1 / 64,
                self.correction,
            ),
        )


def one_move_correction(landed: Inches, pin: Inches, count: Count) -> Inches:
    """The one change of the dividers that makes the last step land right.

    Rule: (pin - landed) / count

    Args:
        landed: how far past the upper mark the last step landed; below zero when it fell short of it [in]
        pin: how far past the mark it should land [in]
        count: how many steps were walked

    Returns:
        How much to open the dividers; below zero, how much to close them [in]

    Source: arithmetic: an error in the setting is multiplied by the number of steps.
    """
    return (pin - landed) / count


def corrected_setting(setting: Inches, landed: Inches, pin: Inches, count: Count) -> Inches:
    """What the dividers come to by the one move, where they were set just as the card says.

    Rule: setting + (pin - landed) / count

    Args:
        setting: what the dividers were set to [in]
        landed: how far past the upper mark the last step landed; below zero when it fell short of it [in]
        pin: how far past the mark it should land [in]
        count: how many steps were walked

    Returns:
        The new setting; nothing or less for a landing that no setting of the dividers explains [in]

    Source: arithmetic: an error in the setting is multiplied by the number of steps.
    """
    return setting + one_move_correction(landed, pin, count)


def correction_lines(stepping: Stepping, landed: Inches) -> tuple[Words, ...]:
    """What to do about the landing of the last step, read off the board.

    Args:
        stepping: how the joint is stepped out
        landed: how far past the upper mark the last step landed; below zero when it fell short of it [in]

    Returns:
        One sentence for each thing to know or to do.

    Source: arithmetic; that a miss of half a step is a step miscounted is common practice.
    """
    pin, steps, setting = stepping.overshoot, stepping.steps, stepping.setting
    long = landed - pin
    if abs(long) < TOLERANCE:
        return (say("It lands just where it must, {} past the mark: leave the dividers alone.", pin),)
    if abs(long) > setting / 2:
        miss = say("That misses by {}, more than half a step of {}: ", abs(long), setting)
        return (miss + say("count the steps again; there are {:d}.", steps),)
    move = one_move_correction(landed, pin, steps)
    act, wrong, other = ("close", "long", "lower") if long > 0 else ("open", "short", "higher")
    return (
        say(
            "It lands {} too {}: {} the dividers by {:.4}, which is that divided by the steps, {:d}.",
            *(abs(long), wrong, act, abs(move), steps),
        ),
        say(
            "If the board is as high as drawn, they were not quite at {}: the move brings them there.",
            setting,
        ),
        say(
            "If they were just at {}, the board is {} {} than drawn, so measure it: the move brings them to "
            "{:.4}.",
            *(setting, abs(long), other, corrected_setting(setting, landed, pin, steps)),
        ),
        say("Then step again: the last step must land {} past the mark.", pin),
    )


def correction_per_64th(count: Count) -> Inches:
    """The change of the dividers for each 1/64 that the last step is out.

    Rule: 1 / 64 / count

    Args:
        count: how many steps were walked

    Returns:
        How much to close for a landing that is 1/64 long, or open for one that is short [in]

    Source: arithmetic: an error in the setting is multiplied by the number of steps.
    """
    return 1 / 64 / count


def stepping(
    height: Inches, half_pin: Inches, pin: Inches, count: Count, ledger: Ledger = UNKEPT
) -> Stepping:
    """How a joint is stepped out, from the sizes of its layout.

    Args:
        height: height of the board's end [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        count: number of tails
        ledger: where the working is kept

    Returns:
        The setting of the dividers, the steps, and where they must land.

    Source: geometry of the joint.
    """
    setting = ledger.take(
        "divider_setting", divider_setting, height=height, half_pin=half_pin, pin=pin, count=count
    )
    return _stepping(half_pin, setting, count, pin, ledger)


def stepping_of(layout: TailLayout, ledger: Ledger = UNKEPT) -> Stepping:
    """How a finished layout is stepped out.

    Args:
        layout: the row of tails
        ledger: where the working is kept

    Returns:
        The setting of the dividers, the steps, and where they must land.

    Source: geometry of the joint.
    """
    return _stepping(layout.half_pin, layout.pitch, layout.count, layout.pin, ledger)


def _stepping(half_pin: Inches, setting: Inches, count: Count, pin: Inches, ledger: Ledger) -> Stepping:
    return Stepping(
        half_pin=half_pin,
        setting=setting,
        steps=count,
        overshoot=pin,
        correction=ledger.take("divider_correction", correction_per_64th, count=count),
    )
