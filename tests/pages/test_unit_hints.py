"""The hint below a label says nothing that the label has said, and speaks as a form does."""

import pytest

from casewright.web.units.fields import schema_field
from casewright.web.units.form import asked_fields
from casewright.web.units.hints import brief_hint
from casewright.web.units.rows import shape_of


@pytest.mark.parametrize(
    ("label", "hint", "said"),
    [
        ("Groove depth", "Depth of the groove.", ""),
        ("Panel's groove, deep", "Depth of the grooves for the panel.", ""),
        ("Stands free, not fixed to the building", "Does it stand free, not fixed to the building?", ""),
        ("Leg", "Thickness of a leg, square at the aprons.", "Thickness, square at the aprons."),
        ("Back", "Thickness of a back; left out, as the side.", "Thickness. Left empty: as the side."),
        ("Slip height", "Height of a slip. Left out: 1/8 in above it.", "Left empty: 1/8 in above it."),
        ("Knob", "The knob, by its name in the price list.", "By its name in the price list."),
        ("Cleat, height", "Height of each cleat at its long face.", "Height of each cleat at its long face."),
        (
            "Housing depth",
            "Depth of the housing, or of the dovetail.",
            "Depth of the housing, or of the dovetail.",
        ),
        ("Corner pin", "Pin of the dovetailed corners (common practice).", "Pin of the dovetailed corners."),
        ("Height", "Height of the base.", ""),
        ("Thickness", "Thickness of a leaf, usually 3/4 to 7/8 in.", "Usually 3/4 to 7/8 in."),
        (
            "Thickness",
            "Thickness of the boards, or of the frame.",
            "Thickness of the boards, or of the frame.",
        ),
        ("Name", "", ""),
    ],
)
def test_what_the_label_says_is_not_said_again(label, hint, said):
    assert brief_hint(label, hint) == said


@pytest.mark.parametrize(
    ("words", "said_of"),
    [
        ("null", "doors.make.muntins"),
        ("eft out", "drawers.back"),
        ("`", "drawers.stops.travel"),
        ("(common practice)", "case.corner_pin"),
    ],
)
def test_no_hint_of_the_form_speaks_as_the_schema_of_a_file_does(words, said_of):
    shape = shape_of({"rows.1.across.1.rows.1.height": ""})

    assert words in (schema_field(said_of).description or "")
    assert [each.hint for each in asked_fields(shape) if words in each.hint] == []
