"""The notch of a drawer around pipes: the sizes that follow from it, and what is refused of it."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_spec import SolidBottom
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.notch_spec import Notch
from casewright.pieces.asked.running_spec import CentreGuide
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.ends import End
from casewright.pieces.drawers.sizes import (
    INNER_BACK,
    INNER_SIDES,
    NOTHING,
    SHORT_BACKS,
    CannotBuild,
    NotchSizes,
)
from casewright.pieces.layout.openings import Face, FaceRow, Opening
from casewright.pieces.rules import notch_rules as rules

ARM_LEAST = 3.0
"""Clear width of an arm, and clear depth before the notch: room for a hand (common practice) [in]."""
PAST_THE_BACK = 1.0
"""How far a notch reaches past the backs of its arms, to be one at all (common practice) [in]."""
WIDTH_LEAST = 1.0
"""A notch is at least as wide as a pipe (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Boxed:
    """What of a drawer's box its notch is worked out from.

    Attributes:
        width: over the sides [in]
        length: from the board that the sides are joined to, to the rear end [in]
        front: thickness of that board [in]
        left_side: thickness of the left side [in]
        right_side: thickness of the right side [in]
        back: thickness of the backs [in]
        depth: clear depth inside [in]
    """

    width: Inches
    length: Inches
    front: Inches
    left_side: Inches
    right_side: Inches
    back: Inches
    depth: Inches


def notch_sizes(
    spec: UnitSpec, opening: Opening, box: Boxed, ends: tuple[End, End | None], ledger: Ledger
) -> NotchSizes | None:
    """The sizes of the notch of one drawer.

    Args:
        spec: what the maker chose
        opening: the opening that the drawer goes into
        box: its box
        ends: how its sides are joined to its back, and the inner sides to the short backs
        ledger: keeps the working of this drawer

    Returns:
        The sizes; None for a drawer without a notch.

    Raises:
        CannotBuild: the notch leaves no arm that could be used, or no drawer before it

    Source: common practice of drawers around plumbing.
    """
    asked = row_of(spec.rows, opening.row_mark).notch
    outer, inner = ends
    if asked is None or inner is None:
        return None
    under = ledger.under("notch")
    drawn = spec.drawers.side, spec.drawers.side if spec.drawers.back is None else spec.drawers.back

    def thick(mark: str, drawn: Inches) -> Inches:
        return spec.measured.parts.get(f"{opening.code}-{mark}", NOTHING).thickness or drawn

    left_inner, right_inner = (thick(mark, drawn[0]) for mark in INNER_SIDES)
    head = thick(INNER_BACK, drawn[1])
    aside = -asked.off if asked.toward == "left" else asked.off
    left = under.take("left", rules.from_the_left, width=box.width, notch=asked.width, aside=aside)
    arms = {
        mark: under.take(f"{mark}_arm", rules.arm_clear, outside=outside, side=side, inner=thick)
        for mark, outside, side, thick in (
            ("left", left, box.left_side, left_inner),
            ("right", box.width - left - asked.width, box.right_side, right_inner),
        )
    }
    room = under.take(
        "room", rules.room_before, box=box.length, front=box.front, depth=asked.depth, head=head
    )
    _refuse_sizes(opening, asked, box, (min(arms.values()), room, outer.set_in))

    def short_back(mark: str, outside: Inches, side: Inches, thick: Inches) -> Inches:
        return under.take(
            f"{mark}_back",
            rules.short_back,
            outside=outside,
            side=side,
            reach_out=outer.reach if outer.is_between else side,
            inner=thick,
            reach_in=inner.reach if inner.is_between else thick,
        )

    around = under.take(
        "around", rules.across_the_notch, notch=asked.width, left=left_inner, right=right_inner
    )
    return NotchSizes(
        asked=asked,
        left=left,
        left_inner=left_inner,
        right_inner=right_inner,
        head=head,
        backs=(thick(SHORT_BACKS[0], drawn[1]), thick(SHORT_BACKS[1], drawn[1])),
        start=box.length - asked.depth - head,
        left_arm=arms["left"],
        right_arm=arms["right"],
        room=room,
        around=around,
        side_length=under.take(
            "side_length",
            rules.inner_side_length,
            depth=asked.depth,
            set_in=outer.set_in,
            head=head,
            lip=inner.lip,
        ),
        side_start=inner.lip,
        head_length=under.take("head_length", rules.head_between, notch=asked.width, reach=inner.reach)
        if inner.is_between
        else around,
        left_back=short_back("left", left, box.left_side, left_inner),
        right_back=short_back("right", box.width - left - asked.width, box.right_side, right_inner),
        left_start=box.left_side - outer.reach if outer.is_between else 0.0,
        right_start=left + asked.width + (right_inner - inner.reach if inner.is_between else 0.0),
        taken=under.take("taken", rules.taken_deep, inside=box.depth, room=room),
    )


def is_notched(spec: UnitSpec, face: Face) -> bool:
    """Whether any drawer of a unit has a notch.

    Args:
        spec: what the maker chose
        face: the rows

    Returns:
        True where one has.

    Source: the unit file.
    """
    return any(row_of(spec.rows, row.mark).notch is not None for row in face.all_rows)


def refuse_notches(spec: UnitSpec, face: Face) -> None:
    """Refuses a notch in drawers that can have none, or in a row without drawers.

    Args:
        spec: what the maker chose
        face: the rows

    Raises:
        CannotBuild: with the field, the reason and what would do

    Source: common practice of drawers around plumbing.
    """
    for row in face.all_rows:
        asked = row_of(spec.rows, row.mark)
        if asked.notch is not None:
            _refuse_row(spec, row, asked.files is not None)


def _refuse_row(spec: UnitSpec, row: FaceRow, holds_files: bool) -> None:
    drawers = spec.drawers
    refusals: tuple[tuple[bool, Words], ...] = (
        (
            not row.openings,
            say("{}.width: there is no drawer in this row to be notched; leave it out", field_of(row.mark)),
        ),
        (
            holds_files,
            say(
                "{}.width: hanging folders need the whole of a drawer; leave out the notch or the folders",
                field_of(row.mark),
            ),
        ),
        (
            isinstance(drawers.bottom, SolidBottom),
            say(
                "drawers.bottom.kind: row {} has a notch, and a solid bottom moves from front to back: its "
                "cut-out would open and close at the inner back, and short grain would carry the arms; "
                "choose plywood",
                row.mark,
            ),
        ),
        (
            drawers.groove.slips is not None and not drawers.screwed_under,
            say(
                "drawers.groove.slips: row {} has a notch, whose inner sides are grooved themselves; let the "
                "sides be grooved too, thick enough for it",
                row.mark,
            ),
        ),
        (
            isinstance(drawers.running, CentreGuide),
            say(
                "drawers.running.kind: row {} has a notch, and a centre guide runs where the pipes stand; "
                "choose runners or slides",
                row.mark,
            ),
        ),
    )
    for is_refused, words in refusals:
        if is_refused:
            raise CannotBuild(words)


def field_of(mark: str) -> str:
    """The path of the notch of a row in a unit file: `rows.2.across.1.rows.3.notch` for row 2-1-3.

    Args:
        mark: the mark of the row

    Returns:
        The path, counted from one.

    Source: the schema of a unit.
    """
    steps = [("rows", "across")[place % 2] + f".{number}" for place, number in enumerate(mark.split("-"))]
    return ".".join((*steps, "notch"))


def _refuse_sizes(opening: Opening, asked: Notch, box: Boxed, left: tuple[Inches, Inches, Inches]) -> None:
    """Refuses a notch that leaves too little beside it or before it, or that is none."""
    (arm, room, set_in), field = left, field_of(opening.row_mark)
    least = box.back + set_in + PAST_THE_BACK
    if asked.width < WIDTH_LEAST:
        raise CannotBuild(
            say(
                "{}.width: {} is too narrow for a pipe; make it {:up} or more",
                field,
                asked.width,
                WIDTH_LEAST,
            )
        )
    if asked.depth < least:
        raise CannotBuild(
            say(
                "{}.depth: {} hardly reaches past the back of drawer {}; make it {:up fraction} or more",
                field,
                asked.depth,
                opening.code,
                least,
            )
        )
    if arm < ARM_LEAST:
        # Towards the middle first: where that is not enough, the notch is too wide.
        short = ARM_LEAST - arm
        is_off = asked.off >= short
        most = asked.off - short if is_off else asked.width + 2 * (arm + asked.off - ARM_LEAST)
        if not is_off and most < WIDTH_LEAST:
            raise CannotBuild(
                say(
                    "{}.width: drawer {} is {} wide, too narrow for a notch with {} clear at each side; "
                    "leave the notch out",
                    field,
                    opening.code,
                    box.width,
                    ARM_LEAST,
                )
            )
        raise CannotBuild(
            say(
                "{}.{}: drawer {} keeps {} clear in its narrower arm, and a hand needs {}; make it {:down "
                "fraction} or less",
                field,
                "off" if is_off else "width",
                opening.code,
                max(0.0, arm),
                ARM_LEAST,
                most,
            )
        )
    if room < ARM_LEAST:
        most = asked.depth - (ARM_LEAST - room)
        raise CannotBuild(
            say(
                "{}.depth: drawer {} keeps {} clear before the notch, and a hand needs {}; {}",
                field,
                opening.code,
                max(0.0, room),
                ARM_LEAST,
                say("make it {:down fraction} or less", most)
                if most >= least
                else "the drawer is too short for a notch",
            )
        )
