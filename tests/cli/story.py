"""A story typed over many days on a copy of the sample register, with a clock that is set by hand."""

from datetime import date, datetime, timedelta
from itertools import count
from pathlib import Path
from typing import Any

import pytest
import tomli

from inspector.duties.office import Office
from tests.cli.test_commands import Desk

_FILES = count()


class Clock:
    """Stands in for the machine's clock where the program asks for it."""

    def __init__(self, moment: datetime) -> None:
        self.began = self.moment = moment

    def now(self) -> "Clock":
        """The moment."""
        return self

    def astimezone(self) -> datetime:
        """The moment with its zone."""
        return self.moment


class Story:
    """Types commands day by day. Days are counted from the evening on which the sample register was built."""

    def __init__(
        self, sample: Office, folder: Path, capture: pytest.CaptureFixture[str], patch: pytest.MonkeyPatch
    ) -> None:
        self.clock = Clock(sample.now)
        self._desk = Desk(folder, capture)
        self._folder = folder
        patch.setenv("COLUMNS", "110")
        patch.setattr("inspector.app.datetime", self.clock)

    def day(self, days: int) -> date:
        """So many days from the first evening."""
        return (self.clock.began + timedelta(days=days)).date()

    def at(self, days: int) -> "Story":
        """It is the evening of that day now."""
        self.clock.moment = self.clock.began + timedelta(days=days)
        return self

    def type(self, *words: str, code: int = 0) -> str:
        """What a command prints, its lines run together, so that a sentence is found however it wraps."""
        return " ".join(self._desk.type(*words, code=code).split())

    def kit(self, trip: str) -> list[str]:
        """The tags of a trip's kit, read from the file that it exports."""
        return list(self._exported("trip", "export", trip)["kit"])

    def rig(self, ref: str) -> list[str]:
        """The tags of a kept rig in the order of its runs, dampers last, read from the file that it exports."""
        rig = self._exported("rig", "export", ref)
        return list(dict.fromkeys(tag for run in (*rig["runs"], rig["dampers"]) for tag in run))

    def sheet(self, trip: str) -> str:
        """Print the sheet of a trip; its number."""
        place = Path(self._desk.type("sheet", trip).strip())
        assert place.read_bytes().startswith(b"%PDF")
        return place.stem

    def told(self, text: str) -> Path:
        """A file with this text."""
        file = self._folder / f"told-{next(_FILES)}.toml"
        file.write_text(text, encoding="utf-8")
        return file

    def _exported(self, *words: str) -> dict[str, Any]:
        file = self._folder / f"out-{next(_FILES)}.toml"
        self._desk.type(*words, str(file))
        return tomli.loads(file.read_text(encoding="utf-8"))
