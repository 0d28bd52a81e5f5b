"""Working a job out: what it takes, costs and when it can be ready, with the figures that hold now."""

from datetime import date
from functools import lru_cache

from casewright.pieces.built.construct import Construction, construct
from casewright.pieces.costs.estimate import Estimate, estimate
from casewright.pieces.costs.job_estimate import JobEstimate, estimate_job
from casewright.shop.figures import figures_from
from casewright.shop.units import spec_from

KEPT = 64


@lru_cache(maxsize=KEPT)
def worked_unit(spec_text: str, figures_text: str) -> Construction:
    """A unit worked out. Values in, values out: the same texts give the same unit, so it is kept a while.

    Args:
        spec_text: what the maker chose, as JSON text
        figures_text: the shop's figures, as JSON text

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: with a sentence that says what would work
    """
    return construct(spec_from(spec_text), figures_from(figures_text))


@lru_cache(maxsize=KEPT)
def estimated_unit(spec_text: str, figures_text: str, start: date) -> Estimate:
    """A unit estimated by itself; as `worked_unit`, with the day from which the promise counts."""
    return estimate(spec_from(spec_text), figures_from(figures_text), start)


@lru_cache(maxsize=KEPT)
def estimated_job(spec_texts: tuple[str, ...], figures_text: str, start: date) -> JobEstimate:
    """The units of a job priced together; as `estimated_unit`."""
    return estimate_job(tuple(spec_from(text) for text in spec_texts), figures_from(figures_text), start)
