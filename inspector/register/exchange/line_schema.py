"""The JSON Schema of the lines that `json_lines` writes, made from the tables and the shapes of gear themselves."""

import json
from collections.abc import Mapping
from importlib.resources import files
from typing import Any

import msgspec
from sqlalchemy import Column, Date, Double, Integer, LargeBinary, Table

from inspector.gear.attachment import NewAttachment
from inspector.gear.changes import NewTripChange, NewVehicleChange
from inspector.gear.custody import NewCustody
from inspector.gear.debrief import NewDebrief
from inspector.gear.evidence import NewQuarantine, NewRelease
from inspector.gear.fitting import NewFitting
from inspector.gear.incident import NewIncident, NewIncidentEntry
from inspector.gear.inspection import NewInspection
from inspector.gear.item import NewItem
from inspector.gear.item_change import NewItemChange
from inspector.gear.opinion import NewOpinion
from inspector.gear.person import NewPersonChange, Person
from inspector.gear.recall_notice import NewPieceCall, NewRecall, NewRecallEntry
from inspector.gear.repair import NewRepair
from inspector.gear.rig import Rig
from inspector.gear.stock_take import NewStockEntry, NewStockTake
from inspector.gear.strike import NewDestruction, NewStrike
from inspector.gear.trip import Trip, Vehicle
from inspector.gear.use import NewExposure, NewUse
from inspector.gear.verdict import Explanation, Verdict
from inspector.gear.whereabouts import NewWhereabouts
from inspector.register.exchange.json_lines import AS_JSON
from inspector.register.tables import APPEND_ONLY

SCHEMA_FILE = "register_lines.schema.json"
_REF = "#/$defs/{name}"
_ANYTHING = "any object"
BODIES: Mapping[str, object] = {  # of every append-only table with a body, what it holds
    "person": Person,
    "vehicle": Vehicle,
    "item": NewItem,
    "inspection": NewInspection,
    "piece_use": NewUse,
    "exposure": NewExposure,
    "opinion": NewOpinion,
    "strike": NewStrike,
    "destruction": NewDestruction,
    "fitting": NewFitting,
    "custody": NewCustody,
    "vehicle_change": NewVehicleChange,
    "verdict": Verdict,
    "trip": Trip,
    "trip_change": NewTripChange,
    "rig": Rig,
    "debrief": NewDebrief,
    "whereabouts": NewWhereabouts,
    "repair": NewRepair,
    "item_change": NewItemChange,
    "quarantine": NewQuarantine,
    "release": NewRelease,
    "incident": NewIncident,
    "incident_entry": NewIncidentEntry,
    "stock_take": NewStockTake,
    "stock_entry": NewStockEntry,
    "person_change": NewPersonChange,
    "attachment": NewAttachment,
    "recall": NewRecall,
    "recall_entry": NewRecallEntry,
    "piece_call": NewPieceCall,
    "document": _ANYTHING,  # what the paper said, by its kind
    "ledger": _ANYTHING,
}
_WORDS = {"verdict": Explanation}
_THREE_TEXTS = {"type": "array", "items": {"type": "string"}, "minItems": 3, "maxItems": 3}
_LEDGER_BODY = {
    "type": "object",
    "required": ["facts", "rows"],
    "properties": {
        "facts": {"type": "object", "description": "What the deed says of itself."},
        "rows": {
            "description": "Each row that the deed wrote: its table, its id, the sha256 of its columns.",
            "type": "array",
            "items": _THREE_TEXTS,
        },
        "kept": {
            "description": "Each row written that may change: its table, its key, its checksum, empty once gone.",
            "type": "array",
            "items": _THREE_TEXTS,
        },
    },
}
_SAYS = (
    "A line of the exported history: one row of an append-only table, or one line of the ledger. Bodies are in SI, "
    "each figure with the text as it was typed. A body may lack what has a default here, and the body of an older or "
    "newer program may have more. The sha256 of a row, named by the ledger's line that wrote it, is of its columns as "
    "JSON with sorted keys and no spaces, where a column that holds JSON counts as its text and the bytes of a file as "
    "their sha256."
)


def line_schema() -> dict[str, Any]:
    """The schema as plain lists and dicts."""
    shapes = [one for one in (*BODIES.values(), *_WORDS.values()) if one != _ANYTHING]
    found, parts = msgspec.json.schema_components(shapes, ref_template=_REF)
    refs = {id(shape): schema for shape, schema in zip(shapes, found, strict=True)}
    rows = {table.name: _row(table, refs) for table in APPEND_ONLY}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Lines of an exported gear register",
        "description": _SAYS,
        "type": "object",
        "required": ["row", "table"],
        "additionalProperties": False,
        "properties": {"row": {"type": "object"}, "table": {"enum": [table.name for table in APPEND_ONLY]}},
        "allOf": [_when(name) for name in rows],
        "$defs": {**parts, **{_row_name(name): row for name, row in rows.items()}},
    }


def schema_text() -> str:
    """The schema as the text of its file."""
    return json.dumps(line_schema(), indent=1, sort_keys=True, ensure_ascii=False) + "\n"


def shipped_schema() -> bytes:
    """The schema's file as it comes with the program."""
    return (files("inspector.register.exchange") / SCHEMA_FILE).read_bytes()


def _when(name: str) -> dict[str, Any]:
    """Of a line of this table the row has this shape."""
    then = {"properties": {"row": {"$ref": _REF.format(name=_row_name(name))}}}
    return {"if": {"properties": {"table": {"const": name}}}, "then": then}


def _row_name(table: str) -> str:
    return f"row of {table}".replace(" ", "_")


def _row(table: Table, refs: Mapping[int, Any]) -> dict[str, Any]:
    columns = {column.name: _column(table, column, refs) for column in table.columns if not _is_bytes(column)}
    if any(_is_bytes(column) for column in table.columns):
        columns["size_bytes"] = {"type": "integer", "minimum": 0}
    return {"type": "object", "required": sorted(columns), "additionalProperties": False, "properties": columns}


def _column(table: Table, column: Column[Any], refs: Mapping[int, Any]) -> dict[str, Any]:
    if column.name in AS_JSON:
        shape = _WORDS[table.name] if column.name == "words" else BODIES[table.name]
        if table.name == "ledger":
            return _LEDGER_BODY
        return {"type": "object"} if shape == _ANYTHING else dict(refs[id(shape)])
    plain = _plain(column)
    return {"anyOf": [plain, {"type": "null"}]} if column.nullable else plain


def _plain(column: Column[Any]) -> dict[str, Any]:
    if isinstance(column.type, Date):
        return {"type": "string", "format": "date"}
    if isinstance(column.type, Integer):
        return {"type": "integer"}
    return {"type": "number"} if isinstance(column.type, Double) else {"type": "string"}


def _is_bytes(column: Column[Any]) -> bool:
    return isinstance(column.type, LargeBinary)
