"""What the page of a recall shows, fetched in one go."""

from collections.abc import Mapping

from msgspec import Struct, field
from PySide6.QtGui import QImage

from inspector.desk.piece.thumbs import thumbs_of
from inspector.duties.attach import attachments
from inspector.duties.office import Office
from inspector.duties.recall_search import Searched, meant_by, search_recall
from inspector.duties.tell_recall import RecallRow, RecallTold, recall_told, recalls
from inspector.duties.tell_work import file_words
from inspector.gear.attachment import Attachment
from inspector.gear.kind import Kind
from inspector.gear.recall_notice import Meant


class OpenedRecall(Struct, frozen=True):
    """A recall with its files (thumbs by sha256, words by id), and all the gear as its notice sorts it today."""

    told: RecallTold
    files: tuple[Attachment, ...]
    thumbs: Mapping[str, QImage]
    file_words: Mapping[str, str]
    found: Searched


class Sought(Struct):
    """What a notice means, as it was typed last, so that it stands in the next form. entered: the recall made of it."""

    kinds: tuple[Kind, ...]
    meant: Meant = field(default_factory=Meant)
    is_asked: bool = False
    entered: str = ""


class Notices(Struct, frozen=True):
    """Every recall, the youngest first, and the kinds that a new notice may mean."""

    rows: tuple[RecallRow, ...]
    kinds: tuple[Kind, ...]


def notices(office: Office) -> Notices:
    """The list of recalls."""
    return Notices(recalls(office), tuple(sorted(office.rules.kinds.values(), key=lambda one: one.name)))


def opened_recall(office: Office, ref: str) -> OpenedRecall:
    """The recall with this reference."""
    told = recall_told(office, ref)
    files = attachments(office, told.ref)
    words = {one.id: file_words(one.facts) for one in files}
    found = search_recall(office, meant_by(office, told.ref))
    return OpenedRecall(told, files, thumbs_of(office, files), words, found)
