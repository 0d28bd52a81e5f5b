"""Which tool of the rack makes a groove, a housing or a mortise: one as wide, or a narrower one in passes."""

import math
from bisect import bisect_right
from dataclasses import dataclass

from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.rounding import near64
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches

GROUND = "common practice: a cutter makes its own width, and a wider one in passes against a moved fence"


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """How a straight cutter makes a width.

    Attributes:
        cutter: how wide it cuts [in]
        passes: how many passes it takes
    """

    cutter: Inches
    passes: Count

    @property
    def words(self) -> Words:
        """The same in words, such as `the 1/4 in cutter, in one pass`."""
        if self.passes == 1:
            return say("the {} cutter, in one pass", self.cutter)
        return say("the {} cutter, in {:d} passes", self.cutter, self.passes)


def passes_of(width: Inches, cutter: Inches) -> Count:
    """How many passes a cutter takes for a width that is no narrower than itself.

    Rule: width / cutter, rounded up

    Args:
        width: what is to be made [in]
        cutter: how wide the cutter cuts [in]

    Returns:
        The passes [dimensionless]

    Source: geometry of the joint.
    """
    return max(1, math.ceil((width - TOLERANCE) / cutter))


def made_by(width: Inches, cutters: tuple[Inches, ...]) -> Made | None:
    """How the shop's cutters make a width: by the widest that is not wider.

    Args:
        width: what is to be made [in]
        cutters: widths in the rack, narrowest first [in]

    Returns:
        The cutter with its passes; None when every cutter is wider.

    Source: common practice.
    """
    fitting = bisect_right(cutters, width + TOLERANCE)
    if not fitting:
        return None
    return Made(cutter=cutters[fitting - 1], passes=passes_of(width, cutters[fitting - 1]))


def nearest_cutter(width: Inches, cutters: tuple[Inches, ...]) -> Inches | None:
    """The cutter that comes nearest to a width.

    Args:
        width: what is aimed at [in]
        cutters: widths in the rack, narrowest first [in]

    Returns:
        The cutter's width, of two as near the narrower; None when there is none [in]

    Source: common practice.
    """
    return min(cutters, key=lambda cutter: (abs(cutter - width), cutter), default=None)


def widest_cutter(most: Inches, cutters: tuple[Inches, ...]) -> Inches | None:
    """The widest cutter that is not wider than a size.

    Args:
        most: the greatest width that will do [in]
        cutters: widths in the rack, narrowest first [in]

    Returns:
        The cutter's width; None when every cutter is wider [in]

    Source: common practice.
    """
    made = made_by(most, cutters)
    return None if made is None else made.cutter


def in_words(width: Inches) -> Words:
    """A width as a rule shows it; one that is on no rule in thousandths.

    Args:
        width: the width [in]

    Returns:
        Such as `1/4 in` or `0.754 in`.

    Source: common practice.
    """
    return say("{}" if abs(near64(width) - width) <= TOLERANCE else "{:.3}", width)


def how_it_is_cut(width: Inches, cutters: tuple[Inches, ...]) -> Words:
    """Which cutter makes a width, for the note of a setting.

    Args:
        width: what is to be made [in]
        cutters: widths in the rack, narrowest first [in]

    Returns:
        Such as `the 5/8 in cutter, in 2 passes`; what to do where no cutter is so narrow.

    Source: common practice.
    """
    made = made_by(width, cutters)
    return made.words if made else "sawn and chiselled: no cutter is so narrow"


def cutter_at_hand(what: str, width: Inches, cutters: tuple[Inches, ...], about: str = "") -> Finding:
    """Whether the rack has a cutter for a groove or housing: one as wide, or a narrower one.

    Args:
        what: what is cut, such as `groove`
        width: how wide it is [in]
        cutters: widths in the rack, narrowest first [in]
        about: code of the part or joint

    Returns:
        A pass that names the cutter and its passes, or a caution.

    Source: common practice.
    """
    made = made_by(width, cutters)
    wide = in_words(width)
    message = say("The {} is {} wide, and no cutter is listed on the rack.", what, wide)
    if made:
        message = say("The {} is {} wide: {}.", what, wide, made.words)
    elif cutters:
        message = say("The {} is {} wide; the narrowest cutter is {}.", what, wide, cutters[0])
    return new_finding(
        rule="cutter at hand",
        verdict=Verdict.PASS if made else Verdict.CAUTION,
        message=message,
        remedy="" if made else say("Saw and chisel it, or add a cutter of {:down} or narrower.", width),
        about=about,
        found=width,
        needed=made.cutter if made else width,
        source=GROUND,
    )
