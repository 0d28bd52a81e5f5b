"""The arithmetic of frame-and-panel work: rails, panels in their grooves, and what the seasons leave."""

from math import ceil

from casewright.measure.rounding import TOLERANCE, down_to, floor64
from casewright.measure.units import Count, Inches, Percent, PerPercent

WIDEST_GROOVE, SHOULDER = 1 / 4, 3 / 16
"""The groove of a solid panel in a frame that is thick enough, and what it leaves on both sides (common
practice) [in]."""


def rail_over_tenons(width: Inches, stile: Inches, tenon: Inches) -> Inches:
    """The length of a rail over its tenons.

    Rule: width - 2 × stile + 2 × tenon

    Args:
        width: the frame from outside to outside of its stiles [in]
        stile: width of a stile [in]
        tenon: length of the tenon at each end [in]

    Returns:
        The length [in]

    Source: geometry of the frame.
    """
    return width - 2 * stile + 2 * tenon


def muntin_length(clear: Inches, tenon: Inches) -> Inches:
    """The length of a muntin over its tenons.

    Rule: clear + 2 × tenon

    Args:
        clear: height between two rails [in]
        tenon: length of the tenon at each end [in]

    Returns:
        The length [in]

    Source: geometry of the frame.
    """
    return clear + 2 * tenon


def clear_between(whole: Inches, ends: Inches, bars: Count, bar: Inches) -> Inches:
    """One of the equal fields that a frame is divided into.

    Rule: (whole - ends - bars × bar) / (bars + 1)

    Args:
        whole: the frame over all [in]
        ends: its two outer members, added up [in]
        bars: members between them
        bar: width of each of those [in]

    Returns:
        The clear size of a field [in]

    Source: geometry of the frame.
    """
    return (whole - ends - bars * bar) / (bars + 1)


def muntins_needed(whole: Inches, ends: Inches, bar: Inches, widest: Inches) -> Count:
    """How many uprights a frame needs so that no panel between them is too wide.

    Rule: (whole - ends + bar) / (widest + bar), rounded up, less 1

    Args:
        whole: from outside to outside of the stiles [in]
        ends: both stiles together [in]
        bar: width of an upright [in]
        widest: the widest clear space that a panel may fill [in]

    Returns:
        Uprights between panels side by side [dimensionless]

    Source: geometry of the frame.
    """
    return max(0, ceil((whole - ends + bar) / (widest + bar) - TOLERANCE) - 1)


def widest_panel(
    clear: Inches, groove: Inches, least: Inches, moves: PerPercent, swelling: Percent
) -> Inches:
    """The width of a panel that still has its least play in both grooves at the wettest.

    Rule: (clear + 2 × groove - 2 × least) / (1 + moves × swelling), down to 1/64

    Args:
        clear: clear width between the grooved edges [in]
        groove: depth of each groove [in]
        least: play left at each side at the wettest [in]
        moves: movement coefficient of the panel in its width; 0 for plywood [1 per % moisture]
        swelling: moisture at the wettest less that now [%]

    Returns:
        The width now [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; the play is common practice.
    """
    return floor64((clear + 2 * groove - 2 * least) / (1 + moves * swelling))


def panel_size(clear: Inches, groove: Inches, play: Inches) -> Inches:
    """A panel between two grooves.

    Rule: clear + 2 × groove - 2 × play

    Args:
        clear: clear size between the grooved edges [in]
        groove: depth of each groove [in]
        play: play at each end [in]

    Returns:
        The size [in]

    Source: geometry of the frame.
    """
    return clear + 2 * groove - 2 * play


def play_in_groove(clear: Inches, groove: Inches, panel: Inches) -> Inches:
    """The play of a panel at each of two grooves.

    Rule: (clear + 2 × groove - panel) / 2

    Args:
        clear: clear width between the grooved edges [in]
        groove: depth of each groove [in]
        panel: width of the panel [in]

    Returns:
        The play at each side [in]

    Source: geometry of the frame.
    """
    return (clear + 2 * groove - panel) / 2


