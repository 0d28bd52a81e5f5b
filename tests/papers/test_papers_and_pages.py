"""What a paper says, its page says in the same words."""

import pytest

from pages.commissions import commission
from pages.unit_jobs import new_job, new_unit
from printed import printed_cards, text_of

STRUCK_OUT = "Struck out is the full thickness. Every socket would be 1/16 in too deep"


@pytest.mark.one_database
@pytest.mark.parametrize("of", ["paper", "page of the cards", "joints of the unit"])
def test_what_is_struck_out_is_named_before_what_it_would_do(of, shop, maker):
    if of == "paper":
        said = text_of(printed_cards())
    elif of == "page of the cards":
        said = maker.post(f"/jobs/{commission(shop).job_id}/papers", kind="joint cards").text
    else:
        said = maker.get(f"/units/{new_unit(shop, new_job(shop))}/joints").text

    assert said.count(STRUCK_OUT) == said.count("Every socket would be") > 0
