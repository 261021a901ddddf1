"""The check before a trip in the window: by keyboard, nothing answered beforehand, nothing lost, the result at once."""

from collections.abc import Callable
from datetime import date, timedelta
from functools import partial

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit, QPushButton, QScrollArea, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.form.form_page import FormPage
from inspector.desk.inspect.grade_row import grade_word
from inspector.desk.kit_piece import PieceForm
from inspector.desk.kit_question import Question
from inspector.desk.look import TextSize
from inspector.desk.place import Go
from inspector.desk.places import GEAR
from inspector.desk.trailhead import Trailhead
from inspector.desk.window import DeskWindow
from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.check_kit import kit_check
from inspector.duties.check_piece import check_piece
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.gear.inspection import Answer as InspectionAnswer
from inspector.gear.inspection import InspectionKind
from inspector.gear.kind import Grade
from inspector.gear.kit_check import Seen
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.trip import Ground, Trip
from tests.desk.conftest import looked_at, shackle
from tests.desk.cut_off import settled
from tests.desk.outing import beach as beach
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_leaving import choice
from tests.desk.test_names import controls

MEMBER = "Di Member"
DAY = date(2026, 11, 24)


@pytest.fixture
def packed(office: Office) -> Office:
    """A trip with the fit shackles SH-001 and SH-003, and HR-007, which is retired; and a member."""
    book_in(office.at(office.now - timedelta(days=9)), shackle("SH-003"))
    record_inspection(office, "SH-003", looked_at(office, "SH-003", "bow_shackle", DAY))
    add_person(office, Person("", MEMBER, "member"))
    kit = ("SH-001", "SH-003", "HR-007")
    day = office.today + timedelta(days=2)
    plan_trip(office, Trip("", "T1", "Beach day", "the spit", Ground.BEACH, day, day, "leader", kit=kit))
    return office


@pytest.fixture
def page(qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], packed: Office) -> Trailhead:
    """The page with the trip chosen and the member named, on the first question of SH-001."""
    return begun(qtbot, open_desk(packed))


def to_start(qtbot: QtBot, desk: DeskWindow) -> Trailhead:
    """Ctrl+K."""
    QTest.keyClick(focused(), Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.background.is_idle)
    return desk.pages.trailhead


def begun(qtbot: QtBot, desk: DeskWindow) -> Trailhead:
    """Ctrl+K, the name, Return."""
    page = to_start(qtbot, desk)
    assert page.start.by
    page.start.by.box.setCurrentText(MEMBER)
    QTest.keyClick(page.start.by.box, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: page.is_under_way)
    return page


def form_of(page: Trailhead) -> PieceForm:
    """The form shown."""
    assert page.form
    return page.form


def window_of(page: Trailhead) -> DeskWindow:
    """The window the page stands in."""
    window = page.window()
    assert isinstance(window, DeskWindow)
    return window


def answer_all(page: Trailhead, **other: str) -> None:
    """Answer each question by its key, 1 but where another is named, and go on."""
    for question in form_of(page).questions:
        QTest.keyClicks(focused(), other.get(question.check.key, "1"))
        QTest.keyClick(focused(), Qt.Key.Key_Return)


def measure(page: Trailhead, *typed: str) -> None:
    """Type what stands in each field of the measures, and go on."""
    for text in typed:
        QTest.keyClicks(focused(), text)
        QTest.keyClick(focused(), Qt.Key.Key_Return)


def keep(qtbot: QtBot, page: Trailhead) -> None:
    """Return on the last step."""
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: window_of(page).background.is_idle)


def scan(desk: DeskWindow, tag: str) -> None:
    """A tag as a scanner types it, wherever the keys are."""
    for sign in tag:
        QTest.keyClicks(focused(), sign)
    QTest.keyClick(focused(), Qt.Key.Key_Return)


def tells(qtbot: QtBot, widget: QWidget, *texts: str) -> None:
    """Wait until all of this stands there."""
    qtbot.waitUntil(lambda: all(one in shown_texts(widget) for one in texts), timeout=2000)


def nameless(page: Trailhead) -> list[str]:
    """The controls without a name."""
    found = list(controls(QAccessible.queryAccessibleInterface(page)))
    assert len(found) > 1
    return [type(one.object()).__name__ for one in found if not one.text(QAccessible.Text.Name)]


