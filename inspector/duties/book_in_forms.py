"""In which form a piece comes in: what each form must tell, what it ought to, and whose a borrowed piece is."""

from collections.abc import Callable, Mapping
from datetime import date

from msgspec.structs import replace

from inspector.duties.who import names_club
from inspector.gear.item import NewItem, Provenance
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page


def in_form(page: Page, facts: NewItem, today: date) -> NewItem:
    """The facts as they are kept; refused where the form's own fact is missing. A borrowed piece is its lender's."""
    _check_words(facts)
    if facts.borrowed_until and facts.provenance is not Provenance.BORROWED:
        why = tr("A day to go back by was named, but the piece is not borrowed.")
        raise Refused(tr("borrowed until"), why, tr("Say that it is borrowed, or leave the day out."))
    form = _FORMS.get(facts.provenance)
    return form(page, facts, today) if form else facts


def still_wanted(facts: NewItem) -> tuple[str, ...]:
    """What the form ought to tell and does not; none of it makes a verdict milder, so it is asked for, not required."""
    wanted = []
    if facts.provenance is Provenance.NEW_CERTIFIED and not facts.paper:
        wanted.append(tr("The number and issuer of its certificate are not written down."))
    if facts.provenance is Provenance.SECOND_HAND and not facts.from_whom:
        wanted.append(tr("It is not written down from whom it was bought."))
    if facts.provenance in {Provenance.SECOND_HAND, Provenance.GIFT} and not facts.made_on:
        wanted.append(tr("Nobody wrote down when it was made; its label or its former owner may tell."))
    return tuple(wanted)


def _check_words(facts: NewItem) -> None:
    if not _is_line(facts.from_whom):
        raise _no_line(tr("from whom"))
    if not _is_line(facts.paper):
        raise _no_line(tr("paper"))


def _is_line(text: str) -> bool:
    return text.isprintable() and text == text.strip()


def _no_line(field: str) -> Refused:
    return Refused(field, tr("It is not one plain line."), tr("Write one line without space at its ends."))


def _given(_page: Page, facts: NewItem, _today: date) -> NewItem:
    if not facts.from_whom:
        raise Refused(tr("from whom"), tr("It is empty."), tr("Write who gave it."))
    return facts


def _home_made(_page: Page, facts: NewItem, _today: date) -> NewItem:
    if not facts.from_whom:
        raise Refused(tr("from whom"), tr("It is empty."), tr("Write who made it."))
    if facts.rating.figure and facts.rating.stated_on == "certificate" and not facts.paper:
        why = tr("A certificate is said to stand for a home-made piece, but not which.")
        raise Refused(tr("paper"), why, tr("Write its number and who tested the piece."))
    return facts


def _borrowed(page: Page, facts: NewItem, today: date) -> NewItem:
    if not facts.from_whom:
        raise Refused(tr("from whom"), tr("It is empty."), tr("Write which club or firm lends it."))
    if facts.borrowed_until is None:
        why = tr("A borrowed piece goes back, and it is not said when.")
        raise Refused(tr("borrowed until"), why, tr("Write the last day on which it may be here."))
    if facts.borrowed_until < today:
        why = tr("It ought to have gone back on {day}.", day=show_day(facts.borrowed_until))
        raise Refused(tr("borrowed until"), why, tr("Agree on a later day with its owner, and write that."))
    owner = facts.owner or facts.from_whom
    if names_club(page, owner):
        raise Refused(tr("owner"), tr("What is borrowed is not the club's."), tr("Write whose it is."))
    return replace(facts, owner=owner)


_FORMS: Mapping[Provenance, Callable[[Page, NewItem, date], NewItem]] = {
    Provenance.BORROWED: _borrowed,
    Provenance.GIFT: _given,
    Provenance.HOME_MADE: _home_made,
}
