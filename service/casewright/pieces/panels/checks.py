"""A panel through the year: it never bursts its frame, and never drops out of it."""

from collections.abc import Iterator

from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import say
from casewright.pieces.layout.season import Climate
from casewright.pieces.panels.frame import LEAST_PLAY, PanelFrame
from casewright.pieces.rules import panel_rules as rules

HANDBOOK = "Wood Handbook, FPL-GTR-282 (2021), chapter 13"
LEAST_HELD = 1 / 8
"""What still lies in each groove at the driest (common practice) [in]."""


def frame_checks(
    frame: PanelFrame, climate: Climate, ledger: Ledger, name: str, about: str
) -> Iterator[Finding]:
    """The checks of a frame's panels.

    Args:
        frame: the frame, sized
        climate: the moisture contents between which the panels move
        ledger: keeps the working
        name: under which the frame's figures are kept, such as `case.sides`
        about: the code of the frame

    Yields:
        Play when wettest, what is held when driest, and how the panel lies in the frame.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13; limits by common practice.
    """
    take, groove = ledger.under(name).take, frame.asked.how.groove_depth
    needed = take(
        "play_needed",
        rules.play_needed,
        panel=frame.panel_width,
        moves=frame.moves,
        swelling=climate.swelling,
        least=LEAST_PLAY,
    )
    yield at_least(
        "panel play",
        frame.play,
        needed,
        say(
            "A panel {} wide has {:.3} of play at each side; at the wettest it needs {:.3}.",
            frame.panel_width,
            frame.play,
            needed,
        ),
        say("Make the play {:up} or more, or the panel will burst the frame.", needed),
        about=about,
        source=HANDBOOK,
    )
    held = take(
        "held_when_driest",
        rules.held_when_driest,
        groove=groove,
        play=frame.play,
        panel=frame.panel_width,
        moves=frame.moves,
        drying=climate.drying,
    )
    yield at_least(
        "panel held",
        held,
        LEAST_HELD,
        say("At the driest the panel reaches {:.3} into each groove.", held),
        say(
            "It needs {}: make the grooves {:up} deep or more, or divide the frame by a muntin.",
            LEAST_HELD,
            groove + LEAST_HELD - held,
        ),
        about=about,
        source=HANDBOOK,
    )
    yield from _thickness(frame, about)


def _thickness(frame: PanelFrame, about: str) -> Iterator[Finding]:
    """The panel fills its groove, and does not stand out before the frame."""
    thick, groove = frame.panel_thickness, frame.groove
    if thick < groove - TOLERANCE:
        yield at_least(
            "panel in its groove",
            thick,
            groove,
            say("A panel {} thick rattles in a groove {} wide.", thick, groove),
            say("Make the groove {} wide, as the panel is thick.", thick),
            about=about,
            source="geometry of the frame",
        )
    elif frame.is_proud:
        most = frame.asked.thickness - frame.recess
        yield Finding(
            rule="panel in its groove",
            verdict=Verdict.CAUTION,
            message=say("A panel {} thick stands out before the face of its frame.", thick),
            remedy=say("Make it {:down} thick or less, to lie flush or behind.", most),
            about=about,
            found=float(thick),
            needed=float(most),
            source="geometry of the frame",
        )
