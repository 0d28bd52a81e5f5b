"""Parts to be cut: how large, how many, of which wood, and what is asked of their grain and faces."""

from typing import Annotated, Literal

from pydantic import Field

from casewright.measure.fields import Clearance, Length, Size, Spec

Code = Annotated[str, Field(min_length=1, max_length=60)]
Words = Annotated[str, Field(max_length=120)]
ThicknessName = Annotated[str, Field(pattern=r"^[1-9]\d?/4$")]
Face = Literal["A", "B", "C", "D"]
Way = Literal["along", "across", "grid", "book", "slip", "one tree"]
MOST_OF_ONE = 5_000


class Stretch(Spec):
    """A stretch of a part's width, from its first edge."""

    start: Length = Field(ge=0, le=1200, description="Where it begins.", examples=["3"])
    end: Length = Field(gt=0, le=1200, description="Where it ends.", examples=["4"])


class GlueUp(Spec):
    """How a wide part may be glued up from strips."""

    narrowest: Size = Field(
        2.5,
        description="Narrowest strip, before its edges are jointed (common practice).",
        examples=["2-1/2"],
    )
    widest: Size = Field(
        6.0,
        description="Widest strip; a wider one cups where the next does not (common practice).",
        examples=["6"],
    )
    strips: int | None = Field(
        None,
        ge=1,
        le=40,
        description="Just so many strips; left out, as many as suit the stock.",
        examples=[3],
    )
    keep_off: tuple[Stretch, ...] = Field(
        (),
        max_length=40,
        description="Where no glue line may lie: a half pin, the edge of a groove.",
        examples=[[{"start": "3", "end": "4"}]],
    )


class PlacedByHand(Spec):
    """Where a part was put by hand. It stays there, and the rest is laid out around it."""

    on: Code = Field(description="Code of the board or sheet.", examples=["B3"])
    number: int = Field(1, ge=1, le=MOST_OF_ONE, description="Which one, of several alike.", examples=[1])
    from_end: Length = Field(ge=0, le=1200, description="From the first end of the board.", examples=["12"])
    from_edge: Length = Field(ge=0, le=1200, description="From its near edge.", examples=["1/4"])
    turned: bool = Field(False, description="Does its length lie across the board?", examples=[True])


class CutPart(Spec):
    """A part, or several that are alike."""

    code: Code = Field(description="Its mark, which stands on the layout.", examples=["A-R1-1-F"])
    name: Words = Field("", description="What it is.", examples=["drawer front"])
    wood: Code = Field(
        description="What it is cut from, as the stock calls it: a wood, or a kind of sheet.",
        examples=["cherry"],
    )
    thickness_class: ThicknessName | None = Field(
        None,
        alias="class",
        description="Thickness class of its board; left out for sheets and for stock sold by length.",
        examples=["4/4"],
    )
    thickness: Size | None = Field(
        None, description="Finished thickness; needed where two are sawn from one board.", examples=["3/4"]
    )
    length: Size = Field(description="Along the grain.", examples=["38-7/8"])
    width: Size | None = Field(
        None,
        description="Across the grain; left out for stock that is only cut to length.",
        examples=["7-1/4"],
    )
    sizes: Literal["rough", "finished"] = Field(
        "rough",
        description="Finished sizes get the allowances of the saw; rough ones are cut as they are.",
        examples=["finished"],
    )
    count: int = Field(1, ge=1, le=MOST_OF_ONE, description="How many are alike.", examples=[4])
    face: Face = Field(
        "D",
        description="A show face (no sapwood on it), B show edge, C seen when open, D inside.",
        examples=["A"],
    )
    clear: Literal["both faces", "one face"] = Field(
        "both faces",
        description="Must both faces be free of defects, or may one lie on the hidden side?",
        examples=["one face"],
    )
    grain: Literal["along", "any"] = Field(
        "along", description="Does its length follow the grain, or may it turn?", examples=["any"]
    )
    ends: Literal["kept", "any"] = Field(
        "any", description="Must its first end lie toward the first end of the board?", examples=["kept"]
    )
    glue_up: GlueUp | None = Field(
        None,
        description="It may be glued up from strips; left out, it comes from one board.",
        examples=[{"narrowest": "2-1/2", "widest": "6"}],
    )
    resaw: bool = Field(
        False, description="May two be sawn from the thickness of one board?", examples=[True]
    )
    placed: tuple[PlacedByHand, ...] = Field(
        (),
        max_length=MOST_OF_ONE,
        description="Those that were put by hand.",
        examples=[[{"on": "B3", "from_end": "12", "from_edge": "1/4"}]],
    )


class GrainSet(Spec):
    """Parts whose grain matches, and how they are cut for it."""

    name: Code = Field(description="Which parts they are.", examples=["fronts of row 1"])
    way: Way = Field(
        description=(
            "along: one after the other in one board; across: side by side from one wide board; grid: both; "
            "book and slip: each two sawn from one thickness; one tree: from boards of one log."
        ),
        examples=["along"],
    )
    rows: tuple[tuple[Code, ...], ...] = Field(
        min_length=1,
        max_length=200,
        description="Codes in the order in which they are cut; one row, but in a grid and in pairs.",
        examples=[[["A-R1-1-F", "A-R1-2-F"]]],
    )
    glue_up: GlueUp | None = Field(
        None,
        description=(
            "How its blank may be glued up where no board is wide enough; left out, as its first part may be."
        ),
        examples=[{"narrowest": "2-1/2", "widest": "6"}],
    )


class Saw(Spec):
    """What the saw and the jointer take."""

    kerf: Clearance = Field(0.125, description="What a cut takes away (common practice).", examples=["1/8"])
    end_trim: Clearance = Field(
        1.0, description="Cut off each end of a board (common practice).", examples=["1"]
    )
    edge: Clearance = Field(
        0.25,
        description="Taken off each edge of a board to straighten it (common practice).",
        examples=["1/4"],
    )
    jointing: Clearance = Field(
        0.125,
        description="What jointing both edges takes from a strip of a panel (common practice).",
        examples=["1/8"],
    )
    length_over: Clearance = Field(
        1.0, description="Cut longer than a finished length, by this (common practice).", examples=["1"]
    )
    width_over: Clearance = Field(
        0.25, description="Cut wider than a finished width, by this (common practice).", examples=["1/4"]
    )
    resaw_kerf: Clearance = Field(
        0.125, description="What sawing through the thickness takes (common practice).", examples=["1/8"]
    )
    cleaning: Clearance = Field(
        0.125, description="What each half loses when it is cleaned up (common practice).", examples=["1/8"]
    )
