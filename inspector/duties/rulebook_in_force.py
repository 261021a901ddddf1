"""The rulebook that is in force: which it is, what of it waits, and judging anew by it.

What judges and what reads a club's text is imported where it is needed: on most days nothing is judged as a register
is opened, and most clubs keep the packaged rulebook.
"""

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.gear.outcome import Outcome
from inspector.gear.rulebooks import Adopted, BookFault
from inspector.gear.seats import Role
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page

JUDGED_BY = "judged by adoption"  # the setting that tells which adoption has come into force
AGREED = "agreed retirements "  # with an adoption's id: the tags that the officer knew it to retire


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
    from inspector.rulebook.club_book import with_club

    return replace(office, rules=with_club(office.rules, adopted.text).book)


def _only_by(after: Office, before: Office, page: Page) -> set[str]:
    """The tags that only the later book retires today."""
    return set(retired_by(after, page)) - set(retired_by(before, page))


def retired_by(office: Office, page: Page) -> tuple[str, ...]:
    """The tags of the pieces that are not retired yet and that the office's rules retire today; nothing is kept."""
    from inspector.duties.judging import dossiers_of, verdict_by

    every = dossiers_of(office, page, page.not_retired())
    return tuple(one.item.tag for one in every if verdict_by(office, one).outcome is Outcome.RETIRE)


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


def fault_words(fault: BookFault) -> str:
    """A fault with the file, the line and, where it is known, the column."""
    if not fault.line:
        return f"{fault.file}: {fault.says}"
    at = tr(", column {column}", column=fault.column) if fault.column else ""
    return tr("{file}, line {line}{at}: {says}", file=fault.file, line=fault.line, at=at, says=fault.says)


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
        if not begun and not page.is_judged_by_another(office.rules.hash):
            return {}
    if office.book.role is not Role.OFFICER:
        why = tr("The verdicts in it were given by another rulebook than the one that holds now in this program.")
        way = tr("Let an equipment officer of the club open it, with the same version of the program.")
        raise Refused(tr("register"), why, way)
    from inspector.duties.judging import judge_and_keep_all

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
