"""Coming in: the first owner, signing in and out, invitations, new passwords."""

import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from hashlib import sha256

from sqlalchemy import delete, func, select, update

from casewright.pieces.shop_spec import ShopSpec
from casewright.records.base import new_id
from casewright.records.people import House, KeyLink, LinkKind, Person, Role, Shop, ShopFigures, SignIn
from casewright.records.sessions import ACROSS, Fenced
from casewright.shop.keeping import note_history
from casewright.shop.passwords import HASHER, hash_password, matches
from casewright.shop.refusals import NotFound, Refused
from casewright.shop.throttle import forget_failures, note_failure, refuse_if_too_many

LONGEST = timedelta(days=30)
"""A sign-in ends after this, used or not."""
IDLE = timedelta(days=7)
INVITED_FOR = timedelta(days=7)
RESET_FOR = timedelta(minutes=30)
WRONG = "The e-mail address or the password is not right."


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


def token_hash(token: str) -> str:
    """What is kept of a secret that was handed out."""
    return sha256(token.encode()).hexdigest()


def fold_email(email: str) -> str:
    """An e-mail address as it is compared."""
    return email.strip().casefold()


def new_set_up_code(db: Fenced) -> str | None:
    """A fresh code for the set-up page; None once a shop exists.

    Args:
        db: a writing session across shops
    """
    house = db.get(House, 1, with_for_update=True) or House(id=1)
    db.add(house)
    if house.set_up_at or _people(db):
        house.code_hash = None
        return None
    code = "-".join(
        "".join(secrets.choice("23456789abcdefghjkmnpqrstuvwxyz") for _ in range(4)) for _ in range(4)
    )
    house.code_hash = token_hash(code)
    return code


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
        Refused: a shop exists already, or the code is not the one
    """
    house = db.get(House, 1, with_for_update=True)
    if house is None or house.code_hash is None or house.set_up_at:
        raise Refused("This installation is set up already; sign in instead.", 410)
    refuse_if_too_many(db, "set-up", now, address=address)
    if not secrets.compare_digest(token_hash(code.strip().lower()), house.code_hash):
        raise Refused("This is not the code that the start printed; look at its last lines.", 422)
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
    """Adds somebody to a shop.

    Raises:
        Refused: the address is somebody's already
    """
    email = fold_email(new.email)
    held = db.scalars(select(Person).where(Person.shop_id == shop_id, Person.email == email)).first()
    if held is not None:
        raise Refused("Somebody in this shop has this e-mail address already.", 422)
    person = Person(
        shop_id=shop_id,
        id=new_id(),
        name=new.name,
        email=email,
        role=role,
        password_hash=hash_password(new.password),
        created_at=now,
    )
    db.add(person)
    db.flush()
    return person


def sign_in(db: Fenced, email: str, password: str, now: datetime, *, address: str) -> Person | None:
    """Who signs in with an e-mail address and a password; None, with the failure noted, for nobody.

    Args:
        db: a writing session across shops
        email: as typed
        password: as typed
        now: the moment
        address: where the request came from

    Raises:
        TooMany: too many failures lately
    """
    account = fold_email(email)
    refuse_if_too_many(db, "sign-in", now, account=account, address=address)
    found = list(
        db.scalars(select(Person).where(Person.email == account, Person.ended_at.is_(None)).limit(5))
    )
    right = [each for each in found if matches(password, each.password_hash)]
    if not found:
        matches(password, None)  # takes the time that a known account takes
    if not right:
        note_failure(db, "sign-in", now, account=account, address=address)
        return None
    person = right[0]
    if HASHER.check_needs_rehash(person.password_hash):
        person.password_hash = hash_password(password)
    forget_failures(db, "sign-in", account=account)
    return person


def keep_signed_in(db: Fenced, person: Person, now: datetime, *, device: str, address: str) -> str:
    """A new sign-in of a person.

    Returns:
        The secret for the cookie; only its hash is kept.
    """
    token = secrets.token_urlsafe(32)
    db.execute(delete(SignIn).where(SignIn.shop_id == person.shop_id, SignIn.ends_at < now))
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


def who_is(db: Fenced, cookie: str, now: datetime) -> tuple[SignIn, Person, Shop] | None:
    """Who holds a cookie's secret, in one query; None where it has ended."""
    token = cookie.partition(".")[2]
    found = db.execute(
        select(SignIn, Person, Shop)
        .join(Person, (Person.shop_id == SignIn.shop_id) & (Person.id == SignIn.person_id))
        .join(Shop, Shop.shop_id == SignIn.shop_id)
        .where(
            SignIn.token_hash == token_hash(token),
            SignIn.ends_at > now,
            SignIn.seen_at > now - IDLE,
            Person.ended_at.is_(None),
        )
    ).first()
    return (found[0], found[1], found[2]) if found else None


