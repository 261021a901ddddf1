"""Keep what is typed in a form and not kept yet, so that a closed window or a dead program loses nothing.

A draft is a file of its own in the folder "drafts" beside the register. It is never part of the register and never in
its ledger: it binds nobody, and forgetting it leaves no trace. A draft that cannot be read is as if there were none.
"""

import hashlib
import json
import os
import re
import tempfile
import threading
from collections.abc import Iterable, Mapping
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from typing import Any

from msgspec import Struct

from inspector.duties.office import Office
from inspector.duties.plain_lines import file_name
from inspector.language import tr
from inspector.refused import Refused

MOST_BYTES = 256_000
_FORM = "draft 1"  # of the file
_LONGEST_NAME = 40
_DIGEST_SIGNS = 12
_BROKEN = (OSError, ValueError, KeyError, TypeError, RecursionError)
_writing = threading.Lock()


class Draft(Struct, frozen=True):
    """What was typed. key: of which form and piece, as "inspect SH-002"; by: the id of who sat at the desk.

    begun, kept: when it was kept first and last. values: as they were given; a tuple comes back as a list.
    """

    key: str
    by: str
    begun: datetime
    kept: datetime
    values: Mapping[str, Any]


def keep(office: Office, key: str, values: Mapping[str, object]) -> None:
    """Keep the values under the key in place of what was there; values: what JSON can hold, with texts as keys.

    Refused: more than fits a draft, a number that is none, and a folder that cannot be written to.
    """
    with _writing:
        before = kept(office, key)
        begun = before.begun if before else office.now
        told = {
            "form": _FORM,
            "key": key,
            "by": office.officer.id,
            "begun": begun.isoformat(),
            "kept": office.now.isoformat(),
            "values": values,
        }
        _write(_place(office, key), _as_bytes(told))


def kept(office: Office, key: str) -> Draft | None:
    """The draft under this key; None where there is none that can be read."""
    found = _read(_place(office, key))
    return found if found and found.key == key else None


def forget(office: Office, key: str) -> None:
    """Throw the draft away; where there is none, nothing is to be done."""
    with _writing, suppress(OSError):
        _place(office, key).unlink(missing_ok=True)


def drafts(office: Office) -> tuple[Draft, ...]:
    """Every draft that can be read, the one kept last first."""
    files = sorted(_folder(office).glob("*.json")) if _folder(office).is_dir() else []
    found = [draft for file in files if (draft := _read(file))]
    return tuple(sorted(found, key=lambda one: one.kept.timestamp(), reverse=True))


def set_file_aside(office: Office, name: str, data: bytes) -> Path:
    """Keep bytes that were dropped or pasted as a file beside the drafts, until a form takes them; its path.

    Two files of one name stand beside each other.
    """
    digest = hashlib.sha256(data).hexdigest()[:_DIGEST_SIGNS]
    place = _folder(office) / digest / file_name(name)
    _write(place, data)
    return place


def forget_files(office: Office, files: Iterable[Path]) -> None:
    """Throw those of the files away that were set aside; others are left alone."""
    for one in files:
        if one.parent.parent == _folder(office):
            with suppress(OSError):
                one.unlink()
                one.parent.rmdir()


def _folder(office: Office) -> Path:
    return office.out_tray.parent / "drafts"


def _place(office: Office, key: str) -> Path:
    """The file of a key: a readable name, and a digest where two keys would be read alike."""
    plain = re.sub(r"[^A-Za-z0-9]+", "-", key).strip("-")[:_LONGEST_NAME]
    digest = hashlib.sha256(key.encode("utf-8", "surrogatepass")).hexdigest()[:_DIGEST_SIGNS]
    return _folder(office) / f"{plain}-{digest}.json"


def _as_bytes(told: Mapping[str, object]) -> bytes:
    try:
        data = json.dumps(told, allow_nan=False).encode()
    except ValueError as error:
        raise _refused(tr("A number in it is none."), tr("Mend it, then it is kept.")) from error
    if len(data) > MOST_BYTES:
        raise _refused(tr("It is longer than a draft may be."), tr("Save it, or make the note shorter."))
    return data


def _write(place: Path, data: bytes) -> None:
    """Whole or not at all: written beside its place, and only then put there."""
    beside = ""
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        handle, beside = tempfile.mkstemp(prefix=".draft-", dir=place.parent)
        with os.fdopen(handle, "wb") as new:
            new.write(data)
            new.flush()
            os.fsync(new.fileno())
        Path(beside).replace(place)
    except OSError as error:
        with suppress(OSError):
            Path(beside or place.parent / ".draft-none").unlink(missing_ok=True)
        why = tr("{place} cannot be written ({why}).", place=place, why=error.strerror)
        raise _refused(why, tr("Save before you close the window.")) from error


def _read(place: Path) -> Draft | None:
    try:
        if place.stat().st_size > MOST_BYTES:
            return None
        told = json.loads(place.read_bytes())
        if told["form"] != _FORM or not isinstance(told["values"], dict):
            return None
        begun, last = (datetime.fromisoformat(told[name]) for name in ("begun", "kept"))
        return Draft(str(told["key"]), str(told["by"]), begun, last, told["values"])
    except _BROKEN:
        return None


def _refused(why: str, what: str) -> Refused:
    return Refused(tr("draft"), why, what)
