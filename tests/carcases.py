"""Carcases for hypothesis: files of cases that a shop might make."""

from hypothesis import strategies as st

from units import chest

# Shop name: radial and tangential coefficient, specific gravity at 12 %.
# Wood Handbook, FPL-GTR-190 (2010), tables 13-5 and 5-3b.
WOODS = {
    "cherry": (0.00126, 0.00248, 0.50),
    "walnut": (0.00190, 0.00274, 0.55),
    "hard maple": (0.00165, 0.00353, 0.63),
    "soft maple": (0.00137, 0.00289, 0.54),
    "white oak": (0.00180, 0.00365, 0.68),
    "red oak": (0.00158, 0.00369, 0.63),
    "white ash": (0.00169, 0.00274, 0.60),
    "poplar": (0.00158, 0.00289, 0.42),
}
CUTS = ("flat", "quarter", "rift")
SIDES, UPRIGHT = 1.5, 0.75
BASES = (
    None,
    {},
    {"height": 6},
    {"kind": "brackets", "width": 4.5, "forward": 0.5},
    {"kind": "turned", "diameter": 2.5},
    {"kind": "toe", "made_of": "solid"},
)
NARROWEST_OPENING = 5
LOWEST_OPENING = 3.5


def sixteenths(least, most):
    """Sizes off the rule, in inches."""
    return st.integers(round(least * 16), round(most * 16)).map(lambda marks: marks / 16)


def timbers():
    """A wood of the table, sawn one way or another."""
    return st.fixed_dictionaries({"wood": st.sampled_from(sorted(WOODS)), "cut": st.sampled_from(CUTS)})


def moisture(percent):
    """Wood of a moisture content that was measured."""
    return {"moisture": percent}


def air(humidity):
    """Air at 70 °F."""
    return {"humidity": humidity, "temperature_f": 70}


def seasons():
    """Shop, driest and wettest: by the meter or by the air."""
    metered = st.lists(st.floats(5, 16), min_size=3, max_size=3).map(
        lambda found: [moisture(percent) for percent in sorted(found)]
    )
    aired = st.lists(st.floats(25, 80), min_size=3, max_size=3).map(
        lambda found: [air(humidity) for humidity in sorted(found)]
    )
    return st.one_of(metered, aired).map(
        lambda states: {"driest": states[0], "shop": states[1], "wettest": states[2]}
    )


@st.composite
def carcases(draw):
    """The data of a unit file; every one of them can be built, if only with cautions."""
    width = draw(sixteenths(12, 84))
    rows = draw(st.integers(1, 8))
    most = min(4, int((width - SIDES + UPRIGHT) // (NARROWEST_OPENING + UPRIGHT)))
    bottom = draw(st.sampled_from(["solid", "ply, four grooves", "ply, under the back"]))
    return chest(
        {
            "body": {
                "width": width,
                "depth": draw(sixteenths(10, 30)),
                "opening_total": draw(sixteenths(LOWEST_OPENING * rows, 9 * rows)),
            },
            "graduation": {"rule": "equal"},
            "rows": [{"columns": draw(st.integers(1, most))} for _ in range(rows)],
            "woods": {"case": draw(timbers()), "drawers": draw(timbers()), "inside": draw(timbers())},
            "season": draw(seasons()),
            "case.divider_end": draw(st.sampled_from(["housing", "sliding dovetail"])),
            "case.lipping": draw(st.sampled_from([0, 1.5])),
            "base": draw(st.sampled_from(BASES)),
            "drawers.bottom": bottom_of(bottom),
        }
    )


def bottom_of(name):
    """The data of a drawer bottom, from its kind and how it is held."""
    kind, _, hold = name.partition(", ")
    return {"kind": kind, "hold": hold} if hold else {"kind": kind}
