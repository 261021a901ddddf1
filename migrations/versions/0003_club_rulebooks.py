"""Rulebooks that a club adopts, and what each piece would be without the limits that its club has loosened."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the table of adoptions and the column for the list."""
    op.create_table(
        "adoption",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("made_on", sa.Date(), nullable=False),
        sa.Column("from_on", sa.Date(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_adoption")),
    )
    op.add_column("standing", sa.Column("unloosened", sa.String(10)))
