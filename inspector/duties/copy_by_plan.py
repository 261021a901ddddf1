"""Copies that nobody has to think of: made every so many days, checked by opening, and not more than are wanted."""

from collections.abc import Iterable, Mapping
from datetime import timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import asdict

from inspector.duties.back_up import facts_of, usual_folder
from inspector.duties.field_copies import field_copies
from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import backup
from inspector.register.backup import Backup, sha256_of
from inspector.register.page import Page
from inspector.register.rotation import STEM, PlannedCopy, planned_copies, to_go

COPIES = ("back up", "hand over", "restore")  # deeds after which a copy of all before them is known to exist
_SETTING = "copy plan"
_MOST = 400


class CopyPlan(Struct, frozen=True):
    """Every so many days a copy; 0: none by itself. The last ones are kept, and one of each of so many months."""

    days: int = 7
    last: int = 7
    months: int = 12


class Planned(Struct, frozen=True):
    """What the plan did: the copy it made, if one was due, and the names of those it let go."""

    made: Backup | None
    gone: tuple[str, ...] = ()


def copy_plan(office: Office) -> CopyPlan:
    """The plan that stands."""
    with office.book.reading() as page:
        return _plan_in(page)


def change_copy_plan(office: Office, wanted: CopyPlan) -> CopyPlan:
    """Let another plan stand from now on."""
    asked = ((tr("days"), wanted.days, 0), (tr("last"), wanted.last, 1), (tr("months"), wanted.months, 0))
    for name, value, least in asked:
        if not least <= value <= _MOST:
            why = tr("{count} is not between {least} and {most}.", count=value, least=least, most=_MOST)
            raise Refused(name, why, tr("Write another number."))
    with office.book.page() as page:
        if _plan_in(page) == wanted:
            raise Refused(tr("days"), tr("Nothing would change."), tr("Write what is to be different, or leave."))
        page.set(_SETTING, f"{wanted.days} {wanted.last} {wanted.months}")
        page.enter("copy plan", by=office.officer.id, at=office.now, facts=asdict(wanted))
    return wanted


def copy_if_due(office: Office) -> Planned:
    """Make a copy where the plan asks for one and anything was written since the last; let go what is too many."""
    if office.book.file is None or not _is_due(office):
        return Planned(None)
    folder, plan = usual_folder(office), copy_plan(office)
    made = backup.back_up(office.book, folder, office.today, office.told, STEM)
    gone = tuple(_ours(office, to_go(planned_copies(folder), plan.last, plan.months)))
    with office.book.page() as page:
        facts = facts_of(made) | {"planned": True, "let_go": [one.file.name for one in gone]}
        page.enter("back up", by=office.officer.id, at=office.now, facts=facts)
    return Planned(made, tuple(one.file.name for one in gone if _removed(one.file)))


def _plan_in(page: Page) -> CopyPlan:
    text = page.setting(_SETTING)
    return CopyPlan(*map(int, text.split())) if text else CopyPlan()


def _is_due(office: Office) -> bool:
    elsewhere = [one.origin for one in field_copies(office)]  # a copy of one lacks what was done here
    with office.book.reading() as page:
        plan = _plan_in(page)
        last = page.last_line(COPIES, elsewhere)
        if not plan.days or not page.line_number():
            return False
        if last is None or last.at is None:
            return True
        is_old = last.at.date() + timedelta(days=plan.days) <= office.today
        return is_old and page.lines_after(last.number) > 0


def _ours(office: Office, copies: Iterable[PlannedCopy]) -> Iterable[PlannedCopy]:
    """Those that the ledger says were made by the plan, and that are byte by byte as they were made."""
    with office.book.reading() as page:
        made = [one.facts for one in page.lines_of(("back up",)) if _by_plan(one.facts)]
    sums = {str(one.get("file")): one.get("sha256") for one in made}
    return [one for one in copies if sums.get(one.file.name) == sha256_of(one.file)]


def _by_plan(facts: Mapping[str, object]) -> bool:
    return facts.get("planned") is True


def _removed(file: Path) -> bool:
    """A copy that cannot be removed stays; the next turn tries again."""
    try:
        file.unlink()
    except OSError:
        return False
    return True
