"""What each kind of joint asks for at the bench: which tools, and which of its settings are printed large."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files


class Tool(StrEnum):
    """What cuts a joint, as far as one has to be careful with it; a knife or a gauge is not among them."""

    CHISEL = "chisel"
    HAND_SAW = "hand saw"
    PLANE = "plane"
    ROUTER = "router"
    GROOVING_BLADE = "grooving blade"
    DRILL = "drill"
    MORTISER = "mortiser"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What a kind of joint asks for.

    Attributes:
        tools: what cuts it, by hand or by machine
        large: names of the settings that a tool is set to, read at arm's length; the others stand below them
    """

    tools: tuple[Tool, ...]
    large: tuple[str, ...]


@cache
def benches() -> dict[str, Bench]:
    """What every kind of joint asks for, by its name.

    Returns:
        The kinds that have papers.

    Source: common practice.
    """
    text = files("casewright.papers").joinpath("data/bench.json").read_text(encoding="utf-8")
    return {
        kind: Bench(tools=tuple(map(Tool, row["tools"])), large=tuple(row["large"]))
        for kind, row in json.loads(text)["kinds"].items()
    }


def tools_named(kind: str) -> str:
    """The tools that a joint asks for, in words.

    Args:
        kind: the joint's name; empty for one that is not known

    Returns:
        Such as `hand saw, chisel, plane`; nothing for a joint that is not known.

    Source: common practice.
    """
    return ", ".join(benches()[kind].tools) if kind in benches() else ""


def tools_for(kinds: Iterable[str]) -> frozenset[Tool]:
    """The tools that joints ask for.

    Args:
        kinds: names of kinds of joints, such as `half-blind`

    Returns:
        Every tool that one of them is cut with.

    Source: common practice.
    """
    return frozenset(tool for kind in kinds for tool in benches()[kind].tools)
