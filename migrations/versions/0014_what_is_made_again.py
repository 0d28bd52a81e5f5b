"""After a change that was agreed, parts are made again: drawers and cases know for which change orders."""

import sqlalchemy as sa
from alembic import op

revision = "0014"
down_revision = "0013"


def upgrade() -> None:
    for table in ("carcase", "drawer"):
        op.add_column(table, sa.Column("again", sa.String(length=60), nullable=False, server_default=""))


def downgrade() -> None:
    for table in ("drawer", "carcase"):
        op.drop_column(table, "again")
