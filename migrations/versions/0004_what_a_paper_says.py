"""A paper keeps hashes of what it says of each part, so that every page can tell which of its cards hold.

Papers from before have none: they stay as they are, and it is worked out of their content.
"""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0004"
down_revision = "0003"

DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")


def upgrade() -> None:
    op.add_column("paper", sa.Column("says", DOCUMENT, nullable=True))


def downgrade() -> None:
    op.drop_column("paper", "says")
