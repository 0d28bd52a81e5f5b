"""A unit as text: its openings and drawers, cut list, joints and checks."""

from collections.abc import Iterable, Iterator, Sequence

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.layout import Tail
from casewright.papers.joint_report import placed_report
from casewright.papers.joint_settings import positions_table
from casewright.papers.writing import Writing, section, several, table, wrapped
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.joints import other_joints
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.parts import PartLine
from casewright.pieces.layout.sticks import stack_marks


def unit_heading(unit: Construction, writing: Writing) -> str:
    """What the unit is, in a few lines.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        Name, size, woods and weight.
    """
    spec, face = unit.spec, unit.face
    woods = ", ".join(dict.fromkeys(line.part.wood for line in unit.lines))
    tall = "aprons" if spec.legs else "body"
    made = f", {spec.count} alike" if spec.count > 1 else ""
    body = writing.sizes(spec.body.width, spec.body.depth, face.overall_height)
    return "\n".join(
        (
            f"{spec.name} (unit {spec.code}{made})",
            f"{body} wide, deep and high, {tall} {writing.size(face.body_height)} high; {woods}",
            f"{several(len(unit.drawers), 'drawer')}; {unit.masses.total:.1f} lb empty; worked at "
            f"{unit.climate.now:.1f} % moisture, at home {unit.climate.driest:.1f} to "
            f"{unit.climate.wettest:.1f} %",
            writing.legend,
        )
    )


def openings_section(unit: Construction, writing: Writing) -> str:
    """Openings and the drawers that go into them.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        Two tables.
    """
    size = writing.size
    openings = table(
        ("Opening", "Height", "Width", "Depth", "From the left", "Above underside", "Measured"),
        (
            (
                opening.code,
                size(opening.height),
                size(opening.width),
                size(opening.depth),
                size(opening.left),
                size(opening.bottom),
                ", ".join(opening.measured),
            )
            for opening in (*unit.face.openings, *unit.face.spaces)
        ),
        right=range(1, 6),
    )
    drawers = table(
        ("Drawer", "Height", "Width", "Length", "Gap now", "wettest", "driest", "Side", "Back", "Pulls at"),
        (_drawer_row(drawer, writing) for drawer in unit.drawers),
        right=range(1, 9),
    )
    note = (
        "Heights are what to plane to now. Gaps are above it, at the tighter or looser of front and side.\n"
        "Side is its length, back its height. Pulls are measured from the left end of the front."
    )
    return section("Openings and drawers", openings, drawers, note)


def _drawer_row(drawer: Drawer, writing: Writing) -> tuple[str, ...]:
    sizes, gaps = drawer.sizes, drawer.sizes.gaps
    return (
        drawer.code,
        writing.size(sizes.height),
        writing.size(sizes.width),
        writing.size(sizes.length),
        writing.gap(gaps.now),
        writing.gap(gaps.wettest, is_fine=True),
        writing.gap(gaps.driest, is_fine=True),
        writing.size(sizes.side_length),
        writing.size(sizes.back_height),
        ", ".join(writing.size(line) for line in drawer.boring.lines),
    )


def cut_list_section(unit: Construction, writing: Writing) -> str:
    """The cut list of finished sizes, grouped by wood, and the joints on the ends of the parts.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        A table for all parts and a list of their ends.
    """
    rows = [
        (
            line.line,
            line.part.name + (" (measured)" if line.part.measured else ""),
            line.quantity,
            line.part.wood + ("" if line.part.cut == "flat" else f", {line.part.cut}"),
            writing.sizes(line.part.thickness, line.part.width, line.part.length),
            " × ".join(
                writing.other(each) for each in (line.part.thickness, line.part.width, line.part.length)
            ),
            line.part.grain,
            line.part.face,
        )
        for line in in_order(unit.lines)
    ]
    other = "inches" if writing.unit == "mm" else "mm"
    cut = table(
        ("Line", "Part", "Qty", "Wood", "Thick × wide × long", f"the same in {other}", "Grain", "Face"),
        rows,
        right=(2,),
    )
    faces = (
        "Width is across the grain, length along it. Face: A is shown, B a shown edge, C drawer, D inside.\n"
        f"{several(len(unit.parts), 'part')} in one unit; --why {unit.lines[0].line} shows the codes of a "
        "line and its working."
    )
    return section(
        "Cut list, finished sizes", cut, faces, _ends(unit.lines, writing), _offcuts(unit, writing)
    )


