"""The caution sheet: what the screen found, what the customer is told, what is fixed, who carries it."""

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.papers.caution_sheet import CautionSheetPaper, caution_sheet_paper, told
from casewright.papers.caution_sheet_pdf import caution_sheet_data, caution_sheet_pdf, loose_caution_sheet
from casewright.papers.pdf import Paper
from casewright.papers.says import WHOLE, says_of
from casewright.papers.unit_files import unit_files
from casewright.pieces.asked.presets import preset
from casewright.records.papers import PaperKind
from printed import METRIC, head, pages_of, tags_of, text_of
from units import built, chest, dresser

SIDEBOARD = {
    "body": {"width": "60", "depth": "18", "overall_height": "36"},
    "rows": [{"columns": 3, "height": "5"}, {"holds": "doors", "columns": 2}],
    "use": {"free_standing": False},
}


def sheet(*data, **changes):
    """The caution sheet of units with such files; of worked dresser A where none is given."""
    return caution_sheet_paper(head(**changes), [built(each) for each in data or (dresser(),)])


@pytest.mark.parametrize(
    "said",
    [
        "Furniture can tip over and kill a child. Fix the wall restraint.",
        "16 CFR 1261 requires ASTM F2057-23",
        "Only the test of the standard decides",
        "take its exact words, its symbol and its place from the standard",
        "One wall restraint to ASTM F3096 goes with every piece",
        "screwed to a stud",
        "No child climbs or hangs on drawers, doors or shelves.",
        "The heaviest things lie in the lowest drawers.",
        "An interlock is never defeated",
        "a children's product",
        "less than wanted",
        "Outstops at 12-5/16 in",
        "Greatest safe travel of all drawers together, full: 13-19/64 in.",
        "161 lb 4 people",
    ],
)
def test_the_sheet_of_worked_dresser_a_says(said):
    assert said in text_of(caution_sheet_pdf(sheet()))


def test_the_moments_of_worked_dresser_a_stand_on_it_case_by_case():
    said = text_of(caution_sheet_pdf(sheet()))

    # worked dresser A: 948 against 619 all open, 1,410 to 824 with a child on row 5, 948 to 771 pushed
    for row in ("948 619 1.52 holds", "1,410 824 1.71 holds", "948 771 1.22 less than wanted"):
        assert row in said


@pytest.mark.parametrize("paper", Paper)
def test_it_is_a_tagged_pdf_on_either_sheet(paper):
    pdf = caution_sheet_pdf(sheet(), paper)

    assert {"H1", "H2", "Table", "TH"} <= set(tags_of(pdf))
    assert len(pages_of(pdf)) == 2


def test_a_built_in_is_told_to_be_outside_and_what_its_wall_fixings_carry():
    said = text_of(caution_sheet_pdf(sheet(chest(SIDEBOARD))))

    assert "Outside 16 CFR 1261, which adopts ASTM F2057-23, because it is fixed to the building" in said
    assert "The floor carries it; the fixings" in said
    assert "never into plasterboard alone" in said
    assert "on the free edge of A-R2-1-D1" in said
    assert "a children's product" not in said


def test_it_is_written_in_the_shops_unit():
    said = text_of(caution_sheet_pdf(sheet(**METRIC)))

    assert "Holds, N·m" in said
    assert "1127.1 mm" in said  # 44-3/8 in
    assert "12-1/2 in" not in said


def test_a_unit_without_a_job_has_a_sheet_of_its_own():
    said = text_of(loose_caution_sheet(built(dresser()), LengthUnit.INCH))

    assert "Worked dresser A" in said
    assert "draft" not in said.lower()


def test_the_files_of_a_unit_hold_its_sheet_beside_its_templates():
    held = unit_files(built(dresser()), LengthUnit.MILLIMETRE)

    pulls = {f"A-pulls-template.{kind}" for kind in ("pdf", "dxf", "svg")}
    assert set(held) == {"A-caution-sheet.pdf", *pulls}
    assert "317.5 mm" in text_of(held["A-caution-sheet.pdf"])  # 12-1/2 in


def test_what_is_kept_prints_the_same():
    made = sheet()

    kept = CautionSheetPaper.model_validate(made.model_dump(mode="json"))

    assert caution_sheet_data(kept) == caution_sheet_data(made)


def test_a_change_that_moves_a_moment_makes_it_say_something_else():
    before, after = (
        says_of(PaperKind.CAUTION_SHEET, sheet(dresser(changes)).model_dump(mode="json"))[WHOLE]
        for changes in ({}, {"pulls.weight_lb": 0.6})
    )

    assert before != after


def test_a_sentence_that_is_put_better_makes_no_sheet_wrong():
    held = sheet().model_dump(mode="json")
    better = {**held, "screen": "Another sentence.", "units": [{**held["units"][0], "scope": "Another."}]}

    assert says_of(PaperKind.CAUTION_SHEET, held) == says_of(PaperKind.CAUTION_SHEET, better)


def test_every_thing_told_names_its_source():
    held = told()

    rows = [*held["label"], *held["restraint"], held["certificate"]]
    assert [bool(row["text"] and row["source"]) for row in rows] == [True] * len(rows)


@pytest.mark.parametrize(
    ("nominal", "labelled"), [({"kind": "ply", "hold": "four grooves"}, True), ({"kind": "solid"}, False)]
)
def test_a_large_face_of_composite_wood_is_told_with_its_label(nominal, labelled):
    made = sheet(chest({"drawers.bottom": nominal}))
    said = text_of(caution_sheet_pdf(made))

    assert bool(made.units[0].composite) is labelled
    assert ("a face of composite wood is over 144 sq in" in said) is labelled
    assert ("40 CFR 770 (TSCA title VI)" in said) is labelled


def test_a_piece_on_the_wall_is_told_of_the_wall_before_how_it_would_stand_by_itself():
    said = text_of(caution_sheet_pdf(sheet(preset("wall-hung-bank").spec_json)))

    assert said.index("At the wall") < said.index("If nothing held it") < said.index("would tip")
    assert "Fix it before its drawers are loaded" in said
    assert "What would mend it" not in said
    assert "If nothing held it" not in text_of(caution_sheet_pdf(sheet()))


def test_a_piece_that_would_tip_is_said_to_tip_whether_or_not_the_rule_covers_it():
    """24 wide, 12 deep: a child on a drawer has it over, though its room is below the rule's 3.2 cu ft."""
    made = sheet(chest({"body": {"width": "24", "depth": "12", "overall_height": "30"}}))
    rows = caution_sheet_data(made)["units"][0]["cases"]

    assert not made.units[0].covered
    assert {row["verdict"] for row in rows if float(row["factor"]) < 1} == {"tips"}
    assert {row["state"] for row in rows if float(row["factor"]) < 1} == {"caution"}
