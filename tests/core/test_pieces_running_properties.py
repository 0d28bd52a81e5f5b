"""Whatever drawers run on: they go into their openings, and what carries them belongs to no other part."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import carcases
from casewright.measure.findings import Verdict
from casewright.pieces.asked.slide_spec import house_slides
from casewright.pieces.built.refusals import REFUSALS
from units import built, changed

CLOSE = 1e-9
HUNG = st.fixed_dictionaries({"kind": st.just("side-hung"), "batten": st.sampled_from([0.375, 0.5, 0.75])})
GUIDED = st.fixed_dictionaries({"kind": st.just("centre guide"), "guide_width": st.sampled_from([0.75, 1.5])})
SLID = st.fixed_dictionaries(
    {"kind": st.just("slides"), "slide": st.sampled_from([each.name for each in house_slides()])}
)
RUNNING = st.one_of(
    st.sampled_from([{"kind": "runners"}, {"kind": "full-length runners"}]), HUNG, GUIDED, SLID
)


@st.composite
def running(draw):
    """A case with its drawers on anything, built; None where it is refused."""
    data = changed(draw(carcases()), {"drawers.running": draw(RUNNING)})
    try:
        return built(data)
    except REFUSALS:
        return None


@settings(max_examples=25)
@given(running())
def test_every_drawer_goes_into_its_opening(made):
    drawers = made.drawers if made else ()

    for drawer in drawers:
        sizes, opening = drawer.sizes, drawer.sizes.opening
        assert 0 < sizes.width < opening.width
        assert 0 < sizes.height < opening.height
        assert 0 < sizes.length < opening.depth
        assert 0 < drawer.travel <= 1.2 * sizes.length


@settings(max_examples=25)
@given(running())
def test_every_part_has_a_size_and_a_code_of_its_own(made):
    parts = made.parts if made else ()

    assert all(min(part.thickness, part.width, part.length) > 0 for part in parts)
    assert len({part.code for part in parts}) == len(parts)


@settings(max_examples=25)
@given(running())
def test_battens_lie_in_the_grooves_of_their_drawer_without_touching_its_sides(made):
    for drawer in made.drawers if made else ():
        groove = drawer.run.groove
        if groove is None:
            continue
        gap = (drawer.sizes.opening.width - drawer.sizes.width) / 2
        bottom = groove.depth + gap - made.spec.drawers.running.projection
        assert bottom >= 1 / 32 - 1 / 64 - CLOSE
        assert groove.left == pytest.approx(made.spec.drawers.side - groove.depth)


@settings(max_examples=25)
@given(running())
def test_boxes_on_slides_leave_what_the_sheet_allows(made):
    for drawer in made.drawers if made else ():
        slides = drawer.run.slides
        if slides is None or slides.model.is_under:
            continue
        assert slides.model.space_least - CLOSE <= slides.space <= slides.model.space_most + CLOSE
        assert slides.length in slides.model.lengths
        assert slides.length <= slides.room + CLOSE


@settings(max_examples=25)
@given(running())
def test_the_weights_add_up_and_every_stop_says_what_to_change(made):
    if made is None:
        return
    drawers = sum(mass.weight for mass in made.masses.drawers.values())
    assert made.masses.case.weight + drawers == pytest.approx(made.masses.total)
    assert [each for each in made.findings if each.verdict is Verdict.STOP and not each.remedy] == []


@settings(max_examples=25)
@given(running())
def test_pulls_are_bored_within_their_front(made):
    for drawer in made.drawers if made else ():
        for along, up in drawer.boring.holes:
            assert 0 < along < drawer.sizes.width
            assert 0 < up < drawer.sizes.height
