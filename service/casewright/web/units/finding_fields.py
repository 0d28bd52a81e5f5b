"""The field of a unit's form that a finding is about: by its rule, then by the part or opening it names."""

import re
from collections.abc import Callable, Iterator, Mapping

from casewright.measure.findings import Finding
from casewright.web.units.counting import counts
from casewright.web.units.fields import Asked
from casewright.web.units.form import asked_fields
from casewright.web.units.measured_text import MEASURED, SIDES
from casewright.web.units.rows import Shape, field_of, shape_of

OPENING = re.compile(r"\bR([1-9]\d?(?:-[1-9]\d?)*)\b")
"""An opening or a row, in the code of a drawer, of a part or by itself."""
HEIGHT, WIDTH, TAILS = "@height", "@width", "@front_tails"
"""Fields of the row or column that is named."""
NOTCH = "@notch."
Table = tuple[tuple[str, tuple[str, ...]], ...]
"""The beginnings of rules, and the fields that mend them: the first that counts with what is chosen."""
BOTTOM = ("drawers.bottom.thickness", "drawers.bottom.sheet")
FRONT_JOINED = ("drawers.box_front", "drawers.front")
LAP = ("drawers.lap", "drawers.front_joint.depth", "drawers.front_joint.kind")
PIN = ("drawers.front_joint.pin", "drawers.front_joint.kind")
SLIDE = ("drawers.running.slide", "drawers.running.kind")
TENON = ("construction.tenon", "frames.tenon", "case.panelling.tenon")

OF_DRAWERS: Table = (
    ("measured beside drawn", (MEASURED,)),
    ("JC1|JC2", LAP),
    ("JC4|measured in the rabbet|rabbet", ("drawers.rabbet", "drawers.front_joint.kind")),
    ("JC3|JC10", FRONT_JOINED),
    ("JC5|JC6|JC13|pin$|pins", PIN),
    ("JC7", ("drawers.front_joint.half_pin", *PIN)),
    ("JC8|groove hidden|groove and", ("drawers.groove.height",)),
    ("JC9|JC16|slots for the show front|neck of the tail", (TAILS, WIDTH)),
    ("JC11", ("drawers.side",)),
    ("JC12", ("drawers.front_joint.slope", *PIN)),
    ("JC14", ("season.shop.moisture",)),
    ("JC17", ("woods.drawers.wood",)),
    ("front behind groove", FRONT_JOINED),
    ("side behind groove|side left at batten", ("drawers.side",)),
    ("batten groove", ("drawers.running.height", "drawers.running.kind")),
    ("hangs clear|room within lining", ("drawers.clearances.top",)),
    ("bottom|ply fits groove|muntin", BOTTOM),
    ("depth season|under the back", ("drawers.clearances.back",)),
    ("room over runner", ("drawers.clearances.top",)),
    ("clears when wettest", (HEIGHT, WIDTH)),
    ("air beside pipes|plumbing", (f"{NOTCH}width",)),
    ("air before pipes|pipes through", (f"{NOTCH}depth",)),
    ("runner wear", ("drawers.lining",)),
    ("jam", ("drawers.clearances.side", HEIGHT)),
    ("box as tall as slide|file drawer|drawer shape|low opening", (HEIGHT, WIDTH)),
    ("headroom for slides|side space|slide|front covers slides", SLIDE),
    ("gap between fronts|front covers", ("drawers.style.gap", "drawers.style.overlay", "drawers.style.kind")),
    ("at the lathe|pull", ("pulls.item",)),
    ("back as the front", ("drawers.back_joint.kind",)),
    ("number of fingers", ("drawers.front_joint.finger", "drawers.front_joint.kind")),
)
"""For what a drawer or one of its parts is named."""
OF_CASE: Table = (
    ("JC1|JC2|lap fits|wood beyond the lap|wood left at the lap", ("case.lap", "construction.strip")),
    ("JC5|JC6|JC9|JC13|edge tails", ("case.corner_pin", "case.corner")),
    ("JC7", ("case.corner_half_pin", "case.corner")),
    ("JC12", ("case.carcase_slope", "case.corner")),
    ("housing|stop at the front|play for the glue", ("case.housing", "case.divider_end")),
    ("dowel|behind the holes|edges held|ends at the face", ("case.corner",)),
    ("wood behind the mortise|reach of the tenon|slack of the rear", ("frames.tenon", *TENON)),
    ("mortise|tenon|shoulders|wall|two mortises|length of the tenon|joint of the frame", TENON),
    ("front rails clear", ("construction.rail_width",)),
    ("boards of the sheet", ("case.ply.nominal",)),
    ("rail sag", ("case.divider", "construction.rail_width")),
)
"""For what a part of the case is named."""
ANYWHERE: Table = (
    ("back|scribe", ("back.kind",)),
    ("columns close", (WIDTH, "body.width")),
    ("stack closes|graduation|step", ("graduation.rule",)),
    ("clear width", (WIDTH, "body.width")),
    ("knee space", (WIDTH,)),
    ("floor of a space|something to run on", (HEIGHT, WIDTH)),
    ("tip scope", ("use.clothing",)),
    ("tip restraint", ("use.free_standing",)),
    ("tip push", ("body.depth",)),
    ("tip|travel|outstop|hung on the wall", ("drawers.stops.travel",)),
    ("cleat|room to hang", ("cleat.studs", "cleat.height", "cleat")),
    ("wall fixings", ("use.fixing_lb",)),
    ("lift|weight", ("use.lift_lb",)),
    ("racking", ("back.kind",)),
    ("shelf", ("shelving.thickness",)),
    ("top sag", ("top.thickness",)),
    ("top fixing|cross-grain fixing|clips", ("top.fixing",)),
    ("setting up|way in", ("site.door_height",)),
    ("door gap", ("doors.gap",)),
    ("door hinges", ("doors.hinge",)),
    ("wood behind the hinge|leaf of the hinge|hinges let in", ("doors.hinge_leaf", "doors.hinge_gains")),
    ("gain depth", ("doors.hinge_closed", "doors.gap")),
    ("door width", (WIDTH, "doors.gap")),
    ("slots of the end|cheek beside the groove", ("doors.make.held", "doors.thickness")),
    ("door|panel held|panel play|panel in its groove", ("doors.thickness",)),
    ("class|wide boards|no sapwood|matched|match|glued drawer parts", ("grain.fronts",)),
    ("quartersawn|price of another cut", ("woods.case.cut",)),
    ("price missing", ("woods.case.wood",)),
    ("composite-wood", ("drawers.bottom.kind", "back.kind")),
    ("moisture", ("season.shop.moisture",)),
    ("runner slack", ("frames.slack",)),
    ("pull lines", ("pulls.height", "pulls.item")),
    ("dividers at hand|gauges at hand|cutter at hand", PIN),
    ("hours ahead", ("count",)),
    ("dovetail in plywood|joint of the case", ("case.corner",)),
    ("low opening", ("graduation.rule",)),
)
"""For what is said of the whole, or of any part."""
PARTS: Table = (
    ("K", ("back.kind",)),
    ("T", ("top.thickness",)),
    ("B", ("base.kind",)),
    ("Q", ("cleat.height", "cleat")),
    ("L", ("construction.leg", "base.kind")),
    ("D", ("case.divider", "construction.rail")),
    ("G", ("construction.strip", "case.divider")),
    ("C-B|C-RB", ("case.bottom", "construction.apron")),
    ("C", ("case.side", "construction.apron", "construction.kind")),
)
"""What stands for a part of the case, by the beginning of its code behind the unit's mark."""
WHOLE = "body.height"