def leave_for_good(page: Trailhead) -> None:
    """Throw away what was begun, so that the window closes."""
    page.forget_begun()


def test_without_a_trip_it_offers_to_plan_one(qtbot: QtBot, desk: DeskWindow) -> None:
    """No dead end: plan one, look again, or back to the list."""
    page = to_start(qtbot, desk)
    tells(qtbot, page, "No trip lies ahead.")
    assert not page.is_under_way
    assert nameless(page) == [] and too_small(page) == []
    choice_on(page, "Look again").click()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: isinstance(desk.pages.currentWidget(), FormPage))
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: desk.pages.currentWidget() is page)
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert desk.pages.currentWidget() is desk.pages.table


def test_the_next_trip_stands_first_and_nobody_looks_until_named(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], packed: Office
) -> None:
    """The check stands under a name: none is taken for granted."""
    page = to_start(qtbot, open_desk(packed))
    assert page.start.trip and page.start.by
    assert page.start.trip.value.ref == "T1" and page.start.by.value is None
    QTest.keyClick(page.start.by.box, Qt.Key.Key_Return)
    tells(qtbot, page, "Choose who looks")
    assert not page.is_under_way


def test_nothing_is_answered_beforehand_and_each_answer_says_what_it_means(qtbot: QtBot, page: Trailhead) -> None:
    """Silence is not consent: the keys stand on the question, and no answer is framed or filled."""
    assert focused() is form_of(page).questions[0]
    for question in form_of(page).questions:
        assert question.answer is None and not any(one.isChecked() for one in question.buttons.values())
        assert question.buttons[Grade.BAD].accessibleDescription() == question.check.bad
        assert (Grade.SLIGHT in question.buttons) == bool(question.check.slight)
    tells(qtbot, page, "SH-001", "Piece 1 of 2", "question 1 of 8", "Kinetic pull")


