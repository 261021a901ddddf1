"""Where parts sit on vehicles, and what was changed of vehicles and trips after they were first written down."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Create the three tables; the program sets their triggers in the same transaction."""
    for name, of in (("fitting", "item"), ("vehicle_change", "vehicle"), ("trip_change", "trip")):
        key = f"{of}_id"
        op.create_table(
            name,
            sa.Column("id", sa.String(36), nullable=False),
            sa.Column(key, sa.String(36), nullable=False),
            sa.Column("day", sa.Date(), nullable=False),
            sa.Column("body", sa.Text(), nullable=False),
            sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{name}")),
            sa.ForeignKeyConstraint([key], [f"{of}.id"], name=op.f(f"fk_{name}_{key}_{of}"), ondelete="RESTRICT"),
        )
        op.create_index(f"ix_{name}_{key}_day", name, [key, "day"])
