"""A kit proposed by need: what to take and what for, what is lacking, what stays in the store and why."""

from collections.abc import Callable
from itertools import groupby

from PySide6.QtWidgets import QHBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import Fold, button, column, facts, hairline, said
from inspector.desk.record_parts import section
from inspector.desk.tag_lines import Open, tag_lines
from inspector.gear.packing import Packed
from inspector.gear.trip import Trip
from inspector.language import tr, tr_n


def kit_part(
    trip: Trip, found: Packed, look: Look, opens: Open, take: Callable[[], object], leave: Callable[[], object]
) -> QWidget:
    """All of it. take: make it the kit of the trip; leave: keep the kit as it is."""
    parts: list[QWidget] = [
        said(tr("A kit by need for {trip}", trip=trip.name), Type.DISPLAY),
        said(tr("From what is fit on the last day, in store, and neither lent nor fitted to a vehicle."), faint=True),
        said(_against(trip, found)),
        _buttons(found, take, leave),
    ]
    if found.lacks:
        parts.append(section(tr("The store lacks"), *(said(one) for one in found.lacks)))
    if found.takes:
        lines = [(None, one.tag, (said(one.need, bold=True), said(one.kind_name, Type.SMALL, faint=True)))
                 for one in found.takes]  # fmt: skip
        parts.append(section(tr("Take ({count})", count=len(lines)), tag_lines(lines, look, opens)))
    else:
        none = said(tr("Nothing in the store serves these vehicles. Inspect what is on hold, or take vehicles off."))
        parts.append(section(tr("Take"), none))
    if found.stays:
        title = tr("Stays in the store ({count})", count=len(found.stays))
        parts += [hairline(), Fold(title, lambda: facts(_stays(found)))]
    return column(parts, 2 * GRID)


def _against(trip: Trip, found: Packed) -> str:
    """What would change."""
    new = {one.tag for one in found.takes}
    comes, goes = sorted(new - set(trip.kit)), sorted(set(trip.kit) - new)
    if not comes and not goes:
        return tr("It is the kit that the trip has.")
    said_of = tr_n("One of these is in the kit now.", "{count} of these are in the kit now.", len(new & set(trip.kit)))
    adds = tr("New: {tags}.", tags=", ".join(comes)) if comes else ""
    drops = tr("No longer taken: {tags}.", tags=", ".join(goes)) if goes else ""
    return " ".join(filter(None, (said_of, adds, drops)))


def _buttons(found: Packed, take: Callable[[], object], leave: Callable[[], object]) -> QWidget:
    line = QWidget()
    layout = QHBoxLayout(line)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    if found.takes:
        layout.addWidget(button(tr("Make this the kit"), take, rank="first"))
    layout.addWidget(button(tr("Keep the kit as it is"), leave))
    layout.addStretch(1)
    return line


def _stays(found: Packed) -> list[tuple[str, str]]:
    """By reason, every tag of it."""
    by_why = groupby(sorted(found.stays, key=lambda one: (one[1], one[0])), key=lambda one: one[1])
    return [(why, ", ".join(tag for tag, _ in listed)) for why, listed in by_why]
