"""The record of one vehicle: what it is and weighs, what must be said of it, where its parts sit, what changed."""

from collections.abc import Iterator
from datetime import date

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Picture
from inspector.desk.plain import column, facts, said
from inspector.desk.record_parts import history_part, section
from inspector.desk.tag_lines import Line, Open, tag_lines
from inspector.drawings.marks import outcome_word
from inspector.drawings.vehicle_plan import vehicle_plan
from inspector.duties.vehicle_record import Part, VehicleRecord
from inspector.gear.trip import Vehicle
from inspector.language import show_day, tr

_PLAN_PX = 640


def record_page(record: VehicleRecord, look: Look, today: date, opens: Open) -> QWidget:
    """All of it, the parts front to rear."""
    vehicle = record.vehicle
    head = column([said(vehicle.tag, Type.DISPLAY), said(vehicle.name, Type.HEAD, faint=True)], 0)
    parts: list[QWidget] = [head, *_warning(record.warning), facts(_facts(vehicle))]
    parts += _parts(record, look, today, opens)
    parts.append(history_part(record.history))
    page = column(parts, 2 * GRID)
    page.setObjectName("page")
    if inside := page.layout():
        inside.setContentsMargins(0, 0, 2 * GRID, 3 * GRID)
    return page


def _warning(words: str) -> list[QWidget]:
    return [said(tr("Warning: {words}", words=words), bold=True)] if words else []


def _facts(one: Vehicle) -> list[tuple[str, str]]:
    """What the register knows of it; what it does not know is said."""
    unknown = tr("not known")
    return [
        (tr("Owner"), one.owner or unknown),
        (tr("GVM"), one.gvm.as_typed),
        (tr("As weighed"), one.mass.as_typed if one.mass else unknown),
        (tr("Front points apart"), one.front_spacing.as_typed if one.front_spacing else unknown),
        (tr("Rear points apart"), one.rear_spacing.as_typed if one.rear_spacing else unknown),
        *([(tr("Note"), one.note)] if one.note else []),
    ]


def _parts(record: VehicleRecord, look: Look, today: date, opens: Open) -> Iterator[QWidget]:
    title = tr("What sits on it ({count})", count=len(record.parts))
    if not record.parts:
        none = said(tr("No part is written down for it, so nothing on it is known to be sound."))
        yield section(title, none, said(tr("Press “Fit a part” and scan what is bolted to it."), faint=True))
        return
    plan = vehicle_plan(f"{record.vehicle.tag} {record.vehicle.name}", [(one.fitted, one.row) for one in record.parts])
    lines = tag_lines([_line(one, today) for one in record.parts], look, opens)
    yield section(title, Picture(plan, look, _PLAN_PX), lines)


def _line(one: Part, today: date) -> Line:
    """Mark, tag, place with kind and word; when it is due; what it is for a rig."""
    row = one.row
    word = outcome_word(row.outcome) if row.outcome else tr("not judged yet")
    place = one.place or tr("place not written down")
    head = " · ".join((place, row.kind_name, word))
    words = [said(head, bold=True), said(_due(row.next_due, today), Type.SMALL, faint=True)]
    words += [said(" ".join(one.tells), Type.SMALL, faint=True)] if one.tells else []
    return row.outcome, row.tag, words


def _due(day: date | None, today: date) -> str:
    if day is None:
        return tr("No inspection is set.")
    if day < today:
        return tr("Next due {day}, overdue", day=show_day(day))
    return tr("Next due {day}", day=show_day(day))
