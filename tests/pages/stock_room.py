"""What tests of the stock begin with: a job to buy for, a yard, an order, boards on the rack."""

from typing import Any

from sqlalchemy import update

from casewright.records.jobs import Job, JobState
from casewright.records.sessions import writing
from pages.commissions import Commission, commission, id_in
from pages.visitor import Shown, Visitor
from people import ShopInTest

YARD = {"kinds.lumber": "1", "kinds.sheet": "1", "kinds.hardware": "1", "kinds.finish": "1"}


def accepted(shop: ShopInTest, **changes: Any) -> Commission:
    """A job that is accepted, so that wood may be bought for it."""
    held = commission(shop, **changes)
    with writing(shop.engine, shop.shop_id) as db:
        db.execute(update(Job).where(Job.id == held.job_id).values(state=JobState.ACCEPTED))
    return held


def supplier(who: Visitor, name: str = "Sawyer & Daughters", **kinds: str) -> str:
    """A supplier, of everything but sundries unless some kinds are named; gives its id."""
    return id_in(who.post("/stock/suppliers", name=name, **(kinds or YARD)).address)


def issue(who: Visitor, *jobs: str, **typed: str) -> Shown:
    """Issues what some jobs take, as the form proposes it, with some fields changed."""
    who.get("/stock/needs?" + "&".join(f"job={each}" for each in jobs))
    return who.send("/stock/orders", **typed)


def begin(who: Visitor, supplier_id: str, order: str = "") -> str:
    """Begins to receive; gives the address of the delivery."""
    made = who.post("/stock/deliveries", supplier=supplier_id, order=order, arrived_on="2027-03-01")
    return made.address.partition("?")[0]


def tap(who: Visitor, address: str, width: str, length: str = "8 ft", **more: str) -> Shown:
    """Tallies a board of cherry 4/4 FAS by a tap on its width."""
    sort = {"material": "cherry", "size": "4/4", "cut": "flat", "grade": "FAS", "is_sheet": ""}
    whole, _, over = width.partition("-")
    return who.post(
        f"{address}/pieces", **(sort | {"tapped": whole, "over": over or "0", "length": length} | more)
    )


def on_rack(who: Visitor, width: str, length: str, **more: str) -> str:
    """Labels an offcut that has no board of its own; gives its address."""
    fields = {"material": "cherry", "size": "4/4", "cut": "flat", "grade": "FAS", "width": width}
    made = who.post("/stock/offcuts", **(fields | {"length": length} | more))
    return made.address.partition("?")[0]
