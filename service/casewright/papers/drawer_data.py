"""One drawer for machines: plain values, each key with its unit in its name."""

from typing import Any

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.joint import Joint
from casewright.joinery.layout import Tail
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer


def drawer_data(unit: Construction, drawer: Drawer) -> dict[str, Any]:
    """One drawer: its sizes, gaps, bottom and joints.

    Args:
        unit: the unit
        drawer: the drawer

    Returns:
        Lengths in inches, weights in pounds.
    """
    sizes, bottom, gaps = drawer.sizes, drawer.bottom, drawer.sizes.gaps
    weight = unit.masses.drawers[drawer.code]
    return {
        "code": drawer.code,
        "opening": sizes.code,
        "height_in": float(sizes.height),
        "width_in": float(sizes.width),
        "length_in": float(sizes.length),
        "front_thickness_in": float(sizes.face.thickness),
        "face_in": {
            "width": float(sizes.face.width),
            "height": float(sizes.face.height),
            "from_left_of_case": float(sizes.face.left),
            "above_case_bottom": float(sizes.face.bottom),
            "before_case": float(sizes.stand),
        },
        "box_length_in": float(sizes.box_length),
        "side_length_in": float(sizes.side_length),
        "side_height_in": float(sizes.side_height),
        "front_length_in": float(sizes.front_length),
        "back_length_in": float(sizes.back_length),
        "back_height_in": float(sizes.back_height),
        "gap_now_in": float(gaps.now),
        "gap_wettest_front_in": float(gaps.wettest_front),
        "gap_wettest_side_in": float(gaps.wettest_side),
        "gap_driest_front_in": float(gaps.driest_front),
        "gap_driest_side_in": float(gaps.driest_side),
        "inside_in": {
            "width": float(sizes.inside.width),
            "depth": float(sizes.inside.depth),
            "height": float(sizes.inside.height),
        },
        "bottom": {
            "material": bottom.material,
            "pieces": bottom.pieces,
            "across_in": float(bottom.across),
            "deep_in": float(bottom.deep),
            "muntin_length_in": None if bottom.muntin is None else float(bottom.muntin),
            "sag_in": None if bottom.sag is None else float(bottom.sag),
            "sag_allowed_in": float(bottom.sag_allowed),
        },
        "notch": notch_data(drawer),
        "pulls_from_left_of_case_in": [float(pull) for pull in drawer.pulls],
        "travel_in": float(drawer.travel),
        "weight_lb": float(weight.weight),
        "centre_behind_front_in": float(weight.y),
        "front_joint": _end(drawer.joints.front_family, drawer.joints.front),
        "back_joint": _end(drawer.joints.back_family, drawer.joints.back),
    }


def notch_data(drawer: Drawer) -> dict[str, Any] | None:
    """The recess around pipes at the back of a drawer, and its boards.

    Args:
        drawer: the drawer

    Returns:
        Lengths in inches; None without one.
    """
    notch, cut, joints = drawer.sizes.notch, drawer.bottom.cut_out, drawer.joints.notch
    if notch is None or cut is None or joints is None:
        return None
    return {
        "width_in": float(notch.width),
        "depth_in": float(notch.depth),
        "from_left_of_drawer_in": float(notch.left),
        "left_arm_clear_in": float(notch.left_arm),
        "right_arm_clear_in": float(notch.right_arm),
        "clear_before_in": float(notch.room),
        "inner_side_length_in": float(notch.side_length),
        "inner_back_length_in": float(notch.head_length),
        "left_back_length_in": float(notch.left_back),
        "right_back_length_in": float(notch.right_back),
        "bottom_cut_out_in": {
            "from_left_end": float(cut.along),
            "width": float(cut.length),
            "depth_from_rear": float(cut.depth),
        },
        "rear_joint": _end(joints.family, joints.rear),
        "head_joint": _end(joints.family, joints.head),
    }


def _end(family: str, joint: Joint) -> dict[str, Any]:
    """The joint at one end of a drawer's sides: a dovetail by its layout, another by its settings."""
    if isinstance(joint, HalfBlindJoint):
        return {
            "kind": family,
            "gauge_1_in": float(joint.gauge_1),
            "gauge_2_in": float(joint.gauge_2),
            "wrong_gauge_2_in": None if joint.wrong_gauge_2 is None else float(joint.wrong_gauge_2),
            "lap_in": float(joint.lap),
            "lap_index": float(joint.lap_index),
            **_layout(joint.layout.tails, joint),
        }
    if isinstance(joint, ThroughJoint):
        return {
            "kind": family,
            "gauge_side_in": float(joint.gauge_side),
            "gauge_back_in": float(joint.gauge_back),
            "gauge_back_ends_in": {end: float(setting) for end, setting in joint.given.ends},
            "lower_edge_offset_in": float(joint.lower_edge_offset),
            **_layout(joint.layout.tails, joint),
        }
    return {
        "kind": family,
        "settings": [
            {"name": each.name, "label": str(each.label), "value": float(each.value), "measure": each.measure}
            for each in joint.settings
        ],
    }


def _layout(tails: tuple[Tail, ...], joint: Any) -> dict[str, Any]:
    layout = joint.layout
    return {
        "tails": layout.count,
        "half_pin_in": float(layout.half_pin),
        "pin_in": float(layout.pin),
        "dividers_in": float(layout.pitch),
        "overshoot_in": float(joint.stepping.overshoot),
        "correction_per_64th_in": float(joint.stepping.correction),
        "tail_width_in": float(layout.tail_width),
        "neck_in": float(layout.neck),
        "slope": float(layout.slope),
        "bevel_degrees": float(layout.bevel_degrees),
        "socket_chisel_in": None if joint.chisels.sockets is None else float(joint.chisels.sockets),
        "tail_chisel_in": None if joint.chisels.between_tails is None else float(joint.chisels.between_tails),
        "positions_in": [
            [float(edge) for edge in (tail.lower_end, tail.upper_end, tail.lower_base, tail.upper_base)]
            for tail in tails
        ],
    }
