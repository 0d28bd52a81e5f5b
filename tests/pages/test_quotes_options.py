"""Options on a quote: each shows its difference, follows its unit, and can be left out or taken out."""

import pytest

from casewright.records.jobs import UnitOption
from casewright.records.people import Shop
from casewright.records.sessions import reading
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import figures_text
from casewright.shop.jobs import load_job
from casewright.shop.options import changes_between, with_changes
from casewright.shop.units import spec_text
from pages.commissions import commission, kept, link_on
from units import chest, unit

IN_WALNUT = {"label": "In walnut", "case": "walnut"}


@pytest.fixture
def job(shop):
    """A job with one small chest."""
    return commission(shop)


def add(job, who, quote_id, status=200, **fields):
    """Adds an option to the job's first unit."""
    given = {"unit": job.unit_ids()[0]} | fields
    return who.post(f"/quotes/{quote_id}/options", status=status, **given)


def priced(shop, job, *files):
    """The asked price of a job of these units, worked out without any page [cent]."""
    with reading(shop.engine, shop.shop_id) as db:
        text = figures_text(db, db.get_one(Shop, shop.shop_id), load_job(db, job.job_id))
    today = shop.clock.now.date()
    return int(estimated_job(tuple(with_code(each) for each in files), text, today).price.asked)


def with_code(file):
    """A unit file as text."""
    return spec_text(unit(file))


def options_kept(shop):
    """Every option of the shop."""
    with reading(shop.engine, shop.shop_id) as db:
        return list(db.query(UnitOption))


def test_an_option_shows_its_difference_to_the_cent(job, maker, shop):
    quote_id = job.draft(maker)

    page = add(job, maker, quote_id, **IN_WALNUT)

    more = priced(shop, job, chest({"woods.case": "walnut"})) - priced(shop, job, chest())
    assert f"+${more // 100:,}.00" in page.text
    assert "The case, the top and the drawer fronts are walnut instead of cherry." in page.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("fields", "changes"),
    [
        ({"fronts": "walnut"}, {"woods.fronts": "walnut"}),
        ({"drawers": "hard maple"}, {"woods.drawers": "hard maple"}),
        ({"bottom": "birch plywood"}, {"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}}),
        ({"dividers": "sliding dovetail"}, {"case.divider_end": "sliding dovetail"}),
        ({"finish": "oil", "coats": "2"}, {"finish.product": "oil", "finish.show_coats": 2}),
        ({"pulls": "knob"}, {"pulls.item": "knob"}),
        ({"count": "3"}, {"count": 3}),
    ],
)
def test_whatever_an_option_changes_its_difference_is_that_of_the_whole_job(
    job, maker, shop, fields, changes
):
    quote_id = job.draft(maker)

    add(job, maker, quote_id, label="Otherwise", **fields)

    maker.post(f"/quotes/{quote_id}/sending", sure="1")
    offered = kept(shop, quote_id).offer["options"]
    assert [each["difference_cents"] for each in offered] == [
        priced(shop, job, chest(changes)) - priced(shop, job, chest())
    ]


def test_the_customer_reads_the_options_with_their_differences(job, maker, stranger):
    quote_id = job.draft(maker)
    add(job, maker, quote_id, **IN_WALNUT)
    page = maker.post(f"/quotes/{quote_id}/sending")

    read = stranger.get(link_on(page))

    assert "It could also be" in read.text
    assert "In walnut" in read.text
    assert "To have it another way, say which before you accept" in read.text


def test_an_option_that_is_not_ticked_is_not_offered(job, maker, shop):
    quote_id = job.draft(maker)
    add(job, maker, quote_id, **IN_WALNUT)
    option = options_kept(shop)[0]
    maker.get(f"/quotes/{quote_id}")
    maker.send(f"/quotes/{quote_id}/words", **{f"offer.{option.id}": ""})

    maker.post(f"/quotes/{quote_id}/sending", sure="1")

    assert kept(shop, quote_id).offer["options"] == []


def test_an_option_follows_its_unit_through_revisions(job, maker, shop):
    quote_id = job.draft(maker)
    add(job, maker, quote_id, **IN_WALNUT)
    wider = {"body.width": "30"}

    job.revise(job.unit_ids()[0], **wider)

    page = maker.get(f"/quotes/{quote_id}")
    more = priced(shop, job, chest(wider | {"woods.case": "walnut"})) - priced(shop, job, chest(wider))
    assert f"+${more // 100:,}.00" in page.text


def test_an_option_is_taken_out_and_stays_in_what_was_sent(job, maker, shop):
    quote_id = job.draft(maker)
    add(job, maker, quote_id, **IN_WALNUT)
    maker.post(f"/quotes/{quote_id}/sending", sure="1")

    maker.post(f"/quotes/{quote_id}/options/{options_kept(shop)[0].id}/removal")

    assert options_kept(shop) == []
    assert [each["label"] for each in kept(shop, quote_id).offer["options"]] == ["In walnut"]


def test_an_option_of_another_job_cannot_be_taken_out_here(job, maker, shop):
    other = commission(shop)
    theirs = other.draft(maker)
    add(other, maker, theirs, **IN_WALNUT)

    maker.post(f"/quotes/{job.draft(maker)}/options/{options_kept(shop)[0].id}/removal", status=404)

    assert len(options_kept(shop)) == 1


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"label": "", "case": "walnut"}, "Write what the customer reads"),
        ({"label": "The same"}, "Nothing is different from the unit as it is"),
        ({"label": "In gold", "case": "gold"}, "Choose one of the list."),
        ({"label": "To pull", "pulls": "wall restraint"}, "Choose one of the list."),
        ({"label": "Many", "count": "1000"}, "1000 is outside 1 to 100"),
        ({"label": "For another", "unit": "0000000000000"}, "Choose one of the units."),
    ],
)
def test_an_option_that_is_none_is_refused_and_what_was_typed_stays(job, maker, shop, fields, said):
    page = add(job, maker, job.draft(maker), status=422, **fields)

    assert said in page.text
    assert page.seen.title.startswith("Error: ")
    assert options_kept(shop) == []


