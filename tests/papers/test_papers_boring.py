"""Boring templates: every hole where the front is bored, from its end and its bottom edge, in full size."""

from io import BytesIO

import pytest
from pypdf import PdfReader

from casewright.measure.lengths import LengthUnit
from casewright.papers.boring import boring_files, boring_templates
from casewright.papers.notching import notch_strips
from casewright.papers.run_words import run_facts
from casewright.papers.unit_report import openings_section
from casewright.papers.writing import Writing
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct
from units import built, chest


def unit(**pulls):
    """The dresser, with pulls of its own."""
    asked = preset("dresser").spec_json
    asked["pulls"] = pulls
    return construct(read_as(UnitSpec, asked), example_shop())


def middle(outline):
    """The middle of a round hole."""
    across, up = zip(*outline, strict=True)
    return (min(across) + max(across)) / 2, (min(up) + max(up)) / 2


def test_each_different_front_has_its_own_template():
    templates = boring_templates(unit())

    assert [each.serves for each in templates] == [
        "A-R1-1-F, A-R1-2-F",
        *(f"A-R{row}-1-F" for row in range(2, 6)),
    ]


@pytest.mark.parametrize("pulls", [{}, {"holes": "two", "centres": "96 mm", "height": "upper third"}])
def test_every_hole_is_where_its_front_is_bored(pulls):
    made = unit(**pulls)

    for template in boring_templates(made):
        drawer = next(each for each in made.drawers if f"{each.code}-F" in template.serves.split(", "))
        holes = [middle(outline) for outline in template.strip.waste]
        first = drawer.boring.holes[: len(holes)]
        assert [number for hole in holes for number in hole] == pytest.approx(
            [number for hole in first for number in hole]
        )
        assert (template.strip.length, template.strip.height) == (drawer.sizes.width, drawer.sizes.height)


def test_the_two_pulls_of_a_wide_front_share_a_strip_that_is_turned_over():
    wide = boring_templates(unit())[1]

    assert wide.strip.is_handed
    assert len(wide.strip.waste) == 1


def test_a_hole_is_as_wide_as_its_screw():
    template = boring_templates(unit(screw="1/4"))[0]

    across = [along for along, _ in template.strip.waste[0]]
    assert max(across) - min(across) == pytest.approx(1 / 4)


def test_the_file_names_the_fronts_and_asks_to_be_printed_as_it_is():
    held = boring_files(unit(), LengthUnit.INCH)

    [(name, pdf)] = held.items()
    said = "\n".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages)
    assert name == "A-pulls-template.pdf"
    assert "A-R5-1-F" in said
    assert "4 in" in said
    assert "100 mm" in said
    assert b"PrintScaling/None" in pdf


def test_a_report_says_where_the_pulls_are_on_a_front_wider_than_its_box():
    # 30 in over the case with 1/16 in left at each edge: 29-7/8 in of front; the pulls at the quarters of an
    # opening of 30 - 1-1/2 = 28-1/2 in: 3/4 + 7-1/8 - 1/16 = 7-13/16 in from its left end
    made = built(chest({"body.width": "30", "drawers.style": {"kind": "full overlay"}}))

    lines = openings_section(made, Writing()).splitlines()
    drawer = next(line for line in lines if line.startswith("A-R1-1 "))
    assert drawer.endswith("7-13/16, 22-1/16")
    assert made.drawers[0].boring.lines == (7.8125, 22.0625)


UNDER = {
    "drawers.style": {"kind": "full overlay"},
    "drawers.running": {"kind": "slides", "slide": "under-mount, full travel"},
    "drawers.bottom": {"kind": "ply", "nominal": "1/4"},
    "drawers.front_joint": {"kind": "lock rabbet"},
    "drawers.groove": {"height": "1/2"},
}
"""Drawers on under-mount slides; their bottoms lie 1/2 in above the sides' lower edges."""
MM = 1 / 25.4


def notched(**more):
    made = built(chest({**UNDER, **more}))
    return made, [each for each, _ in notch_strips(made)]


def test_a_back_in_a_groove_has_a_template_for_its_notches_and_hook_holes():
    made, [strip, *_] = notched(**{"drawers.back_joint": {"kind": "as the front"}})
    sizes = made.drawers[0].sizes

    inset = (sizes.back_length - sizes.inside.width) / 2
    notch, hole = strip.waste
    assert notch[0] == pytest.approx((inset, 0))
    assert notch[2] == pytest.approx((inset + 35 * MM, 13 * MM - sizes.back_foot))
    assert middle(hole) == pytest.approx((inset + 7 * MM, 0.5 + 11 * MM - sizes.back_foot))
    assert strip.is_handed, "it is turned over for the right end"


def test_each_different_back_is_served_once():
    made, _ = notched(**{"drawers.back_joint": {"kind": "as the front"}})

    served = [code for _, codes in notch_strips(made) for code in codes]
    assert sorted(served) == sorted(f"{drawer.code}-B" for drawer in made.drawers)


def test_a_back_over_its_bottom_needs_no_notch_and_says_so():
    made, strips = notched(**{"drawers.bottom": {"kind": "solid"}})
    facts = {fact.label: str(fact.value) for fact in run_facts(made.drawers[0])}

    assert made.drawers[0].sizes.back_foot > 13 * MM
    assert facts["Rear notches"] == "none"
    assert all(len(strip.waste) <= 1 for strip in strips)


def test_the_notches_come_in_a_file_of_their_own():
    made, _ = notched(**{"drawers.back_joint": {"kind": "as the front"}})

    files = boring_files(made, LengthUnit.INCH)

    text = "".join(page.extract_text() for page in PdfReader(BytesIO(files["A-slides-template.pdf"])).pages)
    assert "A-R1-1-B" in text
    assert "Slides, notches of the back" in text
