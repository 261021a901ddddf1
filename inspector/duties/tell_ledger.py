"""Tell the ledger as sentences, the newest line first: who did what, when, to which piece, person or trip.

A deed's sentence is one small function from a `Line` to a text, entered under the deed's name in the SENTENCES of the
module it belongs to. A line of another shape than its sentence knows, as an older program may have written it, is
told by its deed and the rows it wrote.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime
from itertools import islice

from inspector.duties import (
    ledger_club,
    ledger_copies,
    ledger_exchange,
    ledger_gear,
    ledger_imports,
    ledger_papers,
    ledger_places,
    ledger_recalls,
    ledger_safety,
    ledger_trips,
    ledger_year,
)
from inspector.duties.ledger_line import Line, Sentence, listed
from inspector.duties.office import Office
from inspector.gear.ledger_line import ToldLine, WrittenLine
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page

SENTENCES: Mapping[str, Sentence] = {
    **ledger_club.SENTENCES,
    **ledger_exchange.SENTENCES,
    **ledger_copies.SENTENCES,
    **ledger_gear.SENTENCES,
    **ledger_imports.SENTENCES,
    **ledger_papers.SENTENCES,
    **ledger_places.SENTENCES,
    **ledger_safety.SENTENCES,
    **ledger_trips.SENTENCES,
    **ledger_year.SENTENCES,
    **ledger_recalls.SENTENCES,
}
_Wanted = Callable[[WrittenLine], bool]


def told_ledger(
    office: Office, *, last: int | None = None, of: str = "", since: date | None = None, before: int | None = None
) -> tuple[ToldLine, ...]:
    """The lines as sentences, newest first. last: at most so many; since: from that day on; before: a line's number,
    only those before it.

    of: only what concerns a piece, a vehicle or a person, or a trip by its reference.
    """
    if last is not None and last < 1:
        raise Refused(tr("last"), tr("“{count}” is no number of lines.", count=last), tr("Write 1 or more."))
    with office.book.reading() as page:
        names = {one.id: one.name for one in page.people()}
        kinds = {key: kind.name for key, kind in office.rules.kinds.items()}
        wanted = _about(page, of) if of else _anything
        lines = (one for one in page.ledger_lines() if before is None or one.number < before)
        found = (one for one in lines if _is_since(one, since) and wanted(one))
        return tuple(tell(one, names, kinds) for one in islice(found, last))


def tell(line: WrittenLine, names: Mapping[str, str], kinds: Mapping[str, str]) -> ToldLine:
    """One line as a sentence; names: of people by id, kinds: names of kinds by key. Never raises."""
    own = SENTENCES.get(line.deed)
    try:
        of_it = Line(line.by, line.facts, names, kinds)
        sentence = own(of_it) + of_it.proofs if own else ""
    except (LookupError, TypeError, ValueError, AttributeError):
        sentence = ""
    told = sentence or _in_general(line, names)
    return ToldLine(line.number, line.hash, line.at, _when(line.at), line.deed, told, bool(sentence))


def _in_general(line: WrittenLine, names: Mapping[str, str]) -> str:
    """What can be said of any line: the deed's name and how many rows of which tables it wrote."""
    counted = Counter(table.replace("_", " ") for table, _ in line.rows)
    rows = listed([f"{count} × {table}" for table, count in sorted(counted.items())])
    who = names.get(line.by, tr("Somebody"))
    return tr("{who} did “{deed}”; it wrote {rows}. No more of it can be told.", who=who, deed=line.deed, rows=rows)


def _when(at: datetime | None) -> str:
    return tr("{day}, {time}", day=show_day(at.date()), time=at.strftime("%H:%M")) if at else tr("at no known time")


def _anything(_: WrittenLine) -> bool:
    return True


def _is_since(line: WrittenLine, since: date | None) -> bool:
    return since is None or line.at is None or line.at.date() >= since


def _about(page: Page, name: str) -> _Wanted:
    """Whether a line concerns what is called so: it wrote a row of it, or its facts name it."""
    sought = name.strip()
    called, rows = _called(page, sought), frozenset[str]()
    if page.has_tag(sought):
        item = page.item(sought)
        called, rows = page.tags_of(item), page.row_ids_of(item)
    if not called:
        why = tr("Nothing and nobody is called “{name}”.", name=sought)
        raise Refused(tr("of"), why, tr("Name a piece or vehicle by its tag, a trip by its reference, or a person."))

    def concerns(line: WrittenLine) -> bool:
        if line.by in called or any(key in rows for _, key in line.rows):
            return True
        return any(text in called for text in _texts(line.facts))

    return concerns


def _called(page: Page, sought: str) -> frozenset[str]:
    """What a vehicle, trip or person of this name is called in the ledger's facts."""
    plain = sought.casefold()
    found = [one.tag for one in page.vehicles() if one.tag.casefold() == plain]
    found += [one.ref for one in page.trips() if one.ref.casefold() == plain]
    found += [one.id for one in page.people() if plain in {one.name.casefold(), one.id}]
    return frozenset(found)


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        for one in value.values():
            yield from _texts(one)
    elif isinstance(value, list):
        for one in value:
            yield from _texts(one)
