"""What leaves the register by the window: the list for a spreadsheet, an archive, the signing key, a signed bundle."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QLabel, QMenu
from pytestqt.qtbot import QtBot

from inspector.app import _restore
from inspector.desk.deeds import exchange
from inspector.desk.form.values import Values
from inspector.desk.place import Go
from inspector.desk.places import REGISTER
from inspector.desk.window import DeskWindow
from inspector.duties.archive_register import archive, verify_archive
from inspector.duties.keep_key import keys, make_key
from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.refused import Refused
from tests.desk.deed_forms import faults, form_of_deed, keep, write
from tests.register.archives import SECRET, on_machine


@pytest.fixture
def office(office: Office, tmp_path: Path) -> Office:
    """The register on a machine with a settings folder."""
    return on_machine(office, tmp_path)


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """A folder to write into."""
    (tmp_path / "out").mkdir()
    return tmp_path / "out"


def press(desk: DeskWindow, menu: str, entry: str) -> None:
    """Set an entry of a menu off."""
    top = next(one for one in desk.menuBar().actions() if one.text().replace("&", "") == menu)
    below = top.menu()
    assert isinstance(below, QMenu)
    next(one for one in below.actions() if one.text().replace("&", "") == entry).trigger()


def test_the_list_as_it_is_shown_is_written_from_the_menu(qtbot: QtBot, desk: DeskWindow, out: Path) -> None:
    press(desk, "Register", "Export the list for a spreadsheet")
    qtbot.waitUntil(lambda: bool(desk.pages.deed_page.boxes))
    page = desk.pages.deed_page
    assert [box.asked.key for box in page.boxes] == ["form", "folder", "name"]
    write(page, folder=str(out))
    keep(qtbot, desk)
    qtbot.waitUntil(lambda: (out / "gear.xlsx").exists())
    assert str(out / "gear.xlsx") in desk.notice.text


def test_chosen_pieces_are_written_and_a_file_that_is_there_is_said_at_its_name(
    qtbot: QtBot, desk: DeskWindow, out: Path
) -> None:
    pieces = exchange.ToExport(("SH-001", "SH-002", "HR-007"), ("SH-001", "SH-002"))
    page = form_of_deed(qtbot, desk, exchange.export(pieces), pieces)
    (out / "gear.csv").write_text("mine", "utf-8")
    write(page, pieces="the 2 pieces that are chosen", form="a plain table of the gear (CSV)", folder=str(out))
    keep(qtbot, desk)
    assert "is there already" in faults(page)["name"]
    assert (out / "gear.csv").read_text("utf-8") == "mine"
    write(page, name="two")
    keep(qtbot, desk)
    qtbot.waitUntil(lambda: (out / "two.csv").exists())
    assert [line.split(",")[0] for line in (out / "two.csv").read_text("utf-8-sig").splitlines()][1:] == [
        '"SH-001"',
        '"SH-002"',
    ]


def test_an_archive_is_written_signed_and_opened_again(
    qtbot: QtBot, desk: DeskWindow, office: Office, out: Path
) -> None:
    key = make_key(office, SECRET).fingerprint
    page = form_of_deed(qtbot, desk, exchange.write_archive(), None)
    write(page, folder=str(out), name="a", signed="yes", passphrase=SECRET + "x")
    keep(qtbot, desk)
    assert "not that of the signing key" in faults(page)["passphrase"]
    write(page, passphrase=SECRET)
    keep(qtbot, desk)
    qtbot.waitUntil(lambda: (out / "a.zip").exists() and desk.background.is_idle, timeout=20_000)
    assert verify_archive(out / "a.zip", key=key).faults == ()
    assert "Contact details and passphrases are not in it." in desk.notice.text
    back = _restore(out / "new", out / "a.zip", "")
    assert [row.tag for row in list_gear(back).rows] == [row.tag for row in list_gear(office).rows]
    back.book.close()


def test_an_archive_is_looked_through(qtbot: QtBot, desk: DeskWindow, office: Office, out: Path) -> None:
    file = archive(office, out / "a.zip").file
    page = form_of_deed(qtbot, desk, exchange.look_through(), None)
    write(page, file=str(file), head="beef")
    keep(qtbot, desk)
    assert "at least 8 signs" in faults(page)["head"]
    write(page, head="0123456789ab")
    keep(qtbot, desk)
    qtbot.waitUntil(lambda: "1 fault found." in desk.notice.text, timeout=20_000)


def test_a_key_is_made_and_told_on_the_page_of_the_register(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    page = form_of_deed(qtbot, desk, exchange.new_key(), None)
    write(page, passphrase=SECRET, again="another one or two")
    keep(qtbot, desk)
    assert "not the same" in faults(page)["again"] and not keys(office).here
    write(page, again=SECRET)
    keep(qtbot, desk)
    qtbot.waitUntil(lambda: bool(keys(office).here) and desk.background.is_idle)
    assert "BEGIN PUBLIC KEY" in desk.notice.text
    desk.pages.go(Go(REGISTER))
    qtbot.waitUntil(
        lambda: any("archives and bundles can be signed" in one.text() for one in desk.findChildren(QLabel))
    )


def test_nothing_listed_and_a_strange_key_are_refused(office: Office, out: Path) -> None:
    nothing = exchange.ToExport((), ())
    with pytest.raises(Refused, match="Nothing is listed"):
        exchange.export(nothing).do(office, nothing, Values({"form": "xlsx", "folder": str(out), "name": "a"}))
    with pytest.raises(Refused, match="no signing key"):
        exchange.known_key().do(office, None, Values({"passphrase": SECRET}))
    assert list(out.iterdir()) == []
