"""Write people into the register."""

from collections.abc import Iterable

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.who import check_name_counts, plain_name
from inspector.gear.person import Competence, Person
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import new_id


def add_person(office: Office, person: Person, paper: str = "") -> Person:
    """Keep a person; the name must be new, each scope a family of kinds or "all". Returns it with an id of its own.

    paper: what shows a competence that began before today.
    """
    check_scopes(office, person.competences)
    check_paper(office, person.competences, paper)
    kept = Person(new_id(), person.name.strip(), person.role, person.competences)
    with office.book.page() as page:
        check_name(page, kept.name)
        if kept.competences:
            check_name_counts(office, page, office.officer, tr("officer"))
        page.add_person(kept)
        held = [{"scope": one.scope, "since": one.since, "until": one.until} for one in kept.competences]
        facts = {"id": kept.id, "competences": held, "paper": paper.strip()}
        page.enter("add person", by=office.officer.id, at=office.now, facts=facts)
    return kept


def check_name(page: Page, name: str, own: Person | None = None) -> None:
    """Refuse an empty name, and one that another person has or had: what was written under it would be read as his."""
    if not name:
        raise Refused(tr("name"), tr("The name is empty."), tr("Write the person's name."))
    check_line(tr("name"), name)
    for one in page.people():
        names = {plain_name(known) for known in (one.name, *one.former_names)}
        if plain_name(name) in names and (own is None or one.id != own.id):
            why = tr("“{name}” is in the register already.", name=name)
            raise Refused(tr("name"), why, tr("Add a mark that tells the two apart."))


def families(office: Office) -> tuple[str, ...]:
    """Every family of kinds."""
    return tuple(sorted({kind.family for kind in office.rules.kinds.values()}))


def check_scopes(office: Office, competences: Iterable[Competence]) -> None:
    """Refuse a scope that is neither a family of kinds nor "all"."""
    known = families(office)
    for held in competences:
        if held.scope not in {*known, "all"}:
            why = tr("“{scope}” is no family of kinds.", scope=held.scope)
            raise Refused(tr("competent for"), why, tr("Use all, or one of: {families}.", families=", ".join(known)))


def check_paper(office: Office, competences: Iterable[Competence], paper: str) -> None:
    """Refuse a competence from before today that nothing is named for: it would pass inspections entered late."""
    if not paper.strip() and any(one.since < office.today for one in competences):
        why = tr("It would count from before today, and nothing is named that shows it.")
        raise Refused(tr("since"), why, tr("Name the paper that shows it, or let it count from today."))
