"""What was typed into a form and not yet kept: set aside beside the register, so that a closed window loses nothing."""

import contextlib
import hashlib
import json
from collections.abc import Mapping
from pathlib import Path

from inspector.duties.office import Office

_MOST_BYTES = 1_000_000


def keep(office: Office, key: str, values: Mapping[str, object]) -> None:
    """Set a draft aside under a key; the one before goes. One that cannot be written is given up without a word."""
    body = json.dumps({"key": key, "values": values}, ensure_ascii=False).encode()
    if len(body) > _MOST_BYTES:
        return
    with contextlib.suppress(OSError):
        place = _place(office, key)
        place.parent.mkdir(parents=True, exist_ok=True)
        half = place.with_suffix(".half")
        half.write_bytes(body)
        half.replace(place)


def kept(office: Office, key: str) -> dict[str, object] | None:
    """The draft under a key; None where there is none that can be read."""
    with contextlib.suppress(OSError, ValueError):
        found = json.loads(_place(office, key).read_bytes())
        if isinstance(found, dict) and found.get("key") == key and isinstance(found.get("values"), dict):
            return dict(found["values"])
    return None


def forget(office: Office, key: str) -> None:
    """Throw a draft away."""
    with contextlib.suppress(OSError):
        _place(office, key).unlink(missing_ok=True)


def _place(office: Office, key: str) -> Path:
    """A file name that says nothing and holds any key."""
    return office.out_tray.parent / "drafts" / f"{hashlib.sha256(key.encode()).hexdigest()[:32]}.json"
