"""Drawers notched around pipes: what can be notched, how the new corners are joined, what is said of it."""

import json

import pytest

from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.papers.drawer_data import drawer_data
from casewright.papers.kept_strips import joint_strips
from casewright.papers.notching import notch_strips
from casewright.papers.run_words import run_facts
from casewright.pieces.asked.reading import CannotRead, read_unit, write_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.gauges_to_set import GAUGE_FOR_BACK, gauges_to_set
from casewright.pieces.built.joints import other_joints
from casewright.pieces.built.measuring import measurable, with_bench
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.built.rework import rework
from casewright.pieces.built.rework_fates import Fate
from casewright.pieces.built.rework_stages import Reached
from casewright.pieces.built.season import unit_year
from casewright.pieces.drawers.end_words import END_OF_A_BOARD
from casewright.pieces.takeoff.cut_parts import cut_data_for
from casewright.pieces.words.clauses import cautions_of
from casewright.pieces.words.describe import describe
from casewright.pieces.words.otherwise import otherwise
from casewright.wood.year import MONTHS
from notched import KITCHEN, NOTCH, kitchen
from units import built, changed, chest, estimated, unit

BACKS = ("through dovetail", "housing", "as the front")
FRONTS = ("half-blind dovetail", "through dovetail", "lock rabbet", "box joint", "rabbet and pins")


def of_second(made):
    """The parts of its second drawer by their marks."""
    code = f"{made.drawers[1].code}-"
    return {part.code.removeprefix(code): part for part in made.parts if part.code.startswith(code)}


def refused(data):
    """What is said against it."""
    with pytest.raises(REFUSALS) as said:
        built(data)
    return str(said.value)


def found(made, rule):
    return [finding for finding in made.findings if finding.rule == rule]


def test_a_unit_without_notches_has_nothing_of_them():
    made = built(KITCHEN)

    assert all(drawer.sizes.notch is None and drawer.bottom.cut_out is None for drawer in made.drawers)
    assert not of_second(made).keys() & {"BL", "BR", "IL", "IR", "IB"}
    rules = {finding.rule for finding in made.findings}
    assert not any(rule.startswith(("air b", "plumbing", "pipes")) for rule in rules)
    assert "E65" not in {line.code for line in estimated(KITCHEN).labour}


def test_a_notch_changes_no_part_of_the_case_and_no_other_drawer():
    plain, notched = ({part.code: part for part in built(data).parts} for data in (KITCHEN, kitchen()))

    changed_codes = {code for code in plain.keys() | notched.keys() if plain.get(code) != notched.get(code)}
    assert changed_codes == {f"A-R2-1-{mark}" for mark in ("B", "N", "BL", "BR", "IL", "IR", "IB")}


def test_a_file_with_a_notch_is_written_and_read_again_unchanged():
    notch = {"width": "8 in", "depth": "229", "off": "2 in", "toward": "right"}
    spec = unit(
        chest(
            {"unit": "mm", "body": {"width": 900, "depth": 500, "opening_total": 450}, "rows.1.notch": notch}
        )
    )

    assert read_unit(write_unit(spec)) == spec


@pytest.mark.parametrize("front", FRONTS)
@pytest.mark.parametrize("back", BACKS)
def test_the_boards_around_a_notch_close_with_any_corners(front, back):
    made = built(kitchen({"drawers.front_joint": {"kind": front}, "drawers.back_joint": {"kind": back}}))

    parts, notch = of_second(made), made.drawers[1].sizes.notch
    inner, rear = parts["IL"].box, parts["BL"].box
    # From within its joint with the inner back to within that with the short back.
    assert parts["IB"].box.y <= inner.y < parts["IB"].box.y + notch.head
    assert rear.y < inner.y + inner.depth <= rear.y + rear.depth
    assert parts["IR"].box.x - (inner.x + inner.width) == pytest.approx(notch.width)
    end = made.drawers[1].sizes.box_length
    assert end - (parts["IB"].box.y + notch.head) == pytest.approx(notch.depth)
    # Each back of an arm goes into its side and its inner side, or past them to their outer faces.
    assert parts["SL"].box.x <= rear.x < parts["SL"].box.x + 1 / 2
    assert inner.x < rear.x + rear.width <= inner.x + 1 / 2


