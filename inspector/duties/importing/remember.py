"""What somebody said of the columns of a list, kept on this machine for the next file with the same headings."""

import hashlib
from dataclasses import replace

from inspector.duties.importing.words import plain
from inspector.duties.office import Office
from inspector.gear.import_list import Asks, Column, Matching
from inspector.register.rows import from_body, to_body


def remember(office: Office, matching: Matching) -> None:
    """Keep how these headings are read."""
    if matching.head:
        office.machine.put(_key(matching), to_body(matching))


def recalled(office: Office, proposed: Matching) -> Matching | None:
    """The columns of a new file as they were read last time; None where such headings never came.

    What this file's own columns prove of signs and orders goes before what an older file was said to mean.
    """
    try:
        known = from_body(office.machine.get(_key(proposed)), Matching)
    except ValueError:
        return None
    if len(known.columns) != len(proposed.columns):
        return None
    columns = tuple(map(_again, known.columns, proposed.columns))
    return replace(proposed, columns=columns, stated_on=known.stated_on, shared_serials=known.shared_serials)


def _again(known: Column, new: Column) -> Column:
    decimal = new.decimal if Asks.DECIMAL in new.proven else known.decimal
    order = new.order if Asks.ORDER in new.proven else known.order
    return replace(known, at=new.at, heading=new.heading, decimal=decimal, order=order, proven=new.proven)


def _key(matching: Matching) -> str:
    headings = "\n".join(plain(one.heading) for one in matching.columns)
    return f"import-{hashlib.sha256(headings.encode()).hexdigest()[:24]}"
