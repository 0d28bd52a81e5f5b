"""Every family of joints, as its fields' own examples have it: it closes, is drawn, and has its template."""

import io
import xml.etree.ElementTree as ET

import pytest
from pypdf import PdfReader

from casewright.joinery.kinds import kinds
from casewright.measure.lengths import LengthUnit
from casewright.papers.joint_files import joint_files
from closing import faults
from joints import example

KINDS = sorted(kinds())


@pytest.mark.parametrize("kind", KINDS)
def test_a_family_closes_as_its_examples_have_it(kind):
    assert faults(example(kind).joint.shape) == []


@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("kind", KINDS)
def test_a_family_is_drawn_and_marked_in_both_units(kind, unit):
    solved = example(kind)

    files = joint_files(kinds()[kind], solved, unit)

    drawn = ET.fromstring(files[f"{kind}.svg"])  # noqa: S314 - our own
    assert drawn.find("{http://www.w3.org/2000/svg}desc").text
    if solved.joint.shape.strips:
        pages = PdfReader(io.BytesIO(files[f"{kind}-template.pdf"])).pages
        text = " ".join(page.extract_text() for page in pages)
        assert "measure both bars" in " ".join(text.split())


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_measured_on_a_drawing_lies_on_the_joint(kind):
    shape = example(kind).joint.shape

    for cut in shape.cuts:
        outlines = [outline for board in shape.boards for outline in board.section(cut.axis, cut.at)]
        assert outlines, cut.title
        xs = [x for outline in outlines for x, _ in outline]
        ys = [y for outline in outlines for _, y in outline]
        for each in cut.dimensions:
            low, high = (min(xs), max(xs)) if each.level else (min(ys), max(ys))
            assert low - 1e-9 <= each.start < each.end <= high + 1e-9, (cut.title, each.name)
