"""The people of a shop: what they may do, their own accounts, and leaving."""

from datetime import datetime

from sqlalchemy import select
from sqlalchemy.exc import IntegrityError

from casewright.records.people import KeyLink, LinkKind, Person, Role
from casewright.records.sessions import Fenced
from casewright.records.staff import owners_held
from casewright.shop.entering import fold_email, set_password, sign_out
from casewright.shop.keeping import note_history
from casewright.shop.links import end_links_of, end_resets
from casewright.shop.passwords import matches
from casewright.shop.refusals import NotFound, Refused, Stale
from casewright.shop.throttle import forget_failures, note_failure, refuse_if_too_many

LAST_OWNER = (
    "{name} is the only owner of the shop, and without one nobody could see its money or let people in. "
    "Make somebody else an owner first."
)


class WrongPassword(Refused):
    """The password that was asked for is not the person's; the failure is noted, so keep the transaction."""

    def __init__(self) -> None:
        super().__init__("This is not your password. Type the one with which you sign in now.", 422)


def load_person(db: Fenced, person_id: str) -> Person:
    """Somebody who works in the shop, or has.

    Raises:
        NotFound: the shop has no such person
    """
    found = db.get(Person, (db.shop_id, person_id))
    if found is None:
        raise NotFound("person")
    return found


def check_password(db: Fenced, who: Person, password: str, now: datetime) -> None:
    """Makes sure that whoever sits there is the person who signed in.

    Raises:
        WrongPassword: it is not their password
        TooMany: too many wrong ones lately
    """
    refuse_if_too_many(db, "password", now, account=who.id)
    if not matches(password[:200], who.password_hash):
        note_failure(db, "password", now, account=who.id)
        raise WrongPassword
    forget_failures(db, "password", account=who.id)


def give_role(db: Fenced, held: Person, role: Role, version: int, who: str, now: datetime) -> bool:
    """Gives a person another role; they sign in again with it, and links that they made end.

    Returns:
        Whether it is another one.

    Raises:
        Refused: the person has left, or is the only owner
        Stale: somebody else changed it meanwhile
    """
    _refuse_without_owner(db, held, role)
    if held.version != version:
        raise Stale({"role": held.role.value})
    if held.role is role:
        return False
    before, held.role = held.role, role
    sign_out(db, held.id)
    end_resets(db, held, now)
    end_links_of(db, held, now)
    said = f"{held.name} is now {role.value}; before, {before.value}."
    note_history(db, who, now, said, before={"role": before.value}, after={"role": role.value})
    return True


def end_membership(db: Fenced, held: Person, who: str, now: datetime) -> None:
    """Ends a person's time in the shop: what they did stays under their name.

    Every sign-in ends at once, and every open link that they made.

    Raises:
        Refused: the person has left already, or is the only owner
    """
    _refuse_without_owner(db, held, None)
    held.ended_at = now
    sign_out(db, held.id)
    end_resets(db, held, now)
    end_links_of(db, held, now)
    note_history(db, who, now, f"{held.name} no longer works in the shop.")


def _refuse_without_owner(db: Fenced, held: Person, role: Role | None) -> None:
    owners = owners_held(db)
    db.refresh(held)
    if held.ended_at is not None:
        raise Refused(f"{held.name} has left the shop; invite them to let them in again.")
    if role is not Role.OWNER and [each.id for each in owners] == [held.id]:
        raise Refused(LAST_OWNER.format(name=held.name))


def end_invitation(db: Fenced, link_id: str, who: str, now: datetime) -> None:
    """Ends an invitation that has not been used.

    Raises:
        NotFound: the shop has no such invitation, or it let somebody in already
    """
    link = db.scalars(
        select(KeyLink)
        .where(KeyLink.id == link_id, KeyLink.kind == LinkKind.INVITATION, KeyLink.used_at.is_(None))
        .with_for_update()
    ).first()
    if link is None:
        raise NotFound("open invitation")
    link.used_at = now
    note_history(db, who, now, f"Ended an invitation as {link.role.value} that {link.made_by} had made.")


def change_account(db: Fenced, held: Person, name: str, email: str, version: int, now: datetime) -> None:
    """Changes a person's own name and e-mail address.

    Raises:
        Refused: the address is somebody else's
        Stale: it was changed on another device meanwhile
    """
    before = {"name": held.name, "email": held.email}
    after = {"name": name, "email": fold_email(email)}
    if held.version != version:
        raise Stale({key: text for key, text in before.items() if text != after[key]})
    if before == after:
        return
    try:
        with db.begin_nested():
            held.name, held.email = after["name"], after["email"]
            db.flush()
    except IntegrityError:
        raise Refused("Somebody in this shop has this e-mail address already.", 422) from None
    note_history(db, name, now, f"{before['name']} changed their account.", before=before, after=after)


def change_password(db: Fenced, held: Person, present: str, new: str, now: datetime) -> None:
    """Gives somebody who knows the present password a new one; every sign-in of theirs ends.

    Raises:
        WrongPassword: the present password is another
        TooMany: too many wrong ones lately
    """
    check_password(db, held, present, now)
    set_password(db, held, new, now)


def end_sign_in(db: Fenced, held: Person, sign_in_id: str) -> None:
    """Ends one sign-in of a person.

    Raises:
        NotFound: the person has no such sign-in
    """
    if not sign_out(db, held.id, sign_in_id):
        raise NotFound("sign-in")
