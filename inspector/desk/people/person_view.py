"""The record of a person, set from data: who, what he may judge, how to reach him, what he has and owns, history."""

from collections.abc import Callable

from msgspec import Struct
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from inspector.desk.deeds.passphrases import wish_words
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, clear, column, facts, row, said
from inspector.desk.record_parts import history_part, section
from inspector.desk.tag_lines import Line, tag_lines
from inspector.drawings.marks import outcome_word
from inspector.duties.office import Office
from inspector.duties.person_in_full import Held, PersonInFull
from inspector.duties.sit_down import name_words
from inspector.gear.custody import Loan
from inspector.gear.lists import GearRow
from inspector.gear.person import Contact, Passphrases
from inspector.language import show_day, tr, tr_n

Does = Callable[[], object]


class Acts(Struct, frozen=True):
    """What the record's buttons set off. opens: a piece by its tag."""

    opens: Callable[[str], object]
    sit_down: Does
    change: Does
    give: Does
    renew: Does
    end: Does
    show_contact: Does
    write_contact: Does
    remove_contact: Does
    set_passphrase: Does
    remove_passphrase: Does
    told: Does


class ContactPart(QWidget):
    """How to reach a person: nothing is shown before somebody asks for it."""

    def __init__(self, shown: PersonInFull, acts: Acts) -> None:
        super().__init__()
        self._shown, self._acts = shown, acts
        self._inside = QVBoxLayout(self)
        self._inside.setContentsMargins(0, 0, 0, 0)
        self._inside.setSpacing(GRID)
        self.show_button = button(tr("Show contact details"), acts.show_contact)
        self.hide_button = button(tr("Hide them"), self.hide_details, name=tr("Hide contact details"))
        self._details = QVBoxLayout()
        self._inside.addLayout(self._details)
        self._inside.addWidget(row(self._buttons()))
        self.hide_details()

    def show_details(self, contact: Contact | None) -> None:
        """Show what is written down."""
        clear(self._details)
        told = contact or Contact()
        lines = [
            (tr("Telephone"), told.phone),
            (tr("Mail"), told.mail),
            (tr("Postal address"), told.address),
        ]
        known = [line for line in lines if line[1]]
        self._details.addWidget(facts(known) if known else said(tr("Nothing is written down.")))
        self.show_button.hide()
        self.hide_button.setVisible(bool(known))
        self.hide_button.setFocus()

    def hide_details(self) -> None:
        """Show nothing of it."""
        clear(self._details)
        self._details.addWidget(said(self._words(), faint=True))
        self.show_button.setVisible(self._shown.has_contact)
        self.hide_button.hide()

    def _words(self) -> str:
        if self._shown.contact_is_closed:
            return tr("Officers of the club alone may read how to reach a person.")
        if self._shown.has_contact:
            return tr("Contact details are written down; they are shown when you ask for them.")
        return tr("Nothing is written down.")

    def _buttons(self) -> list[QPushButton]:
        if self._shown.contact_is_closed:
            return [self.show_button, self.hide_button]
        name = self._shown.person.name
        write = button(tr("Write it down"), self._acts.write_contact, name=tr("Write how to reach {name}", name=name))
        remove = button(tr("Remove for good"), self._acts.remove_contact,
                        name=tr("Remove how to reach {name} for good", name=name))  # fmt: skip
        return [self.show_button, self.hide_button, write, *([remove] if self._shown.has_contact else [])]


def person_view(
    office: Office, shown: PersonInFull, wish: Passphrases, look: Look, acts: Acts, contact: ContactPart
) -> QWidget:
    """The whole record."""
    parts = [
        _head(office, shown, acts),
        _competences(shown, acts),
        section(tr("How to reach"), contact),
        _loans(shown, office, look, acts),
        _owned(shown, look, acts),
        *_passphrase(shown, wish, acts),
        _history(shown, acts),
    ]
    return column(parts, 2 * GRID)


