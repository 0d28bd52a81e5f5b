"""What ties a piece to the wall: the restraint of one that stands, the screws of one that hangs."""

from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.fitted import HardwareItem
from casewright.pieces.layout.openings import Face
from casewright.pieces.rules.wall_rules import SHIFT, cleat_length, cleat_screws, studs_met, wall_cleat


def wall_hardware(spec: UnitSpec, face: Face) -> HardwareItem:
    """What ties a piece to the wall.

    Args:
        spec: what the maker chose
        face: the width between the sides

    Returns:
        The restraint, which every piece has that stands; or the screws of the cleat that it hangs on.

    Source: common practice; the wall restraint by 16 CFR 1261, and wanted on every piece that stands.
    """
    cleat = spec.cleat
    if cleat is None:
        note = "always fitted, whatever the stability screen says"
        return HardwareItem(item="wall restraint", quantity=1, note=note)
    length = cleat_length(width=spec.body.width, clear=face.clear_width, within=int(cleat.room == "within"))
    studs = max(1, studs_met(length=wall_cleat(length=length, shift=SHIFT), apart=cleat.studs))
    return HardwareItem(
        item="stud screw",
        quantity=cleat_screws(studs=studs, each=cleat.screws),
        spare=cleat.screws,
        note="through the cleat into the studs",
    )
