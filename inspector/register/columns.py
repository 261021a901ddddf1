"""What the tables are made of."""

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


def of_item(name: str) -> Table:
    """A table of what happened to a piece, in order of day."""
    return Table(
        name,
        METADATA,
        Column("id", ID, primary_key=True),
        Column("item_id", ForeignKey("item.id", ondelete="RESTRICT"), nullable=False),
        Column("day", Date, nullable=False),
        Column("body", Text, nullable=False),
        Index(f"ix_{name}_item_id_day", "item_id", "day"),
    )
