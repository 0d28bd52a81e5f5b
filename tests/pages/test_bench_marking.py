"""At the bench before marking out and at the dry-fit: parts looked over, moistures, tails against sockets."""

import re

import pytest

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand, kept_stage
from casewright.labour.stages import before_marking

LINES = [line.code for line in before_marking()]


@pytest.fixture
def drawer(shop):
    """A drawer that is fitted, in a case that is glued up."""
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    made = drawer_ids(shop, job)["R2-1"]
    drawer_reaches(shop, made, "fitted")
    return made


def number(page, label):
    """The large number under a label, what is struck out beside it, and its note."""
    found = re.search(rf"<dt>{re.escape(label)}</dt><dd><b>(.*?)</b>(.*?)</dd>", page.html)
    assert found, label
    note = re.search(r"<small>(.*?)</small>", found[2])
    return found[1], re.findall(r"</span>([^<]*)</s>", found[2]), note[1] if note else ""


def test_joints_wait_until_the_parts_are_looked_over(shop, bench, drawer):
    bench.get(f"/bench/{drawer}")
    held = bench.send(f"/bench/{drawer}/sizes", SL__thickness="1/2", SR__thickness="1/2")
    for line in LINES:
        page = bench.post(f"/bench/{drawer}/marking", tick=line, once=line)
    bench.send(f"/drawers/{drawer}/stage")

    assert "It needs the parts looked over before marking out: 0 of 4 ticked." in held.text
    assert '<a class="button" href="#marking">Look the parts over</a>' in held.html
    assert "Before marking out: 4 of 4" in page.text
    assert kept_stage(shop, drawer) == "joints"


def test_front_and_side_of_different_moisture_are_held(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/marking", F__moisture="8", SL__moisture="11 %")

    assert "Stop: do not cut. The two boards are 3.0 % of moisture apart (8.0 and 11.0 %)." in page.text
    assert page.form(f"/bench/{drawer}/marking").value("SL.moisture") == "11"


def test_a_moisture_that_is_none_is_refused_beside_its_field_and_kept(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/marking", 422, F__moisture="wet")

    assert page.form(f"/bench/{drawer}/marking").value("F.moisture") == "wet"
    assert 'id="F-moisture-fault"' in page.html


def test_an_emptied_moisture_is_taken_back(bench, drawer):
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/marking", F__moisture="8", SL__moisture="11")

    page = bench.send(f"/bench/{drawer}/marking", SL__moisture="")

    assert "moisture apart" not in page.text


def test_tails_longer_than_their_sockets_are_relieved_before_assembly(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/ticks", SL__tail_length="37/64", F__socket_depth="9/16")

    assert (
        "Stop: relieve before assembly. The tails are 37/64 in long and the sockets 9/16 deep." in page.text
    )
    assert "pare 1/64 in off the tails" in page.text


def test_a_side_measured_beside_its_rabbet_shows_the_drawn_setting_and_says_so(bench, drawer):
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/sizes", SR__thickness="1/2")

    page = bench.send(f"/bench/{drawer}/sizes", SL__thickness="1/2", SL__in_rabbet="1/2")

    assert number(page, "G2, left") == (
        "7/16",
        ["1/2"],
        "left side; as drawn: measure it again, in its rabbet",
    )
    assert number(page, "G2, right") == ("7/16", ["1/2"], "right side")
    assert page.text.index("Stop: do not cut. A-R2-1-SL measured 1/2 in, the side without") < page.text.index(
        "G2"
    )


def test_each_side_strikes_its_own_thickness_out(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", SL__thickness="15/32", SR__thickness="33/64")

    assert number(page, "G2, left") == ("13/32", ["15/32"], "left side")
    assert number(page, "G2, right") == ("29/64", ["33/64"], "right side")


def test_one_setting_for_both_sides_strikes_both_thicknesses_out(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/sizes", SL__thickness="31/64", SR__thickness="1/2")

    assert number(page, "G2")[:2] == ("27/64", ["31/64", "1/2"])
    assert "27/64 in not 31/64 1/2 Serves A-R2-1-SL SR" in page.text.replace("\u00a0", " ")