def test_an_answer_with_the_keys_on_it_does_not_look_like_one_that_was_given(qtbot: QtBot, page: Trailhead) -> None:
    """To stand on it is not to choose it: only what was chosen is filled."""
    good = form_of(page).questions[0].buttons[Grade.GOOD]

    def ground() -> QColor:
        return good.grab().toImage().pixelColor(good.width() - 12, good.height() // 2)

    plain = ground()
    QTest.keyClick(focused(), Qt.Key.Key_Down)
    assert good.hasFocus() and ground() == plain
    QTest.keyClick(focused(), Qt.Key.Key_Space)
    assert form_of(page).questions[0].grade is Grade.GOOD and ground() != plain
    leave_for_good(page)


def test_return_without_an_answer_says_so_before_it_leaves_the_question_open(page: Trailhead) -> None:
    """Once it stays and says what to do; once more it goes on, and nothing was answered."""
    form = form_of(page)
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    assert form.at == 0 and "Nothing is answered yet" in shown_texts(form.questions[0])
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    assert form.at == 1 and form.questions[0].answer is None
    QTest.keyClick(focused(), Qt.Key.Key_Left)
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    assert form.at == 0, "it says so each time somebody comes back"
    QTest.keyClicks(focused(), "1")
    assert "Nothing is answered yet" not in shown_texts(form.questions[0])


def test_the_keys_are_told_as_the_question_has_them_in_the_words_of_the_inspection(page: Trailhead) -> None:
    """No key for an answer that is not there; one word for the same grade wherever it is given."""
    form = form_of(page)
    assert {True, False} == {Grade.SLIGHT in one.buttons for one in form.questions}
    for number, question in enumerate(form.questions):
        form.show_step(number)
        assert ("2 slight" in shown_texts(form)) == (Grade.SLIGHT in question.buttons)
        for grade, made in question.buttons.items():
            assert made.accessibleName() == f"{question.check.name}: {grade_word(grade)}"


def test_a_piece_is_checked_by_keyboard_alone_and_the_next_one_follows(
    qtbot: QtBot, page: Trailhead, packed: Office
) -> None:
    """Figures answer, Return goes on, the result stands there at once."""
    answer_all(page)
    measure(page, "18.9 mm", "21.9 mm")
    keep(qtbot, page)
    facts = open_item(packed, "SH-001").dossier.inspections[-1].facts
    member = next(one.id for one in people(packed) if one.name == MEMBER)
    assert (facts.kind, facts.by, facts.competent, facts.trip) == (InspectionKind.BEFORE_USE, member, False, "T1")
    assert {one.grade for one in facts.answers} == {Grade.GOOD} and len(facts.readings) == 2
    tells(qtbot, page, "Goes: Kinetic pull", "1 of 2 pieces checked")
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    assert page.piece and page.piece.tag == "SH-003"


def test_a_fault_keeps_the_piece_back_and_the_summary_says_so(qtbot: QtBot, page: Trailhead, packed: Office) -> None:
    """Why, what to do with it, and at the end which go, which stay, which were not checked."""
    answer_all(page, cracks="3")
    measure(page, "", "")
    tells(qtbot, form_of(page).review, "Bad: Cracks")
    keep(qtbot, page)
    assert open_item(packed, "SH-001").verdict.outcome is Outcome.RETIRE
    why = open_item(packed, "SH-001").explanation.reasons[0].sentence
    tells(qtbot, page, "Stays in the shed", "Put it aside", "two competent persons can strike it")
    assert page.piece and page.piece.why and why in shown_texts(page).replace("\n", " ")
    assert page.back()
    tells(qtbot, page, "Not checked (1)", "Stay in the shed (2)", "HR-007", "competent person decides")


def test_going_back_shows_the_answers_and_a_jump_loses_none(qtbot: QtBot, page: Trailhead) -> None:
    """Answers stand until they are kept or thrown away."""
    question = form_of(page).questions[0]
    QTest.keyClicks(focused(), "3")
    QTest.keyClick(focused(), Qt.Key.Key_Right)
    QTest.keyClick(focused(), Qt.Key.Key_Left)
    assert question.grade is Grade.BAD and question.buttons[Grade.BAD].isChecked()
    assert focused() is question.buttons[Grade.BAD]
    scan(window_of(page), "sh-003")
    assert page.piece and page.piece.tag == "SH-003" and window_of(page).search.text() == ""
    page.show_all()
    tells(qtbot, page, "begun: 1 of 8 answered")
    scan(window_of(page), "SH-001")
    assert form_of(page).questions[0] is question and question.grade is Grade.BAD
    QTest.keyClick(focused(), Qt.Key.Key_Delete)
    assert question.grade is None and page.begun == ()


def test_a_scan_of_what_stays_or_is_not_in_the_kit_says_so(qtbot: QtBot, page: Trailhead) -> None:
    """A retired piece in the bag is caught at the trailhead."""
    scan(window_of(page), "HR-007")
    tells(qtbot, page, "never used again")
    assert page.form is None
    scan(window_of(page), "SH-002")
    assert "not in the kit" in window_of(page).notice.text
    assert page.piece and page.piece.tag == "HR-007"


def test_a_scan_never_answers_where_a_tag_begins_with_a_figure(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], packed: Office
) -> None:
    """The figures then belong to the search; arrows and the space bar answer."""
    book_in(packed, shackle("1-SH"))
    day = packed.today + timedelta(days=1)
    plan_trip(packed, Trip("", "T0", "Day", "spit", Ground.BEACH, day, day, "leader", kit=("SH-001", "1-SH")))
    page = begun(qtbot, open_desk(packed))
    question = form_of(page).questions[0]
    scan(window_of(page), "1-SH")
    assert question.grade is None and page.piece and page.piece.tag == "1-SH"
    scan(window_of(page), "SH-001")
    for key in (Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Space):
        QTest.keyClick(focused(), key)
    assert question.grade is list(question.buttons)[1]
    leave_for_good(page)


def test_an_unclear_reading_is_mended_before_the_next_step(page: Trailhead) -> None:
    """The fault stands at its field and what was typed stays."""
    answer_all(page)
    QTest.keyClicks(focused(), "18.9")
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    field = form_of(page).measures[0].box.fields[0]
    assert field.hasFocus() and field.is_faulty and field.text() == "18.9"
    QTest.keyClicks(field, " mm")
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert form_of(page).measures[1].box.fields[0].hasFocus()
    leave_for_good(page)


