"""Papers and pictures that belong to a piece, an incident or a trip."""

from datetime import date
from enum import StrEnum

from msgspec import Struct


class PaperKind(StrEnum):
    """What it is."""

    CERTIFICATE = "certificate"
    RECEIPT = "receipt"
    INSTRUCTIONS = "instructions"
    PHOTO = "photo"
    STATEMENT = "statement"  # what a witness wrote
    REPORT = "report"  # of the police, an insurer, a laboratory
    OTHER = "other"


class NewAttachment(Struct, frozen=True):
    """A file that was put in. sha256: of the bytes as kept; original_sha256: of the file as it came, which differs
    where a picture was made smaller or what a camera writes into it was taken out. taken_at: as the camera wrote it.
    """

    on: date
    kind: PaperKind
    name: str
    media_type: str
    size_bytes: int
    sha256: str
    original_sha256: str
    by: str
    note: str = ""
    taken_at: str = ""


class Attachment(Struct, frozen=True):
    """A kept file. about: the id of the piece, incident or trip."""

    id: str
    about: str
    facts: NewAttachment
