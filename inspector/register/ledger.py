"""The ledger: one line a deed, each naming the hash of the line it follows, each naming the rows it wrote.

A line's body is canonical JSON. A row's digest is the sha256 of its columns in canonical JSON, so `verify` finds a
changed row as surely as a changed line.
"""

import json
from collections.abc import Iterator, Mapping
from datetime import datetime

from msgspec import Struct
from sqlalchemy import Connection, select

from inspector.gear.lists import Fault, Verified
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.accounts import Accounts
from inspector.register.aside import aside
from inspector.register.canonical import canonical, digest
from inspector.register.chains import GENESIS, Chains, hash_of
from inspector.register.gaps import gaps_told
from inspector.register.kept import kept_faults
from inspector.register.naming import naming_faults
from inspector.register.standing_check import standing_faults
from inspector.register.streams import few_at_a_time
from inspector.register.tables import APPEND_ONLY, ledger

MOVED, ARRIVED = "move away", "arrive"  # the last line where a register left, the first where it went on
_LAST = select(ledger.c.id, ledger.c.number, ledger.c.hash, ledger.c.deed).order_by(ledger.c.id.desc()).limit(1)
_FOLLOWED = tuple(table for table in APPEND_ONLY if table is not ledger)
Tip = tuple[int, str]  # number and hash of the line that the next one follows


class Wrote(Struct, frozen=True):
    """A row that a deed wrote."""

    table: str
    id: str
    digest: str


def head(connection: Connection) -> tuple[int, str]:
    """Place and hash of the last line; (0, zeros) for an empty ledger."""
    place, _, own, _ = _last(connection)
    return place, own


def since(connection: Connection, number: int) -> tuple[tuple[int, str], ...]:
    """Number and hash of every line after one, the oldest first."""
    rows = connection.execute(select(ledger.c.id, ledger.c.hash).where(ledger.c.id > number).order_by(ledger.c.id))
    return tuple((int(row[0]), str(row[1])) for row in rows)


class Deed(Struct, frozen=True):
    """What a line says: who did what, when, with which facts, on which copy of the register."""

    name: str
    by: str
    at: datetime
    facts: Mapping[str, object]
    origin: str


def add_line(
    connection: Connection,
    deed: Deed,
    wrote: list[Wrote],
    after: Tip | None = None,
    kept: Mapping[tuple[str, str], str] | None = None,
) -> str:
    """Append a line for the deed; returns its hash. Refused where the register was moved away.

    after: the line it follows, where that is not the last one. kept: checksums of the rows that may change, by table
    and key.
    """
    place, number, before, last = _last(connection)
    if last == MOVED and deed.name != ARRIVED:
        raise moved_away(moved_to(connection))
    if after:
        number, before = after
    told = {"facts": deed.facts, "rows": [[one.table, one.id, one.digest] for one in wrote]}
    body = canonical(told | ({"kept": [[*key, own] for key, own in kept.items()]} if kept else {}))
    row = {"id": place + 1, "number": number + 1, "origin": deed.origin, "at": deed.at.isoformat(timespec="seconds")}
    row |= {"by": deed.by, "deed": deed.name, "body": body, "before": before}
    row["hash"] = hash_of(row)
    connection.execute(ledger.insert(), row)
    return str(row["hash"])


def tip(connection: Connection) -> Tip:
    """Number and hash of the last line."""
    _, number, own, _ = _last(connection)
    return number, own


def _last(connection: Connection) -> tuple[int, int, str, str]:
    """Place, number, hash and deed of the last line."""
    row = connection.execute(_LAST).first()
    return (int(row[0]), int(row[1]), str(row[2]), str(row[3])) if row else (0, 0, GENESIS, "")


def moved_to(connection: Connection) -> str:
    """Where the register went; empty where it is still here."""
    found = select(ledger.c.deed, ledger.c.body).order_by(ledger.c.id.desc()).limit(1)
    row = connection.execute(found).first()
    return str(json.loads(row[1])["facts"]["to"]) if row and row[0] == MOVED else ""


def moved_away(to: str) -> Refused:
    """Nothing is written into a register that went on elsewhere."""
    why = tr("It was moved to {to}; what lies here is how it was then.", to=to)
    return Refused(tr("register"), why, tr("Open it there. Here it can be looked at, and nothing is written."))


def verify(connection: Connection, against: str = "") -> Verified:
    """Recompute the chain and every row's digest, and hold what stands against them.

    against: a head printed on a document, sought in the chain.
    """
    faults: list[Fault] = []
    with aside() as noted:
        accounts, chains, seen, known = Accounts(noted), Chains(noted), False, set[Fault]()
        for some in connection.execute(few_at_a_time(ledger).order_by(ledger.c.id)).mappings().partitions():
            for row in some:
                faults += chains.faults_of(row)
                seen = seen or (bool(against) and str(row["hash"]).startswith(against))
                known |= gaps_told(row)
            accounts.take(some)
        faults += chains.faults_at_end()
        faults += _row_faults(connection, accounts)
        faults += kept_faults(connection, accounts)
        gaps = tuple(one for one in faults if one in known)
        faults = [one for one in faults if one not in known]
        if not faults:  # what stands is held against verdicts that are as they were entered
            faults += standing_faults(connection, accounts)
            faults += naming_faults(connection, accounts)
        row_count = accounts.row_count
    if against and not seen:
        faults.append(Fault("ledger", f"no line has the head {against}: lines were cut off or written anew after it"))
    return Verified(chains.last_id, row_count, chains.head, tuple(faults), gaps)


def _row_faults(connection: Connection, accounts: Accounts) -> Iterator[Fault]:
    for table in _FOLLOWED:
        columns, at = tuple(table.c.keys()), table.c.keys().index("id")
        for some in connection.execute(few_at_a_time(table)).partitions():
            named = accounts.meet(table.name, [str(row[at]) for row in some])
            for row in some:
                lines = named.pop(str(row[at]), None)
                if lines is None:
                    yield Fault(table.name, f"row {row[at]} is in no line of the ledger")
                elif digest(dict(zip(columns, row, strict=True))) not in lines:
                    yield Fault(table.name, f"row {row[at]} was changed after it was written", max(lines.values()))
    for name, key, line in accounts.gone():
        yield Fault(name, f"row {key} is gone", line)
