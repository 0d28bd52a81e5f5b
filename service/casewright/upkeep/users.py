"""People and shops, made and looked after without a page: for scripts, and for whoever is locked out."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import func, select

from casewright.folders import called
from casewright.records.people import House, Person, Role, Shop, SignIn
from casewright.records.sessions import Fenced, across_shops, writing
from casewright.shop.entering import (
    NewPerson,
    NewShop,
    add_person,
    fold_email,
    open_shop,
    set_password,
    sign_out,
)
from casewright.shop.keeping import note_history
from casewright.shop.passwords import password_fault
from casewright.shop.refusals import Refused
from casewright.upkeep.place import Place

ME = "casewright at the command line"


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """Somebody on the list of people."""

    shop: str
    shop_id: str
    name: str
    email: str
    role: Role
    ended_at: datetime | None
    sign_ins: int
    seen_at: datetime | None


def the_shop(db: Fenced, words: str | None) -> Shop:
    """The shop that is meant: the only one, or the one of this name or id.

    Args:
        db: a session across shops
        words: its name or id; None where it was not said

    Raises:
        Refused: there is none, or several and it was not said which
    """
    shops = db.scalars(select(Shop).order_by(Shop.name, Shop.shop_id)).all()
    named = shops if words is None else [each for each in shops if words in {each.shop_id, each.name}]
    if len(named) == 1:
        return named[0]
    if not shops:
        raise Refused("There is no shop yet; --new-shop NAME makes one.")
    listed = ", ".join(f"{each.name} ({each.shop_id})" for each in (named or shops)[:20])
    raise Refused(f"Say which shop with --shop NAME, or with its id. There are: {listed}.")


def check_password(password: str, *own_words: str) -> None:
    """Refuses a password that a stranger would guess.

    Raises:
        Refused: with what is wrong with it
    """
    if fault := password_fault(password, *own_words):
        raise Refused(f"This password cannot be taken. {fault}", 422)


def create_person(place: Place, new: NewPerson, role: Role, shop: str | None, now: datetime) -> Person:
    """Adds somebody to a shop.

    Raises:
        Refused: the shop is not clear, the address is taken, or the password too easy
    """
    with across_shops(place.engine) as db:
        held = the_shop(db, shop)
    check_password(new.password, new.name, new.email.partition("@")[0], held.name)
    with writing(place.engine, held.shop_id) as db:
        person = add_person(db, held.shop_id, new, role, now)
        note_history(db, ME, now, f"{new.name} was added as {role.value}.")
        return person


def create_shop(place: Place, new: NewShop, owner: NewPerson, now: datetime) -> Person:
    """Makes a further shop, or the first one, with its owner; the set-up page is closed by it.

    Raises:
        Refused: the name is another shop's, or the password too easy
    """
    check_password(owner.password, owner.name, owner.email.partition("@")[0], new.name)
    with across_shops(place.engine, write=True) as db:
        house = db.get(House, 1, with_for_update=True) or House(id=1)
        db.add(house)
        if db.scalars(select(Shop).where(Shop.name == new.name)).first() is not None:
            raise Refused(f"There is a shop {new.name} already; leave --new-shop out to add somebody to it.")
        house.code_hash, house.set_up_at = None, house.set_up_at or now
        return open_shop(db, new, owner, now)


def find_person(place: Place, email: str, shop: str | None) -> Person:
    """The person with an e-mail address.

    Raises:
        Refused: nobody has it, or somebody in several shops
    """
    with across_shops(place.engine) as db:
        asked = select(Person).where(Person.email == fold_email(email))
        if shop is not None:
            asked = asked.where(Person.shop_id == the_shop(db, shop).shop_id)
        found = db.scalars(asked).all()
        if len(found) > 1:
            where = ", ".join(each.shop_id for each in found)
            raise Refused(f"{email} works in several shops; say which with --shop. There are: {where}.")
    if not found:
        raise Refused(f"Nobody has the e-mail address {email}; `{called('list-users')}` lists all.")
    return found[0]


def give_password(place: Place, person: Person, password: str, now: datetime) -> None:
    """Gives somebody a new password; every sign-in of theirs ends.

    Raises:
        Refused: the person has left, or the password is too easy
    """
    check_password(password, person.name, person.email.partition("@")[0])
    with writing(place.engine, person.shop_id) as db:
        held = db.get_one(Person, (person.shop_id, person.id))
        if held.ended_at is not None:
            raise Refused(f"{held.name} has left the shop; invite them to let them in again.")
        set_password(db, held, password, now)


def end_sign_ins(place: Place, person: Person, now: datetime) -> int:
    """Ends every sign-in of a person; says how many there were."""
    with writing(place.engine, person.shop_id) as db:
        count = sign_out(db, person.id)
        note_history(db, ME, now, f"All sign-ins of {person.name} were ended.")
        return count


def list_persons(place: Place, shop: str | None) -> Sequence[Listed]:
    """Everybody, shop by shop, those who left at the end."""
    with across_shops(place.engine) as db:
        asked = (
            select(Person, Shop.name, func.count(SignIn.id), func.max(SignIn.seen_at))
            .join(Shop, Shop.shop_id == Person.shop_id)
            .outerjoin(SignIn, (SignIn.shop_id == Person.shop_id) & (SignIn.person_id == Person.id))
            .group_by(Person.shop_id, Person.id, Shop.name)
            .order_by(Shop.name, Person.shop_id, Person.ended_at.is_not(None), Person.name, Person.id)
        )
        if shop is not None:
            asked = asked.where(Person.shop_id == the_shop(db, shop).shop_id)
        return [
            Listed(
                shop=name,
                shop_id=person.shop_id,
                name=person.name,
                email=person.email,
                role=person.role,
                ended_at=person.ended_at,
                sign_ins=count,
                seen_at=seen,
            )
            for person, name, count, seen in db.execute(asked)
        ]
