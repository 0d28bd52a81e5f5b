"""What a paper says, in short: the figures by which a printed one is told to hold still or to be out of date.

Words, drawings and the head are left out: a sentence that is put better makes no card wrong.
"""

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from hashlib import sha256
from types import MappingProxyType
from typing import Any

from casewright.papers.caution_sheet import CautionSheetPaper, UnitCaution
from casewright.papers.cut_list import CutListPaper
from casewright.papers.joint_cards import FOR_BACK, DividerCard, JointCard, JointCardsPaper
from casewright.papers.settings_card import SettingsCard
from casewright.records.papers import PaperKind

BESIDE = {"head", "supplier", "needed_by", "delivery", "surfacing", "remarks"}
"""What a paper says that is not worked out of the job."""
OF_SIDES = {"SL": ", left", "SR": ", right", "BL": ", left", "BR": ", right"}
"""How the name of a gauge for one end of the back ends, by the mark of the side that stands there."""
WHOLE = ""
"""The name of the hash over all that a paper says."""
Facts = Mapping[str, tuple[float, ...]]
"""Figures by their names: lengths [in], slopes, counts."""


def says_of(kind: PaperKind, content: Mapping[str, Any]) -> dict[str, str]:
    """What a paper says, as hashes.

    Args:
        kind: which paper
        content: the paper, as it is kept

    Returns:
        By the code of each part what is said of it, where the paper speaks of parts; and of the whole.
    """
    return SAYS[kind](content)


def _of_cards(content: Mapping[str, Any]) -> dict[str, str]:
    facts = part_facts(JointCardsPaper.model_validate(content))
    found = {code: short(each) for code, each in facts.items()}
    return found | {WHOLE: short(found)}


def _of_cut_list(content: Mapping[str, Any]) -> dict[str, str]:
    paper = CutListPaper.model_validate(content)
    rows = (row for unit in paper.units for group in unit.groups for row in group.rows)
    found = {
        code: finished_hash(row.thickness_in, row.width_in, row.length_in)
        for row in rows
        for code in row.codes
    }
    return found | _whole(_as_kept_before(content))


def _as_kept_before(content: Mapping[str, Any]) -> dict[str, Any]:
    """A cut list as it was kept before it said what is sawn in two: one that says none is the same."""
    breakdowns = [
        {**each, "rows": [{k: v for k, v in row.items() if k != "sawn_from" or v} for row in each["rows"]]}
        for each in content["breakdowns"]
    ]
    return {**content, "breakdowns": breakdowns}


def _of_caution_sheet(content: Mapping[str, Any]) -> dict[str, str]:
    """The figures of a caution sheet; its words and drawings may be put better."""
    paper = CautionSheetPaper.model_validate(content)
    return {WHOLE: short([list(_caution_facts(unit)) for unit in paper.units])}


def _caution_facts(unit: UnitCaution) -> Iterator[object]:
    yield [unit.code, unit.count, unit.covered]
    yield [round(each.found_number, 4) for each in unit.limits]
    for case in unit.cases:
        factor = None if case.factor is None else round(case.factor, 4)
        yield [list(case.of), round(case.holding_in_lb, 2), round(case.tipping_in_lb, 2), factor]
    yield {code: round(travel, 6) for code, travel in unit.travels_in.items()}
    yield [[round(each.weight_lb, 2), each.people] for each in unit.carries]
    yield list(unit.wall)


def _whole(content: Mapping[str, Any]) -> dict[str, str]:
    return {WHOLE: short({name: value for name, value in content.items() if name not in BESIDE})}


SAYS: Mapping[PaperKind, Callable[[Mapping[str, Any]], dict[str, str]]] = MappingProxyType(
    {
        PaperKind.JOINT_CARDS: _of_cards,
        PaperKind.CUT_LIST: _of_cut_list,
        PaperKind.LUMBER_ORDER: _whole,
        PaperKind.CAUTION_SHEET: _of_caution_sheet,
    }
)


def finished_hash(*sizes: float) -> str:
    """What a cut list says of one part: its finished thickness, width and length [in]."""
    return short([round(size, 6) for size in sizes])


