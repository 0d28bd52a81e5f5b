"""The groups of the form that ask what the drawers run on, where they stop, and for their pulls."""

from collections.abc import Iterable

from casewright.pieces.asked.slide_spec import OwnSlide
from casewright.web.units.fields import Asked, Choices, Group, Kind, ask

RUNNING = "drawers.running.kind"
SLIDE = "drawers.running.slide"
"""Chosen from the shop's own table, which the page of the form has."""
KINDS: Choices = (
    ("runners", "runners and kickers (usual)"),
    ("side-hung", "battens at the sides, in a groove"),
    ("centre guide", "runners, and a guide under the middle"),
    ("full-length runners", "runners the whole depth, for heavy drawers"),
    ("slides", "metal slides"),
)
HUNG, GUIDED, SLID = (RUNNING, "side-hung"), (RUNNING, "centre guide"), (RUNNING, "slides")

RUNNING_GROUP = Group(
    key="running",
    title="Running and stops",
    note="Metal slides are those of the shop’s table, under Shop, Slides: the maker’s sheet governs.",
    fields=(
        Asked(
            name=RUNNING,
            label="Drawers run on",
            kind=Kind.CHOICE,
            choices=KINDS,
            usual="runners",
            lead=True,
            bare=True,
            is_wide=True,
        ),
        ask("drawers.running.batten", "Batten thickness", when=HUNG),
        ask("drawers.running.projection", "Batten projects", when=HUNG),
        ask("drawers.running.height", "Groove above the edge", when=HUNG),
        ask("drawers.running.guide_width", "Guide width", when=GUIDED),
        ask("drawers.running.guide_height", "Guide height", when=GUIDED),
        ask(SLIDE, "Slide", when=SLID, is_wide=True),
        ask("drawers.running.length", "Slide length", when=SLID),
        ask("drawers.lining", "Lining"),
        ask("drawers.load_lb", "Load of a full drawer (lb)"),
        ask("drawers.stops.blocks", "Stop blocks behind the front", unticked="no stop blocks"),
        ask("drawers.stops.inset", "Front behind the rails"),
        ask(
            "drawers.stops.outstop",
            "Outstop",
            (
                ("", "one of your own, not counted (usual)"),
                ("turn-button", "turn-button on the back"),
                ("pin", "pin in the kicker"),
                ("none", "none"),
            ),
            hint="",
        ),
        ask("drawers.stops.travel", "Opens to"),
    ),
)


def slide_choices(slides: Iterable[OwnSlide]) -> Choices:
    """Every slide of the shop's table, by its name, with how it is mounted and what it carries."""
    listed = tuple((each.name, f"{each.name}, {each.kind}, {each.load_lb:g} lb a pair") for each in slides)
    return (("", "the first of the shop's table (usual)"), *listed)


HOLES = "pulls.holes"
HEIGHT = "pulls.height"
PULLS_GROUP = Group(
    key="pulls",
    title="Pulls",
    fields=(
        ask("pulls.item", "Pull", lead=True, bare=True),
        ask("pulls.count", "On a drawer"),
        ask("pulls.one_up_to", "One pull up to", when=("pulls.count", "by width")),
        ask("pulls.holes", "Screws in a pull", (("one", "one: a knob (usual)"), ("two", "two"))),
        ask("pulls.centres", "Screw to screw", when=(HOLES, "two")),
        ask("pulls.screw", "Hole for a screw"),
        ask("pulls.height", "How high on the front"),
        ask("pulls.down", "Below the top edge", when=(HEIGHT, "from the top")),
        ask("pulls.spare_per", "One spare for each"),
        ask("pulls.weight_lb", "Weight of one (lb)"),
    ),
)