def finding_field(values: Mapping[str, str]) -> Callable[[Finding], str]:
    """For what stands in a form: which of its fields a finding is about, by the field's id."""
    shape = shape_of(values)
    known = {each.name: each for each in asked_fields(shape)}

    def found(finding: Finding) -> str:
        for name in _names(finding, shape):
            if name == MEASURED and (cell := _measured(finding)):
                return cell
            if name in known and _is_there(known[name], values):
                return known[name].id
        return known[WHOLE].id

    return found


def _measured(finding: Finding) -> str:
    """The id of the field of an opening's size that was measured; empty where that is of a part."""
    opening, side = OPENING.search(finding.about), str(finding.message).partition(" ")[0].lower()
    whole = opening and finding.about.endswith(opening[0])
    return f"measured-{opening[0]}-{side}" if opening and whole and side in SIDES else ""


def _is_there(asked: Asked, values: Mapping[str, str]) -> bool:
    return asked.name.startswith("rows.") or counts(asked, values)


def _names(finding: Finding, shape: Shape) -> Iterator[str]:
    """Fields that a finding may be about, the likeliest first."""
    opening = OPENING.search(finding.about)
    part = finding.about.partition("-")[2]
    own = OF_DRAWERS if opening or not part else OF_CASE
    mark = opening[1] if opening else ""
    for table in (own, ANYWHERE, *((OF_CASE,) if own is OF_DRAWERS else ())):
        for name in _of(table, finding.rule):
            yield _in_row(name, mark, shape) if name.startswith("@") else name
    if mark:
        yield field_of(shape, mark)
    yield from _of(PARTS, part)


def _of(table: Table, beginning: str) -> tuple[str, ...]:
    return next((names for begins, names in table if re.match(begins, beginning)), ())


def _in_row(name: str, mark: str, shape: Shape) -> str:
    """A field of the row, or of the column that is spelled out, in which an opening lies."""
    line = field_of(shape, mark).rpartition(".")[0] if mark else ""
    last = name.removeprefix("@")
    if not line:
        return ""
    if last == "width":
        return f"{line}.{'width' if '.across.' in line and line.split('.')[-2] == 'across' else 'widths'}"
    row = line if line.split(".")[-2] == "rows" else line.rpartition(".across.")[0]
    return f"{row}.{last}"
