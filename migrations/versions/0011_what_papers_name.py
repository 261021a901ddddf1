"""Which tags a document names stands beside it, in place of within its text alone."""

import json
from collections.abc import Iterator

import sqlalchemy as sa
from alembic import op

from inspector.register.branches import lead_by_branch

revision = "0011"
down_revision = "0010"
branch_labels = None
depends_on = None

_REFERENCE = "fk_named_in_document_id_document"
_ASKED = ("document", "item", "item_change")


def upgrade() -> None:
    """Add the table, and fill it from every document that was kept."""
    connection = op.get_bind()
    on_server = connection.dialect.name == "postgresql"
    refers = sa.ForeignKeyConstraint(["document_id"], ["document.id"], name=_REFERENCE, ondelete="RESTRICT")
    op.create_table(
        "named_in",
        sa.Column("document_id", sa.String(40), nullable=False),
        sa.Column("tag", sa.String(80), nullable=False),
        sa.PrimaryKeyConstraint("document_id", "tag", name=op.f("pk_named_in")),
        *(() if on_server else (refers,)),
    )
    op.create_index(op.f("ix_named_in_tag"), "named_in", ["tag"])
    if on_server:
        lead_by_branch(connection, ["named_in"])
        here, there = ["branch", "document_id"], ["branch", "id"]
        op.create_foreign_key(_REFERENCE, "named_in", "document", here, there, ondelete="RESTRICT")
        for name in _ASKED:  # the owner too sees one branch alone; each table's policy is set anew after this
            op.execute(f"ALTER TABLE {name} NO FORCE ROW LEVEL SECURITY")
    _fill(connection, "branch" if on_server else "''")


def _fill(connection: sa.Connection, branch: str) -> None:
    """branch: the column that tells whose a row is, or an empty text where there is but one register."""
    had = f"SELECT {branch}, tag FROM item UNION SELECT {branch}, tag FROM item_change"  # noqa: S608 - our own
    tags = {(str(of), str(tag)) for of, tag in connection.execute(sa.text(had))}
    kept = sa.text(f"SELECT body FROM document WHERE id = :number AND {branch} = :of")  # noqa: S608 - our own
    columns, values = ("branch, ", ":of, ") if branch == "branch" else ("", "")
    put = sa.text(f"INSERT INTO named_in ({columns}document_id, tag) VALUES ({values}:number, :tag)")  # noqa: S608
    for of, number in connection.execute(sa.text(f"SELECT {branch}, id FROM document")).all():  # noqa: S608 - our own
        one = {"of": str(of), "number": str(number)}
        body = str(connection.execute(kept, one).scalar_one())
        if named := sorted({text for text in _texts_in(body) if (one["of"], text) in tags}):
            connection.execute(put, [one | {"tag": tag} for tag in named])


def _texts_in(body: str) -> Iterator[str]:
    """Every text of a document; none of one that was damaged, which `verify` tells of."""
    try:
        yield from _texts(json.loads(body))
    except ValueError:
        return


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, list | dict):
        for one in value.values() if isinstance(value, dict) else value:
            yield from _texts(one)
