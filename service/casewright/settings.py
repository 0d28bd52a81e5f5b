"""What the place where it runs says: one frozen value, read once at the start from CASEWRIGHT_… variables."""

from collections.abc import Mapping
from dataclasses import dataclass
from ipaddress import ip_address
from pathlib import Path
from urllib.parse import urlsplit

from sqlalchemy import make_url
from sqlalchemy.exc import ArgumentError

PREFIX = "CASEWRIGHT_"
KNOWN = ("DATA", "DATABASE_URL", "HOST", "PORT", "ADDRESS", "PROXIES", "SECRET", "LOG")


class BadSetting(ValueError):
    """A setting that cannot be used; the message is a whole sentence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """Where the service runs and keeps things.

    Attributes:
        data: the folder of its database and secret
        database_url: the database
        host: the address it listens on
        port: the port it listens on
        address: how people reach it from outside, such as https://shop.example; empty: as they asked for it
        proxies: addresses of proxies whose word about the caller is taken
        secret: the key under which links are made; empty: a file in the data folder
        log: where its log goes: stderr, or nothing
    """

    data: Path
    database_url: str
    host: str = "127.0.0.1"
    port: int = 8000
    address: str = ""
    proxies: str = ""
    secret: str = ""
    log: str = "stderr"


def read_settings(variables: Mapping[str, str], **given: object) -> Settings:
    """The settings from the environment, and from options that beat it.

    Args:
        variables: the environment
        given: options of the command line by the names of `Settings`; None where not given

    Returns:
        The settings.

    Raises:
        BadSetting: with a sentence that names the setting and a value that would do
    """
    held = {name.lower(): variables.get(PREFIX + name, "") for name in KNOWN}
    held |= {name: str(value) for name, value in given.items() if value is not None}
    data = Path(held["data"] or Path.home() / ".local" / "share" / "casewright").expanduser().absolute()
    return Settings(
        data=data,
        database_url=_database(held["database_url"], data),
        host=held["host"] or "127.0.0.1",
        port=_port(held["port"] or "8000"),
        address=_address(held["address"]),
        proxies=_proxies(held["proxies"]),
        secret=_secret(held["secret"]),
        log=_log(held["log"] or "stderr"),
    )


def _database(text: str, data: Path) -> str:
    if not text:
        return f"sqlite:///{data / 'casewright.db'}"
    try:
        url = make_url(text)
    except ArgumentError:
        raise BadSetting(_said("DATABASE_URL", "postgresql+psycopg://user@host/casewright")) from None
    if url.drivername in {"postgres", "postgresql"}:
        url = url.set(drivername="postgresql+psycopg")
    if url.drivername not in {"sqlite", "postgresql+psycopg"} or not url.database:
        raise BadSetting(_said("DATABASE_URL", "postgresql+psycopg://user@host/casewright"))
    return url.render_as_string(hide_password=False)


def _port(text: str) -> int:
    if not text.isascii() or not text.isdigit() or not 0 <= int(text) <= 65535:
        raise BadSetting(_said("PORT", "8000"))
    return int(text)


def _address(text: str) -> str:
    if not text:
        return ""
    parts = urlsplit(text)
    if parts.scheme not in {"http", "https"} or not parts.netloc or parts.path.strip("/") or parts.query:
        raise BadSetting(_said("ADDRESS", "https://shop.example"))
    return f"{parts.scheme}://{parts.netloc}"


def _proxies(text: str) -> str:
    for each in filter(None, (part.strip() for part in text.split(","))):
        try:
            ip_address(each.partition("/")[0])
        except ValueError:
            raise BadSetting(_said("PROXIES", "127.0.0.1,10.0.0.2")) from None
    return text.replace(" ", "")


def _secret(text: str) -> str:
    if text and len(text) < 32:
        raise BadSetting(f"{PREFIX}SECRET is shorter than 32 characters; `openssl rand -hex 32` makes one.")
    return text


def _log(text: str) -> str:
    if text not in {"stderr", "none"}:
        raise BadSetting(_said("LOG", "stderr or none"))
    return text


def _said(name: str, good: str) -> str:
    return f"{PREFIX}{name} cannot be used; write it such as {good}."
