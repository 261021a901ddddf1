"""Whether what the lists show of each piece is what was judged last: it lies beside the ledger, and may change."""

from collections.abc import Iterable, Iterator

from sqlalchemy import Connection, RowMapping, select

from inspector.gear.lists import Fault
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Verdict
from inspector.register.current import IS_WITHDRAWN, TAG
from inspector.register.rows import from_body
from inspector.register.tables import item, standing, verdict


def standing_faults(connection: Connection, entered: Iterable[str]) -> Iterator[Fault]:
    """What stands of a piece and is not its last verdict. entered: ids of verdicts, in the order of the ledger."""
    of = {str(key): str(piece) for key, piece in connection.execute(select(verdict.c.id, verdict.c.item_id))}
    last = {of[key]: key for key in entered if key in of}
    rows = {str(row["item_id"]): row for row in connection.execute(select(standing)).mappings()}
    for piece, tag, withdrawn in connection.execute(select(item.c.id, TAG, IS_WITHDRAWN)):
        row, wanted = rows.get(piece), last.get(piece)
        if withdrawn:
            if row is not None:
                yield Fault("standing", f"{tag} was withdrawn, and still stands in the lists")
        elif row is None:
            yield Fault("standing", f"nothing stands of {tag}")
        elif row["verdict_id"] != wanted:
            yield Fault("standing", f"what stands of {tag} is not its last verdict")
        elif row["tag"] != tag or not _says_the_same(connection, row):
            yield Fault("standing", f"what stands of {tag} is not what its last verdict says")


def _says_the_same(connection: Connection, row: RowMapping) -> bool:
    kept = connection.execute(select(verdict.c.body).where(verdict.c.id == row["verdict_id"])).scalar_one()
    said = from_body(str(kept), Verdict)
    due = None if said.outcome is Outcome.RETIRE else said.next_due
    told = (said.outcome.value, due, said.holds_until)
    return told == (row["outcome"], row["next_due"], row["holds_until"])