def in_order(lines: Iterable[PartLine]) -> list[PartLine]:
    """Lines of the cut list with each wood together, woods in the order in which they first come.

    Args:
        lines: the lines

    Returns:
        The same lines.
    """
    held = list(lines)
    woods = list(dict.fromkeys(line.part.wood for line in held))
    return sorted(held, key=lambda line: woods.index(line.part.wood))


def _ends(lines: Iterable[PartLine], writing: Writing) -> str:
    """What is cut on the ends of the parts: lines with the same ends together."""
    found: dict[tuple[str, str], list[str]] = {}
    for line in lines:
        one, other = (writing.said(end) for end in line.part.ends)
        found.setdefault((one, other), []).append(line.line)
    rows = [
        (", ".join(marks), ends[0] if ends[0] == ends[1] else f"{ends[0]}; other end: {ends[1]}")
        for ends, marks in found.items()
        if any(ends)
    ]
    return table(("Lines", "Joints on the ends"), rows)


def _offcuts(unit: Construction, writing: Writing) -> str:
    rows = [
        (part.name, part.quantity, writing.said(part.size), writing.said(part.note))
        for part in unit.small_parts
    ]
    return table(("From offcuts", "Qty", "Size", "Where"), rows, right=(1,))


def joints_section(unit: Construction, writing: Writing) -> str:
    """The joints: the drawers' dovetails, settings once and positions row by row; then every other joint.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        Gauges, layouts and positions.
    """
    blocks = [_gauges(unit, writing)]
    fronts = [(each, joint) for each in unit.drawers if (joint := each.joints.half_blind)]
    backs = [(each, through) for each in unit.drawers if (through := each.joints.through)]
    if fronts:
        blocks.append(_layouts("Front, half-blind", fronts, writing))
    if backs:
        blocks.append(_layouts("Back, through", backs, writing))
    if fronts or backs:
        blocks.append("Positions of the tails, up from the bottom edge of the side; do not add them up.")
    for codes, tails in _shared((each.code, joint.layout.tails) for each, joint in fronts):
        blocks.append(positions_table(f"{', '.join(codes)} front", tails, writing))
    for codes, tails in _shared((each.code, joint.side_tails) for each, joint in backs):
        blocks.append(positions_table(f"{', '.join(codes)} back", tails, writing))
    tops = unit.face.divider_tops(unit.spec.frame.divider)
    if tops:
        marks = ", ".join(writing.size(top) for top in tops)
        blocks.append(f"Story stick: upper edges of the dividers from the {unit.spec.stick_foot}: {marks}.")
    for each in stack_marks(unit.face):
        marks = ", ".join(writing.size(top) for top in each.tops)
        foot = unit.spec.stick_foot if each.is_from_bottom else "lower edge of its openings"
        blocks.append(f"Story stick of {each.codes}: upper edges of the dividers from the {foot}: {marks}.")
    blocks.append(_choices(unit, writing))
    others = (placed_report(each, writing) for each in other_joints(unit))
    return "\n\n".join(
        (section("Joints", *blocks), section("Joints of the case, and bottoms of the drawers", *others))
    )


def _on_the_back(back: ThroughJoint, writing: Writing) -> str:
    return ", ".join(f"{end} {writing.size(setting)}".lstrip() for end, setting in back.back_ends)


def _gauges(unit: Construction, writing: Writing) -> str:
    """The settings of the drawers' dovetails, and the groove for their bottoms."""
    joints = unit.drawers[0].joints
    lines = list(_gauges_in_front(joints.half_blind, writing)) if joints.half_blind else []
    if back := joints.through:
        lines.append(
            f"Back:    gauge on the side {writing.size(back.gauge_side)}, on the back "
            f"{_on_the_back(back, writing)}; slope 1:{back.layout.slope:g}; the back's lower edge stands "
            f"{writing.size(back.lower_edge_offset)} above the side's"
        )
    lines.append(_groove(unit, writing))
    if joint := joints.half_blind:
        lines.append(
            f"Lap {writing.size(joint.lap)}; rabbet {writing.size(joint.given.rabbet)} × "
            f"{writing.size(joint.rabbet_width)}; slope 1:{joint.layout.slope:g}, bevel "
            f"{joint.layout.bevel_degrees:.2f}° from square; lap index {joint.lap_index:.1f}"
        )
    return "\n".join(wrapped(line, 9) for line in lines)


