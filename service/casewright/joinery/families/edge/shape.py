"""Two boards joined along their edges, in space, as they go up: seen on their ends, the face side above.

Meant to be free are the gap between the shoulders and what the groove is deeper than the tongue is long.
"""

from collections.abc import Iterator

from casewright.joinery.families.edge.asked import Edge
from casewright.joinery.families.edge.sizes import cheek
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
    box,
)
from casewright.measure.units import Inches

BEYOND = 2.5
"""How far a board is drawn past the joint, and along it, in thicknesses."""


def edge_shape(asked: Edge) -> Shape:
    """The joint in space.

    Args:
        asked: the boards

    Returns:
        Two of them, the views and the templates.

    Source: geometry of the joint.
    """
    shoulder = BEYOND * asked.thickness
    high = shoulder
    return Shape(
        boards=(
            Board(
                name="board with the lap" if asked.is_shiplap else "board with the tongue",
                prisms=tuple(_tongued(asked, shoulder, high)),
                apart=(-1.0, 0.0, 0.0),
            ),
            Board(name="next board", prisms=tuple(_grooved(asked, shoulder, high)), apart=(1.0, 0.0, 0.0)),
        ),
        cuts=tuple(_cuts(asked, shoulder, high)),
        engaged=asked.overlap,
        filled=((shoulder + asked.gap, shoulder + asked.overlap), (0.0, high), (0.0, asked.thickness)),
        strips=tuple(_strips(asked, high)),
    )


def _tongue(asked: Edge) -> Flat:
    """From where to where the tongue stands, or the lap behind the other, from the face side."""
    low = cheek(asked.thickness, asked.tongue)
    return low, low + asked.tongue if asked.tongue else asked.thickness


def _tongued(asked: Edge, shoulder: Inches, high: Inches) -> Iterator[Prism]:
    yield block((0.0, shoulder), (0.0, high), (0.0, asked.thickness))
    yield block((shoulder, shoulder + asked.overlap), (0.0, high), _tongue(asked))


def _grooved(asked: Edge, shoulder: Inches, high: Inches) -> Iterator[Prism]:
    near, (low, top) = shoulder + asked.gap, _tongue(asked)
    floor = near + asked.groove_depth
    yield block((floor, floor + shoulder), (0.0, high), (0.0, asked.thickness))
    yield block((near, floor), (0.0, high), (0.0, low))
    if asked.tongue:
        yield block((near, floor), (0.0, high), (top, asked.thickness))


def _cuts(asked: Edge, shoulder: Inches, high: Inches) -> Iterator[Cut]:
    low, top = _tongue(asked)
    near, tip = shoulder + asked.gap, shoulder + asked.overlap
    part = "lap" if asked.is_shiplap else "tongue"
    gap = (Dimension(name="gap", start=shoulder, end=near, level=True),) if asked.gap > 0 else ()
    yield Cut(
        axis=Axis.Y,
        at=high / 2,
        title="the ends of two boards, the face side above",
        dimensions=(
            *gap,
            Dimension(
                name="rabbet" if asked.is_shiplap else "groove",
                start=near,
                end=near + asked.groove_depth,
                level=True,
            ),
            Dimension(name=part, start=shoulder, end=tip, level=True, after=False),
            Dimension(name="lap" if asked.is_shiplap else "cheek", start=0.0, end=low, level=False),
            Dimension(name=part, start=low, end=top, level=False),
            Dimension(name="thickness", start=0.0, end=asked.thickness, level=False, after=False),
        ),
    )
    yield Cut(
        axis=Axis.X,
        at=(near + tip) / 2,
        title="along the joint, cut through what covers",
        dimensions=(Dimension(name=part, start=low, end=top, level=True),),
    )


def _strips(asked: Edge, high: Inches) -> Iterator[Strip]:
    """What is gauged on a face and on an edge; the boards stand on end, as a back has them."""
    low, top = _tongue(asked)
    inside = tuple(at for at in (low, top) if 0 < at < asked.thickness)
    tongued = "board with the lap" if asked.is_shiplap else "board with the tongue"
    for board, waste in ((tongued, _waste(asked)), ("next board", ((low, top),))):
        yield Strip(
            board=board,
            face="edge",
            left="face side",
            foot="end of the board",
            is_handed=False,
            length=asked.thickness,
            height=high,
            lines=tuple(_gauge(at, high) for at in inside),
            waste=tuple(box(span, (0.0, high)) for span in waste),
        )
    yield Strip(
        board=tongued,
        face="face side",
        left="edge",
        foot="end of the board",
        is_handed=False,
        length=asked.overlap,
        height=high,
        lines=(_gauge(asked.overlap, high, "shoulder"),),
        waste=(box((0.0, asked.overlap), (0.0, high)),),
    )


def _gauge(at: Inches, high: Inches, label: str = "") -> Marked:
    return Marked(stroke=Stroke.GAUGE, start=(at, 0.0), end=(at, high), label=label)


def _waste(asked: Edge) -> tuple[Flat, ...]:
    """What is cut away beside the tongue, or before the lap, from the face side."""
    low, top = _tongue(asked)
    return ((0.0, low), (top, asked.thickness)) if asked.tongue else ((0.0, low),)
