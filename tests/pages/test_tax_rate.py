"""A rate of tax is the one that was typed, wherever it is read."""

import pytest

from pages.commissions import commission, link_on
from printed import text_of


@pytest.mark.parametrize(("typed", "shown"), [("8.1875", "8.1875 %"), ("6,85", "6.85 %"), ("10", "10 %")])
def test_page_link_pdf_and_revisions_name_the_rate_alike(shop, owner, stranger, typed, shown):
    owner.get("/shop")
    owner.send("/shop", tax=typed)

    quote_id = commission(shop).send(owner)
    page = owner.get(f"/quotes/{quote_id}")

    assert f"Tax, {shown} " in page.text
    assert f"Tax, {shown} " in stranger.get(link_on(page)).text
    assert f"Tax, {shown} " in text_of(owner.browser.get(f"/quotes/{quote_id}/quote.pdf").content)
    assert f"Tax: 6 % → {shown}" in owner.get("/shop/revisions").text
