"""Runs the migrations on the connection that the program hands over."""

from alembic import context

from casewright.records.tables import METADATA

connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=METADATA,
    compare_type=True,
    compare_server_default=True,
    render_as_batch=connection.dialect.name == "sqlite",
    transaction_per_migration=True,
)
with context.begin_transaction():
    context.run_migrations()