def test_an_option_that_was_refused_is_taken_once_it_is_mended(job, maker, shop):
    quote_id = job.draft(maker)
    add(job, maker, quote_id, 422, label="In walnut", once="one form")

    page = add(job, maker, quote_id, **IN_WALNUT, once="one form")

    assert "In walnut" in page.text
    assert [each.label for each in options_kept(shop)] == ["In walnut"]


def test_an_option_that_fits_the_unit_no_more_is_shown_as_such_and_not_offered(job, maker, shop):
    quote_id = job.draft(maker)
    add(job, maker, quote_id, label="Slid in", dividers="sliding dovetail")
    unit_id = job.unit_ids()[0]
    job.revise(unit_id, **{"case.divider": "1/8"})

    page = maker.get(f"/quotes/{quote_id}")

    assert "cannot be offered" in page.text
    assert "It could also be" not in page.text


def test_among_several_units_an_option_says_whose_it_is(job, maker):
    job.add(name="Bedside")
    quote_id = job.draft(maker)

    page = maker.post(
        f"/quotes/{quote_id}/options", label="Bedside in oak", case="white oak", unit=job.unit_ids()[1]
    )

    assert "B: Bedside: The case, the top and the drawer fronts are white oak" in page.text


def typed_in_editor(job, who, **changes):
    """What the editor of the job's first unit would send, with some fields changed."""
    unit_id = job.unit_ids()[0]
    form = who.get(f"/units/{unit_id}").form(f"/units/{unit_id}")
    return f"/units/{unit_id}/options", dict(form.sent()) | changes


def test_what_is_typed_in_the_editor_can_be_kept_as_an_option(job, maker, shop):
    quote_id = job.draft(maker)
    address, typed = typed_in_editor(job, maker, **{"body.width": "30", "note": "Wider"})

    page = maker.post(address, **typed)

    assert page.address.startswith(f"/quotes/{quote_id}")
    assert [each.changes for each in options_kept(shop)] == [{"set": {"body.width": "30"}, "drop": []}]
    assert "Wider" in page.text
    assert "Overall 31-1/2 in wide instead of 25-1/2." in page.text


def test_an_option_without_a_name_is_called_by_what_it_changes(job, maker, shop):
    address, typed = typed_in_editor(job, maker, **{"body.width": "30"})

    page = maker.post(address, **typed)

    assert [each.label for each in options_kept(shop)] == ["Overall 31-1/2 in wide instead of 25-1/2"]
    assert page.address.startswith(f"/units/{job.unit_ids()[0]}")


def test_an_editor_that_changes_nothing_makes_no_option(job, maker, shop):
    address, typed = typed_in_editor(job, maker)

    page = maker.post(address, status=422, **typed)

    assert "Nothing is different" in page.text
    assert options_kept(shop) == []


def test_what_cannot_be_built_stays_in_the_editor(job, maker, shop):
    address, typed = typed_in_editor(job, maker, **{"body.width": "wide"})

    page = maker.post(address, status=422, **typed)

    assert page.form(f"/units/{job.unit_ids()[0]}").value("body.width") == "wide"
    assert options_kept(shop) == []


@pytest.mark.parametrize(
    "changes",
    [
        {"woods.case": {"wood": "walnut", "cut": "quarter"}},
        {"base": None},
        {"graduation": {"rule": "ratio", "ratio": 1.1}, "case.divider": "5/8"},
        {"rows": [{"columns": 2}, {}]},
        {"drawers.bottom": {"kind": "ply"}, "finish.product": "oil"},
        {},
    ],
)
def test_what_an_option_changes_turns_one_file_into_the_other(changes):
    base, other = chest({"finish.show_coats": 3, "woods.top": "ash"}), chest(changes)

    found = changes_between(base, other)

    assert with_changes(base, found) == other
