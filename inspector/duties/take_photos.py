"""Photos that are to go with an inspection: looked over, with a small picture of each, and not yet kept."""

import hashlib
from pathlib import Path

from msgspec import Struct

from inspector.duties.attach import attachments
from inspector.duties.office import Office
from inspector.language import tr
from inspector.paper.photo import MOST_BYTES, Intake, small_picture, take_in
from inspector.refused import Refused

_PICTURES = {"image/jpeg", "image/png"}
THUMB_PX = 192  # the longer side of the small picture, enough for a dense screen


class TakenPhoto(Struct, frozen=True):
    """A photo that is not kept yet. data: the file as it came; small: a small PNG of it; path: where it lies, if so."""

    name: str
    data: bytes
    small: bytes
    sha256: str
    path: str = ""


def take_photo(office: Office, about: str, name: str, data: bytes, path: str = "") -> TakenPhoto:
    """The photo with its small picture. about: the tag of the piece. Refused under its name: what is no picture, is
    broken or too large, or is kept with the piece already."""
    sha256 = hashlib.sha256(data).hexdigest()
    try:
        found = picture_of(name, data)
        if any(one.facts.original_sha256 == sha256 for one in attachments(office, about)):
            raise Refused(name, tr("The same picture is kept with the piece already."), tr("Choose another one."))
    except Refused as refusal:
        raise Refused(name, refusal.why, refusal.what_to_do) from refusal
    return TakenPhoto(name, data, small_picture(found.data, THUMB_PX), sha256, path)


def picture_of(name: str, data: bytes) -> Intake:
    """The picture as it is kept. Refuses what is no picture, is broken or too large."""
    found = take_in(data)
    if found.media_type not in _PICTURES:
        raise Refused(name, tr("It is no picture."), tr("Use a JPEG or a PNG; papers are put to the piece itself."))
    return found


def take_photo_file(office: Office, about: str, path: Path) -> TakenPhoto:
    """The photo that lies in a file."""
    try:
        if path.stat().st_size > MOST_BYTES:
            why = tr("It has more than {most} MB.", most=MOST_BYTES // 10**6)
            raise Refused(path.name, why, tr("Make it smaller first."))
        data = path.read_bytes()
    except OSError as error:
        why = tr("It cannot be read ({why}).", why=error.strerror)
        raise Refused(path.name, why, tr("Look whether the file is still there and may be read.")) from error
    return take_photo(office, about, path.name, data, str(path))
