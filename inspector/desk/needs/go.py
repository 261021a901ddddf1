"""Where a line of a page leads."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Go:
    """A place of the window and what is to be shown there; what is empty where the place alone is meant.

    place: trip, incident or count (what: its reference), person (a name), rulebook, backup, due, people, book_in.
    """

    place: str
    what: str = ""
