"""The pages of places that were made so far: each when somebody first goes there."""

from collections.abc import Callable, Iterator

from inspector.desk.place import Place
from inspector.desk.places import PlaceEntry


class MadePlaces:
    """Pages by key."""

    def __init__(self, entries: tuple[PlaceEntry, ...], make: Callable[[PlaceEntry], Place]) -> None:
        self._entries = {one.key: one for one in entries}
        self._make = make
        self._pages: dict[str, Place] = {}

    def page(self, key: str) -> Place:
        """The page of a place, made where nobody went there before."""
        if key not in self._pages:
            self._pages[key] = self._make(self._entries[key])
        return self._pages[key]

    def __iter__(self) -> Iterator[Place]:
        return iter(self._pages.values())

    def items(self) -> Iterator[tuple[str, Place]]:
        """Key and page of each that was made."""
        return iter(self._pages.items())
