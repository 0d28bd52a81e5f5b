"""Static files, addressed by their content so that browsers may keep them for a year."""

import gzip
import mimetypes
from dataclasses import dataclass
from functools import cache
from hashlib import sha256
from pathlib import Path

from casewright.folders import static

SERVED = {".css", ".js", ".svg", ".png", ".ico", ".webmanifest"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Asset:
    """One static file, ready to be sent."""

    address: str
    kind: str
    body: bytes
    packed: bytes


@cache
def assets() -> dict[str, Asset]:
    """Every static file that pages use, by its name."""
    root = static()
    names = sorted(path for path in root.rglob("*") if path.suffix in SERVED and "fonts" not in path.parts)
    return {path.relative_to(root).as_posix(): _asset(root, path) for path in names}


def _asset(root: Path, path: Path) -> Asset:
    body = path.read_bytes()
    name = path.relative_to(root)
    stamped = name.with_name(f"{name.stem}.{sha256(body).hexdigest()[:10]}{name.suffix}").as_posix()
    kind = mimetypes.guess_type(name.name)[0] or "application/octet-stream"
    text = kind.startswith("text/") or kind in {"image/svg+xml", "application/manifest+json"}
    return Asset(
        address=f"/static/{stamped}",
        kind=f"{kind}; charset=utf-8" if text else kind,
        body=body,
        packed=gzip.compress(body, 9, mtime=0),
    )


@cache
def by_address() -> dict[str, Asset]:
    """Every static file by its address."""
    return {each.address: each for each in assets().values()}


def asset(name: str) -> str:
    """The address of a static file."""
    return assets()[name].address
