"""What this machine remembers for whoever sits at it: the language, the look, the columns.

None of it belongs to the club; a lost or broken file costs nothing but a choice to be made again.
"""

import contextlib
import json
import os
from collections.abc import Mapping
from pathlib import Path

LAST_PLACE = "register"  # under which this machine remembers the register opened last
_LANGUAGE = "language"


class MachineSettings:
    """Texts by key. file: where they are kept; None: only as long as the program runs."""

    def __init__(self, file: Path | None = None) -> None:
        self._file = file
        self._texts = dict(_read(file)) if file else {}

    def get(self, key: str, otherwise: str = "") -> str:
        """What was remembered under a key."""
        return self._texts.get(key, otherwise)

    @property
    def folder(self) -> Path | None:
        """The folder it is kept in; None where nothing outlives the program."""
        return self._file.parent if self._file else None

    @property
    def language(self) -> str:
        """The language of all texts, e.g. "de"; empty for the one that the computer itself speaks."""
        return self.get(_LANGUAGE)

    def speak(self, language: str) -> None:
        """Remember the language of the next start."""
        self.put(_LANGUAGE, language)

    def put(self, key: str, text: str) -> None:
        """Remember a text. A file that cannot be written is passed over in silence: nothing rests on it."""
        if self._texts.get(key) == text:
            return
        self._texts[key] = text
        if self._file:
            _write(self._file, self._texts)


def _read(file: Path) -> Mapping[str, str]:
    with contextlib.suppress(OSError, ValueError, RecursionError):
        found = json.loads(file.read_text("utf-8"))
        if isinstance(found, dict):
            return {str(key): text for key, text in found.items() if isinstance(text, str)}
    return {}


def _write(file: Path, texts: Mapping[str, str]) -> None:
    import tempfile  # rarely written, and read before anything is seen of the program

    with contextlib.suppress(OSError):
        file.parent.mkdir(parents=True, exist_ok=True)
        handle, beside = tempfile.mkstemp(prefix=".settings-", dir=file.parent)
        with os.fdopen(handle, "w", encoding="utf-8") as half:
            json.dump(dict(texts), half)
        Path(beside).replace(file)
