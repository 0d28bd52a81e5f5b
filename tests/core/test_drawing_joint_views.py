"""Any joint drawn from its shape: nothing drawn twice, nothing lettered over, the same figures in words."""

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
