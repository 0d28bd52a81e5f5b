"""The lumber order: what a yard needs and no more; the sums and parts on the copy that stays."""

import pytest

from casewright.papers.order import OrderPaper
from casewright.papers.order_pdf import lumber_order_pdf
from casewright.papers.pdf import Paper
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.job_estimate import estimate_job
from printed import METRIC, cuts, dresser_job, long_job, ordered, pages_of, tags_of, text_of
from units import TODAY, chest, unit


@pytest.mark.parametrize(
    "line",
    [
        "Cherry 5/4 FAS 11 rough; must plane to 7/8 in 43 in",
        "Cherry 4/4 FAS 39 rough; must plane to 13/16 in 41-1/2 in",
        "Poplar 4/4 FAS 61 rough; must plane to 3/4 in",
        "Soft maple 4/4 FAS 25 rough; must plane to 5/8 in",
        "136 bd ft in all",
    ],
)
def test_the_feet_of_worked_dresser_a_are_ordered_wood_by_wood_and_class_by_class(line):
    assert line in text_of(lumber_order_pdf(ordered()))


@pytest.mark.parametrize(
    "need",
    [
        "At least 2 boards 8-3/4 in wide and 20-3/4 in long, not glued up",
        "Set: one board, at least 5-3/4 in wide and 39-1/4 in long, for 2 pieces (fronts of row 1)",
        "Set: boards from one log that make up a panel 30-1/4 in wide and 39 in long, for 4 pieces",
    ],
)
def test_the_yard_is_told_which_boards_to_pick(need):
    assert need in text_of(lumber_order_pdf(ordered()))


def deep_job():
    """A job of one chest of two drawers whose fronts are higher than the widest clear board."""
    deep = {"body.width": "54", "body.opening_total": "10-1/4", "rows": [{"height": "10-1/4", "columns": 2}]}
    return estimate_job((unit(chest(deep)),), example_shop(), TODAY)


def test_fronts_that_are_glued_up_are_ordered_as_boards_for_a_panel():
    (lumber,) = (line for line in ordered(deep_job()).lumber if line.sets)
    (glued,) = lumber.sets

    assert (glued.boards, glued.width_in, glued.length_in) == (2, 5.75, 53.75)
    assert (
        "Set: 2 boards from one log for a panel, each at least 5-3/4 in wide and 53-3/4 in long, "
        "for 2 pieces (fronts of row 1)" in text_of(lumber_order_pdf(ordered(deep_job())))
    )


def test_an_order_kept_before_panels_were_counted_still_asks_for_one_board():
    kept = ordered().model_dump(mode="json")
    for found in (found for line in kept["lumber"] for found in line["sets"]):
        del found["boards"]

    assert "Set: one board, at least 5-3/4 in wide" in text_of(
        lumber_order_pdf(OrderPaper.model_validate(kept))
    )


@pytest.mark.parametrize(
    "said",
    [
        "Sawyer & Daughters",
        "15 January 2027",
        "2026-014",
        "revision 1",
        "25 November 2026",
        "kiln-dried",
        "shake",
    ],
)
def test_an_order_says_to_whom_by_when_and_what_is_refused(said):
    assert said in text_of(lumber_order_pdf(ordered()))


def test_the_yard_reads_no_customer_no_price_and_no_part_list():
    printed = text_of(lumber_order_pdf(ordered()))

    assert [
        word for word in ("Ada Lindqvist", "$", "Lines of the cut list", "Waste", "F1") if word in printed
    ] == []


@pytest.mark.parametrize(
    "row",
    [
        "fronts in sequence 9.69 30 % 13.84 F1, F2, F3, F4, F5",
        "case, top and base 19.49 20 % 24.36 C1, C2, C3, C4, C5, B1, B2",
        "case, top and base 8.02 20 % 10.03 T1",
        "38.20 bd ft, ordered as 39",
    ],
)
def test_the_copy_that_stays_shows_rough_feet_waste_and_the_lines_behind(row):
    assert row in text_of(lumber_order_pdf(ordered(), for_shop=True))


