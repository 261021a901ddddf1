"""What the stories of forms share: open a deed's form, write into it, do it."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from inspector.desk.form.deed import Deed
from inspector.desk.form.form_page import FormPage
from inspector.desk.window import DeskWindow

OpenForm = Callable[[Deed[Any], object], FormPage]


def form_of_deed(qtbot: QtBot, desk: DeskWindow, deed: Deed[Any], about: object) -> FormPage:
    """The form of a deed, ready to be written in."""
    desk.pages.show_deed(deed, about, "")
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.currentWidget() is desk.pages.deed_page
    return desk.pages.deed_page


def write(page: FormPage, **given: str) -> None:
    """Write into the fields by their keys; a blank in a key is written as two underscores."""
    for key, text in given.items():
        page.box(key.replace("__", " ")).give(text)


def keep(qtbot: QtBot, desk: DeskWindow) -> None:
    """Do the deed by its key and wait for what comes of it."""
    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.background.is_idle)


def begin_anew(page: FormPage) -> None:
    """Take back all that was written, and its draft, so that the form stands there as it was opened."""
    page._begin_anew()


def lacks(page: FormPage) -> list[str]:
    """What is wrong with a form: fields without a name, and those that are needed and do not say so when left empty."""
    wrong = [
        f"{box.asked.key} has no name"
        for box in page.boxes
        if not (box.control.accessibleName() or box.control.focusProxy())
    ]
    needed = [box for box in page.boxes if box.asked.needed and not str(box.value() or "").strip()]
    if needed:
        before = {box.asked.key: box.draft for box in page.boxes}
        page.try_do()
        wrong += [f"{box.asked.key} may be left empty" for box in needed if not box.fault_text]
        if {box.asked.key: box.draft for box in page.boxes} != before:
            wrong.append("what was typed did not stay")
    return wrong


def faults(page: FormPage) -> dict[str, str]:
    """What is said to be wrong, by the key of the field."""
    return {box.asked.key: box.fault_text for box in page.boxes if box.fault_text}
