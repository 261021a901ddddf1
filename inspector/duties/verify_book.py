"""Prove that nothing in the book was changed."""

from inspector.duties.office import Office
from inspector.gear.lists import Fault, Verified
from inspector.language import tr, tr_n
from inspector.refused import Refused

_SHORTEST_HEAD = 8


def verify_book(office: Office, against: str | None = None) -> Verified:
    """Recompute the ledger's chain and each row's digest. against: a head printed on a document or backup.

    Refuses a head that is empty or none at all: to find nothing changed would look as if it had been sought.
    """
    sought = "" if against is None else against.strip().lower()
    if against is not None and not sought:
        why = tr("The head is empty: nothing would be compared.")
        raise Refused(tr("head"), why, tr("Copy it from the foot of a document, or leave it out."))
    if sought and (len(sought) < _SHORTEST_HEAD or not set(sought) <= set("0123456789abcdef")):
        why = tr("A ledger head has at least {least} signs of 0-9 and a-f.", least=_SHORTEST_HEAD)
        raise Refused(tr("head"), why, tr("Copy it from the foot of a document."))
    with office.book.reading() as page:
        return page.verify(sought)


def verified_words(found: Verified, against: str | None = None) -> tuple[str, tuple[str, ...]]:
    """What came of it in a sentence; then what was looked at, and a line for each fault. against: a head sought."""
    lines, rows = found.line_count, found.row_count
    told = [tr("{lines} ledger lines, {rows} rows, head {head}", lines=lines, rows=rows, head=found.head)]
    if found.faults:
        head = tr_n("{count} fault found.", "{count} faults found.", len(found.faults))
        return head, (*told, *map(_fault_words, found.faults))
    if found.gaps:
        told += [tr("What a rescue could not save, as it told in the ledger:"), *map(_fault_words, found.gaps)]
    if against:
        told.append(tr("The head {head} stands in it.", head=against.strip().lower()))
    return _whole_words(found), tuple(told)


def _whole_words(found: Verified) -> str:
    if not found.gaps:
        return tr("Nothing was changed.")
    return tr_n("Nothing else was changed; one gap is known from a rescue.",
                "Nothing else was changed; {count} gaps are known from a rescue.", len(found.gaps))  # fmt: skip


def _fault_words(fault: Fault) -> str:
    at = tr(" (line {line})", line=fault.line) if fault.line else ""
    return f"{fault.where}{at}: {fault.why}"
