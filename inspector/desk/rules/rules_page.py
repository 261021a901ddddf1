"""The page of the rulebook: its rules found as one types and read in full, and the club's own limits."""

from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLineEdit, QListWidgetItem, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.choice import Choice
from inspector.desk.deeds import rulebook as deeds
from inspector.desk.form.deed import Deed
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import button, column, said, scroll
from inspector.desk.rules.club_book import ClubBook, Told
from inspector.desk.rules.rule_words import checked_words, compared_words, rule_part
from inspector.desk.wrapped_list import WrappedList
from inspector.duties.adopt_rulebook import check_rulebook
from inspector.duties.club_draft import FILE, club_text, text_of
from inspector.duties.compare_rulebooks import CURRENT, PACKAGED, compare_rulebooks, named_book
from inspector.duties.keep_draft import forget, keep, kept
from inspector.duties.look_up import kinds
from inspector.duties.named_files import read_bytes, write_new
from inspector.duties.office import Office
from inspector.duties.rulebook_in_force import in_force
from inspector.duties.tell_rules import list_rules, show_rule
from inspector.language import tr, tr_n

_DRAFT = "club rules"


class RulesPage(Place):
    """changed: another rulebook is in force now; carries the office with it."""

    changed = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.line, self.list = QLineEdit(), WrappedList(tr("Rules"), look)
        self.line.setPlaceholderText(tr("A word of a rule"))
        self.line.setAccessibleName(tr("Find a rule"))
        every: list[tuple[str, str]] = [(tr("every kind"), "")]
        self.kind = Choice(tr("Kind of gear"), [*every, *((one.name, one.key) for one in kinds(office))])
        self.count = said("", faint=True)
        self.shown = scroll(QWidget(), tr("The rule"))
        self.club = ClubBook(look)
        self._reading, self._writing = QWidget(), self.club
        self.turn_button = button(tr("The club's own limits"), self.turn)
        self._lay_out()
        self._connect()
        self._find()

    @property
    def is_writing(self) -> bool:
        """Whether the club's own limits are shown."""
        return not self.club.isHidden()

    @property
    def rule(self) -> str:
        """The name of the rule that is chosen."""
        item = self.list.currentItem() if self.list.currentRow() >= 0 else None
        return str(item.data(Qt.ItemDataRole.UserRole)) if item else ""

    def begin(self, what: object = None) -> None:
        """Read the club's text, and whether another rulebook came into force."""
        self._background.run(_read, self._office, done=self._show, failed=self._notice.refuse)

    def back(self) -> bool:
        """From the club's limits to the rules."""
        if not self.is_writing:
            return False
        self.turn()
        return True

    def stop(self) -> None:
        """What is typed is kept as a draft."""
        self.club.flush()

    def focus_start(self) -> None:
        """The keys go to the line, or to the text."""
        (self.club.text if self.is_writing else self.line).setFocus()

    def turn(self) -> None:
        """To the club's own limits, or back to the rules."""
        writing = not self.is_writing
        self.club.setVisible(writing)
        self._reading.setVisible(not writing)
        self.turn_button.setText(tr("The rules") if writing else tr("The club's own limits"))
        self.focus_start()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.line, 1)
        head.addWidget(self.kind.box)
        self.count.setWordWrap(False)
        left = QVBoxLayout()
        left.addLayout(head)
        left.addWidget(self.count)
        left.addWidget(self.list, 1)
        inside = QHBoxLayout(self._reading)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(3 * GRID)
        inside.addLayout(left, 2)
        inside.addWidget(self.shown, 3)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, GRID)
        layout.addWidget(self.turn_button, 0, Qt.AlignmentFlag.AlignRight)
        layout.addWidget(self._reading, 1)
        layout.addWidget(self.club, 1)
        self.club.hide()

    def _connect(self) -> None:
        self.line.textChanged.connect(lambda _: self._find())
        self.line.returnPressed.connect(self.list.setFocus)
        self.kind.box.currentIndexChanged.connect(lambda _: self._find())
        self.list.currentRowChanged.connect(lambda _: self._show_rule())
        club = self.club
        club.written.connect(self._keep)
        club.check.connect(self._check)
        club.compare.connect(partial(self._compare, False))
        club.adopt.connect(lambda compared: self._ask(deeds.adopt(compared), compared))
        club.add.connect(self._add)
        club.take.connect(self._take_set)
        club.drop.connect(lambda: self._compare(True, ""))
        club.read.connect(self._open_file)
        club.write.connect(self._write_file)

    def _find(self) -> None:
        """The rulebook is open: nothing is read."""
        found = list_rules(self._office, self.kind.value, self.line.text())
        self.list.clear()
        for one in found:
            words = tr("{id}: {says}", id=one.id, says=one.says)
            item = QListWidgetItem(tr("{rule} ({club})", rule=words, club=one.club) if one.club else words)
            item.setData(Qt.ItemDataRole.UserRole, one.id)
            self.list.addItem(item)
        self.list.setCurrentRow(0)
        self.count.setText(
            tr_n("{count} rule", "{count} rules", len(found)) if found else tr("No rule has these words.")
        )

    def _show_rule(self) -> None:
        if self.rule:
            page = column([rule_part(show_rule(self._office, self.rule))])
            page.setObjectName("page")
            self.shown.setWidget(page)

    def _show(self, found: tuple[str, Office]) -> None:
        text, now = found
        self.club.show_text(text)
        if now.rules.hash != self._office.rules.hash:
            self.changed.emit(now)

    def _keep(self, text: str) -> None:
        self._background.run(
            keep, self._office, _DRAFT, {"text": text}, done=lambda _: None, failed=self._notice.refuse
        )

    def _check(self, text: str) -> None:
        found = check_rulebook(text.encode(), FILE)
        self.club.tell(Told(*checked_words(found)))

    def _compare(self, packaged: bool, text: str) -> None:
        """Every piece by the rulebook in force and by the other one; only then may it be adopted."""
        name = PACKAGED if packaged else FILE
        self._background.run_long(
            _compared, self._office, name, text, done=partial(self._tell_compared, packaged),
            failed=lambda why: self.club.tell(Told(why.why, why.what_to_do)), says=tr("Comparing on every piece…"),
        )  # fmt: skip

    def _tell_compared(self, packaged: bool, found: tuple[Told, deeds.Compared]) -> None:
        told, compared = found
        if not packaged and compared.text != self.club.text.toPlainText():
            return  # it was changed meanwhile
        self.club.tell(told, compared)
        self.club.adopt_button.setFocus()

    def _add(self) -> None:
        text = self.club.text.toPlainText()
        self.club.flush()
        self._ask(deeds.limit(text, self.rule, partial(_set_aside, self._office)), text)

    def _take_set(self) -> None:
        text = self.club.text.toPlainText()
        self.club.flush()
        self._ask(deeds.packaged_set(partial(_set_aside, self._office)), text)

    def _ask(self, deed: Deed[Any], about: object) -> None:
        self.go.emit(Go(DEED, (deed, about, "")))

    def _open_file(self) -> None:
        if name := QFileDialog.getOpenFileName(self, tr("The club's own limits"), "", "*.toml")[0]:
            self.take_file(Path(name))

    def take_file(self, file: Path) -> None:
        """Let the text of a file stand here."""
        self._background.run(
            lambda: text_of(read_bytes(file), file.name), done=self.club.show_text, failed=self._notice.refuse
        )

    def _write_file(self) -> None:
        if name := QFileDialog.getSaveFileName(self, tr("The club's own limits"), "club_rules.toml", "*.toml")[0]:
            self._background.run(
                write_new, Path(name), self.club.text.toPlainText(), failed=self._notice.refuse,
                done=lambda _: self._notice.tell(tr("It is written."), name),
            )  # fmt: skip


def _read(office: Office) -> tuple[str, Office]:
    """The draft, else the text in force; and the office under the rulebook that is in force now."""
    draft, stands = kept(office, _DRAFT), club_text(office)
    text = str(draft.values.get("text", stands)) if draft else stands
    if draft and text == stands:
        forget(office, _DRAFT)
    return text, in_force(office)


def _compared(office: Office, name: str, text: str) -> tuple[Told, deeds.Compared]:
    other = named_book(office, name, text.encode())
    found = compare_rulebooks(office, named_book(office, CURRENT, b""), other)
    return Told(*compared_words(found)), deeds.Compared(text, found.retires, other.club.from_on if other.club else None)


def _set_aside(office: Office, text: str) -> None:
    keep(office, _DRAFT, {"text": text})
