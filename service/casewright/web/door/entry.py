"""The door: setting up, signing in and out, coming in by invitation, a new password."""

from dataclasses import dataclass
from typing import ClassVar
from zoneinfo import available_timezones

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.shares import share_of_percent
from casewright.records.people import LinkKind, Person, Role, Shop
from casewright.records.sessions import inside
from casewright.shop.entering import (
    WRONG,
    NewPerson,
    NewShop,
    WrongCode,
    come_in,
    is_set_up,
    set_password,
    set_up,
    sign_in,
    sign_out,
)
from casewright.shop.links import WrongLink, find_link
from casewright.shop.passwords import password_fault
from casewright.shop.refusals import Refused, TooMany
from casewright.shop.throttle import count_wrong_link, note_wrong_link
from casewright.web.door.demo import bring_demo
from casewright.web.door.which_shop import WhichShopPage, chosen, offered
from casewright.web.frame.cookies import known_device, let_in, let_out
from casewright.web.frame.errors import SignInPage, trouble
from casewright.web.frame.events import note_event
from casewright.web.frame.pages import Page, form_of, is_local, see, show_stranger
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import SAFE, Call, Everybody, Stranger, address_of, engine_of

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
    "ZAR": "R",
}
"""The sign of each currency that a shop may have. All of them have hundredths: amounts are typed, kept and
printed with two decimals throughout, so one that has none, or thousandths, would be read wrong."""
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
    email: str


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
    code = read.line("code", most=80, needed="Type the code that the start printed.")
    owner = read_person(read, read.typed.get("shop"))
    shop = read_shop(read)
    start = read.choice("start", ("demo", "empty"))
    if read.faults:
        return show_stranger(call.request, set_up_page(read.form), 422)
    try:
        person = set_up(call.db, code, shop, owner, call.now, address_of(call.request))
    except WrongCode as wrong:  # caught here, so that the failure is kept
        note_event(call.request, "set-up", "failed")
        read.fault("code", str(wrong))
        return show_stranger(call.request, set_up_page(read.form), 422)
    note_event(call.request, "set-up", "ok", shop=person.shop_id, person=person.id)
    if start == "demo":
        _begin_with_demo(call, person)
    return _let_in(call, person, "/jobs")


def _begin_with_demo(call: Call, person: Person) -> None:
    """Brings the demo into the shop that has just been made."""
    with inside(call.db, person.shop_id) as db:
        shop = db.get_one(Shop, person.shop_id)
        bring_demo(db, shop, person, call.request, call.now)


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
        tax_rate=share_of_percent(read.number("tax", least=0, most=50, example="6.25", unit=" %")),
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
    page = _door(call, Form(values={"email": email}))
    try:
        device = known_device(call.request, email)
        found = sign_in(
            call.db, email, password[:200], call.now, address=address_of(call.request), device=device
        )
    except TooMany as wait:
        note_event(call.request, "sign-in", "too many")
        answer = _door_again(call, page, str(wait), wait.status)
        answer.headers["retry-after"] = str(wait.seconds)
        return answer
    if not found:
        note_event(call.request, "sign-in", "failed")
        return _door_again(call, page, WRONG, 422)
    if len(found) > 1:
        shops = offered(call.request, found, call.now)
        which = WhichShopPage(title="Which shop?", shops=shops, next=page.next, kept=page.kept)
        return show_stranger(call.request, which)
    return _signed_in(call, found[0].person, page)


@router.post("/sign-in/shop")
def save_which_shop(call: Stranger) -> Response:
    """Signs somebody in who works in several shops, in the one that they chose."""
    page = _door(call, Form())
    person = chosen(call.request, call.db, call.typed.get("shop"), call.now)
    if person is None:
        note_event(call.request, "sign-in", "failed")
        return _door_again(call, page, "The choice of a shop has run out. Sign in once more.", 422)
    return _signed_in(call, person, page)


def _door(call: Call, form: Form) -> SignInPage:
    """The door, with where it leads and what was typed before."""
    following = call.typed.get("next")
    kept = tuple((name[5:], value) for name, value in call.typed.pairs if name.startswith("kept."))
    return SignInPage(title="Sign in", form=form, next=following if is_local(following) else "/", kept=kept)


def _signed_in(call: Call, person: Person, door: SignInPage) -> Response:
    """Lets a person in and leads on, with what they had typed."""
    note_event(call.request, "sign-in", "ok", shop=person.shop_id, person=person.id, role=person.role)
    if door.kept:
        page_kept = KeptPage(title="You are signed in", action=door.next, kept=door.kept)
        return let_in(call.request, call.db, person, call.now, show_stranger(call.request, page_kept))
    return _let_in(call, person, door.next)


