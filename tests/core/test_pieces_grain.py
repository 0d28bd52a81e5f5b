"""Parts that match in figure: which, how, from which blank, and what is given up."""

from typing import Any

import pytest

from casewright.measure.findings import Finding, Verdict
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.layout.grain_sets import Way, grain_sets
from casewright.pieces.layout.parts import FaceClass
from casewright.pieces.rules.grain_rules import across_width, along_length
from casewright.pieces.takeoff.sequences import SequenceSet, sequence_words
from casewright.pieces.words.describe import describe
from casewright.wood.thickness import resaw_thickness_needed
from units import built, chest, dresser, estimated


def wished(grain: dict[str, Any]) -> Construction:
    return built(dresser({"grain": grain}))


def blanks(data: dict[str, Any]) -> dict[str, SequenceSet]:
    return {found.name: found for line in estimated(data).order for found in line.sequences}


def of_rule(unit: Construction, rule: str) -> list[Finding]:
    return [finding for finding in unit.findings if finding.rule == rule]


def test_the_worked_dressers_blanks_are_as_printed():
    # Printed for worked dresser A: row 1 39-1/4 long; rows 2 to 5 from one panel 30-1/64 wide and 39 long
    found = blanks(dresser())

    row, panel = found["fronts of row 1"], found["full-width fronts, top to bottom"]
    assert row.length == 39.25
    assert panel.width == pytest.approx(30 + 1 / 64)
    assert panel.length == pytest.approx(38 + 15 / 16)  # printed as 39, to the inch
    assert (row.way, panel.way) == ("along", "across")


def test_blanks_by_their_formulas():
    assert along_length(lengths=2 * 18.5625, parts=2, kerf=0.125, trim=1) == 39.25
    assert across_width(widths=29.140625, parts=4, kerf=0.125, edge=0.25) == 30.015625
    # two parts of 3/4, each with 1/8 to clean up, and a kerf of 1/8
    assert resaw_thickness_needed(0.75) == 1.875


def test_rows_and_columns_come_from_one_panel():
    data = dresser({"grain": {"fronts": "rows and columns"}})
    data["rows"] = [{"columns": 2}, {"columns": 2}, {}]
    found = blanks(data)

    grid = found["fronts of rows 1 to 2"]
    heights = {part.line: part.width for part in built(data).parts if part.line in ("F1", "F2")}
    assert grid.way == "grid"
    assert grid.width == pytest.approx(sum(heights.values()) + 0.125 + 0.5)
    assert grid.length == 39.25
    assert len(grid.parts) == 4


def test_down_the_case_each_column_has_a_panel_of_its_own():
    data = dresser({"grain": {"fronts": "down the case"}})
    data["rows"] = [{"columns": 2}, {"columns": 2}, {}]
    unit = built(data)

    sets = [found for found in grain_sets(unit.spec, unit.face, unit.parts) if found.way is Way.ACROSS]
    assert [[part.code for part in found.parts] for found in sets] == [
        ["A-R1-1-F", "A-R2-1-F"],
        ["A-R1-2-F", "A-R2-2-F"],
    ]


def test_fronts_that_need_not_match_are_bought_as_the_case_is():
    unit = wished({"fronts": "no"})

    assert grain_sets(unit.spec, unit.face, unit.parts) == ()
    assert {part.grain_set for part in unit.parts} == {""}


def doors(wish: str, leaves: int) -> dict[str, Any]:
    data = chest({"grain": {"doors": wish}})
    data["body"] = {"width": "48", "depth": "18", "overall_height": "34"}
    across = [{"holds": "doors", "leaves": leaves}] * 2
    data["rows"] = [{"columns": 2, "height": "6"}, {"across": across}]
    return data


@pytest.mark.parametrize(("wish", "way"), [("book-matched", "book"), ("slip-matched", "slip")])
def test_the_panels_of_two_leaves_are_a_pair_sawn_from_one_board(wish, way):
    found = [each for each in blanks(doors(wish, 2)).values() if each.way == way]

    assert [each.parts for each in found] == [
        ("A-R2-1-D1-P1", "A-R2-1-D2-P1"),
        ("A-R2-2-D1-P1", "A-R2-2-D2-P1"),
    ]
    assert found[0].thickness == 1.375  # 2 × (1/2 + 1/8) + 1/8
    assert "sawn in two" in sequence_words(found[0])


def test_single_doors_of_one_row_are_a_pair_and_a_sequence_takes_them_all():
    pair = [each for each in blanks(doors("book-matched", 1)).values() if each.way == "book"]
    run = [each for each in blanks(doors("in sequence", 2)).values() if "doors" in each.name]

    assert [each.parts for each in pair] == [("A-R2-1-D1-P1", "A-R2-2-D1-P1")]
    assert [len(each.parts) for each in run] == [4]


def test_a_matched_pair_is_bought_once_at_the_class_it_is_sawn_from():
    """Resaw test 2 (t + 1/8) + 1/8: panels of 1/2 take 1-3/8, so 6/4; NHLA board feet on rough sizes."""
    held = estimated(doors("book-matched", 2))
    [line] = [each for each in held.takeoff.lines if each.line[:2] == "DP"]
    assert (line.quantity, line.blanks, line.bought.name) == (4, 2, "6/4")
    assert line.rough == pytest.approx(2 * 1.5 * line.width * line.length / 144)
    [order] = [each for each in held.order if any(found.way == "book" for found in each.sequences)]
    assert order.bought.name == "6/4"
    apart = next(each for each in estimated(doors("no", 2)).takeoff.lines if each.line[:2] == "DP")
    assert (apart.blanks, apart.bought.name) == (4, "4/4")


