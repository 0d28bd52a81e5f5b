"""The help: it is there for everybody, and what it says of sizes is true."""

import pytest

from casewright.measure.lengths import LengthError, LengthUnit, parse_length
from casewright.web.frame.help import NOT_READ, NOTATIONS


def test_a_stranger_reads_the_help_at_the_door(stranger):
    page = stranger.get("/help")

    assert "Registration rabbet" in page.text
    assert "Sign out" not in page.text


def test_somebody_who_is_signed_in_reads_it_in_their_own_frame(bench):
    page = bench.get("/help")

    assert "Cy Roper, bench" in page.text
    assert 'href="/board"' in page.html


def test_a_size_in_the_help_is_shown_as_it_is_read(stranger):
    page = stranger.get("/help")

    assert "1&#39; 3-5/8&#34;" in page.text
    assert "15-5/8 in (396.9 mm)" in page.text


@pytest.mark.parametrize("typed", [typed for typed, _ in NOTATIONS])
@pytest.mark.parametrize("unit", list(LengthUnit))
def test_every_notation_of_the_help_is_read(typed, unit):
    assert parse_length(typed, unit) > 0


@pytest.mark.parametrize("typed", [typed for typed, _ in NOT_READ])
def test_what_the_help_says_is_refused_is_refused(typed):
    with pytest.raises(LengthError):
        parse_length(typed, LengthUnit.INCH)


def test_every_place_that_the_help_names_is_on_the_page(stranger):
    page = stranger.get("/help")

    named = {link[1:] for link in page.seen.links if link.startswith("#")}
    assert named <= set(page.seen.ids)


@pytest.mark.parametrize("address", ["/help", "/sign-in"])
def test_a_command_is_named_as_a_checkout_has_it(stranger, address):
    assert "./run reset-password E-MAIL" in stranger.get(address).text