def _door_again(call: Call, page: SignInPage, fault: str, status: int) -> Response:
    page.form.faults["email"] = fault
    return show_stranger(call.request, page, status)


def _let_in(call: Call, person: Person, address: str) -> Response:
    return let_in(call.request, call.db, person, call.now, see(address))


@router.post("/sign-out")
def save_sign_out(visit: Everybody) -> Response:
    """Ends this sign-in, or with `everywhere` all of the person's."""
    sign_out(visit.db, visit.person.id, None if visit.typed.has("everywhere") else visit.sign_in)
    note_event(visit.request, "sign-out", "ok", shop=visit.shop.shop_id, person=visit.person.id)
    return let_out(visit.request, see("/sign-in", "out"))


@router.get("/invitation/{secret}")
def show_invitation(call: Stranger, secret: str) -> Response:
    """What an invitation opens."""
    try:
        link = find_link(call.db, LinkKind.INVITATION, secret, call.now)
    except WrongLink as wrong:
        return _opens_nothing(call, wrong)
    return show_stranger(call.request, _come_in_page(call, link.shop_id, link.role, form_of()))


@router.post("/invitation/{secret}")
def save_invitation(call: Stranger, secret: str) -> Response:
    """Lets a new person in."""
    try:
        link = find_link(call.db, LinkKind.INVITATION, secret, call.now, use=True)
    except WrongLink as wrong:
        return _opens_nothing(call, wrong)
    read = Reader(call.typed)
    new = read_person(read, "")
    if read.faults:
        return show_stranger(call.request, _come_in_page(call, link.shop_id, link.role, read.form), 422)
    try:
        person = come_in(call.db, link, new, call.now)
    except Refused as refused:
        read.fault("email", str(refused))
        return show_stranger(call.request, _come_in_page(call, link.shop_id, link.role, read.form), 422)
    note_event(call.request, "invitation", "ok", shop=person.shop_id, person=person.id, role=person.role)
    return _let_in(call, person, "/")


def _come_in_page(call: Call, shop_id: str, role: Role, form: Form) -> ComeInPage:
    shop = call.db.get(Shop, shop_id)
    name = shop.name if shop else ""
    return ComeInPage(title=f"Come in to {name}", form=form, shop=name, role=role.value)


@router.get("/password/{secret}")
def show_new_password(call: Stranger, secret: str) -> Response:
    """What a link to a new password opens."""
    try:
        person = _person_of_link(call, secret)
    except WrongLink as wrong:
        return _opens_nothing(call, wrong)
    page = NewPasswordPage(title="A new password", form=form_of(), name=person.name, email=person.email)
    return show_stranger(call.request, page)


@router.post("/password/{secret}")
def save_new_password(call: Stranger, secret: str) -> Response:
    """Sets a new password; every sign-in of the person ends."""
    try:
        person = _person_of_link(call, secret, use=True)
    except WrongLink as wrong:
        return _opens_nothing(call, wrong)
    password = call.typed.get("password")
    if fault := password_fault(password, person.name, person.email.partition("@")[0]):
        form = Form(faults={"password": fault})
        page = NewPasswordPage(title="A new password", form=form, name=person.name, email=person.email)
        return show_stranger(call.request, page, 422)
    set_password(call.db, person, password, call.now)  # ends the link, too
    note_event(call.request, "new password", "ok", shop=person.shop_id, person=person.id)
    return see("/sign-in", "password")


def _person_of_link(call: Call, secret: str, *, use: bool = False) -> Person:
    link = find_link(call.db, LinkKind.RESET, secret, call.now, use=use)
    person = call.db.get(Person, (link.shop_id, link.person_id))
    if person is None or person.ended_at:
        raise Refused("This person has left the shop.", 410)
    return person


def _opens_nothing(call: Call, wrong: WrongLink) -> Response:
    """The page for a link that opens nothing; the try is counted against the address that it came from.

    Raises:
        TooMany: too many of them lately
    """
    address = address_of(call.request)
    if call.request.method in SAFE:
        call.db.close()  # a request holds one connection at a time: there are not two for each
        note_wrong_link(engine_of(call.request), wrong.door, address, call.now)
    else:  # in the page's own session: a second writer would wait for this one, and raising would not be kept
        count_wrong_link(call.db, wrong.door, address, call.now)
    return trouble(call.request, wrong.status, str(wrong))
