"""A unit file, in and out: every notation, and a sentence for whatever cannot be used."""

import json
from copy import deepcopy
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from carcases import carcases
from casewright.pieces.asked.reading import CannotRead, parse_json, read_unit, unit_schema, write_unit
from units import chest, dresser, dresser_text, unit

VALUES = st.recursive(
    st.one_of(
        st.none(),
        st.booleans(),
        st.integers(-(10**13), 10**13),
        st.floats(),
        st.text(max_size=12),
        st.sampled_from(["3/4", "13/16", "39-1/2", "19 mm", "1/0", "cherry", "step", "solid", "auto"]),
    ),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3),
        st.dictionaries(
            st.one_of(
                st.sampled_from(["rule", "kind", "height", "width", "moisture", "R1-1"]), st.text(max_size=6)
            ),
            inner,
            max_size=3,
        ),
    ),
    max_leaves=8,
)


def problems_of(data):
    with pytest.raises(CannotRead) as refused:
        unit(data)
    return [str(problem) for problem in refused.value.problems]


def places(data, way=()):
    """The path of everything that a file's data holds."""
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    return [step for key, value in entries for step in ((*way, key), *places(value, (*way, key)))]


def with_value(data, way, value):
    """A copy of the data with another value in one place."""
    copy = deepcopy(data)
    holder = copy
    for step in way[:-1]:
        holder = holder[step]
    holder[way[-1]] = value
    return copy


def refuses_or_reads(text):
    """The problems that were found, or none; anything else that is raised is a fault."""
    try:
        read_unit(text)
    except CannotRead as refused:
        return refused.problems
    return ()


@pytest.mark.parametrize("width", ["24", 24, 24.0, "24 in", '24"', "2'", "2 ft", "609.6 mm", "60.96 cm"])
def test_a_width_is_read_in_any_notation_of_makers(width):
    assert unit(chest({"body.width": width})).body.width == 24.0


@pytest.mark.parametrize("width", [609.6, "609.6", "609,6", "609.6 mm", "24 in", '24"', "2'", "60.96 cm"])
def test_in_a_file_in_millimetres_a_bare_number_is_in_millimetres(width):
    sizes = {"body.width": width, "body.depth": 400, "body.opening_total": 450}

    assert unit(chest({"unit": "mm", **sizes})).body.width == 24.0


def test_a_number_in_millimetres_is_exact():
    # 19.05 mm is 3/4 in, though in floats 19.05 / 25.4 is a hair beside it
    sizes = {"body.width": 609.6, "body.depth": 406.4, "body.opening_total": 457.2, "case.side": 19.05}

    assert unit(chest({"unit": "mm", **sizes})).case.side == 0.75


def test_a_wood_by_its_name_alone_is_flat_sawn():
    woods = unit(chest()).woods

    assert (woods.case.wood, str(woods.case.cut)) == ("cherry", "flat")


def test_a_wood_goes_by_its_common_name_too():
    assert unit(chest({"woods.case": "Black Walnut"})).woods.case.wood == "walnut"


def test_what_is_left_out_follows_another_choice():
    woods = unit(chest({"woods.inside": {"wood": "poplar", "cut": "quarter"}})).woods

    assert woods.of("top") == woods.of("fronts") == woods.case
    assert woods.of("bottoms") == woods.of("back") == woods.inside


@pytest.mark.parametrize(
    ("changes", "field", "offered"),
    [
        ({"body.widht": "3"}, "body.widht", "did you mean width?"),
        ({"body.height": "3"}, "body.height", "did you mean body_height?"),
        ({"drawers.groove": {"heigth": 1}}, "drawers.groove.heigth", "did you mean height?"),
        ({"graduation": {"rule": "step", "stp": 1}}, "graduation.stp", "did you mean step?"),
        ({"drawers.bottom": {"kind": "ply", "shet": 1}}, "drawers.bottom.shet", "did you mean sheet?"),
        (
            {"measured": {"openings": {"R1-1": {"hight": 3}}}},
            "measured.openings.R1-1.hight",
            "did you mean height?",
        ),
        (
            {"site.colour": 1},
            "site.colour",
            "known here: door_width, door_height, turn_width, scribe, recess, out_of_plumb",
        ),
    ],
)
def test_an_unknown_key_is_refused_with_the_nearest_known_one(changes, field, offered):
    assert problems_of(chest(changes)) == [f"{field}: this key is not known; {offered}"]


@pytest.mark.parametrize(
    ("heights", "found"),
    [
        ({}, "none is here"),
        ({"body_height": "30", "opening_total": "20"}, "body_height and opening_total are here"),
        (
            {"overall_height": "40", "body_height": "30", "opening_total": "20"},
            "overall_height and body_height and opening_total are here",
        ),
    ],
)
def test_exactly_one_height_is_wanted(heights, found):
    body = {"width": "24", "depth": "16", **heights}

    assert problems_of(chest({"body": body})) == [
        f"body: give exactly one of overall_height, body_height, opening_total; {found}"
    ]


