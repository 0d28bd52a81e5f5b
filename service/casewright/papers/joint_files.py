"""What is kept of one joint beside its settings: drawing, template in full size, layout as DXF."""

from casewright.drawing.joint_views import shape_drawing
from casewright.joinery.joint import JointKind, Solved
from casewright.measure.lengths import LengthUnit
from casewright.papers.dxf import dxf_of
from casewright.papers.full_size import NamedStrip
from casewright.papers.full_size_pdf import loose_template_pdf


def joint_files(kind: JointKind, solved: Solved, unit: LengthUnit) -> dict[str, bytes]:
    """A joint as files.

    Args:
        kind: its family
        solved: the joint, worked out
        unit: in which sizes are written

    Returns:
        The bytes of each file by its name; where nothing is marked, the drawing alone.
    """
    shape = solved.joint.shape
    drawn = shape_drawing(shape, kind.title, unit, kind.name).svg(standalone=True)
    files = {f"{kind.name}.svg": drawn.encode()}
    strips = [NamedStrip(strip=strip, title=kind.title, serves="") for strip in shape.strips]
    if strips:
        files[f"{kind.name}-template.pdf"] = loose_template_pdf(kind.title, strips, unit)
        files[f"{kind.name}.dxf"] = dxf_of(strips)
    return files
