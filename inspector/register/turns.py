"""Whose turn it is to write, and what to make of a database that breaks off in the middle of a deed.

Whoever writes has the register to himself: SQLite locks its file (BEGIN IMMEDIATE), a server hands out one lock a
register, taken before anything is read. So the ledger's head and whatever a deed looked up still hold as it is kept.
What went wrong is sorted by how far the deed had come: before it began to be kept nothing was changed, and it may be
done again; whether a keeping whose answer was lost took place is asked of the ledger.
"""

from collections.abc import Callable
from time import sleep
from typing import TypeVar

from sqlalchemy import Connection, Engine, select, text
from sqlalchemy.exc import DataError, DBAPIError

from inspector.language import tr
from inspector.refused import Refused
from inspector.register.tables import ledger

Begun = TypeVar("Begun")

PATIENCE_S = 15  # how long a deed waits for its turn on a server
_TRIES = 3
_PAUSE_S = 0.2
_SERIALIZATION, _DEADLOCK, _NO_LOCK = "40001", "40P01", "55P03"
_TURN = "SELECT pg_advisory_xact_lock(hashtext('register'), hashtext(current_schema() || ' ' || :branch))"


class Disturbed(Refused):
    """Something outside the deed stopped it, and none of it is kept.

    may_repeat: whether nothing was kept since `Book.deed_begins`, so that all of it can be done again from its start.
    """

    may_repeat = False


class Unknown(Refused):
    """The answer to the keeping of a deed was lost. head: the hash of its ledger line, by which it can be sought."""

    def __init__(self, head: str) -> None:
        why = tr("The connection broke while it was being kept: nobody can tell yet whether it was.")
        what = tr("Do not do it again before you know. `inspector verify --against {head}` tells: if that head stands "
                  "in the ledger, it was kept.", head=head[:16])  # fmt: skip
        super().__init__(tr("register"), why, what)
        self.head = head


def take_turn(connection: Connection) -> None:
    """Wait until nobody else writes into this register, as the first statement of a transaction on a server.

    The branches of a database take turns by themselves.
    """
    connection.execute(text(_TURN), {"branch": connection.get_execution_options().get("branch", "")})


def patiently(begin: Callable[[], Begun]) -> Begun:
    """Begin a transaction, again where somebody else was in the way: nothing was done in it yet."""
    for _ in range(_TRIES - 1):
        try:
            return begin()
        except DBAPIError as error:
            if not (is_in_the_way(error) or is_gone(error)):
                raise
            sleep(_PAUSE_S)
    return begin()


def keep(connection: Connection, head: str) -> None:
    """Commit. Where the answer is lost, ask the ledger whether the line with this hash is there.

    Refused: `Disturbed` where it was not kept, `Unknown` where nobody can be asked.
    """
    try:
        connection.commit()
    except DBAPIError as error:
        if not is_gone(error):
            raise
        try:
            kept = patiently(lambda: _is_kept(connection.engine, head))
        except DBAPIError:
            raise Unknown(head) from error
        if not kept:
            raise  # as any other end of the connection: nothing was changed


def _is_kept(engine: Engine, head: str) -> bool:
    """Whether the line stands in the ledger; asked in a turn of one's own, so that the lost one has ended by then."""
    with engine.connect().execution_options(write=True) as other:
        return other.execute(select(ledger.c.id).where(ledger.c.hash == head)).first() is not None


def is_in_the_way(error: DBAPIError) -> bool:
    """Whether somebody else's work stopped this one: a lock, a deadlock, a row changed under it."""
    state = getattr(error.orig, "sqlstate", None)
    locked = any(word in str(error.orig) for word in ("is locked", "is busy"))
    return state in {_SERIALIZATION, _DEADLOCK, _NO_LOCK} or (state is None and locked)


def is_gone(error: DBAPIError) -> bool:
    """Whether the server or the way to it is gone."""
    state = str(getattr(error.orig, "sqlstate", "") or "")
    return bool(error.connection_invalidated) or state.startswith(("08", "57P"))


def refusal_of(error: DBAPIError, *, nothing_kept: bool) -> Refused | None:
    """What to tell of an error in the middle of a deed; None for a fault of the program itself."""
    told: Refused | None = None
    if is_in_the_way(error):
        told = Disturbed(tr("register"), tr("Another window or program is writing to it."),
                         tr("Wait a moment and do it again; nothing was changed."))  # fmt: skip
    elif is_gone(error):
        told = Disturbed(tr("register"), tr("The server does not answer any more."),
                         tr("Nothing was changed. See whether network and server run, and do it again."))  # fmt: skip
    elif isinstance(error, DataError):
        told = Refused(tr("register"), tr("The database cannot hold what was written ({why}).", why=error.orig),
                       tr("Write it shorter and without signs that cannot be seen; nothing was changed."))  # fmt: skip
    if isinstance(told, Disturbed):
        told.may_repeat = nothing_kept
    return told
