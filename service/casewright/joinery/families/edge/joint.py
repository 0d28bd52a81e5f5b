"""Boards joined along their edges without glue: shiplap, and tongue and groove, of backs and matched panels.

Each board is held at its middle and free at its edges, so that every joint takes the movement of one board.
"""

from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import how_it_is_cut
from casewright.joinery.families.edge.asked import EDGES, FEWEST, Edge
from casewright.joinery.families.edge.checks import edge_findings
from casewright.joinery.families.edge.shape import edge_shape
from casewright.joinery.families.edge.sizes import (
    board_width,
    boards_over,
    cheek,
    covered_by_one,
    covered_then,
    gap_then,
    overlap_that_covers,
    room_to_swell,
    usual_tongue,
)
from casewright.joinery.joint import (
    Choosing,
    Chosen,
    JointKind,
    Measure,
    Measured,
    Setting,
    Solved,
    Values,
    fields,
)
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.season import chosen_movement, chosen_shrinking, chosen_swelling
from casewright.joinery.solid import Shape
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.remembering import remembered
from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches, Percent, PerPercent

STEP = 1 / 64
"""To what a gap is rounded up: the thinnest spacer that is cut [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeJoint:
    """Boards joined along their edges, worked out.

    Attributes:
        given: what was asked for
        board: width of each board, tongue or lap included [in]
        coverage: what one board covers: from board to board [in]
        wettest: the gap at a joint when wettest; below nothing the boards push each other [in]
        driest: the gap at a joint when driest [in]
        covers: what a tongue or lap still covers then [in]
        findings: every check that was carried out, passes too
    """

    given: Edge
    board: Inches
    coverage: Inches
    wettest: Inches
    driest: Inches
    covers: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints: the boards, then the cutters, then the gaps as they go up."""
        given, part = self.given, "lap" if self.given.is_shiplap else "tongue"
        return (
            Setting(name="boards", label="Boards", value=given.boards, measure=Measure.COUNT),
            Setting(
                name="board_width",
                label="Width of a board",
                value=self.board,
                note=f"with its {part}; the outer edges of the first and the last are left plain",
            ),
            Setting(
                name="face",
                label="What shows of a board",
                value=self.board - given.overlap,
                note=say("of the last one {}", self.board),
            ),
            *(self._shiplap() if given.is_shiplap else self._tongue()),
            Setting(
                name="gap",
                label="Gap at each joint",
                value=given.gap,
                note="a spacer between the shoulders; taken out once the boards are fixed",
            ),
            Setting(
                name="end_gap",
                label="Gap at the ends",
                value=given.end_gap,
                note="beyond the first board and the last",
            ),
            Setting(
                name="coverage",
                label="From board to board",
                value=self.coverage,
                note="what one covers; fix each at the middle of its width only",
                wrong=self.board,
            ),
            Setting(
                name="wettest",
                label="Gap when wettest",
                value=self.wettest,
                measure=Measure.FINE,
                note="below 0 the boards push each other",
            ),
            Setting(name="driest", label="Gap when driest", value=self.driest, measure=Measure.FINE),
            Setting(
                name="covers",
                label="Covers when driest",
                value=self.covers,
                measure=Measure.FINE,
                note=f"what is left of the {part} in the joint",
            ),
        )

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        return edge_shape(self.given)

    def _shiplap(self) -> tuple[Setting, ...]:
        given = self.given
        return (
            Setting(
                name="lap_depth",
                label="Rabbet, depth",
                value=cheek(given.thickness, 0.0),
                note="half of the board: in one edge from the face side, in the other from the back",
            ),
            Setting(
                name="overlap",
                label="Rabbet, width",
                value=given.overlap,
                note="in both edges, from the edge",
            ),
        )

    def _tongue(self) -> tuple[Setting, ...]:
        given = self.given
        return (
            Setting(
                name="cheek",
                label="Fence to groove",
                value=cheek(given.thickness, given.tongue),
                note="from the face side of every board, for the groove and for the tongue",
            ),
            Setting(
                name="tongue",
                label="Tongue, thickness",
                value=given.tongue,
                note=say(
                    "the width of the groove, {}; it slides by hand",
                    how_it_is_cut(given.tongue, given.rack.cutters),
                ),
            ),
            Setting(name="overlap", label="Tongue, length", value=given.overlap, note="to its shoulders"),
            Setting(
                name="groove_depth",
                label="Groove, depth",
                value=given.groove_depth,
                note="deeper than the tongue is long, so that the faces meet first",
                wrong=given.overlap,
            ),
        )


