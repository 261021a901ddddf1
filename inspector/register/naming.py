"""Which tags a document names: it is written down beside it, since looking through every body takes too long in years.

What is written follows from the document and from the tags there were as it was made, or as it came from another copy.
"""

import json
from collections.abc import Iterable, Iterator, Mapping

from sqlalchemy import Connection, bindparam, insert, select, union

from inspector.gear.lists import Fault
from inspector.register.columns import KEY
from inspector.register.events import shares
from inspector.register.streams import few_at_a_time
from inspector.register.tables import document, item, named_in
from inspector.register.year_tables import item_change

_LONGEST = KEY.length or 0
_TAGS = union(*(select(of.c.tag).where(of.c.tag.in_(bindparam("texts", expanding=True))) for of in (item, item_change)))
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


def naming_faults(connection: Connection, lines: Mapping[tuple[str, str], int]) -> Iterator[Fault]:
    """Documents of which something else is written down than what they name.

    lines: the line of the ledger that names a row first, by table and id. A tag that came later than the document is
    written down of it only where the document came later still, from another copy.
    """
    since = _since(connection, lines)
    written: dict[str, set[str]] = {}
    for number, tag in connection.execute(select(named_in.c.document_id, named_in.c.tag)):
        written.setdefault(str(number), set()).add(str(tag))
    for row in connection.execute(few_at_a_time(document)).mappings():
        number = str(row["id"])
        said, named = _texts_of(str(row["body"])), written.pop(number, set())
        line = lines.get((document.name, number), 0)
        wanted = {text for text in said if since.get(text, line) < line}
        if lost := sorted(wanted - named):
            yield Fault(named_in.name, f"that {number} names {lost[0]} is not written down", line)
        if false := sorted(named - said):
            yield Fault(named_in.name, f"{number} does not name {false[0]}", line)
    for number in written:
        yield Fault(named_in.name, f"there is no document {number}")


def _since(connection: Connection, lines: Mapping[tuple[str, str], int]) -> dict[str, int]:
    """The line that gave a tag first, by the tag."""
    found: dict[str, int] = {}
    for table in (item, item_change):
        for key, tag in connection.execute(select(table.c.id, table.c.tag)):
            line = lines.get((table.name, str(key)), 0)
            found[str(tag)] = min(line, found.get(str(tag), line))
    return found


def _texts_of(body: str) -> frozenset[str]:
    """The texts of a document that can be a tag; none of one that cannot be read, of which the ledger tells."""
    try:
        return frozenset(text for text in texts(json.loads(body)) if len(text) <= _LONGEST)
    except ValueError:
        return frozenset()
