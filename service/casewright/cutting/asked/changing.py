"""A cut file with a wish changed, as a way out proposes it: in the words of its JSON."""

from collections.abc import Mapping
from typing import Any


def changed(data: Mapping[str, Any], change: Mapping[str, Any]) -> dict[str, Any]:
    """A cut file as a way out would have it.

    Args:
        data: the cut file, as its JSON holds it
        change: of the way out: `parts` with what is `set` of them, spare `stock` that is cut up after all,
            `more` boards, sheets or lengths

    Returns:
        Another one, with nothing else changed.

    Source: the schema of the cut file.
    """
    found = dict(data)
    parts, stock = set(change.get("parts", ())), set(change.get("stock", ()))
    if parts:
        found["parts"] = [
            {**part, **change["set"]} if part["code"] in parts else part for part in data["parts"]
        ]
    for kind in ("boards", "sheets", "lengths"):
        held = [
            {name: value for name, value in each.items() if name != "spare" or each["code"] not in stock}
            for each in data.get(kind, ())
        ]
        held += change.get("more", {}).get(kind, ())
        if held:
            found[kind] = held
    return found
