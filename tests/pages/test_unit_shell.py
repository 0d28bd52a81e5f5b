"""What closes a case and what it stands on, in the form: what a file says comes back out of its fields."""

import json

import pytest

from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_unit, write_unit
from casewright.web.units.form import read_values, values_of
from units import chest

pytestmark = pytest.mark.one_database

CHOICES = {
    "bracket feet": {"base": {"kind": "brackets", "width": "5", "forward": "1/2"}},
    "turned feet": {"base": {"kind": "turned", "number": 5, "pad": "1"}},
    "toe base": {"base": {"kind": "toe", "made_of": "solid", "apart": "20"}},
    "no base": {"base": None},
    "plinth set back": {"base": {"setback": "1/2", "corner": "butt"}},
    "panelled back": {"back": {"kind": "panelled", "panelling": {"muntins": 1, "stile": "3"}}},
    "plywood back": {"back": {"kind": "grooved-ply", "groove": "3/16", "ply": {"sheet": "birch plywood"}}},
    "no back": {"back": {"kind": "none"}},
    "clips": {"top": {"fixing": "clips", "slack": "1/4", "spacing": "8"}},
    "top between the sides": {"top": {"fixing": "dovetails"}},
    "no top": {"top": {"fixing": "none"}},
    "cleat and strips": {"cleat": {"room": "behind"}, "site": {"scribe": "1", "recess": "30"}},
}
FILES = {name: chest(changes) for name, changes in CHOICES.items()}
FILES["wall-hung bank"] = preset("wall-hung-bank").spec_json
FILES["built-in bank"] = preset("built-in-bank").spec_json
FILES["crate on a plinth"] = {**preset("wall-hung-bank").spec_json, "base": {"kind": "plinth"}}


@pytest.mark.parametrize("name", FILES)
def test_a_file_comes_back_out_of_the_fields_of_its_form(name):
    text = write_unit(read_unit(json.dumps(FILES[name])))

    read = read_values(values_of(text))

    assert (read.faults, read.spec) == ({}, read_unit(text))


@pytest.mark.parametrize(
    ("typed", "field", "said"),
    [
        ({"top.fixing": "dovetails", "top.overhang_front": "1"}, "top.", "has no overhang"),
        ({"base.kind": "turned", "base.pad": "5"}, "base.", "thicker than its pad"),
        ({"base.kind": "toe", "base.levelling": "3"}, "base.", "make it higher"),
        ({"back.kind": "grooved-ply", "back.ply.nominal": "9"}, "back.ply.", "There is no 9"),
    ],
)
def test_what_contradicts_itself_is_told_beside_its_group_and_kept(typed, field, said):
    values = values_of(write_unit(read_unit(json.dumps(chest())))) | typed

    read = read_values(values)

    ((name, sentence),) = read.faults.items()
    assert name.startswith(field)
    assert said in sentence
    assert read.values.items() >= typed.items()