def test_what_the_register_does_not_take_is_told_and_stays_written(qtbot: QtBot, page: Trailhead) -> None:
    """A slip of the key is refused at its field before anything is kept, and the form stands as it was."""
    answer_all(page)
    measure(page, "189 mm")
    form = form_of(page)
    box = form.measures[0].box
    assert box.fields[0].hasFocus() and "cannot be" in box.fault.text() and box.fields[0].text() == "189 mm"
    box.fields[0].selectAll()
    measure(page, "18.9 mm")
    assert form.measures[1].box.fields[0].hasFocus() and box.fault.isHidden()
    leave_for_good(page)


def test_a_reading_that_retires_is_read_again_and_the_review_shows_no_fit_mark(
    qtbot: QtBot, page: Trailhead, packed: Office
) -> None:
    """It is asked at its field, the last page says what becomes of the piece, and the note tells of the second look."""
    answer_all(page)
    tells(qtbot, page, "Fit: ")
    measure(page, "15 mm")
    form = form_of(page)
    line = form.measures[0].box.fields[0].caution
    assert line.again.hasFocus() and "retires the piece for good" in line.text.text()
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    assert form.at == len(form.questions)
    QTest.keyClick(focused(), Qt.Key.Key_Space)
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    measure(page, "")
    tells(qtbot, page, "Retire: ", "Kept like this, it retires the piece for good", "Read again and confirmed: Body")
    assert "Fit: " not in shown_texts(page)
    keep(qtbot, page)
    found = open_item(packed, "SH-001")
    assert found.verdict.outcome is Outcome.RETIRE
    assert "Read again and confirmed: Body" in found.dossier.inspections[-1].facts.note


def test_a_grade_that_retires_is_told_before_it_is_kept(qtbot: QtBot, page: Trailhead) -> None:
    """No second look is asked of a grade, but nobody keeps it without having read what it does."""
    answer_all(page, cracks="3")
    measure(page, "", "")
    tells(qtbot, page, "Retire: ", "Kept like this, it retires the piece for good")
    leave_for_good(page)


def test_open_questions_are_named_and_asked_again(qtbot: QtBot, page: Trailhead, packed: Office) -> None:
    """A piece half looked at is kept, is not checked, and only what is open is asked."""
    QTest.keyClicks(focused(), "1")
    while form_of(page).at < len(form_of(page).steps) - 1:
        QTest.keyClick(focused(), Qt.Key.Key_Return)  # twice where nothing was answered
    tells(qtbot, form_of(page).review, "7 questions are open")
    keep(qtbot, page)
    tells(qtbot, page, "7 questions have no answer")
    choice_on(page, "Answer what is open").click()
    assert len(form_of(page).questions) == 7
    answer_all(page)
    measure(page, "", "")
    keep(qtbot, page)
    found = kit_check(packed, "T1").piece("SH-001")
    assert found and found.is_checked


def choice_on(page: Trailhead, text: str) -> QPushButton:
    """The button of the page with this text."""
    return next(one for one in page.findChildren(QPushButton) if one.text() == text and one.isVisible())


def test_leaving_half_way_asks_keeps_the_rest_and_tells_what_is_open(
    qtbot: QtBot, page: Trailhead, packed: Office
) -> None:
    """Finished pieces stay kept; a begun one is thrown away only on request."""
    desk = window_of(page)
    answer_all(page)
    measure(page, "", "")
    keep(qtbot, page)
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    QTest.keyClicks(focused(), "1")
    for _ in range(2):
        QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert desk.notice.is_asking and "SH-003" in desk.notice.text
    choice(desk, "Keep checking").click()
    assert form_of(page).piece.tag == "SH-003" and page.begun == ("SH-003",)
    desk.close()
    assert desk.isVisible() and desk.notice.is_asking
    choice(desk, "Keep checking").click()
    desk.pages.show_list()
    choice(desk, "Throw it away").click()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.currentWidget() is desk.pages.table and not page.is_under_way
    assert "Not checked: one piece (SH-003)." in desk.notice.text
    kept = kit_check(packed, "T1").piece("SH-001")
    assert kept and kept.is_checked


