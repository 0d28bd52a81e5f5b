"""Measured sizes as they are typed, one a line: which are of an opening, and which of a part."""

import pytest

from casewright.web.units.lines import measured_lines, measured_of


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("R5-1 height 8-15/32", "openings"),
        ("R2-1-3-1 width 14-7/8", "openings"),
        ("R2-1-2-2-1-1 depth 17", "openings"),
        ("R5-x height 8", "openings"),  # a slip: the core says which openings there are
        ("R5-1-SL thickness 31/64", "parts"),
        ("R2-1-3-1-SL thickness 31/64", "parts"),
        ("R1-U1 width 3", "parts"),
        ("C-SL thickness 3/4", "parts"),
        ("T width 20", "parts"),
    ],
)
def test_a_line_is_of_an_opening_or_of_a_part(line, kind):
    code, name, size = line.split(None, 2)

    assert measured_of(line) == {"measured": {kind: {code: {name: size}}}}
    assert measured_lines(measured_of(line)) == line