@pytest.mark.parametrize(
    ("changes", "field", "good"),
    [
        ({"body.width": "1/0"}, "body.width", "7-13/32, 7.4 or 188 mm"),
        ({"body.width": "24,5"}, "body.width", "7-13/32"),
        ({"drawers.front": -1}, "drawers.front", '"13/16"'),
        ({"drawers.front": 0}, "drawers.front", '"13/16"'),
        ({"drawers.front": True}, "drawers.front", '"13/16"'),
        ({"drawers.front": None}, "drawers.front", '"13/16"'),
        ({"drawers.front": ["13/16"]}, "drawers.front", '"13/16"'),
        ({"case.lipping": "13"}, "case.lipping", '"1-1/2"'),
        ({"measured.openings": {"R1-1": {"height": "-3"}}}, "measured.openings.R1-1.height", "7-13/32"),
        ({"rows.0.columns": 0}, "rows[1].columns", "2"),
        ({"rows.1.columns": 2.5}, "rows[2].columns", "2"),
        ({"rows.0.widths": ["12", 0]}, "rows[1].widths[2]", '"12"'),
        ({"rows.0": {"widths": ["8", None], "columns": 3}}, "rows[1]", "give one for each, or none"),
        ({"rows.0.widths": []}, "rows[1]", '["12", null]'),
        ({"count": "many"}, "count", "1"),
        ({"name": 7}, "name", '"Six-drawer dresser"'),
        ({"woods.case": "chery"}, "woods.case.wood", "cherry"),
        ({"woods.case": 5}, "woods.case", '"cherry"'),
        ({"woods.case": {"wood": "cherry", "cut": "x"}}, "woods.case.cut", "'flat', 'quarter' or 'rift'"),
        ({"woods": {"case": "cherry", "drawers": "poplar"}}, "woods.inside", '"poplar"'),
        ({"unit": "cm"}, "unit", "'in' or 'mm'"),
        ({"casewright": 2}, "casewright", "version 1"),
        ({"casewright": "1"}, "casewright", "1"),
        ({"graduation": {"rule": "stepp"}}, "graduation", "'step'"),
        ({"graduation": {"rule": "ratio"}}, "graduation", "such as 1.12"),
        ({"graduation": {"rule": "ratio", "ratio": 9}}, "graduation.ratio", "1.12"),
        ({"graduation": {"rule": "ratio", "first": 3, "on": "pitch"}}, "graduation", "such as 1.12"),
        ({"graduation": {"rule": "step", "step": 1, "first": 2}}, "graduation", "not both"),
        ({"drawers.bottom": {"kind": "ply", "sheet": "gold leaf"}}, "drawers.bottom", "birch plywood"),
        ({"drawers.bottom": {"kind": "ply", "nominal": "9/16"}}, "drawers.bottom", "1/2 in hardwood plywood"),
        ({"drawers.bottom": {"kind": "tin"}}, "drawers.bottom", "'solid'"),
        ({"drawers.front_joint.slope": 1}, "drawers.front_joint.slope", "8"),
        ({"finish.show_coats": -1}, "finish.show_coats", "4"),
        ({"use.travel_share": 2}, "use.travel_share", "0.6667"),
        ({"sequence_fronts": "maybe"}, "sequence_fronts", "true"),
        ({"season.shop": {"humidity": 45}}, "season.shop", "such as 8.5"),
        ({"season.shop": {"temperature_f": 70}}, "season.shop", "such as 8.5"),
        ({"season.shop": {"moisture": 8, "humidity": 45}}, "season.shop", "such as 8.5"),
        ({"season.shop": {}}, "season.shop", "such as 8.5"),
        (
            {"season": {"driest": {"moisture": 12}, "wettest": {"moisture": 6}}},
            "season",
            "the driest season (12.0 %) is wetter than the wettest (6.0 %); change them over",
        ),
        (
            {"measured.parts": {"R1-1-SL": {"thickness": "1/2", "in_rabbet": "5/8"}}},
            "measured.parts.R1-1-SL",
            "thicker than the side",
        ),
    ],
)
def test_a_bad_value_is_refused_by_its_field_with_one_that_would_do(changes, field, good):
    (sentence,) = problems_of(chest(changes))

    assert sentence.startswith(f"{field}: ")
    assert good in sentence


