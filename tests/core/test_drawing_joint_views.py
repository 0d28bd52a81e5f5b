"""Any joint drawn from its shape: nothing drawn twice, nothing lettered over, the same figures in words."""

from test_drawing_reader import Read

from casewright.drawing.joint_views import shape_drawing
from casewright.drawing.outlines import outside_edges
from casewright.joinery.kinds import solve
from casewright.joinery.solid import box
from casewright.measure.lengths import LengthUnit

JOINT = solve("box", {"height": 4.0, "side": 0.5}).joint


def test_pieces_that_touch_are_outlined_together():
    edges = list(outside_edges([box((0, 1), (0, 1)), box((1, 2), (0, 1))]))

    long = sum(abs(x1 - x0) + abs(y1 - y0) for (x0, y0), (x1, y1) in edges)
    assert long == 6.0


def test_the_drawing_says_in_words_what_it_letters():
    drawing = shape_drawing(JOINT.shape, "Box joint")

    assert "height 4; " in drawing.description
    assert "finger 1/2" in drawing.description
    assert "plan, through a finger of the side" in drawing.description


def test_a_metric_shop_reads_millimetres():
    drawing = shape_drawing(JOINT.shape, "Box joint", LengthUnit.MILLIMETRE)

    assert "height 101.6" in drawing.description
    assert ">finger 12.7<" in drawing.body


def test_the_joint_is_shown_cut_open_put_together_and_apart():
    drawing = shape_drawing(JOINT.shape, "Box joint")

    for words in ("plan, through a finger of the side", "side, cut along its middle", "put together"):
        assert f">{words}<" in drawing.body
    assert 'class="hatch"' in drawing.body


def test_a_wide_joint_is_drawn_small_enough_for_the_paper():
    wide = solve("box", {"height": 24.0, "side": 0.75, "finger": 0.75}).joint

    drawing = shape_drawing(wide.shape, "Box joint of a chest")

    assert drawing.height / drawing.scale < 11


def places(joint):
    """How high what is lettered stands, by its words."""
    found = Read(shape_drawing(joint.shape, "Joint").svg())
    return {words: patch.y for words, patch in found.lettering}


def test_flat_work_has_its_pictorial_views_below_the_others():
    groove = solve("bottom-groove", {"width": 37.9375, "length": 18.75, "side": 0.5, "front": 0.8125}).joint
    found = places(groove)

    seen = found.pop("put together"), found.pop("drawn apart")
    assert max(seen) < min(found.values())


def test_tall_work_has_its_pictorial_views_beside_the_others():
    found = places(JOINT)

    assert found["put together"] > found["drawn apart"] > found["side, cut along its middle"]
