"""A leg with its aprons in space.

One stands inside the piece and looks at its far right corner. The leg's two inside faces are at x = 0 and
z = 0, where the shoulders close, and its outside faces at x = leg and z = leg. One apron comes from the left
along x, the other from before along z; each is set back from the outside face beside it. Heights run up from
the lower edge of the aprons to the top of the leg. So one looks into both mortises when the three are drawn
apart, and the mitre of the two tenons lies where x = z.

The room for the glue below each tenon and haunch and the gap between two mitred tenons are meant, and lie
outside the block that the boards fill.
"""

from collections.abc import Iterator

from casewright.joinery.families.leg_tenon.asked import LegTenon
from casewright.joinery.families.leg_tenon.rules import leg_haunch_length
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Flat,
    Marked,
    Outline,
    Prism,
    Shape,
    Strip,
    Stroke,
    block,
    box,
)
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import Room, carved, within
from casewright.measure.units import Inches

BELOW = 1.0
"""How far the leg is drawn below the aprons, in its own thickness."""
BESIDE = 1.3
"""How far an apron is drawn past its shoulder, in thicknesses of the leg."""


def leg_shape(joint: LegTenon) -> Shape:
    """The joint in space.

    Args:
        joint: the joint

    Returns:
        The leg and its aprons, their views, and what is marked on them.

    Source: geometry of the joint.
    """
    low, high = _heights(joint)
    depth = min(joint.length, joint.inner_length) if joint.aprons == 2 else joint.length
    return Shape(
        boards=tuple(_boards(joint)),
        cuts=(_plan(joint), _elevation(joint)),
        engaged=joint.length,
        filled=((0.0, depth), (low, high), (0.0, joint.leg)),
        strips=tuple(_strips(joint)),
    )


def _heights(joint: LegTenon) -> Flat:
    """From where to where the tenon runs up its apron."""
    return joint.lower_shoulder, joint.lower_shoulder + joint.tenon_width


def _cheeks(joint: LegTenon) -> Flat:
    """From where to where a tenon lies, from the leg's inside face beside it."""
    return joint.inner_wall, joint.inner_wall + joint.tenon


def _haunch(joint: LegTenon) -> Inches:
    """How far the haunch reaches into the leg; 0 when there is none."""
    if joint.height - _heights(joint)[1] <= TOLERANCE:
        return 0.0
    short = min(joint.length, joint.inner_length) if joint.aprons == 2 else joint.length
    return leg_haunch_length(joint.tenon, short)


def _boards(joint: LegTenon) -> Iterator[Board]:
    """The leg stands between the two, so that neither is hatched as it is."""
    yield Board(name="apron", prisms=tuple(_apron(joint, turned=False)), apart=(-1.0, 0.0, 0.0))
    holes = [hole for turned in (False, True)[: joint.aprons] for hole in _mortise(joint, turned)]
    # Of a leg that runs on past its apron so much is drawn as below it.
    head = joint.height + min(joint.beyond, BELOW * joint.leg)
    body: Room = ((0.0, joint.leg), (-BELOW * joint.leg, head), (0.0, joint.leg))
    yield Board(name="leg", prisms=carved(body, tuple(holes)))
    if joint.aprons == 2:
        yield Board(name="other apron", prisms=tuple(_apron(joint, turned=True)), apart=(0.0, 0.0, -1.0))


def _turned(room: Room, turned: bool) -> Room:
    """The same room for the other apron, whose joint is the mirror image."""
    return (room[2], room[1], room[0]) if turned else room


def _apron(joint: LegTenon, turned: bool) -> Iterator[Prism]:
    low, high = _heights(joint)
    outside = joint.leg - joint.setback
    body: Room = ((-BESIDE * joint.leg, 0.0), (0.0, joint.height), (outside - joint.apron, outside))
    yield block(*_turned(body, turned))
    outline = _tenon(joint)
    if turned:
        outline = tuple((z, x) for x, z in outline)
    yield Prism(along=Axis.Y, outline=outline, start=low, end=high)
    haunch = _haunch(joint)
    if haunch:
        yield block(*_turned(((0.0, haunch), (high, joint.height), _cheeks(joint)), turned))


def _tenon(joint: LegTenon) -> Outline:
    """The tenon in plan: its tip is square, or mitred as far as the other tenon is in the way."""
    inside, outside = _cheeks(joint)
    if not joint.is_mitred:
        return box((0.0, joint.length), (inside, outside))
    begins = joint.length + joint.limits.mitre_gap.value / 2
    square = ((joint.length, begins),) if outside - begins > TOLERANCE else ()
    return (0.0, inside), (joint.inner_length, inside), *square, (joint.length, outside), (0.0, outside)


def _mortise(joint: LegTenon, turned: bool) -> Iterator[Room]:
    low, high = _heights(joint)
    yield _turned(((0.0, joint.mortise), (low, high), _cheeks(joint)), turned)
    haunch = _haunch(joint)
    if haunch:
        deep = haunch + joint.limits.clearance.value
        yield _turned(((0.0, deep), (high, joint.height), _cheeks(joint)), turned)


