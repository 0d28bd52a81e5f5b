"""Everybody's own account: name and e-mail, password, where one is signed in."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.records.people import SignIn
from casewright.records.staff import sign_ins_of
from casewright.shop.entering import IDLE, LONGEST, fold_email, sign_out
from casewright.shop.passwords import password_fault
from casewright.shop.people import (
    WrongPassword,
    change_account,
    change_password,
    check_password,
    end_sign_in,
)
from casewright.shop.refusals import Refused, Stale
from casewright.web.door.devices import device_words
from casewright.web.frame.cookies import let_in, let_out
from casewright.web.frame.events import note_event
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Visit

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class SignInRow:
    """One sign-in, as a person reads it."""

    id: str
    device: str
    since: datetime
    seen: datetime
    this: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class AccountPage(Page):
    """A person's own account."""

    template: ClassVar[str] = "account/account.html"
    form: Form
    sign_ins: tuple[SignInRow, ...]
    longest: int
    idle: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PasswordPage(Page):
    """The form for a new password."""

    template: ClassVar[str] = "account/password.html"
    form: Form
    email: str


def sign_in_rows(sign_ins: Iterable[SignIn], own: str) -> tuple[SignInRow, ...]:
    """Sign-ins as a person reads them.

    Args:
        sign_ins: the rows
        own: the id of the sign-in with which the page is asked for
    """
    return tuple(
        SignInRow(
            id=each.id,
            device=device_words(each.device),
            since=each.created_at,
            seen=each.seen_at,
            this=each.id == own,
        )
        for each in sign_ins
    )


@router.get("/account")
def show_account(visit: Everybody) -> Response:
    """A person's own account."""
    held = visit.person
    form = form_of(name=held.name, email=held.email, version=str(held.version))
    return show(visit, _account_page(visit, form))


def _account_page(visit: Visit, form: Form) -> AccountPage:
    found = sign_ins_of(visit.db, visit.person.id, visit.now - IDLE, visit.now)
    return AccountPage(
        title="Your account",
        form=form,
        sign_ins=sign_in_rows(found, visit.sign_in),
        longest=LONGEST.days,
        idle=IDLE.days,
    )


@router.post("/account")
def save_account(visit: Everybody) -> Response:
    """Changes a person's own name and e-mail address; another address asks for the password."""
    read = Reader(visit.typed)
    name = read.line("name", most=120, needed="Write your name, as it stands beside what you do.")
    email = read.email("email", needed="Write the e-mail address with which you sign in.")
    version = read.whole("version", least=1, most=10**8)
    if read.faults:
        return show(visit, _account_page(visit, read.form), 422)
    try:
        if fold_email(email) != visit.person.email:
            check_password(visit.db, visit.person, visit.typed.get("password_now"), visit.now)
        change_account(visit.db, visit.person, name, email, version, visit.now)
    except WrongPassword as wrong:  # caught here, so that the failure is kept
        read.fault("password_now", f"{wrong} Another e-mail address asks for it.")
    except Stale as stale:
        values = {**read.form.values, "version": str(visit.person.version)}
        return show(visit, _account_page(visit, Form(values=values, theirs=stale.theirs)), 409)
    except Refused as refused:
        if refused.status != 422:
            raise
        read.fault("email", str(refused))
    return show(visit, _account_page(visit, read.form), 422) if read.faults else see("/account", "saved")


@router.get("/account/password")
def show_password_form(visit: Everybody) -> Response:
    """The form for a new password."""
    return show(visit, PasswordPage(title="A new password", form=form_of(), email=visit.person.email))


@router.post("/account/password")
def save_password(visit: Everybody) -> Response:
    """Changes a person's password; every other sign-in of theirs ends, and this one gets a fresh secret."""
    held, read = visit.person, Reader(visit.typed)
    new = visit.typed.get("password")
    if fault := password_fault(new, held.name, held.email.partition("@")[0], visit.shop.name):
        read.fault("password", fault)
    else:
        try:
            change_password(visit.db, held, visit.typed.get("password_now"), new, visit.now)
        except WrongPassword as wrong:  # caught here, so that the failure is kept
            read.fault("password_now", str(wrong))
    result = "failed" if read.faults else "ok"
    note_event(visit.request, "own password", result, shop=visit.shop.shop_id, person=held.id)
    if read.faults:
        return show(visit, PasswordPage(title="A new password", form=read.form, email=held.email), 422)
    return let_in(visit.request, visit.db, held, visit.now, see("/account", "saved"))


@router.post("/account/sign-ins/end")
def save_other_sign_ins_end(visit: Everybody) -> Response:
    """Ends every other sign-in of the person."""
    sign_out(visit.db, visit.person.id, keep=visit.sign_in)
    return see("/account", "ended")


@router.post("/account/sign-ins/{sign_in_id}/end")
def save_sign_in_end(visit: Everybody, sign_in_id: str) -> Response:
    """Ends one sign-in of the person."""
    end_sign_in(visit.db, visit.person, sign_in_id)
    if sign_in_id == visit.sign_in:
        return let_out(visit.request, see("/sign-in", "out"))
    return see("/account", "ended")
