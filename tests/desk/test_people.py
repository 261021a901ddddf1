"""The place of the people: who may judge what, how to reach them, who is at the desk."""

from collections.abc import Callable
from typing import Any

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QLabel, QLineEdit, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.deeds import competence, contact, passphrases, people
from inspector.desk.form.boxes import Box, ChoiceBox, TickBox
from inspector.desk.form.deed import Deed
from inspector.desk.form.form_page import FormPage
from inspector.desk.form.lines import LineBox
from inspector.desk.people.people_page import PeoplePage
from inspector.desk.place import Go
from inspector.desk.places import DEED, PEOPLE, REGISTER
from inspector.desk.window import DeskWindow
from inspector.duties.keep_contact import contact_of, write_contact
from inspector.duties.keep_draft import kept
from inspector.duties.keep_passphrases import set_passphrase
from inspector.duties.office import Office
from inspector.duties.person_in_full import PersonInFull, in_full, scopes
from inspector.duties.tell_people import list_people
from inspector.gear.person import Contact, Passphrases
from tests.desk.deed_forms import begin_anew, faults, lacks
from tests.desk.people import ENDING, MEMBER, OWN_WORDS, SECOND, peopled, with_passphrase

_OPENS = Callable[[Deed[Any], object], FormPage]


@pytest.fixture
def club(office: Office) -> Office:
    """The register with four people."""
    return peopled(office)


@pytest.fixture
def window(open_desk: Callable[[Office], DeskWindow], club: Office) -> DeskWindow:
    """The window on it."""
    return open_desk(club)


@pytest.fixture
def page(qtbot: QtBot, window: DeskWindow) -> PeoplePage:
    """The place of the people, gone to by its key."""
    return gone_to(qtbot, window)


def gone_to(qtbot: QtBot, window: DeskWindow) -> PeoplePage:
    """The page in a window, reached by the keyboard."""
    QTest.keyClick(window, Qt.Key.Key_5, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: window.background.is_idle)
    page = window.pages.currentWidget()
    assert isinstance(page, PeoplePage)
    return page


@pytest.fixture
def form_for(qtbot: QtBot, window: DeskWindow) -> _OPENS:
    """Opens the form of a deed."""

    def opened(deed: Deed[Any], about: object) -> FormPage:
        window.pages.go(Go(DEED, (deed, about, "")))
        qtbot.waitUntil(lambda: window.background.is_idle)
        return window.pages.deed_page

    return opened


def choose(qtbot: QtBot, page: PeoplePage, name: str) -> None:
    """Put the bar on a person and wait for the record."""
    page.list.choose(name)
    qtbot.waitUntil(lambda: page.shown is not None and page.shown.person.name == name)


def told(widget: QWidget) -> str:
    """All words that are seen in a widget."""
    return "\n".join(one.text() for one in widget.findChildren(QLabel) if one.isVisibleTo(widget))


def press(page: QWidget, name: str) -> None:
    """Press the button with this accessible name by the keyboard."""
    found = next(one for one in page.findChildren(QPushButton) if one.accessibleName() == name)
    found.setFocus()
    QTest.keyClick(found, Qt.Key.Key_Return)


def write(box: Box, text: str) -> None:
    """Type into a field, whatever sort it is."""
    if isinstance(box, LineBox):
        box.line.setText(text)
    elif isinstance(box, ChoiceBox):
        assert text in [box.choice.box.itemText(at) for at in range(box.choice.box.count())]
        box.give(text)
    else:
        box.give(text)


def settle(qtbot: QtBot, page: FormPage, window: DeskWindow) -> None:
    """Do the deed by its key, and wait for what comes of it."""
    QTest.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: window.background.is_idle)


def test_everybody_stands_in_the_list_with_role_and_what_each_may_judge(page: PeoplePage) -> None:
    lines = dict(page.model.lines_of(row) for row in range(page.model.rowCount()))

    assert list(lines) == sorted(lines)
    assert lines[MEMBER] == "member"
    assert lines[SECOND] == "trainer · may judge all gear"
    assert lines[ENDING] == "deputy · may judge shackle until 15 Dec 2026"
    assert lines["First officer"].startswith("at the desk · ")


