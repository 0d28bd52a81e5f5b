"""The woods: grades, average boards and waste of the shop, beside what is known of each species."""

import pytest

ADDRESS = "/shop/woods"


def test_grade_width_and_waste_of_a_wood_are_kept_and_taken_out(owner):
    owner.get(ADDRESS)
    page = owner.send(
        "",
        **{
            "grades.1.wood": "yellow poplar",
            "grades.1.grade": "No. 1 Common",
            "board.1.wood": "cherry",
            "board.1.width": "6 1/2",
            "waste.1.wood": "cherry",
            "waste.1.use": "drawer",
            "waste.1.waste": "22,5",
        },
    )
    assert page.form().value("grades.1.wood") == "poplar"
    assert page.form().value("board.1.width") == "6-1/2"
    assert page.form().value("waste.1.waste") == "22.5"
    assert "6-1/2 in your own" in page.text

    page = owner.send("", **{"waste.1.out": "1", "grades.1.wood": "", "board.1.out": "1"})

    assert page.form().value("grades.1.wood") == ""
    assert page.form().value("board.1.wood") == ""
    assert page.form().value("waste.1.wood") == ""


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("kerf", "an eighth", "is not a size"),
        ("sheet_waste", "100", "100 % is outside 0 to 99 %"),
        ("waste.1.waste", "20", "Name the wood, such as cherry; or empty the row."),
        ("waste.1.wood", "cherry", "Write the waste in per cent"),
        ("board.1.wood", "chery", "is not a wood in the table"),
        ("board.1.wood", "cherry", "There is no size here. Write it as 7-13/32"),
        ("widest_board", "0", "is too small: more than 0"),
    ],
)
def test_a_fault_stands_beside_its_field_with_what_was_typed(owner, name, typed, words):
    owner.get(ADDRESS)

    page = owner.send("", status=422, **{name: typed})

    assert words in page.text
    assert page.form().value(name) == typed
    assert "-fault" in page.html


def test_a_wood_stands_in_a_list_once(owner):
    owner.get(ADDRESS)

    page = owner.send("", status=422, **{"grades.1.wood": "cherry", "grades.2.wood": "black cherry"})

    assert "cherry stands here twice; keep the row that holds." in page.text


def test_every_figure_of_a_species_has_its_source(owner):
    page = owner.get(f"{ADDRESS}?q=walnut")

    assert "Juglans nigra" in page.text
    assert "0.00274" in page.text
    assert "published Wood Handbook, FPL-GTR-190 (2010), Table 13-5" in page.text


def test_what_is_remembered_says_so(owner):
    page = owner.get(f"{ADDRESS}?q=pinus+lambertiana")

    assert "Sugar pine" in page.text
    assert "from memory of Wood Handbook, Table 13-5" in page.text


def test_two_owners_who_write_the_same_list_see_both(shop, owner):
    other = shop.visitor()
    owner.get(ADDRESS)
    other.get(ADDRESS)
    other.send("", **{"board.1.wood": "cherry", "board.1.width": "7"})

    page = owner.send("", status=409, **{"board.1.wood": "walnut", "board.1.width": "6", "kerf": "3/32"})

    assert "Theirs: cherry" in page.text
    assert "Theirs: 7" in page.text
    assert page.form().value("board.1.wood") == "walnut"
    assert page.form().value("kerf") == "3/32"
