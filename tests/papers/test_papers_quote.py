"""The quote: every figure of the offer is on it to the cent, and nothing of what the piece costs the shop."""

import pytest

from casewright.papers.pdf import Paper
from casewright.papers.quote_pdf import quote_pdf
from casewright.pieces.words.offer import Offer, OfferedStage
from printed import dresser_job, letters_of, long_job, offered, pages_of, running_text_of, text_of

FOOT = "Hollow Elm Workshop · Quote"


def test_every_price_of_a_job_of_three_units_is_printed_to_the_cent():
    held = offered(long_job())

    printed = text_of(quote_pdf(held))

    amounts = [unit.price_cents for unit in held.units] + [stage.amount_cents for stage in held.stages]
    amounts += [held.net_cents, held.tax_cents, held.total_cents]
    assert [amount for amount in amounts if f"${amount // 100:,}.{amount % 100:02}" not in printed] == []


def test_the_units_are_counted_and_the_tax_rate_is_named():
    printed = text_of(quote_pdf(offered(long_job())))

    assert "2 × Small chest" in printed
    assert "Tax, 6 %" in printed
    assert "Total in USD" in printed


@pytest.mark.parametrize(
    ("rate", "shown"),
    [(0.081875, "8.1875 %"), (0.0625, "6.25 %"), (0.2, "20 %"), (0.06849999999999999, "6.85 %")],
)
def test_the_tax_rate_is_printed_with_every_digit(rate, shown):
    held = offered().model_copy(update={"tax_rate": rate})

    assert f"Tax, {shown} " in text_of(quote_pdf(held))


def test_options_are_printed_as_differences_with_their_sign():
    printed = text_of(quote_pdf(offered()))

    assert "Walnut outside Case and fronts in walnut. +$1,845.00" in printed
    assert "Without the wax −$120.50" in printed


@pytest.mark.parametrize(
    "said",
    [
        "Hollow Elm Workshop",
        "14 Mill Lane",
        "802 555 0137",
        "Ada Lindqvist",
        "7 Orchard Street",
        "Quote Q-0042",
        "Revision 2",
        "Job 2026-014",
        "Issued 25 November 2026",
        "Valid until 25 December 2026",
        "Ready by 15 March 2027",
        "overall 41",
        "44-3/8",
        "Signature of Ada Lindqvist",
        "For Hollow Elm Workshop",
    ],
)
def test_a_quote_says_who_what_and_until_when(said):
    assert said in text_of(quote_pdf(offered()))


@pytest.mark.parametrize("part", ["terms", "not_included", "cautions"])
def test_all_of_the_small_print_is_there(part):
    held = offered()
    printed = running_text_of(quote_pdf(held), FOOT)

    missing = [line for line in getattr(held, part) if line not in printed]

    assert getattr(held, part)
    assert missing == []


def test_the_plain_words_of_each_piece_are_there_unabridged():
    held = offered(long_job())
    printed = running_text_of(quote_pdf(held), FOOT).replace("- ", "-")  # a line may end after a hyphen

    missing = [line for unit in held.units for line in unit.words if line not in printed]

    assert missing == []


def test_a_draft_is_marked_on_every_page_and_cannot_be_signed():
    pages = pages_of(quote_pdf(offered(issued_on=None)))

    assert all("DRAFT" in page for page in pages)
    assert "draft, not yet an offer" in pages[0]
    assert "Signature of" not in " ".join(pages)


def test_an_issued_quote_carries_no_mark_of_a_draft():
    assert "draft" not in text_of(quote_pdf(offered())).lower()


def test_the_words_of_a_section_stand_clear_of_its_heading():
    letters = letters_of(quote_pdf(offered()))
    heading = next(each for each in letters if each.text.startswith("Payments"))
    beside = next(each for each in letters[letters.index(heading) + 1 :] if each.text.startswith("Due"))

    # a heading is set in lines of up to 1.35 in
    assert beside.x - heading.x >= 1.35 * 72 + heading.size


def test_every_page_says_which_it_is_of_how_many():
    pages = pages_of(quote_pdf(offered(long_job())))

    assert [f"Page {place} of {len(pages)}" in page for place, page in enumerate(pages, start=1)] == [
        True
    ] * len(pages)


def test_nothing_of_cost_hours_or_margin_is_on_a_quote():
    job, printed = dresser_job(), text_of(quote_pdf(offered()))

    inner = [job.price.cost, job.price.lowest, job.price.before_rounding, job.rate.rate, job.rate.cost]
    assert [f"{int(cents) // 100:,}.{int(cents) % 100:02}" in printed for cents in inner] == [False] * 5
    assert [word for word in ("margin", "wage", "overhead", "board feet") if word in printed.lower()] == []


def test_a_kept_offer_prints_the_same_bytes_years_later():
    held = offered(long_job())
    kept = held.model_dump_json()

    again = Offer.model_validate_json(kept)

    assert quote_pdf(again, Paper.A4) == quote_pdf(held, Paper.A4)


def test_a_share_that_is_no_round_figure_is_printed_in_three_figures():
    held = offered()
    total = held.total_cents
    stages = (
        OfferedStage(trigger="signing", share=1 / 3, amount_cents=total // 3),
        OfferedStage(trigger="completion", share=2 / 3, amount_cents=total - total // 3),
    )

    printed = text_of(quote_pdf(held.model_copy(update={"stages": stages})))

    assert "Signing 33.3 %" in printed
    assert "Completion 66.7 %" in printed


def test_a_few_words_to_the_customer_stand_above_the_pieces():
    note = "Thank you for showing us the hall.\n\nThe light there suits walnut."

    printed = text_of(quote_pdf(offered().model_copy(update={"note": note})))

    assert "for the north bedroom Thank you for showing us the hall. The light there suits walnut." in printed
