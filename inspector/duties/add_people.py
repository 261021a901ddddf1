"""Write people into the register."""

from inspector.duties.office import Office
from inspector.gear.person import Person
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.rows import new_id


def add_person(office: Office, person: Person) -> Person:
    """Keep a person; the name must be new, each scope a family of kinds or "all". Returns it with an id of its own."""
    _check_scopes(office, person)
    kept = Person(new_id(), person.name.strip(), person.role, person.competences)
    if not kept.name:
        raise Refused(tr("name"), tr("The name is empty."), tr("Write the person's name."))
    with office.book.page() as page:
        if any(one.name == kept.name for one in page.people()):
            why = tr("“{name}” is in the register already.", name=kept.name)
            raise Refused(tr("name"), why, tr("Add a mark that tells the two apart."))
        page.add_person(kept)
        page.enter("add person", by=office.officer.id, at=office.now, facts={"id": kept.id})
    return kept


def _check_scopes(office: Office, person: Person) -> None:
    known = sorted({kind.family for kind in office.rules.kinds.values()})
    for held in person.competences:
        if held.scope not in {*known, "all"}:
            why = tr("“{scope}” is no family of kinds.", scope=held.scope)
            raise Refused(tr("competent for"), why, tr("Use all, or one of: {families}.", families=", ".join(known)))
