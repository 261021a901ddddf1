"""Adopt a club's own rulebook, or go back to the packaged one; the register judges every piece anew by it.

What is kept is the club's text. The rulebook is built from it at each start, so a newer program brings its newer
packaged rules under the same club limits; what does not fit any more falls back to the packaged figure and is told.
"""

import hashlib
from datetime import date

from msgspec.structs import replace

from inspector.duties.judging import judge_and_keep_all
from inspector.duties.office import Office
from inspector.duties.rulebook_in_force import AGREED, JUDGED_BY, fault_words, retired_by
from inspector.gear.rulebooks import Adopted, BookFound, Change
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.club_book import with_club
from inspector.rulebook.club_texts import decoded
from inspector.rulebook.load import Rulebook, packaged


def check_rulebook(body: bytes, file: str) -> BookFound:
    """Read a club's file; nothing is kept. body: the bytes of the file; file: its name, for the faults."""
    text, unread = decoded(body, file)
    if unread:
        return BookFound("", "", None, "", (), unread)
    found = with_club(packaged(), text, file)
    head = found.head
    return BookFound(head.club, head.title, head.from_on, head.why, found.changes, found.faults)


def sound_book(body: bytes, file: str) -> tuple[Rulebook, str]:
    """The rulebook of a club's file and the file's text; refused with every fault where it has any."""
    text, unread = decoded(body, file)
    found = with_club(packaged(), text, file)
    if faults := unread or found.faults:
        listed = "\n".join(f"  {fault_words(one)}" for one in faults)
        raise Refused(file, tr("It cannot be used yet:") + f"\n{listed}", tr("Mend these lines and check it again."))
    return found.book, text


def adopt_rulebook(office: Office, body: bytes, file: str, from_on: date | None = None, retires: int = 0) -> Adopted:
    """Adopt a club's file from a day on. from_on: that day; the file's own where none is given.

    retires: how many pieces the officer knows it to retire at once; refused where it is another number, since a
    retirement is final.
    """
    book, text = sound_book(body, file)
    begins = from_on or (book.club.from_on if book.club else None) or office.today
    return _adopt(office, book, text, begins, retires)


def drop_rulebook(office: Office, from_on: date | None = None, retires: int = 0) -> Adopted:
    """Adopt the packaged rulebook again, without any change of the club's."""
    return _adopt(office, packaged(), "", from_on or office.today, retires)


def _adopt(office: Office, book: Rulebook, text: str, begins: date, retires: int) -> Adopted:
    if begins < office.today:
        why = tr("It would hold from {day}, which is past.", day=show_day(begins))
        raise Refused(
            tr("rulebook"), why, tr("Name a day from today on; past verdicts keep the rulebook of their day.")
        )
    under = replace(office, rules=book)
    with office.book.page() as page:
        _refuse_the_same(office, page, begins, text)
        agreed = _check_retirements(under, page, retires)
        kept = page.add_adoption(text, office.today, begins)
        page.set(AGREED + kept.id, "\n".join(agreed))
        if begins <= office.today:
            _judge_all(under, page, kept.id)
        page.enter("adopt rulebook", by=office.officer.id, at=office.now, facts=_facts(book, kept, agreed))
    return kept


def _refuse_the_same(office: Office, page: Page, begins: date, text: str) -> None:
    """Adopting what stands already would only fill the ledger; one that waits for its number may be adopted again."""
    last = page.last_adoption()
    if last and last.from_on <= office.today and last.id != page.setting(JUDGED_BY):
        return
    if (last.text if last else "") == text and (last is None or last.from_on <= begins):
        why = tr("This rulebook is adopted already.")
        raise Refused(tr("rulebook"), why, tr("Change the file, or leave it as it is."))


def _check_retirements(under: Office, page: Page, expected: int) -> tuple[str, ...]:
    """The tags that the officer knows it to retire; refused where they are not as many as he says."""
    tags = retired_by(under, page)
    if len(tags) != expected:
        listed = ", ".join(tags) or tr("none")
        why = tr_n(
            "It would retire one piece at once: {tags}.",
            "It would retire {count} pieces at once: {tags}.",
            len(tags),
            tags=listed,
        )
        way = tr(
            "A retirement is final: compare the books first, then say how many it may retire: {count}.", count=len(tags)
        )
        raise Refused(tr("rulebook"), why, way)
    return tags


def _judge_all(office: Office, page: Page, adoption: str) -> None:
    page.set(JUDGED_BY, adoption)
    for _ in judge_and_keep_all(office, page, page.not_retired()):
        pass  # each is kept and let go


def _facts(book: Rulebook, kept: Adopted, agreed: tuple[str, ...]) -> dict[str, object]:
    """What the ledger says of the adoption."""
    club = book.club
    changes = club.changes if club else ()
    return {
        "club": club.club if club else "",
        "title": club.title if club else "packaged",
        "from": kept.from_on.isoformat(),
        "text": hashlib.sha256(kept.text.encode()).hexdigest(),
        "changes": [_change_fact(one) for one in changes],
        "retires": list(agreed),
    }


def _change_fact(change: Change) -> list[str]:
    return [change.part, change.about, change.key, change.packaged, change.club, change.direction.value]
