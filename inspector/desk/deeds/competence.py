"""What a person may judge: given, renewed, ended."""

from msgspec.structs import replace

from inspector.desk.deeds.common import second, why, with_second
from inspector.desk.form.asked import Asked, Day, Line, OneOf
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.change_person import Widening, end_competence, give_competence, renew_competence
from inspector.duties.form_facts import FormFacts
from inspector.duties.office import Office
from inspector.duties.person_in_full import PersonInFull, brief_held
from inspector.gear.person import Competence, Person
from inspector.language import tr
from inspector.refused import Refused

Scopes = tuple[tuple[str, str], ...]  # words, and the scope they stand for


def give(about: PersonInFull, scopes: Scopes) -> Deed[PersonInFull]:
    """Let a person judge more. scopes: words, and what they stand for."""

    def do(office: Office, about: PersonInFull, given: Values) -> Done:
        since = given.day("since") or office.today
        held = Competence(given.one("scope", str), since, given.day("until"))
        ground = Widening(given.text("why"), given.one("second", str), given.text("paper"))
        return _told(office, give_competence(with_second(office, given), about.person.id, held, ground))

    return Deed(
        "give competence", tr("Let judge more"), tr("What {name} may judge", name=about.person.name),
        tr("A competent person may pass gear of these kinds. Inspections entered before stay what they were."),
        lambda facts, about: (
            OneOf(key="scope", label=tr("May judge"), choices=_to_choose(scopes), needed=True,
                  names=(tr("competence"), tr("competent for"))),
            Day(key="since", label=tr("From"), stands=facts.today, names=(tr("since"),)),
            _until(tr("Its last day; empty where it has no end.")),
            why(needed=True, hint=tr("For example the course that was passed.")),
            *_second(facts, about),
            Line(key="paper", label=tr("Shown by"), names=(tr("paper"),),
                 hint=tr("Needed where it counts from before today: the certificate or course that shows it.")),
        ),
        do, tr("Write it down"),
    )  # fmt: skip


def renew(about: PersonInFull) -> Deed[PersonInFull]:
    """Let what ends run longer."""

    def do(office: Office, about: PersonInFull, given: Values) -> Done:
        until = given.day("until")
        if until is None:
            raise Refused(tr("until"), tr("It is needed."), tr("Write the day to which it is renewed."))
        ground = Widening(given.text("why"), given.one("second", str))
        scope, proved = given.one("scope", str), with_second(office, given)
        return _told(office, renew_competence(proved, about.person.id, scope, until, ground))

    return Deed(
        "renew competence", tr("Renew"), tr("Renew what {name} may judge", name=about.person.name),
        tr("It runs to a later day. Days on which it had lapsed stay uncovered."),
        lambda facts, about: (
            _scope(about, ends_alone=True),
            _until(tr("Its new last day."), needed=True),
            why(needed=True, hint=tr("For example a refresher course.")),
            *_second(facts, about),
        ),
        do, tr("Renew it"), fits=_none_ends,
    )  # fmt: skip


def end(about: PersonInFull) -> Deed[PersonInFull]:
    """End what a person may judge."""

    def do(office: Office, about: PersonInFull, given: Values) -> Done:
        scope, reason = given.one("scope", str), given.text("why")
        return _told(office, end_competence(office, about.person.id, scope, reason, given.day("on")))

    return Deed(
        "end competence", tr("End it"), tr("End what {name} may judge", name=about.person.name),
        tr("What was inspected before stays as it was entered."),
        lambda facts, about: (
            _scope(about, ends_alone=False),
            Day(key="on", label=tr("Last day"), stands=facts.today, names=(tr("day"), tr("until")),
                hint=tr("The last day on which it counts.")),
            why(needed=True),
        ),
        do, tr("End it"), fits=_none_held,
    )  # fmt: skip


def _none_ends(about: PersonInFull) -> str:
    ends = any(one.competence.until for one in about.held)
    return "" if ends else tr("Nothing that {name} may judge has an end.", name=about.person.name)


def _none_held(about: PersonInFull) -> str:
    return "" if about.row.held else tr("{name} may judge nothing.", name=about.person.name)


def _scope(about: PersonInFull, *, ends_alone: bool) -> Asked:
    held = [one for one in about.held if one.competence.until or not ends_alone]
    choices = tuple((words, scope) for scope, words in {one.competence.scope: one.scope for one in held}.items())
    return OneOf(key="scope", label=tr("Competent for"), names=(tr("competence"),), needed=True,
                 choices=choices if len(choices) == 1 else _to_choose(choices))  # fmt: skip


def _to_choose(scopes: Scopes) -> list[tuple[str, object]]:
    """Nothing is chosen beforehand: what somebody may judge is never given or ended by a key pressed too soon."""
    return [(tr("choose what"), ""), *scopes]


def _until(hint: str, *, needed: bool = False) -> Asked:
    return Day(key="until", label=tr("Until"), hint=hint, needed=needed)


def _second(facts: FormFacts, about: PersonInFull) -> tuple[Asked, ...]:
    others = replace(facts, people=tuple(one for one in facts.people if one.id != about.person.id))
    hint = tr("Another person of the register who stands behind it.")
    if about.at_desk:
        hint = tr("Another person of the register who stands behind it: nobody widens his own competence alone.")
    return second(others, hint=hint)


def _told(office: Office, changed: Person) -> Done:
    held = brief_held(changed, office.today) or tr("nothing")
    return Done(tr("{name} may judge: {held}.", name=changed.name, held=held))
