"""What the tables are made of."""

from typing import Any

from sqlalchemy import Column, Date, ForeignKey, Index, MetaData, String, Table, Text

METADATA = MetaData(
    naming_convention={
        "ix": "ix_%(column_0_label)s",
        "uq": "uq_%(table_name)s_%(column_0_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
        "pk": "pk_%(table_name)s",
    }
)

ID = String(36)
KEY = String(80)


def dated(name: str, owner: str, *more: Column[Any]) -> Table:
    """A table of what happened to something (a piece, a vehicle, a trip ...), in order of day."""
    return Table(
        name,
        METADATA,
        Column("id", ID, primary_key=True),
        Column(f"{owner}_id", ForeignKey(f"{owner}.id", ondelete="RESTRICT"), nullable=False),
        Column("day", Date, nullable=False),
        *more,
        Column("body", Text, nullable=False),
        Index(f"ix_{name}_{owner}_id_day", f"{owner}_id", "day"),
    )


def called(name: str) -> Table:
    """A table of things that people call by a reference."""
    return Table(
        name,
        METADATA,
        Column("id", ID, primary_key=True),
        Column("ref", KEY, nullable=False, index=True),
        Column("day", Date, nullable=False),
        Column("body", Text, nullable=False),
    )
