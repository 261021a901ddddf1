"""Log an inspection as the form hands it over: what was read again is told in its note, its photos are kept with it."""

from msgspec import Struct

from inspector.duties.attach import attach
from inspector.duties.office import Office
from inspector.duties.plausible import Caution, cautions_of, with_confirmed
from inspector.duties.record_inspection import record
from inspector.duties.take_photos import TakenPhoto
from inspector.gear.attachment import PaperKind
from inspector.gear.inspection import NewInspection
from inspector.gear.judged import Judged
from inspector.language import show_day, tr
from inspector.refused import Refused


class Written(Struct, frozen=True):
    """An inspection to be logged. confirmed: the cautions of which somebody said that he read again.

    proof: the passphrase of its second name, where one was typed.
    """

    facts: NewInspection
    confirmed: tuple[Caution, ...] = ()
    photos: tuple[TakenPhoto, ...] = ()
    proof: str = ""


def log_inspection(office: Office, tag: str, written: Written) -> Judged:
    """Keep the inspection and its photos, and judge the piece by it: all of it or nothing.

    Refused: a reading out of the ordinary that nobody has read again, and whatever `record` refuses.
    """
    with office.book.together():
        with office.book.page() as page:
            item = page.item(tag)
            dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
            found = cautions_of(office, dossier, written.facts)
            outcome = record(office, page, item, with_confirmed(written.facts, found, written.confirmed))
        for photo in written.photos:
            _keep(office, outcome, photo, written.facts)
    return outcome


def _keep(office: Office, outcome: Judged, photo: TakenPhoto, facts: NewInspection) -> None:
    tag, note = outcome.dossier.item.tag, tr("Inspection of {day}", day=show_day(facts.on))
    try:
        attach(office, tag, photo.name, photo.data, PaperKind.PHOTO, note=note)
    except Refused as refusal:
        raise Refused(photo.name, refusal.why, refusal.what_to_do) from refusal
