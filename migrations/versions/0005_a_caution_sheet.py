"""A job has a caution sheet among its papers: what the stability screen found, for the customer to keep.

The list of kinds is a condition of the table. SQLite changes none in place, so the table is written anew with
its rows, its indexes and the triggers that guard it, each as it was.
"""

from alembic import op

revision = "0005"
down_revision = "0004"

BEFORE = "'lumber order', 'cut list', 'joint cards'"
AFTER = f"{BEFORE}, 'caution sheet'"
SHEETS = "DELETE FROM paper WHERE kind = 'caution sheet'"


def upgrade() -> None:
    if op.get_bind().dialect.name == "postgresql":
        allow_on_postgresql(AFTER)
    else:
        allow_on_sqlite(BEFORE, AFTER, "INSERT INTO paper_anew SELECT * FROM paper")


def downgrade() -> None:
    if op.get_bind().dialect.name == "postgresql":
        op.execute("ALTER TABLE paper DISABLE TRIGGER paper_lasts")
        op.execute(SHEETS)
        op.execute("ALTER TABLE paper ENABLE TRIGGER paper_lasts")
        allow_on_postgresql(BEFORE)
    else:
        allow_on_sqlite(
            AFTER, BEFORE, "INSERT INTO paper_anew SELECT * FROM paper WHERE kind <> 'caution sheet'"
        )


def allow_on_postgresql(kinds: str) -> None:
    op.execute("ALTER TABLE paper DROP CONSTRAINT ck_paper_paperkind")
    op.execute(f"ALTER TABLE paper ADD CONSTRAINT ck_paper_paperkind CHECK (kind IN ({kinds}))")


def allow_on_sqlite(before: str, after: str, filling: str) -> None:
    """The table with another list of kinds; `filling` puts the rows that stay into it."""
    books = op.get_bind()
    found = books.exec_driver_sql(
        "SELECT type, sql FROM sqlite_master WHERE tbl_name = 'paper' AND sql IS NOT NULL"
    ).all()
    made = next(sql for kind, sql in found if kind == "table")
    _, _, columns = made.partition("(")
    if before not in columns:
        raise ValueError(f"the table of papers has no such condition: {made}")
    op.execute("CREATE TABLE paper_anew (" + columns.replace(before, after))
    op.execute(filling)
    op.execute("DROP TABLE paper")
    op.execute("ALTER TABLE paper_anew RENAME TO paper")
    for kind, sql in found:
        if kind != "table":
            op.execute(sql)
