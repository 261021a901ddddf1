"""Keys that mean the same on several pages."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

_PLAIN = {Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.KeypadModifier}


def search_text(event: QKeyEvent) -> str:
    """The letter or figure of a key, which begins a search wherever nothing is being typed; empty for other keys."""
    text = event.text()
    return text if event.modifiers() in _PLAIN and text.strip() and text.isprintable() else ""
