"""A change after approval becomes an order with its price."""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0008"
down_revision = "0007"

DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")


def upgrade() -> None:
    op.create_table(
        "change_order",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("unit_id", sa.String(length=13), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("before", sa.Integer(), nullable=False),
        sa.Column("after", sa.Integer(), nullable=False),
        sa.Column("net_cents", sa.BigInteger(), nullable=False),
        sa.Column("total_cents", sa.BigInteger(), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("agreed_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("agreed_name", sa.String(length=120), nullable=False),
        sa.Column("agreed_way", sa.String(length=200), nullable=False),
        sa.Column("withdrawn_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("content", DOCUMENT, nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_change_order_shop_id_job_id")
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "unit_id"], ["unit.shop_id", "unit.id"], name=op.f("fk_change_order_shop_id_unit_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_change_order")),
        sa.UniqueConstraint("shop_id", "number", name=op.f("uq_change_order_shop_id_number")),
    )
    op.create_index(op.f("ix_change_order_shop_id_job_id"), "change_order", ["shop_id", "job_id"])


def downgrade() -> None:
    op.drop_index(op.f("ix_change_order_shop_id_job_id"), "change_order")
    op.drop_table("change_order")
