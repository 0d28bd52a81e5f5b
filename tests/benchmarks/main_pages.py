"""The pages that a shop opens all day, as addresses in a filled shop."""

from asking import Asked
from years import Filled

from casewright.records.jobs import JobState
from pages.visitor import Seen

OFFICE, BENCH, LINK = "office", "bench", "link"
LIVE = "the live block of a unit"


def main_pages(filled: Filled) -> dict[str, list[Asked]]:
    """The main pages by room: of the office, of the bench, and a quote's link."""
    job = _busy_job(filled)
    unit = next(row["id"] for row in filled.rows["unit"] if row["job_id"] == job)
    drawer = next(
        row["id"] for row in filled.rows["drawer"] if row["unit_id"] == unit and row["stage"] == "dry"
    )
    quote = filled.rows["quote"][-1]["id"]
    customer = filled.rows["customer"][3]["id"]
    office = {
        "jobs": "/jobs",
        "jobs by name": "/jobs?sort=name",
        "jobs of one state": "/jobs?state=in-hand",
        "a job": f"/jobs/{job}",
        "a job's history": f"/jobs/{job}/history",
        "a job's hours": f"/jobs/{job}/hours",
        "a unit": f"/units/{unit}",
        "a unit's cut list": f"/units/{unit}/cut-list",
        "a unit's joints": f"/units/{unit}/joints",
        "a unit's price": f"/units/{unit}/price",
        "a quote": f"/quotes/{quote}",
        "the board, at the office": "/board",
        "customers": "/customers",
        "a customer": f"/customers/{customer}",
        "search": "/search?q=weir",
        "the shop's prices": "/shop/prices",
    }
    bench = {"the board": "/board", "a drawer": f"/bench/{drawer}"}
    return {
        OFFICE: [Asked(name, path, filled.owner) for name, path in office.items()],
        BENCH: [Asked(name, path, filled.bench) for name, path in bench.items()],
        LINK: [Asked("a quote's link", filled.link)],
    }


def live_block(unit: Asked, html: str) -> Asked:
    """What the editor of a unit sends while somebody types, from the page as it came."""
    form = next(form for form in Seen(html).forms if form.action.partition("?")[0] == unit.path)
    headers = {"HX-Request": "true", "X-Block": "result"}
    return Asked(LIVE, f"{unit.path}/working", unit.cookie, tuple(form.sent()), headers)


def _busy_job(filled: Filled) -> str:
    """The last job in hand whose cabinet has twenty drawers."""
    units = filled.rows["unit"]
    wide = {row["job_id"] for row in units if row["name"].startswith("Collector")}
    busy = [row for row in filled.rows["job"] if row["state"] is JobState.IN_HAND and row["id"] in wide]
    held: str = busy[-1]["id"]
    return held
