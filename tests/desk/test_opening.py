"""The window is there at once: what it waits for, what it shows of a register that is still being opened, and when."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from threading import Event

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from inspector.desk.doors import Doors, Start
from inspector.desk.look import Look
from inspector.desk.open_desk import OpenDesk, run_desk
from inspector.desk.place import Go
from inspector.desk.places import FLEET, GEAR, NEEDS, places
from inspector.desk.window import DeskWindow
from inspector.drawings.marks import outcome_word
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office, Told
from inspector.gear.outcome import Outcome
from inspector.refused import Refused

HEAVY = ("sqlalchemy", "alembic", "pint", "reportlab", "PIL", "pypdf", "pypdfium2", "icalendar", "click")
_FIRST_SIGHT = """
import sys
from PySide6.QtWidgets import QApplication
from inspector.desk.doors import Start
from inspector.desk.look import Look
from inspector.desk.open_desk import OpenDesk
from inspector.duties.machine_settings import MachineSettings
app = QApplication([])
desk = OpenDesk(None, Look(), Start(None, "", ()))
desk.window.painted.connect(app.quit)
desk.open(lambda told: None, MachineSettings())
desk.window.painted.connect(lambda: None)
app.exec()
print(*sorted(sys.modules))
"""
_EVERY_PAGE = """
import sys
from inspector.desk import fetching
fetching._fetch_all(lambda done, total: None)
print(*sorted(sys.modules))
"""
_READ_AS_TEXT = """
import linecache, sys
from inspector.desk import fetching
fetching.fetch_list()
import inspector.register.book
texts = {one for one in linecache.cache}
print(*sorted(name for name, module in sys.modules.items() if getattr(module, "__file__", None) in texts))
"""


class Door:
    """Opens a register as the program does, when it is told to."""

    def __init__(self, office: Office) -> None:
        self.office, self.may_go_on, self.was_asked = office, Event(), Event()
        self.fault: Exception | None = None

    def opening(self, told: Told) -> Office:
        """Waits as long as opening takes."""
        self.was_asked.set()
        assert self.may_go_on.wait(20)
        told(1, 2)
        if self.fault:
            raise self.fault
        return self.office


@pytest.fixture
def door(office: Office) -> Iterator[Door]:
    """The register with three pieces, not open yet."""
    made = Door(office)
    yield made
    made.may_go_on.set()


@pytest.fixture
def opening(qtbot: QtBot, door: Door, look: Look) -> Iterator[OpenDesk]:
    """The window while its register is being opened."""
    desk = OpenDesk(None, look)
    desk.open(door.opening, MachineSettings())
    desk.window.showNormal()
    desk.window.resize(1280, 720)
    qtbot.waitUntil(door.was_asked.is_set)
    yield desk
    door.may_go_on.set()
    desk.window.close_for_good()


def _opened(qtbot: QtBot, door: Door, desk: OpenDesk) -> DeskWindow:
    door.may_go_on.set()
    qtbot.waitUntil(lambda: desk.window.is_open)
    qtbot.waitUntil(lambda: desk.window.background.is_idle, timeout=60_000)  # every page is fetched
    return desk.window


def _modules(code: str) -> set[str]:
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return set(done.stdout.split())


def test_the_first_sight_waits_for_no_register_no_rules_and_no_page() -> None:
    loaded = _modules(_FIRST_SIGHT)
    assert not loaded & set(HEAVY)
    rooms = {name.split(".")[1] for name in loaded if name.startswith("inspector.")}
    assert not rooms & {"register", "rulebook", "paper", "mechanics", "units"}, "of a register nothing is known yet"
    assert {one for one in loaded if one.startswith("inspector.duties.")} == {"inspector.duties.machine_settings"}
    assert not {"inspector.desk.pages", "inspector.desk.gear_table", "inspector.desk.welcome"} & loaded


def test_no_page_is_imported_by_the_window_itself_once_the_rest_was_fetched() -> None:
    """Whatever a page is made of was fetched in the worker; making it then imports nothing of the desk any more."""
    loaded = _modules(_EVERY_PAGE)
    desk = Path(sys.modules["inspector.desk"].__file__ or "").parent
    files = {one.relative_to(desk).with_suffix("").as_posix() for one in desk.rglob("*.py")}
    wanted = {"inspector.desk." + one.replace("/", ".") for one in files if not one.endswith("__init__")}
    assert wanted <= loaded
    assert len(wanted) > 150


def test_no_module_that_the_window_imports_is_read_as_text_as_well() -> None:
    """Qt's import would; an opening window pays for that with a seventh of its time."""
    found = _modules(_READ_AS_TEXT)
    assert {one for one in found if one.startswith(("inspector.", "sqlalchemy"))} == set()


def test_while_it_is_opened_the_window_has_its_places_and_no_verdict(opening: OpenDesk) -> None:
    window = opening.window
    texts = [one.text() for one in window.findChildren(QLabel) if one.isVisible()]
    assert "Opening the register…" in texts
    assert not any(outcome_word(one) in text for one in Outcome for text in texts)
    assert not window.is_open and not hasattr(window, "pages")
    assert [one for one, made in window.rail.buttons.items() if made.isChecked()] == [NEEDS]
    assert all(made.isVisible() and made.isEnabled() for made in window.rail.buttons.values())
    assert "Opening the register…" in window.status.busy.text()


