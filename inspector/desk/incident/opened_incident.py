"""What the page of an incident shows, fetched in one go."""

from collections.abc import Mapping

from msgspec import Struct
from PySide6.QtGui import QImage

from inspector.desk.piece.thumbs import thumbs_of
from inspector.duties.attach import attachments
from inspector.duties.keep_rigs import rigs
from inspector.duties.office import Office
from inspector.duties.recall import Kin, kin_of_broken
from inspector.duties.tell_incident import IncidentRow, IncidentTold, incident_told, incidents
from inspector.duties.tell_work import file_words
from inspector.gear.attachment import Attachment
from inspector.gear.rig import KeptRig


class OpenedIncident(Struct, frozen=True):
    """An incident with its files (thumbs by sha256, words by id), and other pieces that may be of one batch with what
    broke."""

    told: IncidentTold
    files: tuple[Attachment, ...]
    thumbs: Mapping[str, QImage]
    file_words: Mapping[str, str]
    kin: tuple[Kin, ...]


class Reports(Struct, frozen=True):
    """Every report, the youngest first, and the rigs that a new one may name."""

    rows: tuple[IncidentRow, ...]
    rigs: tuple[KeptRig, ...]


def reports(office: Office) -> Reports:
    """The list of reports."""
    return Reports(incidents(office), rigs(office))


def opened_incident(office: Office, ref: str) -> OpenedIncident:
    """The incident with this reference."""
    told = incident_told(office, ref)
    files = attachments(office, told.ref)
    words = {one.id: file_words(one.facts) for one in files}
    return OpenedIncident(told, files, thumbs_of(office, files), words, kin_of_broken(office, told.ref))