@remembered
def edge_joint(asked: Edge, ledger: Ledger = UNKEPT) -> EdgeJoint:
    """Boards joined along their edges, worked out: their width, what they cover, the year's gaps and checks.

    Args:
        asked: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint; movement by the Wood Handbook, chapter 13.
    """
    take, moves = ledger.take, asked.movement
    board = take(
        "board_width",
        board_width,
        width=asked.covered,
        boards=asked.boards,
        overlap=asked.overlap,
        gap=asked.gap,
    )
    wettest = take("gap_wettest", gap_then, board=board, gap=asked.gap, movement=moves, change=asked.swelling)
    driest = take("gap_driest", gap_then, board=board, gap=asked.gap, movement=moves, change=-asked.shrinking)
    covers = take(
        "covers",
        covered_then,
        overlap=asked.overlap,
        gap=driest,
        movement=moves,
        change=-asked.shrinking,
    )
    return EdgeJoint(
        given=asked,
        board=board,
        coverage=take("coverage", covered_by_one, board=board, overlap=asked.overlap, gap=asked.gap),
        wettest=wettest,
        driest=driest,
        covers=covers,
        findings=tuple(edge_findings(asked, board, wettest, driest, covers)),
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """Boards joined along their edges from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    width, thickness = take.number("width"), take.number("thickness")
    moves = take.or_choose("movement", chosen_movement)
    swelling = take.or_choose("swelling", chosen_swelling)
    shrinking = take.or_choose("shrinking", chosen_shrinking)
    boards = take.optional("boards")
    # Gap and tongue follow from the widest board that there may be, and the boards' number from them.
    widest = (
        take.or_choose("widest", _chosen_widest) if boards is None else width / boards + EDGES.overlap.value
    )
    tongue = take.or_choose("tongue", _chosen_tongue, thickness)
    gap = take.or_choose("gap", _chosen_gap, widest, moves, swelling)
    end_gap = take.or_choose("end_gap", _chosen_end_gap, widest, moves, swelling)
    overlap = take.or_choose("overlap", _chosen_overlap, widest, gap, moves, shrinking)
    if boards is None:
        boards = take.or_choose("boards", _chosen_boards, width - 2 * end_gap, widest, overlap, gap)
    asked = Edge(
        width=width,
        thickness=thickness,
        boards=int(boards),
        tongue=tongue,
        overlap=overlap,
        gap=gap,
        end_gap=end_gap,
        movement=moves,
        swelling=swelling,
        shrinking=shrinking,
        rack=rack,
    )
    return Solved(joint=edge_joint(asked, ledger), chosen=take.chosen)


def _chosen_widest() -> Chosen:
    habit = EDGES.widest
    return _chosen("widest", habit.value, say("Up to {} a board lies flat.", habit.value), habit.source)


def _chosen_tongue(thickness: Inches) -> Chosen:
    if thickness < EDGES.tongue_from.value - TOLERANCE:
        why = say("Boards of {} are lapped, half and half.", thickness)
        return _chosen("tongue", 0.0, why, EDGES.tongue_from.source)
    why = say("A third of the {} boards, to the nearest {:bare}.", thickness, EDGES.tongue_step.value)
    tongue = usual_tongue(thickness, EDGES.tongue_part.value, EDGES.tongue_step.value)
    return _chosen("tongue", tongue, why, EDGES.tongue_part.source)


def _chosen_gap(widest: Inches, moves: PerPercent, swelling: Percent) -> Chosen:
    gap = room_to_swell(widest, moves, swelling, STEP)
    return _chosen("gap", gap, "What a board of that width swells.", "Wood Handbook, chapter 13")


def _chosen_end_gap(widest: Inches, moves: PerPercent, swelling: Percent) -> Chosen:
    gap = room_to_swell(widest / 2, moves, swelling, STEP)
    why = "What half a board swells: it is held at its middle."
    return _chosen("end_gap", gap, why, "Wood Handbook, chapter 13")


def _chosen_overlap(widest: Inches, gap: Inches, moves: PerPercent, shrinking: Percent) -> Chosen:
    habit, least = EDGES.overlap, EDGES.cover_least
    needed = up_to(overlap_that_covers(widest, gap, moves, shrinking, least.value), EDGES.tongue_step.value)
    if needed <= habit.value + TOLERANCE:
        return _chosen("overlap", habit.value, say("{} is usual.", habit.value), habit.source)
    why = say("So that {} still covers when the boards are driest.", least.value)
    return _chosen("overlap", needed, why, least.source)


def _chosen_boards(width: Inches, widest: Inches, overlap: Inches, gap: Inches) -> Chosen:
    if widest <= overlap:
        raise CannotBeLaidOut(
            say(
                "A board {} wide is all tongue or lap; give a widest board of {}.", widest, EDGES.widest.value
            )
        )
    count: Count = max(FEWEST, boards_over(width, widest, overlap, gap))
    why = say("As few as cover {} with boards up to {:bare} wide.", width, widest)
    return Chosen(name="boards", value=count, measure=Measure.COUNT, why=why, source="geometry of the joint")


def _chosen(name: str, value: Inches, why: Words, source: str) -> Chosen:
    return Chosen(name=name, value=value, measure=Measure.LENGTH, why=why, source=source)


FIELDS = fields("edge")

KIND = JointKind(
    name="edge-joint",
    title="Shiplap, or tongue and groove, of back boards and matched edges",
    fields=FIELDS,
    solve=_solve,
)
