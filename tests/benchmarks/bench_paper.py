"""How long a trip sheet of 60 pieces takes against a bare canvas that draws the same; what 500 notices keep in memory.

python tests/benchmarks/bench_paper.py

The bare canvas is reportlab's own, told to draw the very texts, lines, boxes, fields and codes of the sheet, in its
fonts, at the places where they came to lie. It lays nothing out, works out no code and asks no font for its signs.
"""

import gc
import statistics
import sys
import time
import tracemalloc
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import Any
from unittest.mock import patch

from msgspec import Struct, field
from msgspec.structs import replace

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from reportlab.pdfgen.canvas import Canvas

from inspector.gear.papers import RetirementNotice, TripSheet
from inspector.paper import press
from inspector.paper.fonts import main_font
from inspector.paper.inspection_sheet import inspection_sheet
from inspector.paper.one_look import PressCanvas
from inspector.paper.page_style import PageSize
from inspector.paper.retirement_notice import retirement_notice
from tests.paper.documents import DOCUMENTS, SOMEBODY

_FIRST_FEW = 25

_Call = tuple[str, tuple[Any, ...], dict[str, Any]]


class Ratio(Struct, frozen=True):
    """Milliseconds of the sheet and of the bare canvas, medians. sharing: bare, its boxes made as the sheet's are."""

    sheet_ms: float
    bare_ms: float
    sharing_ms: float
    pages: int


class Kept(Struct, frozen=True):
    """What is held in memory after so many notices, in bytes, the first left out."""

    notices: int
    held_bytes: int


def compare(pieces: int, repeats: int) -> Ratio:
    """The sheet and the bare canvas in turns."""
    sheet, calls = _sheet(pieces), noted(pieces)
    real, bare, sharing = [], [], []
    for _ in range(repeats):
        real.append(_ms(lambda: inspection_sheet(sheet, PageSize.A4)))
        bare.append(_ms(lambda: redrawn(calls)))
        sharing.append(_ms(lambda: redrawn(calls, PressCanvas)))
    pages = inspection_sheet(sheet, PageSize.A4).page_count
    return Ratio(statistics.median(real), statistics.median(bare), statistics.median(sharing), pages)


def keep(marks: tuple[int, ...]) -> list[Kept]:
    """Notices printed one after another, each of another piece and owner, and what stays in memory at each mark."""
    notice, found = DOCUMENTS["retirement_notice"].make(3, SOMEBODY), []
    tracemalloc.start()
    retirement_notice(notice, PageSize.A4)
    before = _held()
    for number in range(1, max(marks) + 1):
        _numbered(notice, number)
        if number in marks:
            found.append(Kept(number, _held() - before))
    tracemalloc.stop()
    return found


def in_a_row(count: int) -> tuple[float, float]:
    """Processor seconds of one notice, the mean of the first few, and of so many one after another."""
    notice = DOCUMENTS["retirement_notice"].make(3, SOMEBODY)
    retirement_notice(notice, PageSize.A4)
    taken = [_work_s(lambda number=number: _numbered(notice, number)) for number in range(1, count + 1)]  # type: ignore[misc]
    return statistics.fmean(taken[:_FIRST_FEW]), sum(taken)


def _numbered(notice: RetirementNotice, number: int) -> None:
    """The notice of another piece and owner."""
    made = replace(notice.imprint, number=f"R-{number:04d}")
    retirement_notice(replace(notice, imprint=made, tag=f"T-{number:03d}", owner=f"Owner {number}"), PageSize.A4)


def _sheet(pieces: int) -> TripSheet:
    sheet: TripSheet = DOCUMENTS["trip_sheet"].make(pieces, SOMEBODY)
    return sheet


def noted(pieces: int) -> list[_Call]:
    """What the sheet asks of its canvas, in order."""
    calls: list[_Call] = []
    with patch.object(press, "PressCanvas", lambda *given, **named: _Noting(PressCanvas(*given, **named), calls)):
        inspection_sheet(_sheet(pieces), PageSize.A4)
    return calls


