"""The marks of story sticks for stacks within columns: where their dividers lie on the walls beside them."""

from dataclasses import dataclass

from casewright.measure.units import Inches
from casewright.pieces.layout.openings import Face, Stack


@dataclass(frozen=True, slots=True, kw_only=True)
class StackMarks:
    """The marks that some stacks share.

    Attributes:
        stacks: the stacks
        tops: upper edge of each divider, lowest first [in]
        is_from_bottom: are they measured from the underside of the case bottom? Else from the lower edge of
            the openings
    """

    stacks: tuple[Stack, ...]
    tops: tuple[Inches, ...]
    is_from_bottom: bool

    @property
    def codes(self) -> str:
        """The columns, such as `R2-1, R2-3`."""
        return ", ".join(stack.code for stack in self.stacks)


def stack_marks(face: Face) -> tuple[StackMarks, ...]:
    """The marks of every stack that has dividers, those of stacks alike once; the whole face has its own.

    Args:
        face: the face

    Returns:
        The marks; none where no column has rows of its own.

    Source: common practice: every height is marked from one end of one stick.
    """
    alike: dict[tuple[bool, tuple[float, ...]], list[Stack]] = {}
    marks: dict[tuple[bool, tuple[float, ...]], tuple[Inches, ...]] = {}
    for stack in face.stacks[1:]:
        if len(stack.rows) < 2:
            continue
        on_bottom = stack.rows[-1].is_lowest
        foot = 0.0 if on_bottom else stack.bottom
        tops = tuple(row.bottom - foot for row in reversed(stack.rows[:-1]))
        key = (on_bottom, tuple(round(top, 6) for top in tops))
        alike.setdefault(key, []).append(stack)
        marks.setdefault(key, tops)
    return tuple(
        StackMarks(stacks=tuple(stacks), tops=marks[key], is_from_bottom=key[0])
        for key, stacks in alike.items()
    )
