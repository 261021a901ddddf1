"""Write the whole register into one zip file: database, files, rulebooks, lines of JSON, and a list of it with sums.

All of it is read from one copy of the database, so that every part is of one moment. Large files go through block by
block. The archive is written under another name and takes its own when it is whole; one that is there already stays.
"""

import hashlib
import os
import re
import sqlite3
import tempfile
from collections.abc import Callable, Iterable, Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from importlib.resources import files
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZIP_STORED, ZipFile, ZipInfo

from msgspec import Struct
from msgspec.structs import replace
from sqlalchemy import Connection, create_engine

from inspector.gear.exported import Manifest, Member
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import backup
from inspector.register.archive.manifest import (
    ARCHIVE,
    MANIFEST,
    PUBLIC_KEY,
    SIGNATURE,
    VERIFIER,
    VERSION,
    manifest_bytes,
    sorted_members,
)
from inspector.register.book import Book
from inspector.register.exchange.json_lines import json_lines
from inspector.register.exchange.line_schema import shipped_schema
from inspector.register.field_setting import WITHOUT_CONTACTS

DATABASE, LINES, SCHEMA, READ_ME = "register.db", "lines.jsonl", "lines.schema.json", "read_me.txt"
ATTACHMENTS, RULEBOOKS = "attachments", "rulebooks"
PRIVATE = ("contact", "passphrase")  # tables that are left out unless they are asked for
_BLOCK = 1 << 20
_ENDING = re.compile(r"\.[a-z0-9]{1,5}$")
_FIRST_YEAR = 1980  # of a zip file's days
_PLAIN_FILE = 0o100644 << 16
Told = Callable[[int, int], None]


class Signer(Struct, frozen=True):
    """Who signs. sign: signs bytes with the key; public_key: its open part as PEM; fingerprint: of it."""

    sign: Callable[[bytes], bytes]
    public_key: bytes
    fingerprint: str


class Making(Struct, frozen=True):
    """What the archive is told with. read_me: a text for whoever finds it; told: how far the copy is."""

    at: datetime
    program: str
    club: str
    read_me: str
    with_contacts: bool = False
    signer: Signer | None = None
    told: Told | None = None


class Written(Struct, frozen=True):
    """An archive as it was written. sha256: of the whole file."""

    file: Path
    size_bytes: int
    sha256: str
    manifest: Manifest


def write_archive(book: Book, file: Path, making: Making) -> Written:
    """Write the archive into a new file. Refused where it is there already, or the disk does not take it."""
    if file.exists():
        raise there_already(file)
    with disk_refused(file), tempfile.TemporaryDirectory(prefix=".archive-", dir=file.parent) as beside:
        copy = backup.back_up(book, Path(beside), making.at.date(), making.told)
        if not making.with_contacts:
            _leave_out(copy.file)
        part = Path(beside) / "part"
        start = _manifest(book.origin, copy, making)
        manifest = _write(part, copy.file, replace(start, with_contacts=making.with_contacts), making)
        backup.take_name(part, file)
    return Written(file, file.stat().st_size, backup.sha256_of(file), manifest)


def there_already(file: Path) -> Refused:
    """A file of this name stays as it is."""
    why = tr("{file} is there already and stays as it is.", file=file)
    return Refused(tr("file"), why, tr("Name another file, or move that one away first."))


@contextmanager
def disk_refused(file: Path) -> Iterator[None]:
    """What the disk does not take is refused."""
    try:
        yield
    except FileExistsError as error:
        raise there_already(file) from error
    except (OSError, sqlite3.Error) as error:
        why = tr("{file} cannot be written ({why}).", file=file, why=getattr(error, "strerror", None) or error)
        what = tr("Make room, or choose another folder; the register itself is as it was.")
        raise Refused(tr("file"), why, what) from error


def _leave_out(copy: Path) -> None:
    """Take contact details and passphrases out of the copy, so that no trace of them is left in its free space."""
    with closing(sqlite3.connect(copy, isolation_level=None)) as database:
        database.execute("PRAGMA secure_delete=ON")
        for table in PRIVATE:
            database.execute(f"DELETE FROM {table}")  # noqa: S608 - the names are our own
        database.execute("VACUUM")
    backup.put_settings(copy, {WITHOUT_CONTACTS: "yes"})


