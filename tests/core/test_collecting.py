"""The collector of garbage keeps out of the way while a piece is worked out."""

import gc
from collections.abc import Iterator

import pytest

from casewright.collecting import seldom_collect
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct


@pytest.fixture
def passes() -> Iterator[list[int]]:
    """The generation of each pass of the collector, with its own ways given back afterwards."""
    seen: list[int] = []

    def note(phase: str, about: dict[str, int]) -> None:
        seen.extend([about["generation"]] if phase == "start" else [])

    before = gc.get_threshold()
    gc.callbacks.append(note)
    yield seen
    gc.callbacks.remove(note)
    gc.set_threshold(*before)


def test_a_piece_is_worked_out_without_a_pass_over_all_that_there_is(passes: list[int]) -> None:
    spec, shop = preset("dresser").spec(), example_shop()
    construct(spec, shop)
    seldom_collect()
    passes.clear()

    construct(spec, shop)

    assert len(passes) <= 1
    assert 2 not in passes
