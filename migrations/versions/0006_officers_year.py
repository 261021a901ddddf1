"""The officer's year: whereabouts, repairs, changed labels, incidents, counts, papers, and what people may judge."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the tables."""
    for name in ("whereabouts", "repair", "quarantine", "release"):
        _dated(name, "item")
    _dated("item_change", "item", sa.Column("tag", sa.String(80), nullable=False))
    op.create_index(op.f("ix_item_change_tag"), "item_change", ["tag"])
    for name, entries in (("incident", "incident_entry"), ("stock_take", "stock_entry")):
        _called(name)
        _dated(entries, name)
    _dated("person_change", "person")
    _attachments()
    _of_person("contact", sa.Column("body", sa.Text(), nullable=False))
    _of_person("passphrase", sa.Column("hashed", sa.String(200), nullable=False))


def _dated(name: str, owner: str, *more: sa.Column[str]) -> None:
    """A table of what happened to something, in order of day."""
    op.create_table(
        name,
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column(f"{owner}_id", sa.String(36), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        *more,
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            [f"{owner}_id"], [f"{owner}.id"], name=op.f(f"fk_{name}_{owner}_id_{owner}"), ondelete="RESTRICT"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{name}")),
    )
    op.create_index(f"ix_{name}_{owner}_id_day", name, [f"{owner}_id", "day"])


def _called(name: str) -> None:
    """A table of things that people call by a reference."""
    op.create_table(
        name,
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("ref", sa.String(80), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{name}")),
        sa.UniqueConstraint("ref", name=op.f(f"uq_{name}_ref")),
    )


def _attachments() -> None:
    op.create_table(
        "attachment_data",
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("data", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_attachment_data")),
    )
    op.create_table(
        "attachment",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("about", sa.String(36), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("data_id", sa.String(64), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["data_id"],
            ["attachment_data.id"],
            name=op.f("fk_attachment_data_id_attachment_data"),
            ondelete="RESTRICT",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_attachment")),
    )
    op.create_index(op.f("ix_attachment_about"), "attachment", ["about"])


def _of_person(name: str, column: sa.Column[str]) -> None:
    """One row a person, which may be changed and taken out."""
    op.create_table(
        name,
        sa.Column("person_id", sa.String(36), nullable=False),
        column,
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f(f"fk_{name}_person_id_person"), ondelete="RESTRICT"
        ),
        sa.PrimaryKeyConstraint("person_id", name=op.f(f"pk_{name}")),
    )
