"""The hours as a form: the shop's own minutes beside the usual ones, operation by operation."""

from dataclasses import dataclass
from typing import Any

from casewright.labour.figures import bundled
from casewright.labour.operations import Group, Method, Operation, method_taken, minutes_by
from casewright.labour.standards import WoodFactor, factor_for, house_standards
from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.web.settings.forms import Draft, FigureReader, mark_of, plain_number
from casewright.web.settings.lines import OWN, Ground, Kind, Line, ground_of, read_lines, shown_line

_ALLOWANCE = bundled("standards.json")["allowance"]
ALLOWANCE = Line(
    name="allowance",
    label="On top of the minutes",
    hint="Nobody saws without a pause: the hours of an estimate hold this, too.",
    kind=Kind.PERCENT,
    of=lambda shop: shop.standards.allowance,
    usual=ground_of(_ALLOWANCE["basis"], _ALLOWANCE["source"]),
    unit="%",
    least=0,
    most=99,
    example="12",
)
MOST_MINUTES = 10_000


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursLine:
    """One operation on the page.

    Attributes:
        usual: the operation as every shop starts with it
        now: the operation as the shop does it
        ground: on what its minutes stand
        methods: how it can be done, with the minutes there are
    """

    usual: Operation
    now: Operation
    ground: Ground
    methods: tuple[Method, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FactorLine:
    """How a wood works beside cherry.

    Attributes:
        mark: what its field ends in
        usual: the usual factor
        ground: on what the factor that holds stands
    """

    mark: str
    usual: WoodFactor
    ground: Ground


def hours_lines(spec: ShopSpec) -> tuple[tuple[Group, tuple[HoursLine, ...]], ...]:
    """Every operation, part by part of the work."""
    held = figures_of_spec(spec).standards.operations
    lines = [_line(usual, now, spec) for usual, now in zip(house_standards().operations, held, strict=True)]
    return tuple((group, tuple(each for each in lines if each.usual.group is group)) for group in Group)


def _line(usual: Operation, now: Operation, spec: ShopSpec) -> HoursLine:
    own = usual.code in spec.minutes
    return HoursLine(
        usual=usual,
        now=now,
        ground=Ground(word=OWN) if own else ground_of(usual.basis, usual.source),
        methods=tuple(each for each in Method if minutes_by(now, each) is not None),
    )


def factor_lines(spec: ShopSpec) -> tuple[FactorLine, ...]:
    """The woods whose working time is known, and those that the shop has added."""
    named = [row.wood for row in house_standards().wood_factors if row.wood != "pine"]
    own = [name for name in spec.wood_factors if name not in named]
    return tuple(_factor(name, spec) for name in (*named, *sorted(own)))


def _factor(name: str, spec: ShopSpec) -> FactorLine:
    usual = factor_for(name)
    ground = Ground(word=OWN) if name in spec.wood_factors else ground_of(usual.basis, usual.source)
    return FactorLine(
        mark=mark_of(name),
        usual=WoodFactor(wood=name, factor=usual.factor, source=usual.source, basis=usual.basis),
        ground=ground,
    )


def hours_values(spec: ShopSpec) -> dict[str, str]:
    """The fields of the form, from figures; the shop's own minutes only."""
    held = figures_of_spec(spec)
    values = {
        ALLOWANCE.name: shown_line(ALLOWANCE, held, LengthUnit.INCH),
        "new.wood": "",
        "new.factor": "",
    }
    for one in held.standards.operations:
        own = spec.minutes.get(one.code)
        values |= {
            f"hand.{one.code}": plain_number(own.hand) if own else "",
            f"machine.{one.code}": plain_number(own.machine) if own else "",
            f"method.{one.code}": method_taken(one).value,
        }
    factors = {line.mark: spec.wood_factors.get(line.usual.wood) for line in factor_lines(spec)}
    return values | {f"factor.{mark}": plain_number(value) for mark, value in factors.items()}


def field_names(spec: ShopSpec) -> dict[str, str]:
    """What each field is called in a list of faults."""
    names = {ALLOWANCE.name: "Rest, sharpening, fetching", "new.wood": "Another wood"}
    names |= {"new.factor": "Another wood"}
    for one in house_standards().operations:
        names |= {
            f"hand.{one.code}": f"{one.code} {one.name}, by hand",
            f"machine.{one.code}": f"{one.code} {one.name}, machine",
        }
    return names | {f"factor.{line.mark}": line.usual.wood.capitalize() for line in factor_lines(spec)}


def read_hours(read: FigureReader, spec: ShopSpec) -> Draft:
    """The changes that the form asks for."""
    draft, shown = Draft(), hours_values(spec)
    held = figures_of_spec(spec)
    read_lines(read, (ALLOWANCE,), held, LengthUnit.INCH, draft)
    _read_minutes(read, held, shown, draft)
    _read_methods(read, held, shown, draft)
    _read_factors(read, spec, draft)
    return draft


def _read_minutes(read: FigureReader, held: Figures, shown: dict[str, str], draft: Draft) -> None:
    before = {code: own.model_dump(exclude_none=True) for code, own in held.spec.minutes.items()}
    minutes: dict[str, dict[str, Any]] = {code: dict(own) for code, own in before.items()}
    for one in held.standards.operations:
        for method in Method:
            field = f"{method.value}.{one.code}"
            draft.fields[f"minutes.{one.code}.{method.value}"] = field
            if not read.typed.has(field) or read.typed.get(field).strip() == shown[field]:
                continue
            value = read.optional(field, least=0, most=MOST_MINUTES, example="12.5", unit=" min")
            own = minutes.setdefault(one.code, {})
            own.pop(method.value, None)
            own |= {} if value is None else {method.value: value}
    minutes = {code: own for code, own in minutes.items() if own}
    if minutes != before:
        draft.spec["minutes"] = minutes


def _read_methods(read: FigureReader, held: Figures, shown: dict[str, str], draft: Draft) -> None:
    usual = {one.code: one.default_method for one in house_standards().operations}
    methods = dict(held.spec.methods)
    for one in held.standards.operations:
        field = f"method.{one.code}"
        if not read.typed.has(field) or read.typed.get(field) == shown[field]:
            continue
        wanted = Method(read.choice(field, [each.value for each in Method]))
        methods.pop(one.code, None)
        if wanted is not usual[one.code]:
            methods[one.code] = wanted
    if methods != held.spec.methods:
        draft.spec["methods"] = {code: method.value for code, method in methods.items()}


def _read_factors(read: FigureReader, spec: ShopSpec, draft: Draft) -> None:
    factors = dict(spec.wood_factors)
    for line in factor_lines(spec):
        field = f"factor.{line.mark}"
        if read.typed.has(field):
            _set_factor(read, factors, line.usual.wood, field)
            draft.fields[f"wood_factors.{line.usual.wood}"] = field
    if read.typed.get("new.wood").strip() or read.typed.get("new.factor").strip():
        name = read.wood("new.wood", needed="Name the wood, such as white oak.")
        if name in {line.usual.wood for line in factor_lines(spec)}:
            read.fault("new.wood", f"{name} stands in the table already; write its factor there.")
        if not read.typed.get("new.factor").strip():
            read.fault("new.factor", "Write how it works beside cherry, such as 1.2.")
        _set_factor(read, factors, name, "new.factor")
        draft.fields[f"wood_factors.{name}"] = "new.factor"
    if factors != spec.wood_factors:
        draft.spec["wood_factors"] = factors


def _set_factor(read: FigureReader, factors: dict[str, float], name: str, field: str) -> None:
    value = read.optional(field, least=0.1, most=10, example="1.2")
    factors.pop(name, None)
    if value is not None:
        factors[name] = value
