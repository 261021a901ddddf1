"""What the gear list finds and sorts by stands in the row it reads, in place of within the bookings."""

import json
from datetime import date
from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None

_TEXTS = {name: sa.Text() for name in ("owner", "maker_mark", "serial", "place")}
_WORDS = {"tag": sa.String(80), "kind": sa.String(80), **_TEXTS, "vehicle": sa.String(80), "basis": sa.String(20)}
_Rows = dict[str, list[tuple[str, Any]]]


def upgrade() -> None:
    """Add the columns and fill them from what is known of each piece."""
    for name, kind in _WORDS.items():
        op.add_column("standing", sa.Column(name, kind, nullable=False, server_default=""))
    op.add_column("standing", sa.Column("rated", sa.Double(), nullable=True))
    op.add_column("standing", sa.Column("inspected_on", sa.Date(), nullable=True))
    op.add_column("standing", sa.Column("exposed", sa.String(10), nullable=False, server_default="none"))
    for name in ("tag", "kind", "owner"):
        op.create_index(op.f(f"ix_standing_{name}"), "standing", [name])
    _fill(op.get_bind())


def _fill(connection: sa.Connection) -> None:
    names = ("item_change", "fitting", "whereabouts", "inspection", "exposure", "strike")
    tables = {name: _events(connection, name) for name in names}
    rows = []
    for key, body in connection.execute(sa.text("SELECT id, body FROM item")):
        happened = {name: events.get(str(key), []) for name, events in tables.items()}
        rows.append({"key": key, **_row(json.loads(body), happened)})
    if rows:
        columns = [*_WORDS, "rated", "inspected_on", "exposed"]
        said = ", ".join(f"{name} = :{name}" for name in columns)
        binds = [sa.bindparam("inspected_on", type_=sa.Date())]
        text = sa.text(f"UPDATE standing SET {said} WHERE item_id = :key").bindparams(*binds)  # noqa: S608 - our own
        connection.execute(text, rows)


def _events(connection: sa.Connection, name: str) -> _Rows:
    """Id and facts of what happened to the pieces, by piece, in order of day and entry."""
    found: _Rows = {}
    text = sa.text(f"SELECT item_id, id, body FROM {name} ORDER BY day, id")  # noqa: S608 - the names are our own
    for item_id, key, body in connection.execute(text):
        found.setdefault(str(item_id), []).append((str(key), json.loads(body)))
    return found


def _row(booked: dict[str, Any], happened: _Rows) -> dict[str, Any]:
    """What is known of a piece now, as the program writes it whenever it judges one."""
    facts = happened["item_change"][-1][1]["item"] if happened["item_change"] else booked
    place, vehicle = _sits(facts, happened)
    rating = facts["rating"]
    return {
        "tag": facts["tag"],
        "kind": facts["kind"],
        **{name: facts.get(name, "") for name in ("owner", "maker_mark", "serial")},
        "place": place,
        "vehicle": vehicle,
        "basis": rating["basis"],
        "rated": rating["figure"]["si"] if rating["figure"] else None,
        **_seen(happened),
    }


def _sits(facts: dict[str, Any], happened: _Rows) -> tuple[str, str]:
    """The place and the vehicle: of the last fitting, or where it was put away since."""
    place, vehicle = facts.get("place", ""), facts.get("fitted_to", "")
    if happened["fitting"]:
        to = happened["fitting"][-1][1]["to"]
        place, vehicle = "", to["vehicle"] if to else ""
    if happened["whereabouts"] and not vehicle:
        place = happened["whereabouts"][-1][1].get("place", "")
    return place, vehicle


def _seen(happened: _Rows) -> dict[str, Any]:
    """The last inspection and the weather; an entry that was struck is none."""
    struck = {one["entry"] for _, one in happened["strike"]}
    looks = [one for key, one in happened["inspection"] if key not in struck and one["kind"] != "before_use"]
    weathers = {one["weather"] for key, one in happened["exposure"] if key not in struck}
    exposed = "salt" if "salt" in weathers else "any" if weathers else "none"
    last = max((date.fromisoformat(one["on"]) for one in looks), default=None)
    return {"inspected_on": last, "exposed": exposed}
