"""Say that this machine's clock is right though the last deed was entered later: that one's clock ran ahead."""

from contextlib import suppress

from inspector.duties.give_opinion import doubt
from inspector.duties.office import Office
from inspector.duties.tell_opening import clock_trouble
from inspector.language import tr
from inspector.refused import Refused


def clock_is_right(office: Office, why: str) -> tuple[str, ...]:
    """Enter it. Returns the tags of pieces that are held by it.

    What was entered for a day that is still to come does not count until then, not even a doubt; so every such piece
    is held until it is inspected.
    """
    if clock_trouble(office) is None:
        raise Refused(tr("clock"), tr("It does not stand before the last entry."), tr("Nothing is to do."))
    if not why.strip():
        raise Refused(tr("why"), tr("It is empty."), tr("Write in a sentence how you know that it is right."))
    with office.book.together():
        with office.book.page() as page:
            last = page.last_moment()
            facts = {"why": why.strip(), "last": last.isoformat(timespec="seconds") if last else ""}
            tags = page.tags_after(office.today)
            page.enter("clock", by=office.officer.id, at=office.now, facts=facts)
        return tuple(tag for tag in tags if _held(office, tag))


def _held(office: Office, tag: str) -> bool:
    """Whether it could be held; what has left the club stays gone."""
    with suppress(Refused):
        doubt(
            office, tag, tr("Something was entered of it by a clock that ran ahead, for a day that is still to come.")
        )
        return True
    return False
