"""Two windows on one register: what one writes the other shows, and never over what somebody is writing there."""

from collections.abc import Callable
from pathlib import Path

from msgspec.structs import replace
from pytestqt.qtbot import QtBot

from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.look import Look
from inspector.desk.open_desk import OpenDesk
from inspector.desk.window import DeskWindow
from inspector.duties.adopt_rulebook import adopt_rulebook
from inspector.duties.book_in import book_in
from inspector.duties.give_opinion import doubt
from inspector.duties.in_step import begun, gone_on
from inspector.duties.office import Office
from inspector.gear.outcome import Outcome
from inspector.register.book import open_book
from tests.desk.conftest import shackle
from tests.desk.test_evening import shown_texts
from tests.duties.test_adopting import TIGHT


def _another(office: Office, tmp_path: Path) -> Office:
    return replace(office, book=open_book(tmp_path / "register.db"))


def _look(qtbot: QtBot, desk: DeskWindow) -> None:
    qtbot.waitUntil(lambda: desk.background.is_idle)
    desk.in_step.look()
    qtbot.waitUntil(lambda: desk.background.is_idle)


def test_what_another_window_wrote_is_shown_on_the_record(
    qtbot: QtBot, desk: DeskWindow, office: Office, tmp_path: Path
) -> None:
    other = _another(office, tmp_path)
    desk.pages.open_tag("SH-001")
    _look(qtbot, desk)
    doubt(other, "SH-001", "the thread feels rough", office.officer.name)
    _look(qtbot, desk)

    assert desk.pages.piece and desk.pages.piece.judged.verdict.outcome is Outcome.HOLD
    qtbot.waitUntil(lambda: "the thread feels rough" in shown_texts(desk.pages.record))  # built in a later turn
    other.book.close()


def test_own_deeds_and_quiet_are_no_change(qtbot: QtBot, office: Office, tmp_path: Path) -> None:
    other = _another(office, tmp_path)
    stand = begun(office)
    book_in(office, shackle("SH-090"))
    own = gone_on(office, stand)
    assert own.line == stand.line + 1 and not own.others
    assert not gone_on(office, own).others
    with office.book.together():
        book_in(office, shackle("SH-091"))
    assert not gone_on(office, own).others

    book_in(other, shackle("SH-092"))
    assert gone_on(office, own).others
    other.book.close()


def test_what_is_being_written_here_stays(
    qtbot: QtBot, desk: DeskWindow, form_of: Callable[[str], InspectForm], office: Office, tmp_path: Path
) -> None:
    other = _another(office, tmp_path)
    form = form_of("SH-002")
    form.boxes[0].fields[0].setText("18.7 mm")
    _look(qtbot, desk)
    book_in(other, shackle("SH-093"))
    _look(qtbot, desk)

    assert desk.pages.form is form and form.boxes[0].fields[0].text() == "18.7 mm"
    assert "Another window wrote" in desk.status.facts.text()
    desk.pages.table.refresh()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert "Another window wrote" in desk.status.facts.text(), "the list behind the form tells no facts over it"
    other.book.close()


def test_a_rulebook_that_another_window_adopted_holds_here_too(
    qtbot: QtBot, office: Office, look: Look, tmp_path: Path
) -> None:
    other = _another(office, tmp_path)
    desk = OpenDesk(office, look)
    desk.show()
    before = desk.window
    _look(qtbot, before)
    adopt_rulebook(other, TIGHT, "ours.toml")
    _look(qtbot, before)
    qtbot.waitUntil(lambda: desk.window is not before)
    qtbot.waitUntil(lambda: desk.window.background.is_idle)

    assert desk.window._office.rules.club and desk.window._office.rules.club.title == "Ours"
    desk.window.close_for_good()
    other.book.close()