def test_after_the_last_piece_the_whole_kit_is_told(qtbot: QtBot, page: Trailhead) -> None:
    """The walk ends by itself."""
    for _ in range(2):
        answer_all(page)
        measure(page, "", "")
        keep(qtbot, page)
        QTest.keyClick(focused(), Qt.Key.Key_Return)
    tells(qtbot, page, "Go (2)", "Stay in the shed (1)")
    assert "Not checked" not in shown_texts(page)
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert "Every piece was looked at" in window_of(page).notice.text


def test_a_part_on_a_vehicle_is_told_apart_from_what_stays_in_the_shed(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], beach: Office
) -> None:
    """It goes along whatever it is fit for; what counts is that nobody hooks onto it."""
    kind = beach.kind("recovery_point")
    bad = next(one.key for one in kind.checks if one.before_use and not one.hidden and one.bad)
    check_piece(beach, "T-1", "RP-1F", people(beach)[0].id, Seen((InspectionAnswer(bad, Grade.BAD),)))
    page = to_start(qtbot, open_desk(beach))
    assert page.start.by
    page.start.by.box.setCurrentText(people(beach)[0].name)
    QTest.keyClick(page.start.by.box, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: page.is_under_way)
    tells(qtbot, page, "RP-1R", "On V-1, rear left.", "Piece or part 2 of 7", "1 of 7 checked (3 pieces, 4 parts")
    page.show_all()
    tells(qtbot, page, "Stay in the shed (1)", "On the vehicles and not to be used (1)", "On V-1, front left.")
    scan(window_of(page), "RP-1F")
    tells(qtbot, page, "Must n", "Hook onto nothing of it.")
    assert "Put it aside" not in shown_texts(page)


def test_a_touch_answers_as_a_key_does(qtbot: QtBot, page: Trailhead) -> None:
    """The whole answer is the button."""
    question = form_of(page).questions[0]
    QTest.mouseClick(question.buttons[Grade.BAD], Qt.MouseButton.LeftButton)
    assert question.grade is Grade.BAD
    QTest.mouseClick(form_of(page).next_button, Qt.MouseButton.LeftButton)
    assert form_of(page).at == 1
    leave_for_good(page)


def states(qtbot: QtBot, page: Trailhead) -> list[Callable[[], object]]:
    """The ways to each state of the page."""
    form = form_of(page)
    return [
        lambda: form.show_step(0),
        lambda: form.show_step(len(form.questions)),
        lambda: form.show_step(len(form.steps) - 1),
        lambda: page.jump("HR-007"),
        page.show_all,
    ]


@pytest.mark.parametrize(("large", "width"), [(False, 1280), (True, 1280), (True, 1000)])
def test_every_state_has_names_room_for_a_finger_and_nothing_cut_off(
    qtbot: QtBot, page: Trailhead, large: bool, width: int
) -> None:
    """At least 48 pixels high, named, and as wide as its words."""
    desk = window_of(page)
    desk.look.set_text(TextSize.LARGE if large else TextSize.USUAL)
    desk.resize(width, 720)
    try:
        for go in states(qtbot, page):
            go()
            qtbot.wait(30)  # layouts settle
            assert (desk.width(), desk.height()) == (width, 720)
            assert nameless(page) == []
            for area in page.findChildren(QScrollArea):
                inside = area.widget()
                if area.isVisible() and inside:
                    assert inside.width() <= area.viewport().width()
            assert [f"{one.accessibleName()} {one.height()}" for one in too_small(page)] == []
    finally:
        leave_for_good(page)


def too_small(page: Trailhead) -> list[QWidget]:
    """Controls that are lower than a finger needs or narrower than their words."""
    found: list[QWidget] = [window_of(page).search]
    for kind in (QPushButton, QComboBox, QLineEdit):
        found += [one for one in page.findChildren(kind) if one.isVisible()]
    assert len(found) > 2
    return [one for one in found if one.height() < 48 or one.width() < one.minimumSizeHint().width() - 2]


def test_an_answer_is_high_enough_for_all_of_its_words(page: Trailhead) -> None:
    """A narrow answer wraps; none of it is painted outside."""
    long = max(
        (one for form in page.findChildren(Question) for one in form.buttons.values()),
        key=lambda one: len(one.accessibleDescription()),
    )
    assert long.heightForWidth(340) > long.heightForWidth(900) >= 48


