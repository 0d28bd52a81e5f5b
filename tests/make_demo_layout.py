"""Makes the layout that is kept beside the demo; the solver answers with a fixed number of steps.

    PYTHONPATH=service:tests .venv/bin/python tests/make_demo_layout.py

Run it when the parts of the demo's hall case have changed.
"""

import json
import re
import time
from pathlib import Path
from typing import Any

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.cutting.budget import Budget
from casewright.cutting.plans.plan import plan_cuts
from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import shop
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.built.construct import construct
from casewright.pieces.takeoff.cut_parts import cut_data_for
from casewright.pieces.takeoff.rough import take_off
from casewright.solving.worker import answer_of

DATA = Path(__file__).resolve().parents[1] / "service/casewright/shop/data"
STEPS = 25
RATES = {"cherry": 8.75, "poplar": 3.6, "soft maple": 4.9}
"""What the invented yard asked for a board foot."""
BOARDS = {
    "cherry": ((96, "8-1/4"), (120, "7-1/2"), (102, "6-3/4"), (84, "9"), (120, "8-3/4"), (96, "6-1/4")),
    "poplar": ((120, "7"), (96, "8-1/2"), (72, "6-1/2"), (108, "9-1/4"), (60, "7-3/4"), (84, "5-3/4")),
    "soft maple": ((96, "6-3/4"), (120, "8"), (84, "7-1/4")),
}
"""Length and width of the boards that lay on the invented rack, all of them 4/4."""


def boards() -> list[dict[str, Any]]:
    """The boards of the rack, as a cut file holds them."""
    found = []
    for wood, sizes in BOARDS.items():
        for length, width in sizes:
            whole, _, part = width.partition("-")
            above, below = (int(each) for each in part.split("/")) if part else (0, 1)
            feet = length * (int(whole) + above / below) / 144
            found.append(
                {
                    "code": f"BXX{len(found) + 1:02}",
                    "wood": wood,
                    "class": "4/4",
                    "length": f"{length} in",
                    "width": f"{width} in",
                    "offcut": False,
                    "place": f"rack {1 + len(found) % 3}",
                    "cost": f"{feet * RATES[wood]:.2f}",
                }
            )
    return found


def parts_of_the_hall_case() -> dict[str, Any]:
    """The parts of the demo's hall case as a cut file holds them, by the figures of a new shop."""
    own = shop(read_as(ShopSpec, {"name": "A new shop", "symbol": "$"}))
    made = construct(preset("hall-case").spec(), own)
    return cut_data_for(made, take_off(made, own), own)


def kept(parts: dict[str, Any], unit: LengthUnit) -> dict[str, Any]:
    """The layout of some parts on the rack.

    Args:
        parts: a cut file without stock
        unit: of its words and drawings
    """
    asked = {**parts, "unit": unit.value, "boards": boards(), "first_cut": "best", "offcuts": "first"}
    file = cut_file_of(asked)
    answer = answer_of(file, plan_cuts(file, Budget(now=time.monotonic, steps=STEPS)))
    return {"asked": asked, "answer": {**answer, "seconds": 10.0}}


def main() -> None:
    """Writes both files, the one in inches and the one in millimetres."""
    for unit in LengthUnit:
        found = kept(parts_of_the_hall_case(), unit)
        text = json.dumps(found, separators=(",", ":"), ensure_ascii=False)
        (DATA / f"demo_layout_{unit.value}.json").write_text(
            re.sub(r"\s+$", "", text) + "\n", encoding="utf-8"
        )
        print(unit.value, len(text), found["answer"]["complete"])  # noqa: T201 - told to whoever runs it


if __name__ == "__main__":
    main()
