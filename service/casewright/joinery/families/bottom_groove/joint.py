"""The groove for a drawer's bottom: in sides and front, or in slips, and with a muntin for a wide one.

Heights run up from the bottom edge of sides and front.
"""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import how_it_is_cut
from casewright.joinery.families.bottom_groove import chosen
from casewright.joinery.families.bottom_groove.asked import ALL_AROUND, UNDER_THE_BACK, BottomGroove
from casewright.joinery.families.bottom_groove.checks import groove_findings
from casewright.joinery.families.bottom_groove.shape import groove_shape
from casewright.joinery.families.bottom_groove.sizes import (
    bottom_held_all_around,
    bottom_length,
    bottom_width,
    half_bottom_width,
    muntin_length,
    muntin_lip,
    muntin_place,
    slip_length,
)
from casewright.joinery.joint import (
    Choosing,
    JointKind,
    Measure,
    Measured,
    Setting,
    Solved,
    Values,
    fields,
)
from casewright.joinery.season import (
    change_across,
    chosen_movement,
    chosen_shrinking,
    chosen_swelling,
)
from casewright.joinery.solid import Shape
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class BottomJoint:
    """A drawer's bottom in its grooves, worked out.

    Attributes:
        given: what was asked for
        pieces: one, or two with a muntin between them
        bottom_width: size of each piece from side to side [in]
        bottom_depth: size of each piece front to back, across its grain [in]
        slip_length: length of each slip; None without slips [in]
        muntin_length: length of the muntin; None without one [in]
        muntin_place: from the side or slip to the muntin; None without one [in]
        grows: how much the bottom grows front to back when wettest [in]
        shrinks: how much it shrinks when driest [in]
        findings: every check that was carried out, passes too
    """

    given: BottomGroove
    pieces: Count
    bottom_width: Inches
    bottom_depth: Inches
    slip_length: Inches | None
    muntin_length: Inches | None
    muntin_place: Inches | None
    grows: Inches
    shrinks: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints: the groove, then slips, muntin and bottom."""
        return (*self._groove(), *self._slips(), *self._muntin(), *self._bottom())

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        return groove_shape(self.given)

    def _groove(self) -> tuple[Setting, ...]:
        given = self.given
        others = "slips and front" if given.slip else "sides and front"
        if given.grooves == ALL_AROUND:
            others = others.replace(" and front", ", front and back")
        return (
            Setting(
                name="groove_height",
                label="Fence to groove",
                value=given.groove_height,
                note=f"on the inside faces of {others}, from the bottom edge to the groove",
            ),
            Setting(
                name="groove_width",
                label="Groove width",
                value=given.groove_width,
                note=how_it_is_cut(given.groove_width, given.rack.cutters),
            ),
            Setting(
                name="groove_depth",
                label=f"Stop, {given.carried_by}s",
                value=given.groove_depth,
                note=say("depth of the groove; {} is left behind it", given.carrier - given.groove_depth),
            ),
            Setting(
                name="front_depth",
                label="Stop, front",
                value=given.front_depth,
                note="depth of the groove; the joint of front and side hides it, or it is stopped there",
            ),
        )

    def _slips(self) -> tuple[Setting, ...]:
        given = self.given
        if self.slip_length is None:
            return ()
        notch = "from its rear, down to the upper edge of the groove: the back stands there"
        return (
            Setting(name="slip", label="Slip, thickness", value=given.slip),
            Setting(name="slip_height", label="Slip, height", value=given.slip_height),
            Setting(
                name="slip_length",
                label="Slip, length",
                value=self.slip_length,
                note="from the inside of the front to the rear, flush with the sides' bottom edges",
            ),
            *(
                (Setting(name="slip_notch", label="Slip, cut away", value=given.back, note=notch),)
                if given.grooves == UNDER_THE_BACK
                else ()
            ),
        )

    def _muntin(self) -> tuple[Setting, ...]:
        given = self.given
        if self.muntin_length is None or self.muntin_place is None:
            return ()
        lip = muntin_lip(given.muntin_thickness, given.groove_width)
        under = given.grooves == UNDER_THE_BACK
        length = say(
            "with a tongue of {} for the front; {}",
            given.front_depth,
            "screwed up under the back" if under else "and one in the back",
        )
        return (
            Setting(name="muntin", label="Muntin, width", value=given.muntin),
            Setting(name="muntin_thickness", label="Muntin, thickness", value=given.muntin_thickness),
            Setting(name="muntin_length", label="Muntin, length", value=self.muntin_length, note=length),
            Setting(
                name="muntin_place",
                label="Muntin, place",
                value=self.muntin_place,
                note=f"from the inside of each {given.carried_by} to its nearer edge",
            ),
            Setting(
                name="muntin_groove",
                label="Muntin, groove",
                value=lip,
                note="from either face of the muntin to the groove in its edge, which lies in the middle",
                wrong=given.groove_height if abs(given.groove_height - lip) > TOLERANCE else None,
            ),
            Setting(
                name="muntin_tongue",
                label="Muntin, tongue",
                value=given.muntin - 2 * given.groove_depth,
                note=say("its width, between the grooves; {} thick", given.groove_width),
            ),
            *(
                (
                    Setting(
                        name="muntin_notch",
                        label="Muntin, cut away",
                        value=lip,
                        note=say("off its upper face, {} from its rear: the back stands there", given.back),
                    ),
                )
                if under
                else ()
            ),
        )

    def _bottom(self) -> tuple[Setting, ...]:
        given = self.given
        half = "Each half" if self.pieces > 1 else "Bottom"
        settings = [
            Setting(
                name="bottom_width",
                label=f"{half}, side to side",
                value=self.bottom_width,
                note=say("along the grain, with {} free at each side", given.play),
                wrong=self.bottom_width + 2 * given.play if given.play else None,
            ),
            Setting(
                name="bottom_depth",
                label=f"{half}, front to back",
                value=self.bottom_depth,
                note="across the grain of a solid bottom: glue or pin it at the front only",
            ),
        ]
        raised = given.bottom - given.groove_width
        if raised > TOLERANCE:
            room = given.limits.edge_room.value
            settings += [
                Setting(
                    name="raised_by",
                    label="Bottom, thinned by",
                    value=raised,
                    note="off the underside of its edges, to the width of the groove",
                ),
                Setting(
                    name="raised_sides",
                    label="Bottom, thinned edge",
                    value=given.groove_depth - given.play + room,
                    note=say("at the sides, {} wider than what stands in the groove", room),
                ),
                Setting(
                    name="raised_front",
                    label="Bottom, thinned front",
                    value=given.front_depth + room,
                    note="at the front edge",
                ),
            ]
        settings += [
            Setting(
                name="grows",
                label="Bottom grows",
                value=self.grows,
                measure=Measure.FINE,
                note="front to back, when wettest",
            ),
            Setting(
                name="shrinks",
                label="Bottom shrinks",
                value=self.shrinks,
                measure=Measure.FINE,
                note="front to back, when driest",
            ),
        ]
        return tuple(settings)


def bottom_groove(asked: BottomGroove, ledger: Ledger = UNKEPT) -> BottomJoint:
    """A drawer's bottom in its grooves, worked out: sizes of bottom, slips and muntin, movement and checks.

    Args:
        asked: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: common practice of drawer making; movement by the Wood Handbook, chapter 13.
    """
    take, depth, play = ledger.take, asked.groove_depth, asked.play
    if asked.muntin:
        wide = take(
            "bottom_width",
            half_bottom_width,
            inside=asked.inside,
            muntin=asked.muntin,
            groove_depth=depth,
            play=play,
        )
    else:
        wide = take("bottom_width", bottom_width, inside=asked.inside, groove_depth=depth, play=play)
    deep = _depth(asked, "bottom_depth", play, asked.over, ledger)
    grows = take("grows", change_across, size=deep, movement=asked.movement, change=asked.swelling)
    shrinks = take("shrinks", change_across, size=deep, movement=asked.movement, change=asked.shrinking)
    return BottomJoint(
        given=asked,
        pieces=2 if asked.muntin else 1,
        bottom_width=wide,
        bottom_depth=deep,
        slip_length=take("slip_length", slip_length, length=asked.length, front=asked.front)
        if asked.slip
        else None,
        muntin_length=_muntin_length(asked, ledger) if asked.muntin else None,
        muntin_place=take("muntin_place", muntin_place, inside=asked.inside, muntin=asked.muntin)
        if asked.muntin
        else None,
        grows=grows,
        shrinks=shrinks,
        findings=tuple(groove_findings(asked, grows, shrinks)),
    )


def _depth(asked: BottomGroove, name: str, play: Inches, over: Inches, ledger: Ledger) -> Inches:
    if asked.grooves == ALL_AROUND:
        return ledger.take(
            name,
            bottom_held_all_around,
            inside=asked.depth,
            front_depth=asked.front_depth,
            back_depth=asked.groove_depth,
            play=play,
        )
    return ledger.take(
        name,
        bottom_length,
        length=asked.length,
        front=asked.front,
        groove_depth=asked.front_depth,
        over=over,
    )


def _muntin_length(asked: BottomGroove, ledger: Ledger) -> Inches:
    if asked.grooves == ALL_AROUND:
        return _depth(asked, "muntin_length", 0.0, 0.0, ledger)
    return ledger.take(
        "muntin_length",
        muntin_length,
        length=asked.length,
        front=asked.front,
        groove_depth=asked.front_depth,
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A drawer's bottom from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    width, length = take.number("width"), take.number("length")
    side, front = take.number("side"), take.number("front")
    back = take.or_choose("back", chosen.chosen_back, side)
    movement = take.or_choose("movement", chosen_movement)
    swelling, shrinking = (
        take.or_choose("swelling", chosen_swelling),
        take.or_choose("shrinking", chosen_shrinking),
    )
    slip = take.or_choose("slip", chosen.chosen_slip, side)
    height = take.or_choose("groove_height", chosen.chosen_groove_height)
    wide = take.or_choose("groove_width", chosen.chosen_groove_width)
    carried_by = "slip" if slip else "side"
    muntin = take.or_choose("muntin", chosen.chosen_muntin, width - 2 * (side + slip))
    return Solved(
        joint=bottom_groove(
            BottomGroove(
                width=width,
                length=length,
                side=side,
                front=front,
                back=back,
                groove_height=height,
                groove_width=wide,
                groove_depth=take.or_choose(
                    "groove_depth", chosen.chosen_groove_depth, slip or side, carried_by
                ),
                front_depth=take.or_choose("front_depth", chosen.chosen_front_depth, front),
                bottom=take.or_choose("bottom", chosen.chosen_bottom, movement, wide),
                play=take.or_choose("play", chosen.chosen_play),
                grooves=int(take.or_choose("grooves", chosen.chosen_grooves)),
                over=take.or_choose("over", chosen.chosen_over),
                back_gap=take.or_choose("back_gap", chosen.chosen_back_gap),
                slip=slip,
                slip_height=take.or_choose("slip_height", chosen.chosen_slip_height, height + wide)
                if slip
                else 0.0,
                muntin=muntin,
                muntin_thickness=take.or_choose("muntin_thickness", chosen.chosen_muntin_thickness)
                if muntin
                else 0.0,
                movement=movement,
                swelling=swelling,
                shrinking=shrinking,
                rack=rack,
            ),
            ledger,
        ),
        chosen=take.chosen,
    )


FIELDS = fields("bottom_groove")

KIND = JointKind(
    name="bottom-groove",
    title="Groove for a drawer's bottom, in the sides or in slips",
    fields=FIELDS,
    solve=_solve,
)
