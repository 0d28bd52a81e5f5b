"""The gap above a drawer as a line over the year: it stands where the figures say, and says them in words."""

from dataclasses import replace
from xml.etree import ElementTree

import pytest

from casewright.drawing.year import STEP, TALLEST, ratio_for, year_line
from casewright.measure.lengths import LengthUnit
from casewright.pieces.built.season import unit_year
from casewright.pieces.layout.year import Through
from casewright.wood.year import MONTHS, Month
from units import built, dresser

SVG = "{http://www.w3.org/2000/svg}"


def held(**season):
    """Worked dresser A through the year."""
    return unit_year(built(dresser({f"season.{name}": value for name, value in season.items()})))


def drawn(found, number=0, unit=LengthUnit.INCH):
    """One of its lines, and what is in it."""
    ratio = ratio_for(found.drawers)
    drawing = year_line(found.drawers[number], found.year, unit, ratio)
    return drawing, ElementTree.fromstring(drawing.svg()), ratio  # noqa: S314 - our own


def lines(tree, kind):
    """The points of every line of one kind."""
    return [
        [tuple(map(float, point.split(","))) for point in line.get("points").split()]
        for group in tree.iter(f"{SVG}g")
        if group.get("class") == kind
        for line in group.iter(f"{SVG}polyline")
    ]


def words(tree):
    """Everything that is lettered."""
    return [each.text for each in tree.iter(f"{SVG}text")]


@pytest.mark.parametrize("number", range(5))
def test_the_line_stands_as_high_as_the_gap_times_its_ratio(number):
    found = held()
    _, tree, ratio = drawn(found, number)

    [front] = lines(tree, "cut")
    [side] = lines(tree, "hidden")
    each = found.drawers[number]
    # coordinates are written to a hundred-thousandth
    assert front == [
        (pytest.approx(at * STEP, abs=1e-5), pytest.approx(-gap * ratio, abs=1e-5))
        for at, gap in enumerate(each.front.months)
    ]
    assert [y for _, y in side] == pytest.approx([-gap * ratio for gap in each.side.months], abs=1e-5)


def test_one_ratio_serves_every_drawer_of_a_unit_and_none_is_too_tall():
    found = held()
    ratio = ratio_for(found.drawers)

    assert ratio == int(ratio)
    assert max(each.greatest[1] for each in found.drawers) * ratio <= TALLEST
    assert f"{ratio:g} times its size" in drawn(found)[0].description


def test_the_words_have_every_month_and_the_limit():
    found = held(fitted="October")
    drawing, _, _ = drawn(found, 4)
    each = found.drawers[4]

    for month in MONTHS:
        front, side = each.front.months[month.place], each.side.months[month.place]
        assert f"{month.value}: front {front:.3f}, sides {side:.3f}" in drawing.description
    assert "1/32 is wanted when it is wettest" in drawing.description
    assert "Fitted in October with 3/32 above" in drawing.description
    assert drawing.title == "Gap above A-R5-1 over the year"


def test_the_month_of_fitting_is_marked_at_the_gap_that_is_left_then():
    found = held(fitted="October")
    _, tree, ratio = drawn(found, 4)

    [dot] = tree.iter(f"{SVG}circle")
    assert float(dot.get("cx")) == pytest.approx(Month.OCTOBER.place * STEP, abs=1e-5)
    assert float(dot.get("cy")) == pytest.approx(-3 / 32 * ratio, abs=1e-5)
    assert "fitted, 3/32" in words(tree)
    assert list(drawn(held())[1].iter(f"{SVG}circle")) == []


def test_least_and_greatest_are_lettered_and_the_months_named():
    found = held()
    _, tree, _ = drawn(found, 4)

    lettered = words(tree)
    assert "0.033" in lettered
    assert f"{found.drawers[4].greatest[1]:.3f}" in lettered
    assert [word for word in lettered if len(word) == 1 and word.isalpha()] == list("JFMAMJJASOND")


def test_a_metric_shop_reads_millimetres():
    drawing, tree, _ = drawn(held(), 4, LengthUnit.MILLIMETRE)

    assert "0.84" in words(tree)  # 0.033 in
    assert "front 0.84" not in drawing.description  # the front keeps more than the sides
    assert "sides 0.84" in drawing.description


def test_where_front_and_sides_move_alike_there_is_one_line():
    found = unit_year(built(dresser({"woods.drawers": "cherry"})))
    drawing, tree, _ = drawn(found)

    assert lines(tree, "hidden") == []
    assert "sides" not in drawing.description


def test_a_drawer_that_binds_reaches_below_its_opening():
    found = held()
    each = found.drawers[4]
    lower = Through(
        now=each.front.now,
        driest=each.front.driest,
        wettest=each.front.wettest,
        months=tuple(gap - 0.06 for gap in each.front.months),
    )
    binding = replace(each, front=lower, side=lower)
    drawing = year_line(binding, found.year, LengthUnit.INCH, ratio_for((binding,)))

    tree = ElementTree.fromstring(drawing.svg())  # noqa: S314 - our own
    [tone] = [group for group in tree.iter(f"{SVG}g") if group.get("class") == "tone"]
    [rect] = tone.iter(f"{SVG}rect")
    assert float(rect.get("y")) == 0
    assert float(rect.get("height")) == pytest.approx(-binding.least[1] * ratio_for((binding,)), abs=1e-5)
    assert "binds" in words(tree)


def test_nothing_is_lettered_over_another():
    for month in MONTHS:
        found = held(fitted=month.value)
        for number in range(5):
            _, tree, _ = drawn(found, number)
            boxes = [box(each) for each in tree.iter(f"{SVG}text")]
            over = [
                (one[0], other[0])
                for at, one in enumerate(boxes)
                for other in boxes[at + 1 :]
                if one[1] < other[3] and other[1] < one[3] and one[2] < other[4] and other[2] < one[4]
            ]
            assert over == [], (month, number)


def box(text):
    """The words, and the patch that they take up, reckoned with 0.55 of its height for a sign."""
    height = float(text.get("font-size") or 1 / 6)
    wide = 0.55 * height * len(text.text)
    x, y = float(text.get("x")), float(text.get("y"))
    left = x - {"start": 0.0, None: wide / 2, "end": wide}[text.get("text-anchor")]
    return text.text, left, y - 0.75 * height, left + wide, y