def test_the_list_is_a_sound_model(page: PeoplePage) -> None:
    tester = QAbstractItemModelTester(page.model, QAbstractItemModelTester.FailureReportingMode.Warning)

    page.model.narrow("member")
    page.model.narrow("")

    assert tester.model() is page.model
    assert page.model.rowCount() == 4


def test_a_name_typed_above_the_list_narrows_it_and_nobody_is_said_so(qtbot: QtBot, page: PeoplePage) -> None:
    page.name_line.setFocus()
    QTest.keyClicks(page.name_line, "cora")
    qtbot.waitUntil(lambda: page.shown is not None and page.shown.person.name == ENDING)
    assert [one.person.name for one in page.model.rows] == [ENDING]

    QTest.keyClicks(page.name_line, "x")

    assert page.none.isVisible()
    page.name_line.clear()
    assert not page.none.isVisible()
    assert page.model.rowCount() == 4


def test_a_letter_pressed_on_the_list_belongs_to_the_search(window: DeskWindow, page: PeoplePage) -> None:
    page.list.setFocus()

    QTest.keyClicks(page.list, "s")

    assert window.search.text() == "s"


def test_the_record_tells_what_ends_soon_what_is_on_loan_and_what_is_owned(qtbot: QtBot, page: PeoplePage) -> None:
    choose(qtbot, page, ENDING)
    assert "since 25 Nov 2026 until 15 Dec 2026, 20 days left" in told(page.area)
    assert "Renew it" in told(page.area)

    choose(qtbot, page, MEMBER)
    words = told(page.area)
    assert "may judge nothing" in words
    assert "since 25 Nov 2026, to be back by 1 Dec 2026" in words
    tags = [one.text() for one in page.area.findChildren(QPushButton) if one.property("rank") == "tag"]
    assert tags == ["SH-001", "SH-002"]


def test_a_piece_that_somebody_has_opens_from_the_record(qtbot: QtBot, window: DeskWindow, page: PeoplePage) -> None:
    choose(qtbot, page, MEMBER)

    press(page.area, "Open SH-001")
    qtbot.waitUntil(lambda: window.pages.piece is not None)

    assert window.pages.piece
    assert window.pages.piece.tag == "SH-001"
    window.back()
    assert window.pages.currentWidget() is page


def test_contact_details_are_shown_only_when_somebody_asks(qtbot: QtBot, club: Office, page: PeoplePage) -> None:
    write_contact(club, MEMBER, phone="0400 111 222", address="3 Salt Lane")
    choose(qtbot, page, MEMBER)
    assert "0400" not in told(page.area)

    press(page.area, "Show contact details")
    qtbot.waitUntil(lambda: "0400 111 222" in told(page.area))
    assert "3 Salt Lane" in told(page.area)

    press(page.area, "Hide contact details")
    assert "0400" not in told(page.area)


def test_contact_details_shown_are_gone_once_the_page_was_left(qtbot: QtBot, club: Office, page: PeoplePage) -> None:
    write_contact(club, MEMBER, phone="0400 111 222")
    choose(qtbot, page, MEMBER)
    press(page.area, "Show contact details")
    qtbot.waitUntil(lambda: "0400 111 222" in told(page.area))

    page.stop()

    assert "0400" not in told(page.area)


def test_contact_details_are_written_by_keys_and_an_untouched_line_stays(
    qtbot: QtBot, club: Office, window: DeskWindow, page: PeoplePage
) -> None:
    write_contact(club, MEMBER, phone="0400 111 222", mail="di@club.example")
    choose(qtbot, page, MEMBER)
    press(page.area, f"Write how to reach {MEMBER}")
    qtbot.waitUntil(
        lambda: window.pages.currentWidget() is window.pages.deed_page and bool(window.pages.deed_page.boxes)
    )
    form = window.pages.deed_page
    assert form.box("phone").draft == "0400 111 222"
    write_contact(club, MEMBER, mail="anew@club.example")

    write(form.box("phone"), "")
    write(form.box("address"), "3 Salt Lane")
    settle(qtbot, form, window)

    assert contact_of(club, MEMBER) == Contact("", "anew@club.example", "3 Salt Lane")


