"""Recall aid: other pieces that may be of one batch with what broke. A list to look at, no verdict."""

import re
from collections.abc import Iterator

from msgspec import Struct

from inspector.duties.incident_checks import incident_called
from inspector.duties.office import Office
from inspector.duties.recall_marks import is_same, plain
from inspector.gear.item import Item, NewItem
from inspector.language import tr
from inspector.register.current import facts_of
from inspector.register.lists import Asked

_ALL = 1_000_000
_LAST_DIGITS = re.compile(r"\d+\D*$")
_RUNNING_DIGITS = 3  # of a serial of figures alone, the last ones count the pieces


class Kin(Struct, frozen=True):
    """A piece that is like one that broke, and in what."""

    tag: str
    kind_name: str
    maker_mark: str
    serial: str
    like: str
    why: str


def kin_of_broken(office: Office, ref: str) -> tuple[Kin, ...]:
    """Pieces with the same maker's mark as one that broke and the same beginning of the serial, the nearest first."""
    with office.book.reading() as page:
        incident = incident_called(page, ref)
        broken = [page.item(tag) for tag in incident.facts.broken]
        tags = {page.item(tag).tag for tag in incident.facts.pieces}
        lines = page.gear(Asked(limit=_ALL)) if broken else ()
        every = [(one.tag, facts_of(one.body, one.changed)) for one in lines if one.tag not in tags]
    return tuple(one for item in broken for one in _kin(office, item, every))


def _kin(office: Office, broken: Item, every: list[tuple[str, NewItem]]) -> Iterator[Kin]:
    for tag, facts in every:
        if why := _why_like(broken.facts, facts):
            kind = office.rules.kinds.get(facts.kind)
            name = kind.name if kind else facts.kind
            yield Kin(tag, name, facts.maker_mark, facts.serial, broken.tag, why)


def _why_like(broken: NewItem, other: NewItem) -> str:
    """In what the other is like the broken one; empty where the mark differs or the serials begin otherwise."""
    if not plain(broken.maker_mark) or not is_same(broken.maker_mark, other.maker_mark):
        return ""
    batch, others = batch_of(broken.serial), batch_of(other.serial)
    if batch and batch == others:
        return tr("same mark, and the serial begins with {batch}", batch=batch)
    if other.kind == broken.kind and not (batch and others):
        return tr("same mark and kind; a serial is not known, so it may be of the same batch")
    return ""


def batch_of(serial: str) -> str:
    """The beginning of a serial that pieces of one batch share: all before its last figures."""
    signs = "".join(serial.upper().split())
    return signs[:-_RUNNING_DIGITS] if signs.isdigit() else _LAST_DIGITS.sub("", signs)
