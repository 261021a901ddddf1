"""The list of reports, the open ones first, and the ways to report."""

from collections.abc import Callable, Iterable
from functools import partial

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import bare_grid, button, column, row, said, short
from inspector.desk.record_parts import section
from inspector.duties.tell_incident import IncidentRow
from inspector.language import tr

Does = Callable[[], object]
Opens = Callable[[str], object]


def reports_part(
    rows: Iterable[IncidentRow], opens: Opens, accident: Does, near_miss: Does, check: Does, recalls: Does
) -> QWidget:
    """Every report, and what can be begun here."""
    every = tuple(rows)
    head = said(tr("Incidents"), Type.DISPLAY)
    says = said(tr("After an accident see to people first. Then leave everything as it lies: nothing is cleaned, "
                   "repaired or used until two competent persons let it go."))  # fmt: skip
    begins = row(
        [
            button(tr("Report an accident"), accident, rank="first"),
            button(tr("Report a near miss"), near_miss),
            button(tr("Check a bundle"), check),
            button(tr("Recalls"), recalls, name=tr("Go to the recalls")),
        ]
    )
    if not every:
        empty = said(tr("No incident was reported. An accident is reported when somebody was hurt, or something broke "
                        "or flew; a near miss when it was close."))  # fmt: skip
        return column([head, says, begins, empty], 2 * GRID)
    still_open = [one for one in every if not one.is_closed]
    closed = [one for one in every if one.is_closed]
    groups = ((tr("Still open"), still_open), (tr("Closed"), closed))
    parts = [section(title, _lines(some, opens)) for title, some in groups if some]
    return column([head, says, begins, *parts], 2 * GRID)


def _lines(rows: Iterable[IncidentRow], opens: Opens) -> QWidget:
    made, grid = bare_grid(3)
    for number, one in enumerate(rows):
        name = tr("Open the report {ref}", ref=one.ref)
        grid.addWidget(button(one.ref, partial(opens, one.ref), rank="tag", name=name), number, 0)
        grid.addWidget(short(one.day), number, 1)
        grid.addWidget(short(one.gravity, bold=True), number, 2)
        place, kept = said(one.place), said(tr("Still kept: {tags}", tags=one.kept), Type.SMALL, faint=True)
        grid.addWidget(column([place, kept], 0) if one.kept else place, number, 3)
        grid.addWidget(short(one.state, faint=True), number, 4)
    return made
