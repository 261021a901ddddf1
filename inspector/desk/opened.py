"""What the pages need from the register, fetched in one go: deeds for the worker, results without any tie to it."""

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace
from PySide6.QtGui import QImage

from inspector.desk.piece.thumbs import thumbs_of
from inspector.duties.attach import attachments
from inspector.duties.keep_draft import forget
from inspector.duties.keep_passphrases import passes_nothing, vouch_second
from inspector.duties.log_inspection import Written, log_inspection
from inspector.duties.look_up import open_item, people, trips
from inspector.duties.office import Office
from inspector.duties.print_kept import papers_of
from inspector.duties.tags_left_on import tag_left_on
from inspector.duties.tell_history import told_lines
from inspector.duties.tell_life import life_told
from inspector.duties.tell_piece import piece_today
from inspector.duties.tell_readings import how_read
from inspector.duties.tell_turns import turns_of
from inspector.duties.tell_work import file_words
from inspector.gear.attachment import Attachment
from inspector.gear.judged import Judged
from inspector.gear.life import Life
from inspector.gear.lists import HistoryRow, PaperRow
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.gear.verdict import Fact, WallPoint


class Opened(Struct, frozen=True):
    """A piece with its verdict as it was said, its history and life, the people, and what belongs to it.

    piece: what is known of it today; turns: what would change its verdict; how: how its wall was read, by reading;
    papers: documents that name it; files: what was put to it, with thumbs of the images by their sha256 and what is
    said below each by its id. tells: what is to be told of the deed just done.
    """

    judged: Judged
    history: tuple[HistoryRow, ...]
    people: tuple[Person, ...]
    piece: tuple[Fact, ...]
    turns: tuple[Fact, ...]
    how: Mapping[WallPoint, str]
    life: Life
    papers: tuple[PaperRow, ...]
    files: tuple[Attachment, ...]
    thumbs: Mapping[str, QImage]
    file_words: Mapping[str, str]
    tells: tuple[str, ...] = ()

    @property
    def tag(self) -> str:
        """The tag of the piece."""
        return self.judged.dossier.item.tag


def opened(office: Office, tag: str) -> Opened:
    """The piece with this tag; all that is told of it is of one moment."""
    with office.book.one_moment():
        return _opened(office, tag)


def _opened(office: Office, tag: str) -> Opened:
    judged, files, told = open_item(office, tag), attachments(office, tag), told_lines(office, tag)
    return Opened(
        judged=judged,
        history=tuple(row for _, row in told),
        people=people(office),
        piece=piece_today(office, judged),
        turns=turns_of(office, judged),
        how=how_read(judged.dossier, judged.verdict.wall),
        life=life_told(office, tag, told),
        papers=papers_of(office, judged),
        files=files,
        thumbs=thumbs_of(office, files),
        file_words={one.id: file_words(one.facts) for one in files},
    )


def inspected(office: Office, tag: str, written: Written) -> Opened:
    """Log the inspection, and let go of its draft; the piece as it stands then."""
    proved = vouch_second(office, written.facts.second, written.proof)
    log_inspection(proved, tag, written)
    forget(office, draft_key(tag))
    found = opened(office, tag)
    left = tag_left_on(office, found.judged)
    return replace(found, tells=(*passes_nothing(proved, tag, written.facts), *([left] if left else [])))


def draft_key(tag: str) -> str:
    """Under which key the draft of an inspection is kept."""
    return f"inspect {tag}"


def trips_ahead(office: Office) -> tuple[Trip, ...]:
    """Trips that have not ended, the nearest first."""
    return tuple(one for one in trips(office) if one.last_on >= office.today)
