"""The stability page says what the screen found, names the rule, and shows the working of its figures."""

import json
import re

import pytest

from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from casewright.pieces.built.standing import unit_standing
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from units import chest, dresser_text

DRAWER_BESIDE_A_DOOR = {
    "body": {"width": "32", "depth": "24", "overall_height": "30"},
    "construction": {"kind": "legs", "leg": "2-1/2", "apron": "3/4", "apron_height": "10", "rail": "3/4"},
    "rows": [{}, {"across": [{}, {"holds": "doors"}]}],
    "graduation": {"rule": "equal"},
    "doors": {"hinge_length": "3/4", "make": {"kind": "slab", "held": "ply"}},
    "woods": {"case": "white oak", "drawers": "soft maple", "inside": "poplar"},
    "use": {"travel_share": 0.3},
}

pytestmark = pytest.mark.one_database


@pytest.fixture
def unit(shop):
    """Worked dresser A; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop))}"


@pytest.fixture(scope="module")
def held():
    """What the core says of worked dresser A."""
    return unit_standing(construct(read_unit(dresser_text()), example_shop()))


def test_the_page_names_the_rule_and_says_that_only_the_test_decides(maker, unit):
    text = maker.get(f"{unit}/stability").text

    assert "16 CFR 1261 requires ASTM F2057-23" in text
    assert "Only the test of the standard decides" in text
    assert "A wall restraint to ASTM F3096, always" in text
    assert "ASTM F2057-23, 1.1, required by 16 CFR 1261.2 (published)" in text
    assert "hold the standard (from memory)" in text


def test_the_page_has_every_situation_and_every_part(maker, unit, held):
    page = maker.get(f"{unit}/stability")

    for case in held.cases:
        assert f"{case.holding:,.0f}" in page.text
        assert f"{case.tipping:,.0f}" in page.text
    for part in held.parts:
        assert part.code in page.text
        assert f"{part.weight:.2f}" in page.text
    assert page.html.count('class="drawing"') >= 4  # all open, child level and on carpet, push


def test_the_page_says_what_would_mend_it(maker, unit):
    text = maker.get(f"{unit}/stability").text

    assert "Outstops at 12-5/16 in for every drawer" in text
    assert "An interlock that opens one drawer at a time: the least factor becomes 1.5" in text
    assert "With every other drawer open too, 60 lb on the front of A-R1-1 tips it (factor 0.7" in text
    assert "13-19/64" in text


def test_the_page_has_the_checks_of_strength(maker, unit):
    text = maker.get(f"{unit}/stability").text

    assert "The rail under row 1, its full drawers drawn out, hangs 0.1" in text
    assert "checks of strength pass" in text
    assert "Sides and runners may wear" in text


def test_its_figures_lead_to_their_working(maker, unit):
    page = maker.get(f"{unit}/stability")

    links = sorted({link for link in page.seen.links if "/working?figure=" in link})
    assert len(links) > 60  # holding, tipping and factor of 14 situations, and the weights of the parts
    for link in links[::9]:
        working = maker.get(link)
        assert "Source" in working.text or "Given" in working.text, link


def test_an_interlock_that_is_ticked_in_the_form_changes_the_situations(maker, unit):
    page = maker.get(unit)

    maker.post(unit, **filled(page, unit, {"use.interlock": "one at a time"}))

    text = maker.get(f"{unit}/stability").text
    assert "one open" in text
    assert "the others locked shut" in text
    assert "Every drawer open" not in text


def test_a_piece_that_hangs_is_told_of_its_wall_first_and_how_it_would_stand_is_folded(shop, maker):
    use_figures(shop, EXAMPLE_FIGURES)
    hung = json.dumps(preset("wall-hung-bank").spec_json)
    page = maker.get(f"/units/{new_unit(shop, new_job(shop), hung)}/stability")

    assert page.html.index("At the wall") < page.html.index("How it would stand by itself")
    assert "<details><summary>How it would stand by itself, on a floor</summary>" in page.html
    assert "Above the underside" in page.text
    assert "Above the floor" not in page.text


@pytest.mark.parametrize("start", ["kitchen-bank", "wall-hung-bank"])
def test_of_a_piece_that_is_fixed_nothing_is_asked_and_nothing_need_be_mended(shop, maker, start):
    use_figures(shop, EXAMPLE_FIGURES)
    data = json.dumps(preset(start).spec_json)
    page = maker.get(f"/units/{new_unit(shop, new_job(shop), data)}/stability")

    assert 'class="note stop"' not in page.html
    assert 'class="note caution"' not in page.html
    assert 'class="state stop"' not in page.html.split("Strength and use")[0]
    assert "Fix it before its drawers are loaded" in page.text
    assert "would tip" in page.text
    assert "What would mend it" not in page.text


def test_what_does_not_suffice_stands_apart_from_what_would_mend_it(shop, maker):
    """A drawer beside a door: with an interlock, or without travel, the child on the door still tips it."""
    use_figures(shop, EXAMPLE_FIGURES)
    data = json.dumps(chest(DRAWER_BESIDE_A_DOOR))
    page = maker.get(f"/units/{new_unit(shop, new_job(shop), data)}/stability")
    enough, lacking = page.text.split("Not enough alone")

    assert "A shorter travel of the drawers" in lacking
    assert "An interlock" in lacking
    assert "An interlock" not in enough
    assert "not enough" not in enough.partition("What would mend it")[2]


def test_the_weights_of_case_drawers_and_doors_add_up_to_the_piece(shop, maker):
    use_figures(shop, EXAMPLE_FIGURES)
    data = json.dumps(preset("sideboard").spec_json)
    page = maker.get(f"/units/{new_unit(shop, new_job(shop), data)}/stability").html
    rows = page.partition("Weights</h2>")[2].partition("</table>")[0].split("<tr")[2:]
    words = [re.sub(r"<[^>]+>", " ", f"<tr{row}") for row in rows]
    weights = [float(re.search(r"\d+\.\d\d", row)[0]) for row in words]

    assert sum("door" in row for row in words) == 3
    assert sum(weights[:-1]) == pytest.approx(weights[-1], abs=0.005 * len(weights))
