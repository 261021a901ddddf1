"""Put certificates, receipts and photos to a piece, an incident, a recall or a trip, list them, take them out."""

import hashlib
import re
from pathlib import Path

from msgspec import Struct

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.who import id_of
from inspector.gear.attachment import Attachment, NewAttachment, PaperKind
from inspector.language import tr
from inspector.paper.photo import MOST_BYTES, Intake, take_in
from inspector.refused import Refused
from inspector.register.page import Page

_SHORT = 8
_LONGEST_NAME = 60  # of four bytes each they still fit what a disk takes
_ENDINGS = {"application/pdf": ".pdf", "image/jpeg": ".jpg", "image/png": ".png", "text/plain": ".txt"}
_DEVICE = re.compile(r"^(con|prn|aux|nul|com\d|lpt\d)$", re.IGNORECASE)


def attach(
    office: Office, about: str, name: str, data: bytes, kind: PaperKind, *, note: str = "", by: str = ""
) -> Attachment:
    """Keep a file. about: a piece's tag, an incident's, a recall's or a trip's reference. name: of the file as it came.

    Refused: what is no PDF, JPEG, PNG or text by its content, broken, too large, or there already.
    """
    found = take_in(data)
    with office.book.page() as page:
        kept = keep_file(office, page, _about(page, about), NamedFile(name, data, found, kind, note), by)
        page.enter("attach", by=office.officer.id, at=office.now, facts={"about": about, "as": kept.facts})
    return kept


class NamedFile(Struct, frozen=True):
    """A file that was taken in. data: as it came; taken: as it is kept."""

    name: str
    data: bytes
    taken: Intake
    kind: PaperKind
    note: str = ""


def keep_file(office: Office, page: Page, owner: str, file: NamedFile, by: str = "") -> Attachment:
    """Keep a file on an open page; the deed that does so enters it. owner: the id of what it is put to."""
    check_line(tr("note"), file.note)
    original = hashlib.sha256(file.data).hexdigest()
    for one in page.attachments(owner):
        if one.facts.original_sha256 == original:
            why = tr("The same file is there already, as “{name}”.", name=one.facts.name)
            raise Refused(tr("file"), why, tr("Look whether another one was meant."))
    facts = NewAttachment(
        on=office.today,
        kind=file.kind,
        name=safe_stem(file.name) + _ENDINGS[file.taken.media_type],
        media_type=file.taken.media_type,
        size_bytes=len(file.taken.data),
        sha256=hashlib.sha256(file.taken.data).hexdigest(),
        original_sha256=original,
        by=id_of(office, page, by, tr("put in by")),
        note=file.note.strip(),
        taken_at=file.taken.taken_at,
    )
    return page.add_attachment(owner, facts, file.taken.data)


def read_file(place: Path) -> bytes:
    """The bytes of a file that is to be kept; refused where it is no file, cannot be read or is too large."""
    try:
        if place.is_file() and place.stat().st_size <= MOST_BYTES:
            return place.read_bytes()
    except OSError as error:
        why = tr("{file} cannot be read ({why}).", file=place, why=error.strerror)
        raise Refused(tr("file"), why, tr("Look whether it is still there.")) from error
    why = tr("{file} is no file, or has more than {most} MB.", file=place, most=MOST_BYTES // 10**6)
    raise Refused(tr("file"), why, tr("Take a single file, and make it smaller where it is too large."))


def attachments(office: Office, about: str) -> tuple[Attachment, ...]:
    """The files put to a piece, an incident, a recall or a trip, the oldest first."""
    with office.book.reading() as page:
        return page.attachments(_about(page, about))


def take_out(office: Office, about: str, folder: Path) -> tuple[Path, ...]:
    """Write the files of a piece, an incident, a recall or a trip into a folder; what is there already stays."""
    with office.book.reading() as page:
        kept = page.attachments(_about(page, about))
        files = [(one.facts, page.attachment_bytes(one.facts.sha256)) for one in kept]
    if not files:
        raise Refused(tr("files"), tr("Nothing was put to {about}.", about=about), tr("Put a file in first."))
    taken: set[str] = set()
    written = []
    for facts, data in files:
        _check_whole(facts, data)
        place = folder / _free_name(facts.name, taken)
        _write_new(place, data)
        written.append(place)
    return tuple(written)


def file_bytes(office: Office, kept: Attachment) -> bytes:
    """The bytes of a kept file; refused where they are not what was put in."""
    with office.book.reading() as page:
        data = page.attachment_bytes(kept.facts.sha256)
    _check_whole(kept.facts, data)
    return data


def put_on_tray(office: Office, kept: Attachment) -> Path:
    """Write a kept file into the out tray, to be looked at; what lay there of the same file is written anew."""
    data, stem = file_bytes(office, kept), safe_stem(kept.facts.name)
    place = office.out_tray / f"{stem}-{kept.facts.sha256[:_SHORT]}{Path(kept.facts.name).suffix}"
    try:
        office.out_tray.mkdir(parents=True, exist_ok=True)
        place.write_bytes(data)
    except OSError as error:
        raise _cannot_write(place, error) from error
    return place


def _check_whole(facts: NewAttachment, data: bytes) -> None:
    if hashlib.sha256(data).hexdigest() != facts.sha256:
        why = tr("“{name}” is not what was kept.", name=facts.name)
        raise Refused(tr("file"), why, tr("Run `inspector verify`, and take it from a back-up."))


def _cannot_write(place: Path, error: OSError) -> Refused:
    why = tr("{file} cannot be written ({why}).", file=place, why=error.strerror)
    return Refused(tr("folder"), why, tr("Choose a folder you may write to."))


def _write_new(place: Path, data: bytes) -> None:
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        with place.open("xb") as new:
            new.write(data)
    except FileExistsError as error:
        why = tr("{file} is there already and stays as it is.", file=place)
        raise Refused(tr("folder"), why, tr("Name an empty folder.")) from error
    except OSError as error:
        raise _cannot_write(place, error) from error


def _about(page: Page, named: str) -> str:
    """The id of the piece with this tag, or of the incident, recall or trip with this reference; in any case."""
    wanted = named.strip().casefold()
    if wanted and page.has_tag(named.strip()):
        return page.item(named).id
    called = {one.ref.casefold(): one.id for one in page.trips()}
    called |= {one.ref.casefold(): one.id for one in page.incidents()}
    called |= {one.ref.casefold(): one.id for one in page.recalls()}
    if wanted in called:
        return called[wanted]
    why = tr("No piece, incident, recall or trip is called “{name}”.", name=named)
    raise Refused(
        tr("about"), why, tr("Write the tag of a piece, or the reference of an incident, a recall or a trip.")
    )


def safe_stem(name: str) -> str:
    """A file's name without folders, ending, and signs that a system may take for something else."""
    last = re.split(r"[/\\]", name)[-1]
    stem = re.sub(r"\.[A-Za-z0-9]{1,5}$", "", last)
    plain = "".join(sign if sign.isalnum() or sign in "-_ ()" else "_" for sign in stem)
    safe = plain.strip(" .")[:_LONGEST_NAME].strip(" .")
    return f"_{safe}" if _DEVICE.match(safe) else safe or tr("file")


def _free_name(name: str, taken: set[str]) -> str:
    stem, ending = safe_stem(name), Path(name).suffix
    number, found = 1, stem + ending
    while found.casefold() in taken:
        number += 1
        found = f"{stem} ({number}){ending}"
    taken.add(found.casefold())
    return found
