"""What happened stays as it was: the tables that are written once refuse changes, whoever asks.

Only the rows of a demo job may be deleted, when the demo is taken out of the shop.
"""

from alembic import op

revision = "0002"
down_revision = "0001"

OF_A_JOB = ("payment", "history", "paper", "bench_event", "time_entry")
OF_A_UNIT = ("unit_revision",)
OF_THE_SHOP = ("shop_figures",)
DEMO_JOB = "EXISTS (SELECT 1 FROM job WHERE job.shop_id = OLD.shop_id AND job.id = OLD.job_id AND job.demo)"
DEMO_UNIT = (
    "EXISTS (SELECT 1 FROM unit JOIN job ON job.shop_id = unit.shop_id AND job.id = unit.job_id "
    "WHERE unit.shop_id = OLD.shop_id AND unit.id = OLD.unit_id AND job.demo)"
)


def guards() -> list[tuple[str, str]]:
    """Each table that is written once, with the condition under which a row may be deleted."""
    return [
        *((table, DEMO_JOB) for table in OF_A_JOB),
        *((table, DEMO_UNIT) for table in OF_A_UNIT),
        *((table, "FALSE") for table in OF_THE_SHOP),
    ]


def upgrade() -> None:
    postgresql = op.get_bind().dialect.name == "postgresql"
    for table, allowed in guards():
        if postgresql:
            guard_on_postgresql(table, allowed)
        else:
            guard_on_sqlite(table, allowed)


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
    postgresql = op.get_bind().dialect.name == "postgresql"
    for table, _ in guards():
        if postgresql:
            op.execute(f"DROP TRIGGER {table}_lasts ON {table}")
            op.execute(f"DROP FUNCTION {table}_lasts()")
        else:
            op.execute(f"DROP TRIGGER {table}_is_not_changed")
            op.execute(f"DROP TRIGGER {table}_is_kept")
