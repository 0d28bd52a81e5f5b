"""What is a limit is rounded to the safe side, in inches and in millimetres."""

import re
from pathlib import Path

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.papers.run_words import run_facts
from casewright.papers.stand_report import stand_section
from casewright.papers.stand_words import mending, together_line, wall_lines
from casewright.papers.writing import Writing
from casewright.pieces.built.standing import unit_standing
from casewright.stability.limits import house_limits
from casewright.stability.remedies import greatest_travel
from units import built, chest

CORE = Path(__file__).parents[2] / "service" / "casewright"
MILLIMETRES = 25.4
PLACE = r"\{(?P<place>(?!:d\})(?::[^{}]*)?)\}(?: (?:wide|thick|long|deep|high|apart))? or "
"""A place for a length, not for a number that is counted."""
AT_MOST = re.compile(PLACE + r"(?:less|thinner|narrower|shorter|shallower|closer)")
AT_LEAST = re.compile(PLACE + r"(?:more|thicker|wider|longer|deeper|higher)\b")


def places(pattern: re.Pattern[str]) -> list[tuple[str, str]]:
    """Every place of a length in the sentences of the core that stands before such words."""
    return [
        (f"{path.relative_to(CORE)}: {found[0]}", found["place"])
        for path in sorted(CORE.rglob("*.py"))
        for found in pattern.finditer(path.read_text(encoding="utf-8"))
    ]


@pytest.mark.parametrize(
    ("pattern", "way"), [(AT_MOST, "down"), (AT_LEAST, "up")], ids=("at most", "at least")
)
def test_a_length_that_may_be_so_large_or_must_be_is_said_on_the_safe_side(pattern, way):
    found = places(pattern)

    assert len(found) > 10
    assert [where for where, place in found if way not in place.strip(":").split()] == []


def metric_chest(**changes):
    return built(chest({name.replace("__", "."): value for name, value in changes.items()}))


@pytest.mark.parametrize("width", ["22", "24", "27-3/8", "31"])
def test_a_greatest_safe_travel_in_millimetres_is_never_longer_than_it_is(width):
    unit = metric_chest(body__width=width)
    held = unit_standing(unit)
    told = [each.message for each in unit.stand.findings if "safe travel" in in_unit(each.message, MM)]

    moving = [case.situation for case in held.cases if case.situation.moving]
    exact = {float(greatest_travel(each, house_limits().target_factor)) for each in moving}
    shown = re.findall(r"safe travel ([\d.]+) mm", " ".join(in_unit(each, MM) for each in told))
    together = re.findall(r"full: ([\d.]+) mm", in_unit(together_line(held), MM))

    assert shown
    assert together
    for each in (*shown, *together):
        assert any(0 <= size - float(each) / MILLIMETRES < 0.11 / MILLIMETRES for size in exact)


MM = LengthUnit.MILLIMETRE


def test_an_outstop_is_placed_no_nearer_to_the_front_than_it_may_be():
    """A line rounded towards the front would let the drawer out further than it was reckoned with."""
    unit = metric_chest(drawers__stops={"outstop": "pin", "travel": "9-37/64"})
    [drawer, *_] = unit.drawers
    [line] = [fact for fact in run_facts(drawer) if fact.label == "Outstop"]

    assert float(in_unit(line.value, MM).removesuffix(" mm")) / MILLIMETRES >= drawer.run.outstop - 1e-9


@pytest.mark.parametrize("width", ["22", "24", "27-3/8", "31"])
def test_what_must_be_added_is_no_less_in_millimetres_than_it_is(width):
    held = unit_standing(metric_chest(body__width=width))
    lines = " ".join(in_unit(line, MM) for line in mending(held).enough)

    forward = float(re.search(r"Front feet ([\d.]+) mm", lines)[1])
    assert forward / MILLIMETRES >= held.remedies.forward - 1e-9


def test_loads_are_said_in_whole_pounds_and_never_less_than_they_are():
    """A load of 40.1 lb is 41 lb for whoever carries it, and no 40."""
    unit = metric_chest(use__free_standing=False)
    held = unit_standing(unit)
    said = " ".join(in_unit(line, LengthUnit.INCH) for line in wall_lines(held.wall))
    report = " ".join(stand_section(unit, Writing(unit=LengthUnit.INCH)).split())

    each = float(re.search(r"each with (\d+) lb", said)[1])
    assert held.wall.each <= each < held.wall.each + 1
    for carried in held.carries:
        found = re.search(re.escape(carried.what) + r" (\d+) lb", report)
        assert carried.weight <= float(found[1]) < carried.weight + 1
