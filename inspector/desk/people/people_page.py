"""The page of the people: a list, and beside it the record of the one who is chosen."""

from collections.abc import Callable
from functools import partial
from typing import Any

from msgspec.structs import replace
from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.deeds import competence, contact, passphrases, people
from inspector.desk.form.deed import Deed
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.people.people_list import PeopleList, PeopleModel
from inspector.desk.people.person_view import Acts, ContactPart, person_view
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED, REGISTER
from inspector.desk.plain import button, hairline, row, said, scroll
from inspector.duties.keep_contact import contact_of
from inspector.duties.office import Office
from inspector.duties.person_in_full import PersonInFull, in_full, scopes
from inspector.duties.tell_people import PeopleFound, list_people
from inspector.gear.person import Contact, Passphrases
from inspector.language import tr

_LEAST_LIST_PX = 160
_SHARES = (2, 3)
_PAUSE_MS = 60  # the bar is moved on before a record is read


class PeoplePage(Place):
    """seated: another person sits at the desk, or the same under another name; the Office to go on with."""

    seated = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.shown: PersonInFull | None = None
        self.contact: ContactPart | None = None
        self.wish = Passphrases.OFF
        self._new_office: Office | None = None
        self.model = PeopleModel(self)
        self.list = PeopleList(self.model, look)
        self.name_line = QLineEdit()
        self.name_line.setAccessibleName(tr("Find a person"))
        self.name_line.setPlaceholderText(tr("Name or role"))
        self.none = said(tr("Nobody is called so. Empty the line above to see everybody."), faint=True)
        self.desk, self.wants = said(""), said("", Type.SMALL, faint=True)
        self.area: QScrollArea = scroll(QWidget(), tr("The person"))
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self._read_chosen)
        self._lay_out()
        self._connect()

    def begin(self, what: str = "") -> None:
        """Read the people anew; what: the id or name of the one to show."""
        if what:
            self.name_line.clear()
        wanted = what or self.list.person_id or self._office.officer.id
        self._background.run(list_people, self._office, done=partial(self._show, wanted), failed=self._notice.refuse)

    def come_back(self, *, changed: bool) -> None:
        """Shown again; where somebody else sat down meanwhile, the window goes on with that person."""
        if self._new_office:
            new, self._new_office = self._new_office, None
            QTimer.singleShot(0, self, partial(self.seated.emit, new))
            return
        super().come_back(changed=changed)

    def back(self) -> bool:
        """From the record to the list; False where the keys are not in the record."""
        if not self.area.isAncestorOf(self.focusWidget()):
            return False
        self.list.setFocus()
        return True

    def focus_start(self) -> None:
        """The keys go to the list."""
        self.list.setFocus()

    def stop(self) -> None:
        """Contact details are not left standing on a page nobody looks at."""
        self._pause.stop()
        if self.contact:
            self.contact.hide_details()

    def sit_down(self, chosen: str = "") -> None:
        """Ask who is at the desk; chosen: the id of the person offered first."""
        self._deed(people.sit_down(self.wish, self._keep_office, chosen), None)

    def _lay_out(self) -> None:
        buttons = [
            button(tr("Add a person"), self._add, rank="first"),
            button(tr("Sit down at the desk"), self.sit_down),
        ]
        wish = button(tr("Passphrases"), self._ask_wish, name=tr("What the club wants of passphrases"))
        wishes = QHBoxLayout()
        wishes.setSpacing(GRID)
        wishes.addWidget(wish)
        wishes.addWidget(self.wants, 1)
        aside = QWidget()
        left = QVBoxLayout(aside)
        left.setContentsMargins(0, 0, GRID, 0)
        left.setSpacing(GRID)
        left.addWidget(self.name_line)
        left.addWidget(self.list, 1)
        for part in (self.none, hairline(), self.desk, row(buttons)):
            left.addWidget(part)
        left.addLayout(wishes)
        self._make_room()
        self._look.changed.connect(self._make_room)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, GRID)
        layout.setSpacing(3 * GRID)
        layout.addWidget(scroll(aside, tr("People")), _SHARES[0])
        layout.addWidget(self.area, _SHARES[1])

    def _make_room(self) -> None:
        """A few people are seen at once, however large the text."""
        self.list.setMinimumHeight(self._look.px(_LEAST_LIST_PX))

    def _connect(self) -> None:
        self.name_line.textChanged.connect(self._narrow)
        self.name_line.returnPressed.connect(self.list.setFocus)
        self.list.typed.connect(self.typed)
        self.list.chosen.connect(lambda _: self._pause.start())
        self.list.entered.connect(self._enter)

    def _show(self, wanted: str, found: PeopleFound) -> None:
        self.wish = found.passphrases
        self.model.show_rows(found.rows, self._office.today, self._office.officer.id)
        self.list.choose(wanted)
        self._tell_desk()
        self._tell_none()
        self._read_chosen()
        now = next((one.person for one in found.rows if one.person.id == self._office.officer.id), None)
        if now and now.name != self._office.officer.name:  # deeds and documents are to bear the new name
            self.seated.emit(replace(self._office, officer=now))

    def _narrow(self, typed: str) -> None:
        stood = self.list.person_id or (self.shown.person.id if self.shown else "")
        self.model.narrow(typed)
        self.list.choose(stood)
        self._tell_none()

    def _tell_none(self) -> None:
        self.none.setVisible(not self.model.rows)

    def _tell_desk(self) -> None:
        name = self._office.officer.name
        proved, stated = tr("At the desk: {name}, proved", name=name), tr("At the desk: {name}, as stated", name=name)
        self.desk.setText(proved if self._office.vouched else stated)
        self.wants.setText(tr("The club wants: {wish}", wish=passphrases.wish_words()[self.wish]))

    def _read_chosen(self) -> None:
        self._pause.stop()
        if key := self.list.person_id:
            self._background.run(in_full, self._office, key, done=self._show_person, failed=self._notice.refuse)

    def _show_person(self, shown: PersonInFull) -> None:
        if shown.person.id != self.list.person_id:
            return  # the bar was moved on meanwhile
        other = self.shown is None or self.shown.person.id != shown.person.id
        self.shown = shown
        acts = self._acts(shown)
        self.contact = ContactPart(shown, acts)
        page = person_view(self._office, shown, self.wish, self._look, acts, self.contact)
        page.setObjectName("page")
        if inside := page.layout():
            inside.setContentsMargins(0, 0, 2 * GRID, 3 * GRID)
        stood = self.area.verticalScrollBar().value()
        self.area.setWidget(page)
        self.area.verticalScrollBar().setValue(0 if other else stood)

    def _acts(self, shown: PersonInFull) -> Acts:
        def deed(make: Callable[[PersonInFull], Deed[Any]]) -> Callable[[], object]:
            return lambda: self._deed(make(shown), shown, shown.person.id)

        return Acts(
            opens=self.opened.emit,
            sit_down=partial(self.sit_down, shown.person.id),
            change=deed(people.change),
            give=deed(lambda about: competence.give(about, scopes(self._office))),
            renew=deed(competence.renew),
            end=deed(competence.end),
            show_contact=lambda: self._with_contact(self._show_contact),
            write_contact=lambda: self._with_contact(self._write_contact),
            remove_contact=deed(contact.remove),
            set_passphrase=deed(passphrases.set_new),
            remove_passphrase=deed(passphrases.remove),
            told=lambda: self.go.emit(Go(REGISTER, shown.person.name)),
        )

    def _with_contact(self, does: Callable[[PersonInFull, Contact | None], object]) -> None:
        """Read how to reach the person shown, only now that it is asked for."""
        if shown := self.shown:
            self._background.run(
                contact_of, self._office, shown.person.id, done=partial(does, shown), failed=self._notice.refuse
            )

    def _show_contact(self, of: PersonInFull, found: Contact | None) -> None:
        if self.contact and of is self.shown:
            self.contact.show_details(found)

    def _write_contact(self, of: PersonInFull, found: Contact | None) -> None:
        about = contact.Reached(of.person, found or Contact())
        self._deed(contact.write(about), about, of.person.id)

    def _add(self) -> None:
        self._deed(people.add(scopes(self._office)), None)

    def _ask_wish(self) -> None:
        self._deed(passphrases.wish(self.wish), self.wish)

    def _deed(self, deed: Deed[Any], about: object, key: str = "") -> None:
        self.go.emit(Go(DEED, (deed, about, key)))

    def _keep_office(self, office: Office) -> None:
        self._new_office = office

    def _enter(self) -> None:
        """Into the record: its first button."""
        self.area.setFocus()
        self.focusNextChild()
