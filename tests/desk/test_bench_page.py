"""The trainer's bench by keys: topics, dials, typed figures, faults at their field, a start from a piece, a handout."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot
from shiboken6 import isValid

from inspector.desk.background import Background
from inspector.desk.bench.dial_row import DialRow
from inspector.desk.bench.page import BenchPage
from inspector.desk.look import Look, Scheme, TextSize
from inspector.desk.notice import Notice
from inspector.desk.pen import Picture
from inspector.duties.bench import work_bench
from inspector.duties.office import Office
from inspector.units import System
from tests.desk.conftest import with_trips
from tests.desk.test_names import unnamed

Made = tuple[BenchPage, Background, Notice]


@pytest.fixture
def made(qtbot: QtBot, office: Office, look: Look) -> Iterator[Made]:
    """The page alone in a window."""
    background, notice = Background(), Notice()
    page = BenchPage(office, background, notice, look)
    look.dress(page)
    qtbot.addWidget(page)
    qtbot.addWidget(notice)
    page.resize(1280, 640)
    page.show()
    page.activateWindow()
    qtbot.waitUntil(page.isActiveWindow)
    page.begin()
    yield page, background, notice
    background.close()


@pytest.fixture
def page(made: Made) -> BenchPage:
    """The page."""
    return made[0]


def row(page: BenchPage, key: str) -> DialRow:
    """A dial by its key."""
    return next(one for one in page.rows if one.dial.key == key)


def retype(field: QWidget, text: str) -> None:
    """Type over what stands in a field."""
    QTest.keyClick(field, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(field, text)


def texts(page: BenchPage) -> str:
    """All that is seen in words, once everything new is shown."""
    QApplication.processEvents()
    return "\n".join(one.text() for one in page.findChildren(QLabel) if one.isVisibleTo(page))


def test_the_arrows_go_through_the_topics_and_each_has_its_dials_sum_and_picture(page: BenchPage) -> None:
    assert page.list.hasFocus()
    seen = []
    for _ in page.topics:
        worked = page.answer.worked
        assert worked and worked.topic == page.topic.key
        assert 2 <= len(page.rows) <= 5
        assert worked.means in texts(page) and worked.lines[0].formula in texts(page)
        assert page.answer.picture and page.answer.picture.drawing.describes == worked.means
        seen.append(worked.topic)
        QTest.keyClick(page.list, Qt.Key.Key_Down)
    assert seen == ["pin", "ball", "weld", "wall", "strap", "speed"]


def test_return_goes_to_the_first_dial_and_tab_from_dial_to_dial(page: BenchPage) -> None:
    QTest.keyClick(page.list, Qt.Key.Key_Return)
    first, second = page.rows[:2]
    assert first.slider.hasFocus()
    QTest.keyClick(first.slider, Qt.Key.Key_Tab)
    assert first.field.hasFocus()
    QTest.keyClick(first.field, Qt.Key.Key_Tab)
    assert second.slider.hasFocus()


def test_an_arrow_turns_a_dial_and_figure_sum_picture_and_sentence_go_with_it(page: BenchPage) -> None:
    pin = row(page, "pin")
    before = page.answer.worked
    assert before and page.answer.picture
    drawn = page.answer.picture.drawing
    QTest.keyClick(pin.slider, Qt.Key.Key_Right)
    after = page.answer.worked
    assert after and after.amount("pin_m") == pytest.approx(0.0165)
    assert pin.field.text() == "16.5 mm" and pin.slider.accessibleDescription() == "16.5 mm"
    assert after.amount("double_n") > before.amount("double_n")
    assert page.answer.picture.drawing != drawn and after.means in texts(page)
    assert f"{after.lines[-1].says}: {after.lines[-1].result}" in texts(page)
    assert "set here" in pin.came.text()


def test_page_up_and_down_turn_far_from_slider_and_field_alike(page: BenchPage) -> None:
    pin = row(page, "pin")
    QTest.keyClick(pin.slider, Qt.Key.Key_PageUp)
    assert pin.field.text() == "21 mm"
    pin.field.setFocus()
    QTest.keyClick(pin.field, Qt.Key.Key_PageDown)
    assert pin.field.text() == "16 mm"
    QTest.keyClick(pin.field, Qt.Key.Key_Up)
    assert pin.field.text() == "16.5 mm"


def test_a_typed_figure_counts_exactly_and_the_slider_goes_to_the_nearest_place(page: BenchPage) -> None:
    pin = row(page, "pin")
    retype(pin.field, "3/4 in")
    worked = page.answer.worked
    assert worked and worked.amount("pin_m") == pytest.approx(0.01905)
    assert pin.slider.value() == 38 and pin.field.text() == "3/4 in"


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("90 mm", "The sum is shown from 6 mm to 40 mm"),
        ("5 mm", "The sum is shown from 6 mm to 40 mm"),
        ("20", "The unit is missing"),
        ("thick", "does not begin with a number"),
        ("", "Nothing is typed here"),
    ],
)
def test_a_bad_figure_says_its_fault_at_the_field_and_is_never_changed(page: BenchPage, typed: str, why: str) -> None:
    pin = row(page, "pin")
    before = page.answer.worked
    retype(pin.field, typed) if typed else pin.field.clear()
    if not typed:
        QTest.keyClicks(pin.field, "1")
        QTest.keyClick(pin.field, Qt.Key.Key_Backspace)
        before = page.answer.worked
    QTest.keyClick(pin.field, Qt.Key.Key_Return)
    assert pin.field.text() == typed
    assert why in pin.field.fault.text() and pin.field.fault.isVisible()
    assert page.answer.worked == before
    assert "A figure on the left cannot be taken" in texts(page)
    retype(pin.field, "20 mm")
    assert not pin.field.is_faulty and "cannot be taken" not in texts(page)
    assert page.answer.worked != before


def test_a_wall_thicker_than_new_is_told_at_its_dial_until_both_go_together(page: BenchPage) -> None:
    page.list.setCurrentRow(3)
    new, now = row(page, "new"), row(page, "now")
    retype(new.field, "3 mm")
    assert now.field.is_faulty and "A wall does not grow" in now.field.fault.text()
    retype(now.field, "2.9 mm")
    worked = page.answer.worked
    assert not now.field.is_faulty and worked
    assert (worked.amount("new_m"), worked.amount("now_m")) == pytest.approx((0.003, 0.0029))


def test_turning_another_dial_does_not_hide_that_a_figure_could_not_be_taken(page: BenchPage) -> None:
    retype(row(page, "pin").field, "90 mm")
    QTest.keyClick(row(page, "play").slider, Qt.Key.Key_Right)
    worked = page.answer.worked
    assert worked and worked.amount("play_m") == pytest.approx(0.0015) and worked.amount("pin_m") == 0.015875
    assert "cannot be taken" in texts(page) and row(page, "pin").field.text() == "90 mm"


def test_leaving_a_field_untouched_sets_nothing(page: BenchPage) -> None:
    for one in page.rows:
        one.field.setFocus()
        QTest.keyClick(one.field, Qt.Key.Key_Tab)
    assert page.given == () and all("assumed" in one.came.text() for one in page.rows)


def test_what_was_set_stays_while_one_looks_at_another_topic_and_goes_back_at_a_button(page: BenchPage) -> None:
    retype(row(page, "pin").field, "20 mm")
    QTest.keyClick(page.list, Qt.Key.Key_Down)
    QTest.keyClick(page.list, Qt.Key.Key_Up)
    assert row(page, "pin").field.text() == "20 mm"
    QTest.mouseClick(page.reset_button, Qt.MouseButton.LeftButton)
    assert row(page, "pin").field.text() == "15.88 mm"
    worked = page.answer.worked
    assert worked and worked.amount("pin_m") == 0.015875


def test_cautions_and_trade_facts_stand_on_the_page(page: BenchPage) -> None:
    for number in range(len(page.topics)):
        page.list.setCurrentRow(number)
        shown = texts(page)
        assert "Never recover from a tow ball, a ball mount or a bare receiver" in shown
        assert "a solid insert held by its pin in double shear" in shown and "Stay clear of a loaded line" in shown
        assert "common practice, no published source" in shown.lower()


def begun(qtbot: QtBot, made: Made, tag: str) -> BenchPage:
    """The page begun from a piece."""
    page, background, _ = made
    page.begin(tag)
    qtbot.waitUntil(lambda: background.is_idle)
    return page


def test_it_begins_from_a_receiver_with_its_thinnest_reading_in_words(qtbot: QtBot, made: Made) -> None:
    page = begun(qtbot, made, "HR-007")
    assert page.topic.key == "wall"
    assert "from HR-007: wall 2.2 mm read on 20 Nov 2026" in row(page, "now").came.text()
    assert row(page, "outside").field.text() == "50 mm"
    reckoned = row(page, "now").field.text()
    assert f"{reckoned} to reckon with today" in row(page, "now").came.text()
    assert "Begun from HR-007." in texts(page)
    with qtbot.waitSignal(page.opened) as heard:
        QTest.mouseClick(page.open_button, Qt.MouseButton.LeftButton)
    assert heard.args == ["HR-007"]


def test_it_begins_from_a_vehicle(qtbot: QtBot, made: Made, office: Office) -> None:
    with_trips(office, 1)
    page = begun(qtbot, made, "V1")
    assert page.topic.key == "strap" and row(page, "mass").field.text() == "3200 kg"
    assert "the usual figure is assumed: Breaking strength of the strap" in texts(page)


def test_a_tag_that_nobody_knows_is_told_and_the_bench_stands_as_it_stood(qtbot: QtBot, made: Made) -> None:
    page = begun(qtbot, made, "XX-9")
    assert "XX-9" in made[2].text and page.topic.key == "pin"


def test_letters_go_to_the_search_from_list_and_slider_and_not_from_a_field(qtbot: QtBot, page: BenchPage) -> None:
    for place in (page.list, row(page, "pin").slider):
        place.setFocus()
        with qtbot.waitSignal(page.typed) as heard:
            QTest.keyClicks(place, "s")
        assert heard.args == ["s"]
    with qtbot.assertNotEmitted(page.typed):
        retype(row(page, "pin").field, "17 mm")


def test_back_goes_from_a_dial_to_the_topics_and_no_further(page: BenchPage) -> None:
    row(page, "pin").field.setFocus()
    assert page.back() and page.list.hasFocus()
    assert not page.back()


def test_the_handout_is_printed_as_the_dials_stand(qtbot: QtBot, made: Made, office: Office) -> None:
    page, background, notice = made
    retype(row(page, "pin").field, "20 mm")
    page.print_button.setFocus()
    QTest.keyClick(page.print_button, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: background.is_idle and not notice.isHidden())
    (paper,) = Path(office.out_tray).glob("T-*.pdf")
    assert "The handout is printed." in notice.text and str(paper) in notice.text
    assert page.answer.worked == work_bench(office, "pin", page.given)


def test_with_a_marked_figure_nothing_is_printed_and_the_keys_go_there(made: Made, office: Office) -> None:
    page, background, _ = made
    retype(row(page, "pin").field, "90 mm")
    QTest.mouseClick(page.print_button, Qt.MouseButton.LeftButton)
    assert background.is_idle and not list(Path(office.out_tray).glob("T-*.pdf"))
    assert row(page, "pin").field.hasFocus() and row(page, "pin").field.is_faulty


def test_the_dials_of_a_topic_that_was_left_are_let_go_of(qtbot: QtBot, page: BenchPage, look: Look) -> None:
    left = page.rows
    page.list.setCurrentRow(3)
    qtbot.waitUntil(lambda: not any(isValid(one) for one in left))
    look.set_text(TextSize.LARGE)  # a dial that still listened would fail here
    width = row(page, "now").field.width()
    look.set_text(TextSize.USUAL)
    assert row(page, "now").field.width() < width


def test_every_control_has_a_name_in_every_topic(page: BenchPage) -> None:
    for number in range(len(page.topics)):
        page.list.setCurrentRow(number)
        QApplication.processEvents()
        assert unnamed(page) == []
        assert all(one.slider.accessibleName() for one in page.rows)


def test_a_club_in_inches_turns_in_round_inches(qtbot: QtBot, office: Office, look: Look) -> None:
    background = Background()
    page = BenchPage(replace(office, system=System.IMPERIAL), background, Notice(), look)
    qtbot.addWidget(page)
    page.show()
    pin = row(page, "pin")
    assert pin.field.text() == "5/8 in"
    QTest.keyClick(pin.slider, Qt.Key.Key_Right)
    assert pin.field.text() == "0.64 in"
    worked = page.answer.worked
    assert worked and worked.amount("pin_m") == pytest.approx(0.64 * 0.0254)
    background.close()


@pytest.mark.parametrize("text", [TextSize.USUAL, TextSize.LARGE])
def test_no_words_are_cut_off(page: BenchPage, look: Look, text: TextSize) -> None:
    wrong: list[str] = []
    for scheme in (Scheme.LIGHT, Scheme.DARK):
        look.scheme = scheme
        look.set_text(text)
        page.resize(1280, 620)
        for number in range(len(page.topics)):
            page.list.setCurrentRow(number)
            _grabbed(page)
            wrong += [f"{scheme}, topic {number}: {one}" for one in _cut(page)]
    assert not wrong, "\n".join(wrong)


def _grabbed(page: BenchPage) -> None:
    """Everything new is shown and has its room."""
    for _ in range(3):
        QApplication.processEvents()
    page.grab()


def _cut(page: BenchPage) -> list[str]:
    """Labels lower or narrower than their words need, and pictures lower than their shape."""
    found = []
    for label in page.findChildren(QLabel):
        if label.isVisibleTo(page) and label.text():
            needs = label.heightForWidth(label.width()) if label.wordWrap() else label.sizeHint().height()
            if label.height() < needs or (not label.wordWrap() and label.width() < label.sizeHint().width()):
                found.append(label.text())
    for picture in page.findChildren(Picture):
        if picture.height() < picture.heightForWidth(picture.width()):
            found.append(picture.drawing.title)
    for one in page.rows:
        text = one.field.fontMetrics().horizontalAdvance(one.field.text())
        if text > one.field.width() - 2 * 8:
            found.append(one.field.text())
    return found
