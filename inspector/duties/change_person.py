"""Change what is written down of a person: name, role, and what he may judge between which days.

History keeps ids, so a changed name leaves every entry readable. Whether an inspection counted was settled when it was
entered; no change of competence reaches it.
"""

from collections.abc import Callable
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.add_people import check_name, check_paper, check_scopes
from inspector.duties.office import Office
from inspector.duties.overtaken import typed_anew
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.who import check_name_counts, check_second, person_of, proved
from inspector.gear.person import Competence, NewPersonChange, Person, scope_word
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page


def change_person(
    office: Office, who: str, *, name: str = "", role: str = "", why: str, seen: Person | None = None
) -> Person:
    """Write down another name or role from today on; what is left empty stays as it is.

    seen: the person as whoever changes it has seen it; refused where the same was changed since.
    """
    with office.book.page() as page:
        person = person_of(page, who, tr("person"))
        if seen:
            wanted = replace(seen, name=name.strip() or seen.name, role=role.strip() or seen.role)
            merged = typed_anew(seen, wanted, {"name": tr("name"), "role": tr("role")})(person)
            name, role = merged.name, merged.role
        new_name, new_role = name.strip() or person.name, role.strip() or person.role
        if (new_name, new_role) == (person.name, person.role):
            raise Refused(tr("person"), tr("Nothing would change."), tr("Write a new name or role."))
        check_line(tr("role"), new_role)
        changed = replace(person, role=new_role)
        if new_name != person.name:
            check_name(page, new_name, person)
            former = tuple(one for one in (*person.former_names, person.name) if one != new_name)
            changed = replace(changed, name=new_name, former_names=former)
        parts = [part for part in ("name", "role") if getattr(changed, part) != getattr(person, part)]
        _keep(office, page, "change person", _change(office, changed, why), {"changed": parts})
    return changed


class Widening(Struct, frozen=True):
    """Who and what stands behind a competence that is given or renewed.

    why: in a sentence. second: another person of the register, needed for whoever widens his own. paper: what shows
    that it was held before today, needed where it shall count from an earlier day.
    """

    why: str
    second: str = ""
    paper: str = ""


def give_competence(office: Office, who: str, given: Competence, ground: Widening) -> Person:
    """Let a person judge a family of kinds, or "all", between two days. Inspections kept before stay what they were."""
    check_scopes(office, (given,))
    _check_given(office, given, ground)
    return _widen(office, who, "give competence", ground, lambda person: (_with(person, given), given))


def renew_competence(office: Office, who: str, scope: str, until: date, ground: Widening) -> Person:
    """Let a competence that ends, or has ended, run until a later day. Days on which it had lapsed stay uncovered."""
    if until < office.today:
        raise Refused(tr("until"), tr("The day has passed."), tr("Write the day to which it is renewed."))
    return _widen(office, who, "renew competence", ground, lambda person: _renewed(office, person, scope, until))


def end_competence(office: Office, who: str, scope: str, why: str, on: date | None = None) -> Person:
    """End what a person may judge on a day, which is the last that counts. It is never made longer by it."""
    last = on or office.today
    with office.book.page() as page:
        person = person_of(page, who, tr("person"))
        running = [one for one in person.competences if one.scope == scope and _runs_past(one, last)]
        if not running:
            named = {"name": person.name, "scope": scope, "day": show_day(last)}
            why_not = tr("{name} holds nothing for “{scope}” that would end on {day}.", **named)
            raise Refused(tr("competence"), why_not, _held_words(person))
        held = tuple(replace(one, until=last) if one in running else one for one in person.competences)
        changed = replace(person, competences=held)
        _keep(office, page, "end competence", _change(office, changed, why), {"scope": scope, "until": last})
    return changed


def _runs_past(held: Competence, last: date) -> bool:
    return held.since <= last and (held.until is None or held.until > last)


