"""Suppliers, orders for several jobs, deliveries tallied piece by piece, the rack, and the shop's own yields.

Lines and jobs of an order, what happened to a piece, and yields are written once, like all that happened; of
them only what belongs to the demo may be deleted.
"""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0010"
down_revision = "0009"

DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")
DEMO_JOB = "EXISTS (SELECT 1 FROM job WHERE job.shop_id = OLD.shop_id AND job.id = OLD.job_id AND job.demo)"
GUARDS = {
    "order_job": DEMO_JOB,
    "wood_yield": DEMO_JOB,
    "order_line": (
        "EXISTS (SELECT 1 FROM supply_order WHERE supply_order.shop_id = OLD.shop_id "
        "AND supply_order.id = OLD.order_id AND supply_order.demo)"
    ),
    "stock_event": (
        "EXISTS (SELECT 1 FROM stock_piece WHERE stock_piece.shop_id = OLD.shop_id "
        "AND stock_piece.id = OLD.piece_id AND stock_piece.demo)"
    ),
}
"""Each table that is written once, with the condition under which a row may be deleted."""


def upgrade() -> None:
    make_what_is_bought()
    make_what_is_there()
    for table, allowed in GUARDS.items():
        if op.get_bind().dialect.name == "postgresql":
            guard_on_postgresql(table, allowed)
        else:
            guard_on_sqlite(table, allowed)


