"""Runs the migration scripts on the connection that the program hands over. There is no other way in."""

from alembic import context

from inspector.register.tables import item

connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=item.metadata,
    render_as_batch=connection.dialect.name == "sqlite",
    compare_type=True,
    transactional_ddl=True,
)
with context.begin_transaction():
    context.run_migrations()
