"""A link to come in keeps the id of who made it, so that it ends with their right to make it.

Links from before have none; they last a week at most.
"""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    op.add_column("key_link", sa.Column("made_by_id", sa.String(length=13), nullable=True))


def downgrade() -> None:
    op.drop_column("key_link", "made_by_id")