def make_what_is_bought() -> None:
    op.create_table(
        "supplier",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("name", sa.String(length=120), nullable=False),
        sa.Column("kinds", DOCUMENT, nullable=False),
        sa.Column("email", sa.String(length=254), nullable=False),
        sa.Column("phone", sa.String(length=60), nullable=False),
        sa.Column("address", sa.Text(), nullable=False),
        sa.Column("account", sa.String(length=60), nullable=False),
        sa.Column("lead_days", sa.Integer(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("ended_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_supplier_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_supplier")),
    )
    op.create_index(op.f("ix_supplier_shop_id_name"), "supplier", ["shop_id", "name"], unique=False)
    op.create_table(
        "supply_order",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("supplier_id", sa.String(length=13), nullable=False),
        sa.Column(
            "state",
            sa.Enum(
                "open",
                "here",
                "called off",
                name="orderstate",
                native_enum=False,
                create_constraint=True,
                length=20,
            ),
            nullable=False,
        ),
        sa.Column("needed_by", sa.Date(), nullable=True),
        sa.Column("issued_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("moved_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("demo", sa.Boolean(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("content", DOCUMENT, nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "supplier_id"],
            ["supplier.shop_id", "supplier.id"],
            name=op.f("fk_supply_order_shop_id_supplier_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_supply_order")),
        sa.UniqueConstraint("shop_id", "number", name=op.f("uq_supply_order_shop_id_number")),
    )
    op.create_index(
        op.f("ix_supply_order_shop_id_state_number"),
        "supply_order",
        ["shop_id", "state", "number"],
        unique=False,
    )
    op.create_index(
        op.f("ix_supply_order_shop_id_supplier_id"), "supply_order", ["shop_id", "supplier_id"], unique=False
    )
    op.create_table(
        "delivery",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("supplier_id", sa.String(length=13), nullable=False),
        sa.Column("order_id", sa.String(length=13), nullable=True),
        sa.Column("arrived_on", sa.Date(), nullable=False),
        sa.Column("bill", DOCUMENT, nullable=False),
        sa.Column("bill_number", sa.String(length=60), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("ended_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("demo", sa.Boolean(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "order_id"],
            ["supply_order.shop_id", "supply_order.id"],
            name=op.f("fk_delivery_shop_id_order_id"),
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "supplier_id"],
            ["supplier.shop_id", "supplier.id"],
            name=op.f("fk_delivery_shop_id_supplier_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_delivery")),
        sa.UniqueConstraint("shop_id", "number", name=op.f("uq_delivery_shop_id_number")),
    )
    op.create_index(op.f("ix_delivery_shop_id_order_id"), "delivery", ["shop_id", "order_id"], unique=False)
    op.create_index(
        op.f("ix_delivery_shop_id_supplier_id"), "delivery", ["shop_id", "supplier_id"], unique=False
    )
    op.create_table(
        "order_job",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("order_id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_order_job_shop_id_job_id")
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "order_id"],
            ["supply_order.shop_id", "supply_order.id"],
            name=op.f("fk_order_job_shop_id_order_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "order_id", "job_id", name=op.f("pk_order_job")),
    )
    op.create_index(op.f("ix_order_job_shop_id_job_id"), "order_job", ["shop_id", "job_id"], unique=False)
    op.create_table(
        "order_line",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("order_id", sa.String(length=13), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(length=20), nullable=False),
        sa.Column("item", sa.String(length=120), nullable=False),
        sa.Column("cut", sa.String(length=20), nullable=False),
        sa.Column("size", sa.String(length=40), nullable=False),
        sa.Column("grade", sa.String(length=30), nullable=False),
        sa.Column("quantity", sa.Double(), nullable=False),
        sa.Column("unit", sa.String(length=20), nullable=False),
        sa.Column("price_cents", sa.BigInteger(), nullable=True),
        sa.Column("detail", DOCUMENT, nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "order_id"],
            ["supply_order.shop_id", "supply_order.id"],
            name=op.f("fk_order_line_shop_id_order_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_order_line")),
    )
    op.create_index(
        op.f("ix_order_line_shop_id_order_id"), "order_line", ["shop_id", "order_id"], unique=False
    )


def make_what_is_there() -> None:
    op.create_table(
        "wood_yield",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("wood", sa.String(length=120), nullable=False),
        sa.Column("grade", sa.String(length=30), nullable=False),
        sa.Column("net_bd_ft", sa.Double(), nullable=False),
        sa.Column("rough_bd_ft", sa.Double(), nullable=False),
        sa.Column("table_bd_ft", sa.Double(), nullable=False),
        sa.Column("cut_bd_ft", sa.Double(), nullable=False),
        sa.Column("cost_cents", sa.BigInteger(), nullable=True),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_wood_yield_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_wood_yield")),
    )
    op.create_index(
        op.f("ix_wood_yield_shop_id_wood_grade"), "wood_yield", ["shop_id", "wood", "grade"], unique=False
    )
    op.create_table(
        "stock_piece",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column(
            "kind",
            sa.Enum(
                "board",
                "sheet",
                "offcut",
                name="piecekind",
                native_enum=False,
                create_constraint=True,
                length=20,
            ),
            nullable=False,
        ),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("delivery_id", sa.String(length=13), nullable=True),
        sa.Column("from_id", sa.String(length=13), nullable=True),
        sa.Column("material", sa.String(length=120), nullable=False),
        sa.Column("is_sheet", sa.Boolean(), nullable=False),
        sa.Column("cut", sa.String(length=20), nullable=False),
        sa.Column("size", sa.String(length=40), nullable=False),
        sa.Column("grade", sa.String(length=30), nullable=False),
        sa.Column("thickness_ticks", sa.Integer(), nullable=True),
        sa.Column("width_ticks", sa.Integer(), nullable=False),
        sa.Column("left_width_ticks", sa.Integer(), nullable=True),
        sa.Column("right_width_ticks", sa.Integer(), nullable=True),
        sa.Column("length_ticks", sa.Integer(), nullable=False),
        sa.Column("moisture", sa.Double(), nullable=True),
        sa.Column("sap_edge", sa.String(length=10), nullable=False),
        sa.Column("defects", DOCUMENT, nullable=False),
        sa.Column("log_mark", sa.String(length=40), nullable=False),
        sa.Column("place", sa.String(length=80), nullable=False),
        sa.Column("cost_cents", sa.BigInteger(), nullable=True),
        sa.Column(
            "state",
            sa.Enum(
                "in stock",
                "kept",
                "used",
                "sent back",
                "taken back",
                name="piecestate",
                native_enum=False,
                create_constraint=True,
                length=20,
            ),
            nullable=False,
        ),
        sa.Column("for_job", sa.String(length=13), nullable=True),
        sa.Column("tap", sa.String(length=64), nullable=False),
        sa.Column("note", sa.String(length=300), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("demo", sa.Boolean(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "delivery_id"],
            ["delivery.shop_id", "delivery.id"],
            name=op.f("fk_stock_piece_shop_id_delivery_id"),
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "from_id"],
            ["stock_piece.shop_id", "stock_piece.id"],
            name=op.f("fk_stock_piece_shop_id_from_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_stock_piece")),
        sa.UniqueConstraint("shop_id", "kind", "number", name=op.f("uq_stock_piece_shop_id_kind_number")),
        sa.UniqueConstraint("shop_id", "tap", name=op.f("uq_stock_piece_shop_id_tap")),
    )
    op.create_index(
        op.f("ix_stock_piece_shop_id_delivery_id"), "stock_piece", ["shop_id", "delivery_id"], unique=False
    )
    op.create_index(
        op.f("ix_stock_piece_shop_id_for_job"), "stock_piece", ["shop_id", "for_job"], unique=False
    )
    op.create_index(
        op.f("ix_stock_piece_shop_id_from_id"), "stock_piece", ["shop_id", "from_id"], unique=False
    )
    op.create_index(
        op.f("ix_stock_piece_shop_id_state_kind_material"),
        "stock_piece",
        ["shop_id", "state", "kind", "material"],
        unique=False,
    )
    op.create_table(
        "stock_event",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("piece_id", sa.String(length=13), nullable=False),
        sa.Column("kind", sa.String(length=20), nullable=False),
        sa.Column("data", DOCUMENT, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "piece_id"],
            ["stock_piece.shop_id", "stock_piece.id"],
            name=op.f("fk_stock_event_shop_id_piece_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_stock_event")),
    )
    op.create_index(
        op.f("ix_stock_event_shop_id_piece_id_at"), "stock_event", ["shop_id", "piece_id", "at"], unique=False
    )


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
    for table in (
        "stock_event",
        "stock_piece",
        "wood_yield",
        "order_line",
        "order_job",
        "delivery",
        "supply_order",
        "supplier",
    ):
        op.drop_table(table)
    if op.get_bind().dialect.name == "postgresql":
        for table in GUARDS:
            op.execute(f"DROP FUNCTION {table}_lasts()")
