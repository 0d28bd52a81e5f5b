"""Do hanging folders go into the drawers that are to hold them?"""

from collections.abc import Iterator

from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer

FOLDER_WIDE: dict[str, Inches] = {"letter": 12.25, "legal": 15.25}
"""Between the rails that hanging folders slide on (common practice) [in]."""
FOLDER_HIGH = 10.0
"""A hanging folder with its tab, above the drawer bottom (common practice) [in]."""


def file_checks(spec: UnitSpec, drawers: tuple[Drawer, ...]) -> Iterator[Finding]:
    """The checks of drawers for hanging folders, which hang across the drawer or along it.

    Args:
        spec: what the maker chose
        drawers: the drawers

    Yields:
        Two findings for each drawer that is to hold folders: its width or depth, and its height.

    Source: common practice.
    """
    for drawer in drawers:
        files = row_of(spec.rows, drawer.sizes.opening.row_mark).files
        if files is None:
            continue
        inside, need = drawer.sizes.inside, FOLDER_WIDE[files]
        across = inside.width >= need or inside.width >= inside.depth
        size = inside.width if across else inside.depth
        yield at_least(
            "file drawer",
            size,
            need,
            say(
                "{}: inside it is {:down 16} {}; {} folders hang on rails {} apart.",
                drawer.sizes.code,
                size,
                "wide" if across else "deep",
                files,
                need,
            ),
            say("Make the opening at least {:up 16} wider.", max(0.0, need - size)),
            about=drawer.code,
        )
        yield at_least(
            "file drawer",
            inside.height,
            FOLDER_HIGH,
            say(
                "{}: there is {:down 16} of height above its bottom; a hanging folder takes {}.",
                drawer.sizes.code,
                inside.height,
                FOLDER_HIGH,
            ),
            say("Make the opening at least {:up 16} higher.", max(0.0, FOLDER_HIGH - inside.height)),
            about=drawer.code,
        )
