"""Tell of the register itself: where it lies, whose it is, when it was copied last, how it was handed on."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from inspector.duties.hand_over import last_protocol
from inspector.duties.keep_key import Keys, keys
from inspector.duties.office import Office
from inspector.duties.who import person_of
from inspector.gear.ledger_line import WrittenLine
from inspector.gear.papers import HandoverProtocol
from inspector.language import tr
from inspector.register.page import Page

_COPIES = {"back up", "hand over"}


@dataclass(frozen=True, slots=True)
class LastCopy:
    """The last copy that was made. later_count: the lines written since."""

    file: str
    at: datetime | None
    head: str
    later_count: int


@dataclass(frozen=True, slots=True)
class RegisterTold:
    """place: the file, or the make of the database. head: of the ledger, with so many lines."""

    club: str
    officer: str
    place: str
    is_file: bool
    line_count: int
    head: str
    last_copy: LastCopy | None
    protocol: HandoverProtocol | None
    keys: Keys


def tell_register(office: Office) -> RegisterTold:
    """What the register is, as it stands now."""
    file, protocol, known = office.book.file, last_protocol(office), keys(office)
    with office.book.reading() as page:
        newest = next(page.ledger_lines(), None)
        count = newest.number if newest else 0
        return RegisterTold(
            club=page.setting("club"),
            officer=person_of(page, page.setting("officer"), tr("officer")).name,
            place=str(file.resolve()) if file else tr("in a {make} database", make=office.book.make),
            is_file=file is not None,
            line_count=count,
            head=page.head(),
            last_copy=_last_copy(page, count),
            protocol=protocol,
            keys=known,
        )


def _last_copy(page: Page, count: int) -> LastCopy | None:
    return next((copy for line in page.ledger_lines() if (copy := _copy(line, count))), None)


def _copy(line: WrittenLine, count: int) -> LastCopy | None:
    """The copy that a line tells of, if it tells of one."""
    if line.deed not in _COPIES:
        return None
    facts = line.facts.get("backup", line.facts)
    if not isinstance(facts, Mapping):
        return None
    return LastCopy(str(facts.get("file", "")), line.at, str(facts.get("head", "")), count - line.number)
