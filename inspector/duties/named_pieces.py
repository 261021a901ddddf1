"""The pieces that somebody named for a paper, and a paper of several pieces as it was kept."""

from collections.abc import Sequence

from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.gear.judged import Judged
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.rows import Shape, from_body


def open_each(office: Office, tags: Sequence[str]) -> tuple[Judged, ...]:
    """Each named piece with its stored verdict, once, in the order named; refused where none is named."""
    if not tags:
        raise Refused(tr("tag"), tr("No piece is named."), tr("Write the tags of the pieces."))
    found = {one.dossier.item.id: one for one in (open_item(office, tag) for tag in tags)}
    return tuple(found.values())


def kept_as(office: Office, kind: str, number: str, shape: type[Shape], unknown: str = "") -> Shape:
    """What a document of this kind says, by its number; refused where there is none. unknown: in its own words."""
    wanted = number.strip()
    with office.book.reading() as page:
        body = page.document_of(kind, wanted)
    if body is None:
        why = unknown or tr("“{number}” is the number of no such document.", number=wanted)
        raise Refused(tr("number"), why, tr("Read it off the paper, or print the document for the first time."))
    return from_body(body, shape)
