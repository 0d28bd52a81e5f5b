"""Cases of plywood: what comes from the sheet is as thick as the sheet, and a loose top is screwed on."""

import pytest

from casewright.labour.drivers import Driver
from casewright.measure.findings import Verdict
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.takeoff.drivers import count_drivers
from casewright.pieces.takeoff.rough import take_off
from casewright.wood.sheets import sheet
from units import built, chest

PLY = sheet("hardwood plywood", "3/4")


def made(**changes):
    """A chest 24 wide and 16 deep, of three rows, with some of its case changed."""
    return built(chest({name.replace("__", "."): value for name, value in changes.items()}))


def line(unit, mark):
    return [part for part in unit.parts if part.line == mark]


def said(unit, rule):
    return [found for found in unit.findings if found.rule == rule]


def test_the_top_of_a_plywood_case_is_of_its_sheet_whatever_was_typed_for_rails_that_it_has_not():
    """The sheet measures 23/32: 18 of openings and frames, and top and bottom of the sheet, 19-7/16 high."""
    plain = made(case__sides="plywood")
    typed = made(case__sides="plywood", case__sub_top_rail="1")
    top, lipping = line(typed, "C11")[0], line(typed, "E2")[0]

    assert (top.thickness, lipping.thickness) == (PLY.thickness, PLY.thickness)
    assert typed.face.body_height == plain.face.body_height == 18 + 2 * 0.75 + 2 * 23 / 32
    assert top.box.z == line(plain, "C11")[0].box.z
    assert typed.masses.total == plain.masses.total
    assert "does not count" in str(typed.ledger["case.sub_top_rail"].basis)


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        ({"case__bottom": "1"}, "case.bottom"),
        ({"case__side": "1/2"}, "case.side"),
        ({"case__divider_kind": "solid", "case__divider": "1/2"}, "case.divider"),
        ({"case__upright": "1", "rows": [{"columns": 2}, {}]}, "case.upright"),
    ],
)
def test_a_board_that_no_such_sheet_gives_is_stopped(asked, field):
    unit = made(case__sides="plywood", **asked)

    [finding] = said(unit, "boards of the sheet")
    assert finding.verdict is Verdict.STOP
    assert field in str(finding.remedy)


def test_boards_measured_on_the_sheet_pass():
    [finding] = said(
        made(case__sides="plywood", case__side="11/16", case__bottom="45/64"), "boards of the sheet"
    )

    assert finding.verdict is Verdict.PASS
    assert said(made(), "boards of the sheet") == []


def test_a_top_over_a_plywood_case_is_screwed_on_through_it():
    """No rails, so nothing to hook buttons into: 22-9/16 clear, screws 10 apart and two rows of them."""
    unit = made(case__sides="plywood")
    [finding] = said(unit, "top fixing")
    [screws] = [item for item in unit.hardware if item.item == "top screw"]
    hours = count_drivers(unit, take_off(unit, example_shop()))

    assert [each.name for each in unit.small_parts if "button" in each.name] == []
    assert (screws.quantity, screws.note) == (
        8,
        "up through the case top: round holes in front, slots at the rear",
    )
    assert finding.verdict is Verdict.PASS
    assert "screws up through the case top, in slots" in str(finding.message)
    assert (hours.get(Driver.SLOTTED_TOPS), hours.get(Driver.TOPS)) == (1, None)


@pytest.mark.parametrize("fixing", ["buttons", "clips"])
def test_what_holds_a_top_by_rails_is_stopped_where_there_are_none(fixing):
    [finding] = said(made(case__sides="plywood", top__fixing=fixing), "top fixing")

    assert finding.verdict is Verdict.STOP
    assert "no rails" in str(finding.message)
    assert "slots" in str(finding.remedy)


def test_the_top_of_a_case_with_rails_is_held_by_buttons_as_ever():
    unit = made()

    assert "Top button" in [each.name for each in unit.small_parts]
    assert [each.verdict for each in said(unit, "top fixing")] == [Verdict.PASS]
