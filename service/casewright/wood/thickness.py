"""Thickness classes of hardwood: what to buy for a finished thickness, and when one board gives two parts."""

from dataclasses import dataclass
from functools import cache

from casewright.measure.findings import Finding, Verdict
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document


@dataclass(frozen=True, slots=True, kw_only=True)
class ThicknessClass:
    """One class of rough lumber, named in quarters of an inch.

    Attributes:
        name: the yard's word, such as `5/4`
        rough: nominal thickness, which is what is paid for [in]
        surfaced: the greatest thickness that is expected of it, planed on two sides [in]
        one_face: the thickness planed on one side, by agreement; None where none is usual [in]
        usual: whether yards stock it for furniture
        kiln_scant: how far kiln-dried stock may lie under the nominal thickness [in]
        evidence: where the surfaced thickness comes from
    """

    name: str
    rough: Inches
    surfaced: Inches
    one_face: Inches | None
    usual: bool
    kiln_scant: Inches
    evidence: Evidence

    def __str__(self) -> str:
        return self.name


class TooThick(ValueError):
    """A part that no class of lumber holds: it must be glued up, or made thinner."""


@cache
def thickness_classes() -> tuple[ThicknessClass, ...]:
    """Every class in the grading rules, thin ones first.

    Returns:
        The classes, among them some that yards hardly stock.

    Source: NHLA Rules Book, standard thickness of surfaced lumber; each row names its own.
    """
    data = document("thickness")
    scant = {name: row["scant_in"] for row in data["kiln_dried"] for name in row["classes"]}
    return tuple(
        ThicknessClass(
            name=row["name"],
            rough=row["rough_in"],
            surfaced=row["surfaced_in"],
            one_face=row["one_face_in"],
            usual=row["usual"],
            kiln_scant=scant[row["name"]],
            evidence=evidence_of(row),
        )
        for row in data["classes"]
    )


@cache
def usual_classes() -> tuple[ThicknessClass, ...]:
    """The classes that a yard stocks for furniture, from 4/4 up.

    Returns:
        The classes, thin ones first.

    Source: common practice.
    """
    return tuple(each for each in thickness_classes() if each.usual)


def class_named(name: str) -> ThicknessClass:
    """The class that goes by a yard's word.

    Args:
        name: such as `4/4`

    Returns:
        The class.

    Raises:
        ValueError: there is no such class.

    Source: NHLA Rules Book, standard thickness of surfaced lumber.
    """
    for each in thickness_classes():
        if each.name == name.strip():
            return each
    known = ", ".join(each.name for each in usual_classes())
    raise ValueError(f"“{name}” is not a thickness class. Furniture stock is {known}.")


def flattening_loss() -> Inches:
    """How much a long or wide part loses to flattening, beyond what surfacing takes.

    Returns:
        What comes off the limit of each class [in]

    Source: common practice.
    """
    return float(document("thickness")["flattening"]["loss_in"])


def thickness_limit(surfaced: Inches, loss: Inches = 0.0) -> Inches:
    """The thickest part to plan from a class.

    Rule: surfaced - loss

    Args:
        surfaced: the class's thickness planed on two sides [in]
        loss: what flattening a long or wide part costs besides; see `flattening_loss` [in]

    Returns:
        The limit for a finished thickness [in]

    Source: NHLA Rules Book, standard thickness of surfaced lumber; the loss is common practice.
    """
    return surfaced - loss


def thickness_class(finish: Inches, *, flattening: bool = False) -> ThicknessClass:
    """The thinnest class that holds a finished thickness.

    Args:
        finish: finished thickness of the part [in]
        flattening: true for a long or wide part that must first be flattened, which costs another 1/16 in

    Returns:
        The class to buy.

    Raises:
        ValueError: the thickness is not above nothing.
        TooThick: no class is thick enough.

    Source: NHLA Rules Book, standard thickness of surfaced lumber; flattening is common practice.
    """
    _check_finish(finish)
    loss = flattening_loss() if flattening else 0.0
    for each in usual_classes():
        if finish <= thickness_limit(each.surfaced, loss) + TOLERANCE:
            return each
    thickest = usual_classes()[-1]
    raise TooThick(
        say(
            "No lumber class holds a part {} thick; {} gives {:bare}. Glue it up, or make it thinner.",
            finish,
            thickest.name,
            thickness_limit(thickest.surfaced, loss),
        )
    )


