"""Boring templates: every hole where the front is bored, from its end and its bottom edge, in full size."""

from io import BytesIO, StringIO
from xml.etree import ElementTree

import ezdxf
import pytest
from pypdf import PdfReader

from casewright.measure.lengths import LengthUnit
from casewright.papers.boring import boring_files, boring_templates
from casewright.papers.notching import cut_out_strips, notch_strips
from casewright.papers.run_words import run_facts
from casewright.papers.unit_report import openings_section
from casewright.papers.writing import Writing
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct
from notched import kitchen
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

    assert sorted(held) == [f"A-pulls-template.{kind}" for kind in ("dxf", "pdf", "svg")]
    pdf = held["A-pulls-template.pdf"]
    said = "\n".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages)
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


def svg_of(files, name):
    """Outlines of the first strip, by their use: corners in millimetres to the right and down."""
    root = ElementTree.fromstring(files[name])  # noqa: S314 - our own text
    space = "{http://www.w3.org/2000/svg}"
    assert root.get("width") == f"{root.get('viewBox').split()[2]}mm", "a unit of it is a millimetre"
    found = {}
    for group in root.iter(f"{space}g"):
        shapes = [shape.get("points") for shape in group.iter() if shape.get("points")]
        corners = [[tuple(map(float, pair.split(","))) for pair in points.split()] for points in shapes]
        found.setdefault(group.get("class"), corners)
    return found


def test_a_template_as_svg_has_every_hole_in_full_size():
    made = unit()
    boring = made.drawers[0].boring
    held = svg_of(boring_files(made, LengthUnit.INCH), "A-pulls-template.svg")

    [left, foot] = held["edge"][0][0]
    across, down = zip(*held["waste"][0], strict=True)
    hole = (min(across) + max(across)) / 2 - left, foot - (min(down) + max(down)) / 2
    assert hole == pytest.approx([size * 25.4 for size in boring.holes[0]], abs=1e-3)
    assert max(across) - min(across) == pytest.approx(boring.screw * 25.4, abs=1e-3)


def test_a_bottom_around_pipes_has_a_template_of_its_cut_out():
    made = built(kitchen())
    drawer = next(each for each in made.drawers if each.sizes.notch)
    cut = drawer.bottom.cut_out

    [(strip, codes)] = cut_out_strips(made)
    assert codes == (f"{drawer.code}-N",)
    assert strip.waste == (
        (
            (cut.along, 0.0),
            (cut.along + cut.length, 0.0),
            (cut.along + cut.length, cut.depth),
            (cut.along, cut.depth),
        ),
    )
    assert (strip.foot, strip.left, strip.is_handed) == ("rear edge", "left end", False)


def test_the_cut_out_is_in_the_files_as_pdf_dxf_and_svg():
    made = built(kitchen())
    files = boring_files(made, LengthUnit.INCH)
    cut = next(each.bottom.cut_out for each in made.drawers if each.sizes.notch)

    wanted = sorted(size * 25.4 for size in (cut.length, cut.depth))
    document = ezdxf.read(StringIO(files["A-notch-template.dxf"].decode()))
    [waste] = document.modelspace().query('LWPOLYLINE[layer=="WASTE"]')
    across, up = zip(*[(x, y) for x, y, *_ in waste.get_points()], strict=True)
    assert sorted((max(across) - min(across), max(up) - min(up))) == pytest.approx(wanted)
    [outline] = svg_of(files, "A-notch-template.svg")["waste"]
    across, down = zip(*outline, strict=True)
    assert sorted((max(across) - min(across), max(down) - min(down))) == pytest.approx(wanted, abs=1e-3)
    text = "".join(page.extract_text() for page in PdfReader(BytesIO(files["A-notch-template.pdf"])).pages)
    assert "rear edge" in text
    assert not [name for name in boring_files(unit(), LengthUnit.INCH) if "notch" in name]