def test_housed_backs_are_pinned_around_the_notch():
    made = built(kitchen({"drawers.back_joint": {"kind": "housing"}}))

    parts, joints = of_second(made), made.drawers[1].joints
    assert (joints.back_family, joints.notch.family) == ("housing", "pinned-rabbet")
    assert parts["BL"].ends == (END_OF_A_BOARD["housing"], END_OF_A_BOARD["pinned-rabbet"])
    assert parts["BR"].ends == tuple(reversed(parts["BL"].ends))
    # Backs stand 1/2 in from the ends of the sides; lips of 1/4 cover both ends of the inner sides.
    assert parts["IL"].length == 9 - 1 / 2 + 1 / 2 - 2 * 1 / 4


@pytest.mark.parametrize(
    ("hold", "length", "depth"),
    [("under the back", 8, 9), ("screwed under", 8, 9), ("four grooves", 8.5625, 9)],
)
def test_a_bottom_is_cut_out_flush_or_as_far_as_its_grooves_hold_it(hold, length, depth):
    made = built(kitchen({"drawers.bottom": {"kind": "ply", "hold": hold}}))

    cut, parts = made.drawers[1].bottom.cut_out, of_second(made)
    assert (cut.length, cut.depth) == (length, depth)
    # The cut-out lies evenly under the notch.
    middle = parts["N"].box.x + cut.along + cut.length / 2
    assert middle == pytest.approx(parts["IB"].box.x + parts["IB"].box.width / 2)
    assert parts["IL"].box.z == parts["BL"].box.z == parts["IB"].box.z
    stands_on_it = hold != "four grooves"
    assert (parts["IL"].box.z >= parts["N"].box.z + parts["N"].thickness - 1e-9) is stands_on_it


@pytest.mark.parametrize(
    ("changes", "notch", "field"),
    [
        ({}, {"width": "16", "depth": "9"}, "rows.2.notch.width: drawer R2-1 keeps"),
        ({}, {"width": "8", "depth": "9", "off": "4"}, "rows.2.notch.off: drawer R2-1 keeps"),
        ({}, {"width": "40", "depth": "9"}, "rows.2.notch.width: drawer R2-1 keeps 0 in"),
        ({}, {"width": "8", "depth": "19"}, "rows.2.notch.depth: drawer R2-1 keeps"),
        ({}, {"width": "8", "depth": "1"}, "rows.2.notch.depth: 1 in hardly reaches"),
        ({}, {"width": "1/2", "depth": "9"}, "rows.2.notch.width: 1/2 in is too narrow"),
        ({"body.width": "9"}, {"width": "2", "depth": "9"}, "rows.2.notch.width: drawer R2-1 is"),
        ({"rows.1.files": "letter"}, NOTCH, "rows.2.notch.width: hanging folders"),
        ({"drawers.bottom": {"kind": "solid"}}, NOTCH, "drawers.bottom.kind: row 2 has a notch"),
        ({"drawers.groove.slips": {}}, NOTCH, "drawers.groove.slips: row 2 has a notch"),
        (
            {"case.divider_kind": "web-frame", "drawers.running": {"kind": "centre guide"}},
            NOTCH,
            "drawers.running.kind: row 2 has a notch",
        ),
        (
            {"case.divider_kind": "rail", "rows.1.holds": "open"},
            NOTCH,
            "rows.2.notch.width: there is no drawer",
        ),
    ],
    ids=lambda value: str(value)[:40],
)
def test_what_cannot_be_notched_is_refused_at_its_field(changes, notch, field):
    assert refused(kitchen(changes, notch)).startswith(field)


