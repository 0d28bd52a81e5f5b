"""A leg with its aprons as it is asked for, and what cannot be cut."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.families.leg_tenon.rules import (
    LIMITS,
    LegTenonLimits,
    inner_wall,
    longest_tenon,
    mitred_length,
    outer_wall,
    usual_leg_tenon,
)
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import back_shoulder, mortise_depth, tenon_width
from casewright.measure.rounding import down_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class LegTenon:
    """A leg with one apron, or with two alike that meet in it, as it is asked for.

    Attributes:
        leg: thickness of the leg, square at the joint [in]
        apron: thickness of the apron [in]
        height: width of the apron, from its lower edge to the top of the leg [in]
        setback: how far the apron is set back from the leg's outside face [in]
        tenon: thickness of the tenon [in]
        face: the shoulder before the tenon, from the apron's outside face [in]
        length: length of the tenon, at its outer cheek when it is mitred [in]
        haunch: how far the tenon is set down from the top of the leg [in]
        lower_shoulder: what is cut off the apron's lower edge at the tenon [in]
        aprons: how many aprons meet at the leg, 1 or 2
        beyond: how far the leg runs on past the apron's upper edge; 0 where that is its top [in]
        width: over both legs from left to right; 0 when it is not known [in]
        depth: over both legs from front to back; 0 when it is not known [in]
        rack: the shop's chisels
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    leg: Inches
    apron: Inches
    height: Inches
    setback: Inches
    tenon: Inches
    face: Inches
    length: Inches
    haunch: Inches = 0.0
    lower_shoulder: Inches = 0.0
    aprons: Count = 2
    beyond: Inches = 0.0
    width: Inches = 0.0
    depth: Inches = 0.0
    rack: Rack = RACK
    limits: LegTenonLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(leg=self.leg, apron=self.apron, height=self.height, tenon=self.tenon)
        refuse_below_zero(
            setback=self.setback,
            haunch=self.haunch,
            lower_shoulder=self.lower_shoulder,
            beyond=self.beyond,
            width=self.width,
            depth=self.depth,
        )
        if self.aprons not in (1, 2):
            raise CannotBeLaidOut(
                say("{:d} aprons do not meet at one leg; give 2 at a corner, or 1.", self.aprons)
            )
        self._refuse_apron_beside_the_leg()
        self._refuse_no_shoulder()
        self._refuse_no_width()
        # A length that was chosen has no sense before the apron fits its leg.
        refuse_unless_above_zero(length=self.length)
        self._refuse_length()
        self._refuse_no_room()

    def _refuse_apron_beside_the_leg(self) -> None:
        if self.setback + self.apron <= self.leg + TOLERANCE:
            return
        said = say("An apron of {} set back {} reaches past a leg of {};", self.apron, self.setback, self.leg)
        if self.apron <= self.leg + TOLERANCE:
            most = down_to(self.leg - self.apron, 1 / 64)
            how = (
                say("set it back {:down} or less", most) if most > 0 else "set it flush, with a setback of 0"
            )
            raise CannotBeLaidOut(say("{} {}.", said, how))
        raise CannotBeLaidOut(say("{} make the leg {:up} thick or more.", said, self.apron + self.setback))

    def _refuse_no_shoulder(self) -> None:
        # Behind the tenon of a corner the other tenon's mitre begins, and needs a little wood too.
        least = self.limits.mitre_gap.value / 2 if self.aprons == 2 else 0.0
        if min(self.face, self.back) > TOLERANCE and self.inner_wall > least + TOLERANCE:
            return
        usual = usual_leg_tenon(self.apron, self.rack, self.limits)
        raise CannotBeLaidOut(
            say(
                "A tenon of {} at {} from the face leaves no two shoulders on an apron of {}; a tenon "
                "of {} at {} from the face would.",
                self.tenon,
                self.face,
                self.apron,
                usual,
                (self.apron - usual) / 2,
            )
        )

    def _refuse_no_width(self) -> None:
        if self.tenon_width > TOLERANCE:
            return
        most = self.height - min(self.tenon, self.height / 2)
        raise CannotBeLaidOut(
            say(
                "A haunch of {} and a shoulder of {} below leave no tenon on an apron {} wide; make both "
                "together {:down} or less.",
                self.haunch,
                self.lower_shoulder,
                self.height,
                most,
            )
        )

    def _refuse_length(self) -> None:
        if self.aprons == 2 and self.length > self.longest_mitred + TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "Two tenons {} long run into each other, even when they are mitred; make them {:down} "
                    "long or shorter.",
                    self.length,
                    min(self.longest_mitred, longest_tenon(self.leg, self.limits)),
                )
            )
        if self.mortise >= self.leg - TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A mortise {} deep goes through a leg of {}; make the tenon {:down} long.",
                    self.mortise,
                    self.leg,
                    longest_tenon(self.leg, self.limits),
                )
            )

    def _refuse_no_room(self) -> None:
        for overall in (self.width, self.depth):
            if 0 < overall <= 2 * self.leg + TOLERANCE:
                raise CannotBeLaidOut(
                    say(
                        "Over the legs {} leaves no room between two of {}; make it more than {:bare}.",
                        overall,
                        self.leg,
                        2 * self.leg,
                    )
                )

    @property
    def back(self) -> Inches:
        """The shoulder behind the tenon [in]."""
        return back_shoulder(self.apron, self.face, self.tenon)

    @property
    def outer_wall(self) -> Inches:
        """From the leg's outside face to the mortise [in]."""
        return outer_wall(self.setback, self.face)

    @property
    def inner_wall(self) -> Inches:
        """From the leg's inside face to the mortise [in]."""
        return inner_wall(self.leg, self.outer_wall, self.tenon)

    @property
    def tenon_width(self) -> Inches:
        """Width of the tenon, up the apron [in]."""
        return tenon_width(self.height, self.lower_shoulder, self.haunch)

    @property
    def mortise(self) -> Inches:
        """Depth of the mortise from the leg's face [in]."""
        return mortise_depth(self.length, self.limits.clearance.value)

    @property
    def longest_mitred(self) -> Inches:
        """The longest tenon that meets another one, mitred from cheek to cheek [in]."""
        return mitred_length(self.leg - self.outer_wall, self.limits.mitre_gap.value)

    @property
    def inner_length(self) -> Inches:
        """How long a mitred tenon is at its inner cheek [in]."""
        return mitred_length(self.inner_wall, self.limits.mitre_gap.value)

    @property
    def is_mitred(self) -> bool:
        """Whether the tenon has to be mitred because another one is in its way."""
        return self.aprons == 2 and self.length > self.inner_length + TOLERANCE
