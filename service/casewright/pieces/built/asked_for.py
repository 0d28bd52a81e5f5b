"""A unit with the figures that are worked out only when somebody asks for them."""

from casewright.pieces.built.construct import Construction
from casewright.pieces.built.overall import with_overall
from casewright.pieces.built.season import with_year
from casewright.pieces.built.standing import with_standing


def with_asked(unit: Construction, asked: str) -> Construction:
    """The unit whose ledger holds the figure that is asked for, if one made only on asking holds it.

    Args:
        unit: the unit, worked out
        asked: the name of a figure

    Returns:
        The unit itself, or one with more in its ledger.

    Source: common practice.
    """
    return with_overall(with_standing(with_year(unit, asked), asked), asked)
