"""Lines of several copies lie in one ledger, and two copies may have given the same name.

A line's number is its place in its own chain; its id is its place in this register.
"""

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None

_NAMED = {
    "person": "name",
    "vehicle": "tag",
    "item": "tag",
    "trip": "ref",
    "rig": "ref",
    "incident": "ref",
    "stock_take": "ref",
}


def upgrade() -> None:
    """Number the lines, and let the duties alone keep names apart: a merge keeps both of two that are the same."""
    with op.batch_alter_table("ledger") as table:
        table.add_column(sa.Column("number", sa.Integer(), nullable=True))
    _let_be_numbered()
    op.execute("UPDATE ledger SET number = id")
    with op.batch_alter_table("ledger") as table:
        table.alter_column("number", existing_type=sa.Integer(), nullable=False)
    for name, column in _NAMED.items():
        with op.batch_alter_table(name) as table:
            table.drop_constraint(op.f(f"uq_{name}_{column}"), type_="unique")
        op.create_index(op.f(f"ix_{name}_{column}"), name, [column])


def _let_be_numbered() -> None:
    """The program sets every trigger anew after the upgrade, in the same transaction."""
    if op.get_bind().dialect.name == "sqlite":
        op.execute("DROP TRIGGER IF EXISTS ledger_no_update")
    else:
        op.execute("DROP TRIGGER IF EXISTS ledger_no_change ON ledger")
