"""A shop that works in millimetres reads no inches: in no check, note, choice, joint, report or paper."""

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from casewright.joinery.joint import Joint
from casewright.joinery.kinds import kinds, solve
from casewright.measure.lengths import LengthUnit, parse_length
from casewright.measure.printing import Style, show_number
from casewright.measure.saying import in_unit, refusal
from casewright.measure.working import explain
from casewright.papers.cut_list_pdf import cut_list_data, cut_list_pdf
from casewright.papers.estimate_report import estimate_report, unit_report
from casewright.papers.joint_cards_pdf import joint_cards_data, joint_cards_pdf
from casewright.papers.joint_report import joint_report
from casewright.papers.why import why
from casewright.papers.writing import Writing
from casewright.pieces.asked.reading import CannotRead, read_unit, write_unit
from casewright.pieces.built.joints import other_joints
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.built.standing import unit_standing
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.costs.job_estimate import estimate_job
from inches import inches_beside_words, inches_in
from printed import METRIC, cards, cuts, text_of
from units import TODAY, built, chest, dresser, estimated, example_shop, unit

MM = LengthUnit.MILLIMETRE
WRITING = Writing(unit=MM)
OTHER = {"other", "other_unit", "drawing", "walk_drawing"}
"""What gives inches beside millimetres, in a column of its own."""
SIZES = re.compile(r"[≈\d/.×\- ]+( in)?")
"""A cell of such a column: nothing but sizes."""

CHANGES: tuple[dict[str, Any], ...] = (
    {"frames.slack": "1/64", "back.gap": "1/64", "drawers.clearances.back": "1/16"},
    {"back.gap": "5/16", "drawers.groove.depth": "3/8"},
    {"drawers.groove.height": "3/16", "drawers.bottom": {"kind": "ply"}, "drawers.groove.width": "1/4"},
    {"drawers.lap": "1/16", "drawers.rabbet": "3/16", "drawers.front": "1/2"},
    {"rows.0.front_tails": 8, "rows.1.front_tails": 1, "drawers.front_joint.half_pin": "1/32"},
    {"drawers.front_joint.pin": "1/32", "drawers.front_joint.slope": 4},
    {"drawers.groove.height": "1"},
    {"body.width": "60", "use.travel_share": 1, "use.clothing": True},
    {"case.divider_end": "sliding dovetail", "case.side": "1/2"},
    {"site": {"door_width": "20", "door_height": "60", "turn_width": "24"}},
    {"measured.parts": {"R1-1-SL": {"thickness": "1/2"}, "R1-1-SR": {"in_rabbet": "27/64"}}},
    {
        "drawers.bottom": {"kind": "ply"},
        "drawers.groove.width": "1/4",
        "body.width": "40",
        "rows": [{"notch": {"width": "20", "depth": "5", "pipes": "19-1/2", "reach": "5"}}, {}, {}],
    },
)
"""Chests whose checks caution and stop, so that every remedy is read."""


def metric(data: Mapping[str, Any]) -> dict[str, Any]:
    """The same unit in a file that is written in millimetres."""
    spec = unit(data).model_copy(update={"unit": MM})
    return dict(json.loads(write_unit(spec)))


@cache
def metric_dresser() -> Estimate:
    """Worked dresser A in millimetres."""
    return estimated(metric(dresser()))


def of_joint(joint: Joint) -> Iterator[str]:
    """All that a joint says."""
    for setting in joint.settings:
        yield f"{in_unit(setting.label, MM)}: {in_unit(setting.note, MM)}"
    yield in_unit(getattr(joint, "wrong_gauge_text", ""), MM)
    yield from (in_unit(words, MM) for words in getattr(joint, "advice", ()))
    yield from of_findings(joint)


def of_findings(checked: Any) -> Iterator[str]:
    for finding in checked.findings:
        read = finding.in_unit(MM)
        yield f"{read.message} {read.remedy} {read.source}"


def sentences(held: Estimate) -> Iterator[str]:
    """All that the core says of a unit."""
    made = held.unit
    yield from of_findings(held)
    yield from (f"{in_unit(each.why, MM)} {each.source}" for each in made.chosen)
    yield from (f"{in_unit(each.size, MM)} {in_unit(each.note, MM)}" for each in made.small_parts)
    yield from (in_unit(end, MM) for line in made.lines for end in line.part.ends)
    for drawer in made.drawers:
        joints = drawer.joints
        yield from of_joint(joints.front)
        yield from of_joint(joints.back)
        choices = (*joints.front_choices, *joints.back_choices)
        yield from (in_unit(reason, MM) for choice in choices for reason in choice.reasons)
    for placed in other_joints(made):
        yield placed.title
        yield from (in_unit(line, MM) for line in placed.advice)
        yield from of_joint(placed.joint)
    yield from (in_unit(working.basis, MM) for working in held.ledger)
    yield from (in_unit(line.grade.message, MM) for line in held.takeoff.lines)


def text_in(data: Any) -> Iterator[str]:
    """Every text of a paper but what gives the other unit."""
    match data:
        case str():
            yield "" if SIZES.fullmatch(data) else data
        case Mapping():
            for name, value in data.items():
                yield from text_in(value) if name not in OTHER else ()
        case list() | tuple():
            for value in data:
                yield from text_in(value)