def sign_out(db: Fenced, person_id: str, sign_in_id: str | None = None, *, keep: str | None = None) -> None:
    """Ends one sign-in of a person, or all of them, or all but one."""
    ending = delete(SignIn).where(SignIn.person_id == person_id)
    if sign_in_id:
        ending = ending.where(SignIn.id == sign_in_id)
    if keep:
        ending = ending.where(SignIn.id != keep)
    db.execute(ending)


def invite(db: Fenced, made_by: str, role: Role, now: datetime) -> str:
    """A link that lets one new person in.

    Returns:
        The secret part of the link.
    """
    note_history(db, made_by, now, f"Invited somebody as {role.value}.")
    return _new_link(db, LinkKind.INVITATION, role, made_by, now, INVITED_FOR)


def offer_new_password(db: Fenced, person: Person, made_by: str, now: datetime) -> str:
    """A link with which a person sets a new password; earlier ones stop working.

    Returns:
        The secret part of the link.
    """
    db.execute(
        update(KeyLink)
        .where(
            KeyLink.shop_id == person.shop_id,
            KeyLink.kind == LinkKind.RESET,
            KeyLink.person_id == person.id,
            KeyLink.used_at.is_(None),
        )
        .values(used_at=now)
    )
    return _new_link(db, LinkKind.RESET, person.role, made_by, now, RESET_FOR, person)


def _new_link(
    db: Fenced,
    kind: LinkKind,
    role: Role,
    made_by: str,
    now: datetime,
    lasts: timedelta,
    person: Person | None = None,
) -> str:
    token = secrets.token_urlsafe(24)
    shop_id = person.shop_id if person else db.shop_id
    db.add(
        KeyLink(
            shop_id=shop_id,
            kind=kind,
            token_hash=token_hash(token),
            person_id=person.id if person else None,
            role=role,
            made_by=made_by,
            created_at=now,
            ends_at=now + lasts,
        )
    )
    return f"{shop_id}.{token}"


def find_link(db: Fenced, kind: LinkKind, secret: str, now: datetime) -> KeyLink:
    """The link that a secret opens.

    Raises:
        NotFound: no link, a used one, or one that has run out
    """
    token = secret.partition(".")[2]
    found = db.scalars(
        select(KeyLink)
        .where(
            KeyLink.kind == kind,
            KeyLink.token_hash == token_hash(token),
            KeyLink.used_at.is_(None),
            KeyLink.ends_at > now,
        )
        .with_for_update()
    ).first()
    if found is None:
        raise NotFound("link: it has been used, or it has run out. Ask for a new one")
    return found


def come_in(db: Fenced, link: KeyLink, new: NewPerson, now: datetime) -> Person:
    """Uses an invitation: the new person belongs to the shop."""
    link.used_at = now
    person = add_person(db, link.shop_id, new, link.role, now)
    note_history(db, new.name, now, f"{new.name} came in as {link.role.value}, invited by {link.made_by}.")
    return person


def set_password(db: Fenced, person: Person, password: str, now: datetime) -> None:
    """Gives a person a new password and ends every sign-in of theirs."""
    person.password_hash = hash_password(password)
    db.execute(
        delete(SignIn).where(SignIn.shop_id == person.shop_id, SignIn.person_id == person.id),
    )
    if not db.info.get(ACROSS):
        note_history(db, person.name, now, f"{person.name} has a new password; all sign-ins ended.")
