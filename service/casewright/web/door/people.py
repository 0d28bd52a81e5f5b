"""Pages about the people of the shop, for its owner."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.records.people import KeyLink, Person, Role
from casewright.records.staff import list_people, open_invitations, sign_ins_of
from casewright.shop.entering import IDLE, sign_out
from casewright.shop.keeping import note_history, once
from casewright.shop.links import INVITED_FOR, RESET_FOR, invite, offer_new_password
from casewright.shop.people import (
    WrongPassword,
    check_password,
    end_invitation,
    end_membership,
    end_sign_in,
    give_role,
    load_person,
)
from casewright.shop.refusals import Refused
from casewright.web.door.account import SignInRow, sign_in_rows
from casewright.web.frame.events import note_event
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Owner, Visit, site_of

router = APIRouter()
ROLES = tuple(role.value for role in Role)


@dataclass(frozen=True, slots=True, kw_only=True)
class PeoplePage(Page):
    """Who works here, and who is invited."""

    template: ClassVar[str] = "people/list.html"
    here: Sequence[Person]
    left: Sequence[Person]
    invitations: Sequence[KeyLink]
    form: Form
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonPage(Page):
    """One person: role, sign-ins, the end of their time here."""

    template: ClassVar[str] = "people/one.html"
    person: Person
    own: bool
    own_email: str
    sign_ins: tuple[SignInRow, ...]
    form: Form
    ending: Form
    tabs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkPage(Page):
    """A link that is shown once."""

    template: ClassVar[str] = "people/link.html"
    link: str
    ends_at: datetime
    role: str
    name: str
    back: str
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/people")
def show_people(visit: Owner) -> Response:
    """Who works here, and who is invited."""
    return show(visit, _people_page(visit, form_of(role=Role.MAKER)))


def _people_page(visit: Visit, form: Form) -> PeoplePage:
    everybody = list_people(visit.db)
    return PeoplePage(
        title="People",
        here=[each for each in everybody if each.ended_at is None],
        left=[each for each in everybody if each.ended_at is not None],
        invitations=open_invitations(visit.db, visit.now),
        form=form,
        tabs=rooms_for(visit),
    )


@router.post("/shop/people/invitations")
def save_invitation(visit: Owner) -> Response:
    """Makes an invitation and shows its link, once."""
    read = Reader(visit.typed)
    role = Role(read.choice("role", ROLES))
    if read.faults:
        return show(visit, _people_page(visit, read.form), 422)
    made: list[str] = []

    def make() -> str:
        made.append(invite(visit.db, visit.person, role, visit.now))
        return "/shop/people"

    back = once(visit.db, visit.typed.once, visit.now, make)
    if not made:  # sent twice: its link has been shown
        return see(back)
    note_event(
        visit.request, "invitation", "made", shop=visit.shop.shop_id, person=visit.person.id, role=role
    )
    return show(
        visit,
        LinkPage(
            title="The invitation",
            link=f"{site_of(visit.request)}/invitation/{made[0]}",
            ends_at=visit.now + INVITED_FOR,
            role=role,
            name="",
            back=back,
            tabs=rooms_for(visit),
        ),
    )


@router.post("/shop/people/invitations/{link_id}/end")
def save_invitation_end(visit: Owner, link_id: str) -> Response:
    """Ends an invitation that nobody has used."""
    end_invitation(visit.db, link_id, visit.who, visit.now)
    return see("/shop/people", "ended")


@router.get("/shop/people/{person_id}")
def show_person(visit: Owner, person_id: str) -> Response:
    """One person of the shop."""
    return show(visit, _person_page(visit, load_person(visit.db, person_id), Form()))


def _person_page(visit: Visit, held: Person, ending: Form) -> PersonPage:
    sign_ins = sign_ins_of(visit.db, held.id, visit.now - IDLE, visit.now)
    return PersonPage(
        title=held.name,
        person=held,
        own=held.id == visit.person.id,
        own_email=visit.person.email,
        sign_ins=sign_in_rows(sign_ins, visit.sign_in),
        form=form_of(role=held.role, version=str(held.version)),
        ending=ending,
        tabs=rooms_for(visit),
    )


@router.post("/shop/people/{person_id}/role")
def save_role(visit: Owner, person_id: str) -> Response:
    """Gives a person another role."""
    held = load_person(visit.db, person_id)
    read = Reader(visit.typed)
    role = Role(read.choice("role", ROLES))
    version = read.whole("version", least=1, most=10**8)
    if read.faults:
        raise Refused("The role could not be read. Go back and choose one of the list.", 422)
    if give_role(visit.db, held, role, version, visit.who, visit.now):
        note_event(visit.request, "role", "ok", shop=visit.shop.shop_id, person=held.id, role=role)
        return see(_back_to(visit, held), "saved")
    return see(f"/shop/people/{held.id}", "saved")


@router.post("/shop/people/{person_id}/password")
def save_password_link(visit: Owner, person_id: str) -> Response:
    """Makes a link to a new password for somebody and shows it, once."""
    held = load_person(visit.db, person_id)
    if held.ended_at is not None:
        raise Refused(f"{held.name} has left the shop; invite them to let them in again.")
    made: list[str] = []

    def make() -> str:
        made.append(offer_new_password(visit.db, held, visit.person, visit.now))
        return f"/shop/people/{held.id}"

    back = once(visit.db, visit.typed.once, visit.now, make)
    if not made:
        return see(back)
    note_event(visit.request, "new password", "offered", shop=visit.shop.shop_id, person=held.id)
    return show(
        visit,
        LinkPage(
            title=f"A new password for {held.name}",
            link=f"{site_of(visit.request)}/password/{made[0]}",
            ends_at=visit.now + RESET_FOR,
            role="",
            name=held.name,
            back=back,
            tabs=rooms_for(visit),
        ),
    )


@router.post("/shop/people/{person_id}/sign-ins/end")
def save_all_sign_ins_end(visit: Owner, person_id: str) -> Response:
    """Ends every sign-in of a person."""
    held = load_person(visit.db, person_id)
    sign_out(visit.db, held.id)
    note_history(visit.db, visit.who, visit.now, f"Ended every sign-in of {held.name}.")
    return see(_back_to(visit, held), "ended")


@router.post("/shop/people/{person_id}/sign-ins/{sign_in_id}/end")
def save_one_sign_in_end(visit: Owner, person_id: str, sign_in_id: str) -> Response:
    """Ends one sign-in of a person."""
    held = load_person(visit.db, person_id)
    end_sign_in(visit.db, held, sign_in_id)
    note_history(visit.db, visit.who, visit.now, f"Ended a sign-in of {held.name}.")
    return see("/sign-in" if sign_in_id == visit.sign_in else f"/shop/people/{held.id}", "ended")


@router.post("/shop/people/{person_id}/end")
def save_end(visit: Owner, person_id: str) -> Response:
    """Ends a person's membership, once whoever sits there has shown to be the owner."""
    held = load_person(visit.db, person_id)
    try:
        check_password(visit.db, visit.person, visit.typed.get("password_now"), visit.now)
    except WrongPassword as wrong:  # caught here, so that the failure is kept
        ending = Form(faults={"password_now": str(wrong)})
        return show(visit, _person_page(visit, held, ending), 422)
    end_membership(visit.db, held, visit.who, visit.now)
    note_event(visit.request, "membership", "ended", shop=visit.shop.shop_id, person=held.id)
    return see("/sign-in" if held.id == visit.person.id else "/shop/people", "ended")


def _back_to(visit: Visit, held: Person) -> str:
    """A person's page; the door for whoever has just ended their own sign-in."""
    return "/sign-in" if held.id == visit.person.id else f"/shop/people/{held.id}"
