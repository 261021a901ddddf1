"""The menu of all that can be done with a piece; what cannot be done now is there, and says why."""

from collections.abc import Callable

from PySide6.QtWidgets import QMenu

from inspector.desk.deeds.of_piece import about_of, groups
from inspector.desk.opened import Opened
from inspector.desk.place import Go
from inspector.desk.places import DEED


def fill(menu: QMenu, piece: Opened, go: Callable[[Go], object]) -> None:
    """Every deed under its heading. go: where the form of a deed is asked for."""
    menu.clear()
    menu.setToolTipsVisible(True)
    for title, makes in groups():
        under = menu.addMenu(title)
        under.setToolTipsVisible(True)
        for make in makes:
            deed, about = make(piece), about_of(make, piece)
            action = under.addAction(f"{deed.name}…")
            action.setToolTip(deed.fits(about) or deed.says)
            action.setEnabled(not deed.fits(about))
            action.triggered.connect(
                lambda _checked=False, deed=deed, about=about: go(Go(DEED, (deed, about, piece.tag)))
            )
