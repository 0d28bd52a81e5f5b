"""Files for other programs: read back whole by a plain CSV reader, and harmless in a spreadsheet."""

import csv
from io import StringIO

import pytest

from casewright.papers.csv_files import cut_list_csv, lumber_order_csv
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.job_estimate import estimate_job
from printed import METRIC, cuts, long_job, ordered
from units import TODAY, chest, unit


def rows_of(file: bytes) -> list[dict[str, str]]:
    """The rows as a plain reader gives them."""
    return list(csv.DictReader(StringIO(file.decode("utf-8"), newline=""), strict=True))


def test_the_cut_list_is_read_back_part_by_part():
    rows = {row["codes"]: row for row in rows_of(cut_list_csv(cuts()))}

    front = rows["A-R5-1-F"]
    assert (front["width_fraction_in"], front["width_in"], front["width_mm"]) == (
        "8-13/32",
        "8.40625",
        "213.5",
    )
    assert (front["thickness_fraction_in"], front["thickness_in"]) == ("13/16", "0.8125")
    assert rows["A-R1-1-SL A-R1-1-SR"]["one_end"] == "half-blind dovetail, tails, rabbet 1/16"


def test_every_part_of_all_units_is_counted_in_the_file():
    job = long_job()

    rows = rows_of(cut_list_csv(cuts(job)))

    made = sum(len(held.unit.parts) * held.unit.spec.count for held in job.units)
    assert sum(int(row["quantity"]) for row in rows) == made


def test_the_order_is_read_back_line_by_line():
    rows = rows_of(lumber_order_csv(ordered()))

    feet = {(row["wood"], row["class"]): row["feet_bd_ft"] for row in rows}
    assert feet == {
        ("cherry", "5/4"): "11",
        ("cherry", "4/4"): "39",
        ("poplar", "4/4"): "61",
        ("soft maple", "4/4"): "25",
    }


@pytest.mark.parametrize(
    ("changes", "wide", "sets"),
    [
        ({}, "2 of 8-3/4 x 20-3/4 in; ", "1 of 5-3/4 x 39-1/4 in, fronts of row 1; 1 of 30-1/4 x 39 in, "),
        (METRIC, "2 of 225 x 525 mm; ", "1 of 145 x 1000 mm, fronts of row 1; 1 of 765 x 990 mm, "),
    ],
)
def test_boards_are_asked_for_in_sizes_that_a_yard_picks(changes, wide, sets):
    rows = {(row["wood"], row["class"]): row for row in rows_of(lumber_order_csv(ordered(**changes)))}

    assert rows["soft maple", "4/4"]["wide_boards"].startswith(wide)
    assert rows["cherry", "4/4"]["sets"].startswith(sets)


def test_a_panel_is_asked_for_by_its_boards():
    deep = {"body.width": "54", "body.opening_total": "10-1/4", "rows": [{"height": "10-1/4", "columns": 2}]}
    job = estimate_job((unit(chest(deep)),), example_shop(), TODAY)

    (sets,) = (row["sets"] for row in rows_of(lumber_order_csv(ordered(job))) if row["sets"])

    assert sets == "1 of 2 boards each 5-3/4 x 53-3/4 in for a panel, fronts of row 1"


@pytest.mark.parametrize("file", [cut_list_csv(cuts()), lumber_order_csv(ordered())], ids=["cuts", "order"])
def test_lines_end_as_the_standard_for_csv_has_it(file):
    assert file.endswith(b"\r\n")
    assert file.count(b"\n") == file.count(b"\r\n")


@pytest.mark.parametrize("file", [cut_list_csv(cuts()), lumber_order_csv(ordered())], ids=["cuts", "order"])
def test_every_number_says_its_unit_in_the_name_of_its_column(file):
    bare = {"job", "revision", "quantity"}

    rows = rows_of(file)

    numbers = {name for row in rows for name, cell in row.items() if cell.replace(".", "", 1).isdigit()}
    assert {name for name in numbers - bare if not name.endswith(("_in", "_mm", "_bd_ft"))} == set()


@pytest.mark.parametrize("start", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1"])
def test_what_looks_like_a_formula_is_only_text(start):
    rows = rows_of(cut_list_csv(cuts(job_number=f"x{start}")))
    led = cuts()
    named = led.model_copy(update={"head": led.head.model_copy(update={"job_number": start})})

    first = rows_of(cut_list_csv(named))[0]["job"]

    assert first.startswith("'")
    assert not rows[0]["job"].startswith("'")


def test_quotation_marks_line_breaks_and_any_script_come_back_as_they_were():
    name = 'Table "漢字", 🪑\nsecond line; é'
    held = cuts()
    unit = held.units[0]
    row = unit.groups[0].rows[0].model_copy(update={"name": name})
    group = unit.groups[0].model_copy(update={"rows": (row,)})
    changed = held.model_copy(update={"units": (unit.model_copy(update={"groups": (group,)}),)})

    assert rows_of(cut_list_csv(changed))[0]["part"] == name
