"""The card of any joint: what is set is large, what is wrong is struck out, and all of it is on one sheet."""

import pytest

from casewright.joinery.kinds import kinds
from casewright.measure.lengths import LengthUnit
from casewright.papers.bench import benches
from casewright.papers.joint_settings import setting_text, wrong_text
from casewright.papers.pdf import Paper
from casewright.papers.positions import positions_of
from casewright.papers.settings_card import SettingsCard, settings_card
from casewright.papers.settings_card_pdf import settings_card_data, settings_cards_pdf
from casewright.papers.writing import Writing
from inches import inches_in
from joints import example
from printed import alternatives_of, letters_of, pages_of, tags_of, text_of

KINDS = sorted(kinds())
SHEETS = [(LengthUnit.INCH, Paper.LETTER), (LengthUnit.MILLIMETRE, Paper.A4)]
SERVED = [("divider", ["A-D1", "A-D2"]), ("case side", ["A-CL", "A-CR"])]


def card(kind: str, unit: LengthUnit = LengthUnit.INCH, **more) -> SettingsCard:
    """The card of a family as its examples have it."""
    return settings_card(kind, example(kind).joint, kinds()[kind].title, unit, **more)


@pytest.mark.parametrize(("unit", "paper"), SHEETS)
@pytest.mark.parametrize("kind", KINDS)
def test_what_is_set_is_large_and_every_setting_is_on_the_card(kind, unit, paper):
    joint, writing = example(kind).joint, Writing(unit=unit)
    pdf = settings_cards_pdf([card(kind, unit)], unit, paper)
    letters = letters_of(pdf)
    large = {each.text.lstrip("≈") for each in letters if each.size >= 24}
    every = {each.text.lstrip("≈") for each in letters if each.size >= 13}

    shown = [each for each in joint.settings if each.name in benches()[kind].large]
    assert len(shown) >= 3
    for setting in joint.settings:
        is_large = setting in shown or setting.wrong is not None
        assert setting_text(setting, writing).lstrip("≈") in (large if is_large else every), setting.name
        if setting.wrong is not None:
            assert wrong_text(setting, writing).lstrip("≈") in large


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("kind", KINDS)
def test_a_card_is_one_sheet_printed_on_both_sides_at_most(kind, unit, paper):
    pdf = settings_cards_pdf([card(kind, unit)], unit, paper)
    pages = pages_of(pdf)

    assert len(pages) <= 2
    assert kinds()[kind].title in pages[-1]
    assert len(alternatives_of(pdf)) == tags_of(pdf).count("Figure") >= 1


def test_the_second_gauge_has_the_wrong_value_beside_it_and_says_what_it_would_do():
    said = text_of(settings_cards_pdf([card("half-blind")], LengthUnit.INCH))

    assert "Gauge 2 7/16 in not 1/2" in said
    assert "Struck out is the full thickness. Every socket would be 1/16 in too deep" in said
    assert "11.1 mm · left after the rabbet" in said


def test_the_places_of_tails_fingers_and_pins_are_on_the_card():
    tails = text_of(settings_cards_pdf([card("half-blind")], LengthUnit.INCH))
    assert "Positions from the bottom edge" in tails
    assert "5 6-3/4 171.5 8-9/32 210.3 6-53/64 173.4 8-13/64 208.4" in tails
    assert "Positions from the front edge" in text_of(settings_cards_pdf([card("carcase")], LengthUnit.INCH))

    fingers, pins = (positions_of(example(kind).joint) for kind in ("box", "pinned-rabbet"))
    assert [table.title for table in fingers] == [
        "Fingers of the front, from the bottom edge",
        "Fingers of the side, from the bottom edge",
    ]
    assert fingers[1].rows[0].at_in == (0.5, 1.0)
    assert [row.at_in for row in pins[0].rows] == [(0.5,), (1.75,), (3.0,), (4.25,), (5.5,)]
    assert positions_of(example("housing").joint) == ()


def test_a_joint_of_no_job_has_lines_to_write_its_parts_and_its_hand_on():
    said = text_of(settings_cards_pdf([card("housing")], LengthUnit.INCH))

    assert "Parts" in said
    assert "Left or right" in said


def test_a_joint_of_a_job_names_its_parts_board_by_board():
    held = card("housing", serves=SERVED, unit_code="A", name="A-dividers")
    said = text_of(settings_cards_pdf([held], LengthUnit.INCH))

    assert "divider: A-D1, A-D2 · case side: A-CL, A-CR" in said
    assert "Unit A" in said
    assert "Left or right" not in said


def test_of_very_many_parts_a_card_says_how_many():
    held = card("housing", serves=[("divider", [f"A-D{number}" for number in range(1, 13)])])
    data = settings_card_data(held, Writing())

    assert data["serves"] == [["divider", "A-D1, A-D2, A-D3, A-D4, A-D5, A-D6, A-D7, A-D8 and 4 more"]]


def test_a_check_that_does_not_pass_is_on_the_card():
    stopped = example("half-blind", lap=1 / 16)
    held = settings_card("half-blind", stopped.joint, "Dovetail", LengthUnit.INCH)

    assert "Stop: The lap" in text_of(settings_cards_pdf([held], LengthUnit.INCH))


def test_the_cautions_stand_on_the_card_or_are_left_to_the_set():
    alone, of_a_set = card("housing"), card("housing", with_cautions=False)

    assert "Router or shaper:" in text_of(settings_cards_pdf([alone], LengthUnit.INCH))
    assert "Cautions" not in text_of(settings_cards_pdf([of_a_set], LengthUnit.INCH))


def test_a_size_that_no_rule_shows_is_given_as_fine_in_the_other_unit():
    rows = settings_card_data(card("half-blind"), Writing())["rest"]

    correction = next(row for row in rows if row["label"].startswith("Dividers for each"))
    assert (correction["value"], correction["other"]) == ("0.0031", "0.079")


@pytest.mark.parametrize("kind", KINDS)
def test_a_card_is_kept_and_read_back_the_same(kind):
    held = card(kind)

    assert SettingsCard.model_validate_json(held.model_dump_json()) == held


def test_each_card_of_several_begins_on_a_sheet_of_its_own():
    pages = pages_of(settings_cards_pdf([card("housing"), card("through"), card("box")], LengthUnit.INCH))

    starts = [number for number, page in enumerate(pages) if "Parts" in page]
    assert len(starts) == 3
    assert all(number % 2 == 0 for number in starts)


@pytest.mark.parametrize("kind", KINDS)
def test_a_metric_card_says_millimetres_in_its_words(kind):
    data = settings_card_data(card(kind, LengthUnit.MILLIMETRE), Writing(unit=LengthUnit.MILLIMETRE))

    rows = [row for part in ("large", "rest") for row in data[part]]
    said = [row[key] for row in rows for key in ("label", "value", "note", "wrong")]
    said += [data["wrong_text"], *data["advice"], *(words for warned in data["warned"] for words in warned)]
    assert [found for words in said for found in inches_in(words)] == []