def without_other_column(report: str) -> str:
    """A report without its cut list, which gives inches in a column of their own."""
    return "\n\n".join(block for block in report.split("\n\n") if "the same in inches" not in block)


def test_all_that_is_said_of_dresser_a_is_in_millimetres():
    said = list(sentences(metric_dresser()))

    assert [found for words in said for found in inches_in(words)] == []
    assert sum(" mm" in words for words in said) > 200


@pytest.mark.parametrize("changes", CHANGES, ids=lambda changes: next(iter(changes)))
def test_checks_that_fail_say_what_to_change_in_millimetres(changes):
    said = list(sentences(estimated(metric(chest(changes)))))

    assert [found for words in said for found in inches_in(words)] == []


@pytest.mark.parametrize("checks", [True, False])
def test_reports_are_in_millimetres(checks):
    held = metric_dresser()
    whole = estimate_report(held, WRITING, checks=checks, shop_name="Marrow Street")
    half = unit_report(held.unit, WRITING, checks=checks)

    assert inches_in(without_other_column(whole)) == []
    assert inches_in(without_other_column(half)) == []


def test_the_working_of_every_figure_is_in_millimetres():
    made = metric_dresser().unit
    shown = "\n".join(why(made, name, WRITING) for name in ("R5-1", "gauge_1", "S5", "N1"))

    assert inches_in(shown) == []


def test_the_cut_list_and_the_cards_say_millimetres_in_their_words():
    job = estimate_job((unit(metric(dresser())),), example_shop(), TODAY)
    listed, carded = cuts(job, **METRIC), cards(job, **METRIC)

    assert [found for words in text_in(cut_list_data(listed)) for found in inches_in(words)] == []
    assert [found for words in text_in(joint_cards_data(carded)) for found in inches_in(words)] == []
    assert inches_beside_words(text_of(cut_list_pdf(listed))) == []
    assert inches_beside_words(text_of(joint_cards_pdf(carded))) == []


@pytest.mark.parametrize("kind", sorted(kinds()))
def test_a_joint_by_itself_is_told_in_millimetres(kind):
    asked = {
        field.name: float(parse_length(field.example)) for field in kinds()[kind].fields if field.required
    }
    solved = solve(kind, asked)

    report = joint_report(kinds()[kind], solved, WRITING, checks=True)

    assert inches_in(report) == []
    assert list(of_joint(replace(solved).joint))


@pytest.mark.parametrize(
    "changes",
    [
        {"drawers.lap": "3/4"},
        {"drawers.rabbet": "1/2"},
        {"rows": [{"height": "1"}, {}]},
        {"body.width": "3"},
        {"drawers.clearances.side": "11"},
        {"rows.0.back_tails": 30},
        {"drawers.front_joint.half_pin": "4"},
        {"drawers.front_joint.half_pin": "3/2", "rows.0.front_tails": 9},
        {"drawers.muntin": {"use": "always", "width": "23"}},
        {"measured.parts": {"C-SL": {"thickness": "30"}}},
        {"rows": [{"height": "10"}, {"height": "12"}, {}]},
    ],
    ids=lambda changes: next(iter(changes)),
)
def test_what_cannot_be_built_is_refused_in_millimetres(changes):
    with pytest.raises(REFUSALS) as refused:
        built(metric(chest(changes)))

    assert inches_in(refusal(refused.value, MM)) == []


def test_a_file_in_millimetres_is_refused_with_limits_and_examples_in_millimetres():
    text = json.dumps(chest({"unit": "mm", "body": {"width": 99999, "depth": -3, "overall_height": True}}))

    with pytest.raises(CannotRead) as refused:
        read_unit(text)

    assert [str(problem) for problem in refused.value.problems] == [
        'body.width: 99999 is too large: at most 30480; for example "1003.3"',
        'body.depth: -3 is too small: more than 0; for example "501.7"',
        'body.overall_height: a size is text such as "397" or a number',
    ]


SHEETED = {
    "case.sides": "plywood",
    "drawers.bottom": {"kind": "ply"},
    "rows.1.across": [{}, {"holds": "open"}],
}


@pytest.mark.parametrize(
    "changes",
    [SHEETED, {"case.corner": "dowels"}, {"case.corner": "loose-tenons"}],
    ids=["ply", "dowels", "tenons"],
)
def test_every_figure_of_a_piece_in_millimetres_is_explained_without_inches(changes):
    """A sheet is called by what it is sold as, 3/4 in; in a sentence of a metric shop that is 19.1 mm."""
    made = unit_standing(built(metric(chest(changes)))).unit
    style = Style(length=MM)
    told = [explain(made.ledger, each.figure, style) for each in made.ledger]

    said = [
        text
        for each in told
        for text in (
            each.value,
            each.basis,
            each.source,
            each.what,
            each.rule,
            *(put.value for put in each.inputs),
        )
    ]
    assert [found for text in said for found in inches_in(text)] == []


def test_a_moment_is_explained_in_newton_metres():
    made = unit_standing(built(metric(chest()))).unit
    case = made.stand.cases[0]
    name = "stand.tip.all open.holding"

    # 1 in-lb is 0.113 N·m
    assert explain(made.ledger, name, Style(length=MM)).value == f"{show_number(case.holding * 0.112985)} N·m"
    assert explain(made.ledger, name, Style()).value == f"{show_number(case.holding)} in-lb"