def _widen(
    office: Office, who: str, deed: str, ground: Widening, change: Callable[[Person], tuple[Person, Competence]]
) -> Person:
    with office.book.page() as page:
        person = person_of(page, who, tr("person"))
        check_name_counts(office, page, office.officer, tr("officer"))
        second = person_of(page, ground.second, tr("second name")) if ground.second else None
        _check_second(office, page, person, second)
        changed, given = change(person)
        facts = _change(office, changed, ground.why)
        facts = replace(facts, second=second.id if second else "", paper=ground.paper.strip())
        held = {"scope": given.scope, "since": given.since, "until": given.until, "second": facts.second}
        held |= proved(office, office.officer.id, facts.second)
        _keep(office, page, deed, facts, held)
    return changed


def _check_second(office: Office, page: Page, person: Person, second: Person | None) -> None:
    """Nobody widens what he may judge alone, and nobody is second name for himself."""
    if second is None and person.id == office.officer.id:
        why = tr("{name} is at the desk, and nobody widens his own competence alone.", name=person.name)
        raise Refused(tr("second name"), why, tr("Name another person of the register who stands behind it."))
    if second is None:
        return
    for one in (person, office.officer):
        check_second(office, page, one, second, tr("Name another person of the register."))


def _check_given(office: Office, given: Competence, ground: Widening) -> None:
    if given.since > office.today:
        raise Refused(tr("since"), tr("The day lies in the future."), tr("Enter it on the day on which it begins."))
    if given.until and given.until < office.today:
        raise Refused(
            tr("until"), tr("The day has passed."), tr("Write the last day on which it counts, or leave it empty.")
        )
    check_paper(office, (given,), ground.paper)


def _with(person: Person, given: Competence) -> Person:
    """The person with one more competence; it must not cover a day that another one of its scope speaks of."""
    for one in person.competences:
        if one.scope == given.scope and (one.until is None or one.until >= given.since):
            why = tr(
                "{name} has one for “{scope}” that speaks of these days already.", name=person.name, scope=one.scope
            )
            raise Refused(tr("competence"), why, tr("Renew it, or let the new one begin after its last day."))
    return replace(person, competences=(*person.competences, given))


def _renewed(office: Office, person: Person, scope: str, until: date) -> tuple[Person, Competence]:
    """A running one gets its new last day; after a gap a new one begins today."""
    held = [one for one in person.competences if one.scope == scope]
    if not held:
        why = tr("{name} was never competent for “{scope}”.", name=person.name, scope=scope)
        raise Refused(tr("competence"), why, tr("Give it first. {held}", held=_held_words(person)))
    if any(one.until is None or one.until >= until for one in held):
        why = tr("What {name} holds for “{scope}” runs that long already.", name=person.name, scope=scope)
        raise Refused(tr("until"), why, _held_words(person))
    running = next((one for one in held if one.until and one.until >= office.today), None)
    given = replace(running, until=until) if running else Competence(scope, office.today, until)
    others = tuple(one for one in person.competences if one is not running)
    return replace(person, competences=(*others, given)), given


def _held_words(person: Person) -> str:
    held = ", ".join(competence_words(one) for one in person.competences) or tr("nothing")
    return tr("In the register: {held}.", held=held)


def competence_words(held: Competence) -> str:
    """A scope with its days."""
    scope = tr("all") if held.scope == "all" else scope_word(held.scope)
    if held.until:
        days = {"since": show_day(held.since), "until": show_day(held.until)}
        return tr("{scope} since {since} until {until}", scope=scope, **days)
    return tr("{scope} since {day}", scope=scope, day=show_day(held.since))


def _change(office: Office, changed: Person, why: str) -> NewPersonChange:
    if not why.strip():
        raise Refused(tr("reason"), tr("It is empty."), tr("Write in a sentence why it changes."))
    check_text(tr("reason"), why)
    return NewPersonChange(office.today, changed, office.officer.id, why.strip())


def _keep(office: Office, page: Page, deed: str, facts: NewPersonChange, named: dict[str, object]) -> None:
    page.add_person_change(facts)
    page.enter(deed, by=office.officer.id, at=office.now, facts={"id": facts.person.id, **named})
