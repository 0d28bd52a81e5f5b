"""Coming in: the first owner, signing in and out, invitations, new passwords."""

import re
import secrets
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import bindparam, delete, func, select, update
from sqlalchemy.exc import IntegrityError

from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.records.base import new_id
from casewright.records.people import House, KeyLink, Person, Role, Shop, ShopFigures, SignIn
from casewright.records.sessions import Fenced
from casewright.shop.keeping import note_history
from casewright.shop.links import end_resets, token_hash
from casewright.shop.passwords import HASHER, hash_password, matches
from casewright.shop.refusals import Refused
from casewright.shop.throttle import forget_failures, note_failure, refuse_if_too_many

LONGEST = timedelta(days=30)
"""A sign-in ends after this, used or not."""
IDLE = timedelta(days=7)
MOST_SHOPS = 20
"""Shops in which one address is looked for at the door: each costs the time of a password."""
WRONG = "The e-mail address or the password is not right."


class WrongCode(Refused):
    """The code on the set-up page is not the one that the start printed."""

    def __init__(self) -> None:
        super().__init__("This is not the code that the start printed; look at its last lines.", 422)


@dataclass(frozen=True, slots=True, kw_only=True)
class NewShop:
    """What a new shop is told at the start."""

    name: str
    currency: str
    symbol: str
    unit: str
    time_zone: str
    paper: str
    tax_rate: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPerson:
    """Somebody who comes in for the first time."""

    name: str
    email: str
    password: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Membership:
    """Somebody in one of the shops that their address and password open.

    Attributes:
        person: who they are there
        shop: its name
    """

    person: Person
    shop: str


def fold_email(email: str) -> str:
    """An e-mail address as it is compared."""
    return email.strip().casefold()


def new_set_up_code(db: Fenced) -> str | None:
    """A fresh code for the set-up page; None once a shop exists.

    Args:
        db: a writing session across shops
    """
    with suppress(IntegrityError), db.begin_nested():  # another process may start in this moment
        if db.get(House, 1) is None:
            db.add(House(id=1))
            db.flush()
    house = db.get(House, 1, with_for_update=True, populate_existing=True)
    if house is None or house.set_up_at or _people(db):
        if house is not None:
            house.code_hash = None
        return None
    code = "-".join(
        "".join(secrets.choice("23456789abcdefghjkmnpqrstuvwxyz") for _ in range(4)) for _ in range(4)
    )
    house.code_hash = token_hash(plain_code(code))
    return code


def plain_code(code: str) -> str:
    """A set-up code as it is compared: whatever stands between its letters and digits is for the eye."""
    return re.sub(r"[\W_]", "", code).lower()


def is_set_up(db: Fenced) -> bool:
    """Whether somebody can sign in already."""
    return _people(db) > 0


def _people(db: Fenced) -> int:
    return db.execute(select(func.count(Person.id))).scalar_one()


def set_up(db: Fenced, code: str, shop: NewShop, owner: NewPerson, now: datetime, address: str) -> Person:
    """Makes the first shop and its owner; only one of several who try at once succeeds.

    Args:
        db: a writing session across shops
        code: the code that the start printed
        shop: the shop
        owner: its owner
        now: the moment
        address: where the request came from, for the throttle

    Raises:
        Refused: a shop exists already
        WrongCode: the code is not the one; the failure is noted, so keep the transaction
    """
    house = db.get(House, 1, with_for_update=True)
    if house is None or house.code_hash is None or house.set_up_at or _people(db):
        raise Refused("This installation is set up already; sign in instead.", 410)
    refuse_if_too_many(db, "set-up", now, address=address)
    if not secrets.compare_digest(token_hash(plain_code(code)), house.code_hash):
        note_failure(db, "set-up", now, address=address)
        raise WrongCode
    house.code_hash, house.set_up_at = None, now
    return open_shop(db, shop, owner, now)


def open_shop(db: Fenced, new: NewShop, owner: NewPerson, now: datetime) -> Person:
    """Makes a shop with its first figures and its owner."""
    shop_id = new_id()
    figures = ShopSpec.model_validate({"name": new.name, "symbol": new.symbol, "tax_rate": new.tax_rate})
    db.add(
        Shop(
            shop_id=shop_id,
            name=new.name,
            currency=new.currency,
            symbol=new.symbol,
            unit=new.unit,
            time_zone=new.time_zone,
            paper=new.paper,
            created_at=now,
        )
    )
    db.flush()
    db.add(
        ShopFigures(
            shop_id=shop_id,
            revision=1,
            spec=figures.model_dump(mode="json", exclude_unset=True),
            at=now,
            who=owner.name,
        )
    )
    return add_person(db, shop_id, owner, Role.OWNER, now)


def add_person(db: Fenced, shop_id: str, new: NewPerson, role: Role, now: datetime) -> Person:
    """Adds somebody to a shop; somebody who had left comes back under the same address.

    Raises:
        Refused: the address is somebody's already
    """
    email = fold_email(new.email)
    held = db.scalars(
        select(Person).where(Person.shop_id == shop_id, Person.email == email).with_for_update()
    ).first()
    if held is not None and held.ended_at is None:
        raise Refused("Somebody in this shop has this e-mail address already.", 422)
    person = held or Person(shop_id=shop_id, id=new_id(), email=email, created_at=now)
    person.name, person.role, person.ended_at = new.name, role, None
    person.password_hash = hash_password(new.password)
    try:
        with db.begin_nested():
            db.add(person)
            db.flush()
    except IntegrityError:  # two came in with one address in the same moment
        raise Refused("Somebody in this shop has this e-mail address already.", 422) from None
    return person


