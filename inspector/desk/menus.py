"""The menus: every deed of the window with its key."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from inspector.desk.look import Look, Scheme
from inspector.language import tr


@dataclass(frozen=True, slots=True)
class Deeds:
    """What the menus set off."""

    find: Callable[[], object]
    gear_list: Callable[[], object]
    read_again: Callable[[], object]
    verify: Callable[[], object]
    back: Callable[[], object]
    inspect: Callable[[], object]
    save: Callable[[], object]
    trip: Callable[[], object]
    rig: Callable[[], object]
    check: Callable[[], object]
    sheet: Callable[[], object]
    notice: Callable[[], object]


@dataclass(frozen=True, slots=True)
class Actions:
    """The entries that are only there at times."""

    inspect: QAction
    save: QAction
    notice: QAction


def build(window: QMainWindow, deeds: Deeds, look: Look) -> Actions:
    """Make the menus of the window."""
    bar = window.menuBar()
    _register_menu(bar.addMenu(tr("&Register")), window, deeds)
    actions = _piece_menu(bar.addMenu(tr("&Piece")), deeds)
    _trip_menu(bar.addMenu(tr("&Trip")), deeds)
    _view_menu(bar.addMenu(tr("&View")), look)
    return actions


def _register_menu(menu: QMenu, window: QMainWindow, deeds: Deeds) -> None:
    _entry(menu, tr("&Find a piece"), "Ctrl+F", deeds.find)
    _entry(menu, tr("&Gear list"), "Ctrl+L", deeds.gear_list)
    _entry(menu, tr("&Read again"), "F5", deeds.read_again)
    menu.addSeparator()
    _entry(menu, tr("&Check that nothing was changed"), "", deeds.verify)
    menu.addSeparator()
    _entry(menu, tr("&Quit"), "Ctrl+Q", window.close)


def _piece_menu(menu: QMenu, deeds: Deeds) -> Actions:
    inspect = _entry(menu, tr("&Inspect"), "Ctrl+I", deeds.inspect)
    save = _entry(menu, tr("&Save inspection"), "Ctrl+S", deeds.save)
    notice = _entry(menu, tr("Print retirement &notice"), "Ctrl+Shift+P", deeds.notice)
    menu.addSeparator()
    _entry(menu, tr("&Back"), "Esc", deeds.back)
    return Actions(inspect, save, notice)


def _trip_menu(menu: QMenu, deeds: Deeds) -> None:
    _entry(menu, tr("Is the &trip ready?"), "Ctrl+J", deeds.trip)
    _entry(menu, tr("&Rig"), "Ctrl+R", deeds.rig)
    menu.addSeparator()
    _entry(menu, tr("&Check before a trip"), "Ctrl+K", deeds.check)
    _entry(menu, tr("&Print trip sheet"), "Ctrl+P", deeds.sheet)


def _view_menu(menu: QMenu, look: Look) -> None:
    group = QActionGroup(menu)
    names = {Scheme.SYSTEM: tr("&Like the computer"), Scheme.LIGHT: tr("L&ight"), Scheme.DARK: tr("&Dark")}
    for scheme, name in names.items():
        action = _entry(menu, name, "", partial(look.choose, scheme))
        action.setCheckable(True)
        action.setChecked(scheme is look.scheme)
        group.addAction(action)
    menu.addSeparator()
    large = menu.addAction(tr("Large &text"))
    large.setShortcut(QKeySequence("Ctrl+T"))
    large.setCheckable(True)
    large.setChecked(look.large)
    large.toggled.connect(look.set_large)


def _entry(menu: QMenu, text: str, keys: str, does: Callable[[], object]) -> QAction:
    action = menu.addAction(text)
    if keys:
        action.setShortcut(QKeySequence(keys))
    action.triggered.connect(lambda _checked=False: does())
    return action
