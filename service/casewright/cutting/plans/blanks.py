"""What is laid out: blanks, each a part by itself, parts that match and come from one piece, or a strip."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from casewright.cutting.asked.parts_spec import CutPart, GrainSet, Saw
from casewright.cutting.plans.spots import Spot
from casewright.measure.lengths import to_ticks
from casewright.measure.units import Count, Inches, Ticks


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """A part within its blank.

    Attributes:
        code: the part's mark
        spot: where it lies in the blank, along the grain and across it
        second: mark of the part behind it, where two are sawn from one thickness
        strip: which strip of a glued part it is, from 1; 0 where it is no strip [dimensionless]
        strips: of how many [dimensionless]
        panel: of which of the panels that are alike, from 1; 0 where all of them have equal strips
            [dimensionless]
    """

    code: str
    spot: Spot
    second: str = ""
    strip: Count = 0
    strips: Count = 0
    panel: Count = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """A rectangle that is cut out of the stock in one piece.

    Attributes:
        length: along the grain [tick]
        width: across the grain [tick]
        inside: the parts in it
        may_turn: may it lie across the stock?
        sapless: may it have no sapwood?
        both_faces: must both its faces be clear?
        thickness: how thick its board has to be; 0 where its class says enough [tick]
        matched: name of the set for whose sake it is one piece; empty for none
        one_tree: name of the set whose boards are all from one log; empty for none
    """

    length: Ticks
    width: Ticks
    inside: tuple[Inside, ...]
    may_turn: bool = False
    sapless: bool = False
    both_faces: bool = True
    thickness: Ticks = 0
    matched: str = ""
    one_tree: str = ""

    @property
    def codes(self) -> tuple[str, ...]:
        """The marks of all parts in it."""
        return tuple(code for each in self.inside for code in (each.code, each.second) if code)


@dataclass(frozen=True, slots=True, kw_only=True)
class Broken:
    """A set that is not kept.

    Attributes:
        name: the set
        way: how it was to be cut
        reason: why it is not
    """

    name: str
    way: str
    reason: str


def cut_length(part: CutPart, saw: Saw, *, has_allowance: bool = True) -> Inches:
    """How long a part is cut.

    Rule: length, and length_over besides where it is a finished one

    Args:
        part: the part
        saw: the allowances
        has_allowance: whether stock of this kind gets allowances; sheets are cut to size

    Returns:
        The length [in]

    Source: common practice.
    """
    return part.length + (saw.length_over if has_allowance and part.sizes == "finished" else 0.0)


def cut_width(part: CutPart, saw: Saw, *, has_allowance: bool = True) -> Inches:
    """How wide a part is cut, or all its strips together once they are jointed.

    Rule: width, and width_over besides where it is a finished one

    Args:
        part: the part
        saw: the allowances
        has_allowance: whether stock of this kind gets allowances; sheets are cut to size

    Returns:
        The width [in]

    Raises:
        ValueError: the part has no width, since its stock is only cut to length

    Source: common practice.
    """
    if part.width is None:
        raise ValueError(f"{part.code} is only cut to length and has no width.")
    return part.width + (saw.width_over if has_allowance and part.sizes == "finished" else 0.0)


def thickness_for_two(thickness: Inches, saw: Saw) -> Inches:
    """How thick a board must be for two parts to be sawn from its thickness.

    Rule: 2 * (thickness + cleaning) + resaw_kerf

    Args:
        thickness: finished thickness of each [in]
        saw: what sawing and cleaning up take

    Returns:
        The rough thickness [in]

    Source: common practice.
    """
    return 2 * (thickness + saw.cleaning) + saw.resaw_kerf


def single(part: CutPart, saw: Saw, *, has_allowance: bool, second: CutPart | None = None) -> Blank:
    """One part by itself, or two from one thickness.

    Args:
        part: the part
        saw: the allowances
        has_allowance: whether stock of this kind gets them
        second: the part behind it

    Returns:
        The blank.

    Source: common practice.
    """
    both = [part, *([second] if second else [])]
    length = to_ticks(max(cut_length(each, saw, has_allowance=has_allowance) for each in both))
    width = to_ticks(max(cut_width(each, saw, has_allowance=has_allowance) for each in both))
    thick = thickness_for_two(max(each.thickness or 0.0 for each in both), saw) if second else 0.0
    return Blank(
        length=length,
        width=width,
        inside=(
            Inside(code=part.code, spot=Spot(0, 0, length, width), second=second.code if second else ""),
        ),
        may_turn=all(each.grain == "any" and each.ends == "any" for each in both),
        thickness=to_ticks(thick),
        sapless=_sapless(both),
        both_faces=_both_faces(both),
    )


def _sapless(parts: Iterable[CutPart]) -> bool:
    """Is a show face among the parts?"""
    return any(part.face == "A" for part in parts)


def _both_faces(parts: Iterable[CutPart]) -> bool:
    """Does one of the parts need both faces clear?"""
    return any(part.clear == "both faces" for part in parts)


def matched(
    asked: GrainSet, parts: dict[str, CutPart], saw: Saw, *, has_allowance: bool
) -> tuple[Blank, ...]:
    """The blanks of one set.

    Args:
        asked: the set
        parts: every part by its mark
        saw: kerf and allowances
        has_allowance: whether stock of this kind gets them

    Returns:
        One blank, or one for each pair that is opened from one thickness; none of one tree.

    Source: common practice: parts that match lie one kerf apart.
    """
    if asked.way == "one tree":
        return ()
    rows = [[parts[code] for code in row] for row in asked.rows]
    if asked.way in ("book", "slip"):
        return tuple(
            replace(
                single(first, saw, has_allowance=has_allowance, second=second),
                matched=asked.name,
                may_turn=False,
            )
            for first, second in rows
        )
    if asked.way == "across":
        rows = [[part] for part in rows[0]]
    kerf = to_ticks(saw.kerf)
    inside = []
    y = 0
    for row in rows:
        x, widest = 0, 0
        for part in row:
            length = to_ticks(cut_length(part, saw, has_allowance=has_allowance))
            width = to_ticks(cut_width(part, saw, has_allowance=has_allowance))
            inside.append(Inside(code=part.code, spot=Spot(x, y, length, width)))
            x, widest = x + length + kerf, max(widest, width)
        y += widest + kerf
    return (
        Blank(
            length=max(each.spot.right for each in inside),
            width=max(each.spot.far for each in inside),
            inside=tuple(inside),
            matched=asked.name,
            sapless=_sapless(part for row in rows for part in row),
            both_faces=_both_faces(part for row in rows for part in row),
        ),
    )


def strip_blanks(blank: Blank, widths: Sequence[Ticks], panel: Count = 0) -> Iterator[Blank]:
    """The strips from which a blank is glued up.

    Args:
        blank: the blank in one piece
        widths: of each strip as it is sawn [tick]
        panel: which of the panels that are alike; 0 where all of them have equal strips [dimensionless]

    Returns:
        A blank for each strip.

    Source: common practice.
    """
    code = blank.inside[0].code if len(blank.inside) == 1 else blank.matched
    for number, width in enumerate(widths, 1):
        spot = Spot(0, 0, blank.length, width)
        yield replace(
            blank,
            width=width,
            may_turn=False,
            inside=(Inside(code=code, spot=spot, strip=number, strips=len(widths), panel=panel),),
        )
