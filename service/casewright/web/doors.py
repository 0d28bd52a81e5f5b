"""The door: setting up, signing in and out, coming in by invitation, a new password."""

from dataclasses import dataclass
from typing import ClassVar
from zoneinfo import available_timezones

from fastapi import APIRouter
from starlette.responses import Response

from casewright.records.people import LinkKind, Person, Role, Shop
from casewright.shop.entering import (
    LONGEST,
    WRONG,
    NewPerson,
    NewShop,
    come_in,
    find_link,
    is_set_up,
    keep_signed_in,
    set_password,
    set_up,
    sign_in,
    sign_out,
)
from casewright.shop.passwords import password_fault
from casewright.shop.refusals import Refused
from casewright.web.errors import SignInPage
from casewright.web.pages import Page, form_of, is_local, see, show_stranger
from casewright.web.typed import Form, Reader
from casewright.web.visits import Call, Everybody, Stranger, address_of, cookie_name

router = APIRouter()

CURRENCIES = {
    "USD": "$",
    "CAD": "$",
    "AUD": "$",
    "NZD": "$",
    "EUR": "€",
    "GBP": "£",
    "CHF": "Fr",
    "SEK": "kr",
    "NOK": "kr",
    "DKK": "kr",
    "JPY": "¥",
    "ZAR": "R",
}
PAPERS = {"letter": "Letter", "a4": "A4"}
UNITS = {"in": "Inches and fractions", "mm": "Millimetres"}


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUpPage(Page):
    """The first page of a new installation."""

    template: ClassVar[str] = "door/set_up.html"
    form: Form
    zones: tuple[str, ...]
    currencies: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ComeInPage(Page):
    """What an invitation opens."""

    template: ClassVar[str] = "door/come_in.html"
    form: Form
    shop: str
    role: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPasswordPage(Page):
    """What a link to a new password opens."""

    template: ClassVar[str] = "door/new_password.html"
    form: Form
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPage(Page):
    """After signing in again: what was typed before, ready to be sent."""

    template: ClassVar[str] = "door/kept.html"
    action: str
    kept: tuple[tuple[str, str], ...]


def set_up_page(form: Form) -> SetUpPage:
    """The set-up page around a form."""
    zones = tuple(sorted(zone for zone in available_timezones() if "/" in zone or zone == "UTC"))
    return SetUpPage(title="Set up your shop", form=form, zones=zones, currencies=tuple(CURRENCIES))


@router.get("/set-up")
def show_set_up(call: Stranger) -> Response:
    """The set-up page, while nobody is there."""
    if is_set_up(call.db):
        return see("/sign-in")
    form = form_of(
        code=call.request.query_params.get("code", "")[:40],
        currency="USD",
        unit="in",
        paper="letter",
        time_zone="America/New_York",
        tax="0",
        start="demo",
    )
    return show_stranger(call.request, set_up_page(form))


@router.post("/set-up")
def save_set_up(call: Stranger) -> Response:
    """Makes the shop and its owner, and signs the owner in."""
    read = Reader(call.typed)
    code = read.line("code", most=40, needed="Type the code that the start printed.")
    owner = read_person(read, read.typed.get("shop"))
    shop = read_shop(read)
    start = read.choice("start", ("demo", "empty"))
    if read.faults:
        return show_stranger(call.request, set_up_page(read.form), 422)
    try:
        person = set_up(call.db, code, shop, owner, call.now, address_of(call.request))
    except Refused as refused:
        if refused.status != 422:
            raise
        read.fault("code", str(refused))
        return show_stranger(call.request, set_up_page(read.form), 422)
    return _let_in(call, person, "/demo/beginning" if start == "demo" else "/jobs")


def read_shop(read: Reader) -> NewShop:
    """The shop that a form describes."""
    name = read.line("shop", most=120, needed="Write the name of your shop, as it stands on a quote.")
    currency = read.choice("currency", CURRENCIES)
    zones = available_timezones()
    return NewShop(
        name=name,
        currency=currency,
        symbol=CURRENCIES[currency],
        unit=read.choice("unit", UNITS),
        time_zone=read.choice("time_zone", zones, default="UTC"),
        paper=read.choice("paper", PAPERS),
        tax_rate=read.number("tax", least=0, most=50, example="6", unit=" %") / 100,
    )


def read_person(read: Reader, shop: str) -> NewPerson:
    """The person that a form describes."""
    name = read.line("name", most=120, needed="Write your name, as it stands beside what you do.")
    email = read.email("email", needed="Write the e-mail address with which you sign in.")
    password = read.typed.get("password")
    if fault := password_fault(password, name, email.partition("@")[0], shop):
        read.fault("password", fault)
    return NewPerson(name=name, email=email, password=password)


