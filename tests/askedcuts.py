"""A cut file as whoever checks a layout reads it: nothing of the program's own reader is used."""

import re
from fractions import Fraction
from typing import Any

USUAL_SAW = {
    "kerf": "1/8",
    "end_trim": "1",
    "edge": "1/4",
    "jointing": "1/8",
    "length_over": "1",
    "width_over": "1/4",
    "resaw_kerf": "1/8",
    "cleaning": "1/8",
}


def inches(value: Any, unit: str = "in") -> float:
    """A size as it stands in a cut file."""
    if isinstance(value, int | float):
        return value / 25.4 if unit == "mm" else float(value)
    match = re.fullmatch(r"(?:(\d+)-)?(\d+(?:\.\d+)?(?:/\d+)?)\s*(in|mm)?", value.strip())
    assert match, f"the checker cannot read {value!r}"
    whole, rest, named = match.groups()
    size = Fraction(rest) + int(whole or 0)
    metric = (named or ("in" if "/" in rest else unit)) == "mm"
    return float(size * 10 / 254 if metric else size)


class Asked:
    """A cut file as the checker reads it."""

    def __init__(self, file: dict[str, Any]) -> None:
        self.unit = file.get("unit", "in")
        self.saw = {
            name: inches(
                file.get("saw", {}).get(name, usual), self.unit if name in file.get("saw", {}) else "in"
            )
            for name, usual in USUAL_SAW.items()
        }
        self.kerf = self.saw["kerf"]
        self.stages = file.get("stages", 3)
        self.parts = {part["code"]: part for part in file["parts"]}
        self.sets = {each["name"]: each for each in file.get("sets", [])}
        self.boards = {each["code"]: each for each in file.get("boards", [])}
        self.sheets = {each["code"]: each for each in file.get("sheets", [])}
        self.lengths = {each["code"]: each for each in file.get("lengths", [])}

    def size(self, value: Any) -> float:
        return inches(value, self.unit)

    def part_size(self, code: str) -> tuple[float, float]:
        """How long and how wide a part is cut."""
        part = self.parts[code]
        on_sheet = not part.get("class") and "width" in part
        over = part.get("sizes") == "finished" and not on_sheet
        length = self.size(part["length"]) + (self.saw["length_over"] if over else 0)
        width = self.size(part.get("width", 0)) + (self.saw["width_over"] if over else 0)
        return length, width
