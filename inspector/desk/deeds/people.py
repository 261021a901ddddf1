"""Who is in the register, under which name and role, and who sits at the desk."""

from collections.abc import Callable

from msgspec.structs import replace

from inspector.desk.deeds.common import person, why
from inspector.desk.deeds.competence import Scopes
from inspector.desk.form.asked import Asked, Day, Line, Part, Secret, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.add_people import add_person
from inspector.duties.change_person import change_person
from inspector.duties.form_facts import FormFacts
from inspector.duties.office import Office
from inspector.duties.person_in_full import ALL, PersonInFull, brief_held
from inspector.duties.sit_down import name_words
from inspector.duties.sit_down import sit_down as seated_by
from inspector.gear.person import Competence, Passphrases, Person
from inspector.language import tr

_SCOPE = "scope {scope}"


def add(scopes: Scopes) -> Deed[None]:
    """Somebody new."""

    def do(office: Office, about: None, given: Values) -> Done:
        since = given.day("since") or office.today
        ticked = [scope for _, scope in scopes if given.tick(_SCOPE.format(scope=scope))]
        wanted = [ALL] if ALL in ticked else ticked
        new = Person("", given.text("name"), given.text("role"), tuple(Competence(one, since) for one in wanted))
        kept = add_person(office, new, given.text("paper"))
        held = brief_held(kept, office.today)
        told = tr("May judge: {held}.", held=held) if held else tr("{name} may judge nothing.", name=kept.name)
        return Done(tr("{name} is in the register.", name=kept.name), told)

    return Deed(
        "add person", tr("Add a person"), tr("Add a person"),
        tr("Whoever has gear out, owns a piece or inspects one stands in the register by name. How to reach somebody "
           "is written down afterwards, on the person's own page."),
        lambda facts, about: (
            Line(key="name", label=tr("Name"), needed=True),
            _role(facts, tr("member")),
            Part(tr("What this person may judge"), _judges(facts, scopes)),
        ),
        do, tr("Add the person"),
    )  # fmt: skip


def change(about: PersonInFull) -> Deed[PersonInFull]:
    """Another name or role."""

    def do(office: Office, about: PersonInFull, given: Values) -> Done:
        changed = change_person(
            office,
            about.person.id,
            name=given.text("name"),
            role=given.text("role"),
            why=given.text("why"),
            seen=about.person,
        )
        return Done(tr("{name} is in the register: {role}", name=changed.name, role=changed.role))

    return Deed(
        "change person", tr("Another name or role"), tr("Another name or role for {name}", name=about.person.name),
        tr("It holds from today on. What was written under the old name stays this person's."),
        lambda facts, about: (
            Line(key="name", label=tr("Name"), stands=about.person.name, names=(tr("person"),)),
            _role(facts, about.person.role),
            why(needed=True),
        ),
        do, tr("Write it down"), goes_on=lambda about, seen: replace(about, row=replace(about.row, person=seen)),
    )  # fmt: skip


def sit_down(wish: Passphrases, keep: Callable[[Office], object], chosen: str = "") -> Deed[None]:
    """Another person sits down at the desk. keep: gets the office with that person in it; called in the worker.

    chosen: the id of the person offered first.
    """

    def do(office: Office, about: None, given: Values) -> Done:
        passphrase = given.one("passphrase", str) if wish is not Passphrases.OFF else ""
        seated = seated_by(office, given.one("who", str), passphrase)
        keep(seated)
        return Done(tr("{name} is at the desk.", name=seated.officer.name), name_words(seated))

    return Deed(
        "sit down", tr("Sit down at the desk"), tr("Who is at the desk?"),
        tr("Everything that is done from now on is entered under this name."),
        lambda facts, about: (_sitter(facts, chosen), *_proof(wish)), do, tr("Sit down"),
    )  # fmt: skip


def _sitter(facts: FormFacts, chosen: str) -> Asked:
    asked = person(facts, "who", tr("Person"), needed=True, names=(tr("officer"),), nobody=tr("choose a name"))
    return replace(asked, stands=chosen or None)


def _proof(wish: Passphrases) -> tuple[Asked, ...]:
    if wish is Passphrases.OFF:
        return ()
    hint = tr("Whoever has one proves the name by it. Left empty, the name stands on documents as stated.")
    if wish is Passphrases.REQUIRED:
        hint += " " + tr("The club requires it: a name that is only stated passes no gear.")
    return (Secret(key="passphrase", label=tr("Passphrase"), hint=hint),)


def _role(facts: FormFacts, stands: str) -> Asked:
    offers = tuple(sorted({one.role for one in facts.people if one.role}))
    return Line(key="role", label=tr("Role"), stands=stands, offers=offers, hint=tr("For example member or trainer."))


def _judges(facts: FormFacts, scopes: Scopes) -> tuple[Asked, ...]:
    ticks = [Tick(key=_SCOPE.format(scope=scope), label=words) for words, scope in scopes]
    return (
        *ticks,
        Day(key="since", label=tr("Counts from"), stands=facts.today, names=(tr("since"),)),
        Line(key="paper", label=tr("Shown by"), names=(tr("paper"),),
             hint=tr("Needed where it counts from before today: the certificate or course that shows it.")),
    )  # fmt: skip
