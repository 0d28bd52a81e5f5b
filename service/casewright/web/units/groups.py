"""The form of a unit: which choices it asks for, in which order and words. All else comes from the schema."""

from functools import cache

from casewright.web.units.case_groups import CASE_GROUPS
from casewright.web.units.door_group import door_group
from casewright.web.units.drawer_groups import BOTTOMS_GROUP, DRAWERS_GROUP, JOINTS_GROUP
from casewright.web.units.fields import Asked, Choices, Group, Kind, ask
from casewright.web.units.grain_group import GRAIN_GROUP
from casewright.web.units.running_group import PULLS_GROUP, RUNNING_GROUP
from casewright.web.units.season_group import SEASON_GROUP
from casewright.web.units.shell_groups import SHELL_GROUPS
from casewright.web.units.shelving_group import SHELVING_GROUP
from casewright.web.units.use_group import USE_GROUP
from casewright.wood.finish import finishes
from casewright.wood.species import woods

CUTS: Choices = (("flat", "flat-sawn (usual)"), ("quarter", "quartersawn"), ("rift", "rift-sawn"))
HEIGHTS = {
    "overall_height": "Overall height, floor to top",
    "body_height": "Height of the case side alone",
    "opening_total": "All openings of a column together",
}
RULES: Choices = (
    ("step", "Same step from row to row (usual)"),
    ("equal", "All rows alike"),
    ("ratio", "Same ratio from row to row"),
    ("roots", "As square roots of 1, 2, 3 …"),
    ("contents", "By what goes in"),
)

BUILD = "construction.kind"
CARCASE, LEGS, CRATE = (BUILD, "carcase"), (BUILD, "legs"), (BUILD, "crate")
"""Where a group counts that belongs to one construction only."""

SIZE_FIELDS = (
    ask("name", "Name", hint="What it is called on the quote and at the bench."),
    Asked(
        name=BUILD,
        label="Built as",
        kind=Kind.CHOICE,
        choices=(
            ("carcase", "a carcase (usual)"),
            ("legs", "legs and aprons"),
            ("crate", "a crate of crossing strips"),
        ),
        usual="carcase",
        is_wide=True,
    ),
    ask("body.width", "Width of the case", hint="Outside, without the top's overhang."),
    ask("body.depth", "Depth of the case", hint="Front edge to back edge of a side, or over the legs."),
    Asked(
        name="body.height_as",
        label="Height is given as",
        kind=Kind.CHOICE,
        choices=tuple(HEIGHTS.items()),
        usual="overall_height",
        is_wide=True,
    ),
    Asked(
        name="body.height",
        label="That height",
        kind=Kind.SIZE,
        hint="The other two follow from it.",
        example="44-3/8",
        needed=True,
    ),
    ask("count", "How many alike", hint="", lead=True),
)
RULE = "graduation.rule"
RULE_FIELDS = (
    Asked(
        name=RULE,
        label="How the rows grow towards the floor",
        kind=Kind.CHOICE,
        choices=RULES,
        usual="step",
        is_wide=True,
    ),
    ask("graduation.step", "Step", when=(RULE, "step"), hint="Left empty: as thick as a divider."),
    ask(
        "graduation.first",
        "First opening",
        when=(RULE, "step", "ratio"),
        hint="Instead of the step or the ratio, which then follows.",
    ),
    ask("graduation.ratio", "Ratio", when=(RULE, "ratio"), hint="Each row taller by this factor."),
    ask(
        "graduation.on",
        "The ratio holds for",
        (("opening", "openings (usual)"), ("pitch", "opening and divider together")),
        (RULE, "ratio"),
        hint="",
        is_wide=True,
    ),
    ask("graduation.start", "First number", when=(RULE, "roots"), hint="1 gives 1, √2, √3 …"),
    ask(
        "graduation.spare",
        "Spare height is shared",
        (("equal", "equally (usual)"), ("proportion", "in proportion to the need")),
        (RULE, "contents"),
        hint="",
        is_wide=True,
    ),
)


@cache
def wood_choices() -> Choices:
    """Every wood of the table, by the name that shops use."""
    return tuple((each.name, each.name) for each in sorted(woods(), key=lambda each: each.name))


def _wood(role: str, label: str, hint: str, other: str = "") -> tuple[Asked, Asked]:
    first = (("", f"as {other}"),) if other else (("", "choose a wood"),)
    needed = not other
    wood = ask(f"woods.{role}.wood", label, (*first, *wood_choices()), hint=hint, needed=needed, lead=True)
    cut = ask(f"woods.{role}.cut", f"{label}, sawn", CUTS, hint="", needed=False)
    return wood, cut


