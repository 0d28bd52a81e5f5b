"""What is kept of one joint beside its settings: card, drawing, template in full size, layout as DXF."""

from casewright.drawing.joint_views import shape_drawing
from casewright.joinery.joint import JointKind, Solved
from casewright.measure.lengths import LengthUnit
from casewright.papers.dxf import dxf_of
from casewright.papers.full_size import NamedStrip
from casewright.papers.full_size_pdf import loose_template_pdf
from casewright.papers.pdf import Paper
from casewright.papers.settings_card import settings_card
from casewright.papers.settings_card_pdf import settings_cards_pdf


def joint_files(
    kind: JointKind, solved: Solved, unit: LengthUnit, paper: Paper | None = None
) -> dict[str, bytes]:
    """A joint as files.

    Args:
        kind: its family
        solved: the joint, worked out
        unit: in which sizes are written
        paper: the sheet; left out, A4 beside millimetres and Letter beside inches

    Returns:
        The bytes of each file by its name; where nothing is marked, card and drawing alone.
    """
    sheet = paper or (Paper.A4 if unit is LengthUnit.MILLIMETRE else Paper.LETTER)
    shape = solved.joint.shape
    drawn = shape_drawing(shape, kind.title, unit, kind.name).svg(standalone=True)
    card = settings_card(kind.name, solved.joint, kind.title, unit, also=solved.kept)
    files = {
        f"{kind.name}.svg": drawn.encode(),
        f"{kind.name}-card.pdf": settings_cards_pdf([card], unit, sheet),
    }
    strips = [NamedStrip(strip=strip, title=kind.title, serves="") for strip in shape.strips]
    if strips:
        files[f"{kind.name}-template.pdf"] = loose_template_pdf(kind.title, strips, unit, sheet)
        files[f"{kind.name}.dxf"] = dxf_of(strips)
    return files
