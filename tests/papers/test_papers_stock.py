"""Orders for several jobs, claims and labels, read back from their PDFs."""

import csv
from dataclasses import replace
from datetime import date

import pytest

from casewright.papers.claim_pdf import ClaimPaper, ClaimRow, claim_pdf
from casewright.papers.csv_files import supply_order_csv
from casewright.papers.labels_pdf import MOST, Label, labels_data, labels_pdf
from casewright.papers.order import order_paper
from casewright.papers.supply_order import joined_order, needs_of, part_of_order
from casewright.papers.supply_order_pdf import supply_order_pdf
from casewright.pieces.costs.job_estimate import JobEstimate
from printed import dresser_job, head, pages_of, text_of

JOB = {"job_name": "", "number": "P-0004", "supersedes": None, "revision": 1}


def paper(job: JobEstimate):
    return order_paper(
        head(job_name=""),
        job.order,
        job.sheets,
        job.hardware,
        finishes=job.finishes,
        materials=job.materials,
    )


def of_jobs(*numbers: str):
    """Worked dresser A, ordered for as many jobs as there are numbers."""
    made = head(**JOB, job_number=", ".join(numbers))
    return joined_order(made, [(number, paper(dresser_job())) for number in numbers])


def feet(order, key="lumber/cherry/flat/4/4/FAS"):
    return next(need.quantity for need in needs_of(order) if need.key == key)


def test_feet_of_two_jobs_are_added_up_before_they_are_rounded():
    """Dresser A takes 38.20 ft of cherry 4/4, so 39 are ordered; two take 76.40: 77 and not 78."""
    assert feet(of_jobs("14")) == 39
    assert feet(of_jobs("14", "15")) == 77


def test_sets_and_marks_are_led_by_the_number_of_their_job():
    order = of_jobs("14", "15")
    (cherry,) = (line for line in order.lumber if (line.wood, line.bought) == ("cherry", "4/4"))

    assert {found.name.partition(":")[0] for found in cherry.sets} == {"14", "15"}
    assert all(line.startswith(("14: ", "15: ")) for each in cherry.behind for line in each.lines)
    assert of_jobs("14").lumber[0].behind[0].lines == paper(dresser_job()).lumber[0].behind[0].lines


def test_hardware_and_finish_of_two_jobs_are_counted_together():
    one, two = (
        {need.item: need.quantity for need in needs_of(of_jobs(*numbers)) if need.kind != "lumber"}
        for numbers in (("14",), ("14", "15"))
    )

    assert two["pull"] == 2 * one["pull"]
    assert two["wiping varnish"] <= 2 * one["wiping varnish"]


def test_a_supplier_gets_its_lines_and_the_quantities_that_were_asked_for():
    whole = of_jobs("14")
    mine = part_of_order(whole, {"lumber/poplar/flat/4/4/FAS": 70, "hardware/pull///": 8}, supplier="Yard")

    assert [(need.item, need.quantity) for need in needs_of(mine)] == [("poplar", 70), ("pull", 8)]
    printed = text_of(supply_order_pdf(mine))
    assert "70 bd ft in all" in printed
    assert "Yard" in printed
    assert "Cherry" not in printed


def test_what_the_rack_gives_stands_on_our_copy_alone():
    key = "lumber/cherry/flat/4/4/FAS"
    order = part_of_order(of_jobs("14"), {key: 35}, {key: (("O3", "O7"), 3.2)})

    assert "From the rack: 2 pieces, O3, O7; 3.20 bd ft less to buy" in text_of(
        supply_order_pdf(order, for_shop=True)
    )
    assert "rack" not in text_of(supply_order_pdf(order))


def test_a_supplier_of_sundries_is_told_of_glue_and_abrasives_and_a_yard_is_not():
    quantities = {need.key: need.quantity for need in needs_of(of_jobs("14")) if need.kind == "consumable"}
    theirs, bare = (
        text_of(supply_order_pdf(part_of_order(of_jobs("14"), quantities, with_sundries=told)))
        for told in (True, False)
    )

    assert "glue" in theirs
    assert "glue" not in bare


def test_an_order_without_lumber_asks_nothing_of_a_yard():
    order = part_of_order(of_jobs("14"), {"hardware/pull///": 10})

    assert "kiln-dried" not in text_of(supply_order_pdf(order))
    assert "kiln-dried" in text_of(supply_order_pdf(of_jobs("14")))


def test_the_csv_has_a_row_for_each_line_with_its_wide_boards():
    rows = supply_order_csv(of_jobs("14", "15")).decode().splitlines()

    assert rows[0].startswith("order,jobs,kind,item,cut,size,grade,quantity,unit")
    assert len(rows) == 1 + len(needs_of(of_jobs("14", "15")))
    assert any(row.startswith('P-0004,"14, 15",lumber,cherry,flat,4/4,FAS,77,bd ft,rough') for row in rows)
    cells = list(csv.DictReader(rows))
    longest = {line.wood: line.longest_in for line in of_jobs("14", "15").lumber if line.bought == "4/4"}
    for row in cells:
        is_lumber = row["kind"] == "lumber"
        assert bool(row["longest_in"]) == bool(row["must_plane_to_in"]) == is_lumber
        if is_lumber and row["size"] == "4/4":
            assert float(row["longest_in"]) == longest[row["item"]]


def claim(**changes):
    row = ClaimRow(
        words="cherry 4/4 FAS",
        unit="bd ft",
        ordered=39.0,
        billed=44.0,
        received=42.0,
        exact=42.21,
        price_cents=950,
        claim_cents=1900,
        faults=("B3: wet: 12 % moisture, over 10 %",),
        sent_back=("B4",),
    )
    usual = {
        "shop": "Hollow Elm Workshop",
        "supplier": "Sawyer & Daughters",
        "delivery": "D-0003",
        "order": "P-0004",
        "bill": "7731",
        "arrived_on": date(2027, 3, 1),
        "written_on": date(2027, 3, 2),
        "symbol": "$",
        "rows": (row,),
    }
    return ClaimPaper(**usual | changes)


@pytest.mark.parametrize(
    "said",
    [
        "Claim for delivery D-0003",
        "Sawyer & Daughters",
        "1 March 2027",
        "7731",
        "39 44 42 42.21 4.5 % $9.50 $19.00",
        "We ask for a credit of $19.00",
        "B3: wet: 12 % moisture, over 10 %",
        "sent back B4",
    ],
)
def test_a_claim_says_what_was_ordered_billed_and_received(said):
    assert said in text_of(claim_pdf(claim()))


def labels(count):
    return [
        Label(code=f"B{number}", sort="Cherry 4/4 FAS", size="8 in × 144 in", facts=("7.5 %", "Bay 2"))
        for number in range(1, count + 1)
    ]


def test_every_label_is_printed_once_and_a_page_holds_a_dozen():
    made = labels_pdf("Hollow Elm Workshop", labels(30))

    assert all(f"B{number} " in text_of(made) + " " for number in range(1, 31))
    assert len(pages_of(made)) == 3
    assert labels_pdf("Hollow Elm Workshop", labels(30)) == made


def test_no_more_labels_are_printed_than_anybody_would_cut_out():
    assert len(labels_data("Hollow Elm Workshop", labels(MOST + 5))["labels"]) == MOST


def test_what_came_over_the_bill_is_no_shortage_below_nothing():
    """By hand: 55 of 44 billed is a quarter more."""
    paper = claim()
    over = replace(paper.rows[0], received=55.0, exact=55.2, claim_cents=0)

    said = text_of(claim_pdf(replace(paper, rows=(over,))))

    assert "25.0 % over" in said
    assert "-25" not in said
