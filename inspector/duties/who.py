"""Who did it: names are looked up once, history keeps ids."""

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
