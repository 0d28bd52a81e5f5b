"""A unit in plain words: what a customer understands and a maker is proud of."""

from collections.abc import Iterator

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import Construction
from casewright.pieces.words.case_words import case_words
from casewright.pieces.words.door_words import door_words
from casewright.pieces.words.drawer_words import drawer_words
from casewright.pieces.words.face_words import heights_in_words, rows_in_words
from casewright.pieces.words.grain_words import grain_words
from casewright.pieces.words.shell_words import closing_words, crate_words, top_words
from casewright.pieces.words.wording import joined, known_words, number_word, plural, sentence, several, sized


def describe(unit: Construction, shown: LengthUnit | None = None) -> tuple[str, ...]:
    """A unit in plain words, in a few short paragraphs.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes; None for that of its file

    Returns:
        Size and woods, drawers and how they are made, the case with its top, base and back, pulls and finish.

    Source: common practice of quotes: no word of the trade without its meaning.
    """
    inch_or_mm = shown or unit.spec.unit
    return (
        " ".join((*_size(unit, inch_or_mm), *_woods(unit))),
        " ".join(
            (
                rows_in_words(unit),
                *heights_in_words(unit, inch_or_mm),
                *drawer_words(unit, inch_or_mm),
                *door_words(unit, inch_or_mm),
            )
        ),
        " ".join(_case(unit, inch_or_mm)),
        " ".join((_pulls(unit), *_finish(unit.spec))),
    )


def _size(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    spec = unit.spec
    if spec.count > 1:
        yield f"Of this piece {number_word(spec.count)} are made, all alike."
    over = "over the top and " if spec.legs or spec.top.fixing != "none" else ""
    width, depth = sized(spec.overall_width, shown), sized(spec.overall_depth, shown)
    yield (
        f"Overall {width} wide × {depth} deep × "
        f"{sized(unit.face.overall_height, shown)} high, measured {over}without the "
        f"{_pulls_noun(unit, 2)}."
    )


def _timber(choice: Timber) -> str:
    """A wood, with the way it was sawn where that is not the usual one."""
    sawn = known_words()["cuts"][choice.cut.value]
    return f"solid {choice.wood}{f' ({sawn})' if sawn else ''}"


def _woods(unit: Construction) -> Iterator[str]:
    """Which part is of which wood; parts of one wood are named together."""
    spec = unit.spec
    drawers, woods = len(unit.drawers), spec.woods
    roles = [
        (_of_the_case(spec), woods.case),
        *([("top", woods.of("top"))] if spec.legs or spec.top.fixing != "none" else []),
        ("drawer front" if drawers == 1 else "drawer fronts", woods.of("fronts")),
        ("sides and back of the drawer" if drawers == 1 else "drawer sides and backs", woods.drawers),
    ]
    if not isinstance(spec.drawers.bottom, PlyBottom):
        roles.append(("drawer bottom" if drawers == 1 else "drawer bottoms", woods.of("bottoms")))
    if not spec.legs and spec.back.kind != "none" and not spec.back.sheet:
        roles.append(("back of the case", woods.of("back")))
    if woods.shelves and any(space.shelves for space in unit.face.spaces):
        roles.append(("shelves", woods.shelves))
    roles += [("parts inside that are not seen", woods.inside)]
    by_wood: dict[str, list[str]] = {}
    for role, choice in roles:
        by_wood.setdefault(_timber(choice), []).append(role)
    for timber, members in by_wood.items():
        is_one = len(members) == 1 and members[0] in ("case", "top", "drawer front", "drawer bottom")
        yield sentence(f"{joined([_article(role) for role in members])} {'is' if is_one else 'are'} {timber}")
    if spec.matched_fronts and spec.grain.fronts != "down the case" and drawers > 1:
        yield (
            "The drawer fronts are cut one after another from the same wood, so that its figure runs on from "
            "drawer to drawer."
        )
    yield from grain_words(spec)


def _of_the_case(spec: UnitSpec) -> str:
    """What of the case is of its show wood: of a plywood one no more than what closes its edges."""
    if spec.legs:
        return "legs, aprons and rails"
    return "edges and rails of the case" if spec.case.is_ply else "case"


def _article(role: str) -> str:
    return f"the {role}"


def _case(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    spec = unit.spec
    if spec.legs:
        yield from _on_legs(spec, spec.legs, shown)
        return
    if spec.crate:
        yield from crate_words(spec, spec.crate, unit.face, shown)
        return
    yield from case_words(unit, shown)
    if any(row.partitions for row in unit.face.all_rows):
        yield "Partitions over the full depth stand between the columns."
    is_divided = len(spec.rows) > 1 and spec.case.divider_kind != "none"
    if is_divided and spec.case.divider_end == "sliding dovetail":
        what = "boards" if spec.case.divider_kind == "solid" else "rails"
        yield (
            f"The {what} between the rows slide into the sides with a dovetail, so that they hold the sides "
            "together."
        )
    yield from closing_words(spec, unit.face, shown)


def _on_legs(spec: UnitSpec, legs: LegsAndAprons, shown: LengthUnit) -> Iterator[str]:
    shape = ", tapered below the aprons" if legs.tapered else ""
    yield (
        f"It stands on four legs {sized(legs.leg, shown)} square{shape}, joined at the sides and the back by "
        f"aprons (boards between the legs) {sized(legs.apron_height, shown)} high, tenoned into them "
        "(a tongue at the end of one part glued into a slot in the other); in front, rails above and below "
        f"{'the drawer' if len(spec.rows) == 1 else 'each drawer'} hold the legs together."
    )
    yield top_words(spec, shown)


def _pulls_noun(unit: Construction, number: int) -> str:
    """What the pulls are called: their own name where it is one plain word."""
    item = unit.spec.pulls.item
    noun = item if item.isalpha() and item.islower() and item.isascii() else "pull"
    return noun if number == 1 else plural(noun)


def _pulls(unit: Construction) -> str:
    fitted = sum(len(drawer.pulls) for drawer in unit.drawers)
    item, noun = unit.spec.pulls.item, _pulls_noun(unit, fitted)
    named = "" if item == _pulls_noun(unit, 1) else f" ({item})"
    on = "the drawer" if len(unit.drawers) == 1 else "the drawers"
    there = "There is" if fitted == 1 else "There are"
    return f"{there} {number_word(fitted)} {noun}{named} on {on}."


def _finish(spec: UnitSpec) -> Iterator[str]:
    finish = spec.finish
    if finish.show_coats == finish.inside_coats == 0:
        yield "The wood is left bare, without a finish."
        return
    gloss = known_words()["finishes"].get(finish.product, "")
    meaning = f" ({gloss})" if gloss else ""
    if finish.show_coats:
        yield (
            f"Finished on the outside with {several(finish.show_coats, 'coat')} of {finish.product}{meaning}"
            + (
                f", inside the drawers with {number_word(finish.inside_coats)}."
                if finish.inside_coats
                else "; the drawers are left bare inside."
            )
        )
    else:
        yield (
            f"The outside is left bare; the drawers are finished inside with "
            f"{several(finish.inside_coats, 'coat')} of {finish.product}{meaning}."
        )
