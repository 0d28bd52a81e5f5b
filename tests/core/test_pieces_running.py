"""How drawers run: battens, guides, full-length runners and slides, their sizes, parts and checks."""

from functools import cache

import pytest

from casewright.labour.standards import house_standards
from casewright.measure.findings import Verdict
from casewright.measure.saying import say
from casewright.papers.data import unit_data
from casewright.papers.run_words import run_facts
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import example_shop, shop
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.asked.slide_spec import house_slides
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.rules import slide_rules
from casewright.pieces.takeoff.drivers import count_drivers
from casewright.pieces.takeoff.rough import take_off

MILLIMETRE = 1 / 25.4


def unit(running, key="tall-chest", shop_of=None, **drawers):
    """A tall chest of single rows with its drawers on something else than runners."""
    asked = preset(key).spec_json
    asked["drawers"] = asked.get("drawers", {}) | {"running": running} | drawers
    return construct(read_as(UnitSpec, asked), shop_of or example_shop())


@cache
def hung():
    return unit({"kind": "side-hung"})


def found(built, rule):
    """The findings of a rule, by the drawer that they are about."""
    return {each.about: each for each in built.findings if each.rule == rule}


# Side space published for slides 12.7 mm thick: 12.9 to 13.2 mm at each side, so 13.05 mm is built for.
@pytest.mark.parametrize("opening", [38.0, 18.625, 23.40625, 600 * MILLIMETRE, 913.3 * MILLIMETRE])
def test_a_box_between_slides_leaves_what_the_sheet_allows_at_each_side(opening):
    first = house_slides()[0]

    width = slide_rules.slide_box_width(opening=opening, space=first.space, most=first.space_most)

    assert width == pytest.approx(opening - 2 * 13.05 * MILLIMETRE, abs=1 / 64)
    assert 12.9 <= slide_rules.side_space(opening=opening, box=width) / MILLIMETRE <= 13.2


def test_an_opening_of_38_takes_a_box_1_and_a_32nd_narrower():
    first = house_slides()[0]

    assert slide_rules.slide_box_width(opening=38.0, space=first.space, most=first.space_most) == 36 + 31 / 32


def test_under_mount_slides_hold_a_box_by_its_inside_width():
    """From memory: the opening less 42 mm inside, for sides of 5/8."""
    width = slide_rules.under_mount_box_width(
        opening=38.0, deduction=42 * MILLIMETRE, left_side=5 / 8, right_side=5 / 8
    )

    assert width - 2 * 5 / 8 == pytest.approx(38 - 42 * MILLIMETRE, abs=1 / 64)
    assert width <= 38 - 42 * MILLIMETRE + 2 * 5 / 8


def test_drawers_on_slides_are_as_long_as_the_longest_slide_that_goes_in():
    built = unit({"kind": "slides"})
    first = built.drawers[0]

    room = first.sizes.opening.depth - 1 / 8 - built.case.side_shrinkage
    longest = max(each for each in house_slides()[0].lengths if each <= room)
    assert first.sizes.length == longest
    assert first.travel == longest


def test_frames_are_left_out_where_nothing_runs_on_them():
    lines = {
        running: {part.line for part in unit({"kind": running}).parts} for running in ("slides", "side-hung")
    }

    assert not lines["slides"] & {"W1", "W2", "W3", "W4", "H1"}
    assert "C3" in lines["slides"]
    assert lines["side-hung"] & {"W1", "W2", "W3", "W4", "H1"} == {"H1"}


def test_a_batten_is_as_long_as_its_opening_is_deep_and_lies_in_its_groove():
    built = hung()
    drawer = built.drawers[0]
    batten = next(part for part in built.parts if part.code == f"A-H-{drawer.sizes.code}-L")

    groove, sizes = drawer.run.groove, drawer.sizes
    assert (batten.length, batten.width, batten.thickness) == (sizes.opening.depth, 1 / 2, 1 / 4)
    assert groove.width == 1 / 2 + 1 / 32
    # bp + 1/32 - g_s, with the clearance of a wide opening
    assert groove.depth == 1 / 4 + 1 / 32 - 1 / 32
    assert groove.left == sizes.left_side - groove.depth
    side = next(part for part in built.parts if part.code == f"{drawer.code}-SL")
    assert batten.box.z + batten.box.height == pytest.approx(side.box.z + groove.height + groove.width)
    assert "slotted at the rear" in str(batten.ends[0])


