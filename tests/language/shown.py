"""What a person is shown, and the words in it that never went through the look-up."""

import re
from collections.abc import Iterable, Iterator
from functools import cache

from PySide6.QtCore import QAbstractItemModel, QAbstractListModel, QModelIndex, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QTabBar,
    QWidget,
)

_WORD = re.compile(r"[A-Za-z]{2,}(?:[-_'’][A-Za-z]+)*")
_MARKUP = re.compile(r"</?[a-z]+[^<>]*>")
_DATA = re.compile(
    r"""\b[A-Z]{1,3}-?\d+\b                 # tags
    |\b[A-Z]{1,3}-[A-Z0-9]{4}-\d{3,}(?:-\d+)?\b  # numbers of documents and incidents
    |\b(?=[a-f]*\d)[0-9a-f]{6,64}\b                     # heads and digests
    |(?:/[\w.~-]+)+                         # places of files
    |\b[\w-]+\.(?:toml|pdf|db|ics|csv|zip|txt)\b
    |--[a-z-]+|-\w\b""",
    re.VERBOSE,
)
_UNITS = "mm cm in ft kN kg lb lbf kgf MPa ksi kJ km mph kPa GPa"  # signs, the same in every language
_KEYS = "Ctrl Alt Shift Esc Return Space Tab Del Enter Backspace Up Down Left Right"  # as the keyboard names them
_NO_TEXTS = frozenset(f"{_UNITS} {_KEYS}".split())
_SYMBOL = re.compile(r"[A-Za-z][\w,]* = ")  # of a formula, with its figure: it stands so in the formula


def missed(text: str, data: Iterable[str] = ()) -> list[str]:
    """The plain words of a text that are neither data nor a unit nor the name of a key. data: what people typed."""
    rest = _SYMBOL.sub(" ", _DATA.sub(" ", _MARKUP.sub(" ", text.replace("\u200b", ""))))
    rest = _any_of(tuple(data)).sub(" ", rest)
    return [one for one in _WORD.findall(rest) if one not in _NO_TEXTS]


@cache
def _any_of(data: tuple[str, ...]) -> re.Pattern[str]:
    """Any of what people typed, the longest first, and not within a word."""
    known = "|".join(re.escape(one) for one in sorted(data, key=len, reverse=True) if one)
    return re.compile(rf"(?<![A-Za-z_])(?:{known})(?![A-Za-z_])" if known else r"(?!)")


def assert_none_missed(texts: Iterable[tuple[str, str]], data: Iterable[str] = ()) -> None:
    """Fails with every text that holds a missed word."""
    lines = missed_lines(texts, data)
    assert not lines, "\n".join([f"{len(lines)} texts:", *lines])


def missed_lines(texts: Iterable[tuple[str, str]], data: Iterable[str] = ()) -> list[str]:
    """Each text with a missed word, with where it stands; one a text."""
    known = tuple(data)
    found = {text: f"{where}: {text!r}: {words}" for where, text in texts if (words := missed(text, known))}
    return sorted(found.values())


def shown_in(window: QWidget) -> Iterator[tuple[str, str]]:
    """Every text of a widget and all below it, with where it stands: also what is told on hover and read aloud."""
    for widget in [window, *window.findChildren(QWidget)]:
        if widget.objectName().startswith("qt_") and not isinstance(widget, QLabel):
            continue  # parts that Qt makes for itself
        where = f"{type(widget.parentWidget()).__name__} > {type(widget).__name__}"
        yield from ((where, text) for text in _texts_of(widget) if text)
    for action in window.findChildren(QAction):
        yield from ((f"action {action.text()}", text) for text in (action.text(), action.toolTip()) if text)


def _texts_of(widget: QWidget) -> Iterator[str]:
    yield from (widget.toolTip(), widget.accessibleName(), widget.accessibleDescription(), widget.windowTitle())
    if isinstance(widget, QLabel | QAbstractButton):
        yield widget.text()
    if isinstance(widget, QLineEdit | QPlainTextEdit):
        yield widget.placeholderText()
    if isinstance(widget, QComboBox):
        yield from (widget.itemText(at) for at in range(widget.count()))
    if isinstance(widget, QTabBar):
        yield from (widget.tabText(at) for at in range(widget.count()))
    if isinstance(widget, QAbstractItemView) and widget.model() is not None:
        yield from _texts_of_model(widget.model())


def _texts_of_model(model: QAbstractItemModel, rows: int = 60) -> Iterator[str]:
    roles = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleTextRole)
    for column in range(1 if isinstance(model, QAbstractListModel) else model.columnCount(QModelIndex())):
        yield str(model.headerData(column, Qt.Orientation.Horizontal) or "")
        for row in range(min(model.rowCount(QModelIndex()), rows)):
            yield from (str(model.index(row, column).data(role) or "") for role in roles)
