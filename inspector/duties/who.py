"""Who did it: names are looked up once, history keeps ids."""

from collections.abc import Iterable
from datetime import date, timedelta

from inspector.duties.incident_checks import need
from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import where_words
from inspector.gear.item import Item
from inspector.gear.kind import Kind
from inspector.gear.person import Passphrases, Person
from inspector.gear.seats import Role
from inspector.gear.trip import Vehicle
from inspector.gear.whereabouts import Where
from inspector.language import tr, within
from inspector.refused import Refused
from inspector.register.page import Page


def person_of(page: Page, key: str, field: str) -> Person:
    """The person with this id or name; refused where there is none."""
    for person in page.people():
        if key in {person.id, person.name}:
            return person
    why = tr("Nobody called “{name}” is in the register.", name=key)
    raise Refused(field, why, tr("Choose a person of the club, or add the person first."))


def owns(person: Person, item: Item) -> bool:
    """Whether the piece is this person's own, however the name was typed, and under a former name too."""
    return _is_named(person, item.facts.owner)


def owns_vehicle(person: Person, vehicle: Vehicle) -> bool:
    """Whether the vehicle is this person's own, however the name was typed, and under a former name too."""
    return _is_named(person, vehicle.owner)


def _is_named(person: Person, owner: str) -> bool:
    return plain_name(owner) in _names(person)


def _names(person: Person) -> set[str]:
    return {plain_name(one) for one in (person.name, person.id, *person.former_names)}


def ids_by_name(people: Iterable[Person]) -> dict[str, frozenset[str]]:
    """By each name that somebody has or had, as `plain_name` writes it, the ids of whoever may be meant by it."""
    found: dict[str, set[str]] = {}
    for one in people:
        for name in _names(one):
            found.setdefault(name, set()).add(one.id)
    return {name: frozenset(ids) for name, ids in found.items()}


def register_name(page: Page) -> str:
    """Whose register this is; a field copy says that it is one, wherever it is named."""
    club = page.setting("club")
    return tr("{club}, field copy {origin}", club=club, origin=page.origin) if page.is_copy() else club


def plain_name(name: str) -> str:
    """A name without what two spellings of one name differ in: capitals and spacing."""
    return " ".join(name.casefold().split())


def is_clubs(page: Page, item: Item) -> bool:
    """Whether the piece is the club's own; one without an owner is."""
    return names_club(page, item.facts.owner)


def names_club(page: Page, owner: str) -> bool:
    """Whether these words name the club itself, or nobody."""
    return plain_name(owner) in club_names(page)


def club_names(page: Page) -> frozenset[str]:
    """What names the club itself, or nobody, as `plain_name` writes it."""
    return frozenset(("", "club", tr("Club").casefold(), plain_name(page.setting("club"))))


def check_judge(person: Person, item: Item, kind: Kind, on: date, field: str) -> None:
    """Refuse whoever is not competent for this kind on the day, or owns the piece: nobody judges his own gear."""
    check_competent(person, kind, on, field)
    if owns(person, item):
        why = tr("{name} owns the piece, and nobody is the judge of his own gear.", name=person.name)
        raise Refused(field, why, tr("Ask another competent person."))


def check_competent(person: Person, kind: Kind, on: date, field: str) -> None:
    """Refuse whoever is not competent for this kind on the day."""
    if not person.is_competent(kind.family, on):
        why = tr("{name} is not entered as competent for a {kind}.", name=person.name, kind=within(kind.name))
        raise Refused(field, why, tr("Ask somebody who is, or enter what the person may judge first."))


def check_competent_for_any(person: Person, kinds: Iterable[Kind], on: date, field: str) -> None:
    """Refuse whoever may judge none of these kinds on the day."""
    if not any(person.is_competent(kind.family, on) for kind in kinds):
        why = tr("{name} is not entered as competent for any kind of gear.", name=person.name)
        raise Refused(field, why, tr("Ask somebody who is, or enter what the person may judge first."))


def check_could_before(page: Page, person: Person, kinds: Iterable[Kind], on: date, field: str) -> None:
    """Refuse as one of two names whoever may judge none of these kinds but since that day: else one alone would enter
    the other name and use it at once. The club's equipment officer may from the register's first day on."""
    before = on - timedelta(days=1)
    if person.id != page.setting("officer") and not any(person.is_competent(kind.family, before) for kind in kinds):
        why = tr("{name} is entered as competent for it only since today.", name=person.name)
        raise Refused(field, why, tr("Ask somebody who was before, or do it tomorrow."))


