"""The editor of a case: sides, corners, dividers are chosen, kept, drawn, and refused beside their field."""

import json

import pytest

from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from units import chest

pytestmark = pytest.mark.one_database


@pytest.fixture
def unit(shop):
    """A plain chest of a shop with figures of its own; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop), json.dumps(chest()))}"


def case_of(maker, unit):
    return json.loads(maker.get(f"{unit}/unit-file.json").html).get("case")


def post(maker, unit, typed, status=200):
    return maker.post(unit, status=status, **filled(maker.get(unit), unit, typed))


def test_framed_sides_are_chosen_with_their_widths_and_kept(maker, unit):
    saved = post(maker, unit, {"case.sides": "framed", "case.panelling.stile": "3-1/4"})

    assert "Saved." in saved.text
    assert case_of(maker, unit) == {"sides": "framed", "panelling": {"stile": "3-1/4"}}
    form = saved.form(unit)
    assert form.value("case.sides") == "framed"
    assert form.value("case.panelling.stile") == "3-1/4"
    assert "Side panel" in maker.get(f"{unit}/cut-list").text


def test_what_counts_for_other_sides_is_not_written_down(maker, unit):
    post(maker, unit, {"case.sides": "framed", "case.panelling.stile": "3-1/4"})
    saved = post(maker, unit, {"case.sides": "plywood", "case.ply.lipping": "3/8"})

    assert "Saved." in saved.text
    assert case_of(maker, unit) == {"sides": "plywood", "ply": {"lipping": "3/8"}}


def test_a_corner_that_plywood_cannot_have_is_refused_beside_its_field(maker, unit):
    saved = post(maker, unit, {"case.sides": "plywood", "case.corner": "half-blind"}, status=422)

    assert "Plywood sides take no half-blind corners" in saved.text
    assert saved.form(unit).value("case.corner") == "half-blind"
    assert case_of(maker, unit) is None


def test_a_dust_frame_and_its_corners_reach_the_joints_and_the_drawings(maker, unit):
    saved = post(
        maker, unit, {"case.corner": "dowels", "case.divider_kind": "dust-frame", "case.dust.groove": "5/16"}
    )

    assert "Saved." in saved.text
    assert case_of(maker, unit) == {
        "corner": "dowels",
        "divider_kind": "dust-frame",
        "dust": {"groove": "5/16"},
    }
    assert "Sub-top rails between the sides, dowels" in maker.get(f"{unit}/joints/case").text
