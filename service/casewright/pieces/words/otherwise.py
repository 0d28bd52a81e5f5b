"""How a unit differs when it is made another way, in the words in which an option is offered."""

from collections.abc import Iterator

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction
from casewright.pieces.words.drawer_words import BACKS, FRONTS, RUNS, STYLES, notched_words
from casewright.pieces.words.wording import (
    joined,
    known_words,
    number_word,
    plain_size,
    plural,
    sentence,
    several,
    sized,
)

INSET = "sits flush in its opening"
DIVIDERS = {
    "housing": "The rails between the rows stand in housings in the sides.",
    "sliding dovetail": "The rails between the rows slide into the sides with a dovetail.",
}


SIDES = {"solid": "solid boards", "framed": "frames with panels", "plywood": "plywood with a solid edge"}
CORNERS = {
    "half-blind": "dovetailed",
    "through": "dovetailed right through",
    "housing": "let in and screwed",
    "tenon": "tenoned",
    "dowels": "doweled",
    "loose-tenons": "joined by loose tenons",
}
BETWEEN = {
    "web-frame": "frames",
    "rail": "front rails alone",
    "dust-frame": "frames closed against dust",
    "solid": "boards over the full depth",
    "none": "no rails at all",
}


STANDS = {
    True: "It stands on legs with aprons between them instead of being a closed case.",
    False: "It is a closed case instead of standing on legs.",
}

SHELF = "C9"
"""The line of shelves in the cut list."""


def otherwise(base: Construction, other: Construction, shown: LengthUnit | None = None) -> str:
    """What is different when a unit is made the other way.

    Args:
        base: the unit as it is offered
        other: the same unit made the other way
        shown: the unit of its sizes; None for that of its file

    Returns:
        A sentence for each difference that a customer sees or touches; empty where there is none.

    Source: common practice of quotes: an option says what changes, in place of what.
    """
    unit = shown or base.spec.unit
    return " ".join(
        (
            *how_many(base.spec, other.spec),
            *_sizes(base, other, unit),
            *_drawer_count(base, other),
            *made_otherwise(base, other, unit),
        )
    )


def made_otherwise(base: Construction, other: Construction, shown: LengthUnit) -> tuple[str, ...]:
    """What differs apart from number and sizes: how drawers and case are made, woods, pulls and finish.

    Args:
        base: the unit as it is offered
        other: the same unit made the other way
        shown: the unit of its sizes

    Returns:
        A sentence for each difference; none where there is none.

    Source: common practice of quotes.
    """
    return (
        *_drawers(base, other, shown),
        *_woods(base, other),
        *_joints(base.spec, other.spec),
        *_pulls(base.spec, other.spec),
        *_finish(base.spec, other.spec),
    )


def how_many(base: UnitSpec, other: UnitSpec) -> Iterator[str]:
    """How many are made instead of how many.

    Args:
        base: the unit as it is offered
        other: the same unit made the other way

    Yields:
        A sentence; nothing where the number stays.

    Source: common practice of quotes.
    """
    if base.count != other.count:
        are = "is" if other.count == 1 else "are"
        yield sentence(f"{number_word(other.count)} {are} made instead of {number_word(base.count)}")


def _sizes(base: Construction, other: Construction, shown: LengthUnit) -> Iterator[str]:
    ways = (
        ("wide", base.spec.overall_width, other.spec.overall_width),
        ("deep", base.spec.overall_depth, other.spec.overall_depth),
        ("high", base.face.overall_height, other.face.overall_height),
    )
    changed = [
        f"{sized(new, shown)} {word} instead of {plain_size(old, shown)}"
        for word, old, new in ways
        if plain_size(old, shown) != plain_size(new, shown)
    ]
    if changed:
        yield f"Overall {joined(changed)}."


def _drawer_count(base: Construction, other: Construction) -> Iterator[str]:
    old, new = len(base.drawers), len(other.drawers)
    if old != new:
        yield sentence(f"{several(new, 'drawer')} instead of {number_word(old)}")


