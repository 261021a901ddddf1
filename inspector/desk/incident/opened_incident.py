"""What the page of an incident shows, fetched in one go."""

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage

from inspector.duties.attach import attached_bytes
from inspector.duties.keep_rigs import rigs
from inspector.duties.office import Office
from inspector.duties.recall import Kin, kin_of_broken
from inspector.duties.tell_incident import IncidentRow, IncidentTold, incident_told, incidents
from inspector.duties.tell_work import paper_word
from inspector.gear.rig import KeptRig

_PHOTO_PX = 480


@dataclass(frozen=True, slots=True)
class AttachedFile:
    """A file of the report. picture: None for what is no picture."""

    name: str
    what: str
    note: str
    picture: QImage | None


@dataclass(frozen=True, slots=True)
class OpenedIncident:
    """An incident with its files, and other pieces that may be of one batch with what broke."""

    told: IncidentTold
    files: tuple[AttachedFile, ...]
    kin: tuple[Kin, ...]


@dataclass(frozen=True, slots=True)
class Reports:
    """Every report, the youngest first, and the rigs that a new one may name."""

    rows: tuple[IncidentRow, ...]
    rigs: tuple[KeptRig, ...]


def reports(office: Office) -> Reports:
    """The list of reports."""
    return Reports(incidents(office), rigs(office))


def opened_incident(office: Office, ref: str) -> OpenedIncident:
    """The incident with this reference."""
    told = incident_told(office, ref)
    files = tuple(
        AttachedFile(one.facts.name, paper_word(one.facts.kind), one.facts.note, _picture(data))
        for one, data in attached_bytes(office, told.ref)
    )
    return OpenedIncident(told, files, kin_of_broken(office, told.ref))


def _picture(data: bytes) -> QImage | None:
    """The picture no larger than it is shown; a small one as it is."""
    image = QImage.fromData(data)
    if image.isNull():
        return None
    if max(image.width(), image.height()) <= _PHOTO_PX:
        return image
    keep, smooth = Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation
    return image.scaled(_PHOTO_PX, _PHOTO_PX, keep, smooth)