def out_of_sight(question: Question) -> list[str]:
    """What of a question and its answers is not seen whole."""
    asks = next(one for one in question.findChildren(QLabel) if one.text() == question.check.asks)
    parts: list[QWidget] = [asks, *question.buttons.values()]
    return [
        f"{question.check.name}, {one.accessibleName() or 'the question'}: {one.visibleRegion().boundingRect()}"
        for one in parts
        if one.visibleRegion().boundingRect() != one.rect() or one.height() < one.heightForWidth(one.width())
    ]


def is_in_sight(part: QWidget) -> bool:
    """Whether something of it is seen."""
    return not part.visibleRegion().isEmpty()


@pytest.mark.parametrize("text", [TextSize.LARGE, TextSize.DOUBLE])
def test_a_question_and_all_of_its_answers_are_in_sight_at_once_in_text_of_any_size(
    qtbot: QtBot, page: Trailhead, text: TextSize
) -> None:
    """In the field nobody scrolls to see whether there is another answer. Every question of every kind of gear."""
    desk = window_of(page)
    desk.look.set_text(text)
    desk.resize(1280, 720)
    qtbot.wait(50)
    room = form_of(page).questions[0].size()
    assert settled(qtbot, lambda: out_of_sight(form_of(page).questions[0])) == []
    assert (desk.width(), desk.height()) == (1280, 720)
    alone = QWidget()
    alone.setProperty("touch", True)
    qtbot.addWidget(alone)
    alone.resize(room)
    alone.show()
    cut: list[str] = []
    for check in {
        one.asks: one for kind in page._office.rules.kinds.values() for one in kind.checks if one.before_use
    }.values():
        question = Question(check, desk.look, check.name, by_figures=True)
        question.setParent(alone)
        question.resize(room)
        question.show()
        cut += settled(qtbot, partial(out_of_sight, question))
        question.deleteLater()
    assert cut == []
    leave_for_good(page)


def test_what_an_answer_means_is_brought_into_sight_with_the_keys(qtbot: QtBot, page: Trailhead) -> None:
    """Where the answers are bare, the words above them say what each means."""
    desk, question = window_of(page), form_of(page).questions[0]
    QTest.keyClick(focused(), Qt.Key.Key_Up)
    last = focused()
    desk.look.set_text(TextSize.DOUBLE)
    desk.resize(1280, 720)
    qtbot.waitUntil(lambda: question.buttons[Grade.BAD].is_bare and question.buttons[Grade.BAD].isVisible())
    assert focused() is last is question.buttons[Grade.NOT_SEEN], "the keys stay where they were"
    for grade, made in list(question.buttons.items())[1:]:
        made.setFocus()
        QTest.keyClick(made, Qt.Key.Key_Up)
        QTest.keyClick(focused(), Qt.Key.Key_Down)
        assert made.hasFocus()
        means = next(one for one in question.findChildren(QLabel) if one.text().startswith(f"{grade_word(grade)}: "))
        qtbot.waitUntil(partial(is_in_sight, means))
    leave_for_good(page)


def test_the_start_has_names_and_room(qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], packed: Office) -> None:
    """Two boxes and two buttons."""
    page = to_start(qtbot, open_desk(packed))
    qtbot.waitUntil(lambda: page.start.by is not None and page.start.by.box.isVisible())
    assert nameless(page) == [] and too_small(page) == []


def test_the_start_is_shown_as_often_as_somebody_comes_back(qtbot: QtBot, desk: DeskWindow, packed: Office) -> None:
    for _ in range(2):
        page = to_start(qtbot, desk)
        qtbot.waitUntil(lambda: desk.background.is_idle)
        desk.pages.go(Go(GEAR))
        qtbot.wait(20)  # what is thrown away goes in a later turn
    page = to_start(qtbot, desk)
    qtbot.waitUntil(lambda: desk.background.is_idle)

    shown = [one for one in page.findChildren(QComboBox) if one.isVisible()]
    assert len(shown) == 2, "the trip and who looks, once"
    next(one for one in page.findChildren(QPushButton) if one.text() == "Begin").click()
    tells(qtbot, page, "Choose who looks")
