"""Layouts as DXF: read back by ezdxf's own reader and audit, in millimetres, the same each time."""

import io
import logging

import ezdxf
import pytest

from casewright.joinery.kinds import solve
from casewright.joinery.solid import Stroke
from casewright.papers.dxf import LAYERS, dxf_of
from casewright.papers.full_size import NamedStrip

JOINT = solve("half-blind", {"height": 8 + 13 / 32, "front": 13 / 16, "side": 1 / 2}).joint
STRIPS = [
    NamedStrip(strip=strip, title="Half-blind dovetail", serves="A-R5-1-SL") for strip in JOINT.shape.strips
]


@pytest.fixture(scope="module")
def document():
    logging.getLogger("ezdxf").setLevel(logging.ERROR)
    return ezdxf.read(io.StringIO(dxf_of(STRIPS).decode()))


def test_the_file_has_no_fault_and_is_in_millimetres(document):
    assert document.audit().errors == []
    assert document.units == 4
    assert document.header["$INSUNITS"] == 4
    assert set(LAYERS) <= {layer.dxf.name for layer in document.layers}


def test_every_line_is_where_it_is_on_the_wood(document):
    side = STRIPS[0].strip

    drawn = [line for line in document.modelspace().query("LINE") if line.dxf.end.x < side.length * 25.4 + 1]

    saw = sorted((line.dxf.start.y, line.dxf.end.y) for line in drawn if line.dxf.layer == "SAW")
    asked = sorted(
        (line.start[1] * 25.4, line.end[1] * 25.4) for line in side.lines if line.stroke is Stroke.SAW
    )
    assert saw == [pytest.approx(each, abs=1e-6) for each in asked]
    assert [line.dxf.start.x for line in drawn if line.dxf.layer == "GAUGE"] == [
        pytest.approx(JOINT.gauge_1 * 25.4)
    ]


def test_the_same_layout_gives_the_same_bytes():
    assert dxf_of(STRIPS) == dxf_of(STRIPS)


def test_what_was_typed_breaks_no_line():
    odd = [NamedStrip(strip=STRIPS[0].strip, title="Chest\n0\nEOF", serves="A‑1 ünd 木")]

    read = ezdxf.read(io.StringIO(dxf_of(odd).decode()))

    assert read.audit().errors == []
    assert "Chest 0 EOF" in [text.dxf.text for text in read.modelspace().query("TEXT")]
