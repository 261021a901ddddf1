"""Look a zip file over before anything is taken from it: what is no archive of ours, or may do harm, is refused.

Bounds: a directory of at most 64 MB, 200,000 members, a manifest of 32 MB, no member that unpacks to more than 250
times its packed size (beyond 1 MB), none packed in a way that this program does not write. No name comes from outside:
each must be one that this program gives. Members are read block by block, so that memory does not grow with them.
"""

import re
import stat
import struct
import zlib
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import BinaryIO
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile, ZipInfo

from inspector.gear.exported import Manifest
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.archive.manifest import (
    ARCHIVE,
    MANIFEST,
    PUBLIC_KEY,
    SIGNATURE,
    UNLISTED,
    VERIFIER,
    no_manifest,
    read_manifest,
)
from inspector.register.archive.write import ATTACHMENTS, DATABASE, LINES, READ_ME, RULEBOOKS, SCHEMA

_MOST_DIRECTORY = 64 << 20
_MOST_MEMBERS = 200_000
_MOST_MANIFEST = 32 << 20
_MOST_RATIO = 250  # databases and lines of our own stay below 30
_FREE_OF_RATIO = 1 << 20
_ENCRYPTED = 0x1
_END, _END_64 = b"PK\x05\x06", b"PK\x06\x07"
_END_BYTES, _MOST_COMMENT = 22, 1 << 16
_NEEDED = frozenset({READ_ME, VERIFIER, SCHEMA, LINES, DATABASE, MANIFEST})
_FIXED = _NEEDED | {PUBLIC_KEY, SIGNATURE}
_NAMED = re.compile(
    rf"{ATTACHMENTS}/[0-9a-f]{{64}}(\.[a-z0-9]{{1,5}})?|{RULEBOOKS}/([0-9a-f]{{64}}\.txt|adopted-[0-9a-f-]{{36}}\.toml)"
)
_BROKEN = (BadZipFile, NotImplementedError, RuntimeError, ValueError, EOFError, struct.error, zlib.error, OverflowError)


@contextmanager
def opened(file: Path) -> Iterator[tuple[ZipFile, Manifest, bytes]]:
    """The archive's zip, what it says of itself, and the bytes of that; looked over, its members still unread."""
    with ExitStack() as stack:
        with readable(file):
            stream = stack.enter_context(file.open("rb"))
            _check_directory(stream)
            box = stack.enter_context(ZipFile(stream))
            data = _looked_over(box)
            manifest = read_manifest(data, ARCHIVE)
            _check_listed(box.infolist(), manifest)
        yield box, manifest, data


@contextmanager
def readable(file: Path) -> Iterator[None]:
    """What cannot be read as an archive is refused."""
    try:
        yield
    except _BROKEN as error:
        raise odd(tr("it is cut off or broken")) from error
    except OSError as error:
        why = tr("{file} cannot be read ({why}).", file=file, why=error.strerror or error)
        raise Refused(tr("archive"), why, tr("Check its name and where it lies.")) from error


def odd(why: str) -> Refused:
    """The file is no archive of this program's, or no whole one."""
    said = tr("It is no whole archive of a register: {why}.", why=why)
    return Refused(tr("archive"), said, tr("Use another copy of it; nothing was taken from this one."))


def _looked_over(box: ZipFile) -> bytes:
    """The bytes of the manifest, once every member was looked at."""
    infos = box.infolist()
    if len(infos) > _MOST_MEMBERS:
        raise odd(tr("it has too many members"))
    for info in infos:
        _check_member(info)
    _check_once(infos)
    return _manifest_data(box)


def _check_directory(stream: BinaryIO) -> None:
    """The directory is read whole into memory, so its size is looked at first."""
    size = stream.seek(0, 2)
    stream.seek(max(size - _END_BYTES - _MOST_COMMENT - _END_BYTES, 0))
    tail = stream.read()
    at = tail.rfind(_END)
    if at < 0 or len(tail) - at < _END_BYTES:
        raise odd(tr("it is cut off or broken"))
    (directory,) = struct.unpack_from("<I", tail, at + 12)
    if directory == 0xFFFFFFFF or tail.rfind(_END_64, 0, at) >= 0:
        directory = _directory_64(stream, tail, at)
    stream.seek(0)
    if directory > _MOST_DIRECTORY:
        raise odd(tr("it has too many members"))


def _directory_64(stream: BinaryIO, tail: bytes, at: int) -> int:
    """The size of the directory as the longer form of a zip's end says it."""
    found = tail.rfind(_END_64, 0, at)
    if found < 0:
        raise odd(tr("it is cut off or broken"))
    (where,) = struct.unpack_from("<Q", tail, found + 8)
    stream.seek(where)
    end = stream.read(56)
    return int(struct.unpack_from("<Q", end, 40)[0])


def _check_member(info: ZipInfo) -> None:
    """The name is one of ours, it is a plain file, and it does not unpack to far more than it is."""
    name = info.filename
    if info.orig_filename != name or not (name in _FIXED or _NAMED.fullmatch(name)):
        raise odd(tr("it holds something that does not belong there, “{name}”", name=_shown(info.orig_filename)))
    mode = info.external_attr >> 16
    if info.is_dir() or (mode and not stat.S_ISREG(mode)) or info.flag_bits & _ENCRYPTED:
        raise odd(tr("“{name}” is no plain file", name=name))
    if info.compress_type not in {ZIP_STORED, ZIP_DEFLATED}:
        raise odd(tr("“{name}” is packed in a way that is not ours", name=name))
    if info.file_size > max(_FREE_OF_RATIO, _MOST_RATIO * info.compress_size):
        raise odd(tr("“{name}” would unpack to far more than it holds", name=name))


def _check_once(infos: list[ZipInfo]) -> None:
    seen: set[str] = set()
    for name in (info.filename.casefold() for info in infos):
        if name in seen:
            raise odd(tr("“{name}” stands in it twice", name=name))
        seen.add(name)
    if missing := sorted(_NEEDED - seen):
        raise odd(tr("{names} is missing", names=", ".join(missing)))


def _manifest_data(box: ZipFile) -> bytes:
    info = box.getinfo(MANIFEST)
    if info.file_size > _MOST_MANIFEST:
        raise no_manifest()
    return box.read(info)


def _check_listed(infos: list[ZipInfo], manifest: Manifest) -> None:
    """What is there is what the manifest lists, each of the size it says."""
    there = {info.filename: info.file_size for info in infos if info.filename not in UNLISTED}
    listed = {one.path: one.size_bytes for one in manifest.members}
    if len(listed) != len(manifest.members):
        raise no_manifest()
    for name in sorted(there.keys() ^ listed.keys()):
        if name in there:
            raise odd(tr("it holds something that does not belong there, “{name}”", name=name))
        raise odd(tr("{names} is missing", names=name))
    if wrong := [name for name, size in listed.items() if there[name] != size]:
        raise odd(tr("“{name}” has another size than it had", name=wrong[0]))


def _shown(name: str) -> str:
    """A name from outside as it may be shown: short, and with nothing that steers a screen."""
    plain = "".join(sign if sign.isprintable() else "?" for sign in name)
    return plain if len(plain) <= 60 else plain[:60] + "…"