def _manifest(origin: str, copy: backup.Backup, making: Making) -> Manifest:
    return Manifest(
        format=ARCHIVE,
        version=VERSION,
        program=making.program,
        club=making.club,
        origin=origin,
        head=copy.head,
        line_count=copy.line_count,
        made_at=making.at.isoformat(timespec="seconds"),
        members=(),
        key=making.signer.fingerprint if making.signer else "",
    )


def _write(part: Path, copy: Path, start: Manifest, making: Making) -> Manifest:
    """The zip with all its members; the manifest that was put in last."""
    with part.open("xb") as stream:
        with ZipFile(stream, "w") as box:
            into = _Box(box, making.at)
            _put_all(into, copy, making)
            manifest = replace(start, members=sorted_members(into.members))
            data = manifest_bytes(manifest)
            into.put(MANIFEST, [data])
            if making.signer:
                into.put(SIGNATURE, [making.signer.sign(data)])
        stream.flush()
        os.fsync(stream.fileno())
    return manifest


class _Box:
    """The zip file; it notes what is put in."""

    def __init__(self, box: ZipFile, at: datetime) -> None:
        self._box = box
        self._at = at.replace(year=max(at.year, _FIRST_YEAR)).timetuple()[:6]
        self.members: list[Member] = []

    def put(self, path: str, parts: Iterable[bytes], *, packed: bool = True) -> None:
        """Put a member in, part by part."""
        info = ZipInfo(path, self._at)
        info.compress_type, info.external_attr = ZIP_DEFLATED if packed else ZIP_STORED, _PLAIN_FILE
        info.create_system = 3  # the same bytes on every system
        found, size = hashlib.sha256(), 0
        with self._box.open(info, "w", force_zip64=True) as member:
            for part in parts:
                member.write(part)
                found.update(part)
                size += len(part)
        self.members.append(Member(path, size, found.hexdigest()))


def _put_all(into: _Box, copy: Path, making: Making) -> None:
    into.put(READ_ME, [making.read_me.encode()])
    into.put(VERIFIER, [verifier()])
    if making.signer:
        into.put(PUBLIC_KEY, [making.signer.public_key])
    into.put(SCHEMA, [shipped_schema()])
    with copy_opened(copy) as connection:
        into.put(LINES, json_lines(connection))
    with closing(sqlite3.connect(copy)) as database:
        for path, text in rulebook_texts(database):
            into.put(path, [text])
        for path, row in attachment_rows(database):
            into.put(path, _blob(database, row), packed=False)  # pictures and PDF are packed by themselves
    into.put(DATABASE, blocks(copy))


def verifier() -> bytes:
    """The script that checks a signed bundle or archive without the program."""
    return (files("inspector.register") / VERIFIER).read_bytes()


@contextmanager
def copy_opened(copy: Path) -> Iterator[Connection]:
    """A copy of the database, to be read row by row."""
    engine = create_engine(f"sqlite:///{copy}")
    try:
        with engine.connect() as connection:
            yield connection
    finally:
        engine.dispose()


def rulebook_texts(database: sqlite3.Connection) -> Iterator[tuple[str, bytes]]:
    """Path and text of every rulebook that judged, and of every one that the club adopted."""
    for key, text in database.execute("SELECT id, text FROM rulebook ORDER BY id"):
        yield f"{RULEBOOKS}/{key}.txt", str(text).encode()
    for key, text in database.execute("SELECT id, text FROM adoption ORDER BY id"):
        yield f"{RULEBOOKS}/adopted-{key}.toml", str(text).encode()


def attachment_rows(database: sqlite3.Connection) -> Iterator[tuple[str, int]]:
    """Path and row number of every file: named by its sha256, with the ending that it was put in with."""
    names = "SELECT json_extract(body, '$.name') FROM attachment WHERE data_id = attachment_data.id ORDER BY id LIMIT 1"
    asked = f"SELECT id, rowid, ({names}) FROM attachment_data ORDER BY id"  # noqa: S608 - no word of it comes from outside
    for key, row, name in database.execute(asked):
        ending = _ENDING.search(str(name or "").lower())
        yield f"{ATTACHMENTS}/{key}{ending[0] if ending else ''}", int(row)


def _blob(database: sqlite3.Connection, row: int) -> Iterator[bytes]:
    """The bytes of a file, block by block; never all of them in memory."""
    with database.blobopen("attachment_data", "data", row, readonly=True) as blob:
        while block := blob.read(_BLOCK):
            yield block


def blocks(file: Path) -> Iterator[bytes]:
    """The bytes of a file, block by block."""
    with file.open("rb") as opened:
        while block := opened.read(_BLOCK):
            yield block
