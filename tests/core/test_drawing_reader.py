"""Drawings read back: what the other tests of drawings look with, and whether it can see."""

import re
from dataclasses import dataclass
from itertools import combinations
from xml.etree import ElementTree

import pytest

from carcases import carcases
from units import changed

SVG = "{http://www.w3.org/2000/svg}"
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
LETTER = 0.5
"""No letter of a size is narrower than this on average: a digit of Helvetica has 0.556 of the size."""


def cases():
    """Cases of one to eight rows and one to four columns, on runners that suit the narrowest of them."""
    narrow = {"frames.runner_width": 1, "frames.centre_runner_width": 2, "frames.back_rail_width": 2}
    return carcases().map(lambda data: changed(data, narrow))


@dataclass(frozen=True)
class Patch:
    """A rectangle with its lower left corner, y up."""

    x: float
    y: float
    width: float
    height: float

    def holds(self, other, spare=1e-4):
        """Whether another lies within it, but for the rounding of coordinates."""
        return (
            self.x - spare <= other.x
            and self.y - spare <= other.y
            and other.x + other.width <= self.x + self.width + spare
            and other.y + other.height <= self.y + self.height + spare
        )

    def meets(self, other):
        """Whether the two share more than an edge."""
        return (
            self.x < other.x + other.width
            and other.x < self.x + self.width
            and self.y < other.y + other.height
            and other.y < self.y + self.height
        )


class Read:
    """A drawing as a test reads it."""

    def __init__(self, svg):
        self.root = ElementTree.fromstring(svg)  # noqa: S314 - our own text, parsed to see that it parses
        left, top, width, height = (float(part) for part in self.root.get("viewBox").split())
        self.page = Patch(left, -top - height, width, height)

    def all(self, tag):
        """Every element of a kind."""
        return list(self.root.iter(f"{SVG}{tag}"))

    @property
    def title(self):
        """What it is called."""
        return self.root.findtext(f"{SVG}title")

    @property
    def description(self):
        """What it says in words."""
        return self.root.findtext(f"{SVG}desc")

    @property
    def words(self):
        """Everything that is lettered."""
        return [text.text for text in self.all("text")]

    @property
    def sizes(self):
        """Everything that is lettered with a number behind it, by its words: number in inches."""
        return [
            (text.text, float(text.get("data-inches")))
            for text in self.all("text")
            if text.get("data-inches")
        ]

    @property
    def rectangles(self):
        """Every rectangle with a code."""
        return {
            rect.get("data-code"): Patch(
                float(rect.get("x")),
                -float(rect.get("y")) - float(rect.get("height")),
                float(rect.get("width")),
                float(rect.get("height")),
            )
            for rect in self.all("rect")
            if rect.get("data-code")
        }

    @property
    def outlines(self):
        """The corners of every polygon with a code, y up."""
        return {
            polygon.get("data-code"): corners(polygon.get("points"))
            for polygon in self.all("polygon")
            if polygon.get("data-code")
        }

    @property
    def points(self):
        """Every point that something is drawn at, y up."""
        lined = [corners(line.get("points")) for tag in ("polygon", "polyline") for line in self.all(tag)]
        paths = [corners(path.get("d").replace("M", " ").replace("L", " ")) for path in self.all("path")]
        boxed = [
            [(float(rect.get("x")), -float(rect.get("y"))), self._far_corner(rect)]
            for rect in self.all("rect")
        ]
        return [point for points in (*lined, *paths, *boxed) for point in points]

    @staticmethod
    def _far_corner(rect):
        x, y, width, height = (float(rect.get(name)) for name in ("x", "y", "width", "height"))
        return x + width, -y - height

    @property
    def lettering(self):
        """The patches that lettering takes up at the least, by its words."""
        usual = float(self.all("g")[-1].get("font-size"))
        return [(text.text, patch_of(text, usual)) for text in self.all("text")]

    @property
    def clashes(self):
        """Pairs of lettering that stand in one another."""
        return [
            (one, other)
            for (one, patch), (other, there) in combinations(self.lettering, 2)
            if patch.meets(there)
        ]


def corners(points):
    """Points as SVG lists them, y up."""
    numbers = [float(number) for number in NUMBER.findall(points)]
    return [(x, -y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]


def patch_of(text, usual):
    """The patch that lettering takes up at the least: the height of a digit, the width of narrow letters."""
    size = float(text.get("font-size", usual))
    long, high = LETTER * size * len(text.text), 0.7 * size
    x, y = float(text.get("x")), -float(text.get("y"))
    before = {"start": 0.0, "middle": long / 2, "end": long}[text.get("text-anchor", "middle")]
    if text.get("transform"):
        return Patch(x - high, y - before, high, long)
    return Patch(x - before, y, long, high)


def drawn(*elements):
    """A drawing of 10 by 10 with some elements in it."""
    return Read(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 -10 10 10">'
        f'<g class="lettering" font-size="1">{"".join(elements)}</g></svg>'
    )


def test_a_size_is_read_with_its_number():
    found = drawn('<text x="1" y="-1" data-inches="7.40625">7-13/32</text>', '<text x="5" y="-5">R1-1</text>')

    assert found.sizes == [("7-13/32", 7.40625)]


def test_height_is_read_upwards():
    found = drawn('<rect data-code="A" x="1" y="-4" width="2" height="3"/>')

    assert found.rectangles == {"A": Patch(1, 1, 2, 3)}


@pytest.mark.parametrize(
    ("second", "clashes"),
    [
        ('<text x="5" y="-5">second</text>', 1),
        ('<text x="5" y="-6">second</text>', 0),
        ('<text x="9" y="-5" font-size="0.5">2</text>', 0),
        ('<text x="5" y="-4" transform="rotate(-90 5 -4)">second</text>', 1),
    ],
)
def test_lettering_that_stands_in_other_lettering_is_seen(second, clashes):
    assert len(drawn('<text x="5" y="-5">first</text>', second).clashes) == clashes


def test_a_point_beside_the_page_is_seen():
    found = drawn('<polyline points="1,-1 11,-2"/>')

    assert [found.page.holds(Patch(*point, 0, 0)) for point in found.points] == [True, False]
