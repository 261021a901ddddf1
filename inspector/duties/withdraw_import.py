"""Withdraw an import that was wrong: its pieces are booked out again, and their tags and serials are free."""

from collections.abc import Sequence

from inspector.duties.import_list import import_called
from inspector.duties.office import Office, told_of
from inspector.duties.plain_lines import check_text
from inspector.gear.import_list import Brought, Imported, Withdrawal
from inspector.gear.item import Item
from inspector.gear.recall_notice import that_count
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.language import tr, tr_n
from inspector.refused import Refused
from inspector.register.page import Page

_MOST_NAMED = 12
_IMPORTED = "import list"  # the deed in the ledger


def what_withdrawing_does(office: Office, number: str) -> Withdrawal:
    """Which pieces of an import may be withdrawn, and of which more was written down since. Nothing is kept."""
    with office.book.reading() as page:
        made = import_called(page, number)
        return _withdrawal(page, made)[0]


def withdraw_import(office: Office, number: str, why: str, *, leave_later: bool = False) -> Withdrawal:
    """Withdraw the pieces of an import. leave_later: those of which more was written down since stay as they are.

    Refused without a reason, where nothing is left to withdraw, and where more was written down of any and it was not
    said that those stay.
    """
    check_text(tr("why"), why)
    if not why.strip():
        raise Refused(tr("why"), tr("It is empty."), tr("Write what was wrong with the import."))
    with office.book.page() as page:
        made = import_called(page, number)
        found, items = _withdrawal(page, made)
        _check(found, leave_later=leave_later)
        for one in told_of(office, items):
            page.add_whereabouts(one, _entry(office, made, why))
        page.drop_standing([one.id for one in items])
        facts = {"import": made.number, "tags": list(found.free), "why": why.strip()}
        stay = [tag for tag, _ in found.later]
        page.enter("withdraw import", by=office.officer.id, at=office.now, facts={**facts, "stay": stay})
    return found


def _entry(office: Office, made: Imported, why: str) -> NewWhereabouts:
    return NewWhereabouts(office.today, Where.WITHDRAWN, by=office.officer.id, why=why.strip(), paper=made.number)


def _check(found: Withdrawal, *, leave_later: bool) -> None:
    if found.later and not leave_later:
        named = "; ".join(f"{tag} ({what})" for tag, what in found.later[:_MOST_NAMED])
        more = len(found.later) - _MOST_NAMED
        if more > 0:
            named = tr_n("{named}; and {count} more", "{named}; and {count} more", more, named=named)
        why = tr("More was written down of these since: {named}.", named=named)
        raise Refused(tr("import"), why, tr("Say that those stay, and the others are withdrawn alone."))
    if not found.free:
        why = tr("Nothing of it is left to withdraw.")
        raise Refused(tr("import"), why, tr("What was written down of a piece since stays with it."))


def _withdrawal(page: Page, made: Imported) -> tuple[Withdrawal, tuple[Item, ...]]:
    keys = [one.id for one in made.pieces]
    gone, items = page.withdrawn(keys), {one.id: one for one in page.items_with(keys)}
    here = [one for one in made.pieces if one.id not in gone]
    later = _later(page, made, here, items)
    free = tuple(one for one in here if one.id not in later)
    tags = tuple(items[one.id].tag for one in free)
    told = tuple((items[one.id].tag, later[one.id]) for one in here if one.id in later)
    return Withdrawal(made.number, tags, told, len(gone)), tuple(items[one.id] for one in free)


def _later(page: Page, made: Imported, here: Sequence[Brought], items: dict[str, Item]) -> dict[str, str]:
    """What was written down of each piece since it came: entries of its own, and where its tag stands in others'.

    What the import itself wrote, files and holds by a recall that meant its pieces, is nothing later; nor is a call
    that was taken back.
    """
    lines = (line for line in page.lines_of([_IMPORTED]) if line.facts.get("import") == made.number)
    own = {key for line in lines for _, key in line.rows} | _taken_back(page)
    found = {key: _word(table) for key, table in page.later_rows([one.id for one in here], own).items()}
    named = page.tags_named([items[one.id].tag for one in here])
    by_tag = {one.id: _word(named[items[one.id].tag]) for one in here if items[one.id].tag in named}
    return by_tag | found


def _taken_back(page: Page) -> set[str]:
    """The ids of the calls that the withdrawal of their recall took back, and of those withdrawals."""
    lives = [steps for one in page.withdrawn_recalls() for steps in page.steps_under(one.ref).values()]
    counted = {one.id for steps in lives for one in that_count(steps)}
    return {one.id for steps in lives for one in steps} - counted


def _word(table: str) -> str:
    words = {
        "inspection": tr("an inspection"),
        "piece_use": tr("a use"),
        "exposure": tr("an exposure"),
        "custody": tr("a loan"),
        "fitting": tr("a fitting"),
        "item_change": tr("a changed booking"),
        "whereabouts": tr("where it is"),
        "attachment": tr("a file"),
        "document": tr("a paper"),
        "repair": tr("a repair"),
        "trip": tr("a trip"),
        "trip_change": tr("a trip"),
        "rig": tr("a rig"),
        "stock_entry": tr("a count"),
    }
    return words.get(table, tr("another entry"))