def _gauges_in_front(joint: HalfBlindJoint, writing: Writing) -> Iterator[str]:
    yield (
        f"Gauge 1: {writing.size(joint.gauge_1)} (depth of the sockets; baseline on the sides; width of the "
        "rabbet)"
    )
    yield (
        f"Gauge 2: {writing.size(joint.gauge_2)} (left of the side after the rabbet; from the "
        "ends of the front)"
    )
    if joint.wrong_gauge_2 is not None:
        yield f"         not {writing.size(joint.wrong_gauge_2)}: {writing.said(joint.wrong_gauge_text)}"


def _groove(unit: Construction, writing: Writing) -> str:
    """The groove for the bottoms; or that they are screwed under."""
    if unit.spec.drawers.screwed_under:
        thick = writing.size(unit.drawers[0].bottom.thickness)
        return f"Bottom:  {thick} thick, screwed under front, sides and back; the boards are lower by that"
    groove = unit.spec.drawers.groove
    pieces = "front and sides" if unit.drawers[0].sizes.back_foot else "front, sides and back"
    if groove.slips:
        slips = writing.sizes(groove.slips.thickness, groove.slip_height)
        pieces = f"the front; {writing.size(groove.slips.depth)} deep in slips {slips}"
    return (
        f"Groove:  lower edge {writing.size(groove.height)} up from the bottom edge, "
        f"{writing.size(groove.width)} wide, {writing.size(groove.depth)} deep, in {pieces}"
        f"{_raising(unit, writing)}"
    )


def _raising(unit: Construction, writing: Writing) -> str:
    """How a bottom thicker than its groove is raised to fit."""
    over = unit.drawers[0].bottom.thickness - unit.spec.drawers.groove.width
    if over <= 0:
        return ""
    return f"; raise the bottom's edges by {writing.size(over)} from below to fit it"


Dovetail = HalfBlindJoint | ThroughJoint


def _layouts(title: str, held: Sequence[tuple[Drawer, Dovetail]], writing: Writing) -> str:
    """One line for each layout, with the codes of all that share it."""
    groups: dict[tuple[object, ...], list[tuple[Drawer, Dovetail]]] = {}
    for drawer, joint in held:
        groups.setdefault((joint.layout, joint.chisels), []).append((drawer, joint))
    rows = []
    for alike in groups.values():
        codes, joint = ", ".join(drawer.code for drawer, _ in alike), alike[0][1]
        layout, chisels = joint.layout, joint.chisels
        rows.append(
            (
                codes,
                layout.count,
                writing.size(layout.half_pin),
                writing.size(layout.pin),
                writing.size(layout.pitch),
                f"{layout.count} steps, {writing.size(joint.stepping.overshoot)} past",
                writing.fine(joint.stepping.correction, 4),
                writing.size(layout.tail_width),
                writing.size(layout.neck),
                "none" if chisels.sockets is None else writing.size(chisels.sockets),
                "none" if chisels.between_tails is None else writing.size(chisels.between_tails),
            )
        )
    return table(
        (
            title,
            "Tails",
            "Half pin",
            "Pin",
            "Dividers",
            "Walk",
            f"per {writing.size(1 / 64)} out",
            "Tail",
            "Neck",
            "Chisel",
            "Between",
        ),
        rows,
        right=(1, 2, 3, 4, 6, 7, 8, 9, 10),
    )


def _shared(pairs: Iterable[tuple[str, tuple[Tail, ...]]]) -> list[tuple[list[str], tuple[Tail, ...]]]:
    found: dict[tuple[Tail, ...], list[str]] = {}
    for code, tails in pairs:
        found.setdefault(tails, []).append(code)
    return [(codes, tails) for tails, codes in found.items()]


def _choices(unit: Construction, writing: Writing) -> str:
    """What was left out of the file and chosen, and the ranking of the tail counts."""
    lines = [f"Chosen: {choice.name.replace('_', ' ')}: {writing.said(choice.why)}" for choice in unit.chosen]
    ranked: dict[str, list[str]] = {}
    for drawer in unit.drawers:
        choices = drawer.joints.front_choices[:3]
        words = ", ".join(f"{choice.count} ({choice.score:.1f})" for choice in choices)
        ranked.setdefault(words, []).append(drawer.code)
    lines += [
        f"Tail counts by looks, best first: {words} for {', '.join(codes)}"
        for words, codes in ranked.items()
        if words
    ]
    return "\n".join(lines)
