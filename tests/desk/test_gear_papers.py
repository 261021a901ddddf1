"""Labels, tags and lending slips in the window: for chosen pieces, from a record's menu, from the page of lending."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

from PySide6.QtWidgets import QMenu, QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.deeds import gear_papers, hands
from inspector.desk.window import DeskWindow
from inspector.duties.lend import lend, loans
from inspector.duties.office import Office
from inspector.gear.label_sizes import LABEL_SIZES, size_words
from tests.desk.deed_forms import faults, form_of_deed, keep, write
from tests.desk.test_lending_page import OFFICER, lending_of

HELD = "HR-007"  # retired
FIT = "SH-001"


def papers_in(office: Office, letter: str) -> list[Path]:
    """What was printed under this letter."""
    return sorted(office.out_tray.glob(f"{letter}-*.pdf"))


def press(button: QPushButton, entry: str) -> None:
    """Press an entry of the menu behind a button."""
    menu = button.menu()
    assert isinstance(menu, QMenu)
    assert button.accessibleName()
    next(one for one in menu.actions() if one.text() == entry).trigger()


def choose(qtbot: QtBot, desk: DeskWindow, entry: str, tags: tuple[str, ...]) -> None:
    """Choose pieces in the list and press an entry of its menu of papers."""
    table = desk.pages.table
    with qtbot.waitSignal(table.bar.asked) as asked:
        press(table.bar.print_button, entry)
    table.asked.emit(asked.args[0], tags)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))


def test_labels_for_chosen_pieces_are_printed_and_can_be_looked_at(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    choose(qtbot, desk, "Labels", (FIT, "SH-002"))
    form = desk.pages.deed_page
    assert form.box("tags").draft.split() == [FIT, "SH-002"] and form.box("start").draft == "1"
    write(form, size=size_words(next(one for one in LABEL_SIZES if one.key == "99x38")), start="15")
    keep(qtbot, desk)
    assert list(faults(form)) == ["start"] and not papers_in(office, "M")
    write(form, start="14")
    keep(qtbot, desk)
    (paper,) = papers_in(office, "M")
    assert "The labels are printed." in desk.notice.text and str(paper) in desk.notice.text
    assert "full size" in desk.notice.text


def test_the_records_of_chosen_pieces_are_printed_each_on_its_own(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    choose(qtbot, desk, "Records", (FIT, "SH-002"))
    keep(qtbot, desk)
    papers = papers_in(office, "P")
    assert "2 records are printed." in desk.notice.text and len(papers) == 2
    assert all(str(paper) in desk.notice.text for paper in papers)


def test_tags_for_chosen_pieces_are_printed_and_a_fit_one_is_refused_at_its_field(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    choose(qtbot, desk, "Tags", (FIT, HELD))
    form = desk.pages.deed_page
    keep(qtbot, desk)
    assert list(faults(form)) == ["tags"] and "It is fit" in faults(form)["tags"]
    write(form, tags=HELD)
    keep(qtbot, desk)
    (paper,) = papers_in(office, "D")
    assert "The tags are printed." in desk.notice.text
    printed = paper.read_bytes()
    paper.unlink()
    form = form_of_deed(qtbot, desk, gear_papers.hold_tags(()), ())
    write(form, number="D-1")
    keep(qtbot, desk)
    assert list(faults(form)) == ["number"]
    write(form, number=paper.stem)
    keep(qtbot, desk)
    assert paper.read_bytes() == printed


def test_a_record_offers_its_label_and_a_tag_only_where_it_is_not_free(qtbot: QtBot, desk: DeskWindow) -> None:
    for tag, why in ((FIT, "It is fit."), (HELD, "")):
        desk.pages.open_tag(tag)
        qtbot.waitUntil(lambda: desk.background.is_idle)
        piece = desk.pages.piece
        assert piece and piece.tag == tag
        assert gear_papers.of_tag(piece).fits((tag,)) == why
        assert not gear_papers.of_labels(piece).fits((tag,))


def test_the_slip_is_printed_as_pieces_go_out_and_from_what_is_ticked(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    form = form_of_deed(qtbot, desk, hands.hand_out((FIT,)), (FIT,))
    write(form, holder=OFFICER, due="2026-12-24")
    keep(qtbot, desk)
    (first,) = papers_in(office, "B")
    assert "One piece went out." in desk.notice.text and str(first) in desk.notice.text
    page = lending_of(qtbot, desk)
    page.model.turn(1)
    press(page.print_button, "Lending slip")
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    assert desk.pages.deed_page.box("tags").draft.split() == [FIT]
    keep(qtbot, desk)
    assert "The lending slip is printed." in desk.notice.text and len(papers_in(office, "B")) == 2


def test_no_slip_is_printed_where_none_is_wanted(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    form = form_of_deed(qtbot, desk, hands.hand_out((FIT,)), (FIT,))
    write(form, holder=OFFICER, due="2026-12-24", slip="no")
    keep(qtbot, desk)
    assert len(loans(office)) == 1 and not papers_in(office, "B")


def test_a_slip_of_nobody_or_of_what_is_not_out_is_refused_at_its_field(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office
) -> None:
    lend(office, [FIT], OFFICER, date(2026, 12, 1))
    desk = open_desk(office)
    form = form_of_deed(qtbot, desk, gear_papers.lending_slip(("SH-002",)), ("SH-002",))
    keep(qtbot, desk)
    assert list(faults(form)) == ["holder"]
    write(form, holder=OFFICER)
    keep(qtbot, desk)
    assert "does not have SH-002 on loan" in " ".join(faults(form).values())
    write(form, tags="")
    keep(qtbot, desk)
    (paper,) = papers_in(office, "B")
    paper.unlink()
    form = form_of_deed(qtbot, desk, gear_papers.lending_slip(()), ())
    write(form, number=paper.stem)  # by its number alone
    keep(qtbot, desk)
    assert papers_in(office, "B") == [paper]
