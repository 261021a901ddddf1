"""The rulebook in the window: found and read; the club's limits written, checked, compared, only then adopted."""

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from inspector.desk.look import Look
from inspector.desk.place import Go
from inspector.desk.places import RULES
from inspector.desk.rules.club_book import ClubBook
from inspector.desk.rules.rule_words import rule_part
from inspector.desk.rules.rules_page import RulesPage
from inspector.desk.window import DeskWindow
from inspector.duties.adopt_rulebook import adopt_rulebook, check_rulebook
from inspector.duties.club_draft import club_text, weighed, with_limit, with_profile
from inspector.duties.office import Office
from inspector.duties.rulebook_in_force import in_force
from inspector.duties.tell_rules import show_rule
from inspector.gear.rulebooks import Direction
from inspector.refused import Refused
from tests.desk.deed_forms import begin_anew, faults, keep, write

_STRICTER = 'club = "Dune and Ridge Touring Club"\ntitle = "Our own limits"\nfrom = 2026-11-25\nwhy = "salt"\n'


@pytest.fixture
def page(qtbot: QtBot, desk: DeskWindow) -> RulesPage:
    """The page of the rules, open."""
    desk.pages.go(Go(RULES))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    shown = desk.pages.currentWidget()
    assert isinstance(shown, RulesPage)
    return shown


def _idle(qtbot: QtBot, desk: DeskWindow) -> None:
    qtbot.waitUntil(lambda: desk.background.is_idle)


def _texts(page: RulesPage) -> str:
    return "\n".join(one.text() for one in page.shown.findChildren(QLabel))


def test_a_rule_is_found_by_its_words_and_read_with_its_source(page: RulesPage, office: Office) -> None:
    assert page.list.count() == len(office.rules.rules)
    QTest.keyClicks(page.line, "shackle-body-worn")
    assert page.list.count() < 5
    assert page.rule == "shackle-body-worn"
    told = _texts(page)
    for word in ("Source", "Certainty", "Examples", "Bow shackle"):
        assert word in told


def test_only_rules_of_a_kind_are_listed_and_nothing_found_is_said(page: RulesPage) -> None:
    every = page.list.count()
    page.kind.choose("bow_shackle")
    assert 0 < page.list.count() < every
    QTest.keyClicks(page.line, "no such word")
    assert page.list.count() == 0
    assert "No rule" in page.count.text()


def test_a_text_with_faults_is_told_by_line_and_cannot_be_adopted(page: RulesPage) -> None:
    page.turn()
    page.club.show_text(_STRICTER + '[[limit]]\nrule = "no-such-rule"\nlimit = "6 %"\n')
    page.club.check.emit(page.club.text.toPlainText())
    assert "cannot" in page.club.head.text() or "Nothing can be adopted" in page.club.head.text()
    assert "line" in page.club.told.text()
    assert not page.club.adopt_button.isEnabled()


def test_a_limit_is_put_in_by_a_form_compared_and_adopted(
    qtbot: QtBot, desk: DeskWindow, page: RulesPage, office: Office
) -> None:
    page.turn()
    page.club.show_text(_STRICTER)
    page._add()
    _idle(qtbot, desk)
    form = desk.pages.deed_page
    form.box("rule").give("shackle-body-worn")
    form.box("limit").give("6 %")
    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    _idle(qtbot, desk)
    assert 'rule = "shackle-body-worn"' in page.club.text.toPlainText()

    assert not page.club.adopt_button.isEnabled()  # nothing is adopted that was not compared
    page.club.compare.emit(page.club.text.toPlainText())
    _idle(qtbot, desk)
    assert page.club.adopt_button.isEnabled(), page.club.told.text()

    offices: list[Office] = []
    desk.seated.connect(offices.append)
    page.club.adopt_button.click()
    _idle(qtbot, desk)
    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: bool(offices))

    assert offices[0].rules.hash == in_force(office).rules.hash != office.rules.hash
    assert "shackle-body-worn" in club_text(office)


def test_a_changed_text_must_be_compared_again(qtbot: QtBot, desk: DeskWindow, page: RulesPage) -> None:
    page.turn()
    page.club.show_text(with_limit(_STRICTER, "shackle-body-worn", "6 %", ""))
    page.club.compare.emit(page.club.text.toPlainText())
    _idle(qtbot, desk)
    assert page.club.adopt_button.isEnabled()

    page.club.text.appendPlainText("# a word more")
    assert not page.club.adopt_button.isEnabled()


def test_what_was_written_stands_there_again(qtbot: QtBot, desk: DeskWindow, page: RulesPage, tmp_path: Path) -> None:
    page.turn()
    page.club.show_text(_STRICTER + "# not done yet\n")
    page.stop()
    _idle(qtbot, desk)
    page.club.show_text("")
    page.begin()
    _idle(qtbot, desk)
    assert "not done yet" in page.club.text.toPlainText()

    file = tmp_path / "ours.toml"
    file.write_text("# from a file\n", encoding="utf-8")
    page.take_file(file)
    _idle(qtbot, desk)
    assert page.club.text.toPlainText() == "# from a file\n"


def test_a_second_limit_for_one_rule_is_refused() -> None:
    text = with_limit(_STRICTER, "shackle-body-worn", "6 %", 'said "so"')
    assert '"said \\"so\\""' in text
    with pytest.raises(Refused) as refused:
        with_limit(text, "shackle-body-worn", "5 %", "")
    assert refused.value.field == "rule"


