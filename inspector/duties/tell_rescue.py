"""The list of what a rescue could not save, as a text that anybody can open."""

from collections.abc import Iterator, Sequence

from inspector.duties.office import Office
from inspector.duties.tell_ledger import told_ledger
from inspector.language import show_day, tr, tr_n
from inspector.register.rescue import LostRow, Rescued

_LONGEST = 600


def rescue_words(rescued: Rescued) -> tuple[str, ...]:
    """What was saved and what is missing, in a few sentences."""
    saved = tr("Saved and proved: {lines} lines of the ledger, {rows} entries.",
               lines=rescued.line_count, rows=rescued.row_count)  # fmt: skip
    return (saved, *_lost_lines(rescued), _lost_count(rescued))


def _lost_lines(rescued: Rescued) -> Iterator[str]:
    for first, last in rescued.gaps:
        if first == last:
            yield tr("Line {line} of the ledger is lost.", line=first)
        else:
            yield tr("Lines {first} to {last} of the ledger are lost.", first=first, last=last)
    if not rescued.ends_well:
        yield tr("Lines after the last one that was saved may be lost; nobody can tell how many.")
    if rescued.unnamed:
        yield tr_n("One entry was found of which no saved line tells; it is not taken as fact.",
                   "{count} entries were found of which no saved line tells; they are not taken as facts.",
                   rescued.unnamed)  # fmt: skip


def _lost_count(rescued: Rescued) -> str:
    if not rescued.rows:
        return tr("No entry that a saved line names is lost.")
    return tr_n("One entry that a saved line names is lost.", "{count} entries that saved lines name are lost.",
                len(rescued.rows))  # fmt: skip


def held_words(held: Sequence[str], rescued: Rescued) -> str:
    """Which pieces are held, and why these."""
    if not held:
        return tr("No piece is held because of it.")
    tags = ", ".join(held)
    if rescued.lost_lines:
        return tr("Nobody can tell of which pieces the lost lines told. Held until inspected: {tags}.", tags=tags)
    return tr("Held until inspected, since something of them may be lost: {tags}.", tags=tags)


def lost_text(office: Office, rescued: Rescued, held: Sequence[str]) -> str:
    """All of it, a line each."""
    head = [
        tr("What could not be saved of {file}, {day}", file=rescued.file.name, day=show_day(office.today)),
        tr("Checksum of that file (SHA-256): {sha256}", sha256=rescued.sha256),
        "",
        *rescue_words(rescued),
        held_words(held, rescued),
        "",
    ]
    told = {one.number: one.sentence for one in told_ledger(office)} if rescued.rows else {}
    lines = (text for one in rescued.rows for text in _row_text(one, told.get(one.line, "")))
    return "\n".join((*head, *lines)) + "\n"


def _row_text(row: LostRow, told: str) -> Iterator[str]:
    yield tr("Lost: an entry of “{table}”, line {line} of the ledger (“{deed}”), id {id}",
             table=row.table, line=row.line, deed=row.deed, id=row.id)  # fmt: skip
    if row.parent:
        yield "    " + tr("It is whole, but what it belongs to, an entry of “{table}”, is lost.", table=row.parent)
    if told:
        yield "    " + tr("The line tells: {facts}", facts=told)
    if row.read:
        yield "    " + tr("Read of it, and proved by nothing: {facts}", facts=_short(row.read))


def _short(facts: object) -> str:
    text = str(facts)
    return text if len(text) <= _LONGEST else text[:_LONGEST] + " …"
