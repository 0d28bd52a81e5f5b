"""The first tables."""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects import postgresql

revision = "0001"
down_revision = None

DOCUMENT = sa.JSON().with_variant(postgresql.JSONB(), "postgresql")


def upgrade() -> None:
    op.create_table(
        "attempt",
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("key_hash", sa.String(length=64), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_attempt")),
    )
    op.create_index(op.f("ix_attempt_key_hash_at"), "attempt", ["key_hash", "at"], unique=False)

    op.create_table(
        "house",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("code_hash", sa.String(length=64), nullable=True),
        sa.Column("set_up_at", sa.DateTime(timezone=True), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_house")),
    )
    op.create_table(
        "shop",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("name", sa.String(length=120), nullable=False),
        sa.Column("currency", sa.String(length=3), nullable=False),
        sa.Column("symbol", sa.String(length=4), nullable=False),
        sa.Column("unit", sa.String(length=2), nullable=False),
        sa.Column("denominator", sa.Integer(), nullable=False),
        sa.Column("time_zone", sa.String(length=60), nullable=False),
        sa.Column("paper", sa.String(length=10), nullable=False),
        sa.Column("address", sa.Text(), nullable=False),
        sa.Column("phone", sa.String(length=60), nullable=False),
        sa.Column("email", sa.String(length=254), nullable=False),
        sa.Column("quote_days", sa.Integer(), nullable=False),
        sa.Column("terms", sa.Text(), nullable=False),
        sa.Column("figures", sa.Integer(), nullable=False),
        sa.Column("demo", sa.Boolean(), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("shop_id", name=op.f("pk_shop")),
    )
    op.create_table(
        "counter",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("name", sa.String(length=20), nullable=False),
        sa.Column("value", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_counter_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "name", name=op.f("pk_counter")),
    )
    op.create_table(
        "customer",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("email", sa.String(length=254), nullable=False),
        sa.Column("phone", sa.String(length=60), nullable=False),
        sa.Column("address", sa.Text(), nullable=False),
        sa.Column("source", sa.String(length=200), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("demo", sa.Boolean(), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_customer_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_customer")),
    )
    op.create_index(op.f("ix_customer_shop_id_name"), "customer", ["shop_id", "name"], unique=False)

    op.create_table(
        "key_link",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column(
            "kind",
            sa.Enum(
                "invitation", "reset", name="linkkind", native_enum=False, create_constraint=True, length=20
            ),
            nullable=False,
        ),
        sa.Column("token_hash", sa.String(length=64), nullable=False),
        sa.Column("person_id", sa.String(length=13), nullable=True),
        sa.Column(
            "role",
            sa.Enum(
                "owner", "maker", "bench", name="role", native_enum=False, create_constraint=True, length=20
            ),
            nullable=False,
        ),
        sa.Column("made_by", sa.String(length=120), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("ends_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("used_at", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_key_link_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_key_link")),
    )
    op.create_table(
        "once",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("key", sa.String(length=64), nullable=False),
        sa.Column("location", sa.String(length=300), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_once_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "key", name=op.f("pk_once")),
    )
    op.create_index(op.f("ix_once_shop_id_at"), "once", ["shop_id", "at"], unique=False)

    op.create_table(
        "person",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("name", sa.String(length=120), nullable=False),
        sa.Column("email", sa.String(length=254), nullable=False),
        sa.Column(
            "role",
            sa.Enum(
                "owner", "maker", "bench", name="role", native_enum=False, create_constraint=True, length=20
            ),
            nullable=False,
        ),
        sa.Column("password_hash", sa.String(length=200), nullable=False),
        sa.Column("ended_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("first_steps_away", sa.Boolean(), nullable=False),
        sa.Column("seen_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_person_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_person")),
        sa.UniqueConstraint("shop_id", "email", name=op.f("uq_person_shop_id_email")),
    )
    op.create_index(op.f("ix_person_email"), "person", ["email"], unique=False)

    op.create_table(
        "shop_figures",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("revision", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("spec", DOCUMENT, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_shop_figures_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "revision", name=op.f("pk_shop_figures")),
    )
    op.create_table(
        "job",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("customer_id", sa.String(length=13), nullable=False),
        sa.Column(
            "state",
            sa.Enum(
                "enquiry",
                "quoted",
                "accepted",
                "in hand",
                "ready",
                "delivered",
                "closed",
                "lost",
                name="jobstate",
                native_enum=False,
                create_constraint=True,
                length=20,
            ),
            nullable=False,
        ),
        sa.Column("asked", sa.Text(), nullable=False),
        sa.Column("due_on", sa.Date(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("own", DOCUMENT, nullable=False),
        sa.Column("demo", sa.Boolean(), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("moved_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "customer_id"],
            ["customer.shop_id", "customer.id"],
            name=op.f("fk_job_shop_id_customer_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_job")),
        sa.UniqueConstraint("shop_id", "number", name=op.f("uq_job_shop_id_number")),
    )
    op.create_index(op.f("ix_job_shop_id_customer_id"), "job", ["shop_id", "customer_id"], unique=False)
    op.create_index(op.f("ix_job_shop_id_state_number"), "job", ["shop_id", "state", "number"], unique=False)

    op.create_table(
        "sign_in",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("token_hash", sa.String(length=64), nullable=False),
        sa.Column("person_id", sa.String(length=13), nullable=False),
        sa.Column("device", sa.String(length=200), nullable=False),
        sa.Column("address", sa.String(length=60), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("seen_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("ends_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "person_id"],
            ["person.shop_id", "person.id"],
            name=op.f("fk_sign_in_shop_id_person_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_sign_in")),
    )
    op.create_index(op.f("ix_sign_in_shop_id_person_id"), "sign_in", ["shop_id", "person_id"], unique=False)

    op.create_table(
        "history",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=True),
        sa.Column("what", sa.Text(), nullable=False),
        sa.Column("before", DOCUMENT, nullable=True),
        sa.Column("after", DOCUMENT, nullable=True),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_history_shop_id_job_id")
        ),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.shop_id"], name=op.f("fk_history_shop_id")),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_history")),
    )
    op.create_index(
        op.f("ix_history_shop_id_job_id_at"), "history", ["shop_id", "job_id", "at"], unique=False
    )

    op.create_table(
        "paper",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column(
            "kind",
            sa.Enum(
                "lumber order",
                "cut list",
                "joint cards",
                name="paperkind",
                native_enum=False,
                create_constraint=True,
                length=20,
            ),
            nullable=False,
        ),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("basis_hash", sa.String(length=64), nullable=False),
        sa.Column("issued_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("content", DOCUMENT, nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_paper_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_paper")),
        sa.UniqueConstraint(
            "shop_id", "kind", "number", "revision", name=op.f("uq_paper_shop_id_kind_number_revision")
        ),
    )
    op.create_index(op.f("ix_paper_shop_id_job_id"), "paper", ["shop_id", "job_id"], unique=False)

    op.create_table(
        "payment",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("amount_cents", sa.BigInteger(), nullable=False),
        sa.Column("received_on", sa.Date(), nullable=False),
        sa.Column("method", sa.String(length=60), nullable=False),
        sa.Column("note", sa.String(length=300), nullable=False),
        sa.Column("corrects_id", sa.String(length=13), nullable=True),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_payment_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_payment")),
        sa.UniqueConstraint("shop_id", "corrects_id", name=op.f("uq_payment_shop_id_corrects_id")),
    )
    op.create_index(op.f("ix_payment_shop_id_job_id"), "payment", ["shop_id", "job_id"], unique=False)

    op.create_table(
        "quote",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column(
            "state",
            sa.Enum(
                "draft",
                "sent",
                "accepted",
                "declined",
                "expired",
                "superseded",
                name="quotestate",
                native_enum=False,
                create_constraint=True,
                length=20,
            ),
            nullable=False,
        ),
        sa.Column("total_cents", sa.BigInteger(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("choices", DOCUMENT, nullable=False),
        sa.Column("link_serial", sa.Integer(), nullable=False),
        sa.Column("link_hash", sa.String(length=64), nullable=True),
        sa.Column("link_ended_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("issued_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("valid_until", sa.Date(), nullable=True),
        sa.Column("opened_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("answered_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("answered_name", sa.String(length=120), nullable=False),
        sa.Column("answered_way", sa.String(length=200), nullable=False),
        sa.Column("answer_note", sa.Text(), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("offer", DOCUMENT, nullable=True),
        sa.Column("basis", DOCUMENT, nullable=True),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_quote_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_quote")),
        sa.UniqueConstraint("shop_id", "number", "revision", name=op.f("uq_quote_shop_id_number_revision")),
    )
    op.create_index(op.f("ix_quote_shop_id_job_id"), "quote", ["shop_id", "job_id"], unique=False)
    op.create_index(op.f("ix_quote_shop_id_link_hash"), "quote", ["shop_id", "link_hash"], unique=False)

    op.create_table(
        "time_entry",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("unit_id", sa.String(length=13), nullable=True),
        sa.Column("drawer_id", sa.String(length=13), nullable=True),
        sa.Column("operation", sa.String(length=8), nullable=False),
        sa.Column("seconds", sa.Integer(), nullable=False),
        sa.Column("on_day", sa.Date(), nullable=False),
        sa.Column("note", sa.String(length=300), nullable=False),
        sa.Column("corrects_id", sa.String(length=13), nullable=True),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("person_id", sa.String(length=13), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_time_entry_shop_id_job_id")
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "person_id"],
            ["person.shop_id", "person.id"],
            name=op.f("fk_time_entry_shop_id_person_id"),
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_time_entry")),
    )
    op.create_index(op.f("ix_time_entry_shop_id_job_id"), "time_entry", ["shop_id", "job_id"], unique=False)

    op.create_table(
        "timer",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("person_id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("drawer_id", sa.String(length=13), nullable=True),
        sa.Column("operation", sa.String(length=8), nullable=False),
        sa.Column("started_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kept_seconds", sa.Integer(), nullable=False),
        sa.Column("running_since", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_timer_shop_id_job_id")
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "person_id"], ["person.shop_id", "person.id"], name=op.f("fk_timer_shop_id_person_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "person_id", name=op.f("pk_timer")),
    )
    op.create_table(
        "unit",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("code", sa.String(length=6), nullable=False),
        sa.Column("name", sa.String(length=120), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("approved", sa.Integer(), nullable=True),
        sa.Column("ended_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_unit_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_unit")),
        sa.UniqueConstraint("shop_id", "job_id", "code", name=op.f("uq_unit_shop_id_job_id_code")),
    )
    op.create_table(
        "carcase",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("unit_id", sa.String(length=13), nullable=False),
        sa.Column("piece", sa.Integer(), nullable=False),
        sa.Column("stage", sa.String(length=30), nullable=False),
        sa.Column("stage_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("stage_by", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_carcase_shop_id_job_id")
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "unit_id"], ["unit.shop_id", "unit.id"], name=op.f("fk_carcase_shop_id_unit_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_carcase")),
        sa.UniqueConstraint("shop_id", "unit_id", "piece", name=op.f("uq_carcase_shop_id_unit_id_piece")),
    )
    op.create_index(op.f("ix_carcase_shop_id_job_id"), "carcase", ["shop_id", "job_id"], unique=False)

    op.create_table(
        "unit_option",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("unit_id", sa.String(length=13), nullable=False),
        sa.Column("label", sa.String(length=120), nullable=False),
        sa.Column("changes", DOCUMENT, nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "unit_id"], ["unit.shop_id", "unit.id"], name=op.f("fk_unit_option_shop_id_unit_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_unit_option")),
    )
    op.create_index(
        op.f("ix_unit_option_shop_id_unit_id"), "unit_option", ["shop_id", "unit_id"], unique=False
    )

    op.create_table(
        "unit_revision",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("unit_id", sa.String(length=13), nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("spec", DOCUMENT, nullable=False),
        sa.Column("note", sa.String(length=300), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "unit_id"], ["unit.shop_id", "unit.id"], name=op.f("fk_unit_revision_shop_id_unit_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "unit_id", "number", name=op.f("pk_unit_revision")),
    )
    op.create_table(
        "drawer",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("unit_id", sa.String(length=13), nullable=False),
        sa.Column("carcase_id", sa.String(length=13), nullable=False),
        sa.Column("code", sa.String(length=12), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("gone", sa.Boolean(), nullable=False),
        sa.Column("stage", sa.String(length=30), nullable=False),
        sa.Column("stage_at", sa.DateTime(timezone=True), nullable=True),
        sa.Column("stage_by", sa.String(length=120), nullable=False),
        sa.ForeignKeyConstraint(
            ["shop_id", "carcase_id"],
            ["carcase.shop_id", "carcase.id"],
            name=op.f("fk_drawer_shop_id_carcase_id"),
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_drawer_shop_id_job_id")
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "unit_id"], ["unit.shop_id", "unit.id"], name=op.f("fk_drawer_shop_id_unit_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_drawer")),
        sa.UniqueConstraint("shop_id", "carcase_id", "code", name=op.f("uq_drawer_shop_id_carcase_id_code")),
    )
    op.create_index(op.f("ix_drawer_shop_id_job_id"), "drawer", ["shop_id", "job_id"], unique=False)
    op.create_index(op.f("ix_drawer_shop_id_unit_id"), "drawer", ["shop_id", "unit_id"], unique=False)

    op.create_table(
        "bench_event",
        sa.Column("shop_id", sa.String(length=13), nullable=False),
        sa.Column("id", sa.String(length=13), nullable=False),
        sa.Column("job_id", sa.String(length=13), nullable=False),
        sa.Column("carcase_id", sa.String(length=13), nullable=False),
        sa.Column("drawer_id", sa.String(length=13), nullable=True),
        sa.Column("kind", sa.String(length=20), nullable=False),
        sa.Column("data", DOCUMENT, nullable=False),
        sa.Column("tap", sa.String(length=64), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("who", sa.String(length=120), nullable=False),
        sa.Column("person_id", sa.String(length=13), nullable=True),
        sa.ForeignKeyConstraint(
            ["shop_id", "carcase_id"],
            ["carcase.shop_id", "carcase.id"],
            name=op.f("fk_bench_event_shop_id_carcase_id"),
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "drawer_id"],
            ["drawer.shop_id", "drawer.id"],
            name=op.f("fk_bench_event_shop_id_drawer_id"),
        ),
        sa.ForeignKeyConstraint(
            ["shop_id", "job_id"], ["job.shop_id", "job.id"], name=op.f("fk_bench_event_shop_id_job_id")
        ),
        sa.PrimaryKeyConstraint("shop_id", "id", name=op.f("pk_bench_event")),
        sa.UniqueConstraint("shop_id", "tap", name=op.f("uq_bench_event_shop_id_tap")),
    )
    op.create_index(
        op.f("ix_bench_event_shop_id_carcase_id_at"),
        "bench_event",
        ["shop_id", "carcase_id", "at"],
        unique=False,
    )
    op.create_index(
        op.f("ix_bench_event_shop_id_drawer_id_at"),
        "bench_event",
        ["shop_id", "drawer_id", "at"],
        unique=False,
    )


def downgrade() -> None:
    op.drop_index(op.f("ix_bench_event_shop_id_drawer_id_at"), table_name="bench_event")
    op.drop_index(op.f("ix_bench_event_shop_id_carcase_id_at"), table_name="bench_event")

    op.drop_table("bench_event")
    op.drop_index(op.f("ix_drawer_shop_id_unit_id"), table_name="drawer")
    op.drop_index(op.f("ix_drawer_shop_id_job_id"), table_name="drawer")

    op.drop_table("drawer")
    op.drop_table("unit_revision")
    op.drop_index(op.f("ix_unit_option_shop_id_unit_id"), table_name="unit_option")

    op.drop_table("unit_option")
    op.drop_index(op.f("ix_carcase_shop_id_job_id"), table_name="carcase")

    op.drop_table("carcase")
    op.drop_table("unit")
    op.drop_table("timer")
    op.drop_index(op.f("ix_time_entry_shop_id_job_id"), table_name="time_entry")

    op.drop_table("time_entry")
    op.drop_index(op.f("ix_quote_shop_id_link_hash"), table_name="quote")
    op.drop_index(op.f("ix_quote_shop_id_job_id"), table_name="quote")

    op.drop_table("quote")
    op.drop_index(op.f("ix_payment_shop_id_job_id"), table_name="payment")

    op.drop_table("payment")
    op.drop_index(op.f("ix_paper_shop_id_job_id"), table_name="paper")

    op.drop_table("paper")
    op.drop_index(op.f("ix_history_shop_id_job_id_at"), table_name="history")

    op.drop_table("history")
    op.drop_index(op.f("ix_sign_in_shop_id_person_id"), table_name="sign_in")

    op.drop_table("sign_in")
    op.drop_index(op.f("ix_job_shop_id_state_number"), table_name="job")
    op.drop_index(op.f("ix_job_shop_id_customer_id"), table_name="job")

    op.drop_table("job")
    op.drop_table("shop_figures")
    op.drop_index(op.f("ix_person_email"), table_name="person")

    op.drop_table("person")
    op.drop_index(op.f("ix_once_shop_id_at"), table_name="once")

    op.drop_table("once")
    op.drop_table("key_link")
    op.drop_index(op.f("ix_customer_shop_id_name"), table_name="customer")

    op.drop_table("customer")
    op.drop_table("counter")
    op.drop_table("shop")
    op.drop_table("house")
    op.drop_index(op.f("ix_attempt_key_hash_at"), table_name="attempt")

    op.drop_table("attempt")
