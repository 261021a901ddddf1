"""The lines of the calendar under their titles; what comes late is folded until it is asked for."""

from collections.abc import Callable, Sequence
from datetime import date

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.needs.lines import in_folds, piece_line
from inspector.desk.needs.words import concerns, due_words
from inspector.desk.place import Go
from inspector.desk.places import INCIDENTS, PEOPLE, RECALLS, STOCK, TRIP
from inspector.desk.plain import Fold, column, hairline, said
from inspector.desk.tag_lines import Line, Open, tag_lines
from inspector.gear.falls_due import Due, DueLine, DueSheet
from inspector.language import tr

_OPEN_LINES = 40  # so many lines stand open at once; titles after them are folds
_IN_A_GROUP = 12
_PLACES = {Due.COMPETENCE: PEOPLE, Due.TRIP: TRIP, Due.INCIDENT: INCIDENTS, Due.COUNT: STOCK,
           Due.RECALL: RECALLS, Due.ANSWER: RECALLS}  # fmt: skip
_FOLDS_A_STEP = 20
Lines = Sequence[DueLine]
Group = tuple[str, tuple[DueLine, ...]]


def due_steps(
    sheet: DueSheet, today: date, look: Look, opens: Open, goes: Callable[[Go], object]
) -> list[Callable[[], list[QWidget]]]:
    """A step for each group that stands open: its title and its lines; the later ones are folds, made in one step."""
    if not sheet.groups:
        words = tr("Look further ahead, or at more people and places.")
        return [lambda: [said(tr("Nothing falls due."), Type.HEAD), said(words, faint=True)]]
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

    return _steps(sheet, made)


def _steps(sheet: DueSheet, made: Callable[[Lines], QWidget]) -> list[Callable[[], list[QWidget]]]:
    count = _open_count(sheet)
    opened = [lambda group=group: [_open(group, made)] for group in sheet.groups[:count]]
    later = sheet.groups[count:]
    some = [later[at : at + _FOLDS_A_STEP] for at in range(0, len(later), _FOLDS_A_STEP)]
    return [*opened, *(lambda some=some: [_fold(group, made) for group in some] for some in some)]


def _open_count(sheet: DueSheet) -> int:
    """How many groups stand open."""
    shown = 0
    for number, (_, lines) in enumerate(sheet.groups):
        if shown >= _OPEN_LINES:
            return number
        shown += min(len(lines), _IN_A_GROUP)
    return len(sheet.groups)


def _open(group: Group, made: Callable[[Lines], QWidget]) -> QWidget:
    title, lines = group
    return column([hairline(), said(title[:1].upper() + title[1:], bold=True), made(lines)], GRID // 2)


def _fold(group: Group, made: Callable[[Lines], QWidget]) -> QWidget:
    title, lines = group
    folded = tr("{title} ({count})", title=title[:1].upper() + title[1:], count=len(lines))
    return Fold(folded, lambda: made(lines))


def _line(one: DueLine, sheet: DueSheet, today: date) -> Line:
    outcome = sheet.outcomes.get(one.about) if one.what.is_of_piece else None
    return piece_line(outcome, one.about, one.name, due_words(one, today), concerns(one.people, one.place))
