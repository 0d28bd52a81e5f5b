"""A frame with its panels, sized: one maker of stiles, rails, muntins and panels for sides, doors and backs.

`plan_frame` works the sizes out once; `frame_parts` puts the frame in a place, as often as there are frames
alike; `frame_checks` holds the panels against the year; `frame_tenons` works out the tenons. What a frame
cannot be is listed by `frame_limits`, before anything is sized.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.families.frame_tenon.asked import usual_frame_length
from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words
from casewright.measure.units import Count, Inches, PerPercent
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.panel_spec import Panelling
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.rules import panel_rules as rules
from casewright.wood.sheets import Sheet

LEAST_PLAY = 1 / 32
"""Left between panel and groove, at each side at the wettest and at each end (common practice) [in]."""
LEAST_LEFT = 1 / 16
WIDEST_PANEL = 14.0
"""A solid panel is glued up no wider than this before a muntin divides it (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameAsked:
    """A frame as it is asked for.

    Attributes:
        width: from outside to outside of the stiles [in]
        height: length of the stiles [in]
        thickness: thickness of stiles, rails and muntins [in]
        how: what the maker chose
        timber: wood of stiles, rails and muntins
        panel: wood of solid panels
    """

    width: Inches
    height: Inches
    thickness: Inches
    how: Panelling
    timber: Timber
    panel: Timber


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelFrame:
    """A frame with its panels, sized.

    Attributes:
        asked: what was asked for
        rails: width of each rail, from the top down [in]
        muntin: width of a muntin [in]
        muntins: how many stand between panels side by side
        tenon: length of the rails' tenons [in]
        rail_length: each rail over its tenons [in]
        muntin_length: each muntin over its tenons [in]
        stub: length of the muntins' tenons, as deep as the groove [in]
        groove: width of the grooves [in]
        clear_width: clear width of a field [in]
        clear_height: clear height of a field [in]
        panel_width: width of each panel [in]
        panel_height: its height [in]
        panel_thickness: its thickness [in]
        sheet: the sheet of plywood panels; None for solid ones
        play: play of each panel at each side, now [in]
        recess: how far the panels lie behind the inner face of the frame [in]
        moves: movement coefficient of the panels in their width; 0 for plywood [1 per % moisture]
    """

    asked: FrameAsked
    rails: tuple[Inches, ...]
    muntin: Inches
    muntins: Count
    tenon: Inches
    rail_length: Inches
    muntin_length: Inches
    stub: Inches
    groove: Inches
    clear_width: Inches
    clear_height: Inches
    panel_width: Inches
    panel_height: Inches
    panel_thickness: Inches
    sheet: Sheet | None
    play: Inches
    recess: Inches
    moves: PerPercent

    @property
    def panels(self) -> Count:
        """How many panels it has."""
        return (len(self.rails) - 1) * (self.muntins + 1)

    @property
    def is_proud(self) -> bool:
        """Whether the panels stand out before the outer face of the frame."""
        return self.recess + self.panel_thickness > self.asked.thickness + 1e-9


def plan_frame(asked: FrameAsked, climate: Climate, ledger: Ledger, name: str) -> PanelFrame:
    """The sizes of a frame and its panels, grain of the panels upright.

    Args:
        asked: what is asked for
        climate: the moisture contents between which the panels move
        ledger: keeps the working
        name: under which its figures are kept, such as `case.sides`

    Returns:
        The frame.

    Source: common practice; movement by the Wood Handbook, FPL-GTR-282 (2021), chapter 13.
    """
    how, under = asked.how, ledger.under(name)
    take = under.take
    top, bottom = (how.stile if rail is None else rail for rail in (how.top_rail, how.bottom_rail))
    middle = how.stile if how.middle_rail is None else how.middle_rail
    muntin = how.stile if how.muntin is None else how.muntin
    bought = how.ply.bought if how.ply else None
    groove, thickness = _groove(asked, bought, under)
    muntins = how.muntins
    if muntins is None:
        muntins = 0
        if bought is None:
            muntins = take(
                "muntins",
                rules.muntins_needed,
                whole=asked.width,
                ends=2 * how.stile,
                bar=muntin,
                widest=WIDEST_PANEL,
            )
    clear_width = take(
        "clear_width",
        rules.clear_between,
        whole=asked.width,
        ends=2 * how.stile,
        bars=muntins,
        bar=muntin,
    )
    clear_height = take(
        "clear_height",
        rules.clear_between,
        whole=asked.height,
        ends=top + bottom,
        bars=how.middle_rails,
        bar=middle,
    )
    tenon = how.tenon
    if tenon is None:
        tenon = take("tenon", usual_frame_length, stile=how.stile, groove_depth=how.groove_depth)
    moves = 0.0 if bought else across(asked.panel, ledger)
    depth = {"clear": clear_width, "groove": how.groove_depth}
    if how.play is None:
        width = take(
            "panel_width",
            rules.widest_panel,
            **depth,
            least=LEAST_PLAY,
            moves=moves,
            swelling=climate.swelling,
        )
    else:
        width = take("panel_width", rules.panel_size, **depth, play=how.play)
    return PanelFrame(
        asked=asked,
        rails=(top, *(middle for _ in range(how.middle_rails)), bottom),
        muntin=muntin,
        muntins=muntins,
        tenon=tenon,
        rail_length=take(
            "rail_length", rules.rail_over_tenons, width=asked.width, stile=how.stile, tenon=tenon
        ),
        muntin_length=take("muntin_length", rules.muntin_length, clear=clear_height, tenon=how.groove_depth),
        stub=how.groove_depth,
        groove=groove,
        clear_width=clear_width,
        clear_height=clear_height,
        panel_width=width,
        panel_height=take(
            "panel_height", rules.panel_size, clear=clear_height, groove=how.groove_depth, play=LEAST_PLAY
        ),
        panel_thickness=thickness,
        sheet=bought,
        play=take("play", rules.play_in_groove, **depth, panel=width),
        recess=take("recess", rules.panel_recess, frame=asked.thickness, groove=groove),
        moves=moves,
    )


def _groove(asked: FrameAsked, bought: Sheet | None, ledger: Ledger) -> tuple[Inches, Inches]:
    """Width of the groove and thickness of the panel."""
    how = asked.how
    if bought is None:
        if how.groove_width is not None:
            return how.groove_width, how.panel
        return ledger.take("groove", rules.usual_groove, frame=asked.thickness), how.panel
    basis = f"as {bought} measures; measure your own sheet"
    thickness = ledger.given("panel_thickness", bought.thickness, basis, Inches)
    return (thickness if how.groove_width is None else how.groove_width), thickness


def frame_limits(
    path: str, how: Panelling, width: Inches, height: Inches, thickness: Inches
) -> Iterator[tuple[str, Inches, Inches, Words]]:
    """What the fields of a frame cannot be more than.

    Args:
        path: the path of the choices within the unit file, such as `case.sides`
        how: the choices
        width: from outside to outside of the stiles [in]
        height: length of the stiles [in]
        thickness: thickness of the frame [in]

    Yields:
        The field, its value, the most that it may be, and why.

    Source: geometry of the frame.
    """
    muntin = how.stile if how.muntin is None else how.muntin
    middle = how.stile if how.middle_rail is None else how.middle_rail
    top, bottom = (how.stile if rail is None else rail for rail in (how.top_rail, how.bottom_rail))
    least = 2 * how.groove_depth
    across_, down = (how.muntins or 0) * (muntin + least), how.middle_rails * (middle + least)
    between = width - across_ - least
    groove = rules.usual_groove(frame=thickness) if how.groove_width is None else how.groove_width
    if how.ply and how.groove_width is None:
        groove = how.ply.bought.thickness
    yield f"{path}.stile", how.stile, between / 2, "two stiles with a panel between them must fit"
    yield (
        f"{path}.{'bottom_rail' if how.bottom_rail is not None else 'top_rail'}",
        max(top, bottom),
        height - down - least - min(top, bottom),
        "the rails with a panel between them must fit",
    )
    yield (
        f"{path}.groove_depth",
        how.groove_depth,
        min(how.stile, top, bottom, middle / 2, muntin / 2) - LEAST_LEFT,
        "stile and rail must go on behind it",
    )
    yield f"{path}.groove_width", groove, thickness - 2 * LEAST_LEFT, "the frame must go on beside it"
    if how.play is not None:
        yield f"{path}.play", how.play, how.groove_depth - LEAST_LEFT, "the panel must stay in its groove"
    if how.tenon is not None:
        yield f"{path}.tenon", how.tenon, how.stile - LEAST_LEFT, "the stile must go on beyond it"
