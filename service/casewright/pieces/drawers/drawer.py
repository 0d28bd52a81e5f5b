"""One drawer, worked out, and where it sits."""

from dataclasses import dataclass

from casewright.measure.making import quickly_made
from casewright.pieces.drawers.bottom_plans import BottomPlan
from casewright.pieces.drawers.joints import DrawerJoints
from casewright.pieces.drawers.running import Run
from casewright.pieces.drawers.sizes import DrawerSizes
from casewright.pieces.layout.pulls import Boring


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Drawer:
    """One drawer: its sizes, joints, bottom and pulls.

    Attributes:
        code: unit, row and position, such as `A-R5-1`
        sizes: what was worked out from its opening
        joints: front and back
        bottom: the bottom
        pulls: centre of each pull, from the left outside of the case [in]
        run: what it runs on and stops against
        boring: where its front is bored for the pulls
        slip: length of each slip; None without any [in]
    """

    code: str
    sizes: DrawerSizes
    joints: DrawerJoints
    bottom: BottomPlan
    pulls: tuple[float, ...]
    run: Run
    boring: Boring
    slip: float | None = None

    @property
    def travel(self) -> float:
        """How far it opens to its outstop [in]."""
        return self.run.travel


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where the box of a drawer sits in the closed case.

    Attributes:
        x: its left side from the outside of the left case side [in]
        y: face of the board that the sides are joined to, behind the front edge of the case [in]
        z: the underside of the drawer above the floor [in]
        base: height of the base, on which the case stands [in]
    """

    x: float
    y: float
    z: float
    base: float
