"""Which pages are looked at, in whose window and in which state, and how one comes there."""

from dataclasses import dataclass

from playwright.sync_api import Page

from browser.demo_shop import (
    DOOR_STATES,
    DRAWER_STATES,
    JOB_STATES,
    PAPERS,
    QUOTE_STATES,
    UNIT_STATES,
    pages_for,
)
from casewright.records.people import Role

WITH_STATES = {"/jobs/{job_id}", "/quotes/{quote_id}", "/papers/{paper_id}", "/bench/{drawer_id}"}
SEND = """typed => {
  const field = name => document.querySelector(`main form[method=post] [name="${name}"]`);
  const form = field(Object.keys(typed)[0]).form;
  for (const [name, text] of Object.entries(typed)) field(name).value = text;
  form.noValidate = true;
  form.requestSubmit(form.querySelector("button.main") || form.querySelector("button:not([formaction])"));
}"""
SEND_FROM_ANOTHER_WINDOW = """async typed => {
  const form = document.querySelector("main form[method=post]");
  const given = new URLSearchParams(new FormData(form));
  for (const [name, text] of Object.entries(typed)) given.set(name, `${text}, from another window`);
  given.set("once", "another-window");
  await fetch(form.action, { method: "POST", body: given });
}"""


@dataclass(frozen=True)
class Place:
    """A page as somebody sees it.

    Attributes:
        who: owner, bench, newcomer (the owner of an empty shop) or stranger
        path: the template of its address, or the address itself
        state: what it shows
        typed: what is typed before the form is sent, by the names of the fields; nothing: it is not sent
        status: what the service answers
    """

    who: str
    path: str
    state: str = ""
    typed: tuple[tuple[str, str], ...] = ()
    status: int = 200

    def __str__(self) -> str:
        return f"{self.who} {self.path}{f' ({self.state})' if self.state else ''}"

    @property
    def is_light(self) -> bool:
        """Whether it is for a poor line: the customer's, and those of the bench."""
        return self.path.startswith(("/quote/", "/bench/", "/board"))

    def arrive(self, page: Page, address: str) -> int:
        """Goes there; gives the status of the answer."""
        answer = page.goto(address)
        page.wait_for_load_state()
        if self.typed:
            if self.status == 409:
                page.evaluate(SEND_FROM_ANOTHER_WINDOW, dict(self.typed))
            with page.expect_navigation() as gone:
                page.evaluate(SEND, dict(self.typed))
            answer = gone.value
        assert answer
        return answer.status


def refused(who: str, path: str, status: int = 422, state: str = "", **typed: str) -> Place:
    """The answer to a form that was filled in wrongly. A field's dot is written __ here."""
    pairs = tuple((name.replace("__", "."), text) for name, text in typed.items())
    return Place(who, path, f"{state} {status}".strip(), pairs, status)


