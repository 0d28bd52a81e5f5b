"""Codes lettered within what they name, no smaller than is legible; a number for each that has no room.

The numbers are told below the drawing. All codes of a drawing are lettered alike, as large as the tightest of
those that have room lets them be.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

from casewright.drawing.canvas import Point, Sheet
from casewright.drawing.page import letter_list
from casewright.measure.units import Number

SIZES = (1.0, 0.85, 0.7)
"""Of a code, the largest first, as parts of the lettering; at 0.7 it is 8 point on paper."""
Place = tuple[Point, str]
"""Where words begin, or end, at half their height on the sheet, and which of it that is."""
Room = Callable[[str, Number], Place | None]
"""Where words of a size have room; None where they have none."""


@dataclass(slots=True)
class Codes:
    """The codes of one drawing while it is made.

    Attributes:
        sheet: what it is drawn on
        held: each code with what is lettered for it, and where that has room
        numbered: what the numbers stand for, once they are lettered
    """

    sheet: Sheet
    held: list[tuple[str, str, Room]] = field(default_factory=list)
    numbered: list[str] = field(default_factory=list)

    def put(self, code: str, words: str, room: Room) -> None:
        """A code that is to be lettered.

        Args:
            code: of the opening
            words: what is lettered
            room: where words of a size have room
        """
        self.held.append((code, words, room))

    def letter(self, order: list[str]) -> set[str]:
        """Letters all codes.

        Args:
            order: all codes, in the order in which numbers are given

        Returns:
            The codes that had no room, not even for a number.

        Source: common practice of shop drawing: a legend for what has no room.
        """
        held = sorted(self.held, key=lambda each: order.index(each[0]))
        fits = {code: size for code, words, room in held if (size := _largest(words, room)) is not None}
        usual = min(fits.values(), default=SIZES[-1])
        left_out: set[str] = set()
        for code, words, room in held:
            found = room(words, usual) if code in fits else None
            if found is not None:
                self._letter(found, words, usual)
                continue
            number = str(len(self.numbered) + 1)
            size = usual if room(number, usual) else _largest(number, room)
            placed = None if size is None else room(number, size)
            if size is None or placed is None:
                left_out.add(code)
                continue
            self._letter(placed, number, size)
            self.numbered.append(f"{number} {words}")
        return left_out

    def tell(self) -> None:
        """Tells the numbers below all that is drawn so far."""
        if not self.numbered:
            return
        sheet = self.sheet
        left, bottom, right, _ = sheet.reach
        letter_list(sheet, "Numbers:", self.numbered, (left, bottom - sheet.letters), right - left)

    def _letter(self, place: Place, words: str, size: Number) -> None:
        at, anchor = place
        self.sheet.letter(at, words, anchor, size=size)


def _largest(words: str, room: Room) -> Number | None:
    return next((size for size in SIZES if room(words, size) is not None), None)
