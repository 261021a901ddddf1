"""A club with a few people: an officer, a second competent person, one whose competence ends, a member."""

from datetime import date, timedelta

from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.change_item import change_owner
from inspector.duties.change_person import Widening, give_competence
from inspector.duties.keep_passphrases import set_passphrase, set_wish, vouch
from inspector.duties.lend import lend
from inspector.duties.office import Office
from inspector.gear.person import Competence, Passphrases, Person

SECOND, ENDING, MEMBER = "Ben Second", "Cora Ending", "Di Member"
OWN_WORDS = "a lantern under seven tides"


def peopled(office: Office) -> Office:
    """The office with three more people; the member has SH-001 on loan and owns SH-002."""
    add_person(office, Person("", SECOND, "trainer", (Competence("all", office.today),)))
    add_person(office, Person("", ENDING, "deputy"))
    until = office.today + timedelta(days=20)
    give_competence(office, ENDING, Competence("shackle", office.today, until), Widening("course passed"))
    add_person(office, Person("", MEMBER, "member"))
    lend(office, ("SH-001",), MEMBER, date(2026, 12, 1))
    change_owner(office, "SH-002", MEMBER, "it is hers", "", SECOND)
    return office


def with_passphrase(office: Office) -> Office:
    """The office whose club wants passphrases; whoever is at the desk has one and gave it."""
    set_wish(office, Passphrases.WANTED)
    set_passphrase(office, office.officer.id, OWN_WORDS)
    return replace(vouch(office, OWN_WORDS))
