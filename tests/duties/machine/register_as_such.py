"""The register as such, under the rules that every deed keeps. What has a duty of its own does not belong here.

Each function writes what the page offers, judges the piece, and enters one line, as the duties do.
"""

from collections.abc import Callable

from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.who import check_not_closed, check_not_evidence
from inspector.gear.evidence import NewQuarantine, NewRelease
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.person import NewPersonChange, Person
from inspector.gear.repair import NewRepair, Work
from inspector.gear.stock_take import Counted, NewStockEntry, NewStockTake, StockStep
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.refused import Refused
from inspector.register.page import Page


def _write(office: Office, deed: str, tag: str, write: Callable[[Page, Item], object], *, takes: bool = True) -> Judged:
    """takes: whether it changes or takes away the piece, which evidence never bears."""
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        if takes:
            check_not_evidence(page, item)
        write(page, item)
        outcome = judge_and_keep(office, page, item)
        page.enter(deed, by=office.officer.id, at=office.now, facts={"tag": item.tag})
    return outcome


def move(office: Office, tag: str, where: Where) -> Judged:
    """Write where a piece is."""
    facts = NewWhereabouts(office.today, where, "Shed", "Cy Buyer", office.officer.id, "told so")
    return _write(office, "move", tag, lambda page, item: page.add_whereabouts(item, facts))


def find(office: Office, tag: str) -> Judged:
    """A piece that was gone is here again."""

    def write(page: Page, item: Item) -> None:
        if page.whereabouts_of(item).where not in {Where.MISSING, Where.STOLEN, Where.GIVEN_BACK}:
            raise Refused("tag", "It is not gone.", "Look at the label again.")
        page.add_whereabouts(item, NewWhereabouts(office.today, Where.IN_STORE, "Shed", found=True))

    return _write(office, "find", tag, write, takes=False)


def quarantine(office: Office, tag: str, incident: str) -> Judged:
    """A piece is kept as found."""
    facts = NewQuarantine(office.today, incident, office.officer.id)
    return _write(office, "quarantine", tag, lambda page, item: page.add_quarantine(item, facts), takes=False)


def release(office: Office, tag: str, incident: str, second: str) -> Judged:
    """Two let a piece go."""

    def write(page: Page, item: Item) -> None:
        if incident not in page.open_quarantines(item):
            raise Refused("tag", "It is not kept for this incident.", "Look at the report.")
        page.add_release(item, NewRelease(office.today, incident, office.officer.id, second, "seen by both"))

    return _write(office, "release", tag, write, takes=False)


def repair(office: Office, tag: str, work: Work) -> Judged:
    """Work is done on a piece that is not retired."""

    def write(page: Page, item: Item) -> None:
        if page.latest_verdict(item.id)[0].outcome is Outcome.RETIRE:
            raise Refused("tag", "It is retired.", "Take another piece.")
        page.add_repair(item, NewRepair(office.today, work, "Cy Smith", office.officer.id))

    return _write(office, "repair", tag, write)


def begin_count(office: Office, ref: str, expected: tuple[str, ...]) -> str:
    """A count is begun."""
    with office.book.page() as page:
        if any(one.ref == ref for one in page.stock_takes()):
            raise Refused("reference", "It is taken.", "Choose another.")
        page.add_stock_take(ref, NewStockTake(office.today, "", expected, (), office.officer.id))
        page.enter("count", by=office.officer.id, at=office.now, facts={"ref": ref})
    return ref


def mark(office: Office, ref: str, tag: str, counted: Counted) -> str:
    """A piece is marked in a count."""
    with office.book.page() as page:
        begun = next((one for one in page.stock_takes() if one.ref == ref), None)
        if begun is None:
            raise Refused("reference", "No such count.", "Begin one.")
        tag = page.item(tag).tag
        page.add_stock_entry(begun, NewStockEntry(office.today, StockStep.MARKED, office.officer.id, tag, counted))
        page.enter("mark", by=office.officer.id, at=office.now, facts={"ref": ref, "tag": tag})
    return ref


def change_person(office: Office, person: Person) -> Person:
    """What a person may judge is written anew."""
    with office.book.page() as page:
        page.add_person_change(NewPersonChange(office.today, person, office.officer.id))
        page.enter("change person", by=office.officer.id, at=office.now, facts={"id": person.id})
    return person
