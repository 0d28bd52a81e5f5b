"""Sizes and codes stay in one piece wherever a page prints them, and a copy of them is what was printed."""

import re

import pytest
from jinja2 import DictLoader
from markupsafe import Markup

from casewright.web.frame.filters import lines
from casewright.web.frame.pages import environment
from casewright.web.frame.unbroken import unbroken


def kept(text: str) -> list[str]:
    """What stays in one piece of a text."""
    return re.findall(r'<bdi class="unbroken">([^<]*)</bdi>', str(unbroken(text)))


@pytest.mark.parametrize(
    ("text", "pieces"),
    [
        ("Rough widths over 7 in: F1 7-25/32, S1 ≈7-25/32.", ["7-25/32", "≈7-25/32"]),
        ("Drawer 14-A-R4-1 (A-R1-1-SL).", ["14-A-R4-1", "A-R1-1-SL"]),
        ("As in quote Q-0003, from 2027-03-01", ["Q-0003", "2027-03-01"]),
        ("16-1/2 × 9-1/8", ["16-1/2", "9-1/8"]),
        ("14-A (2), Bedside case (4)", ["14-A (2)"]),
        ("3/4 of an inch", []),
        ("Crosscut piece 1: A-C-SR, 2 A-T 1/3.", ["A-C-SR", "A-T 1/3"]),
        ("half-blind dovetails, USA-MADE", []),
        ("A-R1-1-SL 1/2 × 6", ["A-R1-1-SL"]),
        ("1234567-1234567-1234567-1234567", []),
        ("a12-34", []),
    ],
)
def test_a_size_or_a_code_is_one_piece_and_nothing_else_is(text, pieces):
    assert kept(text) == pieces


def test_a_copy_is_what_was_printed_and_the_rest_is_escaped():
    said = unbroken("<b>A-R1-1</b> & 3-1/2 in")

    assert str(said) == (
        '&lt;b&gt;<bdi class="unbroken">A-R1-1</bdi>&lt;/b&gt; &amp; <bdi class="unbroken">3-1/2</bdi> in'
    )
    assert said.striptags() == "<b>A-R1-1</b> & 3-1/2 in"


def test_what_has_tags_of_its_own_or_is_no_text_stays_as_it_is():
    assert unbroken(Markup("<i>3-1/2</i>")) == Markup("<i>3-1/2</i>")
    assert unbroken(14) == 14


def test_lines_of_a_note_are_kept_in_one_piece_too():
    assert lines("Sides 3-1/2\nas <b>") == Markup('Sides <bdi class="unbroken">3-1/2</bdi><br>as &lt;b&gt;')


@pytest.mark.parametrize(
    ("template", "printed"),
    [
        ("<p>{{ x }}</p>", '<p><bdi class="unbroken">3-1/2</bdi></p>'),
        ("<p>{{ x if x else 'none' }}, {{ x|upper }}</p>", "<p>{0}, {0}</p>"),
        ('<p title="{{ x }}">a > b</p>', '<p title="3-1/2">a > b</p>'),
        (
            '<p title="a > {{ x }}"{% if x %} id="{{ x }}"{% endif %}>{{ x }}</p>',
            '<p title="a > 3-1/2" id="3-1/2">{0}</p>',
        ),
        ("<p title={{ x }}>", "<p title=3-1/2>"),
        ("<title>{{ x }}</title><h1>{{ x }}</h1>", "<title>3-1/2</title><h1>{0}</h1>"),
        (
            "<option>{{ x }}</option><textarea>{{ x }} <b>{{ x }}</textarea>{{ x }}",
            "<option>3-1/2</option><textarea>3-1/2 <b>3-1/2</textarea>{0}",
        ),
        ('{% macro about() %} title="{{ x }}"{% endmacro %}<p{{ about() }}>', '<p title="3-1/2">'),
        ("{% macro said() %}<b>{{ x }}</b>{% endmacro %}{{ said() }}", "<b>{0}</b>"),
        (
            '<a href="/{{ x }}">{{ x }}</a><button>{{ x }}</button><summary>{{ x }}</summary>{{ x }}',
            '<a href="/3-1/2">3-1/2</a><button>3-1/2</button><summary>3-1/2</summary>{0}',
        ),
        ("{{ 3 < 4 }} {{ x }}", "True {0}"),
    ],
)
def test_only_what_stands_between_tags_gets_a_tag(template, printed):
    made = environment().overlay(loader=DictLoader({"page.html": template}))

    found = made.get_template("page.html").render(x="3-1/2")

    assert found == printed.format('<bdi class="unbroken">3-1/2</bdi>')
