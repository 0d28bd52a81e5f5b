"""A drawer is known by the code that its opening had first: what was measured goes with it when rows move.

The column that is unique gets the new name and keeps its rows; the code of today stands in one beside it.
SQLite changes the name of a column itself, but not that of a constraint: the words of the schema are changed,
as in 0006. Going down, a drawer whose opening is gone gets its id for a code: another may have that by now.
"""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0009"
down_revision = "0008"

DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")
CONSTRAINT = "uq_drawer_shop_id_carcase_id"


def upgrade() -> None:
    op.alter_column("drawer", "code", new_column_name="origin")
    _name_constraint(f"{CONSTRAINT}_code", f"{CONSTRAINT}_origin")
    op.add_column("drawer", sa.Column("code", sa.String(length=30), nullable=False, server_default=""))
    op.execute("UPDATE drawer SET code = origin")
    op.add_column("unit_revision", sa.Column("origins", DOCUMENT, nullable=False, server_default="{}"))


def downgrade() -> None:
    op.drop_column("unit_revision", "origins")
    op.execute("UPDATE drawer SET origin = id")
    op.execute(sa.text("UPDATE drawer SET origin = code WHERE NOT gone"))
    op.drop_column("drawer", "code")
    _name_constraint(f"{CONSTRAINT}_origin", f"{CONSTRAINT}_code")
    op.alter_column("drawer", "origin", new_column_name="code")


def _name_constraint(before: str, after: str) -> None:
    bind = op.get_bind()
    if bind.dialect.name == "postgresql":
        op.execute(f"ALTER TABLE drawer RENAME CONSTRAINT {before} TO {after}")
        return
    version = bind.exec_driver_sql("PRAGMA schema_version").scalar_one()
    bind.exec_driver_sql("PRAGMA writable_schema = ON")
    bind.exec_driver_sql(
        "UPDATE sqlite_master SET sql = replace(sql, ?, ?) WHERE type = 'table' AND name = 'drawer'",
        (before, after),
    )
    bind.exec_driver_sql(f"PRAGMA schema_version = {version + 1}")
    bind.exec_driver_sql("PRAGMA writable_schema = OFF")
