"""The laps of fronts that were planed to unlike thickness, as the joints page has them."""

from casewright.measure.ledger import Ledger
from casewright.measure.lengths import LengthUnit
from casewright.papers.writing import Writing
from casewright.pieces.drawers.front_sets import front_sets
from casewright.web.units.joints import of_the_set, settings_shown
from units import built, chest


def test_every_lap_stands_with_the_drawers_that_have_it_and_so_does_what_the_side_is_shorter():
    thin = {"R2-1-F": {"thickness": "23/32"}}
    rows = {"rows": [{"height": "6"}] * 2, "body.opening_total": "12", "measured.parts": thin}
    [held] = front_sets(built(chest(rows)).drawers)
    writing = Writing(unit=LengthUnit.INCH)

    settings = of_the_set(held, settings_shown(held.joint, writing, Ledger(), ""), writing)

    by_lap = [
        (each.label, each.value.text, each.note.partition(";")[0])
        for each in settings
        if each.name in {"lap", "side_shortening"}
    ]
    assert by_lap == [
        ("Lap", "5/32", "A-R2-1"),
        ("Lap", "3/16", "A-R1-1"),
        ("Side shorter than the drawer", "5/32", "A-R2-1"),
        ("Side shorter than the drawer", "3/16", "A-R1-1"),
    ]