def _head(office: Office, shown: PersonInFull, acts: Acts) -> QWidget:
    person = shown.person
    lines: list[QWidget] = [said(person.name, Type.DISPLAY), said(person.role, Type.HEAD, faint=True)]
    if person.former_names:
        lines.append(said(tr("Formerly {names}", names=", ".join(person.former_names)), faint=True))
    if shown.at_desk:
        lines.append(said(tr("At the desk now. {name}", name=name_words(office))))
    buttons = [button(tr("Another name or role"), acts.change)]
    if not shown.at_desk:
        name = tr("Sit down at the desk as {name}", name=person.name)
        buttons.append(button(tr("Sit down as this person"), acts.sit_down, name=name))
    return column([*lines, row(buttons)], GRID // 2)


def _competences(shown: PersonInFull, acts: Acts) -> QWidget:
    """What runs and what has ended; what needs to be renewed is said in bold."""
    parts: list[QWidget] = [_held(one) for one in shown.held]
    if not shown.row.held:
        nobody = tr("{name} may judge nothing: an inspection by this name alone passes no gear.")
        parts.insert(0, said(nobody.format(name=shown.person.name), faint=True))
    buttons = [button(tr("Let judge more"), acts.give, name=tr("Give a competence"))]
    if any(one.competence.until for one in shown.held):
        buttons.append(button(tr("Renew"), acts.renew, name=tr("Renew a competence")))
    if shown.row.held:
        buttons.append(button(tr("End it"), acts.end, name=tr("End a competence")))
    return section(tr("May judge"), column(parts, GRID), row(buttons))


def _held(one: Held) -> QWidget:
    lines: list[QWidget] = [said(one.scope), said(one.stands, Type.SMALL, faint=not one.soon, bold=one.soon)]
    if one.soon:
        lines.append(said(tr("Renew it, or let somebody else be competent for it."), Type.SMALL))
    return column(lines, 0)


def _loans(shown: PersonInFull, office: Office, look: Look, acts: Acts) -> QWidget:
    lines: list[Line] = [(None, one.tag, (said(one.kind_name), said(_back_by(one, office), Type.SMALL)))
                         for one in shown.loans]  # fmt: skip
    nothing = said(tr("Nothing is out with {name}.", name=shown.person.name), faint=True)
    return section(tr("Has on loan"), tag_lines(lines, look, acts.opens) if lines else nothing)


def _back_by(loan: Loan, office: Office) -> str:
    since = show_day(loan.since)
    if loan.due is None:
        return tr("since {since}", since=since)
    told = tr("since {since}, to be back by {due}", since=since, due=show_day(loan.due))
    late = loan.overdue_days(office.today)
    return told + tr_n(": OVERDUE by {count} day", ": OVERDUE by {count} days", late) if late else told


def _owned(shown: PersonInFull, look: Look, acts: Acts) -> QWidget:
    parts: list[QWidget] = [said(tr("{tag} {name}", tag=one.tag, name=one.name)) for one in shown.vehicles]
    if shown.owned:
        parts.append(tag_lines([_piece(one) for one in shown.owned], look, acts.opens))
    if not parts:
        parts.append(said(tr("{name} owns no piece and no vehicle here.", name=shown.person.name), faint=True))
    elif shown.row.held:
        parts.append(said(tr("Nobody judges his own gear alone."), Type.SMALL, faint=True))
    return section(tr("Owns"), *parts)


def _piece(one: GearRow) -> Line:
    word = outcome_word(one.outcome) if one.outcome else tr("not judged yet")
    head = said(tr("{kind} · {outcome}", kind=one.kind_name, outcome=word))
    return one.outcome, one.tag, (head, said(one.place, Type.SMALL, faint=True))


def _passphrase(shown: PersonInFull, wish: Passphrases, acts: Acts) -> list[QWidget]:
    """Only where the club wants them, or one still stands."""
    if wish is Passphrases.OFF and not shown.row.has_passphrase:
        return []
    has = shown.row.has_passphrase
    told = tr("{name} has one.", name=shown.person.name) if has else tr("{name} has none.", name=shown.person.name)
    buttons = [button(tr("Set a passphrase"), acts.set_passphrase)]
    if has:
        buttons.append(button(tr("Remove the passphrase"), acts.remove_passphrase))
    club = tr("The club wants: {wish}", wish=wish_words()[wish])
    return [section(tr("Passphrase"), said(told), said(club, Type.SMALL, faint=True), row(buttons))]


def _history(shown: PersonInFull, acts: Acts) -> QWidget:
    ledger = button(tr("In the ledger"), acts.told, name=tr("What the ledger tells of {name}", name=shown.person.name))
    if shown.changes:
        return column([history_part(shown.changes), row([ledger])])
    nothing = said(tr("Nothing was changed since the name was entered."), faint=True)
    return section(tr("History"), nothing, row([ledger]))
