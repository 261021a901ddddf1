"""How to reach a person: written down, and taken out for good."""

from msgspec import Struct

from inspector.desk.form.asked import Line
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.keep_contact import WRITING, erased_words, remove_contact, write_contact
from inspector.duties.office import Office
from inspector.duties.person_in_full import PersonInFull
from inspector.gear.person import Contact, Person
from inspector.language import tr


class Reached(Struct, frozen=True):
    """A person, and how to reach him as it is written down now."""

    person: Person
    contact: Contact


def write(about: Reached) -> Deed[Reached]:
    """Write down how to reach a person."""

    def do(office: Office, about: Reached, given: Values) -> Done:
        before = about.contact
        kept = write_contact(
            office, about.person.id, phone=_other(given.text("phone"), before.phone),
            mail=_other(given.text("mail"), before.mail), address=_other(given.text("address"), before.address),
            seen=before,
        )  # fmt: skip
        return Done(tr("How to reach {name} is written down.", name=kept.person.name))

    return Deed(
        WRITING, tr("Write it down"), tr("How to reach {name}", name=about.person.name),
        tr("These details stand outside the history, are shown only when somebody asks for them, and are taken out for "
           "good on request. An emptied line is taken out."),
        lambda facts, about: (
            Line(key="phone", label=tr("Telephone"), stands=about.contact.phone, names=(tr("contact"),)),
            Line(key="mail", label=tr("Mail"), stands=about.contact.mail),
            Line(key="address", label=tr("Postal address"), stands=about.contact.address, hint=tr("In one line.")),
        ),
        do, tr("Write it down"), goes_on=lambda about, seen: Reached(about.person, seen),
    )  # fmt: skip


def remove(about: PersonInFull) -> Deed[PersonInFull]:
    """Take out how to reach a person."""

    def do(office: Office, about: PersonInFull, given: Values) -> Done:
        gone = remove_contact(office, about.person.id)
        head = tr("How to reach {name} is taken out of the register.", name=gone.person.name)
        return Done(head, "\n".join(erased_words(gone)))

    return Deed(
        "remove contact", tr("Remove for good"), tr("Remove how to reach {name}", name=about.person.name),
        tr("Telephone, mail and postal address are wiped from the register and cannot be brought back. The ledger "
           "keeps only that it was done."),
        lambda facts, about: (), do, tr("Remove for good"),
    )  # fmt: skip


def _other(typed: str, stood: str) -> str | None:
    """What was typed; None where it is what stood there, so that nothing else is written over."""
    return None if typed == stood else typed