BEFORE_SET_UP = [Place("stranger", "/set-up"), refused("stranger", "/set-up", code="not the one")]
"""Pages that are gone once the shop is set up."""
PLACES = [
    *BEFORE_SET_UP,
    *(Place("owner", path) for path in pages_for(Role.OWNER) if path not in WITH_STATES),
    *(Place("owner", "/jobs/{job_id}", state) for state in JOB_STATES),
    *(Place("owner", "/quotes/{quote_id}", state) for state in QUOTE_STATES[:4]),
    *(Place("owner", "/papers/{paper_id}", kind) for kind in (PAPERS[0], PAPERS[3])),
    *(Place("owner", "/units/{unit_id}", state) for state in (*UNIT_STATES, *DOOR_STATES)),
    Place("owner", "/units/{unit_id}/joints/case", "doors"),
    Place("owner", "/units/{unit_id}/compare", "four"),
    Place("owner", "/stock/needs", "a job"),
    *(Place(who, "/stock/deliveries/{delivery_id}", "boards") for who in ("owner", "bench")),
    Place("owner", "/stock/deliveries/{delivery_id}", "sheets"),
    *(Place("bench", path) for path in ("/stock", "/stock/pieces/{piece_id}", "/stock/offcuts/new")),
    Place("newcomer", "/stock"),
    Place("newcomer", "/stock/orders"),
    Place("newcomer", "/stock/yields"),
    Place("owner", "/units/{unit_id}/stability", "a desk"),
    *(Place("owner", "/units/{unit_id}/revisions/{number}/rework", state) for state in ("a desk", "in hand")),
    Place("owner", "/units/{unit_id}/revisions/{number}/change-order", "in hand"),
    Place("owner", "/change-orders/{change_id}", "agreed"),
    Place("owner", "/jobs/{job_id}", "remaking"),
    *(Place("bench", path, "remaking") for path in ("/board", "/bench/{drawer_id}")),
    *(Place("bench", path) for path in ("/board", "/jobs/{job_id}/hours", "/account")),
    *(Place("bench", path) for path in ("/cutting/{layout_id}", "/cutting/{layout_id}/put-away")),
    *(Place("bench", "/papers/{paper_id}", kind) for kind in PAPERS[1:3]),
    *(Place("bench", "/bench/{drawer_id}", state) for state in DRAWER_STATES),
    *(Place("stranger", "/quote/{secret}", state) for state in QUOTE_STATES[1:]),
    *(
        Place("stranger", path)
        for path in ("/sign-in", "/help", "/invitation/{secret}", "/password/{secret}")
    ),
    *(Place("newcomer", path) for path in ("/jobs", "/board", "/customers", "/search?q=oak", "/shop/demo")),
    Place("stranger", "/set-up", "done"),
    Place("stranger", "/quote/nothing", status=404),
    Place("owner", "/jobs/1m89mh101mx7j", status=404),
    Place("bench", "/jobs", status=403),
    refused("owner", "/customers/new", name=""),
    refused("owner", "/customers/{customer_id}/change", 409, phone="555 0100"),
    refused("owner", "/jobs/new", name=""),
    refused("owner", "/jobs/{job_id}", state="in hand", amount="a lot"),
    refused("owner", "/units/{unit_id}", body__width="39 1/0"),
    refused("owner", "/units/{unit_id}", state="season", season__months="July 72 F", season__climate="Mars"),
    refused("owner", "/units/{unit_id}/starting-units", name=""),
    refused("owner", "/change-orders/{change_id}", name=""),
    refused("owner", "/stock/suppliers/new", name=""),
    refused("owner", "/stock/suppliers/{supplier_id}/prices", price="much"),
    refused("owner", "/stock/needs", state="a job", buy__1__quantity="lots"),
    refused("owner", "/stock/offcuts/new", width="wide"),
    refused("bench", "/stock/deliveries/{delivery_id}", state="boards", width="1/0"),
    refused("owner", "/shop", name=""),
    refused("owner", "/shop/rack", cutter__1__width="wide", usual_pin="1/0", usual_slope_hardwood="steep"),
    refused(
        "owner", "/shop/slides", slide__1__space_least="wide", slide__1__travel="far", slide__4__tall="1"
    ),
    refused("owner", "/shop/prices", new__item="Cherry", new__price="much"),
    refused("owner", "/account/password", password_now="not it", password="short"),  # noqa: S106
    refused("stranger", "/sign-in", email=""),
    refused("stranger", "/invitation/{secret}", name=""),
    refused("stranger", "/quote/{secret}", state="sent", name=""),
    refused("bench", "/bench/{drawer_id}", state="begun", opening__height="6 1/0"),
]
BENCH_PLACES = [
    place
    for place in PLACES
    if place.who == "bench" and place.path.startswith(("/board", "/bench", "/jobs/{"))
]
BY_KEYBOARD = [
    (1280, Place("owner", "/jobs")),
    (1280, Place("owner", "/jobs/{job_id}", "in hand")),
    (1280, Place("owner", "/jobs/new")),
    (1280, Place("owner", "/units/{unit_id}")),
    (820, Place("owner", "/units/{unit_id}")),
    (320, Place("owner", "/units/{unit_id}")),
    (1280, Place("owner", "/units/{unit_id}/price")),
    (1280, Place("owner", "/quotes/{quote_id}", "draft")),
    (1280, Place("owner", "/shop/rate")),
    (1280, Place("bench", "/board")),
    (320, Place("bench", "/bench/{drawer_id}", "half-way")),
    (320, Place("stranger", "/quote/{secret}", "sent")),
    (320, Place("stranger", "/sign-in")),
]
"""Pages that are walked through with the Tab key, and how wide they are then [px]."""
