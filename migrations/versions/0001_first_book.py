"""The first book: gear, people, vehicles, trips, what happened to a piece, verdicts, documents, ledger."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

ID = sa.String(36)
KEY = sa.String(80)


def upgrade() -> None:
    """Create all tables; the program sets the triggers that keep them append-only in the same transaction."""
    _people_and_things()
    _history()
    _documents_and_ledger()
    _changing_rows()


def _people_and_things() -> None:
    op.create_table(
        "rulebook",
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("adopted_on", sa.Date(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_rulebook")),
    )
    op.create_table(
        "person",
        sa.Column("id", ID, nullable=False),
        sa.Column("name", sa.String(200), nullable=False),
        sa.Column("role", sa.String(200), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_person")),
        sa.UniqueConstraint("name", name=op.f("uq_person_name")),
    )
    op.create_table(
        "vehicle",
        sa.Column("id", ID, nullable=False),
        sa.Column("tag", KEY, nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_vehicle")),
        sa.UniqueConstraint("tag", name=op.f("uq_vehicle_tag")),
    )
    op.create_table(
        "item",
        sa.Column("id", ID, nullable=False),
        sa.Column("tag", KEY, nullable=False),
        sa.Column("kind", KEY, nullable=False),
        sa.Column("booked_on", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_item")),
        sa.UniqueConstraint("tag", name=op.f("uq_item_tag")),
    )
    op.create_table(
        "trip",
        sa.Column("id", ID, nullable=False),
        sa.Column("ref", KEY, nullable=False),
        sa.Column("first_on", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_trip")),
        sa.UniqueConstraint("ref", name=op.f("uq_trip_ref")),
    )


def _history() -> None:
    for name in ("inspection", "piece_use", "exposure"):
        op.create_table(
            name,
            sa.Column("id", ID, nullable=False),
            sa.Column("item_id", ID, nullable=False),
            sa.Column("day", sa.Date(), nullable=False),
            sa.Column("body", sa.Text(), nullable=False),
            sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{name}")),
            _item_key(name),
        )
        op.create_index(f"ix_{name}_item_id_day", name, ["item_id", "day"])
    op.create_table(
        "verdict",
        sa.Column("id", ID, nullable=False),
        sa.Column("item_id", ID, nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("outcome", sa.String(10), nullable=False),
        sa.Column("rulebook_id", sa.String(64), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_verdict")),
        _item_key("verdict"),
        sa.ForeignKeyConstraint(
            ["rulebook_id"], ["rulebook.id"], name=op.f("fk_verdict_rulebook_id_rulebook"), ondelete="RESTRICT"
        ),
    )
    op.create_index("ix_verdict_item_id_day", "verdict", ["item_id", "day"])


def _item_key(name: str) -> sa.ForeignKeyConstraint:
    own = op.f(f"fk_{name}_item_id_item")
    return sa.ForeignKeyConstraint(["item_id"], ["item.id"], name=own, ondelete="RESTRICT")


def _documents_and_ledger() -> None:
    op.create_table(
        "document",
        sa.Column("id", sa.String(40), nullable=False),
        sa.Column("kind", KEY, nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("about", ID, nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_document")),
    )
    op.create_index(op.f("ix_document_about"), "document", ["about"])
    op.create_table(
        "ledger",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("origin", sa.String(12), nullable=False),
        sa.Column("at", sa.String(32), nullable=False),
        sa.Column("by", ID, nullable=False),
        sa.Column("deed", KEY, nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("before", sa.String(64), nullable=False),
        sa.Column("hash", sa.String(64), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_ledger")),
    )


def _changing_rows() -> None:
    op.create_table(
        "standing",
        sa.Column("item_id", ID, nullable=False),
        sa.Column("verdict_id", ID, nullable=False),
        sa.Column("outcome", sa.String(10), nullable=False),
        sa.Column("headline", sa.Text(), nullable=False),
        sa.Column("next_due", sa.Date()),
        sa.Column("holds_until", sa.Date()),
        sa.Column("search", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("item_id", name=op.f("pk_standing")),
        _item_key("standing"),
        sa.ForeignKeyConstraint(
            ["verdict_id"], ["verdict.id"], name=op.f("fk_standing_verdict_id_verdict"), ondelete="RESTRICT"
        ),
    )
    for column in ("outcome", "next_due", "holds_until"):
        op.create_index(op.f(f"ix_standing_{column}"), "standing", [column])
    op.create_table(
        "club_setting",
        sa.Column("key", KEY, nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("key", name=op.f("pk_club_setting")),
    )
