"""On a server several clubs keep their registers in one database, each as a branch. A file is one register."""

import sqlalchemy as sa
from alembic import op

from inspector.register.branches import SEAT, lead_by_branch, make_seats

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Part the tables by branch; what stood in them is in the branch without a name."""
    connection = op.get_bind()
    if connection.dialect.name != "postgresql":
        return
    make_seats(connection)
    named = set(sa.inspect(connection).get_table_names()) - {SEAT, "alembic_version"}
    lead_by_branch(connection, sorted(named))
