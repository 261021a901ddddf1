"""What happened to a piece, out of every table that tells of it, by one question."""

from datetime import date
from functools import cache
from typing import Any

from msgspec import Struct
from sqlalchemy import Connection, Select, String, bindparam, literal, select, union_all

from inspector.register.tables import (
    custody,
    destruction,
    document,
    exposure,
    fitting,
    inspection,
    opinion,
    piece_use,
    strike,
    verdict,
)
from inspector.register.year_tables import attachment, item_change, piece_call, quarantine, release, repair, whereabouts

_HAPPENED = (
    (inspection, "inspection"),
    (piece_use, "use"),
    (exposure, "exposure"),
    (opinion, "opinion"),
    (strike, "strike"),
    (destruction, "destruction"),
    (fitting, "fitting"),
    (custody, "custody"),
    (whereabouts, "whereabouts"),
    (repair, "repair"),
    (item_change, "item_change"),
    (quarantine, "quarantine"),
    (release, "release"),
    (piece_call, "piece_call"),
)


class HistoryLine(Struct, frozen=True):
    """A row of a piece's history as stored. what: the name of its table; key: the entry's id."""

    on: date
    what: str
    key: str
    body: str


def history(connection: Connection, item_id: str) -> tuple[HistoryLine, ...]:
    """Everything that happened to a piece, newest first."""
    return tuple(HistoryLine(*row) for row in connection.execute(_history_question(), {"piece": item_id}))


@cache
def _history_question() -> Select[Any]:
    """Made once, since making it takes longer than asking it."""
    piece = bindparam("piece", type_=String())
    parts = [
        select(table.c.day, literal(what).label("what"), table.c.id.label("key"), table.c.body).where(
            table.c.item_id == piece
        )
        for table, what in _HAPPENED
    ]
    said = select(verdict.c.day, literal("verdict"), verdict.c.id, verdict.c.words).where(verdict.c.item_id == piece)
    papers = select(document.c.day, literal("document"), document.c.id, document.c.kind)
    files = select(attachment.c.day, literal("attachment"), attachment.c.id, attachment.c.body)
    parts += [said, papers.where(document.c.about == piece), files.where(attachment.c.about == piece)]
    rows = union_all(*parts).subquery()
    return select(rows.c.day, rows.c.what, rows.c.key, rows.c.body).order_by(rows.c.day.desc(), rows.c.key.desc())