def redrawn(calls: list[_Call], kind: type[Canvas] = Canvas) -> bytes:
    """The same drawn on a bare canvas."""
    paper, size = BytesIO(), (PageSize.A4.width_pt, PageSize.A4.height_pt)
    canvas = kind(paper, pagesize=size, invariant=1, initialFontName=main_font(False).fontName)
    for name, given, named in calls:
        if name in _DRAWN:
            _DRAWN[name](canvas, *given)
        else:
            _ask(canvas, name, given, named)
    return paper.getvalue()


def _ask(canvas: Canvas, name: str, given: tuple[Any, ...], named: dict[str, Any]) -> None:
    on, _, what = name.rpartition(".")
    getattr(canvas.acroForm if on else canvas, what)(*given, **named)


def _text(canvas: Canvas, x: float, y: float, font: str, size_pt: float, text: str) -> None:
    canvas.setFont(font, size_pt)
    canvas.drawString(x, y, text)


def _path(canvas: Canvas, steps: list[_Call], how: dict[str, Any]) -> None:
    path = canvas.beginPath()
    for name, given, named in steps:
        getattr(path, name)(*given, **named)
    canvas.drawPath(path, **how)


_DRAWN: dict[str, Callable[..., None]] = {"text": _text, "path": _path}


class _Path(Struct):
    """A path, and how it came about."""

    real: Any
    steps: list[_Call] = field(default_factory=list)

    def __getattr__(self, name: str) -> Callable[..., Any]:
        def step(*given: Any, **named: Any) -> Any:
            self.steps.append((name, given, named))
            return getattr(self.real, name)(*given, **named)

        return step


class _Written(Struct):
    """A text, and how it came about."""

    real: Any
    at: tuple[float, float]
    font: tuple[str, float] = ("", 0.0)
    text: str = ""

    def setFont(self, name: str, size_pt: float) -> None:  # noqa: N802
        self.font = (name, size_pt)
        self.real.setFont(name, size_pt)

    def textOut(self, text: str) -> None:  # noqa: N802
        self.text += text
        self.real.textOut(text)


class _Noting(Struct):
    """A canvas or its form that notes what it is asked for."""

    real: Any
    calls: list[_Call]
    on: str = ""

    @property
    def acroForm(self) -> "_Noting":  # noqa: N802
        return _Noting(self.real.acroForm, self.calls, "form.")

    def beginPath(self) -> _Path:  # noqa: N802
        return _Path(self.real.beginPath())

    def drawPath(self, path: _Path, **how: Any) -> None:  # noqa: N802
        self.calls.append(("path", (path.steps, how), {}))
        self.real.drawPath(path.real, **how)

    def beginText(self, x: float, y: float) -> _Written:  # noqa: N802
        return _Written(self.real.beginText(x, y), (x, y))

    def drawText(self, text: _Written) -> None:  # noqa: N802
        self.calls.append(("text", (*text.at, *text.font, text.text), {}))
        self.real.drawText(text.real)

    def __getattr__(self, name: str) -> Any:
        def asked(*given: Any, **named: Any) -> Any:
            self.calls.append((f"{self.on}{name}", given, named))
            return getattr(self.real, name)(*given, **named)

        return asked


def _work_s(work: Callable[[], object]) -> float:
    began = time.process_time()
    work()
    return time.process_time() - began


def _ms(work: Callable[[], object]) -> float:
    began = time.perf_counter()
    work()
    return (time.perf_counter() - began) * 1e3


def _held() -> int:
    gc.collect()
    return tracemalloc.get_traced_memory()[0]


def main(repeats: int = 9) -> int:
    """Print the figures."""
    one = compare(60, repeats)
    print(f"trip sheet, 60 pieces, {one.pages} pages: {one.sheet_ms:6.0f} ms median")
    print(f"bare canvas, the same drawn:         {one.bare_ms:6.0f} ms median")
    print(f"bare canvas, boxes share their looks:{one.sharing_ms:6.0f} ms median")
    ratios = one.sheet_ms / one.bare_ms, one.sheet_ms / one.sharing_ms
    print("the sheet takes {:.2f} x the bare canvas, {:.2f} x the sharing one".format(*ratios))
    for kept in keep((100, 300, 500)):
        print(f"{kept.notices} notices in a row hold {kept.held_bytes / 1024:8.1f} KiB more than the first did")
    return 0


if __name__ == "__main__":
    sys.exit(main())
