"""Faces of every kind for hypothesis: stacks within columns, doors, open spaces, knee spaces."""

from hypothesis import strategies as st

from carcases import sixteenths, timbers
from units import chest

BETWEEN = 0.75
LOWEST, NARROWEST = 4.0, 8.0
"""What every drawer of these units has at the least [in]."""
LOWEST_DOOR = 8.0
"""Two hinges need so much [in]."""
LEVELS = 3
SIDES = ("solid", "framed", "plywood")
RUNNING = ("runners", "side-hung", "centre guide", "full-length runners")


@st.composite
def nested_units(draw, sides=("solid",), running=("runners",)):
    """The data of a unit file whose columns may hold anything; every one of them can be built."""
    width, total = draw(sixteenths(40, 80)), draw(sixteenths(20, 44))
    rows = _rows(draw, width - 1.5, total, 1)
    knee = draw(st.booleans()) and width > 50
    if knee:
        beside = (width - 1.5 - 20 - 2 * BETWEEN) / 2
        height = (total - BETWEEN) / 2
        rows = [
            _row(draw, width - 1.5, height, LEVELS, True),
            {
                "across": [
                    {"rows": _rows(draw, beside, height, 2), "width": beside},
                    {"knee": True},
                    {
                        "holds": draw(
                            st.sampled_from(["drawer", "open"] + ["doors"] * (height >= LOWEST_DOOR))
                        ),
                        "width": beside,
                    },
                ]
            },
        ]
    return chest(
        {
            "body": {
                "width": width,
                "depth": draw(sixteenths(14, 28)),
                "opening_total": total - (len(rows) - 1) * BETWEEN,
            },
            "graduation": {"rule": "equal"},
            "rows": rows,
            "woods": {"case": draw(timbers()), "drawers": draw(timbers()), "inside": draw(timbers())},
            "case.sides": draw(st.sampled_from(sides)),
            "drawers.running": {"kind": draw(st.sampled_from(running))},
            "case.divider_end": draw(st.sampled_from(["housing", "sliding dovetail"])),
            "case.divider_kind": draw(st.sampled_from(["web-frame", "rail", "dust-frame", "solid"])),
            "case.lipping": draw(st.sampled_from([0, 1.5])),
            "shelving.fixing": draw(st.sampled_from(["pins", "housings"])),
            "shelving.edge": draw(st.sampled_from([0, 0.75])),
        }
    )


def _rows(draw, width, height, level):
    """Rows that share a height equally; the first of the whole face begins with a drawer."""
    most = max(1, int((height + BETWEEN) // (LOWEST + BETWEEN)))
    count = draw(st.integers(1, min(4, most)))
    each = (height - (count - 1) * BETWEEN) / count
    return [_row(draw, width, each, level, number == 0) for number in range(count)]


def _row(draw, width, height, level, with_a_drawer):
    most = max(1, int((width + BETWEEN) // (NARROWEST + BETWEEN)))
    count = draw(st.integers(1, min(4, most)))
    each = (width - (count - 1) * BETWEEN) / count
    columns = [_column(draw, each, height, level) for _ in range(count)]
    return {"across": [{}, *columns[1:]] if with_a_drawer else columns}


def _column(draw, width, height, level):
    kinds = ["drawer", "open"]
    if height >= LOWEST_DOOR:
        kinds.append("doors")
    if level < LEVELS and height >= 2 * LOWEST + BETWEEN:
        kinds = ["stack", "stack", "stack", *kinds]
    kind = draw(st.sampled_from(kinds))
    if kind == "stack":
        return {"rows": _rows(draw, width, height, level + 1)}
    if kind == "drawer":
        return {}
    shelves = draw(st.integers(0, 2)) if height > 8 else 0
    return {"holds": kind, "shelves": shelves}
