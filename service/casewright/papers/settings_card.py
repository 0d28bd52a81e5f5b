"""The card of any joint as it is kept: what is set in large type, the rest below, places, checks, drawing."""

from collections.abc import Iterable, Sequence

from casewright.drawing.divider_walk import walk_at_once_drawing
from casewright.drawing.joint_views import shape_drawing
from casewright.joinery.joint import Joint, Measure, Setting
from casewright.joinery.layout import TailLayout
from casewright.measure.findings import Finding
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import Words, in_unit
from casewright.papers.bench import benches
from casewright.papers.cautions import joint_cautions
from casewright.papers.positions import Positions, positions_of
from casewright.papers.warned import Warned, warned_of
from casewright.pieces.asked.fields import Spec


class Served(Spec):
    """A board of the joint, and the codes of the parts that are such boards."""

    board: str
    parts: tuple[str, ...]


class CardSetting(Spec):
    """One setting; `wrong` is the number that is easily set instead, and is printed struck out."""

    label: str
    value: float
    """A length in inches, or whatever else `measure` says."""
    measure: Measure = Measure.LENGTH
    wrong: float | None = None
    note: str = ""
    big: bool = False
    """Whether it is set on a tool and read at arm's length."""

    @property
    def setting(self) -> Setting:
        """The setting as a joint has it, to be written by the same rules."""
        return Setting(
            name="",
            label=self.label,
            value=self.value,
            measure=self.measure,
            wrong=self.wrong,
            note=self.note,
        )


class SettingsCard(Spec):
    """The card of one joint, of any kind. Lengths in inches, words in the shop's unit, drawings as SVG."""

    kind: str
    title: str
    unit_code: str = ""
    serves: tuple[Served, ...] = ()
    settings: tuple[CardSetting, ...]
    wrong_text: str = ""
    positions: tuple[Positions, ...] = ()
    advice: tuple[str, ...] = ()
    warned: tuple[Warned, ...] = ()
    drawing: str = ""
    walk: str = ""
    """The walk of the dividers; empty where there is none."""
    cautions: tuple[str, ...] = ()


def settings_card(
    kind: str,
    joint: Joint,
    title: str,
    unit: LengthUnit,
    serves: Iterable[tuple[str, Sequence[str]]] = (),
    *,
    also: Iterable[Finding] = (),
    unit_code: str = "",
    name: str = "",
    advice: Iterable[Words] = (),
    with_cautions: bool = True,
    drawn: bool = True,
) -> SettingsCard:
    """The card of a joint of any kind.

    Args:
        kind: the joint's name, such as `housing`
        joint: the joint, worked out
        title: what it is, as the head of the card has it
        unit: in which its words and drawings are kept
        serves: each board of the joint with the codes of the parts that are such boards; none for a joint
            that belongs to no job, whose card has lines to write them on
        also: checks beside the joint's own, such as whether the shop has gauges enough to keep its settings
        unit_code: the unit of the job that it belongs to; empty for none
        name: a short name for the drawing, one of its own in the paper; the kind where left out
        advice: what is said beside what the joint itself says
        drawn: whether with its drawings; without them where only the figures are compared
        with_cautions: print them on the card itself; not where the paper has them once for all its cards

    Returns:
        The card, ready to be printed or kept.
    """
    large = benches()[kind].large
    layout = getattr(joint, "layout", None)
    called = name or kind
    return SettingsCard(
        kind=kind,
        title=title,
        unit_code=unit_code,
        serves=tuple(Served(board=board, parts=tuple(parts)) for board, parts in serves),
        settings=tuple(_setting(each, unit, large) for each in joint.settings),
        wrong_text=in_unit(getattr(joint, "wrong_gauge_text", ""), unit),
        positions=positions_of(joint),
        advice=tuple(in_unit(line, unit) for line in (*advice, *getattr(joint, "advice", ()))),
        warned=warned_of((*joint.findings, *also), unit),
        drawing=shape_drawing(joint.shape, title, unit, called).svg() if drawn else "",
        walk=(card_walk(layout, called, unit) if drawn and isinstance(layout, TailLayout) else ""),
        cautions=joint_cautions([kind]) if with_cautions else (),
    )


def card_walk(layout: TailLayout, name: str, unit: LengthUnit) -> str:
    """The walk of the dividers as it stands on a card.

    Args:
        layout: the tails
        name: a short name of the drawing of their joint, one of its own in the paper
        unit: in which sizes are written

    Returns:
        The drawing as SVG.
    """
    return walk_at_once_drawing(layout, "The walk with the dividers", unit, f"{name}-walk").svg()


def _setting(setting: Setting, unit: LengthUnit, large: Sequence[str]) -> CardSetting:
    return CardSetting(
        label=in_unit(setting.label, unit),
        value=float(setting.value),
        measure=setting.measure,
        wrong=None if setting.wrong is None else float(setting.wrong),
        note=in_unit(setting.note, unit),
        big=setting.name in large or setting.wrong is not None,
    )
