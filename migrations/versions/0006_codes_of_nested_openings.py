"""The code of a drawer has room for an opening four columns deep, such as R40-12-40-12-40-12-40-12.

SQLite heeds no length of a text, so there the words of the schema are changed and nothing else: its manual
has this way for changes that leave every row as it is (Making Other Kinds Of Table Schema Changes). To make
the table anew would mean to drop one that others refer to.
"""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"

BEFORE, AFTER = 12, 30


def upgrade() -> None:
    _set_length(BEFORE, AFTER)


def downgrade() -> None:
    _set_length(AFTER, BEFORE)


def _set_length(before: int, after: int) -> None:
    bind = op.get_bind()
    if bind.dialect.name == "postgresql":
        op.alter_column(
            "drawer",
            "code",
            type_=sa.String(after),
            existing_type=sa.String(before),
            existing_nullable=False,
        )
        return
    version = bind.exec_driver_sql("PRAGMA schema_version").scalar_one()
    bind.exec_driver_sql("PRAGMA writable_schema = ON")
    bind.exec_driver_sql(
        "UPDATE sqlite_master SET sql = replace(sql, ?, ?) WHERE type = 'table' AND name = 'drawer'",
        (f"code VARCHAR({before})", f"code VARCHAR({after})"),
    )
    bind.exec_driver_sql(f"PRAGMA schema_version = {version + 1}")
    bind.exec_driver_sql("PRAGMA writable_schema = OFF")
