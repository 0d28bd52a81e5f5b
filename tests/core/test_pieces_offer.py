"""What a quote says, and that its figures agree; what it costs the shop is nowhere in it."""

import json
from datetime import date

import pytest
from pydantic import ValidationError

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.job_estimate import estimate_job
from casewright.pieces.words.clauses import cautions_of, clauses, room_humidity
from casewright.pieces.words.offer import Offer, OfferedOption, Party, offer, option, stands_until
from units import TODAY, built, chest, dresser, own_shop, unit

SHOP = Party(name="Bench and Plane", lines=("1 Mill Lane",))
CUSTOMER = Party(name="M. Ferrar", lines=("2 Marrow Street", "m.ferrar@example.org"))


def job(*files, own=None):
    """The estimate of a job of these units."""
    return estimate_job(tuple(unit(data) for data in files), own or example_shop(), TODAY)


def offered(*files, own=None, **said) -> Offer:
    """The offer of a job of these units."""
    return offer(
        job(*files, own=own),
        own or example_shop(),
        offered_by=SHOP,
        customer=CUSTOMER,
        job_number="27",
        job_name="Bedroom",
        quote_number="27-1",
        **said,
    )


def test_the_worked_dresser_is_offered_at_the_printed_price_and_stages():
    held = offered(dresser())

    assert (held.net_cents, held.tax_cents, held.total_cents) == (16_150_00, 969_00, 17_119_00)
    assert [(stage.share, stage.amount_cents) for stage in held.stages] == [
        (0.1, 1_711_90),
        (0.4, 6_847_60),
        (0.25, 4_279_75),
        (0.25, 4_279_75),
    ]
    assert held.ready_by == date(2027, 3, 15)


def test_units_are_offered_with_their_words_drawings_and_prices():
    held = offered(dresser(), chest({"code": "B", "count": 2}), drawings={"B": "<svg></svg>"})

    assert [(each.code, each.count, each.drawing) for each in held.units] == [
        ("A", 1, ""),
        ("B", 2, "<svg></svg>"),
    ]
    assert sum(each.price_cents for each in held.units) == held.net_cents
    assert "two are made" in held.units[1].words[0]


def test_an_offer_is_read_back_as_it_was_written():
    held = offered(
        dresser(),
        issued_on=TODAY,
        valid_until=stands_until(TODAY, 30),
        unit=LengthUnit.MILLIMETRE,
        options=(OfferedOption(label="Walnut", words="Case in walnut.", difference_cents=-50),),
    )

    assert Offer.model_validate_json(held.model_dump_json()) == held
    assert held.valid_until == date(2026, 12, 25)
    assert "mm wide" in held.units[0].words[0]


def test_nothing_of_cost_margin_hours_or_wage_stands_in_an_offer():
    own = own_shop(markup=0.37, miles=83, extras=[{"label": "secret errand", "amount": "77.77"}])
    held = offered(dresser(), own=own)
    keys: set[str] = set()
    json.loads(held.model_dump_json(), object_hook=keys.update)

    assert [key for key in keys for word in ("cost", "margin", "hour", "rate", "wage") if word in key] == [
        "tax_rate"
    ]
    assert "secret errand" not in held.model_dump_json()


def test_an_option_shows_its_difference():
    base, other = job(dresser()), job(dresser({"woods.case": "walnut"}))

    held = option("Walnut", "Case and fronts in walnut.", base, other)

    assert held.difference_cents == other.price.asked - 16_150_00


def test_an_offer_whose_figures_disagree_cannot_exist():
    held = json.loads(offered(dresser()).model_dump_json())
    held["units"][0]["price_cents"] -= 1

    with pytest.raises(ValidationError, match="the prices of the units add up to 1614999 cents"):
        Offer.model_validate(held)


def test_the_shops_own_words_take_the_place_of_the_usual_ones():
    held = offered(dresser(), terms=("Cash.",), not_included=(), cautions=("Mind the step.",))

    assert (held.terms, held.not_included, held.cautions) == (("Cash.",), (), ("Mind the step.",))


def test_the_usual_words_cover_what_a_contract_of_the_trade_covers():
    held = offered(dresser())

    assert {clause.key for clause in clauses("terms")} >= {
        *("scope", "wood", "changes", "payment", "completion", "storage", "ownership", "warranty"),
        *("cancellation", "design", "disputes"),
    }
    assert held.terms == tuple(clause.text for clause in clauses("terms"))
    assert held.not_included != ()


@pytest.mark.parametrize("part", ["terms", "not_included", "cautions"])
def test_every_clause_says_where_it_comes_from(part):
    assert [clause.key for clause in clauses(part) if not (clause.source and clause.basis)] == []


@pytest.mark.parametrize("key", ["ownership", "warranty", "cancellation", "disputes"])
def test_clauses_that_touch_the_law_ask_the_shop_to_confirm_local_rules(key):
    (note,) = (clause.note for clause in clauses("terms") if clause.key == key)

    assert "Confirm local rules" in note


def test_the_customer_of_a_free_standing_piece_is_told_of_the_wall_restraint():
    cautions = cautions_of((built(dresser()),))

    assert [text for text in cautions if "must be fitted to the wall" in text] != []


def test_a_piece_that_is_built_in_is_offered_without_the_wall_restraint():
    cautions = cautions_of((built(dresser({"use": {"free_standing": False}})),))

    assert [text for text in cautions if "wall" in text] == []


def test_the_humidity_that_a_piece_was_made_for_is_told():
    # 6.2 and 11.0 % moisture at 70 °F are 30 and 60 % humidity by the Wood Handbook's Table 4-2
    assert room_humidity((built(dresser()),)) == (30, 60)
    assert [text for text in cautions_of((built(dresser()),)) if "between 30 and 60 %" in text] != []


def test_the_humidity_of_several_pieces_is_what_suits_all_of_them():
    dry = {"driest": {"humidity": 40, "temperature_f": 70}, "wettest": {"humidity": 70, "temperature_f": 70}}

    assert room_humidity((built(dresser()), built(chest({"season": dry})))) == (40, 60)
