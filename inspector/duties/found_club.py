"""Begin an empty register: the club's name and its first person, who becomes the equipment officer."""

from inspector.duties.add_people import add_person
from inspector.duties.office import Office
from inspector.gear.person import Competence, Person
from inspector.language import tr
from inspector.refused import Refused


def found_club(office: Office, club: str, officer: str) -> Person:
    """Write the club and its officer into an empty register. The officer is entered as competent for all kinds, as
    stated by whoever begins the register; that statement stands in the ledger."""
    if not club.strip():
        raise Refused(tr("club"), tr("The name is empty."), tr("Write the club's name; it stands on every document."))
    with office.book.together():
        with office.book.page() as page:
            if page.people():
                why = tr("The register has people already.")
                raise Refused(tr("register"), why, tr("Open it as it is, or begin in another folder."))
            page.set("club", club.strip())
            page.enter("found club", by=office.officer.id, at=office.now, facts={"club": club.strip()})
        person = Person("", officer, tr("Equipment officer"), (Competence("all", office.today),))
        kept = add_person(office, person)
        name_officer(office, kept)
        return kept


def name_officer(office: Office, person: Person) -> None:
    """Make a person of the register the club's equipment officer."""
    with office.book.page() as page:
        page.set("officer", person.id)
        page.enter("name officer", by=office.officer.id, at=office.now, facts={"id": person.id})
