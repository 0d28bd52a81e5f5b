"""What has come in, stage by stage."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.pricing.received import paid_stages, still_open
from casewright.pricing.stages import StageAmount

FOUR = (
    StageAmount(trigger="signing", amount=153_800),
    StageAmount(trigger="before material is bought", amount=615_200),
    StageAmount(trigger="three quarters complete", amount=384_500),
    StageAmount(trigger="completion", amount=384_500),
)


@pytest.mark.parametrize(
    ("received", "paid"),
    [
        (0, [0, 0, 0, 0]),
        (153_799, [153_799, 0, 0, 0]),
        (153_800, [153_800, 0, 0, 0]),
        (500_000, [153_800, 346_200, 0, 0]),
        (1_538_000, [153_800, 615_200, 384_500, 384_500]),
        (1_600_000, [153_800, 615_200, 384_500, 384_500]),
        (-20_000, [0, 0, 0, 0]),
    ],
)
def test_money_pays_the_oldest_stage_first(received, paid):
    assert [stage.paid for stage in paid_stages(FOUR, received)] == paid


@given(st.lists(st.integers(0, 10**8), min_size=1, max_size=6), st.integers(0, 10**9))
def test_what_is_paid_and_what_is_open_add_up_to_what_was_agreed(amounts, received):
    agreed = tuple(StageAmount(trigger=f"stage {number}", amount=each) for number, each in enumerate(amounts))

    filled = paid_stages(agreed, received)

    assert sum(stage.paid for stage in filled) == min(received, sum(amounts))
    assert sum(stage.open for stage in filled) == max(0, still_open(sum(amounts), received))


def test_a_stage_that_lacks_a_cent_is_not_paid():
    first = paid_stages(FOUR, 153_799)[0]

    assert first.open == 1
    assert not first.is_paid


def test_a_customer_who_paid_too_much_has_money_with_the_shop():
    assert still_open(100_000, 120_050) == -20_050
