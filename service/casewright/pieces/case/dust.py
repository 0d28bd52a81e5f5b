"""The thin panels of dust frames, in grooves of rails and runners."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.case.web_frames import WebFrame
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.rules import case_rules, panel_rules
from casewright.pieces.rules import corner_rules as rules
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse

LEAST_PLAY = 1 / 32
"""Play of a dust panel at each edge that is always left (common practice) [in]."""
LEAST_HELD = 1 / 16
"""What a dust panel still reaches into its grooves when the rails stand furthest apart (from memory) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DustDepth:
    """A dust panel from front to back.

    Attributes:
        size: how deep it is [in]
        play: its play in front and rear groove, now [in]
        held: how far it still reaches into them when the rails stand furthest apart [in]
    """

    size: Inches
    play: Inches
    held: Inches


def dust_depth(case: CasePlan) -> DustDepth:
    """The size of the dust panels from front to back.

    Args:
        case: what the case is worked out from

    Returns:
        The size, its play, and what is held.

    Source: common practice; the movement by the Wood Handbook, FPL-GTR-282 (2021), chapter 13.
    """
    thick, frames, take = case.spec.case, case.spec.frames, case.ledger.take
    groove = thick.dust.groove
    clear = take(
        "dust_clear",
        case_rules.between,
        whole=case.face.opening_depth,
        one_end=thick.rail_width,
        other_end=frames.back_rail_width,
    )
    size = take(
        "dust_depth",
        rules.dust_depth,
        clear=clear,
        groove=groove,
        least=LEAST_PLAY,
        closing=case.moves.shrinkage,
    )
    play = take("dust_play", panel_rules.play_in_groove, clear=clear, groove=groove, panel=size)
    held = take("dust_held", rules.dust_held, groove=groove, play=play, opening=case.moves.swelling)
    return DustDepth(size=size, play=play, held=held)


def dust_parts(case: CasePlan, frame: WebFrame, members: Sequence[Part], deep: DustDepth) -> Iterator[Part]:
    """The panels of a web frame: one between each two runners or kickers beside each other.

    Args:
        case: what the case is worked out from
        frame: the frame
        members: its runners and kickers
        deep: the panels from front to back

    Yields:
        The panels, from the left.

    Source: common practice.
    """
    thick, dust = case.spec.case, case.spec.case.dust
    bought = dust.bought
    z = case.face.base_height + frame.z + (thick.divider - bought.thickness) / 2
    across = sorted(members, key=lambda part: part.box.x)
    for number, (left, right) in enumerate(pairwise(across), start=1):
        start = left.box.x + left.box.width
        width = case.ledger.take(
            f"{frame.mark}.dust_width_{number}",
            panel_rules.panel_size,
            clear=right.box.x - start,
            groove=dust.groove,
            play=LEAST_PLAY,
        )
        yield new_part(
            code=case.code(f"{frame.mark}-DP{number}"),
            line="D3",
            name="Dust panel",
            wood=str(bought),
            cut=Cut.FLAT,
            thickness=bought.thickness,
            width=deep.size,
            length=width,
            face=FaceClass.INSIDE,
            grain=Grain.ACROSS,
            use=PartUse.INSIDE,
            ends=("loose in the groove",) * 2,
            sheet=True,
            box=Box(
                start - dust.groove + LEAST_PLAY,
                thick.rail_width - dust.groove + deep.play,
                z,
                width,
                deep.size,
                bought.thickness,
            ),
        )


def dust_held(case: CasePlan, deep: DustDepth) -> Finding:
    """Whether the panels stay in their grooves all year.

    Args:
        case: what the case is worked out from
        deep: the panels from front to back

    Returns:
        A pass or a stop.

    Source: geometry of the frame; the limit from memory.
    """
    groove = case.spec.case.dust.groove
    return at_least(
        "dust panel held",
        deep.held,
        LEAST_HELD,
        say(
            "A dust panel {} deep still reaches {:.3} into its grooves at the wettest; {} is to stay.",
            deep.size,
            deep.held,
            LEAST_HELD,
        ),
        say("Make the grooves {:up} deep or more.", groove + LEAST_HELD - deep.held),
        about=case.code("D1"),
        source="from memory",
    )
