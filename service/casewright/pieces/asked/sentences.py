"""What is wrong in a unit file, in sentences: the words in it that choose between models."""

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from casewright.measure import sentences
from casewright.measure.lengths import LengthUnit
from casewright.measure.sentences import Choices, Problem
from casewright.pieces.asked import case_spec, crate_spec, drawer_spec, graduation, running_spec, shell_spec
from casewright.pieces.asked.drawer_fronts import STYLES
from casewright.pieces.asked.drawer_joints import JOINTS

__all__ = ("CHOICES", "TAGGED", "Problem", "problem")

TAGGED: dict[str, type[BaseModel]] = {
    "equal": graduation.Equal,
    "step": graduation.Step,
    "ratio": graduation.Ratio,
    "roots": graduation.Roots,
    "contents": graduation.Contents,
    "solid": drawer_spec.SolidBottom,
    "ply": drawer_spec.PlyBottom,
    "carcase": case_spec.Carcase,
    "legs": case_spec.LegsAndAprons,
    "crate": crate_spec.Crate,
    **{kind: model for model in (*JOINTS, *STYLES) for kind in model.model_fields["kind"].examples or ()},
    "plinth": shell_spec.Plinth,
    "brackets": shell_spec.BracketFeet,
    "turned": shell_spec.TurnedFeet,
    "toe": shell_spec.ToeBase,
    "runners": running_spec.OnRunners,
    "side-hung": running_spec.SideHung,
    "centre guide": running_spec.CentreGuide,
    "full-length runners": running_spec.FullRunners,
    "slides": running_spec.OnSlides,
}
"""The models that a word in the file chooses between, by that word."""

CHOICES = Choices(
    models=TAGGED,
    named={"rule": '"rule": "step"', "kind": '"kind": "solid"'},
    named_at={"construction": '"kind": "legs"'},
    steps=frozenset({"Timber"}),
)


def problem(model: type[BaseModel], detail: ErrorDetails, unit: LengthUnit = LengthUnit.INCH) -> Problem:
    """One error of the validation of a unit file, as a sentence about the field.

    Args:
        model: the model that the data did not fit
        detail: what the validation found
        unit: the unit of the file

    Returns:
        The field and the sentence.

    Source: the schema of the model.
    """
    return sentences.problem(model, detail, unit, CHOICES)
