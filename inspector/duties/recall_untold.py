"""Who was written to by a recall and has not been told that it was withdrawn."""

from collections.abc import Iterable

from msgspec import Struct

from inspector.gear.recall_notice import NewRecallEntry, Recall, RecallEntryKind
from inspector.language import show_day, tr
from inspector.register.page import Page

_SENT = {RecallEntryKind.WRITTEN, RecallEntryKind.REMINDED}


class Untold(Struct, frozen=True):
    """Somebody who does not know yet that a recall was withdrawn. reader: the id, empty for one whom the register
    knows by name alone, and the name. pieces: ids of those that he was written to about; letters: number and day of
    what he got.
    """

    reader: tuple[str, str]
    pieces: tuple[str, ...]
    letters: tuple[str, ...]


def untold(page: Page, recall: Recall) -> tuple[Untold, ...]:
    """Everybody who got a letter of it about a piece of which no later one told that it was withdrawn.

    Of a recall that stands everybody who got a letter.
    """
    entries = [one.facts for one in page.recall_entries(recall)]
    found = []
    for reader in dict.fromkeys((one.person, one.name) for one in entries if one.kind in _SENT):
        own = [one for one in entries if (one.person, one.name) == reader]
        sent = [one for one in own if one.kind in _SENT]
        told = _ids(page, (one for one in own if one.kind is RecallEntryKind.TOLD))
        if left := [key for key in _ids(page, sent) if key not in told]:
            letters = tuple(tr("{number} of {day}", number=one.number, day=show_day(one.on)) for one in sent)
            found.append(Untold(reader, tuple(left), letters))
    return tuple(found)


def _ids(page: Page, entries: Iterable[NewRecallEntry]) -> tuple[str, ...]:
    """The pieces that these entries are about, each once, in their order."""
    return tuple(dict.fromkeys(page.item(tag).id for one in entries for tag in one.tags))