@pytest.mark.parametrize("remarks", range(0, 15, 2))
def test_what_is_behind_the_feet_begins_on_the_page_of_its_first_table(remarks):
    longer = ordered().model_copy(update={"remarks": ("Call before you come.",) * remarks})

    pages = pages_of(lumber_order_pdf(longer, for_shop=True))

    assert ["Lines of the cut list" in page for page in pages if "What is behind the feet" in page] == [True]


def test_the_copy_that_stays_brings_the_cautions_of_its_woods():
    printed = text_of(lumber_order_pdf(ordered(), for_shop=True))

    assert "Wood dust: NIOSH" in printed
    assert "Oak dust" not in printed


def test_sets_of_units_made_alike_are_asked_for_once_each():
    assert "2 sets, each: boards from one log" in text_of(lumber_order_pdf(ordered(long_job())))


def test_sheets_and_hardware_stand_in_tables_of_their_own():
    pdf = lumber_order_pdf(ordered(long_job()))

    assert "1/4 in birch plywood 60 × 60 in" in text_of(pdf)
    assert "wall restraint" in text_of(pdf)
    assert tags_of(pdf).count("Table") == 4


@pytest.mark.parametrize(
    ("for_shop", "said"), [(True, "10 and 1 spare pull drawer fronts"), (False, "11 pull")]
)
def test_pulls_are_ordered_with_their_spares(for_shop, said):
    assert said in text_of(lumber_order_pdf(ordered(), for_shop=for_shop))


@pytest.mark.parametrize(
    "what",
    # worked dresser A: 1.47 quarts with losses, one unit, 30 sq ft of show surface
    [
        "Finish and consumables",
        "2 quarts wiping varnish 1.47 with losses",
        "1 glue counted by the unit",
        "30 abrasives counted by the sq ft of show surface",
        "always fitted, whatever the stability screen says",
        "one lot: top, plinth, stops, muntins",
    ],
)
def test_the_copy_that_stays_says_how_hardware_finish_glue_and_abrasives_were_counted(what):
    assert what in text_of(lumber_order_pdf(ordered(), for_shop=True))


def test_the_yard_is_asked_for_what_a_yard_sells():
    printed = text_of(lumber_order_pdf(ordered(long_job())))

    assert "wall restraint" in printed
    assert "Finish Count What 4 quarts wiping varnish" in printed
    shop_words = ("glue counted", "abrasives", "counted", "stability", "screws", "losses", "drawer fronts")
    assert [word for word in shop_words if word in printed] == []


def test_a_metric_shop_orders_feet_with_sizes_in_millimetres():
    printed = text_of(lumber_order_pdf(ordered(**METRIC), Paper.A4))

    assert "must plane to 20.6 mm 1055 mm" in printed
    assert "At least 2 boards 225 mm wide and 525 mm long" in printed


@pytest.mark.parametrize(("changes", "step"), [({}, "1/4 in"), (METRIC, "5 mm")])
def test_an_order_says_how_its_least_sizes_were_rounded(changes, step):
    assert f"rounded up to the next {step}" in text_of(lumber_order_pdf(ordered(**changes)))


def test_the_feet_ordered_are_those_of_the_estimate():
    job = dresser_job()

    lines = ordered().lumber

    assert [(line.wood, line.feet_bd_ft) for line in lines] == [(line.wood, line.feet) for line in job.order]
    assert sum(each.rough_bd_ft for line in lines for each in line.behind) == pytest.approx(
        sum(group.rough_bd_ft for group in cuts().breakdowns), abs=1e-9
    )


@pytest.mark.parametrize("for_shop", [False, True])
def test_a_kept_order_prints_the_same_bytes_years_later(for_shop):
    held = ordered(long_job())

    again = OrderPaper.model_validate_json(held.model_dump_json())

    assert lumber_order_pdf(again, for_shop=for_shop) == lumber_order_pdf(held, for_shop=for_shop)
