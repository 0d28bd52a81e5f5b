"""Parts of a job are laid out on the stock, and their cuts are ticked off at the bench."""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0011"
down_revision = "0010"

DEMO_JOB = "EXISTS (SELECT 1 FROM job WHERE job.shop_id = OLD.shop_id AND job.id = OLD.job_id AND job.demo)"
"""What may go: with the demo's jobs everything that hangs on them."""
DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")
STATES = sa.Enum(
    "waiting",
    "working",
    "done",
    "refused",
    name="layoutstate",
    native_enum=False,
    create_constraint=True,
    length=20,
)


def upgrade() -> None:
    op.create_table(
        "cut_layout",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("state", STATES, nullable=False),
        sa.Column("seconds", sa.Double(), nullable=False),
        sa.Column("seed", sa.Integer(), nullable=False),
        sa.Column("stop_asked", sa.Boolean(), nullable=False),
        sa.Column("tries", sa.Integer(), nullable=False),
        sa.Column("progress", DOCUMENT, nullable=False),
        sa.Column("beat_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("message", sa.String(length=2000), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("ended_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("demo", sa.Boolean(), nullable=False),
        sa.Column("asked", DOCUMENT, nullable=False),
        sa.Column("answer", DOCUMENT, nullable=True),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_cut_layout_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_cut_layout")),
        sa.UniqueConstraint("shop_id", "job_id", "number", name=op.f("uq_cut_layout_shop_id_job_id_number")),
    )
    op.create_index(op.f("ix_cut_layout_state_created_at"), "cut_layout", ["state", "created_at"])
    op.create_table(
        "cut_tick",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("layout_id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("board", sa.String(length=80), nullable=False),
        sa.Column("step", sa.Integer(), nullable=False),
        sa.Column("is_done", sa.Boolean(), nullable=False),
        sa.Column("tap", sa.String(length=64), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "layout_id"],
            ["cut_layout.shop_id", "cut_layout.id"],
            name=op.f("fk_cut_tick_shop_id_layout_id"),
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_cut_tick_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_cut_tick")),
        sa.UniqueConstraint("shop_id", "tap", name=op.f("uq_cut_tick_shop_id_tap")),
    )
    op.create_index(op.f("ix_cut_tick_shop_id_layout_id_at"), "cut_tick", ["shop_id", "layout_id", "at"])
    if op.get_bind().dialect.name == "postgresql":
        guard_on_postgresql("cut_tick", DEMO_JOB)
    else:
        guard_on_sqlite("cut_tick", DEMO_JOB)


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
    op.drop_table("cut_tick")
    op.drop_table("cut_layout")
    if op.get_bind().dialect.name == "postgresql":
        op.execute("DROP FUNCTION cut_tick_lasts()")