def _drawers(base: Construction, other: Construction, shown: LengthUnit) -> Iterator[str]:
    new = len(other.drawers)
    side, thicker = base.spec.drawers.side, other.spec.drawers.side
    if plain_size(side, shown) != plain_size(thicker, shown):
        yield f"Drawer sides {sized(thicker, shown)} thick instead of {plain_size(side, shown)}."
    if _bottom(base.spec) != _bottom(other.spec):
        yield f"The drawers have bottoms of {_bottom(other.spec)} instead of {_bottom(base.spec)}."
    old_style, style = base.spec.drawers.style.kind, other.spec.drawers.style.kind
    if style != old_style:
        yield f"Each drawer front {STYLES.get(style, INSET)} (instead of: {STYLES.get(old_style, INSET)})."
    notched = tuple(notched_words(other, shown))
    if notched != tuple(notched_words(base, shown)):
        yield from notched or ("No drawer has a recess for pipes.",)
    runs, ran = other.spec.drawers.running.kind, base.spec.drawers.running.kind
    if runs != ran:
        yield f"{'Every drawer' if new > 1 else 'The drawer'} {RUNS[runs]} (instead of: {RUNS[ran]})."
    for end, words in (("front_joint", FRONTS), ("back_joint", BACKS)):
        before, after = (getattr(spec.drawers, end).kind for spec in (base.spec, other.spec))
        if before != after:
            yield f"{'Every drawer' if new > 1 else 'The drawer'} {_is(words[after])}."


def _is(words: str) -> str:
    return words if words.startswith("has ") else f"is {words}"


def _bottom(spec: UnitSpec) -> str:
    bottom = spec.drawers.bottom
    return bottom.sheet if isinstance(bottom, PlyBottom) else "solid wood"


def _woods(base: Construction, other: Construction) -> Iterator[str]:
    """Parts that change from one wood to another are named together."""
    before, after = (_by_role(each.spec) | _of_shelves(each) for each in (base, other))
    changed: dict[tuple[str, str], list[str]] = {}
    for role in before:
        if role in after and before[role] != after[role]:
            changed.setdefault((_timber(after[role]), _timber(before[role])), []).append(f"the {role}")
    for (new, old), roles in changed.items():
        is_one = len(roles) == 1 and roles[0] in {"the case", "the top", "the back of the case"}
        yield sentence(f"{joined(roles)} {'is' if is_one else 'are'} {new} instead of {old}")


def _of_shelves(unit: Construction) -> dict[str, Timber]:
    """The wood of solid shelves, where there are any and all are of one."""
    woods = list({(part.wood, part.cut) for part in unit.parts if part.line == SHELF and not part.sheet})
    return {"shelves": Timber(wood=woods[0][0], cut=woods[0][1])} if len(woods) == 1 else {}


def _by_role(spec: UnitSpec) -> dict[str, Timber]:
    woods = spec.woods
    roles = {
        "case": woods.case,
        "top": woods.of("top"),
        "drawer fronts": woods.of("fronts"),
        "drawer sides and backs": woods.drawers,
        "drawer bottoms": woods.of("bottoms"),
        "back of the case": woods.of("back"),
        "parts inside that are not seen": woods.inside,
    }
    if isinstance(spec.drawers.bottom, PlyBottom):
        del roles["drawer bottoms"]
    if spec.legs:
        del roles["back of the case"]
    return roles


def _timber(choice: Timber) -> str:
    cut = known_words()["cuts"][choice.cut.value].partition(",")[0]
    return f"{cut} {choice.wood}".strip()


def _joints(base: UnitSpec, other: UnitSpec) -> Iterator[str]:
    if (base.legs is None) != (other.legs is None):
        yield STANDS[other.legs is not None]
    if base.legs or other.legs:
        return
    old, new = base.case, other.case
    if old.divider_end != new.divider_end:
        yield DIVIDERS[new.divider_end]
    if old.sides != new.sides:
        yield f"Its sides are {SIDES[new.sides]} instead of {SIDES[old.sides]}."
    if old.joined != new.joined:
        yield f"The corners of the case are {CORNERS[new.joined]} instead of {CORNERS[old.joined]}."
    if old.divider_kind != new.divider_kind:
        yield f"Between its rows lie {BETWEEN[new.divider_kind]} instead of {BETWEEN[old.divider_kind]}."


def _pulls(base: UnitSpec, other: UnitSpec) -> Iterator[str]:
    if base.pulls.item != other.pulls.item:
        yield f"With {_pull(other.pulls.item)} instead of {_pull(base.pulls.item)}."


def _pull(item: str) -> str:
    return plural(item) if item.isascii() and item.isalpha() and item.islower() else f"pulls “{item}”"


def _finish(base: UnitSpec, other: UnitSpec) -> Iterator[str]:
    old, new = base.finish, other.finish
    if old.product != new.product:
        yield f"Finished with {new.product} instead of {old.product}."
    if old.show_coats != new.show_coats:
        coats = several(new.show_coats, "coat")
        yield sentence(f"{coats} of finish on the outside instead of {number_word(old.show_coats)}")
