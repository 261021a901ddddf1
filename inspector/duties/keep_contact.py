"""How to reach a person: written down outside the history, and taken out for good when he asks for it."""

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.keep_draft import forget
from inspector.duties.office import Office
from inspector.duties.overtaken import check_overtaken
from inspector.duties.plain_lines import check_line
from inspector.duties.who import person_of
from inspector.gear.person import Contact, Person
from inspector.language import tr
from inspector.refused import Refused

WRITING = "write contact"  # the form's name; what was typed into it and set aside goes with the details


class Erased(Struct, frozen=True):
    """Whose details were taken out or written anew. is_wiped: whether no older state is left in the register's file."""

    person: Person
    is_wiped: bool


def contact_of(office: Office, who: str) -> Contact | None:
    """How to reach a person, where it was written down."""
    with office.book.reading() as page:
        return page.contact(person_of(page, who, tr("person")).id)


def write_contact(
    office: Office,
    who: str,
    *,
    phone: str | None = None,
    mail: str | None = None,
    address: str | None = None,
    seen: Contact | None = None,
) -> Erased:
    """Write down how to reach a person; what is not given stays. The ledger says that it was done, not the details.

    seen: as whoever writes has seen it; refused where the same detail was written anew since.
    """
    with office.book.page() as page:
        person = person_of(page, who, tr("person"))
        before = page.contact(person.id) or Contact()
        given = {"phone": phone, "mail": mail, "address": address}
        for key, name in contact_fields().items():
            check_line(name, given[key] or "")
        if seen:
            check_overtaken(seen, before, replace(seen, **_given(given)), contact_fields())
        contact = replace(before, **_given(given))
        if contact == before:
            raise Refused(
                tr("contact"), tr("Nothing would change."), tr("Write a telephone, a mail or a postal address.")
            )
        page.set_contact(person.id, contact if contact != Contact() else None)
        page.enter("write contact", by=office.officer.id, at=office.now, facts={"id": person.id})
    return Erased(person, office.book.wipe_traces())


def contact_fields() -> dict[str, str]:
    """What a contact is made of, and how a refusal calls it."""
    return {"phone": tr("telephone"), "mail": tr("mail"), "address": tr("postal address")}


def _given(typed: dict[str, str | None]) -> dict[str, str]:
    return {field: text.strip() for field, text in typed.items() if text is not None}


def remove_contact(office: Office, who: str) -> Erased:
    """Take out how to reach a person, so that nothing of it is left to read in the register's file."""
    with office.book.page() as page:
        person = person_of(page, who, tr("person"))
        if page.contact(person.id) is None:
            why = tr("Nothing is written down for {name}.", name=person.name)
            raise Refused(tr("contact"), why, tr("Nothing is to do."))
        page.set_contact(person.id, None)
        page.enter("remove contact", by=office.officer.id, at=office.now, facts={"id": person.id})
    forget(office, f"{WRITING} {person.id}")
    return Erased(person, office.book.wipe_traces())


def erased_words(gone: Erased) -> tuple[str, ...]:
    """What is to be told once details were taken out: where they may still lie."""
    left = tr("Back-ups made before, and letters printed before, still hold it: delete those that are not needed.")
    if gone.is_wiped:
        return (left,)
    said = tr("Its old state may still lie in the register's file, since another window has it open.")
    what = tr("Closing the last one wipes it; a database server forgets by rules of its own.")
    return (f"{said} {what}", left)
