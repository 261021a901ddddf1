"""Say in words where pieces are, and why one is not at hand; nobody else words it."""

from collections.abc import Mapping
from datetime import date

from msgspec.structs import replace

from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import show_day, tr, tr_n


def where_words(found: Whereabouts, names: Mapping[str, str]) -> str:
    """Where a piece is. names: of people by their ids."""
    at = names.get(found.at, found.at)
    since = tr(" since {day}", day=show_day(found.since)) if found.since else ""
    words = {
        Where.IN_STORE: tr("in store at {place}", place=at) if at else tr("in store, place not written down"),
        Where.ON_LOAN: tr("on loan to {name}", name=at),
        Where.ON_VEHICLE: tr("on vehicle {vehicle}", vehicle=at),
        Where.MISSING: tr("missing"),
        Where.STOLEN: tr("stolen"),
        Where.SOLD: tr("sold to {name}", name=at),
        Where.GIVEN_BACK: tr("given back to its owner {name}", name=at),
        Where.DESTROYED: tr("made unusable"),
        Where.WITHDRAWN: tr("withdrawn: it was booked in by mistake"),
    }
    seen = tr(", last seen: {place}", place=at) if at and found.where in {Where.MISSING, Where.STOLEN} else ""
    return words[found.where] + since + seen


def brief_words(found: Whereabouts, names: Mapping[str, str]) -> str:
    """Where a piece is, for a list: without the day, and without a word of what nobody wrote down."""
    if found.where is Where.IN_STORE and not found.at:
        return tr("in store")
    return where_words(replace(found, since=None), names)


def back_words(due: date | None, today: date) -> str:
    """When a loan is to be back, and for how long it should have been; begins with a comma."""
    if due is None:
        return ""
    back, days = tr(", to be back by {day}", day=show_day(due)), max((today - due).days, 0)
    return back + (tr_n(", {count} day overdue", ", {count} days overdue", days) if days else "")


def gone_words(found: Whereabouts, names: Mapping[str, str]) -> str:
    """Why the club does not have it; empty where it has."""
    if not found.where.is_gone:
        return ""
    return tr("Not at hand: {where}.", where=where_words(found, names))


def evidence_words(refs: tuple[str, ...]) -> str:
    """Why evidence goes nowhere; empty where no incident keeps the piece."""
    return tr("It is kept as found, as evidence of {refs}.", refs=", ".join(refs)) if refs else ""