def test_a_batten_that_leaves_too_little_of_the_side_is_stopped_with_what_would_do():
    finding = found(unit({"kind": "side-hung", "projection": "3/8"}), "side left at batten groove")["A-R1-1"]

    assert finding.verdict is Verdict.STOP
    assert finding.found == pytest.approx(1 / 8)
    assert "1/16 in less" in str(finding.remedy)


def test_a_batten_groove_keeps_clear_of_the_bottoms_groove():
    finding = found(unit({"kind": "side-hung", "height": "1/2"}), "batten groove above bottom")["A-R1-1"]

    assert finding.verdict is Verdict.STOP
    assert "3/4 in up or higher" in str(finding.remedy)


def test_a_drawer_that_hangs_stays_off_the_rail_when_it_swells():
    assert {each.verdict for each in found(hung(), "hangs clear when wettest").values()} == {Verdict.PASS}
    tight = unit({"kind": "side-hung"}, clearances={"bottom": "0"})
    assert {each.verdict for each in found(tight, "hangs clear when wettest").values()} == {Verdict.STOP}


def test_a_centre_guide_goes_under_the_bottom_with_a_32nd_to_spare():
    built = unit({"kind": "centre guide"}, groove={"height": "1/2"})
    drawer = built.drawers[0]
    guide = next(part for part in built.parts if part.line == "H3")

    # hb - (Bt - gw) - 1/32: 1/2 - (3/8 - 1/4) - 1/32
    assert drawer.run.guide.height == 1 / 2 - (3 / 8 - 1 / 4) - 1 / 32
    assert drawer.run.guide.notch == guide.width + 1 / 16
    assert guide.length == drawer.sizes.opening.depth - drawer.sizes.front
    assert found(built, "guide height")["A-R1-1"].verdict is Verdict.PASS
    shoe = next(part for part in built.small_parts if part.name == "Guide shoe")
    assert shoe.quantity == len(built.drawers)


def test_a_guide_that_is_too_high_is_stopped():
    built = unit({"kind": "centre guide", "guide_height": "3/8"}, groove={"height": "1/2"})

    finding = found(built, "guide height")["A-R1-1"]
    assert finding.verdict is Verdict.STOP
    assert "11/32 in high" in str(finding.remedy)


def test_full_length_runners_reach_from_the_rail_to_the_back_and_need_no_frame():
    built = unit({"kind": "full-length runners"})
    runners = [part for part in built.parts if part.line == "W6"]
    rail = built.spec.case.rail_width

    assert {part.length for part in runners} == {built.face.opening_depth - rail - built.case.slack}
    assert {part.box.y for part in runners} == {rail}
    assert len(runners) == 2 * (len(built.face.rows) - 1)
    assert not [part for part in built.parts if part.line in {"W1", "W2"}]


def test_full_length_runners_end_before_the_rear_rail_that_an_upright_needs():
    built = construct(preset("tool-chest").spec(), example_shop())
    [rear] = [part for part in built.parts if part.line == "W1"]
    beside = [part for part in built.parts if part.line == "W6" and part.code.startswith("A-D1-")]

    assert len(beside) == 2
    assert {part.box.y + part.box.depth for part in beside} == {rear.box.y - built.case.slack}


def test_full_length_runners_are_refused_between_legs():
    with pytest.raises(CannotBuild, match=r"drawers\.running\.kind: full-length runners"):
        unit({"kind": "full-length runners"}, key="bedside-on-legs")


def test_between_legs_slides_get_packing_flush_with_the_legs():
    built = unit({"kind": "slides"}, key="bedside-on-legs")
    legs = built.spec.legs

    packing = [part for part in built.parts if part.line == "H2"]
    assert {part.thickness for part in packing} == {legs.leg - legs.setback - legs.apron}
    assert len(packing) == 2 * len(built.drawers)


def test_a_slide_that_the_table_does_not_have_is_refused_with_those_that_it_has():
    with pytest.raises(CannotBuild, match=r"there is no slide “best”.*“under-mount, full travel”"):
        unit({"kind": "slides", "slide": "best"})


