"""The pages that were made so far: each when somebody first goes there."""

from collections.abc import Callable, Iterator

from PySide6.QtWidgets import QWidget

from inspector.desk.place import Place
from inspector.desk.places import PlaceEntry


class MadePlaces:
    """Pages by key: of the places, of a record, of forms."""

    def __init__(self, entries: tuple[PlaceEntry, ...], make: Callable[[PlaceEntry], QWidget]) -> None:
        self._entries = {one.key: one for one in entries}
        self._make = make
        self._pages: dict[str, QWidget] = {}

    def page(self, key: str) -> QWidget:
        """The page of a place, made where nobody went there before."""
        if key not in self._pages:
            self._pages[key] = self._make(self._entries[key])
        return self._pages[key]

    def __contains__(self, key: str) -> bool:
        """Whether somebody went there before."""
        return key in self._pages

    def __iter__(self) -> Iterator[Place]:
        """The places among them."""
        return (page for page in self._pages.values() if isinstance(page, Place))

    def items(self) -> Iterator[tuple[str, QWidget]]:
        """Key and page of each that was made."""
        return iter(self._pages.items())
