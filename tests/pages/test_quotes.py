"""A quote from draft to answer, as the shop sees it: drawn up, looked at, sent, revised, answered."""

import pytest

from pages.commissions import commission, id_in, kept, link_on


@pytest.fixture
def job(shop):
    """A job with one small chest."""
    return commission(shop)


def test_a_draft_shows_what_the_customer_will_read(job, maker):
    page = maker.post(f"/jobs/{job.job_id}/quotes")

    assert page.seen.headings == ["Quote Q-0001"]
    assert "Tom &lt;Marsh&gt;" in page.html
    assert "Small chest" in page.text
    assert "dovetailed at all four corners" in page.text
    assert "<svg" in page.html
    assert "draft, not yet an offer" in page.text
    assert "Total in USD" in page.text
