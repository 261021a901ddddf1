"""What of a page is cut off, found by holding what each part asks for against what it has."""

from collections.abc import Callable, Iterable
from contextlib import suppress

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QLabel, QPushButton, QScrollArea, QTableView, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.flow import Flow
from inspector.desk.look import TextSize
from inspector.desk.window import DeskWindow

_ACROSS = Qt.Orientation.Horizontal
_SETTLES_MS, _AT_MOST_MS = 50, 2000
Looked = tuple[TextSize, int, int]
SIZES: tuple[Looked, ...] = ((TextSize.USUAL, 1280, 720), (TextSize.USUAL, 960, 600), (TextSize.LARGE, 1280, 720))


def cut_off(page: QWidget) -> list[str]:
    """What is wider than its place: the inside of scrolled areas, buttons, and labels that do not wrap.

    Where a text wraps, what is higher than its place is listed too.
    """
    areas = [one for one in page.findChildren(QScrollArea) if one.isVisible()]
    wide = [
        one.accessibleName() for one in areas if (inside := one.widget()) and inside.width() > one.viewport().width()
    ]
    words: list[QAbstractButton | QLabel] = [*page.findChildren(QPushButton)]
    words += [one for one in page.findChildren(QLabel) if not one.wordWrap() and one.pixmap().isNull()]
    cut = [one for one in words if one.isVisible() and one.width() < one.minimumSizeHint().width() - 2]
    low = [one for one in page.findChildren(QLabel) if one.isVisible() and one.wordWrap() and _is_low(one)]
    flat = [one for one in page.findChildren(QPushButton) if one.isVisible() and _is_flat(one)]
    told = [f"{one.text()} ({type(one.parentWidget()).__name__}: {one.width()})" for one in (*cut, *low, *flat)]
    return [*wide, *told, *_over_one_another(page)]


def wide_areas(page: QWidget, *, hidden: bool = False) -> list[str]:
    """Scrolled areas with nothing in them, or whose inside is wider than what is seen of it. hidden: those too."""
    areas = [one for one in page.findChildren(QScrollArea) if hidden or one.isVisible()]
    wide = [one for one in areas if not (inside := one.widget()) or inside.width() > one.viewport().width()]
    return [f"area {one.accessibleName()} is wider than its place" for one in wide]


def cramped_buttons(page: QWidget, least_px: int = 0) -> list[str]:
    """Visible buttons that are narrower than their words, or lower than this."""
    seen = [one for one in page.findChildren(QPushButton) if one.isVisible()]
    narrow = [one for one in seen if one.width() < one.minimumSizeHint().width() - 2]
    low = [one for one in seen if one.height() < least_px]
    return [f"button {one.text()} is {one.width()} by {one.height()}" for one in (*narrow, *low)]


def wrong_at(
    qtbot: QtBot,
    sizes: Iterable[Looked],
    desk: DeskWindow,
    found: Callable[[], list[str]],
    begin: Callable[[], object] = lambda: None,
) -> list[str]:
    """What is found at each size of text and window, and where the window is not as large as it was told to be.

    begin: what is done first at each size. What is found is looked at again until layouts have settled.
    """
    wrong: list[str] = []
    for text, *size in sizes:
        desk.look.set_text(text)
        desk.resize(*size)
        begin()
        here = settled(qtbot, found)
        if [desk.width(), desk.height()] != size:
            here.append(f"the window is {desk.width()} by {desk.height()}")
        wrong += [f"{text} {size}: {one}" for one in here]
    return wrong


def settled(qtbot: QtBot, found: Callable[[], list[str]]) -> list[str]:
    """What is still found once layouts have settled; a busy machine takes longer over them than another."""
    qtbot.wait(_SETTLES_MS)
    with suppress(qtbot.TimeoutError):
        qtbot.waitUntil(lambda: not found(), timeout=_AT_MOST_MS)
    return found()


def cut_headings(page: QWidget) -> list[str]:
    """Headings of tables that are narrower than their words."""
    tables = [one for one in page.findChildren(QTableView) if one.isVisible() and one.horizontalHeader().isVisible()]
    return [
        f"{table.accessibleName()}, {table.model().headerData(at, _ACROSS)}: {table.columnWidth(at)} px"
        for table in tables
        for at in range(table.model().columnCount())
        if not table.isColumnHidden(at) and table.columnWidth(at) < table.horizontalHeader().sectionSizeHint(at)
    ]


def _over_one_another(page: QWidget) -> list[str]:
    """Lines of parts that flow which are pressed into less height than they take."""
    lines = [one for one in page.findChildren(QWidget) if one.isVisible() and isinstance(one.layout(), Flow)]
    pressed = [one for one in lines if one.height() < one.heightForWidth(one.width()) - 2]
    return [f"line of {type(one.parentWidget()).__name__}: {one.height()} high" for one in pressed]


def _is_flat(button: QPushButton) -> bool:
    return button.height() < button.minimumSizeHint().height() - 2


def _is_low(label: QLabel) -> bool:
    return bool(label.text()) and label.height() < label.heightForWidth(label.width()) - 2
