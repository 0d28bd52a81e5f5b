"""The acts of the demo: each done by the same verb as a person's, at a moment of the past."""

from collections.abc import Callable, Mapping
from datetime import date, datetime, timedelta
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.spec import UnitSpec
from casewright.pricing.received import paid_stages
from casewright.pricing.stages import StageAmount
from casewright.records.jobs import Job, JobState, Unit
from casewright.records.papers import PaperKind, QuoteState
from casewright.records.quotes import quotes_of
from casewright.shop.demo.bench import Bench, work_at_bench, working_days
from casewright.shop.demo.buying import buy, cut_up, receive
from casewright.shop.demo.cutting import Cutter, lay_out_demo
from casewright.shop.demo.hours import log_hours
from casewright.shop.demo.scene import Act, Scene
from casewright.shop.estimating import estimated_job, worked_unit
from casewright.shop.figures import figures, figures_text
from casewright.shop.issuing import send_quote
from casewright.shop.jobs import JobFacts, change_job, move_job, set_own_figures
from casewright.shop.options import OtherWay, add_option, other_spec, with_changes
from casewright.shop.papers import issue_paper, job_at_hand
from casewright.shop.payments import PaymentFacts, take_payment
from casewright.shop.quotes import (
    Answer,
    DraftWords,
    LoadedQuote,
    answer_quote,
    change_draft,
    draft_quote,
    load_quote,
)
from casewright.shop.units import LoadedUnit, add_unit, revise_unit

BY_LINK = "by the link"


def play(scene: Scene, job: Job, act: Act) -> None:
    """Does one act."""
    ACTS[act["do"]](scene, job, act, scene.moment(act))
    scene.db.flush()


def _design(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    spec = _changed(preset(act["preset"]).spec_json, act["changes"])
    add_unit(scene.db, job, spec, figures(scene.db, scene.shop, job), scene.who, now)


def _revise(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    loaded = _unit(scene, job, act["unit"])
    spec = _changed(dict(loaded.revision.spec), act["changes"])
    own, version = figures(scene.db, scene.shop, job), loaded.unit.version
    revise_unit(scene.db, loaded, spec, own, version, scene.who, now, act["why"])


def _changed(held: dict[str, Any], changes: Mapping[str, Any]) -> UnitSpec:
    return read_as(UnitSpec, with_changes(held, {"set": changes, "drop": []}))


def _unit(scene: Scene, job: Job, code: str) -> LoadedUnit:
    return next(each for each in scene.units(job) if each.unit.code == code)


def _own(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    set_own_figures(scene.db, job, act["figures"], scene.who, now)


def _option(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    loaded = _unit(scene, job, act["unit"])
    other = other_spec(loaded, OtherWay(**act["way"]))
    own = figures(scene.db, scene.shop, job)
    add_option(scene.db, loaded, act["label"], other, own, scene.who, now)


def _quote(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    draft = draft_quote(scene.db, job, scene.who, now)
    change_draft(scene.db, load_quote(scene.db, draft.id), DraftWords(note=act["note"]), draft.version)


def _send(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    send_quote(
        scene.db,
        scene.shop,
        _newest_quote(scene, job),
        secret=scene.secret,
        seen="",
        sure=True,
        who=scene.who,
        now=now,
        today=now.date(),
    )


def _newest_quote(scene: Scene, job: Job) -> LoadedQuote:
    newest = max(quotes_of(scene.db, job.id), key=lambda quote: (quote.number, quote.revision))
    return load_quote(scene.db, newest.id)


def _open(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    _newest_quote(scene, job).quote.opened_at = now


def _answer(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    held = _newest_quote(scene, job)
    held.quote.opened_at = held.quote.opened_at or now
    answer = Answer(
        accepts=act["do"] == "accept", name=act["name"], words=act["note"], way=BY_LINK, who=act["name"]
    )
    answer_quote(scene.db, held, answer, now, now.date())
    scene.db.flush()
    scene.db.expire_all()  # the units were approved beside their rows


def _pay(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    """Pays what is still open of one stage of the accepted quote, or of all; nothing where it has fewer."""
    quote = next(each for each in quotes_of(scene.db, job.id) if each.state is QuoteState.ACCEPTED)
    agreed = tuple(
        StageAmount(trigger=stage["trigger"], amount=stage["amount_cents"])
        for stage in (quote.offer or {})["stages"]
    )
    stages = paid_stages(agreed, scene.paid.get(job.id, 0))
    due = stages if act.get("rest") else stages[act["stage"] : act["stage"] + 1]
    amount = sum(stage.open for stage in due)
    if amount:
        facts = PaymentFacts(amount_cents=amount, received_on=now.date(), method=act["method"])
        take_payment(scene.db, job, facts, scene.shop.symbol, scene.who, now)
        scene.paid[job.id] = scene.paid.get(job.id, 0) + amount


def _move(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    move_job(scene.db, job, JobState(act["to"]), scene.who, now, why=act.get("why", ""))


def _note(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    """A line more in the job's note."""
    facts = JobFacts(
        name=job.name,
        customer_id=job.customer_id,
        asked=job.asked,
        due_on=job.due_on,
        note=f"{job.note}\n{act['text']}".strip(),
    )
    change_job(scene.db, job, facts, job.version, scene.who, now)


def _issue(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    at_hand = job_at_hand(scene.db, scene.shop, job, now.date())
    words = {**act, "needed_by": scene.day(act.get("needed"))}
    write = scene.paper(scene.shop, job, at_hand, now.date(), words)
    issue_paper(scene.db, job, PaperKind(act["kind"]), at_hand, write, scene.who, now)


def _build(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    own = figures_text(scene.db, scene.shop, job)
    for loaded in scene.units(job):
        unit: Unit = loaded.unit
        work_at_bench(
            Bench(
                db=scene.db,
                unit=unit,
                built=worked_unit(loaded.text, own),
                person=scene.person,
                who=scene.bench,
                days=_days(scene, act),
                zone=scene.zone,
                script=act,
            )
        )


def _log(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    texts = tuple(each.text for each in scene.units(job))
    estimate = estimated_job(texts, figures_text(scene.db, scene.shop, job), scene.today)
    worker = (scene.person, scene.bench)
    log_hours(scene.db, job, estimate, worker, _days(scene, act), scene.zone, act)


def _cut(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    """Lays the job out on boards of the rack, cuts it, and puts away what is left."""
    cutter = Cutter(
        office=scene.who,
        bench=scene.bench,
        tallied=scene.moment({"day": act["tallied"], "time": "10:20"}),
        asked=now,
        cut=scene.moment({"day": act["cut"], "time": "15:40"}),
    )
    lay_out_demo(scene.db, job, LengthUnit(scene.shop.unit), figures(scene.db, scene.shop, job), cutter)


def _days(scene: Scene, act: Act) -> tuple[date, ...]:
    return working_days(*(scene.today + timedelta(days=act[end]) for end in ("from", "to")))


ACTS: dict[str, Callable[[Scene, Job, Act, datetime], None]] = {
    "design": _design,
    "revise": _revise,
    "own": _own,
    "offer_option": _option,
    "quote": _quote,
    "send": _send,
    "open": _open,
    "accept": _answer,
    "decline": _answer,
    "pay": _pay,
    "move": _move,
    "note": _note,
    "issue": _issue,
    "build": _build,
    "log": _log,
    "buy": buy,
    "receive": receive,
    "cut up": cut_up,
    "cut": _cut,
}
