"""Adopt a club's own rulebook, or go back to the packaged one; the register judges every piece anew by it.

What is kept is the club's text. The rulebook is built from it at each start, so a newer program brings its newer
packaged rules under the same club limits; what does not fit any more falls back to the packaged figure and is told.
"""

import hashlib
from dataclasses import replace
from datetime import date

from inspector.duties.judging import dossiers_of, judge_and_keep_all, verdict_by
from inspector.duties.office import Office
from inspector.gear.outcome import Outcome
from inspector.gear.rulebooks import Adopted, BookFault, BookFound, Change
from inspector.gear.seats import Role
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.club_book import with_club
from inspector.rulebook.club_texts import decoded
from inspector.rulebook.load import Rulebook, packaged

JUDGED_BY = "judged by adoption"  # the setting that tells which adoption has come into force
AGREED = "agreed retirements "  # with an adoption's id: the tags that the officer knew it to retire


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


def fault_words(fault: BookFault) -> str:
    """A fault with the file, the line and, where it is known, the column."""
    if not fault.line:
        return f"{fault.file}: {fault.says}"
    at = tr(", column {column}", column=fault.column) if fault.column else ""
    return tr("{file}, line {line}{at}: {says}", file=fault.file, line=fault.line, at=at, says=fault.says)


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


def retired_by(office: Office, page: Page) -> tuple[str, ...]:
    """The tags of the pieces that are not retired yet and that the office's rules retire today; nothing is kept."""
    every = dossiers_of(office, page, page.not_retired())
    return tuple(one.item.tag for one in every if verdict_by(office, one).outcome is Outcome.RETIRE)


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


def in_force(office: Office) -> Office:
    """The office with the rulebook that is in force today: the packaged one, or with what the club has adopted.

    A book whose day has come waits while it would retire a piece that nobody was asked about; the book before it
    stays in force, and the office tells which pieces it waits for.
    """
    with office.book.reading() as page:
        found = page.adopted(office.today)
        stands = page.setting(JUDGED_BY)
        if found is None or found.id == stands:
            return _under(office, found)
        before, after = _under(office, page.adoption(stands)), _under(office, found)
        unasked = _only_by(after, before, page) - set(page.setting(AGREED + found.id).split("\n"))
    return replace(before, waits_for=tuple(sorted(unasked))) if unasked else after


def _under(office: Office, adopted: Adopted | None) -> Office:
    if adopted is None or not adopted.text:
        return office
    return replace(office, rules=with_club(office.rules, adopted.text).book)


def _only_by(after: Office, before: Office, page: Page) -> set[str]:
    """The tags that only the later book retires today."""
    return set(retired_by(after, page)) - set(retired_by(before, page))


def waiting_lines(office: Office) -> tuple[str, ...]:
    """That an adopted rulebook waits, for which pieces, and what to do."""
    if not office.waits_for:
        return ()
    would = tr(
        "The adopted rulebook is not in force yet: its day has come, and it would retire pieces that nobody was"
        " asked about: {tags}.",
        tags=", ".join(office.waits_for),
    )
    way = tr("Look at them, then adopt it again and say how many pieces it may retire. Until then the old one holds.")
    return would, way


def unfit_lines(office: Office) -> tuple[str, ...]:
    """What of the adopted rulebook this version of the program cannot use, a line each."""
    return tuple(fault_words(one) for one in office.rules.club.unfit) if office.rules.club else ()


def judge_under_new_book(office: Office) -> dict[str, Outcome]:
    """Judge anew, by the rulebook in force, every piece whose verdict was given by another one. What they come to, by
    tag.

    Another one may be a club's adopted earlier whose day has come, or the packaged one of an older program. Refused for
    a login that is no officer's: another rulebook may be milder.
    """
    with office.book.reading() as page:
        begun = _begun(office, page)
        if not begun and not page.judged_by_another(office.rules.hash):
            return {}
    if office.book.role is not Role.OFFICER:
        why = tr("The verdicts in it were given by another rulebook than the one that holds now in this program.")
        way = tr("Let an equipment officer of the club open it, with the same version of the program.")
        raise Refused(tr("register"), why, way)
    with office.book.page() as page:
        if begun:
            page.set(JUDGED_BY, begun)
        others = page.judged_by_another(office.rules.hash)
        outcomes = {one.dossier.item.tag: one.verdict.outcome for one in judge_and_keep_all(office, page, others)}
        facts = {"id": begun or office.rules.hash, "tags": list(outcomes)}
        page.enter("rulebook in force", by=office.officer.id, at=office.now, facts=facts)
    return outcomes


def _begun(office: Office, page: Page) -> str:
    """The adoption that comes into force now; empty where none does, or where it has to wait."""
    found = page.adopted(office.today)
    return "" if found is None or office.waits_for or page.setting(JUDGED_BY) == found.id else found.id
