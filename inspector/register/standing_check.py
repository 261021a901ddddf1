"""Whether what the lists show of each piece is what was judged last: it lies beside the ledger, and may change."""

from collections.abc import Iterator, Sequence

from sqlalchemy import Connection, RowMapping, bindparam, select

from inspector.gear.lists import Fault
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Verdict
from inspector.register.accounts import Accounts
from inspector.register.current import IS_WITHDRAWN, TAG
from inspector.register.rows import from_body
from inspector.register.streams import AT_ONCE
from inspector.register.tables import item, standing, verdict

_PIECES = select(item.c.id, TAG, IS_WITHDRAWN).execution_options(yield_per=AT_ONCE)
_STANDING = select(standing).where(standing.c.item_id.in_(bindparam("pieces", expanding=True)))
_VERDICTS = select(verdict.c.item_id, verdict.c.id).where(verdict.c.item_id.in_(bindparam("pieces", expanding=True)))
_BODIES = select(verdict.c.id, verdict.c.body).where(verdict.c.id.in_(bindparam("verdicts", expanding=True)))


def standing_faults(connection: Connection, accounts: Accounts) -> Iterator[Fault]:
    """What stands of a piece and is not its last verdict, of all that were entered."""
    for some in connection.execute(_PIECES).partitions():
        pieces = [str(piece) for piece, *_ in some]
        rows = {str(row["item_id"]): row for row in connection.execute(_STANDING, {"pieces": pieces}).mappings()}
        last = _last_verdicts(connection, pieces, accounts)
        bodies = _bodies(connection, [str(row["verdict_id"]) for row in rows.values()])
        for piece, tag, withdrawn in some:
            row, wanted = rows.get(piece), last.get(piece)
            if withdrawn:
                if row is not None:
                    yield Fault("standing", f"{tag} was withdrawn, and still stands in the lists")
            elif row is None:
                yield Fault("standing", f"nothing stands of {tag}")
            elif row["verdict_id"] != wanted:
                yield Fault("standing", f"what stands of {tag} is not its last verdict")
            elif row["tag"] != tag or not _says_the_same(row, bodies[str(wanted)]):
                yield Fault("standing", f"what stands of {tag} is not what its last verdict says")


def _last_verdicts(connection: Connection, pieces: Sequence[str], accounts: Accounts) -> dict[str, str]:
    """The verdict of each piece that was entered last, by the ledger's order."""
    of = {str(key): str(piece) for piece, key in connection.execute(_VERDICTS, {"pieces": pieces})}
    places = accounts.places(verdict.name, list(of))
    return {of[key]: key for key in sorted(places, key=places.__getitem__)}


def _bodies(connection: Connection, verdicts: Sequence[str]) -> dict[str, str]:
    return {str(key): str(body) for key, body in connection.execute(_BODIES, {"verdicts": verdicts})}


def _says_the_same(row: RowMapping, body: str) -> bool:
    said = from_body(body, Verdict)
    due = None if said.outcome is Outcome.RETIRE else said.next_due
    told = (said.outcome.value, due, said.holds_until)
    return told == (row["outcome"], row["next_due"], row["holds_until"])
