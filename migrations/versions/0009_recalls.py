"""Recalls: what a notice says, what was added to it, and which pieces stand under it."""

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the tables."""
    op.create_table(
        "recall",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("ref", sa.String(80), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_recall")),
    )
    op.create_index(op.f("ix_recall_ref"), "recall", ["ref"])
    _dated("recall_entry", "recall")
    _dated("piece_call", "item")


def _dated(name: str, owner: str) -> None:
    """A table of what happened to something, in order of day."""
    op.create_table(
        name,
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column(f"{owner}_id", sa.String(36), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            [f"{owner}_id"], [f"{owner}.id"], name=op.f(f"fk_{name}_{owner}_id_{owner}"), ondelete="RESTRICT"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{name}")),
    )
    op.create_index(f"ix_{name}_{owner}_id_day", name, [f"{owner}_id", "day"])
