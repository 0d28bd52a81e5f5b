"""A shop keeps starting units of its own: what it builds again and again."""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0007"
down_revision = "0006"

DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")


def upgrade() -> None:
    op.create_table(
        "own_start",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("name", sa.String(length=120), nullable=False),
        sa.Column("words", sa.String(length=300), nullable=False),
        sa.Column("spec", DOCUMENT, nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_own_start_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_own_start")),
    )


def downgrade() -> None:
    op.drop_table("own_start")
