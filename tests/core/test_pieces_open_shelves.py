"""The wood of shelves: of the case where they are seen, of the inside behind doors, or as somebody asks."""

from typing import Any

import pytest

from casewright.pieces.layout.parts import FaceClass
from casewright.pieces.words.describe import describe
from casewright.pieces.words.otherwise import otherwise
from casewright.wood.waste import PartUse
from units import built, chest, estimated


def bay(holds: str = "open", **changes: Any) -> dict[str, Any]:
    """A chest with two shelves in the bay under its drawers."""
    data = chest({name.replace("__", "."): value for name, value in changes.items()})
    data["body"] = {"width": "30", "depth": "14", "overall_height": "40"}
    data["rows"] = [{"height": "6"}, {"across": [{"holds": holds, "shelves": 2}]}]
    return data


def shelves(data: dict[str, Any]) -> dict[str, Any]:
    """The boards and the edges of the shelves, by their lines."""
    return {part.line: part for part in built(data).parts if part.line in ("C9", "C12")}


def test_a_shelf_in_an_open_bay_is_a_board_of_the_show_wood_and_wants_no_strip():
    """As deep as the opening, less the 1/4 by which it stays behind the front edge."""
    made = built(bay())
    [space] = [each for each in made.face.spaces if each.shelves]
    found = shelves(bay())

    assert list(found) == ["C9"]
    shelf = found["C9"]
    assert (shelf.wood, shelf.use, shelf.face) == ("cherry", PartUse.CASE, FaceClass.EDGE)
    assert shelf.width == pytest.approx(space.depth - 1 / 4)


def test_a_shelf_behind_doors_is_of_the_inside_wood_behind_a_strip():
    found = shelves(bay("doors"))

    assert (found["C9"].wood, found["C12"].wood) == ("poplar", "cherry")


def test_shelves_are_of_another_wood_where_one_is_asked_for():
    found = shelves(bay(woods__shelves={"wood": "soft maple"}))

    assert (found["C9"].wood, found["C12"].wood) == ("soft maple", "cherry")
    assert (found["C9"].use, found["C9"].face) == (PartUse.INSIDE, FaceClass.INSIDE)


def test_shelves_of_a_plywood_case_stay_of_its_sheet():
    found = shelves(bay(case__sides="plywood"))

    assert found["C9"].sheet
    assert found["C12"].wood == "cherry"


def test_the_order_and_the_price_follow_the_wood_of_open_shelves():
    def feet(data: dict[str, Any], wood: str) -> float:
        return sum(line.feet for line in estimated(data).order if line.wood == wood)

    seen, plain = bay(), bay(woods__shelves={"wood": "poplar"})

    assert feet(seen, "cherry") > feet(plain, "cherry")
    assert feet(seen, "poplar") < feet(plain, "poplar")
    assert estimated(seen).price.charges.direct > estimated(plain).price.charges.direct


def test_the_offer_names_shelves_of_a_wood_of_their_own():
    maple = bay(woods__shelves={"wood": "soft maple"})

    assert any("shelves are solid soft maple" in line for line in describe(built(maple)))
    assert "The shelves are soft maple instead of cherry." in otherwise(built(bay()), built(maple))
