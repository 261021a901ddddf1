"""The tables of the officer's year: whereabouts, repairs, changes, incidents, counts, papers, people."""

from sqlalchemy import Column, Date, ForeignKey, LargeBinary, String, Table, Text

from inspector.register.columns import ID, KEY, METADATA, called, dated

whereabouts = dated("whereabouts", "item")
repair = dated("repair", "item")
quarantine = dated("quarantine", "item")
release = dated("release", "item")

item_change = dated("item_change", "item", Column("tag", KEY, nullable=False, index=True))

incident = called("incident")

incident_entry = dated("incident_entry", "incident")

stock_take = called("stock_take")

stock_entry = dated("stock_entry", "stock_take")

recall = called("recall")

recall_entry = dated("recall_entry", "recall")

piece_call = dated("piece_call", "item")

person_change = dated("person_change", "person")

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
