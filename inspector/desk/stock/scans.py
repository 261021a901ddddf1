"""Scans in the order in which they came, one after the other: a scanner is faster than the register writes."""

from collections import deque
from collections.abc import Callable

from msgspec import Struct

from inspector.desk.background import Background
from inspector.duties.office import Office
from inspector.duties.take_stock import Scanned, mark
from inspector.duties.tell_count import CountTold, count_told
from inspector.gear.stock_take import Counted
from inspector.refused import Refused


class Scan(Struct, frozen=True):
    """Tags that are marked together, how, where they lie, and a note."""

    ref: str
    tags: tuple[str, ...]
    counted: Counted
    place: str = ""
    note: str = ""


class ScanEnded(Struct, frozen=True):
    """What came of a scan: what was marked and the count as it stands then, or the refusal."""

    scan: Scan
    found: Scanned | None = None
    told: CountTold | None = None
    refusal: Refused | None = None


class Scans:
    """Marks one scan at a time; none is dropped, also where the page is left meanwhile."""

    def __init__(self, office: Office, background: Background, ended: Callable[[ScanEnded], object]) -> None:
        self._office, self._background, self._ended = office, background, ended
        self._waiting: deque[Scan] = deque()
        self._is_busy = False

    def add(self, scan: Scan) -> None:
        """Mark it as soon as those before it are marked."""
        self._waiting.append(scan)
        self._next()

    def _next(self) -> None:
        if self._is_busy or not self._waiting:
            return
        self._is_busy, scan = True, self._waiting.popleft()
        self._background.run(
            _marked, self._office, scan, done=self._done, failed=lambda why: self._done(ScanEnded(scan, refusal=why))
        )

    def _done(self, ended: ScanEnded) -> None:
        self._is_busy = False
        self._ended(ended)
        self._next()


def _marked(office: Office, scan: Scan) -> ScanEnded:
    found = mark(office, scan.ref, scan.tags, scan.counted, scan.place, scan.note)
    return ScanEnded(scan, found, count_told(office, scan.ref))
