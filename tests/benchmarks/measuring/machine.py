"""The machine that is measured on, by name: no figure means anything without it."""

import os
import platform
import sqlite3
import subprocess
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median

from msgspec import Struct
from msgspec.structs import asdict
from PySide6.QtCore import qVersion

from tests import server

_HERE = Path(__file__).resolve().parents[3]
_SYNCS, _PAGE_BYTES = 50, 4096
_TELLS_APART = ("processor", "cores", "memory_gb", "system", "python", "sqlite", "qt", "postgresql")


class Machine(Struct, frozen=True):
    """Processor, cores, memory in GB, and versions. load: how many wanted a core on the average of the last minute.

    synced_ms: how long the disk under the registers takes to say that a page was put down; 0 where nobody has asked.
    """

    processor: str
    cores: int
    memory_gb: float
    system: str
    python: str
    sqlite: str
    qt: str
    postgresql: str
    load: float
    synced_ms: float = 0.0

    def lines(self) -> Iterator[str]:
        """The machine in words."""
        yield f"{self.processor}, {self.cores} cores, {self.memory_gb:g} GB; {self.system}"
        yield (
            f"Python {self.python}, SQLite {self.sqlite}, Qt {self.qt}, PostgreSQL {self.postgresql or 'not installed'}"
        )
        if self.synced_ms:
            yield f"The disk takes {self.synced_ms:.2g} ms to say that a page was put down."
        if self.load > 0.5:
            wanted = f"{self.load:.1f} wanted a core"
            yield f"Other work was going on as it began ({wanted}): trust the ratios, not the figures."

    def differs(self, other: "Machine") -> list[str]:
        """In what two machines differ."""
        own, others = asdict(self), asdict(other)
        return [name for name in _TELLS_APART if own[name] != others[name]]


def this_machine(place: Path) -> Machine:
    """The one this runs on. place: a folder on the disk that is measured on."""
    return Machine(
        processor=_processor(),
        cores=os.cpu_count() or 0,
        memory_gb=round(_memory_bytes() / 1e9, 1),
        system=platform.platform(),
        python=platform.python_version(),
        sqlite=sqlite3.sqlite_version,
        qt=qVersion() or "",
        postgresql=_postgresql(),
        load=round(os.getloadavg()[0], 2) if hasattr(os, "getloadavg") else 0.0,
        synced_ms=_synced_ms(place),
    )


def revision() -> str:
    """The program's revision, with a + where something was changed since; empty outside a checkout."""
    try:
        said = subprocess.run(
            ["git", "describe", "--always", "--dirty=+"], cwd=_HERE, capture_output=True, text=True, check=True
        )
    except (OSError, subprocess.CalledProcessError):
        return ""
    return said.stdout.strip()


def _synced_ms(place: Path) -> float:
    times = []
    with tempfile.TemporaryFile(dir=place) as file:
        for _ in range(_SYNCS):
            file.write(bytes(_PAGE_BYTES))
            file.flush()
            began = time.perf_counter()
            os.fsync(file.fileno())
            times.append(time.perf_counter() - began)
    return round(median(times) * 1e3, 3)


def _processor() -> str:
    try:
        lines = Path("/proc/cpuinfo").read_text("utf-8").splitlines()
        return next(line.partition(":")[2].strip() for line in lines if line.startswith("model name"))
    except (OSError, StopIteration):
        return platform.processor() or platform.machine()


def _memory_bytes() -> int:
    try:
        return os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES")
    except (AttributeError, ValueError, OSError):
        return 0


def _postgresql() -> str:
    try:
        program = server.programs() / "postgres"
        said = subprocess.run([str(program), "--version"], capture_output=True, text=True, check=True)
    except (server.NoServerError, OSError, subprocess.CalledProcessError):
        return ""
    return said.stdout.split()[2]  # postgres (PostgreSQL) 15.3