@router.get("/sign-in")
def show_sign_in(call: Stranger) -> Response:
    """The door; the set-up page while nobody is there."""
    if not is_set_up(call.db):
        return see("/set-up")
    following = call.request.query_params.get("next", "")
    page = SignInPage(title="Sign in", form=Form(), next=following if is_local(following) else "")
    return show_stranger(call.request, page)


@router.post("/sign-in")
def save_sign_in(call: Stranger) -> Response:
    """Signs somebody in and leads to where they wanted to go, with what they had typed."""
    email, password = call.typed.get("email"), call.typed.get("password")
    following = call.typed.get("next")
    following = following if is_local(following) else "/"
    kept = tuple((name[5:], value) for name, value in call.typed.pairs if name.startswith("kept."))
    person = sign_in(call.db, email, password[:200], call.now, address=address_of(call.request))
    if person is None:
        form = Form(values={"email": email}, faults={"email": WRONG})
        page = SignInPage(title="Sign in", form=form, next=following, kept=kept)
        return show_stranger(call.request, page, 422)
    if kept:
        page_kept = KeptPage(title="You are signed in", action=following, kept=kept)
        return _with_cookie(call, person, show_stranger(call.request, page_kept))
    return _let_in(call, person, following)


def _let_in(call: Call, person: Person, address: str) -> Response:
    return _with_cookie(call, person, see(address))


def _with_cookie(call: Call, person: Person, response: Response) -> Response:
    request = call.request
    secret = keep_signed_in(
        call.db,
        person,
        call.now,
        device=request.headers.get("user-agent", ""),
        address=address_of(request),
    )
    response.set_cookie(
        cookie_name(request),
        secret,
        max_age=int(LONGEST.total_seconds()),
        httponly=True,
        samesite="lax",
        secure=request.url.scheme == "https",
    )
    return response


@router.post("/sign-out")
def save_sign_out(visit: Everybody) -> Response:
    """Ends this sign-in, or with `everywhere` all of the person's."""
    sign_out(visit.db, visit.person.id, None if visit.typed.has("everywhere") else visit.sign_in)
    response = see("/sign-in")
    response.delete_cookie(cookie_name(visit.request))
    response.headers["clear-site-data"] = '"cache", "storage"'
    return response


@router.get("/invitation/{secret}")
def show_invitation(call: Stranger, secret: str) -> Response:
    """What an invitation opens."""
    link = find_link(call.db, LinkKind.INVITATION, secret[:200], call.now)
    return show_stranger(call.request, _come_in_page(call, link.shop_id, link.role, form_of()))


@router.post("/invitation/{secret}")
def save_invitation(call: Stranger, secret: str) -> Response:
    """Lets a new person in."""
    link = find_link(call.db, LinkKind.INVITATION, secret[:200], call.now)
    read = Reader(call.typed)
    person = read_person(read, "")
    if read.faults:
        return show_stranger(call.request, _come_in_page(call, link.shop_id, link.role, read.form), 422)
    try:
        return _let_in(call, come_in(call.db, link, person, call.now), "/")
    except Refused as refused:
        read.fault("email", str(refused))
        link.used_at = None
        return show_stranger(call.request, _come_in_page(call, link.shop_id, link.role, read.form), 422)


def _come_in_page(call: Call, shop_id: str, role: Role, form: Form) -> ComeInPage:
    shop = call.db.get(Shop, shop_id)
    name = shop.name if shop else ""
    return ComeInPage(title=f"Come in to {name}", form=form, shop=name, role=role.value)


@router.get("/password/{secret}")
def show_new_password(call: Stranger, secret: str) -> Response:
    """What a link to a new password opens."""
    person = _person_of_link(call, secret)
    page = NewPasswordPage(title="A new password", form=form_of(), name=person.name)
    return show_stranger(call.request, page)


@router.post("/password/{secret}")
def save_new_password(call: Stranger, secret: str) -> Response:
    """Sets a new password; every sign-in of the person ends."""
    person = _person_of_link(call, secret)
    password = call.typed.get("password")
    if fault := password_fault(password, person.name, person.email.partition("@")[0]):
        form = Form(faults={"password": fault})
        page = NewPasswordPage(title="A new password", form=form, name=person.name)
        return show_stranger(call.request, page, 422)
    link = find_link(call.db, LinkKind.RESET, secret[:200], call.now)
    link.used_at = call.now
    set_password(call.db, person, password, call.now)
    return see("/sign-in")


def _person_of_link(call: Call, secret: str) -> Person:
    link = find_link(call.db, LinkKind.RESET, secret[:200], call.now)
    person = call.db.get(Person, (link.shop_id, link.person_id))
    if person is None or person.ended_at:
        raise Refused("This person has left the shop.", 410)
    return person
