"""Prove that an archive is as it was written: its sums, signature and database, and that all parts say the same."""

import hashlib
import shutil
import sqlite3
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import closing, contextmanager, nullcontext
from pathlib import Path
from zipfile import ZipFile

from msgspec import Struct
from sqlalchemy.exc import DatabaseError

from inspector.gear.exported import Manifest
from inspector.gear.lists import Fault
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import ledger, signing
from inspector.register.archive.manifest import MANIFEST, PUBLIC_KEY, SIGNATURE
from inspector.register.archive.shape import opened, readable
from inspector.register.archive.write import (
    DATABASE,
    LINES,
    attachment_rows,
    copy_opened,
    rulebook_texts,
)
from inspector.register.exchange.json_lines import json_lines
from inspector.register.guards import ensure_triggers, guarded_engine
from inspector.register.upgrade import HEAD, bring_up

_BLOCK = 1 << 20
_MOST_SMALL = 1 << 16
_SPARE_BYTES = 64 << 20  # room that is left on a disk beside what is unpacked


class Proved(Struct, frozen=True):
    """An archive that was looked through. faults: what is not as it was written; of a sound one there are none.

    key: the public key that signed it, as PEM; empty where nobody did. database: its unpacked database, brought up to
    this program's tables; it is there only as long as the archive is looked at.
    """

    manifest: Manifest
    faults: tuple[Fault, ...]
    key: str
    database: Path


@contextmanager
def proved(file: Path, head: str = "", key: str = "") -> Iterator[Proved]:
    """Look an archive through. head: one that its ledger must hold; key: the fingerprint of the key that must have
    signed it. Refused where the file is no archive, or may do harm."""
    with opened(file) as (box, manifest, data), _aside() as folder:
        database = folder / DATABASE
        _check_room(box, folder)
        faults = [*_changed(box, manifest, database)]
        pem, wrong = _signature(box, manifest, data, key)
        faults += wrong
        if not faults:
            faults += _disagreeing(manifest, database, head)
        yield Proved(manifest, tuple(faults), pem, database)


@contextmanager
def _aside() -> Iterator[Path]:
    """A folder of the system's own, gone afterwards."""
    try:
        made = tempfile.TemporaryDirectory(prefix="archive-")
    except OSError as error:
        raise _no_room(error.strerror or str(error)) from error
    with made as folder:
        yield Path(folder)


def _check_room(box: ZipFile, aside: Path) -> None:
    """The database is unpacked to be opened; what has no room is not begun."""
    needs, free = box.getinfo(DATABASE).file_size + _SPARE_BYTES, shutil.disk_usage(aside).free
    if needs > free:
        raise _no_room(tr("{needs} MB are needed, {free} MB are free", needs=needs >> 20, free=free >> 20))


def _no_room(why: str) -> Refused:
    said = tr("It cannot be unpacked to be looked through ({why}).", why=why)
    return Refused(tr("archive"), said, tr("Make room on this computer's disk."))


def _changed(box: ZipFile, manifest: Manifest, database: Path) -> Iterator[Fault]:
    """Every member against its sum; the database is unpacked on the way."""
    for one in manifest.members:
        if _sum_of(box, one.path, database if one.path == DATABASE else None) != one.sha256:
            yield Fault(one.path, tr("It was changed."))


def _sum_of(box: ZipFile, path: str, into: Path | None) -> str:
    """A member's sha256; empty where it cannot be read."""
    found = hashlib.sha256()
    try:
        with into.open("xb") if into else nullcontext() as out:
            for block in _blocks(box, path):
                found.update(block)
                if out:
                    out.write(block)
    except OSError as error:
        raise _no_room(error.strerror or str(error)) from error
    except Refused:  # the packed bytes are broken
        return ""
    return found.hexdigest()


def _blocks(box: ZipFile, path: str) -> Iterator[bytes]:
    with readable(Path(path)), box.open(path) as member:
        while block := member.read(_BLOCK):
            yield block


def _signature(box: ZipFile, manifest: Manifest, data: bytes, wanted: str) -> tuple[str, list[Fault]]:
    """The public key that the archive was signed with, and what is wrong with its signature."""
    names = set(box.namelist())
    if not manifest.key:
        faults = [Fault(SIGNATURE, tr("It is not signed."))] if wanted else []
        extra = names & {SIGNATURE, PUBLIC_KEY}
        return "", [*faults, *(Fault(name, tr("It was put in afterwards.")) for name in sorted(extra))]
    if not {SIGNATURE, PUBLIC_KEY} <= names:
        return "", [Fault(SIGNATURE, tr("It is missing."))]
    pem, own = _small(box, PUBLIC_KEY), _small(box, SIGNATURE)
    return pem.decode("ascii", "replace"), list(signature_faults(manifest, data, pem, own, wanted))