def short(value: Any) -> str:
    """A hash that is long enough to tell two issues of a paper apart."""
    return sha256(json.dumps(value, sort_keys=True, default=dict).encode()).hexdigest()[:12]


def part_facts(paper: JointCardsPaper) -> dict[str, dict[str, tuple[float, ...]]]:
    """The figures that the joint cards have for each part.

    Args:
        paper: the cards

    Returns:
        By the code of the part; for the dividers of a unit by its code and `dividers`.
    """
    found: dict[str, dict[str, tuple[float, ...]]] = {}
    for card in paper.cards:
        for code in card.parts:
            found.setdefault(code, {}).update(card_facts(card, code))
    for other in paper.others:
        for code in parts_of(other):
            found.setdefault(code, {}).update(other_facts(other, code))
    for divider in paper.dividers:
        found[dividers_of(divider)] = dict(divider_facts(divider))
    return found


def dividers_of(card: DividerCard) -> str:
    """The name under which the dividers of a unit stand among the parts."""
    return f"{card.unit_code} dividers"


def card_facts(card: JointCard, code: str) -> dict[str, tuple[float, ...]]:
    """The figures of one card that go for one of its parts.

    Args:
        card: the card
        code: the code of the part

    Returns:
        By their names, such as `front, gauge 2`, which a front has none of: its sides may have two.
    """
    end = card.title.rpartition(" ")[2]
    drawer, _, mark = code.rpartition("-")
    return {f"{end}, {name}": values for name, values in _figures(card, drawer, mark)}


def _figures(card: JointCard, drawer: str, mark: str) -> Iterator[tuple[str, tuple[float, ...]]]:
    for gauge in card.gauges:
        if not (mark in ("F", "BF") and gauge.name == "Gauge 2") and not gauge.name.startswith(FOR_BACK):
            yield gauge.name.lower(), _rounded((gauge.value_in,))
    ends = [gauge for gauge in card.gauges if gauge.name.startswith(FOR_BACK)]
    mine = [gauge for gauge in ends if gauge.name.endswith(OF_SIDES.get(mark, ""))] or ends
    if mine:
        yield FOR_BACK.lower(), _rounded(gauge.value_in for gauge in mine)
    yield "half pin", _rounded((card.half_pin_in,))
    yield "dividers", _rounded((card.divider_in, card.overshoot_in))
    yield "slope", _rounded((card.slope,))
    for number, tail in enumerate(card.tails, start=1):
        corners = (tail.lower_end_in, tail.upper_end_in, tail.lower_base_in, tail.upper_base_in)
        yield f"tail {number}", _rounded(corners)
    own = {size.name for size in card.sizes if drawer in size.of}
    for size in card.sizes:
        if drawer in size.of or (not size.of and size.name not in own):
            yield size.name.lower(), _rounded(size.values_in)


def parts_of(card: SettingsCard) -> tuple[str, ...]:
    """The codes of the parts that a card of the case or of a bottom serves, each once."""
    return tuple(dict.fromkeys(code for each in card.serves for code in each.parts))


def other_facts(card: SettingsCard, code: str = "") -> dict[str, tuple[float, ...]]:
    """The figures of a card of the case or of a bottom, which go for all of its parts.

    Args:
        card: the card
        code: the code of the part; the figures are the same for all

    Returns:
        By their names, such as `Case bottom into the sides carcase dovetail, gauge 1`.
    """
    joint = card.title.replace(",", "")
    found = {f"{joint}, {each.label.lower()}": _rounded((each.value,)) for each in card.settings}
    for table in card.positions:
        for row in table.rows:
            found[f"{joint}, {table.what.lower()} {row.name}"] = _rounded(row.at_in)
    return found


def divider_facts(card: DividerCard) -> Iterator[tuple[str, tuple[float, ...]]]:
    """The figures of a card of dividers.

    Args:
        card: the card

    Yields:
        Names and figures.
    """
    yield from ((size.name.lower(), _rounded(size.values_in)) for size in card.sizes)
    yield "slope", _rounded((card.slope,))
    yield "story stick", _rounded(card.tops_in)


def _rounded(values: Iterable[float]) -> tuple[float, ...]:
    """Figures as they are compared: a millionth of an inch is no difference."""
    return tuple(round(float(value), 6) for value in values)
