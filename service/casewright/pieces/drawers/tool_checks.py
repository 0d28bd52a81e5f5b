"""Whether the rack serves a unit's drawers: gauges and dividers that stay set, and the groove's cutter."""

from collections.abc import Iterator

from casewright.joinery.cards import new_setting
from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import cutter_at_hand
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.joint import Joint, Setting, Tool
from casewright.joinery.tools_kept import kept_settings, tools_at_hand
from casewright.measure.findings import Finding
from casewright.measure.remembering import KEPT, of_the_same
from casewright.measure.saying import Words, strung
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.joints import DrawerJoints

GAUGE_FOR_SIDES = "Back joint, gauge for the sides"
GAUGE_FOR_BACK = "Back joint, gauge for the back"
"""What the gauges of the rear joint are called wherever they stand among others."""


def tool_checks(spec: UnitSpec, drawers: tuple[Drawer, ...], rack: Rack) -> Iterator[Finding]:
    """Whether the tools of the rack serve the drawers of a unit.

    Gauges stay set until the last drawer is marked; dividers are set anew for each drawer.

    Args:
        spec: what the maker chose
        drawers: the drawers
        rack: the shop's tools

    Returns:
        The findings, passes too.

    Source: common practice.
    """
    yield cutter_at_hand("groove for the bottoms", spec.drawers.groove.width, rack.cutters)
    if not drawers:
        return
    # Only what a tool stays set to, and of neighbours that are alike only the first, to whose settings the
    # others add none: a unit is worked out while somebody types.
    kept = [
        (drawer.code, (*_with_tools(drawer.joints.front), *_with_tools_behind(drawer.joints.back)))
        for drawer, before in zip(drawers, (None, *drawers), strict=False)
        if before is None or not _are_alike(drawer.joints, before.joints)
    ]
    yield tools_at_hand((each for _, settings in kept for each in settings), Tool.GAUGE, rack.gauges)
    code, most = max(kept, key=lambda held: len(kept_settings(held[1], Tool.DIVIDERS)))
    yield tools_at_hand(most, Tool.DIVIDERS, rack.dividers, code)


def _are_alike(one: DrawerJoints, other: DrawerJoints) -> bool:
    """Whether the joints of two drawers are set out alike."""
    return one.front.given == other.front.given and one.back.given == other.back.given


@of_the_same(KEPT)
def _with_tools(joint: Joint) -> tuple[Setting, ...]:
    """What a tool stays set to."""
    if isinstance(joint, HalfBlindJoint | ThroughJoint):
        return joint.kept
    return tuple(each for each in joint.settings if each.tool)


@of_the_same(KEPT)
def _with_tools_behind(joint: Joint) -> tuple[Setting, ...]:
    """What a tool stays set to at the back."""
    return tuple(
        new_setting(
            name=each.name,
            label=_at_the_back(each),
            value=each.value,
            measure=each.measure,
            note=each.note,
            wrong=each.wrong,
            tool=each.tool,
        )
        for each in _with_tools(joint)
    )


def _at_the_back(setting: Setting) -> Words:
    """What a setting of the rear joint is called among those of both; gauges as their list has them."""
    if setting.name == "gauge_side":
        return GAUGE_FOR_SIDES
    if setting.name.startswith("gauge_back"):
        end = setting.name.removeprefix("gauge_back").replace("_", ", ")
        return f"{GAUGE_FOR_BACK}{end}"
    return strung(", ", ("Back joint", _lower(setting.label)))


def _lower(words: Words) -> Words:
    return words.lower() if isinstance(words, str) else words