def test_a_size_that_a_refusal_names_would_do():
    for field, notch in (("width", {"width": "16", "depth": "9"}), ("depth", {"width": "8", "depth": "19"})):
        most = refused(kitchen(notch=notch)).rpartition("make it ")[2].removesuffix(" or less")

        assert built(kitchen(notch={**notch, field: most})).drawers[1].sizes.notch is not None


def test_a_notch_in_a_row_of_a_column_is_named_by_its_path():
    rows = [{"across": [{"width": "11", "rows": [{}, {"notch": {"width": "6", "depth": "5"}}]}, {}]}]
    data = changed(KITCHEN, {"rows": rows, "case.divider_kind": "rail"})

    assert refused(data).startswith("rows.1.across.1.rows.2.notch.width: drawer R1-1-2-1")


@pytest.mark.parametrize("missing", ["width", "depth"])
def test_a_notch_needs_both_its_sizes(missing):
    notch = {name: size for name, size in NOTCH.items() if name != missing}

    with pytest.raises(CannotRead) as said:
        unit(kitchen(notch=notch))
    assert [each.field for each in said.value.problems] == [f"rows[2].notch.{missing}"]


@pytest.mark.parametrize(
    ("asked", "rule", "verdict"),
    [
        ({"pipes": "6"}, "air beside pipes", Verdict.PASS),
        ({"pipes": "7-1/2"}, "air beside pipes", Verdict.CAUTION),
        ({"pipes": "9"}, "air beside pipes", Verdict.STOP),
        ({"reach": "8"}, "air before pipes", Verdict.PASS),
        ({"reach": "9-1/4"}, "air before pipes", Verdict.CAUTION),
        ({"reach": "10"}, "air before pipes", Verdict.STOP),
    ],
)
def test_pipes_keep_their_air(asked, rule, verdict):
    (finding,) = found(built(kitchen(notch={**NOTCH, **asked})), rule)

    assert (finding.verdict, finding.about) == (verdict, "A-R2-1")


def test_a_remedy_for_too_little_air_gives_the_air():
    (finding,) = found(built(kitchen(notch={**NOTCH, "pipes": "7-1/2"})), "air beside pipes")
    wider = str(finding.remedy).removeprefix("Make the notch ").removesuffix(" in wider.")
    whole, _, part = wider.rpartition("-")
    over, under = part.split("/")
    width = 8 + float(whole or 0) + int(over) / int(under)

    (after,) = found(
        built(kitchen(notch={"width": width, "depth": "9", "pipes": "7-1/2"})), "air beside pipes"
    )
    assert after.verdict is Verdict.PASS


def test_on_wood_a_drawer_may_stand_to_one_side():
    notch = {"width": "6", "depth": "5", "pipes": "5"}
    data = chest({"drawers.bottom": {"kind": "ply"}, "rows.0.notch": notch})

    (finding,) = found(built(data), "air beside pipes")
    # 1/32 at each side of the drawer, and what two inner sides swell.
    assert 1 / 2 - 1 / 32 - 0.01 < finding.found < 1 / 2 - 1 / 32


def test_frames_in_the_way_of_pipes_are_named():
    data = chest({"drawers.bottom": {"kind": "ply"}, "rows.1.notch": {"width": "6", "depth": "5"}})

    (framed,), (free,) = (
        found(built(data), "pipes through the case"),
        found(built(kitchen()), "pipes through the case"),
    )
    assert (framed.verdict, free.verdict) == (Verdict.CAUTION, Verdict.PASS)
    assert "D1-RB" in str(framed.message)


def test_a_wide_thin_bottom_has_no_bar_and_says_so():
    wide = {"body.width": "32"}

    (thin,) = found(built(kitchen(wide)), "bottom without a bar")
    thick = found(built(kitchen({**wide, "drawers.bottom.nominal": "1/2"})), "bottom without a bar")
    assert (thin.verdict, thick) == (Verdict.CAUTION, [])
    made = built(kitchen(wide))
    assert [drawer.bottom.pieces for drawer in made.drawers] == [2, 1, 2, 2]


