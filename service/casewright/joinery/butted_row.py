"""A board that butts against a case side, held by a row of pieces: what its joints share, whatever the piece.

Every piece is marked from the front edge, unrounded, and never from the one before it.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.butted import (
    Butted,
    butted_shape,
    rest_of_length,
)
from casewright.joinery.joint import Measure, Setting, Tool
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_unless_above_zero
from casewright.joinery.solid import Shape
from casewright.joinery.sourced import Sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding
from casewright.measure.rounding import down_to, up_to
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Count, Inches, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class RowLimits:
    """What such a joint is held to, and its habits. Lengths are in inches.

    Attributes:
        part: a piece thicker than the thinner board divided by this is cautioned
        thin_part: one thinner than that board divided by this is cautioned
        left_usual: what stays of the case side behind a hole where nothing else is said
        left_least: less stops the joint
        clearance: both holes together are so much deeper than the piece is long
        length_times: a piece is so many times as long as its hole in the side is deep
        length_step: what is chosen is a multiple of this
        reach_good: a piece that reaches in less than so many times its thickness is cautioned
        reach_least: less than so many times its thickness stops the joint
        margin: from the edges to the first pieces where nothing else is said
        margin_step: on narrow boards a multiple of this
        edge_least: less wood before the first piece stops the joint
        spacing: from piece to piece at the most where nothing else is said
        spacing_most: pieces farther apart are cautioned
        between_least: less wood between two stops the joint
        slip: a hole is so much longer than its piece is wide
    """

    part: Sourced
    thin_part: Sourced
    left_usual: Sourced
    left_least: Sourced
    clearance: Sourced
    length_times: Sourced
    length_step: Sourced
    reach_good: Sourced
    reach_least: Sourced
    margin: Sourced
    margin_step: Sourced
    edge_least: Sourced
    spacing: Sourced
    spacing_most: Sourced
    between_least: Sourced
    slip: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceWords:
    """What the pieces and their holes are called, and how the holes are made.

    Attributes:
        one: one piece, such as `dowel`
        hole: what it goes into, such as `hole`
        tool: what makes that: the name of the setting
        made: how it is made
        is_round: whether a piece is round
    """

    one: str
    hole: str
    tool: str
    made: Words
    is_round: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ButtedRow:
    """A board that butts against the face of a case side, with its row, as it is asked for.

    Attributes:
        width: length of the joint, from the front edge to the rear edge [in]
        board: thickness of the board that butts [in]
        case_side: thickness of the case side [in]
        thick: thickness of a piece [in]
        along: its size along the joint: of a round one its thickness [in]
        side_depth: depth of the holes in the case side [in]
        length: length of a piece [in]
        margin: from each edge to the middle of the first piece [in]
        count: number of pieces
        words: what the pieces are called
        limits: what the joint is held to
        inside_width: between the case sides; None when it is not known [in]
        mark: code of the joint, for its findings
    """

    width: Inches
    board: Inches
    case_side: Inches
    thick: Inches
    along: Inches
    side_depth: Inches
    length: Inches
    margin: Inches
    count: Count
    words: PieceWords
    limits: RowLimits
    inside_width: Inches | None = None
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(
            width=self.width,
            board=self.board,
            case_side=self.case_side,
            thickness=self.thick,
            side_depth=self.side_depth,
            length=self.length,
            margin=self.margin,
            **({} if self.words.is_round else {"width_of_the_tenon": self.along}),
            **({} if self.inside_width is None else {"inside_width": self.inside_width}),
        )
        self._refuse_piece()
        self._refuse_row()

    def _refuse_piece(self) -> None:
        thin, words = min(self.board, self.case_side), self.words
        if self.thick >= thin - TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A {} of {} is no thinner than a board of {}; {:down} or less is usual.",
                    words.one,
                    self.thick,
                    thin,
                    thin / self.limits.part.value,
                )
            )
        if self.side_depth >= self.case_side - TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "{}s {} deep go through a case side of {}; make them {:bare}.",
                    words.hole.capitalize(),
                    self.side_depth,
                    self.case_side,
                    usual_side_depth(self.case_side, self.limits.left_usual.value),
                )
            )
        if self.board_depth <= self.limits.clearance.value + TOLERANCE:
            limits = self.limits
            raise CannotBeLaidOut(
                say(
                    "A {} {} long ends in the case side; make it {:up} or longer.",
                    words.one,
                    self.length,
                    usual_piece_length(self.side_depth, limits.length_times.value, limits.length_step.value),
                )
            )

    def _refuse_row(self) -> None:
        one = self.words.one
        if self.count < 1:
            raise CannotBeLaidOut(f"A row has 1 {one} at least; 2 are usual.")
        hole = self.hole_length
        if self.count * hole >= self.width - TOLERANCE:
            fits = int(self.width / (2 * hole) + TOLERANCE)
            raise CannotBeLaidOut(
                say(
                    "{:d} {}s of {} have no room on a board {} wide; take {}.",
                    self.count,
                    one,
                    self.along,
                    self.width,
                    say("{:d} or fewer", fits) if fits else say("one of {}", self.width / 4),
                )
            )
        if self.count == 1:
            return
        if 2 * self.margin >= self.width - TOLERANCE or self.margin <= hole / 2 + TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A row that begins {} from each edge has no room on a board {} wide for {}s of {}; {}.",
                    self.margin,
                    self.width,
                    one,
                    self.along,
                    say("begin at {}", self.width / 4)
                    if self.width / 4 > hole / 2 + TOLERANCE
                    else "take 1 alone",
                )
            )
        if (self.width - 2 * self.margin) / (self.count - 1) <= hole + TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "{:d} {}s of {} run into each other on a board {} wide; take {:d}.",
                    self.count,
                    one,
                    self.along,
                    self.width,
                    int((self.width - 2 * self.margin) / (2 * hole) + TOLERANCE) + 1,
                )
            )

    @property
    def hole_length(self) -> Inches:
        """Size of a hole along the joint [in]."""
        return self.along + self.limits.slip.value

    @property
    def board_depth(self) -> Inches:
        """Depth of the holes in the board [in]."""
        return rest_of_length(self.length, self.limits.clearance.value, self.side_depth)


def usual_side_depth(case_side: Inches, left: Inches) -> Inches:
    """How deep the holes in a case side are where nothing else is said.

    Rule: case_side - left, down to 1/64, and no less than half of the side

    Args:
        case_side: thickness of the case side [in]
        left: what stays of it behind a hole [in]

    Returns:
        The depth [in]

    Source: common practice.
    """
    return max(down_to(case_side - left, 1 / 64), case_side / 2)


def usual_piece_length(side_depth: Inches, times: Number, step: Inches) -> Inches:
    """The length of a piece: one part in the face of the side, two in the end of the board.

    Rule: times * side_depth, up to a multiple of step

    Args:
        side_depth: depth of the holes in the case side [in]
        times: so many times as long as that is deep [dimensionless]
        step: what is chosen is a multiple of this [in]

    Returns:
        The length [in]

    Source: common practice: the end of a board holds less than its face.
    """
    return up_to(times * side_depth, step)


@dataclass(frozen=True, slots=True, kw_only=True)
class RowJoint:
    """A board against a case side with its row of pieces, worked out.

    Attributes:
        given: what was asked for
        board_depth: depth of the holes in the end of the board [in]
        spacing: from the middle of one piece to the next [in]
        places: the middle of each from the front edge [in]
        left: what is left of the case side behind the holes [in]
        findings: every check that was carried out, passes too
    """

    given: ButtedRow
    board_depth: Inches
    spacing: Inches
    places: tuple[Inches, ...]
    left: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the length, the line, the row, the holes."""
        return (*_length(self.given), *_row(self), *_holes(self))

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        given = self.given
        half = min(given.limits.clearance.value, given.side_depth, self.board_depth) / 2
        words = given.words
        return butted_shape(
            Butted(
                note=say(
                    "Each {} goes {} deeper than the {} reaches: room for the glue, which is not drawn.",
                    words.hole,
                    half,
                    words.one,
                ),
                width=given.width,
                board=given.board,
                case_side=given.case_side,
                into_side=given.side_depth - half,
                into_board=self.board_depth - half,
                places=self.places,
                along=given.along,
                thick=given.thick,
                is_round=given.words.is_round,
                piece=f"{given.words.one}s",
            )
        )


