"""At the bench, what must be measured next stands where the next step says so."""

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand


def test_a_step_that_waits_for_a_size_has_its_field_right_below(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer = drawer_ids(shop, job)["R2-1"]
    drawer_reaches(shop, drawer, "milled")

    held = bench.get(f"/bench/{drawer}").html
    answer = bench.send(f"/bench/{drawer}/sizes", **{"opening.height": "6", "opening.width": "22-1/2"}).html

    # the reason, then its two sizes, the other needed ones, the button, the numbers; each once
    order = [
        "It needs the opening",
        'id="opening-width"',
        'id="SL-thickness"',
        "Keep these sizes",
        'id="numbers"',
    ]
    assert [held.count(each) for each in order] == [1] * 5
    assert sorted(order, key=held.index) == order
    # nothing is waited for any more: the numbers come first
    assert answer.index('id="numbers"') < answer.index('id="opening-width"')


def test_a_tap_by_script_brings_the_sizes_that_are_waited_for_with_it(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer = drawer_ids(shop, job)["R2-1"]

    answer = bench.browser.post(
        f"/drawers/{drawer}/stage",
        data={"once": "a", "stage": "milled", "back": f"/bench/{drawer}"},
        headers={"hx-request": "true", "x-block": "live"},
    ).text

    assert (
        answer.index("It needs the opening") < answer.index('id="opening-height"') < answer.index("numbers")
    )
    assert "hx-preserve" not in answer