def play_needed(panel: Inches, moves: PerPercent, swelling: Percent, least: Inches) -> Inches:
    """The play that a panel needs at each side now, so that it does not burst its frame at the wettest.

    Rule: panel × moves × swelling / 2 + least

    Args:
        panel: width of the panel [in]
        moves: movement coefficient of the panel in its width [1 per % moisture]
        swelling: moisture at the wettest less that now [%]
        least: play left at the wettest [in]

    Returns:
        The play at each side [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; the play is common practice.
    """
    return panel * moves * swelling / 2 + least


def held_when_driest(
    groove: Inches, play: Inches, panel: Inches, moves: PerPercent, drying: Percent
) -> Inches:
    """How far a panel still reaches into each groove at the driest.

    Rule: groove - play - panel × moves × drying / 2

    Args:
        groove: depth of the groove [in]
        play: play at each side now [in]
        panel: width of the panel [in]
        moves: movement coefficient of the panel in its width [1 per % moisture]
        drying: moisture now less that at the driest [%]

    Returns:
        The reach; below nothing the panel drops out [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return groove - play - panel * moves * drying / 2


def play_then(play: Inches, panel: Inches, moves: PerPercent, change: Percent) -> Inches:
    """The play of a panel at each of two grooves, at any moisture.

    Rule: play - panel × moves × change / 2

    Args:
        play: play at each side now [in]
        panel: width of the panel now [in]
        moves: movement coefficient of the panel in its width [1 per % moisture]
        change: moisture then, less that of the wood now [%]

    Returns:
        The play; below nothing the panel pushes the stiles apart [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return play - panel * moves * change / 2


def held_then(groove: Inches, play: Inches, panel: Inches, moves: PerPercent, change: Percent) -> Inches:
    """How far a panel reaches into each groove, at any moisture.

    Rule: groove - play + panel × moves × change / 2

    Args:
        groove: depth of the groove [in]
        play: play at each side now [in]
        panel: width of the panel now [in]
        moves: movement coefficient of the panel in its width [1 per % moisture]
        change: moisture then, less that of the wood now [%]

    Returns:
        The reach; below nothing the panel drops out [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return groove - play + panel * moves * change / 2


def usual_groove(frame: Inches) -> Inches:
    """The width of the groove for a solid panel, which is the thickness of the rails' tenons.

    Rule: the lesser of 1/4 and frame - 2 × 3/16 down to 1/32; a third of a frame too thin for that

    Args:
        frame: thickness of stiles and rails [in]

    Returns:
        The width [in]

    Source: common practice: each shoulder of the tenon keeps 3/16.
    """
    left = down_to(frame - 2 * SHOULDER, 1 / 32)
    return min(WIDEST_GROOVE, left) if left > 0 else frame / 3


def panel_recess(frame: Inches, groove: Inches) -> Inches:
    """How far the inner face of a panel lies behind the inner face of its frame.

    Rule: (frame - groove) / 2

    Args:
        frame: thickness of stiles and rails [in]
        groove: width of the groove, in the middle of their edge [in]

    Returns:
        The depth of the recess [in]

    Source: geometry of the frame.
    """
    return (frame - groove) / 2


def frame_moves(stile: Inches, moves: PerPercent, change: Percent) -> Inches:
    """How much a frame changes across its stiles: its rails keep their length, and its panel lies loose.

    Rule: 2 × stile × moves × change

    Args:
        stile: width of a stile [in]
        moves: movement coefficient of the stiles in their width [1 per % moisture]
        change: moisture after less before [%]

    Returns:
        The change [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return 2 * stile * moves * change


def less_lipping(depth: Inches, lipping: Inches) -> Inches:
    """The width of a sheet behind its lipping.

    Rule: depth - lipping

    Args:
        depth: over both, front to back [in]
        lipping: width of the lipping [in]

    Returns:
        The width of the sheet [in]

    Source: geometry of the case.
    """
    return depth - lipping
