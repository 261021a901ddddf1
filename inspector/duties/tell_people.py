"""Tell of the people: what each may judge today, who has a passphrase, and what was changed of one and why."""

from msgspec import Struct

from inspector.duties.change_person import competence_words
from inspector.duties.keep_passphrases import wish
from inspector.duties.office import Office
from inspector.duties.who import person_of
from inspector.gear.lists import HistoryRow
from inspector.gear.person import Contact, NewPersonChange, Passphrases, Person
from inspector.gear.seats import Role
from inspector.language import tr


class PersonRow(Struct, frozen=True):
    """A line of the list. held: what the person may judge now or will, in words."""

    person: Person
    held: str
    has_passphrase: bool


class PersonRecord(Struct, frozen=True):
    """All that is told of one person. ended: competences that ran out; changes: the newest first."""

    row: PersonRow
    ended: tuple[str, ...]
    contact: Contact | None
    changes: tuple[HistoryRow, ...]


class PeopleFound(Struct, frozen=True):
    """Everybody, and what the club wants of whoever sits at the desk."""

    rows: tuple[PersonRow, ...]
    passphrases: Passphrases


def list_people(office: Office) -> PeopleFound:
    """Everybody, by name."""
    with office.book.reading() as page:
        holders = page.passphrase_holders()
        rows = tuple(_row(office, one, holders) for one in page.people())
        return PeopleFound(rows, wish(page))


def open_person(office: Office, who: str) -> PersonRecord:
    """One person with every change, and with the contact details, which officers alone may read."""
    with office.book.reading() as page:
        person = person_of(page, who, tr("person"))
        row = _row(office, person, page.passphrase_holders())
        contact = page.contact(person.id) if office.book.role is Role.OFFICER else None
        changes, names = page.person_changes(person.id), {one.id: one.name for one in page.people()}
    ended = tuple(competence_words(one) for one in person.competences if one.until and one.until < office.today)
    told = tuple(_changed(one, names) for one in reversed(changes))
    return PersonRecord(row, ended, contact, told)


def _row(office: Office, person: Person, holders: frozenset[str]) -> PersonRow:
    running = [one for one in person.competences if one.until is None or one.until >= office.today]
    return PersonRow(person, ", ".join(map(competence_words, running)), person.id in holders)


def _changed(one: NewPersonChange, names: dict[str, str]) -> HistoryRow:
    """What the person was called and could judge from that day on, and who stood behind it."""
    held = ", ".join(competence_words(held) for held in one.person.competences) or tr("nothing")
    told = tr(
        "{name}, {role}; may judge: {held}. {why}", name=one.person.name, role=one.person.role, held=held, why=one.why
    )
    paper = tr(" Shown by: {paper}.", paper=one.paper) if one.paper else ""
    by = ", ".join(names.get(key, key) for key in (one.by, one.second) if key)
    return HistoryRow(one.on, tr("Changed"), told + paper, by)