WOOD_FIELDS = (
    *_wood("case", "Case", "Sides or legs and aprons, rails, front and returns of the plinth."),
    *_wood("drawers", "Drawer sides", "And backs, and the bars under wide bottoms."),
    *_wood("inside", "Inside", "Runners, kickers, case bottom, rails not seen."),
)


MORE_GROUPS = (
    Group(
        key="legs",
        title="Legs and aprons",
        when=LEGS,
        fields=(
            ask("construction.leg", "Leg", lead=True),
            ask("construction.tapered", "Legs tapered", unticked="legs not tapered"),
            ask("construction.foot", "At the floor, tapered"),
            ask("construction.apron", "Apron"),
            ask("construction.apron_height", "Apron height", lead=True),
            ask("construction.setback", "Apron set back"),
            ask("construction.tenon", "Apron tenon"),
            ask("construction.rail", "Front rail"),
            ask("construction.rail_width", "Front rail width"),
            ask("construction.dovetail", "Upper rail's dovetail"),
            ask("construction.rail_tenon", "Lower rail's tenon"),
            ask("construction.runner_width", "Runner"),
            ask("construction.tongue", "Runner's tongue"),
            ask("construction.guide_height", "Side guide"),
            ask("construction.fixing", "Top held by"),
        ),
    ),
    Group(
        key="crate",
        title="Crate",
        when=CRATE,
        note="Its case is dovetailed through, the top between the sides; choose no base for one that hangs.",
        fields=(ask("construction.strip", "Strips, thick", lead=True),),
    ),
    Group(
        key="other-woods",
        title="Other woods",
        fields=(
            *_wood("top", "Top", "", "the case"),
            *_wood("fronts", "Drawer fronts", "", "the case"),
            *_wood("bottoms", "Solid drawer bottoms", "", "the inside"),
            *_wood("back", "Back boards", "", "the inside"),
            *_wood("shelves", "Solid shelves", "", "the case, behind doors as the inside"),
            ask("sequence_fronts", "Fronts in sequence from one tree", unticked="fronts not in sequence"),
        ),
    ),
    DRAWERS_GROUP,
    JOINTS_GROUP,
    BOTTOMS_GROUP,
    door_group(wood_choices(), CUTS),
    SHELVING_GROUP,
    GRAIN_GROUP,
    Group(
        key="clearances",
        title="Running clearances",
        fields=(
            ask("drawers.clearances.side", "Each side"),
            ask("drawers.clearances.top", "Above, wettest", lead=True),
            ask("drawers.clearances.bottom", "Below"),
            ask("drawers.clearances.back", "Behind"),
        ),
    ),
    RUNNING_GROUP,
    *SHELL_GROUPS,
    *CASE_GROUPS,
    Group(
        key="frames",
        title="Frames and runners",
        when=CARCASE,
        fields=(
            ask("frames.runner_width", "Runner", lead=True),
            ask("frames.centre_runner_width", "Centre runner"),
            ask("frames.back_rail_width", "Back rail"),
            ask("frames.tenon", "Tenon"),
            ask("frames.slack", "Slack at the rear"),
        ),
    ),
    SEASON_GROUP,
    PULLS_GROUP,
    Group(
        key="finish",
        title="Finish",
        fields=(
            ask(
                "finish.product",
                "Finish",
                tuple((each.name, each.name) for each in finishes()),
                hint="",
                lead=True,
                bare=True,
            ),
            ask("finish.show_coats", "Coats outside", lead=True),
            ask("finish.inside_coats", "Coats in the drawers"),
        ),
    ),
    USE_GROUP,
    Group(
        key="site",
        title="Way in",
        fields=(
            ask("site.door_width", "Narrowest door, width"),
            ask("site.door_height", "Its height"),
            ask("site.turn_width", "Narrowest corridor with a turn"),
        ),
    ),
    Group(
        key="measured",
        title="Measured",
        note="A measured size beats the drawn one, which stands faintly in its field. Measured in two "
        "places? Write both with a comma between them: the least counts.",
        fields=(
            Asked(
                name="measured",
                label="Parts that were measured",
                kind=Kind.LINES,
                hint="The part, what of it (thickness, width, length), and the size, as stands faintly in "
                "the field. Several may stand in one line, with a comma between them.",
                example="R5-1-SL thickness 31/64",
            ),
        ),
    ),
)
BUILT_AS = {each.name: group.when for group in MORE_GROUPS if group.when for each in group.fields}
"""What a piece has to be built as for a field to count, by the field's name."""
SINGLE = (*SIZE_FIELDS, *RULE_FIELDS, *WOOD_FIELDS, *(each for group in MORE_GROUPS for each in group.fields))
"""Every field that stands once in the form."""
