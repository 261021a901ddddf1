"""A machine's clock that was set back: no deed is entered before the last one.

Verdicts are given for a day and the last one stands, so a deed entered on an earlier day would let what ran out since
count again without anybody noticing.
"""

import json
from datetime import datetime, timedelta

from sqlalchemy import Connection, select

from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.tables import ledger

APART = timedelta(hours=1)  # by so much two machines on one register may differ, unless it is another day
CLOCK_DEED = "clock"  # the deed by which a person says that the clock is right all the same


def last_moment(connection: Connection, origin: str) -> datetime | None:
    """When this copy's last deed was entered, as its machine's clock said; None for an empty ledger.

    origin: of this copy; lines that a merge takes over were written by other clocks. Where it has no line yet, the
    last of all counts.
    """
    found = select(ledger.c.at).order_by(ledger.c.id.desc()).limit(1)
    own = connection.execute(found.where(ledger.c.origin == origin)).scalar_one_or_none()
    text = own or connection.execute(found).scalar_one_or_none()
    try:
        return datetime.fromisoformat(str(text)) if text else None
    except ValueError:  # what is damaged is told by `verify`
        return None


def is_set_back(last: datetime | None, now: datetime) -> bool:
    """Whether a clock stands before the last deed: on an earlier day, or by more than two machines differ."""
    if last is None or (last.tzinfo is None) != (now.tzinfo is None):
        return False
    return now.date() < last.date() or now < last - APART


def check_clock(connection: Connection, origin: str, now: datetime) -> None:
    """Refuse a moment before the last deed."""
    last = last_moment(connection, origin)
    if last is not None and is_set_back(last, now):
        raise set_back(last, now)


def set_back(last: datetime, now: datetime) -> Refused:
    """What to tell of it."""
    why = tr(
        "This machine's clock says {now} on {day}, but the last entry was made at {then} on {last}.",
        now=f"{now:%H:%M}", day=show_day(now.date()), then=f"{last:%H:%M}", last=show_day(last.date()),
    )  # fmt: skip
    what = tr(
        "Set the machine's date and time right, and do it again. If they are right and the last entry was made by a "
        "clock that ran ahead, say so: inspector clock-is-right --why TEXT, or in the window under Register."
    )
    return Refused(tr("clock"), why, what)


def last_tick(connection: Connection) -> int:
    """The order of the last id that was given, so that none given later sorts before it; 0 where none is told."""
    body = connection.execute(select(ledger.c.body).order_by(ledger.c.id.desc()).limit(1)).scalar_one_or_none()
    try:
        rows = json.loads(str(body))["rows"] if body else []
        return max((_tick(str(key)) for _, key, _ in rows), default=0)
    except (ValueError, KeyError, TypeError):
        return 0


def _tick(key: str) -> int:
    """Milliseconds and order of a time-ordered id; 0 for any other."""
    plain = key.replace("-", "")
    if len(plain) != 32 or plain[12] != "7":
        return 0
    return (int(plain[:12], 16) << 12) | int(plain[13:16], 16)