def test_a_top_of_two_matched_halves_is_one_thick_board_of_half_its_width():
    """3/4 takes 2 (3/4 + 1/8) + 1/8 = 1-7/8, so 8/4; half of the top and 1/4 wide; one glue line."""
    data = chest({"grain": {"top": "book-matched"}, "top.thickness": "3/4"})
    [line] = [each for each in estimated(data).takeoff.lines if each.line == "T1"]
    part = line.of.part
    assert part.thickness == 3 / 4
    assert (line.bought.name, line.boards, line.blanks, line.glue_lines) == ("8/4", 1, 1, 1)
    assert line.width == part.width / 2 + 1 / 4
    assert line.rough == pytest.approx(2 * line.width * line.length / 144)


def test_of_three_doors_two_are_a_pair_and_the_third_is_bought_for_itself():
    data = doors("slip-matched", 1)
    data["rows"][1]["across"] = [{"holds": "doors", "leaves": 1, "width": 14.5}] * 2 + [
        {"holds": "doors", "leaves": 1}
    ]
    data["body"]["width"] = 3 * 14.5 + 4 * 0.75
    lines = [each for each in estimated(data).takeoff.lines if each.line[:2] == "DP"]
    assert sorted((each.quantity, each.blanks, each.bought.name) for each in lines) == [
        (1, 1, "4/4"),
        (2, 1, "6/4"),
    ]


def test_a_match_that_is_given_up_is_named_in_checks_quote_and_order():
    unit = wished({"given_up": [{"name": "Fronts of row 1", "reason": "one was remade"}]})

    [finding] = of_rule(unit, "match given up")
    assert finding.verdict is Verdict.CAUTION
    assert "one was remade" in str(finding.message)
    assert "Not matched, as agreed: Fronts of row 1 (one was remade)." in " ".join(describe(unit))
    names = [found.name for found in grain_sets(unit.spec, unit.face, unit.parts)]
    assert names == ["full-width fronts, top to bottom"]


def test_a_match_that_there_is_not_cannot_be_given_up():
    with pytest.raises(REFUSALS) as refused:
        wished({"given_up": [{"name": "fronts of row 9", "reason": "none"}]})

    assert str(refused.value).startswith("grain.given_up.1.name: nothing called fronts of row 9")
    assert "did you mean fronts of row 1?" in str(refused.value)


def test_a_set_along_a_board_that_is_wider_than_any_is_cautioned():
    unit = built(dresser({"grain": {"fronts": "along each row"}, "rows.0.height": "11"}))

    [along] = of_rule(unit, "matched parts")
    assert along.verdict is Verdict.CAUTION
    assert "glue the blank up" in str(along.remedy)


def test_halves_that_no_board_is_thick_enough_for_are_stopped():
    unit = built(dresser({"grain": {"top": "book-matched"}, "top.thickness": "1-3/4"}))

    top = next(each for each in of_rule(unit, "matched parts") if "top" in str(each.message).split(",")[0])
    assert top.found == 3.875
    assert top.verdict is (Verdict.STOP if top.found > top.needed else Verdict.CAUTION)


def test_a_top_dovetailed_between_the_sides_is_a_top_to_match():
    unit = built(
        chest({"top.fixing": "dovetails", "grain": {"top": "book-matched", "faces": {"top": "B"}}}),
    )

    [found] = [each for each in grain_sets(unit.spec, unit.face, unit.parts) if each.name == "top"]
    assert [(part.code, part.face) for part in found.parts] == [("A-C-T", FaceClass.EDGE)]


def test_the_match_of_a_top_that_there_is_not_is_cautioned():
    unit = built(chest({"top.fixing": "none", "grain": {"top": "book-matched"}}))

    [found] = [each for each in of_rule(unit, "matched parts") if "no top" in str(each.message)]
    assert found.verdict is Verdict.CAUTION


def test_quartersawn_is_held_against_the_wood_that_is_chosen():
    wrong = wished({"quarter": ["drawers"]})
    data = dresser(
        {"grain": {"quarter": ["drawers"]}, "woods.drawers": {"wood": "soft maple", "cut": "quarter"}}
    )
    data["woods"]["bottoms"] = {"wood": "poplar", "cut": "quarter"}

    assert of_rule(wrong, "quartersawn")[0].verdict is Verdict.STOP
    assert of_rule(built(data), "quartersawn")[0].verdict is Verdict.PASS


def test_wishes_of_one_tree_and_no_sap_reach_the_order_and_the_quote():
    data = dresser({"grain": {"one_tree": ["rails"], "no_sap": ["fronts", "top"]}})

    assert blanks(data)["rails, one tree"].way == "one tree"
    said = " ".join(describe(built(data)))
    assert "The rails are from one tree." in said
    assert "The drawer fronts and the top are free of sapwood on the face." in said


def test_the_class_of_a_face_can_be_set_for_a_kind_of_part():
    unit = wished({"faces": {"base": "A", "drawers": "B"}})

    faces = {part.line: part.face for part in unit.parts}
    assert (faces["B1"], faces["S1"], faces["C3"]) == (FaceClass.SHOW, FaceClass.EDGE, FaceClass.EDGE)


def test_a_unit_without_wishes_is_not_looked_through():
    unit = built(dresser())

    assert of_rule(unit, "matched parts") == []