def test_what_no_club_may_set_is_refused_at_its_field_with_the_bound(
    qtbot: QtBot, desk: DeskWindow, page: RulesPage
) -> None:
    page.turn()
    page.club.show_text(_STRICTER)
    wrong: list[str] = []
    for rule, limit, why, box, says in (
        ("shackle-body-worn", "60 %", "we like it so", "limit", "stands in print"),
        ("shackle-body-worn", "6 mm", "", "limit", "a share such as"),
        ("shackle-body-wron", "6 %", "", "rule", "shackle-body-worn"),
        ("shackle-body-worn", "9 %", "", "why", "wants its reason"),
        ("required_wall_fraction", "10 %", "we like it so", "limit", "a quarter"),
    ):
        page._add()
        _idle(qtbot, desk)
        form = desk.pages.deed_page
        write(form, rule=rule, limit=limit, why=why)
        keep(qtbot, desk)
        if says not in faults(form).get(box, "nothing") or page.club.text.toPlainText() != _STRICTER:
            wrong.append(f"{rule} {limit}: {faults(form)}, not “{says}” at {box}; {page.club.text.toPlainText()}")
        begin_anew(form)
    assert not wrong, "\n".join(wrong)


def test_a_setting_is_put_in_by_the_same_form_and_its_direction_is_told() -> None:
    text = with_limit(_STRICTER, "required_wall_fraction", "85 %", "")
    assert '[[setting]]\nkey = "required_wall_fraction"\nvalue = "85 %"' in text
    assert weighed("required_wall_fraction", "85 %", "").direction is Direction.STRICTER
    assert weighed("required_wall_fraction", "70 %", "new steel").direction is Direction.LOOSER


def test_the_button_says_when_it_is_the_packaged_rulebook_that_is_adopted(
    qtbot: QtBot, desk: DeskWindow, page: RulesPage
) -> None:
    page.turn()
    page.club.show_text(_STRICTER)
    page.club.drop.emit()
    _idle(qtbot, desk)
    assert page.club.adopt_button.text() == "Adopt the packaged rulebook"

    page.club.text.appendPlainText("# a word")
    assert page.club.adopt_button.text() == "Adopt"


def test_the_day_that_the_text_names_stands_in_the_form(qtbot: QtBot, desk: DeskWindow, page: RulesPage) -> None:
    page.turn()
    page.club.show_text(with_limit(_STRICTER.replace("2026-11-25", "2027-02-01"), "shackle-body-worn", "6 %", ""))
    page.club.compare.emit(page.club.text.toPlainText())
    _idle(qtbot, desk)
    page.club.adopt_button.click()
    _idle(qtbot, desk)
    assert desk.pages.deed_page.box("on").value() == date(2027, 2, 1)


def test_a_file_that_cannot_be_read_whole_changes_nothing(
    qtbot: QtBot, desk: DeskWindow, page: RulesPage, tmp_path: Path
) -> None:
    page.club.show_text(_STRICTER)
    file = tmp_path / "ours.toml"
    file.write_bytes(b'club = "\xff"\n')
    page.take_file(file)
    _idle(qtbot, desk)
    assert page.club.text.toPlainText() == _STRICTER
    assert "UTF-8" in desk.notice.text


def test_an_example_answered_otherwise_by_the_club_says_what_the_packaged_rulebook_says(
    qapp: object, office: Office
) -> None:
    adopt_rulebook(office, with_limit(_STRICTER, "shackle-body-worn", "6 %", "").encode(), "ours")
    part = rule_part(show_rule(in_force(office), "shackle-body-worn"))
    told = "\n".join(one.text() for one in part.findChildren(QLabel))
    assert "Stricter by the club" in told
    assert "; packaged rulebook: fit" in told


def test_a_packaged_set_is_read_with_its_source_and_put_into_the_text(
    qtbot: QtBot, desk: DeskWindow, page: RulesPage
) -> None:
    page.turn()
    page.club.show_text(with_limit(_STRICTER, "required_wall_fraction", "85 %", ""))
    page.club.take.emit()
    _idle(qtbot, desk)
    form = desk.pages.deed_page
    assert any("DGUV" in one.text() for one in form.findChildren(QLabel))
    form.box("set").give("hook-opening-ten-percent")
    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    _idle(qtbot, desk)

    found = check_rulebook(page.club.text.toPlainText().encode(), "ours")
    assert not found.faults
    assert {one.about for one in found.changes} == {"hook-opened", "required_wall_fraction"}


def test_a_second_set_joins_the_first_and_the_same_one_is_refused() -> None:
    text = with_profile(with_profile(_STRICTER, "hook-opening-ten-percent"), "warm-water-salt-rates")
    assert 'profile = ["hook-opening-ten-percent", "warm-water-salt-rates"]' in text
    with pytest.raises(Refused):
        with_profile(text, "warm-water-salt-rates")


def test_nothing_is_kept_and_nothing_can_be_typed_before_the_text_is_read(qtbot: QtBot, look: Look) -> None:
    book = ClubBook(look)
    qtbot.addWidget(book)
    kept: list[str] = []
    book.written.connect(kept.append)
    QTest.keyClicks(book.text, "x")
    book.flush()
    assert kept == []

    book.show_text(_STRICTER)
    QTest.keyClicks(book.text, "#")
    book.flush()
    assert kept == ["#" + _STRICTER]
