"""Every way in which the core says that choices cannot be built: each carries a whole sentence."""

from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.lengths import LengthError
from casewright.pieces.asked.graduation import CannotGraduate
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pricing.prices import NoPrice
from casewright.wood.species import UnknownWood
from casewright.wood.thickness import TooThick
from casewright.wood.waste import NoWasteFigure

REFUSALS = (
    CannotBeLaidOut,
    CannotBuild,
    CannotGraduate,
    CannotRead,
    LengthError,
    NoPrice,
    NoWasteFigure,
    TooThick,
    UnknownWood,
)
"""A door that catches these shows their message; anything else is a fault of the program."""