def test_removed_contact_details_take_the_draft_with_them(
    qtbot: QtBot, club: Office, window: DeskWindow, page: PeoplePage
) -> None:
    write_contact(club, MEMBER, phone="0400 111 222")
    choose(qtbot, page, MEMBER)
    press(page.area, f"Write how to reach {MEMBER}")
    qtbot.waitUntil(lambda: bool(window.pages.deed_page.boxes))
    key = window.pages.deed_page._draft_key
    write(window.pages.deed_page.box("phone"), "0499 999 999")
    window.back()
    assert kept(club, key)
    qtbot.waitUntil(lambda: window.background.is_idle)

    press(page.area, f"Remove how to reach {MEMBER} for good")
    qtbot.waitUntil(lambda: window.pages.deed_page.leave_button.hasFocus())
    settle(qtbot, window.pages.deed_page, window)

    assert contact_of(club, MEMBER) is None
    assert kept(club, key) is None
    assert "delete those that are not needed" in window.notice.text
    assert "Show contact details" not in [one.text() for one in page.area.findChildren(QPushButton) if one.isVisible()]


def test_where_a_form_asks_nothing_the_return_key_alone_does_nothing(
    qtbot: QtBot, club: Office, window: DeskWindow, page: PeoplePage
) -> None:
    write_contact(club, MEMBER, phone="0400 111 222")
    choose(qtbot, page, MEMBER)
    press(page.area, f"Remove how to reach {MEMBER} for good")
    qtbot.waitUntil(lambda: window.pages.deed_page.leave_button.hasFocus())

    QTest.keyClick(window.pages.deed_page.leave_button, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: window.background.is_idle)

    assert contact_of(club, MEMBER)
    assert window.pages.currentWidget() is page


def deeds_of(club: Office) -> list[tuple[Deed[Any], object]]:
    """Every deed of the place, with what it is about."""
    shown = in_full(club, ENDING)
    reached = contact.Reached(shown.person, Contact())
    return [
        (people.add(scopes(club)), None),
        (people.change(shown), shown),
        (people.sit_down(Passphrases.WANTED, lambda _: None), None),
        (competence.give(shown, scopes(club)), shown),
        (competence.renew(shown), shown),
        (competence.end(shown), shown),
        (contact.write(reached), reached),
        (contact.remove(shown), shown),
        (passphrases.wish(Passphrases.OFF), Passphrases.OFF),
        (passphrases.set_new(shown), shown),
        (passphrases.remove(shown), shown),
    ]


def test_each_form_opens_its_fields_have_names_and_what_it_lacks_is_said_there(club: Office, form_for: _OPENS) -> None:
    wrong: list[str] = []
    for number, (deed, about) in enumerate(deeds_of(club)):
        form = form_for(deed, about)
        wrong += [f"{number} {deed.title}: {lack}" for lack in lacks(form)] if form.deed else [f"{number} did not open"]
        begin_anew(form)
    assert not wrong, "\n".join(wrong)


REFUSED: tuple[tuple[int, dict[str, str], str, str], ...] = (
    (0, {"name": MEMBER}, "name", "is in the register already"),
    (0, {"name": "Em", "scope all": "yes", "since": "1 Jan 2025"}, "since", "nothing is named that shows it"),
    (1, {"why": "none"}, "name", "Nothing would change"),
    (1, {"name": MEMBER, "why": "wed"}, "name", "is in the register already"),
    (3, {"scope": "shackle (Bow shackle, Dee shackle)", "why": "again"}, "scope", "speaks of these days already"),
    (3, {"scope": "all gear", "until": "1 Jan 2020", "why": "course"}, "until", "has passed"),
    (3, {"scope": "all gear", "since": "1 Jan 2020", "why": "course"}, "since", "nothing is named that shows it"),
    (3, {"scope": "all gear", "second": "First officer", "why": "course"}, "second", "cannot be both names"),
    (4, {"until": "1 Jan 2020", "why": "course"}, "until", "has passed"),
    (4, {"until": "30 Nov 2026", "why": "course"}, "until", "runs that long already"),
    (5, {"on": "1 Jan 2020", "why": "moved"}, "scope", "holds nothing"),
    (6, {}, "phone", "Nothing would change"),
    (6, {"mail": "x" * 130}, "mail", "130 signs"),
    (8, {}, "wish", "already"),
    (8, {"wish": "required; a name that is only stated passes no gear"}, "wish", "Nobody can have given one yet"),
    (9, {"new": "seven words of mine", "again": "seven words of thine"}, "again", "not the same"),
    (9, {"new": "seven words of mine", "again": "seven words of mine"}, "new", "asks for no passphrases"),
)


