"""Proof for the few rows that may change: what stands of a piece, the club's settings, contact details.

The line of the deed that wrote such a row last says its checksum. Columns are named here one by one, so that a later
migration may add others; one that changes what stands in these must write them by a deed. Contact details can be
taken out for good, so the ledger, which stays, has only eight bits of them: enough to notice a slip of the disk, and
far too little to guess from. The name of this copy is in no deed: under another name its lines go on just as well.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice
from typing import Any

from sqlalchemy import Column, Connection, RowMapping, Table, func, select

from inspector.gear.lists import Fault
from inspector.register import tables, year_tables
from inspector.register.accounts import Accounts
from inspector.register.aside import is_storable
from inspector.register.canonical import canonical, digest
from inspector.register.field_setting import FOLLOWS, WITHOUT_CONTACTS
from inspector.register.streams import AT_ONCE

_CRC_POLYNOMIAL = 0x07
_STANDING = (
    "item_id", "verdict_id", "outcome", "headline", "next_due", "holds_until", "search", "unloosened", "tag", "kind",
    "owner", "maker_mark", "serial", "place", "vehicle", "basis", "rated", "inspected_on", "exposed",
)  # fmt: skip
_FOLLOWED: dict[str, tuple[Table, tuple[str, ...]]] = {
    "standing": (tables.standing, _STANDING),
    "club_setting": (tables.club_setting, ("key", "value")),
    "contact": (year_tables.contact, ("person_id", "body")),
}


def is_followed(table: str, key: str) -> bool:
    """Whether the ledger says the checksum of a row that may change.

    A changed passphrase opens nothing. What every copy writes by itself, each on its own day, follows from the facts.
    """
    return table in _FOLLOWED and not (table == "club_setting" and key in FOLLOWS)


def checksum(table: str, row: Mapping[Any, Any]) -> str:
    """What the ledger says of a row that may change."""
    _, columns = _FOLLOWED[table]
    signed = {name: row[name] for name in columns}
    return f"{_crc8(canonical(signed).encode()):02x}" if table == "contact" else digest(signed)


def _crc8(data: bytes) -> int:
    """CRC-8: every single changed bit shows, of other changes 255 in 256."""
    left = 0
    for byte in data:
        left ^= byte
        for _ in range(8):
            left = (left << 1) ^ (_CRC_POLYNOMIAL if left & 0x80 else 0)
            left &= 0xFF
    return left


def kept_faults(connection: Connection, accounts: Accounts) -> Iterator[Fault]:
    """Rows that are not what the last line about them says. Rows of which no line tells are older than this proof."""
    left_out = select(tables.club_setting.c.value).where(tables.club_setting.c.key == WITHOUT_CONTACTS)
    goes_without = {"contact"} if connection.execute(left_out).first() else set()
    for name, (table, columns) in _FOLLOWED.items():
        if not _may_read(connection, name):
            continue
        told = accounts.kept(name)
        while some := list(islice(told, AT_ONCE)):
            rows = _rows(connection, table.c[columns[0]], [key for key, *_ in some])
            for key, own, line in some:
                row = rows.get(key)
                if row is None and name in goes_without:
                    continue
                if (checksum(name, row) if row is not None else "") != own:
                    yield Fault(name, f"{key} is not what was entered last", line)


def _rows(connection: Connection, column: Column[Any], keys: Sequence[str]) -> dict[str, RowMapping]:
    """The rows with these keys; no database has one that it could not be asked for."""
    asked = select(column.table).where(column.in_([key for key in keys if is_storable(key)]))
    return {str(row[column.name]): row for row in connection.execute(asked).mappings()}


def _may_read(connection: Connection, table: str) -> bool:
    """Whether this login may: contact details on a server are for officers alone."""
    if connection.dialect.name == "sqlite":
        return True
    return bool(connection.execute(select(func.has_table_privilege(table, "SELECT"))).scalar_one())
