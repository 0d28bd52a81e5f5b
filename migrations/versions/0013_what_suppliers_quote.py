"""What suppliers quote for what they sell, written once like all that happened; and the demo's own suppliers.

A quote may be deleted only with a supplier of the demo.
"""

import sqlalchemy as sa
from alembic import op

revision = "0013"
down_revision = "0012"

DEMO_SUPPLIER = (
    "EXISTS (SELECT 1 FROM supplier WHERE supplier.shop_id = OLD.shop_id "
    "AND supplier.id = OLD.supplier_id AND supplier.demo)"
)


def upgrade() -> None:
    op.add_column("supplier", sa.Column("demo", sa.Boolean(), nullable=False, server_default=sa.false()))
    op.create_table(
        "supplier_price",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("supplier_id", sa.String(length=13), nullable=False),
        sa.Column("kind", sa.String(length=20), nullable=False),
        sa.Column("item", sa.String(length=120), nullable=False),
        sa.Column("cut", sa.String(length=20), nullable=False),
        sa.Column("size", sa.String(length=40), nullable=False),
        sa.Column("grade", sa.String(length=30), nullable=False),
        sa.Column("price_cents", sa.BigInteger(), nullable=True),
        sa.Column("quoted_on", sa.Date(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "supplier_id"],
            ["supplier.shop_id", "supplier.id"],
            name=op.f("fk_supplier_price_shop_id_supplier_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_supplier_price")),
    )
    op.create_index(
        op.f("ix_supplier_price_shop_id_supplier_id"),
        "supplier_price",
        ["shop_id", "supplier_id"],
        unique=False,
    )
    if op.get_bind().dialect.name == "postgresql":
        guard_on_postgresql()
    else:
        guard_on_sqlite()


def guard_on_sqlite() -> None:
    op.execute(
        "CREATE TRIGGER supplier_price_is_not_changed BEFORE UPDATE ON supplier_price "
        "BEGIN SELECT RAISE(ABORT, 'supplier_price is written once and not changed'); END"
    )
    op.execute(
        f"CREATE TRIGGER supplier_price_is_kept BEFORE DELETE ON supplier_price WHEN NOT ({DEMO_SUPPLIER}) "
        "BEGIN SELECT RAISE(ABORT, 'supplier_price is kept for good'); END"
    )


def guard_on_postgresql() -> None:
    op.execute(
        "CREATE FUNCTION supplier_price_lasts() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN "
        f"IF TG_OP = 'DELETE' AND ({DEMO_SUPPLIER}) THEN RETURN OLD; END IF; "
        "RAISE EXCEPTION 'supplier_price is written once and kept for good'; END $$"
    )
    op.execute(
        "CREATE TRIGGER supplier_price_lasts BEFORE UPDATE OR DELETE ON supplier_price "
        "FOR EACH ROW EXECUTE FUNCTION supplier_price_lasts()"
    )


def downgrade() -> None:
    op.drop_table("supplier_price")
    if op.get_bind().dialect.name == "postgresql":
        op.execute("DROP FUNCTION supplier_price_lasts()")
    op.drop_column("supplier", "demo")