def signature_faults(manifest: Manifest, data: bytes, pem: bytes, own: bytes, wanted: str) -> Iterator[Fault]:
    """What is wrong with the signature `own` of the manifest's bytes. wanted: the fingerprint it must be of, or ""."""
    found = signing.fingerprint(pem)
    if found != manifest.key or not signing.is_signed(pem, own, data):
        yield Fault(SIGNATURE, tr("It does not fit: the list of contents was changed, or another key signed it."))
    elif wanted and found != wanted:
        yield Fault(PUBLIC_KEY, tr("Another key signed it: {key}.", key=signing.grouped(found)))


def _small(box: ZipFile, path: str) -> bytes:
    info = box.getinfo(path)
    with readable(Path(path)):
        return box.read(info) if info.file_size <= _MOST_SMALL else b""


def _disagreeing(manifest: Manifest, database: Path, head: str) -> Iterator[Fault]:
    """The database itself, and what in the other members is not what it says."""
    try:
        is_own = _disarmed(database)
        faults = [*_database_faults(manifest, database, head)]
        if not faults:
            sums = {one.path: one.sha256 for one in manifest.members}
            if is_own and _lines_sum(database) != sums[LINES]:
                faults.append(Fault(LINES, tr("It does not say what the database says.")))
            faults += _files_disagreeing(database, sums)
    except (sqlite3.Error, DatabaseError) as error:
        faults = [Fault(DATABASE, tr("It cannot be read as a register ({why}).", why=getattr(error, "orig", error)))]
    yield from faults


def _disarmed(database: Path) -> bool:
    """Take out whatever the unpacked database would do by itself, and bring its tables and guards up to this program's.

    Whether they were this program's before.
    """
    with closing(sqlite3.connect(database, isolation_level=None)) as found:
        found.execute("PRAGMA trusted_schema=OFF")
        found.execute("PRAGMA synchronous=OFF")  # it is a copy of a copy, and gone in a moment
        found.execute("BEGIN")
        asked = "SELECT type, name FROM sqlite_master WHERE type IN ('trigger', 'view')"
        for kind, name in found.execute(asked).fetchall():
            quoted = str(name).replace('"', '""')
            found.execute(f'DROP {kind} "{quoted}"')
        found.execute("COMMIT")
        row = found.execute("SELECT version_num FROM alembic_version").fetchone()
    is_own = bool(row) and row[0] == HEAD
    engine = guarded_engine(f"sqlite:///{database}")
    try:
        if is_own:
            with engine.begin() as connection:
                ensure_triggers(connection)
        else:
            bring_up(engine)
    finally:
        engine.dispose()
    return is_own


def _database_faults(manifest: Manifest, database: Path, head: str) -> Iterator[Fault]:
    with closing(sqlite3.connect(database)) as found:
        told = [str(row[0]) for row in found.execute("PRAGMA integrity_check(3)")]
        if told != ["ok"] or found.execute("PRAGMA foreign_key_check").fetchone():
            yield Fault(DATABASE, tr("It is no whole register."))
            return
    with copy_opened(database) as connection:
        verified = ledger.verify(connection, head)
    yield from verified.faults
    if (verified.head, verified.line_count) != (manifest.head, manifest.line_count):
        yield Fault(MANIFEST, tr("It tells of another head than the ledger has."))


def _lines_sum(database: Path) -> str:
    with copy_opened(database) as connection:
        return _sum(json_lines(connection))


def _sum(parts: Iterable[bytes]) -> str:
    found = hashlib.sha256()
    for part in parts:
        found.update(part)
    return found.hexdigest()


def _files_disagreeing(database: Path, sums: dict[str, str]) -> Iterator[Fault]:
    """Files and rulebooks that are not those of the database, by name and content."""
    with closing(sqlite3.connect(database)) as opened_:
        said = {path: hashlib.sha256(text).hexdigest() for path, text in rulebook_texts(opened_)}
        said |= {path: path.split("/")[1][:64] for path, _ in attachment_rows(opened_)}
    for path in sorted(path for path in {*said, *sums} if "/" in path):
        if said.get(path) != sums.get(path):
            yield Fault(path, tr("It does not say what the database says."))
