"""A place beside the register for what a long work must note: in memory while it is little, then in a file of its own.

What is noted of a long history would be too much for memory, and some logins may write nothing into the register.
"""

import sqlite3
from collections.abc import Iterator, Sized
from contextlib import closing, contextmanager

from inspector.language import tr
from inspector.refused import Refused

_CACHE_KIB = 4096  # of it in memory; SQLite writes the rest into a temporary file without a name


class NoPlaceAside(Refused):
    """Nothing more can be noted: it tells nothing of the register."""


@contextmanager
def aside() -> Iterator[sqlite3.Connection]:
    """A database that nobody else sees, and that is gone afterwards. Raises NoPlaceAside where its disk is full."""
    try:
        with closing(sqlite3.connect("", isolation_level=None)) as made:
            for pragma in ("journal_mode=OFF", "synchronous=OFF", f"cache_size=-{_CACHE_KIB}"):
                made.execute(f"PRAGMA {pragma}")
            made.execute("BEGIN")  # one piece of work to its end: nothing of it is ever taken back
            yield made
    except sqlite3.Error as error:  # the register's own errors come in SQLAlchemy's wrapping
        why = tr("There is no place to note what was looked through ({why}).", why=error)
        raise NoPlaceAside(tr("register"), why, tr("Make room on this computer's disk.")) from error


def marks(some: Sized) -> str:
    """A place in a question for each of some values."""
    return ", ".join("?" * len(some))


def as_key(text: str) -> bytes:
    """A text as it is noted: whatever a damaged line says is taken as it is, half a sign and all."""
    return text.encode("utf-8", "surrogatepass")


def is_storable(text: str) -> bool:
    """Whether any database could hold it as a text."""
    return "\0" not in text and text == text.encode("utf-8", "replace").decode("utf-8")


def as_text(key: bytes) -> str:
    """The text again."""
    return key.decode("utf-8", "surrogatepass")
