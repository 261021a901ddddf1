"""The program in German: its window has room for it, its commands and papers speak it, what is shown is read again."""

from collections.abc import Iterator
from gettext import GNUTranslations, NullTranslations
from pathlib import Path

import pytest
from msgspec.structs import replace
from pytestqt.qtbot import QtBot

from inspector import app
from inspector.desk.gear_list.columns import DUE
from inspector.desk.gear_view import GearView
from inspector.desk.look import GRID, Look
from inspector.desk.place import Go
from inspector.desk.places import places
from inspector.desk.window import DeskWindow
from inspector.drawings.rig_chain import rig_chain
from inspector.drawings.shapes import Text
from inspector.duties.look_up import open_item
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.retire_item import print_notice
from inspector.duties.tell_piece import piece_today
from inspector.duties.typed_day import read_day
from inspector.duties.words_of_then import booked_facts, words_of_then
from inspector.language import show_day, use_catalogue
from inspector.rulebook.load import packaged
from tests.desk import conftest as small
from tests.desk.cut_off import cut_headings, cut_off
from tests.drawings import rigs
from tests.fresh import copied
from tests.language.catalogue import place_of
from tests.language.conftest import spoken, spoken_club
from tests.language.test_window import settled
from tests.paper.reading import opened as opened_pdf


@pytest.fixture(scope="module")
def catalogue() -> GNUTranslations:
    """The German texts, read once."""
    with place_of("de").with_suffix(".mo").open("rb") as stream:
        return GNUTranslations(stream)


@pytest.fixture
def german(catalogue: GNUTranslations) -> Iterator[None]:
    """German is spoken."""
    with spoken(catalogue):
        yield


@pytest.fixture(scope="module")
def club_once(catalogue: GNUTranslations, tmp_path_factory: pytest.TempPathFactory) -> Office:
    """The small club, judged in German."""
    with spoken(catalogue):
        return spoken_club(tmp_path_factory.mktemp("german"))


@pytest.fixture
def club(club_once: Office, german: None, tmp_path: Path) -> Iterator[Office]:
    """A copy of it."""
    office = copied(club_once, tmp_path)
    yield office
    office.book.close()


def _text(file: Path) -> str:
    return " ".join(" ".join(page.get_textpage().get_text_range() for page in opened_pdf(file.read_bytes())).split())


def test_every_place_has_room_for_it(qtbot: QtBot, qapp: object, club: Office) -> None:
    """All in one window: a register and a window for each would take half a minute."""
    desk = DeskWindow(club, Look(tuple(sorted(small.FONTS.glob("*.ttf"), reverse=True))))
    qtbot.addWidget(desk)
    desk.resize(1280, 720)
    desk.show()
    cut: dict[str, list[str]] = {}
    for entry in places():
        desk.pages.go(Go(entry.key, None))
        settled(qtbot, desk)
        cut[entry.key] = [*cut_off(desk), *cut_headings(desk)]

    assert (desk.width(), desk.height()) == (1280, 720)
    assert {key: found for key, found in cut.items() if found} == {}
    listed = desk.findChild(GearView)
    assert listed and listed.fontMetrics().horizontalAdvance(
        "30. Dez 2025, überfällig"
    ) + 2 * GRID < listed.columnWidth(DUE)
    desk.close_for_good()


def test_verdicts_and_papers_speak_it(club: Office) -> None:
    found = open_item(club, "HR-007")
    assert "Vierkantaufnahme" in found.dossier.kind.name
    assert any("Wand" in one.sentence for one in found.explanation.reasons)
    notice = _text(print_notice(club, "HR-007").path)
    assert "Aussonderungsbescheid" in notice and "AUSGESONDERT" in notice
    assert "Retirement notice" not in notice
    assert "Fahrt" in _text(print_trip_sheet(club, "next").path)


def test_a_verdict_is_the_same_in_every_language(club: Office) -> None:
    spoken = [open_item(club, tag).verdict for tag in ("SH-001", "SH-002", "HR-007")]
    use_catalogue(NullTranslations())
    assert [open_item(club, tag).verdict for tag in ("SH-001", "SH-002", "HR-007")] == spoken


@pytest.mark.usefixtures("german")
def test_a_day_is_read_as_it_is_shown(club: Office) -> None:
    for month in range(1, 13):
        day = club.today.replace(month=month, day=3)
        assert read_day(show_day(day), "day") == day
    assert read_day("gestern", "day", club.today) < club.today


def test_the_machine_that_is_set_to_it_speaks_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Commands, their help, refusals and click's own words, whatever the computer itself speaks."""
    monkeypatch.setattr("platformdirs.user_config_dir", lambda *_, **__: str(tmp_path))
    monkeypatch.setenv("LANGUAGE", "en")
    MachineSettings(tmp_path / "window.json").speak("de")
    try:
        assert app.main(["--help"]) == 0
        assert "Aufruf" in capsys.readouterr().out
        assert app.main(["--register", str(tmp_path / "club"), "show", "SH-01"]) == 2
        refusal = capsys.readouterr()
        assert "Register" in refusal.out + refusal.err and "empty" not in refusal.out + refusal.err
    finally:
        use_catalogue(NullTranslations())


@pytest.mark.usefixtures("german")
def test_the_drawing_of_a_rig_says_that_a_vehicle_pulls_and_not_how_often() -> None:
    drawn = rig_chain(rigs.plain())
    told = {shape.text for shape in drawn.shapes if isinstance(shape, Text)}
    assert "zieht" in told and "Züge" not in told


def test_a_verdict_judged_in_english_keeps_its_words_and_the_record_says_so_in_german(
    tmp_path: Path, catalogue: GNUTranslations
) -> None:
    """What is not the verdict's own speaks German: what the piece was booked with, on record, command and voucher."""
    (tmp_path / "english").mkdir()
    office = spoken_club(tmp_path / "english")
    (tmp_path / "copy").mkdir()
    office = copied(office, tmp_path / "copy")
    english = open_item(office, "HR-007")
    assert words_of_then(english) == "" and booked_facts(english) == english.explanation.piece
    with spoken(catalogue):
        office = replace(office, rules=packaged())  # the law speaks when it is read
        found = open_item(office, "HR-007")
        told = {one.label: one.text for one in piece_today(office, found)}
        notice = _text(print_notice(office, "HR-007").path)
    office.book.close()

    assert found.explanation == english.explanation, "the stored words stand"
    assert "Sprache" in told["Wortlaut"] and told["Art"] == "Vierkantaufnahme"
    assert not {"Tag", "Kind", "Marked", "As new"} & set(told)
    assert "Booked in" not in notice and "Aufgenommen" in notice
