"""Drawings as files and inside pages: well-formed, named, to scale, and harmless whatever was typed."""

import re
from functools import cache
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_drawing_reader import SVG, Patch, Read

from casewright.drawing.drawings import unit_drawings
from casewright.drawing.elevation import elevation
from casewright.drawing.page import PAPER, fitted
from casewright.drawing.section import section
from casewright.drawing.tail_joints import half_blind_drawing
from casewright.measure.lengths import LengthUnit
from units import built, chest, dresser

HOSTILE = "<script>alert('1')</script> & \"x\" ]]> &amp; \u202e\x07\x00\ud800 😀"


@cache
def dresser_files():
    """Every drawing of worked dresser A."""
    return unit_drawings(built(dresser()))


def every_kind():
    """Elevation, section and joint of worked dresser A."""
    unit = built(dresser())
    return [elevation(unit), section(unit), half_blind_drawing(unit.drawers[0].joints.front)]


def tall_lettering(sheet):
    """A square foot beside lettering that is taller than the paper."""
    sheet.rectangle("object", (0, 0), 12, 12)
    for line in range(80):
        sheet.letter((0, line * sheet.letters), "a height")


def length(text):
    """A length in inches, as SVG writes it."""
    return float(text.removesuffix("in"))


def test_a_unit_has_its_four_views_and_every_joint_once():
    joints = [f"joint-R{row}-{end}.svg" for end in ("front", "back") for row in (1, 2, 3, 4, 5)]

    case = ["rails", "bottom", "dividers", "uprights-R1", "runners-1", "runners-2", "kickers-1", "kickers-2"]
    others = [f"joint-{name}.svg" for name in (*case, "back", "bottom-R1-1", "bottom-R2-1")]
    views = [f"{view}.svg" for view in ("elevation", "section", "plan", "opened")]
    assert list(dresser_files()) == [*views, *joints, *others]


def test_rows_with_the_same_joint_share_a_drawing():
    files = unit_drawings(built(chest({"graduation": {"rule": "equal"}})))

    dovetails = [name for name in files if name.startswith("joint-R")]
    assert dovetails == ["joint-R1-front.svg", "joint-R1-back.svg"]
    title = Read(files["joint-R1-front.svg"]).title
    assert "A-R1-1, A-R2-1, A-R3-1" in title


def test_a_drawer_that_measured_otherwise_has_a_joint_of_its_own():
    data = chest({"rows": [{"columns": 2}, {}], "measured.parts": {"R1-2-F": {"thickness": "13/16"}}})
    files = unit_drawings(built(data))

    assert {"joint-R1-front.svg", "joint-R1-2-front.svg", "joint-R1-back.svg"} <= set(files)
    assert "A-R1-2" in Read(files["joint-R1-2-front.svg"]).title
    assert "joint-R1-2-back.svg" not in files


@pytest.mark.parametrize("name", dresser_files())
def test_a_file_stands_alone(name):
    text = dresser_files()[name]

    assert text.startswith('<?xml version="1.0" encoding="UTF-8"?>\n<svg ')
    root = ElementTree.fromstring(text.encode())  # noqa: S314 - our own text, parsed to see that it parses
    ground = root.find(f"{SVG}rect")
    left, top, width, height = root.get("viewBox").split()
    assert [ground.get(name) for name in ("x", "y", "width", "height")] == [left, top, width, height]
    assert (ground.get("fill"), root.get("color")) == ("#ffffff", "#1a1a1a")


@pytest.mark.parametrize("drawing", every_kind())
def test_a_drawing_in_a_page_takes_the_colour_of_the_text(drawing):
    inline = drawing.svg()

    assert inline.startswith("<svg ")
    assert set(re.findall(r'(?:fill|stroke)="([^"]*)"', inline)) <= {"none", "currentColor"}
    assert " color=" not in inline
    assert "#" not in inline


@pytest.mark.parametrize("text", [*dresser_files().values(), *(drawing.svg() for drawing in every_kind())])
def test_a_drawing_has_nothing_that_a_strict_page_would_block(text):
    root = Read(text).root
    attributes = {name for element in root.iter() for name in element.attrib}
    tags = {element.tag.removeprefix(SVG) for element in root.iter()}

    assert tags <= {"svg", "title", "desc", "g", "rect", "polygon", "polyline", "path", "circle", "text"}
    assert not {name for name in attributes if name == "style" or name.startswith("on") or "href" in name}


@pytest.mark.parametrize("text", dresser_files().values())
def test_a_drawing_has_a_text_alternative(text):
    found = Read(text)
    title, desc = found.root.find(f"{SVG}title"), found.root.find(f"{SVG}desc")

    assert found.root.get("role") == "img"
    assert found.root.get("aria-labelledby") == f"{title.get('id')} {desc.get('id')}"
    assert found.title
    assert len(found.description) > 100


