"""The small parts that pages are set from: a line of text, a hairline, a table of facts, a fold."""

from collections.abc import Callable, Iterable

from PySide6.QtCore import Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLayout,
    QMenu,
    QPushButton,
    QScrollArea,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from inspector.desk.flow import flowing
from inspector.desk.look import GRID, Type

_TOP = Qt.AlignmentFlag.AlignTop


class _Said(QLabel):
    """A text that can be marked and copied once the mouse was pressed on it.

    Not before: Qt keeps a whole document for each text that can be marked, half of what a page costs to make.
    """

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        super().mousePressEvent(event)


def said(text: str, size: Type = Type.BODY, *, faint: bool = False, bold: bool = False) -> QLabel:
    """A text that wraps and can be copied; with `WA_TransparentForMouseEvents` the mouse is its parent's."""
    label = _Said(text)
    label.setFocusPolicy(Qt.FocusPolicy.ClickFocus)  # for the keys that copy
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    label.setProperty("tier", size.value)
    label.setProperty("ink", "faint" if faint else "ink")
    label.setProperty("weight", "bold" if bold else "")
    return label


def short(text: str, size: Type = Type.BODY, *, faint: bool = False, bold: bool = False) -> QLabel:
    """A text of a word or two that stays in one line."""
    label = said(text, size, faint=faint, bold=bold)
    label.setWordWrap(False)
    return label


def hairline() -> QFrame:
    """The line between two parts of a page."""
    line = QFrame()
    line.setObjectName("hairline")
    line.setFixedHeight(1)
    return line


def button(text: str, does: Callable[[], object], *, rank: str = "", name: str = "") -> QPushButton:
    """A button. rank "first": the one thing to do here. name: what a screen reader says where the text is too short."""
    made = QPushButton(text)
    made.setProperty("rank", rank)
    made.setAccessibleName(name or text.replace("&", ""))
    made.setAutoDefault(True)
    made.clicked.connect(lambda _checked: does())
    return made


def menu_button(
    text: str, entries: Iterable[tuple[str, Callable[[], object]]], *, rank: str = "", name: str = ""
) -> QPushButton:
    """A button that opens a menu of what to do, each entry by its words."""
    made = QPushButton(text)
    made.setProperty("rank", rank)
    made.setAccessibleName(name or text)
    menu = QMenu(made)
    for words, does in entries:
        menu.addAction(words).triggered.connect(lambda _checked=False, does=does: does())
    made.setMenu(menu)
    return made


def column(parts: Iterable[QWidget], gap: int = GRID) -> QWidget:
    """Parts one below the other."""
    made = QWidget()
    fill(QVBoxLayout(made), parts, gap)
    return made


def fill(layout: QVBoxLayout, parts: Iterable[QWidget], gap: int = GRID) -> None:
    """Put parts one below the other into a layout without margins."""
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(gap)
    for part in parts:
        layout.addWidget(part)
    layout.addStretch(1)


def row(parts: Iterable[QWidget], gap: int = GRID) -> QWidget:
    """Parts beside one another, no wider than they need; where there is no room, in further lines."""
    return flowing(parts, gap)


def bare_grid(*stretches: int) -> tuple[QWidget, QGridLayout]:
    """A part of a page whose cells stand in columns; stretches: the columns that take what is left."""
    made = QWidget()
    grid = QGridLayout(made)
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(2 * GRID)
    grid.setVerticalSpacing(GRID // 2)
    for column_number in stretches:
        grid.setColumnStretch(column_number, 1)
    return made, grid


def facts(lines: Iterable[tuple[str, str]], *, size: Type = Type.BODY) -> QWidget:
    """Labelled lines, labels faint on the left."""
    made, grid = bare_grid(1)
    for row, (label, text) in enumerate(lines):
        grid.addWidget(short(label, size, faint=True), row, 0, _TOP)
        grid.addWidget(said(text, size), row, 1)
    return made


def figures(counted: Iterable[tuple[int, str]], size: Type = Type.DISPLAY) -> QWidget:
    """Counts side by side, large, with small words below; a count of none is faint."""
    made = QWidget()
    layout = QHBoxLayout(made)
    layout.setContentsMargins(0, GRID, 0, GRID)
    layout.setSpacing(2 * GRID)
    for count, words in counted:
        layout.addWidget(column([short(str(count), size, faint=not count), said(words, Type.SMALL)], 0), 1)
    return made


class Fold(QWidget):
    """A heading that opens and closes what lies under it. at_once: it is made closed, not only when it is opened."""

    def __init__(self, title: str, make: Callable[[], QWidget], *, at_once: bool = False) -> None:
        super().__init__()
        self._title, self._make = title, make
        self._inside: QWidget | None = None
        self.head = QToolButton()
        self.head.setProperty("rank", "disclosure")
        self.head.setCheckable(True)
        self.head.setAccessibleName(title)
        self.head.toggled.connect(self._turn)
        fill(QVBoxLayout(self), [self.head])
        if at_once:
            self._make_inside()
        self._turn(False)

    def holds(self, widget: QWidget) -> bool:
        """Whether a widget lies under this heading."""
        return self._inside is not None and self._inside.isAncestorOf(widget)

    def _turn(self, is_open: bool) -> None:
        self.head.setText(("▾  " if is_open else "▸  ") + self._title)
        if is_open and self._inside is None:
            self._make_inside()  # only now: a closed fold costs nothing
        if self._inside:
            self._inside.setVisible(is_open)

    def _make_inside(self) -> None:
        layout = self.layout()
        if isinstance(layout, QVBoxLayout):
            self._inside = self._make()
            layout.insertWidget(1, self._inside)


def scroll(inside: QWidget, name: str) -> QScrollArea:
    """A page that is scrolled up and down, by keys too."""
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setAccessibleName(name)
    inside.setObjectName("page")
    area.setWidget(inside)
    return area


def over_foot(page: QWidget, area: QWidget, foot: Iterable[QWidget]) -> None:
    """A page that is scrolled, over a line with what ends it; the last part of the line takes what is left."""
    line = QHBoxLayout()
    line.setSpacing(2 * GRID)
    *firsts, last = foot
    for one in firsts:
        line.addWidget(one)
    line.addWidget(last, 1)
    layout = QVBoxLayout(page)
    layout.setContentsMargins(0, 0, 0, GRID)
    layout.setSpacing(GRID)
    layout.addWidget(area, 1)
    layout.addWidget(hairline())
    layout.addLayout(line)


def clear(layout: QLayout) -> None:
    """Take everything out of a layout, and out of those within it."""
    while item := layout.takeAt(0):
        if within := item.layout():
            clear(within)
        if widget := item.widget():
            widget.hide()
            widget.deleteLater()


def lay_in(area: QScrollArea, page: QWidget) -> None:
    """Put a page with its usual margins into the place that scrolls it, shown from its top."""
    page.setObjectName("page")
    if inside := page.layout():
        inside.setContentsMargins(0, GRID, 2 * GRID, 3 * GRID)
    area.setWidget(page)
    area.verticalScrollBar().setValue(0)
