"""The commands for shops and people: create-user, reset-password, list-users, end-sessions."""

import argparse
import re
from collections.abc import Callable
from datetime import UTC, datetime
from decimal import Decimal
from zoneinfo import available_timezones

from casewright.measure.shares import share_of_percent
from casewright.records.engine import migrate
from casewright.records.people import Role
from casewright.settings import Settings
from casewright.shop.entering import NewPerson, NewShop
from casewright.shop.refusals import Refused
from casewright.upkeep.answers import Answer, read_password, table
from casewright.upkeep.place import form_of, place_of, present_place
from casewright.upkeep.users import (
    create_person,
    create_shop,
    end_sign_ins,
    find_person,
    give_password,
    list_persons,
)
from casewright.web.door.entry import CURRENCIES

AN_EMAIL = re.compile(r"[^@\s]{1,64}@[^@\s]{1,189}")


def _create(settings: Settings, given: argparse.Namespace) -> Answer:
    role = Role(given.role or ("owner" if given.new_shop else "maker"))
    if given.new_shop and (role is not Role.OWNER or given.shop):
        raise Refused("The first person of a new shop is its owner: leave --role and --shop out.")
    if not AN_EMAIL.fullmatch(given.email):
        raise Refused(f"“{given.email}” is no e-mail address; write it such as ada@shop.example.")
    new_shop = _new_shop(given) if given.new_shop else None
    name = _line("--name", given.name or given.email.partition("@")[0])
    new = NewPerson(name=name, email=given.email, password=read_password(from_input=given.password_stdin))
    now = datetime.now(UTC)
    if new_shop:
        _make_ready(settings)
    with present_place(settings) as place:
        if new_shop:
            made = create_shop(place, new_shop, new, now)
        else:
            made = create_person(place, new, role, given.shop, now)
    shop = f" of the new shop {new_shop.name}" if new_shop else ""
    return Answer(
        words=(f"{made.name} can sign in with {made.email} as {made.role.value}{shop}.",),
        data={"id": made.id, "shop_id": made.shop_id, "email": made.email, "role": made.role.value},
    )


def _make_ready(settings: Settings) -> None:
    """Makes the folder and the database of an installation that was never started."""
    settings.data.mkdir(parents=True, exist_ok=True, mode=0o700)
    with place_of(settings) as place:
        if form_of(place.engine) is None:
            migrate(place.engine)


def _new_shop(given: argparse.Namespace) -> NewShop:
    if given.currency not in CURRENCIES:
        raise Refused(f"--currency: there are {', '.join(CURRENCIES)}.")
    if given.time_zone not in available_timezones():
        raise Refused(f"--time-zone: “{given.time_zone}” is none; write it such as Europe/Vienna.")
    return NewShop(
        name=_line("--new-shop", given.new_shop),
        currency=given.currency,
        symbol=CURRENCIES[given.currency],
        unit=given.unit,
        time_zone=given.time_zone,
        paper=given.paper,
        tax_rate=_tax(given.tax),
    )


def _tax(text: str) -> float:
    if not re.fullmatch(r"\d{1,2}(\.\d{1,4})?", text) or float(text) > 50:
        raise Refused(f"--tax: “{text[:20]}” is no tax; write percent such as 6 or 8.25, 50 at most.")
    return share_of_percent(Decimal(text))


def _line(option: str, text: str) -> str:
    line = " ".join(text.split())
    if not line or len(line) > 120 or not line.isprintable():
        raise Refused(f"{option}: write a name of 1 to 120 letters.")
    return line


def _reset(settings: Settings, given: argparse.Namespace) -> Answer:
    with present_place(settings) as place:
        person = find_person(place, given.email, given.shop)
        give_password(place, person, read_password(from_input=given.password_stdin), datetime.now(UTC))
    return Answer(
        words=(f"{person.name} has a new password. Every sign-in of theirs has ended.",),
        data={"id": person.id, "shop_id": person.shop_id, "email": person.email},
    )


def _end(settings: Settings, given: argparse.Namespace) -> Answer:
    with present_place(settings) as place:
        person = find_person(place, given.email, given.shop)
        count = end_sign_ins(place, person, datetime.now(UTC))
    return Answer(
        words=(f"{person.name} is signed out everywhere; {count} sign-ins ended.",),
        data={"id": person.id, "shop_id": person.shop_id, "ended": count},
    )


def _list(settings: Settings, given: argparse.Namespace) -> Answer:
    with present_place(settings) as place:
        found = list_persons(place, given.shop)
    rows = [("SHOP", "NAME", "E-MAIL", "ROLE", "SIGN-INS", "SEEN")]
    rows += [
        (
            each.shop,
            each.name,
            each.email,
            "left" if each.ended_at else each.role.value,
            str(each.sign_ins),
            f"{each.seen_at:%Y-%m-%d %H:%M} UTC" if each.seen_at else "",
        )
        for each in found
    ]
    return Answer(
        words=tuple(table(rows)),
        data={
            "people": [
                {
                    "shop": each.shop,
                    "shop_id": each.shop_id,
                    "name": each.name,
                    "email": each.email,
                    "role": each.role.value,
                    "ended_at": each.ended_at.isoformat() if each.ended_at else None,
                    "sign_ins": each.sign_ins,
                    "seen_at": each.seen_at.isoformat() if each.seen_at else None,
                }
                for each in found
            ]
        },
    )


PEOPLE: dict[str, Callable[[Settings, argparse.Namespace], Answer]] = {
    "create-user": _create,
    "reset-password": _reset,
    "end-sessions": _end,
    "list-users": _list,
}
