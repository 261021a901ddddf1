"""Takes a picture of every page of the window on the sample register, and tells what is cut off on it.

python tests/desk/pictures.py FOLDER            every page: 1280 x 720, 1920 x 1080, text twice as large; light and dark
python tests/desk/pictures.py FOLDER due rig    these pages alone
python tests/desk/pictures.py --readme          the pictures that the README shows
LANGUAGE=de python tests/desk/pictures.py FOLDER    the same in German
"""

import os
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# ruff: noqa: E402 - a script that is run by itself finds the program first
from PySide6.QtWidgets import QApplication

from inspector.app import open_office, speak
from inspector.desk.look import Look, Scheme, TextSize
from inspector.desk.place import Go
from inspector.desk.places import places
from inspector.desk.window import DeskWindow
from inspector.duties.build_sample import build_sample
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office
from inspector.duties.sit_down import seat
from inspector.paper.font_files import font_files
from tests.desk.cut_off import cut_off

_SIZES = (("1280x720", (1280, 720), TextSize.USUAL), ("1920x1080", (1920, 1080), TextSize.USUAL),
          ("double", (1280, 720), TextSize.DOUBLE))  # fmt: skip
_PIECES = ("BM-01", "HR-01", "KS-03", "SH-01")
_README = (("BM-01", "window.png"), ("needs", "evening.png"), ("why", "bench.png"))
_PATIENCE_S = 20.0
_CALM_TURNS = 40  # a page that grows part by part needs a turn for each


class View(Struct, frozen=True):
    """A page in one of its states. show: goes there."""

    name: str
    show: Callable[[], object]


def sample_in(folder: Path) -> Office:
    """The sample register with its officer at the desk; nothing of this machine's own is read or kept."""
    office = replace(open_office(folder), machine=MachineSettings())
    build_sample(office)
    return seat(office)


def views(window: DeskWindow) -> Iterator[View]:
    """Every place, some records with the form of an inspection, and the forms of a piece's deeds."""
    for entry in places():
        yield View(entry.key, partial(window.pages.go, Go(entry.key)))
    for tag in _PIECES:
        yield View(tag, partial(window.pages.open_tag, tag))
    yield View("inspect", partial(_inspect, window))


def _inspect(window: DeskWindow) -> None:
    window.pages.open_tag("HR-01")
    settle(window)
    window.pages.inspect()


def settle(window: DeskWindow) -> None:
    """Wait until nothing is under way and what is built in later turns stands."""
    calm, ends = 0, time.monotonic() + _PATIENCE_S
    while calm < _CALM_TURNS:
        QApplication.processEvents()
        time.sleep(0.01)
        calm = calm + 1 if window.background.is_idle else 0
        if time.monotonic() > ends:
            raise TimeoutError("the window does not come to rest")


def take(window: DeskWindow, folder: Path, wanted: frozenset[str]) -> int:
    """Pictures of the wanted views, all where none is named; how many parts are cut off."""
    faults = 0
    for view in views(window):
        if wanted and view.name not in wanted:
            continue
        for size, (width, height), text in _SIZES:
            window.look.set_text(text)
            window.resize(width, height)
            view.show()
            settle(window)
            found = cut_off(window)
            faults += len(found)
            for line in found:
                print(f"{view.name} {size}: cut off: {line}")
            for scheme in (Scheme.LIGHT, Scheme.DARK):
                window.look.choose(scheme)
                settle(window)
                window.grab().save(str(folder / f"{view.name}-{size}-{scheme}.png"))
        window.pages.leave_form(lambda: None)
    return faults


def take_for_readme(window: DeskWindow, folder: Path) -> None:
    """The three that the README shows."""
    window.resize(1280, 800)
    window.look.choose(Scheme.LIGHT)
    by_name = {view.name: view for view in views(window)}
    for name, file in _README:
        by_name[name].show()
        settle(window)
        window.grab().save(str(folder / file))


def main(arguments: list[str]) -> int:
    """Build the sample, show the window, take the pictures; 1 where something is cut off."""
    speak("")
    app = QApplication([])
    app.setStyle("Fusion")
    with tempfile.TemporaryDirectory() as place:
        office = sample_in(Path(place))
        window = DeskWindow(office, Look(font_files()))
        window.show()
        settle(window)
        faults = 0
        if arguments[:1] == ["--readme"]:
            take_for_readme(window, ROOT / "sample_register" / "pictures")
        else:
            folder = Path(arguments[0])
            folder.mkdir(parents=True, exist_ok=True)
            faults = take(window, folder, frozenset(arguments[1:]))
        window.close_for_good()
        office.book.close()
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