def names_count(office: Office, page: Page, *people: Person) -> bool:
    """Whether these names are good enough to pass gear: where the club requires passphrases, only who gave his is."""
    return not _are_required(page) or all(office.vouches_for(one) for one in people)


def seconds_prove(office: Office, page: Page) -> bool:
    """Whether a second name is asked for its passphrase too; a login that passes nothing names none."""
    return office.book.role is Role.OFFICER and _are_required(page)


def _are_required(page: Page) -> bool:
    return page.setting("passphrases") == Passphrases.REQUIRED


def check_name_counts(office: Office, page: Page, person: Person, field: str) -> None:
    """Refuse a name that is only stated, where the club requires passphrases."""
    if names_count(office, page, person):
        return
    if person.id not in page.passphrase_holders():
        why = tr("The club requires passphrases, and {name} has none yet.", name=person.name)
        raise Refused(field, why, tr("Let somebody who has one help {name} to set one first.", name=person.name))
    why = tr("The club requires passphrases, and {name} has not given one at this desk.", name=person.name)
    raise Refused(field, why, tr("Let {name} come to the desk and give it.", name=person.name))


def two_names(office: Office, page: Page, first: tuple[str, str], second: str) -> tuple[Person, Person]:
    """Two different people who both say so; each name counts as one at the desk does.

    first: id or name, the officer's where it is empty, and what the field is called. second: id or name.
    """
    by, field = first
    one = person_of(page, by or office.officer.id, field)
    check_name_counts(office, page, one, field)
    what = tr("Name another competent person.")
    other = person_of(page, need(tr("second name"), second, what), tr("second name"))
    check_second(office, page, one, other, what)
    return one, other


def check_second(office: Office, page: Page, first: Person, second: Person, what: str) -> None:
    """Refuse one person as both names, and a second name that is only stated where the club requires passphrases.

    what: what to do instead of naming one person twice.
    """
    if first.id == second.id:
        raise Refused(tr("second name"), tr("{name} cannot be both names.", name=first.name), what)
    check_name_counts(office, page, second, tr("passphrase of the second name"))


def proved(office: Office, *people: str) -> dict[str, list[str]]:
    """What the ledger's line of a deed of two says of who gave a passphrase for it; nothing where no second one was
    asked. people: their ids.
    """
    gave = {office.vouched_second, office.officer.id if office.vouched else ""}
    return {"proved": [one for one in people if one and one in gave]} if office.vouched_second else {}


def check_not_closed(page: Page, item: Item) -> None:
    """Refuse to log anything new of a piece that was made unusable or sold: it must be another one."""
    where = page.whereabouts_of(item).where
    if where is Where.DESTROYED:
        why = tr("{tag} was recorded as made unusable.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Look at the label again; it must be another piece."))
    if where is Where.WITHDRAWN:
        why = tr("{tag} was withdrawn: it was booked in by mistake.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Look at the label again; if the piece is there, book it in anew."))
    if where is Where.SOLD:
        why = tr("{tag} was sold.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Look at the label again; a piece that was bought back is booked in anew."))


def check_at_hand(page: Page, item: Item) -> None:
    """Refuse what the club does not have: it must be found again first."""
    found = page.whereabouts_of(item)
    if found.where.is_gone:
        names = {one.id: one.name for one in page.people()}
        why = tr("{tag} is {where}.", tag=item.tag, where=where_words(found, names))
        raise Refused(tr("tag"), why, tr("If it is here again, say so with `found` first; look at the label again."))


def check_not_evidence(page: Page, item: Item) -> None:
    """Refuse what would change or take away a piece that an incident keeps as it was found."""
    if kept := page.open_quarantines(item):
        why = tr("{tag} is kept as found, as evidence of {refs}.", tag=item.tag, refs=", ".join(kept))
        raise Refused(tr("tag"), why, tr("Leave it as it is; two competent persons must release it first."))


def check_vehicle_not_evidence(page: Page, tag: str) -> None:
    """Refuse what would change a vehicle that an incident keeps as it was found."""
    if refs := page.kept_vehicles().get(tag):
        why = tr("{tag} is kept as found, as evidence of {refs}.", tag=tag, refs=", ".join(refs))
        raise Refused(tr("vehicle"), why, tr("Leave it as it is; two competent persons must release it first."))


def id_of(office: Office, page: Page, named: str, field: str) -> str:
    """The id of whoever is named; the officer at the desk where nobody is."""
    return person_of(page, named, field).id if named else office.officer.id
