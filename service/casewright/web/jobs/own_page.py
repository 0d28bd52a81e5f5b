"""A job's own figures: the way to the customer, work done by others, extras, risk, what comes before it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.fields import write_money
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pricing.risk import RiskLevel
from casewright.records.jobs import Job
from casewright.shop.figures import figures_spec, figures_text
from casewright.shop.jobs import load_job, set_own_figures
from casewright.shop.refusals import Stale
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit

router = APIRouter()
MOST_LINES = 12
SPARE_LINES = 2
CHARGES = ("outwork", "extras")
"""Lines that say what a job costs: for the owner alone."""
RISKS = (
    (RiskLevel.PLANNED, "As planned: no contingency"),
    (RiskLevel.P50, "P50: holds in half of such jobs"),
    (RiskLevel.P80, "P80: holds in eight of ten"),
    (RiskLevel.P90, "P90: holds in nine of ten"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnFiguresPage(Page):
    """The form for a job's own figures."""

    template: ClassVar[str] = "jobs/own.html"
    form: Form
    job: Job
    risks: Sequence[tuple[str, str]]
    lines: Mapping[str, Sequence[int]]
    is_owner: bool
    names: Mapping[str, str]


@router.get("/jobs/{job_id}/own")
def show_own_form(visit: Office, job_id: str) -> Response:
    """The form for a job's own figures."""
    job = load_job(visit.db, job_id)
    return show(
        visit,
        _page(visit, job, form_of(**_values(job.own, is_owner=visit.is_owner), version=str(job.version))),
    )


@router.post("/jobs/{job_id}/own")
def save_own(visit: Office, job_id: str) -> Response:
    """Saves them; whatever is left empty follows the shop's figures."""
    job = load_job(visit.db, job_id)
    read = Reader(visit.typed)
    own, version = (
        read_own(read, job.own, is_owner=visit.is_owner),
        read.whole("version", least=1, most=10**8),
    )
    if read.faults:
        return show(visit, _page(visit, job, read.form), 422)
    try:
        set_own_figures(visit.db, job, own, visit.who, visit.now, version=version)
    except Stale:
        return show(visit, _page(visit, job, _with_theirs(job, read, is_owner=visit.is_owner)), 409)
    return see(f"/jobs/{job.id}#money", "saved")


def read_own(read: Reader, held: Mapping[str, Any], *, is_owner: bool) -> dict[str, Any]:
    """The figures that a form gives a job; outwork and extras stay for whoever may not see them."""
    own: dict[str, Any] = {}
    if read.typed.get("miles").strip():
        own["miles"] = read.number("miles", least=0, most=10_000, example="60")
    if read.typed.get("queue_weeks").strip():
        own["queue_weeks"] = read.number("queue_weeks", least=0, most=520, example="6")
    if read.typed.get("risk"):
        own["risk"] = read.choice("risk", [level.value for level in RiskLevel])
    for name in CHARGES:
        lines = list(_read_lines(read, name)) if is_owner else held.get(name, [])
        if lines:
            own[name] = lines
    return own


def _read_lines(read: Reader, name: str) -> Iterator[dict[str, str]]:
    """Lines of a label and an amount; one that is empty in both is left out."""
    for number in range(MOST_LINES):
        label = read.line(f"{name}.{number}.label", most=120)
        typed = read.typed.get(f"{name}.{number}.amount").strip()
        if typed or label:
            amount = read.money(f"{name}.{number}.amount")
            if not label:
                read.fault(f"{name}.{number}.label", "Write what it is for; the customer will ask.")
            yield {"label": label, "amount": write_money(amount)}


def _values(own: Mapping[str, Any], *, is_owner: bool) -> dict[str, str]:
    """The figures as they stand in the fields of this person's form."""
    values = {name: f"{float(own[name]):.10g}" for name in ("miles", "queue_weeks") if name in own}
    values["risk"] = str(own.get("risk", ""))
    for name in CHARGES if is_owner else ():
        for number, line in enumerate(own.get(name, ())):
            values[f"{name}.{number}.label"] = str(line["label"])
            values[f"{name}.{number}.amount"] = str(line["amount"])
    return values


def _with_theirs(job: Job, read: Reader, *, is_owner: bool) -> Form:
    """What was typed, with what somebody else saved meanwhile beside it."""
    theirs, typed = _values(job.own, is_owner=is_owner), read.form.values
    differ = {name: theirs.get(name, "") for name in typed if theirs.get(name, "") != typed[name].strip()}
    differ = {name: value for name, value in differ.items() if name not in {"version", "once"}}
    return Form(values={**typed, "version": str(job.version)}, theirs=differ, is_stale=True)


def _page(visit: Visit, job: Job, form: Form) -> OwnFiguresPage:
    usual = figures_spec(figures_text(visit.db, visit.shop))
    return OwnFiguresPage(
        title=f"Figures of job {job.number}",
        form=form,
        job=job,
        risks=_risks(usual),
        lines={name: range(_lines(form, name)) for name in CHARGES},
        is_owner=visit.is_owner,
        names={
            f"{name}.{number}.{part}": f"{'Outwork' if name == 'outwork' else 'Extra'} {number + 1}, {part}"
            for name in CHARGES
            for number in range(MOST_LINES)
            for part in ("label", "amount")
        },
    )


def _risks(usual: ShopSpec) -> list[tuple[str, str]]:
    """How sure the hours are to be: as the shop has it, or a level of its own."""
    return [
        ("", f"As the shop has it: {usual.risk.value}"),
        *((level.value, words) for level, words in RISKS),
    ]


def _lines(form: Form, name: str) -> int:
    """How many lines are shown: those that are filled and two more."""
    filled = [
        number
        for number in range(MOST_LINES)
        if form.values.get(f"{name}.{number}.label") or form.values.get(f"{name}.{number}.amount")
    ]
    return min(MOST_LINES, (max(filled) + 1 if filled else 0) + SPARE_LINES)
