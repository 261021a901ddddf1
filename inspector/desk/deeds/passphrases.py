"""Passphrases: what the club wants, and each person's own."""

from inspector.desk.form.asked import OneOf, Secret
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties import keep_passphrases
from inspector.duties.office import Office
from inspector.duties.person_in_full import PersonInFull
from inspector.gear.person import Passphrases
from inspector.language import tr
from inspector.refused import Refused


def wish_words() -> dict[Passphrases, str]:
    """What the club may want, in words."""
    return {
        Passphrases.OFF: tr("none; every name is as stated"),
        Passphrases.WANTED: tr("wanted; documents tell which names were proved"),
        Passphrases.REQUIRED: tr("required; a name that is only stated passes no gear"),
    }


def wish(stands: Passphrases) -> Deed[Passphrases]:
    """What the club wants of whoever sits at the desk."""

    def do(office: Office, about: Passphrases, given: Values) -> Done:
        wanted = given.one("wish", Passphrases)
        keep_passphrases.set_wish(office, wanted)
        return Done(tr("Passphrases are now: {wish}", wish=wish_words()[wanted]))

    return Deed(
        "passphrase rule", tr("What the club wants"), tr("Passphrases at the desk"),
        tr("A passphrase proves who is at the desk. Let the club want them first, then everybody who judges gear sets "
           "one; only then can they be required."),
        lambda facts, about: (
            OneOf(key="wish", label=tr("The club wants"), stands=about,
                  names=(tr("passphrases"), tr("passphrase"), tr("officer")),
                  choices=[(words, one) for one, words in wish_words().items()]),
        ),
        do, tr("Let it hold"),
    )  # fmt: skip


def set_new(about: PersonInFull) -> Deed[PersonInFull]:
    """A person's passphrase, new or anew."""

    def do(office: Office, about: PersonInFull, given: Values) -> Done:
        new = given.one("new", str)
        if new != given.one("again", str):
            raise Refused(tr("once more"), tr("The two are not the same."), tr("Type the passphrase in both lines."))
        kept = keep_passphrases.set_passphrase(office, about.person.id, new)
        lost = tr("Nobody can read it again. Where it is lost, another competent person who has one sets it anew.")
        return Done(tr("{name} has a passphrase.", name=kept.name), lost)

    return Deed(
        "set passphrase", tr("Set a passphrase"), tr("A passphrase for {name}", name=about.person.name),
        tr("{name} types it, out of sight of others. A few words that nobody else would put together.",
           name=about.person.name),
        lambda facts, about: (
            Secret(key="new", label=tr("New passphrase"), needed=True,
                   names=(tr("passphrase"), tr("officer"))),
            Secret(key="again", label=tr("Once more"), needed=True),
        ),
        do, tr("Set it"),
    )  # fmt: skip


def remove(about: PersonInFull) -> Deed[PersonInFull]:
    """A person's passphrase goes."""

    def do(office: Office, about: PersonInFull, given: Values) -> Done:
        gone = keep_passphrases.remove_passphrase(office, about.person.id)
        return Done(tr("{name} has no passphrase any more.", name=gone.name))

    return Deed(
        "remove passphrase", tr("Remove the passphrase"), tr("Remove the passphrase of {name}", name=about.person.name),
        tr("From then on the name stands as stated, and where the club requires passphrases it passes no gear."),
        lambda facts, about: (), do, tr("Remove it"),
    )  # fmt: skip
