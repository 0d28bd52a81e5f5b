"""What stands around every page: the shop's name, who is signed in, and where the page is."""

from dataclasses import dataclass

from starlette.requests import Request

from casewright.records.people import Person, Role, Shop


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """What stands around every page.

    Attributes:
        shop: the shop's name; empty at the door
        person: who is signed in; empty for nobody
        role: their role
        here: the path of the page
        demo: whether the demo is in the shop
        zone: the shop's time zone
        symbol: the sign of its currency
        said: what has just been done
    """

    shop: str = ""
    person: str = ""
    role: str = ""
    here: str = "/"
    demo: bool = False
    zone: str = "UTC"
    symbol: str = "$"
    said: str = ""

    @property
    def is_office(self) -> bool:
        """Whether the office's pages are offered."""
        return self.role in {Role.OWNER, Role.MAKER}


def frame_in(request: Request, shop: Shop, person: Person) -> Frame:
    """The frame for somebody who is signed in: values, which outlast the session of the rows."""
    return Frame(
        shop=shop.name,
        person=person.name,
        role=person.role,
        here=request.url.path,
        demo=shop.demo,
        zone=shop.time_zone,
        symbol=shop.symbol,
    )
