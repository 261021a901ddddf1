"""Tell of the register itself: where it lies, whose it is, when it was copied last, how it was handed on."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from itertools import islice

from msgspec import Struct

from inspector.duties.clash_words import clash_lines
from inspector.duties.field_copies import copy_words, field_copies
from inspector.duties.hand_over import last_protocol
from inspector.duties.keep_key import Keys, keys
from inspector.duties.office import Office
from inspector.duties.tell_copies import CopiesTold, copies_told
from inspector.duties.tell_opening import clock_trouble, opening_lines
from inspector.duties.who import person_of, register_name
from inspector.gear.ledger_line import WrittenLine
from inspector.gear.merging import FieldCopy, Merged
from inspector.gear.papers import HandoverProtocol
from inspector.language import tr
from inspector.register.chains import MERGE
from inspector.register.page import Page
from inspector.register.rows import from_facts

_MOST_MERGES = 6
_COPIES = ("back up", "hand over")


class LastCopy(Struct, frozen=True):
    """The last copy that was made. later_count: the lines written since."""

    file: str
    at: datetime | None
    head: str
    later_count: int


class CopyTold(Struct, frozen=True):
    """A field copy that was taken from this register. holder: the name of who took it."""

    copy: FieldCopy
    holder: str


class MergeTold(Struct, frozen=True):
    """A copy that did not go together with what stood here. lines: who did what, and what follows."""

    origin: str
    at: datetime | None
    count: int
    lines: tuple[str, ...]


class RegisterTold(Struct, frozen=True):
    """place: the file, or the address of the database. head: of the ledger, with so many lines.

    field_copies: the newest first; copy_words: what is said of it where it is a field copy itself.
    mind: what must be minded of where it lies, of the clock, of an upgrade.
    """

    club: str
    officer: str
    place: str
    is_file: bool
    line_count: int
    head: str
    last_copy: LastCopy | None
    protocol: HandoverProtocol | None
    keys: Keys
    field_copies: tuple[CopyTold, ...]
    copy_words: str
    merges: tuple[MergeTold, ...]
    copies: CopiesTold
    mind: tuple[str, ...] = ()
    clock_is_back: bool = False


def tell_register(office: Office) -> RegisterTold:
    """What the register is, as it stands now."""
    file, protocol, known = office.book.file, last_protocol(office), keys(office)
    taken, words = field_copies(office), copy_words(office)
    copies, mind = copies_told(office), tuple(opening_lines(office))
    clock_is_back = clock_trouble(office) is not None
    with office.book.reading() as page:
        count = page.line_number()
        names = {one.id: one.name for one in page.people()}
        return RegisterTold(
            club=register_name(page),
            officer=person_of(page, page.setting("officer"), tr("officer")).name,
            place=str(file.resolve()) if file else office.book.address,
            is_file=file is not None,
            line_count=count,
            head=page.head(),
            last_copy=_last_copy(page, count, [one.origin for one in taken]),
            protocol=protocol,
            copies=copies,
            mind=mind,
            clock_is_back=clock_is_back,
            keys=known,
            field_copies=tuple(CopyTold(one, names.get(one.holder, one.holder)) for one in taken),
            copy_words=words,
            merges=tuple(islice(_merges(page), _MOST_MERGES)),
        )


def _merges(page: Page) -> Iterator[MergeTold]:
    for line in page.lines_of((MERGE,)):
        merged = from_facts(line.facts["as"], Merged)
        if merged.clashes:
            yield MergeTold(merged.origin, line.at, len(merged.clashes), clash_lines(merged))


def _last_copy(page: Page, count: int, elsewhere: Sequence[str]) -> LastCopy | None:
    """The last copy of this register; one that was made of a field copy lacks what was done here."""
    line = page.last_line(_COPIES, elsewhere)
    return _copy(line, count) if line else None


def _copy(line: WrittenLine, count: int) -> LastCopy | None:
    """The copy that a line tells of, if it tells of one."""
    facts = line.facts.get("backup", line.facts)
    if not isinstance(facts, Mapping):
        return None
    return LastCopy(str(facts.get("file", "")), line.at, str(facts.get("head", "")), count - line.number)
