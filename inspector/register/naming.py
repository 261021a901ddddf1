"""Which tags a document names: it is written down beside it, since looking through every body takes too long in years.

What is written follows from the document and from the tags there were as it was made, or as it came from another copy.
"""

import json
import sqlite3
from collections.abc import Iterable, Iterator, Sequence, Set

from sqlalchemy import Connection, bindparam, insert, select, union

from inspector.gear.lists import Fault
from inspector.register.accounts import Accounts
from inspector.register.aside import as_key, as_text, aside, marks
from inspector.register.columns import KEY
from inspector.register.events import shares
from inspector.register.streams import AT_ONCE, few_at_a_time
from inspector.register.tables import document, item, named_in
from inspector.register.year_tables import item_change

_LONGEST = KEY.length or 0
_TAGS = union(*(select(of.c.tag).where(of.c.tag.in_(bindparam("texts", expanding=True))) for of in (item, item_change)))
_OF_THESE = select(named_in.c.document_id, named_in.c.tag).where(
    named_in.c.document_id.in_(bindparam("numbers", expanding=True))
)
_OF_NOTHING = select(named_in.c.document_id, named_in.c.tag).where(named_in.c.document_id.not_in(select(document.c.id)))
_GIVEN = "SELECT tag, line FROM given WHERE tag IN ({})"
_BODY = select(document.c.body).where(document.c.id == bindparam("number"))


def texts(value: object) -> Iterator[str]:
    """Every text in what was read from JSON, however deep."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, list | dict):
        for one in value.values() if isinstance(value, dict) else value:
            yield from texts(one)


def name_tags(connection: Connection, number: str, body: str) -> None:
    """Write down which tags a new document names."""
    said = sorted(_texts_of(body))
    tags = {str(tag) for some in shares(said) for tag in connection.execute(_TAGS, {"texts": some}).scalars()}
    if tags:
        connection.execute(insert(named_in), [{"document_id": number, "tag": tag} for tag in sorted(tags)])


def name_all(connection: Connection, numbers: Iterable[str]) -> None:
    """The same of documents that came with their rows."""
    for number in numbers:
        name_tags(connection, number, str(connection.execute(_BODY, {"number": number}).scalar_one()))


def naming_faults(connection: Connection, accounts: Accounts) -> Iterator[Fault]:
    """Documents of which something else is written down than what they name.

    A tag that came later than the document is written down of it only where the document came later still, from
    another copy.
    """
    with aside() as noted:
        _note_tags(connection, accounts, noted)
        for some in connection.execute(few_at_a_time(document)).partitions():
            texts_said = {str(row.id): _texts_of(str(row.body)) for row in some}
            since = _since(noted, {text for said in texts_said.values() for text in said})
            written = _written(connection, list(texts_said))
            lines = accounts.first_lines(document.name, list(texts_said))
            for number, said in texts_said.items():
                named, line = written.get(number, set()), lines.get(number, 0)
                wanted = {text for text in said if since.get(text, line) < line}
                if lost := sorted(wanted - named):
                    yield Fault(named_in.name, f"that {number} names {lost[0]} is not written down", line)
                if false := sorted(named - said):
                    yield Fault(named_in.name, f"{number} does not name {false[0]}", line)
    for number in dict.fromkeys(str(one) for one, _ in connection.execute(_OF_NOTHING)):
        yield Fault(named_in.name, f"there is no document {number}")


def _note_tags(connection: Connection, accounts: Accounts, noted: sqlite3.Connection) -> None:
    """Note of every tag the line that gave it first."""
    noted.execute("CREATE TABLE given (tag PRIMARY KEY, line) WITHOUT ROWID")
    put = "INSERT INTO given VALUES (?, ?) ON CONFLICT DO UPDATE SET line = min(line, excluded.line)"
    for table in (item, item_change):
        asked = select(table.c.id, table.c.tag).execution_options(yield_per=AT_ONCE)
        for some in connection.execute(asked).partitions():
            lines = accounts.first_lines(table.name, [str(key) for key, _ in some])
            noted.executemany(put, ((as_key(str(tag)), lines.get(str(key), 0)) for key, tag in some))


def _since(noted: sqlite3.Connection, said: Set[str]) -> dict[str, int]:
    """The line that gave a tag first, by the tag, of those texts that are one."""
    found: dict[str, int] = {}
    for some in shares([as_key(text) for text in said]):
        rows = noted.execute(_GIVEN.format(marks(some)), some)
        found |= {as_text(tag): int(line) for tag, line in rows}
    return found


def _written(connection: Connection, numbers: Sequence[str]) -> dict[str, set[str]]:
    """The tags that are written down of each of some documents."""
    found: dict[str, set[str]] = {}
    for number, tag in connection.execute(_OF_THESE, {"numbers": numbers}):
        found.setdefault(str(number), set()).add(str(tag))
    return found


def _texts_of(body: str) -> frozenset[str]:
    """The texts of a document that can be a tag; none of one that cannot be read, of which the ledger tells."""
    try:
        return frozenset(text for text in texts(json.loads(body)) if len(text) <= _LONGEST)
    except ValueError:
        return frozenset()
