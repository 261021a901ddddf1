"""What must be said as a register is opened: tables brought up to date, a network drive, a clock that was set back."""

from collections.abc import Iterator
from contextlib import suppress

from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.clock import is_set_back, set_back
from inspector.register.gaps import RESCUE


def enter_upgrade(office: Office) -> None:
    """Enter that the tables were changed as the register was opened, and which copy was made before."""
    done = office.book.upgraded
    if done is None:
        return
    from inspector.duties.back_up import facts_of  # here: once in the life of a register

    facts = {"from": done.old, "to": done.new, **facts_of(done.copy)}
    with suppress(Refused), office.book.page() as page:  # a clock that was set back is told by itself
        page.enter("upgrade", by=office.officer.id, at=office.now, facts=facts)


def clock_trouble(office: Office) -> Refused | None:
    """What to say where this machine's clock stands before the last deed; days that have come may then not show."""
    with office.book.reading() as page:
        last = page.last_moment()
    return set_back(last, office.now) if last and is_set_back(last, office.now) else None


def opening_lines(office: Office) -> Iterator[str]:
    """A line each; none where there is nothing to say."""
    if done := office.book.upgraded:
        yield tr("The register was written by an older version of this program and was brought up to date. A copy "
                 "from before lies in {file}.", file=done.copy.file)  # fmt: skip
    yield from _rescued_today(office)
    if kind := office.book.remote_kind:
        yield tr("The register lies on a network drive ({kind}). Two machines that write at once may damage it, and "
                 "a drive that is lost takes what is being written. Better: keep it on this machine's own disk and "
                 "carry copies.", kind=kind)  # fmt: skip
    if trouble := clock_trouble(office):
        yield tr("{why} Nothing is entered until that is settled, and days that have come may not show. {what}",
                 why=trouble.why, what=trouble.what_to_do)  # fmt: skip


def _rescued_today(office: Office) -> Iterator[str]:
    """Where the register comes from a damaged file, that is said for the rest of the day."""
    with office.book.reading() as page:
        line = page.last_line((RESCUE,)) if page.has_line_of(RESCUE) else None
    if line is None or line.at is None or line.at.date() != office.today:
        return
    yield tr(
        "The register was saved today from the damaged file {file}; what is lost, and which pieces are held because of "
        "it, is listed beside it.",
        file=str(line.facts.get("file", "")),
    )
