"""What a sheet was measured to be beats the table: case, back, dust panels and bottoms follow."""

import pytest

from units import built, chest

MM = 1 / 25.4


def made(**changes):
    return built(chest({name.replace("__", "."): value for name, value in changes.items()}))


def near(size):
    return round(float(size), 4)


def thick(unit, *marks):
    return {near(part.thickness) for part in unit.parts if part.line in marks}


def test_a_case_of_plywood_is_as_thick_as_its_sheet_was_measured():
    unit = made(case__sides="plywood", case__ply={"measures": "17.6 mm"})
    t = near(17.6 * MM)

    assert thick(unit, "C1", "C6", "C11") == {t}
    # Geometry: top and bottom W - 2 t.
    assert {near(part.length) for part in unit.parts if part.line in ("C6", "C11")} == {
        near(24 - 2 * 17.6 * MM)
    }
    assert unit.face.clear_width == pytest.approx(24 - 2 * 17.6 * MM)


def test_a_plywood_back_takes_as_much_of_the_depth_as_it_measures():
    table, own = (made(back={"kind": "rabbeted-ply", "ply": choice}) for choice in ({}, {"measures": "1/4"}))

    assert thick(own, "P2") == {1 / 4}
    assert own.face.opening_depth == 16 - 1 / 4
    assert table.face.opening_depth > own.face.opening_depth


def test_the_groove_for_a_bottom_is_as_wide_as_its_sheet_was_measured():
    unit = made(drawers__bottom={"kind": "ply", "nominal": "1/2", "measures": "11.8 mm"})

    assert thick(unit, "N#") == {near(11.8 * MM)}
    assert unit.spec.drawers.groove.width == pytest.approx(11.8 * MM)


def test_a_dust_panel_that_was_measured_is_that_thick():
    assert thick(made(case__divider_kind="dust-frame", case__dust={"measures": "1/4"}), "D3") == {1 / 4}


def test_a_thicker_sheet_weighs_more():
    thin, heavy = (
        made(drawers__bottom={"kind": "ply", "nominal": "1/2", "measures": size})
        for size in ("11 mm", "12 mm")
    )

    assert heavy.masses.total > thin.masses.total


def test_the_sheet_of_a_toe_base_can_be_typed_as_it_was_measured():
    drawn = built(chest({"base": {"kind": "toe"}}))
    made = built(chest({"base": {"kind": "toe", "measures": "0.7"}}))

    def boards(unit):
        return {part.thickness for part in unit.case.parts if part.sheet and "-B" in part.code}

    assert 0.7 not in boards(drawn)
    assert 0.7 in boards(made)
