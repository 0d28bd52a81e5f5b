"""What the form of a unit asks of its rows, of columns spelled out, and of columns with rows."""

from casewright.web.units.fields import Asked, Choices, Kind, ask
from casewright.web.units.groups import RULE, RULES

HOLDS: Choices = (("drawer", "drawer"), ("open", "open"), ("doors", "doors"))
FILES: Choices = (("", "none"), ("letter", "letter"), ("legal", "legal"))
COLUMN, NOTCH = "rows.1.across.1", "rows.1.notch.width"
ROW_FIELDS = (
    ask("rows.1.columns", "Columns"),
    ask("rows.1.holds", "Each holds", HOLDS),
    ask("rows.1.height", "Height"),
    Asked(name="rows.1.widths", label="Widths", kind=Kind.SIZES, example="12; rest; 12"),
    ask("rows.1.contents", "Contents", when=(RULE, "contents")),
    ask("rows.1.files", "Hanging folders", FILES),
    ask("rows.1.pulls", "Pulls"),
    ask("rows.1.front_tails", "Front tails"),
    ask("rows.1.back_tails", "Back tails"),
    ask(NOTCH, "Notch, wide", needed=False, empty="none"),
    ask("rows.1.notch.depth", "Notch, deep", when=(NOTCH,), needed=False),
    ask("rows.1.notch.off", "Notch, aside", when=(NOTCH,)),
    ask("rows.1.notch.toward", "Aside to the", (("left", "left"), ("right", "right")), (NOTCH,)),
    ask("rows.1.notch.pipes", "Pipes, wide", when=(NOTCH,)),
    ask("rows.1.notch.reach", "Pipes, deep", when=(NOTCH,)),
)
"""The fields of a row, as those of the first."""
FINE_FIELDS = frozenset(("files", "pulls", "front_tails", "back_tails"))
"""Those that are folded away until they are wanted: the rules answer them."""
FINE_GROUPS = frozenset(("notch",))
"""What is asked of something that most rows do not have is folded away with them."""
COLUMN_FIELDS = (
    ask(f"{COLUMN}.width", "Width"),
    ask(f"{COLUMN}.holds", "Holds", (("", "as its row"), *HOLDS)),
    ask(f"{COLUMN}.shelves", "Shelves"),
    ask(f"{COLUMN}.leaves", "Doors side by side", kind=Kind.WHOLE, choices=()),
    ask(f"{COLUMN}.hinged", "A single door hangs at the", (("left", "left (usual)"), ("right", "right"))),
    ask(f"{COLUMN}.knee", "Knee space, open to the floor", hint=""),
)
"""The fields of a column that is one opening, as those of the first."""
OWN_RULE = f"{COLUMN}.graduation.rule"
GROWTH_FIELDS = (
    ask(f"{COLUMN}.width", "Width"),
    Asked(
        name=OWN_RULE,
        label="Its rows grow",
        kind=Kind.CHOICE,
        choices=(
            ("", "as those of the unit"),
            *((key, words.removesuffix(" (usual)")) for key, words in RULES),
        ),
    ),
    ask(f"{COLUMN}.graduation.step", "Step", when=(OWN_RULE, "step")),
    ask(f"{COLUMN}.graduation.first", "First opening", when=(OWN_RULE, "step", "ratio")),
    ask(f"{COLUMN}.graduation.ratio", "Ratio", when=(OWN_RULE, "ratio")),
    ask(f"{COLUMN}.graduation.start", "First number", when=(OWN_RULE, "roots")),
)
"""The fields of a column with rows of its own, as those of the first."""
