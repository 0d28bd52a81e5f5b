"""What only one may have: a link that is good once, and the last owner."""

import re
from concurrent.futures import ThreadPoolExecutor

from sqlalchemy import func, select

from casewright.records.people import Person, Role
from casewright.records.sessions import reading, writing
from casewright.shop.links import invite, offer_new_password
from pages.visitor import Visitor

NEW = "shavings under the bench"


def test_of_twenty_who_use_an_invitation_at_once_one_comes_in(shop):
    with writing(shop.engine, shop.shop_id) as db:
        link = f"/invitation/{invite(db, shop.people[Role.OWNER], Role.BENCH, shop.clock.now)}"

    def use(number: int) -> int:
        fields = {"name": "Dot Hale", "email": f"dot{number}@shop.test", "password": NEW}
        return Visitor(shop.app).browser.post(link, data=fields, follow_redirects=False).status_code

    with ThreadPoolExecutor(20) as pool:
        statuses = list(pool.map(use, range(20)))

    assert sorted(statuses) == [303] + [404] * 19
    with reading(shop.engine, shop.shop_id) as db:
        assert db.execute(select(func.count(Person.id))).scalar_one() == 4


def test_of_twenty_who_use_a_link_to_a_new_password_at_once_one_sets_it(shop):
    with writing(shop.engine, shop.shop_id) as db:
        person = db.get(Person, (shop.shop_id, shop.people[Role.BENCH].id))
        link = f"/password/{offer_new_password(db, person, shop.people[Role.OWNER], shop.clock.now)}"

    def use(number: int) -> int:
        visitor = Visitor(shop.app)
        return visitor.browser.post(
            link, data={"password": f"{NEW} {number}"}, follow_redirects=False
        ).status_code

    with ThreadPoolExecutor(20) as pool:
        statuses = list(pool.map(use, range(20)))

    assert sorted(statuses) == [303] + [404] * 19


def test_of_two_invited_under_one_address_at_once_one_comes_in(shop):
    with writing(shop.engine, shop.shop_id) as db:
        links = [
            f"/invitation/{invite(db, shop.people[Role.OWNER], Role.BENCH, shop.clock.now)}" for _ in range(4)
        ]
    fields = {"name": "Dot Hale", "email": "dot@shop.test", "password": NEW}

    with ThreadPoolExecutor(4) as pool:
        answers = pool.map(
            lambda link: Visitor(shop.app).browser.post(link, data=fields, follow_redirects=False), links
        )

    assert sorted(answer.status_code for answer in answers) == [303, 422, 422, 422]


def test_of_two_owners_who_demote_each_other_at_once_one_stays(shop, owner):
    people = [shop.people[Role.OWNER], shop.people[Role.MAKER]]
    owner.get(f"/shop/people/{people[1].id}")
    owner.send(f"/shop/people/{people[1].id}/role", role="owner")
    visitors = [shop.visitor(Role.OWNER), shop.visitor(Role.MAKER)]

    def demote(turn: int) -> int:
        address = f"/shop/people/{people[1 - turn].id}"
        version = re.search(r'name="version" value="(\d+)"', visitors[turn].get(address).html).group(1)
        data = {"role": "bench", "version": version}
        return visitors[turn].browser.post(f"{address}/role", data=data, follow_redirects=False).status_code

    with ThreadPoolExecutor(2) as pool:
        list(pool.map(demote, range(2)))

    with reading(shop.engine, shop.shop_id) as db:
        owners = select(func.count(Person.id)).where(Person.role == Role.OWNER, Person.ended_at.is_(None))
        assert db.execute(owners).scalar_one() == 1
