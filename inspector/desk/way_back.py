"""From where each page was opened, for the way back."""

from collections.abc import Collection

from PySide6.QtWidgets import QWidget


class WayBack:
    """Pages in between, forms for example, do not count: back leads past them."""

    def __init__(self, start: QWidget) -> None:
        self._start = start
        self._came_from: dict[QWidget, QWidget] = {}

    def remember(self, page: QWidget, came: QWidget | None, between: Collection[QWidget | None]) -> None:
        """Keep from where a page is opened now."""
        if came is not None and came is not page and came not in between:
            self._came_from[page] = came

    def of(self, page: QWidget) -> QWidget:
        """From where it was opened; the first page where nobody knows."""
        return self._came_from.get(page, self._start)