def _plan(joint: LegTenon) -> Cut:
    inside, outside = _cheeks(joint)
    leg, face = joint.leg, joint.leg - joint.setback
    mitred: tuple[Dimension, ...] = ()
    if joint.is_mitred:
        mitred = (
            Dimension(name="inner cheek", start=0.0, end=joint.inner_length, level=True, after=False, row=0),
        )
    row = len(mitred)
    setback: tuple[Dimension, ...] = ()
    if joint.setback:
        setback = (Dimension(name="setback", start=face, end=leg, level=False, after=False),)
    return Cut(
        axis=Axis.Y,
        at=within(*_heights(joint)),
        title="plan, through the tenons" if joint.aprons == 2 else "plan, through the tenon",
        dimensions=(
            *mitred,
            Dimension(name="tenon", start=0.0, end=joint.length, level=True, after=False, row=row),
            Dimension(name="leg", start=0.0, end=leg, level=True, after=False, row=row + 1),
            *setback,
            Dimension(name="apron", start=face - joint.apron, end=face, level=False, after=False),
            Dimension(name="wall", start=outside, end=leg, level=False),
            Dimension(name="mortise", start=inside, end=outside, level=False),
            Dimension(name="wall", start=0.0, end=inside, level=False),
        ),
    )


def _elevation(joint: LegTenon) -> Cut:
    low, high = _heights(joint)
    haunch = _haunch(joint)
    across = (Dimension(name="haunch", start=0.0, end=haunch, level=True),) if haunch else ()
    spans = (("lower shoulder", 0.0, low), ("tenon", low, high), ("haunch", high, joint.height))
    return Cut(
        axis=Axis.Z,
        at=within(*_cheeks(joint)),
        title="from inside, cut open along the tenon",
        dimensions=(
            *across,
            *(
                Dimension(name=name, start=start, end=end, level=False, after=False)
                for name, start, end in spans
                if end - start > TOLERANCE
            ),
            Dimension(name="apron", start=0.0, end=joint.height, level=False),
            Dimension(name="mortise", start=0.0, end=joint.mortise, level=True, after=False, row=0),
        ),
    )


def _strips(joint: LegTenon) -> Iterator[Strip]:
    """What is marked: on the leg from its top, on an apron from the end of its tenon."""
    low, high = _heights(joint)
    near, far = joint.outer_wall, joint.outer_wall + joint.tenon
    top = joint.height + joint.beyond
    mortise = top - high, top - low
    yield Strip(
        board="leg",
        face="inside face" if joint.aprons == 1 else "each inside face",
        left="top",
        foot="outside face",
        length=top,
        height=joint.leg,
        lines=(
            *(_gauged((0.0, mortise[1]), at) for at in (near, far)),
            *(
                Marked(stroke=Stroke.STOP, start=(at, 0.0), end=(at, joint.leg), label=label)
                for at, label in zip(mortise, ("mortise", ""), strict=True)
            ),
        ),
        waste=tuple(_on_the_leg(joint, mortise, (near, far))),
    )
    yield _outside_of_apron(joint)
    yield _edge_of_apron(joint)


def _on_the_leg(joint: LegTenon, mortise: Flat, cheeks: Flat) -> Iterator[Outline]:
    yield box(mortise, cheeks)
    if _haunch(joint):
        yield box((joint.beyond, mortise[0]), cheeks)


def _outside_of_apron(joint: LegTenon) -> Strip:
    low, high = _heights(joint)
    length, tip = joint.length, joint.length - _haunch(joint)
    lines = [Marked(stroke=Stroke.SAW, start=(length, 0.0), end=(length, joint.height), label="shoulder")]
    waste = []
    if low > TOLERANCE:
        lines.append(Marked(stroke=Stroke.SAW, start=(0.0, low), end=(length, low)))
        waste.append(box((0.0, length), (0.0, low)))
    if joint.height - high > TOLERANCE and tip > TOLERANCE:
        lines.append(Marked(stroke=Stroke.SAW, start=(0.0, high), end=(tip, high)))
        lines.append(Marked(stroke=Stroke.SAW, start=(tip, high), end=(tip, joint.height), label="haunch"))
        waste.append(box((0.0, tip), (high, joint.height)))
    return Strip(
        board="apron",
        face="outside face",
        foot="lower edge",
        length=length,
        height=joint.height,
        lines=tuple(lines),
        waste=tuple(waste),
    )


def _edge_of_apron(joint: LegTenon) -> Strip:
    near, far = joint.face, joint.face + joint.tenon
    length = joint.length
    lines = [_gauged((0.0, length), at) for at in (near, far)]
    waste: list[Outline] = [box((0.0, length), (0.0, near)), box((0.0, length), (far, joint.apron))]
    if joint.is_mitred:
        # The mitre runs back from the tip at 45 degrees, so that it falls as much as it runs.
        inner = length - joint.inner_length
        lines.append(Marked(stroke=Stroke.SAW, start=(0.0, far - inner), end=(inner, far), label="mitre"))
        waste.append(((0.0, far - inner), (inner, far), (0.0, far)))
    return Strip(
        board="apron",
        face="upper edge",
        foot="outside face",
        length=length,
        height=joint.apron,
        lines=tuple(lines),
        waste=tuple(waste),
    )


def _gauged(along: Flat, at: Inches) -> Marked:
    return Marked(stroke=Stroke.GAUGE, start=(along[0], at), end=(along[1], at))
