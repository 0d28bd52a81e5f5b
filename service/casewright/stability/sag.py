"""Will the bottom of a drawer hang down under what is in it.

A strip of the bottom, one inch wide, is taken as a beam that rests in the two grooves and carries the weight
above it. The grooves hold its ends somewhat and the wood beside it helps, so the true sag is a little less.
"""

from casewright.measure.findings import Finding, Verdict, new_finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import TOLERANCE, up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number, PoundsPerCubicFoot, PoundsPerSquareInch
from casewright.stability.limits import Limits, house_limits, source_of

CUBIC_INCHES_PER_CUBIC_FOOT = 1728


def fill_pressure(fill_height: Inches, density: PoundsPerCubicFoot) -> PoundsPerSquareInch:
    """How hard the things in a drawer press on its bottom.

    Rule: density * fill_height / 1728

    Args:
        fill_height: how high the drawer is filled [in]
        density: of what is in it, 8.5 lb per cu ft for clothes [lb per cu ft]

    Returns:
        The pressure [psi]

    Source: geometry.
    """
    return density * fill_height / CUBIC_INCHES_PER_CUBIC_FOOT


def bottom_sag(
    pressure: PoundsPerSquareInch, span: Inches, modulus: PoundsPerSquareInch, thickness: Inches
) -> Inches:
    """How far a bottom hangs down in the middle.

    Rule: 5 * pressure * span ** 4 / (384 * modulus * thickness ** 3 / 12)

    Args:
        pressure: evenly spread [psi]
        span: between the grooves or from groove to muntin, along the grain [in]
        modulus: of elasticity along the grain [psi]
        thickness: of the bottom [in]

    Returns:
        The sag [in]

    Raises:
        ValueError: thickness or modulus is not above zero.

    Source: beam on two supports under an even load, strip of unit width; Wood Handbook, FPL-GTR-282 (2021),
        chapter 9.
    """
    if thickness <= 0 or modulus <= 0:
        raise ValueError("A bottom has a thickness and a stiffness above 0; give both.")
    return 5 * pressure * span**4 / (384 * modulus * thickness**3 / 12)


def sag_limit(span: Inches, ratio: Number) -> Inches:
    """How far a bottom may hang down before it shows.

    Rule: span / ratio

    Args:
        span: between its supports [in]
        ratio: span over sag, 300 [dimensionless]

    Returns:
        The limit [in]

    Source: common practice.
    """
    return span / ratio


def thickness_for(thickness: Inches, sag: Inches, limit: Inches) -> Inches:
    """How thick the bottom would have to be, without a muntin.

    Rule: thickness * (sag / limit) ** (1/3), up to 1/16 in

    Args:
        thickness: as it is [in]
        sag: at that thickness [in]
        limit: the sag allowed [in]

    Returns:
        The thickness, rounded up [in]

    Source: the sag goes with the cube of the thickness.
    """
    return up_to(thickness * (sag / limit) ** (1 / 3), 1 / 16)


def half_span(span: Inches, muntin: Inches) -> Inches:
    """The span of a bottom in two halves, with a muntin between.

    Rule: (span - muntin) / 2

    Args:
        span: between the two sides [in]
        muntin: width of the muntin; 0 for none [in]

    Returns:
        The span of one half [in]

    Source: geometry.
    """
    return (span - muntin) / 2


def check_sag(
    span: Inches,
    thickness: Inches,
    modulus: PoundsPerSquareInch,
    fill_height: Inches,
    *,
    muntin: Inches = 2.0,
    about: str = "",
    limits: Limits | None = None,
    ledger: Ledger = UNKEPT,
) -> Finding:
    """Whether a bottom stays straight when the drawer is full of clothes.

    Args:
        span: between its supports, as it is built: side to side, or side to muntin [in]
        thickness: of the bottom [in]
        modulus: of elasticity of its wood along the span [psi]
        fill_height: clear height of the drawer [in]
        muntin: width of the muntin that would be put in [in]
        about: the drawer's code
        limits: density of clothes and limit of sag; None for what a shop starts with
        ledger: where the working is kept

    Returns:
        Pass, or a stop with the muntin or the thickness that would pass.

    Source: beam on two supports under an even load; limit by common practice.
    """
    held = limits or house_limits()
    pressure = ledger.take("fill_pressure", fill_pressure, fill_height=fill_height, density=held.fill_density)
    sag = ledger.take(
        "bottom_sag", bottom_sag, pressure=pressure, span=span, modulus=modulus, thickness=thickness
    )
    limit = ledger.take("sag_limit", sag_limit, span=span, ratio=held.sag_ratio)
    passes = sag <= limit + TOLERANCE
    remedy = sag_remedy(sag, limit, span, thickness, muntin)
    return new_finding(
        rule="bottom sag",
        verdict=Verdict.PASS if passes else Verdict.STOP,
        message=say(
            "A {} bottom over {} sags {:.3} when full; {:.3} is allowed.", thickness, span, sag, limit
        ),
        remedy="" if passes else remedy,
        about=about,
        found=sag,
        needed=limit,
        source=source_of("sag_ratio"),
    )


def sag_remedy(sag: Inches, limit: Inches, span: Inches, thickness: Inches, muntin: Inches) -> Words:
    """What would keep a bottom straight.

    Args:
        sag: as it is [in]
        limit: the sag allowed [in]
        span: between its supports [in]
        thickness: of the bottom [in]
        muntin: width of the muntin [in]

    Returns:
        A muntin, with the sag that is left, or a thicker bottom.

    Source: the sag goes with the fourth power of the span and the inverse cube of the thickness.
    """
    halved = half_span(span, muntin)
    left = sag * (halved / span) ** 4
    return say(
        "Put in a {} muntin: over {} the sag is {:.3}; or make the bottom {:up} thick.",
        muntin,
        halved,
        left,
        thickness_for(thickness, sag, limit),
    )