def test_a_length_that_the_slide_is_not_sold_in_is_refused_with_the_nearest():
    with pytest.raises(CannotBuild) as refused:
        unit({"kind": "slides", "length": "15"})

    assert "not sold 15 in long; the nearest is 14 in" in str(refused.value.args[0])


def test_slides_that_are_too_long_for_the_case_are_stopped():
    finding = found(unit({"kind": "slides", "length": "28"}), "slide length")["A-R1-1"]

    assert finding.verdict is Verdict.STOP


def test_a_case_shallower_than_the_shortest_slide_is_refused():
    only_long = ShopSpec(slides=(house_slides()[0].model_copy(update={"lengths": (28.0,)}),))

    with pytest.raises(CannotBuild, match="the shortest “side-mount, full travel” is 28 in long"):
        unit({"kind": "slides"}, shop_of=shop(only_long))


def test_a_measured_opening_keeps_the_box_within_what_the_slide_takes():
    asked = preset("tall-chest").spec_json
    asked["drawers"] = {"running": {"kind": "slides"}}
    asked["measured"] = {"openings": {"R1-1": {"width": "825.3 mm"}}}

    built = construct(read_as(UnitSpec, asked), example_shop())

    for rule in ("side space, least", "side space, most"):
        assert found(built, rule)["A-R1-1"].verdict is Verdict.PASS


def test_a_load_beyond_the_slides_rating_is_stopped():
    weak = ShopSpec(slides=(house_slides()[0].model_copy(update={"load_lb": 20.0}),))
    full = found(unit({"kind": "slides"}, shop_of=shop(weak)), "slide load")
    typed = found(unit({"kind": "slides"}, load_lb=150), "slide load")["A-R1-1"]

    assert {each.verdict for each in full.values()} == {Verdict.STOP}
    assert typed.verdict is Verdict.STOP
    assert typed.found > 150


def test_under_mount_slides_ask_for_the_recess_and_for_thin_sides():
    under = {"kind": "slides", "slide": "under-mount, full travel"}
    shallow = unit(under)
    deep = unit(under, groove={"height": "5/8"}, side="5/8")
    thick = unit(under, groove={"height": "5/8"}, side="3/4")

    assert found(shallow, "bottom recess")["A-R1-1"].verdict is Verdict.STOP
    assert found(deep, "bottom recess")["A-R1-1"].verdict is Verdict.PASS
    assert found(deep, "sides for the slide")["A-R1-1"].verdict is Verdict.PASS
    assert found(thick, "sides for the slide")["A-R1-1"].verdict is Verdict.STOP


def test_slides_are_bought_in_pairs_and_weigh_on_the_drawer_and_on_the_case():
    wood, built = unit({"kind": "runners"}), unit({"kind": "slides"})

    item = next(each for each in built.hardware if each.item == "slides")
    assert item.quantity == len(built.drawers)
    assert "side-mount, full travel" in item.note
    assert not [each for each in wood.hardware if each.item == "slides"]
    pair = house_slides()[0].weight_lb * built.drawers[0].sizes.length / 12
    light = ShopSpec(slides=(house_slides()[0].model_copy(update={"weight_lb": 0.0}),))
    without = unit({"kind": "slides"}, shop_of=shop(light))
    assert built.masses.total - without.masses.total == pytest.approx(pair * len(built.drawers))
    drawer = built.drawers[0].code
    gained = built.masses.drawers[drawer].weight - without.masses.drawers[drawer].weight
    assert gained == pytest.approx(pair / 2)


def test_slides_that_open_three_quarters_say_so_to_the_tip_screen():
    built = unit({"kind": "slides", "slide": "side-mount, three-quarter travel"})

    assert built.drawers[0].travel == pytest.approx(0.75 * built.drawers[0].sizes.length)


@pytest.mark.parametrize("kind", ["slides", "side-hung"])
def test_between_drawers_that_hang_stands_a_partition_as_deep_as_the_case(kind):
    built, on_runners = unit({"kind": kind}, key="low-chest"), unit({"kind": "runners"}, key="low-chest")

    assert not [part for part in built.parts if part.line == "C4"]
    assert [part for part in built.parts if part.line == "C8"]
    assert [part for part in on_runners.parts if part.line == "C4"]


