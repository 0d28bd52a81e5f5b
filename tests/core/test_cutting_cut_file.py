"""A cut file is read as it is written, and whatever cannot be used is named by its field."""

import copy
import json

import jsonschema
import pytest

from casewright.cutting.asked.cut_file import CUT_FILE, cut_file_of, cut_file_schema
from casewright.measure.json_files import CannotRead, parse_json
from cutfiles import random_file

PLAIN = {
    "cut_file": 1,
    "parts": [
        {"code": "F", "wood": "cherry", "class": "4/4", "length": "38-7/8", "width": "7-1/4", "count": 2},
        {"code": "G", "wood": "cherry", "class": "4/4", "length": "30", "width": "4"},
        {"code": "P", "wood": "ply", "length": "20", "width": "10"},
        {"code": "E", "wood": "edging", "length": "20"},
    ],
    "boards": [
        {"code": "B1", "wood": "Cherry", "class": "4/4", "length": "8 ft", "width": "9"},
        {"code": "B2", "wood": "cherry", "class": "5/4", "length": "96", "width": "9"},
    ],
    "sheets": [{"code": "S1", "wood": "ply", "length": "2440 mm", "width": "1220 mm"}],
    "lengths": [{"code": "L1", "wood": "edging", "length": "96", "count": 2}],
}


def changed(path, value):
    """The plain file with one field of it changed, or taken away."""
    data = copy.deepcopy(PLAIN)
    here = data
    for step in path[:-1]:
        here = here[step]
    if value is None:
        del here[path[-1]]
    else:
        here[path[-1]] = value
    return data


def refused(data):
    with pytest.raises(CannotRead) as error:
        cut_file_of(data)
    return str(error.value)


def test_sizes_are_read_as_makers_write_them():
    file = cut_file_of(parse_json(json.dumps(PLAIN), CUT_FILE))

    assert file.parts[0].length == 38.875
    assert file.boards[0].length == 96
    assert file.sheets[0].length == pytest.approx(2440 / 25.4, abs=1e-12)


def test_bare_numbers_are_in_the_unit_of_the_file():
    file = cut_file_of({**changed(("parts", 2, "length"), 508), "unit": "mm"})

    assert file.parts[2].length == 20


def test_allowances_of_the_trade_stand_where_none_is_given():
    """Kerf 1/8, 1 in off each end, 1/4 off each edge: common practice."""
    saw = cut_file_of(PLAIN).saw

    assert (saw.kerf, saw.end_trim, saw.edge) == (0.125, 1, 0.25)


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        (("parts", 0, "length"), "38-7/0", "parts[1].length: “38-7/0” is not a size"),
        (("parts", 0, "length"), "0", 'parts[1].length: "0" is too small: more than 0'),
        (
            ("parts", 0, "class"),
            "4/5",
            'parts[1].class: "4/5" is not of the form that it has; for example "4/4"',
        ),
        (("parts", 0, "clas"), "4/4", "parts[1].clas: this key is not known; did you mean class?"),
        (("parts", 0, "count"), 0, "parts[1].count: 0 is too small: at least 1"),
        (("parts", 1, "code"), "F", "parts: the code F stands there 2 times"),
        (("sheets", 0, "code"), "B1", "stock: the code B1 stands there 2 times"),
        (("parts", 0, "width"), None, "parts[1].width: this is missing; only stock sold by length has none"),
        (("parts", 0, "count"), 4999, "these are 5,002 parts, and a file holds at most 5,000"),
        (("parts", 0, "resaw"), True, "parts[1].thickness: a part that may be sawn two from one board needs"),
        (("cut_file",), 2, "cut_file: this file is of version 2; this program reads version 1"),
        (
            ("parts", 0, "glue_up"),
            {"narrowest": "6", "widest": "3"},
            "parts[1].glue_up.widest: the widest strip is narrower than the narrowest",
        ),
        (
            ("parts", 0, "placed"),
            [{"on": "B9", "from_end": "1", "from_edge": "1"}],
            "parts[1].placed[1].on: no board or sheet has the code B9",
        ),
        (
            ("parts", 0, "placed"),
            [{"on": "S1", "from_end": "1", "from_edge": "1"}],
            "parts[1].placed[1].on: S1 is ply, and the part is cherry",
        ),
        (
            ("parts", 0, "placed"),
            [{"on": "B2", "from_end": "1", "from_edge": "1"}],
            "parts[1].placed[1].on: B2 is 5/4, and the part is 4/4",
        ),
        (
            ("parts", 0, "placed"),
            [{"on": "B1", "from_end": "1", "from_edge": "1", "number": 2}],
            "parts[1].placed[1].on: number 2 of B1 is meant, and there are 1",
        ),
        (
            ("sets",),
            [{"name": "s", "way": "along", "rows": [["F", "X"]]}],
            "sets[1].rows: no part has the code X",
        ),
        (
            ("sets",),
            [{"name": "s", "way": "along", "rows": [["F", "F", "F"]]}],
            "sets: F is in them 3 times, and there are 2 of it",
        ),
        (
            ("sets",),
            [{"name": "s", "way": "along", "rows": [["F"], ["G"]]}],
            "sets[1].rows: a set cut along is one row",
        ),
        (
            ("sets",),
            [{"name": "s", "way": "along", "rows": [["F", "P"]]}],
            "sets[1].rows: parts of several woods or classes cannot match",
        ),
        (
            ("sets",),
            [{"name": "s", "way": "book", "rows": [["F", "F"]]}],
            "sets[1].rows: parts that are sawn from one thickness need their finished thickness",
        ),
        (
            ("boards", 0, "defects"),
            [{"from_end": "97", "from_edge": "1", "length": "1", "width": "1"}],
            "boards[1]: defects[1] lies beyond the board B1",
        ),
        (("boards", 0, "cost"), "cheap", "boards[1].cost: an amount is written like 9.50"),
    ],
)
def test_what_cannot_be_used_is_named_by_its_field(path, value, words):
    assert refused(changed(path, value)).startswith(words)


def test_a_file_without_stock_is_refused():
    assert refused({"cut_file": 1, "parts": PLAIN["parts"]}).startswith("there is nothing to cut from")


def test_a_file_that_is_not_json_is_told_how_one_begins():
    with pytest.raises(CannotRead, match="a cut file looks like"):
        parse_json("{", CUT_FILE)


@pytest.mark.parametrize("seed", range(20))
def test_a_file_that_reads_keeps_to_the_schema(seed):
    file = random_file(seed)

    jsonschema.validate(file, cut_file_schema())
    cut_file_of(file)


def test_the_schema_describes_and_shows_every_field():
    schema = cut_file_schema()

    fields = [
        (name, field)
        for model in [schema, *schema["$defs"].values()]
        for name, field in model.get("properties", {}).items()
    ]
    assert len(fields) > 60
    assert [name for name, field in fields if not (field.get("description") and field.get("examples"))] == []
