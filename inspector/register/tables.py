"""The tables. History tables are append-only; only `standing`, `club_setting`, `contact` and `passphrase` change.

`named_in` is neither: it follows from the documents, is added to with them, and `verify` holds it against them.

Bodies are JSON texts of the gear structs; the columns beside them are those that lists filter and sort by.
"""

from sqlalchemy import Column, Date, Double, ForeignKey, Index, Integer, String, Table, Text

from inspector.register.columns import ID, KEY, METADATA, dated
from inspector.register.year_tables import (
    attachment,
    attachment_data,
    incident,
    incident_entry,
    item_change,
    person_change,
    piece_call,
    quarantine,
    recall,
    recall_entry,
    release,
    repair,
    stock_entry,
    stock_take,
    whereabouts,
)

rulebook = Table(
    "rulebook",
    METADATA,
    Column("id", String(64), primary_key=True),
    Column("adopted_on", Date, nullable=False),
    Column("text", Text, nullable=False),
)

adoption = Table(
    "adoption",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("made_on", Date, nullable=False),
    Column("from_on", Date, nullable=False),
    Column("text", Text, nullable=False),
)

person = Table(
    "person",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("name", String(200), nullable=False, index=True),
    Column("role", String(200), nullable=False),
    Column("body", Text, nullable=False),
)

vehicle = Table(
    "vehicle",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("tag", KEY, nullable=False, index=True),
    Column("body", Text, nullable=False),
)

item = Table(
    "item",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("tag", KEY, nullable=False, index=True),
    Column("kind", KEY, nullable=False),
    Column("booked_on", Date, nullable=False),
    Column("body", Text, nullable=False),
)


inspection = dated("inspection", "item")
piece_use = dated("piece_use", "item")
exposure = dated("exposure", "item")
opinion = dated("opinion", "item")
strike = dated("strike", "item")
destruction = dated("destruction", "item")
fitting = dated("fitting", "item")

vehicle_change = dated("vehicle_change", "vehicle")
custody = dated("custody", "item")


verdict = Table(
    "verdict",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("item_id", ForeignKey("item.id", ondelete="RESTRICT"), nullable=False),
    Column("day", Date, nullable=False),
    Column("outcome", String(10), nullable=False),
    Column("rulebook_id", ForeignKey("rulebook.id", ondelete="RESTRICT"), nullable=False),
    Column("body", Text, nullable=False),
    Column("words", Text, nullable=False),
    Index("ix_verdict_item_id_day", "item_id", "day"),
)

trip = Table(
    "trip",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("ref", KEY, nullable=False, index=True),
    Column("first_on", Date, nullable=False),
    Column("body", Text, nullable=False),
)

trip_change = dated("trip_change", "trip")

rig = Table(
    "rig",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("ref", KEY, nullable=False, index=True),
    Column("trip", KEY, nullable=False),
    Column("day", Date, nullable=False),
    Column("body", Text, nullable=False),
)

debrief = Table(
    "debrief",
    METADATA,
    Column("id", ID, primary_key=True),
    Column("trip", KEY, nullable=False, index=True),
    Column("day", Date, nullable=False),
    Column("body", Text, nullable=False),
)

document = Table(
    "document",
    METADATA,
    Column("id", String(40), primary_key=True),
    Column("kind", KEY, nullable=False),
    Column("day", Date, nullable=False),
    Column("about", ID, nullable=False, index=True),
    Column("body", Text, nullable=False),
)

named_in = Table(  # which tags a document names, for whoever asks of a piece; follows from the documents' bodies
    "named_in",
    METADATA,
    Column("document_id", ForeignKey("document.id", ondelete="RESTRICT"), primary_key=True),
    Column("tag", KEY, primary_key=True, index=True),
)

ledger = Table(
    "ledger",
    METADATA,
    Column("id", Integer, primary_key=True, autoincrement=False),  # the place in this register
    Column("number", Integer, nullable=False),  # the place in its own chain
    Column("origin", String(12), nullable=False),
    Column("at", String(32), nullable=False),
    Column("by", ID, nullable=False),
    Column("deed", KEY, nullable=False),
    Column("body", Text, nullable=False),
    Column("before", String(64), nullable=False),
    Column("hash", String(64), nullable=False),
)

standing = Table(
    "standing",
    METADATA,
    Column("item_id", ForeignKey("item.id", ondelete="RESTRICT"), primary_key=True),
    Column("verdict_id", ForeignKey("verdict.id", ondelete="RESTRICT"), nullable=False),
    Column("outcome", String(10), nullable=False, index=True),
    Column("headline", Text, nullable=False),
    Column("next_due", Date, index=True),
    Column("holds_until", Date, index=True),
    Column("search", Text, nullable=False),
    Column("unloosened", String(10)),
    Column("tag", KEY, nullable=False, server_default="", index=True),
    Column("kind", KEY, nullable=False, server_default="", index=True),
    Column("owner", Text, nullable=False, server_default="", index=True),
    *(Column(name, Text, nullable=False, server_default="") for name in ("maker_mark", "serial", "place")),
    Column("vehicle", KEY, nullable=False, server_default=""),
    Column("basis", String(20), nullable=False, server_default=""),
    Column("rated", Double),
    Column("inspected_on", Date),
    Column("exposed", String(10), nullable=False, server_default="none"),
)

club_setting = Table(
    "club_setting",
    METADATA,
    Column("key", KEY, primary_key=True),
    Column("value", Text, nullable=False),
)

APPEND_ONLY = (
    rulebook,
    adoption,
    person,
    vehicle,
    item,
    inspection,
    piece_use,
    exposure,
    opinion,
    strike,
    destruction,
    fitting,
    custody,
    vehicle_change,
    verdict,
    trip,
    trip_change,
    rig,
    debrief,
    whereabouts,
    repair,
    item_change,
    quarantine,
    release,
    incident,
    incident_entry,
    recall,
    recall_entry,
    piece_call,
    stock_take,
    stock_entry,
    person_change,
    attachment_data,
    attachment,
    document,
    ledger,
)
