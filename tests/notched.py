"""A kitchen bank with a drawer that is notched around pipes."""

from casewright.pieces.asked.presets import presets
from units import changed

KITCHEN = next(each.spec_json for each in presets() if each.key == "kitchen-bank")
NOTCH = {"width": "8", "depth": "9"}


def kitchen(changes=None, notch=NOTCH):
    """The starting kitchen bank with its second row notched, and other fields changed."""
    return changed(KITCHEN, {"rows.1": {"notch": notch}, **(changes or {})})