def sign_in(
    db: Fenced, email: str, password: str, now: datetime, *, address: str, device: str = ""
) -> tuple[Membership, ...]:
    """Who signs in with an e-mail address and a password; empty, with the failure noted, for nobody.

    Args:
        db: a writing session across shops
        email: as typed
        password: as typed
        now: the moment
        address: where the request came from
        device: the mark of a device on which this account has been signed in before. Its tries are counted
            by themselves, so that strangers who guess cannot lock a person out of their own device.

    Returns:
        The person in each shop that the two open, in the order of the shops' names.

    Raises:
        TooMany: too many failures lately
    """
    account = fold_email(email)
    keys = {"device": f"{device} {account}"} if device else {"account": account, "address": address}
    refuse_if_too_many(db, "sign-in", now, **keys)
    asked = (
        select(Person, Shop.name)
        .join(Shop, Shop.shop_id == Person.shop_id)
        .where(Person.email == account, Person.ended_at.is_(None))
        .order_by(Person.shop_id)
        .limit(MOST_SHOPS)
    )
    found = [Membership(person=person, shop=name) for person, name in db.execute(asked)]
    right = [each for each in found if matches(password, each.person.password_hash)]
    if not found:
        matches(password, None)  # takes the time that a known account takes
    if not right:
        note_failure(db, "sign-in", now, **keys)
        return ()
    for each in right:
        if HASHER.check_needs_rehash(each.person.password_hash):
            each.person.password_hash = hash_password(password)
    forget_failures(db, "sign-in", **{name: key for name, key in keys.items() if name != "address"})
    return tuple(sorted(right, key=lambda each: (each.shop.casefold(), each.person.shop_id)))


def keep_signed_in(db: Fenced, person: Person, now: datetime, *, device: str, address: str) -> str:
    """A new sign-in of a person.

    Returns:
        The secret for the cookie; only its hash is kept.
    """
    token = secrets.token_urlsafe(32)
    db.execute(delete(SignIn).where(SignIn.shop_id == person.shop_id, SignIn.ends_at < now))
    note_seen(db, person.shop_id, person.id, now)
    db.add(
        SignIn(
            shop_id=person.shop_id,
            token_hash=token_hash(token),
            person_id=person.id,
            device=device[:200],
            address=address[:60],
            created_at=now,
            seen_at=now,
            ends_at=now + LONGEST,
        )
    )
    return f"{person.shop_id}.{token}"


def note_seen(db: Fenced, shop_id: str, person_id: str, now: datetime, sign_in_id: str = "") -> None:
    """Remembers that a person was here, with one of their sign-ins."""
    # Not through the row: being seen is no edit, and must not make a form stale.
    db.execute(update(Person).where(Person.shop_id == shop_id, Person.id == person_id).values(seen_at=now))
    if sign_in_id:
        db.execute(
            update(SignIn).where(SignIn.shop_id == shop_id, SignIn.id == sign_in_id).values(seen_at=now)
        )


_WHO = (
    select(SignIn, Person, Shop)
    .join(Person, (Person.shop_id == SignIn.shop_id) & (Person.id == SignIn.person_id))
    .join(Shop, Shop.shop_id == SignIn.shop_id)
    .where(
        SignIn.shop_id == bindparam("held"),
        SignIn.token_hash == bindparam("token"),
        SignIn.ends_at > bindparam("now"),
        SignIn.seen_at > bindparam("idle_since"),
        Person.ended_at.is_(None),
    )
)
# Built once: every page asks it.


def who_is(db: Fenced, cookie: str, now: datetime) -> tuple[SignIn, Person, Shop] | None:
    """Who holds a cookie's secret, in one query; None where it has ended."""
    shop_id, _, token = cookie.partition(".")
    asked = {"held": shop_id, "token": token_hash(token), "now": now, "idle_since": now - IDLE}
    found = db.execute(_WHO, asked).first()
    return (found[0], found[1], found[2]) if found else None


def sign_out(db: Fenced, person_id: str, sign_in_id: str | None = None, *, keep: str | None = None) -> int:
    """Ends one sign-in of a person, or all of them, or all but one; says how many."""
    ending = delete(SignIn).where(SignIn.person_id == person_id)
    if sign_in_id:
        ending = ending.where(SignIn.id == sign_in_id)
    if keep:
        ending = ending.where(SignIn.id != keep)
    return len(db.execute(ending.returning(SignIn.id)).all())


def come_in(db: Fenced, link: KeyLink, new: NewPerson, now: datetime) -> Person:
    """Uses an invitation: the new person belongs to the shop.

    Raises:
        Refused: the address is somebody's already; the invitation stays good
    """
    person = add_person(db, link.shop_id, new, link.role, now)
    link.used_at = now
    said = f"{new.name} came in as {link.role.value}, invited by {link.made_by}."
    note_history(db, new.name, now, said, shop_id=link.shop_id)
    return person


def set_password(db: Fenced, person: Person, password: str, now: datetime) -> None:
    """Gives a person a new password; every sign-in of theirs ends, and every open link to a new password."""
    person.password_hash = hash_password(password)
    db.execute(delete(SignIn).where(SignIn.shop_id == person.shop_id, SignIn.person_id == person.id))
    end_resets(db, person, now)
    said = f"{person.name} has a new password; all sign-ins ended."
    note_history(db, person.name, now, said, shop_id=person.shop_id)
