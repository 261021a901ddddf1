"""The tables of the officer's year: whereabouts, repairs, changes, incidents, counts, papers, people."""

from sqlalchemy import Column, Date, ForeignKey, Index, LargeBinary, String, Table, Text

from inspector.register.columns import ID, KEY, METADATA, of_item

whereabouts = of_item("whereabouts")
repair = of_item("repair")
quarantine = of_item("quarantine")
release = of_item("release")

item_change = Table(
    "item_change",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("item_id", ForeignKey("item.id", ondelete="RESTRICT"), nullable=False),
    Column("day", Date, nullable=False),
    Column("tag", KEY, nullable=False, index=True),
    Column("body", Text, nullable=False),
    Index("ix_item_change_item_id_day", "item_id", "day"),
)

incident = Table(
    "incident",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("ref", KEY, nullable=False, unique=True),
    Column("day", Date, nullable=False),
    Column("body", Text, nullable=False),
)

incident_entry = Table(
    "incident_entry",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("incident_id", ForeignKey("incident.id", ondelete="RESTRICT"), nullable=False),
    Column("day", Date, nullable=False),
    Column("body", Text, nullable=False),
    Index("ix_incident_entry_incident_id_day", "incident_id", "day"),
)

stock_take = Table(
    "stock_take",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("ref", KEY, nullable=False, unique=True),
    Column("day", Date, nullable=False),
    Column("body", Text, nullable=False),
)

stock_entry = Table(
    "stock_entry",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("stock_take_id", ForeignKey("stock_take.id", ondelete="RESTRICT"), nullable=False),
    Column("day", Date, nullable=False),
    Column("body", Text, nullable=False),
    Index("ix_stock_entry_stock_take_id_day", "stock_take_id", "day"),
)

person_change = Table(
    "person_change",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("person_id", ForeignKey("person.id", ondelete="RESTRICT"), nullable=False),
    Column("day", Date, nullable=False),
    Column("body", Text, nullable=False),
    Index("ix_person_change_person_id_day", "person_id", "day"),
)

attachment_data = Table(  # the bytes once, under their sha256
    "attachment_data",
    METADATA,
    Column("id", String(64), primary_key=True),
    Column("data", LargeBinary, nullable=False),
)

attachment = Table(
    "attachment",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("about", ID, nullable=False, index=True),
    Column("day", Date, nullable=False),
    Column("data_id", ForeignKey("attachment_data.id", ondelete="RESTRICT"), nullable=False),
    Column("body", Text, nullable=False),
)

contact = Table(  # outside the append-only rows, so that it can be taken out on request
    "contact",
    METADATA,
    Column("person_id", ForeignKey("person.id", ondelete="RESTRICT"), primary_key=True),
    Column("body", Text, nullable=False),
)

passphrase = Table(
    "passphrase",
    METADATA,
    Column("person_id", ForeignKey("person.id", ondelete="RESTRICT"), primary_key=True),
    Column("hashed", String(200), nullable=False),
)
