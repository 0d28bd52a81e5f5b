"""Every check beside the form leads to a field that is there, and that has to do with what it says."""

import pytest

from casewright.pieces.asked.presets import presets
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.estimate import estimate
from casewright.shop.units import spec_text
from casewright.web.units.finding_fields import ANYWHERE, OF_CASE, OF_DRAWERS, PARTS, WHOLE, finding_field
from casewright.web.units.form import asked_fields, counts, values_of
from casewright.web.units.rows import shape_of
from pages.unit_jobs import new_job, new_unit
from units import TODAY, changed, dresser, unit

BAD = {
    "thin": {"drawers.front": "5/8", "drawers.lap": "1/8"},
    "wide": {"body.width": "70"},
    "shallow": {"body.depth": "12"},
    "wet": {"season.shop.moisture": 14},
    "steep": {"drawers.front_joint": {"slope": 4}},
    "low groove": {"drawers.groove.height": "1/8"},
    "toe base": {"base": {"kind": "toe"}},
    "notched": {
        "drawers.bottom": {"kind": "ply", "nominal": "1/4"},
        "rows.4.notch": {"width": "16", "depth": "6", "pipes": "16-1/2", "reach": "7"},
    },
    "on slides": {"drawers.style": {"kind": "applied front"}, "drawers.running": {"kind": "slides"}},
}
SPECS = {each.key: each.spec() for each in presets()} | {
    name: unit(changed(dresser(), changes)) for name, changes in BAD.items()
}


def found(name):
    """The form of a unit, and each of its findings with the field that it leads to."""
    spec = SPECS[name]
    values = values_of(spec_text(spec))
    field = finding_field(values)
    return values, [(each, field(each)) for each in estimate(spec, example_shop(), TODAY).findings]


@pytest.mark.parametrize("name", SPECS)
def test_a_finding_leads_to_a_field_that_counts(name):
    values, findings = found(name)
    ids = {
        each.id
        for each in asked_fields(shape_of(values))
        if each.name.startswith("rows.") or counts(each, values)
    }

    assert {where for _, where in findings} - ids == set()


@pytest.mark.parametrize("name", SPECS)
def test_no_finding_is_left_to_the_height_of_the_whole(name):
    _, findings = found(name)

    assert {each.rule for each, where in findings if where == WHOLE.replace(".", "-")} == set()


def test_every_field_of_the_tables_is_one_of_the_form():
    known = {each.name for each in asked_fields(())}
    told = {name for table in (OF_DRAWERS, OF_CASE, ANYWHERE, PARTS) for _, names in table for name in names}

    assert {name for name in told if not name.startswith("@")} - known == set()


@pytest.mark.parametrize(
    ("unit_name", "rule", "field"),
    [
        ("desk-pedestals", "tip push", "body-depth"),
        ("desk-pedestals", "top fixing", "top-fixing"),
        ("desk-pedestals", "file drawer", "rows-2-across-1-rows-3-height"),
        ("desk-pedestals", "knee space", "rows-2-across-2-width"),
        ("sideboard", "shelf sag", "shelving-thickness"),
        ("sideboard", "door hinges", "doors-hinge"),
        ("dresser", "bottom sag", "drawers-bottom-thickness"),
        ("dresser", "back gaps", "back-kind"),
        ("dresser", "JC9", "rows-1-front_tails"),
        ("dresser", "wide boards", "grain-fronts"),
        ("dresser", "moisture range", "season-shop-moisture"),
        ("kitchen-bank", "slide load", "drawers-running-slide"),
        ("wall-hung-bank", "cleat in the studs", "cleat-studs"),
        ("wall-hung-bank", "lap fits", "case-lap"),
        ("dresser", "tip scope", "use-clothing"),
        ("notched", "air beside pipes", "rows-5-notch-width"),
        ("notched", "air before pipes", "rows-5-notch-depth"),
        ("notched", "pipes through the case", "rows-5-notch-depth"),
        ("notched", "plumbing behind drawers", "rows-5-notch-width"),
        ("notched", "bottom without a bar", "drawers-bottom-sheet"),
    ],
)
def test_what_a_finding_is_about_is_where_it_leads(unit_name, rule, field):
    _, findings = found(unit_name)

    assert field in {where for each, where in findings if each.rule == rule}


def test_beside_the_form_a_caution_leads_to_its_field(shop, maker):
    page = maker.get(f"/units/{new_unit(shop, new_job(shop))}").html

    part = page.partition('<ul class="findings">')[2].partition("</ul>")[0]
    assert part.count("<li>") == part.count('<strong><a href="#') > 0