def test_what_a_duty_refuses_stands_at_its_field_and_the_rest_stays(
    qtbot: QtBot, club: Office, window: DeskWindow, form_for: _OPENS
) -> None:
    wrong: list[str] = []
    for number, typed, field, why in REFUSED:
        form = form_for(*deeds_of(club)[number])
        for key, text in typed.items():
            write(form.box(key), text)
        before = {box.asked.key: box.draft for box in form.boxes}

        form.try_do()
        qtbot.waitUntil(lambda: window.background.is_idle)

        if why not in (said := faults(form).get(field, "nothing")):
            wrong.append(f"{number} {typed}: “{said}” at {field}, not “{why}”")
        if {box.asked.key: box.draft for box in form.boxes} != before:
            wrong.append(f"{number} {typed}: what was typed did not stay")
        begin_anew(form)
    assert not wrong, "\n".join(wrong)


def test_one_s_own_competence_needs_a_second_name_and_is_told_so_there(
    qtbot: QtBot, club: Office, window: DeskWindow, form_for: _OPENS
) -> None:
    own = in_full(club, club.officer.id)
    form = form_for(competence.give(own, scopes(club)), own)
    write(form.box("scope"), "pin (Hitch pin)")
    write(form.box("why"), "course")

    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("second").fault_text))
    assert "nobody widens his own competence alone" in form.box("second").fault_text

    write(form.box("second"), SECOND)
    settle(qtbot, form, window)
    assert "pin" in in_full(club, club.officer.id).row.held


def test_a_person_with_two_competences_is_added_by_keys(
    qtbot: QtBot, club: Office, window: DeskWindow, page: PeoplePage
) -> None:
    press(page, "Add a person")
    form = window.pages.deed_page
    qtbot.waitUntil(lambda: bool(form.boxes))
    name = form.box("name")
    assert isinstance(name, LineBox)
    QTest.keyClicks(name.line, "Eve New")
    for scope in ("scope shackle", "scope strap"):
        box = form.box(scope)
        assert isinstance(box, TickBox)
        QTest.keyClick(box.tick, Qt.Key.Key_Space)
    settle(qtbot, form, window)

    assert window.pages.currentWidget() is page
    assert "Eve New is in the register. May judge: shackle, strap." in window.notice.text
    row = next(one for one in list_people(club).rows if one.person.name == "Eve New")
    assert [one.scope for one in row.person.competences] == ["shackle", "strap"]
    assert row.person.role == "member"


@pytest.mark.parametrize(
    ("button", "typed", "stands"),
    [
        ("Renew a competence", {"until": "1 Dec 2027", "why": "refresher"}, "until 1 Dec 2027"),
        ("End a competence", {"why": "moved away"}, "until 25 Nov 2026, today is its last day"),
        ("Give a competence", {"scope": "pin (Hitch pin)", "until": "1 Dec 2027", "why": "course"}, "pin (Hitch pin)"),
    ],
)
def test_a_competence_is_given_renewed_and_ended_from_the_record(
    qtbot: QtBot, window: DeskWindow, page: PeoplePage, button: str, typed: dict[str, str], stands: str
) -> None:
    choose(qtbot, page, ENDING)
    press(page.area, button)
    form = window.pages.deed_page
    qtbot.waitUntil(lambda: bool(form.boxes))
    for key, text in typed.items():
        write(form.box(key), text)

    settle(qtbot, form, window)

    qtbot.waitUntil(lambda: stands in told(page.area))
    assert window.pages.currentWidget() is page
    assert page.list.person_id == in_full(page._office, ENDING).person.id