def test_a_box_on_slides_is_mounted_and_adjusted_instead_of_planed_to_fit():
    wood, metal = (count_of({"kind": kind}) for kind in ("runners", "slides"))

    assert (wood["D13"], wood["D16"], wood["E06"]) == (5, 5, 0)
    assert (metal["D13"], metal["D16"], metal["E06"], metal["E07"], metal["E41"]) == (0, 0, 5, 5, 5)


def test_battens_and_guides_have_times_of_their_own():
    assert count_of({"kind": "side-hung"})["E42"] == 5
    assert count_of({"kind": "centre guide"})["E43"] == 5


def count_of(running):
    """How often each operation is done, by its code."""
    built = unit(running)
    counted = count_drivers(built, take_off(built, example_shop()))
    return {each.code: counted.get(each.driver, 0) for each in house_standards().operations}


def test_an_applied_front_covers_the_slides_and_leaves_its_box_the_length_of_a_slide():
    bare, built = unit({"kind": "slides"}), unit({"kind": "slides"}, style={"kind": "applied front"})
    drawer = built.drawers[0]
    side = next(part for part in built.parts if part.code == f"{drawer.code}-SL")

    assert found(bare, "front covers slides")["A-R1-1"].verdict is Verdict.STOP
    assert found(built, "front covers slides")["A-R1-1"].verdict is Verdict.PASS
    assert drawer.sizes.box_length == drawer.run.slides.length
    assert drawer.sizes.length == drawer.run.slides.length + drawer.sizes.face.thickness
    # The box is lower than its opening by the headroom, and stands on what lies under it.
    opening = drawer.sizes.opening
    assert opening.height - drawer.sizes.side_height >= house_slides()[0].headroom
    assert side.box.z == pytest.approx(built.face.base_height + opening.bottom + house_slides()[0].under)


def test_a_front_before_the_case_stops_against_it_and_needs_no_blocks():
    built = unit({"kind": "runners"}, style={"kind": "full overlay"})

    assert built.drawers[0].run.stop is None
    assert not [part for part in built.small_parts if part.name == "Drawer stop"]


def test_a_load_that_is_typed_bends_the_bottom_as_a_beam_under_it():
    """Uniformly loaded strip: 5 q w^4 / (384 E t^3 / 12), with the load spread over the bottom."""
    light, heavy = unit({"kind": "runners"}, load_lb=1), unit({"kind": "runners"}, load_lb=120)
    inside = heavy.drawers[-1].sizes.inside

    ratio = heavy.drawers[-1].bottom.sag / light.drawers[-1].bottom.sag
    clothes = 8.5 * inside.height / 1728
    assert ratio == pytest.approx(120 / (inside.width * inside.depth) / clothes)


def test_the_card_of_an_under_mount_drawer_says_where_its_back_is_notched_and_bored():
    """From memory: notches 35 × 13 mm, a hole of 6 mm, 7 mm in and 11 mm up; the maker's sheet governs."""
    under = unit(
        {"kind": "slides", "slide": "under-mount, full travel"},
        groove={"height": "1/2"},
        side="5/8",
        bottom={"kind": "ply", "hold": "four grooves"},
    )
    facts = {fact.label: fact for fact in run_facts(under.drawers[0])}
    assert str(facts["Rear notches"].value) == str(say("{:bare} × {}", 35 * MILLIMETRE, 13 * MILLIMETRE))
    assert str(facts["Hook holes"].value) == str(say("{:bare} in, {} up", 7 * MILLIMETRE, 11 * MILLIMETRE))
    for label in ("Rear notches", "Hook holes"):
        assert "maker" in str(facts[label].note)
    beside = unit({"kind": "slides"})
    assert "Hook holes" not in {fact.label for fact in run_facts(beside.drawers[0])}


def test_slides_longer_than_the_opening_are_stopped_and_still_written_out():
    built = unit({"kind": "slides", "length": "24"})

    assert found(built, "depth season")["A-R1-1"].verdict is Verdict.STOP
    assert unit_data(built)["drawers"]
