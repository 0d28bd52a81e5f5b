"""What the maker chose: the one schema of a unit file, validated and versioned, and what a database stores.

Every default is written here once, with its ground in the description; no other module fills in a size.
"""

from dataclasses import replace
from typing import Annotated, Any, Literal, Self

from pydantic import AfterValidator, BeforeValidator, Field, field_validator, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.lengths import LengthUnit
from casewright.measure.remembering import of_the_same
from casewright.measure.typed import quoted
from casewright.pieces.asked.case_spec import (
    Carcase,
    Case,
    Construction,
    Frames,
    LegsAndAprons,
    Skeleton,
    skeleton,
)
from casewright.pieces.asked.crate_spec import Crate, with_crate_usual
from casewright.pieces.asked.door_spec import Doors
from casewright.pieces.asked.drawer_spec import Drawers
from casewright.pieces.asked.fields import Size, Spec, Timber, WoodField
from casewright.pieces.asked.graduation import Graduation, Step
from casewright.pieces.asked.grain_spec import GrainWishes
from casewright.pieces.asked.layout_spec import Row, Shelving
from casewright.pieces.asked.measured import Measured
from casewright.pieces.asked.running_spec import Pulls
from casewright.pieces.asked.season_spec import Season
from casewright.pieces.asked.shell_spec import Back, Base, Plinth, Top, stands_from, stands_to
from casewright.pieces.asked.use_spec import Use
from casewright.pieces.asked.wall_spec import Cleat, Site
from casewright.wood.finish import finish, finishes

VERSION = 1


def exactly_one(owner: Spec, *names: str) -> None:
    """Refuses a group of fields of which none, or more than one, is given."""
    given = [name for name in names if getattr(owner, name) is not None]
    if len(given) != 1:
        raise PydanticCustomError(
            "exactly_one",
            "give exactly one of {names}; {found}",
            {
                "names": ", ".join(names),
                "found": f"{' and '.join(given)} are here" if given else "none is here",
            },
        )


class Body(Spec):
    """The size of the case without its top's overhang. Exactly one of the three heights is given."""

    width: Size = Field(description="Outside width of the case body.", examples=["39-1/2"])
    depth: Size = Field(
        description="Depth of the case body, front edge to back edge of a side.", examples=["19-3/4"]
    )
    overall_height: Size | None = Field(
        None, description="Floor to the upper face of the top.", examples=["44-3/8"]
    )
    body_height: Size | None = Field(
        None, description="Height of a case side, without base and top.", examples=["39-1/2"]
    )
    opening_total: Size | None = Field(
        None, description="All opening heights of a column added up.", examples=["35"]
    )

    @model_validator(mode="after")
    def one_height(self) -> Self:
        exactly_one(self, "overall_height", "body_height", "opening_total")
        return self


class Woods(Spec):
    """Which wood each kind of part is made of."""

    case: WoodField = Field(description="Sides, rails, plinth front and returns.", examples=["cherry"])
    drawers: WoodField = Field(description="Drawer sides, backs and muntins.", examples=["soft maple"])
    inside: WoodField = Field(
        description="Runners, kickers, case bottom, rails not seen.", examples=["poplar"]
    )
    top: WoodField | None = Field(None, description="The top; left out, as the case.", examples=["cherry"])
    fronts: WoodField | None = Field(
        None, description="Drawer fronts; left out, as the case.", examples=["cherry"]
    )
    bottoms: WoodField | None = Field(
        None, description="Solid drawer bottoms; left out, as the inside.", examples=["poplar"]
    )
    back: WoodField | None = Field(
        None, description="Back boards; left out, as the inside.", examples=["poplar"]
    )
    shelves: WoodField | None = Field(
        None,
        description="Solid shelves; left out, as the case in open spaces, and as the inside behind doors.",
        examples=["poplar"],
    )

    def of(self, role: Literal["top", "fronts", "bottoms", "back"]) -> Timber:
        """The wood of a role that may be left out."""
        return getattr(self, role) or (self.case if role in {"top", "fronts"} else self.inside)