def test_two_drawings_can_stand_on_one_page():
    drawing = every_kind()[0]
    ids = [re.findall(r' id="([^"]*)"', drawing.svg(prefix=prefix)) for prefix in ("", "before", "after")]

    assert len({name for group in ids for name in group}) == 6


def test_a_prefix_is_made_fit_for_an_id():
    ids = re.findall(r' id="([^"]*)"', every_kind()[0].svg(prefix='a b"><c'))

    assert ids == ["a-b-c-A-elevation-title", "a-b-c-A-elevation-desc"]


@pytest.mark.parametrize("text", dresser_files().values())
def test_a_drawing_is_to_scale_both_ways(text):
    found = Read(text)
    scale = float(found.root.get("data-scale"))

    # Written to a hundred-thousandth of an inch of paper.
    assert length(found.root.get("width")) == pytest.approx(found.page.width / scale, abs=1e-5)
    assert length(found.root.get("height")) == pytest.approx(found.page.height / scale, abs=1e-5)


@pytest.mark.parametrize("text", dresser_files().values())
def test_the_drawings_of_the_worked_dresser_fit_the_paper(text):
    root = Read(text).root

    assert length(root.get("width")) <= PAPER[0]
    assert length(root.get("height")) <= PAPER[1]


@pytest.mark.parametrize("text", dresser_files().values())
def test_lettering_can_be_read_on_a_telephone(text):
    found = Read(text)
    size = float(found.all("g")[-1].get("font-size"))

    # On a drawing 360 px wide the lettering is 8 px high at the least.
    assert size / found.page.width * 360 >= 8


def test_the_scale_is_a_usual_one():
    assert "scale 1:10, inches" in Read(dresser_files()["elevation.svg"]).words[-2]


def test_small_work_is_drawn_larger_than_it_is():
    drawing = fitted(
        lambda sheet: sheet.rectangle("object", (0, 0), 1, 0.5),
        LengthUnit.INCH,
        name="small",
        title="Small",
        subject="Work",
        work=(1, 0.5),
    )

    assert drawing.scale == 1 / 4
    assert "scale 4:1" in drawing.description


def test_work_larger_than_any_usual_scale_is_still_drawn():
    drawing = fitted(
        lambda sheet: sheet.rectangle("object", (0, 0), 1000, 10),
        LengthUnit.INCH,
        name="large",
        title="Large",
        subject="Work",
        work=(1000, 10),
    )

    assert drawing.scale == 192
    assert drawing.width / drawing.scale <= PAPER[0]


def test_work_that_never_fits_is_drawn_nearly_as_small_as_it_gets():
    drawing = fitted(
        tall_lettering, LengthUnit.INCH, name="tall", title="Tall", subject="Work", work=(12, 12)
    )

    # No larger than a full page would have it, no smaller than 3 in on paper.
    assert 3 <= 12 / drawing.scale <= 7


@pytest.mark.parametrize("name", [HOSTILE, "x" * 120, "很长的名字" * 24, "ß ½ ″ Ø", "\u200f\u202e"])
@pytest.mark.parametrize("draw", [elevation, section])
def test_whatever_a_unit_is_called_it_can_be_drawn(draw, name):
    unit = built(chest({"name": name.replace("\ud800", "")}))
    found = Read(draw(unit).svg(standalone=True).encode())

    assert all(found.page.holds(patch) for _, patch in found.lettering)
    assert not {sign for words in found.words for sign in words or "" if sign < " " or sign in "\u202e\u200f"}
    assert "script" not in {element.tag.removeprefix(SVG) for element in found.root.iter()}


def test_whatever_a_drawer_is_called_its_joint_can_be_drawn():
    joint = built(dresser()).drawers[0].joints.front
    found = Read(half_blind_drawing(joint, (HOSTILE,), name=HOSTILE).svg(prefix=HOSTILE))

    assert "<script>" in found.title
    assert "\x07" not in found.title


@given(st.text(max_size=60))
def test_any_words_can_be_lettered(words):
    drawing = fitted(
        lambda sheet: sheet.letter((0, 0), words, inches=1.0),
        LengthUnit.MILLIMETRE,
        name="words",
        title=words,
        subject="Words",
        work=(1, 1),
    )
    found = Read(drawing.svg(standalone=True).encode())

    assert all(found.page.holds(Patch(*point, 0, 0)) for point in found.points)


def test_a_drawing_is_small_enough_to_be_sent_often():
    # Bytes; a page that recomputes as somebody types sends it each time.
    assert len(elevation(built(dresser())).svg()) < 15_000


def test_a_metric_shop_gets_scales_of_a_metric_rule():
    joint = built(dresser()).drawers[-1].joints.front

    drawing = half_blind_drawing(joint, unit=LengthUnit.MILLIMETRE)

    # The side of 8-13/32 in does not fit at full size; 1:2 is the next scale on the rule.
    assert "scale 1:2, millimetres" in drawing.description