def _length(given: ButtedRow) -> Iterator[Setting]:
    if given.inside_width is not None:
        yield Setting(
            name="board_length",
            label="Board length",
            value=given.inside_width,
            note="it butts: between the case sides, and no more",
        )


def _row(joint: RowJoint) -> Iterator[Setting]:
    given, one = joint.given, joint.given.words.one
    yield Setting(
        name="middle",
        label="Middle line",
        value=given.board / 2,
        note="on the end of the board and the inside face of the side, from the board's outer face",
        tool=Tool.GAUGE,
    )
    yield Setting(
        name="first",
        label=f"First {one}",
        value=joint.places[0],
        note="its middle, from the front edge of both boards",
    )
    if given.count > 1:
        yield Setting(
            name="spacing",
            label=f"From {one} to {one}",
            value=joint.spacing,
            note=say(
                "to check with; mark each from the front edge: {}",
                strung(", ", (say("{:bare}", place) for place in joint.places)),
            ),
        )
    yield Setting(
        name="count",
        label=f"{one.capitalize()}s",
        value=given.count,
        measure=Measure.COUNT,
        note="at each corner",
    )


def _holes(joint: RowJoint) -> Iterator[Setting]:
    given, words = joint.given, joint.given.words
    yield Setting(name="tool", label=words.tool, value=given.thick, note=words.made)
    if not words.is_round:
        yield Setting(
            name="hole_length",
            label=f"{words.hole.capitalize()} length",
            value=given.hole_length,
            note=say("along the joint: the {} is {} wide", words.one, given.along),
            wrong=given.along,
        )
    yield Setting(
        name="side_depth",
        label="Depth in the side",
        value=given.side_depth,
        note="from its inside face: set the stop",
        wrong=joint.board_depth if abs(joint.board_depth - given.side_depth) > TOLERANCE else None,
    )
    yield Setting(
        name="board_depth",
        label="Depth in the board",
        value=joint.board_depth,
        note=say(
            "from its end; both together are {} deeper than a {} is long",
            given.limits.clearance.value,
            words.one,
        ),
        wrong=given.length - given.side_depth,
    )
    yield Setting(
        name="length", label=f"{words.one.capitalize()} length", value=given.length, note="its ends chamfered"
    )
    yield Setting(name="left", label="Left of the side", value=joint.left, note=f"behind the {words.hole}s")
