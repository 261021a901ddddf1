"""Prove that nothing in the book was changed."""

from inspector.duties.office import Office
from inspector.gear.lists import Verified
from inspector.language import tr
from inspector.refused import Refused

_SHORTEST_HEAD = 8


def verify_book(office: Office, against: str = "") -> Verified:
    """Recompute the ledger's chain and each row's digest. against: a head printed on a document or backup."""
    sought = against.strip().lower()
    if sought and (len(sought) < _SHORTEST_HEAD or not set(sought) <= set("0123456789abcdef")):
        why = tr("A ledger head has at least {least} signs of 0-9 and a-f.", least=_SHORTEST_HEAD)
        raise Refused(tr("head"), why, tr("Copy it from the foot of a document."))
    with office.book.reading() as page:
        return page.verify(sought)
