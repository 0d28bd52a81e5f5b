"""Help inside the program, for everybody: how a job flows, how sizes are typed, what the words mean."""

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit, parse_length, show_both
from casewright.shop.entering import who_is
from casewright.web.frame.pages import Page, frame_of, show_stranger
from casewright.web.frame.visits import Call, Stranger, Visit, cookie_name

router = APIRouter()

NOTATIONS = (
    ("13/16", "a fraction"),
    ("7-13/32", "whole inches and a fraction, with a hyphen"),
    ("7 13/32", "the same with a space"),
    ("¾", "a fraction as one sign"),
    ("1½", "the same beside a whole number"),
    ("15.625", "a decimal"),
    (".75", "a decimal without its nought"),
    ('15 5/8"', "with the inch mark"),
    ("15 5/8 in", "with the word"),
    ("2 ft", "feet"),
    ("1' 3-5/8\"", "feet and inches"),
    ("1'3 5/8\"", "the same, closer together"),
    ("1ft 3in", "the same in words"),
    ("1′ 3⅝″", "with the marks of a drawing"),
    ("397 mm", "millimetres"),
    ("39.7cm", "centimetres"),
    ("1.2 m", "metres"),
    ("212,5 mm", "a metric decimal with a comma"),
)
"""Every way in which a size may be typed, with what it is called."""

NOT_READ = (
    ("1/2/3", "more than one fraction"),
    ("8 1/0", "nothing can be divided by nought"),
    ("5 17/16", "beside a whole number the fraction is less than one"),
    ("12,5", "a comma in inches can mean two things"),
    ("1 1/2 ft 3 in", "part of a foot and inches too"),
    ("-3", "no size is less than nothing"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class HelpPage(Page):
    """The help."""

    template: ClassVar[str] = "help/help.html"
    notations: tuple[tuple[str, str, str], ...]
    not_read: tuple[tuple[str, str], ...]


@router.get("/help")
def show_help(call: Stranger) -> Response:
    """The help, in the frame of whoever asks."""
    read = tuple((typed, words, _read(typed)) for typed, words in NOTATIONS)
    page = HelpPage(title="Help", notations=read, not_read=NOT_READ)
    return show_stranger(call.request, page, frame=frame_of(_visit_of(call), call.request))


def _read(typed: str) -> str:
    return show_both(float(parse_length(typed, LengthUnit.INCH)))


def _visit_of(call: Call) -> Visit | None:
    found = who_is(call.db, call.request.cookies.get(cookie_name(call.request), ""), call.now)
    if found is None:
        return None
    sign_in, person, shop = found
    return Visit(
        request=call.request,
        db=call.db,
        shop=shop,
        person=person,
        sign_in=sign_in.id,
        now=call.now,
        typed=call.typed,
    )