def test_no_competence_is_chosen_before_somebody_chooses(club: Office, form_for: _OPENS) -> None:
    shown = in_full(club, MEMBER)
    form = form_for(competence.give(shown, scopes(club)), shown)
    write(form.box("why"), "course")

    form.try_do()

    assert "needed" in form.box("scope").fault_text
    assert in_full(club, MEMBER).row.held == ""


def test_another_name_is_written_down_and_the_former_one_is_still_told(
    qtbot: QtBot, window: DeskWindow, page: PeoplePage
) -> None:
    choose(qtbot, page, MEMBER)
    press(page.area, "Another name or role")
    form = window.pages.deed_page
    qtbot.waitUntil(lambda: bool(form.boxes))
    write(form.box("name"), "Di Wedded")
    write(form.box("why"), "wed")
    settle(qtbot, form, window)

    qtbot.waitUntil(lambda: f"Formerly {MEMBER}" in told(page.area))
    assert "SH-002" in [one.text() for one in page.area.findChildren(QPushButton)]


def test_another_name_for_whoever_is_at_the_desk_goes_on_with_the_new_name(
    qtbot: QtBot, club: Office, window: DeskWindow, page: PeoplePage
) -> None:
    seated: list[Office] = []
    page.seated.connect(seated.append)
    choose(qtbot, page, club.officer.name)
    press(page.area, "Another name or role")
    form = window.pages.deed_page
    qtbot.waitUntil(lambda: bool(form.boxes))
    write(form.box("name"), "First Lady")
    write(form.box("why"), "wed")
    settle(qtbot, form, window)

    qtbot.waitUntil(lambda: bool(seated))
    assert (seated[0].officer.name, seated[0].officer.id) == ("First Lady", club.officer.id)


def test_somebody_else_sits_down_and_the_window_is_given_the_new_office(
    qtbot: QtBot, club: Office, window: DeskWindow, page: PeoplePage
) -> None:
    seated: list[Office] = []
    page.seated.connect(seated.append)
    choose(qtbot, page, SECOND)
    press(page.area, f"Sit down at the desk as {SECOND}")
    form = window.pages.deed_page
    qtbot.waitUntil(lambda: bool(form.boxes))
    assert form.box("who").draft == SECOND
    assert "passphrase" not in [box.asked.key for box in form.boxes]

    settle(qtbot, form, window)

    qtbot.waitUntil(lambda: bool(seated))
    assert (seated[0].officer.name, seated[0].vouched) == (SECOND, False)
    assert "as stated" in window.notice.text


def test_nobody_sits_down_by_leaving_the_form(qtbot: QtBot, window: DeskWindow, page: PeoplePage) -> None:
    seated: list[Office] = []
    page.seated.connect(seated.append)
    press(page, "Sit down at the desk")
    qtbot.waitUntil(lambda: bool(window.pages.deed_page.boxes))

    window.back()
    qtbot.waitUntil(lambda: window.background.is_idle)

    assert seated == []
    assert window.pages.currentWidget() is page


