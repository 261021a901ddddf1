"""Who has a piece, the rigs that are kept, and what was told of a trip afterwards."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the tables of custody, rigs and debriefs."""
    op.create_table(
        "custody",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("item_id", sa.String(36), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["item_id"], ["item.id"], name=op.f("fk_custody_item_id_item"), ondelete="RESTRICT"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_custody")),
    )
    op.create_index("ix_custody_item_id_day", "custody", ["item_id", "day"])
    op.create_table(
        "rig",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("ref", sa.String(80), nullable=False),
        sa.Column("trip", sa.String(80), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_rig")),
        sa.UniqueConstraint("ref", name=op.f("uq_rig_ref")),
    )
    op.create_table(
        "debrief",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("trip", sa.String(80), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_debrief")),
    )
    op.create_index(op.f("ix_debrief_trip"), "debrief", ["trip"])
