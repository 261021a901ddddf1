"""The gear list: which pieces answer a question, what stands in the lines in view, and what may be asked."""

from collections import Counter
from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from operator import itemgetter

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import brief_words, where_words
from inspector.duties.who import club_names, plain_name
from inspector.gear.fitting import NewFitting
from inspector.gear.item import Item, NewItem
from inspector.gear.lists import Answers, Due, GearRow, Held, Owned, Wanted
from inspector.gear.outcome import Outcome
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import tr
from inspector.register.current import facts_of
from inspector.register.lists import Asked, GearLine
from inspector.register.page import Page
from inspector.register.rows import from_body
from inspector.rulebook.words import fitted_words, marked_words

_SOON_COUNTED = 2000  # pieces
_DAYS = {Due.IN_30_DAYS: 30, Due.IN_90_DAYS: 90}


class _Said(Struct, frozen=True):
    """The one line of a verdict's words that a list shows; the others are passed over unread."""

    use_line: str


class Choices(Struct, frozen=True):
    """What the list may be asked for. kinds: key and name, by name; owners: those who own a piece beside the club."""

    kinds: tuple[tuple[str, str], ...]
    owners: tuple[str, ...]


def answers(office: Office, wanted: Wanted) -> Answers:
    """Which pieces answer, in their order; nothing is read of any of them but what finds and sorts it."""
    with office.book.reading() as page:
        return _answers(office, page, wanted)


def first_rows(office: Office, count: int) -> tuple[GearRow, ...]:
    """The first so many lines of the whole list in the order of the days they fall due, for a register that takes a
    while to be counted; none where it does not."""
    with office.book.reading() as page:
        if page.piece_count() <= _SOON_COUNTED:
            return ()
        return gear_rows(office, page, page.gear_lines(page.first_due(count)))


def rows_of(office: Office, tags: Sequence[str]) -> tuple[GearRow, ...]:
    """The lines of these pieces, in the order of the tags; a tag that no piece has now is left out."""
    with office.book.reading() as page:
        return gear_rows(office, page, page.gear_lines(tags))


def choices(office: Office) -> Choices:
    """The kinds and owners there are pieces of."""
    with office.book.reading() as page:
        kinds = [(key, _kind_name(office, key)) for key in page.listed_kinds()]
        ours, every = club_names(page), {plain_name(one): one.strip() for one in page.listed_owners()}
        owners = {plain: name for plain, name in every.items() if plain not in ours}
    return Choices(tuple(sorted(kinds, key=lambda one: one[1])), tuple(sorted(owners.values(), key=str.casefold)))


def _answers(office: Office, page: Page, wanted: Wanted) -> Answers:
    found = page.find_gear(_asked(office, page, wanted))
    gone = page.gone() if found and not wanted.held else frozenset[str]()
    here = [one for one in found if one[0] not in gone] if gone else found
    gone_count = len(found) if wanted.held is Held.GONE else len(found) - len(here)
    kept = found if wanted.gone_too else here
    counted = Counter(map(itemgetter(1), kept))
    chosen = wanted.outcome.value if wanted.outcome else ""
    tags = tuple([tag for tag, outcome in kept if outcome == chosen] if chosen else [tag for tag, _ in kept])
    return Answers(tags, {one: counted[one.value] for one in Outcome}, gone_count)


def _asked(office: Office, page: Page, wanted: Wanted) -> Asked:
    """The question in the words of the book."""
    asked = Asked(
        words=tuple(wanted.search.split()),
        kind=wanted.kind,
        no_day=wanted.due is Due.NO_DAY,
        exposed=wanted.exposed,
        held=wanted.held,
        order=wanted.order,
        falling=wanted.falling,
        kinds=tuple(sorted(office.rules.kinds, key=lambda key: _kind_name(office, key))),
    )
    if wanted.owner:
        theirs = plain_name(wanted.owner)
        asked = replace(asked, owners=tuple(one for one in page.listed_owners() if plain_name(one) == theirs))
    elif wanted.owned:
        names = club_names(page)
        ours = tuple(one for one in page.listed_owners() if plain_name(one) in names)
        asked = replace(asked, owners=ours, others=wanted.owned is Owned.OTHERS)
    return replace(asked, due_by=_due_by(office.today, wanted.due))


def _due_by(today: date, due: Due | None) -> date | None:
    if due is Due.OVERDUE:
        return today - timedelta(days=1)
    return today + timedelta(days=_DAYS[due]) if due in _DAYS else None


def gear_rows(office: Office, page: Page, lines: Sequence[GearLine]) -> tuple[GearRow, ...]:
    """Lines of the list in words, with the kind's name and the place where each piece is."""
    names = {one.id: one.name for one in page.people()}
    facts = {line.tag: facts_of(line.body, line.changed) for line in lines}
    items = [Item(line.item_id, line.booked_on, facts[line.tag]) for line in lines]
    where = page.whereabouts(items)
    return tuple(_row(office, line, facts[line.tag], where[line.item_id], names) for line in lines)


def _row(office: Office, line: GearLine, facts: NewItem, where: Whereabouts, names: Mapping[str, str]) -> GearRow:
    return GearRow(
        tag=line.tag,
        kind=line.kind,
        kind_name=_kind_name(office, line.kind),
        maker_mark=facts.maker_mark,
        marked=marked_words(Item("", office.today, facts)),
        owner=facts.owner,
        place=_moved(where, names) or _place(facts, line.fitting),
        outcome=Outcome(line.outcome),
        headline=line.headline,
        next_due=line.next_due,
        unloosened=Outcome(line.unloosened) if line.unloosened and line.unloosened != line.outcome else None,
        serial=facts.serial,
        inspected_on=line.inspected_on,
        use_line=from_body(line.words, _Said).use_line,
        where=brief_words(where, names),
    )


def _kind_name(office: Office, key: str) -> str:
    kind = office.rules.kinds.get(key)
    return kind.name if kind else key


def _moved(where: Whereabouts, names: Mapping[str, str]) -> str:
    """Where a piece is, where that is out, gone, or a place it was put at since the booking; else nothing."""
    is_moved = where.where is Where.ON_LOAN or where.where.is_gone or (where.where is Where.IN_STORE and where.since)
    return where_words(replace(where, since=None), names) if is_moved else ""


def _place(facts: NewItem, fitting: str | None) -> str:
    """Where it sits since it was fitted or taken off last; without that the place it was booked with."""
    if fitting is None:
        return facts.place or (fitted_words(facts.fitted) if facts.fitted else "")
    to = from_body(fitting, NewFitting).to
    return fitted_words(to) if to else tr("taken off its vehicle")
