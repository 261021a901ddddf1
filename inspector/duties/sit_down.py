"""Seat somebody at the desk: every deed is entered under that name."""

from msgspec.structs import replace

from inspector.duties.keep_passphrases import vouch
from inspector.duties.look_up import club_officer, people
from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused


def seat(office: Office, name: str = "") -> Office:
    """The office with a person at the desk, the name as stated: the named one, else the club's equipment officer."""
    everybody = people(office)
    wanted = name or club_officer(office)
    for person in everybody:
        if wanted in {person.name, person.id}:
            return replace(office, officer=person, vouched=False, vouched_second="")
    if name:
        listed = ", ".join(person.name for person in everybody) or tr("nobody yet")
        raise Refused(tr("officer"), tr("Nobody is called “{name}”.", name=name), tr("Use one of: {who}.", who=listed))
    raise Refused(tr("register"), tr("It is empty."), tr("Begin it with the command `inspector begin`."))


def sit_down(office: Office, who: str, passphrase: str = "") -> Office:
    """The office with this person at the desk. who: name or id.

    passphrase: the person's own, where the club wants it; without it the name is as stated.
    """
    return vouch(seat(office, who), passphrase)


def name_words(office: Office) -> str:
    """Whether the name of the person at the desk is proved."""
    if office.vouched:
        return tr("The name is proved by a passphrase.")
    return tr("The name is as stated: no passphrase proves it.")