def no_truth(value: Any) -> Any:
    """A number, and not the true that Python would take for one."""
    if isinstance(value, bool):
        raise PydanticCustomError("choice", "{shown} is no number; write 1", {"shown": str(value).lower()})
    return value


def known_finish(value: str) -> str:
    """The name of a finish that the finish table has."""
    try:
        return finish(value).name
    except ValueError:
        names = ", ".join(each.name for each in finishes())
        raise PydanticCustomError(
            "choice",
            "{typed} is not a finish here; write one of {names}",
            {"typed": quoted(value), "names": names},
        ) from None


class Finish(Spec):
    """What goes on the wood, and how often."""

    product: Annotated[str, AfterValidator(known_finish)] = Field(
        "wiping varnish",
        min_length=1,
        max_length=60,
        description="A finish of the finish table.",
        examples=["wiping varnish"],
    )
    show_coats: int = Field(4, ge=0, le=20, description="Coats on the show surfaces.", examples=[4])
    inside_coats: int = Field(1, ge=0, le=20, description="Coats inside the drawers.", examples=[1])


class UnitSpec(Spec):
    """One case piece with drawers, as the maker chose it."""

    casewright: Annotated[Literal[1], BeforeValidator(no_truth)] = Field(
        description="Version of this file's form: 1.", examples=[1]
    )
    unit: LengthUnit = Field(
        LengthUnit.INCH,
        description="The unit of bare numbers in this file, and of what is printed.",
        examples=["in"],
    )
    code: Annotated[str, Field(pattern=r"^[A-Z0-9]{1,6}$")] = Field(
        "A", description="Short mark of the unit: one to six capitals or digits.", examples=["A"]
    )
    name: str = Field(
        min_length=1, max_length=120, description="What it is called.", examples=["Six-drawer dresser"]
    )
    count: Annotated[int, BeforeValidator(no_truth)] = Field(
        1, ge=1, le=100, description="How many alike are made.", examples=[1]
    )
    body: Body = Field(
        description="The size of the case.",
        examples=[{"width": "36", "depth": "19", "overall_height": "39"}],
    )
    graduation: Graduation = Field(
        default_factory=lambda: Step(rule="step"), description="How the openings grow towards the floor."
    )
    rows: tuple[Row, ...] = Field(
        min_length=1,
        max_length=40,
        description="The rows of drawers, from the top.",
        examples=[[{"columns": 2}, {}, {}]],
    )
    shelving: Shelving = Field(
        default_factory=Shelving, description="Shelves in open spaces and behind doors."
    )
    construction: Construction = Field(
        default_factory=Carcase,
        description="What the piece is built as: a carcase, legs with aprons between them, or a crate.",
        examples=[{"kind": "legs", "leg": "1-1/2"}],
    )
    case: Case = Field(default_factory=Case, description="Thicknesses and joints of a carcase.")
    frames: Frames = Field(
        default_factory=Frames, description="Web frames, runners and kickers of a carcase."
    )
    top: Top = Field(default_factory=Top, description="The top.")
    base: Base | None = Field(
        default_factory=Plinth,
        description="What a carcase stands on; null for none.",
        examples=[{"kind": "plinth", "height": "4"}],
    )
    back: Back = Field(default_factory=Back, description="The back of a carcase.")
    doors: Doors = Field(
        default_factory=Doors, description="How the doors are made, where rows or columns have any."
    )
    drawers: Drawers = Field(default_factory=Drawers, description="How the drawers are made.")
    woods: Woods = Field(
        description="The woods.",
        examples=[{"case": "cherry", "drawers": "soft maple", "inside": "poplar"}],
    )
    season: Season = Field(default_factory=Season, description="Moisture of the wood now, and at home.")
    sequence_fronts: bool = Field(
        True,
        description="Are the fronts cut in sequence from one tree, so that the figure runs across them?",
        examples=[True],
    )
    grain: GrainWishes = Field(
        default_factory=GrainWishes,
        description="Which parts match in figure, and the class of their faces.",
    )
    pulls: Pulls = Field(default_factory=Pulls, description="The pulls.")
    finish: Finish = Field(default_factory=Finish, description="The finish.")
    use: Use = Field(default_factory=Use, description="How it will be used.")
    site: Site = Field(
        default_factory=Site, description="Doors and turns on the way in, and the walls of a built-in."
    )
    cleat: Cleat | None = Field(
        None, description="The cleat that a carcase hangs on; null for none.", examples=[{"height": "3"}]
    )
    measured: Measured = Field(
        default_factory=Measured, description="What was measured at the bench: it beats what was designed."
    )

    @field_validator("rows")
    @classmethod
    def have_a_drawer(cls, rows: tuple[Row, ...]) -> tuple[Row, ...]:
        if not any(row.drawers for row in rows):
            raise PydanticCustomError("layout", "there is no drawer in any row; leave one row to drawers", {})
        return rows

    @property
    def matched_fronts(self) -> bool:
        """Whether the fronts are cut one after the other from the same boards."""
        if self.grain.fronts is None:
            return self.sequence_fronts
        return self.grain.fronts not in ("one tree", "no")

    @property
    def legs(self) -> LegsAndAprons | None:
        """The legs and aprons; None for a carcase."""
        return self.construction if isinstance(self.construction, LegsAndAprons) else None

    @model_validator(mode="before")
    @classmethod
    def usual_of_a_crate(cls, value: Any) -> Any:
        """A crate stands in a case of four boards, whatever a carcase usually has."""
        return with_crate_usual(value)

    @property
    def crate(self) -> Crate | None:
        """The crossing strips; None for a piece with frames, or on legs."""
        return self.construction if isinstance(self.construction, Crate) else None

    @property
    def on_frames(self) -> bool:
        """Whether the drawers run on frames, and not on strips, battens or slides."""
        return self.drawers.on_frames and self.crate is None

    @property
    def stands_on(self) -> Base | None:
        """The base; None for a piece without one, or on legs."""
        return None if self.legs else self.base

    @property
    def hangs(self) -> bool:
        """Whether it hangs on its cleat, clear of the floor."""
        return self.cleat is not None and self.legs is None and self.stands_on is None

    @property
    def plinth(self) -> Plinth | None:
        """The plinth; None for a piece on another base or none, or on legs."""
        return self.stands_on if isinstance(self.stands_on, Plinth) else None

    @property
    def support_front(self) -> float:
        """Front edge of the case back to where it tips forwards; below nothing: before the case [in]."""
        return stands_from(self.stands_on)

    @property
    def support_rear(self) -> float:
        """Front edge of the case back to the line over which the piece would tip backwards [in]."""
        return stands_to(self.stands_on, self.body.depth)

    @property
    def cleat_room(self) -> float:
        """What a cleat within the case takes of its depth [in]."""
        return self.cleat.depth_taken if self.cleat else 0.0

    @property
    def has_case_top(self) -> bool:
        """Whether a board between the sides closes the case above, in place of rails."""
        return self.legs is None and (self.case.is_ply or self.top.is_dovetailed)

    @property
    def stick_foot(self) -> str:
        """From where a story stick is marked."""
        return "lower edge of the aprons" if self.legs else "underside of the case bottom"

    @property
    def frame(self) -> Skeleton:
        """The thicknesses between which the openings lie, whatever the piece is built as."""
        return _frame_of(self)

    @property
    def overall_width(self) -> float:
        """The width over the top [in]."""
        return self.body.width + 2 * self.top.overhang_sides

    @property
    def top_depth(self) -> float:
        """The depth of the top [in]."""
        return self.body.depth + self.top.overhang_front + self.top.overhang_back

    @property
    def overall_depth(self) -> float:
        """The depth over the top and over fronts that stand before the case, without pulls [in]."""
        front = max(self.top.overhang_front, self.drawers.stands_before)
        return self.body.depth + front + self.top.overhang_back


@of_the_same(8)  # asked for some forty times while a unit is worked out
def _frame_of(spec: UnitSpec) -> Skeleton:
    found = skeleton(spec.case, spec.legs)
    if spec.crate:
        found = replace(found, divider=spec.crate.strip, upright=spec.crate.strip)
    if spec.legs or not spec.top.is_dovetailed:
        return found
    return replace(found, upper=spec.top.thickness)