def test_plumbing_is_cautioned_of_on_papers_and_to_the_customer():
    made = built(kitchen())

    (finding,) = found(made, "plumbing behind drawers")
    assert "shut-off valves" in str(finding.message)
    assert "licensed plumber" in str(finding.message)
    assert any("licensed plumber" in text for text in cautions_of([made]))
    assert not any("plumber" in text for text in cautions_of([built(KITCHEN)]))


def test_a_customer_reads_of_the_recess():
    said = " ".join(describe(built(kitchen())))
    both = " ".join(describe(built(kitchen({"rows.2": {"notch": NOTCH}}))))

    assert "One drawer is made in the shape of a U, with a recess 8 in wide and 9 in deep" in said
    assert "Two drawers are made in the shape of a U" in both
    assert "shape of a U" not in " ".join(describe(built(KITCHEN)))


def test_an_option_says_whether_pipes_are_left_free():
    plain, notched = built(KITCHEN), built(kitchen())

    assert otherwise(
        plain, notched
    ) == "One drawer is made in the shape of a U, with a recess 8 in wide and " + (
        "9 in deep at the back that leaves the pipes free."
    )
    assert otherwise(notched, plain) == "No drawer has a recess for pipes."
    assert otherwise(notched, built(kitchen())) == ""


def test_a_bottom_is_sawn_whole_on_the_sheet():
    held = estimated(kitchen())

    sheets = {part["code"]: part for part in cut_data_for(held.unit, held.takeoff, example_shop())["parts"]}
    assert sheets["A-R2-1-N"]["name"] == "Drawer bottom, notched (saw it whole)"
    plain, whole = (
        {name: sheets[code][name] for name in ("wood", "length", "width")}
        for code in ("A-R1-1-N", "A-R2-1-N")
    )
    assert plain == whole


def test_measured_boards_are_the_boards_that_are_cut():
    measured = {"R2-1-IL": {"thickness": "15/32"}, "R2-1-BL": {"thickness": "17/32"}}
    made = built(kitchen({"measured.parts": measured}))

    parts, plain = of_second(made), of_second(built(kitchen()))
    assert [parts[mark].thickness for mark in ("IL", "IR", "BL", "BR", "IB")] == [
        15 / 32,
        1 / 2,
        17 / 32,
        1 / 2,
        1 / 2,
    ]
    # The notch stays as wide as it was asked for; the inner back spans one thinner side.
    assert plain["IB"].length - parts["IB"].length == 1 / 32
    rear, head = made.drawers[1].joints.notch.rear, made.drawers[1].joints.notch.head
    assert (rear.gauge_side, head.gauge_side) == (17 / 32, 1 / 2)


def test_the_bench_is_asked_for_every_board_around_a_notch():
    made = built(kitchen())

    asked = {
        each.size: each.designed for each in measurable(made, "R2-1") if each.size[:2] in ("BL", "BR", "IL")
    }
    assert asked == {"BL.thickness": 0.5, "BR.thickness": 0.5, "IL.thickness": 0.5}
    spec = with_bench(made.spec, {"R2-1": {"IB.thickness": 0.46875, "BR.thickness": 0.5}})
    assert spec.measured.parts["R2-1-IB"].thickness == 0.46875


def test_papers_name_the_boards_beside_a_notch():
    made = built(kitchen({"drawers.running.slide": "under-mount, full travel", "drawers.side": "5/8"}))
    second = made.drawers[1]

    served = [code for _, codes in notch_strips(made) for code in codes]
    assert {"A-R2-1-BL", "A-R2-1-BR"} <= set(served)
    assert "A-R2-1-B" not in served
    strips = list(joint_strips(second.joints.through, "back", [second], LengthUnit.INCH))
    assert any(strip.serves == "A-R2-1-BL, A-R2-1-BR" for strip in strips)
    assert {"Notch around pipes", "Cut-out of the bottom"} <= {fact.label for fact in run_facts(second)}


