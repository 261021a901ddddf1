"""Opinions, struck entries and destructions: three more tables of what happened to a piece."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Create the three tables; the program sets their triggers in the same transaction."""
    for name in ("opinion", "strike", "destruction"):
        op.create_table(
            name,
            sa.Column("id", sa.String(36), nullable=False),
            sa.Column("item_id", sa.String(36), nullable=False),
            sa.Column("day", sa.Date(), nullable=False),
            sa.Column("body", sa.Text(), nullable=False),
            sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{name}")),
            sa.ForeignKeyConstraint(
                ["item_id"], ["item.id"], name=op.f(f"fk_{name}_item_id_item"), ondelete="RESTRICT"
            ),
        )
        op.create_index(f"ix_{name}_item_id_day", name, ["item_id", "day"])
