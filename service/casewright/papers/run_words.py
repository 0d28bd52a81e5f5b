"""How a drawer runs and stops, and where its front is bored, in figures for the bench and for reports."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.saying import Words, say, strung
from casewright.papers.notching import notch_height
from casewright.papers.writing import Writing, section, table
from casewright.pieces.asked.slide_spec import GOVERNS
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.running import BattenGroove, Guide, Slides


@dataclass(frozen=True, slots=True, kw_only=True)
class RunFact:
    """One figure of how a drawer runs.

    Attributes:
        label: what it is
        value: the figure
        note: where it is measured from
    """

    label: str
    value: Words
    note: Words = ""


def run_facts(drawer: Drawer) -> Iterator[RunFact]:
    """How a drawer runs, stops and is pulled.

    Args:
        drawer: the drawer

    Yields:
        The figures, those that are set first first.
    """
    run = drawer.run
    if run.slides is not None:
        yield from _slides(run.slides, drawer)
    if run.groove is not None:
        yield from _groove(run.groove)
    if run.guide is not None:
        yield from _guide(run.guide)
    if run.stop is not None:
        yield RunFact(label="Stop line", value=say("{}", run.stop), note="behind the face of the rail")
    if run.outstop is not None:
        caught = "the pin in the kicker" if run.outstop_is_pin else "the catch in the kicker"
        note = f"{caught}, behind the face of the rail"
        yield RunFact(label="Outstop", value=say("{:up}", run.outstop), note=note)
    yield RunFact(
        label="Opens", value=say("{}", run.travel), note="slides" if run.slides else "to its outstop"
    )
    if run.lined is not None:
        size = say("{:bare} × {:bare} × {}", run.lined.width, run.lined.depth, run.lined.height)
        yield RunFact(label="Within the lining", value=size, note="wide × deep × high")
    yield from _notch(drawer)
    yield from _pulls(drawer)


def _notch(drawer: Drawer) -> Iterator[RunFact]:
    """The recess around pipes, with its boards and the cut-out of the bottom."""
    notch, cut = drawer.sizes.notch, drawer.bottom.cut_out
    if notch is None or cut is None:
        return
    yield RunFact(
        label="Notch around pipes",
        value=say("{:bare} × {}", notch.width, notch.depth),
        note=say(
            "clear, wide × deep from the rear end of the drawer; {} from the outside of the left side",
            notch.left,
        ),
    )
    yield RunFact(
        label="Arms",
        value=say("{:bare} and {}", notch.left_arm, notch.right_arm),
        note=say("clear, left and right; {} clear before the inner back", notch.room),
    )
    yield RunFact(
        label="Short backs",
        value=say("{:bare} and {}", notch.left_back, notch.right_back),
        note="length, left and right",
    )
    yield RunFact(
        label="Inner sides and back",
        value=say("{:bare} and {}", notch.side_length, notch.head_length),
        note=say("length; {} high, as the short backs", drawer.sizes.back_height),
    )
    yield RunFact(
        label="Cut-out of the bottom",
        value=say("{:bare} × {}", cut.length, cut.depth),
        note=say(
            "wide × deep from its rear edge, {} from its left end; saw the bottom whole first", cut.along
        ),
    )


def _slides(slides: Slides, drawer: Drawer) -> Iterator[RunFact]:
    model = slides.model
    yield RunFact(label="Slides", value=say("{}", slides.length), note=f"{model.name}; {GOVERNS}")
    yield RunFact(
        label="Side space",
        value=say("{}", slides.space),
        note=say("{:.3} to {:.3}: measure the box before it is glued", model.space_least, model.space_most),
    )
    if model.is_under and model.notch_width:
        high = notch_height(drawer)
        notch: Words = say("{:bare} × {}", model.notch_width, high) if high else "none"
        where = "wide × high, two, at the back’s lower edge, each from the inside face of a side"
        if not high:
            where = "the bottom passes under the back, which stands above the slides"
        yield RunFact(label="Rear notches", value=notch, note=f"{where}; {GOVERNS}")
    if model.is_under and model.pin_hole:
        place = say("{:bare} in, {} up", model.pin_in, model.pin_up)
        note = say(
            "hole {} across, into the rear face of the back; from the inside of each side, and from the "
            "underside of the bottom; {}",
            model.pin_hole,
            GOVERNS,
        )
        yield RunFact(label="Hook holes", value=place, note=note)


def _groove(groove: BattenGroove) -> Iterator[RunFact]:
    note = say("{} wide, {} deep, from the bottom edge of the side", groove.width, groove.depth)
    yield RunFact(label="Groove for the batten", value=say("{} up", groove.height), note=note)
    yield RunFact(
        label="Batten", value=say("{} up", groove.batten), note="its lower edge, above the opening’s"
    )


def _guide(guide: Guide) -> Iterator[RunFact]:
    yield RunFact(
        label="Centre guide",
        value=say("{:bare} × {}", guide.height, guide.width),
        note=say("high × wide; the notch that rides on it {} wide", guide.notch),
    )


def _pulls(drawer: Drawer) -> Iterator[RunFact]:
    boring = drawer.boring
    if not boring.lines:
        return
    yield RunFact(
        label="Pulls, centres",
        value=strung(", ", [say("{}", line) for line in boring.lines]),
        note="from the left end of the front",
    )
    two = say("; screws {} apart", boring.apart) if boring.apart else ""
    yield RunFact(
        label="Pulls, height",
        value=say("{}", boring.up),
        note=say("up from the bottom edge; hole {}{}", boring.screw, two),
    )


def running_section(unit: Construction, writing: Writing) -> str:
    """How the drawers run and stop and where they are bored, those alike together.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        The section.
    """
    groups: dict[tuple[tuple[str, str, str], ...], list[str]] = {}
    for drawer in unit.drawers:
        facts = tuple(
            (fact.label, writing.said(fact.value), writing.said(fact.note)) for fact in run_facts(drawer)
        )
        groups.setdefault(facts, []).append(drawer.sizes.code)
    tables = [
        f"{', '.join(codes)}\n{table(('Figure', 'Size', 'Note'), facts)}" for facts, codes in groups.items()
    ]
    return section("Running, stops and pulls", *tables)
