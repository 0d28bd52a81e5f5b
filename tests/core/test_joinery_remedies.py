"""What is said of a joint that does not pass has a size in it that would do, and that size does."""

import re
from dataclasses import dataclass

import pytest

from casewright.joinery.joint import Measure
from casewright.joinery.kinds import kinds, solve
from casewright.measure.findings import Verdict
from casewright.measure.lengths import parse_length


@dataclass(frozen=True)
class Advised:
    """One check whose `needed` is the size of a field."""

    kind: str
    rule: str
    field: str


NEEDED = [
    Advised("sliding", "socket depth", "depth"),
    Advised("sliding", "socket holds", "depth"),
    Advised("sliding", "shoulder", "shoulder"),
    Advised("sliding", "stop at the front", "stop"),
    Advised("sliding", "JC12", "slope"),
    Advised("half-blind", "JC1", "lap"),
    Advised("half-blind", "JC3", "entered_second_gauge"),
    Advised("half-blind", "JC4", "rabbet"),
    Advised("half-blind", "JC6", "pin"),
    Advised("half-blind", "JC7", "half_pin"),
    Advised("half-blind", "JC10", "front"),
    Advised("half-blind", "JC12", "slope"),
    Advised("half-blind", "JC16", "measured_tail_length"),
    Advised("half-blind", "JC17", "front_gravity"),
    Advised("half-blind", "proud", "proud"),
    Advised("through", "JC4", "rabbet"),
    Advised("through", "JC6", "pin"),
    Advised("through", "JC7", "half_pin"),
    Advised("through", "side below groove", "groove_height"),
    Advised("box", "play for the glue", "play"),
    Advised("housing", "housing depth", "depth"),
    Advised("housing", "housing carries", "depth"),
    Advised("housing", "play for the glue", "play"),
    Advised("housing", "stop at the front", "stop"),
    Advised("edge-joint", "tongue", "tongue"),
    Advised("edge-joint", "room when wettest", "gap"),
    Advised("lock-rabbet", "lip", "lip"),
    Advised("lock-rabbet", "tongue", "tongue"),
    Advised("lock-rabbet", "groove depth", "reach"),
    Advised("lock-rabbet", "end of the side", "from_end"),
    Advised("pinned-rabbet", "pins from the edge", "margin"),
    Advised("pinned-rabbet", "pin length", "pin_length"),
    Advised("bottom-groove", "room behind", "back_gap"),
]


def example(field):
    """A field's own example."""
    if field.measure.is_length:
        return float(parse_length(field.example))
    return float({"yes": 1, "no": 0}.get(field.example, field.example.removeprefix("1:")))


def values_of(kind):
    """The examples of all fields of a kind, which make a joint that nearly passes; no gauge is locked."""
    return {field.name: example(field) for field in kinds()[kind].fields if field.name != "locked_gauge_1"}


def found_by(advised, size):
    """What a check finds where its field has a size; None where that is refused, or not checked."""
    try:
        joint = solve(advised.kind, values_of(advised.kind) | {advised.field: size}).joint
    except ValueError:
        return None
    return next((each for each in joint.findings if each.rule == advised.rule), None)


@pytest.mark.parametrize("advised", NEEDED, ids=lambda each: f"{each.kind}, {each.rule}")
def test_the_size_that_a_check_needs_passes_it(advised):
    usual = values_of(advised.kind)[advised.field]
    tried = [found_by(advised, usual * times / 16) for times in (*range(65), 128, 256)]
    failed = [found for found in tried if found and found.verdict is not Verdict.PASS]

    assert failed
    assert {found_by(advised, found.needed).verdict for found in failed} == {Verdict.PASS}


EXTREMES = [0.0, 1 / 64, 1 / 8, 1 / 2, 3 / 4, 3 / 2, 2.0, 4.0, 20.0]
"""How many times its example a field is made."""

SAID = [
    (kind.name, field.name, times)
    for kind in kinds().values()
    for field in kind.fields
    if field.measure is not Measure.ANSWER
    for times in EXTREMES
]


def driven(kind, name, times):
    """What is said of a joint with one of its sizes far off: the refusal, or each remedy."""
    values = values_of(kind)
    field = next(each for each in kinds()[kind].fields if each.name == name)
    size = example(field) * times
    size = round(size) if field.measure is Measure.COUNT else size
    try:
        joint = solve(kind, values | {name: size}).joint
    except ValueError as error:
        return [str(error)]
    return [str(each.remedy) for each in joint.findings if each.verdict is not Verdict.PASS]


@pytest.mark.parametrize(("kind", "name"), sorted({(kind, name) for kind, name, _ in SAID}))
def test_whatever_is_refused_or_does_not_pass_is_told_a_size_that_would_do(kind, name):
    said = [each for times in EXTREMES for each in driven(kind, name, times)]

    assert [each for each in said if not re.search(r"\d", each.split(";")[-1])] == []