@pytest.mark.parametrize(
    ("hold", "words"),
    [
        ("four grooves", "slide the bottom on from the front"),
        ("under the back", "goes in when the glue is dry"),
        ("screwed under", "goes in when the glue is dry"),
    ],
)
def test_the_card_says_how_a_notched_drawer_goes_together(hold, words):
    made = built(kitchen({"drawers.bottom": {"kind": "ply", "hold": hold}}))

    (card,) = [each for each in other_joints(made) if each.key.startswith("notch")]
    assert words in str(card.advice[1])


@pytest.mark.parametrize("hold", ["four grooves", "under the back"])
def test_the_card_of_a_notched_bottom_is_its_own_and_names_what_is_grooved(hold):
    made = built(kitchen({"drawers.bottom": {"kind": "ply", "hold": hold}}))

    cards = {each.drawers: each for each in other_joints(made) if each.kind == "bottom-groove"}
    card = cards["A-R2-1",]
    assert card.title == "Drawer bottom in its grooves, notched"
    assert "cut it out from its rear edge" in str(card.advice[0])
    assert [each.advice for codes, each in cards.items() if codes != ("A-R2-1",)] == [()]
    marks = {code.rpartition("-")[2] for code in card.parts}
    around = {"BL", "BR", "IL", "IR", "IB"} if hold == "four grooves" else set()
    # Of the two fronts it is the box's own that is grooved.
    assert marks == {"BF", "SL", "SR", "N"} | around


def test_gauges_are_set_for_the_boards_around_a_notch():
    unlike = {"measured.parts": {"R2-1-SL": {"thickness": "15/32"}, "R2-1-SR": {"thickness": "1/2"}}}
    gauges = gauges_to_set(built(kitchen(unlike)))

    back = {code: each.setting for each in gauges if each.name == GAUGE_FOR_BACK for code in each.serves}
    assert (back["A-R2-1-BL"], back["A-R2-1-BR"]) == (15 / 32, 1 / 2)
    assert "A-R2-1-B" not in " ".join(back).split()
    around = [each for each in gauges if each.name.startswith("Around a notch")]
    assert {code[-2:] for each in around for code in each.serves} == {"BL", "BR", "IL", "IR", "IB"}


def test_machines_read_of_a_notch():
    made = built(kitchen(notch={**NOTCH, "off": "1", "toward": "right"}))

    held = json.loads(json.dumps(drawer_data(made, made.drawers[1])))["notch"]
    assert (held["width_in"], held["depth_in"], held["rear_joint"]["kind"]) == (8, 9, "through")
    assert held["left_arm_clear_in"] - held["right_arm_clear_in"] == 2
    assert drawer_data(made, made.drawers[0])["notch"] is None


def test_the_year_follows_the_clear_width():
    made = built(kitchen(notch={**NOTCH, "pipes": "7"}))

    (through,) = [each for each in unit_year(made).parts if each.what == "clear width for pipes"]
    assert through.limit == 7
    assert len(through.through.months) == len(MONTHS)
    assert 7.98 < min(through.through.months) <= 8 <= max(through.through.months) < 8.02


def test_a_notch_that_comes_late_makes_the_back_anew_and_keeps_the_sides():
    milled = Reached(drawers={"R2-1": "milled"})

    change = rework(built(KITCHEN), built(kitchen()), milled)
    fates = {each.code.removeprefix("A-R2-1-"): each.fate for each in change.parts if "R2-1" in each.code}
    assert (fates["SL"], fates["F"]) == (Fate.UNTOUCHED, Fate.UNTOUCHED)
    assert {fates[mark] for mark in ("BL", "IL", "IB")} <= {Fate.NEW, Fate.MODIFIED}


def test_a_lined_notch_takes_its_lining_too():
    plain, notched = (
        built(changed(data, {"drawers.lining": "1/16"})).drawers[1].run.lined for data in (KITCHEN, kitchen())
    )

    # The faces of the notch, 9 deep each side, less the floor that it takes, within the lining.
    more = 2 * plain.height * 9 - (9 + 1 / 8) * 9
    assert notched.area - plain.area == pytest.approx(more)