def test_all_that_is_wrong_is_said_at_once():
    problems = problems_of(chest({"body.width": "wide", "drawers.front": -1, "colour": "red"}))

    assert [problem.partition(":")[0] for problem in problems] == ["body.width", "drawers.front", "colour"]


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "this is not JSON: .* line 1, column 1; a unit file looks like"),
        ('{"casewright": 1,\n "name": }', "this is not JSON: .* line 2, column 10"),
        ("[]", "the file should hold one object"),
        ("null", "the file should hold one object"),
        ('{"casewright": 1, "casewright": 1}', "casewright: this key stands there twice"),
        ('{"name": NaN}', "NaN is not a number that a size can have; write one such as 15.625"),
        ('{"name": -Infinity}', "-Infinity is not a number"),
        ('{"name": 1e999}', "1e999 is not a number that a size can have"),
        ('{"name": 1234567890123}', "has 13 digits; write a number such as 15"),
        ("[" * 100_000, "nested too deeply"),
        (" " * 1_000_001, "larger than 1,000,000 characters"),
    ],
)
def test_a_file_that_is_no_unit_file_is_refused_in_a_sentence(text, sentence):
    with pytest.raises(CannotRead, match=sentence):
        read_unit(text)


def test_a_mark_that_some_editors_put_first_is_passed_over():
    assert read_unit("\ufeff" + dresser_text()) == read_unit(dresser_text())


@given(VALUES, st.data())
def test_any_value_in_any_place_of_a_file_is_read_or_refused_by_its_field(value, data):
    file = dresser()
    way = data.draw(st.sampled_from(places(file)))

    problems = refuses_or_reads(json.dumps(with_value(file, way, value)))

    assert [problem for problem in problems if not problem.message] == []


@given(VALUES)
def test_any_json_at_all_is_read_or_refused(value):
    assert refuses_or_reads(json.dumps(value)) != ()


@given(st.data())
def test_a_slip_of_the_keys_anywhere_in_a_file_is_read_or_refused(data):
    text = dresser_text()
    start = data.draw(st.integers(0, len(text)))
    gone = data.draw(st.integers(0, 5))
    put_in = data.draw(st.text(max_size=3))

    problems = refuses_or_reads(text[:start] + put_in + text[start + gone :])

    assert [problem for problem in problems if not problem.message] == []


@given(st.text(max_size=60))
def test_any_text_at_all_is_refused(text):
    with pytest.raises(CannotRead):
        read_unit(text)


@given(carcases())
def test_a_unit_is_written_and_read_again_unchanged(data):
    spec = unit(data)

    assert read_unit(write_unit(spec)) == spec


@pytest.mark.parametrize(
    ("typed", "written"),
    [
        ("24-3/128", "24-3/128"),
        ("611.1 mm", "611.1 mm"),
        ("24.001", "24.001"),
        (24.125, "24-1/8"),
        ("2' 1\"", "25"),
    ],
)
def test_a_size_is_written_as_makers_write_it(typed, written):
    spec = unit(chest({"body.width": typed}))

    assert json.loads(write_unit(spec))["body"]["width"] == written
    assert read_unit(write_unit(spec)) == spec


def test_defaults_that_nobody_touched_are_not_written():
    written = json.loads(write_unit(unit(chest())))

    assert sorted(written) == ["body", "casewright", "name", "rows", "woods"]


def test_the_schema_is_a_schema():
    Draft202012Validator.check_schema(unit_schema())


@cache
def validator() -> Draft202012Validator:
    """Reads files by the schema, which takes as long to make as a hundred of them."""
    return Draft202012Validator(unit_schema())


@pytest.mark.parametrize(
    "data",
    [
        dresser(),
        chest(),
        chest({"base": None, "drawers.bottom": {"kind": "ply"}, "graduation": {"rule": "roots"}}),
        chest({"unit": "mm", "body": {"width": 600, "depth": "400", "overall_height": "700 mm"}}),
        chest({"woods.case": {"wood": "cherry", "cut": "rift"}, "rows.0.widths": ["12", None]}),
    ],
)
def test_a_file_that_is_read_fits_the_schema(data):
    assert list(validator().iter_errors(data)) == []


@given(carcases())
def test_every_carcase_that_is_read_fits_the_schema(data):
    assert validator().is_valid(data)


@pytest.mark.parametrize(
    "changes",
    [
        {"body.widht": "3"},
        {"casewright": 2},
        {"rows": []},
        {"rows.0.columns": 0},
        {"rows.0.columns": 2.5},
        {"drawers.front": None},
        {"graduation": {"rule": "stepp"}},
        {"drawers.bottom": {"kind": "ply", "shet": 1}},
        {"unit": "cm"},
        {"code": "lower"},
        {"drawers.muntin.use": "perhaps"},
        {"finish.show_coats": -1},
        {"use.travel_share": 2},
    ],
)
def test_a_file_that_is_refused_does_not_fit_the_schema(changes):
    assert problems_of(chest(changes)) != []
    assert not validator().is_valid(chest(changes))


def test_a_file_without_its_name_does_not_fit_the_schema():
    nameless = {key: value for key, value in chest().items() if key != "name"}

    assert not validator().is_valid(nameless)


def test_json_is_parsed_without_being_understood():
    assert parse_json('{"a": [1, 2.5, "x", null]}') == {"a": [1, 2.5, "x", None]}
