"""The doctor's look at the database itself: whole, in the present form, set to lose nothing."""

from collections.abc import Iterator, Mapping
from datetime import datetime

from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, and_, func, or_, select, text

from casewright.folders import called
from casewright.records.base import Base, Lasting
from casewright.records.tables import METADATA
from casewright.upkeep.looks import Look, fine, look, wrong

RESTORE = f"Stop the service and restore the last good backup: `{called('restore FILE --force')}`."
TRIGGERS = {
    "sqlite": "SELECT DISTINCT tbl_name FROM sqlite_master WHERE type = 'trigger'",
    "postgresql": (
        "SELECT DISTINCT relname FROM pg_trigger JOIN pg_class ON pg_class.oid = tgrelid "
        "WHERE NOT tgisinternal AND tgenabled <> 'D' AND relnamespace = current_schema()::regnamespace"
    ),
}
SAFE: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "sqlite": {"journal_mode": ("wal",)},
    "postgresql": {
        "synchronous_commit": ("on", "local", "remote_write", "remote_apply"),
        "fsync": ("on",),
        "full_page_writes": ("on",),
    },
}
"""The settings under which what was confirmed outlives a power cut, as far as the database itself keeps them.

SQLite's others, synchronous and foreign_keys, belong to each connection: the service sets them on each of its
own, and whoever asks is told of the asker's.
"""
MEND = {
    "sqlite": "Stop the service and start it again: it sets it itself.",
    "postgresql": "Set them to on in postgresql.conf; a power cut could take what was saved.",
}


def look_at_settings(connection: Connection) -> Iterator[Look]:
    """What is confirmed stays."""
    engine = connection.dialect.name
    ask = "PRAGMA {}" if engine == "sqlite" else "SHOW {}"
    held = {name: str(connection.execute(text(ask.format(name))).scalar()) for name in SAFE[engine]}
    unsafe = {name: value for name, value in held.items() if value not in SAFE[engine][name]}
    said = ", ".join(f"{name} {value}" for name, value in held.items())
    if unsafe:
        listed = ", ".join(f"{name} is {value}" for name, value in unsafe.items())
        yield wrong("durability", f"{listed}.", MEND[engine])
    else:
        yield fine("durability", f"{engine}: {said}.")


def look_at_pages(connection: Connection) -> Iterator[Look]:
    """SQLite's own check of every page and index."""
    if connection.dialect.name != "sqlite":
        return
    said = [row[0] for row in connection.execute(text("PRAGMA integrity_check(5)"))]
    if said == ["ok"]:
        yield fine("database file", "Every page and index is whole.")
    else:
        yield wrong("database file", f"It is damaged: {said[0]}.", RESTORE)


def look_at_form(connection: Connection) -> Iterator[Look]:
    """The tables are as this program knows them, and those that are written once are guarded."""
    differences = compare_metadata(MigrationContext.configure(connection), METADATA)
    if differences:
        yield wrong("tables", f"They differ from this version's: {differences[0]!s:.120}.", RESTORE)
    guarded = set(connection.execute(text(TRIGGERS[connection.dialect.name])).scalars())
    lasting = {
        each.local_table.description for each in Base.registry.mappers if issubclass(each.class_, Lasting)
    }
    if bare := sorted(lasting - guarded):
        yield wrong("tables", f"{', '.join(bare)} could be changed: the guard is gone.", RESTORE)
    elif not differences:
        yield fine("tables", "They are as this version knows them; what is written once is guarded.")


def look_at_references(connection: Connection) -> Iterator[Look]:
    """Every reference leads somewhere."""
    broken = {}
    for own in METADATA.sorted_tables:
        for key in own.foreign_key_constraints:
            there = key.referred_table.alias()
            pairs = [(part.parent, there.c[part.column.name]) for part in key.elements]
            lost = (
                select(func.count())
                .select_from(own.outerjoin(there, and_(*(here == far for here, far in pairs))))
                .where(
                    and_(*(here.is_not(None) for here, _ in pairs)), or_(*(far.is_(None) for _, far in pairs))
                )
            )
            if count := connection.execute(lost).scalar_one():
                broken[f"{own.name} to {key.referred_table.name}"] = count
    if broken:
        listed = ", ".join(f"{count} of {name}" for name, count in broken.items())
        yield wrong("references", f"Some lead nowhere: {listed}.", RESTORE)
    else:
        yield fine("references", "Every one leads somewhere.")


def look_at_server_clock(connection: Connection, now: datetime) -> Iterator[Look]:
    """PostgreSQL's clock and this computer's agree."""
    if connection.dialect.name != "postgresql":
        return
    theirs: datetime = connection.execute(text("SELECT clock_timestamp()")).scalar_one()
    apart = abs((theirs - now).total_seconds())
    if apart > 60:
        yield look(
            "server's clock", f"It is {apart:.0f} s off this computer's.", "Set both by a time server."
        )
