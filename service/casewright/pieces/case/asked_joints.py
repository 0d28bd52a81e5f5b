"""What the joints of a case are worked out from, and how each is asked for."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.joint import Joint
from casewright.measure.ledger import Ledger
from casewright.measure.making import quickly_made
from casewright.measure.saying import Words
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.plan import CasePlan
from casewright.pieces.layout.parts import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseBench:
    """What the joints of a case are worked out from.

    Attributes:
        plan: what the case is worked out from
        lines: the parts by their line of the cut list, with what was measured of them
        shrinkage: how much the sides lose in depth [in]
        rack: the shop's tools
    """

    plan: CasePlan
    lines: dict[str, list[Part]]
    shrinkage: Inches
    rack: Rack

    @property
    def spec(self) -> UnitSpec:
        """What the maker chose."""
        return self.plan.spec

    def ledger(self, key: str) -> Ledger:
        """Where the working of a joint is kept."""
        return self.plan.ledger.under(f"joints.{key}")

    def of(self, *marks: str) -> tuple[Part, ...]:
        """The parts of some lines."""
        return tuple(part for mark in marks for part in self.lines.get(mark, ()))

    def alike(self, *marks: str) -> Iterator[tuple[Part, ...]]:
        """The parts of some lines, those of one thickness and width together."""
        groups: dict[tuple[Inches, Inches], list[Part]] = {}
        for part in self.of(*marks):
            groups.setdefault((part.thickness, part.width), []).append(part)
        return (tuple(group) for group in groups.values())

    @property
    def side(self) -> Inches:
        """Thickness of the thinner case side, measured where it was [in]."""
        return min(part.thickness for part in self.pin_boards)

    @property
    def pin_boards(self) -> tuple[Part, ...]:
        """The sides, or of framed ones the stiles: what the rails are joined to."""
        return self.of("C1") or self.of("V1")

    @property
    def inner_faces(self) -> tuple[Part, ...]:
        """The sides, or of framed ones stiles and rails: what a board over the full depth is let into."""
        return self.of("C1") or self.of("V1", "V2")


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class AskedJoint:
    """A joint that is to be worked out, and what it serves.

    Attributes:
        key: its short name, such as `rails`
        kind: the family of the joint, such as `housing`
        title: what it joins, by which joint
        places: how often it is cut in one unit
        serves: the parts by the name that the joint gives their board
        solve: works it out; raises ValueError where it cannot be laid out
        advice: what else is said on its card
    """

    key: str
    kind: str
    title: str
    places: Count
    serves: tuple[tuple[str, tuple[Part, ...]], ...]
    solve: Callable[[], Joint]
    advice: tuple[Words, ...] = ()

    @property
    def codes(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """The codes of the parts, by the name of their board."""
        return tuple((board, tuple(part.code for part in parts)) for board, parts in self.serves)
