"""The menus: every deed of the window with its key."""

from collections.abc import Callable
from functools import partial

from msgspec import Struct
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from inspector.desk.look import Look, Scheme
from inspector.desk.place import Go
from inspector.desk.places import PlaceEntry
from inspector.language import tr


class Deeds(Struct, frozen=True):
    """What the menus set off. piece_menu: fills the menu of what can be done with the piece shown."""

    find: Callable[[], object]
    go: Callable[[Go], object]
    read_again: Callable[[], object]
    verify: Callable[[], object]
    another: Callable[[], object]
    back: Callable[[], object]
    inspect: Callable[[], object]
    save: Callable[[], object]
    sheet: Callable[[], object]
    notice: Callable[[], object]
    export: Callable[[], object]
    report: Callable[[], object]
    archive: Callable[[], object]
    piece_menu: Callable[[QMenu], object]
    keys: Callable[[], object]
    words: Callable[[], object]


class Actions(Struct, frozen=True):
    """The entries that are only there at times."""

    inspect: QAction
    save: QAction
    notice: QAction
    piece: QAction


def build(window: QMainWindow, deeds: Deeds, look: Look, entries: tuple[PlaceEntry, ...]) -> Actions:
    """Make the menus of the window."""
    bar = window.menuBar()
    _register_menu(bar.addMenu(tr("&Register")), window, deeds)
    _go_menu(bar.addMenu(tr("&Go")), deeds, entries)
    actions = _piece_menu(bar.addMenu(tr("&Piece")), deeds)
    _view_menu(bar.addMenu(tr("&View")), look)
    _help_menu(bar.addMenu(tr("&Help")), deeds)
    return actions


def _register_menu(menu: QMenu, window: QMainWindow, deeds: Deeds) -> None:
    _entry(menu, tr("&Find a piece"), "Ctrl+F", deeds.find)
    _entry(menu, tr("&Read again"), "F5", deeds.read_again)
    menu.addSeparator()
    _entry(menu, tr("&Print trip sheet"), "Ctrl+P", deeds.sheet)
    _entry(menu, tr("Report on the &gear"), "", deeds.report)
    _entry(menu, tr("&Export the list for a spreadsheet"), "", deeds.export)
    _entry(menu, tr("Write an &archive"), "", deeds.archive)
    _entry(menu, tr("&Check that nothing was changed"), "", deeds.verify)
    menu.addSeparator()
    _entry(menu, tr("&Open another register, or put a copy back"), "", deeds.another)
    _entry(menu, tr("&Quit"), "Ctrl+Q", window.close)


def _go_menu(menu: QMenu, deeds: Deeds, entries: tuple[PlaceEntry, ...]) -> None:
    for one in entries:
        _entry(menu, one.menu, one.keys, partial(deeds.go, Go(one.key)))
    menu.addSeparator()
    _entry(menu, tr("&Back"), "Esc", deeds.back)


def _piece_menu(menu: QMenu, deeds: Deeds) -> Actions:
    inspect = _entry(menu, tr("&Inspect"), "Ctrl+I", deeds.inspect)
    save = _entry(menu, tr("&Keep what is written"), "Ctrl+S", deeds.save)
    notice = _entry(menu, tr("Print retirement &notice"), "Ctrl+Shift+P", deeds.notice)
    menu.addSeparator()
    more = menu.addMenu(tr("&More of this piece"))
    more.aboutToShow.connect(lambda: deeds.piece_menu(more))
    return Actions(inspect, save, notice, more.menuAction())


def _view_menu(menu: QMenu, look: Look) -> None:
    group = QActionGroup(menu)
    names = {Scheme.SYSTEM: tr("&Like the computer"), Scheme.LIGHT: tr("L&ight"), Scheme.DARK: tr("&Dark")}
    for scheme, name in names.items():
        action = _entry(menu, name, "", partial(look.choose, scheme))
        action.setCheckable(True)
        action.setChecked(scheme is look.scheme)
        group.addAction(action)
    menu.addSeparator()
    _entry(menu, tr("Larger &text, after the largest the usual"), "Ctrl+T", lambda: look.set_text(look.text.next))


def _help_menu(menu: QMenu, deeds: Deeds) -> None:
    _entry(menu, tr("&Keys"), "F1", deeds.keys)
    _entry(menu, tr("&Words of the trade on this page"), "Shift+F1", deeds.words)


def _entry(menu: QMenu, text: str, keys: str, does: Callable[[], object]) -> QAction:
    action = menu.addAction(text)
    if keys:
        action.setShortcut(QKeySequence(keys))
    action.triggered.connect(lambda _checked=False: does())
    return action
