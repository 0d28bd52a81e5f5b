"""Finding a wood by what a maker calls it, and what is known of it."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.basis import Basis, Evidence
from casewright.wood.movement import Cut, Direction
from casewright.wood.species import FIGURES, UnknownWood, Wood, wood, woods


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        ("cherry", "cherry"),
        ("Black Cherry", "cherry"),
        ("  CHERRY ", "cherry"),
        ("Prunus serotina", "cherry"),
        ("sugar maple", "hard maple"),
        ("sugar maple (hard maple)", "hard maple"),
        ("Hard   Maple", "hard maple"),
        ("red maple", "soft maple"),
        ("yellow-poplar", "poplar"),
        ("yellow poplar", "poplar"),
        ("northern red oak", "red oak"),
        ("white ash", "white ash"),
        ("eastern white pine", "white pine"),
        ("hickory, true (shagbark)", "hickory"),
        ("southern pine, loblolly", "loblolly pine"),
        ("mahogany, true", "mahogany"),
    ],
)
def test_a_wood_is_found_by_any_name_that_makers_use(asked: str, name: str) -> None:
    assert wood(asked).name == name


@pytest.mark.parametrize("each", woods(), ids=lambda each: each.name)
def test_every_wood_answers_to_its_shop_name_and_its_handbook_name(each: Wood) -> None:
    assert wood(each.name) is each
    assert wood(each.common_name) is each


@pytest.mark.parametrize(
    ("asked", "offered"),
    [
        ("maple", "hard maple"),
        ("oak", "white oak"),
        ("wallnut", "walnut"),
        ("cheery", "cherry"),
        ("old white pine board", "white pine"),
    ],
)
def test_a_name_that_could_be_several_woods_or_none_is_refused_with_the_nearest(
    asked: str, offered: str
) -> None:
    with pytest.raises(UnknownWood) as refused:
        wood(asked)

    assert offered in refused.value.nearest
    assert asked in str(refused.value)
    assert offered in str(refused.value)


def test_a_name_like_nothing_is_refused_without_an_offer() -> None:
    with pytest.raises(UnknownWood, match=r"“zzz” is not a wood in the table\.$"):
        wood("zzz")


@given(st.text(max_size=30))
def test_any_text_gives_a_wood_or_a_sentence(typed: str) -> None:
    with suppress(UnknownWood):
        assert wood(typed) in woods()


@pytest.mark.parametrize("each", woods(), ids=lambda each: each.name)
def test_every_figure_of_every_wood_says_where_it_comes_from(each: Wood) -> None:
    stated = [figure for figure in FIGURES if getattr(each, figure) is not None]

    assert [figure for figure, _ in each.grounds] == stated
    assert all(each.evidence(figure).source for figure in stated)


@pytest.mark.parametrize(
    ("name", "figure", "basis"),
    [
        ("cherry", "radial", Basis.PUBLISHED),
        ("cherry", "elasticity", Basis.PUBLISHED),
        ("poplar", "tangential", Basis.FROM_MEMORY),
        ("sapele", "tangential", Basis.COMPUTED),
        ("mahogany", "gravity", Basis.COMPUTED),
        ("walnut", "average_board_width", Basis.COMMON_PRACTICE),
    ],
)
def test_a_figure_tells_printed_from_remembered_and_computed(name: str, figure: str, basis: Basis) -> None:
    assert wood(name).evidence(figure).basis is basis


def test_a_figure_that_is_not_printed_is_left_out_rather_than_guessed() -> None:
    sassafras = wood("sassafras")

    assert sassafras.hardness is None
    with pytest.raises(KeyError):
        sassafras.evidence("hardness")


@pytest.mark.parametrize(("name", "width"), [("cherry", 6), ("poplar", 7), ("white pine", 7), ("walnut", 6)])
def test_a_panel_reckons_with_the_usual_board_of_its_wood(name: str, width: float) -> None:
    assert wood(name).average_board_width == width


def test_a_quartersawn_board_takes_the_radial_figure_in_its_width() -> None:
    maple = wood("hard maple")

    assert maple.coefficient(Cut.QUARTER) == 0.00165
    assert maple.coefficient(Cut.QUARTER, Direction.THICKNESS) == 0.00353
    assert maple.shrinkage(Cut.QUARTER) == 4.8


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"radial": 0.126}, "coefficients"),
        ({"gravity": 5.0}, "specific gravity"),
        ({"average_board_width": 0.0}, "usual board"),
    ],
)
def test_a_shop_cannot_enter_a_wood_that_no_wood_is_like(changed: dict[str, float], said: str) -> None:
    figures = {
        "radial": 0.00126,
        "tangential": 0.00248,
        "gravity": 0.5,
        "gravity_green": 0.47,
        "average_board_width": 6.0,
        "shrinkage_radial": 3.7,
        "shrinkage_tangential": 7.1,
    } | changed

    with pytest.raises(ValueError, match=said):
        Wood(name="plum", common_name="plum", botanical_name="Prunus domestica", hardwood=True, **figures)  # type: ignore[arg-type]


def test_evidence_without_a_source_is_refused() -> None:
    with pytest.raises(ValueError, match="say where it comes from"):
        Evidence(basis=Basis.LEARNED, source=" ")


def test_evidence_reads_as_a_person_would_say_it() -> None:
    assert str(wood("walnut").evidence("radial")).startswith("published: Wood Handbook")
    assert str(wood("walnut").evidence("average_board_width")).startswith("common practice: the usable width")