def _check_finish(finish: float) -> None:
    if not finish > 0:
        raise ValueError(say("A part is thicker than {:exact}.", finish))


def spare_thickness(finish: Inches, surfaced: Inches, loss: Inches = 0.0) -> Inches:
    """What is left between a finished thickness and the limit of its class.

    Rule: surfaced - loss - finish

    Args:
        finish: finished thickness of the part [in]
        surfaced: the class's thickness planed on two sides [in]
        loss: what flattening costs [in]

    Returns:
        The spare; below zero when the class does not hold the part [in]

    Source: common practice.
    """
    return surfaced - loss - finish


def check_class(
    finish: Inches, bought: ThicknessClass, *, flattening: bool = False, about: str = ""
) -> Finding:
    """Whether a class holds a part, and whether with anything to spare.

    Args:
        finish: finished thickness of the part [in]
        bought: the class that it is to come from
        flattening: true for a long or wide part that must first be flattened
        about: the part's code

    Returns:
        A stop when the class is too thin, a caution when less than 1/16 in is spare, else a pass.

    Source: NHLA Rules Book, standard thickness of surfaced lumber; the margin is common practice.
    """
    loss = flattening_loss() if flattening else 0.0
    limit = thickness_limit(bought.surfaced, loss)
    spare = spare_thickness(finish, bought.surfaced, loss)
    margin = float(document("thickness")["near_limit"]["margin_in"])
    said = say("{} thick from {}, which gives {:bare}", finish, bought.name, limit)
    verdict, message = Verdict.PASS, say("{}: {:bare} to spare.", said, spare)
    remedy: Words = ""
    if spare < -TOLERANCE:
        verdict, message = Verdict.STOP, say("{}: it is {:bare} short.", said, -spare)
        remedy = say("Buy the next class up, or make the part {:down bare} thick.", limit)
    elif spare < margin - TOLERANCE:
        verdict, message = Verdict.CAUTION, say("{}: {:bare} to spare.", said, max(spare, 0.0))
        remedy = "Pick flat boards, and measure their thickness before they are cut."
    return Finding(
        rule="class",
        verdict=verdict,
        message=message,
        remedy=remedy,
        about=about,
        found=finish,
        needed=limit,
        source="NHLA Rules Book, standard thickness of surfaced lumber; the margin is common practice",
    )


def resaw_thickness_needed(finish: Inches, kerf: Inches = 0.125, cleaning: Inches = 0.125) -> Inches:
    """How thick a board must be rough for two parts to be sawn from its thickness.

    Rule: 2 * (finish + cleaning) + kerf

    Args:
        finish: finished thickness of each part [in]
        kerf: what the saw takes [in]
        cleaning: what cleaning up takes from each part [in]

    Returns:
        The rough thickness needed [in]

    Source: common practice.
    """
    return 2 * (finish + cleaning) + kerf


@dataclass(frozen=True, slots=True, kw_only=True)
class Resaw:
    """Two parts from the thickness of one board, set against one part from each.

    Attributes:
        needed: rough thickness that the two take [in]
        bought: the thinnest class that gives it
        single: the class for one part alone
        share: rough thickness that each part is charged with, half the class [in]
        saves: whether that is less than the class for one alone
    """

    needed: Inches
    bought: ThicknessClass
    single: ThicknessClass
    share: Inches
    saves: bool


def resaw_class(finish: Inches) -> Resaw:
    """The thinnest class from which two parts can be sawn, and whether it saves wood.

    Args:
        finish: finished thickness of each part [in]

    Returns:
        Both ways of buying, compared.

    Raises:
        TooThick: no class is thick enough for two.

    Source: common practice.
    """
    _check_finish(finish)
    allowed = document("thickness")["resaw"]
    needed = resaw_thickness_needed(finish, allowed["kerf_in"], allowed["cleaning_in"])
    for each in usual_classes():
        if needed <= each.rough + TOLERANCE:
            single = thickness_class(finish)
            share = each.rough / 2
            saves = share < single.rough - TOLERANCE
            return Resaw(needed=needed, bought=each, single=single, share=share, saves=saves)
    raise TooThick(
        say(
            "Two parts {} thick need a board {:bare} thick; {} is the thickest. Saw them singly.",
            finish,
            needed,
            usual_classes()[-1].name,
        )
    )
