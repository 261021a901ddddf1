"""Who did it: names are looked up once, history keeps ids."""

from datetime import date

from inspector.gear.item import Item
from inspector.gear.kind import Kind
from inspector.gear.person import Person
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


def person_of(page: Page, key: str, field: str) -> Person:
    """The person with this id or name; refused where there is none."""
    for person in page.people():
        if key in {person.id, person.name}:
            return person
    why = tr("Nobody called “{name}” is in the register.", name=key)
    raise Refused(field, why, tr("Choose a person of the club, or add the person first."))


def check_judge(person: Person, item: Item, kind: Kind, on: date, field: str) -> None:
    """Refuse whoever is not competent for this kind on the day, or owns the piece: nobody judges his own gear."""
    if not person.is_competent(kind.family, on):
        why = tr("{name} is not entered as competent for a {kind}.", name=person.name, kind=kind.name.lower())
        raise Refused(field, why, tr("Ask somebody who is, or enter what the person may judge first."))
    if person.name == item.facts.owner:
        why = tr("{name} owns the piece, and nobody is the judge of his own gear.", name=person.name)
        raise Refused(field, why, tr("Ask another competent person."))
