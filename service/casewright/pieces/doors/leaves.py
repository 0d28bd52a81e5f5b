"""The leaves of every opening with doors: how large, how hung, and where."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches, PerPercent
from casewright.pieces.asked.door_spec import Doors, FramedLeaf, SlabLeaf
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.edges import Around, Edge, around_openings
from casewright.pieces.layout.openings import Face, Space
from casewright.pieces.layout.season import Climate, across
from casewright.pieces.panels.frame import FrameAsked, PanelFrame, plan_frame
from casewright.pieces.rules import door_rules as rules

Hand = Literal["left", "right"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Over:
    """How far the leaves reach over each edge of their opening; nothing where they are inset [in]."""

    left: Inches = 0.0
    right: Inches = 0.0
    above: Inches = 0.0
    below: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafPlan:
    """One leaf in its place.

    Attributes:
        code: the code of the whole leaf, such as `A-R4-1-D1`
        hinged: the side at which it is hinged
        x: its left edge, from the outside of the left case side [in]
    """

    code: str
    hinged: Hand
    x: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorPlan:
    """The doors of one opening, alike in everything but where they hang.

    Attributes:
        code: unit and opening, such as `A-R4-1`
        opening: what they close
        around: what lies around it
        over: how far they reach over its edges
        width: of each leaf [in]
        height: of each leaf [in]
        thickness: of each leaf [in]
        z: their lower edge above the floor [in]
        moving: how much of the width of a leaf lies across the grain [in]
        moves: movement coefficient of that [1 per % moisture]
        made_of: its wood and cut, or its sheet
        frame: the frame of each leaf; None for slabs
        leaves: from the left
    """

    code: str
    opening: Space
    around: Around
    over: Over
    width: Inches
    height: Inches
    thickness: Inches
    z: Inches
    moving: Inches
    moves: PerPercent
    made_of: str
    frame: PanelFrame | None
    leaves: tuple[LeafPlan, ...]

    @property
    def room(self) -> Inches:
        """The width in which the leaves hang side by side, with what they reach over the edges [in]."""
        return self.opening.width + self.over.left + self.over.right

    @property
    def is_inset(self) -> bool:
        """Whether they hang within the opening."""
        return self.over == Over()


def door_timber(spec: UnitSpec) -> Timber:
    """The wood of stiles and rails, or of slabs.

    Args:
        spec: what the maker chose

    Returns:
        The wood and how it is sawn.

    Source: common practice: as the case, where nothing is said.
    """
    return spec.doors.wood or spec.woods.case


def plan_doors(spec: UnitSpec, face: Face, climate: Climate, ledger: Ledger) -> tuple[DoorPlan, ...]:
    """The leaves of every opening that has doors.

    Args:
        spec: what the maker chose
        face: the openings
        climate: the moisture contents between which they move
        ledger: keeps the working

    Returns:
        One plan for each such opening; none where there are no doors.

    Source: geometry; movement by the Wood Handbook, FPL-GTR-282 (2021), chapter 13.
    """
    spaces = tuple(space for space in face.spaces if space.holds == "doors")
    if not spaces:
        return ()
    around = around_openings(spec, face)
    return tuple(_plan(spec, face, space, around[space.code], climate, ledger) for space in spaces)


def _plan(
    spec: UnitSpec, face: Face, space: Space, around: Around, climate: Climate, ledger: Ledger
) -> DoorPlan:
    doors, make = spec.doors, spec.doors.make
    under = ledger.under(f"{space.code}.door")
    thickness = doors.thickness
    if isinstance(make, SlabLeaf) and make.bought:
        basis = f"as {make.bought} measures; measure your own sheet"
        thickness = under.given("thickness", make.bought.thickness, basis, Inches)
    moves = 0.0 if isinstance(make, SlabLeaf) and make.bought else across(door_timber(spec), ledger)
    over = _over(doors, space, around, (moves, climate), under)
    height, width = _sizes(doors, space, over, moves, climate, under)
    moving = 2 * make.stile if isinstance(make, FramedLeaf) else width if moves else 0.0
    frame = None
    if isinstance(make, FramedLeaf):
        frame = plan_frame(
            FrameAsked(
                width=width,
                height=height,
                thickness=thickness,
                how=make,
                timber=door_timber(spec),
                panel=doors.panel_wood or door_timber(spec),
            ),
            climate,
            ledger,
            f"{space.code}.door.frame",
        )
    gap = 0.0 if doors.style != "inset" else doors.gap
    return DoorPlan(
        code=f"{spec.code}-{space.code}",
        opening=space,
        around=around,
        over=over,
        width=width,
        height=height,
        thickness=thickness,
        z=face.base_height + space.bottom + gap - over.below,
        moving=moving,
        moves=moves,
        made_of=_made_of(spec),
        frame=frame,
        leaves=tuple(_leaves(spec.code, space, over, width, gap)),
    )


def _made_of(spec: UnitSpec) -> str:
    make = spec.doors.make
    if isinstance(make, SlabLeaf) and make.bought:
        return str(make.bought)
    timber = door_timber(spec)
    return f"{timber.wood}, {timber.cut.sawn}"


def _over(
    doors: Doors, space: Space, around: Around, movement: tuple[PerPercent, Climate], ledger: Ledger
) -> Over:
    """How far the leaves reach over each edge; the free edge of a single one by so much less as it grows."""
    if doors.style == "inset":
        return Over()
    if doors.style == "half overlay":
        return Over(left=doors.overlay, right=doors.overlay, above=doors.overlay, below=doors.overlay)

    def over(name: str, edge: Edge) -> Inches:
        rule = rules.shared_overlay if edge.is_shared else rules.full_overlay
        return ledger.take(f"over_{name}", rule, edge=edge.thickness, reveal=doors.reveal)

    found = {name: over(name, getattr(around, name)) for name in ("left", "right", "above", "below")}
    free = "right" if space.hinged == "left" else "left"
    if space.leaves == 1 and getattr(around, free).is_shared:
        moves, climate = movement
        whole = space.width + found["left"] + found["right"]
        grows = ledger.take(
            "grows_over",
            rules.leaf_grows,
            moving=2 * doors.make.stile if isinstance(doors.make, FramedLeaf) else whole,
            coefficient=moves,
            change=climate.swelling,
        )
        found[free] = max(0.0, found[free] - grows)
    return Over(**found)


def _sizes(
    doors: Doors, space: Space, over: Over, moves: PerPercent, climate: Climate, ledger: Ledger
) -> tuple[Inches, Inches]:
    """Height and width of each leaf."""
    take, make = ledger.take, doors.make
    if doors.style != "inset":
        return (
            take(
                "height",
                rules.overlay_size,
                opening=space.height,
                first=over.below,
                last=over.above,
                leaves=1,
                meeting=0.0,
            ),
            take(
                "width",
                rules.overlay_size,
                opening=space.width,
                first=over.left,
                last=over.right,
                leaves=space.leaves,
                meeting=_meeting_now(doors, space, over, moves, climate, ledger),
            ),
        )
    shared = {
        "opening": space.width,
        "leaves": space.leaves,
        "gap": doors.gap,
        "meeting": doors.meeting,
        "coefficient": moves,
        "swelling": climate.swelling,
    }
    width = (
        take("width", rules.framed_leaf_width, **shared, stile=make.stile)
        if isinstance(make, FramedLeaf)
        else take("width", rules.slab_leaf_width, **shared)
    )
    return take("height", rules.leaf_height, opening=space.height, gap=doors.gap), width


def _meeting_now(
    doors: Doors, space: Space, over: Over, moves: PerPercent, climate: Climate, ledger: Ledger
) -> Inches:
    """The gap between two overlay leaves now, so that what is wanted is left when they are wettest."""
    if space.leaves == 1:
        return 0.0
    half = (space.width + over.left + over.right) / 2
    moving = 2 * doors.make.stile if isinstance(doors.make, FramedLeaf) else half
    return ledger.take(
        "meeting",
        rules.meeting_now,
        meeting=doors.meeting,
        moving=moving,
        coefficient=moves,
        swelling=climate.swelling,
    )


def _leaves(unit: str, space: Space, over: Over, width: Inches, gap: Inches) -> Iterator[LeafPlan]:
    """Each leaf hangs with its gap at the hinges; what it grows goes to its free edge."""
    first, last = space.left + gap - over.left, space.left + space.width - gap + over.right - width
    code = f"{unit}-{space.code}-D"
    if space.leaves == 1:
        yield LeafPlan(code=f"{code}1", hinged=space.hinged, x=first if space.hinged == "left" else last)
        return
    yield LeafPlan(code=f"{code}1", hinged="left", x=first)
    yield LeafPlan(code=f"{code}2", hinged="right", x=last)
