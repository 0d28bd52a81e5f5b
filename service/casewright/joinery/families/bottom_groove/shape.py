"""A drawer's bottom in its grooves, in space, at the corner of the front and the left side.

The joint of front and side itself is left out: the side is drawn butted, and the front's groove from where
the side's begins. With a muntin the bottom is drawn shortened between them, as a break would have it; no
dimension runs over that stretch. Meant to be free are the play at each side and what clears the raised part.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.families.bottom_groove.asked import BottomGroove
from casewright.joinery.families.bottom_groove.sizes import muntin_lip
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Flat,
    Marked,
    Prism,
    Shape,
    Strip,
    Stroke,
    block,
)
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.units import Inches

BEYOND = 1.5
"""How far a board is drawn past the corner, in thicknesses of the front."""


@dataclass(frozen=True, slots=True)
class _Drawn:
    """Where the boards lie."""

    asked: BottomGroove

    @property
    def beyond(self) -> Inches:
        return BEYOND * max(self.asked.front, self.asked.carrier)

    @property
    def face(self) -> Inches:
        """The grooved face, from the outside of the side."""
        return self.asked.side + self.asked.slip

    @property
    def floor(self) -> Inches:
        return self.face - self.asked.groove_depth

    @property
    def muntin(self) -> Inches:
        """Where the muntin begins, behind the break."""
        return self.face + self.beyond

    @property
    def far(self) -> Inches:
        return self.muntin + (self.asked.muntin + self.beyond / 2 if self.asked.muntin else 0.0)

    @property
    def rear(self) -> Inches:
        return self.asked.front + self.beyond

    @property
    def groove(self) -> Flat:
        return self.asked.groove_height, self.asked.top

    @property
    def lip(self) -> Inches:
        return muntin_lip(self.asked.muntin_thickness, self.asked.groove_width)

    @property
    def high(self) -> Inches:
        highest = max(self.asked.top, self.asked.slip_height, self.asked.top + self.lip)
        return highest + max(self.asked.groove_width, self.asked.side)

    @property
    def bottom_at(self) -> Flat:
        """From where to where up the edge of the bottom stands: on the lower edge of the groove."""
        low, high = self.groove
        return low, min(high, low + self.asked.bottom)

    @property
    def underside(self) -> Inches:
        """The underside of the raised part [in]."""
        return self.bottom_at[1] - self.asked.bottom


def groove_shape(asked: BottomGroove) -> Shape:
    """The joint in space.

    Args:
        asked: the groove

    Returns:
        Its boards, views and templates.

    Source: geometry of the drawer.
    """
    drawn = _Drawn(asked)
    filled_from = drawn.floor + asked.play
    fills = asked.bottom >= asked.groove_width - TOLERANCE
    return Shape(
        boards=tuple(_boards(drawn)),
        cuts=tuple(_cuts(drawn)),
        engaged=max(asked.front_depth, asked.groove_depth),
        filled=(
            (filled_from if fills else 0.0, drawn.face if fills else drawn.floor),
            (0.0, asked.slip_height or drawn.high),
            (asked.front, drawn.rear),
        ),
        strips=tuple(_strips(drawn)),
    )


def _boards(drawn: _Drawn) -> Iterator[Board]:
    asked, face, floor = drawn.asked, drawn.face, drawn.floor
    behind, whole = (asked.front, drawn.rear), (0.0, drawn.high)
    yield Board(name="front", prisms=tuple(_front(drawn)), apart=(0.0, 0.0, -2.0))
    if asked.slip:
        side = [block((0.0, asked.side), whole, behind)]
        slip = _grooved((asked.side, floor), (floor, face), asked.slip_height, behind, drawn)
        yield Board(name="side", prisms=tuple(side), apart=(-3.0, 0.0, 0.0))
        yield Board(name="slip", prisms=tuple(slip), apart=(-2.0, 0.0, 0.0))
    else:
        prisms = _grooved((0.0, floor), (floor, face), drawn.high, behind, drawn)
        yield Board(name="side", prisms=tuple(prisms), apart=(-2.0, 0.0, 0.0))
    left, *right = _bottoms(drawn)
    yield left
    if asked.muntin:
        # Between its halves, so that boards that meet are hatched differently.
        yield Board(name="muntin", prisms=tuple(_muntin(drawn)), apart=(0.0, 0.0, 2.0))
    yield from right


def _front(drawn: _Drawn) -> Iterator[Prism]:
    asked, floor, far = drawn.asked, drawn.floor, drawn.far
    low, high = drawn.groove
    back = asked.front - asked.front_depth
    yield block((0.0, far), (0.0, drawn.high), (0.0, back))
    yield block((0.0, floor), (0.0, drawn.high), (back, asked.front))
    yield block((floor, far), (0.0, low), (back, asked.front))
    yield block((floor, far), (high, drawn.high), (back, asked.front))


def _grooved(solid: Flat, cheek: Flat, top: Inches, along: Flat, drawn: _Drawn) -> Iterator[Prism]:
    """A side or a slip: what lies behind its groove, and below and above it."""
    low, high = drawn.groove
    yield block(solid, (0.0, top), along)
    yield block(cheek, (0.0, low), along)
    yield block(cheek, (high, top), along)


def _bottoms(drawn: _Drawn) -> Iterator[Board]:
    asked = drawn.asked
    start, into = drawn.floor + asked.play, asked.groove_depth - asked.play
    room = asked.limits.edge_room.value
    if not asked.muntin:
        body = drawn.face + room, drawn.far
        yield Board(name="bottom", prisms=tuple(_bottom((start, drawn.far), body, drawn)))
        return
    left, right = drawn.muntin, drawn.muntin + asked.muntin
    halves = (
        ("left half of the bottom", (start, left + into), (drawn.face + room, left - room), -1.0),
        ("right half of the bottom", (right - into, drawn.far), (right + room, drawn.far), 2.0),
    )
    for name, edges, body, away in halves:
        yield Board(name=name, prisms=tuple(_bottom(edges, body, drawn)), apart=(away, 0.0, 0.0))


def _bottom(edges: Flat, body: Flat, drawn: _Drawn) -> Iterator[Prism]:
    """A bottom, with what is thicker than the groove below it and clear of every face."""
    asked = drawn.asked
    front = asked.front - asked.front_depth
    yield block(edges, drawn.bottom_at, (front, drawn.rear))
    if drawn.underside < drawn.groove[0] - TOLERANCE:
        inner = asked.front + asked.limits.edge_room.value
        yield block(body, (drawn.underside, drawn.groove[0]), (inner, drawn.rear))


def _muntin(drawn: _Drawn) -> Iterator[Prism]:
    asked, left, lip = drawn.asked, drawn.muntin, drawn.lip
    low, high = drawn.groove
    behind = asked.front, drawn.rear
    web = left + asked.groove_depth, left + asked.muntin - asked.groove_depth
    yield block(web, (low - lip, high + lip), behind)
    for cheek in ((left, web[0]), (web[1], left + asked.muntin)):
        yield block(cheek, (low - lip, low), behind)
        yield block(cheek, (high, high + lip), behind)
    yield block(web, (low, high), (asked.front - asked.front_depth, asked.front))


def _cuts(drawn: _Drawn) -> Iterator[Cut]:
    asked, face, floor = drawn.asked, drawn.face, drawn.floor
    low, high = drawn.bottom_at
    carried = "slip" if asked.slip else "side"
    yield Cut(
        axis=Axis.Y,
        at=(low + high) / 2,
        title="seen from above, cut through the groove",
        dimensions=(
            Dimension(name="groove", start=floor, end=face, level=True),
            *((Dimension(name="side", start=0.0, end=asked.side, level=True),) if asked.slip else ()),
            Dimension(
                name="groove",
                start=asked.front - asked.front_depth,
                end=asked.front,
                level=False,
                after=False,
            ),
            Dimension(name="front", start=0.0, end=asked.front, level=False),
            *_muntin_in_plan(drawn),
        ),
    )
    yield Cut(
        axis=Axis.Z,
        at=asked.front + drawn.beyond / 2,
        title=f"seen from the front, behind it: the groove in the {carried}",
        dimensions=(
            Dimension(name="to the groove", start=0.0, end=drawn.groove[0], level=False, after=False),
            Dimension(name="groove", start=drawn.groove[0], end=drawn.groove[1], level=False, after=False),
            *_slip_in_section(drawn),
            Dimension(name="bottom", start=drawn.underside, end=high, level=False),
            Dimension(name="groove", start=floor, end=face, level=True),
            Dimension(name="left", start=asked.side if asked.slip else 0.0, end=floor, level=True, row=1),
        ),
    )


def _muntin_in_plan(drawn: _Drawn) -> Iterator[Dimension]:
    asked, left = drawn.asked, drawn.muntin
    if asked.muntin:
        yield Dimension(name="muntin", start=left, end=left + asked.muntin, level=True)
        inside = left + asked.groove_depth, left + asked.muntin - asked.groove_depth
        yield Dimension(name="tongue", start=inside[0], end=inside[1], level=True, after=False)


def _slip_in_section(drawn: _Drawn) -> Iterator[Dimension]:
    asked = drawn.asked
    if asked.slip:
        yield Dimension(name="slip", start=0.0, end=asked.slip_height, level=False, after=False, row=1)
    if asked.muntin:
        low = asked.groove_height - drawn.lip
        high = low + asked.muntin_thickness
        yield Dimension(name="muntin", start=low, end=high, level=False, row=1)


def _strips(drawn: _Drawn) -> Iterator[Strip]:
    asked, long = drawn.asked, drawn.beyond
    low, high = drawn.groove
    for board, tall in (
        ("slip" if asked.slip else "side", asked.slip_height or drawn.high),
        ("front", drawn.high),
    ):
        yield Strip(
            board=board,
            face="inside face",
            length=long,
            height=tall,
            lines=(
                Marked(stroke=Stroke.GAUGE, start=(0.0, low), end=(long, low), label="lower edge"),
                Marked(stroke=Stroke.GAUGE, start=(0.0, high), end=(long, high), label="upper edge"),
            ),
            waste=(((0.0, low), (long, low), (long, high), (0.0, high)),),
        )
