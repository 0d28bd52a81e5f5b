"""What is left of the boards of a layout is put away: which of them were cut up, and what came of it."""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0012"
down_revision = "0011"

DEMO_JOB = "EXISTS (SELECT 1 FROM job WHERE job.shop_id = OLD.shop_id AND job.id = OLD.job_id AND job.demo)"
"""What may go: with the demo's jobs everything that hangs on them."""
DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")


def upgrade() -> None:
    op.create_table(
        "cut_board",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("layout_id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("board", sa.String(length=80), nullable=False),
        sa.Column("offcuts", DOCUMENT, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "layout_id"],
            ["cut_layout.shop_id", "cut_layout.id"],
            name=op.f("fk_cut_board_shop_id_layout_id"),
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_cut_board_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_cut_board")),
        sa.UniqueConstraint(
            "shop_id", "layout_id", "board", name=op.f("uq_cut_board_shop_id_layout_id_board")
        ),
    )
    if op.get_bind().dialect.name == "postgresql":
        guard_on_postgresql("cut_board", DEMO_JOB)
    else:
        guard_on_sqlite("cut_board", DEMO_JOB)


def guard_on_sqlite(table: str, allowed: str) -> None:
    op.execute(
        f"CREATE TRIGGER {table}_is_not_changed BEFORE UPDATE ON {table} "
        f"BEGIN SELECT RAISE(ABORT, '{table} is written once and not changed'); END"
    )
    op.execute(
        f"CREATE TRIGGER {table}_is_kept BEFORE DELETE ON {table} WHEN NOT ({allowed}) "
        f"BEGIN SELECT RAISE(ABORT, '{table} is kept for good'); END"
    )


def guard_on_postgresql(table: str, allowed: str) -> None:
    op.execute(
        f"CREATE FUNCTION {table}_lasts() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN "
        f"IF TG_OP = 'DELETE' AND ({allowed}) THEN RETURN OLD; END IF; "
        f"RAISE EXCEPTION '{table} is written once and kept for good'; END $$"
    )
    op.execute(
        f"CREATE TRIGGER {table}_lasts BEFORE UPDATE OR DELETE ON {table} "
        f"FOR EACH ROW EXECUTE FUNCTION {table}_lasts()"
    )


def downgrade() -> None:
    op.drop_table("cut_board")
    if op.get_bind().dialect.name == "postgresql":
        op.execute("DROP FUNCTION cut_board_lasts()")
