"""Log an inspection as the form hands it over: what was read again is told in its note, its photos are kept with it."""

from msgspec import Struct

from inspector.duties.attach import attach
from inspector.duties.office import Office
from inspector.duties.plausible import Caution, cautions, widest_hole, with_confirmed
from inspector.duties.record_inspection import record_inspection
from inspector.duties.take_photos import TakenPhoto
from inspector.gear.attachment import PaperKind
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import NewInspection
from inspector.gear.judged import Judged
from inspector.language import show_day, tr
from inspector.refused import Refused


class Written(Struct, frozen=True):
    """An inspection to be logged. confirmed: the cautions of which somebody said that he read again."""

    facts: NewInspection
    confirmed: tuple[Caution, ...] = ()
    photos: tuple[TakenPhoto, ...] = ()


def log_inspection(office: Office, tag: str, written: Written) -> Judged:
    """Keep the inspection and its photos, and judge the piece by it: all of it or nothing.

    Refused: a reading out of the ordinary that nobody has read again, and whatever `record_inspection` refuses.
    """
    with office.book.together():
        dossier = _life_of(office, tag)
        found = cautions(office, dossier, written.facts, widest_hole(office, dossier))
        facts = with_confirmed(written.facts, found, written.confirmed)
        outcome = record_inspection(office, tag, facts)
        for photo in written.photos:
            _keep(office, outcome, photo, facts)
    return outcome


def _life_of(office: Office, tag: str) -> Dossier:
    with office.book.reading() as page:
        item = page.item(tag)
        return page.dossier(item, office.kind(item.facts.kind), office.today)


def _keep(office: Office, outcome: Judged, photo: TakenPhoto, facts: NewInspection) -> None:
    tag, note = outcome.dossier.item.tag, tr("Inspection of {day}", day=show_day(facts.on))
    try:
        attach(office, tag, photo.name, photo.data, PaperKind.PHOTO, note=note)
    except Refused as refusal:
        raise Refused(photo.name, refusal.why, refusal.what_to_do) from refusal