def test_a_wrong_passphrase_is_refused_at_its_field_and_the_right_one_proves_the_name(
    qtbot: QtBot, club: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    vouched = with_passphrase(club)
    window = open_desk(replace(vouched, vouched=False))
    page = gone_to(qtbot, window)
    assert page.desk.text() == "At the desk: First officer, as stated"
    seated: list[Office] = []
    page.seated.connect(seated.append)
    page.sit_down(club.officer.id)
    form = window.pages.deed_page
    qtbot.waitUntil(lambda: bool(form.boxes))
    secret = form.box("passphrase")
    assert isinstance(secret, LineBox)
    assert secret.line.echoMode() is QLineEdit.EchoMode.Password

    write(secret, "a lantern under six tides")
    form.try_do()
    qtbot.waitUntil(lambda: bool(secret.fault_text))
    assert "not that of First officer" in secret.fault_text
    assert seated == []

    write(secret, OWN_WORDS)
    settle(qtbot, form, window)
    qtbot.waitUntil(lambda: bool(seated))
    assert seated[0].vouched


def test_who_is_proved_is_told_as_proved(qtbot: QtBot, club: Office, open_desk: Callable[[Office], DeskWindow]) -> None:
    page = gone_to(qtbot, open_desk(with_passphrase(club)))

    assert page.desk.text() == "At the desk: First officer, proved"
    assert "wanted" in page.wants.text()


def test_a_passphrase_is_set_for_another_and_removed_again(
    qtbot: QtBot, club: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    office = with_passphrase(club)
    window = open_desk(office)
    page = gone_to(qtbot, window)
    choose(qtbot, page, SECOND)
    press(page.area, "Set a passphrase")
    form = window.pages.deed_page
    qtbot.waitUntil(lambda: bool(form.boxes))
    for key in ("new", "again"):
        write(form.box(key), "nine gulls over the bar")
    settle(qtbot, form, window)
    qtbot.waitUntil(lambda: f"{SECOND} has one." in told(page.area))

    press(page.area, "Remove the passphrase")
    qtbot.waitUntil(lambda: form.leave_button.hasFocus())
    settle(qtbot, form, window)
    qtbot.waitUntil(lambda: f"{SECOND} has none." in told(page.area))


def test_passphrases_can_be_required_once_two_have_one(
    qtbot: QtBot, club: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    office = with_passphrase(club)
    window = open_desk(office)
    page = gone_to(qtbot, window)

    def require() -> FormPage:
        press(page, "What the club wants of passphrases")
        qtbot.waitUntil(lambda: bool(window.pages.deed_page.boxes))
        write(window.pages.deed_page.box("wish"), "required; a name that is only stated passes no gear")
        settle(qtbot, window.pages.deed_page, window)
        return window.pages.deed_page

    assert "at least 2 people" in require().box("wish").fault_text
    window.back()
    qtbot.waitUntil(lambda: window.background.is_idle)
    set_passphrase(office, SECOND, "nine gulls over the bar")

    require()

    assert list_people(office).passphrases is Passphrases.REQUIRED
    assert "required" in page.wants.text()


def test_the_ledger_of_a_person_is_one_key_away(qtbot: QtBot, window: DeskWindow, page: PeoplePage) -> None:
    choose(qtbot, page, MEMBER)

    press(page.area, f"What the ledger tells of {MEMBER}")
    qtbot.waitUntil(lambda: window.background.is_idle)

    register = window.pages.places.page(REGISTER)
    assert window.pages.currentWidget() is register
    window.back()  # to the first part of the register
    window.back()
    assert window.pages.currentWidget() is page


def test_return_goes_into_the_record_and_escape_back_to_the_list(
    qtbot: QtBot, window: DeskWindow, page: PeoplePage
) -> None:
    choose(qtbot, page, MEMBER)
    page.list.setFocus()

    QTest.keyClick(page.list, Qt.Key.Key_Return)
    assert page.area.isAncestorOf(window.focusWidget())

    window.back()
    assert page.list.hasFocus()
    assert window.pages.currentWidget() is page


def test_what_a_competence_says_of_its_days(club: Office) -> None:
    def stands(shown: PersonInFull) -> list[str]:
        return [one.stands for one in shown.held]

    assert stands(in_full(club, SECOND)) == ["since 25 Nov 2026, without an end"]
    later = club.at(club.now.replace(month=12, day=15))
    assert stands(in_full(later, ENDING)) == ["since 25 Nov 2026 until 15 Dec 2026, today is its last day"]
    past = club.at(club.now.replace(month=12, day=16))
    assert stands(in_full(past, ENDING)) == ["ended: it counted from 25 Nov 2026 until 15 Dec 2026"]
    assert in_full(past, ENDING).row.held == ""


def test_the_place_stands_at_the_side(page: PeoplePage, window: DeskWindow) -> None:
    assert window.rail.buttons[PEOPLE].isChecked()