def test_nothing_moves_as_the_register_is_there(qtbot: QtBot, door: Door, opening: OpenDesk) -> None:
    window = opening.window
    parts = (window.rail, window.search, window.status, window.menuBar(), *window.rail.buttons.values())
    before = [(one.mapTo(window, one.rect().topLeft()), one.size()) for one in parts]
    size = window.size()
    _opened(qtbot, door, opening)
    window.notice.dismiss()  # what was looked after meanwhile may be told, and takes its room
    QApplication.processEvents()
    assert window.size() == size
    assert [(one.mapTo(window, one.rect().topLeft()), one.size()) for one in parts] == before


def test_the_list_is_read_before_the_first_page_is_asked_for(
    qtbot: QtBot, door: Door, opening: OpenDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from inspector.desk.needs.needs_page import NeedsPage

    rows: list[int] = []
    begin = NeedsPage.begin

    def noted(page: NeedsPage, what: object = None) -> None:
        rows.append(opening.window.pages.table.model.rowCount())
        begin(page, what)

    monkeypatch.setattr(NeedsPage, "begin", noted)
    window = _opened(qtbot, door, opening)
    assert rows == [3]
    assert window.pages.place_shown == NEEDS and not window.is_waiting


def test_what_was_asked_for_meanwhile_is_done_then(qtbot: QtBot, door: Door, opening: OpenDesk) -> None:
    opening.window.rail.buttons[FLEET].click()
    assert [one for one, made in opening.window.rail.buttons.items() if made.isChecked()] == [FLEET]
    window = _opened(qtbot, door, opening)
    assert window.pages.place_shown == FLEET, "and nobody is taken away from there"


def test_a_tag_that_was_scanned_meanwhile_is_opened_then(qtbot: QtBot, door: Door, opening: OpenDesk) -> None:
    QTest.keyClicks(opening.window.search, "sh-001")
    QTest.keyClick(opening.window.search, Qt.Key.Key_Return)
    window = _opened(qtbot, door, opening)
    assert window.pages.piece and window.pages.piece.tag == "SH-001"


def test_words_typed_meanwhile_narrow_the_list_then(qtbot: QtBot, door: Door, opening: OpenDesk) -> None:
    QTest.keyClicks(opening.window.search, "sh-")
    window = _opened(qtbot, door, opening)
    assert window.pages.place_shown == GEAR and window.search.text() == "sh-"
    qtbot.waitUntil(lambda: window.pages.table.model.rowCount() == 2)


def test_a_piece_that_is_named_is_shown_first(qtbot: QtBot, door: Door, look: Look) -> None:
    desk = OpenDesk(None, look)
    desk.open(door.opening, MachineSettings(), "HR-007")
    window = _opened(qtbot, door, desk)
    assert window.pages.piece and window.pages.piece.tag == "HR-007"
    window.close_for_good()


@pytest.mark.parametrize("fault", [Refused("register", "It is locked.", "Wait."), RuntimeError("a fault of ours")])
def test_what_keeps_it_from_being_opened_is_told_to_whoever_started_it(
    qtbot: QtBot, door: Door, opening: OpenDesk, fault: Exception
) -> None:
    door.fault = fault
    door.may_go_on.set()
    qtbot.waitUntil(lambda: opening.fault is not None)
    assert opening.fault is fault
    assert opening.window.isHidden() and not opening.window.is_open


def test_it_is_raised_when_the_window_is_gone(
    qtbot: QtBot, qapp: QApplication, door: Door, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    door.fault = Refused("register", "It is locked.", "Wait.")
    door.may_go_on.set()

    def stay() -> int:
        qtbot.waitUntil(
            lambda: not any(isinstance(one, DeskWindow) and one.isVisible() for one in qapp.topLevelWidgets())
        )
        return 0

    def never(*_: object) -> Office:
        raise AssertionError("no other register is asked for")

    monkeypatch.setattr(QApplication, "exec", staticmethod(stay))
    with pytest.raises(Refused, match="It is locked"):
        run_desk(door.opening, "", Start(Doors(never, never, never, never, never), str(tmp_path), ()))


def test_opening_can_be_stopped_and_then_nothing_is_shown(qtbot: QtBot, door: Door, opening: OpenDesk) -> None:
    opening.window.status._stop()
    door.may_go_on.set()
    qtbot.waitUntil(lambda: opening.fault is not None)
    assert isinstance(opening.fault, Refused) and "stopped" in opening.fault.why


def test_a_window_that_is_closed_meanwhile_ends_what_is_under_way(qtbot: QtBot, door: Door, opening: OpenDesk) -> None:
    door.may_go_on.set()
    opening.window.close()
    assert opening.window.isHidden() and not opening.window.is_open


def test_a_window_that_nobody_sees_opens_its_register_all_the_same(
    qtbot: QtBot, door: Door, look: Look, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = OpenDesk(None, look)
    monkeypatch.setattr(desk.window, "show", lambda: None)
    desk.open(door.opening, MachineSettings())
    window = _opened(qtbot, door, desk)
    assert window.is_open
    window.close_for_good()


def test_pages_are_made_when_somebody_goes_there(qtbot: QtBot, desk: DeskWindow) -> None:
    assert not [one.key for one in places() if one.key in desk.pages.places]
    desk.pages.go(Go(FLEET))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert [one.key for one in places() if one.key in desk.pages.places] == [FLEET]


def test_the_look_chosen_while_it_is_opened_stays(qtbot: QtBot, office: Office, look: Look, tmp_path: Path) -> None:
    machine = MachineSettings(tmp_path / "window.json")
    door = Door(replace(office, machine=machine))
    door.may_go_on.set()
    desk = OpenDesk(None, look)
    desk.open(door.opening, machine)
    window = _opened(qtbot, door, desk)
    window.showNormal()
    window.resize(970, 640)
    window.close()
    assert MachineSettings(tmp_path / "window.json").get("window"), "where it stood is remembered"
