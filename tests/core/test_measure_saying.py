"""Words with lengths in them: in inches as the core says them, in millimetres as a metric shop reads them."""

import ast
import math
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import casewright
from casewright.joinery.choose import rank
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import Said, in_unit, refusal, say, strung, unit_read, written_in

INCH, MILLIMETRE = LengthUnit.INCH, LengthUnit.MILLIMETRE
ROOMS = ("joinery", "wood", "labour", "stability", "pieces", "pricing")
FOR_CUSTOMERS = "wording.py"
"""It is told the unit, for it writes what a customer reads."""


@pytest.mark.parametrize(
    ("place", "size", "inches", "millimetres"),
    [
        ("{}", 7.40625, "7-13/32 in", "188.1 mm"),
        ("{}", 0.3, "≈19/64 in", "7.6 mm"),
        ("{:16}", 0.625, "5/8 in", "15.9 mm"),
        ("{:.3}", 0.034, "0.034 in", "0.86 mm"),
        ("{:.4 bare}", 1 / 320, "0.0031", "0.079"),
        ("{:bare}", 0.5, "1/2", "12.7"),
        ("{:fraction}", 0.25, "1/4", "6.4 mm"),
        ("{:exact}", -0.4, "-0.4 in", "-10.16 mm"),
        ("{}", math.inf, "inf in", "inf mm"),
        ("{:up}", 0.1, "7/64 in", "2.6 mm"),
        ("{:down}", 0.1, "3/32 in", "2.5 mm"),
        ("{:up 16}", 0.3, "5/16 in", "8.0 mm"),
        ("{:down bare}", 0.1, "3/32", "2.5"),
        ("{:moment}", 1000.0, "1,000 in-lb", "113 N·m"),
        ("{:moment bare}", 1000.0, "1,000", "113"),
        ("{:d} tails", 5, "5 tails", "5 tails"),
        ("1:{:g}", 8.0, "1:8", "1:8"),
        ("{:,.1f} lb", 1234.56, "1,234.6 lb", "1,234.6 lb"),
    ],
)
def test_a_number_is_written_as_its_place_says(place, size, inches, millimetres):
    said = say(place, size)

    assert (said.in_unit(INCH), said.in_unit(MILLIMETRE)) == (inches, millimetres)
    assert str(said) == inches


def test_words_within_words_are_read_in_the_same_unit():
    lap = say("lap {}", 0.25)

    said = say("The {}, {}; {}.", lap, "no rabbet", strung(" or ", (lap, "none")))

    assert said.in_unit(MILLIMETRE) == "The lap 6.4 mm, no rabbet; lap 6.4 mm or none."
    assert (lap + ", " + lap).in_unit(MILLIMETRE) == "lap 6.4 mm, lap 6.4 mm"
    assert ("a " + lap).in_unit(MILLIMETRE) == "a lap 6.4 mm"
    assert strung(", ", ()) == ""
    assert in_unit("as it is", MILLIMETRE) == "as it is"


def test_text_that_somebody_typed_is_no_template():
    assert str(say("{} is {}", "{0.5} }{ {", 0.5)) == "{0.5} }{ { is 1/2 in"


def test_alike_words_are_equal_and_can_be_kept_by():
    assert say("lap {}", 0.25) == say("lap {}", 0.25) != say("lap {}", 0.5)
    assert len({say("lap {}", 0.25), say("lap {}", 0.25)}) == 1


def test_words_are_not_settled_in_inches_by_being_put_into_others():
    with pytest.raises(TypeError, match="put into others by `say`"):
        f"{say('lap {}', 0.25)}"


def test_a_refusal_is_read_in_the_unit_of_the_shop():
    error = ValueError(say("The lap of {} is too thin.", 0.0625))

    assert refusal(error, MILLIMETRE) == "The lap of 1.6 mm is too thin."
    assert str(error) == refusal(error, INCH) == "The lap of 1/16 in is too thin."
    assert refusal(ValueError("No price."), MILLIMETRE) == "No price."
    assert refusal(ValueError(), MILLIMETRE) == ""


@pytest.mark.parametrize(
    ("shop", "piece", "read"),
    [(INCH, INCH, INCH), (INCH, MILLIMETRE, MILLIMETRE), (MILLIMETRE, INCH, MILLIMETRE)],
)
def test_a_metric_shop_reads_every_piece_in_millimetres(shop, piece, read):
    assert unit_read(shop, piece) is read


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        (
            "1/32 in, or 1/64 in for openings up to 12 in wide.",
            "0.8 mm, or 0.4 mm for openings up to 304.8 mm wide.",
        ),
        ("rounded down to 1/64", "rounded down to 0.4 mm"),
        ("R5-1 height 8-15/32", "R5-1 height 215.1 mm"),
        (
            "from 4/4 or 12/4, at 1:8, by 16 CFR 1261, as in 2007",
            "from 4/4 or 12/4, at 1:8, by 16 CFR 1261, as in 2007",
        ),
    ],
)
def test_what_was_written_in_inches_is_read_in_millimetres(text, millimetres):
    assert written_in(text, MILLIMETRE) == millimetres
    assert written_in(text, INCH) == text


def test_a_ranking_formats_no_word(monkeypatch):
    asked: list[str] = []
    monkeypatch.setattr(Said, "in_unit", lambda said, unit: asked.append(said.template) or "")

    rank(8.40625, 0.5, 0.625, 0.125, 0.125, 8.0, 0.03125)

    assert asked == []


def calls(source: Path) -> Iterator[ast.Call]:
    """Every call of a plain function in a module."""
    for node in ast.walk(ast.parse(source.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            yield node


MODULES = [
    path for room in ROOMS for path in sorted(Path(casewright.__file__).parent.joinpath(room).glob("*.py"))
]


@pytest.mark.parametrize("module", MODULES, ids=lambda path: f"{path.parent.name}.{path.stem}")
def test_no_sentence_of_the_core_is_settled_in_inches(module):
    found = [
        ast.unparse(call) for call in calls(module) if call.func.id in {"show", "show_both", "show_feet"}
    ]
    templates = [
        call.args[0].value for call in calls(module) if call.func.id == "say" and is_text(call.args[0])
    ]
    settled = [text for text in templates if re.search(r"\} in\b(?! the)|\d in\b|(?<!:)\b\d+/\d", text)]

    assert settled == []
    assert found == [] or module.name == FOR_CUSTOMERS


def is_text(node: ast.expr) -> bool:
    """Whether an argument is written out."""
    return isinstance(node, ast.Constant) and isinstance(node.value, str)
