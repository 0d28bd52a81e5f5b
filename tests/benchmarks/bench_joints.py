"""How fast joints are worked out, drawn and printed, beside what a person at the screen can wait for.

    PYTHONPATH=service:tests python tests/benchmarks/bench_joints.py [--quick]

Each figure is the median of many runs on a warm program; of papers, each run of another card. Every family is
worked out as the examples of its needed fields have it, with its checks and its working kept.
"""

import argparse
import json
from collections.abc import Callable, Sequence
from datetime import date
from functools import partial
from statistics import median
from timeit import timeit
from typing import TypeVar

from bench_core import MILLISECONDS, Measured, median_seconds, print_table

from casewright.joinery.chisels import RACK
from casewright.joinery.joint import JointKind, Measure
from casewright.joinery.kinds import kinds, solve
from casewright.measure.ledger import Ledger
from casewright.measure.lengths import LengthUnit, parse_length
from casewright.papers.head import PaperHead
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.joint_cards_pdf import joint_cards_pdf, joint_templates_pdf
from casewright.papers.joint_files import joint_files
from casewright.papers.settings_card import SettingsCard, settings_card
from casewright.papers.settings_card_pdf import settings_cards_pdf
from casewright.pieces.asked.reading import read_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct

HEAD = PaperHead(shop="Marrow Street", job_number="12", job_name="Bank", issued_on=date(2026, 11, 25))
CARDS = 40
Given = TypeVar("Given")


def unknown() -> Ledger:
    """A ledger without a prefix, so that no joint is known from the run before, and no working is owed."""
    return Ledger()


def needed(kind: JointKind) -> dict[str, float]:
    """The examples of a family's needed fields."""
    values = {}
    for field in kind.fields:
        if field.required and field.measure.is_length:
            values[field.name] = float(parse_length(field.example))
        elif field.required:
            example = field.example.removeprefix("1:") if field.measure is Measure.SLOPE else field.example
            values[field.name] = float(example)
    return values


def rows(count: int) -> str:
    """A unit file whose rows all differ, so that each has a card for its fronts and one for its backs."""
    unit = {
        "casewright": 1,
        "name": "Bank",
        "body": {"width": "40", "depth": "19-3/4", "opening_total": 6 * count},
        "graduation": {"rule": "step", "step": "1/8"},
        "rows": [{"columns": 1}] * count,
        "woods": {"case": "cherry", "drawers": "soft maple", "inside": "poplar"},
        "drawers": {"front": "13/16"},
    }
    return json.dumps(unit)


def measured(runs: int) -> list[Measured]:
    """Every figure with its target."""
    found = []
    for kind in kinds().values():
        values = needed(kind)
        took = median_seconds(lambda k=kind.name, v=values: solve(k, v, (), RACK, unknown()), 10 * runs)
        found.append(Measured(f"{kind.name} with its checks", took * MILLISECONDS, 0.2, "ms"))
    kind = kinds()["half-blind"]
    solved = solve(kind.name, needed(kind))
    drawn = median_seconds(lambda: joint_files(kind, solved, LengthUnit.INCH), max(2, runs // 10))
    found.append(Measured("drawing, template and layout of a joint", drawn * MILLISECONDS, 300, "ms"))
    alone = [card_alone(kind, height / 8) for height in range(32, 32 + CARDS)]
    unit = construct(read_unit(rows(CARDS // 2)), example_shop())
    paper = joint_cards_paper(HEAD, [unit])
    singles = [
        paper.model_copy(
            update={"cards": (card,), "others": (), "gauges": (), "strips": paper.strips[2 * n : 2 * n + 2]}
        )
        for n, card in enumerate(paper.cards)
    ]
    some = max(2, runs * CARDS // 100)
    card_of_none = fresh_median(lambda card: settings_cards_pdf([card], LengthUnit.INCH), alone[:some])
    card = fresh_median(joint_cards_pdf, singles[:some])
    template = fresh_median(joint_templates_pdf, singles[:some])
    all_cards = median_seconds(lambda: joint_cards_pdf(paper), max(2, runs // 40))
    return [
        *found,
        Measured("the card of a joint alone as PDF", card_of_none * MILLISECONDS, 60, "ms"),
        Measured("a joint card as PDF", card * MILLISECONDS, 60, "ms"),
        Measured(f"{len(paper.cards)} joint cards as PDF", all_cards, 1, "s"),
        Measured("a template in full size as PDF", template * MILLISECONDS, 60, "ms"),
    ]


def card_alone(kind: JointKind, height: float) -> SettingsCard:
    """The card of a joint that belongs to no job."""
    solved = solve(kind.name, {**needed(kind), "height": height})
    return settings_card(kind.name, solved.joint, kind.title, LengthUnit.INCH)


def fresh_median(work: Callable[[Given], object], given: Sequence[Given]) -> float:
    """The median of one run for each of several papers: a second of the same is quicker."""
    work(given[0])
    return median(timeit(partial(work, each), number=1) for each in given[1:])


def main() -> None:
    """Prints the table."""
    parser = argparse.ArgumentParser(description="Times joints and their papers against their targets.")
    parser.add_argument("--quick", action="store_true", help="two runs of each, to see that it works")
    runs = 2 if parser.parse_args().quick else 100
    print_table(measured(runs))


if __name__ == "__main__":
    main()
