"""The lines of the calendar under their titles; what comes late is folded until it is asked for."""

from collections.abc import Callable, Sequence
from datetime import date

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.needs.go import Go
from inspector.desk.needs.lines import in_folds, piece_line
from inspector.desk.needs.words import concerns, due_words
from inspector.desk.plain import Fold, column, hairline, said
from inspector.desk.tag_lines import Line, Open, tag_lines
from inspector.gear.falls_due import Due, DueLine, DueSheet
from inspector.language import tr

_OPEN_LINES = 40  # so many lines stand open at once; titles after them are folds
_IN_A_GROUP = 12
_PLACES = {Due.COMPETENCE: "person", Due.TRIP: "trip", Due.INCIDENT: "incident", Due.COUNT: "count"}
Lines = Sequence[DueLine]


def due_groups(sheet: DueSheet, today: date, look: Look, opens: Open, goes: Callable[[Go], object]) -> QWidget:
    """Every group with its title and its lines."""
    if not sheet.groups:
        words = tr("Look further ahead, or at more people and places.")
        return column([said(tr("Nothing falls due."), Type.HEAD), said(words, faint=True)])
    leads = {line.about: _PLACES[line.what] for line in sheet.lines if line.what in _PLACES}

    def lead(about: str) -> None:
        """Where the line belongs."""
        if place := leads.get(about):
            goes(Go(place, about))
        else:
            opens(about)

    def made(lines: Lines) -> QWidget:
        """The lines of a group."""
        return in_folds(
            [_line(one, sheet, today) for one in lines], lambda some: tag_lines(some, look, lead), _IN_A_GROUP
        )

    return column(_groups(sheet, made), 2 * GRID)


def _groups(sheet: DueSheet, made: Callable[[Lines], QWidget]) -> list[QWidget]:
    parts: list[QWidget] = []
    shown = 0
    for named, lines in sheet.groups:
        title = named[:1].upper() + named[1:]
        if shown < _OPEN_LINES:
            parts.append(column([hairline(), said(title, bold=True), made(lines)], GRID // 2))
        else:
            folded = tr("{title} ({count})", title=title, count=len(lines))
            parts.append(Fold(folded, lambda lines=lines: made(lines)))  # type: ignore[misc]
        shown += min(len(lines), _IN_A_GROUP)
    return parts


def _line(one: DueLine, sheet: DueSheet, today: date) -> Line:
    outcome = sheet.outcomes.get(one.about) if one.what.is_of_piece else None
    return piece_line(outcome, one.about, one.name, due_words(one, today), concerns(one.people, one.place))
