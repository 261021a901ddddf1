"""The list of people: name, role, and what each may judge until when, in rows as high as their words."""

from datetime import date
from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from inspector.desk.keys import search_text
from inspector.desk.look import GRID, Look, Type
from inspector.drawings.shapes import Ink
from inspector.duties.person_in_full import brief_held
from inspector.duties.tell_people import PersonRow
from inspector.language import tr

Index = QModelIndex | QPersistentModelIndex
_TOP = QModelIndex()
_WRAPPED = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
_HIGHEST_PX = 10_000


class PeopleModel(QAbstractListModel):
    """People, those alone whose name, former name or role holds what was typed."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._every: tuple[PersonRow, ...] = ()
        self._today, self._at_desk, self._typed = date.min, "", ""
        self.rows: tuple[PersonRow, ...] = ()

    def show_rows(self, rows: tuple[PersonRow, ...], today: date, at_desk: str) -> None:
        """Show other people; at_desk: the id of whoever sits there."""
        self._every, self._today, self._at_desk = rows, today, at_desk
        self.narrow(self._typed)

    def narrow(self, typed: str) -> None:
        """Show those alone who hold every word typed."""
        self._typed = typed
        words = typed.casefold().split()
        self.beginResetModel()
        self.rows = tuple(one for one in self._every if all(word in _searched(one) for word in words))
        self.endResetModel()

    def row_of(self, key: str) -> int:
        """The row of a person by id or name; -1 where he is not shown."""
        found = (at for at, one in enumerate(self.rows) if key in {one.person.id, one.person.name})
        return next(found, -1)

    def lines_of(self, row: int) -> tuple[str, str]:
        """Name, and what is said below it."""
        one = self.rows[row]
        held = brief_held(one.person, self._today)
        parts = [
            tr("at the desk") if one.person.id == self._at_desk else "",
            one.person.role,
            tr("may judge {held}", held=held) if held else "",
        ]
        return one.person.name, " · ".join(filter(None, parts))

    def rowCount(self, parent: Index = _TOP) -> int:
        """How many people are shown."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Name and the rest; a screen reader says both."""
        if not index.isValid():
            return None
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole}:
            return ", ".join(filter(None, self.lines_of(index.row())))
        return None


def _searched(one: PersonRow) -> str:
    return " ".join((one.person.name, *one.person.former_names, one.person.role)).casefold()


class _Rows(QStyledItemDelegate):
    """Paints a person: the name, below it what is said of him, and a hairline."""

    def __init__(self, model: PeopleModel, look: Look, parent: QListView) -> None:
        super().__init__(parent)
        self._model, self._look, self._view = model, look, parent

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one row; the chosen one stands on a band with a bar before it."""
        look, rect = self._look, option.rect
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, look.colour(Ink.BAND))
            painter.fillRect(QRect(rect.left(), rect.top(), look.px(GRID // 2), rect.height()), look.colour(Ink.INK))
        painter.setPen(look.colour(Ink.HAIR))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        name, more = self._model.lines_of(index.row())
        room = self._room(rect)
        painter.setPen(look.colour(Ink.INK))
        painter.setFont(look.font(bold=True))
        used = painter.drawText(room, _WRAPPED, name)
        painter.setPen(look.colour(Ink.FAINT))
        painter.setFont(look.font(Type.SMALL))
        painter.drawText(room.adjusted(0, used.height(), 0, 0), _WRAPPED, more)
        painter.restore()

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """As high as its words at the width there is."""
        wide = self._view.viewport().width()
        room = self._room(QRect(0, 0, wide, _HIGHEST_PX))
        name, more = self._model.lines_of(index.row())
        fonts = (self._look.font(bold=True), self._look.font(Type.SMALL))
        high = sum(QFontMetrics(font).boundingRect(room, _WRAPPED, text).height()
                   for font, text in zip(fonts, (name, more), strict=True) if text)  # fmt: skip
        return QSize(wide, high + 2 * self._look.px(GRID))

    def _room(self, rect: QRect) -> QRect:
        side, edge = self._look.px(2 * GRID), self._look.px(GRID)
        return rect.adjusted(side, edge, -edge, -edge)


class PeopleList(QListView):
    """chosen: the bar is on another person. entered: Return was pressed. typed: a letter that belongs to the search."""

    chosen = Signal(str)
    entered = Signal()
    typed = Signal(str)

    def __init__(self, model: PeopleModel, look: Look) -> None:
        super().__init__()
        self._model = model
        self.setObjectName("people")
        self.setModel(model)
        self.setItemDelegate(_Rows(model, look, self))
        self.setAccessibleName(tr("People"))
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        look.changed.connect(self.scheduleDelayedItemsLayout)

    @property
    def person_id(self) -> str:
        """The id of the person the bar is on; empty for none."""
        row = self.currentIndex().row()
        return self._model.rows[row].person.id if 0 <= row < len(self._model.rows) else ""

    def choose(self, key: str) -> None:
        """Put the bar on a person, on the first one where that one is not shown."""
        if self._model.rows:
            self.setCurrentIndex(self._model.index(max(self._model.row_of(key), 0)))

    def currentChanged(self, current: QModelIndex, previous: QModelIndex) -> None:  # type: ignore[override]
        """Tell of the person the bar is on."""
        super().currentChanged(current, previous)
        if current.isValid():
            self.chosen.emit(self._model.rows[current.row()].person.id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return goes into the record; letters go to the search; the arrows move the bar."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.entered.emit()
        elif text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)
