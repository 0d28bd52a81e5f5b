"""A joint of a piece with all that it serves."""

from dataclasses import dataclass

from casewright.joinery.joint import Joint
from casewright.measure.making import quickly_made
from casewright.measure.saying import Words
from casewright.measure.units import Count


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedJoint:
    """A joint of a piece with all that it serves.

    Attributes:
        key: its short name in the working and in addresses, such as `rails`
        kind: the family of the joint, such as `housing`
        title: what it joins, by which joint
        places: how often it is cut in one unit
        serves: the codes of the parts by the name that the joint gives their board
        joint: the joint, worked out
        working: where the working of its figures lies in the ledger, such as `case.joints.rails`
        drawers: the codes of the drawers that have it; none for a joint of the case
        advice: what else is said on its card
    """

    key: str
    kind: str
    title: str
    places: Count
    serves: tuple[tuple[str, tuple[str, ...]], ...]
    joint: Joint
    working: str
    drawers: tuple[str, ...] = ()
    advice: tuple[Words, ...] = ()

    @property
    def parts(self) -> tuple[str, ...]:
        """The codes of every part that it is cut on."""
        return tuple(dict.fromkeys(code for _, codes in self.serves for code in codes))

    def cut_on(self, board: str) -> tuple[str, ...]:
        """The codes of the parts that the joint calls by a name; of all its parts where none goes by it."""
        return dict(self.serves).get(board, self.parts)
